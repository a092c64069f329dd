/* tyresum tables: the reference tables, listed or printed. */
#include "tables/tables.h"

#include <math.h>
#include <string.h>

#include "base/diagnostics.h"
#include "base/nearest.h"
#include "cli/commands.h"
#include "cli/lists.h"
#include "reading/prose.h"
#include "cli/rows_out.h"
#include "size/quantity_text.h"

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
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, true, 12, priority, GET(get)                 \
    }

static const struct column list_columns[] = {
    TEXT_COLUMN("name", 0, get_name),
    {"rows", NULL, "rows", UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_NUMBER, 6, 0, GET(get_rows)},
    TEXT_COLUMN("title", 1, get_title),
    TEXT_COLUMN("certainty", 2, get_certainty),
    TEXT_COLUMN("edition", 3, get_edition),
    TEXT_COLUMN("source", 4, get_source),
};

enum { LIST_WIDTH = 100, LIST_WIDTH_LEAST = 60, TEXT_AT = 4, HANG_AT = 14 };

/* "derived", or "row by row, at worst from memory". */
static const char *certainty_text(struct arena *arena, const struct table *table)
{
    return table_certain_by_row(table)
               ? arena_format(arena, "row by row, at worst %s", table->certainty)
               : table->certainty;
}

/* What the words for it say, under what uses them. */
static void write_certainties(struct prose *prose, struct arena *arena, const char *only)
{
    const char *word;
    for (size_t i = 0; (word = certainty_word(i)) != NULL; i++)
        if (only == NULL || strcmp(word, only) == 0)
            prose_line(prose, 0, TEXT_AT,
                       arena_format(arena, "%s: %s", word, certainty_meaning(i)));
}

/* For reading, a table takes a few lines: its sources are sentences, and no column holds them. */
static void write_for_reading(struct outbuf *out, size_t width, struct arena *arena,
                              const struct table *table)
{
    struct prose prose = {.out = out, .width = width};
    prose_line(&prose, 0, TEXT_AT,
               arena_format(arena, "%s (%zu rows, %s)", table->name, table->rows,
                            certainty_text(arena, table)));
    prose_line(&prose, TEXT_AT, TEXT_AT, table->title);
    prose_line(&prose, TEXT_AT, HANG_AT, arena_format(arena, "source:   %s", table->source));
    prose_line(&prose, TEXT_AT, HANG_AT, arena_format(arena, "edition:  %s", table->edition));
}

