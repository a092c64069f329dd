#include "compute/axle_loads.h"

#include <string.h>

#include "base/known.h"
#include "tables/lookup.h"

void axle_loads_add(struct axle_loads *loads, double mass_kg, double at_m, double side_m,
                    double wheelbase_m)
{
    double rear = mass_kg * at_m / wheelbase_m;
    double front = mass_kg - rear;
    loads->axle_kg[AXLE_FRONT] += front;
    loads->axle_kg[AXLE_REAR] += rear;
    loads->gross_kg += mass_kg;
    loads->side_moment_kg_m[AXLE_FRONT] += front * side_m;
    loads->side_moment_kg_m[AXLE_REAR] += rear * side_m;
}

static double density_of(const struct carried_item *item)
{
    if (known(item->density_kg_m3))
        return item->density_kg_m3;
    const struct density_row *row = item->of == NULL ? NULL : density_find(item->of);
    return row == NULL ? UNKNOWN : row->density_kg_m3;
}

double item_mass_kg(const struct carried_item *item)
{
    double mass = known_or(item->mass_kg, 0) + known_or(item->dry_mass_kg, 0) +
                  known_or(item->tow_ball_kg, 0);
    if (known(item->volume_m3))
        mass += item->volume_m3 * density_of(item);
    if (known(item->occupants))
        mass += item->occupants * known_or(item->occupant_mass_kg, OCCUPANT_MASS_KG);
    return item->removed == 1 ? -mass : mass;
}

double item_at_m(const struct carried_item *item, const struct seats *seats)
{
    if (known(item->at_m) || item->seat == CHOICE_NONE)
        return item->at_m;
    return seats->row_m[item->seat];
}

bool state_holds(const struct state *state, const char *item)
{
    if (state == NULL || state->all)
        return true;
    for (size_t i = 0; i < state->items.count; i++)
        if (item != NULL && *state->items.items[i] == *item && /* of many few begin alike */
            strcmp(state->items.items[i], item) == 0)
            return true;
    return false;
}

bool *left_out_row(const struct specification *specification, const struct setup *setup,
                   const struct state *state)
{
    size_t number = state == NULL ? 0 : (size_t)(state - specification->states.items);
    return setup->left_out == NULL ? NULL : setup->left_out + number * specification->carried.count;
}

bool item_is_aboard(const struct specification *specification, const struct setup *setup,
                    const struct state *state, const struct carried_item *item)
{
    const bool *left_out = left_out_row(specification, setup, state);
    return state_holds(state, item->item) &&
           (left_out == NULL || !left_out[item - specification->carried.items]);
}

double tyre_mass_change_kg(const struct setup *fitted, const struct setup *setup, enum axle axle)
{
    const struct tyre *before = &fitted->axle[axle], *after = &setup->axle[axle];
    double change = after->mass_kg * tyres_on_axle(tyre_is_dual(after)) -
                    before->mass_kg * tyres_on_axle(tyre_is_dual(before));
    return known_or(change, 0);
}

double spare_mass_change_kg(const struct specification *specification, const struct setup *fitted,
                            const struct setup *setup)
{
    double change = setup->spare.mass_kg - fitted->spare.mass_kg;
    if (!setup->spare.size_given || !fitted->spare.size_given ||
        !known(specification->clearance.spare_space.at_m) ||
        same_value(setup->spare.mass_kg, fitted->spare.mass_kg))
        return 0;
    return known_or(change, 0);
}

void axle_loads_unladen(const struct vehicle *vehicle, const struct setup *fitted,
                        const struct setup *setup, struct axle_loads *out)
{
    *out = (struct axle_loads){
        .axle_kg = {vehicle->unladen_kg.front, vehicle->unladen_kg.rear},
    };
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        out->axle_kg[axle] += tyre_mass_change_kg(fitted, setup, (enum axle)axle);
    out->gross_kg = out->axle_kg[AXLE_FRONT] + out->axle_kg[AXLE_REAR];
}

void axle_loads_add_item(struct axle_loads *loads, const struct carried_item *item,
                         const struct vehicle *vehicle)
{
    double mass = item_mass_kg(item);
    axle_loads_add(loads, mass, item_at_m(item, &vehicle->seats), known_or(item->side_m, 0),
                   vehicle->wheelbase_m);
    if (item->removed == 1) /* roof and ball bear what is there: less than nothing is not */
        return;
    if (item->on_roof != CHOICE_NONE)
        loads->roof_kg += mass;
    loads->tow_ball_kg += known_or(item->tow_ball_kg, 0);
    loads->trailer_kg += known_or(item->trailer_mass_kg, 0);
}

/* No axle weighs less than nothing: such a sum is a mistake in masses or places, not a load. */
static void forget_lifted(struct axle_loads *loads)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        loads->lifted[axle] = loads->axle_kg[axle] < 0;
        if (loads->lifted[axle])
            loads->axle_kg[axle] = UNKNOWN;
    }
}

void axle_loads_in_state(const struct specification *specification, const struct state *state,
                         const struct setup *fitted, const struct setup *setup,
                         struct axle_loads *out)
{
    axle_loads_unladen(&specification->vehicle, fitted, setup, out);
    double heavier_spare = spare_mass_change_kg(specification, fitted, setup);
    if (heavier_spare != 0)
        axle_loads_add(out, heavier_spare, specification->clearance.spare_space.at_m, 0,
                       specification->vehicle.wheelbase_m);
    for (size_t i = 0; i < specification->carried.count; i++) {
        const struct carried_item *item = &specification->carried.items[i];
        if (item_is_aboard(specification, setup, state, item))
            axle_loads_add_item(out, item, &specification->vehicle);
    }
    forget_lifted(out);
}

double side_shift_kg(const struct axle_loads *loads, enum axle axle, double share, double track_m)
{
    const double *moment = loads->side_moment_kg_m;
    double whole = fabs(moment[AXLE_FRONT] + moment[AXLE_REAR]);
    return known_or(fmax(share * whole, fabs(moment[axle])) / track_m, 0);
}

double heavier_corner_kg(const struct axle_loads *loads, enum axle axle, double track_m)
{
    return loads->axle_kg[axle] / 2 + side_shift_kg(loads, axle, STIFFER_AXLE_SHARE, track_m);
}
