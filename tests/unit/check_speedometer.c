/* Speedometers: the legal windows, fits of road-test readings, settings; all with inverses. */
#include <string.h>

#include "base/units.h"
#include "compute/speedometer.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

#define KMH(value) ((value) / 3.6)

static const char *const rule_names[] = {"un_r39", "eu_75_443", "adr_18_03", "adr_18_02",
                                         "us_393_82"};

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
    return check.lawful;
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
}
END_TEST

/* The commercial rule speaks of 50 mph alone: what happens elsewhere is not its matter. */
START_TEST(rule_with_its_own_speed_ignores_the_top_speed)
{
    struct lawful_check check;
    check_lawful(rule_of("us_393_82"), (struct instrument_line){1.09, 0}, KMH(180), &check);
    ck_assert(check.lawful);
    check_lawful(rule_of("us_393_82"), (struct instrument_line){1.11, 0}, KMH(180), &check);
    ck_assert(!check.lawful && !check.reads_under);
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
    for (int run = 0; run < 3000; run++) {
        const struct speedometer_rules_row *rule =
            rule_of(rule_names[run % (int)LENGTH_OF(rule_names)]);
        struct instrument_line line = random_line(&state);
        double top = KMH(random_between(&state, 60, 300));
        struct lawful_check check;
        check_lawful(rule, line, top, &check);
        double room = least_room(rule, line, top);
        assert_close(-check.excess_mps, room, 1e-9, rule->name);
        if (fabs(room) > 1e-6)
            ck_assert_msg(check.lawful == (room > 0), "%s: scale %.9g offset %.9g top %.9g",
                          rule->name, line.scale, line.offset_mps, top);
    }
}
END_TEST

/* Reads under somewhere in the judged range, by a scan. */
static bool reads_under(const struct speedometer_rules_row *rule, struct instrument_line line,
                        double top_mps)
{
    struct speedometer_rules_row lower = *rule;
    lower.over_add = 1e6;
    return least_room(&lower, line, top_mps) < 0;
}

/* The lowest scale never reads under with any circumference up to the spread, and no lower one. */
START_TEST(lowest_lawful_scale_is_the_lowest)
{
    uint64_t state = random_start("lowest_lawful_scale_is_the_lowest");
    for (int run = 0; run < 1000; run++) {
        const struct speedometer_rules_row *rule =
            rule_of(rule_names[run % (int)LENGTH_OF(rule_names)]);
        double spread = random_between(&state, 0, 0.04), top = KMH(random_between(&state, 80, 250));
        double offset = random_between(&state, -1.5, 1.5);
        double scale = lowest_lawful_scale(rule, offset, top, spread);
        struct instrument_line enough = {(scale + 1e-9) / (1 + spread), offset};
        struct instrument_line less = {(scale - 1e-6) / (1 + spread), offset};
        ck_assert_msg(!reads_under(rule, enough, top), "%s: scale %.9g", rule->name, scale);
        ck_assert_msg(reads_under(rule, less, top), "%s: scale %.9g is not the lowest", rule->name,
                      scale);
    }
    assert_close(lowest_lawful_scale(rule_of("un_r39"), 0, 50, 0), 1, 1e-12, "UN R39: never under");
    assert_close(lowest_lawful_scale(rule_of("us_393_82"), 0, 50, 0), 0.9, 1e-12, "45 at 50 mph");
}
END_TEST

START_TEST(spread_counts_both_circumferences)
{
    uint64_t state = random_start("spread_counts_both_circumferences");
    for (int run = 0; run < 1000; run++) {
        const struct speedometer_rules_row *rule =
            rule_of(rule_names[run % (int)LENGTH_OF(rule_names)]);
        double spread = random_between(&state, 0, 0.04), top = KMH(random_between(&state, 80, 250));
        struct instrument_line line = random_line(&state), largest = line;
        largest.scale /= 1 + spread;
        double room = fmin(least_room(rule, line, top), least_room(rule, largest, top));
        if (fabs(room) > 1e-6)
            ck_assert_int_eq(is_lawful_with_spread(rule, line, top, spread), room > 0);
    }
}
END_TEST

