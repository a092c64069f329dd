#include "cli/columns.h"

#include <string.h>

#include "base/diagnostics.h"
#include "base/known.h"
#include "base/nearest.h"
#include "output/number.h"

/* The first column of several builds' rows: it says what no row knows, which of them is meant. */
static const char case_name[] = "case";
static const struct column case_column = {case_name,   NULL, case_name, UNIT_BARE, UNIT_BARE, 0, 0,
                                          COLUMN_TEXT, 12,   0,         GET(NULL)};
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

/* What is only of the other system is the bit above. */
static unsigned needs_of(const struct chosen_column *chosen)
{
    const struct column *column = chosen->column;
    if (chosen->ready == READY_BROUGHT || chosen->ready == READY_LEFT_OUT)
        return 0;
    return column->needs << (chosen->at != column->at);
}

static void choose(struct column_choice *out, const struct column *column, bool us)
{
    us = us && column->name_us != NULL;
    struct chosen_column *chosen = &out->items[out->count++];
    *chosen = (struct chosen_column){
        .ready = column->name == case_name        ? READY_CASE
                 : column->needs & COLUMN_BROUGHT ? READY_BROUGHT
                 : column->get != NULL            ? READY_NOT
                 : column->needs & COLUMN_WORD    ? READY_WORD
                 : column->needs & COLUMN_SHARED  ? READY_SHARED
                 : column->kind == COLUMN_NUMBER  ? READY_NUMBER
                                                  : READY_TEXT,
        .column = column,
        .us = us,
        .unit = us ? column->unit_us : column->unit,
        .decimals = us ? column->decimals_us : column->decimals,
        .at = us ? column->at_us : column->at,
    };
    const struct unit *unit = &unit_table[chosen->unit];
    chosen->raise = number_scale(chosen->decimals) / unit->factor * NUMBER_PARTS;
    chosen->put = chosen->ready == READY_TEXT     ? PUT_TEXT
                  : chosen->ready == READY_WORD   ? PUT_WORD
                  : chosen->ready == READY_SHARED ? PUT_SHARED
                  : chosen->ready == READY_NUMBER && !unit->reciprocal &&
                          chosen->decimals <= NUMBER_RAISED_DECIMALS
                      ? PUT_UNITS + (unsigned)chosen->decimals
                      : PUT_CELL;
    out->needs |= needs_of(chosen);
}

void columns_leave_out(struct column_choice *choice, size_t index)
{
    choice->items[index].ready = READY_LEFT_OUT;
    choice->needs = 0;
    for (size_t i = 0; i < choice->count; i++)
        choice->needs |= needs_of(&choice->items[i]);
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
    for (size_t i = 0; i < count; i++)
        for (int us = 0; us < 2; us++)
            if (span_is(name, name_in(&columns[i], us == 1))) {
                choose(out, &columns[i], us == 1);
                return true;
            }
    struct nearest nearest = nearest_start(name);
    for (size_t i = 0; i < count; i++)
        for (int us = 0; us < 2; us++)
            nearest_try(&nearest, name_in(&columns[i], us == 1));
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
        out->headings[i] = (struct heading){
            .name = name_in(column, chosen->us),
            .title = column->title,
            .unit = unit_table[chosen->unit].name,
            .numeric = column->kind == COLUMN_NUMBER || column->kind == COLUMN_EITHER,
            .width = column->width,
            .priority = column->priority,
        };
    }
}

static const struct column *with_case(struct arena *arena, const struct column *columns,
                                      size_t *count)
{
    struct column *all = arena_allocate_array(arena, *count + 1, sizeof *all);
    all[0] = case_column;
    memcpy(all + 1, columns, *count * sizeof *all);
    ++*count;
    return all;
}

bool columns_choose(struct arena *arena, const struct column *columns, size_t count,
                    const struct options *options, struct column_choice *out)
{
    if (options->cases)
        columns = with_case(arena, columns, &count);
    size_t named = 0;
    for (const char *at = options->columns; at != NULL; at = strchr(at + 1, ','))
        named++;
    size_t all = options->units == UNITS_BOTH ? 2 * count : count;
    size_t room = options->columns != NULL ? named : all;
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

static inline struct cell number_cell(const struct chosen_column *chosen, double value,
                                      int decimals)
{
    if (!isfinite(value))
        return cell_absent();
    return (struct cell){
        .kind = CELL_NUMBER, .decimals = decimals, .value = unit_from_si(chosen->unit, value)};
}

static struct cell got_cell(const struct chosen_column *chosen, const void *row)
{
    const struct column *column = chosen->column;
    struct column_value value = column->get(row, chosen->us);
    if (column->kind == COLUMN_OBJECT)
        return cell_object(value.members);
    if (column->kind == COLUMN_TEXT || (column->kind == COLUMN_EITHER && value.text != NULL))
        return cell_text(value.text);
    return number_cell(chosen, value.value, value.own_decimals ? value.decimals : chosen->decimals);
}

/* Of no ready number or text. */
static struct cell other_cell(const struct column_choice *choice,
                              const struct chosen_column *chosen, const void *row)
{
    const void *at = (const char *)row + chosen->at;
    if (chosen->ready == READY_LEFT_OUT)
        return cell_absent();
    if (chosen->ready == READY_NOT)
        return got_cell(chosen, row);
    if (chosen->ready == READY_CASE)
        return cell_text(choice->case_name);
    if (chosen->ready == READY_BROUGHT)
        return cell_text((*(const char *const *const *)row)[chosen->at]);
    if (chosen->ready == READY_WORD) {
        const struct word *word = at;
        return cell_span((struct span){word->text, word->length});
    }
    const struct shared_text *shared = *(const struct shared_text *const *)at;
    return shared == NULL ? cell_absent() : cell_span(shared->text);
}

static inline void fill_cell(const struct column_choice *choice, const struct chosen_column *chosen,
                             const void *row, struct cell *cell)
{
    const void *at = (const char *)row + chosen->at;
    if (chosen->ready == READY_NUMBER)
        *cell = number_cell(chosen, *(const double *)at, chosen->decimals);
    else if (chosen->ready == READY_TEXT)
        *cell = cell_span(*(const struct span *)at);
    else
        *cell = other_cell(choice, chosen, row);
}

struct cell column_cell(const struct column_choice *choice, const struct chosen_column *chosen,
                        const void *row)
{
    struct cell cell;
    fill_cell(choice, chosen, row, &cell);
    return cell;
}

void columns_fill(const struct column_choice *choice, const void *row, struct cell *cells)
{
    for (size_t i = 0; i < choice->count; i++)
        fill_cell(choice, &choice->items[i], row, &cells[i]);
}
