#include "cli/rows_out.h"

#include <string.h>

#include "base/known.h"
#include "cli/commands.h"
#include "output/number.h"
#include "reading/page_frame.h"
#include "reading/prose.h"

enum { COLUMNS_AT_ONCE = 128, ERROR_AT = 4, CELL_ROOM = NUMBER_SIZE + 2, PAPER_WIDTH = 96 };

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

/* Written in quotes, or not, once. */
static void put_shared(struct rows_out *out, struct shared_text *shared)
{
    struct outbuf *buffer = out->writer.out;
    const char separator = csv_separator(&out->writer);
    if (shared->csv.at == NULL || shared->separator != separator) {
        /* With room for its quotes, each doubled, it stays in one piece. */
        const char *from = outbuf_room(buffer, 2 * shared->text.length + 2 + CSV_TEXT_ROOM);
        csv_put_field(buffer, shared->text, separator);
        size_t length = (size_t)(buffer->data + buffer->used - from);
        char *copy = arena_allocate(out->writer.arena, length + 1);
        memcpy(copy, from, length);
        *shared = (struct shared_text){shared->text, {copy, length}, separator};
        return;
    }
    outbuf_put(buffer, shared->csv);
}

/* The cell of one column, where it is not written at once. Returns where the next one goes. */
static char *put_cell(struct rows_out *out, const struct chosen_column *chosen, const void *row,
                      const char *to)
{
    struct outbuf *buffer = out->writer.out;
    const void *at = (const char *)row + chosen->at;
    buffer->used = (size_t)(to - buffer->data);
    if (chosen->put == PUT_TEXT) {
        csv_put_field(buffer, *(const struct span *)at, csv_separator(&out->writer));
    } else if (chosen->put == PUT_SHARED) {
        put_shared(out, *(struct shared_text *const *)at);
    } else {
        struct cell cell = column_cell(&out->choice, chosen, row);
        csv_put_cell(&out->writer, &cell);
    }
    return outbuf_room(buffer, out->choice.count * CELL_ROOM);
}

/* What is ready and common is written at once: returns its end, or NULL for all else. */
static inline char *ready_put(const struct chosen_column *chosen, const void *at, char separator,
                              char mark, char *to)
{
    const double *value = at;
    const struct span *text = at;
    char *behind;
    if (chosen->put == PUT_TENTHS) {
        behind = number_of_raised_tenths(*value * chosen->raise, mark, to);
    } else if (chosen->put == PUT_UNITS) {
        behind = number_of_raised_units(*value * chosen->raise, to);
    } else if (chosen->put == PUT_HUNDREDTHS) {
        behind = number_of_raised_hundredths(*value * chosen->raise, mark, to);
    } else if (chosen->put == PUT_WORD) {
        memcpy(to, at, WORD_SIZE);
        return to + ((const struct word *)at)->length;
    } else if (chosen->put == PUT_TEXT) {
        return text->length == 0 ? to : csv_text(*text, separator, to);
    } else {
        return chosen->put == PUT_SHARED && *(struct shared_text *const *)at == NULL ? to : NULL;
    }
    return behind == NULL && !known(*value) ? to : behind;
}

/* What the csv writer makes of the row's cells; what is ready goes straight to its text. */
static void add_csv(struct rows_out *out, const void *row)
{
    struct outbuf *buffer = out->writer.out;
    const char separator = csv_separator(&out->writer), mark = out->writer.options.decimal_mark;
    const struct chosen_column *chosen = out->choice.items, *end = chosen + out->choice.count;
    char *to = outbuf_room(buffer, out->choice.count * CELL_ROOM);
    for (; chosen < end; chosen++) {
        char *behind = ready_put(chosen, (const char *)row + chosen->at, separator, mark, to);
        to = behind != NULL ? behind : put_cell(out, chosen, row, to);
        *to++ = separator;
    }
    to[-1] = '\n'; /* in the place of the last separator */
    buffer->used = (size_t)(to - buffer->data);
    out->writer.rows++;
}

void rows_add(struct rows_out *out, const void *row)
{
    if (out->writer.functions == &writer_csv && out->choice.count > 1 &&
        out->choice.count < COLUMNS_AT_ONCE &&
        csv_separator(&out->writer) != out->writer.options.decimal_mark) {
        add_csv(out, row);
        return;
    }
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
