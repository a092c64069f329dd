/* Pull, resistance, grade and speed held, against published worked examples and by properties. */
#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"
#include "compute/pull.h"
#include "suites.h"
#include "support.h"

#define INCH_M 0.0254
#define SLUG_FT3 515.378818393 /* kg/m3: 32.174048556 lb in a cubic foot of 0.028316846592 m3 */

static double lb_ft(double value)
{
    return unit_to_si(UNIT_LB_FT, value);
}

START_TEST(tractive_force_follows_the_handbook)
{
    double wheel = wheel_torque_Nm(lb_ft(606 * 0.85), 52.9, 0.85);
    double force = tractive_force_N(wheel, 2 * PI * 19.5 * INCH_M);
    assert_close(unit_from_si(UNIT_LBF, force), 14253, 1,
                 "Bechtel rigging handbook, 2nd ed., p. 6-6: 606 lb-ft x 0.85, overall 52.9, "
                 "efficiency 0.85, radius 19.5 in");
    force = tractive_force_N(wheel_torque_Nm(lb_ft(79), 36.7, 0.85), 2 * PI * 15 * INCH_M);
    assert_close(unit_from_si(UNIT_LBF, force) / 2625, 0.75, 0.005,
                 "US Army TM 9-8000 para 29-15a: 79 lb-ft, overall 36.7, 2625 lb, 1.25 ft");
}
END_TEST

/* 2000 lb, Cd 0.40, 20 ft2, 0.002045 slug/ft3, at 70 mph. */
static struct puller textbook_car(void)
{
    double area = unit_to_si(UNIT_FT2, 20);
    return (struct puller){
        .limit_per_s = UNKNOWN,
        .weight_N = unit_to_si(UNIT_LBF, 2000),
        .grip_N = UNKNOWN,
        .air_N_s2_m2 = air_factor(0.002045 * SLUG_FT3, 0.40, area),
        .rolling = UNKNOWN,
    };
}

static const char textbook[] = "Mannering & Washburn, Principles of Highway Engineering, ch. 2";

START_TEST(resistances_follow_the_textbook)
{
    struct puller car = textbook_car();
    double v = unit_to_si(UNIT_MPH, 70), still = resistance_N(&car, v, 0);
    double air = car.air_N_s2_m2 * v * v;
    assert_close(unit_from_si(UNIT_LBF, air), 86.22, 0.01, textbook);
    assert_close(unit_from_si(UNIT_LBF, still - air), 33.97, 0.01, textbook);
}
END_TEST

/* 255 lb of pull: the small-angle grade is surplus over weight, which is what accelerates. */
START_TEST(small_angle_grade_follows_the_textbook)
{
    struct puller car = textbook_car();
    double v = unit_to_si(UNIT_MPH, 70), force = unit_to_si(UNIT_LBF, 255);
    double small_angle = acceleration_mps2(&car, force, v, 0) / 9.80665;
    assert_close(100 * small_angle, 6.74, 0.01, textbook);
    struct climb climb = grade_climbed(&car, force, v);
    ck_assert_int_eq(climb.limit, CLIMB_ENGINE);
    /* The sine and the tangent of 3.9 degrees are apart by less than its cube. */
    assert_close(climb.grade, small_angle, 0.068 * 0.068 * 0.068, "exact beside small-angle");
}
END_TEST

START_TEST(grade_of_three_quarters)
{
    const struct puller truck = {.weight_N = 1e4, .grip_N = UNKNOWN, .rolling = 0};
    struct climb climb = grade_climbed(&truck, 7500, 1);
    assert_close(100 * climb.grade, 113.4, 0.1, "tan(asin 0.75), by hand");
}
END_TEST

