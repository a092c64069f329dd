#include "report/clearance/view.h"

#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "compute/springs.h"

const struct axle_suspension *suspension_of(const struct plan *plan, int axle)
{
    const struct suspension *suspension = &plan->specification->suspension;
    return axle == AXLE_FRONT ? &suspension->front : &suspension->rear;
}

static double weight_at_wheel_N(double axle_kg)
{
    return axle_kg * GRAVITY_M_S2 / 2;
}

double axle_lift_m(const struct plan *plan, int axle)
{
    const struct axle_suspension *suspension = suspension_of(plan, axle);
    if (!known(suspension->free_height_change_m))
        return known_or(suspension->lift_m, 0);
    struct spring spring;
    spring_of_axle(suspension, &spring);
    double sprung_kg = of_axle(plan->specification->vehicle.unladen_kg, axle) -
                       known_or(suspension->unsprung_kg, 0);
    double rate = spring.shape == SPRING_CONSTANT ? spring.points[0].rate_N_m : UNKNOWN;
    return ride_height_gained_m(suspension->free_height_change_m, weight_at_wheel_N(sprung_kg),
                                suspension->wheel_rate_before_N_m, rate);
}

/* True where a state adds nothing to the springs, whatever the vehicle weighs. */
static bool nothing_added(const struct plan *plan, const struct setup *setup,
                          const struct state *state)
{
    const struct carried_list *carried = &plan->specification->carried;
    for (size_t i = 0; i < carried->count; i++)
        if (state_holds(state, carried->items[i].item))
            return false;
    return spare_mass_change_kg(plan->specification, &plan->fitted, setup) == 0;
}

/* Sag under what a state adds to the springs; tyres and wheels do not ride on them. */
static double sag_in_state(const struct plan *plan, const struct setup *setup,
                           const struct state *state, int axle)
{
    if (nothing_added(plan, setup, state))
        return 0;
    struct axle_loads loads;
    axle_loads_in_state(plan->specification, state, &plan->fitted, setup, &loads);
    double added = loads.axle_kg[axle] - of_axle(plan->specification->vehicle.unladen_kg, axle) -
                   tyre_mass_change_kg(&plan->fitted, setup, (enum axle)axle);
    if (fabs(added) < 1e-9) /* added and taken off alike: no rate is needed */
        return 0;
    struct spring spring;
    spring_of_axle(suspension_of(plan, axle), &spring);
    return spring_travel_m(&spring, weight_at_wheel_N(added));
}

double radius_change_m(const struct plan *plan, size_t index, int axle)
{
    const struct beside *beside = &plan->beside[index];
    return beside->after[axle].static_loaded_radius_m - beside->before[axle].static_loaded_radius_m;
}

static void set_changes(struct clearance_view *view)
{
    double ride[AXLE_COUNT], tyre[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        tyre[axle] = radius_change_m(view->plan, view->index, axle);
        ride[axle] = tyre[axle] + view->lift_m[axle] - view->sag_m[axle];
        view->radius_m[axle] = view->plan->beside[view->index].after[axle].static_loaded_radius_m;
    }
    view->body_change_m = (struct axle_pair){ride[AXLE_FRONT], ride[AXLE_REAR]};
    view->tyre_change_m = (struct axle_pair){tyre[AXLE_FRONT], tyre[AXLE_REAR]};
}

static void make_view(const struct plan *plan, size_t index, const struct state *state,
                      struct clearance_view *out)
{
    *out = (struct clearance_view){
        .plan = plan, .index = index, .setup = &plan->setups[index], .state = state};
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        out->sag_m[axle] = sag_in_state(plan, out->setup, state, axle);
        out->lift_m[axle] = axle_lift_m(plan, axle);
    }
    set_changes(out);
}

struct clearance_view *clearance_views_make(const struct plan *plan, size_t index,
                                            const struct clearance_view *fitted)
{
    size_t count = state_count(plan->specification);
    struct clearance_view *views = arena_allocate_array(plan->arena, count, sizeof *views);
    for (size_t i = 0; i < count; i++) {
        make_view(plan, index, state_at(plan->specification, i), &views[i]);
        views[i].fitted = fitted == NULL ? &views[i] : &fitted[i];
    }
    return views;
}

