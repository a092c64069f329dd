/* Pull at the road, what resists it, and the grade that it climbs. */
#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"
#include "report/gearing/pull_view.h"

static void report_pull_at(const struct drive_view *view, size_t gear, size_t range,
                           double engine_speed)
{
    struct arena *arena = view->plan->arena;
    double overall = overall_in(view, gear, range);
    bool peak = engine_speed == pull_peak_per_s(view);
    if (view->is_choice && !peak)
        return;
    double torque = wheel_torque_Nm(torque_at_Nm(&pull_engine(view)->torque, engine_speed), overall,
                                    pull_efficiency(view));
    struct figure figure =
        figure_of(QUANTITY_WHEEL_TORQUE, torque, "torque x overall ratio x efficiency");
    figure.at = arena_format(arena, "%s, %s", gear_text(view, gear, range),
                             rotation_text(view, engine_speed));
    figure.headline = peak ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    drive_add(view, figure);
    figure.quantity = QUANTITY_TRACTIVE_FORCE;
    figure.value = tractive_force_N(torque, view->to_m);
    figure.basis = "wheel torque x 2 pi / C";
    figure.line = figure.at;
    figure.at = arena_format(
        arena, "%s, %s", figure.at,
        road_speed_text(view, road_speed_mps(view->to_m, engine_speed, overall, view->slip)));
    drive_add(view, figure);
}

/* At every point of the curve below the limit, and at the limit where the curve passes it; on an
 * axle choice at the most torque only. */
void report_pull(const struct drive_view *view)
{
    const struct pair_list *torque = &pull_engine(view)->torque;
    double limit = pull_engine(view)->limit_per_s;
    for (size_t range = 0; range < view->range_count; range++)
        for (size_t gear = 0; gear < view->gears.count; gear++)
            for (size_t i = 0; i < torque->count; i++) {
                if (torque->items[i].first > limit) {
                    if (i > 0 && torque->items[i - 1].first < limit)
                        report_pull_at(view, gear, range, limit);
                    break;
                }
                report_pull_at(view, gear, range, torque->items[i].first);
            }
}

/* What resists on the level, with the fitted tyres; and what grip allows. */
static void report_resistances(const struct drive_view *view, const struct puller *puller,
                               struct figure figure, bool in_tables)
{
    struct number_list speeds = asked_road_speeds(view);
    for (size_t i = 0; i < speeds.count; i++) {
        double v = speeds.items[i];
        bool cruising = fabs(v - view->cruise_mps) < 1e-9;
        figure.headline = in_tables && cruising ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
        figure.at = road_speed_text(view, v);
        figure.quantity = QUANTITY_AIR_RESISTANCE;
        figure.value = puller->air_N_s2_m2 * v * v;
        figure.basis = "1/2 rho Cd A v^2";
        if (puller->air_N_s2_m2 > 0)
            drive_add(view, figure);
        figure.quantity = QUANTITY_ROLLING_RESISTANCE;
        figure.value = rolling_coefficient(puller->rolling, v) * puller->weight_N;
        figure.basis = known(puller->rolling)
                           ? "f W"
                           : "0.01 (1 + V/147) W, V in ft/s, paved (Mannering & Washburn, ch. 2)";
        drive_add(view, figure);
    }
    figure.at = NULL;
    figure.headline = in_tables ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    figure.quantity = QUANTITY_GRIP_FORCE;
    figure.value = puller->grip_N;
    figure.basis = "grip x weight on the driven axles (all, where all can be driven)";
    if (known(figure.value))
        drive_add(view, figure);
}

static void report_grade(const struct drive_view *view, const struct puller *puller,
                         struct figure figure, size_t gear, size_t range)
{
    double overall = overall_in(view, gear, range), n = pull_peak_per_s(view);
    double v = road_speed_mps(view->to_m, n, overall, view->slip);
    struct climb climb = grade_climbed(puller, pull_force_N(puller, n, overall), v);
    figure.value = climb.grade;
    figure.at = arena_format(view->plan->arena, "%s, %s", gear_text(view, gear, range),
                             rotation_text(view, n));
    if (climb.limit == CLIMB_ENGINE) {
        figure.basis = "theta = asin(((F - A)/W) / sqrt(1 + f^2)) - atan f, tan theta";
        if (!known(figure.value))
            figure.action = "no slope balances it: at that speed the air resists with more than "
                            "the weight, or the tyre's size is not known";
    } else {
        figure.basis = "grip-limited: tan theta from (grip/W - f) cos theta - sin theta = A/W";
        figure.action = climb.limit == CLIMB_GRIP
                            ? "grip-limited: the wheels spin before the engine is at its limit"
                            : "grip-limited: no slope balances this pull; give drivetrain: grip";
        figure.word = "grip";
    }
    drive_add(view, figure);
}

/* The most that any pull climbs, at a walk. */
static void report_grip_grade(const struct drive_view *view, const struct puller *puller,
                              struct figure figure)
{
    if (view->is_choice || !known(puller->grip_N))
        return;
    figure.quantity = QUANTITY_GRIP_GRADE;
    figure.value = grade_climbed(puller, INFINITY, 0).grade;
    figure.basis = "tan theta = grip x weight on the driven axles / W - f, without air";
    drive_add(view, figure);
}

static void report_grades_in_state(const struct drive_view *view, const struct puller *puller,
                                   struct figure figure, bool heaviest)
{
    if (view->setup->is_fitted && !view->is_choice)
        report_resistances(view, puller, figure, heaviest);
    figure.headline = heaviest ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    report_grip_grade(view, puller, figure);
    for (size_t range = 0; range < view->range_count; range++)
        for (size_t gear = 0; gear < view->gears.count; gear++)
            report_grade(view, puller, figure, gear, range);
}

void report_grades(const struct drive_view *view)
{
    pull_each_state(view, QUANTITY_GRADE, report_grades_in_state);
}
