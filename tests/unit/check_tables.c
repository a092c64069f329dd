/* Look-ups in the tables against published values. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "base/known.h"
#include "suites.h"
#include "tables/lookup.h"

/* UN R30 and UN R54, Annex 4, at both ends and where sizes in daily use stand. */
START_TEST(load_index)
{
    static const struct {
        int index;
        double kg;
    } published[] = {{0, 45},    {1, 46.2},   {59, 243},   {82, 475},   {91, 615},
                     {100, 800}, {109, 1030}, {120, 1400}, {154, 3750}, {200, 14000}};
    for (size_t i = 0; i < sizeof published / sizeof *published; i++) {
        ck_assert_double_eq(load_index_kg(published[i].index), published[i].kg);
        ck_assert_int_eq(load_index_for_kg(published[i].kg), published[i].index);
    }
    for (int i = 0; i < load_index_count; i++)
        ck_assert_int_eq(load_index_rows[i].load_index, i);
    for (int i = 1; i < load_index_count; i++)
        ck_assert(load_index_kg(i - 1) < load_index_kg(i));
    ck_assert(!known(load_index_kg(-1)));
    ck_assert(!known(load_index_kg(201)));
    ck_assert_int_eq(load_index_for_kg(0), 0);
    ck_assert_int_eq(load_index_for_kg(615.001), 92);
    ck_assert_int_eq(load_index_for_kg(14000.001), -1);
    ck_assert_int_eq(load_index_for_kg(UNKNOWN), -1);
}
END_TEST

/* Directive 92/23/EEC, Annex (speed categories F to V); ISO 4223-1 for the others. */
START_TEST(speed_symbol)
{
    static const struct {
        const char *symbol;
        double kmh;
    } published[] = {{"A1", 5},  {"A8", 40}, {"F", 80},  {"L", 120}, {"Q", 160}, {"S", 180},
                     {"H", 210}, {"V", 240}, {"W", 270}, {"Y", 300}, {"ZR", 240}};
    double kmh = 0;
    for (size_t i = 0; i < sizeof published / sizeof *published; i++) {
        ck_assert(speed_symbol_kmh(published[i].symbol, &kmh));
        ck_assert_double_eq(kmh, published[i].kmh);
    }
    kmh = -7;
    for (int i = 0; i < speed_symbol_count; i++) /* whichever row the search begins at */
        ck_assert_ptr_eq(speed_symbol_find(speed_symbol_rows[i].symbol), &speed_symbol_rows[i]);
    ck_assert(!speed_symbol_kmh("I", &kmh));
    ck_assert(!speed_symbol_kmh("", &kmh));
    ck_assert(!speed_symbol_kmh("A9", &kmh));
    ck_assert_double_eq(kmh, -7);
    ck_assert_str_eq(speed_symbol_find("(Y)")->kind, "over");
    ck_assert_int_lt(speed_symbol_order("U"), speed_symbol_order("H"));
    ck_assert_int_lt(speed_symbol_order("H"), speed_symbol_order("V"));
    ck_assert_int_lt(speed_symbol_order("V"), speed_symbol_order("ZR"));
    ck_assert_int_lt(speed_symbol_order("Y"), speed_symbol_order("(Y)"));
    ck_assert_int_eq(speed_symbol_order("A1"), 0);
    ck_assert_int_eq(speed_symbol_order("O"), -1);
}
END_TEST

/* ISO 4223-1: ... T, U, H, V, W, Y. */
START_TEST(speed_symbol_steps_leave_out_zr)
{
    ck_assert_double_eq(speed_symbol_steps("H", "V"), 1);
    ck_assert_double_eq(speed_symbol_steps("H", "W"), 2);
    ck_assert_double_eq(speed_symbol_steps("Y", "T"), -5);
    ck_assert_double_eq(speed_symbol_steps("W", "W"), 0);
    ck_assert_double_gt(speed_symbol_steps("V", "ZR"), 0);
    ck_assert_double_lt(speed_symbol_steps("W", "ZR"), 0);
    ck_assert(!known(speed_symbol_steps("H", "O")));
}
END_TEST

