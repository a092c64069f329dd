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

/* The rule narrowed to one true speed, both sides asked there. */
static bool lawful_at(const char *name, double true_speed, double shown_speed)
{
    struct speedometer_rules_row one = *rule_of(name);
    one.under_from = one.over_from = one.applies_to = true_speed;
    struct lawful_check check;
    check_lawful(&one, (struct instrument_line){shown_speed / true_speed, 0}, UNKNOWN, &check);
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
    struct speed_range truth = lawful_true(rule_of("un_r39"), KMH(100.0));
    assert_close(truth.from_mps, KMH(87.2727), KMH(0.001), "(V1 - 4)/1.1");
    assert_close(truth.to_mps, KMH(100.0), 1e-12, "V1");
    truth = lawful_true(rule_of("adr_18_02"), KMH(90.0));
    assert_close(truth.to_mps, KMH(100.0), 1e-9, "ADR 18/02: ten per cent under 100 (from memory)");
}
END_TEST

/* The commercial rule speaks of 50 mph alone: what happens elsewhere is not its matter. */
START_TEST(rule_with_its_own_speed_ignores_the_top_speed)
{
    struct lawful_check check;
    check_lawful(rule_of("us_393_82"), (struct instrument_line){1.09, 0}, KMH(180), &check);
    ck_assert_int_eq(check.lawful, ANSWER_YES);
    check_lawful(rule_of("us_393_82"), (struct instrument_line){1.11, 0}, KMH(180), &check);
    ck_assert(check.lawful == ANSWER_NO && !check.reads_under);
    assert_relative(check.worst_true_mps, 22.352, 1e-12, "50 mph");
    assert_relative(check.bound_shown_mps, 55 * 0.44704, 1e-12, "55 mph");
}
END_TEST

/* The lowest true speed at which a rule is judged: its lowest test speed. */
static void judged_range_of(const struct speedometer_rules_row *rule, double top_mps,
                            double *from_mps, double *to_mps)
{
    double unit = strcmp(rule->unit, "mph") == 0 ? 0.44704 : 1 / 3.6;
    *to_mps = known(rule->applies_to) ? rule->applies_to * unit : top_mps;
    *from_mps = fmin(fmax(rule->over_from, rule->under_from) * unit, *to_mps);
}

/* Room that is left at a true speed beside the rule's text, in m/s; negative: broken. Written
 * from the table's note and not from the code. */
static double room_at(const struct speedometer_rules_row *rule, struct instrument_line line,
                      double true_mps)
{
    double unit = strcmp(rule->unit, "mph") == 0 ? 0.44704 : 1 / 3.6;
    double v = true_mps / unit, shown = (line.scale * true_mps + line.offset_mps) / unit;
    double over = v + v * rule->over_percent / 100 + rule->over_add - shown;
    double under = shown - (v - v * rule->under_percent / 100 - rule->under_add);
    return fmin(over, under) * unit;
}

static double least_room(const struct speedometer_rules_row *rule, struct instrument_line line,
                         double top_mps)
{
    double from, to, least = INFINITY;
    judged_range_of(rule, top_mps, &from, &to);
    for (int step = 0; step <= 1000; step++)
        least = fmin(least, room_at(rule, line, from + (to - from) * step / 1000));
    return least;
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
        const struct speedometer_rules_row *rule =
            rule_of(rule_names[run % (int)LENGTH_OF(rule_names)]);
        struct instrument_line line = random_line(&state);
        double top = KMH(random_between(&state, 60, 300));
        struct lawful_check check;
        check_lawful(rule, line, top, &check);
        double room = least_room(rule, line, top);
        assert_close(-check.excess_mps, room, 1e-9, rule->name);
        if (fabs(room) > 1e-6)
            ck_assert_msg((check.lawful == ANSWER_YES) == (room > 0),
                          "%s: scale %.9g offset %.9g top %.9g", rule->name, line.scale,
                          line.offset_mps, top);
    }
}
END_TEST

/* Room left with the worst circumference of the spread, by a scan. */
static double least_room_with(const struct speedometer_rules_row *rule, struct instrument_line line,
                              double top_mps, struct spread spread)
{
    double least = INFINITY;
    for (int step = 0; step <= 20; step++) {
        double part = -spread.under + (spread.over + spread.under) * step / 20;
        struct instrument_line other = {line.scale / (1 + part), line.offset_mps};
        struct speed_range range = judged_range(rule, top_mps);
        least = fmin(
            least, fmin(room_at(rule, other, range.from_mps), room_at(rule, other, range.to_mps)));
    }
    return least;
}

/* Any scale within is lawful with every circumference, and any scale outside is not: by a scan
 * over circumferences. */
START_TEST(lawful_scales_are_all_of_them)
{
    uint64_t state = random_start("lawful_scales_are_all_of_them");
    for (int run = 0, runs = rounds(1000); run < runs; run++) {
        const struct speedometer_rules_row *rule =
            rule_of(rule_names[run % (int)LENGTH_OF(rule_names)]);
        struct spread spread = {random_between(&state, 0, 0.04), random_between(&state, 0, 0.04)};
        double top = KMH(random_between(&state, 80, 250));
        double offset = random_between(&state, -1.5, 1.5);
        struct scale_range scales = lawful_scales(rule, offset, top, spread);
        double scale = random_between(&state, 0.85, 1.3);
        double room = least_room_with(rule, (struct instrument_line){scale, offset}, top, spread);
        bool within = scale >= scales.low && scale <= scales.high;
        if (fabs(room) > 1e-6)
            ck_assert_msg(within == (room > 0), "%s: scale %.9g, %.9g to %.9g, room %.9g",
                          rule->name, scale, scales.low, scales.high, room);
    }
}
END_TEST

