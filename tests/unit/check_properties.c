/* Properties that hold for every build: units, order, left and right, conservation, and that what
 * is called the worst case is one. */

#include "property_run.h"
#include "report/outcome.h"
#include "suites.h"
#include "support.h"

enum { FEW = 30 };

static void assert_same_figure(const struct run *run, const struct run *other,
                               const struct figure *before, const struct figure *after,
                               const char *what)
{
    REQUIRE(after != NULL && of_the_same(run, before, other, after), "%s: %s: in its place: %s",
            told_of(run, before), what, after == NULL ? "-" : told_of(run, after));
    REQUIRE(close_in_unit(before, after->value, before->value), "%s: %s: value %.17g, before %.17g",
            told_of(run, before), what, after->value, before->value);
    REQUIRE(close_in_unit(before, after->limit, before->limit), "%s: %s: limit %.17g, before %.17g",
            told_of(run, before), what, after->limit, before->limit);
    REQUIRE(after->verdict == before->verdict, "%s: %s: verdict %s, before %s (%.17g)",
            told_of(run, before), what, verdict_name(after->verdict), verdict_name(before->verdict),
            before->value);
}

/* An item each, in the order of the items. */
static bool is_by_item(const struct figure *figure)
{
    return figure->quantity == QUANTITY_PLACE_FROM || figure->quantity == QUANTITY_PLACE_TO;
}

/* Every figure of one run stands in the other, with the same value, limit and verdict, in the same
 * order within each setup. */
static void assert_same_figures(const struct run *a, const struct run *b, const char *what)
{
    for (size_t setup = 0; setup < a->plan.count; setup++) {
        const char *option = a->plan.setups[setup].name;
        const struct figure *before;
        size_t in_a = 0, in_b = 0;
        while ((before = figure_next(a, option, &in_a)) != NULL) {
            const struct figure *after = figure_next(b, option, &in_b);
            if (is_by_item(before))
                after = find_like(b, a, before, in_b);
            assert_same_figure(a, b, before, after, what);
        }
    }
    REQUIRE(a->figures.count == b->figures.count, "seed %llu: %s: %zu figures, before %zu",
            (unsigned long long)a->seed, what, b->figures.count, a->figures.count);
}

static void check_same(const char *property, const struct variation *other)
{
    uint64_t seed = random_start(property);
    for (int i = 0; i < properties_count(FEW); i++, seed++) {
        struct run a, b;
        run_make(&a, seed, &as_drawn);
        run_make(&b, seed, other);
        assert_same_figures(&a, &b, property);
        run_free(&a);
        run_free(&b);
    }
}

START_TEST(other_units_change_nothing)
{
    struct variation other = as_drawn;
    other.other_units = true;
    check_same("other units", &other);
}
END_TEST

/* --- no verdict hangs on the units of the output */

/* Figures of one thing with that verdict: what is tabled by whole units stands at other places. */
static size_t count_judged(const struct figures *figures, const struct figure *like)
{
    size_t count = 0;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        count += figure_same(figure, like, SAME_PART | SAME_QUANTITY | SAME_AXLE) &&
                 figure->setup == like->setup && figure->state == like->state &&
                 figure->verdict == like->verdict && figure->cure.task == like->cure.task;
    }
    return count;
}

static void judged_alike(const struct run *run, const struct figures *figures,
                         const struct figures *other)
{
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (figure->verdict == VERDICT_NONE)
            continue;
        size_t here = count_judged(figures, figure), there = count_judged(other, figure);
        REQUIRE(here == there, "%s: %s %zu times, in the other units %zu times (%.17g of %.17g)",
                told_of(run, figure), verdict_name(figure->verdict), here, there, figure->value,
                figure->limit);
    }
}

/* Verdicts, tasks, and what becomes of each option. */
static void check_in_us(const char *property, const struct variation *how)
{
    uint64_t seed = random_start(property);
    for (int i = 0; i < properties_count(FEW); i++, seed++) {
        struct run run;
        struct option_outcome metric, us;
        run_make(&run, seed, how);
        const struct plan plan = run.plan;
        const struct figures figures = run.figures;
        const struct setup_figures *groups = plan_group_figures(&plan, &figures);
        run_compute(&run, true);
        judged_alike(&run, &figures, &run.figures);
        judged_alike(&run, &run.figures, &figures);
        const struct setup_figures *in_us = plan_group_figures(&run.plan, &run.figures);
        for (size_t setup = 0; setup < plan.count; setup++) {
            option_outcome_make(&plan, &groups[setup], &metric);
            option_outcome_make(&run.plan, &in_us[setup], &us);
            REQUIRE(metric.outcome == us.outcome && metric.task_count == us.task_count,
                    "seed %llu, setup %zu: %s in metric, %s in us", (unsigned long long)seed, setup,
                    outcome_name(metric.outcome), outcome_name(us.outcome));
        }
        run_free(&run);
    }
}

START_TEST(verdicts_hang_on_no_unit)
{
    check_in_us("verdicts in us", &as_drawn);
}
END_TEST

START_TEST(verdicts_of_nominal_pairs_hang_on_no_unit)
{
    struct variation nominal = as_drawn;
    nominal.nominal_pressures = true;
    check_in_us("nominal pairs in us", &nominal);
}
END_TEST

START_TEST(order_of_items_changes_nothing)
{
    struct variation other = as_drawn;
    other.items_reversed = true;
    check_same("items reversed", &other);
}
END_TEST

START_TEST(order_of_options_changes_nothing)
{
    struct variation other = as_drawn;
    other.options_reversed = true;
    check_same("options reversed", &other);
}
END_TEST

START_TEST(left_and_right_are_alike)
{
    struct variation other = as_drawn;
    other.mirrored = true;
    check_same("mirrored", &other);
}
END_TEST

Suite *properties_suite(void)
{
    Suite *suite = suite_create("properties");
    TCase *same = tcase_create("the same vehicle, written otherwise");
    tcase_add_test(same, other_units_change_nothing);
    tcase_add_test(same, verdicts_hang_on_no_unit);
    tcase_add_test(same, verdicts_of_nominal_pairs_hang_on_no_unit);
    tcase_add_test(same, order_of_items_changes_nothing);
    tcase_add_test(same, order_of_options_changes_nothing);
    tcase_add_test(same, left_and_right_are_alike);
    suite_add_tcase(suite, same);
    return suite;
}
