#include "cli/row_stream.h"

#include <stdio.h>
#include <unistd.h>

#include "base/diagnostics.h"
#include "base/seldom.h"
#include "base/utf8.h"
#include "cli/csv_heading.h"
#include "cli/input.h"
#include "cli/row_cache.h"
#include "cli/stream.h"
#include "size/designation_suggest.h"

enum { ROW_ROOM = 8192 };

struct row_stream {
    struct arena *arena;
    const struct options *options;
    struct rows_out rows;
    struct row_cache *cache;
    row_filler fill;
    void *context;
    size_t items, unread, too_long; /* too_long: records with more fields than the heading */
    /* of a CSV */
    size_t column;
    struct csv_heading heading;
    char *field; /* room for any of a record, for json */
    bool header_read, stopped, json;
};

/* Room for a whole row, so that what is written can be looked at again. */
static void make_room(struct outbuf *out)
{
    (void)outbuf_room(out, ROW_ROOM);
}

/* Only rows that were read are kept: a fault is computed, and counted, each time. */
SELDOM static bool remembered(struct row_stream *stream, struct span designation)
{
    struct outbuf *out = &stream->rows.sink.out;
    uint64_t key = row_cache_key(designation);
    if (row_cache_write(stream->cache, key, designation, out))
        return true;
    size_t start = out->used;
    bool read_well = stream->fill(designation, &stream->rows, stream->context);
    if (read_well && out->used > start)
        row_cache_keep(stream->cache, key, designation,
                       (struct span){out->data + start, out->used - start});
    return read_well;
}

static void write_row(struct row_stream *stream, struct span designation)
{
    stream->items++;
    make_room(&stream->rows.sink.out);
    bool read_well = stream->cache != NULL
                         ? remembered(stream, designation)
                         : stream->fill(designation, &stream->rows, stream->context);
    stream->unread += !read_well;
}

static bool is_blank_or_comment(struct span line)
{
    size_t i = 0;
    while (i < line.length && is_blank(line.at[i]))
        i++;
    return i == line.length || line.at[i] == '#';
}

static bool take_line(const struct stream_item *item, void *context)
{
    struct row_stream *stream = context;
    if (!(stream->options->skip_blank && is_blank_or_comment(item->text)))
        write_row(stream, item->text);
    return true;
}

/* The header of the computed columns, or a row of them, ends as the input's record did. */
static void end_as(struct outbuf *out, struct span line_end)
{
    if (out->used > 0 && out->data[out->used - 1] == '\n')
        out->used--;
    outbuf_put(out, line_end.length > 0 ? line_end : span_of("\n"));
}

static bool find_column(struct row_stream *stream)
{
    struct span wanted = span_of(stream->options->column);
    enum heading_found found = csv_heading_find(&stream->heading, wanted, &stream->column);
    if (found != HEADING_FOUND)
        diagnostics_plain(
            "the heading of standard input has %s \"%s\"; %s",
            found == HEADING_TWICE ? "more than one column" : "no column", wanted.at,
            csv_heading_near(stream->arena, &stream->heading, wanted, "expected one of its names"));
    return found == HEADING_FOUND;
}

/* Keys of one object differ. */
static bool has_own_names(const struct csv_heading *heading)
{
    size_t index;
    for (size_t i = 0; i < heading->shape.fields; i++)
        if (csv_heading_find(heading, span_of(heading->names[i]), &index) == HEADING_TWICE) {
            diagnostics_plain("the heading of standard input has more than one column \"%s\"; "
                              "expected names that differ, for json",
                              heading->names[i]);
            return false;
        }
    return true;
}

/* Names of ours that the input has too are told apart from them. */
static void set_own_names(struct row_stream *stream)
{
    struct column_choice *choice = &stream->rows.choice;
    for (size_t i = 0; i < choice->count; i++) {
        const char *name = choice->headings[i].name;
        choice->headings[i].name = csv_heading_own(stream->arena, &stream->heading, name);
        if (!stream->options->quiet)
            csv_heading_tell_own(name, choice->headings[i].name);
    }
}

static bool take_header(struct row_stream *stream, const struct stream_item *item)
{
    struct outbuf *out = &stream->rows.sink.out;
    stream->header_read = true;
    stream->heading = csv_heading_read(stream->arena, item->text, &item->shape);
    stream->stopped = !csv_heading_is_text(item->text, input_name("-")) || !find_column(stream) ||
                      (stream->json && !has_own_names(&stream->heading));
    if (stream->stopped)
        return false;
    set_own_names(stream);
    if (stream->json)
        return true;
    stream->rows.writer.options.separator = item->shape.separator;
    put_data(out, item->text);
    outbuf_char(out, item->shape.separator);
    make_room(out);
    writer_begin_again(&stream->rows.writer);
    end_as(out, item->line_end);
    return true;
}

/* The input's own fields as members, what is too much with the last one; then ours, whose opening
 * brace goes. */
static void write_object(struct row_stream *stream, const struct stream_item *item, size_t fields,
                         struct span designation)
{
    struct outbuf *out = &stream->rows.sink.out;
    struct span rest = item->text;
    for (size_t i = 0; i < item->shape.fields; i++) {
        outbuf_char(out, i == 0 ? '{' : ',');
        json_put_string(out, span_of(stream->heading.names[i]));
        outbuf_char(out, ':');
        if (i >= fields) {
            outbuf_text(out, "null");
        } else if (i + 1 == item->shape.fields && fields > item->shape.fields) {
            json_put_string(out, rest);
            stream->too_long++;
        } else {
            json_put_string(out, csv_next_field(&rest, &item->shape, stream->field));
        }
    }
    outbuf_char(out, ',');
    make_room(out);
    size_t at = out->used;
    write_row(stream, designation);
    if (out->used > at)
        memmove(out->data + at, out->data + at + 1, --out->used - at);
}