START_TEST(lawful_scales_of_two_rules)
{
    struct spread none = {0, 0}, table = {0.025, 0.015};
    struct scale_range r39 = lawful_scales(rule_of("un_r39"), 0, KMH(120), none);
    assert_close(r39.low, 1, 1e-12, "UN R39 5.3: never under");
    assert_close(r39.high, 136.0 / 120, 1e-12, "UN R39 5.3: 136 km/h shown at 120");
    r39 = lawful_scales(rule_of("un_r39"), 0, KMH(120), table);
    assert_close(r39.low, 1.015, 1e-12, "with 1.5 % more circumference");
    assert_close(r39.high, 136.0 / 120 * 0.975, 1e-12, "with 2.5 % less");
    struct scale_range us = lawful_scales(rule_of("us_393_82"), 0, KMH(120), none);
    assert_close(us.low, 0.9, 1e-12, "49 CFR 393.82: 45 at 50 mph");
    assert_close(us.high, 1.1, 1e-12, "49 CFR 393.82: 55 at 50 mph");
}
END_TEST

/* On either side of a crossing the window judges differently; without one, all is alike. */
START_TEST(crossings_part_lawful_from_unlawful)
{
    uint64_t state = random_start("crossings_part_lawful_from_unlawful");
    const int runs = rounds(5000);
    int found = 0;
    for (int run = 0; run < runs; run++) {
        const struct speedometer_rules_row *rule =
            rule_of(rule_names[run % (int)LENGTH_OF(rule_names)]);
        double top = KMH(random_between(&state, 80, 250));
        struct instrument_line line = random_line(&state);
        struct crossings crossings = lawful_crossings(rule, line, top);
        struct speed_range range = judged_range(rule, top);
        for (int lower = 0; lower < 2; lower++) {
            double at = lower ? crossings.lower_mps : crossings.upper_mps, room[2];
            for (int end = 0; end < 2; end++) {
                double v = end ? range.to_mps : range.from_mps;
                struct speed_range allowed = lawful_shown(rule, v);
                double shown = line.scale * v + line.offset_mps;
                room[end] = lower ? shown - allowed.from_mps : allowed.to_mps - shown;
            }
            if (fabs(room[0]) < 1e-6 || fabs(room[1]) < 1e-6)
                continue;
            ck_assert_int_eq(known(at), room[0] * room[1] < 0);
            if (!known(at))
                continue;
            found++;
            struct speed_range allowed = lawful_shown(rule, at);
            assert_close(line.scale * at + line.offset_mps,
                         lower ? allowed.from_mps : allowed.to_mps, 1e-9, "it stands on the bound");
        }
    }
    ck_assert_int_gt(found, runs / 10);
}
END_TEST

/* With the largest lawful circumference the instrument meets its bound; a hair more breaks it. */
START_TEST(lawful_circumferences_meet_the_bounds)
{
    const struct speedometer_rules_row *rule = rule_of("un_r39");
    struct instrument_line line = {1.03, 0};
    struct length_range range = lawful_circumferences(rule, line, 2.0, KMH(120));
    assert_close(range.most_m, 2.06, 1e-12, "3 % over at 2000 mm reads true at 2060 mm");
    assert_close(range.least_m, 2.0 * 1.03 * 120 / 136, 1e-12, "136 shown at 120 km/h");
    struct lawful_check check;
    check_lawful(rule, line_on_circumference(line, 2.0, range.most_m), KMH(120), &check);
    ck_assert_int_eq(check.lawful, ANSWER_YES);
    check_lawful(rule, line_on_circumference(line, 2.0, range.most_m * 1.0001), KMH(120), &check);
    ck_assert(check.lawful == ANSWER_NO && check.reads_under);
}
END_TEST

/* No bound is met or broken by what is not known. */
START_TEST(unknown_is_neither_lawful_nor_broken)
{
    const struct speedometer_rules_row *rule = rule_of("un_r39");
    const struct instrument_line lines[] = {{UNKNOWN, 0}, {1.02, UNKNOWN}, {1.02, 0}};
    const double tops[] = {KMH(160), KMH(160), UNKNOWN};
    for (size_t i = 0; i < LENGTH_OF(lines); i++) {
        struct lawful_check check;
        check_lawful(rule, lines[i], tops[i], &check);
        ck_assert_int_eq(check.lawful, ANSWER_UNKNOWN);
        ck_assert(!known(check.excess_mps) && !known(check.bound_shown_mps));
    }
    struct scale_range scales =
        lawful_scales(rule, 0, KMH(160), (struct spread){.under = 0.02, .over = UNKNOWN});
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
    tcase_add_test(law, lawful_scales_of_two_rules);
    tcase_add_test(law, crossings_part_lawful_from_unlawful);
    tcase_add_test(law, lawful_circumferences_meet_the_bounds);
    tcase_add_test(law, unknown_is_neither_lawful_nor_broken);
    suite_add_tcase(suite, law);
    return suite;
}
