/* Limits on what the size itself changes: diameter, load index, speed symbol. */
#include "base/known.h"
#include "report/limits.h"
#include "tables/lookup.h"

static double steps_between(int before, int after)
{
    return before < 0 || after < 0 ? UNKNOWN : (double)(after - before);
}

static void report_axle(const struct plan *plan, size_t index, int axle, int shown_axle,
                        struct figures *figures)
{
    const struct beside *beside = &plan->beside[index];
    const struct service_description *before = &plan->fitted.axle[axle].size.service;
    const struct service_description *after = &plan->setups[index].axle[axle].size.service;
    double whole = beside->before[axle].overall_diameter_m;
    struct figure diameter =
        figure_of(QUANTITY_OVERALL_DIAMETER_CHANGE, beside->after[axle].overall_diameter_m - whole);
    diameter.axle = shown_axle;
    struct figure load = diameter, speed = diameter;
    load.quantity = QUANTITY_LOAD_INDEX_CHANGE;
    load.value = steps_between(before->load_index, after->load_index);
    speed.quantity = QUANTITY_SPEED_SYMBOL_CHANGE;
    speed.value = speed_symbol_steps(before->speed_symbol, after->speed_symbol);
    const struct limited_change changes[] = {
        {diameter, "diameter_change", &plan->specification->limits.diameter_change, whole,
         ADVICE_GIVE_CHANGE, TASK_NONE},
        {load, "load_index_change", NULL, UNKNOWN, ADVICE_GIVE_CHANGE, TASK_READ_SIDEWALL},
        {speed, "speed_symbol_change", NULL, UNKNOWN, ADVICE_GIVE_CHANGE, TASK_READ_SIDEWALL},
    };
    report_limits(plan, figures, &changes[0]);
    report_rules_of_others(plan, figures, diameter);
    report_limits(plan, figures, &changes[1]);
    report_limits(plan, figures, &changes[2]);
}

void report_size_limits(const struct plan *plan, size_t index, struct figures *figures)
{
    if (plan->setups[index].is_fitted)
        return;
    bool differ = plan_shows_both_axles(plan, index);
    for (int axle = 0; axle < (differ ? AXLE_COUNT : 1); axle++)
        report_axle(plan, index, axle, differ ? axle : AXLE_NONE, figures);
}
