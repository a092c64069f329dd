#include "report/gearing/pullers.h"

#include "base/known.h"
#include "base/units.h"
#include "compute/axle_loads.h"
#include "compute/load.h"

const struct engine *pull_engine(const struct geared_setup *geared)
{
    return &geared->drivetrain->engine;
}

bool pull_has_curve(const struct geared_setup *geared)
{
    return pull_engine(geared)->torque.count > 0;
}

double pull_efficiency(const struct geared_setup *geared)
{
    return known_or(geared->drivetrain->efficiency, EFFICIENCY_USUAL);
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
    return plan->specification->drivetrain.grip * driven * GRAVITY_M_S2;
}

/* The vehicle of a state on a setup's tyres. The tow ball's load is part of the trailer. */
struct puller pull_of_setup(const struct geared_setup *geared, const struct state *state,
                            const struct setup *setup, double circumference_m)
{
    const struct specification *specification = geared->plan->specification;
    struct axle_loads loads;
    axle_loads_in_state(specification, state, &geared->plan->fitted, setup, &loads);
    double mass = loads.axle_kg[AXLE_FRONT] + loads.axle_kg[AXLE_REAR] - loads.tow_ball_kg +
                  higher_of(loads.trailer_kg, loads.tow_ball_kg);
    return (struct puller){
        .torque = &pull_engine(geared)->torque,
        .limit_per_s = pull_engine(geared)->limit_per_s,
        .efficiency = pull_efficiency(geared),
        .slip = geared->slip,
        .circumference_m = circumference_m,
        .weight_N = mass * GRAVITY_M_S2,
        .grip_N = grip_N(geared->plan, &loads),
        .air_N_s2_m2 = air_factor_of(&specification->vehicle),
        .rolling = geared->drivetrain->rolling_resistance,
    };
}

struct puller pull_in_state(const struct geared_setup *geared, const struct state *state)
{
    return pull_of_setup(geared, state, geared->setup, geared->to_m);
}

bool pull_weight_known(const struct geared_setup *geared)
{
    const struct specification *specification = geared->plan->specification;
    return known(pull_in_state(geared, state_at(specification, 0)).weight_N);
}

size_t pull_heaviest_state(const struct geared_setup *geared)
{
    const struct specification *specification = geared->plan->specification;
    size_t heaviest = 0;
    double most = -INFINITY;
    for (size_t i = 0; i < state_count(specification); i++) {
        double weight = pull_in_state(geared, state_at(specification, i)).weight_N;
        if (weight > most) {
            most = weight;
            heaviest = i;
        }
    }
    return heaviest;
}

void pull_each_state(const struct geared_setup *geared, enum quantity_id quantity,
                     void (*report)(const struct geared_setup *geared, const struct puller *puller,
                                    struct figure figure, bool heaviest))
{
    const struct specification *specification = geared->plan->specification;
    if (!pull_has_curve(geared) || !pull_weight_known(geared))
        return;
    size_t heaviest = pull_heaviest_state(geared);
    for (size_t i = 0; i < state_count(specification); i++) {
        if (geared->is_choice && i != heaviest)
            continue;
        const struct state *state = state_at(specification, i);
        const struct puller puller = pull_in_state(geared, state);
        struct figure figure = figure_of(quantity, UNKNOWN);
        figure.state = state_number(geared->plan->specification, state);
        report(geared, &puller, figure, i == heaviest);
    }
}

double pull_force_N(const struct puller *puller, double engine_speed, double overall)
{
    return tractive_force_N(
        wheel_torque_Nm(torque_at_Nm(puller->torque, engine_speed), overall, puller->efficiency),
        puller->circumference_m);
}

double pull_peak_per_s(const struct geared_setup *geared)
{
    return peak_torque_per_s(&pull_engine(geared)->torque, pull_engine(geared)->limit_per_s);
}
