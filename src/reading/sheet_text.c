#include "reading/sheet_text.h"

#include "output/tone.h"
#include "output/writer.h"
#include "reading/answer.h"
#include "reading/prose.h"
#include "reading/solution_text.h"
#include "reading/task_text.h"

enum { LABEL_AT = 3, GAP = 2, KIND_AT = 5, BOXES = 4, FAIL_AT = 11 };

static struct prose prose_of(const struct layout *layout)
{
    return (struct prose){.out = layout->out, .width = layout->width};
}

static size_t width_of(const char *text)
{
    return display_width(span_of(text));
}

/* --- the table: one line a setup, of as many columns as fit; what is left over stands below */

struct answer_table {
    const char *(*rows)[ANSWER_COLUMNS]; /* the headings first */
    size_t count;
    size_t widths[ANSWER_COLUMNS];
    size_t in_line; /* columns */
};

static size_t columns_width(const struct answer_table *table, size_t count)
{
    size_t width = 0;
    for (size_t i = 0; i < count; i++)
        width += table->widths[i] + (i > 0 ? GAP : 0);
    return width;
}

static void take_row(struct answer_table *table)
{
    const char **cells = table->rows[table->count++];
    for (size_t i = 0; i < ANSWER_COLUMNS; i++) {
        size_t width = width_of(cells[i]);
        table->widths[i] = width > table->widths[i] ? width : table->widths[i];
    }
}

static struct answer_table make_table(const struct layout *layout)
{
    struct answer_table table = {
        .rows = arena_allocate_array(layout->arena, layout->plan->count + 1, sizeof *table.rows),
        .in_line = ANSWER_COLUMNS};
    memcpy(table.rows[0], answer_headings, sizeof table.rows[0]);
    take_row(&table);
    for (size_t i = 0; i < layout->plan->count; i++) {
        answer_row(layout, layout->order[i], table.rows[table.count]);
        take_row(&table);
    }
    while (table.in_line > ANSWER_PRESSURES && columns_width(&table, table.in_line) > layout->width)
        /* other work and margin go together */
        table.in_line = table.in_line > ANSWER_WORK ? ANSWER_WORK : table.in_line - 1;
    size_t used = columns_width(&table, table.in_line);
    size_t over = used > layout->width ? used - layout->width : 0;
    size_t *tyre = &table.widths[ANSWER_TYRE];
    *tyre = over + GAP < *tyre ? *tyre - over : GAP;
    return table;
}

static void put_cells(const struct layout *layout, const struct answer_table *table, size_t row)
{
    for (size_t i = 0, owed = 0; i < table->in_line; i++) {
        const char *text = text_cut(layout->arena, table->rows[row][i], table->widths[i]);
        if (*text != '\0') {
            for (; owed > 0; owed--)
                outbuf_char(layout->out, ' ');
            const char *tone = tone_begin(layout->out, span_of(text));
            outbuf_text(layout->out, tone);
            put_shown(layout->out, span_of(text));
            outbuf_text(layout->out, tone_end(tone));
        }
        owed += table->widths[i] - width_of(text) + GAP;
    }
    outbuf_char(layout->out, '\n');
}

/* What has no room in the line, below the tyre; nothing where there is nothing to say. A setting
 * needs a word where no heading stands above it. */
static void put_below(const struct layout *layout, const struct answer_table *table, size_t row)
{
    size_t at = table->widths[ANSWER_LABEL] + GAP;
    const char *text = "";
    for (size_t i = table->in_line; i < ANSWER_COLUMNS; i++) {
        const char *cell = table->rows[row][i];
        const char *word = row > 0 && i == ANSWER_ENTER ? "enter " : "";
        if (strcmp(cell, "-") != 0)
            text = arena_format(layout->arena, "%s%s%s%s", text, *text ? "; " : "", word, cell);
    }
    struct prose prose = prose_of(layout);
    if (*text != '\0')
        prose_line(&prose, at, at, text);
}

