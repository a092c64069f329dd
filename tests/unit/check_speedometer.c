/* Speedometers on other circumferences, and settings; all with inverses. */
#include "compute/dimensions.h"
#include "compute/speedometer.h"
#include "report/speedometer/gauge.h"
#include "suites.h"
#include "support.h"

static struct instrument_line random_line(uint64_t *state)
{
    return (struct instrument_line){random_between(state, 0.85, 1.2),
                                    random_between(state, -1.5, 1.5)};
}

START_TEST(shown_and_true_are_inverses)
{
    uint64_t state = random_start("shown_and_true_are_inverses");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        struct instrument_line line = random_line(&state);
        double v = random_between(&state, 5, 80);
        assert_relative(true_speed_mps(line, shown_speed_mps(line, v)), v, 1e-12,
                        "true speed back");
        assert_relative(shown_speed_mps(line, true_speed_mps(line, v)), v, 1e-12,
                        "shown speed back");
        assert_relative(v * (1 + speed_error(line, v)), shown_speed_mps(line, v), 1e-12, "e");
    }
}
END_TEST

/* 1 + e_new = (1 + e) C_old/C_new; there and back is the same instrument. */
START_TEST(line_follows_the_circumference)
{
    uint64_t state = random_start("line_follows_the_circumference");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        double before = random_between(&state, 1.6, 3), after = random_between(&state, 1.6, 3);
        struct instrument_line line = {random_between(&state, 0.9, 1.1), 0};
        struct instrument_line moved = line_on_circumference(line, before, after);
        double v = random_between(&state, 5, 60);
        assert_relative(1 + speed_error(moved, v), line.scale * before / after, 1e-12, "1 + e");
        ck_assert(after < before || moved.scale <= line.scale); /* larger tyres read lower */
        assert_relative(line_on_circumference(moved, after, before).scale, line.scale, 1e-12,
                        "back");
        assert_close(line_on_circumference(line, before, before).scale - line.scale, 0, 0,
                     "itself");
    }
}
END_TEST

/* Counts per distance and driven teeth change by C_old/C_new, a circumference by C_new/C_old. */
static const struct {
    int kind;
    double now, from_mm, to_mm, expected, tolerance;
} settings[] = {
    {SETTING_PULSES_PER_KM, 2548, 2327, 2406, 2464.3, 0.1},
    {SETTING_PULSES_PER_MILE, 4000, 2327, 2406, 3868.66, 0.01},
    {SETTING_REVS_PER_KM, 430, 2327, 2406, 415.88, 0.01},
    {SETTING_REVS_PER_MILE, 692, 2327, 2406, 669.28, 0.01},
    {SETTING_CIRCUMFERENCE_MM, 2327, 2327, 2406, 2406, 1e-9},
    {SETTING_DRIVEN_GEAR_TEETH, 20, 2327, 2406, 19.343, 0.001},
    {SETTING_CONSTANT_K, 8000, 2327, 2406, 7737.32, 0.01},
};

START_TEST(setting_follows_the_circumference)
{
    double setting = setting_for_error(settings[_i].kind, settings[_i].now,
                                       settings[_i].from_mm / 1e3, settings[_i].to_mm / 1e3, 0, 0);
    assert_close(setting, settings[_i].expected, settings[_i].tolerance,
                 "old x C_old/C_new, by hand");
}
END_TEST

/* A tyre of 2 m turns 500 times a km and 1609.344 / 2 times a mile. */
START_TEST(setting_is_that_of_the_tyre)
{
    assert_close(setting_of_tyre(SETTING_CIRCUMFERENCE_MM, 2), 2000, 1e-9, "circumference");
    assert_close(setting_of_tyre(SETTING_REVS_PER_KM, 2), 500, 1e-9, "turns a km");
    assert_close(setting_of_tyre(SETTING_REVS_PER_MILE, 2), 804.672, 1e-9, "turns a mile");
    ck_assert(!known(setting_of_tyre(SETTING_PULSES_PER_KM, 2)));
}
END_TEST

