#include "report/clearance/stance.h"

#include "base/known.h"
#include "compute/clearance.h"
#include "compute/deflection.h"
#include "compute/load.h"
#include "compute/springs.h"
#include "report/judge.h"

const struct axle_suspension *suspension_of(const struct plan *plan, int axle)
{
    return suspension_at(&plan->specification->suspension, axle);
}

struct plan plan_with_spring(const struct plan *plan, struct specification *with_it, int axle,
                             const struct spring_choice *choice)
{
    struct plan other = *plan;
    *with_it = *plan->specification;
    plan_try_spring(&other, with_it, axle, choice, 0);
    other.specification = with_it;
    return other;
}

static double weight_at_wheel_N(double axle_kg)
{
    return axle_kg * GRAVITY_M_S2 / 2;
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

/* What a state adds to each axle; tyres and wheels do not ride on the springs, and change with the
 * setup and not with the state. */
static void set_added(struct stance *stance)
{
    const struct plan *plan = stance->plan;
    struct axle_loads loads;
    if (nothing_added(plan, stance->setup, stance->state))
        return;
    axle_loads_in_state(plan->specification, stance->state, &plan->fitted, stance->setup, &loads);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        double added = loads.axle_kg[axle] -
                       of_axle(plan->specification->vehicle.unladen_kg, axle) -
                       tyre_mass_change_kg(&plan->fitted, stance->setup, (enum axle)axle);
        /* Added and taken off alike: no rate is needed. */
        stance->added_kg[axle] = fabs(added) < 1e-9 ? 0 : added;
    }
}

static double sag_m(const struct stance *stance, int axle, double added)
{
    if (added == 0)
        return 0;
    struct spring spring;
    spring_of_axle(suspension_of(stance->plan, axle), &spring);
    return spring_travel_m(&spring, weight_at_wheel_N(added));
}

static double deflection_m(const struct stance *stance, int axle, double added)
{
    const struct tyre *tyre = &stance->setup->axle[axle];
    double tyres = tyres_on_axle(tyre_is_dual(tyre));
    double unladen = of_axle(stance->plan->specification->vehicle.unladen_kg, axle);
    if (added == 0)
        return 0;
    if (isinf(stance->pressure_Pa[axle]))
        return UNKNOWN;
    return added_deflection_m(&stance->plan->beside[stance->index].after[axle], &tyre->size,
                              stance->pressure_Pa[axle], unladen / tyres,
                              (unladen + added) / tyres);
}

/* Whether a pressure that is named stays: where it is too low or too high, another is to be set. */
static bool stays(const struct axle_pressures *axle, double named_Pa)
{
    return known(named_Pa) && (!isfinite(axle->recommended_Pa) ||
                               (meets_limit(named_Pa, LIMIT_AT_LEAST, axle->needed_Pa) &&
                                !clearly_above(named_Pa, axle->ceilings.sure_Pa)));
}

/* The pressure that the fitted tyre has by the placard, and an option is set to, or to be. In whole
 * metric steps, whatever units are asked for: no verdict depends on them. */
static double pressure_when_driven_Pa(const struct plan *plan, size_t index, int axle)
{
    const struct load_conditions conditions = {plan->specification, &plan->fitted, PRESSURE_METRIC};
    struct axle_pressures pressures;
    if (plan->setups[index].is_fitted)
        return placard_Pa(plan->specification, (enum axle)axle);
    axle_pressures(&conditions, &plan->setups[index], (enum axle)axle, &pressures);
    double named_Pa = as_set_Pa(&plan->setups[index], (enum axle)axle);
    return stays(&pressures, named_Pa) ? named_Pa : pressures.recommended_Pa;
}

double radius_change_m(const struct plan *plan, size_t index, int axle)
{
    const struct beside *beside = &plan->beside[index];
    return beside->after[axle].static_loaded_radius_m - beside->before[axle].static_loaded_radius_m;
}

static void set_changes(struct stance *stance)
{
    const struct stance *fitted = stance->fitted;
    double ride[AXLE_COUNT], tyre[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        double radius = radius_change_m(stance->plan, stance->index, axle);
        double gives = stance->deflection_m[axle];
        ride[axle] = radius - gives + stance->lift_m[axle] - stance->sag_m[axle];
        tyre[axle] = radius - (fitted == stance ? 0 : gives - fitted->deflection_m[axle]);
        stance->radius_m[axle] =
            stance->plan->beside[stance->index].after[axle].static_loaded_radius_m - gives;
    }
    stance->body_change_m = (struct axle_pair){ride[AXLE_FRONT], ride[AXLE_REAR]};
    stance->tyre_change_m = (struct axle_pair){tyre[AXLE_FRONT], tyre[AXLE_REAR]};
}

static void make_stance(const struct plan *plan, size_t index, size_t state,
                        const double pressure_Pa[AXLE_COUNT], struct stance *out)
{
    *out = (struct stance){.plan = plan,
                           .index = index,
                           .setup = &plan->setups[index],
                           .state = state_at(plan->specification, state),
                           .fitted = out};
    set_added(out);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        out->pressure_Pa[axle] = pressure_Pa[axle];
        out->deflection_m[axle] = deflection_m(out, axle, out->added_kg[axle]);
    }
}

