/* Axle loads by moments, against handbooks; conservation of mass; what an item weighs. */
#include "compute/axle_loads.h"
#include "suites.h"
#include "support.h"

#define POUND_KG 0.45359237
#define FOOT_M 0.3048
#define INCH_M 0.0254
#define OWNER "light-truck owner's manual 1999 p. 4-50"
#define BUILDER "body builder's manual, appendix B (Peterbilt 220)"

/* Published examples in their own units; NAN where the source prints no figure. */
static const struct {
    double mass, at, wheelbase, front, rear, tolerance;
    double mass_unit, length_unit;
    const char *source;
} examples[] = {
    {700, -4, 10, 980, -280, 0.5, POUND_KG, FOOT_M, OWNER " (rear computed)"},
    {318, -1.22, 3.05, 445, NAN, 0.5, 1, 1, OWNER ", metric"},
    {14500, 156, 214, 3929.9, 10570, 0.2, POUND_KG, INCH_M, BUILDER},
    {50, 3.95, 2.85, -19.30, 69.30, 0.01, 1, 1, "moments, by hand: 1100 mm behind the rear axle"},
};

START_TEST(moments_follow_the_handbook)
{
    double unit = examples[_i].mass_unit, length = examples[_i].length_unit;
    struct axle_loads loads = {.axle_kg = {0, 0}};
    axle_loads_add(&loads, examples[_i].mass * unit, examples[_i].at * length, 0,
                   examples[_i].wheelbase * length);
    assert_close(loads.axle_kg[AXLE_FRONT] / unit, examples[_i].front, examples[_i].tolerance,
                 examples[_i].source);
    if (!isnan(examples[_i].rear))
        assert_close(loads.axle_kg[AXLE_REAR] / unit, examples[_i].rear, examples[_i].tolerance,
                     examples[_i].source);
}
END_TEST

/* Both balances: the sum of masses, and the moment about the front axle. */
START_TEST(moments_keep_mass_and_place)
{
    uint64_t state = random_start("moments_keep_mass_and_place");
    for (int run = 0, runs = rounds(2000); run < runs; run++) {
        double wheelbase = random_between(&state, 1.8, 6), mass = 0, moment = 0, side_moment = 0;
        struct axle_loads loads = {.axle_kg = {0, 0}};
        int items = random_whole(&state, 1, 40);
        for (int i = 0; i < items; i++) {
            double kg = random_between(&state, -100, 900), at = random_between(&state, -2, 8);
            double side = random_between(&state, -1, 1);
            axle_loads_add(&loads, kg, at, side, wheelbase);
            mass += kg;
            moment += kg * at;
            side_moment += kg * side;
        }
        const double *axle = loads.axle_kg, *sides = loads.side_moment_kg_m;
        assert_close(axle[AXLE_FRONT] + axle[AXLE_REAR], mass, 1e-9 * 1000, "mass");
        assert_close(axle[AXLE_REAR] * wheelbase, moment, 1e-9 * 10000, "moment");
        assert_close(sides[AXLE_FRONT] + sides[AXLE_REAR], side_moment, 1e-9 * 1000, "side moment");
    }
}
END_TEST

START_TEST(item_weighs_what_it_holds)
{
    struct carried_item tank = item_unknown(), family = item_unknown(), trailer = item_unknown();
    tank.volume_m3 = 0.09;
    tank.dry_mass_kg = 38;
    tank.of = "diesel";
    /* EN 590: 820 to 845 kg/m3 at 15 degrees Celsius, working value 835 */
    assert_close(item_mass_kg(&tank), 38 + 0.09 * 835, 1e-9, "90 L of diesel in a tank of 38 kg");
    tank.density_kg_m3 = 1000;
    assert_close(item_mass_kg(&tank), 128, 1e-9, "its own density goes before the table's");
    tank.removed = 1;
    assert_close(item_mass_kg(&tank), -128, 1e-9, "removed");
    tank.density_kg_m3 = UNKNOWN;
    tank.of = "moonshine";
    ck_assert(!known(item_mass_kg(&tank)));
    family.occupants = 3; /* Regulation (EU) 1230/2012: 75 kg */
    assert_close(item_mass_kg(&family), 225, 1e-9, "three of 75 kg");
    family.occupant_mass_kg = 68; /* 49 CFR 571.110 S3 */
    assert_close(item_mass_kg(&family), 204, 1e-9, "three of 68 kg");
    trailer.tow_ball_kg = 180;
    trailer.trailer_mass_kg = 1900; /* stands on its own wheels */
    assert_close(item_mass_kg(&trailer), 180, 1e-9, "the ball carries its load alone");
}
END_TEST

