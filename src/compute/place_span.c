#include "compute/place_span.h"

#include "base/known.h"
#include "compute/load.h"

void bearing_left_under(const struct bearings *bearings, const struct axle_loads *loads,
                        struct bearing_left *out)
{
    for (enum axle axle = 0; axle < AXLE_COUNT; axle++) {
        const struct axle_bearing *bearing = &bearings->axle[axle];
        out->tyres_kg[axle] =
            axle_left_kg(bearings->specification, loads, axle, bearing->dual, bearing->tyre_kg);
        out->wheels_kg[axle] =
            axle_left_kg(bearings->specification, loads, axle, bearing->dual, bearing->wheel_kg);
        out->springs_kg[axle] =
            isinf(bearing->springs_kg)
                ? INFINITY
                : bearing->springs_kg - (loads->axle_kg[axle] - bearings->sprung_from_kg[axle]);
    }
}

/* The item with nothing but its place open, and what the vehicle carries without it. */
struct placing {
    const struct bearings *bearings;
    const struct axle_loads *loads;
    const struct item_to_place *item;
};

static void take_least(struct largest_item *least, double left_kg, struct largest_item by)
{
    by.mass_kg = left_kg;
    if (known(least->mass_kg) && !(left_kg >= least->mass_kg))
        *least = by;
}

/* The least that any limit has left with the item there; UNKNOWN where one is. */
static struct largest_item least_left(const struct placing *placing, double at_m)
{
    const struct vehicle *vehicle = &placing->bearings->specification->vehicle;
    struct axle_loads loads = *placing->loads;
    struct bearing_left left;
    struct largest_item least = {.mass_kg = INFINITY};
    axle_loads_add(&loads, placing->item->mass_kg, at_m, placing->item->side_m,
                   vehicle->wheelbase_m);
    loads.roof_kg += placing->item->on_roof ? placing->item->mass_kg : 0;
    bearing_left_under(placing->bearings, &loads, &left);
    for (enum rating rating = 0; rating < RATING_COUNT; rating++) {
        bool counts = rating == RATING_ROOF          ? placing->item->on_roof
                      : rating == RATING_COMBINATION ? loads.trailer_kg > 0
                                                     : rating != RATING_TOW_BALL;
        if (counts)
            take_least(&least, rating_kg(&vehicle->ratings, rating) - rated_load_kg(&loads, rating),
                       (struct largest_item){.rating = rating});
    }
    for (enum axle axle = 0; axle < AXLE_COUNT; axle++) {
        take_least(&least, left.tyres_kg[axle],
                   (struct largest_item){.limit = LIMIT_TYRES, .axle = axle});
        take_least(&least, left.wheels_kg[axle],
                   (struct largest_item){.limit = LIMIT_WHEELS, .axle = axle});
        take_least(&least, left.springs_kg[axle],
                   (struct largest_item){.limit = LIMIT_SPRINGS, .axle = axle});
        take_least(&least, loads.axle_kg[axle],
                   (struct largest_item){.limit = LIMIT_LIFTED, .axle = axle});
    }
    return least;
}

/* Whether nothing is passed: what weighs as much as is left, in whichever unit, may still stand. */
static bool is_borne(const struct largest_item *least)
{
    static const double none_kg = 1e-9;
    return least->mass_kg >= -none_kg;
}

enum { HALVINGS = 48 };

/* What is left falls away on both sides of the best place: each limit's part is concave in it. */
static double best_place_m(const struct placing *placing, double from_m, double to_m)
{
    for (int i = 0; i < HALVINGS; i++) {
        double third = (to_m - from_m) / 3, a = from_m + third, b = to_m - third;
        if (least_left(placing, a).mass_kg < least_left(placing, b).mass_kg)
            from_m = a;
        else
            to_m = b;
    }
    return (from_m + to_m) / 2;
}

/* From a good place towards one that is not, as far as it is good. */
static double last_good_m(const struct placing *placing, double good_m, double bad_m,
                          struct largest_item *by)
{
    for (int i = 0; i < HALVINGS; i++) {
        double middle = (good_m + bad_m) / 2;
        struct largest_item there = least_left(placing, middle);
        if (is_borne(&there)) {
            good_m = middle;
        } else {
            bad_m = middle;
            *by = there;
        }
    }
    return good_m;
}

struct place_span place_span_find(const struct bearings *bearings, const struct axle_loads *loads,
                                  const struct item_to_place *item, const double ends_m[2])
{
    const struct placing placing = {bearings, loads, item};
    struct place_span span = {.from_m = UNKNOWN, .to_m = UNKNOWN};
    double best_m = best_place_m(&placing, ends_m[0], ends_m[1]);
    struct largest_item best = least_left(&placing, best_m);
    span.from = least_left(&placing, ends_m[0]);
    span.to = least_left(&placing, ends_m[1]);
    if (!is_borne(&best)) {
        span.from = span.to = best;
        return span;
    }
    span.from_end = is_borne(&span.from);
    span.to_end = is_borne(&span.to);
    span.from_m = span.from_end ? ends_m[0] : last_good_m(&placing, best_m, ends_m[0], &span.from);
    span.to_m = span.to_end ? ends_m[1] : last_good_m(&placing, best_m, ends_m[1], &span.to);
    return span;
}

void vehicle_ends_m(const struct specification *specification, double out[2])
{
    const struct clearance_measured *clearance = &specification->clearance;
    double wheelbase_m = specification->vehicle.wheelbase_m;
    out[0] = 0;
    out[1] = wheelbase_m;
    for (size_t i = 0; i < clearance->front_overhang.count; i++)
        out[0] = fmin(out[0], -clearance->front_overhang.items[i].ahead_m);
    for (size_t i = 0; i < clearance->rear_overhang.count; i++)
        out[1] = fmax(out[1], wheelbase_m + clearance->rear_overhang.items[i].behind_m);
    for (size_t i = 0; i < specification->carried.count; i++) {
        const struct carried_item *item = &specification->carried.items[i];
        if (known(item->tow_ball_kg))
            continue;
        out[0] = fmin(out[0], item->at_m);
        out[1] = fmax(out[1], item->at_m);
    }
}
