/* Pull at the road, the grade that it climbs, the speed that it holds, and how it accelerates. */
#include "compute/pull.h"

#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "compute/axle_loads.h"
#include "compute/gearing.h"
#include "compute/load.h"
#include "report/gearing_view.h"

static const struct engine *engine_of(const struct drive_view *view)
{
    return &view->drivetrain->engine;
}

static bool has_curve(const struct drive_view *view)
{
    return engine_of(view)->torque.count > 0;
}

static double efficiency_of(const struct drive_view *view)
{
    return known_or(view->drivetrain->efficiency, EFFICIENCY_USUAL);
}

static double air_factor_of(const struct vehicle *vehicle)
{
    return known_or(air_factor(known_or(vehicle->drag.air_density_kg_m3, AIR_DENSITY_KG_M3),
                               vehicle->drag.coefficient, vehicle->drag.area_m2),
                    0);
}

static double grip_N(const struct plan *plan, const struct axle_loads *loads)
{
    double front = loads->axle_kg[AXLE_FRONT], rear = loads->axle_kg[AXLE_REAR], driven;
    switch (plan->specification->vehicle.drive) {
    case DRIVE_FRONT:
        driven = front;
        break;
    case DRIVE_PART_TIME_4WD:
    case DRIVE_FULL_TIME_4WD:
        driven = front + rear;
        break;
    default:
        driven = rear;
        break;
    }
    return plan->specification->drivetrain.grip * driven * GRAVITY_MPS2;
}

/* The vehicle of a state on a setup's tyres. The tow ball's load is part of the trailer. */
static struct puller puller_of(const struct drive_view *view, const struct state *state,
                               const struct setup *setup, double circumference_m)
{
    const struct specification *specification = view->plan->specification;
    struct axle_loads loads;
    axle_loads_in_state(specification, state, &view->plan->fitted, setup, &loads);
    double mass = loads.axle_kg[AXLE_FRONT] + loads.axle_kg[AXLE_REAR] - loads.tow_ball_kg +
                  higher_of(loads.trailer_kg, loads.tow_ball_kg);
    return (struct puller){
        .torque = &engine_of(view)->torque,
        .limit_per_s = engine_of(view)->limit_per_s,
        .efficiency = efficiency_of(view),
        .slip = view->slip,
        .circumference_m = circumference_m,
        .weight_N = mass * GRAVITY_MPS2,
        .grip_N = grip_N(view->plan, &loads),
        .air_N_s2_m2 = air_factor_of(&specification->vehicle),
        .rolling = view->drivetrain->rolling_resistance,
    };
}

static struct puller puller_in(const struct drive_view *view, const struct state *state)
{
    return puller_of(view, state, view->setup, view->to_m);
}

static bool weight_known(const struct drive_view *view)
{
    const struct specification *specification = view->plan->specification;
    return known(puller_in(view, state_at(specification, 0)).weight_N);
}

static size_t heaviest_state(const struct drive_view *view)
{
    const struct specification *specification = view->plan->specification;
    size_t heaviest = 0;
    double most = -INFINITY;
    for (size_t i = 0; i < state_count(specification); i++) {
        double weight = puller_in(view, state_at(specification, i)).weight_N;
        if (weight > most) {
            most = weight;
            heaviest = i;
        }
    }
    return heaviest;
}

static double force_at(const struct puller *puller, double engine_speed, double overall)
{
    return tractive_force_N(
        wheel_torque_Nm(torque_at_Nm(puller->torque, engine_speed), overall, puller->efficiency),
        puller->circumference_m);
}

static double peak_per_s(const struct drive_view *view)
{
    return peak_torque_per_s(&engine_of(view)->torque, engine_of(view)->limit_per_s);
}

static void report_pull_at(const struct drive_view *view, size_t gear, size_t range,
                           double engine_speed)
{
    struct arena *arena = view->plan->arena;
    double overall = overall_in(view, gear, range);
    double torque = wheel_torque_Nm(torque_at_Nm(&engine_of(view)->torque, engine_speed), overall,
                                    efficiency_of(view));
    struct figure figure =
        drive_figure(view, QUANTITY_WHEEL_TORQUE, torque, "torque x overall ratio x efficiency");
    figure.at = arena_format(arena, "%s, %s", gear_text(view, gear, range),
                             rotation_text(view, engine_speed));
    bool peak = engine_speed == peak_per_s(view);
    figure.headline = peak ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    drive_add(view, figure);
    figure.quantity = QUANTITY_TRACTIVE_FORCE;
    figure.value = tractive_force_N(torque, view->to_m);
    figure.basis = "wheel torque x 2 pi / C";
    figure.line = figure.at;
    figure.at = arena_format(
        arena, "%s, %s", figure.at,
        speed_text(view, road_speed_mps(view->to_m, engine_speed, overall, view->slip)));
    drive_add(view, figure);
}

