#include "cli/stock_list.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "base/diagnostics.h"
#include "cli/csv_record.h"
#include "cli/sink.h"
#include "cli/stream.h"
#include "tables/tables_data.h"

static void add_size(const struct designation *size, struct stock_list *out)
{
    out->items[out->count++] = (struct candidate){*size};
}

static bool read_builtin(struct arena *arena, struct stock_list *out)
{
    out->items = arena_allocate_array(arena, standard_sizes_count, sizeof *out->items);
    for (size_t i = 0; i < standard_sizes_count; i++) {
        const struct standard_sizes_row *row = &standard_sizes_rows[i];
        struct designation size;
        struct designation_error error;
        if (!designation_parse(span_of(row->designation), &size, &error))
            continue; /* a test reads every row */
        if (size.load_range == 0)
            size.load_range = row->load_range[0];
        add_size(&size, out);
    }
    return true;
}

/* Reading a CSV: the heading first, then a size a record. */
struct stock_reader {
    struct arena *arena;
    const char *path, *column;
    size_t index, records, capacity;
    bool header_read, failed;
    struct stock_list *out;
};

static bool find_column(struct stock_reader *reader, const struct stream_item *heading)
{
    const char *const wanted[] = {reader->column ? reader->column : "designation", "size"};
    char *name = arena_allocate(reader->arena, heading->text.length + 1);
    for (size_t j = 0; j < (reader->column ? 1 : 2); j++) {
        struct span rest = heading->text;
        for (size_t i = 0; i < heading->shape.fields; i++) {
            csv_next_field(&rest, &heading->shape, name);
            if (strcmp(name, wanted[j]) != 0)
                continue;
            reader->index = i;
            return true;
        }
    }
    diagnostics_plain(
        "the heading of \"%s\" has no column \"%s\"; expected search: {column: ...} to "
        "name the one that the sizes stand under",
        reader->path, wanted[0]);
    return false;
}

/* A quote that is not closed hides every size behind it: the list is not what it seems to be. */
static bool is_whole(struct stock_reader *reader, const struct stream_item *item)
{
    if (!item->cut && (item->line_end.length > 0 || !csv_quote_open(item->text, &item->shape)))
        return true;
    const char *which = reader->header_read
                            ? arena_format(reader->arena, "record %zu", reader->records + 1)
                            : "the heading";
    diagnostics_plain("%s of the list \"%s\" %s; expected a second quote for every one that opens",
                      which, reader->path,
                      item->cut ? "is too long to be read" : "does not close its quote");
    reader->failed = true;
    return false;
}

static bool take_record(const struct stream_item *item, void *context)
{
    struct stock_reader *reader = context;
    if (!is_whole(reader, item))
        return false;
    if (!reader->header_read) {
        reader->header_read = true;
        reader->failed = !find_column(reader, item);
        return !reader->failed;
    }
    reader->records++;
    char field[2 * DESIGNATION_LENGTH_MAX];
    struct designation size;
    struct designation_error error;
    csv_field_cut(item->text, &item->shape, reader->index, field, sizeof field);
    if (!designation_parse(span_of(field), &size, &error)) {
        fprintf(stderr, "%s: record %zu is passed over: column %zu of \"%s\": %s\n", reader->path,
                reader->records, error.column, quotable(reader->arena, span_of(field)),
                error.message);
        return true;
    }
    reader->out->items = arena_grow(reader->arena, reader->out->items, reader->out->count,
                                    &reader->capacity, sizeof *reader->out->items);
    add_size(&size, reader->out);
    return true;
}

static bool read_file(struct arena *arena, const struct search *search, const char *path,
                      struct stock_list *out)
{
    int descriptor = open(path, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) {
        diagnostics_plain(
            "the list \"%s\" cannot be opened: %s; search: list: expects builtin or a "
            "CSV beside the build file",
            path, strerror(errno));
        return false;
    }
    struct outbuf *none = arena_allocate(arena, sizeof *none);
    outbuf_open(none, -1);
    struct stock_reader reader = {
        .arena = arena, .path = path, .column = search->column, .out = out};
    const char *name = arena_format(arena, "the list \"%s\"", path);
    bool read_well = !sink_would_replace(descriptor, name) &&
                     stream_items(descriptor, name, STREAM_RECORDS, none, take_record, &reader);
    close(descriptor);
    return read_well && !reader.failed;
}

bool stock_list_read(struct arena *arena, const struct search *search, const char *build_path,
                     struct stock_list *out)
{
    *out = (struct stock_list){NULL, 0};
    if (search->list == NULL || strcmp(search->list, "builtin") == 0)
        return read_builtin(arena, out);
    return read_file(arena, search, path_beside(arena, build_path, search->list), out);
}
