/* The parts, and the sheet's answer and proof: as Markdown, or within a page of HTML. */
#include "base/known.h"
#include "output/markdown_text.h"
#include "output/writer.h"
#include "reading/answer.h"
#include "reading/document.h"
#include "reading/page.h"
#include "reading/solution_text.h"
#include "reading/task_text.h"

void page_finding(const struct layout *layout, const struct figure *figure)
{
    const char *basis = figure_basis(layout->arena, layout->plan, figure);
    const char *says = finding_sentence(layout, figure);
    document_item(layout, verdict_name(figure->verdict),
                  basis == NULL ? says : arena_format(layout->arena, "%s (%s)", says, basis));
}

static void put_findings(const struct layout *layout, struct finding_list list)
{
    if (list.count == 0)
        return;
    document_list(layout);
    for (size_t i = 0; i < list.count; i++)
        page_finding(layout, list.items[i]);
    document_list_end(layout);
}

void page_tables(const struct layout *layout, const struct page_part *parts, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        document_heading(layout, 2, part_name(parts[i].part));
        document_gap(layout);
        part_table(layout, parts[i].part, parts[i].headlines_only);
    }
    const char *memory = memory_note(layout);
    document_paragraph(layout, "In the tables: ! fail, ? unknown, + task, ~ caution.");
    if (memory != NULL)
        document_paragraph(layout, memory);
    struct finding_list made = assumptions_made(layout);
    if (made.count == 0)
        return;
    document_heading(layout, 2, "Taken as (assumptions)");
    document_list(layout);
    for (size_t i = 0; i < made.count; i++)
        document_item(layout, labels_taken(layout, made.items[i]),
                      figure_action(layout->arena, layout->plan, made.items[i]));
    document_list_end(layout);
}

/* --- one part */

/* What to do, before all that it rests on. */
static void put_answers(const struct layout *layout)
{
    bool any = false;
    for (size_t i = 0; i < layout->figures->count; i++) {
        const struct figure *figure = &layout->figures->items[i];
        if (!(quantity_rows[figure->quantity].policy & POLICY_ANSWER))
            continue;
        if (!any)
            document_list(layout);
        any = true;
        document_item(layout, option_label(layout, (size_t)figure->setup),
                      figure_action(layout->arena, layout->plan, figure));
    }
    if (any)
        document_list_end(layout);
}

void page_legend(const struct layout *layout)
{
    document_list(layout);
    for (size_t i = 0; i < layout->plan->count; i++) {
        const struct setup *setup = &layout->plan->setups[i];
        const char *size = size_text(layout, setup);
        document_item(layout, option_label(layout, i),
                      setup->is_fitted ? size
                                       : arena_format(layout->arena, "%s, %s", size, setup->name));
    }
    document_list_end(layout);
}

void page_part(const struct layout *layout, enum part part)
{
    put_answers(layout);
    page_proof(layout);
    page_tables(layout, &(struct page_part){part, false}, 1);
}

/* --- a sheet */

static void put_answer_table(const struct layout *layout)
{
    struct heading headings[ANSWER_COLUMNS];
    struct writer writer;
    for (size_t i = 0; i < ANSWER_COLUMNS; i++)
        headings[i] =
            (struct heading){.name = answer_headings[i], .title = answer_headings[i], .unit = ""};
    writer_begin(&writer, writer_find("markdown"), layout->out, layout->arena,
                 (struct writer_options){.with_header = true}, headings, ANSWER_COLUMNS);
    for (size_t i = 0; i < layout->plan->count; i++) {
        const char *texts[ANSWER_COLUMNS];
        struct cell cells[ANSWER_COLUMNS];
        answer_row(layout, layout->order[i], texts);
        for (size_t j = 0; j < ANSWER_COLUMNS; j++)
            cells[j] = cell_text(texts[j]);
        writer_row(&writer, cells);
    }
    writer_end(&writer);
}

void page_markdown_tasks(const struct layout *layout, size_t setup, bool boxes)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    document_gap(layout);
    for (size_t i = 0; i < outcome->task_count; i++) {
        const struct task *task = &outcome->tasks[i];
        outbuf_text(layout->out,
                    arena_format(layout->arena, boxes ? "- [ ] %zu **%s** " : "%zu. **%s** ", i + 1,
                                 task_kind_name(task_rows[task->cure.task].kind)));
        markdown_text(layout->out, span_of(task_text_in_full(layout, task)));
        outbuf_char(layout->out, '\n');
    }
}

static void put_solution(const struct layout *layout, size_t setup)
{
    struct solution_line lines[SOLUTION_LINES_MAX];
    size_t count = solution_lines(layout, setup, lines);
    if (count == 0)
        return;
    document_list(layout);
    for (size_t i = 0; i < count; i++)
        document_item(layout, lines[i].label, lines[i].text);
    document_list_end(layout);
}

/* In HTML the tasks stand in the workshop's part. */
static void put_option(const struct layout *layout, size_t setup)
{
    const struct finding_list list = answer_findings(layout, setup);
    document_heading(layout, 2,
                     arena_format(layout->arena, "%s%s%s", option_label(layout, setup),
                                  setup == 0 ? " " : ": ", answer_heading(layout, setup)));
    if (layout->format == FOR_MARKDOWN && layout->outcomes[setup].task_count > 0)
        page_markdown_tasks(layout, setup, false);
    if (answer_fails_by_build(layout, setup)) {
        document_list(layout);
        document_item(layout, "fail", "what the build has whichever tyre, above");
        document_list_end(layout);
    }
    put_findings(layout, list);
    put_solution(layout, setup);
}

void page_proof(const struct layout *layout)
{
    struct finding_list deciding;
    const struct finding_list also = answer_also_shared(layout);
    const char *build = answer_build(layout, &deciding);
    if (build != NULL) {
        document_heading(layout, 2, build);
        put_findings(layout, deciding);
    }
    for (size_t i = 0; i < layout->plan->count; i++)
        if (answer_tells(layout, layout->order[i]))
            put_option(layout, layout->order[i]);
    if (also.count > 0) {
        document_heading(layout, 2, answer_shared_title);
        put_findings(layout, also);
    }
}

/* --- Markdown alone */

void page_markdown(const struct layout *layout, const struct page_part *parts, size_t count)
{
    const char *name = layout->plan->specification->vehicle.name;
    if (count > 1) {
        document_heading(layout, 1, answer_title(layout));
        document_gap(layout);
        put_answer_table(layout);
        page_proof(layout);
        page_tables(layout, parts, count);
    } else {
        document_heading(layout, 1,
                         arena_format(layout->arena, "%s%s", name == NULL ? "vehicle" : name,
                                      layout->plan->count > 2 ? ", best tyre first" : ""));
        page_part(layout, parts[0].part);
    }
    document_paragraph(layout, cautions);
}
