/* Properties of a change: what scales, what a change back undoes, and what can only rise or fall
 * with what. Each is a list of quantities and how they answer. */
#include <string.h>

#include "base/known.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"

enum { FEW = 12 };

enum told {
    SAME,
    DOUBLE,
    HALF,
    NEGATED,
    INVERSE, /* of shares: (1 + a)(1 + b) = 1 */
    NOT_LESS,
    NOT_MORE,
    NOT_LESS_OR_REFUSED, /* unknown stands for more than there is */
    NOT_MORE_OR_NONE     /* unknown stands for less than there is */
};

struct relation {
    enum quantity_id quantity;
    enum told answer;
    enum place_pressure pressure_as; /* only there; 0: everywhere */
    enum place_tyre tyre;            /* only there; 0: everywhere */
    enum place_setting not_setting;  /* not there; 0: everywhere */
    enum place_posture posture;      /* only there; 0: everywhere */
    bool without_chains;             /* only so */
};

#define RELATION(id, told_)                                                                        \
    {                                                                                              \
        .quantity = QUANTITY_##id, .answer = (told_)                                               \
    }

static const struct relation *relation_of(const struct figure *figure,
                                          const struct relation *relations, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const struct relation *relation = &relations[i];
        if (relation->quantity == figure->quantity &&
            (relation->tyre == AT_ANY_TYRE || figure->place.tyre == relation->tyre) &&
            (relation->not_setting == AT_ANY_SETTING ||
             figure->place.setting != relation->not_setting) &&
            (relation->posture == AT_ANY_POSTURE || figure->place.posture == relation->posture) &&
            (!relation->without_chains || !figure->place.snow_chains) &&
            (relation->pressure_as == AT_ANY_PRESSURE ||
             figure->place.pressure_as == relation->pressure_as))
            return relation;
    }
    return NULL;
}

static bool answers(const struct figure *figure, enum told answer, double before, double after)
{
    if (!known(before) && answer == NOT_LESS_OR_REFUSED)
        return !known(after);
    if (!known(before) && answer == NOT_MORE_OR_NONE)
        return !known(after);
    if (!known(before) || !known(after))
        return true;
    double slack = 1e-9 * fmax(fabs(before), fabs(after));
    switch (answer) {
    case SAME:
        return close_in_unit(figure, after, before);
    case DOUBLE:
        return close_in_unit(figure, after, 2 * before);
    case HALF:
        return close_in_unit(figure, after, before / 2);
    case NEGATED:
        return close_in_unit(figure, after, -before);
    case INVERSE:
        return fabs((1 + before) * (1 + after) - 1) <= 1e-9;
    case NOT_LESS:
    case NOT_LESS_OR_REFUSED:
        return after >= before - slack;
    default:
        return after <= before + slack;
    }
}

/* A grade that the wheels' grip sets does not go by the engine, and one that must fall helps the
 * heavier vehicle more; an item that would lift an axle may grow with what stands on it; what is
 * true once another setting is entered goes by that one's step. */
static bool is_of_another_kind(const struct figure *figure)
{
    return has_word(figure) || figure->place.setting == AT_SETTING_ENTERED ||
           (figure->quantity == QUANTITY_GRADE && figure->value < 0) ||
           (figure->quantity == QUANTITY_LARGEST_ITEM && figure->basis.id == BASIS_LIMITED_BY_LIFT);
}

/* With a grip the speed held goes by the weight on the driven axles too; and a reduced range, told
 * only where the high one holds a grade in no gear, may be the faster one. */
static bool not_by_pull_alone(const struct run *run, const struct figure *figure)
{
    return figure->quantity == QUANTITY_SPEED_HELD &&
           (known(run->specification->drivetrain.grip) ||
            run->specification->drivetrain.transfer.low.count > 0);
}

