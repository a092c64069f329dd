/* tablegen OUTDIR TABLE.csv...: compiles the reference tables in. A HOST program (plain C11,
 * built with CC_FOR_BUILD): it runs while the project is built and is never installed.
 *
 * A table file is RFC 4180 CSV in printable ASCII, one record a line, led by comment lines:
 *
 *     # title: Load index and load
 *     # source: the publication
 *     # edition: the date or series of it
 *     # certainty: a word of certainty.h; that of the least sure row, where rows have their own
 *     # note: any number of these, also none
 *     # types: integer, number            one a column: integer, number, text
 *     # key: unique                       optional: the first column holds no cell twice
 *     # key: named                        the same, and an enum has a name for each of its cells
 *     load_index,load_kg
 *     0,45
 *
 * Numbers are plain decimals in their shortest spelling (46.2, not 46.20, +46.2 or 4.62e1), so
 * that the text of a cell can be had back from its value. They are copied as text into the
 * generated C, so the compiled double is the one nearest to the decimal of the file.
 *
 * Written are OUTDIR/tables_data.h and OUTDIR/tables_data.c. Anything that is not as above is
 * refused with FILE:LINE, on exit status 1. */
#include "tablegen.h"
#include "certainty.h"

#include <errno.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
    TABLES_MAX = 64,
    NAME_MAX_LENGTH = 39,  /* TABLE_NAME_SIZE of tables.h, less the NUL */
    CELL_MAX_LENGTH = 511, /* TABLE_CELL_SIZE of tables.h, less the NUL */
    DIGITS_MAX = 15,       /* decimals of so many digits come back unchanged from a double */
    DECIMALS_MAX = 9,      /* TABLE_DECIMALS_MAX of tables.h */
    INTEGER_DIGITS_MAX = 9
};

static const char *const type_names[TYPE_COUNT] = {"integer", "number", "text"};
#define CERTAINTY_WORD(word, meaning) word,
static const char *const certainties[] = {CERTAINTIES(CERTAINTY_WORD)};
enum { CERTAINTY_COUNT = sizeof certainties / sizeof *certainties };
const char *const field_names[FIELD_COUNT] = {"title", "source", "edition", "certainty"};

static _Noreturn void refuse(const struct table *table, const char *format, ...)
{
    va_list arguments;
    fprintf(stderr, "%s:%zu: error: ", table->path, table->line);
    va_start(arguments, format);
    vfprintf(stderr, format, arguments);
    va_end(arguments);
    fputc('\n', stderr);
    exit(1);
}

_Noreturn void fail(const char *path)
{
    fprintf(stderr, "tablegen: %s: %s\n", path, strerror(errno));
    exit(1);
}

void *grown(void *memory, size_t size)
{
    void *bigger = realloc(memory, size);
    if (!bigger)
        fail("memory");
    return bigger;
}

static char *copy(const char *text, size_t length)
{
    char *out = grown(NULL, length + 1);
    memcpy(out, text, length);
    out[length] = '\0';
    return out;
}

static char *read_file(const char *path)
{
    FILE *file = fopen(path, "rb");
    char *text = NULL;
    size_t length = 0, got;
    if (!file)
        fail(path);
    do {
        text = grown(text, length + 4096 + 1);
        got = fread(text + length, 1, 4096, file);
        length += got;
    } while (got > 0);
    if (ferror(file))
        fail(path);
    fclose(file);
    text[length] = '\0';
    if (strlen(text) != length) {
        fprintf(stderr, "%s:1: error: the file holds a NUL byte; expected text\n", path);
        exit(1);
    }
    return text;
}

