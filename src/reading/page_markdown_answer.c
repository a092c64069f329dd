/* The first part of a sheet in Markdown: the table of tyres, then each option's work. */
#include "output/markdown_text.h"
#include "output/writer.h"
#include "reading/answer.h"
#include "reading/page.h"
#include "reading/task_text.h"

static void put(const struct layout *layout, const char *text)
{
    markdown_text(layout->out, span_of(text));
}

static void put_table(const struct layout *layout)
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

static void put_heading(const struct layout *layout, const char *text)
{
    outbuf_text(layout->out, "\n## ");
    put(layout, text);
    outbuf_text(layout->out, "\n\n");
}

void page_markdown_tasks(const struct layout *layout, size_t setup, bool boxes)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    for (size_t i = 0; i < outcome->task_count; i++) {
        const struct task *task = &outcome->tasks[i];
        outbuf_text(layout->out, boxes ? "- [ ] " : arena_format(layout->arena, "%zu. ", i + 1));
        outbuf_text(layout->out, boxes ? arena_format(layout->arena, "%zu ", i + 1) : "");
        outbuf_text(layout->out, "**");
        put(layout, task_kind_name(task_rows[task->cure.task].kind));
        outbuf_text(layout->out, "** ");
        put(layout, task_text_in_full(layout, task));
        outbuf_char(layout->out, '\n');
    }
}

static void put_findings(const struct layout *layout, const struct finding_list *list)
{
    for (size_t i = 0; i < list->count; i++)
        page_markdown_finding(layout, list->items[i]);
}

static void put_option(const struct layout *layout, size_t setup)
{
    const struct finding_list list = answer_findings(layout, setup);
    put_heading(layout, arena_format(layout->arena, "%s%s%s", option_label(layout, setup),
                                     setup == 0 ? " " : ": ", answer_heading(layout, setup)));
    page_markdown_tasks(layout, setup, false);
    if (layout->outcomes[setup].task_count > 0 && list.count > 0)
        outbuf_char(layout->out, '\n');
    if (answer_fails_by_build(layout, setup))
        outbuf_text(layout->out, "- **fail** what the build has whichever tyre, above\n");
    put_findings(layout, &list);
}

void page_markdown_options(const struct layout *layout)
{
    struct finding_list deciding;
    const struct finding_list also = answer_also_shared(layout);
    const char *build = answer_build(layout, &deciding);
    if (build != NULL) {
        put_heading(layout, build);
        put_findings(layout, &deciding);
    }
    for (size_t i = 0; i < layout->plan->count; i++)
        if (answer_tells(layout, layout->order[i]))
            put_option(layout, layout->order[i]);
    if (also.count > 0) {
        put_heading(layout, answer_shared_title);
        put_findings(layout, &also);
    }
    outbuf_char(layout->out, '\n');
}

void page_markdown_answer(const struct layout *layout)
{
    outbuf_text(layout->out, "# ");
    put(layout, answer_title(layout));
    outbuf_text(layout->out, "\n\n");
    put_table(layout);
    page_markdown_options(layout);
}