static int compare_runs(const struct run *a, const struct run *b, const char *option,
                        const struct relation *relations, size_t count, const char *what)
{
    int checked = 0;
    for (size_t i = 0; i < a->figures.count; i++) {
        const struct figure *before = &a->figures.items[i];
        const struct relation *relation = relation_of(before, relations, count);
        if (relation == NULL ||
            (option != NULL && !same_text(figure_option(&a->plan, before), option)) ||
            not_by_pull_alone(a, before))
            continue;
        const struct figure *after = find_like(b, a, before, i);
        if (after == NULL || (relation->answer != NOT_MORE_OR_NONE &&
                              (is_of_another_kind(before) || is_of_another_kind(after))))
            continue;
        REQUIRE(answers(before, relation->answer, before->value, after->value),
                "%s: %s: %.12g, before %.12g", told_of(a, before), what, after->value,
                before->value);
        checked += known(before->value) && known(after->value);
    }
    return checked;
}

/* Both variations of many builds. A relation that was never met would be no check. */
static void check_relations(const char *what, const struct variation *first,
                            const struct variation *second, const char *option,
                            const struct relation *relations, size_t count)
{
    uint64_t seed = random_start(what);
    int checked = 0, builds = properties_count(FEW);
    for (int i = 0; i < builds; i++, seed++) {
        struct run a, b;
        run_make(&a, seed, first);
        run_make(&b, seed, second);
        checked += compare_runs(&a, &b, option, relations, count, what);
        run_free(&a);
        run_free(&b);
    }
    REQUIRE(checked >= builds, "%s: only %d figures were compared", what, checked);
}

START_TEST(twice_the_mass_is_twice_the_load)
{
    static const struct relation relations[] = {
        RELATION(AXLE_LOAD, DOUBLE),         RELATION(AXLE_RATING_LEFT, DOUBLE),
        RELATION(GROSS_LOAD, DOUBLE),        RELATION(GROSS_LEFT, DOUBLE),
        RELATION(ROOF_LEFT, DOUBLE),         RELATION(TOW_BALL_LEFT, DOUBLE),
        RELATION(COMBINATION_LEFT, DOUBLE),  RELATION(TYRE_LOAD, DOUBLE),
        RELATION(SPARE_MASS, DOUBLE),        RELATION(AXLE_RATING_LEFT_SHARE, SAME),
        RELATION(GROSS_LEFT_SHARE, SAME),    RELATION(ROOF_LEFT_SHARE, SAME),
        RELATION(TOW_BALL_LEFT_SHARE, SAME), RELATION(COMBINATION_LEFT_SHARE, SAME),
    };
    struct variation one = as_drawn, two;
    one.masses_told = true;
    two = one;
    two.mass = 2;
    check_relations("twice the mass", &one, &two, NULL, relations, LENGTH_OF(relations));
}
END_TEST

START_TEST(twice_as_far_is_the_same_load)
{
    static const struct relation relations[] = {
        RELATION(AXLE_LOAD, SAME),         RELATION(AXLE_RATING_LEFT, SAME),
        RELATION(GROSS_LOAD, SAME),        RELATION(TYRE_LOAD, SAME),
        RELATION(PRESSURE_AS_BUILT, SAME), RELATION(PRESSURE_RECOMMENDED, SAME),
        RELATION(LARGEST_ITEM, SAME),      RELATION(BUMP_TRAVEL_LEFT, SAME),
        RELATION(WHEEL_LOAD, SAME),
    };
    struct variation two = as_drawn;
    two.place = 2;
    check_relations("twice as far", &as_drawn, &two, NULL, relations, LENGTH_OF(relations));
}
END_TEST

