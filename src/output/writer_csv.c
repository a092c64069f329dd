/* RFC 4180, with a single line feed at the end of a line, as Unix tools expect it. */
#include "output/writer.h"

#include "base/eight.h"
#include "output/number.h"

/* Section 2, rules 5 to 7. Most long texts hold the separator. */
static bool needs_quotes(struct span text, char separator)
{
    const char quoted[] = {separator, '"', '\n', '\r'};
    for (size_t i = 0; i < sizeof quoted; i++)
        if (memchr(text.at, quoted[i], text.length) != NULL)
            return true;
    return false;
}

/* The highest bit of a byte is 1 where one of eight bytes needs quotes, or is another control
 * character, which no text that is common has. */
static inline uint64_t quotes_in(uint64_t bytes, char separator)
{
    uint64_t found = ascii_below(bytes, ' ') | ascii_is(bytes, separator) | ascii_is(bytes, '"');
    return found & ~bytes;
}

/* Copies eight bytes, and tells of them. */
static inline uint64_t copy_eight(const char *from, char separator, char *to)
{
    uint64_t bytes = eight_at(from);
    memcpy(to, &bytes, sizeof bytes);
    return quotes_in(bytes, separator);
}

/* Less than eight bytes, of which the middle ones may be copied twice. */
static char *copy_few(struct span text, char separator, char *to)
{
    uint64_t bytes = EIGHT('0');
    if (text.length >= 4) {
        uint32_t first, last;
        memcpy(&first, text.at, 4);
        memcpy(&last, text.at + text.length - 4, 4);
        memcpy(to, &first, 4);
        memcpy(to + text.length - 4, &last, 4);
        bytes = first | (uint64_t)last << 32;
    } else {
        for (size_t i = 0; i < text.length; i++) {
            to[i] = text.at[i];
            bytes = (bytes & UINT64_MAX >> 8) << 8 | (unsigned char)to[i];
        }
    }
    return (quotes_in(bytes, separator) & EIGHT(0x80)) != 0 ? NULL : to + text.length;
}

char *csv_text(struct span text, char separator, char to[CSV_TEXT_ROOM])
{
    const char *const after = text.at + text.length;
    uint64_t quotes = 0;
    if (text.length > CSV_TEXT_ROOM)
        return NULL;
    if (text.length < sizeof quotes)
        return copy_few(text, separator, to);
    char *const last = to + text.length - sizeof quotes;
    quotes = copy_eight(after - sizeof quotes, separator, last);
    for (; to < last; to += sizeof quotes, text.at += sizeof quotes)
        quotes |= copy_eight(text.at, separator, to);
    return (quotes & EIGHT(0x80)) != 0 ? NULL : last + sizeof quotes;
}

void csv_put_quoted(struct outbuf *out, struct span text)
{
    outbuf_char(out, '"');
    while (text.length > 0) {
        const char *quote = memchr(text.at, '"', text.length);
        size_t length = quote == NULL ? text.length : (size_t)(quote - text.at) + 1;
        put_data(out, (struct span){text.at, length});
        if (quote != NULL)
            outbuf_char(out, '"');
        text.at += length;
        text.length -= length;
    }
    outbuf_char(out, '"');
}

void csv_put_field(struct outbuf *out, struct span text, char separator)
{
    char *to = outbuf_room(out, CSV_TEXT_ROOM), *after = csv_text(text, separator, to);
    if (after != NULL)
        out->used += (size_t)(after - to);
    else if (needs_quotes(text, separator))
        csv_put_quoted(out, text);
    else
        put_data(out, text);
}

void csv_put_cell(struct writer *writer, const struct cell *cell)
{
    struct outbuf *out = writer->out;
    const char separator = csv_separator(writer), mark = writer->options.decimal_mark;
    if (cell_is_absent(cell))
        return;
    if (cell->kind == CELL_TEXT) {
        csv_put_field(out, cell->text, separator);
    } else if (mark == separator) { /* of a stream whose input has commas */
        char text[NUMBER_SIZE];
        size_t length = number_fixed(cell->value, cell->decimals, mark, text);
        csv_put_field(out, (struct span){text, length}, separator);
    } else {
        char *to = outbuf_room(out, NUMBER_SIZE);
        out->used += number_fixed(cell->value, cell->decimals, mark, to);
    }
}

static void begin(struct writer *writer)
{
    if (writer->options.byte_order_mark)
        outbuf_text(writer->out, "\xEF\xBB\xBF");
    writer->options.byte_order_mark = false; /* once, even where the heading comes later */
    if (!writer->options.with_header)
        return;
    char separator = csv_separator(writer);
    for (size_t i = 0; i < writer->columns; i++) {
        if (i > 0)
            outbuf_char(writer->out, separator);
        csv_put_field(writer->out, span_of(writer->headings[i].name), separator);
    }
    outbuf_char(writer->out, '\n');
}

static bool is_empty(const struct cell *cell)
{
    return cell_is_absent(cell) || (cell->kind == CELL_TEXT && cell->text.length == 0);
}

static void row(struct writer *writer, const struct cell *cells)
{
    char separator = csv_separator(writer);
    /* Many programs pass over an empty line, and the row would be lost. */
    if (writer->columns == 1 && is_empty(cells))
        outbuf_text(writer->out, "\"\"");
    for (size_t i = 0; i < writer->columns; i++) {
        if (i > 0)
            outbuf_char(writer->out, separator);
        csv_put_cell(writer, &cells[i]);
    }
    outbuf_char(writer->out, '\n');
}

static void end(struct writer *writer)
{
    (void)writer;
}

const struct writer_functions writer_csv = {"csv", begin, row, end, NULL};
