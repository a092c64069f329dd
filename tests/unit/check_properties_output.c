/* What an accepted build prints: plain finite numbers in every format, and where there is none the
 * text of what is missing. The commands are run whole, in this process, into a file. */
#include <ctype.h>
#include <string.h>
#include <unistd.h>

#include "base/known.h"
#include "cli/commands.h"
#include "cli/options.h"
#include "output_run.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"

enum { FEW_FIGURES = 40, FEW_OUTPUTS = 3 };

static bool has_advice(const struct figure *figure)
{
    return figure->advice.id != REMARK_NONE;
}

static bool has_basis(const struct figure *figure)
{
    return figure->basis.id != REMARK_NONE;
}

/* Whether another figure says what is missing, which is told once: the same one taken at something
 * else, or a finding on the same axle. */
static bool said_beside(const struct run *run, const struct figure *silent)
{
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->part != silent->part || figure->setup != silent->setup ||
            figure->axle != silent->axle || !has_advice(figure))
            continue;
        if (figure->verdict == VERDICT_UNKNOWN || figure->verdict == VERDICT_FAIL ||
            figure->quantity == silent->quantity)
            return true;
    }
    return false;
}

/* Five alike are no number, and nothing is to be done about them. */
static bool is_matched_set(const struct figure *figure)
{
    return figure->quantity == QUANTITY_SPARE_SET && figure->verdict == VERDICT_OK;
}

/* A figure without a number says why: it judges, acts, or stands for a word. */
static void assert_speaks(const struct run *run, const struct figure *figure)
{
    REQUIRE(!isinf(figure->value) && !isinf(figure->limit), "%s is infinite", told_of(run, figure));
    REQUIRE(known(figure->value) || has_advice(figure) || has_word(figure) ||
                is_matched_set(figure) || said_beside(run, figure),
            "%s has neither a number nor a reason", told_of(run, figure));
    REQUIRE(figure->verdict != VERDICT_UNKNOWN || has_advice(figure),
            "%s is unknown and does not say what is missing", told_of(run, figure));
    REQUIRE(figure->verdict != VERDICT_FAIL || has_advice(figure),
            "%s fails and does not say what to do", told_of(run, figure));
    REQUIRE(figure->verdict == VERDICT_NONE || has_basis(figure), "%s is judged by nothing",
            told_of(run, figure));
}

START_TEST(every_figure_has_a_number_or_a_reason)
{
    uint64_t seed = random_start("figures");
    for (int i = 0; i < properties_count(FEW_FIGURES); i++, seed++) {
        struct run run;
        run_make(&run, seed, &as_drawn);
        for (size_t at = 0; at < run.figures.count; at++)
            assert_speaks(&run, &run.figures.items[at]);
        run_free(&run);
    }
}
END_TEST

/* What no rule grants at full speed is never simply ok, and what a rule grants is its least speed
 * at least. */
static int below_the_top_speed(struct run *run)
{
    int checked = 0;
    double top_mps = run->specification->vehicle.top_speed_mps;
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->quantity != QUANTITY_SPEED_SYMBOL || !(figure->value < top_mps * (1 - 1e-9)))
            continue;
        bool label = figure->verdict == VERDICT_TASK && figure->cure.task == TASK_SPEED_LABEL &&
                     figure->cure.then == figure->value;
        bool granted = figure->verdict == VERDICT_CAUTION || label;
        REQUIRE(granted || figure->verdict == VERDICT_FAIL || figure->verdict == VERDICT_UNKNOWN,
                "%s: %s", told_of(run, figure), verdict_name(figure->verdict));
        REQUIRE(!granted || run->specification->limits.speed_symbol != NULL, "%s: by no rule",
                told_of(run, figure));
        REQUIRE(!granted || !(figure->value < figure->limit * (1 - 1e-9)), "%s: below the rule's",
                told_of(run, figure));
        checked += granted;
    }
    return checked;
}

START_TEST(slower_tyre_needs_a_rule)
{
    check_builds("below the top speed", below_the_top_speed);
}
END_TEST

/* With the label an option is as the rule wants it; what the rule does not let be stays. */
static int label_is_the_cure(struct run *run)
{
    int checked = 0;
    struct fitment_list *options = &run->specification->tyres.options;
    for (size_t i = 0; i < options->count; i++) {
        options->items[i].as_set.given = options->items[i].tyre.given;
        options->items[i].as_set.speed_label = 1;
    }
    struct figures labelled = {.arena = &run->arena};
    ck_assert(plan_make(&run->arena, run->specification, false, NULL, &run->plan));
    report_tyre(&run->plan, &labelled);
    for (size_t i = 0; i < labelled.count; i++) {
        const struct figure *was = &run->figures.items[i], *is = &labelled.items[i];
        REQUIRE(figure_same(was, is, SAME_SETUP | SAME_QUANTITY | SAME_PLACE | SAME_VALUE),
                "%s: another row", told_of(run, was));
        bool cured = was->cure.task == TASK_SPEED_LABEL && was->setup > 0;
        REQUIRE(cured ? is->verdict == VERDICT_OK : is->verdict == was->verdict, "%s: %s",
                told_of(run, was), verdict_name(is->verdict));
        checked += cured;
    }
    return checked;
}

START_TEST(label_leaves_no_work)
{
    check_builds("labelled", label_is_the_cure);
}
END_TEST

/* Aimed as the work says, the lamps of an option are right in every state that is known; where no
 * aim does, it fails as before. */
