#include "report/remark.h"

#include <string.h>

#include "base/known.h"

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

const char *remark_row_text(enum remark_id id)
{
#define REMARK_TEXT(id, text) [id] = text,
    /* NOLINTNEXTLINE(bugprone-suspicious-missing-comma): a row's text goes over several lines */
    static const char *const texts[REMARK_COUNT] = {[REMARK_NONE] = "", REMARKS(REMARK_TEXT)};
#undef REMARK_TEXT
    return texts[id];
}