START_TEST(shown_and_true_are_inverses)
{
    uint64_t state = random_start("shown_and_true_are_inverses");
    for (int run = 0; run < 20000; run++) {
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
    for (int run = 0; run < 20000; run++) {
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
};

START_TEST(setting_follows_the_circumference)
{
    double setting = setting_for_error(settings[_i].kind, settings[_i].now,
                                       settings[_i].from_mm / 1e3, settings[_i].to_mm / 1e3, 0, 0);
    assert_close(setting, settings[_i].expected, settings[_i].tolerance,
                 "old x C_old/C_new, by hand");
}
END_TEST

START_TEST(setting_and_error_are_inverses)
{
    uint64_t state = random_start("setting_and_error_are_inverses");
    for (int run = 0; run < 20000; run++) {
        int kind = random_whole(&state, SETTING_PULSES_PER_KM, SETTING_DRIVEN_GEAR_TEETH);
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

/* More counts expected a km, or a smaller circumference entered: the instrument shows less. */
START_TEST(setting_moves_the_error_the_right_way)
{
    for (int kind = SETTING_PULSES_PER_KM; kind <= SETTING_DRIVEN_GEAR_TEETH; kind++) {
        bool circumference = kind == SETTING_CIRCUMFERENCE_MM;
        double error = error_with_setting(kind, 1100, 1000, 2, 2, 0);
        assert_close(1 + error, circumference ? 1.1 : 1 / 1.1, 1e-12, "ten per cent more");
    }
}
END_TEST

struct setting_window {
    double low, high;
};

static bool within_window(double setting, const void *context)
{
    const struct setting_window *window = context;
    return setting >= window->low && setting <= window->high;
}

/* Against every setting that the instrument can take, one by one. */
START_TEST(nearest_setting_is_the_nearest)
{
    uint64_t state = random_start("nearest_setting_is_the_nearest");
    for (int run = 0; run < 5000; run++) {
        struct setting_grid grid = {random_whole(&state, 1, 5), random_whole(&state, 10, 100),
                                    random_whole(&state, 150, 400)};
        struct setting_window window = {random_between(&state, 0, 450), 0};
        window.high = window.low + random_between(&state, 0, 60);
        double exact = random_between(&state, 5, 450), nearest = UNKNOWN;
        for (double setting = grid.min; setting <= grid.max; setting += grid.step)
            if (within_window(setting, &window) &&
                !(fabs(setting - exact) >= fabs(nearest - exact)))
                nearest = setting;
        double found = nearest_setting(&grid, exact, within_window, &window);
        ck_assert_msg(known(found) == known(nearest), "exact %.9g: %g, expected %g", exact, found,
                      nearest);
        if (known(found))
            assert_close(fabs(found - exact), fabs(nearest - exact), 1e-9, "distance");
    }
}
END_TEST

static struct value_pair points[64];

static struct pair_list readings_on(struct instrument_line line, size_t count, uint64_t *state,
                                    double noise)
{
    for (size_t i = 0; i < count; i++) {
        double v = 8 + 3 * (double)i;
        double off = noise > 0 ? random_between(state, -noise, noise) : 0;
        points[i] = (struct value_pair){NULL, line.scale * v + line.offset_mps + off, v};
    }
    return (struct pair_list){points, count};
}

START_TEST(exact_readings_give_their_line)
{
    uint64_t state = random_start("exact_readings_give_their_line");
    for (int run = 0; run < 2000; run++) {
        struct instrument_line line = random_line(&state);
        struct pair_list list = readings_on(line, (size_t)random_whole(&state, 3, 12), &state, 0);
        struct reading_fit fit;
        fit_readings(&list, &fit);
        ck_assert(!fit.scale_only);
        assert_relative(fit.line.scale, line.scale, 1e-10, "scale");
        assert_close(fit.line.offset_mps, line.offset_mps, 1e-9, "offset");
        assert_close(fit.standard_error_mps, 0, 1e-9, "nothing is left over");
    }
}
END_TEST

static double sum_of_squares(const struct pair_list *list, struct instrument_line line)
{
    double sum = 0;
    for (size_t i = 0; i < list->count; i++) {
        double left = list->items[i].first - line.scale * list->items[i].second - line.offset_mps;
        sum += left * left;
    }
    return sum;
}

/* Least squares: every neighbouring line leaves more over. */
START_TEST(fit_leaves_the_least_squares)
{
    uint64_t state = random_start("fit_leaves_the_least_squares");
    for (int run = 0; run < 1000; run++) {
        size_t count = (size_t)random_whole(&state, 3, 12);
        struct pair_list list = readings_on(random_line(&state), count, &state, 0.5);
        struct reading_fit fit;
        fit_readings(&list, &fit);
        double least = sum_of_squares(&list, fit.line);
        assert_relative(fit.standard_error_mps, sqrt(least / (double)(count - 2)), 1e-9, "s");
        for (int side = 0; side < 4; side++) {
            struct instrument_line near = fit.line;
            near.scale += side == 0 ? 1e-4 : side == 1 ? -1e-4 : 0;
            near.offset_mps += side == 2 ? 1e-3 : side == 3 ? -1e-3 : 0;
            ck_assert(sum_of_squares(&list, near) > least);
        }
    }
}
END_TEST

START_TEST(few_readings_give_the_scale_alone)
{
    struct value_pair one[] = {{NULL, 50, 48.5}}, two[] = {{NULL, 50, 48}, {NULL, 101, 97}};
    struct value_pair same[] = {{NULL, 50, 48}, {NULL, 50.5, 48}, {NULL, 49.5, 48}};
    struct pair_list lists[] = {{one, 1}, {two, 2}, {same, 3}};
    double scales[] = {50 / 48.5, (48.0 * 50 + 97.0 * 101) / (48.0 * 48 + 97.0 * 97), 50 / 48.0};
    for (size_t i = 0; i < LENGTH_OF(lists); i++) {
        struct reading_fit fit;
        fit_readings(&lists[i], &fit);
        ck_assert(fit.scale_only);
        ck_assert_uint_eq(fit.readings, lists[i].count);
        assert_relative(fit.line.scale, scales[i], 1e-12, "through the origin, by hand");
        assert_close(fit.line.offset_mps, 0, 0, "no offset");
        ck_assert(known(fit.standard_error_mps) == (lists[i].count > 1));
    }
}
END_TEST

Suite *speedometer_suite(void)
{
    Suite *suite = suite_create("speedometer");
    TCase *law = tcase_create("law");
    tcase_add_loop_test(law, window_is_the_regulations, 0, (int)LENGTH_OF(windows));
    tcase_add_test(law, shown_100_bounds_the_true_speed);
    tcase_add_test(law, rule_with_its_own_speed_ignores_the_top_speed);
    tcase_add_test(law, lawful_agrees_with_a_scan);
    tcase_add_test(law, lowest_lawful_scale_is_the_lowest);
    tcase_add_test(law, spread_counts_both_circumferences);
    suite_add_tcase(suite, law);
    TCase *line = tcase_create("line");
    tcase_add_test(line, shown_and_true_are_inverses);
    tcase_add_test(line, line_follows_the_circumference);
    tcase_add_test(line, exact_readings_give_their_line);
    tcase_add_test(line, fit_leaves_the_least_squares);
    tcase_add_test(line, few_readings_give_the_scale_alone);
    suite_add_tcase(suite, line);
    TCase *setting = tcase_create("setting");
    tcase_add_loop_test(setting, setting_follows_the_circumference, 0, (int)LENGTH_OF(settings));
    tcase_add_test(setting, setting_and_error_are_inverses);
    tcase_add_test(setting, nearest_setting_is_the_nearest);
    tcase_add_test(setting, setting_moves_the_error_the_right_way);
    suite_add_tcase(suite, setting);
    return suite;
}
