/* Approach, departure and ramp breakover angles, in every loading state. */
#include "base/known.h"
#include "compute/clearance.h"
#include "report/clearance/low_points.h"
#include "report/judge.h"

static double approach_of(const struct stance *stance, const struct body_point *point)
{
    return ramp_angle_rad(point->ahead_m,
                          height_in_stance_m(stance, point->height_m, -point->ahead_m),
                          stance->radius_m[AXLE_FRONT]);
}

static double departure_of(const struct stance *stance, const struct body_point *point)
{
    double at = stance->plan->specification->vehicle.wheelbase_m + point->behind_m;
    return ramp_angle_rad(point->behind_m, height_in_stance_m(stance, point->height_m, at),
                          stance->radius_m[AXLE_REAR]);
}

static double breakover_of(const struct stance *stance, const struct body_point *point)
{
    return breakover_angle_rad(point->at_m,
                               height_in_stance_m(stance, point->height_m, point->at_m),
                               stance->plan->specification->vehicle.wheelbase_m,
                               stance->radius_m[AXLE_FRONT], stance->radius_m[AXLE_REAR]);
}

/* In side view, a point within a tyre's outline is reached by no ramp: the tyre is there first. */
static bool clear_of_tyres(const struct stance *stance, const struct body_point *point)
{
    double wheelbase = stance->plan->specification->vehicle.wheelbase_m;
    double height = height_in_stance_m(stance, point->height_m, point->at_m);
    return !lies_within_tyre(point->at_m, height, stance->radius_m[AXLE_FRONT]) &&
           !lies_within_tyre(wheelbase - point->at_m, height, stance->radius_m[AXLE_REAR]);
}

static const struct ramp {
    enum quantity_id quantity, change, before;
    enum point_place place;
    point_measure measure;
    bool (*counts)(const struct stance *stance, const struct body_point *point);
    const char *key;
} ramps[] = {
    {QUANTITY_APPROACH, QUANTITY_APPROACH_CHANGE, QUANTITY_APPROACH_BEFORE, POINT_AHEAD,
     approach_of, NULL, "clearance: front_overhang"},
    {QUANTITY_DEPARTURE, QUANTITY_DEPARTURE_CHANGE, QUANTITY_DEPARTURE_BEFORE, POINT_BEHIND,
     departure_of, NULL, "clearance: rear_overhang"},
    {QUANTITY_BREAKOVER, QUANTITY_BREAKOVER_CHANGE, QUANTITY_BREAKOVER_BEFORE, POINT_BETWEEN,
     breakover_of, clear_of_tyres, "clearance: belly"},
};
enum { RAMPS = sizeof ramps / sizeof ramps[0] };

static struct governing_point least_angle(const struct stance *stance, const struct ramp *ramp)
{
    return least_over_points(stance, ramp->place, ramp->measure, ramp->counts);
}

/* An angle over the points that are there; whichever governs it is named where there is a value. */
static struct figure angle_figure(const struct stance *stance, enum quantity_id quantity,
                                  const struct governing_point *least)
{
    struct figure figure = stance_figure(stance, quantity, least->value, BASIS_RAMP);
    if (known(least->value))
        figure.governed_by = least->governor;
    return figure;
}

static struct figure judged_angle(const struct stance *stance, const struct ramp *ramp,
                                  const struct governing_point *least)
{
    struct arena *arena = stance->plan->arena;
    const char *item = least->governor.name;
    struct need needs[4] = {
        {least->points > 0, REMARK_WITH(arena, ADVICE_GIVE_OVERHANG, say_text(ramp->key))}};
    stance_needs(stance, needs + 1);
    needs[1].known = needs[1].known && known(stance->plan->specification->vehicle.wheelbase_m);
    needs[3] =
        (struct need){known(least->value),
                      item == NULL ? remark(ADVICE_POINT_IN_TYRE)
                                   : REMARK_WITH(arena, ADVICE_ITEM_IN_TYRE, say_text(item))};
    if (known(least->value)) /* whatever does not matter to it */
        needs[1].known = needs[2].known = true;
    return judged(
        angle_figure(stance, ramp->quantity, least),
        &(struct judgement){.needs = needs, .need_count = sizeof needs / sizeof needs[0]});
}

static void report_change(const struct stance *stance, const struct ramp *ramp, double angle,
                          struct figures *figures)
{
    double change = angle - least_angle(stance->fitted, ramp).value;
    if (known(change))
        figures_add(figures, stance_figure(stance, ramp->change, change, BASIS_SAME_STATE));
}

void report_angles(const struct stance *stance, struct figures *figures)
{
    for (int i = 0; i < RAMPS; i++) {
        struct governing_point least = least_angle(stance, &ramps[i]);
        struct figure figure = judged_angle(stance, &ramps[i], &least);
        figure.headline = stance->headline;
        figures_add(figures, figure);
        if (!stance->setup->is_fitted && !figures->verdicts_only)
            report_change(stance, &ramps[i], figure.value, figures);
    }
}

void report_angles_before(const struct plan *plan, struct figures *figures)
{
    struct stance stance;
    stance_as_measured(plan, &stance);
    for (int i = 0; i < RAMPS; i++) {
        struct governing_point least = least_angle(&stance, &ramps[i]);
        if (known(least.value))
            figures_add(figures, angle_figure(&stance, ramps[i].before, &least));
    }
}
