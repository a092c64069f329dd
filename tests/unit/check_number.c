/* Number text. Expected values: the decimal expansion of the double as the C library's printf
 * gives it, all digits of it, rounded digit by digit here; and decimal halves worked by hand. */
#include <check.h>
#include <float.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/known.h"
#include "output/number.h"
#include "output/writer.h"
#include "suites.h"
#include "support.h"

enum { RANDOM_VALUES = 50000 };

/* One more in the last place of a text of digits and a point, which starts with a spare zero. */
static void count_up(char *text)
{
    char *at = text + strlen(text) - 1;
    for (; *at == '9' || *at == '.'; at--)
        if (*at == '9')
            *at = '0';
    ++*at;
}

/* The rule of number.h on the whole decimal expansion, which has at most 106 decimals where the
 * last bit of the double is worth 2^-106 or more: a rest of 0.499999999 or more goes up. */
static void expected_fixed(double value, int decimals, char *text)
{
    char digits[480];
    snprintf(digits, sizeof digits, "0%.120f", fabs(value));
    char *point = strchr(digits, '.'), *rest = point + 1 + decimals;
    int up = strncmp(rest, "499999999", 9) >= 0;
    *(decimals == 0 ? point : rest) = '\0';
    if (up)
        count_up(digits);
    const char *from =
        digits[0] == '0' && digits[1] != '.' && digits[1] != '\0' ? digits + 1 : digits;
    int negative = value < 0 && strpbrk(from, "123456789") != NULL;
    sprintf(text, "%s%s", negative ? "-" : "", from);
}

/* Each ck_assert that holds costs a message to the parent, so here only what fails gets one. */
static void check_fixed(double value, int decimals)
{
    char text[NUMBER_SIZE], expected[500];
    expected_fixed(value, decimals, expected);
    size_t length = number_fixed(value, decimals, '.', text);
    if (strcmp(text, expected) != 0 || length != strlen(text))
        ck_abort_msg("%.17g to %d decimals: \"%s\", expected \"%s\"", value, decimals, text,
                     expected);
    double rounded = round_to_decimals(value, decimals);
    if (rounded != strtod(expected, NULL))
        ck_abort_msg("%.17g to %d decimals: %.17g", value, decimals, rounded);
}

START_TEST(fixed_random)
{
    uint64_t state = random_start("fixed_random");
    for (int i = 0; i < RANDOM_VALUES; i++) {
        double value =
            (random_between(&state, 0, 1) - 0.5) * pow(10, (int)(random_bits(&state) % 16));
        check_fixed(value, (int)(random_bits(&state) % (NUMBER_DECIMALS_MAX + 1)));
    }
}
END_TEST

/* The short way over all of its domain, and beside every half: what it tells is the plain rule's.
 */
START_TEST(short_way_tells_the_same)
{
    static const double beside[] = {-0.5, -0.5 + 1e-9, -0.5 + 2e-6, -0.2, 0,
                                    0.3,  0.5 - 2e-6,  0.5 - 2e-9,  0.5};
    const unsigned limit = 1000000, step = rounds(10) > 1 ? 1 : 13;
    for (unsigned units = 0; units <= limit; units += step)
        for (int decimals = 0; decimals <= 3; decimals++)
            for (size_t i = 0; i < sizeof beside / sizeof beside[0]; i++) {
                char text[NUMBER_SIZE], expected[NUMBER_SIZE];
                double scale = pow(10, decimals), value = (units + beside[i]) / scale;
                char *end = number_of_raised(value * scale * NUMBER_PARTS, decimals, '.', text);
                if (end == NULL && decimals < 3 && value < 9999 && fabs(beside[i]) < 0.4)
                    ck_abort_msg("%.17g to %d decimals is not told", value, decimals);
                if (end == NULL)
                    continue;
                *end = '\0';
                snprintf(expected, sizeof expected, "%.*f", decimals,
                         round_to_decimals(value, decimals) + 0.0); /* no -0 */
                if (strcmp(text, expected) != 0)
                    ck_abort_msg("%.17g to %d decimals: %s", value, decimals, text);
            }
}
END_TEST

/* Every byte at every place of a text of every length: what goes out without quotes is what needs
 * none (RFC 4180, 2.6) and is no control character, and is the text. */
START_TEST(csv_short_text)
{
    char text[CSV_TEXT_ROOM + 1], to[CSV_TEXT_ROOM + 1];
    for (size_t length = 1; length <= CSV_TEXT_ROOM + 1; length++)
        for (size_t place = 0; place < length; place++)
            for (int byte = 0; byte < 256; byte++) {
                memset(text, 'x', sizeof text);
                text[place] = (char)byte;
                bool quotes = byte == '"' || byte < ' ' || byte == ';';
                char *end = csv_text((struct span){text, length}, ';', to);
                if ((end == NULL) != (quotes || length > CSV_TEXT_ROOM))
                    ck_abort_msg("byte %d at %zu of %zu", byte, place, length);
                if (end != NULL && ((size_t)(end - to) != length || memcmp(to, text, length) != 0))
                    ck_abort_msg("byte %d at %zu of %zu is another text", byte, place, length);
            }
}
END_TEST

