/* Gearing against published worked examples; inverses. */
#include "base/units.h"
#include "compute/dimensions.h"
#include "compute/gearing.h"
#include "suites.h"
#include "support.h"

#define INCH_M 0.0254
/* The constant 336 in use is 63360 in / (60 C/D): it stands for C = 1056/336 D. */
#define C_336(diameter_in) (1056.0 / 336 * (diameter_in)*INCH_M)

enum unknown { ROAD_SPEED, ENGINE_SPEED };

static const struct {
    enum unknown wanted;
    double circumference_m, given, overall; /* given: rpm, or the speed in its unit */
    enum unit_id speed_unit;
    double expected, tolerance;
    const char *source;
} speeds[] = {
    /* 1750 x 29.00 / (336 x 2.72) is 55.53: the printed 55.51 takes pi, a constant of 336.135. */
    {ROAD_SPEED, PI * 29.00 * INCH_M, 1750, 2.72, UNIT_MPH, 55.51, 0.005,
     "J. Meister, gear article, 1995 (recomputed): free diameter 29.00 in"},
    {ROAD_SPEED, 98.96 * INCH_M, 2000, 0.79 * 3.73, UNIT_MPH, 63.6, 0.05,
     "wheel and speed article (recomputed): circumference 98.96 in, gear 0.79, axle 3.73"},
    {ROAD_SPEED, 2.288, 2200, 0.76 * 4.10, UNIT_KMH, 96.9, 0.05,
     "V = 2 pi r n / overall, by hand: circumference 2.288 m, gear 0.76, axle 4.10"},
    {ENGINE_SPEED, C_336(29.00), 60, 3.89, UNIT_MPH, 2704, 0.5,
     "V = 2 pi r n / overall, by hand: free diameter 29 in, constant 336"},
    {ROAD_SPEED, 2 * PI * 15.25 * INCH_M, 750, 4.04 * 4 * 4.1, UNIT_MPH, 1.03, 0.005,
     "V = 2 pi r n / overall, by hand: loaded radius 15.25 in, crawl 4.04 x 4 x 4.1"},
};

START_TEST(speed_follows_the_published_example)
{
    double c = speeds[_i].circumference_m, given = speeds[_i].given, found;
    if (speeds[_i].wanted == ROAD_SPEED)
        found = unit_from_si(speeds[_i].speed_unit,
                             road_speed_mps(c, given / 60, speeds[_i].overall, 0));
    else
        found = 60 * engine_speed_per_s(c, unit_to_si(speeds[_i].speed_unit, given),
                                        speeds[_i].overall, 0);
    assert_close(found, speeds[_i].expected, speeds[_i].tolerance, speeds[_i].source);
}
END_TEST

START_TEST(crawl_speed_in_feet_per_minute)
{
    double mps =
        road_speed_mps(2 * PI * 15.25 * INCH_M, 750 / 60.0, overall_ratio(4.04, 4, 4.1, 1), 0);
    assert_close(mps / 0.3048 * 60, 90.39, 0.01, "V = 2 pi r n / overall, by hand");
}
END_TEST

/* Pulses of a shaft sensor: shaft turns in a mile are those of an engine speed per mile/s. */
START_TEST(shaft_turns_per_mile)
{
    double turns = engine_speed_per_s(1609.344 / 917, 1609.344, 3.25, 0);
    assert_close(16 * turns, 47684, 0.5,
                 "by hand: 917 a mile, 3.25, 16 teeth");
    turns = engine_speed_per_s(73.8 * INCH_M, 1609.344, 3.73, 0);
    assert_close(40 * turns / 128000, 1.0007, 0.0005,
                 "by hand: 73.8 in, 3.73, 40 pulses");
}
END_TEST

static const struct {
    double axle, old_in, new_in, effective, restoring, tolerance;
    const char *source;
} ratios[] = {
    {3.92, 33, 35, 3.70, 4.16, 0.005, "by hand: 33 to 35 in"},
    {3.73, 32, 37, 3.23, 4.31, 0.005, "by hand: 32 to 37 in"},
};

