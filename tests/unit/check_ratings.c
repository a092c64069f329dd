/* Ratings: what is left, which item breaks one, and the largest item still possible. */
#include <string.h>

#include "base/known.h"
#include "compute/leave_out.h"
#include "compute/load.h"
#include "compute/ratings.h"
#include "suites.h"
#include "support.h"

enum { ITEMS = 12 };

static struct carried_item items[ITEMS];
static char names[ITEMS][16];
static struct specification specification;
static struct setup setup;

static struct carried_item item_of(const char *name, double kg, double at)
{
    struct carried_item item = item_unknown();
    item.item = name;
    item.mass_kg = kg;
    item.at_m = at;
    return item;
}

static void set_up(void)
{
    specification_clear(&specification);
    struct vehicle *vehicle = &specification.vehicle;
    vehicle->wheelbase_m = 3;
    vehicle->unladen_kg = (struct axle_pair){1000, 900};
    vehicle->ratings = (struct ratings){NULL, 1200, 1300, 2400, 75, 150, 4000};
    setup = (struct setup){.name = "x"};
    setup.axle[AXLE_FRONT] = setup.axle[AXLE_REAR] = tyre_unknown();
    items[0] = item_of("winch", 90, -0.9);
    items[1] = item_of("drawers", 150, 3.3);
    items[2] = item_of("tent", 80, 1.5);
    items[2].on_roof = 0;
    items[3] = item_of("trailer", UNKNOWN, 4.2);
    items[3].tow_ball_kg = 160;
    items[3].trailer_mass_kg = 2000;
    specification.carried = (struct carried_list){items, 4};
}

static const char *broken_by(enum rating rating, bool *unladen)
{
    const struct loading loading = {&specification, NULL, &setup, &setup};
    const struct carried_item *item = rating_broken_by(&loading, rating, unladen);
    return item == NULL ? NULL : item->item;
}

/* By hand, moments on a wheelbase of 3 m. */
START_TEST(item_that_breaks_a_rating_is_named)
{
    bool unladen = true;
    /* rear: 900 - 27 + 165 + 40 + 224 = 1302 */
    ck_assert_str_eq(broken_by(RATING_REAR, &unladen), "trailer");
    ck_assert(!unladen);
    ck_assert_ptr_null(broken_by(RATING_FRONT, &unladen)); /* 1000 + 117 - 15 + 40 - 64 */
    ck_assert_str_eq(broken_by(RATING_ROOF, &unladen), "tent");
    ck_assert_str_eq(broken_by(RATING_TOW_BALL, &unladen), "trailer");
    /* 1900 + 90 + 150 + 80 + 160 - 160 + 2000 */
    ck_assert_str_eq(broken_by(RATING_COMBINATION, &unladen), "trailer");
    ck_assert_ptr_null(broken_by(RATING_GROSS, &unladen));
    specification.vehicle.ratings.rear_kg = 890; /* 900 unladen, 873 with the winch, 1038 */
    ck_assert_str_eq(broken_by(RATING_REAR, &unladen), "drawers");
    specification.vehicle.ratings.rear_kg = 800;
    ck_assert_ptr_null(broken_by(RATING_REAR, &unladen));
    ck_assert(unladen);
    specification.vehicle.ratings.rear_kg = UNKNOWN;
    ck_assert_ptr_null(broken_by(RATING_REAR, &unladen));
    ck_assert(!unladen);
}
END_TEST

START_TEST(item_taken_off_in_time_breaks_nothing)
{
    bool unladen;
    items[0] = item_of("tank", 400, 3);
    items[1] = item_of("old tank", 300, 3);
    items[1].removed = 1;
    specification.carried.count = 2;
    specification.vehicle.ratings.rear_kg = 1250;
    ck_assert_ptr_null(broken_by(RATING_REAR, &unladen)); /* 1300, then 1000 */
}
END_TEST

static const struct bearing unbounded[AXLE_COUNT] = {{UNKNOWN, UNKNOWN}, {UNKNOWN, UNKNOWN}};

