#include "base/known.h"
#include "reading/page.h"
#include "output/markdown_text.h"

static void put(const struct reading *reading, const char *text)
{
    markdown_text(reading->out, span_of(text));
}

const char *finding_says(const struct reading *reading, const struct figure *figure)
{
    const char *text = "";
    if (known(figure->value))
        text = figure_text(reading, figure, figure->value);
    if (known(figure->limit))
        text = arena_format(reading->arena, *text ? "%s (limit %s)" : "%slimit %s", text,
                            figure_limit_text(reading, figure));
    if (figure->action != NULL)
        text = arena_format(reading->arena, "%s%s%s", text, *text ? "; " : "", figure->action);
    return text;
}

static void put_finding(const struct reading *reading, const struct figure *figure)
{
    outbuf_text(reading->out, "- **");
    outbuf_text(reading->out, verdict_name(figure->verdict));
    outbuf_text(reading->out, "** ");
    put(reading, finding_name(reading->arena, figure));
    outbuf_text(reading->out, ": ");
    put(reading, finding_says(reading, figure));
    if (figure->basis != NULL) {
        outbuf_text(reading->out, " (");
        put(reading, figure->basis);
        outbuf_text(reading->out, ")");
    }
    outbuf_char(reading->out, '\n');
}

static void put_findings(const struct reading *reading, struct finding_list list)
{
    for (size_t i = 0; i < list.count; i++)
        put_finding(reading, list.items[i]);
    if (list.count > 0)
        outbuf_char(reading->out, '\n');
}

static void put_legend(const struct reading *reading)
{
    for (size_t i = 0; i < reading->plan->count; i++) {
        const struct setup *setup = &reading->plan->setups[i];
        outbuf_text(reading->out, "- **");
        put(reading, option_label(reading, setup->name));
        outbuf_text(reading->out, "** ");
        put(reading, size_text(reading, setup));
        if (!setup->is_fitted) {
            outbuf_text(reading->out, ", ");
            put(reading, setup->name);
        }
        outbuf_char(reading->out, '\n');
    }
}

static void put_all_findings(const struct reading *reading)
{
    const struct badness *order = findings_order(reading);
    struct finding_list shared = findings_shared(reading);
    outbuf_text(reading->out, "\n## Findings, worst first\n\n");
    if (shared.count > 0)
        outbuf_text(reading->out,
                    "### Whichever tyre is chosen (the worst of them, counted with each)\n\n");
    put_findings(reading, shared);
    for (size_t i = 0; i < reading->plan->count; i++) {
        outbuf_text(reading->out, "### ");
        put(reading, option_label(reading, reading->plan->setups[order[i].setup].name));
        outbuf_text(reading->out, ": ");
        put(reading, counts_text(reading, &order[i]));
        outbuf_text(reading->out, "\n\n");
        put_findings(reading, findings_of(reading, order[i].setup));
    }
}

static void put_assumptions(const struct reading *reading)
{
    struct finding_list made = assumptions_made(reading);
    if (made.count > 0)
        outbuf_text(reading->out, "## Taken as (assumptions)\n\n");
    for (size_t i = 0; i < made.count; i++) {
        outbuf_text(reading->out, "- ");
        put(reading, labels_taken(reading, made.items[i]->action));
        outbuf_text(reading->out, ": ");
        put(reading, made.items[i]->action);
        outbuf_char(reading->out, '\n');
    }
    if (made.count > 0)
        outbuf_char(reading->out, '\n');
}

/* What to do, before all that it rests on. */
static void put_answers(const struct reading *reading)
{
    bool any = false;
    for (size_t i = 0; i < reading->figures->count; i++) {
        const struct figure *figure = &reading->figures->items[i];
        if (figure->quantity != QUANTITY_ANSWER)
            continue;
        any = true;
        outbuf_text(reading->out, "- **");
        put(reading, option_label(reading, figure->option));
        outbuf_text(reading->out, "** ");
        put(reading, figure->action);
        outbuf_char(reading->out, '\n');
    }
    if (any)
        outbuf_char(reading->out, '\n');
}

void page_markdown(const struct reading *reading, const struct page_part *parts, size_t count)
{
    const char *name = reading->plan->specification->vehicle.name;
    outbuf_text(reading->out, "# ");
    put(reading, name == NULL ? "vehicle" : name);
    outbuf_text(reading->out, "\n\n");
    if (count == 1)
        put_answers(reading);
    put_legend(reading);
    put_all_findings(reading);
    for (size_t i = 0; i < count; i++) {
        outbuf_text(reading->out, "## ");
        put(reading, part_name(parts[i].part));
        outbuf_text(reading->out, "\n\n");
        part_table(reading, parts[i].part, parts[i].headlines_only);
        outbuf_char(reading->out, '\n');
    }
    outbuf_text(reading->out, "In the tables: ! fail, \\~ caution, ? unknown.\n\n");
    put_assumptions(reading);
    put(reading, cautions);
    outbuf_char(reading->out, '\n');
}
