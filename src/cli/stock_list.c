#include "cli/stock_list.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/diagnostics.h"
#include "cli/input.h"
#include "cli/sink.h"
#include "cli/stream.h"
#include "tables/tables_data.h"

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
        out->items[out->count++] = (struct candidate){size};
    }
    return true;
}

/* A record that was read. */
struct entry {
    struct designation size;
    const char *text; /* canonical */
    const char **carried;
    size_t record;
};

/* Reading a CSV: the heading first, then a size a record. */
struct stock_reader {
    struct arena *arena;
    const char *path, *carry_names;
    const struct build_source *source;
    const struct search *search;
    size_t index, *carry, count, capacity;
    struct entry *entries;
    bool header_read, failed;
    struct stock_list *out;
};

/* A fault of the list, where the build file names it. */
static void fault(const struct stock_reader *reader, const char *key, const char *message)
{
    build_source_fault(reader->arena, reader->source, place_of(reader->search->given, key),
                       message);
}

static bool find_column(struct stock_reader *reader, const struct csv_heading *heading)
{
    const char *column = reader->search->column;
    const char *const wanted[] = {column ? column : "designation", "size"};
    enum heading_found found;
    size_t i = 0;
    while ((found = csv_heading_find(heading, span_of(wanted[i]), &reader->index)) ==
               HEADING_MISSING &&
           column == NULL && i == 0)
        i++;
    if (found != HEADING_FOUND)
        fault(reader, column ? "column" : "list",
              arena_format(reader->arena,
                           found == HEADING_TWICE
                               ? "the heading of \"%s\" has more than one column \"%s\"; expected "
                                 "search: {column: ...} to name one"
                               : "the heading of \"%s\" has no column \"%s\"; expected search: "
                                 "{column: ...} to name the one that the sizes stand under",
                           reader->path, wanted[found == HEADING_MISSING ? 0 : i]));
    return found == HEADING_FOUND;
}

/* The columns that --carry names, by their headings as the list has them. */
static bool find_carried(struct stock_reader *reader, const struct csv_heading *heading,
                         const char *names)
{
    struct csv_heading *carry = &reader->out->carry;
    for (const char *at = names; at != NULL;) {
        struct span name = {at, strcspn(at, ",")};
        size_t *index = &reader->carry[carry->shape.fields];
        enum heading_found found = csv_heading_find(heading, name, index);
        if (found != HEADING_FOUND) {
            diagnostics_plain(
                "the heading of \"%s\" has %s \"%.*s\", which --carry names; %s", reader->path,
                found == HEADING_TWICE ? "more than one column" : "no column", (int)name.length,
                name.at,
                csv_heading_near(reader->arena, heading, name, "expected one of its names"));
            return false;
        }
        for (size_t i = 0; i < carry->shape.fields; i++)
            if (reader->carry[i] == *index) {
                diagnostics_plain("--carry names \"%.*s\" twice; expected each once",
                                  (int)name.length, name.at);
                return false;
            }
        carry->names[carry->shape.fields++] = heading->names[*index];
        at = at[name.length] == ',' ? at + name.length + 1 : NULL;
    }
    return true;
}

/* A quote that is not closed hides every size behind it: the list is not what it seems to be. */
static bool is_whole(struct stock_reader *reader, const struct stream_item *item)
{
    if (!item->cut && (item->line_end.length > 0 || !csv_quote_open(item->text, &item->shape)))
        return true;
    const char *which = reader->header_read
                            ? arena_format(reader->arena, "record %zu", reader->out->read + 1)
                            : "the heading";
    diagnostics_plain("%s of the list \"%s\" %s; expected a second quote for every one that opens",
                      which, reader->path,
                      item->cut ? "is too long to be read" : "does not close its quote");
    reader->failed = true;
    return false;
}

static bool take_heading(struct stock_reader *reader, const struct stream_item *item)
{
    struct csv_heading heading = csv_heading_read(reader->arena, item->text, &item->shape);
    reader->header_read = true;
    reader->failed =
        !csv_heading_is_text(item->text, arena_format(reader->arena, "\"%s\"", reader->path)) ||
        !find_column(reader, &heading) || !find_carried(reader, &heading, reader->carry_names);
    return !reader->failed;
}

/* The field whole, however long. */
static const char *field_of(struct arena *arena, const struct stream_item *item, size_t index)
{
    char *text = arena_allocate(arena, item->text.length + 1);
    csv_field_cut(item->text, &item->shape, index, text, item->text.length + 1);
    return text;
}

static bool pass_over(struct stock_reader *reader, const char *why)
{
    reader->out->unread++;
    tell("%s: record %zu is passed over: %s", reader->path, reader->out->read, why);
    return true;
}

static bool take_record(const struct stream_item *item, void *context)
{
    struct stock_reader *reader = context;
    struct arena *arena = reader->arena;
    if (!is_whole(reader, item))
        return false;
    if (!reader->header_read)
        return take_heading(reader, item);
    reader->out->read++;
    char text[2 * DESIGNATION_LENGTH_MAX], canonical[DESIGNATION_CANONICAL_SIZE];
    struct entry entry = {.record = reader->out->read};
    struct designation_error error;
    struct span field = csv_field_cut(item->text, &item->shape, reader->index, text, sizeof text);
    char taken[TAKEN_SIZE];
    if (!designation_read(field, &entry.size, &error, taken))
        return pass_over(reader, arena_format(arena, "column %zu of \"%s\": %s", error.column,
                                              quotable(arena, field), error.message));
    if (memchr(item->text.at, '\0', item->text.length) != NULL)
        return pass_over(reader, "a NUL byte (\\x00) stands in it; expected text");
    designation_canonical(&entry.size, canonical);
    entry.text = arena_copy(arena, span_of(canonical));
    size_t carried = reader->out->carry.shape.fields;
    entry.carried = arena_allocate_array(arena, carried + 1, sizeof *entry.carried);
    for (size_t i = 0; i < carried; i++)
        entry.carried[i] = field_of(arena, item, reader->carry[i]);
    reader->entries =
        arena_grow(arena, reader->entries, reader->count, &reader->capacity, sizeof entry);
    reader->entries[reader->count++] = entry;
    return true;
}

