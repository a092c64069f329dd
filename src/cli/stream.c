#include "cli/stream.h"

#include <errno.h>
#include <stdio.h>
#include <unistd.h>

#include "base/diagnostics.h"

enum { STREAM_BUFFER = 256 * 1024 };

struct line_reader {
    char data[STREAM_BUFFER];
    size_t start, end;
    bool first, skipping; /* skipping: the rest of a line that was too long */
};

typedef bool (*line_taker)(struct span line, void *context);

static void give_line(struct line_reader *reader, struct span line, line_taker take, void *context,
                      struct stream_result *result)
{
    if (reader->first && line.length >= 3 && memcmp(line.at, "\xEF\xBB\xBF", 3) == 0)
        line = (struct span){line.at + 3, line.length - 3};
    reader->first = false;
    if (line.length > 0 && line.at[line.length - 1] == '\r')
        line.length--;
    result->lines++;
    result->unread += !take(line, context);
}

/* Gives every whole line in the buffer; what is left moves to its start. */
static void give_whole_lines(struct line_reader *reader, line_taker take, void *context,
                             struct stream_result *result)
{
    const char *stop;
    while ((stop = memchr(reader->data + reader->start, '\n', reader->end - reader->start)) !=
           NULL) {
        struct span line = {reader->data + reader->start,
                            (size_t)(stop - (reader->data + reader->start))};
        reader->start += line.length + 1;
        if (reader->skipping)
            reader->skipping = false;
        else
            give_line(reader, line, take, context, result);
    }
    memmove(reader->data, reader->data + reader->start, reader->end - reader->start);
    reader->end -= reader->start;
    reader->start = 0;
    if (reader->end < STREAM_BUFFER)
        return;
    if (!reader->skipping) /* longer than any designation: one row says so */
        give_line(reader, (struct span){reader->data, reader->end}, take, context, result);
    reader->skipping = true;
    reader->end = 0;
}

bool stream_lines(int descriptor, struct outbuf *out, line_taker take, void *context,
                  struct stream_result *result)
{
    static struct line_reader reader;
    bool terminal = isatty(out->descriptor);
    reader.start = reader.end = 0;
    reader.first = true;
    reader.skipping = false;
    *result = (struct stream_result){0, 0};
    while (out->error == 0) {
        ssize_t got = read(descriptor, reader.data + reader.end, STREAM_BUFFER - reader.end);
        if (got < 0 && errno == EINTR)
            continue;
        if (got < 0) {
            diagnostics_plain("standard input cannot be read: %s", strerror(errno));
            return false;
        }
        if (got == 0)
            break;
        reader.end += (size_t)got;
        give_whole_lines(&reader, take, context, result);
        if (terminal)
            outbuf_flush(out);
    }
    if (reader.end > 0 && !reader.skipping)
        give_line(&reader, (struct span){reader.data, reader.end}, take, context, result);
    return true;
}

enum exit_status stream_status(const struct stream_result *result)
{
    if (result->unread == 0)
        return EXIT_COMPUTED;
    fprintf(stderr, "tyresum: %zu of %zu lines could not be read; their rows say why\n",
            result->unread, result->lines);
    return EXIT_LINES_UNREAD;
}

void stream_error_text(struct span line, const struct designation_error *error, char *unread,
                       size_t unread_size, char *message, size_t message_size)
{
    size_t length = line.length < unread_size - 1 ? line.length : unread_size - 1;
    while (length > 0 && length < line.length && ((unsigned char)line.at[length] & 0xC0) == 0x80)
        length--;
    for (size_t i = 0; i < length; i++)
        unread[i] = line.at[i] == '\0' ? '?' : line.at[i];
    unread[length] = '\0';
    snprintf(message, message_size, "column %zu: %s", error->column, error->message);
}

bool argument_designation(struct arena *arena, const char *text, size_t number,
                          struct designation *out)
{
    struct designation_error error;
    if (designation_parse(span_of(text), out, &error))
        return true;
    struct diagnostics diagnostics = {
        .arena = arena,
        .source_name = arena_format(arena, "argument %zu", number),
        .source = span_of(text),
    };
    diagnostics_add(&diagnostics, (struct mark){1, error.column}, error.length, "%s",
                    error.message);
    diagnostics_print(&diagnostics);
    return false;
}
