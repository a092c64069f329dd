/* What is the same job told otherwise is judged alike, over random builds: other names, another
 * order of sections, an item of no mass, one item as two; and the fitted tyre as its own option. */
#include "base/known.h"
#include "judged_build.h"
#include "suites.h"
#include "support.h"

enum { FEW = 30 };

/* --- texts told otherwise */

static void append(struct build_text *text, const char *from, size_t length)
{
    REQUIRE(text->length + length < sizeof text->text, "the text is too long");
    memcpy(text->text + text->length, from, length);
    text->length += length;
    text->text[text->length] = '\0';
}

static void replace_all(struct build_text *text, const char *what, const char *with)
{
    static struct build_text old;
    const char *at = old.text, *found;
    old = *text;
    text->length = 0;
    for (; (found = strstr(at, what)) != NULL; at = found + strlen(what)) {
        append(text, at, (size_t)(found - at));
        append(text, with, strlen(with));
    }
    append(text, at, strlen(at));
}

/* Names that a person gives, wherever they stand. */
static void rename_all(struct build_text *text)
{
    replace_all(text, "ballast", "fine sand");
    replace_all(text, "item: item ", "item: chest of ");
    replace_all(text, ", item ", ", chest of ");
    replace_all(text, "option ", "winter wheel ");
    replace_all(text, "  state ", "  trip number ");
    replace_all(text, "a random build", "b");
}

/* A section is all from a line that begins in the first column to the next such line. */
static void reverse_sections(struct build_text *text)
{
    static struct build_text old;
    old = *text;
    text->length = 0;
    for (size_t end = old.length, after = old.length; after > 0; after--)
        if (old.text[after - 1] != ' ' && (after == 1 || old.text[after - 2] == '\n')) {
            append(text, old.text + after - 1, end - after + 1);
            end = after - 1;
        }
}

/* Behind the ballast one more, aboard wherever it is. */
static void add_beside_ballast(struct build_text *text, const char *item)
{
    static struct build_text with;
    const char *line = strstr(text->text, "  - {item: ballast");
    size_t before = (size_t)(line - text->text);
    with.length = 0;
    append(&with, text->text, before);
    append(&with, item, strlen(item));
    append(&with, line, strlen(line));
    *text = with;
    replace_all(text, "[ballast", "[ballast, more");
}

static void add_nothing(struct build_text *text)
{
    add_beside_ballast(text, "  - {item: more, mass: 0 kg, at: 1234 mm}\n");
}

/* The ballast has half of its mass, and the other half lies beside it. */
static void add_other_half(struct build_text *text)
{
    static struct build_text line;
    const char *ballast = strstr(text->text, "  - {item: ballast");
    line.length = 0;
    append(&line, ballast, (size_t)(strchr(ballast, '\n') + 1 - ballast));
    replace_all(&line, "ballast", "more");
    add_beside_ballast(text, line.text);
}

/* --- the same figures */

static void require_same(const struct run *run, const struct figure *before,
                         const struct figure *after, const char *what)
{
    unsigned fields = SAME_PART | SAME_SETUP | SAME_STATE | SAME_AXLE | SAME_QUANTITY;
    REQUIRE(figure_same(before, after, fields), "%s: %s: another figure in its place",
            told_of(run, before), what);
    REQUIRE(close_in_unit(before, after->value, before->value), "%s: %s: value %.17g, before %.17g",
            told_of(run, before), what, after->value, before->value);
    REQUIRE(close_in_unit(before, after->limit, before->limit), "%s: %s: limit %.17g, before %.17g",
            told_of(run, before), what, after->limit, before->limit);
    REQUIRE(after->verdict == before->verdict && after->cure.task == before->cure.task,
            "%s: %s: %s, before %s", told_of(run, before), what, verdict_name(after->verdict),
            verdict_name(before->verdict));
}

/* Each item has a place of its own, and half of one may stand further out than the whole: what is
 * told of the build are the others, from here on; the count where none is left. */
static size_t next_of_build(const struct figures *figures, size_t i)
{
    while (i < figures->count && (figures->items[i].quantity == QUANTITY_PLACE_FROM ||
                                  figures->items[i].quantity == QUANTITY_PLACE_TO))
        i++;
    return i;
}

static void require_same_figures(const struct run *a, const struct run *b, const char *what)
{
    size_t i = next_of_build(&a->figures, 0), j = next_of_build(&b->figures, 0);
    while (i < a->figures.count && j < b->figures.count) {
        require_same(a, &a->figures.items[i], &b->figures.items[j], what);
        i = next_of_build(&a->figures, i + 1);
        j = next_of_build(&b->figures, j + 1);
    }
    REQUIRE(i == a->figures.count && j == b->figures.count, "%s: more figures than before", what);
}