START_TEST(twice_the_diameters_keep_every_ratio)
{
    static const struct relation relations[] = {
        RELATION(OVERALL_DIAMETER, DOUBLE),
        RELATION(OVERALL_DIAMETER_CHANGE, DOUBLE),
        RELATION(STATIC_LOADED_RADIUS, DOUBLE),
        RELATION(UNDER_AXLE_CHANGE, DOUBLE),
        RELATION(REVOLUTIONS, HALF),
        RELATION(SPEED_PER_1000, DOUBLE),
        RELATION(CRAWL_SPEED, DOUBLE),
        RELATION(ROAD_SPEED, DOUBLE),
        RELATION(ENGINE_SPEED, HALF),
        RELATION(TRACTIVE_FORCE, HALF),
        RELATION(WHEEL_TORQUE, SAME),
        RELATION(OVERALL_RATIO, SAME),
        RELATION(CRAWL_RATIO, SAME),
        RELATION(EFFECTIVE_AXLE, SAME),
        RELATION(RESTORING_AXLE, SAME),
        RELATION(NEAREST_AXLE, SAME),
        RELATION(AXLE_REMAINS, SAME),
        RELATION(CIRCUMFERENCE_CHANGE, SAME),
        RELATION(DIAMETER_CHANGE_SHARE, SAME),
        RELATION(AXLES_CHANGE, SAME),
        {.quantity = QUANTITY_SPEEDOMETER_ERROR, .answer = SAME, .tyre = AT_NOMINAL},
        RELATION(ODOMETER_TRUE, SAME),
        RELATION(CONSUMPTION_FACTOR, SAME),
    };
    struct variation one = as_drawn, two;
    one.diameters_told = one.no_error = true;
    one.diameter = 0.75;
    two = one;
    two.diameter = 1.5;
    check_relations("twice the diameters", &one, &two, NULL, relations, LENGTH_OF(relations));
}
END_TEST

START_TEST(way_back_undoes_the_change)
{
    static const struct relation relations[] = {
        RELATION(CIRCUMFERENCE_CHANGE, INVERSE),
        {.quantity = QUANTITY_SPEEDOMETER_ERROR, .answer = INVERSE, .tyre = AT_NOMINAL},
        RELATION(DIAMETER_CHANGE_SHARE, INVERSE),
        RELATION(OVERALL_DIAMETER_CHANGE, NEGATED),
        RELATION(UNDER_AXLE_CHANGE, NEGATED),
        RELATION(TRACK_CHANGE, NEGATED),
        RELATION(INSET_CHANGE, NEGATED),
        {.quantity = QUANTITY_ARCH_INNER_CHANGE, .answer = NEGATED, .without_chains = true},
        {.quantity = QUANTITY_ARCH_OUTER_CHANGE, .answer = NEGATED, .without_chains = true},
        RELATION(RIM_EDGE_INNER, NEGATED),
        RELATION(RIM_EDGE_OUTER, NEGATED),
        RELATION(TYRE_EDGE_INNER, NEGATED),
        RELATION(TYRE_EDGE_OUTER, NEGATED),
        RELATION(LOAD_INDEX_CHANGE, NEGATED),
        RELATION(SPEED_SYMBOL_CHANGE, NEGATED),
    };
    struct variation there = as_drawn, back;
    there.no_error = true;
    back = there;
    back.swapped = true;
    check_relations("there and back", &there, &back, "option 1", relations, LENGTH_OF(relations));
}
END_TEST

/* The effective ratio of the way there is the restoring one of the way back. */
START_TEST(effective_ratio_is_restored_on_the_way_back)
{
    struct variation there = as_drawn, back;
    there.no_error = true;
    back = there;
    back.swapped = true;
    uint64_t seed = random_start("effective and restoring");
    int checked = 0;
    for (int i = 0; i < properties_count(FEW); i++, seed++) {
        struct run a, b;
        run_make(&a, seed, &there);
        run_make(&b, seed, &back);
        for (size_t at = 0; at < a.figures.count; at++) {
            struct figure restoring = a.figures.items[at];
            const struct figure *effective = &a.figures.items[at];
            if (effective->quantity != QUANTITY_EFFECTIVE_AXLE ||
                !same_text(figure_option(&a.plan, effective), "option 1"))
                continue;
            restoring.quantity = QUANTITY_RESTORING_AXLE;
            const struct figure *found = find_like(&b, &a, &restoring, at);
            ck_assert(found != NULL);
            REQUIRE(close_in_unit(found, found->value, effective->value), "%s",
                    told_of(&a, effective));
            checked++;
        }
        run_free(&a);
        run_free(&b);
    }
    ck_assert_int_gt(checked, 0);
}
END_TEST

