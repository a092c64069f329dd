/* The law of speedometers: the windows, their crossings, and the scales that stay within. */
#include <string.h>

#include "base/units.h"
#include "compute/speedometer_law.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

#define KMH(value) ((value) / 3.6)

static const char *const rule_names[] = {"un_r39",    "eu_75_443", "adr_18_03",
                                         "adr_18_02", "us_393_82", "eu_recording"};

static const struct speedometer_rules_row *rule_of(const char *name)
{
    const struct speedometer_rules_row *rule = speedometer_rule_find(name);
    ck_assert_msg(rule != NULL, "no rule %s", name);
    return rule;
}

/* For a vehicle of that top speed, without a reading. */
static struct law law_of(const char *name, double top_mps)
{
    return (struct law){rule_of(name), top_mps, INFINITY};
}

/* The rule narrowed to one true speed, both sides asked there. */
static bool lawful_at(const char *name, double true_speed, double shown_speed)
{
    struct speedometer_rules_row one = *rule_of(name);
    one.under_from = one.over_from = one.applies_to = true_speed;
    const struct law law = {&one, UNKNOWN, INFINITY};
    struct lawful_check check;
    check_lawful(&law, (struct instrument_line){shown_speed / true_speed, 0}, &check);
    return check.lawful == ANSWER_YES;
}

/* Lowest and highest speed that may be shown at a true one, in the rule's unit. */
static const struct {
    const char *rule;
    double true_speed, lowest, highest;
    const char *source;
} windows[] = {
    {"un_r39", 50, 50, 59, "UN R39 5.3: 0 <= V1 - V2 <= 0.1 V2 + 4 km/h"},
    {"un_r39", 90, 90, 103, "UN R39 5.3"},
    {"un_r39", 130, 130, 147, "UN R39 5.3"},
    {"eu_75_443", 90, 90, 103, "Directive 75/443/EEC"},
    {"adr_18_03", 90, 90, 103, "ADR 18/03, by UN R39"},
    {"eu_recording", 80, 74, 86, "Regulation (EEC) 3821/85, Annex I, as quoted: 6 km/h in use"},
    {"us_393_82", 50, 45, 55, "49 CFR 393.82: 5 mph either way at 50 mph"},
};

START_TEST(window_is_the_regulations)
{
    const char *rule = windows[_i].rule;
    double v = windows[_i].true_speed, low = windows[_i].lowest, high = windows[_i].highest;
    ck_assert_msg(lawful_at(rule, v, low), "%s", windows[_i].source);
    ck_assert_msg(lawful_at(rule, v, high), "%s", windows[_i].source);
    ck_assert_msg(!lawful_at(rule, v, low - 0.001), "%s", windows[_i].source);
    ck_assert_msg(!lawful_at(rule, v, high + 0.001), "%s", windows[_i].source);
}
END_TEST

/* From UN R39 5.3: shown 100 km/h stands for a true (100 - 4)/1.1 = 87.27 to 100 km/h. */
START_TEST(shown_100_bounds_the_true_speed)
{
    ck_assert(lawful_at("un_r39", 87.28, 100));
    ck_assert(!lawful_at("un_r39", 87.26, 100));
    ck_assert(lawful_at("un_r39", 100, 100));
    ck_assert(!lawful_at("un_r39", 100.01, 100));
    const struct law r39 = law_of("un_r39", KMH(200)), adr = law_of("adr_18_02", KMH(200));
    struct speed_range truth = lawful_true(&r39, KMH(100.0));
    assert_close(truth.from_mps, KMH(87.2727), KMH(0.001), "(V1 - 4)/1.1");
    assert_close(truth.to_mps, KMH(100.0), 1e-12, "V1");
    truth = lawful_true(&adr, KMH(90.0));
    assert_close(truth.to_mps, KMH(100.0), 1e-9, "ADR 18/02: ten per cent under 100 (from memory)");
}
END_TEST