/* (10 n + 5) / 10^(d+1) must give (n + 1) / 10^d, wherever the nearest double lies. */
START_TEST(fixed_decimal_halves)
{
    uint64_t state = random_start("fixed_decimal_halves");
    for (int i = 0; i < RANDOM_VALUES; i++) {
        int decimals = 1 + (int)(random_bits(&state) % 5);
        unsigned number = (unsigned)(random_bits(&state) % 4000000);
        char literal[64], text[NUMBER_SIZE], expected[64];
        unsigned scale = (unsigned[]){1, 10, 100, 1000, 10000, 100000}[decimals];
        snprintf(literal, sizeof literal, "-%u.%0*u5", number / scale, decimals, number % scale);
        snprintf(expected, sizeof expected, "-%u.%0*u", (number + 1) / scale, decimals,
                 (number + 1) % scale);
        number_fixed(strtod(literal, NULL), decimals, '.', text);
        if (strcmp(text, expected) != 0)
            ck_abort_msg("%s to %d decimals: %s", literal, decimals, text);
    }
}
END_TEST

/* Worked by hand. 2.675 and 1.005 lie below the half as doubles. */
static const struct {
    double value;
    int decimals;
    const char *text;
} by_hand[] = {
    {0, 0, "0"},
    {-0.0, 2, "0.00"},
    {-0.004, 2, "0.00"},
    {-0.005, 2, "-0.01"},
    {-0.4, 0, "0"},
    {0.5, 0, "1"},
    {-0.5, 0, "-1"},
    {1.5, 0, "2"},
    {2.5, 0, "3"},
    {-2.5, 0, "-3"},
    {0.125, 2, "0.13"},
    {2.675, 2, "2.68"},
    {1.005, 2, "1.01"},
    {0.4999999, 0, "0"},
    {0.49999999, 0, "0"},
    {0.499999998, 0, "0"},
    {0.4999999995, 0, "1"},
    {99.5, 0, "100"},
    {999.995, 2, "1000.00"},
    {0.999999999, 3, "1.000"},
    {0.05, 1, "0.1"},
    {0.000000001, 9, "0.000000001"},
    {123456789.123456789, 0, "123456789"},
    {4294967295.5, 0, "4294967296"},
    {4294967296.25, 1, "4294967296.3"},
    {99999999.5, 0, "100000000"},
    {999999999999999.0, 9, "999999999999999.000000000"},
    {1e15, 2, "1000000000000000"},
    {-1234567890123456789.0, 2, "-1234567890123460000"},
    {1e37, 3, "10000000000000000000000000000000000000"},
    {-9.87654321e36, 3, "-9876543210000000000000000000000000000"},
};

START_TEST(fixed_by_hand)
{
    char text[NUMBER_SIZE];
    number_fixed(by_hand[_i].value, by_hand[_i].decimals, '.', text);
    ck_assert_str_eq(text, by_hand[_i].text);
}
END_TEST

START_TEST(fixed_decimal_comma)
{
    char text[NUMBER_SIZE];
    ck_assert_uint_eq(number_fixed(-12.5, 2, ',', text), 6);
    ck_assert_str_eq(text, "-12,50");
}
END_TEST

/* Nothing may run over the end of the text, whatever the value. */
START_TEST(fixed_stays_in_its_room)
{
    static const double values[] = {
        1.7e308,           -1.7e308,          1e38, -1e38, 9.99999999999999e37, DBL_MIN,
        999999999999999.9, -999999999999999.9};
    struct {
        char text[NUMBER_SIZE], after;
    } room = {.after = '#'};
    for (int decimals = 0; decimals <= NUMBER_DECIMALS_MAX; decimals++) {
        size_t length = number_fixed(values[_i], decimals, '.', room.text);
        ck_assert_uint_lt(length, NUMBER_SIZE);
        ck_assert_uint_eq(length, strlen(room.text));
        ck_assert_int_eq(room.after, '#');
        if (fabs(values[_i]) >= 1)
            ck_assert_double_eq_tol(strtod(room.text, NULL) / values[_i], 1, 1e-14);
    }
}
END_TEST

