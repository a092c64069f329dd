/* Rules of load and pressure: placard, warning, off-road pressure, places for items to come. */
#include <string.h>

#include "base/known.h"
#include "tables/lookup.h"
#include "build/rule_check.h"

/* Standards print pairs (80 psi, 550 kPa) that differ by up to 0.5 % */
#define PAIR_SLACK 1.01

/* The axle's own value where a pair is a mapping, the one value otherwise. */
static struct mark place_of_axle(const struct given *mapping, const char *key, enum axle axle)
{
    const struct given *pair = given_key(mapping, key);
    const char *name = axle == AXLE_FRONT ? "front" : "rear";
    if (pair != NULL && pair->form == GIVEN_MAPPING && is_given(pair, name))
        return place_of(pair, name);
    return place_of(mapping, key);
}

static bool goes_by_load_range(const struct designation *size)
{
    return size->prefix == PREFIX_LT || size->form == FORM_FLOTATION || size->form == FORM_NUMERIC;
}

/* The highest cold pressure that a tyre may have, and who says so; UNKNOWN where nobody does. */
static double highest_pressure_Pa(const struct tyre *tyre, const char **says)
{
    const struct designation *size = &tyre->size;
    char letter = tyre->load_range != 0 ? tyre->load_range : size->load_range;
    const struct load_range_row *row = goes_by_load_range(size) ? load_range_find(letter) : NULL;
    bool passenger = size->prefix != PREFIX_ST && size->suffix == SUFFIX_NONE &&
                     (size->form == FORM_METRIC || size->form == FORM_FULL_PROFILE) &&
                     !goes_by_load_range(size) && size->rim_code_tenths % 10 == 0 &&
                     size->service.load_index <= PASSENGER_LOAD_INDEX_MAX;
    *says = "data_book: max_pressure";
    if (known(tyre->data_book.max_pressure_Pa))
        return tyre->data_book.max_pressure_Pa;
    *says = "data_book: at_pressure";
    if (size->prefix == PREFIX_T) {
        *says = "temporary spares have one pressure";
        return higher_of(420e3, tyre->data_book.at_pressure_Pa);
    }
    if (passenger) { /* the highest of those that 49 CFR 571.139 lets be moulded (from memory) */
        *says = "49 CFR 571.139";
        return PASSENGER_TYRE_CEILING_Pa;
    }
    if (known(tyre->data_book.at_pressure_Pa))
        return tyre->data_book.at_pressure_Pa;
    *says = "its load range";
    return row == NULL ? UNKNOWN
                       : higher_of(unit_to_si(UNIT_KPA, row->lt_reference_kPa),
                                   unit_to_si(UNIT_PSI, row->lt_reference_psi));
}

static void rule_placard_is_within_the_tyre(const struct check *check)
{
    const struct fitment *fitted = &check->specification->tyres.fitted;
    for (enum axle axle = AXLE_FRONT; axle < AXLE_COUNT; axle++) {
        bool own = axle == AXLE_REAR && fitted->rear.size_given;
        const struct tyre *tyre = own ? &fitted->rear : &fitted->tyre;
        double placard = of_axle(fitted->placard_Pa, axle);
        const char *says = "";
        if (!tyre->size_given || !known(placard))
            continue;
        double highest = highest_pressure_Pa(tyre, &says);
        if (!(placard > highest * PAIR_SLACK) || /* also where either is not known */
            !is_above_ceiling(placard, highest))
            continue;
        struct mark mark = place_of_axle(fitted->tyre.given, "placard", axle);
        FAULT_AT(check, mark,
                 "the placard pressure is above the %.0f kPa that the fitted tyre may have "
                 "(%s); expected the cold pressure of the vehicle's placard",
                 unit_from_si(UNIT_KPA, highest), says);
        if (fitted->placard_Pa.front == fitted->placard_Pa.rear)
            return; /* one value for both axles is one fault */
    }
}

