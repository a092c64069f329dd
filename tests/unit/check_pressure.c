/* Speed, published maxima, the warning, low pressure and the air to come back. */
#include "base/known.h"
#include "base/units.h"
#include "compute/capacity.h"
#include "compute/deflection.h"
#include "compute/inflating.h"
#include "compute/load.h"
#include "compute/pressure_warning.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

static double kmh(double value)
{
    return unit_to_si(UNIT_KMH, value);
}

static struct tyre_rating rating_at(const char *size, double top_kmh)
{
    struct tyre tyre = tyre_of(size);
    struct tyre_rating rating;
    tyre_rate(&tyre, CHOICE_NONE, kmh(top_kmh), &rating);
    return rating;
}

/* Reimpell et al., quoting ETRTO: to V table pressures to 160 km/h, then linear, 0.3 bar at 210
 * (about 0.1 bar for 17 km/h), no more above, where the load falls instead; of W to 190 km/h, then
 * 0.1 bar for each 10 km/h to 240 (this slope from memory). Above W the maker says: as of W. */
START_TEST(pressure_is_added_for_speed)
{
    static const struct {
        const char *symbol;
        double kmh, kPa;
    } points[] = {
        {"V", 100, 0},  {"V", 160, 0},  {"V", 176.7, 10}, {"V", 185, 15}, {"V", 193.3, 20},
        {"V", 210, 30}, {"V", 240, 30}, {"T", 185, 15},   {"H", 210, 30}, {"W", 160, 0},
        {"W", 190, 0},  {"W", 200, 10}, {"W", 217, 27},   {"W", 240, 50}, {"W", 270, 50},
        {"Y", 190, 0},  {"Y", 240, 50},
    };
    for (size_t i = 0; i < LENGTH_OF(points); i++) {
        char size[24];
        snprintf(size, sizeof size, "205/55R16 91%s", points[i].symbol);
        struct tyre_rating rating = rating_at(size, points[i].kmh);
        assert_close(rating.speed_pressure_Pa, points[i].kPa * 1e3, 25, size);
        ck_assert_int_eq(rating.speed_pressure_assumed, *points[i].symbol == 'Y');
    }
    assert_close(rating_at("LT245/75R16 120/116S E", 175).speed_pressure_Pa, 0, 0, "not for LT");
    assert_close(rating_at("P255/70R16 109S", 175).speed_pressure_Pa, 0, 0, "not for P-metric");
    assert_close(rating_at("205/55R16 91V", UNKNOWN).speed_pressure_Pa, 0, 0, "no top speed");
}
END_TEST

/* UN R54 Annex 8, from memory. */
START_TEST(commercial_load_varies_with_speed)
{
    assert_close(commercial_low_speed_percent(107, 30), 135, 1e-9, "30 km/h, index to 121");
    assert_close(commercial_low_speed_percent(107, 32.5), 132, 1e-9, "linear between");
    assert_close(commercial_low_speed_percent(121, 5), 190, 1e-9, "5 km/h");
    assert_close(commercial_low_speed_percent(122, 5), 210, 1e-9, "5 km/h, index from 122");
    assert_close(commercial_low_speed_percent(154, 60), 110, 1e-9, "60 km/h");
    assert_close(commercial_low_speed_percent(107, 121), 100, 1e-9, "no increase above 120");
    assert_close(commercial_low_speed_percent(-1, 30), 100, 1e-9, "no load index");
    assert_close(commercial_low_speed_percent(107, UNKNOWN), 100, 1e-9, "no speed");
    assert_close(commercial_over_speed_percent(107, "N", 150), 95, 1e-9, "N at 150");
    ck_assert(!known(commercial_over_speed_percent(107, "N", 165)));
    ck_assert(!known(commercial_over_speed_percent(107, "T", 200)));
    assert_close(rating_at("205/65R16C 107/105N", 150).speed_factor, 0.95, 1e-9, "its factor");
    assert_close(rating_at("205/65R16C 107/105N", 140).speed_factor, 1, 1e-9, "at its symbol");
}
END_TEST

