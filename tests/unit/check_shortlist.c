/* Which sizes are left and in which order, on an invented estate of which all is known: the rim
 * that is the fitted wheel, work that only sets, another axle, and what is shown where nothing is
 * left. */
#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "cli/progress.h"
#include "report/shortlist/shortlist.h"
#include "suites.h"
#include "support.h"
#include "yaml/build_file.h"

static struct arena store;
static struct shortlist *list;

/* Its gaps: top speed, speedometer, what else. */
static const char estate[] =
    "vehicle: {kind: passenger_car, category: M1, drive: front, wheelbase: 2700 mm,\n"
    "  unladen: {front: 820 kg, rear: 620 kg}, includes: [driver, fuel],\n"
    "  ratings: {front: 1050 kg, rear: 1000 kg, gross: 1980 kg},\n"
    "  track: {front: 1535 mm, rear: 1525 mm}, top_speed: %s km/h}\n"
    "tyres: {fitted: {size: 205/55R16 91V, placard: {front: 230 kPa, rear: 220 kPa},\n"
    "  wheel: {width: 6.5 in, inset: 45 mm, max_load: 650 kg, max_pressure: 450 kPa}}}\n"
    "clearance: {arch: {front: {above: 90 mm, inner: 30 mm, outer: 30 mm, at_lock: 30 mm},\n"
    "  rear: {above: 90 mm, inner: 30 mm, outer: 30 mm}}}\n"
    "suspension: {front: {wheel_rate: 30 N/mm, travel_to_bump: 70 mm},\n"
    "  rear: {wheel_rate: 30 N/mm, travel_to_bump: 70 mm}}\n"
    "speedometer: {unit: km/h, rule: un_r39, %s}\n"
    "%s\n";
static const char as_fitted[] = "search: {rims: [{diameter: 16, width: 6.5 in, inset: 45 mm}]}";

static void start(void)
{
    store = ARENA_EMPTY;
}

static void stop(void)
{
    arena_free(&store);
}

static void search(const char *top_speed, const char *speedometer, const char *rest,
                   const char *const *sizes, size_t count)
{
    struct diagnostics diagnostics = {.arena = &store};
    struct specification *specification = arena_allocate(&store, sizeof *specification);
    struct plan *plan = arena_allocate(&store, sizeof *plan);
    struct candidate *candidates = arena_allocate_array(&store, count, sizeof *candidates);
    const char *text = arena_format(&store, estate, top_speed, speedometer, rest);
    ck_assert_msg(build_file_read(&store, span_of(text), &diagnostics, specification), "%s",
                  diagnostics.faults == NULL ? "" : diagnostics.faults[0].message);
    ck_assert(plan_make(&store, specification, false, NULL, plan));
    for (size_t i = 0; i < count; i++) {
        struct designation_error error;
        ck_assert(designation_parse(span_of(sizes[i]), &candidates[i].size, &error));
    }
    list = arena_allocate(&store, sizeof *list);
    shortlist_make(
        plan, &(struct shortlist_request){.candidates = candidates, .count = count, .best = 100},
        list);
}

#define SEARCH(top_speed, speedometer, rest, ...)                                                  \
    search(top_speed, speedometer, rest, (const char *const[]){__VA_ARGS__},                       \
           sizeof((const char *const[]){__VA_ARGS__}) / sizeof(char *))

static const char *designation(const struct shortlisted *item)
{
    char text[DESIGNATION_CANONICAL_SIZE];
    designation_canonical(&item->candidate->size, text);
    return arena_copy(&store, span_of(text));
}

static void expect(size_t index, const char *size, enum outcome outcome)
{
    ck_assert_uint_lt(index, list->count);
    ck_assert_str_eq(designation(&list->items[index]), size);
    ck_assert_str_eq(outcome_name(list->items[index].found.outcome), outcome_name(outcome));
}

/* The same tyre again, on the wheel that is on the vehicle, is go; on one with another inset or
 * another rating it has to be tried on, and its rating read where the file does not give it. */
