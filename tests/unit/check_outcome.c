/* What becomes of an option, of made-up figures: each outcome, what decides it, counts, the closest
 * margin, tasks in workshop order and each once, and which of two options is the better. */
#include "base/known.h"
#include "base/letters.h"
#include "base/units.h"
#include "reading/part_table.h"
#include "reading/remark_text.h"
#include "reading/task_text.h"
#include "report/outcome.h"
#include "suites.h"
#include "support.h"
#include "tables/certainty.h"
#include "tables/tables.h"

static struct arena store;
static struct specification specification;
static struct plan plan;
static struct figures figures;
static struct option_outcome outcome;

static void start(void)
{
    store = ARENA_EMPTY;
    specification_clear(&specification);
    plan = (struct plan){.arena = &store, .specification = &specification};
    plan.setups = arena_allocate_array(&store, 2, sizeof *plan.setups);
    plan.count = 2;
    figures = (struct figures){.arena = &store, .part = PART_LOAD, .setup = 1};
}

static void stop(void)
{
    arena_free(&store);
}

static struct figure figure_with(enum quantity_id quantity, enum verdict verdict)
{
    struct figure figure = figure_of(quantity, UNKNOWN);
    figure.verdict = verdict;
    return figure;
}

static void add(enum quantity_id quantity, enum verdict verdict)
{
    figures_add(&figures, figure_with(quantity, verdict));
}

static void add_margin(enum quantity_id quantity, enum verdict verdict, double value, double limit)
{
    struct figure figure = figure_with(quantity, verdict);
    figure.value = value;
    figure.limit = limit;
    figure.limit_side = LIMIT_AT_LEAST;
    figures_add(&figures, figure);
}

static void add_cure(enum quantity_id quantity, int axle, enum task_id task, double now,
                     double then)
{
    struct figure figure = figure_with(quantity, VERDICT_TASK);
    figure.axle = axle;
    figure.cure = (struct cure){.task = task, .now = now, .then = then};
    figures_add(&figures, figure);
}

static void make(void)
{
    option_outcome_make(&plan, &plan_group_figures(&plan, &figures)[1], &outcome);
}

static void expect(enum outcome expected, const char *why)
{
    make();
    ck_assert_str_eq(outcome_name(outcome.outcome), outcome_name(expected));
    if (why == NULL)
        ck_assert_ptr_null(outcome.why);
    else
        ck_assert_str_eq(quantity_rows[outcome.why->quantity].name, why);
}

START_TEST(outcome_is_that_of_the_worst_finding)
{
    expect(OUTCOME_GO, NULL);
    add(QUANTITY_ARCH_INNER, VERDICT_OK);
    add(QUANTITY_RIM_WIDTH, VERDICT_CAUTION);
    expect(OUTCOME_GO, NULL);
    add_cure(QUANTITY_ARCH_OUTER, AXLE_FRONT, TASK_TRIM_ARCH, UNKNOWN, 0.008);
    expect(OUTCOME_WORK, "arch_outer");
    add(QUANTITY_SPEED_SYMBOL, VERDICT_UNKNOWN);
    expect(OUTCOME_OPEN, "speed_symbol_speed");
    add(QUANTITY_ARCH_LOCK, VERDICT_FAIL);
    expect(OUTCOME_NO_GO, "arch_at_lock");
    ck_assert_uint_eq(outcome.task_count, 0);
    ck_assert_uint_eq(outcome.counts[VERDICT_TASK], 2);
    ck_assert_uint_eq(outcome.counts[VERDICT_FAIL], 1);
    ck_assert_uint_eq(outcome.counts[VERDICT_UNKNOWN], 1);
    ck_assert_uint_eq(outcome.counts[VERDICT_CAUTION], 1);
}
END_TEST

/* Approach angles, what low pressure allows, and all of the drive: unknown, they open nothing. What
 * the driver is told is listed and makes no work. */