START_TEST(low_speed_never_falls_as_speed_falls)
{
    for (int index = 70; index < 170; index += 10)
        for (int speed = 1; speed <= 130; speed++)
            ck_assert(commercial_low_speed_percent(index, speed) >=
                      commercial_low_speed_percent(index, speed + 1));
}
END_TEST

/* The speed for a load is the highest that carries it; below 250 kPa, where the published tables of
 * LT-metric tyres begin, nothing is granted. */
START_TEST(speed_for_load_is_the_highest)
{
    uint64_t state = random_start("speed_for_load_is_the_highest");
    struct tyre tyre = tyre_of("LT245/75R16 120/116S E");
    struct tyre_rating rating;
    tyre_rate(&tyre, CHOICE_NONE, UNKNOWN, &rating);
    for (int run = 0, runs = rounds(3000); run < runs; run++) {
        double pressure = random_between(&state, 1e5, 5e5);
        double plain = capacity_kg(&rating, false, pressure);
        double load = plain * random_between(&state, 0.5, 2);
        double speed = speed_for_load_mps(&rating, false, pressure, load);
        if (pressure < unit_to_si(UNIT_PSI, 35)) {
            ck_assert(!known(speed));
            assert_close(capacity_at_speed_kg(&rating, false, pressure, kmh(10)), plain, 1e-9,
                         "no increase below the tables");
            continue;
        }
        ck_assert(speed > 0 && speed <= kmh(120) + 1e-9);
        ck_assert(capacity_at_speed_kg(&rating, false, pressure, speed) >= load * (1 - 1e-9));
        if (speed < kmh(119.5))
            ck_assert(capacity_at_speed_kg(&rating, false, pressure, speed + kmh(1)) < load);
    }
    assert_close(speed_for_load_mps(&rating, false, 3e5, 9000), 0, 0,
                 "more than any speed carries");
    struct tyre_rating passenger = rating_at("205/55R16 91V", 180);
    ck_assert(!known(speed_for_load_mps(&passenger, false, 1e5, 300)));
    assert_close(capacity_at_speed_kg(&passenger, false, 2e5, kmh(10)),
                 capacity_kg(&passenger, false, 2e5), 1e-9, "no increase for a passenger tyre");
}
END_TEST

/* Moulded 3042 lb = 1380 kg is below load index 120 = 1400 kg; 3000 lb is above 119 = 1360 kg. */
START_TEST(lower_of_index_and_published_maximum)
{
    struct tyre_rating rating = rating_at("LT245/75R16 120/116S E", UNKNOWN);
    assert_close(rating.load_kg, 3042 * 0.45359237, 1e-9, "size and specification sheet");
    assert_close(rating.load_dual_kg, 1250, 1e-9, "load index 116 is below 2778 lb");
    ck_assert(rating.listed && rating.ceiling_assumed && !rating.dual_assumed);
    rating = rating_at("LT265/75R16 119/116Q D", UNKNOWN);
    assert_close(rating.load_kg, 1360, 1e-9, "load index 119 is below 3000 lb");
    rating = rating_at("LT245/70R17 119/116Q E", UNKNOWN);
    ck_assert(!rating.listed);
    struct tyre tyre = tyre_of("LT245/75R16 120/116S E");
    tyre.data_book.max_load_kg = 1400;
    tyre.data_book.at_pressure_Pa = 5.5e5;
    tyre_rate(&tyre, CHOICE_NONE, UNKNOWN, &rating);
    assert_close(rating.load_kg, 1400, 0, "what is moulded goes before");
    ck_assert(!rating.listed && rating.moulded);
}
END_TEST

/* Published twin maxima over single ones: 2778/3042, 3085/3415, 3195/3525, 2205/2405. */
START_TEST(twin_without_an_index_is_a_share)
{
    static const double pairs[][2] = {{2778, 3042}, {3085, 3415}, {3195, 3525}, {2205, 2405}};
    for (size_t i = 0; i < LENGTH_OF(pairs); i++)
        assert_close(LT_DUAL_SHARE, pairs[i][0] / pairs[i][1], 0.01, "published maxima");
    struct tyre_rating rating = rating_at("LT245/70R17 119Q E", UNKNOWN);
    assert_close(rating.load_dual_kg, 0.91 * 1360, 1e-9, "0.91 of the single");
    ck_assert(rating.dual_assumed);
    rating = rating_at("205/55R16 91V", UNKNOWN);
    ck_assert(!known(rating.load_dual_kg));
}
END_TEST

