/* Places along the vehicle: how heavy an item may be where the file asks, and from where to where
 * one of a known mass may stand; with every limit of the vehicle, its tyres, wheels and springs. */
#include "base/known.h"
#include "compute/place_span.h"
#include "compute/springs.h"
#include "report/load/loaded_setup.h"

/* One setup in one state. */
struct placed {
    const struct loaded_setup *loaded;
    const struct loading *loading;
    const struct axle_loads *loads;
    struct bearings bearings;
    struct figures *figures;
};

static struct figure place_figure(const struct placed *placed, enum quantity_id quantity,
                                  double value, const char *item)
{
    const struct loading *loading = placed->loading;
    struct figure figure = figure_by(quantity, value, remark(BASIS_VEHICLE_MAKER_ALL));
    figure.state = state_number(loading->specification, loading->state);
    figure.place.name = item;
    return figure;
}

/* The limit in words and by number. */
static struct remark limited_by(struct arena *arena, const struct largest_item *by,
                                struct governor *governor)
{
    struct argument axle = say_text(axle_name((int)by->axle));
    switch (by->limit) {
    case LIMIT_RATING:
        *governor = (struct governor){GOVERNED_BY_RATING, (int)by->rating, NULL};
        return REMARK_WITH(arena, BASIS_LIMITED_BY_RATING, say_text(rating_name(by->rating)));
    case LIMIT_TYRES:
        *governor = (struct governor){GOVERNED_BY_TYRES, (int)by->axle, NULL};
        return REMARK_WITH(arena, BASIS_LIMITED_BY_TYRES, axle);
    case LIMIT_WHEELS:
        return REMARK_WITH(arena, BASIS_LIMITED_BY_WHEELS, axle);
    case LIMIT_SPRINGS:
        return REMARK_WITH(arena, BASIS_LIMITED_BY_SPRINGS, axle);
    case LIMIT_LIFTED:
        break;
    }
    return remark(BASIS_LIMITED_BY_LIFT);
}

/* What is lacking to tell it. */
static struct remark asked_for(const struct loaded_setup *loaded, const struct largest_item *by)
{
    struct arena *arena = loaded->plan->arena;
    struct argument axle_says = say_text(axle_name((int)by->axle));
    if (by->limit == LIMIT_WHEELS)
        return REMARK_WITH(arena, ADVICE_ROOM_WHEELS_UNKNOWN, axle_says);
    if (by->limit == LIMIT_SPRINGS)
        return REMARK_WITH(arena, ADVICE_ROOM_SPRINGS_UNKNOWN, axle_says);
    if (by->limit != LIMIT_TYRES)
        return REMARK_WITH(arena, ADVICE_ROOM_UNKNOWN, say_text(rating_name(by->rating)));
    const struct axle_pressures *axle = &loaded->axle[by->axle];
    enum remark_id missing = axle->rating.completed ? ADVICE_WRITE_SIZE
                             : !known(axle->capacity_max_kg)
                                 ? ADVICE_GIVE_LOAD_INDEX
                                 : ask_for_load(tyre_group(axle->rating.class));
    return REMARK_WITH(arena, ADVICE_ROOM_TYRES_UNKNOWN, axle_says,
                       say_remark(arena, remark(missing)));
}

/* The largest mass that one place of `room_for` may still take. */
static void report_largest(const struct placed *placed, const struct planned_item *item,
                           const struct bearing_left *left)
{
    const struct vehicle *vehicle = &placed->loading->specification->vehicle;
    const struct load_place place = {item->at_m, item->on_roof != CHOICE_NONE,
                                     vehicle->wheelbase_m};
    struct largest_item largest = largest_item(&vehicle->ratings, placed->loads, left, &place);
    bool is_known = known(largest.mass_kg), full = meets_limit(largest.mass_kg, LIMIT_AT_MOST, 0);
    struct figure figure = place_figure(placed, QUANTITY_LARGEST_ITEM, largest.mass_kg, item->item);
    if (is_known)
        figure.basis = limited_by(placed->loaded->plan->arena, &largest, &figure.governed_by);
    const struct judgement how = {
        .if_met = remark(full ? ADVICE_NOTHING_FITS : REMARK_NONE),
        .if_unknown = asked_for(placed->loaded, &largest),
    };
    figures_add(placed->figures, judged(figure, &how));
}

/* An item whose place is looked for, and whether a reader is told. */
struct movable {
    const char *name;
    struct item_to_place item;
    enum headline headline;
};