/* The commercial rule speaks of 50 mph alone: what happens elsewhere is not its matter. */
START_TEST(rule_with_its_own_speed_ignores_the_top_speed)
{
    const struct law law = law_of("us_393_82", KMH(180));
    struct lawful_check check;
    check_lawful(&law, (struct instrument_line){1.09, 0}, &check);
    ck_assert_int_eq(check.lawful, ANSWER_YES);
    check_lawful(&law, (struct instrument_line){1.11, 0}, &check);
    ck_assert(check.lawful == ANSWER_NO && !check.reads_under);
    assert_relative(check.worst_true_mps, 22.352, 1e-12, "50 mph");
    assert_relative(check.bound_shown_mps, 55 * 0.44704, 1e-12, "55 mph");
}
END_TEST

/* Where a bound is asked: the upper one from the speed that the row names, the lower one too, or,
 * where it names none, from 20 km/h or the lowest reading; both to the row's end or the top speed.
 */
static void asked_of(const struct law *law, bool lower, double *from_mps, double *to_mps)
{
    double unit = strcmp(law->rule->unit, "mph") == 0 ? 0.44704 : 1 / 3.6;
    double from = (lower ? law->rule->under_from : law->rule->over_from) * unit;
    if (lower && law->rule->under_from == 0)
        from = law->lowest_mps < 20 / 3.6 ? law->lowest_mps : 20 / 3.6;
    *to_mps = known(law->rule->applies_to) ? law->rule->applies_to * unit : law->top_mps;
    *from_mps = from < *to_mps ? from : *to_mps;
}

/* Room that is left to a bound at a true speed beside the rule's text, in m/s; negative: broken.
 * Written from the table's note and not from the code. */
static double room_at(const struct speedometer_rules_row *rule, struct instrument_line line,
                      bool lower, double true_mps)
{
    double unit = strcmp(rule->unit, "mph") == 0 ? 0.44704 : 1 / 3.6;
    double v = true_mps / unit, shown = (line.scale * true_mps + line.offset_mps) / unit;
    double over = v + v * rule->over_percent / 100 + rule->over_add - shown;
    double under = shown - (v - v * rule->under_percent / 100 - rule->under_add);
    return (lower ? under : over) * unit;
}

static double least_room(const struct law *law, struct instrument_line line)
{
    double from, to, least = INFINITY;
    for (int lower = 0; lower < 2; lower++) {
        asked_of(law, lower, &from, &to);
        for (int step = 0; step <= 500; step++)
            least = fmin(least, room_at(law->rule, line, lower, from + (to - from) * step / 500));
    }
    return least;
}

static struct law random_law(uint64_t *state, int run)
{
    struct law law =
        law_of(rule_names[run % (int)LENGTH_OF(rule_names)], KMH(random_between(state, 60, 300)));
    if (random_between(state, 0, 1) < 0.5)
        law.lowest_mps = KMH(random_between(state, 8, 50));
    return law;
}

static struct instrument_line random_line(uint64_t *state)
{
    return (struct instrument_line){random_between(state, 0.85, 1.2),
                                    random_between(state, -1.5, 1.5)};
}

START_TEST(lawful_agrees_with_a_scan)
{
    uint64_t state = random_start("lawful_agrees_with_a_scan");
    for (int run = 0, runs = rounds(3000); run < runs; run++) {
        struct law law = random_law(&state, run);
        struct instrument_line line = random_line(&state);
        struct lawful_check check;
        check_lawful(&law, line, &check);
        double room = least_room(&law, line);
        assert_close(-check.excess_mps, room, 1e-9, law.rule->name);
        if (fabs(room) > 1e-6)
            ck_assert_msg((check.lawful == ANSWER_YES) == (room > 0),
                          "%s: scale %.9g offset %.9g top %.9g", law.rule->name, line.scale,
                          line.offset_mps, law.top_mps);
    }
}
END_TEST

/* Room left with the worst circumference of the spread, by a scan. */
static double least_room_with(const struct law *law, struct instrument_line line,
                              struct spread spread)
{
    double least = INFINITY;
    for (int step = 0; step <= 4; step++) {
        double part = -spread.under + (spread.over + spread.under) * step / 4;
        least = fmin(least, least_room(law, (struct instrument_line){line.scale / (1 + part),
                                                                     line.offset_mps}));
    }
    return least;
}

