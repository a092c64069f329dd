#include "compute/ratings.h"

#include "base/known.h"

const char *rating_name(enum rating rating)
{
    static const char *const names[RATING_COUNT] = {
        "front axle rating", "rear axle rating", "gross rating",
        "roof rating",       "tow-ball rating",  "combination rating",
    };
    return names[rating];
}

double rating_kg(const struct ratings *ratings, enum rating rating)
{
    switch (rating) {
    case RATING_FRONT:
        return ratings->front_kg;
    case RATING_REAR:
        return ratings->rear_kg;
    case RATING_GROSS:
        return ratings->gross_kg;
    case RATING_ROOF:
        return ratings->roof_kg;
    case RATING_TOW_BALL:
        return ratings->tow_ball_kg;
    case RATING_COMBINATION:
        return ratings->combination_kg;
    default:
        return UNKNOWN;
    }
}

double rated_load_kg(const struct axle_loads *loads, enum rating rating)
{
    switch (rating) {
    case RATING_FRONT:
        return loads->axle_kg[AXLE_FRONT];
    case RATING_REAR:
        return loads->axle_kg[AXLE_REAR];
    case RATING_GROSS:
        return loads->gross_kg;
    case RATING_ROOF:
        return loads->roof_kg;
    case RATING_TOW_BALL:
        return loads->tow_ball_kg;
    case RATING_COMBINATION:
        return loads->gross_kg - loads->tow_ball_kg + loads->trailer_kg;
    default:
        return UNKNOWN;
    }
}

double rating_doubt_kg(const struct specification *specification, enum rating rating)
{
    double scale_kg = known_or(specification->measured.scale_kg, 0);
    switch (rating) {
    case RATING_FRONT:
    case RATING_REAR:
        return scale_kg;
    case RATING_GROSS:
    case RATING_COMBINATION:
        return 2 * scale_kg;
    default:
        return 0; /* what is named and not weighed with the vehicle */
    }
}

bool rating_is_kept(const struct specification *specification, const struct axle_loads *loads,
                    enum rating rating, bool surely)
{
    double load_kg = rated_load_kg(loads, rating);
    double most_kg = rating_kg(&specification->vehicle.ratings, rating);
    double doubt_kg = rating_doubt_kg(specification, rating);
    if (surely)
        return !clearly_above(load_kg + doubt_kg, most_kg);
    return !clearly_above(load_kg, most_kg) || clearly_above(doubt_kg, load_kg - most_kg);
}

const struct carried_item *rating_broken_by(const struct loading *loading, enum rating rating,
                                            bool *unladen)
{
    const struct specification *specification = loading->specification;
    double limit = rating_kg(&specification->vehicle.ratings, rating);
    struct axle_loads loads;
    axle_loads_unladen(&specification->vehicle, loading->fitted, loading->setup, &loads);
    bool broken = clearly_above(rated_load_kg(&loads, rating), limit);
    const struct carried_item *by = NULL;
    *unladen = broken;
    for (size_t i = 0; i < specification->carried.count; i++) {
        const struct carried_item *item = &specification->carried.items[i];
        if (!item_is_aboard(loading->specification, loading->setup, loading->state, item))
            continue;
        axle_loads_add_item(&loads, item, &specification->vehicle);
        bool now = clearly_above(rated_load_kg(&loads, rating), limit);
        if (now && !broken)
            by = item;
        if (!now)
            *unladen = false;
        broken = now;
    }
    return broken && !*unladen ? by : NULL;
}

/* Smaller of the limit so far and this one; a limit that is passed leaves nothing, and one that is
 * not known leaves the item unknown. `by` says which limit it is. */
static void take_limit(struct largest_item *largest, double left_kg, double share,
                       struct largest_item by)
{
    static const double none = 1e-9; /* right above the other axle, whatever a unit left of it */
    if (share <= none || !known(largest->mass_kg))
        return;
    by.mass_kg = known(left_kg) ? fmax(left_kg, 0) / share : UNKNOWN;
    if (!(by.mass_kg >= largest->mass_kg))
        *largest = by;
}

struct largest_item largest_item(const struct ratings *ratings, const struct axle_loads *loads,
                                 const struct bearing_left *left, const struct load_place *place)
{
    struct largest_item largest = {.mass_kg = INFINITY, .rating = RATING_GROSS};
    double rear = place->at_m / place->wheelbase_m;
    const double shares[RATING_COUNT] = {
        [RATING_FRONT] = 1 - rear,
        [RATING_REAR] = rear,
        [RATING_GROSS] = 1,
        [RATING_ROOF] = place->on_roof ? 1 : 0,
        [RATING_COMBINATION] = loads->trailer_kg > 0 ? 1 : 0, /* the trailer draws on it already */
    };
    const double on_axle[AXLE_COUNT] = {1 - rear, rear};
    if (!known(rear))
        return (struct largest_item){.mass_kg = UNKNOWN, .rating = RATING_GROSS};
    for (enum rating rating = 0; rating < RATING_COUNT; rating++)
        take_limit(&largest, rating_kg(ratings, rating) - rated_load_kg(loads, rating),
                   shares[rating], (struct largest_item){.rating = rating});
    for (enum axle axle = 0; axle < AXLE_COUNT; axle++) {
        take_limit(&largest, left->tyres_kg[axle], on_axle[axle],
                   (struct largest_item){.limit = LIMIT_TYRES, .axle = axle});
        take_limit(&largest, left->wheels_kg[axle], on_axle[axle],
                   (struct largest_item){.limit = LIMIT_WHEELS, .axle = axle});
        take_limit(&largest, left->springs_kg[axle], on_axle[axle],
                   (struct largest_item){.limit = LIMIT_SPRINGS, .axle = axle});
        take_limit(&largest, loads->axle_kg[axle], -on_axle[axle],
                   (struct largest_item){.limit = LIMIT_LIFTED, .axle = axle});
    }
    return largest;
}
