/* Single formulas by hand, three times each: a turn of a loop is an example, whose steps stand
 * beside it. tests/outside/unit.csv names the law or the publication of each test. */
#include "base/units.h"
#include "compute/arch_fit.h"
#include "compute/capacity.h"
#include "compute/clearance.h"
#include "compute/gearing.h"
#include "compute/inflating.h"
#include "compute/least_squares.h"
#include "compute/pressure_warning.h"
#include "compute/pull.h"
#include "compute/speedometer.h"
#include "compute/springs.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

enum { EXAMPLES = 3 };

struct example {
    double got, expected, tolerance;
    const char *steps;
};

/* The example of this turn; of those that come as an array of EXAMPLES. */
#define TURN(...)                                                                                  \
    do {                                                                                           \
        const struct example examples[EXAMPLES] = {__VA_ARGS__};                                   \
        assert_close(examples[_i].got, examples[_i].expected, examples[_i].tolerance,              \
                     examples[_i].steps);                                                          \
    } while (0)

static double no_lock(double inset_change_m, const void *data)
{
    (void)inset_change_m;
    (void)data;
    return INFINITY;
}

static struct arch_rooms rooms(double ride_m, double bump_m, double inner_m, double outer_m)
{
    return (struct arch_rooms){.ride_m = ride_m,
                               .bump_m = bump_m,
                               .inner_m = inner_m,
                               .outer_m = outer_m,
                               .lock_m = INFINITY};
}

START_TEST(rooms_that_are_short)
{
    const struct arch_rooms bump[] = {rooms(0.05, -0.008, 0.01, 0.02), rooms(0, -0.02, 0.1, 0.1),
                                      rooms(0.03, -0.0125, 0, 0)};
    const struct arch_rooms ride[] = {rooms(-0.003, 0.02, 0.01, 0.02), rooms(-0.02, 0, 0.1, 0.1),
                                      rooms(-0.0125, 0.1, 0, 0)};
    TURN({bump_stop_to_fit_m(&bump[0]), 0.008, 1e-12, "8 mm short at bump"},
         {bump_stop_to_fit_m(&bump[1]), 0.02, 1e-12, "20 mm short at bump"},
         {bump_stop_to_fit_m(&bump[2]), 0.0125, 1e-12, "12.5 mm short at bump"});
    TURN({lift_to_fit_m(&ride[0]), 0.003, 1e-12, "3 mm short standing"},
         {lift_to_fit_m(&ride[1]), 0.02, 1e-12, "20 mm short standing"},
         {lift_to_fit_m(&ride[2]), 0.0125, 1e-12, "12.5 mm short standing"});
    const struct arch_rooms outer[] = {rooms(0.05, 0, 0.01, -0.006), rooms(-0.004, -0.02, 0, -0.01),
                                       rooms(-0.03, 0, 0, 0.01)};
    TURN({trim_to_fit_m(&outer[0]), 0.006, 1e-12, "6 mm short outside"},
         {trim_to_fit_m(&outer[1]), 0.02, 1e-12, "the largest of 4, 20 and 10 mm"},
         {trim_to_fit_m(&outer[2]), 0.03, 1e-12, "30 mm short standing"});
    const struct arch_rooms side[] = {rooms(0, 0, -0.006, 0.02), rooms(0, 0, 0.02, -0.006),
                                      rooms(0, 0, 0.015, -0.0105)};
    TURN({inset_to_fit_m(&side[0], no_lock, NULL), -0.006, 1e-12, "6 mm outward"},
         {inset_to_fit_m(&side[1], no_lock, NULL), 0.006, 1e-12, "6 mm inward"},
         {inset_to_fit_m(&side[2], no_lock, NULL), 0.0105, 1e-12, "10.5 mm inward of 15"});
    TURN({arch_fits(&bump[0]), 0, 0, "short at bump"},
         {arch_fits(&ride[0]), 0, 0, "short standing"},
         {arch_fits(&side[0]), 0, 0, "short inside"});
}
END_TEST