/* By moments, wheelbase 3 m: of the 1564 kg on the rear axle the boat is 160, the chest (240 kg at
 * 2.7 m) 216 and the pump 110. 144 too many: boat or chest alone, and the boat is the lighter. 264
 * too many: none alone; boat and pump, 270 kg on the axle and 260 in all, are the lightest two. The
 * tent on the roof may not stay behind: nothing helps a roof rating that it passes. */
START_TEST(fewest_and_lightest_stay_behind)
{
    bool left_out[ITEMS] = {false};
    setup.left_out = left_out;
    specification.vehicle.ratings.roof_kg = 100;
    items[3] = item_of("chest", 240, 2.7);
    items[4] = item_of("boat", 160, 3);
    items[5] = item_of("pump", 100, 3.3);
    items[3].can_be_left_out = items[4].can_be_left_out = items[5].can_be_left_out = 1;
    specification.vehicle.ratings.gross_kg = 3000;
    specification.carried.count = 6; /* rear 900 - 27 + 165 + 40 + 216 + 160 + 110 = 1564 */
    specification.vehicle.ratings.rear_kg = 1420;
    ck_assert(leave_out(&specification, NULL, &setup, &setup, unbounded));
    ck_assert(left_out[4] && !left_out[3] && !left_out[5]);
    memset(left_out, 0, sizeof left_out);
    specification.vehicle.ratings.rear_kg = 1300; /* 264 too many: none alone, boat and pump 270 */
    ck_assert(leave_out(&specification, NULL, &setup, &setup, unbounded));
    ck_assert(left_out[4] && left_out[5] && !left_out[3]);
    memset(left_out, 0, sizeof left_out);
    specification.vehicle.ratings.roof_kg = 75;
    ck_assert(!leave_out(&specification, NULL, &setup, &setup, unbounded));
    for (size_t i = 0; i < ITEMS; i++)
        ck_assert(!left_out[i]);
    specification.vehicle.ratings.roof_kg = 100;
    specification.vehicle.ratings.rear_kg = 1600;
    ck_assert(!leave_out(&specification, NULL, &setup, &setup, unbounded)); /* nothing needs to */
}
END_TEST

static const char *left_behind(double sure_kg, double most_kg)
{
    static bool left_out[ITEMS];
    const struct bearing bearing[AXLE_COUNT] = {{UNKNOWN, UNKNOWN}, {sure_kg, most_kg}};
    memset(left_out, 0, sizeof left_out);
    setup.left_out = left_out;
    leave_out(&specification, NULL, &setup, &setup, bearing);
    return left_out[3] ? left_out[4] ? "both" : "boat" : left_out[4] ? "pump" : "nothing";
}

/* The rear axle of 1348 kg by moments puts 674 kg on each tyre; without the pump (110 kg on it)
 * 619, without the boat (160) 594, without both 539. What would surely do goes before what only
 * may; where nothing would, the rating alone is asked for, which is 1300 kg at last: the pump. */
START_TEST(what_tyres_do_not_bear_stays_behind)
{
    items[3] = item_of("boat", 160, 3);
    items[4] = item_of("pump", 100, 3.3);
    items[3].can_be_left_out = items[4].can_be_left_out = 1;
    specification.carried.count = 5;
    specification.vehicle.ratings.roof_kg = 100;
    specification.vehicle.ratings.gross_kg = 3000;
    specification.vehicle.ratings.rear_kg = 1400;
    ck_assert_str_eq(left_behind(674, 674), "nothing");
    ck_assert_str_eq(left_behind(673, 673), "pump");
    ck_assert_str_eq(left_behind(618, 618), "boat");
    ck_assert_str_eq(left_behind(593, 593), "both");
    ck_assert_str_eq(left_behind(600, 700), "boat");
    ck_assert_str_eq(left_behind(500, 700), "nothing");
    ck_assert_str_eq(left_behind(500, 650), "pump");
    ck_assert_str_eq(left_behind(500, 538), "nothing");
    specification.vehicle.ratings.rear_kg = 1300;
    ck_assert_str_eq(left_behind(500, 538), "pump");
}
END_TEST

/* The same, with axles weighed to 20 kg: with the boat alone the rear axle has 1238 kg, surely kept
 * by a rating of 1258, not surely passed by one of 1219, and passed by one of 1218. */
