/* Springs: published rates; pieces against sums over small steps. */
#include "compute/springs.h"
#include "suites.h"
#include "support.h"

#define INCH_M 0.0254
#define POUND_FORCE_N 4.4482216152605
#define POUND_IN_N_M (POUND_FORCE_N / INCH_M)

START_TEST(rates_are_the_published_ones)
{
    assert_close(series_rate_N_m(200 * POUND_IN_N_M, 300 * POUND_IN_N_M) / POUND_IN_N_M, 120, 1e-9,
                 "Hooke's law in series: 200 over 300 lb/in is 120 lb/in");
    assert_close(wheel_rate_N_m(100e3, 0.70), 49e3, 0.05e3,
                 "Barton and Fieldhouse, Automotive Chassis Engineering, eq. 3.33");
    assert_close(wheel_rate_N_m(600, 0.50), 150, 1.5,
                 "miracerros.com, Spring Rate vs Wheel Rate: about 150 lb/in of 600");
    assert_close(wheel_rate_N_m(167, 0.95), 150, 1.5, "the same: of 167 lb/in");
}
END_TEST

static struct spring constant(double rate_N_m)
{
    return (struct spring){.shape = SPRING_CONSTANT, .points = {{0, rate_N_m}}, .count = 1};
}

START_TEST(constant_spring_gives_by_its_rate)
{
    struct spring spring = constant(200 * POUND_IN_N_M);
    assert_close(spring_travel_m(&spring, 600 * POUND_FORCE_N) / INCH_M, 3, 1e-12,
                 "Hooke's law: 200 lb/in over 3 in is 600 lb");
    assert_close(spring_force_N(&spring, 3 * INCH_M) / POUND_FORCE_N, 600, 1e-12, "and back");
    spring = constant(9.80665e3);
    assert_close(spring_travel_m(&spring, 250 * 9.80665) * 1e3, 250, 1e-9,
                 "J. Edgar, Springs and Natural Frequencies: 250 kg on 1 kg/mm");
    assert_close(spring_travel_m(&spring, 0), 0, 0, "no load");
    spring.shape = SPRING_UNKNOWN;
    ck_assert(!known(spring_travel_m(&spring, 100)));
    spring = constant(5e4);
    ck_assert(!known(spring_travel_m(&spring, UNKNOWN)));
}
END_TEST

START_TEST(stepped_spring_by_hand)
{
    const struct spring spring = {
        .shape = SPRING_STEPPED, .points = {{0, 50e3}, {0.04, 90e3}}, .count = 2};
    assert_close(spring_travel_m(&spring, 1000), 0.02, 1e-12, "before the step: 1000 / 50 N/mm");
    assert_close(spring_travel_m(&spring, 2000), 0.04, 1e-12, "at the step");
    assert_close(spring_travel_m(&spring, 2900), 0.05, 1e-12, "40 mm, then 900 / 90 N/mm");
    assert_close(spring_travel_m(&spring, -1000), -0.02, 1e-12, "unloaded: the first rate holds");
}
END_TEST

/* A helper in series with the main spring until it is closed. */
START_TEST(helper_spring_by_hand)
{
    struct spring spring;
    struct axle_suspension suspension = {.wheel_rate_N_m = 300e3,
                                         .helper_rate_N_m = 200e3,
                                         .helper_closes_at_m = 0.01,
                                         .spring_rate_N_m = UNKNOWN};
    spring_of_axle(&suspension, &spring);
    assert_close(spring_travel_m(&spring, 600), 0.005, 1e-12, "120 N/mm together");
    assert_close(spring_travel_m(&spring, 1200 + 300), 0.011, 1e-12, "closed at 1200 N");
    suspension.helper_rate_N_m = suspension.helper_closes_at_m = UNKNOWN;
    spring_of_axle(&suspension, &spring);
    assert_close(spring_travel_m(&spring, 600), 0.002, 1e-12, "the main spring alone");
    suspension.wheel_rate_N_m = UNKNOWN;
    suspension.spring_rate_N_m = 100e3;
    suspension.motion_ratio = 0.7;
    spring_of_axle(&suspension, &spring);
    assert_close(spring_travel_m(&spring, 490), 0.01, 1e-12, "49 N/mm at the wheel");
    suspension.spring_rate_N_m = UNKNOWN;
    spring_of_axle(&suspension, &spring);
    ck_assert(!known(spring_travel_m(&spring, 600)));
}
END_TEST

/* By Hooke's law: an axle of 1000 kg, 200 of them below the springs, puts 400 kg on each, which 20
 * N/mm let down by 196.1 mm and 30 N/mm by 130.8; 20 mm more of spring, and the axle stands 85.4 mm
 * higher. */
