/* A table of GitHub Flavored Markdown, section 4.10; what Markdown or HTML give a meaning in a
 * cell is escaped (CommonMark, sections 2.4 and 6.6). Rows can come one at a time. */
#include "output/writer.h"
#include "output/markdown_text.h"
#include "output/number.h"

static void put_heading(struct writer *writer, const struct heading *heading)
{
    outbuf_char(writer->out, ' ');
    markdown_text(writer->out, span_of(heading->title));
    if (*heading->unit != '\0') {
        outbuf_text(writer->out, *heading->title ? ", " : "");
        markdown_text(writer->out, span_of(heading->unit));
    }
    outbuf_text(writer->out, " |");
}

/* The format has no table without a heading: where none is wanted, it is empty. */
static void begin(struct writer *writer)
{
    outbuf_char(writer->out, '|');
    for (size_t i = 0; i < writer->columns; i++) {
        if (writer->options.with_header)
            put_heading(writer, &writer->headings[i]);
        else
            outbuf_text(writer->out, "  |");
    }
    outbuf_text(writer->out, "\n|");
    for (size_t i = 0; i < writer->columns; i++)
        outbuf_text(writer->out, writer->headings[i].numeric ? "---:|" : "---|");
    outbuf_char(writer->out, '\n');
}

void markdown_put_value(struct writer *writer, const struct cell *cell)
{
    struct outbuf *out = writer->out;
    if (cell_is_absent(cell)) {
        outbuf_char(out, '-');
    } else if (cell->kind == CELL_TEXT) {
        markdown_text(out, cell->text);
    } else {
        char *to = outbuf_room(out, NUMBER_SIZE);
        out->used += number_fixed(cell->value, cell->decimals, writer->options.decimal_mark, to);
    }
}

static void put_cell(struct writer *writer, const struct cell *cell)
{
    outbuf_char(writer->out, ' ');
    markdown_put_value(writer, cell);
    outbuf_put(writer->out, (struct span){" |", 2});
}

static void row(struct writer *writer, const struct cell *cells)
{
    outbuf_char(writer->out, '|');
    for (size_t i = 0; i < writer->columns; i++)
        put_cell(writer, &cells[i]);
    outbuf_char(writer->out, '\n');
}

static void end(struct writer *writer)
{
    (void)writer;
}

const struct writer_functions writer_markdown = {"markdown", begin, row, end, NULL};
