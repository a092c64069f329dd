#include "base/known.h"
#include "reading/page.h"
#include "output/markdown_text.h"

static void put(const struct layout *layout, const char *text)
{
    markdown_text(layout->out, span_of(text));
}

void page_markdown_finding(const struct layout *layout, const struct figure *figure)
{
    outbuf_text(layout->out, "- **");
    outbuf_text(layout->out, verdict_name(figure->verdict));
    outbuf_text(layout->out, "** ");
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
    outbuf_text(layout->out, layout->plan->count > 2 ? ", best tyre first\n\n" : "\n\n");
    if (with_answers)
        put_answers(layout);
    page_markdown_options(layout);
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
    const char *memory = memory_note(layout);
    if (memory != NULL) {
        put(layout, memory);
        outbuf_text(layout->out, "\n\n");
    }
    put(layout, cautions);
    outbuf_char(layout->out, '\n');
}