START_TEST(axle_ratio_follows_the_published_example)
{
    double old_m = ratios[_i].old_in * INCH_M, new_m = ratios[_i].new_in * INCH_M;
    assert_close(effective_axle_ratio(ratios[_i].axle, old_m, new_m), ratios[_i].effective,
                 ratios[_i].tolerance, ratios[_i].source);
    assert_close(restoring_axle_ratio(ratios[_i].axle, old_m, new_m), ratios[_i].restoring,
                 ratios[_i].tolerance, ratios[_i].source);
}
END_TEST

START_TEST(crawl_ratio_is_the_product)
{
    double crawl = overall_ratio(6.32, 2.72, 4.56, 1);
    assert_close(crawl, 78.39, 0.01, "6.32 x 2.72 x 4.56, by hand");
    assert_close(overall_ratio(6.32, 2.72, 4.56, 4), 313.55, 0.01, "the same, auxiliary of 4");
}
END_TEST

/* Properties. */

START_TEST(speeds_are_inverses)
{
    uint64_t state = random_start("speeds_are_inverses");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        double c = random_between(&state, 1.5, 4), overall = random_between(&state, 1, 120);
        double slip = random_between(&state, 0, 0.5), n = random_between(&state, 5, 150);
        double v = road_speed_mps(c, n, overall, slip);
        assert_relative(engine_speed_per_s(c, v, overall, slip), n, 1e-12, "engine speed back");
        ck_assert(v <= road_speed_mps(c, n, overall, 0)); /* slip never makes it faster */
    }
}
END_TEST

/* The new tyre on the restoring ratio has the fitted overall drive; the effective ratio is what
 * the new tyre on the old axle feels like: ratio per metre is equal on both sides. */
START_TEST(restoring_ratio_restores)
{
    uint64_t state = random_start("restoring_ratio_restores");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        double axle = random_between(&state, 2, 8);
        double fitted = random_between(&state, 1.5, 3), other = random_between(&state, 1.5, 3);
        double restoring = restoring_axle_ratio(axle, fitted, other);
        double effective = effective_axle_ratio(axle, fitted, other);
        assert_relative(restoring / other, axle / fitted, 1e-12, "restoring");
        assert_relative(effective / fitted, axle / other, 1e-12, "effective");
        assert_relative(road_speed_mps(other, 50, restoring, 0),
                        road_speed_mps(fitted, 50, axle, 0), 1e-12,
                        "the same speed at the same engine speed");
        assert_close(restoring_axle_ratio(axle, fitted, fitted) - axle, 0, 0, "against itself");
        assert_close(effective_axle_ratio(axle, fitted, fitted) - axle, 0, 0, "against itself");
    }
}
END_TEST

START_TEST(nearest_choice_is_the_nearest)
{
    double choices[] = {4.05, 4.37, 4.61, 3.55};
    struct number_list list = {choices, LENGTH_OF(choices)};
    assert_close(nearest_axle_choice(&list, 4.158), 4.05, 0,
                 "4.158/4.05 is nearer than 4.37/4.158");
    assert_close(nearest_axle_choice(&list, 9), 4.61, 0, "beyond the highest");
    assert_close(nearest_axle_choice(&list, 1), 3.55, 0, "below the lowest, which stands last");
    list.count = 0;
    ck_assert(!known(nearest_axle_choice(&list, 4)));
    uint64_t state = random_start("nearest_choice_is_the_nearest");
    list.count = LENGTH_OF(choices);
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        double wanted = random_between(&state, 2, 8), found = nearest_axle_choice(&list, wanted);
        for (size_t i = 0; i < list.count; i++)
            ck_assert(fmax(found / wanted, wanted / found) <=
                      fmax(choices[i] / wanted, wanted / choices[i]) * (1 + 1e-12));
    }
}
END_TEST