/* The input's own fields, as many as the heading has: empty ones where there are fewer, and where
 * there are more, the last one quoted with what is too much, so that nothing is lost or stands
 * under another heading. */
static void put_fields(struct row_stream *stream, const struct stream_item *item, size_t fields)
{
    struct outbuf *out = &stream->rows.sink.out;
    const struct csv_shape *shape = &item->shape;
    struct span text = item->text;
    if (fields > shape->fields) {
        size_t kept = csv_length_of_fields(text, shape, shape->fields - 1);
        kept += shape->fields > 1; /* with the separator behind it */
        put_data(out, (struct span){text.at, kept});
        csv_put_quoted(out, (struct span){text.at + kept, text.length - kept});
        stream->too_long++;
        return;
    }
    put_data(out, text);
    for (; fields < shape->fields; fields++)
        outbuf_char(out, shape->separator);
}

static bool take_record(const struct stream_item *item, void *context)
{
    struct row_stream *stream = context;
    struct outbuf *out = &stream->rows.sink.out;
    if (item->cut) {
        diagnostics_plain("a record of standard input is longer than %d bytes; it ends here",
                          STREAM_BUFFER);
        stream->stopped = true;
        return false;
    }
    if (item->line_end.length == 0 && csv_quote_open(item->text, &item->shape)) {
        diagnostics_plain("the last record of standard input does not close its quote; expected a "
                          "second quote for every one that opens");
        stream->stopped = true;
        return false;
    }
    if (!stream->header_read)
        return take_header(stream, item);
    char field[UNREAD_SIZE];
    size_t fields = csv_count_fields(item->text, &item->shape);
    struct span designation =
        csv_field_cut(item->text, &item->shape, stream->column, field, sizeof field);
    if (designation.at == NULL)
        designation.at = field;
    if (stream->json) {
        write_object(stream, item, fields, designation);
        return true;
    }
    put_fields(stream, item, fields);
    outbuf_char(out, item->shape.separator);
    make_room(out);
    write_row(stream, designation);
    end_as(out, item->line_end);
    return true;
}

static enum exit_status status_of(const struct row_stream *stream)
{
    bool quiet = stream->options->quiet;
    if (stream->too_long > 0 && !quiet)
        tell("tyresum: %zu of %zu records have more fields than the heading; the last heading "
             "has the rest, in quotes",
             stream->too_long, stream->items);
    if (stream->unread > 0 && !quiet)
        tell("tyresum: %zu of %zu lines could not be read; their rows say why", stream->unread,
             stream->items);
    return stream->unread + stream->too_long > 0 ? EXIT_LINES_UNREAD : EXIT_COMPUTED;
}

static bool options_agree(const struct options *options, bool csv)
{
    if (csv && options->column == NULL) {
        diagnostics_plain("--from csv needs --column with the heading that the sizes stand under");
        return false;
    }
    if (!csv && options->column != NULL) {
        diagnostics_plain("--column goes with --from csv; expected both");
        return false;
    }
    if (csv && span_is(span_of(options->format), "markdown")) {
        diagnostics_plain("--from csv gives csv or json; leave --format out");
        return false;
    }
    return true;
}

enum exit_status row_stream_run(struct arena *arena, const struct options *options,
                                const struct column *columns, size_t count, row_filler fill,
                                void *context, bool remember)
{
    bool csv = options->from == 1;
    if (!options_agree(options, csv) || sink_would_replace(STDIN_FILENO, input_name("-")))
        return EXIT_INPUT_WRONG;
    struct options effective = *options;
    bool json = csv && span_is(span_of(options->format), "json");
    if (csv && !json) {
        effective.format = "csv";
        effective.no_header = true; /* written behind the input's own */
    }
    struct row_stream *stream = arena_allocate(arena, sizeof *stream);
    stream->arena = arena;
    stream->options = options;
    stream->json = json;
    if (json)
        stream->field = arena_allocate(arena, STREAM_BUFFER + 1);
    stream->fill = fill;
    stream->context = context;
    stream->cache = remember ? row_cache_new(arena) : NULL;
    enum exit_status begun = rows_begin(arena, &stream->rows, &effective, columns, count, true);
    if (begun != EXIT_COMPUTED)
        return begun;
    bool read_well =
        stream_items(STDIN_FILENO, input_name("-"), csv ? STREAM_RECORDS : STREAM_LINES,
                     &stream->rows.sink.out, csv ? take_record : take_line, stream) &&
        !stream->stopped;
    if (!rows_end(&stream->rows, read_well))
        return EXIT_NOT_WRITTEN;
    return read_well ? status_of(stream) : EXIT_INPUT_WRONG;
}

void unread_text(struct span line, const struct designation_error *error, char unread[UNREAD_SIZE],
                 char message[UNREAD_MESSAGE_SIZE])
{
    size_t length = utf8_cut(line, UNREAD_SIZE - 1);
    for (size_t i = 0; i < length; i++)
        unread[i] = line.at[i] == '\0' ? '?' : line.at[i];
    unread[length] = '\0';
    char near[DESIGNATION_CANONICAL_SIZE];
    bool found = designation_suggest(line, near);
    snprintf(message, UNREAD_MESSAGE_SIZE, "column %zu: %s%s%s%s", error->column, error->message,
             found ? " (did you mean \"" : "", found ? near : "", found ? "\"?)" : "");
}
