/* The speed that is held on a grade, and the gear that holds it. */
#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"
#include "report/gearing/pull_view.h"

struct held {
    double speed_mps;
    size_t gear, range; /* of the fastest */
};

/* Whether it could go faster, if only the engine turned faster. */
static bool at_end_of_curve(const struct drive_view *view, const struct puller *puller,
                            const struct held *held)
{
    const struct pair_list *torque = puller->torque;
    double end = lower_of(torque->items[torque->count - 1].first, puller->limit_per_s);
    double overall = overall_in(view, view->variable ? 1 : held->gear, held->range);
    double top = road_speed_mps(view->to_m, end, overall, view->slip);
    return held->speed_mps > top * (1 - 1e-9);
}

/* The highest speed over all gears; in a reduced range only where the one before holds it in
 * none. */
static struct held fastest_held(const struct drive_view *view, const struct puller *puller,
                                double grade)
{
    struct held held = {0, 0, 0};
    for (size_t range = 0; range < view->range_count && held.speed_mps == 0; range++) {
        if (view->variable) {
            double speed = speed_held_variable_mps(puller, overall_in(view, 0, range),
                                                   overall_in(view, 1, range), grade);
            if (speed > held.speed_mps)
                held = (struct held){speed, 0, range};
            continue;
        }
        for (size_t gear = 0; gear < view->gears.count; gear++) {
            double speed = speed_held_mps(puller, overall_in(view, gear, range), grade);
            if (speed > held.speed_mps)
                held = (struct held){speed, gear, range};
        }
    }
    return held;
}

static void report_held_on(const struct drive_view *view, const struct puller *puller,
                           struct figure figure, double grade)
{
    struct arena *arena = view->plan->arena;
    struct held held = fastest_held(view, puller, grade);
    figure.at = arena_format(arena, "%s%.4g %% grade", view->prefix, 100 * grade);
    if (!(puller->air_N_s2_m2 > 0)) /* an upper bound, and no speed that it reaches */
        figure.line = arena_format(arena, "%s, air left out", figure.at);
    figure.quantity = QUANTITY_SPEED_HELD;
    figure.value = held.speed_mps > 0 ? held.speed_mps : UNKNOWN;
    figure.basis =
        "the highest speed at which pull is no less than A + f W cos theta + W sin theta";
    if (held.speed_mps > 0 && at_end_of_curve(view, puller, &held))
        figure.action = "pull is left there: the engine's limit, or the end of its torque curve, "
                        "decides";
    if (!(held.speed_mps > 0)) {
        figure.word = "none";
        figure.action = "no gear holds this grade at an engine speed of the torque curve";
    }
    drive_add(view, figure);
    if (!(held.speed_mps > 0) || view->variable)
        return;
    figure.line = NULL;
    const char *range = view->ranges[held.range].name;
    if (figure.headline == HEADLINE_YES)
        figure.headline = HEADLINE_NO;
    figure.quantity = QUANTITY_GEAR_NEEDED;
    figure.value = (double)(held.gear + 1);
    figure.basis =
        *range ? arena_format(arena, "the gear in which that speed is held, in range %s", range)
               : "the gear in which that speed is held";
    drive_add(view, figure);
}

static struct number_list asked_grades(const struct drive_view *view)
{
    static double usual[] = {0.05, 0.10};
    struct number_list list = view->drivetrain->grades;
    if (list.count == 0)
        list = (struct number_list){usual, sizeof usual / sizeof usual[0]};
    return list;
}

static void report_held_in_state(const struct drive_view *view, const struct puller *puller,
                                 struct figure figure, bool heaviest)
{
    struct number_list grades = asked_grades(view);
    figure.headline = heaviest ? HEADLINE_YES : HEADLINE_ROWS_ONLY;
    for (size_t i = 0; i < grades.count; i++)
        report_held_on(view, puller, figure, grades.items[i]);
}

void report_held(const struct drive_view *view)
{
    pull_each_state(view, QUANTITY_SPEED_HELD, report_held_in_state);
}