/* 49 CFR 571.138 S4.2; Table 1 from memory. */
START_TEST(warning_is_the_higher_of_two)
{
    double psi32 = unit_to_si(UNIT_PSI, 32);
    assert_close(warning_threshold_Pa(psi32, INFINITY, INFLATION_METRIC_STANDARD, 0), 0.75 * psi32,
                 1e-6, "25 %");
    assert_close(warning_threshold_Pa(psi32, INFINITY, INFLATION_P_METRIC_STANDARD, 0),
                 0.75 * psi32, 1e-6, "25 %");
    assert_close(warning_threshold_Pa(1.8e5, 3.5e5, INFLATION_P_METRIC_STANDARD, 0), 1.4e5, 1e-6,
                 "Table 1");
    assert_close(warning_threshold_Pa(3e5, 5.5e5, INFLATION_LT_METRIC, 'E'), 3.5e5, 1e-6,
                 "above what is in use");
    assert_close(warning_threshold_Pa(5.5e5, 5.5e5, INFLATION_LT_METRIC, 'E'), 4.125e5, 1e-6,
                 "25 %");
    assert_close(warning_threshold_Pa(2.8e5, 3e5, INFLATION_LT_METRIC, 'E'), 2.1e5, 1e-6,
                 "no tyre may be inflated above 350 kPa on a wheel for 300");
    assert_close(warning_threshold_Pa(3.8e5, 3.8e5, INFLATION_LT_METRIC, 'E'), 3.5e5, 1e-6,
                 "in reach");
    ck_assert(!known(warning_threshold_Pa(UNKNOWN, 5.5e5, INFLATION_LT_METRIC, 'E')));
}
END_TEST

static struct tyre_dimensions figures_of(const char *size)
{
    struct tyre tyre = tyre_of(size);
    struct tyre_measures measures;
    tyre_measure(&tyre, &measures);
    return measures.stated;
}

/* Rhyne 2005, coefficients from memory, by hand for 205/55R16: S 205, Ra 55, D 632 mm at 220 kPa:
 * 0.00028 * 220 * sqrt((1.03 - 0.004 * 55) * 205 * 632) = 0.0616 * 323.950 = 19.9553; + 3.45
 * = 23.4053 kg/mm. */
START_TEST(stiffness_by_hand)
{
    struct designation size = tyre_of("205/55R16 91V").size;
    struct tyre_dimensions figures = figures_of("205/55R16 91V");
    assert_close(vertical_stiffness_kg_m(&figures, &size, 2.2e5) / 1e3, 23.4053, 5e-5, "by hand");
    double given = tyre_deflection_m(&figures, &size, 2.2e5, 468.106);
    assert_close(given, 0.020, 1e-6, "468 kg over 23.4 kg/mm");
    assert_close(loaded_radius_m(&figures, given), 0.316 - 0.020, 1e-6, "radius");
    assert_close(contact_chord_m(&figures, given), 0.22127, 5e-6, "2 sqrt(20 (632 - 20)) mm");
    ck_assert(!known(tyre_deflection_m(&figures, &size, 3e4, 900))); /* near the rim */
    /* No ratio is moulded: 31 x 10.5 on 15 in has (31 - 15) / 2 / 10.5 = 76.190 %, so at 240 kPa
     * 0.00028 * 240 * sqrt((1.03 - 0.004 * 76.190) * 266.7 * 787.4) = 26.2254; + 3.45 kg/mm. */
    struct designation flotation = tyre_of("31x10.50R15LT 109Q").size;
    struct tyre_dimensions inches = figures_of("31x10.50R15LT 109Q");
    assert_close(vertical_stiffness_kg_m(&inches, &flotation, 2.4e5) / 1e3, 29.6754, 1e-3, "31 in");
    size.construction = CONSTRUCTION_DIAGONAL;
    ck_assert(!known(vertical_stiffness_kg_m(&figures, &size, 2.2e5)));
}
END_TEST