START_TEST(setting_and_error_are_inverses)
{
    uint64_t state = random_start("setting_and_error_are_inverses");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        int kind = random_whole(&state, SETTING_PULSES_PER_KM, SETTING_CONSTANT_K);
        double now = random_between(&state, 10, 1e5), error = random_between(&state, -0.1, 0.15);
        double from = random_between(&state, 1.6, 3), to = random_between(&state, 1.6, 3);
        double target = random_between(&state, -0.1, 0.15);
        double setting = setting_for_error(kind, now, from, to, error, target);
        assert_close(error_with_setting(kind, setting, now, from, to, error), target, 1e-12,
                     "target");
        double left = error_with_setting(kind, now, now, from, to, error);
        assert_close(1 + left, (1 + error) * from / to, 1e-12, "left as it is: 1 + e_new");
        assert_relative(setting_for_error(kind, now, from, to, error, left), now, 1e-12, "now");
        assert_relative(setting_for_error(kind, now, from, from, error, error), now, 1e-14,
                        "itself");
    }
}
END_TEST

/* What shows nothing is reached by no count, and by no circumference. */
START_TEST(no_setting_shows_nothing)
{
    for (int kind = SETTING_PULSES_PER_KM; kind <= SETTING_CONSTANT_K; kind++) {
        bool circumference = kind == SETTING_CIRCUMFERENCE_MM;
        ck_assert_double_eq(setting_for_error(kind, 1000, 2, 2.1, 0.05, -1),
                            circumference ? 0 : INFINITY);
        ck_assert_double_eq(setting_for_error(kind, 1000, 2, 2.1, 0.05, INFINITY),
                            circumference ? INFINITY : 0);
    }
}
END_TEST

/* More counts expected a km, or a smaller circumference entered: the instrument shows less. */
START_TEST(setting_moves_the_error_the_right_way)
{
    for (int kind = SETTING_PULSES_PER_KM; kind <= SETTING_CONSTANT_K; kind++) {
        bool circumference = kind == SETTING_CIRCUMFERENCE_MM;
        double error = error_with_setting(kind, 1100, 1000, 2, 2, 0);
        assert_close(1 + error, circumference ? 1.1 : 1 / 1.1, 1e-12, "ten per cent more");
    }
}
END_TEST

/* Against every setting that the instrument can take, one by one. */
static double nearest_of_all(const double *possible, size_t count, double exact, double low,
                             double high)
{
    double nearest = UNKNOWN;
    for (size_t i = 0; i < count; i++)
        if (possible[i] >= low && possible[i] <= high &&
            !(fabs(possible[i] - exact) >= fabs(nearest - exact)))
            nearest = possible[i];
    return nearest;
}

static void compare_nearest(double found, double nearest, double exact)
{
    ck_assert_msg(known(found) == known(nearest), "exact %.9g: %g, expected %g", exact, found,
                  nearest);
    if (known(found))
        assert_close(fabs(found - exact), fabs(nearest - exact), 1e-9, "distance");
}

START_TEST(nearest_setting_is_the_nearest_step)
{
    uint64_t state = random_start("nearest_setting_is_the_nearest_step");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        double min = random_whole(&state, 10, 100), max = random_whole(&state, 150, 400);
        double step = random_whole(&state, 1, 5), all[400];
        double now = min + step * random_whole(&state, 0, 10);
        struct setting_grid grid = {now, step, min, max, {NULL, 0}};
        size_t count = 0;
        for (double setting = min; setting <= max; setting += step)
            all[count++] = setting;
        double low = random_between(&state, 0, 450), high = low + random_between(&state, -1, 60);
        double exact = random_between(&state, 5, 450);
        compare_nearest(nearest_setting(&grid, exact, low, high),
                        nearest_of_all(all, count, exact, low, high), exact);
    }
}
END_TEST

START_TEST(nearest_setting_is_the_nearest_choice)
{
    uint64_t state = random_start("nearest_setting_is_the_nearest_choice");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        double choices[6];
        for (size_t i = 0; i < LENGTH_OF(choices); i++)
            choices[i] = random_whole(&state, 10, 400);
        struct setting_grid grid = {20, UNKNOWN, UNKNOWN, UNKNOWN, {choices, LENGTH_OF(choices)}};
        double low = random_between(&state, 0, 400), high = low + random_between(&state, 0, 100);
        double exact = random_between(&state, 5, 450);
        compare_nearest(nearest_setting(&grid, exact, low, high),
                        nearest_of_all(choices, LENGTH_OF(choices), exact, low, high), exact);
    }
}
END_TEST