static void report_end(const struct placed *placed, const struct movable *movable,
                       enum quantity_id quantity, double at_m, const struct largest_item *by,
                       bool is_end)
{
    struct arena *arena = placed->loaded->plan->arena;
    struct figure figure = place_figure(placed, quantity, at_m, movable->name);
    struct remark limit = limited_by(arena, by, &figure.governed_by);
    if (known(at_m))
        figure.basis = is_end ? remark(BASIS_LIMITED_BY_END) : limit;
    else if (known(by->mass_kg))
        figure.advice = REMARK_WITH(arena, ADVICE_NO_PLACE, say_remark(arena, limit));
    else
        figure.advice = asked_for(placed->loaded, by);
    figure.headline = movable->headline;
    figures_add(placed->figures, figure);
}

static struct place_span span_of_item(const struct placed *placed, const struct axle_loads *without,
                                      const struct item_to_place *item)
{
    double ends_m[2];
    vehicle_ends_m(placed->loading->specification, ends_m);
    return place_span_find(&placed->bearings, without, item, ends_m);
}

static void report_span(const struct placed *placed, const struct movable *movable,
                        const struct place_span *span)
{
    report_end(placed, movable, QUANTITY_PLACE_FROM, span->from_m, &span->from, span->from_end);
    report_end(placed, movable, QUANTITY_PLACE_TO, span->to_m, &span->to, span->to_end);
}

static void report_planned(const struct placed *placed, const struct planned_item *item)
{
    const struct movable movable = {
        item->item, {item->mass_kg, 0, item->on_roof != CHOICE_NONE}, HEADLINE_NO};
    if (!known(item->mass_kg))
        return;
    struct place_span span = span_of_item(placed, placed->loads, &movable.item);
    report_span(placed, &movable, &span);
}

/* What stands in a place of its own and could stand elsewhere. A reader is told where it does not
 * do where it is, and does elsewhere. */
static void report_carried(const struct placed *placed, const struct carried_item *item)
{
    const struct loading *loading = placed->loading;
    double mass_kg = item_mass_kg(item), side_m = known_or(item->side_m, 0);
    bool on_roof = item->on_roof != CHOICE_NONE;
    struct axle_loads without = *placed->loads;
    if (item->removed == 1 || item->seat != CHOICE_NONE || known(item->tow_ball_kg) ||
        !item_is_aboard(loading->specification, loading->setup, loading->state, item))
        return;
    axle_loads_add(&without, -mass_kg, item->at_m, side_m,
                   loading->specification->vehicle.wheelbase_m);
    without.roof_kg -= on_roof ? mass_kg : 0;
    struct movable movable = {item->item, {mass_kg, side_m, on_roof}, HEADLINE_ROWS_ONLY};
    struct place_span span = span_of_item(placed, &without, &movable.item);
    if (clearly_above(span.from_m, item->at_m) || clearly_above(item->at_m, span.to_m))
        movable.headline = HEADLINE_NO;
    report_span(placed, &movable, &span);
}

/* At the tyres' ceiling, with the reserve. */
static void set_bearings(struct placed *placed)
{
    const struct loading *loading = placed->loading;
    const struct specification *specification = loading->specification;
    struct bearings *out = &placed->bearings;
    out->specification = specification;
    for (enum axle axle = AXLE_FRONT; axle < AXLE_COUNT; axle++) {
        const struct axle_pressures *each = &placed->loaded->axle[axle];
        out->axle[axle] =
            (struct axle_bearing){each->dual, load_within_kg(specification, each->capacity_sure_kg),
                                  each->wheel_load_kg, load_to_bump_kg(specification, (int)axle)};
        out->sprung_from_kg[axle] = of_axle(specification->vehicle.unladen_kg, (int)axle) +
                                    tyre_mass_change_kg(loading->fitted, loading->setup, axle);
    }
}

void report_places(const struct loaded_setup *loaded, const struct loading *loading,
                   const struct axle_loads *loads, struct figures *figures)
{
    const struct specification *specification = loading->specification;
    struct placed placed = {
        .loaded = loaded, .loading = loading, .loads = loads, .figures = figures};
    struct bearing_left left;
    set_bearings(&placed);
    bearing_left_under(&placed.bearings, loads, &left);
    for (size_t i = 0; i < specification->room_for.count; i++)
        report_largest(&placed, &specification->room_for.items[i], &left);
    if (figures->verdicts_only)
        return;
    for (size_t i = 0; i < specification->room_for.count; i++)
        report_planned(&placed, &specification->room_for.items[i]);
    for (size_t i = 0; i < specification->carried.count; i++)
        report_carried(&placed, &specification->carried.items[i]);
}
