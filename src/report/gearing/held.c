/* The speed that is held on a grade, and the gear that holds it. */
#include "base/known.h"
#include "compute/gearing.h"
#include "report/gearing/pullers.h"

struct held {
    double speed_mps;
    size_t gear, range; /* of the fastest */
};

/* Whether it could go faster, if only the engine turned faster. */
static bool at_end_of_curve(const struct geared_setup *geared, const struct puller *puller,
                            const struct held *held)
{
    const struct pair_list *torque = puller->torque;
    double end = lower_of(torque->items[torque->count - 1].first, puller->limit_per_s);
    double overall = overall_in(geared, geared->variable ? 1 : held->gear, held->range);
    double top = road_speed_mps(geared->to_m, end, overall, geared->slip);
    return held->speed_mps > top * (1 - 1e-9);
}

/* The highest speed over all gears; in a reduced range only where the one before holds it in
 * none. */
static struct held fastest_held(const struct geared_setup *geared, const struct puller *puller,
                                double grade)
{
    struct held held = {0, 0, 0};
    for (size_t range = 0; range < geared->range_count && held.speed_mps == 0; range++) {
        if (geared->variable) {
            double speed = speed_held_variable_mps(puller, overall_in(geared, 0, range),
                                                   overall_in(geared, 1, range), grade);
            if (speed > held.speed_mps)
                held = (struct held){speed, 0, range};
            continue;
        }
        for (size_t gear = 0; gear < geared->gears.count; gear++) {
            double speed = speed_held_mps(puller, overall_in(geared, gear, range), grade);
            if (speed > held.speed_mps)
                held = (struct held){speed, gear, range};
        }
    }
    return held;
}

/* "high", "low", or "low 2.37" where there are several. */
static struct remark range_remark(const struct geared_setup *geared, size_t range)
{
    const struct gear_range *at = &geared->ranges[range];
    if (at->range == AT_HIGH_RANGE)
        return remark(PHRASE_HIGH_RANGE);
    return known(at->low_ratio)
               ? REMARK_WITH(geared->plan->arena, PHRASE_ONE_LOW_RANGE, say_ratio(at->low_ratio))
               : remark(PHRASE_LOW_RANGE);
}

/* What is said of the speed, where there is one or none; nothing where it is not known. */
static struct figure held_figure(const struct geared_setup *geared, const struct puller *puller,
                                 struct figure figure, const struct held *held)
{
    figure.basis = remark(BASIS_SPEED_HELD);
    if (held->speed_mps > 0) {
        figure.value = held->speed_mps;
        if (at_end_of_curve(geared, puller, held))
            figure.advice = remark(ADVICE_PULL_LEFT);
    } else if (known(puller->circumference_m)) {
        figure.instead = remark(PHRASE_NONE);
        figure.advice = remark(ADVICE_NOT_HELD);
    } else {
        figure.advice = remark(ADVICE_SIZE_TO_ROLL);
    }
    return figure;
}

static void report_gear_needed(const struct geared_setup *geared, struct figure figure,
                               const struct held *held)
{
    struct arena *arena = geared->plan->arena;
    if (figure.headline == HEADLINE_YES)
        figure.headline = HEADLINE_NO;
    figure.quantity = QUANTITY_GEAR_NEEDED;
    figure.value = (double)(held->gear + 1);
    figure.basis = geared->range_count > 1
                       ? REMARK_WITH(arena, BASIS_GEAR_NEEDED_IN_RANGE,
                                     say_remark(arena, range_remark(geared, held->range)))
                       : remark(BASIS_GEAR_NEEDED);
    geared_add(geared, figure);
}

static void report_held_on(const struct geared_setup *geared, const struct puller *puller,
                           struct figure figure, double grade)
{
    struct held held = fastest_held(geared, puller, grade);
    figure = held_figure(geared, puller, figure, &held);
    figure.place = place_on_axle(geared);
    figure.place.grade = grade;
    if (!(puller->air_N_s2_m2 > 0)) /* an upper bound, and no speed that it reaches */
        figure.place.name = "air left out";
    geared_add(geared, figure);
    if (held.speed_mps > 0 && !geared->variable)
        report_gear_needed(geared, figure, &held);
}

static struct number_list asked_grades(const struct geared_setup *geared)
{
    static double usual[] = {0.05, 0.10};
    struct number_list list = geared->drivetrain->grades;
    if (list.count == 0)
        list = (struct number_list){usual, sizeof usual / sizeof usual[0]};
    return list;
}

static void report_held_in_state(const struct geared_setup *geared, const struct puller *puller,
                                 struct figure figure, bool heaviest)
{
    struct number_list grades = asked_grades(geared);
    figure.headline = heaviest ? HEADLINE_YES : HEADLINE_ROWS_ONLY;
    for (size_t i = 0; i < grades.count; i++)
        report_held_on(geared, puller, figure, grades.items[i]);
}

void report_held(const struct geared_setup *geared)
{
    pull_each_state(geared, QUANTITY_SPEED_HELD, report_held_in_state);
}