/* F/W at and above sqrt(1 + f^2): no slope balances it. */
START_TEST(force_above_what_asin_takes)
{
    struct puller truck = {.weight_N = 1e4, .grip_N = UNKNOWN, .rolling = 0.02};
    struct climb climb = grade_climbed(&truck, 1e4 * sqrt(1 + 0.02 * 0.02), 1);
    ck_assert_int_eq(climb.limit, CLIMB_GRIP_UNKNOWN);
    climb = grade_climbed(&truck, 9e4, 1);
    ck_assert_int_eq(climb.limit, CLIMB_GRIP_UNKNOWN);
    ck_assert(!known(climb.grade));
    truck.grip_N = 0.6 * 1e4;
    climb = grade_climbed(&truck, 9e4, 1);
    ck_assert_int_eq(climb.limit, CLIMB_GRIP);
    assert_close(climb.grade, 0.58, 1e-12, "tan theta = grip - f on a friction slope");
}
END_TEST

START_TEST(grade_balances_the_force)
{
    uint64_t state = random_start("grade_balances_the_force");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        struct puller puller = {
            .weight_N = random_between(&state, 5e3, 4e5),
            .rolling = run % 2 ? UNKNOWN : random_between(&state, 0, 0.1),
        };
        puller.air_N_s2_m2 = random_between(&state, 0, 0.4) * puller.weight_N / (40 * 40);
        puller.grip_N = random_between(&state, 0.1, 1.2) * puller.weight_N;
        double force = random_between(&state, 0, 3) * puller.weight_N;
        double v = random_between(&state, 0, 40);
        struct climb climb = grade_climbed(&puller, force, v);
        ck_assert(known(climb.grade)); /* with a known grip there is always a number */
        double balance = climb.limit == CLIMB_GRIP ? puller.grip_N * cos(atan(climb.grade)) : force;
        ck_assert(balance <= force * (1 + 1e-9));
        ck_assert(balance <= puller.grip_N * cos(atan(climb.grade)) * (1 + 1e-9));
        assert_close(resistance_N(&puller, v, climb.grade), balance, 1e-9 * puller.weight_N,
                     "pull and resistance on that grade");
    }
}
END_TEST

static struct value_pair points[] = {
    {.first = 20, .second = 300},
    {.first = 30, .second = 450},
    {.first = 60, .second = 380},
    {.first = 70, .second = 250},
};
static const struct pair_list curve = {points, LENGTH_OF(points)};

START_TEST(torque_is_straight_between_points)
{
    assert_close(torque_at_Nm(&curve, 20), 300, 0, "first point");
    assert_close(torque_at_Nm(&curve, 70), 250, 0, "last point");
    assert_close(torque_at_Nm(&curve, 25), 375, 1e-12, "half way");
    assert_close(torque_at_Nm(&curve, 67.5), 282.5, 1e-12, "three quarters of the way");
    ck_assert(!known(torque_at_Nm(&curve, 19.99)));
    ck_assert(!known(torque_at_Nm(&curve, 70.01)));
    assert_close(peak_torque_per_s(&curve, UNKNOWN), 30, 0, "450 N m at 30/s");
    assert_close(peak_torque_per_s(&curve, 25), 25, 0, "the limit comes before the peak");
    assert_close(peak_torque_per_s(&curve, 65), 30, 0, "the limit comes behind the peak");
}
END_TEST

static struct puller random_puller(uint64_t *state)
{
    struct puller puller = {
        .torque = &curve,
        .limit_per_s = random_whole(state, 0, 1) ? UNKNOWN : random_between(state, 35, 80),
        .efficiency = random_between(state, 0.6, 1),
        .slip = random_whole(state, 0, 1) ? 0 : random_between(state, 0, 0.2),
        .circumference_m = random_between(state, 1.5, 3.5),
        .weight_N = random_between(state, 8e3, 8e4),
        .grip_N = UNKNOWN,
        .air_N_s2_m2 = random_whole(state, 0, 3) ? random_between(state, 0, 3) : 0,
        .rolling = random_whole(state, 0, 1) ? UNKNOWN : random_between(state, 0, 0.05),
    };
    if (random_whole(state, 0, 1))
        puller.grip_N = random_between(state, 0.02, 1) * puller.weight_N;
    return puller;
}