START_TEST(what_no_outcome_hangs_on_leaves_it_go)
{
    add(QUANTITY_APPROACH, VERDICT_UNKNOWN);
    figures.part = PART_GEARING;
    add(QUANTITY_PART_MISSING, VERDICT_UNKNOWN);
    figures.part = PART_LOAD;
    add_cure(QUANTITY_WARNING_AS_SET, AXLE_NONE, TASK_TELL, UNKNOWN, UNKNOWN);
    expect(OUTCOME_GO, NULL);
    ck_assert_uint_eq(outcome.counts[VERDICT_UNKNOWN], 2);
    ck_assert_uint_eq(outcome.task_count, 1);
    ck_assert_str_eq(task_rows[outcome.tasks[0].cure.task].name, "tell");
}
END_TEST

/* It stands once, under the fitted setup, and counts with every option. */
START_TEST(section_missing_from_the_file_opens_every_option)
{
    figures.setup = 0;
    figures.part = PART_CLEARANCE;
    add(QUANTITY_PART_MISSING, VERDICT_UNKNOWN);
    expect(OUTCOME_OPEN, "part_missing");
}
END_TEST

START_TEST(what_decides_is_the_option_s_own_before_the_build_s)
{
    add_margin(QUANTITY_AXLE_RATING_LEFT, VERDICT_FAIL, -30, 0);
    expect(OUTCOME_NO_GO, "axle_rating_left");
    add(QUANTITY_SPEED_SYMBOL, VERDICT_UNKNOWN);
    expect(OUTCOME_NO_GO, "axle_rating_left");
    add(QUANTITY_ARCH_LOCK, VERDICT_FAIL);
    add(QUANTITY_ARCH_INNER, VERDICT_FAIL);
    expect(OUTCOME_NO_GO, "arch_at_lock");
}
END_TEST

/* The same matter in three states: the worst stands for all, and is counted once. */
START_TEST(matter_counts_once)
{
    for (int state = 0; state < 3; state++) {
        struct figure figure = figure_with(QUANTITY_ARCH_ABOVE, VERDICT_FAIL);
        figure.state = state;
        figure.axle = AXLE_FRONT;
        figure.value = state == 1 ? -0.02 : -0.01;
        figure.limit = 0;
        figures_add(&figures, figure);
    }
    add(QUANTITY_ARCH_ABOVE, VERDICT_OK); /* of another axle: a matter of its own */
    expect(OUTCOME_NO_GO, "arch_above");
    ck_assert_uint_eq(outcome.counts[VERDICT_FAIL], 1);
    ck_assert_uint_eq(outcome.counts[VERDICT_OK], 1);
    ck_assert_int_eq(outcome.why->state, 1);
    ck_assert_uint_eq(outcome.finding_count, 2);
}
END_TEST

/* 14 mm of 20 that are comfortable is nearer than 150 kg of 100; what is broken, though a caution
 * alone, and what is the build's are no margins of the option. */
START_TEST(closest_margin_is_by_the_scale_of_its_quantity)
{
    make();
    ck_assert_ptr_null(outcome.closest);
    ck_assert(isinf(outcome.closest_margin));
    add_margin(QUANTITY_ARCH_LOCK, VERDICT_OK, 0.014, 0);
    add_margin(QUANTITY_WHEEL_LOAD, VERDICT_OK, 150, 0);
    add_margin(QUANTITY_ARCH_INNER, VERDICT_CAUTION, -0.001, 0);
    add_margin(QUANTITY_GROSS_LEFT, VERDICT_OK, 1, 0);
    add_margin(QUANTITY_ARCH_OUTER, VERDICT_TASK, 0.001, 0);
    make();
    ck_assert_int_eq(outcome.closest->quantity, QUANTITY_ARCH_LOCK);
    assert_close(outcome.closest_margin, 0.7, 1e-12, "14 mm in 20");
}
END_TEST