static void put_table(const struct layout *layout)
{
    struct answer_table table = make_table(layout);
    for (size_t row = layout->with_header ? 0 : 1; row < table.count; row++) {
        put_cells(layout, &table, row);
        if (table.in_line < ANSWER_COLUMNS)
            put_below(layout, &table, row);
    }
}

/* "... planning only, see the end" where the line has room for it. */
static void put_title(const struct layout *layout)
{
    static const char warning[] = "planning only, see the end";
    const char *title = answer_title(layout);
    size_t used = width_of(title) + width_of(warning);
    put_shown(layout->out, span_of(title));
    if (used + GAP <= layout->width) {
        for (; used < layout->width; used++)
            outbuf_char(layout->out, ' ');
        outbuf_text(layout->out, warning);
    }
    outbuf_text(layout->out, "\n\n");
}

static void put_shared(const struct layout *layout, const char *text,
                       const struct finding_list *shared)
{
    struct prose prose = prose_of(layout);
    outbuf_char(layout->out, '\n');
    prose_line(&prose, 0, GAP, text);
    findings_text(layout, shared);
}

void sheet_head_text(const struct layout *layout)
{
    put_title(layout);
    put_table(layout);
}

/* --- each option */

static size_t kind_width(const struct option_outcome *outcome)
{
    size_t width = 0;
    for (size_t i = 0; i < outcome->task_count; i++) {
        size_t other = width_of(task_kind_name(task_rows[outcome->tasks[i].cure.task].kind));
        width = other > width ? other : width;
    }
    return width;
}

void tasks_text(const struct layout *layout, size_t setup, bool boxes)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    size_t kind_at = KIND_AT + (boxes ? BOXES : 0);
    size_t text_at = kind_at + kind_width(outcome) + GAP;
    for (size_t i = 0; i < outcome->task_count; i++) {
        const struct task *task = &outcome->tasks[i];
        const char *kind = task_kind_name(task_rows[task->cure.task].kind);
        struct prose prose = prose_of(layout);
        prose_begin(&prose, GAP,
                    arena_format(layout->arena, "%s%2zu %s", boxes ? "[ ] " : "", i + 1, kind),
                    text_at);
        prose_words(&prose, task_text_in_full(layout, task));
        prose_end(&prose);
    }
}

static void put_option(const struct layout *layout, size_t setup)
{
    struct finding_list list = answer_findings(layout, setup);
    struct solution_line lines[SOLUTION_LINES_MAX];
    size_t count = solution_lines(layout, setup, lines);
    struct prose prose = prose_of(layout);
    outbuf_char(layout->out, '\n');
    prose_begin(&prose, 0, option_label(layout, setup), LABEL_AT);
    prose_words(&prose, answer_heading(layout, setup));
    prose_end(&prose);
    tasks_text(layout, setup, false);
    if (answer_fails_by_build(layout, setup)) {
        prose_begin(&prose, GAP, verdict_name(VERDICT_FAIL), FAIL_AT);
        prose_words(&prose, "what the build has whichever tyre, above");
        prose_end(&prose);
    }
    findings_text(layout, &list);
    for (size_t i = 0; i < count; i++) {
        prose_begin(&prose, GAP, lines[i].label, FAIL_AT);
        prose_words(&prose, lines[i].text);
        prose_end(&prose);
    }
}

void sheet_options_text(const struct layout *layout)
{
    struct finding_list deciding;
    const struct finding_list also = answer_also_shared(layout);
    const char *build = answer_build(layout, &deciding);
    if (build != NULL)
        put_shared(layout, build, &deciding);
    for (size_t i = 0; i < layout->plan->count; i++)
        if (answer_tells(layout, layout->order[i]))
            put_option(layout, layout->order[i]);
    if (also.count > 0)
        put_shared(layout, answer_shared_title, &also);
}
