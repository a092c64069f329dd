/* The short reading of plain designations beside the whole one: over all of its domain, and a
 * character beside it, what it reads is read the same, and is its own canonical spelling. */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include "designation_cases.h"
#include "size/designation.h"

static size_t plain_count;

/* Each ck_assert that holds costs a message to the parent, so here only what fails gets one. */
static void check_same(const char *text)
{
    struct designation plain, whole;
    struct designation_error error;
    char canonical[DESIGNATION_CANONICAL_SIZE];
    if (!designation_read_plain(span_of(text), &plain))
        return;
    plain_count++;
    if (!designation_parse(span_of(text), &whole, &error))
        ck_abort_msg("\"%s\": %s", text, error.message);
    designation_canonical(&whole, canonical);
    if (!designation_equal(&plain, &whole) || strcmp(canonical, text) != 0)
        ck_abort_msg("\"%s\" is read as \"%s\"", text, canonical);
}

static void check_sizes(int width, int aspect_from, int aspect_to, int aspect_step)
{
    static const char *const prefixes[] = {"", "P", "LT", "T", "HL", "p"};
    for (size_t i = 0; i < sizeof prefixes / sizeof prefixes[0]; i++)
        for (int aspect = aspect_from; aspect <= aspect_to; aspect += aspect_step)
            for (int rim = 7; rim <= 32; rim++) {
                char text[64];
                snprintf(text, sizeof text, "%s%d/%dR%d", prefixes[i], width, aspect, rim);
                check_same(text);
            }
}

START_TEST(sizes_are_read_the_same)
{
    plain_count = 0;
    for (int width = 85; width <= 1000; width++)
        check_sizes(width, 14, 104, 30);
    for (int aspect = 5; aspect <= 105; aspect++)
        check_sizes(205, aspect, aspect, 1);
    ck_assert_uint_gt(plain_count, 60000);
}
END_TEST

START_TEST(services_are_read_the_same)
{
    char text[64];
    plain_count = 0;
    for (int index = 0; index <= 210; index++) {
        for (char symbol = 'A'; symbol <= 'Z'; symbol++) {
            snprintf(text, sizeof text, "LT245/75R16 %d%c", index, symbol);
            check_same(text);
        }
        for (int dual = 0; dual <= 210; dual++) {
            snprintf(text, sizeof text, "245/75R16 %d/%dQ", index, dual);
            check_same(text);
        }
    }
    ck_assert_uint_gt(plain_count, 201 * 21 + 201 * 12);
}
END_TEST

/* Any character in the place of each, and one more or one less. */
START_TEST(what_is_nearly_plain_is_read_the_same)
{
    static const char *const plain[] = {"205/55R16 91V", "P265/70R17", "LT245/75R16 120/116S"};
    plain_count = 0;
    for (size_t i = 0; i < sizeof plain / sizeof plain[0]; i++)
        for (size_t at = 0; at <= strlen(plain[i]); at++)
            for (int c = 1; c < 256; c++)
                for (size_t kept = at; kept <= at + 1 && kept <= strlen(plain[i]); kept++) {
                    char text[64];
                    snprintf(text, sizeof text, "%.*s%c%s", (int)at, plain[i], c, plain[i] + kept);
                    check_same(text);
                    snprintf(text, sizeof text, "%.*s%s", (int)at, plain[i], plain[i] + kept);
                    check_same(text);
                }
    ck_assert_uint_gt(plain_count, 100);
}
END_TEST

TCase *designation_plain_case(void)
{
    TCase *plain = tcase_create("plain");
    tcase_set_tags(plain, "text");
    tcase_add_test(plain, sizes_are_read_the_same);
    tcase_add_test(plain, services_are_read_the_same);
    tcase_add_test(plain, what_is_nearly_plain_is_read_the_same);
    return plain;
}