START_TEST(less_pressure_gives_more)
{
    uint64_t state = random_start("less_pressure_gives_more");
    struct designation size = tyre_of("265/70R16 116T XL").size;
    struct tyre_dimensions figures = figures_of("265/70R16 116T XL");
    for (int run = 0, runs = rounds(3000); run < runs; run++) {
        double high = random_between(&state, 1e5, 4e5), low = random_between(&state, 5e4, high);
        double load = random_between(&state, 200, 700);
        double at_high = tyre_deflection_m(&figures, &size, high, load);
        double at_low = tyre_deflection_m(&figures, &size, low, load);
        ck_assert(at_low >= at_high);
        ck_assert(contact_chord_m(&figures, at_low) >= contact_chord_m(&figures, at_high));
        double chord = contact_chord_m(&figures, at_low),
               radius = loaded_radius_m(&figures, at_low);
        assert_relative(hypot(chord / 2, radius), figures.overall_diameter_m / 2, 1e-9,
                        "half the chord, the loaded radius and the free one are a triangle");
    }
}
END_TEST

/* Boyle: 30 L from 100 to 200 kPa take 30 * 100/101.325 L of free air. The cavity of 205/55R16 is
 * quoted at about 30 L (common practice, no source). */
START_TEST(air_comes_back)
{
    assert_relative(free_air_m3(0.030, 1e5, 2e5), 0.030 * 100 / 101.325, 1e-12, "Boyle");
    assert_close(free_air_m3(0.030, 2e5, 1e5), 0, 0, "nothing to add");
    ck_assert(!known(free_air_m3(0.030, 1e5, UNKNOWN)));
    struct tyre_dimensions figures = figures_of("205/55R16 91V");
    assert_close(cavity_volume_m3(&figures), 0.030, 0.15 * 0.030, "205/55R16");
}
END_TEST

/* What is rounded up is never below, nor a whole step above; a whole value stays. */
START_TEST(pressure_is_rounded_up)
{
    uint64_t state = random_start("pressure_is_rounded_up");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        enum pressure_system system = random_whole(&state, 0, 1) ? PRESSURE_US : PRESSURE_METRIC;
        double step = system == PRESSURE_US ? unit_to_si(UNIT_PSI, 1) : 5000;
        double exact = random_between(&state, 1e5, 8e5);
        double rounded = pressure_rounded_up_Pa(exact, system);
        ck_assert(rounded >= exact - 1e-3 && rounded < exact + step);
        assert_close(rounded / step, round(rounded / step), 1e-9, "whole steps");
        double whole = step * random_whole(&state, 20, 100);
        assert_relative(pressure_rounded_up_Pa(whole, system), whole, 1e-12, "a whole value stays");
    }
    ck_assert(isinf(pressure_rounded_up_Pa(INFINITY, PRESSURE_US)));
    ck_assert(!known(pressure_rounded_up_Pa(UNKNOWN, PRESSURE_US)));
}
END_TEST

Suite *pressure_suite(void)
{
    Suite *suite = suite_create("pressure");
    TCase *speed = tcase_create("speed");
    tcase_add_test(speed, pressure_is_added_for_speed);
    tcase_add_test(speed, commercial_load_varies_with_speed);
    tcase_add_test(speed, low_speed_never_falls_as_speed_falls);
    tcase_add_test(speed, speed_for_load_is_the_highest);
    suite_add_tcase(suite, speed);
    TCase *maxima = tcase_create("maxima and warning");
    tcase_add_test(maxima, lower_of_index_and_published_maximum);
    tcase_add_test(maxima, twin_without_an_index_is_a_share);
    tcase_add_test(maxima, warning_is_the_higher_of_two);
    suite_add_tcase(suite, maxima);
    TCase *low = tcase_create("low pressure");
    tcase_add_test(low, stiffness_by_hand);
    tcase_add_test(low, less_pressure_gives_more);
    tcase_add_test(low, air_comes_back);
    tcase_add_test(low, pressure_is_rounded_up);
    suite_add_tcase(suite, low);
    return suite;
}