START_TEST(tasks_stand_in_workshop_order_and_each_once)
{
    add_cure(QUANTITY_SPEEDOMETER_ERROR, AXLE_NONE, TASK_SPEEDOMETER_SETTING, 2548, 2550);
    add_cure(QUANTITY_TYRE_CAPACITY, AXLE_REAR, TASK_TYRE_PRESSURE, 2.3e5, 3.6e5);
    add_cure(QUANTITY_PRESSURE_RECOMMENDED, AXLE_REAR, TASK_TYRE_PRESSURE, 2.3e5, 3.65e5);
    add_cure(QUANTITY_TYRE_CAPACITY, AXLE_FRONT, TASK_TYRE_PRESSURE, 2.1e5, 3.3e5);
    add_cure(QUANTITY_ARCH_OUTER, AXLE_FRONT, TASK_TRIM_ARCH, UNKNOWN, 0.004);
    add_cure(QUANTITY_ARCH_LOCK, AXLE_FRONT, TASK_TRIM_ARCH, UNKNOWN, 0.008);
    add_cure(QUANTITY_SPARE_PRESSURE, AXLE_REAR, TASK_SPARE, UNKNOWN, UNKNOWN);
    add_cure(QUANTITY_SPARE_CAPACITY, AXLE_NONE, TASK_SPARE, UNKNOWN, UNKNOWN);
    add(QUANTITY_SPEED_SYMBOL, VERDICT_UNKNOWN);
    make();
    const struct {
        enum task_id task;
        int axle;
        double then;
    } expected[] = {
        {TASK_MEASURE, AXLE_NONE, UNKNOWN},        {TASK_SPARE, AXLE_NONE, UNKNOWN},
        {TASK_TRIM_ARCH, AXLE_FRONT, 0.008},       {TASK_TYRE_PRESSURE, AXLE_FRONT, 3.3e5},
        {TASK_TYRE_PRESSURE, AXLE_REAR, 3.65e5},   {TASK_SPEEDOMETER_SETTING, AXLE_NONE, 2550},
        {TASK_PRESSURE_LABEL, AXLE_NONE, UNKNOWN},
    };
    ck_assert_uint_eq(outcome.task_count, LENGTH_OF(expected));
    ck_assert_uint_eq(outcome.counts[VERDICT_TASK], LENGTH_OF(expected));
    for (size_t i = 0; i < LENGTH_OF(expected); i++) {
        const struct task *task = &outcome.tasks[i];
        ck_assert_str_eq(task_rows[task->cure.task].name, task_rows[expected[i].task].name);
        ck_assert_int_eq(task->axle, expected[i].axle);
        ck_assert(same_value(task->cure.then, expected[i].then));
    }
    ck_assert_uint_eq(outcome.work[TASK_TO_SET], 3);
    ck_assert_uint_eq(outcome.work[TASK_TO_ORDER], 1);
}
END_TEST

/* Each item in each state is left out for itself; what finds out the unknown may be named. */
START_TEST(items_and_what_is_asked_for_are_told_apart)
{
    static const char *const items[] = {"generator", "generator", "tent"};
    for (int i = 0; i < 3; i++) {
        struct figure figure = figure_with(QUANTITY_LEFT_OUT, VERDICT_TASK);
        figure.place.name = items[i];
        figure.cure = (struct cure){.task = TASK_UNLOAD, .now = 60, .then = 0};
        figures_add(&figures, figure);
    }
    struct figure wheel = figure_with(QUANTITY_WHEEL_LOAD, VERDICT_UNKNOWN);
    wheel.cure.task = TASK_READ_WHEEL;
    figures_add(&figures, wheel);
    make();
    ck_assert_uint_eq(outcome.work[TASK_TO_UNLOAD], 2);
    ck_assert_uint_eq(outcome.work[TASK_TO_MEASURE], 1);
    ck_assert_str_eq(task_rows[outcome.tasks[0].cure.task].name, "read_wheel");
}
END_TEST

static struct option_outcome with(enum outcome as, size_t fails, size_t altered, size_t ordered,
                                  size_t measured, double margin)
{
    struct option_outcome of = {.outcome = as, .closest_margin = margin};
    of.counts[VERDICT_FAIL] = fails;
    of.work[TASK_TO_ALTER] = altered;
    of.work[TASK_TO_ORDER] = ordered;
    of.work[TASK_TO_MEASURE] = measured;
    return of;
}

