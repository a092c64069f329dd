#include "reading/remark_text.h"

#include <math.h>
#include <string.h>

#include "output/number.h"
#include "reading/place_text.h"
#include "tables/lookup.h"

/* Rounded as everywhere, and never "-0". */
static const char *decimal_text(struct arena *arena, double value, int decimals)
{
    char text[NUMBER_SIZE];
    size_t length = number_fixed(value, decimals, '.', text);
    return arena_copy(arena, (struct span){text, length});
}

static const char *quantity_text(struct arena *arena, double si, enum unit_id unit, int decimals)
{
    return arena_format(arena, "%s %s", decimal_text(arena, unit_from_si(unit, si), decimals),
                        unit_table[unit].name);
}

/* With a decimal where a whole number would tell more than a ceiling, or less than is needed. */
static const char *pressure_text(struct arena *arena, double pressure_Pa, bool us)
{
    enum unit_id unit = us ? UNIT_PSI : UNIT_KPA;
    double told_Pa = nominal_told_Pa(pressure_Pa, us), told = unit_from_si(unit, told_Pa);
    return quantity_text(arena, told_Pa, unit, fabs(told - round(told)) < 0.05 ? 0 : 1);
}

/* Rounded up, so that it is enough: to the millimetre, or to a hundredth of an inch. */
static const char *enough_text(struct arena *arena, double length_m, bool us)
{
    double step = us ? 0.01 * 0.0254 : 1e-3;
    return quantity_text(arena, round_up_to_step(fabs(length_m), step), us ? UNIT_IN : UNIT_MM,
                         us ? 2 : 0);
}

/* Whole speeds without decimals, others with one. */
static const char *speed_text(struct arena *arena, double speed_mps, enum unit_id unit)
{
    double speed = unit_from_si(unit, speed_mps);
    bool whole = fabs(speed - floor(speed + 0.5)) < 0.005;
    return quantity_text(arena, speed_mps, unit, whole ? 0 : 1);
}

static const char *argument_text(struct arena *arena, const struct argument *argument, bool us)
{
    switch (argument->kind) {
    case ARGUMENT_TEXT:
        return argument->text;
    case ARGUMENT_NUMBER:
        return decimal_text(arena, argument->value, argument->decimals);
    case ARGUMENT_RATIO:
        return ratio_text(arena, argument->value);
    case ARGUMENT_QUANTITY:
        return quantity_text(arena, argument->value, us ? argument->unit_us : argument->unit,
                             argument->decimals);
    case ARGUMENT_PRESSURE:
        return pressure_text(arena, argument->value, us);
    case ARGUMENT_ENOUGH:
        return enough_text(arena, argument->value, us);
    case ARGUMENT_SPEED:
        return speed_text(arena, argument->value, argument->unit);
    case ARGUMENT_REMARK:
        return remark_text(arena, argument->remark, us);
    }
    return NULL;
}

/* The row with its gaps filled by what follows `skipped` arguments. */
static const char *filled(struct arena *arena, const char *row, const struct remark *remark,
                          size_t skipped, bool us)
{
    const char *text = "";
    for (size_t i = skipped; i < remark->count; i++) {
        const char *gap = strstr(row, "{}"), *filling;
        if (gap == NULL)
            break;
        filling = argument_text(arena, &remark->arguments[i], us);
        text = arena_format(arena, "%s%.*s%s", text, (int)(gap - row), row,
                            filling == NULL ? "" : filling);
        row = gap + 2;
    }
    return *text == '\0' ? row : arena_format(arena, "%s%s", text, row);
}

const char *remark_text(struct arena *arena, const struct remark *remark, bool us)
{
    return remark->id == REMARK_NONE ? NULL
                                     : filled(arena, remark_row_text(remark->id), remark, 0, us);
}

static size_t count_gaps(const char *row)
{
    size_t count = 0;
    while ((row = strstr(row, "{}")) != NULL) {
        count++;
        row += 2;
    }
    return count;
}

const char *remark_key(struct arena *arena, const struct remark *remark)
{
    const char *key = remark_row_key(remark->id);
    if (key != NULL)
        return filled(arena, key, remark, count_gaps(remark_row_text(remark->id)), false);
    for (size_t i = 0; key == NULL && i < remark->count; i++)
        if (remark->arguments[i].kind == ARGUMENT_REMARK)
            key = remark_key(arena, remark->arguments[i].remark);
    return key;
}
