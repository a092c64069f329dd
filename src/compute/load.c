#include "compute/load.h"

#include <string.h>

#include "base/known.h"
#include "tables/lookup.h"

size_t state_count(const struct specification *specification)
{
    return specification->states.count > 0 ? specification->states.count : 1;
}

const struct state *state_at(const struct specification *specification, size_t index)
{
    return specification->states.count > 0 ? &specification->states.items[index] : NULL;
}

const char *state_name(const struct state *state)
{
    return state == NULL ? "everything" : state->name;
}

int state_number(const struct specification *specification, const struct state *state)
{
    return state == NULL ? 0 : (int)(state - specification->states.items);
}

double placard_Pa(const struct specification *specification, enum axle axle)
{
    return of_axle(specification->tyres.fitted.placard_Pa, axle);
}

double load_reserve(const struct specification *specification)
{
    return known_or(specification->limits.load_reserve, 0);
}

double load_within_kg(const struct specification *specification, double capacity_kg)
{
    return capacity_kg / (1 + load_reserve(specification));
}

double tyre_doubt_kg(const struct specification *specification, bool dual)
{
    return known_or(specification->measured.scale_kg, 0) / tyres_on_axle(dual);
}

/* What each tyre and wheel of an axle bears where the axle bears all that it is rated for. */
static double rated_for_kg(const struct specification *specification, enum axle axle, bool dual)
{
    double rating_kg = axle == AXLE_FRONT ? specification->vehicle.ratings.front_kg
                                          : specification->vehicle.ratings.rear_kg;
    return rating_kg / tyres_on_axle(dual);
}

double tyre_load_kg(const struct specification *specification, const struct axle_loads *loads,
                    enum axle axle, bool dual)
{
    double track_m = of_axle(specification->vehicle.track_m, axle);
    return heavier_corner_kg(loads, axle, track_m) / (tyres_on_axle(dual) / 2.0);
}

double axle_left_kg(const struct specification *specification, const struct axle_loads *loads,
                    enum axle axle, bool dual, double each_kg)
{
    return tyres_on_axle(dual) * (each_kg - tyre_load_kg(specification, loads, axle, dual));
}

struct bearing tyre_bearing(const struct specification *specification,
                            const struct tyre_rating *rating, const struct ceilings *ceilings,
                            bool dual, const struct pressure_demands *demands)
{
    const struct pressure_demands others = {.replaced_Pa = known_or(demands->replaced_Pa, 0),
                                            .built_Pa = 0,
                                            .rated_Pa = demands->rated_Pa,
                                            .placard_Pa = demands->placard_Pa,
                                            .built_least_Pa = UNKNOWN};
    enum pressure_reason reason =
        choose_pressure(&others, rating, ceilings, PRESSURE_METRIC).reason;
    double sure_kg = capacity_under_kg(rating, dual, ceilings->sure_Pa);
    double highest_kg = capacity_under_kg(rating, dual, ceilings->highest_Pa);
    double doubt_kg = tyre_doubt_kg(specification, dual);
    double most_kg = load_within_kg(specification, highest_kg) + doubt_kg;
    if (reason == REASON_REFUSED)
        return (struct bearing){UNKNOWN, UNKNOWN};
    if (reason == REASON_UNREAD)
        return (struct bearing){most_kg, most_kg};
    return (struct bearing){load_within_kg(specification, sure_kg) - doubt_kg, most_kg};
}

/* Load of the heaviest tyre on an axle over all states: the corner, shared by twins. */
static void find_heaviest(const struct load_conditions *conditions, const struct setup *setup,
                          enum axle axle, struct axle_pressures *out)
{
    const struct specification *specification = conditions->specification;
    double track_m = of_axle(specification->vehicle.track_m, axle);
    out->load_built_kg = out->load_whole_side_kg = UNKNOWN;
    out->heaviest_state = STATE_UNKNOWN;
    for (size_t i = 0; i < state_count(specification); i++) {
        const struct state *state = state_at(specification, i);
        struct axle_loads loads;
        axle_loads_in_state(specification, state, conditions->fitted, setup, &loads);
        double load = /* unknown too where the moments would lift the axle */
            tyre_load_kg(specification, &loads, axle, out->dual);
        if (!known(load)) { /* one state that cannot be told may be the heaviest */
            out->load_built_kg = out->load_whole_side_kg = UNKNOWN;
            return;
        }
        double tyres = tyres_on_axle(out->dual), even = loads.axle_kg[axle] / tyres;
        double whole_side = side_shift_kg(&loads, axle, 1, track_m) * 2 / tyres;
        out->load_whole_side_kg = higher_of(out->load_whole_side_kg, even + whole_side);
        if (!known(out->load_built_kg) || clearly_above(load, out->load_built_kg)) {
            out->load_built_kg = load;
            out->load_side_kg = load - even;
            out->heaviest_state = (int)i;
        }
    }
}