START_TEST(what_may_be_off_by_the_weighing_counts)
{
    items[3] = item_of("boat", 160, 3);
    items[4] = item_of("pump", 100, 3.3);
    items[4].can_be_left_out = 1;
    specification.carried.count = 5;
    specification.vehicle.ratings.roof_kg = 100;
    specification.vehicle.ratings.gross_kg = 3000;
    specification.measured.scale_kg = 20;
    const struct {
        double rating_kg;
        const char *left;
    } cases[] = {
        {1368, "nothing"}, {1367, "pump"}, {1258, "pump"}, {1219, "pump"}, {1218, "nothing"}};
    for (size_t i = 0; i < LENGTH_OF(cases); i++) {
        specification.vehicle.ratings.rear_kg = cases[i].rating_kg;
        ck_assert_str_eq(left_behind(UNKNOWN, UNKNOWN), cases[i].left);
    }
}
END_TEST

static const struct bearing_left without_limit = {
    {INFINITY, INFINITY}, {INFINITY, INFINITY}, {INFINITY, INFINITY}};

/* The largest item meets one limit, and a gram more breaks it. */
START_TEST(largest_item_is_the_largest)
{
    uint64_t state = random_start("largest_item_is_the_largest");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        struct axle_loads loads = {
            .axle_kg = {random_between(&state, 500, 1200), random_between(&state, 500, 1300)}};
        loads.gross_kg = loads.axle_kg[AXLE_FRONT] + loads.axle_kg[AXLE_REAR];
        loads.trailer_kg = random_whole(&state, 0, 1) * random_between(&state, 500, 2500);
        const struct load_place place = {random_between(&state, -1.5, 5),
                                         random_whole(&state, 0, 1) == 1, 3};
        const struct ratings *ratings = &specification.vehicle.ratings;
        struct largest_item largest = largest_item(ratings, &loads, &without_limit, &place);
        ck_assert(largest.mass_kg >= 0 && isfinite(largest.mass_kg));
        bool broken[2];
        for (int more = 0; more < 2; more++) {
            struct axle_loads with = loads;
            double mass = largest.mass_kg + (more ? 1e-3 : -1e-3);
            axle_loads_add(&with, mass, place.at_m, 0, place.wheelbase_m);
            with.roof_kg += place.on_roof ? mass : 0;
            broken[more] = with.axle_kg[AXLE_FRONT] < 0 || with.axle_kg[AXLE_REAR] < 0;
            for (enum rating rating = 0; rating < RATING_COUNT; rating++)
                broken[more] |= rated_load_kg(&with, rating) > rating_kg(ratings, rating);
        }
        ck_assert(broken[1]);
        ck_assert(!broken[0] || largest.mass_kg < 1e-3 || loads.gross_kg > ratings->gross_kg ||
                  rated_load_kg(&loads, RATING_COMBINATION) > ratings->combination_kg);
    }
}
END_TEST

START_TEST(largest_item_without_a_rating_is_unknown)
{
    struct axle_loads loads = {.axle_kg = {1000, 900}, .gross_kg = 1900};
    struct load_place place = {2, false, 3};
    specification.vehicle.ratings.gross_kg = UNKNOWN;
    struct largest_item largest =
        largest_item(&specification.vehicle.ratings, &loads, &without_limit, &place);
    ck_assert(!known(largest.mass_kg) && largest.limit == LIMIT_RATING);
    ck_assert_int_eq(largest.rating, RATING_GROSS);
    specification.vehicle.ratings =
        (struct ratings){NULL, 1200, 1300, 2400, UNKNOWN, UNKNOWN, UNKNOWN};
    largest = largest_item(&specification.vehicle.ratings, &loads, &without_limit, &place);
    assert_close(largest.mass_kg, 500, 1e-9, "gross: 500; front: 200 / (1/3); rear: 400 / (2/3)");
    struct bearing_left left = {{INFINITY, UNKNOWN}, {INFINITY, INFINITY}, {INFINITY, INFINITY}};
    largest = largest_item(&specification.vehicle.ratings, &loads, &left, &place);
    ck_assert(!known(largest.mass_kg) && largest.limit == LIMIT_TYRES);
    ck_assert_int_eq(largest.axle, AXLE_REAR);
    left = (struct bearing_left){{INFINITY, INFINITY}, {INFINITY, UNKNOWN}, {INFINITY, INFINITY}};
    largest = largest_item(&specification.vehicle.ratings, &loads, &left, &place);
    ck_assert(!known(largest.mass_kg) && largest.limit == LIMIT_WHEELS);
    left.wheels_kg[AXLE_REAR] = 200; /* / (2/3) */
    largest = largest_item(&specification.vehicle.ratings, &loads, &left, &place);
    assert_close(largest.mass_kg, 300, 1e-9, "by the wheels");
    ck_assert(largest.limit == LIMIT_WHEELS && largest.axle == AXLE_REAR);
    place.on_roof = true; /* only then the roof's rating counts */
    largest = largest_item(&specification.vehicle.ratings, &loads, &without_limit, &place);
    ck_assert(!known(largest.mass_kg));
}
END_TEST