/* Triangles of whole numbers: 3, 4, 5; 5, 12, 13; 8, 15, 17. */
START_TEST(corners_about_an_axis)
{
    TURN({swept_corner_radius_m(0.6, 0.5, 0.15), 0.5, 1e-12, "300 and 250 + 150 mm"},
         {swept_corner_radius_m(0.5, 0.2, 0.5), 0.65, 1e-12, "250 and 100 + 500 mm"},
         {swept_corner_radius_m(0.8, 0.3, 0.6), 0.85, 1e-12, "400 and 150 + 600 mm"});
    TURN({lock_room_lost_at_most_m(0.06, (struct edge_move){0.04, 0}), 0.05, 1e-12, "30 and 40"},
         {lock_room_lost_at_most_m(0.1, (struct edge_move){0, 0.12}), 0.13, 1e-12, "50 and 120"},
         {lock_room_lost_at_most_m(0.16, (struct edge_move){0.15, 0}), 0.17, 1e-12, "80 and 150"});
    const struct swept_tyre before = {0.6, 0.2, 0.3}, outward = {0.6, 0.2, 0.62},
                            taller = {0.8, 0.2, 0.3}, inward = {0.6, 0.2, 0};
    TURN(
        {lock_room_lost_m(before, outward), 0.28, 1e-12, "780 mm less 500, the outer corner"},
        {lock_room_lost_m(before, taller), 0.0866585, 1e-7, "447.2136 mm less 360.5551, the inner"},
        {lock_room_lost_m(before, inward), -0.0443273, 1e-7,
         "316.2278 mm less 360.5551, the inner; the outer one withdraws by more"});
    TURN({lock_room_lost_by_sidewall_m((struct edge_move){-0.004, 0.012}), 0.012, 1e-12,
          "12 mm outward"},
         {lock_room_lost_by_sidewall_m((struct edge_move){0.007, -0.02}), 0.007, 1e-12,
          "7 mm inward"},
         {lock_room_lost_by_sidewall_m((struct edge_move){-0.01, -0.015}), -0.01, 1e-12,
          "both withdraw, the inner one by 10 mm"});
}
END_TEST

START_TEST(angles_of_three_vehicles)
{
    TURN({breakover_angle_rad(1.4, 0.25, 2.8, 0.38, 0.38) * 180 / PI, 20.74996, 1e-5, "middle"},
         {breakover_angle_rad(1, 0.3, 3, 0.4, 0.4) * 180 / PI, 26.403506, 1e-5, "at a third"},
         {breakover_angle_rad(1.5, 0.2, 2.5, 0.35, 0.36) * 180 / PI, 19.447088, 1e-5, "two radii"});
}
END_TEST

/* Up to the next 5 kPa or 1 psi. */
START_TEST(pressures_rounded_up)
{
    TURN({pressure_rounded_up_Pa(201e3, PRESSURE_METRIC), 205e3, 1e-6, "201 kPa"},
         {pressure_rounded_up_Pa(240e3, PRESSURE_METRIC), 240e3, 1e-6, "240 kPa"},
         {unit_from_si(UNIT_PSI, pressure_rounded_up_Pa(unit_to_si(UNIT_PSI, 36.2), PRESSURE_US)),
          37, 1e-9, "36.2 psi"});
}
END_TEST

START_TEST(warnings_of_table_1)
{
    TURN({warning_minimum_Pa(INFLATION_LT_METRIC, 'C'), 200e3, 0, "range C"},
         {warning_minimum_Pa(INFLATION_LT_METRIC, 'D'), 260e3, 0, "range D"},
         {warning_minimum_Pa(INFLATION_LT_METRIC, 'E'), 350e3, 0, "range E"});
}
END_TEST

