/* Clearance: published examples; angles against sampled tangents; what lift and width may do. */
#include "compute/clearance.h"
#include "compute/springs.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

#define DEGREES(radians) ((radians)*180 / PI)
#define INCH_M 0.0254
#define CFR "by the definition of 40 CFR 86.084-2, by hand"

/* Points in mm, angles in degrees. */
static const struct {
    double distance, height, radius, expected;
    const char *source;
} ramps[] = {
    {800, 350, 380, 26.19, "approach, " CFR},
    {1000, 420, 380, 24.61, "departure, " CFR},
};

START_TEST(ramp_angle_is_the_definitions)
{
    double angle =
        ramp_angle_rad(ramps[_i].distance / 1e3, ramps[_i].height / 1e3, ramps[_i].radius / 1e3);
    assert_close(DEGREES(angle), ramps[_i].expected, 0.01, ramps[_i].source);
}
END_TEST

START_TEST(breakover_is_the_definitions)
{
    double angle = breakover_angle_rad(1.4, 0.25, 2.8, 0.38, 0.38);
    assert_close(DEGREES(angle), 20.75, 0.01, "wheelbase 2800 mm, 250 mm at its middle, " CFR);
}
END_TEST

/* The lowest direction from a point at (x, h) to any point of the tyre's circle about (0, R): the
 * tangent, found by looking at the circle's points one by one. In degrees below the horizontal. */
static double sampled_ramp_deg(double x, double h, double radius)
{
    enum { SAMPLES = 20000 };
    double lowest = INFINITY;
    for (int i = 0; i < SAMPLES; i++) {
        double turn = 2 * PI * i / SAMPLES;
        double away = x - radius * cos(turn), up = radius + radius * sin(turn) - h;
        lowest = fmin(lowest, atan2(up, away));
    }
    return -DEGREES(lowest);
}

START_TEST(angles_agree_with_sampled_tangents)
{
    uint64_t state = random_start("angles_agree_with_sampled_tangents");
    for (int run = 0; run < 300; run++) {
        double radius = random_between(&state, 0.25, 0.6), h = random_between(&state, 0.05, 0.9);
        double x = random_between(&state, radius + 0.02, 2.5);
        double angle = DEGREES(ramp_angle_rad(x, h, radius));
        assert_close(angle, sampled_ramp_deg(x, h, radius), 0.01, "ramp");
        double wheelbase = random_between(&state, 2.2, 4), rear = random_between(&state, 0.25, 0.6);
        double at = random_between(&state, 0.65, wheelbase - 0.65);
        assert_close(DEGREES(breakover_angle_rad(at, h, wheelbase, radius, rear)),
                     sampled_ramp_deg(at, h, radius) + sampled_ramp_deg(wheelbase - at, h, rear),
                     0.01, "breakover");
    }
}
END_TEST

START_TEST(angles_grow_with_height)
{
    uint64_t state = random_start("angles_grow_with_height");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        double radius = random_between(&state, 0.25, 0.6), h = random_between(&state, 0.05, 0.9);
        double x = random_between(&state, radius + 0.02, 2.5),
               more = random_between(&state, 0.001, 0.2);
        double angle = ramp_angle_rad(x, h, radius);
        ck_assert(ramp_angle_rad(x, h + more, radius) > angle);
        ck_assert(ramp_angle_rad(x + more, h, radius) < angle);
        ck_assert(angle > 0);
    }
    ck_assert(!known(ramp_angle_rad(0.1, 0.35, 0.38))); /* within the tyre */
    ck_assert(!known(ramp_angle_rad(UNKNOWN, 0.35, 0.38)));
    ck_assert(!known(ramp_angle_rad(0.8, UNKNOWN, 0.38)));
    ck_assert(!known(breakover_angle_rad(0.1, 0.35, 2.8, 0.38, 0.38)));
}
END_TEST

/* Springs: an axle rests on two of them. */
static double sag_of(double axle_kg, double rate_N_m)
{
    const struct spring spring = {SPRING_CONSTANT, {{0, rate_N_m}}, 1};
    return spring_travel_m(&spring, axle_kg * 9.80665 / 2);
}

START_TEST(spring_gives_by_its_rate)
{
    double pound_in = 0.45359237 * 9.80665 / INCH_M; /* lb/in in N/m */
    double sag = sag_of(2 * 600 * 0.45359237, 200 * pound_in);
    assert_close(sag / INCH_M, 3, 1e-9,
                 "Hooke's law: 200 lb/in over 3 in is 600 lb");
    sag = sag_of(2 * 250, 1 * 9.80665 * 1e3); /* 1 kg/mm */
    assert_close(sag * 1e3, 250, 1e-9,
                 "J. Edgar, Springs and Natural Frequencies: 250 kg on 1 kg/mm");
}
END_TEST