/* What is taken off was part of the weighed vehicle: it makes no room on the roof for what comes,
 * and no trailer is behind. Common sense, no source. */
START_TEST(removed_item_frees_no_rating)
{
    struct vehicle vehicle = {.wheelbase_m = 3};
    struct axle_loads loads = {.axle_kg = {1000, 1000}, .gross_kg = 2000};
    struct carried_item tent = item_unknown(), rack = item_unknown(), trailer = item_unknown();
    tent.mass_kg = 60;
    rack.mass_kg = 25;
    tent.at_m = rack.at_m = trailer.at_m = 1.5;
    tent.on_roof = rack.on_roof = 0;
    trailer.tow_ball_kg = 80;
    trailer.trailer_mass_kg = 900;
    rack.removed = trailer.removed = 1;
    axle_loads_add_item(&loads, &tent, &vehicle);
    axle_loads_add_item(&loads, &rack, &vehicle);
    axle_loads_add_item(&loads, &trailer, &vehicle);
    assert_close(loads.gross_kg, 2000 + 60 - 25 - 80, 1e-9, "the vehicle is lighter");
    assert_close(loads.roof_kg, 60, 1e-9, "the roof bears the tent");
    assert_close(loads.tow_ball_kg, 0, 1e-9, "nothing on the ball");
    assert_close(loads.trailer_kg, 0, 1e-9, "no trailer");
}
END_TEST

START_TEST(seat_tells_the_place)
{
    struct seats seats = {NULL, {1.35, 2.25, UNKNOWN, UNKNOWN}};
    struct carried_item item = item_unknown();
    ck_assert(!known(item_at_m(&item, &seats)));
    item.seat = 1;
    assert_close(item_at_m(&item, &seats), 2.25, 0, "row 2");
    item.at_m = 2;
    assert_close(item_at_m(&item, &seats), 2, 0, "its own place goes first");
    item = item_unknown();
    item.seat = 2;
    ck_assert(!known(item_at_m(&item, &seats)));
}
END_TEST

/* A whole vehicle. */

static struct carried_item items[4];
static const char *workshop_items[] = {"winch", "tent"};

static void fill(struct specification *specification)
{
    specification_clear(specification);
    specification->vehicle.wheelbase_m = 2.85;
    specification->vehicle.unladen_kg = (struct axle_pair){1290, 1180};
    for (int i = 0; i < 4; i++)
        items[i] = item_unknown();
    items[0].item = "winch";
    items[0].mass_kg = 96;
    items[0].at_m = -0.82;
    items[1].item = "tent";
    items[1].mass_kg = 62;
    items[1].at_m = 1.5;
    items[1].on_roof = 0;
    items[2].item = "trailer";
    items[2].tow_ball_kg = 180;
    items[2].trailer_mass_kg = 1900;
    items[2].at_m = 3.9;
    items[3].item = "fridge";
    items[3].mass_kg = 57;
    items[3].at_m = 2.85;
    items[3].side_m = 0.25;
    specification->carried = (struct carried_list){items, 4};
}

static struct setup setup_of_mass(double kg, int dual_rear)
{
    struct setup setup = {.name = "x"};
    setup.axle[AXLE_FRONT] = setup.axle[AXLE_REAR] = tyre_unknown();
    setup.axle[AXLE_FRONT].mass_kg = setup.axle[AXLE_REAR].mass_kg = kg;
    setup.axle[AXLE_REAR].dual = dual_rear;
    return setup;
}

START_TEST(state_has_its_loads)
{
    struct specification specification;
    struct axle_loads loads;
    fill(&specification);
    struct setup fitted = setup_of_mass(24, CHOICE_NONE), heavier = setup_of_mass(31, CHOICE_NONE);
    axle_loads_in_state(&specification, NULL, &fitted, &heavier, &loads);
    double sum = 1290 + 1180 + 96 + 62 + 180 + 57 + 4 * 7;
    assert_close(loads.axle_kg[0] + loads.axle_kg[1], sum, 1e-9, "everything, by addition");
    double rear = 1180 + 14 + (96 * -0.82 + 62 * 1.5 + 180 * 3.9 + 57 * 2.85) / 2.85;
    assert_close(loads.axle_kg[AXLE_REAR], rear, 1e-9, "moments by hand");
    assert_close(loads.roof_kg, 62, 0, "roof");
    assert_close(loads.tow_ball_kg, 180, 0, "tow ball");
    assert_close(loads.trailer_kg, 1900, 0, "trailer");
    struct state state = {"workshop", false, {.items = workshop_items, .count = 2}};
    axle_loads_in_state(&specification, &state, &fitted, &fitted, &loads);
    assert_close(loads.axle_kg[0] + loads.axle_kg[1], 1290 + 1180 + 96 + 62, 1e-9, "workshop");
    assert_close(loads.trailer_kg, 0, 0, "no trailer in the workshop");
    state.all = true;
    ck_assert(state_holds(&state, "fridge") && state_holds(NULL, "fridge"));
    state.all = false;
    ck_assert(!state_holds(&state, "fridge") && state_holds(&state, "tent"));
}
END_TEST

