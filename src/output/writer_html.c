/* A table of HTML: its first column heads the rows. On paper a column stands as a row where
 * there are fewer rows than columns. */
#include "output/markup.h"
#include "output/number.h"
#include "output/table_layout.h"
#include "output/writer.h"

#include <string.h>

struct kept_row {
    struct kept_row *next;
    const char *cells[];
};

struct html_table {
    struct kept_row *first, **last;
};

static const char *cell_words(struct writer *writer, const struct cell *cell)
{
    char number[NUMBER_SIZE];
    if (cell_is_absent(cell) || (cell->kind == CELL_TEXT && cell->text.length == 0))
        return "-";
    if (cell->kind == CELL_TEXT)
        return arena_copy(writer->arena, cell->text);
    number_fixed(cell->value, cell->decimals, writer->options.decimal_mark, number);
    return arena_copy(writer->arena, span_of(number));
}

static const char *heading_words(struct writer *writer, const struct heading *heading)
{
    return arena_format(writer->arena, "%s%s%s", heading->title,
                        *heading->title && *heading->unit ? ", " : "", heading->unit);
}

static void put_cell(struct writer *writer, const char *open, const char *text, const char *close)
{
    outbuf_text(writer->out, open);
    markup_text(writer->out, text);
    outbuf_text(writer->out, close);
}

static void put_head(struct writer *writer, const char *text, bool numeric)
{
    put_cell(writer, numeric ? "<th scope=\"col\" class=\"n\">" : "<th scope=\"col\">", text,
             "</th>");
}

static void put_value(struct writer *writer, size_t column, const char *text, bool heads)
{
    if (heads)
        put_cell(writer, "<tr><th scope=\"row\">", text, "</th>");
    else
        put_cell(writer, writer->headings[column].numeric ? "<td class=\"n\">" : "<td>", text,
                 "</td>");
}

static void begin(struct writer *writer)
{
    struct html_table *table = arena_allocate(writer->arena, sizeof *table);
    table->first = NULL;
    table->last = &table->first;
    writer->state = table;
}

static void row(struct writer *writer, const struct cell *cells)
{
    struct html_table *table = writer->state;
    struct kept_row *kept =
        arena_allocate(writer->arena, sizeof *kept + writer->columns * sizeof kept->cells[0]);
    kept->next = NULL;
    for (size_t i = 0; i < writer->columns; i++)
        kept->cells[i] = cell_words(writer, &cells[i]);
    *table->last = kept;
    table->last = &kept->next;
}

static void begin_table(struct writer *writer, const char *markup)
{
    outbuf_text(writer->out, markup);
    if (writer->options.caption != NULL)
        put_cell(writer, "<caption>", writer->options.caption, "</caption>\n");
    outbuf_text(writer->out, "<thead><tr>");
}

static const char head_end[] = "</tr></thead>\n<tbody>\n", table_end[] = "</tbody>\n</table>\n";

/* Up to and without `end`. */
static void put_turned(struct writer *writer, const struct kept_row *first,
                       const struct kept_row *end)
{
    begin_table(writer, "<table class=\"turned\">\n");
    put_head(writer, writer->headings[0].title, false);
    for (const struct kept_row *kept = first; kept != end; kept = kept->next)
        put_head(writer, kept->cells[0], true);
    outbuf_text(writer->out, head_end);
    for (size_t i = 1; i < writer->columns; i++) {
        put_value(writer, 0, heading_words(writer, &writer->headings[i]), true);
        for (const struct kept_row *kept = first; kept != end; kept = kept->next)
            put_cell(writer, "<td class=\"n\">", kept->cells[i], "</td>");
        outbuf_text(writer->out, "</tr>\n");
    }
    outbuf_text(writer->out, table_end);
}

/* In tables of as many columns as fit the paper, all about as wide. */
static void put_all_turned(struct writer *writer, const struct kept_row *first)
{
    enum { COLUMNS_MAX = 6 };
    size_t tables = (writer->rows + COLUMNS_MAX - 1) / COLUMNS_MAX;
    size_t each = (writer->rows + tables - 1) / tables;
    while (first != NULL) {
        const struct kept_row *after = first;
        for (size_t i = 0; i < each && after != NULL; i++)
            after = after->next;
        put_turned(writer, first, after);
        first = after;
    }
}

/* Characters that a column takes at the least, with the gap before it. */
static size_t column_width(struct writer *writer, const struct kept_row *first, size_t column)
{
    size_t width = longest_word(heading_words(writer, &writer->headings[column]));
    for (const struct kept_row *kept = first; kept != NULL; kept = kept->next) {
        size_t other = longest_word(kept->cells[column]);
        width = other > width ? other : width;
    }
    return width + 2;
}

/* Leaves out what the paper has no room for, the highest priority first; names it below. */
static bool *columns_shown(struct writer *writer, const struct kept_row *first)
{
    bool *shown = arena_allocate_array(writer->arena, writer->columns, sizeof *shown);
    size_t used = 0;
    for (size_t i = 0; i < writer->columns; i++) {
        shown[i] = true;
        used += column_width(writer, first, i);
    }
    while (writer->options.paper_width > 0 && used > writer->options.paper_width) {
        size_t worst = 0;
        for (size_t i = 0; i < writer->columns; i++)
            if (shown[i] &&
                (!shown[worst] || writer->headings[i].priority >= writer->headings[worst].priority))
                worst = i;
        if (writer->headings[worst].priority <= 0)
            break;
        shown[worst] = false;
        used -= column_width(writer, first, worst);
    }
    return shown;
}

static void tell_left_out(struct writer *writer, const bool *shown)
{
    const char *text = "";
    for (size_t i = 0; i < writer->columns; i++)
        if (!shown[i])
            text = arena_format(writer->arena, "%s%s%s", text, *text ? "; " : "",
                                writer->headings[i].title);
    if (*text != '\0')
        put_cell(writer, "<p>Without room here, in csv: ", text, ".</p>\n");
}

static void put_upright(struct writer *writer, const struct kept_row *first)
{
    const bool *shown = columns_shown(writer, first);
    begin_table(writer, "<table>\n");
    for (size_t i = 0; i < writer->columns; i++)
        if (shown[i])
            put_head(writer, heading_words(writer, &writer->headings[i]),
                     writer->headings[i].numeric);
    outbuf_text(writer->out, head_end);
    for (const struct kept_row *kept = first; kept != NULL; kept = kept->next) {
        for (size_t i = 0; i < writer->columns; i++)
            if (shown[i])
                put_value(writer, i, kept->cells[i], i == 0);
        outbuf_text(writer->out, "</tr>\n");
    }
    outbuf_text(writer->out, table_end);
    tell_left_out(writer, shown);
}

static void end(struct writer *writer)
{
    const struct html_table *table = writer->state;
    if (writer->options.paper_width > 0 && writer->rows > 0 && writer->rows < writer->columns)
        put_all_turned(writer, table->first);
    else
        put_upright(writer, table->first);
}

const struct writer_functions writer_html = {"html", begin, row, end, NULL};