/* Capacity of the fitted tyre at the placard: the demand that the option must meet, axle for axle.
 * A passenger tyre on a light truck counts divided on both sides: its maker divided it before it
 * met the axle rating (49 CFR 571.110 S4.2.2.2; NHTSA interpretation nht76-1.47), so that the
 * fitted one never carried more, and the same tyre again carries as much. */
static double replaced_demand_kg(const struct load_conditions *conditions, enum axle axle,
                                 const struct tyre_rating *fitted, double pressure_Pa, bool dual)
{
    bool was_dual = tyre_is_dual(&conditions->fitted->axle[axle]);
    return capacity_kg(fitted, was_dual, pressure_Pa) * tyres_on_axle(was_dual) /
           tyres_on_axle(dual);
}

/* The pressure that meets it, with what the top speed adds and is not in the fitted tyre's own. */
static double replaced_Pa(const struct tyre_rating *fitted, const struct tyre_rating *rating,
                          bool dual, double demand_kg)
{
    return pressure_for_load_Pa(rating, dual, demand_kg) +
           fmax(rating->speed_pressure_Pa - fitted->speed_pressure_Pa, 0);
}

/* Demands, each as a pressure. The axle rating counts whatever is aboard today: 49 CFR 571.110
 * S4.2.2.2 and 571.120 S5.1.2 ask it of the tyres that a maker fits. */
static struct pressure_demands find_demands(const struct tyre_rating *fitted, bool is_fitted,
                                            const struct axle_pressures *out)
{
    const struct tyre_rating *rating = &out->rating;
    double for_speed = rating->speed_pressure_Pa;
    return (struct pressure_demands){
        .replaced_Pa = is_fitted /* it replaces nothing: the placard is the starting point */
                           ? out->placard_Pa
                           : replaced_Pa(fitted, rating, out->dual, out->demand_replaced_kg),
        .built_Pa = pressure_for_load_Pa(rating, out->dual, out->demand_built_kg) + for_speed,
        .rated_Pa = pressure_for_load_Pa(rating, out->dual, out->demand_rated_kg) + for_speed,
        /* A pressure for tyres of one group says nothing of another: 450 kPa of a commercial tyre
         * are above what a passenger tyre may have, and what the axle needs is in the others. */
        .placard_Pa = placard_is_for(out, tyre_group(rating->class)) ? out->placard_Pa : UNKNOWN,
        .built_least_Pa = pressure_for_load_Pa(rating, out->dual, out->demand_least_kg) + for_speed,
    };
}

static void find_capacities(struct axle_pressures *out)
{
    const struct tyre_rating *rating = &out->rating;
    out->capacity_at_placard_kg = capacity_kg(rating, out->dual, out->placard_Pa);
    out->capacity_max_kg = capacity_max_kg(rating, out->dual);
    bool allowed = isfinite(out->recommended_Pa);
    out->capacity_at_recommended_kg =
        allowed ? capacity_kg(rating, out->dual, out->recommended_Pa) : UNKNOWN;
    out->capacity_least_told_kg =
        allowed ? capacity_kg(rating, out->dual, out->least_told_Pa) : UNKNOWN;
    out->capacity_sure_kg = capacity_under_kg(rating, out->dual, out->ceilings.sure_Pa);
    out->capacity_highest_kg = capacity_under_kg(rating, out->dual, out->ceilings.highest_Pa);
}

/* What the vehicle's maker lets such a tyre bear is sure, where that is a passenger tyre like the
 * fitted one; of others the moulded maximum alone tells. */
static double proven_Pa(const struct axle_pressures *axle)
{
    enum tyre_group group = tyre_group(axle->rating.class);
    return group == GROUP_PASSENGER && placard_is_for(axle, group) ? axle->placard_Pa : UNKNOWN;
}

/* Whether the axle stands on the wheel that it has now. */
static bool is_fitted_wheel(const struct tyre *now, const struct tyre *tyre)
{
    return tyre->wheel.given == now->wheel.given && same_rim_code(tyre, now);
}