/* An end that only rounding keeps out is met, and a step of a thousandth far away is found. */
START_TEST(nearest_setting_reaches_far_and_meets_ends)
{
    struct setting_grid fine = {2548, 0.001, 1000, 25000, {NULL, 0}};
    assert_close(nearest_setting(&fine, 2548, 0, 2000), 2000, 1e-6, "548,000 steps away");
    struct setting_grid tenths = {0.3, 0.1, UNKNOWN, UNKNOWN, {NULL, 0}};
    assert_close(nearest_setting(&tenths, 5, 0.7, 0.7), 0.7, 1e-9, "0.3 + 4 x 0.1");
    ck_assert(!known(nearest_setting(&fine, 2548, 30000, 40000)));
    struct setting_grid whole = {2327, 1, UNKNOWN, UNKNOWN, {NULL, 0}};
    double end = nextafter(nextafter(2406, 0), 0); /* what rounding leaves of 2406 */
    assert_close(nearest_setting(&whole, 2500, 2400, end), 2406, 0, "an end but for its last bits");
    struct setting_grid open = {2548, 1, UNKNOWN, UNKNOWN, {NULL, 0}};
    assert_close(nearest_setting(&open, 2463.7, 0, INFINITY), 2464, 0, "no end, no law");
}
END_TEST

/* 917 revolutions a mile, axle 3.25, 16 teeth on the shaft: 47684 pulses a mile, by hand.
 * JIS D 5601, from memory: 637 turns a km; 4 pulses a turn are 2548 a km. 40
 * pulses a shaft turn, axle 3.73, 73.8 in, against 128000 a mile: 1.0007. */
START_TEST(sensor_counts_as_published)
{
    const double mile = 1609.344;
    assert_close(sensor_pulses_per_m(16, 3.25, mile / 917) * mile, 47684, 0.5, "shaft, 16 teeth");
    assert_close(sensor_pulses_per_m(4, 637, 1000) * 1000, 2548, 1e-9, "JIS D 5601, four pulses");
    assert_close(sensor_pulses_per_m(1, 637, 1000) * mile, 1025, 0.5, "JIS D 5601, per mile");
    double counts = sensor_pulses_per_m(40, 3.73, 73.8 * 0.0254) * mile;
    assert_close(counts / 128000, 1.0007, 0.0005, "by hand");
    assert_close(error_of_counts(counts, 128000), 0.0007, 0.0005, "it reads over by as much");
    assert_close(adapter_ratio(1 + error_of_counts(counts, 128000), 0), 1.0007, 0.0005, "adapter");
}
END_TEST

/* A mile in 60 s is 60 mph; wear of the whole circle; a distance and back. */
START_TEST(distances_and_wear)
{
    assert_close(timed_speed_mps(1609.344, 60), 26.8224, 1e-12, "60 mph");
    assert_relative(worn_circumference_m(2.0, 0.65, 0.0065), 2.0 * 0.98, 1e-12, "2 x 6.5 of 650");
    assert_close(worn_circumference_m(2.0, 0.65, 0), 2.0, 0, "nothing lost");
    uint64_t state = random_start("distances_and_wear");
    for (int run = 0, runs = rounds(2000); run < runs; run++) {
        double scale = random_between(&state, 0.9, 1.1), shown = random_between(&state, 1, 1e6);
        double from = random_between(&state, 1.6, 3), to = random_between(&state, 1.6, 3);
        double truth = true_distance(shown, scale, from, to);
        assert_relative(truth, shown * to / from / scale, 1e-12, "true");
        assert_relative(shown_distance(truth, scale, from, to), shown, 1e-12, "back");
        assert_close(true_distance(shown, 1, from, from), shown, 0, "itself");
    }
}
END_TEST

Suite *speedometer_suite(void)
{
    Suite *suite = suite_create("speedometer");
    TCase *published = tcase_create("published");
    tcase_add_test(published, sensor_counts_as_published);
    suite_add_tcase(suite, published);
    TCase *line = tcase_create("line");
    tcase_add_test(line, shown_and_true_are_inverses);
    tcase_add_test(line, line_follows_the_circumference);
    tcase_add_test(line, distances_and_wear);
    suite_add_tcase(suite, line);
    TCase *setting = tcase_create("setting");
    tcase_add_loop_test(setting, setting_follows_the_circumference, 0, (int)LENGTH_OF(settings));
    tcase_add_test(setting, setting_is_that_of_the_tyre);
    tcase_add_test(setting, setting_and_error_are_inverses);
    tcase_add_test(setting, no_setting_shows_nothing);
    tcase_add_test(setting, setting_moves_the_error_the_right_way);
    tcase_add_test(setting, nearest_setting_is_the_nearest_step);
    tcase_add_test(setting, nearest_setting_is_the_nearest_choice);
    tcase_add_test(setting, nearest_setting_reaches_far_and_meets_ends);
    suite_add_tcase(suite, setting);
    return suite;
}
