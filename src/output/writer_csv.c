/* RFC 4180, with a single line feed at the end of a line, as Unix tools expect it. */
#include "output/writer.h"

#include "output/number.h"

/* Section 2, rules 5 to 7. The separators are those that csv_separator() and a stream's heading
 * give. */
static bool needs_quotes(struct span text, char separator)
{
    static const bool may_need[256] = {
        ['"'] = true, ['\n'] = true, ['\r'] = true, [','] = true, [';'] = true, ['\t'] = true};
    enum { LONG = 32 }; /* most often with a separator, near its beginning */
    if (text.length >= LONG && memchr(text.at, separator, text.length) != NULL)
        return true;
    for (size_t i = 0; i < text.length; i++) {
        char c = text.at[i];
        if (may_need[(unsigned char)c] && (c == separator || c == '"' || c == '\n' || c == '\r'))
            return true;
    }
    return false;
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
    if (needs_quotes(text, separator))
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

const struct writer_functions writer_csv = {"csv", begin, row, end};