static bool digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool identifier(const char *text)
{
    size_t length = strspn(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_");
    return length > 0 && length <= NAME_MAX_LENGTH && text[length] == '\0' && !digit(text[0]);
}

/* The part behind "# KEY:", blanks cut off, or NULL. */
static const char *comment_value(const char *line, const char *key)
{
    const char *at = line + 1 + strspn(line + 1, " ");
    size_t length = strlen(key);
    if (strncmp(at, key, length) != 0 || at[length] != ':')
        return NULL;
    return at + length + 1 + strspn(at + length + 1, " ");
}

static void read_types(struct table *table, const char *at)
{
    if (table->type_count > 0)
        refuse(table, "a second types line; expected one");
    for (;;) {
        size_t length = strcspn(at, ", "), type = 0;
        while (type < TYPE_COUNT &&
               (strlen(type_names[type]) != length || strncmp(at, type_names[type], length) != 0))
            type++;
        if (type == TYPE_COUNT)
            refuse(table, "\"%.*s\" is not a type; expected integer, number or text", (int)length,
                   at);
        if (table->type_count == COLUMNS_MAX)
            refuse(table, "more than %d columns", COLUMNS_MAX);
        table->columns[table->type_count++].type = (enum type)type;
        at += length;
        at += strspn(at, " ");
        if (*at == '\0')
            return;
        if (*at != ',')
            refuse(table, "a comma is expected between two types");
        at += 1 + strspn(at + 1, " ");
    }
}

static void add_note(struct table *table, const char *value)
{
    size_t before = table->note ? strlen(table->note) + 1 : 0;
    table->note = grown(table->note, before + strlen(value) + 1);
    if (before > 0)
        table->note[before - 1] = '\n';
    strcpy(table->note + before, value);
}

static void read_comment(struct table *table, const char *line)
{
    const char *value;
    for (int field = 0; field < FIELD_COUNT; field++) {
        if (!(value = comment_value(line, field_names[field])))
            continue;
        if (table->fields[field])
            refuse(table, "a second %s line; expected one", field_names[field]);
        if (*value == '\0')
            refuse(table, "the %s is empty", field_names[field]);
        table->fields[field] = copy(value, strlen(value));
        return;
    }
    if ((value = comment_value(line, "types")))
        read_types(table, value);
    else if ((value = comment_value(line, "note")))
        add_note(table, value);
    else if ((value = comment_value(line, "key")) && strcmp(value, "unique") == 0)
        table->key_unique = true;
    else if (value && strcmp(value, "named") == 0)
        table->key_unique = table->key_named = true;
    else
        refuse(table, "a comment line that is none of title, source, edition, certainty, note, "
                      "types, \"key: unique\", \"key: named\"");
}

/* The place of a word among the certainties, the surest first. */
static size_t certainty_rank(const struct table *table, const char *word)
{
    for (size_t rank = 0; rank < CERTAINTY_COUNT; rank++)
        if (strcmp(word, certainties[rank]) == 0)
            return rank;
    refuse(table, "the certainty is \"%s\"; expected one of the words of certainty.h, such as %s",
           word, certainties[0]);
}

static void check_fields(const struct table *table)
{
    for (int field = 0; field < FIELD_COUNT; field++)
        if (!table->fields[field])
            refuse(table, "no \"# %s:\" line above the header row", field_names[field]);
    if (table->type_count == 0)
        refuse(table, "no \"# types:\" line above the header row");
    certainty_rank(table, table->fields[CERTAINTY]);
}

/* A column of certainties: `certainty`, or one that ends in it after an underscore. */
static bool of_certainty(const char *column)
{
    static const char word[] = "certainty";
    const char *at = strstr(column, word);
    return at && at[sizeof word - 1] == '\0' && (at == column || at[-1] == '_');
}

/* A table is as sure as the least sure of its rows; where there is no figure, the cell is empty. */
static void check_certainty(const struct table *table)
{
    size_t of_table = certainty_rank(table, table->fields[CERTAINTY]), least = 0;
    bool own = false;
    for (size_t i = 0; i < table->row_count * table->column_count; i++)
        if (of_certainty(table->columns[i % table->column_count].name) && *table->cells[i]) {
            size_t rank = certainty_rank(table, table->cells[i]);
            least = rank > least ? rank : least;
            own = true;
        }
    if (own && least != of_table)
        refuse(table, "the certainty of the table is %s and that of its least sure row %s",
               certainties[of_table], certainties[least]);
}

/* Cuts one RFC 4180 cell off the line, unquoted; *at then stands on the comma or the end. */
static char *read_cell(const struct table *table, const char **at)
{
    const char *from = *at;
    char *cell = grown(NULL, strlen(from) + 1);
    size_t length = 0;
    if (*from != '"') {
        length = strcspn(from, ",");
        if (memchr(from, '"', length))
            refuse(table, "a quotation mark inside a cell that is not quoted");
        memcpy(cell, from, length);
        from += length;
    } else {
        for (from++; *from != '"' || from[1] == '"'; from++) {
            if (*from == '\0')
                refuse(table, "a quoted cell is not closed on its line");
            from += *from == '"';
            cell[length++] = *from;
        }
        from++;
        if (*from != ',' && *from != '\0')
            refuse(table, "text behind the closing quotation mark of a cell");
    }
    if (length > CELL_MAX_LENGTH)
        refuse(table, "a cell of %zu characters; at most %d fit", length, CELL_MAX_LENGTH);
    cell[length] = '\0';
    *at = from;
    return cell;
}

/* Reads a line's cells into *cells; their number must be that of the types. */
static void read_cells(const struct table *table, const char *line, char *cells[COLUMNS_MAX])
{
    size_t count = 0;
    for (const char *at = line;; at++) {
        char *cell = read_cell(table, &at);
        if (count < table->type_count)
            cells[count] = cell;
        count++;
        if (*at == '\0')
            break;
    }
    if (count != table->type_count)
        refuse(table, "%zu cells; the types line says %zu", count, table->type_count);
}

static void read_header(struct table *table, const char *line)
{
    char *names[COLUMNS_MAX];
    check_fields(table);
    read_cells(table, line, names);
    table->column_count = table->type_count;
    for (size_t i = 0; i < table->column_count; i++) {
        if (!identifier(names[i]))
            refuse(table, "the column name \"%s\" is not an identifier of at most %d characters",
                   names[i], NAME_MAX_LENGTH);
        for (size_t k = 0; k < i; k++)
            if (strcmp(names[k], names[i]) == 0)
                refuse(table, "two columns are named \"%s\"", names[i]);
        table->columns[i].name = names[i];
    }
}

static void check_integer(const struct table *table, const char *cell)
{
    size_t digits = strspn(cell, "0123456789");
    if (digits == 0 || cell[digits] != '\0' || digits > INTEGER_DIGITS_MAX ||
        (cell[0] == '0' && digits > 1))
        refuse(table, "\"%s\" is not a whole number from 0 up (-1 stands for an empty cell)", cell);
}

static void check_number(const struct table *table, struct column *column, const char *cell)
{
    const char *whole = cell + (*cell == '-');
    size_t digits = strspn(whole, "0123456789"), decimals = 0;
    const char *end = whole + digits;
    if (*end == '.') {
        decimals = strspn(end + 1, "0123456789");
        if (decimals == 0 || end[decimals] == '0')
            refuse(table, "\"%s\" is not the shortest spelling of a plain decimal", cell);
        end += 1 + decimals;
    }
    if (digits == 0 || *end != '\0')
        refuse(table, "\"%s\" is not a plain decimal number", cell);
    if ((whole[0] == '0' && digits > 1) || strcmp(cell, "-0") == 0)
        refuse(table, "\"%s\" is not the shortest spelling of a plain decimal", cell);
    if ((int)decimals > column->decimals)
        column->decimals = (int)decimals;
    if (digits > column->whole)
        column->whole = digits;
    if (column->whole + (size_t)column->decimals > DIGITS_MAX || decimals > DECIMALS_MAX)
        refuse(table, "\"%s\" has too many digits for its column", cell);
}

static void check_key(const struct table *table, const char *key)
{
    if (*key == '\0')
        refuse(table, "an empty cell in the key column");
    for (size_t row = 0; row < table->row_count; row++)
        if (strcmp(table->cells[row * table->column_count], key) == 0)
            refuse(table, "the key \"%s\" was used before", key);
    if (table->key_named && !identifier(key))
        refuse(table, "the key \"%s\" is not an identifier", key);
}

static void read_row(struct table *table, const char *line)
{
    char *cells[COLUMNS_MAX] = {NULL};
    read_cells(table, line, cells);
    for (size_t i = 0; i < table->column_count; i++) {
        struct column *column = &table->columns[i];
        if (column->type == TEXT && strlen(cells[i]) > column->length_max)
            column->length_max = strlen(cells[i]);
        else if (column->type == INTEGER && *cells[i])
            check_integer(table, cells[i]);
        else if (column->type == NUMBER && *cells[i])
            check_number(table, column, cells[i]);
    }
    if (table->key_unique)
        check_key(table, cells[0]);
    size_t at = table->row_count++ * table->column_count;
    table->cells = grown(table->cells, (at + table->column_count) * sizeof *table->cells);
    memcpy(table->cells + at, cells, table->column_count * sizeof *table->cells);
}

static void read_line(struct table *table, const char *line)
{
    for (const char *at = line; *at; at++)
        if (*at < ' ' || *at > '~')
            refuse(table, "a character that is not printable ASCII, at column %zu",
                   (size_t)(at - line) + 1);
    if (*line == '\0')
        refuse(table, "an empty line");
    if (table->column_count > 0)
        read_row(table, line);
    else if (*line == '#')
        read_comment(table, line);
    else
        read_header(table, line);
}

static void name_table(struct table *table)
{
    const char *slash = strrchr(table->path, '/'), *base = slash ? slash + 1 : table->path;
    const char *dot = strrchr(base, '.');
    if (!dot || strcmp(dot, ".csv") != 0)
        refuse(table, "the file's name does not end in .csv");
    table->name = copy(base, (size_t)(dot - base));
    if (!identifier(table->name))
        refuse(table, "the table's name \"%s\" is not an identifier", table->name);
}

static void read_table(struct table *table)
{
    char *text, *line, *end;
    table->line = 1;
    name_table(table);
    text = read_file(table->path);
    for (line = text; *line; line = end, table->line++) {
        size_t length = strcspn(line, "\n");
        end = line + length + (line[length] == '\n');
        line[length] = '\0';
        if (length > 0 && line[length - 1] == '\r')
            line[length - 1] = '\0';
        read_line(table, line);
    }
    if (table->row_count == 0)
        refuse(table, "the table has no rows");
    check_certainty(table);
    free(text);
}

static int by_name(const void *a, const void *b)
{
    return strcmp(((const struct table *)a)->name, ((const struct table *)b)->name);
}

int main(int count, char **arguments)
{
    static struct table tables[TABLES_MAX];
    size_t table_count = (size_t)count - 2;
    if (count < 3 || table_count > TABLES_MAX) {
        fprintf(stderr, "usage: tablegen OUTDIR TABLE.csv... (at most %d tables)\n", TABLES_MAX);
        return 1;
    }
    for (size_t i = 0; i < table_count; i++) {
        tables[i].path = arguments[i + 2];
        read_table(&tables[i]);
    }
    qsort(tables, table_count, sizeof *tables, by_name);
    for (size_t i = 1; i < table_count; i++)
        if (strcmp(tables[i - 1].name, tables[i].name) == 0)
            refuse(&tables[i], "a second table named \"%s\"", tables[i].name);
    write_header(arguments[1], tables, table_count);
    write_data(arguments[1], tables, table_count);
    return 0;
}
