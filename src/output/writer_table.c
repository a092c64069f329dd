/* The table for a terminal. Rows are kept until the end, since the widest cell sets its column;
 * a stream is written at once, in columns of fixed width. */
#include "output/writer.h"
#include "output/number.h"
#include "output/table_layout.h"
#include "output/tone.h"

static const char absent_mark[] = "-";

struct table_cell {
    struct span text;
    size_t width;
    size_t left; /* of a number: what stands in front of its decimal mark */
    bool is_number;
};

struct table_row {
    struct table_row *next;
    struct table_cell cells[];
};

struct table {
    struct table_layout layout;
    struct table_row *first, **last;
    size_t position; /* characters written in the line so far */
};

/* They would trail. */
static struct span without_blanks_at_end(struct span text)
{
    while (text.length > 0 && strchr(" \t\r\n", text.at[text.length - 1]) != NULL &&
           text.at[text.length - 1] != '\0')
        text.length--;
    return text;
}

static void put_blanks(struct outbuf *out, size_t count)
{
    static const char blanks[] = "                                ";
    for (size_t part; count > 0; count -= part) {
        part = count < sizeof blanks - 1 ? count : sizeof blanks - 1;
        outbuf_put(out, (struct span){blanks, part});
    }
}

/* Writes a text at its place in the line; where the one before was too wide for its column,
 * behind that one. */
static void put_at(struct writer *writer, size_t target, struct span text, size_t width)
{
    struct table *table = writer->state;
    if (table->position > 0 && target < table->position + COLUMN_GAP)
        target = table->position + COLUMN_GAP;
    if (table->position < target)
        put_blanks(writer->out, target - table->position);
    table->position = target > table->position ? target : table->position;
    const char *tone = tone_begin(writer->out, text);
    if (*tone != '\0')
        outbuf_text(writer->out, tone);
    put_shown(writer->out, text);
    if (*tone != '\0')
        outbuf_text(writer->out, tone_end(tone));
    table->position += width;
}

static void end_line(struct writer *writer)
{
    struct table *table = writer->state;
    outbuf_char(writer->out, '\n');
    table->position = 0;
}

static void put_of_width(struct writer *writer, size_t i, struct span text, size_t width)
{
    const struct table *table = writer->state;
    const struct layout_column *column = &table->layout.columns[i];
    size_t before =
        writer->headings[i].numeric && width < column->width ? column->width - width : 0;
    if (text.length > 0)
        put_at(writer, column->start + before, text, width);
}

static void put_in_column(struct writer *writer, size_t i, struct span text)
{
    put_of_width(writer, i, text, display_width(text));
}

static bool is_shown(const struct writer *writer, size_t i)
{
    const struct table *table = writer->state;
    return !table->layout.columns[i].left_out;
}

/* Titles end on the same line, the one above the units. */
static void put_title_line(struct writer *writer, size_t line)
{
    const struct table *table = writer->state;
    for (size_t i = 0; i < writer->columns; i++) {
        const struct layout_column *column = &table->layout.columns[i];
        if (!is_shown(writer, i))
            continue;
        size_t above = table->layout.title_lines - column->title_count;
        if (line >= above)
            put_in_column(writer, i, column->title[line - above]);
    }
    end_line(writer);
}

static bool any_unit(const struct writer *writer)
{
    for (size_t i = 0; i < writer->columns; i++)
        if (is_shown(writer, i) && writer->headings[i].unit[0] != '\0')
            return true;
    return false;
}

static void put_heading(struct writer *writer)
{
    const struct table *table = writer->state;
    for (size_t line = 0; line < table->layout.title_lines; line++)
        put_title_line(writer, line);
    if (any_unit(writer)) {
        for (size_t i = 0; i < writer->columns; i++)
            if (is_shown(writer, i))
                put_in_column(writer, i, span_of(writer->headings[i].unit));
        end_line(writer);
    }
    for (size_t i = 0; i < table->layout.width; i++)
        outbuf_char(writer->out, '-');
    end_line(writer);
}