static struct wheel wheel_of(double width_in, double inset_mm, double spacer_mm)
{
    struct wheel wheel = tyre_unknown().wheel;
    wheel.width_m = width_in * INCH_M;
    wheel.inset_m = inset_mm / 1e3;
    wheel.spacer_m = spacer_mm / 1e3;
    return wheel;
}

/* Widths of the rims themselves stand for the tyre's, mm and inches. */
static const struct {
    double width_before, inset_before, width_after, inset_after, outer, inner, tolerance;
    const char *source;
} edges[] = {
    {7, 40, 8, 40, 12.7, 12.7, 0.01, "same inset, 7 to 8 in: half an inch each way"},
    {8, 35, 9, 10, 37.7, -12.3, 0.05, "8 in inset 35 to 9 in inset 10, by hand"},
};

START_TEST(edges_move_by_width_and_inset)
{
    struct wheel before = wheel_of(edges[_i].width_before, edges[_i].inset_before, 0);
    struct wheel after = wheel_of(edges[_i].width_after, edges[_i].inset_after, 0);
    struct edge_move move = rim_edge_move(&before, &after);
    assert_close(move.outer_m * 1e3, edges[_i].outer, edges[_i].tolerance, edges[_i].source);
    assert_close(move.inner_m * 1e3, edges[_i].inner, edges[_i].tolerance, edges[_i].source);
}
END_TEST

START_TEST(track_follows_inset_and_spacer)
{
    struct wheel before = wheel_of(7, 25, 0), after = wheel_of(7, 28, 15);
    static const char source[] = "published German example for VdTUEV 751: 1547 to 1571 mm";
    assert_close(1547 + 1e3 * track_change_m(&before, &after), 1571, 0.01, source);
    const struct fitment_limits_row *limit = fitment_limits_next("de_751", NULL);
    ck_assert_ptr_nonnull(limit);
    ck_assert_str_eq(limit->quantity, "track_change");
    assert_close(1547 * (1 + limit->max / 100), 1577.94, 0.01, source);
    struct wheel backspaced = wheel_of(8, 0, 0); /* (203.2 + 25)/2: flanges of about 25 mm */
    assert_close(backspacing_m(&backspaced) * 1e3, 114.1, 0.01, "8 in and flanges of 25 mm, inset 0");
}
END_TEST

/* Both edges together take the change of width; their middle moves by inset and spacer, and the
 * track by twice that. */
START_TEST(edges_and_track_agree)
{
    uint64_t state = random_start("edges_and_track_agree");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        struct wheel before =
            wheel_of(7, random_between(&state, -50, 60), random_between(&state, 0, 30));
        struct wheel after =
            wheel_of(8, random_between(&state, -50, 60), random_between(&state, 0, 30));
        double narrow = random_between(&state, 0.15, 0.35),
               wide = random_between(&state, 0.15, 0.35);
        struct edge_move move = tyre_edge_move(narrow, &before, wide, &after);
        assert_close(move.inner_m + move.outer_m, wide - narrow, 1e-12, "width");
        assert_close(move.outer_m - move.inner_m, track_change_m(&before, &after), 1e-12, "track");
        struct edge_move back = tyre_edge_move(wide, &after, narrow, &before);
        assert_close(back.inner_m, -move.inner_m, 1e-15, "back");
        struct edge_move none = tyre_edge_move(narrow, &before, narrow, &before);
        assert_close(none.inner_m, 0, 0, "itself");
        assert_close(none.outer_m, 0, 0, "itself");
        assert_close(track_change_m(&before, &before), 0, 0, "itself");
    }
}
END_TEST

/* Neither a wider nor a taller tyre ever adds room. */
START_TEST(larger_tyre_adds_no_room)
{
    uint64_t state = random_start("larger_tyre_adds_no_room");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        struct wheel before = wheel_of(7, random_between(&state, -50, 60), 0);
        struct wheel after =
            wheel_of(8, random_between(&state, -50, 60), random_between(&state, 0, 30));
        double width = random_between(&state, 0.15, 0.3), wider = random_between(&state, 0, 0.1);
        double taller = random_between(&state, 0, 0.15), change = random_between(&state, -0.1, 0.1);
        struct edge_move move = tyre_edge_move(0.2, &before, width, &after);
        struct edge_move more = tyre_edge_move(0.2, &before, width + wider, &after);
        ck_assert(more.inner_m >= move.inner_m && more.outer_m >= move.outer_m);
        ck_assert(lock_room_lost_at_most_m(change, more) >= lock_room_lost_at_most_m(change, move));
        ck_assert(lock_room_lost_at_most_m(change + taller, move) >=
                  lock_room_lost_at_most_m(change, move));
        ck_assert(arch_room_at_ride_m(0.1, change + taller, 0.04, 0.01) <=
                  arch_room_at_ride_m(0.1, change, 0.04, 0.01));
        ck_assert(arch_room_at_bump_m(0.1, 0.08, change + taller, 0) <=
                  arch_room_at_bump_m(0.1, 0.08, change, 0));
        ck_assert(swept_corner_radius_m(0.7 + taller, width + wider, 0.04) >=
                  swept_corner_radius_m(0.7, width, 0.04));
    }
}
END_TEST