/* An ellipse of section width by section height on the circle half way up the section. */
START_TEST(cavities)
{
    const struct tyre_dimensions tyres[] = {{.section_width_m = 0.205,
                                             .section_height_m = 0.133,
                                             .overall_diameter_m = 0.672,
                                             .rim_diameter_m = 0.406},
                                            {.section_width_m = 0.2,
                                             .section_height_m = 0.1,
                                             .overall_diameter_m = 0.6,
                                             .rim_diameter_m = 0.4},
                                            {.section_width_m = 0.3,
                                             .section_height_m = 0.2,
                                             .overall_diameter_m = 0.8,
                                             .rim_diameter_m = 0.4}};
    TURN({cavity_volume_m3(&tyres[0]), 0.03626052, 1e-8, "21414 mm2 on 539 mm"},
         {cavity_volume_m3(&tyres[1]), 0.02467401, 1e-8, "15708 mm2 on 500 mm"},
         {cavity_volume_m3(&tyres[2]), 0.08882644, 1e-8, "47124 mm2 on 600 mm"});
}
END_TEST

/* Ratios in order of engine speed at one road speed. */
START_TEST(gears_by_their_ratios)
{
    double choices[] = {4.05, 4.37, 4.61, 3.55}, rising[] = {1.4, 3.5, 0.8, 2},
           falling[] = {3.5, 2, 1.4, 0.8}, two[] = {0.8, 3.5};
    const struct number_list axles = {choices, 4}, mixed = {rising, 4}, in_order = {falling, 4},
                             pair = {two, 2};
    TURN({nearest_axle_choice(&axles, 4.158), 4.05, 0, "4.158/4.05 against 4.37/4.158"},
         {nearest_axle_choice(&axles, 9), 4.61, 0, "the highest"},
         {nearest_axle_choice(&axles, 1), 3.55, 0, "the lowest"});
    TURN({(double)highest_gear(&mixed), 2, 0, "0.8 stands third"},
         {(double)highest_gear(&in_order), 3, 0, "0.8 stands fourth"},
         {(double)highest_gear(&pair), 0, 0, "0.8 stands first"});
    TURN({(double)next_gear_up(&mixed, 1), 3, 0, "3.5 to 2"},
         {(double)next_gear_up(&mixed, 3), 0, 0, "2 to 1.4"},
         {(double)next_gear_up(&in_order, 2), 3, 0, "1.4 to 0.8"});
    TURN({gears_fall(&mixed), 0, 0, "1.4 before 3.5"}, {gears_fall(&in_order), 1, 0, "in order"},
         {gears_fall(&pair), 0, 0, "0.8 before 3.5"});
}
END_TEST

/* A quarter inch of circumference: as a share of it, and as tread of a wheel that does not give. */
START_TEST(quarter_inch)
{
    TURN({circumference_difference_allowed(2.54), 0.0025, 1e-12, "of 100 in"},
         {circumference_difference_allowed(2.032), 0.003125, 1e-12, "of 80 in"},
         {circumference_difference_allowed(3.175), 0.002, 1e-12, "of 125 in"});
    TURN({tread_difference_allowed_m(0.75 * PI, 0.75), 1.010634e-3, 1e-9, "6.35 / 2 pi"},
         {tread_difference_allowed_m(3.05 * 0.774, 0.774), 1.040984e-3, 1e-9, "6.35 / 6.1"},
         {tread_difference_allowed_m(2.99 * 0.7, 0.7), 1.061873e-3, 1e-9, "6.35 / 5.98"});
}
END_TEST