START_TEST(tyre_mass_changes_both_axles)
{
    struct setup fitted = setup_of_mass(24, CHOICE_NONE), option = setup_of_mass(31, CHOICE_NONE);
    assert_close(tyre_mass_change_kg(&fitted, &fitted, AXLE_FRONT), 0, 0, "itself");
    assert_close(tyre_mass_change_kg(&fitted, &option, AXLE_REAR), 14, 1e-12, "two wheels");
    option.axle[AXLE_REAR].dual = 1;
    assert_close(tyre_mass_change_kg(&fitted, &option, AXLE_REAR), 4 * 31 - 2 * 24, 1e-12, "twins");
    option.axle[AXLE_FRONT].mass_kg = UNKNOWN;
    assert_close(tyre_mass_change_kg(&fitted, &option, AXLE_FRONT), 0, 0, "not known: no change");
}
END_TEST

/* The heavier corner: with both corners F and N on a track t, F + N = axle, (F - N) t/2 = moment.
 */
START_TEST(heavier_corner_balances_the_side_moment)
{
    uint64_t state = random_start("heavier_corner_balances_the_side_moment");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        struct axle_loads loads = {
            .axle_kg = {random_between(&state, 500, 2000), 0},
            .side_moment_kg_m = {random_between(&state, -300, 300), 0},
        };
        double track = random_between(&state, 1.2, 2.2);
        double far = heavier_corner_kg(&loads, AXLE_FRONT, track);
        double near = loads.axle_kg[AXLE_FRONT] - far;
        ck_assert(far >= near);
        assert_close((far - near) * track / 2, fabs(loads.side_moment_kg_m[AXLE_FRONT]), 1e-9,
                     "moment about the centre line");
        assert_close(heavier_corner_kg(&loads, AXLE_FRONT, UNKNOWN), loads.axle_kg[0] / 2, 1e-12,
                     "no track: half");
    }
}
END_TEST

/* Common practice: 35 to 65 % of the tilt on one axle. 300 kg right over the rear axle and 0.6 m
 * beside the centre line, track 1.5 m: 180 kg m, of which 117 may be the front's; by distance all
 * of it is the rear's. What lies on opposite sides of two axles does not tilt the body as a whole,
 * and each axle has its own. */
START_TEST(stiffer_axle_takes_more_of_the_tilt)
{
    struct axle_loads loads = {.axle_kg = {800, 560}};
    axle_loads_add(&loads, 300, 2.6, 0.6, 2.6);
    assert_close(heavier_corner_kg(&loads, AXLE_FRONT, 1.5), 400 + 78, 1e-9, "0.65 x 180 / 1.5");
    assert_close(heavier_corner_kg(&loads, AXLE_REAR, 1.5), 430 + 120, 1e-9, "180 / 1.5");
    assert_close(side_shift_kg(&loads, AXLE_FRONT, 1, 1.5), 120, 1e-9, "the whole of it");
    axle_loads_add(&loads, 300, 0, -0.6, 2.6);
    assert_close(heavier_corner_kg(&loads, AXLE_FRONT, 1.5), 550 + 120, 1e-9, "its own");
    assert_close(heavier_corner_kg(&loads, AXLE_REAR, 1.5), 430 + 120, 1e-9, "its own");
}
END_TEST

Suite *axle_loads_suite(void)
{
    Suite *suite = suite_create("axle_loads");
    TCase *moments = tcase_create("moments");
    tcase_add_loop_test(moments, moments_follow_the_handbook, 0, (int)LENGTH_OF(examples));
    tcase_add_test(moments, moments_keep_mass_and_place);
    tcase_add_test(moments, heavier_corner_balances_the_side_moment);
    tcase_add_test(moments, stiffer_axle_takes_more_of_the_tilt);
    suite_add_tcase(suite, moments);
    TCase *vehicle = tcase_create("vehicle");
    tcase_add_test(vehicle, item_weighs_what_it_holds);
    tcase_add_test(vehicle, removed_item_frees_no_rating);
    tcase_add_test(vehicle, seat_tells_the_place);
    tcase_add_test(vehicle, state_has_its_loads);
    tcase_add_test(vehicle, tyre_mass_changes_both_axles);
    suite_add_tcase(suite, vehicle);
    return suite;
}