/* Lift raises the body at ride height; at bump the spring's travel has eaten it, so it adds none:
 * the wheel that travels from the lifted ride height to the same stop ends where it always did. */
START_TEST(lift_adds_no_room_at_bump)
{
    uint64_t state = random_start("lift_adds_no_room_at_bump");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        double above = random_between(&state, 0.05, 0.2),
               travel = random_between(&state, 0.03, 0.15);
        double change = random_between(&state, -0.05, 0.1), lift = random_between(&state, 0, 0.1);
        double bump = arch_room_at_bump_m(above, travel, change, 0);
        double lifted_ride = arch_room_at_ride_m(above, change, lift, 0);
        assert_close(lifted_ride - (travel + lift), bump, 1e-12, "ride height less all travel");
        assert_close(lifted_ride - arch_room_at_ride_m(above, change, 0, 0), lift, 1e-12,
                     "at ride");
        assert_close(arch_room_at_ride_m(above, 0, 0, 0), above, 0, "fitted: as measured");
        assert_close(arch_room_at_bump_m(above, travel, change, 0.02) - bump, 0.02, 1e-12, "stops");
    }
    assert_close(arch_room_at_ride_m(0.110, 0.025, 0.040, 0.012), 0.1255, 1e-12, "by hand");
    assert_close(arch_room_at_bump_m(0.110, 0.080, 0.025, 0.010), 0.0275, 1e-12, "by hand");
}
END_TEST

/* The bound holds: no corner of the larger tyre reaches further from where a corner of the old
 * one was, whatever the steering angle. */
START_TEST(lock_bound_is_a_bound)
{
    uint64_t state = random_start("lock_bound_is_a_bound");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        double diameter = random_between(&state, 0.6, 0.9),
               width = random_between(&state, 0.15, 0.3);
        double taller = random_between(&state, 0, 0.1), wider = random_between(&state, 0, 0.08);
        double axis = random_between(&state, -0.1, 0.1);
        struct edge_move move = {wider / 2, wider / 2};
        double grown = swept_corner_radius_m(diameter + taller, width + wider, axis) -
                       swept_corner_radius_m(diameter, width, axis);
        ck_assert(grown <= lock_room_lost_at_most_m(taller, move) + 1e-12);
    }
    assert_close(lock_room_lost_at_most_m(0.06, (struct edge_move){-0.01, 0.04}), 0.05, 1e-12,
                 "3, 4, 5 triangle");
    assert_close(lock_room_lost_at_most_m(-0.06, (struct edge_move){-0.01, -0.04}), 0, 0,
                 "what shrinks counts as nothing");
    assert_close(swept_corner_radius_m(0.8, 0.52, 0.04), 0.5, 1e-12, "3, 4, 5 triangle");
    ck_assert(!known(lock_room_lost_at_most_m(UNKNOWN, (struct edge_move){0, 0})));
    ck_assert(!known(lock_room_lost_at_most_m(0, (struct edge_move){UNKNOWN, 0})));
}
END_TEST

/* The farthest of a tyre's outline in plan from the steering axis, point by point. */
static double farthest_of_outline(struct swept_tyre tyre)
{
    enum { SAMPLES = 400 };
    double farthest = 0;
    for (int i = 0; i <= SAMPLES; i++) {
        double share = (double)i / SAMPLES - 0.5;
        double across = tyre.centre_m + tyre.width_m * share, along = tyre.diameter_m * share;
        farthest = fmax(farthest, hypot(across, tyre.diameter_m / 2));
        farthest = fmax(farthest, hypot(tyre.centre_m + tyre.width_m / 2, along));
        farthest = fmax(farthest, hypot(tyre.centre_m - tyre.width_m / 2, along));
    }
    return farthest;
}

/* Moved outward, the farther corner tells; otherwise never less than it does. The same tyre loses
 * nothing, to the last digit. */