START_TEST(forces_of_the_textbook)
{
    const struct puller car = {.limit_per_s = UNKNOWN,
                               .weight_N = unit_to_si(UNIT_LBF, 2000),
                               .grip_N = UNKNOWN,
                               .air_N_s2_m2 = unit_to_si(UNIT_LBF, 86.22) / 31.2928 / 31.2928,
                               .rolling = UNKNOWN};
    TURN({unit_from_si(UNIT_LBF, resistance_N(&car, 0, 0)), 20, 1e-9, "0.01 of 2000 lb"},
         {unit_from_si(UNIT_LBF, resistance_N(&car, 0, 0.75)), 1216, 1e-9, "0.6 and 0.01 x 0.8"},
         {unit_from_si(UNIT_LBF, resistance_N(&car, 31.2928, 0)), 120.19, 0.02,
          "86.22 lb of air and 33.97 lb of rolling at 70 mph"});
    const double mass_kg = 907.18474;
    TURN({acceleration_mps2(&car, 1000, 0, 0), 1.0042448, 1e-6, "1000 - 88.964 N on 907.185 kg"},
         {acceleration_mps2(&car, 2000, 0, 0), 2.1065561, 1e-6, "2000 - 88.964 N"},
         {acceleration_mps2(&car, 2000, 0, mass_kg / 10), 1.9150510, 1e-6, "a tenth more mass"});
    TURN({rotating_mass_kg(2.45, 2 * PI * 0.35), 20, 1e-9, "I / r2: 2.45 / 0.1225"},
         {rotating_mass_kg(1.2, 2 * PI * 0.4), 7.5, 1e-9, "1.2 / 0.16"},
         {rotating_mass_kg(0.9, 2 * PI * 0.3), 10, 1e-9, "0.9 / 0.09"});
    TURN({wheel_inertia_kg_m2(24, 0.764), 1.7160662, 1e-6, "24 x 0.49 x 0.382^2"},
         {wheel_inertia_kg_m2(20, 0.7), 1.2005, 1e-9, "20 x 0.49 x 0.35^2"},
         {wheel_inertia_kg_m2(30, 0.8), 2.352, 1e-9, "30 x 0.49 x 0.4^2"});
    struct value_pair points[] = {
        {.first = 20, .second = 300}, {.first = 30, .second = 450}, {.first = 60, .second = 320}};
    const struct pair_list curve = {points, 3};
    TURN({peak_torque_per_s(&curve, UNKNOWN), 30, 0, "450 Nm"},
         {peak_torque_per_s(&curve, 25), 25, 0, "375 Nm, where the limit is"},
         {peak_torque_per_s(&curve, 22), 22, 0, "330 Nm, where the limit is"});
}
END_TEST

START_TEST(springs_of_hooke)
{
    TURN({wheel_rate_N_m(100e3, 0.7), 49e3, 1e-6, "0.49 of it"},
         {wheel_rate_N_m(40e3, 0.5), 10e3, 1e-6, "a quarter"},
         {wheel_rate_N_m(80e3, 1.1), 96.8e3, 1e-6, "1.21 of it"});
    TURN({series_rate_N_m(200, 300), 120, 1e-9, "60000 / 500"},
         {series_rate_N_m(50e3, 50e3), 25e3, 1e-6, "half of equal ones"},
         {series_rate_N_m(20e3, 60e3), 15e3, 1e-6, "1200 / 80"});
    TURN({ride_height_gained_m(0.02, 5000, 50e3, 50e3), 0.02, 1e-12, "20 mm longer"},
         {ride_height_gained_m(0, 5000, 50e3, 100e3), 0.05, 1e-12, "100 mm given, now 50"},
         {ride_height_gained_m(0.01, 4000, 40e3, 32e3), -0.015, 1e-12, "100 mm given, now 125"});
}
END_TEST

START_TEST(shown_and_true)
{
    TURN({true_speed_mps((struct instrument_line){1.05, 0}, 21), 20, 1e-12, "21 / 1.05"},
         {true_speed_mps((struct instrument_line){1, 1}, 21), 20, 1e-12, "21 - 1"},
         {true_speed_mps((struct instrument_line){1.1, -2}, 42), 40, 1e-12, "44 / 1.1"});
    TURN({error_of_counts(2600, 2500), 0.04, 1e-12, "100 of 2500"},
         {error_of_counts(7840, 8000), -0.02, 1e-12, "160 of 8000 lacking"},
         {error_of_counts(4000, 3200), 0.25, 1e-12, "800 of 3200"});
    TURN({adapter_ratio(1.05, 0), 1.05, 1e-12, "one in for 1.05 out"},
         {adapter_ratio(1.05, 0.05), 1, 1e-12, "as it is"},
         {adapter_ratio(0.98, 0.0208), 0.9600313, 1e-7, "0.98 / 1.0208"});
    TURN({shown_distance(100, 1.02, 2, 2), 102, 1e-12, "2 % over"},
         {shown_distance(100, 1, 2, 2.5), 80, 1e-12, "four turns for five"},
         {shown_distance(60, 1.05, 2, 2.1), 60, 1e-12, "both by 5 %"});
}
END_TEST