/* Reimpell et al., The Automotive Chassis, quoting ETRTO; between the points linear. */
START_TEST(speed_load)
{
    ck_assert_double_eq(speed_load_percent("V", 210), 100);
    ck_assert_double_eq(speed_load_percent("V", 220), 97);
    ck_assert_double_eq(speed_load_percent("V", 240), 91);
    ck_assert_double_eq_tol(speed_load_percent("V", 235), 92.5, 1e-9);
    ck_assert_double_eq(speed_load_percent("W", 270), 85);
    ck_assert_double_eq_tol(speed_load_percent("W", 265), 87.5, 1e-9);
    ck_assert_double_eq(speed_load_percent("Y", 270), 100);
    ck_assert_double_eq(speed_load_percent("Y", 300), 85);
    ck_assert_double_eq(speed_load_percent("(Y)", 300), 85);
    ck_assert_double_eq(speed_load_percent("Y", 100), 100);
    ck_assert_double_eq(speed_load_percent("H", 210), 100);
    ck_assert(!known(speed_load_percent("H", 211)));
    ck_assert(!known(speed_load_percent("V", 240.1)));
    ck_assert(!known(speed_load_percent("ZR", 200)));
    ck_assert(!known(speed_load_percent("?", 100)));
    ck_assert(!known(speed_load_percent("V", UNKNOWN)));
}
END_TEST

/* UN R30 and UN R54, nominal rim diameter d (from memory); 12.5 and 18.5 are not listed. */
START_TEST(rim_diameter)
{
    static const struct {
        int tenths;
        double mm;
    } listed[] = {{130, 330}, {140, 356}, {150, 381}, {160, 406}, {165, 419},
                  {170, 432}, {180, 457}, {195, 495}, {200, 508}, {225, 572},
                  {245, 622}, {125, 318}, {185, 470}};
    for (size_t i = 0; i < sizeof listed / sizeof *listed; i++)
        ck_assert_double_eq_tol(rim_diameter_m(listed[i].tenths, false), listed[i].mm / 1000,
                                1e-12);
    ck_assert_double_eq_tol(rim_diameter_m(3900, true), 0.390, 1e-12);
    ck_assert_double_eq_tol(rim_diameter_m(3650, true), 0.365, 1e-12);
    /* The rule that the look-up takes gives every row of the table. */
    for (int i = 0; i < rim_code_count; i++)
        ck_assert_double_eq(rim_diameter_m((int)(rim_code_rows[i].rim_code * 10 + 0.5), false),
                            rim_code_rows[i].diameter_mm / 1000.0);
    ck_assert(!known(rim_diameter_m(0, false)));
    ck_assert(!known(rim_diameter_m(-10, true)));
}
END_TEST

static double load_at(const struct inflation_row *row, double at_reference, double pressure,
                      double reference)
{
    ck_assert_ptr_nonnull(row);
    return at_reference * pow(pressure / reference, row->exponent);
}

START_TEST(inflation)
{
    const struct inflation_row *row = &inflation_rows[INFLATION_METRIC_STANDARD];
    /* ETRTO table quoted by Reimpell et al., The Automotive Chassis; it rounds to 5 kg. */
    ck_assert_double_eq_tol(load_at(row, 335, 150, row->reference_kPa), 225, 2.51);
    ck_assert_double_eq_tol(load_at(row, 335, 200, row->reference_kPa), 280, 2.51);
    ck_assert_double_eq_tol(load_at(row, 345, 230, row->reference_kPa), 325, 2.51);
    /* TRA P-metric formula: P235/75R15 carries 1753 lb at 180 kPa and 2028 lb at 240 kPa. */
    row = &inflation_rows[INFLATION_P_METRIC_STANDARD];
    ck_assert_double_eq_tol(load_at(row, 2028, 180, row->reference_kPa), 1753, 4);
    row = &inflation_rows[INFLATION_P_METRIC_EXTRA_LOAD];
    ck_assert_double_eq_tol(load_at(row, 2183, 240, row->reference_kPa), 2028, 10);
    /* LT235/85R16 E, tyre maker's load table in a motor-home owner's manual, 1990: 3042 lb at
     * 80 psi, 2623 lb at 65, 2205 lb at 50, 1700 lb at 35. */
    row = &inflation_rows[INFLATION_LT_METRIC];
    ck_assert_double_eq_tol(load_at(row, 3042, 65, 80), 2623, 0.0075 * 2623);
    ck_assert_double_eq_tol(load_at(row, 3042, 50, 80), 2205, 0.0075 * 2205);
    ck_assert_double_eq_tol(load_at(row, 3042, 35, 80), 1700, 0.0075 * 1700);
    ck_assert(!known(row->reference_kPa));
    ck_assert(!known(inflation_rows[INFLATION_TEMPORARY].exponent));
    ck_assert_double_eq(inflation_rows[INFLATION_FLOTATION].floor_kPa, 180); /* from memory */
    /* 10R17.5, a tyre maker's truck inflation table, which begins at 5.0 bar: 4240 kg an axle at
     * 8.0 bar, 2920 at 5.0. */
    row = &inflation_rows[INFLATION_HEAVY];
    ck_assert_double_eq_tol(load_at(row, 4240, row->floor_kPa, 800), 2920, 10);
}
END_TEST