/* Any scale within is lawful with every circumference, and any scale outside is not: by a scan
 * over circumferences. */
START_TEST(lawful_scales_are_all_of_them)
{
    uint64_t state = random_start("lawful_scales_are_all_of_them");
    for (int run = 0, runs = rounds(1000); run < runs; run++) {
        struct law law = random_law(&state, run);
        struct spread spread = {random_between(&state, 0, 0.04), random_between(&state, 0, 0.04)};
        struct instrument_line line = {random_between(&state, 0.85, 1.3),
                                       random_between(&state, -1.5, 1.5)};
        struct scale_range scales = lawful_scales(&law, line.offset_mps, spread, NULL);
        double room = least_room_with(&law, line, spread);
        bool within = line.scale >= scales.low && line.scale <= scales.high;
        if (fabs(room) > 1e-6)
            ck_assert_msg(within == (room > 0), "%s: scale %.9g, %.9g to %.9g, room %.9g",
                          law.rule->name, line.scale, scales.low, scales.high, room);
    }
}
END_TEST

/* Readings of random error, and the least room of the edges of their band. */
static double least_room_of_band(const struct law *law, const struct calibration *calibration,
                                 double scale)
{
    double least = INFINITY, from, to, k = scale / calibration->scale.value;
    for (int lower = 0; lower < 2; lower++) {
        asked_of(law, lower, &from, &to);
        for (int step = 0; step <= 200; step++) {
            double v = from + (to - from) * step / 200;
            double half = calibrated_half_interval_95(calibration, k * v);
            struct instrument_line edge = {scale,
                                           calibration->offset.value + (lower ? -half : half)};
            least = fmin(least, room_at(law->rule, edge, lower, v));
        }
    }
    return least;
}

/* Within the scales the whole band of the readings is lawful: k times the scale shows at v what the
 * instrument showed at k v, and is as sure of it. */
START_TEST(lawful_scales_hold_the_band_of_the_readings)
{
    uint64_t state = random_start("lawful_scales_hold_the_band_of_the_readings");
    int checked = 0;
    for (int run = 0, runs = rounds(1000); run < runs; run++) {
        struct law law = random_law(&state, run);
        struct value_pair items[6];
        size_t count = (size_t)random_whole(&state, 2, 6);
        double scale = random_between(&state, 0.95, 1.1), error = random_between(&state, 0, 0.4);
        for (size_t i = 0; i < count; i++) {
            double v = KMH(random_between(&state, 25, 130));
            items[i] = (struct value_pair){
                .first = scale * v + random_between(&state, -error, error), .second = v};
        }
        const struct pair_list readings = {items, count};
        struct calibration calibration;
        if (count > 2 && run % 2 == 0 && spread_allows_offset(&readings))
            calibrate_scale_and_offset(&readings, &calibration);
        else
            calibrate_scale(&readings, &calibration);
        const struct spread none = {0, 0};
        struct scale_range scales =
            lawful_scales(&law, calibration.offset.value, none, &calibration);
        struct scale_range plain = lawful_scales(&law, calibration.offset.value, none, NULL);
        if (!known(scales.low))
            continue;
        ck_assert(scales.low >= plain.low - 1e-12 && scales.high <= plain.high + 1e-12);
        double tried = random_between(&state, 0.9, 1.3);
        double room = least_room_of_band(&law, &calibration, tried);
        if (fabs(room) < 1e-6)
            continue;
        checked++;
        ck_assert_msg((tried >= scales.low && tried <= scales.high) == (room > 0),
                      "%s: scale %.9g, %.9g to %.9g, room %.9g", law.rule->name, tried, scales.low,
                      scales.high, room);
    }
    ck_assert_int_gt(checked, rounds(1000) / 4);
}
END_TEST

