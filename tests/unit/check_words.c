/* The words that people read, row by row: sentences are short, and no key of the build file stands
 * within them. What tests/words.sh reads is what is printed of them. */
#include <check.h>
#include <ctype.h>
#include <string.h>

#include "reading/remark_text.h"
#include "report/quantities.h"
#include "report/remark.h"
#include "report/tasks.h"
#include "suites.h"
#include "support.h"

enum { SENTENCE_MOST = 14, SENTENCES_MOST = 3, TITLE_MOST = 7 };

#define REMARK_NAME(id, ...) [id] = #id,
static const char *const names[REMARK_COUNT] = {REMARKS(REMARK_NAME)};
#undef REMARK_NAME

/* A basis stands apart from the sentence and may be a formula. */
static bool is_said(enum remark_id id)
{
    return strncmp(names[id], "BASIS_", strlen("BASIS_")) != 0;
}

/* The words of the longest sentence, a gap counting as one, and how many sentences there are; what
 * stands in brackets is apart. */
static int longest_sentence(const char *text, int *sentences)
{
    int words = 0, most = 0, brackets = 0;
    *sentences = 1;
    for (const char *at = text; *at != '\0'; at++) {
        bool begins = at == text || at[-1] == ' ';
        brackets += (*at == '(') - (*at == ')');
        words += brackets == 0 && begins && (isalnum((unsigned char)*at) || *at == '{');
        most = words > most ? words : most;
        if (strncmp(at, "; ", 2) == 0) {
            ++*sentences;
            words = 0;
        }
    }
    return most;
}

START_TEST(remarks_are_short)
{
    enum remark_id id = (enum remark_id)_i;
    int sentences;
    if (!is_said(id))
        return;
    ck_assert_msg(longest_sentence(remark_row_text(id), &sentences) <= SENTENCE_MOST,
                  "%s is too long: %s", names[id], remark_row_text(id));
    ck_assert_msg(sentences <= SENTENCES_MOST, "%s says too much: %s", names[id],
                  remark_row_text(id));
}
END_TEST

/* Values of keys that are to be written, and tables that are named, are no keys. */
START_TEST(keys_stand_apart)
{
    static const char *const allowed[] = {"un_r39", "light_truck_maxima"};
    enum remark_id id = (enum remark_id)_i;
    const char *text = remark_row_text(id), *underline = strchr(text, '_');
    for (size_t i = 0; i < sizeof allowed / sizeof allowed[0]; i++)
        if (underline != NULL && strstr(text, allowed[i]) != NULL)
            underline = NULL;
    ck_assert_msg(!is_said(id) || underline == NULL, "%s names a key in its words: %s", names[id],
                  text);
}
END_TEST

START_TEST(titles_are_short)
{
    int sentences;
    const char *title = quantity_rows[_i].title;
    ck_assert_msg(longest_sentence(title, &sentences) <= TITLE_MOST, "%s", title);
    ck_assert_ptr_null(strchr(title, '_'));
}
END_TEST

START_TEST(tasks_are_short)
{
    int sentences;
    ck_assert_msg(longest_sentence(task_rows[_i].title, &sentences) <= TITLE_MOST, "%s",
                  task_rows[_i].title);
}
END_TEST

/* By hand: 12.7 mm are 0.50 in and 13 whole mm; 12.701 mm are more than 0.50 in. */
static const struct {
    double length_m;
    const char *metric, *us;
} enough[] = {
    {12.7e-3, "13 mm", "0.50 in"},
    {12.701e-3, "13 mm", "0.51 in"},
    {-13e-3, "13 mm", "0.52 in"}, /* 0.5118 in */
    {101.6e-3, "102 mm", "4.00 in"},
};

START_TEST(what_must_be_enough_is_rounded_up)
{
    struct arena arena = ARENA_EMPTY;
    const struct remark trim =
        REMARK_WITH(&arena, ADVICE_TRIM_ARCH, say_enough(enough[_i].length_m));
    const char *metric = remark_text(&arena, &trim, false), *us = remark_text(&arena, &trim, true);
    ck_assert_msg(strstr(metric, enough[_i].metric) != NULL, "%s", metric);
    ck_assert_msg(strstr(us, enough[_i].us) != NULL, "%s", us);
    arena_free(&arena);
}
END_TEST

Suite *words_suite(void)
{
    Suite *suite = suite_create("words");
    TCase *tests = tcase_create("words");
    tcase_set_tags(tests, "text");
    tcase_add_loop_test(tests, remarks_are_short, REMARK_NONE + 1, REMARK_COUNT);
    tcase_add_loop_test(tests, keys_stand_apart, REMARK_NONE + 1, REMARK_COUNT);
    tcase_add_loop_test(tests, titles_are_short, 0, QUANTITY_COUNT);
    tcase_add_loop_test(tests, tasks_are_short, TASK_NONE + 1, TASK_COUNT);
    tcase_add_loop_test(tests, what_must_be_enough_is_rounded_up, 0, LENGTH_OF(enough));
    suite_add_tcase(suite, tests);
    return suite;
}