/* Letters and ply ratings of the Tire and Rim Association; nominal pressures of LT tyres. */
START_TEST(load_range)
{
    static const char letters[] = "ABCDEFGHJLMN";
    for (int i = 0; letters[i]; i++)
        ck_assert_int_eq(load_range_find(letters[i])->ply_rating, 2 * (i + 1));
    ck_assert_ptr_null(load_range_find('I'));
    ck_assert_ptr_null(load_range_find('K'));
    ck_assert_ptr_null(load_range_find('\0'));
    ck_assert_double_eq(load_range_find('C')->lt_reference_psi, 50);
    ck_assert_double_eq(load_range_find('E')->lt_reference_kPa, 550);
    ck_assert_double_eq(load_range_find('E')->lt_wide_reference_psi, 65);
    ck_assert(!known(load_range_find('B')->lt_reference_kPa));
}
END_TEST

START_TEST(rolling_and_tolerance)
{
    /* Overall diameter in inches and revolutions a mile of LT235/85R16, LT245/75R16, LT265/75R16
     * and LT285/75R16 in a tyre maker's light-truck size and specification sheet. */
    static const double published[][2] = {{31.7, 655}, {30.5, 682}, {31.7, 656}, {33.1, 628}};
    for (size_t i = 0; i < sizeof published / sizeof *published; i++) {
        double circumference_mm =
            rolling_find("radial")->circumference_factor * published[i][0] * 25.4;
        ck_assert_double_eq_tol(1609344 / circumference_mm, published[i][1],
                                0.004 * published[i][1]);
    }
    ck_assert_double_eq(rolling_find("diagonal")->circumference_factor, 2.99);
    ck_assert_ptr_null(rolling_find("R"));
    /* UN R30 and UN R54, 6.1.4 and 6.1.5 (from memory). */
    ck_assert_double_eq(tolerance_find(false, 0, false)->height_max_factor, 1.04);
    ck_assert_double_eq(tolerance_find(false, 1, false)->height_max_factor, 1.08);
    ck_assert_double_eq(tolerance_find(true, 1, false)->height_max_factor, 1.07);
    ck_assert_double_eq(tolerance_find(true, 0, true)->height_max_factor, 1.06);
    ck_assert_double_eq(tolerance_find(true, 1, true)->height_max_factor, 1.09);
    ck_assert_double_eq(tolerance_find(true, 2, true)->height_max_factor, 1.09);
    ck_assert_ptr_null(tolerance_find(false, 0, true));
    /* Every row is where the look-up takes it from. */
    static const char *const constructions[] = {"radial", "diagonal", "bias_belted"};
    for (int i = 0; i < 3; i++)
        for (int special = 0; special < 2; special++)
            for (int un_r54 = special; un_r54 < 2; un_r54++) {
                const struct tolerance_row *row = tolerance_find(un_r54, i, special);
                ck_assert_str_eq(row->standard, un_r54 ? "un_r54" : "un_r30");
                ck_assert_str_eq(row->construction, constructions[i]);
                ck_assert_str_eq(row->use, special ? "special_use" : "normal");
            }
}
END_TEST