START_TEST(rim_like_the_fitted_wheel_is_that_wheel)
{
    static const struct {
        const char *rims;
        enum outcome outcome;
        size_t measured;
    } cases[] = {
        {"{diameter: 16, width: 6.5 in, inset: 45 mm}", OUTCOME_GO, 0},
        {"{diameter: 16, width: 165.1 mm, inset: 4.5 cm, max_load: 650 kg}", OUTCOME_GO, 0},
        {"{diameter: 16, width: 6.5 in, inset: 45 mm, max_load: 660 kg, max_pressure: 450 kPa}",
         OUTCOME_WORK, 1},
        {"{diameter: 16, width: 6.5 in, inset: 44 mm, max_load: 650 kg, max_pressure: 450 kPa}",
         OUTCOME_WORK, 1},
        {"{diameter: 16, width: 6 in, inset: 45 mm, max_load: 650 kg, max_pressure: 450 kPa}",
         OUTCOME_WORK, 1},
        {"{diameter: 16, width: 6.5 in, inset: 44 mm}", OUTCOME_OPEN, 3},
    };
    for (size_t i = 0; i < LENGTH_OF(cases); i++) {
        SEARCH("190", "fitted_error: 3 %",
               arena_format(&store, "search: {rims: [%s]}", cases[i].rims), "205/55R16 91V");
        expect(0, "205/55R16 91V", cases[i].outcome);
        ck_assert_uint_eq(list->items[0].found.work[TASK_TO_MEASURE], cases[i].measured);
    }
}
END_TEST

/* 632 and 652 mm: 3.2 % more, which reads under where the fitted tyre reads true. A number that can
 * be entered is work; where none can, the size is dropped. */
START_TEST(size_that_needs_only_a_setting_is_kept)
{
    SEARCH("190", "fitted_error: 0.5 %, setting: {kind: pulses_per_km, now: 4000, step: 1}",
           as_fitted, "205/60R16 92V");
    expect(0, "205/60R16 92V", OUTCOME_WORK);
    ck_assert_uint_eq(list->items[0].found.work[TASK_TO_SET], 1);
    ck_assert_uint_eq(list->items[0].found.counts[VERDICT_TASK], 1);
    SEARCH(
        "190", "fitted_error: 0.5 %, setting: {kind: pulses_per_km, now: 4000, step: 1}",
        "allowed: {calibrate: no}\nsearch: {rims: [{diameter: 16, width: 6.5 in, inset: 45 mm}]}",
        "205/60R16 92V");
    ck_assert_uint_eq(list->count, 0);
    ck_assert_uint_eq(list->miss_count, 1);
    ck_assert_str_eq(list->misses[0].closest_limit->name, "speedometer_error");
}
END_TEST

/* Go; open, since nothing tells of its load; and both once more with an axle that nothing asks for,
 * though one of those is but work. */
START_TEST(axle_that_no_limit_asks_for_stands_last)
{
    SEARCH("190", "fitted_error: 3 %",
           "drivetrain: {gears: [3, 1], axle: 4.0, axle_choices: [4.0, 4.2]}\n"
           "search: {rims: [{diameter: 16, width: 6.5 in, inset: 45 mm}]}",
           "205/55R16", "205/55R16 91V");
    ck_assert_uint_eq(list->count, 4);
    expect(0, "205/55R16 91V", OUTCOME_GO);
    expect(1, "205/55R16", OUTCOME_OPEN);
    expect(2, "205/55R16 91V", OUTCOME_WORK);
    expect(3, "205/55R16", OUTCOME_OPEN);
    for (size_t i = 0; i < list->count; i++) {
        ck_assert(list->items[i].unasked == (i >= 2));
        ck_assert(list->items[i].axle_ratio == (i >= 2 ? 4.2 : 4.0));
    }
    ck_assert_uint_eq(list->items[2].found.work[TASK_TO_ORDER], 1);
}
END_TEST

/* A sensor on the shaft gives 2 pulses a turn: 2 x 4.0 / 1.93 m = 4150 a km for the fitted tyre,
 * set to 4130 that cannot be changed. On the taller one it reads some 2.6 % under; with 4.2 2.3 %
 * over, which is lawful: here the law asks for the axle. */
START_TEST(axle_that_a_limit_asks_for_ranks_by_its_work)
{
    SEARCH("190",
           "sensor: {on: shaft, pulses_per_turn: 2}, setting: {kind: pulses_per_km, now: 4130}",
           "drivetrain: {gears: [3, 1], axle: 4.0, axle_choices: [4.2]}\n"
           "allowed: {calibrate: no}\n"
           "search: {rims: [{diameter: 16, width: 6.5 in, inset: 45 mm}]}",
           "205/60R16 92V", "205/55R16 91V");
    ck_assert_uint_eq(list->count, 3);
    expect(0, "205/55R16 91V", OUTCOME_GO);
    expect(1, "205/60R16 92V", OUTCOME_WORK);
    expect(2, "205/55R16 91V", OUTCOME_WORK);
    ck_assert(list->items[1].other_axle && !list->items[1].unasked);
    ck_assert(list->items[2].other_axle && list->items[2].unasked);
}
END_TEST

