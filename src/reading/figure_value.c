#include "reading/figure_value.h"

#include "base/known.h"
#include "output/number.h"
#include "reading/cures_text.h"
#include "reading/place_text.h"
#include "reading/remark_text.h"
#include "report/judge.h"

enum unit_id figure_unit(const struct figure *figure, bool us)
{
    const struct quantity_row *quantity = &quantity_rows[figure->quantity];
    enum unit_id unit = us ? quantity->us : quantity->metric;
    if (unit_table[unit].kind == KIND_SPEED && (figure->instrument_mph || figure->instrument_kmh))
        return figure->instrument_mph ? UNIT_MPH : UNIT_KMH;
    return unit;
}

static double in_its_unit(const struct figure *figure, double si, bool us)
{
    enum unit_id unit = figure_unit(figure, us);
    return !known(si) || unit == UNIT_BARE ? si : unit_from_si(unit, si);
}

static bool is_to_set(const struct figure *figure)
{
    return quantity_rows[figure->quantity].policy & POLICY_TO_SET;
}

static bool breaks_its_limit(const struct figure *figure)
{
    if (figure->limit_side != LIMIT_NO_SIDE)
        return known(figure->value) && known(figure->limit) &&
               !meets_limit(figure->value, figure->limit_side, figure->limit);
    return figure->verdict == VERDICT_FAIL || figure->verdict == VERDICT_TASK;
}

/* What breaks a limit is not told as equal to it: as many decimals more as tell them apart. */
static int decimals_apart(const struct figure *figure, int decimals, bool us)
{
    double value = in_its_unit(figure, figure->value, us);
    double limit = in_its_unit(figure, figure->limit, us);
    if (!breaks_its_limit(figure) || !isfinite(value) || !isfinite(limit))
        return decimals;
    for (int more = decimals; more < NUMBER_DECIMALS_MAX; more++)
        if (!same_value(round_to_decimals(value, more), round_to_decimals(limit, more)))
            return more;
    return decimals;
}

/* Where rounding up in whole units would pass the ceiling, a decimal is told. */
int figure_decimals(const struct figure *figure, bool us)
{
    const struct quantity_row *quantity = &quantity_rows[figure->quantity];
    int decimals = us ? quantity->decimals_us : quantity->decimals_metric;
    if (figure->decimals != DECIMALS_OF_QUANTITY)
        decimals = figure->decimals;
    if (!is_to_set(figure))
        return decimals_apart(figure, decimals, us);
    double value = in_its_unit(figure, figure->value, us);
    bool passes = clearly_above(round_up_to_decimals(value, decimals),
                                in_its_unit(figure, figure->limit, us));
    return passes ? decimals + 1 : decimals;
}

double figure_limit(const struct figure *figure, bool us)
{
    return in_its_unit(figure, figure->limit, us);
}

double figure_value(const struct figure *figure, double si, bool us)
{
    double value = in_its_unit(figure, si, us);
    if (!is_to_set(figure) || !known(value))
        return value;
    int decimals = figure_decimals(figure, us);
    double up = round_up_to_decimals(value, decimals);
    /* At the ceiling itself, in the other unit, the last decimal yields to it. */
    return clearly_above(up, figure_limit(figure, us)) ? round_down_to_decimals(value, decimals)
                                                       : up;
}

double figure_rounded(const struct figure *figure, double si, bool us)
{
    unsigned policy = quantity_rows[figure->quantity].policy;
    double value = figure_value(figure, si, us);
    if (!isfinite(value) || !(policy & (POLICY_AT_MOST | POLICY_AT_LEAST)))
        return value;
    int decimals = figure_decimals(figure, us);
    return policy & POLICY_AT_MOST ? round_down_to_decimals(value, decimals)
                                   : round_up_to_decimals(value, decimals);
}

const char *figure_option(const struct plan *plan, const struct figure *figure)
{
    return plan->setups[figure->setup].name;
}

const char *figure_state(const struct plan *plan, const struct figure *figure)
{
    return plan_state_name(plan, figure->state);
}

const char *figure_at(struct arena *arena, const struct plan *plan, const struct figure *figure)
{
    return place_text(arena, &figure->place, plan->us);
}

const char *figure_basis(struct arena *arena, const struct plan *plan, const struct figure *figure)
{
    const char *text = remark_text(arena, &figure->basis, plan->us);
    if (text == NULL || figure->governed_by.name == NULL)
        return text;
    return arena_format(arena, "%s; governed by: %s", text, figure->governed_by.name);
}

const char *figure_advice(struct arena *arena, const struct plan *plan, const struct figure *figure)
{
    const char *text = remark_text(arena, &figure->advice, plan->us);
    return text == NULL || figure->cures == NULL ? text
                                                 : cures_text(arena, text, figure->cures, plan->us);
}

static const char *key_of(struct arena *arena, const struct figure *figure)
{
    const char *key = remark_key(arena, &figure->advice);
    for (int i = 0; key == NULL && figure->cures != NULL && i < CURE_COUNT; i++)
        key = remark_key(arena, &figure->cures->lacking[i]);
    return key;
}

const char *figure_action(struct arena *arena, const struct plan *plan, const struct figure *figure)
{
    const char *text = figure_advice(arena, plan, figure), *key = key_of(arena, figure);
    return key == NULL ? text : arena_format(arena, "%s (key %s)", text, key);
}