/* Published measuring rims (data sheets of these sizes), to the nearest half inch. */
START_TEST(rim_factors)
{
    static const struct {
        int section_mm, aspect_percent;
        double rim_in;
    } published[] = {{225, 45, 7.5}, {225, 40, 8}, {235, 75, 6.5},
                     {235, 85, 6.5}, {245, 75, 7}, {265, 75, 7.5}};
    for (size_t i = 0; i < sizeof published / sizeof *published; i++) {
        const struct rim_factors_row *row = rim_factors_for(published[i].aspect_percent);
        double exact_in = row->measuring_factor * published[i].section_mm / 25.4;
        ck_assert_double_eq(floor(exact_in * 2 + 0.5) / 2, published[i].rim_in);
        ck_assert_double_le(row->permitted_min_factor, row->measuring_factor);
        ck_assert_double_ge(row->permitted_max_factor, row->measuring_factor);
    }
    for (int aspect = 1; aspect <= 200; aspect++)
        ck_assert_ptr_nonnull(rim_factors_for(aspect));
    ck_assert_double_eq(rim_factors_for(45)->theoretical_factor, 0.85);
    ck_assert_double_eq(rim_factors_for(50)->theoretical_factor, 0.7);
    ck_assert_ptr_null(rim_factors_for(0));
    ck_assert_ptr_null(rim_factors_for(201));
}
END_TEST

static double shown_max(const struct speedometer_rules_row *rule, double true_speed)
{
    return true_speed * (1 + rule->over_percent / 100) + rule->over_add;
}

static double shown_min(const struct speedometer_rules_row *rule, double true_speed)
{
    return true_speed * (1 - rule->under_percent / 100) - rule->under_add;
}

START_TEST(speedometer_rules)
{
    /* UN R39 5.3: 0 <= V1 - V2 <= 0.1 V2 + 4 km/h. */
    const struct speedometer_rules_row *rule = speedometer_rule_find("un_r39");
    ck_assert_double_eq_tol(shown_max(rule, 50), 59, 1e-9);
    ck_assert_double_eq_tol(shown_max(rule, 90), 103, 1e-9);
    ck_assert_double_eq_tol(shown_max(rule, 130), 147, 1e-9);
    ck_assert_double_eq_tol(shown_min(rule, 130), 130, 1e-9);
    /* 49 CFR 393.82: plus or minus 5 mph at 50 mph. */
    rule = speedometer_rule_find("us_393_82");
    ck_assert_str_eq(rule->unit, "mph");
    ck_assert_double_eq_tol(shown_min(rule, rule->under_from), 45, 1e-9);
    ck_assert_double_eq_tol(shown_max(rule, rule->applies_to), 55, 1e-9);
    ck_assert_ptr_null(speedometer_rule_find("un_r40"));
    /* StVZO section 57, odometer: 4 %. */
    ck_assert_double_eq(odometer_rule_find("de_stvzo_57")->over_percent, 4);
}
END_TEST

/* UN R39 5.2 (from memory). */
START_TEST(speedometer_test_speeds)
{
    double speeds[TEST_SPEEDS_MAX];
    ck_assert_int_eq(speedometer_test_speeds_kmh("un_r39", 175, speeds), 3);
    ck_assert_double_eq(speeds[2], 120);
    ck_assert_int_eq(speedometer_test_speeds_kmh("un_r39", 150, speeds), 3);
    ck_assert_double_eq(speeds[1], 80);
    ck_assert_double_eq_tol(speeds[2], 120, 1e-9);
    ck_assert_int_eq(speedometer_test_speeds_kmh("un_r39", 110, speeds), 3);
    ck_assert_double_eq_tol(speeds[2], 88, 1e-9);
    ck_assert_int_eq(speedometer_test_speeds_kmh("un_r39", 100, speeds), 2);
    ck_assert_int_eq(speedometer_test_speeds_kmh("un_r39", 48, speeds), 2);
    ck_assert_double_eq_tol(speeds[0], 38.4, 1e-9);
    ck_assert_double_eq(speeds[1], 40);
    ck_assert_int_eq(speedometer_test_speeds_kmh("un_r39", 45, speeds), 0);
    ck_assert_int_eq(speedometer_test_speeds_kmh("un_r39", UNKNOWN, speeds), 0);
    ck_assert_int_eq(speedometer_test_speeds_kmh("", 175, speeds), 0);
}
END_TEST