/* Student's t of 0.05 shared by the readings, of a degree less. */
START_TEST(bounds_of_outliers)
{
    const struct calibration line = {.readings = 5, .degrees = 3},
                             scale = {.readings = 5, .degrees = 4},
                             many = {.readings = 25, .degrees = 23};
    TURN({outlier_bound(&line), 9.925, 5e-4, "0.995, 2 degrees"},
         {outlier_bound(&scale), 5.841, 5e-4, "0.995, 3 degrees"},
         {outlier_bound(&many), 3.505, 5e-4, "0.999, 22 degrees"});
}
END_TEST

START_TEST(rows_of_printed_tables)
{
    TURN({load_index_for_kg(615), 91, 0, "615 kg"}, {load_index_for_kg(616), 92, 0, "630 kg"},
         {load_index_for_kg(840), 102, 0, "850 kg"});
    TURN({speed_symbol_steps("T", "H"), 2, 0, "190, 200, 210 km/h"},
         {speed_symbol_steps("S", "N"), -4, 0, "180, 170, 160, 150, 140 km/h"},
         {speed_symbol_steps("F", "K"), 3, 0, "80, 90, 100, 110 km/h"});
    TURN({load_range_find('C')->ply_rating, 6, 0, "C 6"},
         {load_range_find('E')->ply_rating, 10, 0, "E 10"},
         {load_range_find('G')->ply_rating, 14, 0, "G 14"});
    TURN({density_find("petrol")->max_kg_m3, 775, 0, "at most"},
         {density_find("petrol")->min_kg_m3, 720, 0, "at least"},
         {density_find("diesel")->max_kg_m3, 845, 0, "at most"});
    TURN({odometer_rule_find("de_stvzo_57")->over_percent, 4, 0, "over"},
         {odometer_rule_find("de_stvzo_57")->under_percent, 4, 0, "under"},
         {odometer_rule_find("eu_recording")->over_percent, 4, 0, "over"});
}
END_TEST

START_TEST(rows_from_memory)
{
    double speeds[TEST_SPEEDS_MAX];
    TURN({speedometer_test_speeds_kmh("un_r39", 180, speeds), 3, 0, "40, 80, 120 km/h"},
         {speedometer_test_speeds_kmh("un_r39", 120, speeds), 3, 0, "40, 80, 96 km/h"},
         {speedometer_test_speeds_kmh("un_r39", 90, speeds), 2, 0, "40, 72 km/h"});
    TURN({headlamp_dip_for(0.7)->dip_max_percent, 2.5, 0, "0.7 m"},
         {headlamp_dip_for(0.9)->dip_min_percent, 0.5, 0, "0.9 m"},
         {headlamp_dip_for(1.1)->dip_max_percent, 3, 0, "1.1 m"});
    TURN({commercial_over_speed_percent(112, "L", 130), 95, 0, "L at 130 km/h"},
         {commercial_over_speed_percent(112, "N", 150), 95, 0, "N at 150 km/h"},
         {commercial_over_speed_percent(112, "P", 155), 97.5, 0, "P at 155 km/h"});
    TURN({commercial_last_percent(112, "L"), 90, 0, "L at 140 km/h"},
         {commercial_last_percent(112, "N"), 90, 0, "N at 160 km/h"},
         {commercial_last_percent(112, "P"), 95, 0, "P at 160 km/h"});
}
END_TEST

Suite *by_hand_suite(void)
{
    Suite *suite = suite_create("by_hand");
    TCase *by_hand = tcase_create("by hand");
    tcase_add_loop_test(by_hand, rooms_that_are_short, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, corners_about_an_axis, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, angles_of_three_vehicles, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, pressures_rounded_up, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, warnings_of_table_1, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, cavities, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, gears_by_their_ratios, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, quarter_inch, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, forces_of_the_textbook, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, springs_of_hooke, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, shown_and_true, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, bounds_of_outliers, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, rows_of_printed_tables, 0, EXAMPLES);
    tcase_add_loop_test(by_hand, rows_from_memory, 0, EXAMPLES);
    suite_add_tcase(suite, by_hand);
    return suite;
}
