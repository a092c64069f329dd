#include "cli/rows_out.h"

#include <string.h>

#include "base/seldom.h"
#include "cli/commands.h"
#include "cli/row_put.h"
#include "reading/page_frame.h"
#include "reading/prose.h"

enum { ERROR_AT = 4, PAPER_WIDTH = 96 };

static struct writer_options writer_options_of(const struct options *options,
                                               const struct sink *sink, bool streaming)
{
    return (struct writer_options){
        .with_header = !options->no_header,
        .decimal_mark = options->decimal == 1 ? ',' : '.',
        .streaming = streaming,
        .width = options->wide ? 0 : sink_width(sink),
        .byte_order_mark = options->bom,
        .paper_width = PAPER_WIDTH,
    };
}

/* A stream's faults are always shown: below their rows on a terminal, unless the column was asked
 * for by name, and in their column everywhere else. */
static void place_errors(struct rows_out *out, const struct options *options)
{
    bool below = options->columns == NULL && sink_is_terminal(&out->sink) &&
                 strcmp(options->format, "table") == 0;
    struct column_choice *choice = &out->choice;
    for (size_t i = 0; i < choice->count; i++) {
        if (!span_is(span_of(choice->headings[i].name), "error"))
            continue;
        choice->headings[i].priority = 0;
        if (!below)
            return;
        struct chosen_column error = choice->items[i];
        choice->count--;
        for (; i < choice->count; i++) {
            choice->items[i] = choice->items[i + 1];
            choice->headings[i] = choice->headings[i + 1];
        }
        choice->items[i] = error;
        out->error_below = &choice->items[i];
    }
}

static void begin_writer(struct arena *arena, struct rows_out *out, const struct options *options,
                         struct sink *sink, bool streaming)
{
    if (strcmp(options->format, "table") == 0)
        sink_set_colour(sink, (enum colour_choice)options->color);
    out->cells = arena_allocate_array(arena, out->choice.count, sizeof *out->cells);
    writer_begin(&out->writer, writer_find(options->format), &sink->out, arena,
                 writer_options_of(options, sink, streaming), out->choice.headings,
                 out->choice.count);
    for (size_t i = 0; i < out->choice.count; i++)
        if (!writer_reads(&out->writer, i))
            columns_leave_out(&out->choice, i);
}

enum exit_status rows_begin(struct arena *arena, struct rows_out *out,
                            const struct options *options, const struct column *columns,
                            size_t count, bool streaming)
{
    if (!columns_choose(arena, columns, count, options, &out->choice))
        return EXIT_INPUT_WRONG;
    if (!sink_open(arena, &out->sink, options->output))
        return EXIT_NOT_WRITTEN;
    out->sink.out.eager = options->line_buffered;
    out->error_below = NULL;
    out->ended = false;
    out->page = strcmp(options->format, "html") == 0;
    if (out->page) {
        const struct command *command = command_find(options->operands[0]);
        page_begin(&out->sink.out, arena_format(arena, "%s: %s", command->name, command->purpose));
    }
    if (streaming)
        place_errors(out, options);
    begin_writer(arena, out, options, &out->sink, streaming);
    return EXIT_COMPUTED;
}

bool rows_begin_in(struct arena *arena, struct rows_out *out, const struct options *options,
                   const struct column *columns, size_t count, struct sink *sink)
{
    out->error_below = NULL;
    out->page = out->ended = false;
    if (!columns_choose(arena, columns, count, options, &out->choice))
        return false;
    begin_writer(arena, out, options, sink, false);
    return true;
}

SELDOM static void add_by_cells(struct rows_out *out, const void *row)
{
    columns_fill(&out->choice, row, out->cells);
    writer_row(&out->writer, out->cells);
    if (out->error_below == NULL)
        return;
    struct cell error = column_cell(&out->choice, out->error_below, row);
    if (error.kind != CELL_TEXT)
        return;
    struct prose prose = {.out = &out->sink.out, .width = (size_t)out->writer.options.width};
    prose_line(&prose, ERROR_AT, ERROR_AT, error.text.at); /* ends in a NUL */
}

void rows_add(struct rows_out *out, const void *row)
{
    if (!row_put(&out->writer, &out->choice, row))
        add_by_cells(out, row);
}

void rows_table_end(struct rows_out *out)
{
    if (!out->ended)
        writer_end(&out->writer);
    out->ended = true;
}

bool rows_end(struct rows_out *out, bool keep)
{
    if (keep) {
        rows_table_end(out);
        if (out->page)
            page_end(&out->sink.out);
    }
    return sink_close(&out->sink, keep);
}