/* Per metre of road the front shaft turns ratio/C times; positive: the front turns faster. */
START_TEST(mismatch_has_its_sign)
{
    struct axle_pair equal = {3.83, 3.83}, apart = {3.829, 3.837};
    assert_close(circumference_mismatch(equal, 2.4, 2.4), 0, 0, "equal tyres");
    assert_close(circumference_mismatch(equal, 2.4, 2.424), 0.01, 1e-12, "rear 1 % larger");
    assert_close(circumference_mismatch(apart, 2.4, 2.4), -0.00208496, 1e-7, "3.829 / 3.837 - 1");
    uint64_t state = random_start("mismatch_has_its_sign");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        struct axle_pair axle = {random_between(&state, 3, 5), random_between(&state, 3, 5)};
        double front = random_between(&state, 2, 3), rear = random_between(&state, 2, 3);
        struct axle_pair swapped = {axle.rear, axle.front};
        double there = circumference_mismatch(axle, front, rear);
        double back = circumference_mismatch(swapped, rear, front);
        assert_close((1 + there) * (1 + back), 1, 1e-12, "front and rear exchanged");
        double front_turns = axle.front / front, rear_turns = axle.rear / rear;
        ck_assert_int_eq(there > 0, front_turns > rear_turns);
    }
}
END_TEST

/* With the restoring ratio every figure of the drive is the fitted one, on one driven axle or
 * two. */
START_TEST(restoring_ratio_restores_every_figure)
{
    uint64_t state = random_start("restoring_ratio_restores_every_figure");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        int drive = random_whole(&state, DRIVE_FRONT, DRIVE_FULL_TIME_4WD);
        double axle = random_between(&state, 2, 8), gear = random_between(&state, 0.5, 6);
        struct axle_pair own = {axle, axle};
        double c[4];
        for (int i = 0; i < 4; i++)
            c[i] = random_between(&state, 1.5, 3);
        double from = driven_circumference_m(drive, own, c[0], c[1]);
        double to = driven_circumference_m(drive, own, c[2], c[3]);
        double ratio = restoring_axle_ratio(axle, from, to);
        struct axle_pair restored = {ratio, ratio};
        double after = driven_circumference_m(drive, restored, c[2], c[3]);
        double was = overall_ratio(gear, 1, axle, 1), is = overall_ratio(gear, 1, ratio, 1);
        assert_relative(road_speed_mps(after, 40, is, 0.1), road_speed_mps(from, 40, was, 0.1),
                        1e-12, "road speed");
        assert_relative(engine_speed_per_s(after, 25, is, 0), engine_speed_per_s(from, 25, was, 0),
                        1e-12, "engine speed");
        assert_relative(is / after, was / from, 1e-12, "turns per metre, and so pull");
    }
}
END_TEST

START_TEST(driven_axles_decide_the_circumference)
{
    struct axle_pair axle = {4.0, 4.0}, apart = {3.0, 6.0};
    assert_close(driven_circumference_m(DRIVE_FRONT, axle, 2, 2.2), 2, 0, "front");
    assert_close(driven_circumference_m(DRIVE_REAR, axle, 2, 2.2), 2.2, 0, "rear");
    assert_close(driven_circumference_m(DRIVE_PART_TIME_4WD, axle, 2, 2.2), 2.2, 0, "part time");
    assert_close(driven_circumference_m(CHOICE_NONE, axle, 2, 2.2), 2.2, 0, "not said");
    double both = driven_circumference_m(DRIVE_FULL_TIME_4WD, axle, 2, 2.2);
    assert_close(4.0 / both, (4.0 / 2 + 4.0 / 2.2) / 2, 1e-12, "mean of the shafts' turns");
    both = driven_circumference_m(DRIVE_FULL_TIME_4WD, apart, 1, 2);
    assert_close(driven_axle_ratio(DRIVE_FULL_TIME_4WD, apart) / both, 3, 1e-12, "3 a metre each");
    assert_close(driven_axle_ratio(DRIVE_FRONT, apart), 3, 0, "front");
}
END_TEST

