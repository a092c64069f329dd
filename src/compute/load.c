#include "compute/load.h"

#include <string.h>

#include "base/known.h"

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

double axle_tyres_left_kg(const struct specification *specification,
                          const struct axle_pressures *pressures, const struct axle_loads *loads,
                          enum axle axle)
{
    double ceiling =
        isfinite(pressures->ceiling_Pa) ? pressures->ceiling_Pa : pressures->rating.reference_Pa;
    double most = capacity_kg(&pressures->rating, pressures->dual,
                              ceiling - pressures->rating.speed_pressure_Pa);
    if (!isfinite(pressures->ceiling_Pa)) /* nothing keeps the speed's pressure from being added */
        most = pressures->capacity_max_kg;
    double side = most * (pressures->dual ? 2 : 1) / (1 + load_reserve(specification));
    double corner = heavier_corner_kg(loads, axle, of_axle(specification->vehicle.track_m, axle));
    return 2 * (side - corner);
}

/* Load of the heaviest tyre on an axle over all states: the corner, shared by twins. */
static void find_heaviest(const struct load_conditions *conditions, const struct setup *setup,
                          enum axle axle, struct axle_pressures *out)
{
    const struct specification *specification = conditions->specification;
    out->load_built_kg = UNKNOWN;
    out->heaviest_state = STATE_UNKNOWN;
    for (size_t i = 0; i < state_count(specification); i++) {
        const struct state *state = state_at(specification, i);
        struct axle_loads loads;
        axle_loads_in_state(specification, state, conditions->fitted, setup, &loads);
        double corner = /* unknown too where the moments would lift the axle */
            heavier_corner_kg(&loads, axle, of_axle(specification->vehicle.track_m, axle));
        double load = out->dual ? corner / 2 : corner;
        if (!known(load)) { /* one state that cannot be told may be the heaviest */
            out->load_built_kg = UNKNOWN;
            return;
        }
        if (!known(out->load_built_kg) || clearly_above(load, out->load_built_kg)) {
            out->load_built_kg = load;
            out->heaviest_state = (int)i;
        }
    }
}

/* Capacity of the fitted tyre at the placard, undivided: the demand that the option must meet. */
static void find_replaced_demand(const struct load_conditions *conditions, enum axle axle,
                                 struct axle_pressures *out)
{
    const struct specification *specification = conditions->specification;
    const struct vehicle *vehicle = &specification->vehicle;
    const struct tyre *fitted = &conditions->fitted->axle[axle];
    struct tyre_rating rating;
    tyre_rate(fitted, vehicle->kind, vehicle->top_speed_mps, conditions->system, &rating);
    double derated = capacity_kg(&rating, tyre_is_dual(fitted), out->placard_Pa);
    double per_axle = derated * tyres_on_axle(tyre_is_dual(fitted));
    double tyres = tyres_on_axle(out->dual);
    out->demand_replaced_kg = per_axle * rating.divisor / tyres;
    out->demand_replaced_derated_kg = per_axle / tyres;
}

/* The fitted tyre's rating, undivided. */
static void rate_fitted(const struct load_conditions *conditions, enum axle axle,
                        struct tyre_rating *out)
{
    tyre_rate(&conditions->fitted->axle[axle], CHOICE_NONE,
              conditions->specification->vehicle.top_speed_mps, conditions->system, out);
}

/* The highest of the demands, the class floor and the placard, below
 * which no setting is ever printed. */
static void recommend(const struct load_conditions *conditions, struct axle_pressures *out)
{
    double pressure = out->as_replaced_Pa;
    out->reason = REASON_REPLACED;
    if (isinf(out->as_replaced_Pa) || isinf(out->as_built_Pa)) { /* whatever else is not known */
        out->reason = REASON_REFUSED;
        out->needed_Pa = out->recommended_Pa = INFINITY;
        return;
    }
    if (!known(out->as_replaced_Pa) || !known(out->as_built_Pa)) {
        out->reason = REASON_NONE;
        out->needed_Pa = out->recommended_Pa = UNKNOWN;
        return;
    }
    if (out->as_built_Pa > pressure) {
        pressure = out->as_built_Pa;
        out->reason = REASON_BUILT;
    }
    if (out->floor_Pa > pressure) {
        pressure = out->floor_Pa;
        out->reason = REASON_FLOOR;
    }
    if (out->placard_Pa >= pressure) {
        pressure = out->placard_Pa;
        out->reason = REASON_PLACARD;
    }
    out->needed_Pa = pressure_rounded_up_Pa(pressure, conditions->system);
    out->recommended_Pa = out->needed_Pa;
    if (out->recommended_Pa > out->ceiling_Pa * (1 + 1e-9)) {
        out->recommended_Pa = INFINITY;
        out->reason = REASON_REFUSED;
    }
}

/* Both demands, each as a pressure. */
static void find_pressures(const struct tyre_rating *fitted, struct axle_pressures *out)
{
    const struct tyre_rating *rating = &out->rating;
    double for_speed = rating->speed_pressure_Pa;
    double more = fmax(for_speed - fitted->speed_pressure_Pa, 0);
    out->as_replaced_Pa = pressure_for_load_Pa(rating, out->dual, out->demand_replaced_kg) + more;
    out->as_replaced_derated_Pa =
        pressure_for_load_Pa(rating, out->dual, out->demand_replaced_derated_kg) + more;
    out->as_built_Pa = pressure_for_load_Pa(rating, out->dual, out->demand_built_kg) + for_speed;
}

static void find_capacities(struct axle_pressures *out)
{
    const struct tyre_rating *rating = &out->rating;
    out->capacity_at_placard_kg = capacity_kg(rating, out->dual, out->placard_Pa);
    out->capacity_max_kg = capacity_max_kg(rating, out->dual);
    out->capacity_at_recommended_kg = isfinite(out->recommended_Pa)
                                          ? capacity_kg(rating, out->dual, out->recommended_Pa)
                                          : UNKNOWN;
}

void axle_pressures(const struct load_conditions *conditions, const struct setup *setup,
                    enum axle axle, struct axle_pressures *out)
{
    const struct specification *specification = conditions->specification;
    const struct vehicle *vehicle = &specification->vehicle;
    const struct tyre *tyre = &setup->axle[axle];
    struct tyre_rating fitted;
    *out = (struct axle_pressures){.dual = tyre_is_dual(tyre)};
    tyre_rate(tyre, vehicle->kind, vehicle->top_speed_mps, conditions->system, &out->rating);
    rate_fitted(conditions, axle, &fitted);
    out->placard_Pa = placard_Pa(specification, axle);
    out->floor_Pa = out->rating.floor_Pa;
    out->ceiling_Pa = pressure_ceiling_Pa(&out->rating, &tyre->wheel);
    find_heaviest(conditions, setup, axle, out);
    find_replaced_demand(conditions, axle, out);
    out->demand_built_kg = out->load_built_kg * (1 + load_reserve(specification));
    find_pressures(&fitted, out);
    if (setup->is_fitted) /* it replaces nothing: the placard itself is the starting point */
        out->as_replaced_Pa = out->as_replaced_derated_Pa = out->placard_Pa;
    recommend(conditions, out);
    find_capacities(out);
}
