/* Pull at the road, what resists it, and the grade that it climbs. */
#include "base/known.h"
#include "compute/gearing.h"
#include "report/gearing/pullers.h"

static void report_pull_at(const struct geared_setup *geared, size_t gear, size_t range,
                           double engine_speed)
{
    bool peak = engine_speed == pull_peak_per_s(geared);
    if (geared->is_choice && !peak)
        return;
    double torque = wheel_torque_Nm(torque_at_Nm(&pull_engine(geared)->torque, engine_speed),
                                    overall_in(geared, gear, range), pull_efficiency(geared));
    struct figure figure = figure_by(QUANTITY_WHEEL_TORQUE, torque, remark(BASIS_WHEEL_TORQUE));
    figure.place = place_in_gear(geared, gear, range);
    figure.place.engine_speed_per_s = engine_speed;
    figure.headline = peak ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    geared_add(geared, figure);
    figure.quantity = QUANTITY_TRACTIVE_FORCE;
    figure.value = tractive_force_N(torque, geared->to_m);
    figure.basis = remark(BASIS_TRACTIVE_FORCE);
    geared_add(geared, figure);
}

/* At every point of the curve below the limit, and at the limit where the curve passes it; on an
 * axle choice at the most torque only. */
void report_pull(const struct geared_setup *geared)
{
    const struct pair_list *torque = &pull_engine(geared)->torque;
    double limit = pull_engine(geared)->limit_per_s;
    for (size_t range = 0; range < geared->range_count; range++)
        for (size_t gear = 0; gear < geared->gears.count; gear++)
            for (size_t i = 0; i < torque->count; i++) {
                if (torque->items[i].first > limit) {
                    if (i > 0 && torque->items[i - 1].first < limit)
                        report_pull_at(geared, gear, range, limit);
                    break;
                }
                report_pull_at(geared, gear, range, torque->items[i].first);
            }
}

static void report_resistances_at(const struct geared_setup *geared, const struct puller *puller,
                                  struct figure figure, double speed_mps)
{
    figure.place.road_speed_mps = speed_mps;
    figure.quantity = QUANTITY_AIR_RESISTANCE;
    figure.value = puller->air_N_s2_m2 * speed_mps * speed_mps;
    figure.basis = remark(BASIS_AIR_RESISTANCE);
    if (puller->air_N_s2_m2 > 0)
        geared_add(geared, figure);
    figure.quantity = QUANTITY_ROLLING_RESISTANCE;
    figure.value = rolling_coefficient(puller->rolling, speed_mps) * puller->weight_N;
    figure.basis = remark(known(puller->rolling) ? BASIS_ROLLING_GIVEN : BASIS_ROLLING_PAVED);
    geared_add(geared, figure);
}

/* What resists on the level, with the fitted tyres; and what grip allows. */
static void report_resistances(const struct geared_setup *geared, const struct puller *puller,
                               struct figure figure, bool in_tables)
{
    struct number_list speeds = asked_road_speeds(geared);
    for (size_t i = 0; i < speeds.count; i++) {
        bool cruising = fabs(speeds.items[i] - geared->cruise_mps) < 1e-9;
        figure.headline = in_tables && cruising ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
        report_resistances_at(geared, puller, figure, speeds.items[i]);
    }
    figure.headline = in_tables ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    figure.quantity = QUANTITY_GRIP_FORCE;
    figure.value = puller->grip_N;
    figure.basis = remark(BASIS_GRIP_FORCE);
    if (known(figure.value))
        geared_add(geared, figure);
}

static void report_grade(const struct geared_setup *geared, const struct puller *puller,
                         struct figure figure, size_t gear, size_t range)
{
    double overall = overall_in(geared, gear, range), n = pull_peak_per_s(geared);
    double v = road_speed_mps(geared->to_m, n, overall, geared->slip);
    struct climb climb = grade_climbed(puller, pull_force_N(puller, n, overall), v);
    figure.value = climb.grade;
    figure.place = place_in_gear(geared, gear, range);
    figure.place.engine_speed_per_s = n;
    if (climb.limit == CLIMB_ENGINE) {
        figure.basis = remark(BASIS_GRADE);
        if (!known(figure.value))
            figure.advice = remark(known(geared->to_m) ? ADVICE_NO_SLOPE : ADVICE_SIZE_TO_ROLL);
    } else {
        figure.basis = remark(BASIS_GRADE_BY_GRIP);
        figure.advice = remark(climb.limit == CLIMB_GRIP ? ADVICE_GRIP_LIMITED : ADVICE_GIVE_GRIP);
        figure.instead = remark(PHRASE_GRIP);
    }
    geared_add(geared, figure);
}

/* The most that any pull climbs, at a walk. */
static void report_grip_grade(const struct geared_setup *geared, const struct puller *puller,
                              struct figure figure)
{
    if (geared->is_choice || !known(puller->grip_N))
        return;
    figure.quantity = QUANTITY_GRIP_GRADE;
    figure.value = grade_climbed(puller, INFINITY, 0).grade;
    figure.basis = remark(BASIS_GRIP_GRADE);
    geared_add(geared, figure);
}

static void report_grades_in_state(const struct geared_setup *geared, const struct puller *puller,
                                   struct figure figure, bool heaviest)
{
    if (geared->setup->is_fitted && !geared->is_choice)
        report_resistances(geared, puller, figure, heaviest);
    figure.headline = heaviest ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    report_grip_grade(geared, puller, figure);
    for (size_t range = 0; range < geared->range_count; range++)
        for (size_t gear = 0; gear < geared->gears.count; gear++)
            report_grade(geared, puller, figure, gear, range);
}

void report_grades(const struct geared_setup *geared)
{
    pull_each_state(geared, QUANTITY_GRADE, report_grades_in_state);
}
