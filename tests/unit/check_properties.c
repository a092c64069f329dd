/* Properties that hold for every build: units, order, left and right, conservation, and that what
 * is called the worst case is one. */

#include "property_run.h"
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

/* Every figure of one run stands in the other, with the same value, limit and verdict, in the same
 * order within each setup. */
static void assert_same_figures(const struct run *a, const struct run *b, const char *what)
{
    for (size_t setup = 0; setup < a->plan.count; setup++) {
        const char *option = a->plan.setups[setup].name;
        const struct figure *before;
        size_t in_a = 0, in_b = 0;
        while ((before = figure_next(a, option, &in_a)) != NULL)
            assert_same_figure(a, b, before, figure_next(b, option, &in_b), what);
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
    tcase_add_test(same, order_of_items_changes_nothing);
    tcase_add_test(same, order_of_options_changes_nothing);
    tcase_add_test(same, left_and_right_are_alike);
    suite_add_tcase(suite, same);
    return suite;
}
