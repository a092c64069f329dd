/* What people write at a counter instead of a size: each mistake is told for what it is, where it
 * stands, with the right spelling where one can be known. Nothing is guessed and computed. */
#include <check.h>
#include <string.h>

#include "designation_cases.h"
#include "size/designation.h"

/* Text, column, and what the message must say is wrong and must propose. */
static const struct {
    const char *text;
    size_t column;
    const char *wrong, *proposed;
} MISTAKES[] = {
    {"20555R16 91V", 1, "run together", "205/55"},
    {"P26570R17", 2, "run together", "265/70"},
    {"205 55 R16", 5, "'5' stands here", "'/' and an aspect ratio"},
    {"205-55-16", 4, "a hyphen stands between", "'/', as in 205/55"},
    {"205-31", 4, "a hyphen stands between", "as in 205/31"}, /* rim codes end at 30 */
    {"195-65R15 91T", 4, "a hyphen stands between", "'/', as in 195/65"},
    {"205,55R16", 4, "',' stands here", "'/' before the aspect ratio"},
    {"205\\55R16", 4, "'\\' stands here", "'/' and an aspect ratio"},
    {"205.55R16", 1, "on no tyre", "millimetres such as 165 or 205/55"},
    {"2O5/55R16", 2, "the letter O", "the digit 0"},
    {"P2O5/55R16", 3, "the letter O", "the digit 0"},
    {"205/55R1O", 9, "the letter O", "the digit 0"},
    {"205/5OR16", 6, "the letter O", "the digit 0"},
    {"31x1O.5R15", 5, "the letter O", "the digit 0"},
    {"205/55R16 9OV", 12, "the letter O", "the digit 0"},
    {"205/55RI6", 8, "the letter I", "the digit 1"},
    {"205/55/16", 7, "'/' stands here", "a construction: R"},
    {"205/55 16", 8, "'1' stands here", "a construction: R"},
    {"205/55R 91V", 9, "91 is not a rim diameter code", "8 to 30"},
    {"R16 205/55", 1, "rim diameter stands first", "205/55R16"},
    {"16 205/55R", 4, "'2' stands here", "'/' and an aspect ratio"},
    {"91V 205/55R16", 3, "service description stands before", "the size first"},
    {"55/205R16", 1, "aspect ratio 55 stands before", "205/55"},
    {"205/55R16 V91", 11, "speed symbol V stands before", "91V"},
    {"205/55R16 H91", 11, "speed symbol H stands before", "91V"},
    {"205/55R16 91", 13, "text ends", "a speed symbol"},
    {"205/55R16 V", 11, "'V' stands here", "a service description such as 91V"},
    {"LT245/75R16 116/120R", 17, "above the single one", "at most 116"},
    {"31*10.50R15", 3, "'*' stands here", "x and a section width"},
    {"31x10,50R15LT", 6, "',' stands here", "a decimal point"},
    {"31x1050R15LT", 4, "lost its decimal point", "10.50"},
    {"33x12.5x15", 8, "'x' stands here", "a construction: R"},
    {"7,50R16", 2, "',' stands here", "a decimal point"},
    {"750R16", 1, "750 mm", "7.50R16"},
    {"205/55R16 91V, XL", 14, "',' stands here", "XL"},
};

START_TEST(mistake_is_told_for_what_it_is)
{
    const char *text = MISTAKES[_i].text;
    struct designation out;
    struct designation_error error;
    ck_assert_msg(!designation_parse(span_of(text), &out, &error), "\"%s\" was read", text);
    const char *expected = strstr(error.message, "; expected ");
    ck_assert_msg(expected != NULL, "\"%s\": %s", text, error.message);
    const char *wrong = strstr(error.message, MISTAKES[_i].wrong);
    ck_assert_msg(wrong != NULL && wrong < expected, "\"%s\": %s", text, error.message);
    ck_assert_msg(strstr(expected, MISTAKES[_i].proposed) != NULL, "\"%s\": %s", text,
                  error.message);
    ck_assert_msg(error.column == MISTAKES[_i].column, "\"%s\": column %zu: %s", text, error.column,
                  error.message);
}
END_TEST

/* What may be forgiven is, since it can be read in one way only. */
static const char *const FORGIVEN[][2] = {
    {"lt245/75r16 120/116r", "LT245/75R16 120/116R"},
    {"205 / 55 R 16  91 V", "205/55R16 91V"},
    {"205/55r1691v", "205/55R16 91V"},
    {"31 X 10.5 R 15 lt", "31x10.50R15LT"},
    {"245/75R16LT", "LT245/75R16"},
    {"205/55R16 XL 94V", "205/55R16 94V XL"},
};

START_TEST(what_is_plain_is_forgiven)
{
    struct designation out;
    struct designation_error error;
    char canonical[DESIGNATION_CANONICAL_SIZE];
    bool read = designation_parse(span_of(FORGIVEN[_i][0]), &out, &error);
    ck_assert_msg(read, "\"%s\": %s", FORGIVEN[_i][0], error.message);
    designation_canonical(&out, canonical);
    ck_assert_str_eq(canonical, FORGIVEN[_i][1]);
}
END_TEST

TCase *designation_counter_case(void)
{
    TCase *counter = tcase_create("at the counter");
    tcase_set_tags(counter, "text");
    tcase_add_loop_test(counter, mistake_is_told_for_what_it_is, 0,
                        (int)(sizeof MISTAKES / sizeof MISTAKES[0]));
    tcase_add_loop_test(counter, what_is_plain_is_forgiven, 0,
                        (int)(sizeof FORGIVEN / sizeof FORGIVEN[0]));
    return counter;
}
