/* Calibration by least squares against data sets with certified results, and Student's t against
 * printed tables. */
#include "compute/least_squares.h"
#include "compute/student_t.h"
#include "suites.h"
#include "support.h"

/* A data set of NIST, Statistical Reference Datasets (StRD), linear least squares: data and
 * certified values of https://www.itl.nist.gov/div898/strd/lls/. */
struct certified {
    const char *name;
    const double (*rows)[2]; /* y, x: shown, true */
    size_t count;
    bool with_offset;
    double offset, offset_error, scale, scale_error, standard_error;
};

/* Norris: calibration of ozone monitors; y = b0 + b1 x, lower difficulty. */
static const double norris[][2] = {
    {0.1, 0.2},     {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1},    {228.1, 226.5},
    {668.5, 666.3}, {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4},
    {0.1, 0.6},     {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6},
    {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
    {0.6, 0.3},     {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0},
    {10.2, 11.1},   {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5},
};

/* NoInt1 and NoInt2: y = b1 x, average difficulty. */
static const double noint1[][2] = {
    {130, 60}, {131, 61}, {132, 62}, {133, 63}, {134, 64}, {135, 65},
    {136, 66}, {137, 67}, {138, 68}, {139, 69}, {140, 70},
};
static const double noint2[][2] = {{3, 4}, {4, 5}, {4, 6}};

static const struct certified sets[] = {
    {"NIST StRD Norris", norris, LENGTH_OF(norris), true, -0.262323073774029, 0.232818234301152,
     1.00211681802045, 0.429796848199937e-3, 0.884796396144373},
    {"NIST StRD NoInt1", noint1, LENGTH_OF(noint1), false, 0, 0, 2.07438016528926,
     0.165289256198347e-1, 3.56753034006338},
    {"NIST StRD NoInt2", noint2, LENGTH_OF(noint2), false, 0, 0, 0.727272727272727,
     0.420827318078432e-1, 0.369274472937998},
};

static struct value_pair points[64];

static struct pair_list list_of(const double (*rows)[2], size_t count)
{
    for (size_t i = 0; i < count; i++)
        points[i] = (struct value_pair){.first = rows[i][0], .second = rows[i][1]};
    return (struct pair_list){points, count};
}

START_TEST(fit_is_the_certified_one)
{
    const struct certified *set = &sets[_i];
    struct pair_list list = list_of(set->rows, set->count);
    struct calibration fit;
    if (set->with_offset)
        calibrate_scale_and_offset(&list, &fit);
    else
        calibrate_scale(&list, &fit);
    ck_assert_uint_eq(fit.degrees, set->count - (set->with_offset ? 2 : 1));
    assert_relative(fit.scale.value, set->scale, 1e-13, set->name);
    assert_relative(fit.scale.standard_error, set->scale_error, 1e-12, set->name);
    assert_relative(fit.standard_error, set->standard_error, 1e-12, set->name);
    assert_relative(fit.offset.value, set->offset, 1e-12, set->name);
    if (set->with_offset)
        assert_relative(fit.offset.standard_error, set->offset_error, 1e-12, set->name);
}
END_TEST

/* Percentage points of Student's t: Abramowitz and Stegun, Handbook of Mathematical Functions
 * (1964), table 26.10; A = 0.95 and A = 0.995 two-sided, to the three decimals printed. */
static const struct {
    size_t degrees;
    double t_95, t_995;
} printed[] = {
    {1, 12.706, 127.321}, {2, 4.303, 14.089}, {3, 3.182, 7.453},   {4, 2.776, 5.598},
    {5, 2.571, 4.773},    {6, 2.447, 4.317},  {10, 2.228, 3.581},  {20, 2.086, 3.153},
    {30, 2.042, 3.030},   {60, 2.000, 2.915}, {120, 1.980, 2.860},
};

START_TEST(student_t_is_the_printed_one)
{
    assert_close(student_t_two_sided(0.05, printed[_i].degrees), printed[_i].t_95, 0.0006,
                 "Abramowitz and Stegun, table 26.10");
    assert_close(student_t_two_sided(0.005, printed[_i].degrees), printed[_i].t_995, 0.0006,
                 "Abramowitz and Stegun, table 26.10");
}
END_TEST

/* Closed forms: one degree is the Cauchy distribution, two have an algebraic one. */
START_TEST(student_t_has_its_closed_forms)
{
    uint64_t state = random_start("student_t_has_its_closed_forms");
    for (int run = 0, runs = rounds(1000); run < runs; run++) {
        double t = random_between(&state, 0, 50);
        assert_close(student_t_within(t, 1), 2 * atan(t) / 3.14159265358979323846, 1e-12, "Cauchy");
        assert_close(student_t_within(t, 2), t / sqrt(2 + t * t), 1e-12, "two degrees");
        double chance = random_between(&state, 1e-4, 0.5);
        size_t degrees = (size_t)random_whole(&state, 1, 200);
        double back = student_t_within(student_t_two_sided(chance, degrees), degrees);
        assert_close(1 - back, chance, 1e-10, "inverse");
    }
    ck_assert(!known(student_t_two_sided(0.05, 0)));
}
END_TEST

static struct pair_list readings_on(double scale, double offset, size_t count, uint64_t *state,
                                    double noise)
{
    for (size_t i = 0; i < count; i++) {
        double v = 8 + 3 * (double)i;
        double off = noise > 0 ? random_between(state, -noise, noise) : 0;
        points[i] = (struct value_pair){.first = scale * v + offset + off, .second = v};
    }
    return (struct pair_list){points, count};
}

START_TEST(exact_readings_give_their_line)
{
    uint64_t state = random_start("exact_readings_give_their_line");
    for (int run = 0, runs = rounds(2000); run < runs; run++) {
        double scale = random_between(&state, 0.85, 1.2),
               offset = random_between(&state, -1.5, 1.5);
        struct pair_list list =
            readings_on(scale, offset, (size_t)random_whole(&state, 3, 12), &state, 0);
        struct calibration fit;
        ck_assert(spread_allows_offset(&list));
        calibrate_scale_and_offset(&list, &fit);
        assert_relative(fit.scale.value, scale, 1e-10, "scale");
        assert_close(fit.offset.value, offset, 1e-9, "offset");
        assert_close(fit.standard_error, 0, 1e-9, "nothing is left over");
    }
}
END_TEST

static double sum_of_squares(const struct pair_list *list, double scale, double offset)
{
    double sum = 0;
    for (size_t i = 0; i < list->count; i++) {
        double left = list->items[i].first - scale * list->items[i].second - offset;
        sum += left * left;
    }
    return sum;
}

/* Least squares: every neighbouring line leaves more over. */
START_TEST(fit_leaves_the_least_squares)
{
    uint64_t state = random_start("fit_leaves_the_least_squares");
    for (int run = 0, runs = rounds(1000); run < runs; run++) {
        struct pair_list list = readings_on(random_between(&state, 0.85, 1.2), 0.5,
                                            (size_t)random_whole(&state, 3, 12), &state, 0.5);
        struct calibration fit;
        calibrate_scale_and_offset(&list, &fit);
        double scale = fit.scale.value, offset = fit.offset.value;
        double least = sum_of_squares(&list, scale, offset);
        ck_assert(sum_of_squares(&list, scale + 1e-4, offset) > least);
        ck_assert(sum_of_squares(&list, scale - 1e-4, offset) > least);
        ck_assert(sum_of_squares(&list, scale, offset + 1e-3) > least);
        ck_assert(sum_of_squares(&list, scale, offset - 1e-3) > least);
    }
}
END_TEST

/* 95 of 100 intervals hold the line that the readings were drawn from: with normal errors (sum of
 * twelve uniform ones), 2000 draws, four standard deviations of that count on either side. */
START_TEST(interval_holds_the_truth_as_often_as_it_says)
{
    enum { DRAWS = 2000, READINGS = 5 };
    uint64_t state = random_start("interval_holds_the_truth_as_often_as_it_says");
    int held = 0, held_at = 0;
    for (int run = 0; run < DRAWS; run++) {
        struct pair_list list = readings_on(1.03, 0.4, READINGS, &state, 0);
        for (int i = 0; i < READINGS; i++)
            for (int j = 0; j < 12; j++)
                points[i].first += 0.3 * random_between(&state, -0.5, 0.5);
        struct calibration fit;
        calibrate_scale_and_offset(&list, &fit);
        held += fabs(fit.scale.value - 1.03) <= fit.scale.half_interval_95;
        held_at += fabs(calibrated_shown(&fit, 30) - (1.03 * 30 + 0.4)) <=
                   calibrated_half_interval_95(&fit, 30);
    }
    double sigma = sqrt(0.95 * 0.05 * DRAWS);
    assert_close(held, 0.95 * DRAWS, 4 * sigma, "scale");
    assert_close(held_at, 0.95 * DRAWS, 4 * sigma, "the line at a speed");
}
END_TEST

/* The studentised residual by its definition: the reading beside the line of all others, over the
 * standard error of that difference. */
START_TEST(studentised_residual_is_the_one_left_out)
{
    uint64_t state = random_start("studentised_residual_is_the_one_left_out");
    for (int run = 0; run < 500; run++) {
        size_t count = (size_t)random_whole(&state, 4, 12);
        struct pair_list list = readings_on(1.02, 0.3, count, &state, 0.5);
        struct calibration all, others;
        calibrate_scale_and_offset(&list, &all);
        size_t out = (size_t)random_whole(&state, 0, (int)count - 1);
        struct value_pair left = points[out];
        double by_formula = studentised_residual(&all, &left);
        points[out] = points[count - 1];
        struct pair_list rest = {points, count - 1};
        calibrate_scale_and_offset(&rest, &others);
        double off = left.second - others.mean_true;
        double variance = 1 + 1 / (double)(count - 1) + off * off / others.sum_square;
        double by_hand = residual_of(&others, &left) / (others.standard_error * sqrt(variance));
        /* What is left of the squares without this reading is a difference of two that are t^2
         * times as large, so their rounding counts t^2 times; t itself is far beyond any bound. */
        double rounding = 1e-6 + 1e-13 * by_hand * by_hand;
        assert_close(by_formula, by_hand, rounding * (1 + fabs(by_hand)), "one left out");
    }
}
END_TEST

/* Bonferroni: 0.05 shared by ten readings on both sides is 0.0025 a side, for which tables of
 * Student's t with 10 - 2 - 1 degrees of freedom print 4.029 (the table from memory). */
START_TEST(outlier_bound_shares_the_chance)
{
    uint64_t state = 1;
    struct pair_list list = readings_on(1.02, 0.3, 10, &state, 0.5);
    struct calibration fit;
    calibrate_scale_and_offset(&list, &fit);
    assert_close(outlier_bound(&fit), 4.029, 5e-4, "Student's t, 0.0025, 7");
}
END_TEST

START_TEST(misread_reading_is_named_and_no_other)
{
    const double rows[][2] = {{30.9, 30}, {41.3, 40}, {51.4, 50}, {69.0, 60},
                              {72.2, 70}, {82.3, 80}, {92.8, 90}, {103.1, 100}};
    struct pair_list list = list_of(rows, LENGTH_OF(rows));
    struct calibration fit;
    calibrate_scale_and_offset(&list, &fit);
    double bound = outlier_bound(&fit);
    for (size_t i = 0; i < list.count; i++)
        ck_assert_int_eq(is_outlier(&fit, &points[i], bound, 0.25), i == 3);
}
END_TEST

START_TEST(few_readings_tell_little)
{
    const double one[][2] = {{50, 48.5}}, two[][2] = {{50, 48}, {101, 97}};
    const double same[][2] = {{50, 48}, {50.5, 48}, {49.5, 48}};
    struct calibration fit;
    struct pair_list list = list_of(one, 1);
    ck_assert(!spread_allows_offset(&list));
    calibrate_scale(&list, &fit);
    assert_relative(fit.scale.value, 50 / 48.5, 1e-12, "one reading, by hand");
    ck_assert(!known(fit.standard_error) && !known(fit.scale.half_interval_95));
    ck_assert(!known(outlier_bound(&fit)) && !is_outlier(&fit, &points[0], UNKNOWN, 0));
    list = list_of(two, 2);
    ck_assert(!spread_allows_offset(&list));
    calibrate_scale(&list, &fit);
    assert_relative(fit.scale.value, (48.0 * 50 + 97.0 * 101) / (48.0 * 48 + 97.0 * 97), 1e-12,
                    "through the origin, by hand");
    ck_assert(known(fit.standard_error));
    list = list_of(same, 3);
    ck_assert(!spread_allows_offset(&list)); /* all at one speed */
}
END_TEST

Suite *least_squares_suite(void)
{
    Suite *suite = suite_create("least_squares");
    TCase *certified = tcase_create("certified");
    tcase_add_loop_test(certified, fit_is_the_certified_one, 0, (int)LENGTH_OF(sets));
    tcase_add_loop_test(certified, student_t_is_the_printed_one, 0, (int)LENGTH_OF(printed));
    tcase_add_test(certified, student_t_has_its_closed_forms);
    suite_add_tcase(suite, certified);
    TCase *fit = tcase_create("fit");
    tcase_add_test(fit, exact_readings_give_their_line);
    tcase_add_test(fit, fit_leaves_the_least_squares);
    tcase_add_test(fit, interval_holds_the_truth_as_often_as_it_says);
    tcase_add_test(fit, studentised_residual_is_the_one_left_out);
    tcase_add_test(fit, misread_reading_is_named_and_no_other);
    tcase_add_test(fit, outlier_bound_shares_the_chance);
    tcase_add_test(fit, few_readings_tell_little);
    suite_add_tcase(suite, fit);
    return suite;
}
