/* tyresum tables: the reference tables, listed or printed. */
#include "tables/tables.h"

#include <string.h>

#include "base/diagnostics.h"
#include "base/nearest.h"
#include "cli/commands.h"
#include "cli/rows_out.h"
#include "text/quantity_text.h"

static struct column_value get_name(const void *row, bool us)
{
    (void)us;
    return (struct column_value){.text = ((const struct table *)row)->name};
}
static struct column_value get_rows(const void *row, bool us)
{
    (void)us;
    return (struct column_value){.value = (double)((const struct table *)row)->rows};
}
static struct column_value get_title(const void *row, bool us)
{
    (void)us;
    return (struct column_value){.text = ((const struct table *)row)->title};
}
static struct column_value get_source(const void *row, bool us)
{
    (void)us;
    return (struct column_value){.text = ((const struct table *)row)->source};
}
static struct column_value get_edition(const void *row, bool us)
{
    (void)us;
    return (struct column_value){.text = ((const struct table *)row)->edition};
}
static struct column_value get_certainty(const void *row, bool us)
{
    (void)us;
    return (struct column_value){.text = ((const struct table *)row)->certainty};
}

#define TEXT_COLUMN(name, priority, get)                                                           \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, true, 12, priority, get                      \
    }

static const struct column list_columns[] = {
    TEXT_COLUMN("name", 0, get_name),
    {"rows", NULL, "rows", UNIT_BARE, UNIT_BARE, 0, 0, false, 6, 0, get_rows},
    TEXT_COLUMN("title", 1, get_title),
    TEXT_COLUMN("certainty", 2, get_certainty),
    TEXT_COLUMN("edition", 3, get_edition),
    TEXT_COLUMN("source", 4, get_source),
};

static enum exit_status list_tables(struct arena *arena, const struct options *options)
{
    struct rows_out *rows = arena_allocate(arena, sizeof *rows);
    enum exit_status begun = rows_begin(arena, rows, options, list_columns,
                                        sizeof list_columns / sizeof list_columns[0], false);
    if (begun != EXIT_COMPUTED)
        return begun;
    for (size_t i = 0; i < tables_count(); i++)
        rows_add(rows, table_at(i));
    return rows_end(rows, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

static void set_headings(const struct table *table, struct heading *headings)
{
    for (size_t i = 0; i < table->column_count; i++)
        headings[i] = (struct heading){
            .name = table->columns[i].name,
            .title = table->columns[i].name,
            .unit = "",
            .numeric = table->columns[i].type != TABLE_TEXT,
            .width = 12,
        };
}

static struct cell cell_of(struct arena *arena, const struct table *table, size_t row,
                           size_t column)
{
    char text[TABLE_CELL_SIZE];
    size_t length = table_cell(table, row, column, text);
    struct span span = {text, length};
    double value;
    if (length == 0)
        return cell_absent();
    const struct table_column *described = &table->columns[column];
    if (described->type == TABLE_TEXT || decimal_read(span, &value) != length)
        return cell_text(arena_copy(arena, span));
    const char *point = memchr(text, '.', length);
    int decimals = point == NULL ? 0 : (int)(text + length - point - 1);
    return (struct cell){.kind = CELL_NUMBER, .value = value, .decimals = decimals};
}

/* A table read on the page wants its source under it; rows for a program do not. */
static void write_source(struct outbuf *out, const struct table *table)
{
    const char *const lines[] = {"\n",          table->title,   "\nsource: ",    table->source,
                                 "\nedition: ", table->edition, "\ncertainty: ", table->certainty,
                                 "\n"};
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++)
        outbuf_text(out, lines[i]);
}

static enum exit_status print_table(struct arena *arena, const struct options *options,
                                    const struct table *table)
{
    if (options->columns != NULL) {
        diagnostics_plain("`tables NAME` prints every column; leave --columns out");
        return EXIT_INPUT_WRONG;
    }
    struct sink *sink = arena_allocate(arena, sizeof *sink);
    struct writer writer;
    struct heading *headings = arena_allocate_array(arena, table->column_count, sizeof *headings);
    struct cell *cells = arena_allocate_array(arena, table->column_count, sizeof *cells);
    if (!sink_open(arena, sink, options->output))
        return EXIT_NOT_WRITTEN;
    set_headings(table, headings);
    struct writer_options how = {.with_header = !options->no_header,
                                 .decimal_mark = options->decimal == 1 ? ',' : '.'};
    writer_begin(&writer, writer_find(options->format), &sink->out, arena, how, headings,
                 table->column_count);
    for (size_t row = 0; row < table->rows; row++) {
        for (size_t column = 0; column < table->column_count; column++)
            cells[column] = cell_of(arena, table, row, column);
        writer_row(&writer, cells);
    }
    writer_end(&writer);
    if (strcmp(options->format, "table") == 0)
        write_source(&sink->out, table);
    return sink_close(sink, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

enum exit_status run_tables(struct arena *arena, const struct command *command,
                            const struct options *options)
{
    (void)command;
    if (operand_count(options) == 0)
        return list_tables(arena, options);
    const char *name = operand(options, 0);
    const struct table *table = table_find(name);
    if (table != NULL)
        return print_table(arena, options, table);
    struct nearest nearest = nearest_start(span_of(name));
    for (size_t i = 0; i < tables_count(); i++)
        nearest_try(&nearest, table_at(i)->name);
    const char *near = nearest_found(&nearest);
    diagnostics_plain("there is no table \"%s\"; %s%s%s", name,
                      near ? "did you mean " : "`tyresum tables` lists them", near ? near : "",
                      near ? "?" : "");
    return EXIT_INPUT_WRONG;
}