/* At every point of the curve below the limit, and at the limit where the curve passes it. */
void report_pull(const struct drive_view *view)
{
    const struct pair_list *torque = &engine_of(view)->torque;
    double limit = engine_of(view)->limit_per_s;
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
        figure.at = speed_text(view, v);
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
    double overall = overall_in(view, gear, range), n = peak_per_s(view);
    double v = road_speed_mps(view->to_m, n, overall, view->slip);
    struct climb climb = grade_climbed(puller, force_at(puller, n, overall), v);
    figure.value = climb.grade;
    figure.line = view->is_choice ? NULL : gear_text(view, gear, range);
    figure.at = arena_format(view->plan->arena, "%s, %s", gear_text(view, gear, range),
                             rotation_text(view, n));
    if (climb.limit == CLIMB_ENGINE) {
        figure.basis = "theta = asin(((F - A)/W) / sqrt(1 + f^2)) - atan f, tan theta";
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

void report_grades(const struct drive_view *view)
{
    const struct specification *specification = view->plan->specification;
    if (!has_curve(view) || !weight_known(view))
        return;
    size_t heaviest = heaviest_state(view);
    for (size_t i = 0; i < state_count(specification); i++) {
        const struct state *state = state_at(specification, i);
        const struct puller puller = puller_in(view, state);
        struct figure figure = drive_figure(view, QUANTITY_GRADE, UNKNOWN, NULL);
        figure.state = state_name(state);
        if (view->setup->is_fitted && !view->is_choice)
            report_resistances(view, &puller, figure, i == heaviest);
        figure.headline = i == heaviest ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
        report_grip_grade(view, &puller, figure);
        for (size_t range = 0; range < view->range_count; range++)
            for (size_t gear = 0; gear < view->gears.count; gear++)
                report_grade(view, &puller, figure, gear, range);
    }
}

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

void report_held(const struct drive_view *view)
{
    const struct specification *specification = view->plan->specification;
    if (!has_curve(view) || !weight_known(view))
        return;
    struct number_list grades = asked_grades(view);
    size_t heaviest = heaviest_state(view);
    for (size_t i = 0; i < state_count(specification); i++) {
        const struct state *state = state_at(specification, i);
        const struct puller puller = puller_in(view, state);
        struct figure figure = drive_figure(view, QUANTITY_SPEED_HELD, UNKNOWN, NULL);
        figure.state = state_name(state);
        figure.headline = i == heaviest ? HEADLINE_YES : HEADLINE_ROWS_ONLY;
        for (size_t j = 0; j < grades.count; j++)
            report_held_on(view, &puller, figure, grades.items[j]);
    }
}

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
        rotating += (tyre_is_dual(tyre) ? 4 : 2) *
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
    double n = peak_per_s(view);
    double v = road_speed_mps(puller->circumference_m, n, overall, view->slip);
    return acceleration_mps2(puller, force_at(puller, n, overall), v, rotating_kg);
}

/* Beside the fitted drive, in the heaviest state, at the engine speed of most torque. */
void report_acceleration(const struct drive_view *view)
{
    if (!has_curve(view) || !weight_known(view) || (view->setup->is_fitted && !view->is_choice))
        return;
    const struct state *state = state_at(view->plan->specification, heaviest_state(view));
    const struct setup *fitted = &view->plan->fitted;
    const struct puller before = puller_of(view, state, fitted, view->from_m);
    const struct puller after = puller_in(view, state);
    enum inertia_rule rule = inertia_rule(fitted, view->setup);
    double before_kg = rotating_of(fitted, view->beside->before, rule);
    double after_kg = rotating_of(view->setup, view->beside->after, rule);
    struct figure figure =
        drive_figure(view, QUANTITY_ACCELERATION_CHANGE, UNKNOWN, acceleration_basis(rule));
    figure.state = state_name(state);
    for (size_t range = 0; range < view->range_count; range++)
        for (size_t gear = 0; gear < view->gears.count; gear++) {
            double was =
                acceleration_in(view, &before, fitted_overall_in(view, gear, range), before_kg);
            double is = acceleration_in(view, &after, overall_in(view, gear, range), after_kg);
            figure.value = was > 0 ? is / was - 1 : UNKNOWN; /* it slows down as it is */
            figure.line = gear_text(view, gear, range);
            figure.at = arena_format(view->plan->arena, "%s, %s", figure.line,
                                     rotation_text(view, peak_per_s(view)));
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