START_TEST(what_the_springs_carry_lifts_by_hand)
{
    struct specification specification;
    specification_clear(&specification);
    specification.vehicle.unladen_kg.rear = 1000;
    struct axle_suspension *suspension = &specification.suspension.rear;
    suspension->unsprung_kg = 200;
    suspension->wheel_rate_before_N_m = 20e3;
    suspension->wheel_rate_N_m = 30e3;
    suspension->free_height_change_m = 0.020;
    assert_close(axle_lift_m(&specification, AXLE_REAR), 0.0854, 5e-5, "Hooke's law");
    suspension->unsprung_kg = UNKNOWN;
    assert_close(axle_lift_m(&specification, AXLE_REAR), 0.1017, 5e-5, "500 kg: 245.2 - 163.4 mm");
    assert_close(axle_lift_m(&specification, AXLE_FRONT), 0, 0, "as it was");
}
END_TEST

static struct spring random_spring(uint64_t *state)
{
    struct spring spring = {.shape = random_whole(state, 0, 1) ? SPRING_STEPPED : SPRING_CURVED};
    double travel = random_between(state, -0.1, 0.05);
    spring.count = (size_t)random_whole(state, 1, 6);
    for (size_t i = 0; i < spring.count; i++) {
        spring.points[i] = (struct rate_point){travel, random_between(state, 2e4, 2e5)};
        travel += random_between(state, 0.005, 0.05);
    }
    return spring;
}

/* The rate at a travel, looked up on its own: the definition in the header. */
static double rate_looked_up(const struct spring *spring, double travel)
{
    const struct rate_point *points = spring->points;
    size_t last = spring->count - 1;
    if (travel <= points[0].travel_m)
        return points[0].rate_N_m;
    if (travel >= points[last].travel_m)
        return points[last].rate_N_m;
    size_t i = 0;
    while (points[i + 1].travel_m <= travel)
        i++;
    double share = (travel - points[i].travel_m) / (points[i + 1].travel_m - points[i].travel_m);
    return spring->shape == SPRING_STEPPED
               ? points[i].rate_N_m
               : points[i].rate_N_m + share * (points[i + 1].rate_N_m - points[i].rate_N_m);
}

START_TEST(force_over_the_travel_is_the_load)
{
    uint64_t state = random_start("force_over_the_travel_is_the_load");
    for (int run = 0; run < 150; run++) {
        struct spring spring = random_spring(&state);
        double load = random_between(&state, -6000, 12000);
        double travel = spring_travel_m(&spring, load), sum = 0;
        enum { STEPS = 8000 };
        for (int i = 0; i < STEPS; i++)
            sum += rate_looked_up(&spring, travel * (i + 0.5) / STEPS) * travel / STEPS;
        assert_close(sum, load, 1e-3 * fabs(load) + 0.5, "sum of rate x step");
        assert_close(spring_force_N(&spring, travel), load, 1e-9 * fabs(load) + 1e-6, "and back");
        double more = spring_travel_m(&spring, load + random_between(&state, 1, 2000));
        ck_assert(more > travel);
    }
}
END_TEST

START_TEST(equal_rates_make_a_constant_spring)
{
    uint64_t state = random_start("equal_rates_make_a_constant_spring");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        struct spring spring = random_spring(&state);
        double rate = random_between(&state, 2e4, 2e5), load = random_between(&state, -5000, 9000);
        for (size_t i = 0; i < spring.count; i++)
            spring.points[i].rate_N_m = rate;
        assert_close(spring_travel_m(&spring, load), load / rate, 1e-12, "one rate");
    }
}
END_TEST

START_TEST(new_spring_lifts_by_rate_and_length)
{
    assert_close(ride_height_gained_m(0.02, 5000, 50e3, 50e3), 0.02, 1e-15, "the same rate");
    assert_close(ride_height_gained_m(0, 5000, 50e3, 100e3), 0.05, 1e-15,
                 "100 mm given before, 50 mm now, by hand");
    assert_close(ride_height_gained_m(-0.05, 5000, 50e3, 100e3), 0, 1e-15,
                 "as much shorter: it stands as before");
    ck_assert(!known(ride_height_gained_m(0.02, 5000, UNKNOWN, 100e3)));
}
END_TEST

Suite *springs_suite(void)
{
    Suite *suite = suite_create("springs");
    TCase *published = tcase_create("published");
    tcase_add_test(published, rates_are_the_published_ones);
    tcase_add_test(published, constant_spring_gives_by_its_rate);
    tcase_add_test(published, stepped_spring_by_hand);
    tcase_add_test(published, helper_spring_by_hand);
    tcase_add_test(published, new_spring_lifts_by_rate_and_length);
    tcase_add_test(published, what_the_springs_carry_lifts_by_hand);
    suite_add_tcase(suite, published);
    TCase *properties = tcase_create("properties");
    tcase_add_test(properties, force_over_the_travel_is_the_load);
    tcase_add_test(properties, equal_rates_make_a_constant_spring);
    suite_add_tcase(suite, properties);
    return suite;
}