START_TEST(no_scale_is_lawful_that_shows_too_much_at_rest)
{
    struct spread none = {0, 0};
    const struct law recording = law_of("eu_recording", KMH(120));
    struct scale_range scales = lawful_scales(&recording, KMH(30), none, NULL);
    assert_close(scales.low, 84.0 / 120, 1e-12, "3821/85 Annex I: 114 at 120 km/h, 30 of it offset");
    assert_close(scales.high, 0, 1e-12, "3821/85 Annex I: 26 at 20 km/h, and 30 of offset");
    scales = lawful_scales(&recording, KMH(300), none, NULL);
    ck_assert(!known(scales.low) && !known(scales.high));
}
END_TEST

START_TEST(lawful_scales_of_two_rules)
{
    struct spread none = {0, 0}, table = {0.025, 0.015};
    const struct law r39 = law_of("un_r39", KMH(120)), us = law_of("us_393_82", KMH(120));
    struct scale_range scales = lawful_scales(&r39, 0, none, NULL);
    assert_close(scales.low, 1, 1e-12, "UN R39 5.3: never under");
    assert_close(scales.high, 136.0 / 120, 1e-12, "UN R39 5.3: 136 km/h shown at 120");
    scales = lawful_scales(&r39, 0, table, NULL);
    assert_close(scales.low, 1.015, 1e-12, "with 1.5 % more circumference");
    assert_close(scales.high, 136.0 / 120 * 0.975, 1e-12, "with 2.5 % less");
    scales = lawful_scales(&us, 0, none, NULL);
    assert_close(scales.low, 0.9, 1e-12, "49 CFR 393.82: 45 at 50 mph");
    assert_close(scales.high, 1.1, 1e-12, "49 CFR 393.82: 55 at 50 mph");
}
END_TEST

/* UN R39 5.3 never lets it show less: 1.075 v - 2.5 km/h shows 19 at 20 km/h and 40.5 at 40, so
 * that it is lawful from 2.5 / 0.075 = 33.33 km/h on alone. A reading at 10 km/h is judged as well;
 * at 20 km/h 19 % and more over is asked by no test speed. */
START_TEST(never_under_below_the_test_speeds)
{
    const struct instrument_line line = {1.075, KMH(-2.5)};
    struct law law = law_of("un_r39", KMH(200));
    struct lawful_check check;
    check_lawful(&law, line, &check);
    ck_assert(check.lawful == ANSWER_NO && check.reads_under);
    assert_close(check.worst_true_mps, KMH(20.0), 1e-12, "20 km/h");
    assert_close(lawful_crossings(&law, line).lower_mps, KMH(2.5 / 0.075), 1e-9, "by hand");
    assert_close(lawful_scales(&law, line.offset_mps, (struct spread){0, 0}, NULL).low, 22.5 / 20,
                 1e-12, "22.5 for 20 km/h");
    law.lowest_mps = KMH(10);
    assert_close(lawful_scales(&law, line.offset_mps, (struct spread){0, 0}, NULL).low, 12.5 / 10,
                 1e-12, "12.5 for 10 km/h");
    check_lawful_at(&law, KMH(20), KMH(27), &check);
    ck_assert_int_eq(check.lawful, ANSWER_YES);
    check_lawful_at(&law, KMH(40), KMH(48.1), &check);
    ck_assert(check.lawful == ANSWER_NO && !check.reads_under);
    law = law_of("us_393_82", KMH(200));
    check_lawful_at(&law, 30 * 0.44704, 50 * 0.44704, &check);
    ck_assert_int_eq(check.lawful, ANSWER_NOT_ASKED);
}
END_TEST