static enum exit_status list_for_reading(struct arena *arena, const struct options *options)
{
    struct sink *sink = arena_allocate(arena, sizeof *sink);
    if (!sink_open(arena, sink, options->output))
        return EXIT_NOT_WRITTEN;
    int terminal = sink_width(sink);
    size_t width =
        terminal > LIST_WIDTH_LEAST && terminal < LIST_WIDTH ? (size_t)terminal : LIST_WIDTH;
    for (size_t i = 0; i < tables_count(); i++)
        write_for_reading(&sink->out, width, arena, table_at(i));
    outbuf_text(&sink->out, "\nLists for programs\n");
    struct prose prose = {.out = &sink->out, .width = width};
    for (size_t i = 0; i < list_count; i++)
        prose_line(&prose, 2, HANG_AT,
                   arena_format(arena, "%-11s %s", list_table[i].name, list_table[i].purpose));
    outbuf_char(&sink->out, '\n');
    write_certainties(&prose, arena, NULL);
    return sink_close(sink, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

static enum exit_status list_tables(struct arena *arena, const struct options *options)
{
    if (strcmp(options->format, "table") == 0 && options->columns == NULL)
        return list_for_reading(arena, options);
    struct rows_out *rows = arena_allocate(arena, sizeof *rows);
    enum exit_status begun = rows_begin(arena, rows, options, list_columns,
                                        sizeof list_columns / sizeof list_columns[0], false);
    if (begun != EXIT_COMPUTED)
        return begun;
    for (size_t i = 0; i < tables_count(); i++)
        rows_add(rows, table_at(i));
    return rows_end(rows, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

/* Which columns of a table are printed, in which order. */
struct shown {
    size_t count, *columns;
    bool all;
};

/* A designation's own code in tenths or hundredths of an inch is printed in inches. */
static int inch_decimals(const char *name)
{
    static const char *const endings[] = {"_tenths", "_hundredths"};
    size_t length = strlen(name);
    for (int i = 0; i < 2; i++)
        if (length > strlen(endings[i]) &&
            strcmp(name + length - strlen(endings[i]), endings[i]) == 0)
            return i + 1;
    return 0;
}

static const char *printed_name(struct arena *arena, const struct table_column *column)
{
    const char *ending = strrchr(column->name, '_');
    return inch_decimals(column->name) == 0
               ? column->name
               : arena_format(arena, "%.*s_in", (int)(ending - column->name), column->name);
}

static bool show_named(struct arena *arena, const struct table *table, struct span name,
                       struct shown *shown)
{
    struct nearest nearest = nearest_start(name);
    for (size_t i = 0; i < table->column_count; i++) {
        const char *printed = printed_name(arena, &table->columns[i]);
        if (span_is(name, printed)) {
            shown->columns[shown->count++] = i;
            return true;
        }
        nearest_try(&nearest, printed);
    }
    const char *near = nearest_found(&nearest);
    diagnostics_plain("table %s has no column \"%.*s\"; %s%s%s", table->name, (int)name.length,
                      name.at, near ? "did you mean " : "its csv heading names them",
                      near ? near : "", near ? "?" : "");
    return false;
}

static bool choose_shown(struct arena *arena, const struct table *table, const char *names,
                         struct shown *shown)
{
    size_t room = table->column_count;
    for (const char *at = names; at != NULL; at = strchr(at + 1, ','))
        room++;
    *shown = (struct shown){
        .columns = arena_allocate_array(arena, room, sizeof *shown->columns),
        .all = names == NULL,
    };
    for (size_t i = 0; shown->all && i < table->column_count; i++)
        shown->columns[shown->count++] = i;
    for (const char *at = names; at != NULL;) {
        struct span name = {at, strcspn(at, ",")};
        if (!show_named(arena, table, name, shown))
            return false;
        for (size_t i = 0; i + 1 < shown->count; i++)
            if (shown->columns[i] == shown->columns[shown->count - 1]) {
                diagnostics_plain("--columns names \"%.*s\" twice; expected each once",
                                  (int)name.length, name.at);
                return false;
            }
        at = at[name.length] == ',' ? at + name.length + 1 : NULL;
    }
    return true;
}

static void set_headings(struct arena *arena, const struct table *table, const struct shown *shown,
                         struct heading *headings)
{
    for (size_t i = 0; i < shown->count; i++) {
        const struct table_column *column = &table->columns[shown->columns[i]];
        bool text = column->type == TABLE_TEXT;
        headings[i] = (struct heading){
            .name = printed_name(arena, column),
            .title = in_words(arena, printed_name(arena, column)),
            .unit = "",
            .numeric = !text,
            .width = 12,
            /* Where a terminal is too narrow, figures stay and words go, the last ones first. */
            .priority = text && shown->all ? (int)i : 0,
        };
    }
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
    int inches = inch_decimals(described->name);
    if (inches > 0)
        return (struct cell){
            .kind = CELL_NUMBER, .value = value / pow(10, inches), .decimals = inches};
    const char *point = memchr(text, '.', length);
    int decimals = point == NULL ? 0 : (int)(text + length - point - 1);
    return (struct cell){.kind = CELL_NUMBER, .value = value, .decimals = decimals};
}

/* A table read on the page wants its source under it; rows for a program do not. */
static void write_source(struct outbuf *out, int terminal, struct arena *arena,
                         const struct table *table)
{
    struct prose prose = {.out = out, .width = terminal > 0 ? (size_t)terminal : LIST_WIDTH};
    outbuf_char(out, '\n');
    prose_line(&prose, 0, 0, table->title);
    prose_line(&prose, 0, TEXT_AT, arena_format(arena, "source: %s", table->source));
    prose_line(&prose, 0, TEXT_AT, arena_format(arena, "edition: %s", table->edition));
    prose_line(&prose, 0, TEXT_AT,
               arena_format(arena, "certainty: %s", certainty_text(arena, table)));
    write_certainties(&prose, arena, table_certain_by_row(table) ? NULL : table->certainty);
    for (const char *note = table->note; *note != '\0';) {
        struct span line = {note, strcspn(note, "\n")};
        prose_line(&prose, 0, TEXT_AT, arena_format(arena, "note: %s", arena_copy(arena, line)));
        note += line.length + (note[line.length] == '\n');
    }
}

static enum exit_status print_table(struct arena *arena, const struct options *options,
                                    const struct table *table)
{
    struct shown shown;
    if (!choose_shown(arena, table, options->columns, &shown))
        return EXIT_INPUT_WRONG;
    struct sink *sink = arena_allocate(arena, sizeof *sink);
    struct writer writer;
    struct heading *headings = arena_allocate_array(arena, shown.count, sizeof *headings);
    struct cell *cells = arena_allocate_array(arena, shown.count, sizeof *cells);
    if (!sink_open(arena, sink, options->output))
        return EXIT_NOT_WRITTEN;
    set_headings(arena, table, &shown, headings);
    struct writer_options how = {.with_header = !options->no_header,
                                 .width = options->wide ? 0 : sink_width(sink),
                                 .decimal_mark = options->decimal == 1 ? ',' : '.',
                                 .byte_order_mark = options->bom};
    writer_begin(&writer, writer_find(options->format), &sink->out, arena, how, headings,
                 shown.count);
    for (size_t row = 0; row < table->rows; row++) {
        for (size_t i = 0; i < shown.count; i++)
            cells[i] = cell_of(arena, table, row, shown.columns[i]);
        writer_row(&writer, cells);
    }
    writer_end(&writer);
    if (strcmp(options->format, "table") == 0)
        write_source(&sink->out, how.width, arena, table);
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
    const struct list *list = list_find(name);
    if (list != NULL)
        return list_print(arena, options, list);
    struct nearest nearest = nearest_start(span_of(name));
    for (size_t i = 0; i < list_count; i++)
        nearest_try(&nearest, list_table[i].name);
    for (size_t i = 0; i < tables_count(); i++)
        nearest_try(&nearest, table_at(i)->name);
    const char *near = nearest_found(&nearest);
    diagnostics_plain("there is no table \"%s\"; %s%s%s", name,
                      near ? "did you mean " : "`tyresum tables` lists them", near ? near : "",
                      near ? "?" : "");
    return EXIT_INPUT_WRONG;
}