/* Twelve tyres below a top speed of 200 km/h, by the speeds of UN R30: ten are shown, and by how
 * much. */
START_TEST(ten_nearest_misses_are_shown_with_what_they_lack)
{
    SEARCH("200", "fitted_error: 3 %", as_fitted, "205/55R16 91F", "205/55R16 91T", "205/55R16 91G",
           "205/55R16 91J", "205/55R16 91K", "205/55R16 91L", "205/55R16 91M", "205/55R16 91N",
           "205/55R16 91P", "205/55R16 91Q", "205/55R16 91R", "205/55R16 91S");
    static const struct {
        char symbol;
        double kmh;
    } expected[] = {{'T', 190}, {'S', 180}, {'R', 170}, {'Q', 160}, {'P', 150},
                    {'N', 140}, {'M', 130}, {'L', 120}, {'K', 110}, {'J', 100}};
    ck_assert_uint_eq(list->count, 0);
    ck_assert_uint_eq(list->miss_count, LENGTH_OF(expected));
    for (size_t i = 0; i < LENGTH_OF(expected); i++) {
        const struct shortlisted *miss = &list->misses[i];
        const char *size = designation(miss);
        ck_assert_int_eq(size[strlen(size) - 1], expected[i].symbol);
        ck_assert_str_eq(miss->closest_limit->name, "speed_symbol_speed");
        assert_close(unit_from_si(UNIT_KMH, miss->closest_left), expected[i].kmh - 200, 1e-6,
                     "what the symbol lacks");
        ck_assert(miss->closest_margin < 0);
    }
}
END_TEST

/* Whatever the clock says here: a second after it began, then five times a second. */
START_TEST(progress_is_told_after_a_second)
{
    struct progress progress = {.began_s = 100, .told_s = UNKNOWN};
    char text[PROGRESS_SIZE];
    ck_assert(!progress_is_due(&progress, 100.9));
    ck_assert(progress_is_due(&progress, 101.1));
    ck_assert(!progress_is_due(&progress, UNKNOWN));
    progress.told_s = 101.1;
    ck_assert(!progress_is_due(&progress, 101.2));
    ck_assert(progress_is_due(&progress, 101.4));
    progress_text(250000, 1000000, text);
    ck_assert_str_eq(text, "tyresum: 250000 of 1000000 combinations tried (25 %)");
}
END_TEST

/* One line, written over and erased; nothing where no terminal is, nor where quiet was asked for.
 */
START_TEST(progress_leaves_nothing_behind)
{
    FILE *file = tmpfile();
    char written[4 * PROGRESS_SIZE] = "";
    ck_assert_ptr_nonnull(file);
    ck_assert_ptr_null(progress_begin(file, false).to);
    ck_assert_ptr_null(progress_begin(file, true).to);
    struct progress progress = {.to = file, .began_s = -INFINITY, .told_s = UNKNOWN};
    progress_tell(&progress, 9, 20);
    progress.told_s = UNKNOWN;
    progress_tell(&progress, 10, 20);
    progress_end(&progress);
    rewind(file);
    ck_assert_uint_gt(fread(written, 1, sizeof written - 1, file), 0);
    ck_assert_str_eq(written, "\rtyresum: 9 of 20 combinations tried (45 %)"
                              "\rtyresum: 10 of 20 combinations tried (50 %)"
                              "\r                                           \r");
    fclose(file);
}
END_TEST

Suite *shortlist_suite(void)
{
    Suite *suite = suite_create("shortlist");
    TCase *ranks = tcase_create("ranks");
    tcase_add_checked_fixture(ranks, start, stop);
    tcase_add_test(ranks, rim_like_the_fitted_wheel_is_that_wheel);
    tcase_add_test(ranks, size_that_needs_only_a_setting_is_kept);
    tcase_add_test(ranks, axle_that_no_limit_asks_for_stands_last);
    tcase_add_test(ranks, axle_that_a_limit_asks_for_ranks_by_its_work);
    tcase_add_test(ranks, ten_nearest_misses_are_shown_with_what_they_lack);
    suite_add_tcase(suite, ranks);
    TCase *told = tcase_create("progress");
    tcase_add_test(told, progress_is_told_after_a_second);
    tcase_add_test(told, progress_leaves_nothing_behind);
    suite_add_tcase(suite, told);
    return suite;
}
