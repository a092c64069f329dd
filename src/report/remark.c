#include "report/remark.h"

#include <stdint.h>
#include <string.h>

#include "base/known.h"
#include "tables/tables.h"

struct remark remark_make(struct arena *arena, enum remark_id id, const struct argument *arguments,
                          size_t count)
{
    struct argument *copy = arena_allocate_array(arena, count, sizeof *copy);
    memcpy(copy, arguments, count * sizeof *copy);
    return (struct remark){id, count, copy};
}

struct argument say_text(const char *text)
{
    return (struct argument){.kind = ARGUMENT_TEXT, .text = text};
}

struct argument say_number(double value, int decimals)
{
    return (struct argument){.kind = ARGUMENT_NUMBER, .value = value, .decimals = decimals};
}

struct argument say_ratio(double ratio)
{
    return (struct argument){.kind = ARGUMENT_RATIO, .value = ratio};
}

struct argument say_quantity(double si, enum unit_id unit, enum unit_id unit_us, int decimals)
{
    return (struct argument){.kind = ARGUMENT_QUANTITY,
                             .decimals = decimals,
                             .unit = unit,
                             .unit_us = unit_us,
                             .value = si};
}

struct argument say_pressure(double pressure_Pa)
{
    return (struct argument){.kind = ARGUMENT_PRESSURE, .value = pressure_Pa};
}

struct argument say_enough(double length_m)
{
    return (struct argument){.kind = ARGUMENT_ENOUGH, .value = length_m};
}

struct argument say_speed(double speed_mps, enum unit_id unit)
{
    return (struct argument){.kind = ARGUMENT_SPEED, .value = speed_mps, .unit = unit};
}

struct argument say_remark(struct arena *arena, struct remark remark)
{
    struct remark *copy = arena_allocate(arena, sizeof *copy);
    *copy = remark;
    return (struct argument){.kind = ARGUMENT_REMARK, .remark = copy};
}

struct remark remark_quoted(struct arena *arena, const char *basis, const char *certainty)
{
    return REMARK_WITH(arena,
                       certainty_is_memory(certainty) ? BASIS_QUOTED_FROM_MEMORY : BASIS_QUOTED,
                       say_text(basis));
}

bool rests_on_memory(const struct remark *remark)
{
    static const bool of_row[REMARK_COUNT] = {
        [BASIS_QUOTED_FROM_MEMORY] = true,
        [BASIS_LISTED_INDEX] = true,
        [BASIS_LISTS_OF_SIZES] = true,
        [BASIS_TABLE_OF_SIZES] = true,
        [BASIS_RIM_FACTOR] = true,
        [BASIS_ENVELOPE_R30] = true,
        [BASIS_ENVELOPE_R30_SNOW] = true,
        [BASIS_ENVELOPE_R54] = true,
        [BASIS_ENVELOPE_R54_SNOW] = true,
        [BASIS_ENVELOPE_SPECIAL] = true,
        [BASIS_ENVELOPE_SPECIAL_SNOW] = true,
        [BASIS_ROLLING_DIAGONAL] = true,
        [BASIS_TEMPORARY_SPEED] = true,
        [BASIS_DIP] = true,
        [PHRASE_COMMERCIAL_REDUCED] = true,
        [BASIS_STIFFNESS] = true,
        [BASIS_LOW_COMMERCIAL] = true,
        [BASIS_LOW_SPEED] = true,
        [BASIS_OFF_ROAD_SPEED] = true,
        [BASIS_THRESHOLD] = true,
        [ADVICE_SPARE_BY_ITS_MARKING] = true,
    };
    bool rests = of_row[remark->id];
    for (size_t i = 0; i < remark->count && !rests; i++)
        rests = remark->arguments[i].kind == ARGUMENT_REMARK &&
                rests_on_memory(remark->arguments[i].remark);
    return rests;
}

static bool argument_same(const struct argument *a, const struct argument *b)
{
    return a->kind == b->kind && a->decimals == b->decimals && a->unit == b->unit &&
           a->unit_us == b->unit_us && same_value(a->value, b->value) &&
           same_text(a->text, b->text) &&
           (a->remark == b->remark ||
            (a->remark != NULL && b->remark != NULL && remark_same(a->remark, b->remark)));
}

bool remark_same(const struct remark *a, const struct remark *b)
{
    bool same = a->id == b->id && a->count == b->count;
    for (size_t i = 0; same && i < a->count; i++)
        same = argument_same(&a->arguments[i], &b->arguments[i]);
    return same;
}

/* Words and keys of all rows behind one another: without pointers there is nothing for the loader
 * to put right before the program begins. */
#define ROW_KEY(text, key, ...) key
#define ROW_STRINGS(text, ...) text "\0" ROW_KEY(text, __VA_ARGS__)
#define ROW_ROOM(id, ...) char id[sizeof(ROW_STRINGS(__VA_ARGS__, "", ""))];
#define ROW_CONTENT(id, ...) ROW_STRINGS(__VA_ARGS__, "", ""),
#define ROW_AT(id, ...) [id] = offsetof(struct rows, id),
static const struct rows {
    char none[2]; /* no words and no key */
    REMARKS(ROW_ROOM)
} rows = {"", REMARKS(ROW_CONTENT)};
static const uint16_t at[REMARK_COUNT] = {REMARKS(ROW_AT)};
_Static_assert(sizeof rows <= UINT16_MAX, "all rows are within reach");

const char *remark_row_text(enum remark_id id)
{
    return (const char *)&rows + at[id];
}

const char *remark_row_key(enum remark_id id)
{
    const char *text = remark_row_text(id), *key = text + strlen(text) + 1;
    return *key != '\0' ? key : NULL;
}
