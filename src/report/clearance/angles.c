/* Approach, departure and ramp breakover angles, in every loading state. */
#include "base/known.h"
#include "compute/clearance.h"
#include "report/clearance/view.h"

#define BASIS "tangent to the loaded tyre (40 CFR 86.084-2, 49 CFR 523.2)"

static double approach_of(const struct clearance_view *view, const struct body_point *point)
{
    return ramp_angle_rad(point->ahead_m, height_in_view_m(view, point->height_m, -point->ahead_m),
                          view->radius_m[AXLE_FRONT]);
}

static double departure_of(const struct clearance_view *view, const struct body_point *point)
{
    double at = view->plan->specification->vehicle.wheelbase_m + point->behind_m;
    return ramp_angle_rad(point->behind_m, height_in_view_m(view, point->height_m, at),
                          view->radius_m[AXLE_REAR]);
}

static double breakover_of(const struct clearance_view *view, const struct body_point *point)
{
    return breakover_angle_rad(point->at_m, height_in_view_m(view, point->height_m, point->at_m),
                               view->plan->specification->vehicle.wheelbase_m,
                               view->radius_m[AXLE_FRONT], view->radius_m[AXLE_REAR]);
}

/* In side view, a point within a tyre's outline is reached by no ramp: the tyre is there first. */
static bool clear_of_tyres(const struct clearance_view *view, const struct body_point *point)
{
    double wheelbase = view->plan->specification->vehicle.wheelbase_m;
    double height = height_in_view_m(view, point->height_m, point->at_m);
    return !lies_within_tyre(point->at_m, height, view->radius_m[AXLE_FRONT]) &&
           !lies_within_tyre(wheelbase - point->at_m, height, view->radius_m[AXLE_REAR]);
}

static const struct ramp {
    enum quantity_id quantity, change, before;
    enum point_place place;
    point_measure measure;
    bool (*counts)(const struct clearance_view *view, const struct body_point *point);
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

static struct governing_point least_angle(const struct clearance_view *view,
                                          const struct ramp *ramp)
{
    return least_over_points(view, ramp->place, ramp->measure, ramp->counts);
}

static const char *basis_of(const struct plan *plan, const struct governing_point *least)
{
    if (least->item == NULL || !known(least->value))
        return BASIS;
    return arena_format(plan->arena, BASIS "; governed by: %s", least->item);
}

static const char *what_is_missing(const struct clearance_view *view, const struct ramp *ramp,
                                   const struct governing_point *least)
{
    if (least->points == 0)
        return arena_format(view->plan->arena, "give %s", ramp->key);
    if (known(view->body_change_m.front) && known(view->body_change_m.rear) &&
        known(view->plan->specification->vehicle.wheelbase_m))
        return arena_format(view->plan->arena,
                            "%s%sthe point lies within this tyre's outline: the tyre would meet it",
                            least->item != NULL ? least->item : "",
                            least->item != NULL ? ": " : "");
    return "give vehicle: wheelbase and unladen, and suspension: wheel_rate";
}

static void report_change(const struct clearance_view *view, const struct ramp *ramp, double angle,
                          struct figures *figures)
{
    double change = angle - least_angle(view->fitted, ramp).value;
    if (known(change))
        figures_add(figures, view_figure(view, ramp->change, change,
                                         "beside the fitted tyre in the same loading state"));
}

void report_angles(const struct clearance_view *view, struct figures *figures)
{
    for (int i = 0; i < RAMPS; i++) {
        struct governing_point least = least_angle(view, &ramps[i]);
        struct figure figure =
            view_figure(view, ramps[i].quantity, least.value, basis_of(view->plan, &least));
        figure.headline = view->headline;
        if (!known(figure.value)) {
            figure.verdict = VERDICT_UNKNOWN;
            figure.action = what_is_missing(view, &ramps[i], &least);
        }
        figures_add(figures, figure);
        if (!view->setup->is_fitted)
            report_change(view, &ramps[i], figure.value, figures);
    }
}

void report_angles_before(const struct plan *plan, struct figures *figures)
{
    struct clearance_view view;
    clearance_view_measured(plan, &view);
    for (int i = 0; i < RAMPS; i++) {
        struct governing_point least = least_angle(&view, &ramps[i]);
        if (known(least.value))
            figures_add(figures,
                        view_figure(&view, ramps[i].before, least.value, basis_of(plan, &least)));
    }
}
