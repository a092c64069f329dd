#include "cli/lists.h"

#include <string.h>

#include "base/known.h"
#include "cli/column_words.h"
#include "cli/commands.h"
#include "cli/key_text.h"
#include "cli/rows_out.h"
#include "report/figures.h"

/* A row of any of them; what a list does not tell stays NULL or UNKNOWN. */
struct list_row {
    const char *name, *name_us, *command, *kind, *meaning, *example;
    enum unit_id unit, unit_us;
    double decimals, decimals_us, least, most;
};

#define LIST_TEXT(name, expression)                                                                \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct list_row *row = data;                                                         \
        (void)us;                                                                                  \
        return (struct column_value){.text = (expression)};                                        \
    }
#define LIST_NUMBER(name, expression)                                                              \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct list_row *row = data;                                                         \
        (void)us;                                                                                  \
        return (struct column_value){.value = (expression)};                                       \
    }
LIST_TEXT(get_name, row->name)
LIST_TEXT(get_name_us, row->name_us)
LIST_TEXT(get_command, row->command)
LIST_TEXT(get_kind, row->kind)
LIST_TEXT(get_meaning, row->meaning)
LIST_TEXT(get_example, row->example)
LIST_TEXT(get_unit, unit_table[row->unit].name)
LIST_TEXT(get_unit_us, unit_table[row->unit_us].name)
LIST_NUMBER(get_decimals, row->decimals)
LIST_NUMBER(get_decimals_us, row->decimals_us)

static struct column_value bound(double si, enum unit_id unit)
{
    double value = unit == UNIT_BARE || !known(si) ? si : unit_from_si(unit, si);
    int decimals = 0;
    while (decimals < 6 && known(value) &&
           fabs(value * pow(10, decimals) - round(value * pow(10, decimals))) > 1e-6)
        decimals++;
    return (struct column_value){.value = value, .decimals = decimals, .own_decimals = true};
}

static struct column_value get_least(const void *data, bool us)
{
    (void)us;
    const struct list_row *row = data;
    return bound(row->least, row->unit);
}

static struct column_value get_most(const void *data, bool us)
{
    (void)us;
    const struct list_row *row = data;
    return bound(row->most, row->unit);
}

#define TEXT(name, priority, get)                                                                  \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_TEXT, 12, priority, GET(get)          \
    }
#define NUMBER(name, priority, get)                                                                \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_NUMBER, 8, priority, GET(get)         \
    }

static const struct column quantity_columns[] = {
    TEXT("quantity", 0, get_name),
    TEXT("unit", 0, get_unit),
    TEXT("unit_us", 1, get_unit_us),
    NUMBER("decimals", 3, get_decimals),
    NUMBER("decimals_us", 4, get_decimals_us),
    TEXT("meaning", 0, get_meaning),
};
static const struct column key_columns[] = {
    TEXT("key", 0, get_name),        TEXT("kind", 2, get_kind),   TEXT("unit", 0, get_unit),
    NUMBER("least", 4, get_least),   NUMBER("most", 4, get_most), TEXT("example", 3, get_example),
    TEXT("meaning", 0, get_meaning),
};
static const struct column column_columns[] = {
    TEXT("command", 0, get_command),
    TEXT("column", 0, get_name),
    TEXT("unit", 0, get_unit),
    TEXT("column_us", 2, get_name_us),
    TEXT("unit_us", 2, get_unit_us),
    NUMBER("decimals", 3, get_decimals),
    NUMBER("decimals_us", 4, get_decimals_us),
    TEXT("meaning", 0, get_meaning),
};
static const struct column task_list_columns[] = {
    TEXT("task", 0, get_name),       TEXT("kind", 0, get_kind),       TEXT("unit", 0, get_unit),
    TEXT("unit_us", 1, get_unit_us), TEXT("meaning", 0, get_meaning),
};

