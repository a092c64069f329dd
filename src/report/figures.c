#include "report/figures.h"

#include "base/known.h"

#define QUANTITY_ROW(id, name, title, metric, us, decimals, decimals_us)                           \
    [QUANTITY_##id] = {name, title, metric, us, decimals, decimals_us},
const struct quantity_row quantity_rows[QUANTITY_COUNT] = {QUANTITIES(QUANTITY_ROW)};
#undef QUANTITY_ROW

struct figure figure_of(enum part part, enum quantity_id quantity, const char *option, double value,
                        const char *basis)
{
    return (struct figure){.part = part,
                           .quantity = quantity,
                           .option = option,
                           .axle = AXLE_NONE,
                           .value = value,
                           .decimals = DECIMALS_OF_QUANTITY,
                           .limit = UNKNOWN,
                           .basis = basis};
}

void figures_add(struct figures *figures, struct figure figure)
{
    figures->items = arena_grow(figures->arena, figures->items, figures->count, &figures->capacity,
                                sizeof *figures->items);
    figures->items[figures->count++] = figure;
}

const char *part_name(enum part part)
{
    static const char *const names[PART_COUNT] = {"tyre", "clearance", "load", "speedometer",
                                                  "gearing"};
    return names[part];
}

const char *verdict_name(enum verdict verdict)
{
    static const char *const names[] = {"", "fail", "unknown", "caution", "ok"};
    return names[verdict];
}

const char *axle_name(int axle)
{
    return axle == AXLE_FRONT ? "front" : axle == AXLE_REAR ? "rear" : "";
}

/* Limits are compared with a billionth of slack, so that a figure that meets one meets it. */
static double slack(double limit)
{
    return 1e-9 * (1 + fabs(limit));
}

struct figure figure_at_least(struct figure figure, double limit)
{
    figure.limit = limit;
    if (!known(figure.value) || !known(limit))
        figure.verdict = VERDICT_UNKNOWN;
    else
        figure.verdict = figure.value < limit - slack(limit) ? VERDICT_FAIL : VERDICT_OK;
    return figure;
}

struct figure figure_at_most(struct figure figure, double limit)
{
    figure.limit = limit;
    if (!known(figure.value) || !known(limit))
        figure.verdict = VERDICT_UNKNOWN;
    else
        figure.verdict = figure.value > limit + slack(limit) ? VERDICT_FAIL : VERDICT_OK;
    return figure;
}

struct figure figure_within(struct figure figure, double min, double max)
{
    double value = figure.value;
    bool nearer_to_min =
        known(min) && (!known(max) || value - min < max - value - slack(max - min));
    return nearer_to_min ? figure_at_least(figure, min) : figure_at_most(figure, max);
}
