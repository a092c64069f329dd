#include "cli/columns.h"

#include <string.h>

#include "base/diagnostics.h"
#include "base/known.h"
#include "base/nearest.h"

/* A record has no two fields of one name, nor has json. */
static bool names_last_twice(const struct column_choice *out)
{
    const struct chosen_column *last = &out->items[out->count - 1];
    for (size_t i = 0; i + 1 < out->count; i++)
        if (out->items[i].column == last->column && out->items[i].us == last->us)
            return true;
    return false;
}

static const char *name_in(const struct column *column, bool us)
{
    return us && column->name_us != NULL ? column->name_us : column->name;
}

static void choose(struct column_choice *out, const struct column *column, bool us)
{
    out->items[out->count++] = (struct chosen_column){column, us && column->name_us != NULL};
}

static bool writes_objects(const struct options *options)
{
    return strcmp(options->format, "json") == 0;
}

static void choose_all(const struct column *columns, size_t count, const struct options *options,
                       struct column_choice *out)
{
    for (size_t i = 0; i < count; i++)
        if (columns[i].kind != COLUMN_OBJECT || writes_objects(options))
            choose(out, &columns[i], options->units == UNITS_US);
    for (size_t i = 0; options->units == UNITS_BOTH && i < count; i++)
        if (columns[i].name_us != NULL)
            choose(out, &columns[i], true);
}

/* Whether a name has the word in it: "diameter" is meant for "overall_diameter_mm". */
static bool contains(const char *name, struct span word)
{
    for (; word.length > 0 && *name != '\0'; name++)
        if (strncmp(name, word.at, word.length) == 0)
            return true;
    return false;
}

static bool choose_named(const struct column *columns, size_t count, struct span name,
                         struct column_choice *out)
{
    struct nearest nearest = nearest_start(name);
    for (size_t i = 0; i < count; i++)
        for (int us = 0; us < 2; us++) {
            const char *candidate = name_in(&columns[i], us == 1);
            if (span_is(name, candidate)) {
                choose(out, &columns[i], us == 1);
                return true;
            }
            nearest_try(&nearest, candidate);
        }
    const char *near = nearest_found(&nearest);
    for (size_t i = 0; near == NULL && i < count; i++)
        if (contains(columns[i].name, name))
            near = columns[i].name;
    diagnostics_plain("there is no column \"%.*s\"; %s%s%s", (int)name.length, name.at,
                      near ? "did you mean " : "the command's --help lists them", near ? near : "",
                      near ? "?" : "");
    return false;
}

static void set_headings(struct column_choice *out)
{
    for (size_t i = 0; i < out->count; i++) {
        const struct chosen_column *chosen = &out->items[i];
        const struct column *column = chosen->column;
        enum unit_id unit = chosen->us ? column->unit_us : column->unit;
        out->headings[i] = (struct heading){
            .name = name_in(column, chosen->us),
            .title = column->title,
            .unit = unit_table[unit].name,
            .numeric = column->kind == COLUMN_NUMBER || column->kind == COLUMN_EITHER,
            .width = column->width,
            .priority = column->priority,
        };
    }
}

bool columns_choose(struct arena *arena, const struct column *columns, size_t count,
                    const struct options *options, struct column_choice *out)
{
    size_t named = 0;
    for (const char *at = options->columns; at != NULL; at = strchr(at + 1, ','))
        named++;
    size_t room = named > 2 * count ? named : 2 * count;
    *out = (struct column_choice){
        .items = arena_allocate_array(arena, room, sizeof *out->items),
        .headings = arena_allocate_array(arena, room, sizeof *out->headings),
    };
    if (options->columns == NULL)
        choose_all(columns, count, options, out);
    for (const char *at = options->columns; at != NULL;) {
        struct span name = {at, strcspn(at, ",")};
        if (!choose_named(columns, count, name, out))
            return false;
        if (out->items[out->count - 1].column->kind == COLUMN_OBJECT && !writes_objects(options)) {
            diagnostics_plain("the column \"%.*s\" goes with --format json", (int)name.length,
                              name.at);
            return false;
        }
        if (names_last_twice(out)) {
            diagnostics_plain("--columns names \"%.*s\" twice; expected each once",
                              (int)name.length, name.at);
            return false;
        }
        at = at[name.length] == ',' ? at + name.length + 1 : NULL;
    }
    set_headings(out);
    if (options->columns != NULL) /* what is asked for by name is never left out for width */
        for (size_t i = 0; i < out->count; i++)
            out->headings[i].priority = 0;
    return true;
}

static struct column_value brought_along(const void *row, int index)
{
    const char *const *texts = *(const char *const *const *)row;
    return (struct column_value){.text = texts[index]};
}

void columns_fill(const struct column_choice *choice, const void *row, struct cell *cells)
{
    for (size_t i = 0; i < choice->count; i++) {
        const struct chosen_column *chosen = &choice->items[i];
        const struct column *column = chosen->column;
        struct column_value value = column->get == NULL ? brought_along(row, column->decimals)
                                                        : column->get(row, chosen->us);
        if (column->kind == COLUMN_OBJECT) {
            cells[i] = cell_object(value.members);
        } else if (column->kind == COLUMN_TEXT ||
                   (column->kind == COLUMN_EITHER && value.text != NULL)) {
            cells[i] = cell_text(value.text);
        } else if (!known(value.value) || isinf(value.value)) {
            cells[i] = cell_absent();
        } else {
            enum unit_id unit = chosen->us ? column->unit_us : column->unit;
            cells[i] = (struct cell){
                .kind = CELL_NUMBER,
                .value = unit == UNIT_BARE ? value.value : unit_from_si(unit, value.value),
                .decimals = value.own_decimals ? value.decimals
                            : chosen->us       ? column->decimals_us
                                               : column->decimals,
            };
        }
    }
}