START_TEST(lock_takes_the_corner_that_gains_most)
{
    uint64_t state = random_start("lock_takes_the_corner_that_gains_most");
    for (int run = 0, runs = rounds(2000); run < runs; run++) {
        struct swept_tyre before = {random_between(&state, 0.6, 0.9),
                                    random_between(&state, 0.15, 0.3),
                                    random_between(&state, 0.01, 0.07)};
        struct swept_tyre after = before;
        assert_close(lock_room_lost_m(before, after), 0, 0, "itself");
        after.centre_m += random_between(&state, 0, 0.05);
        assert_close(lock_room_lost_m(before, after),
                     farthest_of_outline(after) - farthest_of_outline(before), 1e-9, "outward");
        after.diameter_m +=
            random_between(&state, 0, 0.1); /* height tells more on the near corner */
        ck_assert(lock_room_lost_m(before, after) >=
                  farthest_of_outline(after) - farthest_of_outline(before) - 1e-12);
        after = before;
        after.centre_m -= 0.005; /* inward: the inner corner comes nearer to what is there */
        ck_assert(lock_room_lost_m(before, after) > 0);
    }
    struct swept_tyre before = {0.8, 0.52, 0.04}, after = {0.8, 0.52, UNKNOWN};
    ck_assert(!known(lock_room_lost_m(before, after)));
}
END_TEST

START_TEST(scrub_radius_by_hand)
{
    double lean = 45 * PI / 180;
    assert_close(scrub_radius_m(0.4, 0.35, lean), 0.05, 1e-12, "an axis at 45 degrees, by hand");
    assert_close(scrub_radius_m(0.06, 0.35, 0), 0.06, 0, "an upright axis");
    ck_assert(!known(scrub_radius_m(0.06, 0.35, UNKNOWN)));
}
END_TEST

START_TEST(pitch_turns_rake_and_beam)
{
    struct axle_pair up_behind = {0.010, 0.060};
    assert_close(DEGREES(rake_rad(up_behind, 2.5)), 1.1458, 5e-5, "atan(50/2500), by hand");
    assert_close(beam_rise(up_behind, 2.5), -0.02, 1e-15, "2 % down: 20 cm over 10 m, by hand");
    struct axle_pair level = {0.04, 0.04};
    assert_close(beam_rise(level, 2.5), 0, 0, "level");
    assert_close(bump_travel_left_m(0.080, 0.040, 0.010, 0.025), 0.085, 1e-15, "by hand");
    const struct headlamp_dip_row *low = headlamp_dip_for(0.7), *high = headlamp_dip_for(1.05);
    assert_close(
        low->dip_min_percent, 0.5, 0,
        "remain between 0.5 and 2.5 %: the European text as a bilingual dictionary quotes it");
    assert_close(low->dip_max_percent, 2.5, 0, "the same");
    assert_close(high->dip_min_percent, 1, 0, "UN R48 6.2.6.1.2 above 1 m, from memory");
    ck_assert_ptr_null(headlamp_dip_for(UNKNOWN));
}
END_TEST

START_TEST(change_between_axles_is_linear)
{
    struct axle_pair change = {0.040, 0.050};
    assert_close(change_at_m(change, 0, 2.85), 0.040, 0, "over the front axle");
    assert_close(change_at_m(change, 2.85, 2.85), 0.050, 1e-15, "over the rear axle");
    assert_close(change_at_m(change, 1.425, 2.85), 0.045, 1e-15, "at the middle");
    assert_close(change_at_m(change, 5.7, 2.85), 0.060, 1e-15, "as far behind the rear axle again");
    assert_close(change_at_m(change, -2.85, 2.85), 0.030, 1e-15, "ahead of the front axle");
}
END_TEST

Suite *clearance_suite(void)
{
    Suite *suite = suite_create("clearance");
    TCase *published = tcase_create("published");
    tcase_add_loop_test(published, ramp_angle_is_the_definitions, 0, (int)LENGTH_OF(ramps));
    tcase_add_test(published, breakover_is_the_definitions);
    tcase_add_test(published, spring_gives_by_its_rate);
    tcase_add_loop_test(published, edges_move_by_width_and_inset, 0, (int)LENGTH_OF(edges));
    tcase_add_test(published, track_follows_inset_and_spacer);
    tcase_add_test(published, scrub_radius_by_hand);
    tcase_add_test(published, pitch_turns_rake_and_beam);
    suite_add_tcase(suite, published);
    TCase *properties = tcase_create("properties");
    tcase_add_test(properties, angles_agree_with_sampled_tangents);
    tcase_add_test(properties, angles_grow_with_height);
    tcase_add_test(properties, edges_and_track_agree);
    tcase_add_test(properties, larger_tyre_adds_no_room);
    tcase_add_test(properties, lift_adds_no_room_at_bump);
    tcase_add_test(properties, lock_bound_is_a_bound);
    tcase_add_test(properties, lock_takes_the_corner_that_gains_most);
    tcase_add_test(properties, change_between_axles_is_linear);
    suite_add_tcase(suite, properties);
    return suite;
}