static void find_wheel(const struct load_conditions *conditions, const struct tyre *tyre,
                       enum axle axle, struct axle_pressures *out)
{
    const struct tyre *now = &conditions->fitted->axle[axle];
    bool stays = is_fitted_wheel(now, tyre);
    out->wheel_load_kg = tyre->wheel.max_load_kg;
    out->wheel_pressure_Pa = tyre->wheel.max_pressure_Pa;
    if (!known(out->wheel_load_kg) && stays)
        out->wheel_load_kg = rated_for_kg(conditions->specification, axle, tyre_is_dual(now));
    if (!known(out->wheel_pressure_Pa) && stays)
        out->wheel_pressure_Pa = out->placard_Pa;
    out->wheel_assumed = (known(out->wheel_load_kg) && !known(tyre->wheel.max_load_kg)) ||
                         (known(out->wheel_pressure_Pa) && !known(tyre->wheel.max_pressure_Pa));
}

double as_set_Pa(const struct setup *setup, enum axle axle)
{
    return setup->as_set == NULL ? UNKNOWN : of_axle(setup->as_set->pressure_Pa, axle);
}

void axle_pressures(const struct load_conditions *conditions, const struct setup *setup,
                    enum axle axle, struct axle_pressures *out)
{
    const struct specification *specification = conditions->specification;
    const struct vehicle *vehicle = &specification->vehicle;
    const struct tyre *tyre = &setup->axle[axle];
    struct tyre_rating fitted;
    *out = (struct axle_pressures){.dual = tyre_is_dual(tyre)};
    tyre_rate(tyre, vehicle->kind, vehicle->top_speed_mps, &out->rating);
    tyre_rate(&conditions->fitted->axle[axle], vehicle->kind, vehicle->top_speed_mps, &fitted);
    out->placard_group = tyre_group(fitted.class);
    out->fitted_unread = !known(fitted.reference_Pa);
    out->placard_Pa = placard_Pa(specification, axle);
    out->floor_Pa = out->rating.floor_Pa[conditions->system];
    out->ceilings = ceilings_of(&out->rating, &tyre->wheel, proven_Pa(out));
    find_heaviest(conditions, setup, axle, out);
    out->demand_replaced_kg =
        replaced_demand_kg(conditions, axle, &fitted, out->placard_Pa, out->dual);
    double doubt_kg = tyre_doubt_kg(specification, out->dual);
    double reserve = load_reserve(specification);
    out->demand_built_kg = (out->load_built_kg + doubt_kg) * (1 + reserve);
    out->demand_least_kg = (out->load_built_kg - doubt_kg) * (1 + reserve);
    out->demand_rated_kg = rated_for_kg(specification, axle, out->dual);
    out->demands = find_demands(&fitted, setup->is_fitted, out);
    struct pressure_choice choice =
        choose_pressure(&out->demands, &out->rating, &out->ceilings, conditions->system);
    out->needed_Pa = choice.needed_Pa;
    out->recommended_Pa = choice.recommended_Pa;
    out->least_told_Pa = choice.least_told_Pa;
    out->most_told_Pa = choice.most_told_Pa;
    out->reason = choice.reason;
    out->stands_Pa = known_or(as_set_Pa(setup, axle), out->placard_Pa);
    find_capacities(out);
    find_wheel(conditions, tyre, axle, out);
}

void equal_load_find(const struct load_conditions *conditions, const struct setup *setup,
                     enum axle axle, struct equal_load *out)
{
    const struct vehicle *vehicle = &conditions->specification->vehicle;
    const struct tyre *tyre = &setup->axle[axle], *now = &conditions->fitted->axle[axle];
    bool dual = tyre_is_dual(tyre);
    struct tyre_rating rating, fitted;
    tyre_rate(tyre, vehicle->kind, vehicle->top_speed_mps, &rating);
    tyre_rate(now, vehicle->kind, vehicle->top_speed_mps, &fitted);
    double placard = placard_Pa(conditions->specification, axle);
    *out = (struct equal_load){
        .reference_Pa = nominal_told_Pa(rating.reference_Pa, conditions->system == PRESSURE_US),
        .fitted_Pa = known_or(placard, fitted.reference_Pa),
    };
    out->pressure_Pa = out->fitted_Pa;
    if (setup->is_fitted)
        return;
    double pressure =
        replaced_Pa(&fitted, &rating, dual,
                    replaced_demand_kg(conditions, axle, &fitted, out->fitted_Pa, dual));
    double ceiling = ceilings_of(&rating, &tyre->wheel, UNKNOWN).highest_Pa;
    out->pressure_Pa =
        known(pressure) ? fmax(pressure, rating.floor_Pa[conditions->system]) : UNKNOWN;
    if (is_above_ceiling(out->pressure_Pa, ceiling))
        out->pressure_Pa = INFINITY;
}
