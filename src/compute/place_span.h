/* Where along the vehicle an item of a mass can be carried: the span of places at which it passes
 * nothing. Masses in kg, places in metres rearward from the front axle. */
#ifndef TYRESUM_COMPUTE_PLACE_SPAN_H
#define TYRESUM_COMPUTE_PLACE_SPAN_H

#include "compute/ratings.h"

/* What one tyre and one wheel of an axle bear, and the axle's springs above unladen. */
struct axle_bearing {
    bool dual;
    double tyre_kg, wheel_kg, springs_kg;
};

/* One setup's, on loads of one state. */
struct bearings {
    const struct specification *specification;
    struct axle_bearing axle[AXLE_COUNT];
    double sprung_from_kg[AXLE_COUNT]; /* axle load at which the springs stand as unladen */
};
void bearing_left_under(const struct bearings *bearings, const struct axle_loads *loads,
                        struct bearing_left *out);

struct item_to_place {
    double mass_kg, side_m;
    bool on_roof;
};

struct place_span {
    double from_m, to_m;          /* UNKNOWN where there is no such place, or it cannot be told */
    struct largest_item from, to; /* what is met there, or missing: its mass is what is left */
    bool from_end, to_end;        /* the vehicle's end, and no limit */
};

/* `loads`: without the item. `ends_m`: how far the vehicle reaches, front and rear. */
struct place_span place_span_find(const struct bearings *bearings, const struct axle_loads *loads,
                                  const struct item_to_place *item, const double ends_m[2]);

/* The foremost and the rearmost point that the file has: the overhangs, the axles, and all that is
 * carried there now. */
void vehicle_ends_m(const struct specification *specification, double out[2]);

#endif