/* Outcome, then the least altering, ordering, measuring, then the margin. */
/* What was computed another way may differ in its last bits: 7 in is 177.8 mm. */
START_TEST(last_bits_make_no_other_figure)
{
    const double inches = 7 * 0.0254, millimetres = 0.1778, none = UNKNOWN;
    ck_assert(same_value(nextafter(inches, 1), millimetres) && same_value(0, -0.0));
    ck_assert(same_value(none, none) && !same_value(none, inches) && !same_value(inches, none));
    ck_assert(!same_value(inches, inches + 1e-6) && !same_value(-inches, inches));
    ck_assert(same_value(INFINITY, INFINITY) && !same_value(inches, INFINITY));
    struct figure a = figure_of(QUANTITY_SECTION_WIDTH, inches), b = a;
    b.value = nextafter(inches, 1);
    ck_assert(figure_same(&a, &b, SAME_ALL));
    b.value = inches + 1e-6;
    ck_assert(!figure_same(&a, &b, SAME_ALL));
}
END_TEST

/* Of findings that are as bad but for their last bits, the first stands for all. */
START_TEST(last_bits_choose_no_finding)
{
    for (int state = 0; state < 3; state++) {
        struct figure figure = figure_with(QUANTITY_ARCH_ABOVE, VERDICT_FAIL);
        figure.state = state;
        figure.value = state == 1 ? nextafter(-0.02, -1) : -0.02;
        figure.limit = 0.01;
        figures_add(&figures, figure);
    }
    expect(OUTCOME_NO_GO, "arch_above");
    ck_assert_int_eq(outcome.why->state, 0);
    ck_assert_uint_eq(outcome.finding_count, 1);
}
END_TEST

START_TEST(better_is_outcome_then_least_work_then_margin)
{
    const struct option_outcome best_first[] = {
        with(OUTCOME_GO, 0, 0, 0, 0, 0.1),   with(OUTCOME_WORK, 0, 0, 0, 3, 0.1),
        with(OUTCOME_WORK, 0, 0, 1, 0, 0.9), with(OUTCOME_WORK, 0, 0, 1, 0, 0.2),
        with(OUTCOME_WORK, 0, 1, 0, 0, 5),   with(OUTCOME_OPEN, 0, 0, 0, 1, 5),
        with(OUTCOME_OPEN, 0, 0, 0, 2, 5),   with(OUTCOME_NO_GO, 1, 0, 0, 0, 0.1),
        with(OUTCOME_NO_GO, 2, 0, 0, 0, 5),
    };
    for (size_t i = 0; i < LENGTH_OF(best_first); i++)
        for (size_t j = 0; j < LENGTH_OF(best_first); j++) {
            int order = option_outcome_compare(&best_first[i], &best_first[j]);
            ck_assert_msg(i == j  ? order == 0
                          : i < j ? order < 0
                                  : order > 0,
                          "%zu beside %zu: %d", i, j, order);
        }
}
END_TEST

/* --- in words */

static struct task pressure(double now, double then, double ceiling)
{
    struct figure *reason = arena_allocate(&store, sizeof *reason);
    *reason = figure_of(QUANTITY_PRESSURE_RECOMMENDED, then);
    reason->limit = ceiling;
    reason->limit_side = LIMIT_AT_MOST;
    return (struct task){
        .cure = {.task = TASK_TYRE_PRESSURE, .now = now, .then = then},
        .axle = AXLE_FRONT,
        .reason = reason,
    };
}

/* 330 kPa is 47.86 psi and 210 is 30.46: what gets set is never rounded down. 350 kPa, the
 * ceiling, are the 50 psi of their nominal pair, not 51. */
