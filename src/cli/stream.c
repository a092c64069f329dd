#include "cli/stream.h"

#include <errno.h>
#include <unistd.h>

#include "base/diagnostics.h"
#include "base/utf8.h"
#include "cli/input.h"
#include "size/designation_suggest.h"

enum { READ_AT_ONCE = 256 * 1024, ENCODING_BYTES = 4 };

struct item_reader {
    char data[STREAM_BUFFER];
    size_t start, end;
    enum stream_kind kind;
    struct stream_item item; /* that is given; its shape stays, once the heading has been read */
    bool skipping;           /* the rest of an item that was too long */
    bool (*take)(const struct stream_item *item, void *context);
    void *context;
};

/* Fields of the heading may end with any separator; what they end with in all other records is
 * what the heading shows. */
static bool separates(const struct item_reader *reader, char byte)
{
    return reader->item.shape.fields > 0 ? byte == reader->item.shape.separator
                                    : byte == ',' || byte == ';' || byte == '\t';
}

/* The line feed that ends the item at the start of the text, or NULL. */
static const char *item_end(const struct item_reader *reader, struct span text)
{
    if (text.length == 0 || reader->kind == STREAM_LINES)
        return text.length == 0 ? NULL : memchr(text.at, '\n', text.length);
    const char *from = text.at, *end = text.at + text.length;
    struct csv_place place = {false, false, false};
    while (from < end) {
        const char *stop = memchr(from, '\n', (size_t)(end - from));
        if (stop == NULL)
            return NULL;
        if (!place.open && memchr(from, '"', (size_t)(stop - from)) == NULL)
            return stop; /* as nearly all do */
        for (const char *at = from; at < stop; at++)
            csv_step(&place, *at, separates(reader, *at));
        if (!place.open)
            return stop;
        from = stop + 1;
    }
    return NULL;
}

static bool give(struct item_reader *reader, struct span text, size_t line_feed, bool cut)
{
    struct stream_item *item = &reader->item;
    bool carriage_return = text.length > 0 && text.at[text.length - 1] == '\r' && line_feed > 0;
    text.length -= carriage_return;
    if (reader->kind == STREAM_RECORDS && item->shape.fields == 0)
        item->shape = csv_shape_of(text);
    item->text = text;
    item->line_end = (struct span){text.at + text.length, carriage_return + line_feed};
    item->cut = cut;
    return reader->take(item, reader->context);
}

/* Gives every whole item in the buffer; what is left moves to its start. */
static bool give_whole_items(struct item_reader *reader)
{
    bool go_on = true;
    while (go_on) {
        struct span text = {reader->data + reader->start, reader->end - reader->start};
        const char *stop = item_end(reader, text);
        if (stop == NULL)
            break;
        text.length = (size_t)(stop - text.at);
        reader->start += text.length + 1;
        if (!reader->skipping)
            go_on = give(reader, text, 1, false);
        reader->skipping = false;
    }
    memmove(reader->data, reader->data + reader->start, reader->end - reader->start);
    reader->end -= reader->start;
    reader->start = 0;
    if (go_on && reader->end == STREAM_BUFFER) {
        if (!reader->skipping)
            go_on = give(reader, (struct span){reader->data, reader->end}, 0, true);
        reader->skipping = true;
        reader->end = 0;
    }
    return go_on;
}

/* More of the input; 0 at its end, -1 with a message where it cannot be read. */
static ssize_t read_more(struct item_reader *reader, int descriptor, const char *name)
{
    size_t room = STREAM_BUFFER - reader->end;
    ssize_t got = input_read(descriptor, reader->data + reader->end,
                             room < READ_AT_ONCE ? room : READ_AT_ONCE);
    if (got < 0)
        diagnostics_plain("%s cannot be read: %s", name, strerror(errno));
    return got;
}

/* Looks at the first bytes: a mark is passed over, another encoding refused. */
static bool begin(struct item_reader *reader, const char *name)
{
    const char *encoding = other_encoding((struct span){reader->data, reader->end});
    if (encoding != NULL)
        diagnostics_plain(OTHER_ENCODING, name, encoding);
    if (reader->end >= 3 && memcmp(reader->data, "\xEF\xBB\xBF", 3) == 0)
        reader->start = 3;
    return encoding == NULL;
}

bool stream_items(int descriptor, const char *name, enum stream_kind kind, struct outbuf *out,
                  bool (*take)(const struct stream_item *item, void *context), void *context)
{
    static struct item_reader reader; /* too large for the stack; one stream a run */
    bool eager = out->eager || out->terminal, first = true;
    reader.start = reader.end = 0;
    reader.kind = kind;
    reader.skipping = false;
    reader.item.shape = (struct csv_shape){'\0', 0};
    reader.take = take;
    reader.context = context;
    for (;;) {
        ssize_t got = read_more(&reader, descriptor, name);
        if (got < 0)
            return false;
        if (got == 0)
            break;
        reader.end += (size_t)got;
        if (first && reader.end < ENCODING_BYTES)
            continue;
        if (first && !begin(&reader, name))
            return false;
        first = false;
        if (!give_whole_items(&reader) || out->error != 0)
            return true;
        if (eager)
            outbuf_flush(out);
    }
    if (first && !begin(&reader, name))
        return false;
    if (reader.end > reader.start && !reader.skipping) {
        /* Less than ENCODING_BYTES in all have not been given yet. */
        if (!give_whole_items(&reader))
            return true;
        if (reader.end > 0)
            give(&reader, (struct span){reader.data, reader.end}, 0, false);
    }
    return true;
}

void argument_unread(struct arena *arena, const char *text, const char *name,
                     const struct designation_error *error)
{
    struct diagnostics diagnostics = {.arena = arena, .source_name = name, .source = span_of(text)};
    char near[DESIGNATION_CANONICAL_SIZE];
    bool found = designation_suggest(span_of(text), near);
    diagnostics_add(&diagnostics, (struct mark){.line = 1, .column = error->column}, error->length,
                    "%s%s%s%s", error->message, found ? " (did you mean \"" : "", found ? near : "",
                    found ? "\"?)" : "");
    diagnostics_print(&diagnostics);
}