static int by_size(const void *left, const void *right)
{
    const struct entry *a = left, *b = right;
    int order = strcmp(a->text, b->text);
    return order != 0 ? order : a->record < b->record ? -1 : 1;
}

static int by_first_record(const void *left, const void *right)
{
    const struct entry *const *a = left, *const *b = right;
    return (*a)->record < (*b)->record ? -1 : 1;
}

/* The texts of the records of one size, behind one another. */
static const char *joined_fields(struct arena *arena, const struct entry *first,
                                 const struct entry *end, size_t column)
{
    size_t length = 1;
    for (const struct entry *entry = first; entry < end; entry++)
        length += strlen(entry->carried[column]) + 2;
    char *text = arena_allocate(arena, length), *at = text;
    for (const struct entry *entry = first; entry < end; entry++)
        at = stpcpy(stpcpy(at, entry > first ? "; " : ""), entry->carried[column]);
    return text;
}

static const char *record_numbers(struct arena *arena, const struct entry *first,
                                  const struct entry *end)
{
    enum { NUMBER_MAX = 24 };
    char *text = arena_allocate(arena, (size_t)(end - first) * NUMBER_MAX), *at = text;
    for (const struct entry *entry = first; entry < end; entry++)
        at += sprintf(at, "%s%zu", entry > first ? " " : "", entry->record);
    return text;
}

/* Each size once, in the order in which the list has them. */
static void keep_distinct(struct stock_reader *reader)
{
    struct arena *arena = reader->arena;
    struct stock_list *out = reader->out;
    const struct entry **firsts = arena_allocate_array(arena, reader->count, sizeof *firsts);
    const struct entry *end = reader->entries + reader->count;
    qsort(reader->entries, reader->count, sizeof *reader->entries, by_size);
    for (const struct entry *entry = reader->entries; entry < end; entry++)
        if (entry == reader->entries || strcmp(entry->text, entry[-1].text) != 0)
            firsts[out->count++] = entry;
    qsort(firsts, out->count, sizeof *firsts, by_first_record);
    out->items = arena_allocate_array(arena, out->count, sizeof *out->items);
    out->records = arena_allocate_array(arena, out->count, sizeof *out->records);
    out->carried = arena_allocate_array(arena, out->count, sizeof *out->carried);
    for (size_t i = 0; i < out->count; i++) {
        const struct entry *first = firsts[i], *after = first + 1;
        while (after < end && strcmp(after->text, first->text) == 0)
            after++;
        out->items[i] = (struct candidate){first->size};
        out->records[i] = record_numbers(arena, first, after);
        out->carried[i] =
            arena_allocate_array(arena, out->carry.shape.fields + 1, sizeof *out->carried[i]);
        for (size_t j = 0; j < out->carry.shape.fields; j++)
            out->carried[i][j] = joined_fields(arena, first, after, j);
    }
}

static bool holds_sizes(const struct stock_reader *reader)
{
    if (reader->count > 0)
        return true;
    fault(reader, "list",
          reader->out->unread > 0
              ? arena_format(reader->arena,
                             "none of the %zu records of the list \"%s\" could be read; expected "
                             "sizes such as 205/55R16 91V",
                             reader->out->unread, reader->path)
              : arena_format(reader->arena,
                             "the list \"%s\" is empty; expected a heading, and a size a record",
                             reader->path));
    return false;
}

static bool read_file(struct stock_reader *reader)
{
    struct arena *arena = reader->arena;
    int descriptor = open(reader->path, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) {
        fault(reader, "list",
              arena_format(arena,
                           "the list \"%s\" cannot be opened: %s; expected builtin or a CSV beside "
                           "the build file",
                           reader->path, strerror(errno)));
        return false;
    }
    struct outbuf *none = arena_allocate(arena, sizeof *none);
    outbuf_open(none, -1);
    const char *name = arena_format(arena, "the list \"%s\"", reader->path);
    bool read_well = !sink_would_replace(descriptor, name) &&
                     stream_items(descriptor, name, STREAM_RECORDS, none, take_record, reader);
    close(descriptor);
    if (!read_well || reader->failed || !holds_sizes(reader))
        return false;
    keep_distinct(reader);
    return true;
}

static size_t count_names(const char *names)
{
    size_t count = 0;
    for (const char *at = names; at != NULL; at = strchr(at + 1, ','))
        count++;
    return count;
}

bool stock_list_read(struct arena *arena, const struct search *search,
                     const struct build_source *source, const char *carry, struct stock_list *out)
{
    *out = (struct stock_list){.count = 0};
    bool builtin = search->list == NULL || strcmp(search->list, "builtin") == 0;
    if (builtin && carry != NULL)
        diagnostics_plain("--carry goes with a stock list; expected search: {list: FILE.csv}");
    if (builtin)
        return carry == NULL && read_builtin(arena, out);
    const char *build_path = source->path == NULL ? "-" : source->path;
    struct stock_reader reader = {.arena = arena,
                                  .path = path_beside(arena, build_path, search->list),
                                  .source = source,
                                  .search = search,
                                  .carry_names = carry,
                                  .out = out};
    size_t count = count_names(carry);
    reader.carry = arena_allocate_array(arena, count + 1, sizeof *reader.carry);
    out->carry.names = arena_allocate_array(arena, count + 1, sizeof *out->carry.names);
    return read_file(&reader);
}