/* A pressure that must lie below the placard's, axle by axle. */
static void check_below_placard(const struct check *check, const struct given *mapping,
                                const char *key, struct axle_pair pressure_Pa, const char *why)
{
    struct axle_pair placard = check->specification->tyres.fitted.placard_Pa;
    for (enum axle axle = AXLE_FRONT; axle < AXLE_COUNT; axle++) {
        if (!(of_axle(pressure_Pa, axle) >= of_axle(placard, axle)))
            continue;
        FAULT_AT(check, place_of_axle(mapping, key, axle),
                 "this pressure is not below the placard's; expected %s", why);
        const struct given *pair = given_key(mapping, key);
        if (pair != NULL && pair->form != GIVEN_MAPPING)
            return;
    }
}

static void rule_warning_is_below_the_placard(const struct check *check)
{
    const struct vehicle *vehicle = &check->specification->vehicle;
    check_below_placard(check, vehicle->given, "pressure_warning", vehicle->pressure_warning_Pa,
                        "the pressure at which the warning comes on");
}

static void rule_off_road_is_whole(const struct check *check)
{
    const struct off_road *off_road = &check->specification->off_road;
    if (off_road->given == NULL)
        return;
    const struct given *pressure = given_key(off_road->given, "pressure");
    if (pressure != NULL && pressure->form == GIVEN_MAPPING && pressure->first != NULL &&
        pressure->first->next == NULL)
        FAULT(check, off_road->given, "pressure",
              "the pressure off the road is given for one axle alone; expected both, or one value");
    if (pressure == NULL)
        FAULT(check, off_road->given, "pressure",
              "the key \"pressure\" is missing; expected such as pressure: {front: 120 kPa, rear: "
              "140 kPa}");
    check_below_placard(check, off_road->given, "pressure", off_road->pressure_Pa,
                        "a low pressure for off the road");
}

static void rule_room_has_name_and_place(const struct check *check)
{
    const struct planned_list *list = &check->specification->room_for;
    for (size_t i = 0; i < list->count; i++) {
        const struct planned_item *item = &list->items[i];
        if (item->given == NULL)
            continue;
        if (!is_given(item->given, "item"))
            FAULT(check, item->given, "", "this item has no name; expected item: what it is to be");
        if (!is_given(item->given, "at"))
            FAULT(check, item->given, "item",
                  "this item has no place; expected at: its distance behind the front axle, such "
                  "as at: 3350 mm");
        for (size_t j = 0; item->item != NULL && j < i; j++)
            if (list->items[j].item != NULL && strcmp(list->items[j].item, item->item) == 0) {
                FAULT(check, item->given, "item",
                      "an item named \"%s\" stands above already; give each its own name",
                      quoted(check, item->item));
                break;
            }
    }
}

/* Without the track nobody can tell how much of a side load one wheel takes. */
static void rule_side_needs_track(const struct check *check)
{
    const struct specification *specification = check->specification;
    const struct axle_pair *track = &specification->vehicle.track_m;
    if (known(track->front) && known(track->rear))
        return;
    for (size_t i = 0; i < specification->carried.count; i++)
        if (known(specification->carried.items[i].side_m))
            FAULT(check, specification->carried.items[i].given, "side",
                  "a place to the side needs the distance between the wheels; expected vehicle: "
                  "{track: {front: 1520 mm, rear: 1530 mm}}");
}

static void rule_left_out_is_aboard(const struct check *check)
{
    const struct carried_list *carried = &check->specification->carried;
    for (size_t i = 0; i < carried->count; i++)
        if (carried->items[i].removed == 1 && carried->items[i].can_be_left_out == 1)
            FAULT(check, carried->items[i].given, "can_be_left_out",
                  "what is taken off the vehicle cannot be left out too; expected "
                  "can_be_left_out with something that is carried");
}

void check_load_rules(const struct check *check)
{
    rule_placard_is_within_the_tyre(check);
    rule_warning_is_below_the_placard(check);
    rule_off_road_is_whole(check);
    rule_room_has_name_and_place(check);
    rule_side_needs_track(check);
    rule_left_out_is_aboard(check);
}