START_TEST(density)
{
    /* EN 228: 720 to 775 kg/m3; EN 590: 820 to 845 kg/m3, at 15 degrees Celsius. */
    ck_assert_double_eq(density_find("petrol")->min_kg_m3, 720);
    ck_assert_double_eq(density_find("diesel")->max_kg_m3, 845);
    for (int i = 0; i < density_count; i++) {
        ck_assert(!(density_rows[i].density_kg_m3 < density_rows[i].min_kg_m3));
        ck_assert(!(density_rows[i].density_kg_m3 > density_rows[i].max_kg_m3));
    }
    ck_assert_ptr_null(density_find("mercury"));
}
END_TEST

START_TEST(speed_symbol_rules)
{
    /* Regulation (EU) 458/2011, Annex I, 4.2.2: the snowflake, not below 160 km/h. */
    const struct speed_symbol_rules_row *row = symbol_rule_next("eu_winter", NULL);
    ck_assert_str_eq(row->mark, "severe_snow");
    ck_assert_double_eq(row->least_kmh, 160);
    ck_assert_str_eq(row->label, "yes");
    ck_assert_ptr_null(symbol_rule_next("eu_winter", row));
    /* StVZO section 36 (5): winter and POR tyres; no least speed. */
    row = symbol_rule_next("de_36", NULL);
    ck_assert(!known(row->least_kmh));
    row = symbol_rule_next("de_36", row);
    ck_assert_str_eq(row->mark, "professional_off_road");
    ck_assert_ptr_null(symbol_rule_next("de_36", row));
    ck_assert_ptr_null(symbol_rule_next("nowhere", NULL));
    /* What the code tells apart, and no other word. */
    for (int i = 0; i < speed_symbol_rules_count; i++) {
        row = &speed_symbol_rules_rows[i];
        ck_assert_ptr_nonnull(
            strstr(" any severe_snow mud_and_snow professional_off_road ", row->mark));
        ck_assert_ptr_nonnull(strstr(" yes no ", row->label));
        ck_assert(known(row->least_kmh) || strcmp(row->label, "yes") == 0);
    }
}
END_TEST

/* fitment_limits_next() ends where another rule begins. */
START_TEST(rows_of_one_limit_stand_together)
{
    for (int i = 1; i < fitment_limits_count; i++)
        for (int k = 0; k < i - 1; k++)
            if (strcmp(fitment_limits_rows[k].name, fitment_limits_rows[i].name) == 0)
                ck_assert_str_eq(fitment_limits_rows[i - 1].name, fitment_limits_rows[i].name);
}
END_TEST

START_TEST(fitment_limits)
{
    const struct fitment_limits_row *row = fitment_limits_next("au_offroad", NULL);
    /* VSB 14 section LS, off-road: +50 / -26 mm. */
    ck_assert_double_eq(row->min, -26);
    ck_assert_double_eq(row->max, 50);
    ck_assert_ptr_null(fitment_limits_next("au_offroad", row));
    /* New South Wales Light Vehicle Modifications Manual, Suspension, 3.1: three limits. */
    row = fitment_limits_next("au_nsw", NULL);
    ck_assert_str_eq(row->unit, "percent");
    ck_assert_double_eq(row->max, 7);
    row = fitment_limits_next("au_nsw", row);
    ck_assert_str_eq(row->quantity, "ride_height_change");
    row = fitment_limits_next("au_nsw", row);
    ck_assert_double_eq(row->max, 75);
    ck_assert(!known(row->min));
    ck_assert_ptr_null(fitment_limits_next("au_nsw", row));
    ck_assert_ptr_null(fitment_limits_next("nowhere", NULL));
    /* A row that limits neither side would say nothing. */
    for (int i = 0; i < fitment_limits_count; i++)
        ck_assert(known(fitment_limits_rows[i].min) || known(fitment_limits_rows[i].max));
}
END_TEST

