#include "base/known.h"
#include "reading/page.h"
#include "output/markdown_text.h"

static void put(const struct layout *layout, const char *text)
{
    markdown_text(layout->out, span_of(text));
}

void page_markdown_finding(const struct layout *layout, const struct figure *figure)
{
    bool judged = figure->verdict != VERDICT_NONE;
    outbuf_text(layout->out, "- ");
    outbuf_text(layout->out, judged ? "**" : "");
    outbuf_text(layout->out, verdict_name(figure->verdict));
    outbuf_text(layout->out, judged ? "** " : "");
    put(layout, finding_name(layout->arena, layout->plan, figure, 0));
    outbuf_text(layout->out, ": ");
    put(layout, finding_says(layout, figure));
    const char *basis = figure_basis(layout->arena, layout->plan, figure);
    if (basis != NULL) {
        outbuf_text(layout->out, " (");
        put(layout, basis);
        outbuf_text(layout->out, ")");
    }
    outbuf_char(layout->out, '\n');
}

static void put_findings(const struct layout *layout, struct finding_list list)
{
    for (size_t i = 0; i < list.count; i++)
        page_markdown_finding(layout, list.items[i]);
    if (list.count > 0)
        outbuf_char(layout->out, '\n');
}

static void put_legend(const struct layout *layout)
{
    for (size_t i = 0; i < layout->plan->count; i++) {
        const struct setup *setup = &layout->plan->setups[i];
        outbuf_text(layout->out, "- **");
        put(layout, option_label(layout, i));
        outbuf_text(layout->out, "** ");
        put(layout, size_text(layout, setup));
        if (!setup->is_fitted) {
            outbuf_text(layout->out, ", ");
            put(layout, setup->name);
        }
        outbuf_char(layout->out, '\n');
    }
}

static void put_all_findings(const struct layout *layout)
{
    struct finding_list shared = findings_shared(layout);
    outbuf_text(layout->out, "\n## Findings, best tyre first\n\n");
    if (shared.count > 0)
        outbuf_text(layout->out,
                    "### Whichever tyre is chosen (the worst of them, counted with each)\n\n");
    put_findings(layout, shared);
    for (size_t i = 0; i < layout->plan->count; i++) {
        size_t setup = layout->order[i];
        outbuf_text(layout->out, "### ");
        put(layout, option_label(layout, setup));
        outbuf_text(layout->out, ": ");
        put(layout, counts_text(layout, setup));
        outbuf_text(layout->out, "\n\n");
        put_findings(layout, findings_of(layout, setup));
    }
}

static void put_assumptions(const struct layout *layout)
{
    struct finding_list made = assumptions_made(layout);
    if (made.count > 0)
        outbuf_text(layout->out, "## Taken as (assumptions)\n\n");
    for (size_t i = 0; i < made.count; i++) {
        outbuf_text(layout->out, "- ");
        put(layout, labels_taken(layout, made.items[i]));
        outbuf_text(layout->out, ": ");
        put(layout, figure_action(layout->arena, layout->plan, made.items[i]));
        outbuf_char(layout->out, '\n');
    }
    if (made.count > 0)
        outbuf_char(layout->out, '\n');
}

/* What to do, before all that it rests on. */
static void put_answers(const struct layout *layout)
{
    bool any = false;
    for (size_t i = 0; i < layout->figures->count; i++) {
        const struct figure *figure = &layout->figures->items[i];
        if (!(quantity_rows[figure->quantity].policy & POLICY_ANSWER))
            continue;
        any = true;
        outbuf_text(layout->out, "- **");
        put(layout, option_label(layout, (size_t)figure->setup));
        outbuf_text(layout->out, "** ");
        put(layout, figure_action(layout->arena, layout->plan, figure));
        outbuf_char(layout->out, '\n');
    }
    if (any)
        outbuf_char(layout->out, '\n');
}

static void put_part_head(const struct layout *layout, bool with_answers)
{
    const char *name = layout->plan->specification->vehicle.name;
    outbuf_text(layout->out, "# ");
    put(layout, name == NULL ? "vehicle" : name);
    outbuf_text(layout->out, "\n\n");
    if (with_answers)
        put_answers(layout);
    put_legend(layout);
    put_all_findings(layout);
}

void page_markdown(const struct layout *layout, const struct page_part *parts, size_t count,
                   bool as_sheet)
{
    if (as_sheet)
        page_markdown_answer(layout);
    else
        put_part_head(layout, count == 1);
    for (size_t i = 0; i < count; i++) {
        outbuf_text(layout->out, "## ");
        put(layout, part_name(parts[i].part));
        outbuf_text(layout->out, "\n\n");
        part_table(layout, parts[i].part, parts[i].headlines_only);
        outbuf_char(layout->out, '\n');
    }
    outbuf_text(layout->out, "In the tables: ! fail, ? unknown, + task, \\~ caution.\n\n");
    put_assumptions(layout);
    put(layout, cautions);
    outbuf_char(layout->out, '\n');
}