START_TEST(more_mass_asks_for_more)
{
    static const struct relation relations[] = {
        RELATION(AXLE_LOAD, NOT_LESS),
        RELATION(GROSS_LOAD, NOT_LESS),
        RELATION(TYRE_LOAD, NOT_LESS),
        RELATION(AXLE_RATING_LEFT, NOT_MORE),
        RELATION(AXLE_RATING_LEFT_SHARE, NOT_MORE),
        RELATION(GROSS_LEFT, NOT_MORE),
        RELATION(COMBINATION_LEFT, NOT_MORE),
        RELATION(LARGEST_ITEM, NOT_MORE),
        RELATION(PRESSURE_AS_BUILT, NOT_LESS_OR_REFUSED),
        RELATION(PRESSURE_RECOMMENDED, NOT_LESS_OR_REFUSED),
        RELATION(PRESSURE_AS_REPLACED, SAME),
        RELATION(SPARE_PRESSURE, NOT_LESS_OR_REFUSED),
        RELATION(WARNING_THRESHOLD, NOT_LESS),
        RELATION(WHEEL_LOAD, NOT_MORE),
        RELATION(WHEEL_PRESSURE, NOT_MORE),
        RELATION(OFF_ROAD_SPEED, NOT_MORE),
        {.quantity = QUANTITY_TYRE_DEFLECTION, .answer = NOT_LESS, .pressure_as = AT_OFF_ROAD},
        {.quantity = QUANTITY_CONTACT_LENGTH, .answer = NOT_LESS, .pressure_as = AT_OFF_ROAD},
        {.quantity = QUANTITY_LOADED_RADIUS, .answer = NOT_MORE, .pressure_as = AT_OFF_ROAD},
        RELATION(FREE_AIR, NOT_LESS),
        RELATION(INFLATING_TIME, NOT_LESS),
        RELATION(BODY, NOT_MORE),
        RELATION(BUMP_TRAVEL_LEFT, NOT_MORE),
        {.quantity = QUANTITY_ARCH_ABOVE, .answer = NOT_MORE, .posture = AT_RIDE_HEIGHT},
        RELATION(ROLLING_RESISTANCE, NOT_LESS),
        RELATION(GRADE, NOT_MORE),
        RELATION(SPEED_HELD, NOT_MORE_OR_NONE),
    };
    struct variation more = as_drawn;
    more.ballast_kg = 150;
    check_relations("more mass", &as_drawn, &more, NULL, relations, LENGTH_OF(relations));
}
END_TEST

START_TEST(more_lift_never_lowers)
{
    static const struct relation relations[] = {
        RELATION(BODY, NOT_LESS),
        RELATION(APPROACH, NOT_LESS),
        RELATION(DEPARTURE, NOT_LESS),
        RELATION(BREAKOVER, NOT_LESS),
        RELATION(ROOF_HEIGHT, NOT_LESS),
        RELATION(GARAGE_ROOM, NOT_MORE),
        RELATION(WADING_DEPTH, NOT_LESS),
        RELATION(STEP_HEIGHT, NOT_LESS),
        RELATION(BUMP_TRAVEL_LEFT, NOT_LESS),
        RELATION(RIDE_HEIGHT_CHANGE, NOT_LESS),
        RELATION(DIAMETER_AND_SUSPENSION, NOT_LESS),
        {.quantity = QUANTITY_ARCH_ABOVE, .answer = NOT_LESS, .posture = AT_RIDE_HEIGHT},
        {.quantity = QUANTITY_ARCH_ABOVE, .answer = SAME, .posture = AT_BUMP},
        RELATION(UNDER_AXLE, SAME),
        RELATION(AXLE_LOAD, SAME),
        RELATION(RAKE, SAME),
        RELATION(HEADLAMP_AIM, SAME),
        RELATION(BODY_CHANGE, SAME),
    };
    struct variation more = as_drawn;
    more.more_lift_mm = 30;
    check_relations("more lift", &as_drawn, &more, NULL, relations, LENGTH_OF(relations));
}
END_TEST