/* By trying engine speeds one by one, from the fastest. */
static double held_by_trial(const struct puller *puller, double overall, double grade,
                            double lowest_per_s, double highest_per_s, int steps)
{
    for (int i = steps; i >= 0; i--) {
        double n = lowest_per_s + (highest_per_s - lowest_per_s) * i / steps;
        double v = puller->circumference_m * n * (1 - puller->slip) / overall;
        double force = torque_at_Nm(puller->torque, n) * overall * puller->efficiency * 2 * PI /
                       puller->circumference_m;
        force = lower_of(force, puller->grip_N * cos(atan(grade)));
        if (force >= resistance_N(puller, v, grade))
            return v;
    }
    return 0;
}

START_TEST(speed_held_is_the_highest)
{
    enum { STEPS = 4000 };
    uint64_t state = random_start("speed_held_is_the_highest");
    int none = 0, ends = 0, within = 0;
    for (int run = 0; run < 1000; run++) {
        struct puller puller = random_puller(&state);
        double overall = random_between(&state, 2, 40), grade = random_between(&state, 0, 0.4);
        double held = speed_held_mps(&puller, overall, grade);
        double most = lower_of(70, puller.limit_per_s), step = (most - 20) / STEPS;
        double tried = held_by_trial(&puller, overall, grade, 20, most, STEPS);
        double top = road_speed_mps(puller.circumference_m, most, overall, puller.slip);
        /* Where force and resistance do no more than touch, they may between two of the trials. */
        double n = held / top * most;
        if (held > tried)
            tried = higher_of(tried, held_by_trial(&puller, overall, grade, fmax(n - step, 20),
                                                   fmin(n + step, most), STEPS));
        assert_close(held, tried, top / STEPS + 1e-9, "trial of every engine speed");
        none += held == 0;
        ends += held > 0 && held > top * (1 - 1e-12);
        within += held > 0 && held < top * (1 - 1e-6);
    }
    ck_assert(none > 20 && ends > 20 && within > 20); /* all three were met */
}
END_TEST

START_TEST(variable_gearbox_is_the_best_of_all_ratios)
{
    enum { RATIOS = 400 };
    uint64_t state = random_start("variable_gearbox_is_the_best_of_all_ratios");
    int met = 0;
    for (int run = 0; run < 300; run++) {
        struct puller puller = random_puller(&state);
        double highest = random_between(&state, 2, 6), grade = random_between(&state, 0, 0.25);
        double lowest = highest * random_between(&state, 2, 7);
        double held = speed_held_variable_mps(&puller, lowest, highest, grade), best = 0;
        for (int i = 0; i <= RATIOS; i++) {
            double overall = highest * pow(lowest / highest, (double)i / RATIOS);
            best = higher_of(best, speed_held_mps(&puller, overall, grade));
        }
        ck_assert_msg(held >= best * (1 - 1e-6), "run %d: %.9g below %.9g", run, held, best);
        ck_assert_msg(held <= best * 1.01, "run %d: %.9g above %.9g", run, held, best);
        met += held > 0;
    }
    ck_assert(met > 50);
}
END_TEST

/* Torque falls in a straight line from 400 Nm at 2000 to 100 Nm at 6000 rpm: T = 550 - 0.075 n, so
 * power is most where 550 = 2 x 0.075 n, at 3667 rpm and 275 Nm: 105.59 kW. Against 20 kN on a
 * grade of 1 in 5, 20000 sin(atan(0.2)) = 3922.3 N, that is 26.921 m/s (calculus, by hand). */
START_TEST(variable_gearbox_finds_the_most_power)
{
    struct value_pair ends[] = {{.first = 2000.0 / 60, .second = 400},
                                {.first = 6000.0 / 60, .second = 100}};
    struct pair_list falling = {ends, 2};
    struct puller puller = {.torque = &falling,
                            .limit_per_s = UNKNOWN,
                            .efficiency = 1,
                            .circumference_m = 2,
                            .weight_N = 20000,
                            .grip_N = UNKNOWN,
                            .air_N_s2_m2 = 0,
                            .rolling = 0};
    assert_relative(speed_held_variable_mps(&puller, 8, 3, 0.2), 26.921, 2e-5, "by hand");
}
END_TEST

