/* Sizes that are not as moulded: what has one reading is read so, and it is said what was added or
 * passed over; what has two is refused, and both are shown. */
#include <string.h>

#include "designation_cases.h"
#include "size/designation_loose.h"
#include "support.h"
#include "typed_sizes.h"

static void assert_read(const struct typed_size *size)
{
    struct designation read, plain, again;
    struct designation_error error;
    char taken[TAKEN_SIZE], ignored[TAKEN_SIZE], text[DESIGNATION_CANONICAL_SIZE];
    ck_assert_msg(designation_read(span_of(size->text), &read, &error, taken), "%s: column %zu: %s",
                  size->text, error.column, error.message);
    designation_canonical(&read, text);
    ck_assert_msg(strcmp(text, size->meant) == 0, "%s is read as %s, meant is %s", size->text, text,
                  size->meant);
    ck_assert_msg(read.completed == size->completed, "%s: completed", size->text);
    bool moulded = designation_parse(span_of(size->text), &plain, &error);
    ck_assert_msg(moulded == (*taken == '\0'), "%s: taken is \"%s\"", size->text, taken);
    ck_assert(designation_read(span_of(text), &again, &error, ignored));
    ck_assert_msg(designation_equal(&read, &again) && *ignored == '\0', "%s: not canonical", text);
}

START_TEST(typed_is_read_as_meant)
{
    assert_read(&TYPED[_i]);
}
END_TEST

START_TEST(stock_line_is_read_as_meant)
{
    assert_read(&STOCK[_i]);
}
END_TEST

START_TEST(two_readings_are_shown)
{
    struct designation size;
    struct designation_error error;
    char taken[TAKEN_SIZE];
    ck_assert_msg(!designation_read(span_of(TWO_READINGS[_i].text), &size, &error, taken), "%s",
                  TWO_READINGS[_i].text);
    ck_assert_msg(strstr(error.message, TWO_READINGS[_i].one) != NULL &&
                      strstr(error.message, TWO_READINGS[_i].other) != NULL,
                  "%s: %s", TWO_READINGS[_i].text, error.message);
}
END_TEST

/* Hyphens separate only where both are hyphens; what else is wrong stays wrong, in its place. */
START_TEST(what_is_wrong_stays_so)
{
    static const struct {
        const char *text;
        size_t column;
    } WRONG[] = {
        {"265-70 17", 4},
        {"265-70R17", 4},
        {"31-10.50R15", 4},
        {"245/75/16 91Q5", 15},
        {"245/75/16 91K91", 16},
        {"205/55R16 TLX", 11},
        {"TL", 3},
        {"DOT2219", 8},
        {"245/75/46", 7},
        {"100/100/100", 8},
        {"33/30/17", 3},
        {"205x55x16", 1},
        {"205/55R16 TL 91", 16},
        {"", 1},
    };
    for (size_t i = 0; i < LENGTH_OF(WRONG); i++) {
        struct designation size;
        struct designation_error error;
        char taken[TAKEN_SIZE];
        ck_assert_msg(!designation_read(span_of(WRONG[i].text), &size, &error, taken), "%s",
                      WRONG[i].text);
        ck_assert_str_eq(taken, "");
        ck_assert_msg(error.column == WRONG[i].column, "%s: column %zu: %s", WRONG[i].text,
                      error.column, error.message);
    }
}
END_TEST

TCase *designation_typed_case(void)
{
    TCase *typed = tcase_create("as typed");
    tcase_add_loop_test(typed, typed_is_read_as_meant, 0, LENGTH_OF(TYPED));
    tcase_add_loop_test(typed, stock_line_is_read_as_meant, 0, LENGTH_OF(STOCK));
    tcase_add_loop_test(typed, two_readings_are_shown, 0, LENGTH_OF(TWO_READINGS));
    tcase_add_test(typed, what_is_wrong_stays_so);
    return typed;
}