START_TEST(gears_in_any_order)
{
    double rising[] = {1.40, 3.87, 0.75, 2.21, 2.21};
    const struct number_list gears = {rising, LENGTH_OF(rising)};
    ck_assert_uint_eq(lowest_gear(&gears), 1);
    ck_assert_uint_eq(highest_gear(&gears), 2);
    ck_assert_uint_eq(next_gear_up(&gears, 1), 3);
    ck_assert_uint_eq(next_gear_up(&gears, 3), 0);
    ck_assert_uint_eq(next_gear_up(&gears, 0), 2);
    ck_assert_uint_eq(next_gear_up(&gears, 2), gears.count);
    ck_assert(!gears_fall(&gears));
    double falling[] = {3.87, 2.21, 1.49};
    const struct number_list in_order = {falling, LENGTH_OF(falling)};
    ck_assert(gears_fall(&in_order));
    const struct number_list none = {NULL, 0};
    ck_assert(gears_fall(&none));
}
END_TEST

START_TEST(choices_are_ranked_by_aim)
{
    double offered[] = {3.83, 4.05, 4.37, 4.61, 4.05};
    const struct number_list list = {offered, LENGTH_OF(offered)};
    const size_t drive[] = {5, 3, 1, 2, 4}, cruise[] = {3, 1, 4, 5, 2};
    for (size_t i = 0; i < list.count; i++) {
        ck_assert_uint_eq(axle_choice_rank(&list, i, 4.12, AIM_DRIVE_BACK), drive[i]);
        ck_assert_uint_eq(axle_choice_rank(&list, i, 4.12, AIM_CRUISE_BACK), cruise[i]);
    }
    ck_assert_uint_eq(axle_choice_rank(&list, 2, 4.37, AIM_DRIVE_BACK), 1); /* meets both */
    ck_assert_uint_eq(axle_choice_rank(&list, 2, 4.37, AIM_CRUISE_BACK), 1);
}
END_TEST

/* A quarter inch of circumference is what a tread depth of that, less 2 pi, makes where C = pi D.
 */
START_TEST(wear_and_what_is_allowed)
{
    double diameter = 0.75, round = PI * diameter;
    assert_close(worn_circumference_m(round, diameter, 0.005), PI * (diameter - 0.010), 1e-12,
                 "5 mm off a wheel that does not deflect");
    double allowed = tread_difference_allowed_m(round, diameter);
    assert_close(allowed, 0.25 * INCH_M / (2 * PI), 1e-12, "1/4 in / 2 pi");
    assert_close(round - worn_circumference_m(round, diameter, allowed), 0.25 * INCH_M, 1e-12,
                 "worn by that, a quarter inch");
    assert_close(circumference_difference_allowed(2.54), 0.0025, 1e-15, "1/4 in in 100 in");
}
END_TEST

Suite *gearing_suite(void)
{
    Suite *suite = suite_create("gearing");
    TCase *published = tcase_create("published");
    tcase_add_loop_test(published, speed_follows_the_published_example, 0, (int)LENGTH_OF(speeds));
    tcase_add_test(published, crawl_speed_in_feet_per_minute);
    tcase_add_test(published, shaft_turns_per_mile);
    tcase_add_loop_test(published, axle_ratio_follows_the_published_example, 0,
                        (int)LENGTH_OF(ratios));
    tcase_add_test(published, crawl_ratio_is_the_product);
    suite_add_tcase(suite, published);
    TCase *properties = tcase_create("properties");
    tcase_add_test(properties, speeds_are_inverses);
    tcase_add_test(properties, restoring_ratio_restores);
    tcase_add_test(properties, nearest_choice_is_the_nearest);
    tcase_add_test(properties, mismatch_has_its_sign);
    tcase_add_test(properties, restoring_ratio_restores_every_figure);
    tcase_add_test(properties, driven_axles_decide_the_circumference);
    tcase_add_test(properties, gears_in_any_order);
    tcase_add_test(properties, choices_are_ranked_by_aim);
    tcase_add_test(properties, wear_and_what_is_allowed);
    suite_add_tcase(suite, properties);
    return suite;
}