/* 49 CFR 571.138, Table 1 (from memory). */
START_TEST(pressure_warning)
{
    ck_assert_double_eq(pressure_warning_minimum_kPa("p_metric_standard", 0), 140);
    ck_assert_double_eq(pressure_warning_minimum_kPa("p_metric_extra_load", 'C'), 160);
    ck_assert_double_eq(pressure_warning_minimum_kPa("lt_metric", 'D'), 260);
    ck_assert(!known(pressure_warning_minimum_kPa("lt_metric", 0)));
    ck_assert(!known(pressure_warning_minimum_kPa("lt_metric", 'G')));
    ck_assert(!known(pressure_warning_minimum_kPa("heavy", 'E')));
}
END_TEST

/* UN R54 and UN R30, Annex 5 (from memory). */
START_TEST(listed_sizes)
{
    ck_assert_int_eq(numeric_size_find(1100, "radial", 225)->overall_diameter_mm, 1050);
    ck_assert_int_eq(numeric_size_find(1100, "radial", 200)->overall_diameter_mm, 1082);
    ck_assert_int_eq(numeric_size_find(750, "radial", 160)->overall_diameter_mm, 802);
    ck_assert_int_eq(numeric_size_find(750, "diagonal", 160)->overall_diameter_mm, 806);
    ck_assert_ptr_null(numeric_size_find(750, "radial", 165));
    ck_assert_int_eq(full_profile_size_find(165, 130)->overall_diameter_mm, 596);
    ck_assert_ptr_null(full_profile_size_find(165, 160));
    /* The 82 (80 to 82) series: section height over width as the tyre-code articles quote it. */
    for (int i = 0; i < full_profile_sizes_count; i++) {
        const struct full_profile_sizes_row *row = &full_profile_sizes_rows[i];
        double rim_mm = rim_diameter_m(row->rim_tenths, false) * 1000;
        double ratio = (row->overall_diameter_mm - rim_mm) / 2 / row->section_code_mm;
        ck_assert_msg(ratio > 0.785 && ratio < 0.835, "%s: %g", row->designation, ratio);
    }
    ck_assert_int_eq(flotation_size_find(3100, 1050, 150)->design_diameter_mm, 775);
    ck_assert_ptr_null(flotation_size_find(3100, 1050, 170));
    ck_assert_double_eq(flotation_rims_find(1250)->measuring_rim_in, 10);
    ck_assert_ptr_null(flotation_rims_find(1260));
    ck_assert_double_eq(heavy_rims_find(385, 65, 225)->measuring_rim_in, 11.75);
    ck_assert_ptr_null(heavy_rims_find(385, 65, 195));
    /* A flotation tyre is half an inch smaller than it is called, and 6 or 7 mm less with snow. */
    for (int i = 0; i < flotation_sizes_count; i++) {
        const struct flotation_sizes_row *row = &flotation_sizes_rows[i];
        ck_assert_double_eq_tol(row->design_diameter_mm, row->diameter_hundredths * 0.254 - 12.7,
                                1.5);
        ck_assert_double_eq_tol(row->design_snow_diameter_mm, row->design_diameter_mm + 6.5, 0.6);
    }
}
END_TEST

Suite *tables_suite(void)
{
    Suite *suite = suite_create("tables");
    TCase *lookups = tcase_create("look-ups");
    tcase_add_test(lookups, load_index);
    tcase_add_test(lookups, speed_symbol);
    tcase_add_test(lookups, speed_symbol_steps_leave_out_zr);
    tcase_add_test(lookups, speed_load);
    tcase_add_test(lookups, rim_diameter);
    tcase_add_test(lookups, inflation);
    tcase_add_test(lookups, load_range);
    tcase_add_test(lookups, rolling_and_tolerance);
    tcase_add_test(lookups, rim_factors);
    tcase_add_test(lookups, speedometer_rules);
    tcase_add_test(lookups, speedometer_test_speeds);
    tcase_add_test(lookups, density);
    tcase_add_test(lookups, speed_symbol_rules);
    tcase_add_test(lookups, fitment_limits);
    tcase_add_test(lookups, rows_of_one_limit_stand_together);
    tcase_add_test(lookups, pressure_warning);
    tcase_add_test(lookups, listed_sizes);
    suite_add_tcase(suite, lookups);
    return suite;
}