/* On either side of a crossing the window judges differently; without one, all is alike. */
START_TEST(crossings_part_lawful_from_unlawful)
{
    uint64_t state = random_start("crossings_part_lawful_from_unlawful");
    const int runs = rounds(5000);
    int found = 0;
    for (int run = 0; run < runs; run++) {
        struct law law = random_law(&state, run);
        struct instrument_line line = random_line(&state);
        struct crossings crossings = lawful_crossings(&law, line);
        for (int lower = 0; lower < 2; lower++) {
            double at = lower ? crossings.lower_mps : crossings.upper_mps, from, to;
            asked_of(&law, lower, &from, &to);
            double low = room_at(law.rule, line, lower, from);
            double high = room_at(law.rule, line, lower, to);
            if (fabs(low) < 1e-6 || fabs(high) < 1e-6)
                continue;
            ck_assert_int_eq(known(at), low * high < 0);
            if (!known(at))
                continue;
            found++;
            assert_close(room_at(law.rule, line, lower, at), 0, 1e-9, "it stands on the bound");
        }
    }
    ck_assert_int_gt(found, runs / 10);
}
END_TEST

/* With the largest lawful circumference the instrument meets its bound; a hair more breaks it. */
START_TEST(lawful_circumferences_meet_the_bounds)
{
    const struct law law = law_of("un_r39", KMH(120));
    struct instrument_line line = {1.03, 0};
    struct length_range range = lawful_circumferences(&law, line, 2.0);
    assert_close(range.most_m, 2.06, 1e-12, "3 % over at 2000 mm reads true at 2060 mm");
    assert_close(range.least_m, 2.0 * 1.03 * 120 / 136, 1e-12, "136 shown at 120 km/h");
    struct lawful_check check;
    check_lawful(&law, line_on_circumference(line, 2.0, range.most_m), &check);
    ck_assert_int_eq(check.lawful, ANSWER_YES);
    check_lawful(&law, line_on_circumference(line, 2.0, range.most_m * 1.0001), &check);
    ck_assert(check.lawful == ANSWER_NO && check.reads_under);
}
END_TEST

/* No bound is met or broken by what is not known. */
START_TEST(unknown_is_neither_lawful_nor_broken)
{
    const struct instrument_line lines[] = {{UNKNOWN, 0}, {1.02, UNKNOWN}, {1.02, 0}};
    const double tops[] = {KMH(160), KMH(160), UNKNOWN};
    for (size_t i = 0; i < LENGTH_OF(lines); i++) {
        const struct law law = law_of("un_r39", tops[i]);
        struct lawful_check check;
        check_lawful(&law, lines[i], &check);
        ck_assert_int_eq(check.lawful, ANSWER_UNKNOWN);
        ck_assert(!known(check.excess_mps) && !known(check.bound_shown_mps));
    }
    const struct law law = law_of("un_r39", KMH(160));
    struct scale_range scales =
        lawful_scales(&law, 0, (struct spread){.under = 0.02, .over = UNKNOWN}, NULL);
    ck_assert(!known(scales.low) && !known(scales.high));
    struct setting_grid grid = {2548, 1, UNKNOWN, UNKNOWN, {NULL, 0}};
    ck_assert(!known(nearest_setting(&grid, 2500, UNKNOWN, UNKNOWN)));
    ck_assert(!known(nearest_setting(&grid, UNKNOWN, 0, 3000)));
}
END_TEST

Suite *speedometer_law_suite(void)
{
    Suite *suite = suite_create("speedometer_law");
    TCase *law = tcase_create("law");
    tcase_add_loop_test(law, window_is_the_regulations, 0, (int)LENGTH_OF(windows));
    tcase_add_test(law, shown_100_bounds_the_true_speed);
    tcase_add_test(law, rule_with_its_own_speed_ignores_the_top_speed);
    tcase_add_test(law, lawful_agrees_with_a_scan);
    tcase_add_test(law, lawful_scales_are_all_of_them);
    tcase_add_test(law, lawful_scales_hold_the_band_of_the_readings);
    tcase_add_test(law, lawful_scales_of_two_rules);
    tcase_add_test(law, no_scale_is_lawful_that_shows_too_much_at_rest);
    tcase_add_test(law, never_under_below_the_test_speeds);
    tcase_add_test(law, crossings_part_lawful_from_unlawful);
    tcase_add_test(law, lawful_circumferences_meet_the_bounds);
    tcase_add_test(law, unknown_is_neither_lawful_nor_broken);
    suite_add_tcase(suite, law);
    return suite;
}
