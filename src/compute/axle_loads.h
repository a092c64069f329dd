/* Axle loads by moments about the axles. Masses in kg, places in metres rearward from the front
 * axle, sides in metres from the centre line (left negative). */
#ifndef TYRESUM_COMPUTE_AXLE_LOADS_H
#define TYRESUM_COMPUTE_AXLE_LOADS_H

#include <stdbool.h>

#include "compute/fitment.h"
#include "build/specification.h"

struct axle_loads {
    double axle_kg[AXLE_COUNT]; /* UNKNOWN where `lifted` */
    double gross_kg;
    bool lifted[AXLE_COUNT]; /* by these moments the axle would weigh less than nothing */
    double side_moment_kg_m[AXLE_COUNT]; /* by distance; right positive */
    double roof_kg, tow_ball_kg, trailer_kg;
};

/* EU running order counts a driver of 75 kg (Regulation (EU) 1230/2012); taken for each occupant
 * whose mass is not given. */
#define OCCUPANT_MASS_KG 75.0

/* Owner's and body builder's handbooks: a mass m at x behind the front axle of wheelbase L adds
 * m x / L to the rear axle and m (L - x) / L to the front; behind the rear axle it lightens the
 * front. */
void axle_loads_add(struct axle_loads *loads, double mass_kg, double at_m, double side_m,
                    double wheelbase_m);

/* Mass that an item adds; negative where it is removed. UNKNOWN where it cannot be told. */
double item_mass_kg(const struct carried_item *item);

/* Where it acts; the seat row's place for occupants. */
double item_at_m(const struct carried_item *item, const struct seats *seats);

/* The vehicle as weighed, on a setup's tyres. */
void axle_loads_unladen(const struct vehicle *vehicle, const struct setup *fitted,
                        const struct setup *setup, struct axle_loads *out);

/* One item more, whether it is carried or removed. */
void axle_loads_add_item(struct axle_loads *loads, const struct carried_item *item,
                         const struct vehicle *vehicle);

/* Whether a state names an item; and whether it is then aboard with a setup, or left behind. */
bool state_holds(const struct state *state, const char *item);
bool item_is_aboard(const struct specification *specification, const struct setup *setup,
                    const struct state *state, const struct carried_item *item);
/* The setup's row of left_out for a state; NULL where it has none. */
bool *left_out_row(const struct specification *specification, const struct setup *setup,
                   const struct state *state);

/* Axle loads of a state (NULL: everything aboard) with a setup's tyres. */
void axle_loads_in_state(const struct specification *specification, const struct state *state,
                         const struct setup *fitted, const struct setup *setup,
                         struct axle_loads *out);

/* Mass that the setup's tyres and wheels add to an axle, beside the fitted ones; 0 if unknown. */
double tyre_mass_change_kg(const struct setup *fitted, const struct setup *setup, enum axle axle);

/* Mass that the setup's spare adds where the spare is carried (clearance: spare_space: at), beside
 * the one carried now; 0 where a mass or the place is not known. */
double spare_mass_change_kg(const struct specification *specification, const struct setup *fitted,
                            const struct setup *setup);

/* What lies beside the centre line tilts the body, and the axles share that moment by their roll
 * stiffness, not by how far they are. The stiffness is not known: on passenger and light commercial
 * vehicles an axle takes 35 to 65 % (common practice, no source). */
#define STIFFER_AXLE_SHARE 0.65

/* What comes to the heavier side of an axle that takes that share of the moment, or its share by
 * distance where that is more; 0 where the track is not known. */
double side_shift_kg(const struct axle_loads *loads, enum axle axle, double share, double track_m);

/* Load on the heavier wheel position of an axle that may be the stiffer one: half of it, or more
 * where sides are known. */
double heavier_corner_kg(const struct axle_loads *loads, enum axle axle, double track_m);

#endif
