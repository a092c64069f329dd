#include "report/clearance/stance.h"

#include "base/known.h"
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

static void set_changes(struct stance *stance)
{
    double ride[AXLE_COUNT], tyre[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        tyre[axle] = radius_change_m(stance->plan, stance->index, axle);
        ride[axle] = tyre[axle] + stance->lift_m[axle] - stance->sag_m[axle];
        stance->radius_m[axle] =
            stance->plan->beside[stance->index].after[axle].static_loaded_radius_m;
    }
    stance->body_change_m = (struct axle_pair){ride[AXLE_FRONT], ride[AXLE_REAR]};
    stance->tyre_change_m = (struct axle_pair){tyre[AXLE_FRONT], tyre[AXLE_REAR]};
}

static void make_stance(const struct plan *plan, size_t index, const struct state *state,
                        struct stance *out)
{
    *out = (struct stance){
        .plan = plan, .index = index, .setup = &plan->setups[index], .state = state};
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        out->sag_m[axle] = sag_in_state(plan, out->setup, state, axle);
        out->lift_m[axle] = axle_lift_m(plan, axle);
    }
    set_changes(out);
}

struct stance *stances_make(const struct plan *plan, size_t index, const struct stance *fitted)
{
    size_t count = state_count(plan->specification);
    struct stance *stances = arena_allocate_array(plan->arena, count, sizeof *stances);
    for (size_t i = 0; i < count; i++) {
        make_stance(plan, index, state_at(plan->specification, i), &stances[i]);
        stances[i].fitted = fitted == NULL ? &stances[i] : &fitted[i];
    }
    return stances;
}

void stance_as_measured(const struct plan *plan, struct stance *out)
{
    *out = (struct stance){.plan = plan, .setup = &plan->setups[0], .as_measured = true};
    set_changes(out);
}

struct figure stance_figure(const struct stance *stance, enum quantity_id quantity, double value,
                            enum remark_id basis)
{
    struct figure figure = figure_of(quantity, value, NULL);
    figure.based = remark(basis);
    figure.state =
        stance->as_measured ? STATE_NONE : state_number(stance->plan->specification, stance->state);
    return figure;
}

struct figure judged_above_zero(struct figure figure, const struct need *needs, size_t need_count,
                                enum remark_id broken)
{
    bool nothing_left = known(figure.value) && meets_limit(figure.value, LIMIT_AT_MOST, 0);
    if (nothing_left)
        figure.limit = 0;
    figure.limit_owner = LIMIT_OF_PHYSICS;
    return judged(figure,
                  &(struct judgement){.needs = needs,
                                      .need_count = need_count,
                                      .holds = answer_of(known(figure.value), !nothing_left),
                                      .met_is_none = true,
                                      .if_broken = remark(broken)});
}

double height_in_stance_m(const struct stance *stance, double height_m, double at_m)
{
    if (stance->as_measured)
        return height_m;
    double wheelbase = stance->plan->specification->vehicle.wheelbase_m;
    return height_m + change_at_m(stance->body_change_m, at_m, wheelbase);
}