void clearance_view_measured(const struct plan *plan, struct clearance_view *out)
{
    *out = (struct clearance_view){.plan = plan, .setup = &plan->setups[0], .as_measured = true};
    set_changes(out);
}

struct figure view_figure(const struct clearance_view *view, enum quantity_id quantity,
                          double value, const char *basis)
{
    struct figure figure = figure_of(quantity, value, basis);
    figure.state =
        view->as_measured ? STATE_NONE : state_number(view->plan->specification, view->state);
    return figure;
}

double height_in_view_m(const struct clearance_view *view, double height_m, double at_m)
{
    if (view->as_measured)
        return height_m;
    double wheelbase = view->plan->specification->vehicle.wheelbase_m;
    return height_m + change_at_m(view->body_change_m, at_m, wheelbase);
}

/* True where an item that is taken off in this state has the point's name. */
static bool is_removed(const struct clearance_view *view, const struct body_point *point)
{
    const struct carried_list *carried = &view->plan->specification->carried;
    for (size_t i = 0; point->item != NULL && !view->as_measured && i < carried->count; i++) {
        const struct carried_item *item = &carried->items[i];
        if (item->removed == 1 && item->item != NULL && strcmp(item->item, point->item) == 0 &&
            state_holds(view->state, item->item))
            return true;
    }
    return false;
}

static bool lies_there(const struct body_point *point, enum point_place place)
{
    return known(place == POINT_AHEAD    ? point->ahead_m
                 : place == POINT_BEHIND ? point->behind_m
                                         : point->at_m);
}

static void try_point(const struct clearance_view *view, const struct body_point *point,
                      const char *name, point_measure measure, struct governing_point *least)
{
    double here = measure(view, point);
    bool first = least->points++ == 0;
    if (!first && !known(least->value))
        return; /* one that is not known may be the least: none governs */
    if (first || !known(here) || clearly_above(least->value, here)) {
        least->value = here;
        least->item = name;
    }
}

struct governing_point
least_over_points(const struct clearance_view *view, enum point_place place, point_measure measure,
                  bool (*counts)(const struct clearance_view *view, const struct body_point *point))
{
    const struct specification *specification = view->plan->specification;
    const struct clearance_measured *measured = &specification->clearance;
    const struct point_list *list = place == POINT_AHEAD    ? &measured->front_overhang
                                    : place == POINT_BEHIND ? &measured->rear_overhang
                                                            : &measured->belly;
    struct governing_point least = {.value = UNKNOWN};
    for (size_t i = 0; i < list->count; i++)
        if (!is_removed(view, &list->items[i]) && (counts == NULL || counts(view, &list->items[i])))
            try_point(view, &list->items[i], list->items[i].item, measure, &least);
    for (size_t i = 0; !view->as_measured && i < specification->carried.count; i++) {
        const struct carried_item *item = &specification->carried.items[i];
        if (item->removed == 1 || !state_holds(view->state, item->item))
            continue;
        for (size_t j = 0; j < item->points.count; j++) {
            const struct body_point *point = &item->points.items[j];
            if (lies_there(point, place) && (counts == NULL || counts(view, point)))
                try_point(view, point, point->item != NULL ? point->item : item->item, measure,
                          &least);
        }
    }
    return least;
}

double length_enough_m(const struct plan *plan, double length_m)
{
    double step = plan->us ? 0.01 * 0.0254 : 1e-3;
    return copysign(ceil(fabs(length_m) / step - 1e-6) * step, length_m);
}

const char *length_text(const struct plan *plan, double length_m)
{
    double enough = fabs(length_enough_m(plan, length_m));
    if (plan->us)
        return arena_format(plan->arena, "%.2f in", unit_from_si(UNIT_IN, enough));
    return arena_format(plan->arena, "%.0f mm", unit_from_si(UNIT_MM, enough));
}
