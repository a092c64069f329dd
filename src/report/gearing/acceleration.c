/* How the drive accelerates beside the fitted one, and what all of the pull takes for granted. */
#include "base/known.h"
#include "compute/gearing.h"
#include "compute/load.h"
#include "report/gearing/pull_view.h"

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

static double rotating_of(const struct setup *setup, const struct tyre_figures *figures,
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

static const char *acceleration_basis(enum inertia_rule rule)
{
    switch (rule) {
    case INERTIA_GIVEN:
        return "(F - A - f W) / (m + sum of I (2 pi/C)^2), inertia as given, level";
    case INERTIA_BY_MASS:
        return "(F - A - f W) / (m + sum of I (2 pi/C)^2), I = m (0.7 D/2)^2, level";
    default:
        return "(F - A - f W) / m, no inertia of wheels, level";
    }
}

static double acceleration_in(const struct drive_view *view, const struct puller *puller,
                              double overall, double rotating_kg)
{
    double n = pull_peak_per_s(view);
    double v = road_speed_mps(puller->circumference_m, n, overall, view->slip);
    return acceleration_mps2(puller, pull_force_N(puller, n, overall), v, rotating_kg);
}

/* Beside the fitted drive, in the heaviest state, at the engine speed of most torque. */
void report_acceleration(const struct drive_view *view)
{
    if (!pull_has_curve(view) || !pull_weight_known(view) ||
        (view->setup->is_fitted && !view->is_choice))
        return;
    const struct state *state = state_at(view->plan->specification, pull_heaviest_state(view));
    const struct setup *fitted = &view->plan->fitted;
    const struct puller before = pull_of_setup(view, state, fitted, view->from_m);
    const struct puller after = pull_in_state(view, state);
    enum inertia_rule rule = inertia_rule(fitted, view->setup);
    double before_kg = rotating_of(fitted, view->beside->before, rule);
    double after_kg = rotating_of(view->setup, view->beside->after, rule);
    struct figure figure =
        figure_of(QUANTITY_ACCELERATION_CHANGE, UNKNOWN, acceleration_basis(rule));
    figure.state = state_number(view->plan->specification, state);
    for (size_t range = 0; range < view->range_count; range++)
        for (size_t gear = 0; gear < view->gears.count; gear++) {
            double was =
                acceleration_in(view, &before, fitted_overall_in(view, gear, range), before_kg);
            double is = acceleration_in(view, &after, overall_in(view, gear, range), after_kg);
            figure.value = was > 0 ? is / was - 1 : UNKNOWN;
            figure.action = was <= 0 ? "the fitted drive slows down there: nothing to compare with"
                            : known(figure.value) ? NULL
                                                  : "the size of both tyres is needed";
            figure.line = gear_text(view, gear, range);
            figure.at = arena_format(view->plan->arena, "%s, %s", figure.line,
                                     rotation_text(view, pull_peak_per_s(view)));
            drive_add(view, figure);
        }
}

void report_pull_assumptions(const struct plan *plan,
                             void (*add)(struct figures *figures, const char *text),
                             struct figures *figures)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    const struct vehicle *vehicle = &plan->specification->vehicle;
    if (drivetrain->engine.torque.count == 0)
        return;
    if (!known(drivetrain->efficiency))
        add(figures, "no efficiency is given: 85 % is taken (handbooks: 85 to 90 %)");
    if (!known(vehicle->unladen_kg.front) || !known(vehicle->unladen_kg.rear)) {
        add(figures, "no vehicle: unladen is given: no grade or speed held is worked out");
        return;
    }
    bool by_mass = false;
    for (size_t i = 1; i < plan->count; i++)
        by_mass = by_mass || inertia_rule(&plan->fitted, &plan->setups[i]) == INERTIA_BY_MASS;
    bool drag = known(vehicle->drag.coefficient) && known(vehicle->drag.area_m2);
    const struct {
        bool taken;
        const char *text;
    } assumed[] = {
        {!drag, "no vehicle: drag is given: air resistance is left out"},
        {drag && !known(vehicle->drag.air_density_kg_m3),
         "no air_density is given: 1.225 kg/m3 is taken (ISO 2533, sea level)"},
        {!known(drivetrain->rolling_resistance),
         "no rolling_resistance is given: 0.01 (1 + V/147) is taken, V in ft/s, for paved roads"},
        {!known(drivetrain->grip), "no grip is given: the wheels are taken not to spin"},
        {drivetrain->grades.count == 0, "no grades are given: 5 % and 10 % are taken"},
        {by_mass, "no inertia is given: tyre and wheel are taken to turn with a radius of gyration "
                  "of 0.7 of the free radius (common practice, no source)"},
    };
    for (size_t i = 0; i < sizeof assumed / sizeof assumed[0]; i++)
        if (assumed[i].taken)
            add(figures, assumed[i].text);
}