static void check_rewritten(const char *what, double ballast_kg, double rewritten_kg,
                            void (*rewrite)(struct build_text *text))
{
    struct variation before = as_drawn, after = as_drawn;
    uint64_t seed = random_start(what);
    before.ballast_kg = ballast_kg;
    after.ballast_kg = rewritten_kg;
    for (int i = 0; i < properties_count(FEW); i++, seed++) {
        struct run a, b;
        run_make(&a, seed, &before);
        run_make_rewritten(&b, seed, &after, rewrite);
        REQUIRE(strcmp(a.text.text, b.text.text) != 0, "%s: seed %llu: nothing was rewritten", what,
                (unsigned long long)seed);
        require_same_figures(&a, &b, what);
        run_free(&a);
        run_free(&b);
    }
}

START_TEST(names_change_nothing)
{
    check_rewritten("renamed", 0, 0, rename_all);
}
END_TEST

START_TEST(order_of_sections_changes_nothing)
{
    check_rewritten("sections reversed", 0, 0, reverse_sections);
}
END_TEST

START_TEST(item_of_no_mass_changes_nothing)
{
    check_rewritten("no mass", 0, 0, add_nothing);
}
END_TEST

START_TEST(item_as_two_halves_changes_nothing)
{
    check_rewritten("halves", 90, 45, add_other_half);
}
END_TEST

/* --- the fitted tyre as an option */

static bool is_change(const struct figure *figure)
{
    return figure->part != PART_SPEEDOMETER && !known(figure->place.axle_ratio) &&
           strstr(quantity_rows[figure->quantity].name, "_change") != NULL;
}

/* Not so the room of the largest new tyre, which an option is judged by, what is entered for it,
 * and how far it gives under a load at the pressure that is to be set. */
static bool is_as_fitted(const struct figure *figure)
{
    if (figure->part == PART_CLEARANCE && figure->state != STATE_NONE)
        return false;
    return is_change(figure) || figure->place.tyre == AT_NOMINAL ||
           (figure->part != PART_CLEARANCE && figure->part != PART_SPEEDOMETER);
}

/* The same figure of the fitted tyre. */
static const struct figure *of_fitted(const struct figures *figures, const struct figure *figure)
{
    unsigned fields = SAME_PART | SAME_STATE | SAME_AXLE | SAME_QUANTITY | SAME_PLACE;
    for (size_t i = 0; i < figures->count; i++)
        if (figures->items[i].setup == 0 && figure_same(&figures->items[i], figure, fields))
            return &figures->items[i];
    return NULL;
}

static int fit_itself(struct run *run)
{
    static struct judged_build itself;
    int checked = 0;
    copy_specification(&run->arena, run->specification, &itself.specification);
    struct fitment *option = &itself.specification.tyres.options.items[0];
    const char *name = option->name;
    *option = itself.specification.tyres.fitted;
    option->name = name;
    judge_build(run, &itself);
    for (size_t i = 0; i < itself.figures.count; i++) {
        const struct figure *figure = &itself.figures.items[i];
        if (figure->setup != 1 || !known(figure->value) || !is_as_fitted(figure))
            continue;
        const struct figure *fitted = of_fitted(&itself.figures, figure);
        if (fitted == NULL && !is_change(figure))
            continue;
        double is = fitted == NULL ? 0 : fitted->value;
        REQUIRE(close_in_unit(figure, figure->value, is), "%s: %g, of the fitted tyre %g",
                told_of(run, figure), figure->value, is);
        checked++;
    }
    return checked;
}

START_TEST(fitted_tyre_beside_itself_changes_nothing)
{
    check_builds("itself", fit_itself);
}
END_TEST

Suite *properties_alike_suite(void)
{
    Suite *suite = suite_create("properties_alike");
    TCase *alike = tcase_create("alike");
    tcase_set_timeout(alike, 0);
    tcase_add_test(alike, names_change_nothing);
    tcase_add_test(alike, order_of_sections_changes_nothing);
    tcase_add_test(alike, item_of_no_mass_changes_nothing);
    tcase_add_test(alike, item_as_two_halves_changes_nothing);
    tcase_add_test(alike, fitted_tyre_beside_itself_changes_nothing);
    suite_add_tcase(suite, alike);
    return suite;
}