static int aim_is_the_cure(struct run *run)
{
    int checked = 0;
    struct figures aimed = {.arena = &run->arena};
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->cure.task != TASK_HEADLAMP_AIM || figure->setup == 0)
            continue;
        struct fitment *option =
            &run->specification->tyres.options.items[run->plan.setups[figure->setup].number - 1];
        option->as_set.given = option->tyre.given;
        option->as_set.headlamp_dip = figure->cure.then;
    }
    struct plan plan;
    ck_assert(plan_make(&run->arena, run->specification, false, NULL, &plan));
    report_clearance(&plan, &aimed);
    for (size_t i = 0; i < aimed.count; i++) {
        const struct figure *is = &aimed.items[i];
        if (is->quantity != QUANTITY_HEADLAMP_DIP || is->setup == 0)
            continue;
        bool cured = plan.setups[is->setup].as_set != NULL;
        REQUIRE(cured ? is->verdict == VERDICT_OK : is->verdict != VERDICT_TASK, "%s: %s",
                told_of(run, is), verdict_name(is->verdict));
        checked += cured;
    }
    return checked;
}

START_TEST(aim_leaves_no_work)
{
    check_builds("aimed", aim_is_the_cure);
}
END_TEST

static void run_command(const char *name, const char *format, const char *units)
{
    char *arguments[] = {
        (char *)"tyresum",  (char *)name,   build_path,         (char *)"--units", (char *)units,
        (char *)"--format", (char *)format, (char *)"--output", output_path,       NULL};
    const char *operands[3 * LENGTH_OF(arguments)];
    struct arena arena = ARENA_EMPTY;
    struct options options;
    ck_assert(options_parse((int)LENGTH_OF(arguments) - 1, arguments, operands, &options));
    const struct command *command = command_find(name);
    ck_assert(command != NULL);
    enum exit_status status = command->run(&arena, command, &options);
    REQUIRE(status == EXIT_COMPUTED, "%s --format %s: exit %d", name, format, (int)status);
    arena_free(&arena);
}

/* A letter, a digit or what may stand within a number or a word. */
static bool within_a_word(char c)
{
    return isalnum((unsigned char)c) || c == '_' || c == '.' || c == '#';
}

static bool is_word(const char *start, size_t length, const char *word)
{
    if (length != strlen(word))
        return false;
    for (size_t i = 0; i < length; i++)
        if (tolower((unsigned char)start[i]) != word[i])
            return false;
    return true;
}

/* Zero written with a sign: -0, -0.00. */
static bool is_negative_zero(const char *text, const char *word, size_t length)
{
    if (word == text || word[-1] != '-' || (word - 1 != text && within_a_word(word[-2])))
        return false;
    for (size_t i = 0; i < length; i++)
        if (word[i] != '0' && word[i] != '.')
            return false;
    return true;
}

static void assert_plain_numbers(const char *text, const char *what)
{
    static const char *const words[] = {"nan", "inf", "infinity", "null"};
    bool json = strstr(what, "json") != NULL; /* has a null of its own */
    for (const char *at = text; *at != '\0';) {
        size_t length = 0;
        while (within_a_word(at[length]))
            length++;
        if (length == 0) {
            at++;
            continue;
        }
        for (size_t i = 0; i < LENGTH_OF(words) - json; i++)
            REQUIRE(!is_word(at, length, words[i]), "%s: %.60s", what, at);
        REQUIRE(!is_negative_zero(text, at, length), "%s: %.60s", what, at - 1);
        at += length;
    }
}

START_TEST(every_output_has_plain_numbers)
{
    static const char *const commands[] = {"sheet",   "compare",   "load", "speedometer",
                                           "gearing", "clearance", "check"};
    static const char *const formats[] = {"csv", "json", "table", "markdown", "html", "svg"};
    static const char *const units[] = {"metric", "us", "both"};
    static char text[OUTPUT_MAX];
    uint64_t seed = random_start("outputs");
    int checked = 0;
    for (int i = 0; i < (properties_count(FEW_OUTPUTS * 50) + 49) / 50; i++, seed++) {
        struct run run;
        run_make(&run, seed, &as_drawn);
        write_build(run.text.text, run.text.length);
        const struct specification *specification = run.specification;
        for (size_t c = 0; c < LENGTH_OF(commands); c++)
            for (size_t f = 0; f < LENGTH_OF(formats); f++) {
                const char *unit = units[(seed + c + f) % LENGTH_OF(units)];
                unsigned bit = command_find(commands[c])->bit;
                bool drawn = f < 4 || (bit == CMD_SHEET && f == 4) ||
                             (f == 5 && (bit & (CMD_LOAD | CMD_GEARING | CMD_CLEARANCE)));
                bool has_part = (bit != CMD_GEARING || specification->drivetrain.given != NULL) &&
                                (bit != CMD_CLEARANCE || specification->clearance.given != NULL);
                bool slow = bit == CMD_CHECK && f > 0; /* computes all again without each key */
                if (!drawn || !has_part || slow)
                    continue;
                run_command(commands[c], formats[f], unit);
                ck_assert_uint_gt(read_output(text), 0);
                assert_plain_numbers(text, arena_format(&run.arena,
                                                        "seed %llu: %s --format %s "
                                                        "--units %s",
                                                        (unsigned long long)seed, commands[c],
                                                        formats[f], unit));
                checked++;
            }
        run_free(&run);
    }
    ck_assert_int_gt(checked, 0);
}
END_TEST

Suite *properties_output_suite(void)
{
    Suite *suite = suite_create("properties_output");
    TCase *output = tcase_create("what is printed");
    tcase_add_checked_fixture(output, output_set_up, output_tear_down);
    tcase_add_test(output, every_figure_has_a_number_or_a_reason);
    tcase_add_test(output, slower_tyre_needs_a_rule);
    tcase_add_test(output, label_leaves_no_work);
    tcase_add_test(output, aim_leaves_no_work);
    tcase_add_test(output, every_output_has_plain_numbers);
    suite_add_tcase(suite, output);
    return suite;
}