static struct table_cell text_cell(struct span text, size_t width, bool is_number,
                                   char decimal_mark)
{
    struct table_cell cell = {.text = text, .width = width, .is_number = is_number};
    const char *mark = is_number ? memchr(text.at, decimal_mark, text.length) : NULL;
    cell.left = mark == NULL ? cell.width : (size_t)(mark - text.at);
    return cell;
}

/* number is where the text of a number goes. */
static struct table_cell cell_for(const struct writer *writer, const struct cell *cell,
                                  const struct heading *heading, char number[NUMBER_SIZE])
{
    const char mark = writer->options.decimal_mark;
    if (cell->kind == CELL_NUMBER && !cell_is_absent(cell)) {
        size_t length = number_fixed(cell->value, cell->decimals, mark, number);
        return text_cell((struct span){number, length}, length, heading->numeric, mark);
    }
    struct span text = {NULL, 0};
    if (cell->kind == CELL_TEXT)
        text = without_blanks_at_end(cell->text);
    if (cell->kind != CELL_TEXT)
        return text_cell(span_of(absent_mark), strlen(absent_mark), heading->numeric, mark);
    return text_cell(text, display_width(text), false, mark);
}

/* What the layout has no column for and may not hide: each wraps whole. */
static void put_below(struct writer *writer, const struct table_cell *cells)
{
    enum { BELOW_AT = 4 };
    struct table *table = writer->state;
    for (size_t i = 0; i < writer->columns; i++) {
        const struct heading *heading = &writer->headings[i];
        if (is_shown(writer, i) || heading->priority != PRIORITY_BELOW)
            continue;
        struct span text =
            span_of(arena_format(writer->arena, "%s %.*s %s", heading->title,
                                 (int)cells[i].text.length, cells[i].text.at, heading->unit));
        text = without_blanks_at_end(text);
        size_t width = display_width(text);
        if (table->position > 0 &&
            table->position + COLUMN_GAP + width > (size_t)writer->options.width)
            end_line(writer);
        put_at(writer, BELOW_AT, text, width);
    }
    if (table->position > 0)
        end_line(writer);
}

static void put_row(struct writer *writer, const struct table_cell *cells)
{
    const struct table *table = writer->state;
    for (size_t i = 0; i < writer->columns; i++) {
        const struct layout_column *column = &table->layout.columns[i];
        const struct table_cell *cell = &cells[i];
        if (column->left_out)
            continue;
        if (cell->is_number && cell->left + column->right <= column->width)
            put_at(writer, column->start + column->width - column->right - cell->left, cell->text,
                   cell->width);
        else
            put_of_width(writer, i, cell->text, cell->width);
    }
    end_line(writer);
    put_below(writer, cells);
}

/* A stream does not know its numbers beforehand: they end where the column ends. */
static void begin_stream(struct writer *writer)
{
    struct table *table = writer->state;
    for (size_t i = 0; i < writer->columns; i++) {
        int width = writer->headings[i].width;
        table->layout.columns[i].body = width > 0 ? (size_t)width : 0;
    }
    table_layout_set(&table->layout, writer);
    if (writer->options.with_header)
        put_heading(writer);
}

static void begin(struct writer *writer)
{
    struct table *table = arena_allocate(writer->arena, sizeof *table);
    table->layout.columns =
        arena_allocate_array(writer->arena, writer->columns, sizeof *table->layout.columns);
    table->last = &table->first;
    writer->state = table;
    if (writer->options.streaming)
        begin_stream(writer);
}

/* Of a stream, whose layout is set, what is left out is never looked at. */
static bool reads(const struct writer *writer, size_t column)
{
    return !writer->options.streaming || is_shown(writer, column);
}