/* 19.5 has one decimal, 2.07 two although no double is 2.07; past the most there are no more. */
START_TEST(decimals_that_a_number_has)
{
    static const struct {
        double value;
        int most, decimals;
    } cases[] = {{2493, 3, 0},  {19.5, 3, 1},    {2.07, 3, 2}, {0.125, 3, 3},    {0.125, 2, 2},
                 {-0.25, 3, 2}, {1.0 / 3, 3, 3}, {0, 3, 0},    {1e9 + 0.5, 3, 1}};
    for (size_t i = 0; i < LENGTH_OF(cases); i++)
        ck_assert_int_eq(number_decimals(cases[i].value, cases[i].most), cases[i].decimals);
}
END_TEST

START_TEST(rounding_passes_on_what_is_unknown)
{
    ck_assert(!known(round_to_decimals(UNKNOWN, 2)));
    ck_assert_double_eq(round_to_decimals(1e300, 2), 1e300);
    ck_assert(!signbit(round_to_decimals(-0.001, 2)));
}
END_TEST

/* RFC 8259, section 6: [ minus ] int [ frac ] [ exp ] */
static int is_json_number(const char *at)
{
    at += *at == '-';
    size_t whole = strspn(at, "0123456789");
    if (whole == 0 || (at[0] == '0' && whole > 1))
        return 0;
    at += whole;
    if (*at == '.') {
        size_t fraction = strspn(at + 1, "0123456789");
        if (fraction == 0)
            return 0;
        at += 1 + fraction;
    }
    if (*at == 'e' || *at == 'E') {
        at += at[1] == '+' || at[1] == '-' ? 2 : 1;
        size_t exponent = strspn(at, "0123456789");
        if (exponent == 0)
            return 0;
        at += exponent;
    }
    return *at == '\0';
}

static void check_significant(double value)
{
    char text[NUMBER_SIZE], expected[NUMBER_SIZE];
    snprintf(expected, sizeof expected, "%.10g", value);
    size_t length = number_significant(value, text);
    if (strcmp(text, expected) != 0 || length != strlen(text))
        ck_abort_msg("%.17g: \"%s\", printf \"%s\"", value, text, expected);
    if (!is_json_number(text))
        ck_abort_msg("not a JSON number: %s", text);
}

START_TEST(significant_random)
{
    uint64_t state = random_start("significant_random");
    for (int i = 0; i < RANDOM_VALUES; i++) {
        check_significant((random_between(&state, 0, 1) - 0.5) *
                          pow(10, (int)(random_bits(&state) % 40) - 20));
        /* Halves of the tenth digit and their neighbours, and short decimals. */
        double half = ((double)(random_bits(&state) % 9000000000) + 1e9 + 0.5) /
                      pow(10, (int)(random_bits(&state) % 14));
        check_significant(half);
        check_significant(nextafter(half, 0));
        check_significant(nextafter(half, 1e300));
        double short_one = (double)(random_bits(&state) % 1000000) / 100;
        check_significant(short_one);
        check_significant(short_one + (random_between(&state, 0, 1) - 0.5) *
                                          pow(10, -(int)(random_bits(&state) % 6) - 6));
    }
}
END_TEST

START_TEST(significant_edges)
{
    static const double values[] = {1,
                                    10,
                                    0.1,
                                    0.0001,
                                    0.00009999999999,
                                    1e9,
                                    9999999999,
                                    9999999999.5,
                                    1e10,
                                    1e-300,
                                    DBL_MAX,
                                    DBL_MIN,
                                    0.99999999999,
                                    99.999999999,
                                    1.0 / 3,
                                    5e-324,
                                    123456.5,
                                    0.00012345678905};
    check_significant(values[_i]);
    check_significant(-values[_i]);
}
END_TEST

START_TEST(significant_has_no_negative_zero)
{
    char text[NUMBER_SIZE];
    ck_assert_uint_eq(number_significant(-0.0, text), 1);
    ck_assert_str_eq(text, "0");
}
END_TEST

Suite *number_suite(void)
{
    Suite *suite = suite_create("number");
    TCase *tests = tcase_create("number");
    tcase_set_tags(tests, "text");
    tcase_add_test(tests, fixed_random);
    tcase_add_test(tests, short_way_tells_the_same);
    tcase_add_test(tests, csv_short_text);
    tcase_add_test(tests, fixed_decimal_halves);
    tcase_add_loop_test(tests, fixed_by_hand, 0, (int)(sizeof by_hand / sizeof by_hand[0]));
    tcase_add_test(tests, fixed_decimal_comma);
    tcase_add_loop_test(tests, fixed_stays_in_its_room, 0, 8);
    tcase_add_test(tests, decimals_that_a_number_has);
    tcase_add_test(tests, rounding_passes_on_what_is_unknown);
    tcase_add_test(tests, significant_random);
    tcase_add_loop_test(tests, significant_edges, 0, 18);
    tcase_add_test(tests, significant_has_no_negative_zero);
    suite_add_tcase(suite, tests);
    return suite;
}