/* What hangs on springs and lift. */
static void set_springs(struct stance *stance)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        stance->sag_m[axle] = sag_m(stance, axle, stance->added_kg[axle]);
        stance->lift_m[axle] = axle_lift_m(stance->plan->specification, axle);
    }
    set_changes(stance);
}

struct stance *stances_make(const struct plan *plan, size_t index, const struct stance *fitted)
{
    size_t count = state_count(plan->specification);
    struct stance *stances = arena_allocate_array(plan->arena, count, sizeof *stances);
    double pressure_Pa[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        pressure_Pa[axle] = pressure_when_driven_Pa(plan, index, axle);
    for (size_t i = 0; i < count; i++) {
        make_stance(plan, index, i, pressure_Pa, &stances[i]);
        if (fitted != NULL)
            stances[i].fitted = &fitted[i];
        set_springs(&stances[i]);
    }
    return stances;
}

struct standing *standing_make(const struct plan *plan, const struct standing *fitted)
{
    struct standing *standing = arena_allocate(plan->arena, sizeof *standing);
    standing->plan = plan;
    standing->setups = arena_allocate_array(plan->arena, plan->count, sizeof *standing->setups);
    standing->setups[0] = fitted == NULL ? stances_make(plan, 0, NULL) : fitted->setups[0];
    for (size_t i = 1; i < plan->count; i++)
        standing->setups[i] = stances_make(plan, i, standing->setups[0]);
    return standing;
}

void standing_set_springs(struct standing *standing)
{
    size_t states = state_count(standing->plan->specification);
    for (size_t i = 1; i < standing->plan->count; i++)
        for (size_t j = 0; j < states; j++)
            set_springs(&standing->setups[i][j]);
}

double stance_radius_m(const struct plan *plan, size_t index, int state, int axle)
{
    struct stance stance;
    double pressure_Pa[AXLE_COUNT] = {UNKNOWN, UNKNOWN};
    pressure_Pa[axle] = pressure_when_driven_Pa(plan, index, axle);
    make_stance(plan, index, (size_t)state, pressure_Pa, &stance);
    set_springs(&stance);
    return stance.radius_m[axle];
}

struct need deflection_need(const struct stance *stance, int axle)
{
    double pressure_Pa = stance->pressure_Pa[axle];
    bool radial = stance->setup->axle[axle].size.construction == CONSTRUCTION_RADIAL;
    enum remark_id lacks = !radial                    ? ADVICE_NO_TYRE_DEFLECTION
                           : isinf(pressure_Pa)       ? ADVICE_REFUSED_DEFLECTION
                           : known(pressure_Pa)       ? ADVICE_DEFLECTS_TOO_FAR
                           : stance->setup->is_fitted ? ADVICE_GIVE_PLACARD
                                                      : ADVICE_PRESSURE_UNKNOWN;
    return (struct need){known(stance->deflection_m[axle]), remark(lacks)};
}

struct need sag_need(const struct stance *stance, int of_axle, bool is_known)
{
    if (is_known) /* as most are, in every tyre that is tried */
        return (struct need){true, remark(REMARK_NONE)};
    bool loads = true, rates = true;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        bool asked = of_axle == AXLE_NONE || of_axle == axle;
        loads = loads && (!asked || known(stance->added_kg[axle]));
        rates = rates && (!asked || known(sag_m(stance, axle, 1)));
    }
    enum remark_id lacks = loads ? ADVICE_GIVE_RATE : ADVICE_GIVE_LOADS_AND_RATE;
    if (rates)
        lacks = loads ? ADVICE_GIVE_DIAMETERS : ADVICE_GIVE_UNLADEN;
    return (struct need){false, remark(lacks)};
}

void stance_needs(const struct stance *stance, struct need needs[STANCE_NEEDS])
{
    bool springs = true;
    struct need tyres = deflection_need(stance, AXLE_FRONT);
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        springs = springs && known(radius_change_m(stance->plan, stance->index, axle) +
                                   stance->lift_m[axle] - stance->sag_m[axle]);
    needs[0] = sag_need(stance, AXLE_NONE, springs);
    needs[1] = tyres.known ? deflection_need(stance, AXLE_REAR) : tyres;
}

void stance_as_measured(const struct plan *plan, struct stance *out)
{
    *out = (struct stance){
        .plan = plan, .setup = &plan->setups[0], .fitted = out, .as_measured = true};
    set_changes(out);
}

void stance_unladen(const struct plan *plan, struct stance *out)
{
    stance_as_measured(plan, out);
    set_springs(out);
}

struct figure stance_figure(const struct stance *stance, enum quantity_id quantity, double value,
                            enum remark_id basis)
{
    struct figure figure = figure_of(quantity, value);
    figure.basis = remark(basis);
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