START_TEST(pressures_stand_in_both_units_and_are_never_rounded_down)
{
    struct layout layout = {.arena = &store, .plan = &plan, .decimal_mark = '.'};
    struct task task = pressure(210e3, 330e3, 550e3);
    ck_assert_str_eq(task_text(&layout, &task),
                     "cold pressure, front: 210 -> 330 kPa (30 -> 48 psi)");
    layout.units = UNITS_US;
    ck_assert_str_eq(task_text(&layout, &task),
                     "cold pressure, front: 30 -> 48 psi (210 -> 330 kPa)");
    task = pressure(UNKNOWN, 350e3, 350e3);
    ck_assert_str_eq(task_text(&layout, &task), "cold pressure, front: 50 psi (350 kPa)");
    struct task_number then = task_then(&plan, &task, false);
    ck_assert(then.value == 350 && then.decimals == 0);
}
END_TEST

START_TEST(setting_has_its_kind_for_a_unit_and_a_spare_its_texts)
{
    struct layout layout = {.arena = &store, .plan = &plan, .decimal_mark = '.'};
    struct figure reason = figure_of(QUANTITY_SPEEDOMETER_ERROR, UNKNOWN);
    struct task task = {.cure = {.task = TASK_SPEEDOMETER_SETTING, .now = 2548, .then = 2550.5},
                        .axle = AXLE_NONE,
                        .reason = &reason};
    specification.speedometer.setting.kind = 0; /* the first of the table of kinds */
    ck_assert_str_eq(task_text(&layout, &task),
                     arena_format(&store, "speedometer: 2548 -> 2550.5 pulses per km"));
    ck_assert_str_eq(task_unit(&plan, &task, true), "pulses_per_km");
    task.cure = (struct cure){.task = TASK_SPARE,
                              .now = UNKNOWN,
                              .then = UNKNOWN,
                              .now_text = "205/55R16 91V",
                              .then_text = "205/60R16 92V"};
    ck_assert_str_eq(task_text(&layout, &task), "spare of the set: 205/55R16 91V -> 205/60R16 92V");
    ck_assert_str_eq(task_unit(&plan, &task, false), "");
    ck_assert(!known(task_now(&plan, &task, false).value));
}
END_TEST

/* In a table as many decimals as the instrument's step, and what the number now has beside it. */
START_TEST(setting_has_the_decimals_of_its_step)
{
    static const struct {
        double step, now, then;
        int decimals_now, decimals_then;
    } cases[] = {
        {1, 2548, 2493, 0, 0},   {0.5, 19, 20.5, 1, 1},   {0.25, 10.5, 11, 2, 2},
        {0.1, 1.3, 1.4, 1, 1},   {1, 2548.5, 2493, 1, 0}, {5, 1895, 1890, 0, 0},
        {UNKNOWN, 19, 20, 0, 0}, {0.01, 2.07, 2, 2, 2},
    };
    struct figure reason = figure_of(QUANTITY_SPEEDOMETER_ERROR, UNKNOWN);
    for (size_t i = 0; i < LENGTH_OF(cases); i++) {
        struct task task = {
            .cure = {.task = TASK_SPEEDOMETER_SETTING, .now = cases[i].now, .then = cases[i].then},
            .axle = AXLE_NONE,
            .reason = &reason};
        specification.speedometer.setting.step = cases[i].step;
        ck_assert_int_eq(task_now(&plan, &task, false).decimals, cases[i].decimals_now);
        ck_assert_int_eq(task_then(&plan, &task, true).decimals, cases[i].decimals_then);
    }
}
END_TEST