static void add_quantities(struct rows_out *rows, struct arena *arena)
{
    (void)arena;
    for (size_t i = 0; i < QUANTITY_COUNT; i++) {
        const struct quantity_row *quantity = &quantity_rows[i];
        const struct list_row row = {.name = quantity->name,
                                     .meaning = quantity->title,
                                     .unit = quantity->metric,
                                     .unit_us = quantity->us,
                                     .decimals = quantity->decimals_metric,
                                     .decimals_us = quantity->decimals_us};
        rows_add(rows, &row);
    }
}

/* Each key under the path that `at` and messages give it. */
static void add_keys_of(struct rows_out *rows, struct arena *arena, const struct key_set *set,
                        const char *path)
{
    for (size_t i = 0; i < set->count; i++) {
        const struct key *key = &set->keys[i];
        bool bounded = key->min != 0 || key->max != 0;
        const struct list_row row = {
            .name = arena_format(arena, "%s%s%s", path, *path ? "." : "", key->name),
            .kind = key_kind_text(arena, key),
            .meaning = key->doc,
            .example = key->example,
            .unit = key->set == NULL ? unit_of_kind(key->unit) : UNIT_BARE,
            .least = bounded ? key->min : UNKNOWN,
            .most = bounded ? key->max : UNKNOWN};
        rows_add(rows, &row);
        if (key->set != NULL)
            add_keys_of(rows, arena, key->set, row.name);
    }
}

static void add_keys(struct rows_out *rows, struct arena *arena)
{
    add_keys_of(rows, arena, &build_file_keys, "");
}

static void add_columns(struct rows_out *rows, struct arena *arena)
{
    (void)arena;
    for (size_t i = 0; i < command_count; i++)
        for (size_t j = 0; j < *command_table[i].column_count; j++) {
            const struct column *column = &command_table[i].columns[j];
            bool number = column->kind == COLUMN_NUMBER;
            const struct list_row row = {.command = command_table[i].name,
                                         .name = column->name,
                                         .name_us = column->name_us,
                                         .meaning = column_meaning(column),
                                         .unit = column->unit,
                                         .unit_us = column->unit_us,
                                         .decimals = number ? column->decimals : UNKNOWN,
                                         .decimals_us = number ? column->decimals_us : UNKNOWN};
            rows_add(rows, &row);
        }
}

static void add_tasks(struct rows_out *rows, struct arena *arena)
{
    (void)arena;
    for (size_t i = TASK_NONE + 1; i < TASK_COUNT; i++) {
        const struct list_row row = {.name = task_rows[i].name,
                                     .kind = task_kind_name(task_rows[i].kind),
                                     .meaning = task_rows[i].title,
                                     .unit = task_rows[i].metric,
                                     .unit_us = task_rows[i].us};
        rows_add(rows, &row);
    }
}

#define LIST(name, purpose, columns, add)                                                          \
    {                                                                                              \
        name, purpose, columns, sizeof columns / sizeof columns[0], add                            \
    }
const struct list list_table[] = {
    LIST("quantities", "every figure, with unit and meaning", quantity_columns, add_quantities),
    LIST("keys", "every key of the build file", key_columns, add_keys),
    LIST("columns", "the columns of every command", column_columns, add_columns),
    LIST("tasks", "every task", task_list_columns, add_tasks),
};
const size_t list_count = sizeof list_table / sizeof list_table[0];

const struct list *list_find(const char *name)
{
    for (size_t i = 0; i < list_count; i++)
        if (strcmp(list_table[i].name, name) == 0)
            return &list_table[i];
    return NULL;
}

enum exit_status list_print(struct arena *arena, const struct options *options,
                            const struct list *list)
{
    struct rows_out *rows = arena_allocate(arena, sizeof *rows);
    enum exit_status begun =
        rows_begin(arena, rows, options, list->columns, list->column_count, false);
    if (begun != EXIT_COMPUTED)
        return begun;
    list->add_rows(rows, arena);
    return rows_end(rows, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}
