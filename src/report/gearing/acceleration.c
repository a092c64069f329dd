/* How a setup accelerates beside the fitted tyres, and what all of the pull takes for granted. */
#include "base/known.h"
#include "compute/gearing.h"
#include "compute/load.h"
#include "report/gearing/pullers.h"

/* Inertia of the wheels: as given for both setups, or by rule from the masses of both. */
enum inertia_rule { INERTIA_LEFT_OUT, INERTIA_BY_MASS, INERTIA_GIVEN };

static enum inertia_rule inertia_rule(const struct setup *a, const struct setup *b)
{
    bool given = true, mass = true;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        given = given && known(a->axle[axle].inertia_kg_m2) && known(b->axle[axle].inertia_kg_m2);
        mass = mass && known(a->axle[axle].mass_kg) && known(b->axle[axle].mass_kg);
    }
    return given ? INERTIA_GIVEN : mass ? INERTIA_BY_MASS : INERTIA_LEFT_OUT;
}

static double rotating_of(const struct setup *setup, const struct tyre_dimensions *figures,
                          enum inertia_rule rule)
{
    double rotating = 0;
    for (int axle = 0; axle < AXLE_COUNT && rule != INERTIA_LEFT_OUT; axle++) {
        const struct tyre *tyre = &setup->axle[axle];
        double inertia = rule == INERTIA_GIVEN
                             ? tyre->inertia_kg_m2
                             : wheel_inertia_kg_m2(tyre->mass_kg, figures[axle].overall_diameter_m);
        rotating += tyres_on_axle(tyre_is_dual(tyre)) *
                    rotating_mass_kg(inertia, figures[axle].rolling_circumference_m);
    }
    return rotating;
}

static enum remark_id acceleration_basis(enum inertia_rule rule)
{
    switch (rule) {
    case INERTIA_GIVEN:
        return BASIS_ACCELERATION_GIVEN;
    case INERTIA_BY_MASS:
        return BASIS_ACCELERATION_BY_MASS;
    default:
        return BASIS_ACCELERATION;
    }
}

static double acceleration_in(const struct geared_setup *geared, const struct puller *puller,
                              double overall, double rotating_kg)
{
    double n = pull_peak_per_s(geared);
    double v = road_speed_mps(puller->circumference_m, n, overall, geared->slip);
    return acceleration_mps2(puller, pull_force_N(puller, n, overall), v, rotating_kg);
}

/* Both sides of the comparison: the vehicle, and the mass that its wheels' inertia adds. */
struct accelerated {
    struct puller puller;
    double rotating_kg;
};

static void add_acceleration(const struct geared_setup *geared, struct figure figure,
                             const struct accelerated *before, const struct accelerated *after,
                             size_t gear, size_t range)
{
    double was = acceleration_in(geared, &before->puller, fitted_overall_in(geared, gear, range),
                                 before->rotating_kg);
    double is = acceleration_in(geared, &after->puller, overall_in(geared, gear, range),
                                after->rotating_kg);
    figure.value = was > 0 ? is / was - 1 : UNKNOWN;
    if (was <= 0)
        figure.advice = remark(ADVICE_FITTED_SLOWS);
    else if (!known(figure.value))
        figure.advice = remark(ADVICE_SIZE_OF_BOTH);
    figure.place = place_in_gear(geared, gear, range);
    figure.place.engine_speed_per_s = pull_peak_per_s(geared);
    geared_add(geared, figure);
}

/* Beside the fitted tyres on the axle as it is, in the heaviest state, at the engine speed of most
 * torque. */
void report_acceleration(const struct geared_setup *geared)
{
    if (!pull_has_curve(geared) || !pull_weight_known(geared) ||
        (geared->setup->is_fitted && !geared->is_choice))
        return;
    const struct specification *specification = geared->plan->specification;
    const struct state *state = state_at(specification, pull_heaviest_state(geared));
    const struct setup *fitted = &geared->plan->fitted;
    enum inertia_rule rule = inertia_rule(fitted, geared->setup);
    const struct accelerated before = {pull_of_setup(geared, state, fitted, geared->from_m),
                                       rotating_of(fitted, geared->beside->before, rule)};
    const struct accelerated after = {pull_in_state(geared, state),
                                      rotating_of(geared->setup, geared->beside->after, rule)};
    struct figure figure =
        figure_by(QUANTITY_ACCELERATION_CHANGE, UNKNOWN, remark(acceleration_basis(rule)));
    figure.state = state_number(specification, state);
    for (size_t range = 0; range < geared->range_count; range++)
        for (size_t gear = 0; gear < geared->gears.count; gear++)
            add_acceleration(geared, figure, &before, &after, gear, range);
}

void report_pull_assumptions(const struct plan *plan, struct figures *figures)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    const struct vehicle *vehicle = &plan->specification->vehicle;
    if (drivetrain->engine.torque.count == 0)
        return;
    figures_assume(figures, !known(drivetrain->efficiency), remark(TAKEN_EFFICIENCY));
    if (!known(vehicle->unladen_kg.front) || !known(vehicle->unladen_kg.rear)) {
        figures_assume(figures, true, remark(TAKEN_NO_WEIGHT));
        return;
    }
    bool by_mass = false;
    for (size_t i = 1; i < plan->count; i++)
        by_mass = by_mass || inertia_rule(&plan->fitted, &plan->setups[i]) == INERTIA_BY_MASS;
    bool drag = known(vehicle->drag.coefficient) && known(vehicle->drag.area_m2);
    figures_assume(figures, !drag, remark(TAKEN_NO_DRAG));
    figures_assume(figures, drag && !known(vehicle->drag.air_density_kg_m3),
                   remark(TAKEN_AIR_DENSITY));
    figures_assume(figures, !known(drivetrain->rolling_resistance),
                   remark(TAKEN_ROLLING_RESISTANCE));
    figures_assume(figures, !known(drivetrain->grip), remark(TAKEN_NOT_TO_SPIN));
    figures_assume(figures, drivetrain->grades.count == 0, remark(TAKEN_GRADES));
    figures_assume(figures, by_mass, remark(TAKEN_GYRATION));
}