/* Grip that is just rolling resistance and grade holds at any speed where no air resists (the
 * balance of forces): the last bit of the sum decides nothing. */
START_TEST(just_enough_grip_is_enough)
{
    struct puller puller = {.torque = &curve,
                            .limit_per_s = UNKNOWN,
                            .efficiency = 1,
                            .circumference_m = 2,
                            .weight_N = 9317.3,
                            .air_N_s2_m2 = 0};
    for (int rolling = 1; rolling <= 5; rolling++)
        for (int grade = 1; grade <= 20; grade++) {
            puller.rolling = rolling / 100.0;
            puller.grip_N = (rolling + grade) / 100.0 * puller.weight_N;
            assert_close(speed_held_mps(&puller, 14, grade / 100.0), 10, 1e-9, "70 / 14 x 2 m");
            assert_close(speed_held_variable_mps(&puller, 20, 14, grade / 100.0), 10, 1e-9,
                         "the longest ratio");
            puller.grip_N *= 1 - 1e-6;
            assert_close(speed_held_mps(&puller, 14, grade / 100.0), 0, 0, "a little less");
        }
}
END_TEST

START_TEST(unknown_weight_stays_unknown)
{
    struct puller puller = {.torque = &curve,
                            .limit_per_s = UNKNOWN,
                            .efficiency = 0.9,
                            .circumference_m = 2,
                            .weight_N = UNKNOWN,
                            .grip_N = UNKNOWN,
                            .rolling = 0.01};
    ck_assert(!known(grade_climbed(&puller, 5000, 10).grade));
    ck_assert(!known(speed_held_mps(&puller, 4, 0.05)));
    ck_assert(!known(speed_held_variable_mps(&puller, 8, 4, 0.05)));
    ck_assert(!known(acceleration_mps2(&puller, 5000, 10, 0)));
}
END_TEST

START_TEST(inertia_slows_it)
{
    double radius = 0.35;
    assert_close(rotating_mass_kg(20 * radius * radius, 2 * PI * radius), 20, 1e-12,
                 "a hoop that rolls counts twice: its mass again");
    assert_close(wheel_inertia_kg_m2(24, 0.764), 24 * 0.7 * 0.7 * 0.382 * 0.382, 1e-12,
                 "radius of gyration 0.7 of the free radius (common practice)");
    struct puller car = textbook_car();
    double light = acceleration_mps2(&car, 2000, 10, 0);
    double heavy = acceleration_mps2(&car, 2000, 10, 0.1 * car.weight_N / 9.80665);
    assert_relative(light / heavy, 1.1, 1e-12, "a tenth more mass");
    car.grip_N = 1500;
    assert_relative(acceleration_mps2(&car, 2000, 10, 0), acceleration_mps2(&car, 1500, 10, 0),
                    1e-12, "no more than grip");
}
END_TEST

Suite *pull_suite(void)
{
    Suite *suite = suite_create("pull");
    TCase *published = tcase_create("published");
    tcase_add_test(published, tractive_force_follows_the_handbook);
    tcase_add_test(published, resistances_follow_the_textbook);
    tcase_add_test(published, small_angle_grade_follows_the_textbook);
    tcase_add_test(published, grade_of_three_quarters);
    suite_add_tcase(suite, published);
    TCase *properties = tcase_create("properties");
    tcase_add_test(properties, force_above_what_asin_takes);
    tcase_add_test(properties, grade_balances_the_force);
    tcase_add_test(properties, torque_is_straight_between_points);
    tcase_add_test(properties, speed_held_is_the_highest);
    tcase_add_test(properties, variable_gearbox_is_the_best_of_all_ratios);
    tcase_add_test(properties, variable_gearbox_finds_the_most_power);
    tcase_add_test(properties, just_enough_grip_is_enough);
    tcase_add_test(properties, unknown_weight_stays_unknown);
    tcase_add_test(properties, inertia_slows_it);
    suite_add_tcase(suite, properties);
    return suite;
}