/* A to Z, then AA: the letter is that of the whole file, also where one option is shown. */
/* What is said to rest on memory says so, and nothing else does; a row of a table as it has it. */
START_TEST(memory_is_said_where_it_is)
{
    for (int id = REMARK_NONE; id < REMARK_COUNT; id++) {
        struct remark said = remark((enum remark_id)id);
        ck_assert_msg(rests_on_memory(&said) ==
                          (strstr(remark_row_text((enum remark_id)id), FROM_MEMORY) != NULL),
                      "row %d of the remarks: %s", id, remark_row_text((enum remark_id)id));
    }
    struct remark quoted = remark_quoted(&store, "a rule, 1.2", FROM_MEMORY);
    ck_assert_str_eq(remark_text(&store, &quoted, false), "a rule, 1.2, " FROM_MEMORY);
    struct remark within = REMARK_WITH(&store, BASIS_CAPACITY, say_text("commercial"),
                                       say_remark(&store, remark(PHRASE_LOAD_INDEX)), say_text(""),
                                       say_text(""), say_remark(&store, quoted));
    ck_assert(rests_on_memory(&quoted));
    ck_assert(rests_on_memory(&within));
    for (size_t i = 0; certainty_word(i) != NULL; i++) {
        quoted = remark_quoted(&store, "a rule, 1.2", certainty_word(i));
        ck_assert_int_eq(rests_on_memory(&quoted), strcmp(certainty_word(i), FROM_MEMORY) == 0);
    }
}
END_TEST

START_TEST(letters_are_those_of_the_file)
{
    const struct layout layout = {.arena = &store, .plan = &plan};
    const struct {
        size_t number;
        const char *letters;
    } cases[] = {{1, "A"}, {26, "Z"}, {27, "AA"}, {28, "AB"}, {52, "AZ"}, {53, "BA"}, {703, "AAA"}};
    for (size_t i = 0; i < LENGTH_OF(cases); i++) {
        plan.setups[1].number = cases[i].number;
        ck_assert_str_eq(option_label(&layout, 1), cases[i].letters);
        ck_assert_uint_eq(number_of_letters(span_of(cases[i].letters), cases[i].number),
                          cases[i].number);
        ck_assert_uint_eq(number_of_letters(span_of(cases[i].letters), cases[i].number - 1), 0);
    }
    static const char *const none[] = {"", "0", "A1", "A ", "-", "\xC3\x84"};
    for (size_t i = 0; i < LENGTH_OF(none); i++)
        ck_assert_uint_eq(number_of_letters(span_of(none[i]), 1000), 0);
    ck_assert_uint_eq(number_of_letters(span_of("ab"), 30), 28);
    ck_assert_uint_eq(number_of_letters(span_of("ZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZZ"), 1000),
                      0);
}
END_TEST

Suite *outcome_suite(void)
{
    Suite *suite = suite_create("outcome");
    TCase *outcomes = tcase_create("outcome"), *words = tcase_create("words");
    tcase_add_checked_fixture(outcomes, start, stop);
    tcase_add_checked_fixture(words, start, stop);
    tcase_add_test(outcomes, outcome_is_that_of_the_worst_finding);
    tcase_add_test(outcomes, what_no_outcome_hangs_on_leaves_it_go);
    tcase_add_test(outcomes, section_missing_from_the_file_opens_every_option);
    tcase_add_test(outcomes, what_decides_is_the_option_s_own_before_the_build_s);
    tcase_add_test(outcomes, matter_counts_once);
    tcase_add_test(outcomes, closest_margin_is_by_the_scale_of_its_quantity);
    tcase_add_test(outcomes, tasks_stand_in_workshop_order_and_each_once);
    tcase_add_test(outcomes, items_and_what_is_asked_for_are_told_apart);
    tcase_add_test(outcomes, last_bits_make_no_other_figure);
    tcase_add_test(outcomes, last_bits_choose_no_finding);
    tcase_add_test(outcomes, better_is_outcome_then_least_work_then_margin);
    tcase_add_test(words, pressures_stand_in_both_units_and_are_never_rounded_down);
    tcase_add_test(words, setting_has_its_kind_for_a_unit_and_a_spare_its_texts);
    tcase_add_test(words, setting_has_the_decimals_of_its_step);
    tcase_add_test(words, letters_are_those_of_the_file);
    tcase_add_test(words, memory_is_said_where_it_is);
    suite_add_tcase(suite, outcomes);
    suite_add_tcase(suite, words);
    return suite;
}