/* Cell by cell, so that a stream keeps nothing. */
static void stream_row(struct writer *writer, const struct cell *cells)
{
    char number[NUMBER_SIZE];
    for (size_t i = 0; i < writer->columns; i++) {
        if (!reads(writer, i))
            continue;
        struct table_cell cell = cell_for(writer, &cells[i], &writer->headings[i], number);
        put_of_width(writer, i, cell.text, cell.width);
    }
    end_line(writer);
}

static void measure(struct layout_column *column, const struct table_cell *cell)
{
    if (cell->width > column->body)
        column->body = cell->width;
    if (cell->is_number && cell->left > column->left)
        column->left = cell->left;
    if (cell->is_number && cell->width - cell->left > column->right)
        column->right = cell->width - cell->left;
}

static void row(struct writer *writer, const struct cell *cells)
{
    if (writer->options.streaming) {
        stream_row(writer, cells);
        return;
    }
    struct table *table = writer->state;
    struct table_row *kept =
        arena_allocate(writer->arena, sizeof *kept + writer->columns * sizeof kept->cells[0]);
    for (size_t i = 0; i < writer->columns; i++) {
        char number[NUMBER_SIZE];
        kept->cells[i] = cell_for(writer, &cells[i], &writer->headings[i], number);
        kept->cells[i].text.at = arena_copy(writer->arena, kept->cells[i].text);
        measure(&table->layout.columns[i], &kept->cells[i]);
    }
    *table->last = kept;
    table->last = &kept->next;
}

/* One word of the closing line, on a new line where this one is full. */
static void put_word(struct writer *writer, const char *word, const char *after)
{
    struct table *table = writer->state;
    size_t width = strlen(word) + strlen(after);
    size_t limit = (size_t)writer->options.width;
    if (table->position > 0 && table->position + 1 + width > limit)
        end_line(writer);
    if (table->position > 0) {
        outbuf_char(writer->out, ' ');
        table->position++;
    }
    outbuf_text(writer->out, word);
    outbuf_text(writer->out, after);
    table->position += width;
}

enum { NAMED_MAX = 4 }; /* more names would outgrow the table that they stand under */

static void put_count(struct writer *writer, const char *before, size_t count)
{
    char number[NUMBER_SIZE + 1] = "";
    strcpy(number, before);
    size_t length = strlen(number);
    length += number_fixed((double)count, 0, '.', number + length);
    number[length] = '\0';
    put_word(writer, number, "");
}

static void put_left_out(struct writer *writer)
{
    static const char *const before[] = {"(left", "out", "for", "width:"};
    static const char *const counted[] = {"columns", "left", "out", "for", "width;"};
    static const char *const after[] = {"--wide", "or", "--columns", "shows", "them)"};
    size_t left = 0;
    for (size_t i = 0; i < writer->columns; i++)
        left += !is_shown(writer, i);
    bool named = left <= NAMED_MAX;
    if (!named) {
        put_count(writer, "(", left);
        put_word(writer, "of", "");
        put_count(writer, "", writer->columns);
    }
    for (size_t i = 0;
         i < (named ? sizeof before / sizeof before[0] : sizeof counted / sizeof counted[0]); i++)
        put_word(writer, named ? before[i] : counted[i], "");
    for (size_t i = 0; named && i < writer->columns; i++)
        if (!is_shown(writer, i))
            put_word(writer, writer->headings[i].name, --left > 0 ? "," : ";");
    for (size_t i = 0; i < sizeof after / sizeof after[0]; i++)
        put_word(writer, after[i], "");
    end_line(writer);
}

static void end(struct writer *writer)
{
    struct table *table = writer->state;
    if (!writer->options.streaming) {
        table_layout_set(&table->layout, writer);
        if (writer->options.with_header)
            put_heading(writer);
        for (const struct table_row *kept = table->first; kept != NULL; kept = kept->next)
            put_row(writer, kept->cells);
    }
    if (table->layout.any_left_out)
        put_left_out(writer);
}

const struct writer_functions writer_table = {"table", begin, row, end, reads};