START_TEST(larger_tyre_reads_lower_and_stands_higher)
{
    static const struct relation relations[] = {
        RELATION(SPEEDOMETER_ERROR, NOT_MORE),
        RELATION(TRUE_SPEED, NOT_LESS),
        {.quantity = QUANTITY_SHOWN_AT_LIMIT,
         .answer = NOT_MORE,
         .not_setting = AT_SETTING_ENTERED},
        RELATION(ODOMETER_TRUE, NOT_LESS),
        RELATION(CONSUMPTION_FACTOR, NOT_MORE),
        RELATION(CIRCUMFERENCE_CHANGE, NOT_LESS),
        RELATION(REVOLUTIONS, NOT_MORE),
        RELATION(UNDER_AXLE, NOT_LESS),
        RELATION(UNDER_AXLE_CHANGE, NOT_LESS),
        RELATION(BODY, NOT_LESS),
        RELATION(BODY_CHANGE, NOT_LESS),
        RELATION(APPROACH, NOT_LESS),
        RELATION(DEPARTURE, NOT_LESS),
        RELATION(BREAKOVER, NOT_LESS),
        RELATION(ROOF_HEIGHT, NOT_LESS),
        RELATION(ARCH_ABOVE, NOT_MORE),
        RELATION(ENGINE_SPEED, NOT_MORE),
        RELATION(SPEED_PER_1000, NOT_LESS),
        RELATION(CRAWL_SPEED, NOT_LESS),
        RELATION(EFFECTIVE_AXLE, NOT_MORE),
        RELATION(RESTORING_AXLE, NOT_LESS),
        RELATION(TRACTIVE_FORCE, NOT_MORE),
        RELATION(GRADE, NOT_MORE),
    };
    struct variation told = as_drawn, larger;
    told.diameters_told = told.no_error = true;
    larger = told;
    larger.option_diameter = 1.04;
    check_relations("larger tyre", &told, &larger, NULL, relations, LENGTH_OF(relations));
}
END_TEST

START_TEST(more_torque_pulls_more)
{
    static const struct relation relations[] = {
        RELATION(WHEEL_TORQUE, NOT_LESS), RELATION(TRACTIVE_FORCE, NOT_LESS),
        RELATION(GRADE, NOT_LESS),        RELATION(SPEED_HELD, NOT_LESS),
        RELATION(ENGINE_SPEED, SAME),
    };
    struct variation more = as_drawn;
    more.more_torque = 1.25;
    check_relations("more torque", &as_drawn, &more, NULL, relations, LENGTH_OF(relations));
}
END_TEST

Suite *properties_change_suite(void)
{
    Suite *suite = suite_create("properties_change");
    TCase *scales = tcase_create("scales, and the way back");
    tcase_add_test(scales, twice_the_mass_is_twice_the_load);
    tcase_add_test(scales, twice_as_far_is_the_same_load);
    tcase_add_test(scales, twice_the_diameters_keep_every_ratio);
    tcase_add_test(scales, way_back_undoes_the_change);
    tcase_add_test(scales, effective_ratio_is_restored_on_the_way_back);
    suite_add_tcase(suite, scales);
    TCase *rises = tcase_create("rises and falls");
    tcase_add_test(rises, more_mass_asks_for_more);
    tcase_add_test(rises, more_lift_never_lowers);
    tcase_add_test(rises, larger_tyre_reads_lower_and_stands_higher);
    tcase_add_test(rises, more_torque_pulls_more);
    suite_add_tcase(suite, rises);
    return suite;
}
