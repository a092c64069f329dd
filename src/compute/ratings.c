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

const char *rating_broken_by(const struct loading *loading, enum rating rating, bool *unladen)
{
    const struct specification *specification = loading->specification;
    double limit = rating_kg(&specification->vehicle.ratings, rating);
    struct axle_loads loads;
    axle_loads_unladen(&specification->vehicle, loading->fitted, loading->setup, &loads);
    bool broken = rated_load_kg(&loads, rating) > limit;
    const char *by = NULL;
    *unladen = broken;
    for (size_t i = 0; i < specification->carried.count; i++) {
        const struct carried_item *item = &specification->carried.items[i];
        if (!state_holds(loading->state, item->item))
            continue;
        axle_loads_add_item(&loads, item, &specification->vehicle);
        bool now = rated_load_kg(&loads, rating) > limit;
        if (now && !broken)
            by = item->item;
        if (!now)
            *unladen = false;
        broken = now;
    }
    return broken && !*unladen ? by : NULL;
}

/* Smaller of the limit so far and this one; a limit that is passed leaves nothing. */
static void take_limit(struct largest_item *largest, double left_kg, double share,
                       enum largest_limit limit, enum rating rating)
{
    static const double none = 1e-9; /* right above the other axle, whatever a unit left of it */
    if (share <= none || largest->limit == LIMIT_UNKNOWN)
        return;
    double mass = fmax(left_kg, 0) / share;
    if (known(left_kg) && mass >= largest->mass_kg)
        return;
    *largest = (struct largest_item){known(left_kg) ? mass : UNKNOWN,
                                     known(left_kg) ? limit : LIMIT_UNKNOWN, rating};
}

struct largest_item largest_item(const struct ratings *ratings, const struct axle_loads *loads,
                                 struct axle_pair tyres_left_kg, const struct load_place *place)
{
    struct largest_item largest = {INFINITY, LIMIT_RATING, RATING_GROSS};
    double rear = place->at_m / place->wheelbase_m;
    const double shares[RATING_COUNT] = {
        [RATING_FRONT] = 1 - rear,
        [RATING_REAR] = rear,
        [RATING_GROSS] = 1,
        [RATING_ROOF] = place->on_roof ? 1 : 0,
        [RATING_COMBINATION] = loads->trailer_kg > 0 ? 1 : 0, /* the trailer draws on it already */
    };
    if (!known(rear))
        return (struct largest_item){UNKNOWN, LIMIT_UNKNOWN, RATING_GROSS};
    for (enum rating rating = 0; rating < RATING_COUNT; rating++)
        take_limit(&largest, rating_kg(ratings, rating) - rated_load_kg(loads, rating),
                   shares[rating], LIMIT_RATING, rating);
    if (known(tyres_left_kg.front))
        take_limit(&largest, tyres_left_kg.front, 1 - rear, LIMIT_TYRES_FRONT, RATING_FRONT);
    if (known(tyres_left_kg.rear))
        take_limit(&largest, tyres_left_kg.rear, rear, LIMIT_TYRES_REAR, RATING_REAR);
    take_limit(&largest, loads->axle_kg[AXLE_FRONT], rear - 1, LIMIT_LIFTED, RATING_FRONT);
    take_limit(&largest, loads->axle_kg[AXLE_REAR], -rear, LIMIT_LIFTED, RATING_REAR);
    return largest;
}
