/* The vehicle maker's ratings: what is left of each, which item breaks it, and the largest item
 * that could still come aboard. Masses in kg, places in metres rearward from the front axle. */
#ifndef TYRESUM_COMPUTE_RATINGS_H
#define TYRESUM_COMPUTE_RATINGS_H

#include "compute/axle_loads.h"

enum rating {
    RATING_FRONT,
    RATING_REAR,
    RATING_GROSS,
    RATING_ROOF,
    RATING_TOW_BALL,
    RATING_COMBINATION,
    RATING_COUNT
};

/* "front axle rating", "roof rating". */
const char *rating_name(enum rating rating);

/* The rating as given; UNKNOWN where it was not. */
double rating_kg(const struct ratings *ratings, enum rating rating);

/* What counts against it. The ball load is part of the trailer's mass: in the combination it
 * counts once. */
double rated_load_kg(const struct axle_loads *loads, enum rating rating);

/* How far off that may be by the weighing, where the file says how far off the scale is: each
 * axle's is read once. */
double rating_doubt_kg(const struct specification *specification, enum rating rating);

/* Whether a rating that is known is not passed: surely, whatever the weighing may be off, or as far
 * as it tells. */
bool rating_is_kept(const struct specification *specification, const struct axle_loads *loads,
                    enum rating rating, bool surely);

/* Which setup in which state. */
struct loading {
    const struct specification *specification;
    const struct state *state; /* NULL: everything aboard */
    const struct setup *fitted, *setup;
};

/* The item with which a rating is passed for good, taken in the file's order; NULL where none
 * passes it. *unladen is set where it is passed before anything is carried. */
const struct carried_item *rating_broken_by(const struct loading *loading, enum rating rating,
                                            bool *unladen);

/* A place for an item that is still to be found. */
struct load_place {
    double at_m;
    bool on_roof;
    double wheelbase_m;
};

/* What sets the largest item. */
enum largest_limit {
    LIMIT_RATING,  /* which: `rating` */
    LIMIT_TYRES,   /* of which axle: `axle` */
    LIMIT_WHEELS,  /* likewise */
    LIMIT_SPRINGS, /* likewise: the bump stops */
    LIMIT_LIFTED   /* an axle that would be lifted: `axle` */
};

/* What tyres, wheels and springs of each axle may still bear, in kg. */
struct bearing_left {
    double tyres_kg[AXLE_COUNT], wheels_kg[AXLE_COUNT], springs_kg[AXLE_COUNT];
};

struct largest_item {
    double mass_kg; /* 0 where a limit is passed already; UNKNOWN where one that would count is not
                       known, and then it is that one that the others name */
    enum largest_limit limit;
    enum rating rating;
    enum axle axle;
};

/* By moments: an item of mass m at x puts m x/L on the rear axle and m (L - x)/L on the front;
 * each limit allows m = what is left of it / the share of m that falls on it, and the smallest
 * governs. */
struct largest_item largest_item(const struct ratings *ratings, const struct axle_loads *loads,
                                 const struct bearing_left *left, const struct load_place *place);

#endif