/* Mass and moment are kept for any list of items, removed ones too, to a billionth. */
START_TEST(state_keeps_mass_and_moment)
{
    uint64_t state = random_start("state_keeps_mass_and_moment");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        double mass = 1900, moment = 900 * 3.0;
        int count = random_whole(&state, 0, ITEMS);
        for (int i = 0; i < count; i++) {
            snprintf(names[i], sizeof names[i], "i%d", i);
            items[i] =
                item_of(names[i], random_between(&state, 0, 60), random_between(&state, 0, 3));
            items[i].removed = random_whole(&state, 0, 3) == 0 ? 1 : CHOICE_NONE;
            double kg = items[i].removed == 1 ? -items[i].mass_kg : items[i].mass_kg;
            mass += kg;
            moment += kg * items[i].at_m;
        }
        specification.carried.count = (size_t)count;
        struct axle_loads loads;
        axle_loads_in_state(&specification, NULL, &setup, &setup, &loads);
        assert_relative(loads.axle_kg[AXLE_FRONT] + loads.axle_kg[AXLE_REAR], mass, 1e-9, "mass");
        assert_relative(loads.gross_kg, mass, 1e-9, "gross");
        assert_relative(loads.axle_kg[AXLE_REAR] * 3, moment, 1e-9, "moment");
    }
}
END_TEST

/* 1000 kg at 2 m behind the rear axle take 667 kg off the front; 1600 take more than it weighs. */
START_TEST(lifted_axle_has_no_load)
{
    struct axle_loads loads;
    items[0] = item_of("block", 1000, 5);
    specification.carried.count = 1;
    axle_loads_in_state(&specification, NULL, &setup, &setup, &loads);
    assert_close(loads.axle_kg[AXLE_FRONT], 1000 - 2000.0 / 3, 1e-9, "still on the ground");
    ck_assert(!loads.lifted[AXLE_FRONT]);
    items[0].mass_kg = 1600;
    axle_loads_in_state(&specification, NULL, &setup, &setup, &loads);
    ck_assert(loads.lifted[AXLE_FRONT] && !loads.lifted[AXLE_REAR]);
    ck_assert(!known(loads.axle_kg[AXLE_FRONT]));
    assert_close(loads.gross_kg, 3500, 1e-9, "the sum stays");
}
END_TEST

Suite *ratings_suite(void)
{
    Suite *suite = suite_create("ratings");
    TCase *ratings = tcase_create("ratings");
    tcase_add_checked_fixture(ratings, set_up, NULL);
    tcase_add_test(ratings, item_that_breaks_a_rating_is_named);
    tcase_add_test(ratings, item_taken_off_in_time_breaks_nothing);
    tcase_add_test(ratings, fewest_and_lightest_stay_behind);
    tcase_add_test(ratings, what_tyres_do_not_bear_stays_behind);
    tcase_add_test(ratings, what_may_be_off_by_the_weighing_counts);
    tcase_add_test(ratings, largest_item_is_the_largest);
    tcase_add_test(ratings, largest_item_without_a_rating_is_unknown);
    tcase_add_test(ratings, state_keeps_mass_and_moment);
    tcase_add_test(ratings, lifted_axle_has_no_load);
    suite_add_tcase(suite, ratings);
    return suite;
}
