#include "report/data_book_check.h"

#include "base/known.h"
#include "base/units.h"
#include "compute/dimensions.h"

/* Common practice, no source: the standards let a tyre differ by some 4 %, and the nearest slip, a
 * mile for a kilometre, makes 60 %. */
static const double far_apart = 0.15;

struct book_check {
    const struct data_book *book;
    const char *size;
    struct diagnostics *diagnostics;
};

static bool is_far(double given, double by_rule)
{
    return clearly_above(fabs(given - by_rule), far_apart * by_rule);
}

static void check_length(const struct book_check *check, const char *key, double given_m,
                         double by_rule_m, const char *expected)
{
    if (is_far(given_m, by_rule_m))
        diagnostics_add(check->diagnostics, place_of(check->book->given, key), 1,
                        "this is far from what %s has by rule, %.0f mm; expected %s", check->size,
                        unit_from_si(UNIT_MM, by_rule_m), expected);
}

static void check_revolutions(const struct book_check *check, const char *key, double given,
                              enum unit_id unit, double by_rule_per_m)
{
    if (is_far(unit_to_si(unit, given), by_rule_per_m))
        diagnostics_add(check->diagnostics, place_of(check->book->given, key), 1,
                        "this is far from what %s turns by rule; expected about %.0f per km, which "
                        "is %.0f per mile",
                        check->size, unit_from_si(UNIT_PER_KM, by_rule_per_m),
                        unit_from_si(UNIT_PER_MILE, by_rule_per_m));
}

static void check_book(const struct data_book *book, const struct designation *size,
                       double rim_width_m, struct diagnostics *diagnostics)
{
    char name[DESIGNATION_CANONICAL_SIZE];
    struct tyre_figures rule;
    designation_canonical(size, name);
    figures_by_rule(size, rim_width_m, &rule);
    const struct book_check check = {book, name, diagnostics};
    check_length(&check, "overall_diameter", book->overall_diameter_m, rule.overall_diameter_m,
                 "the tyre's diameter, from tread to tread");
    check_length(&check, "section_width", book->section_width_m, rule.section_width_m,
                 "its width on the measuring rim");
    check_length(&check, "static_loaded_radius", book->static_loaded_radius_m,
                 rule.static_loaded_radius_m, "the height of the axle's centre above the ground");
    check_revolutions(&check, "revs_per_km", book->revs_per_km, UNIT_PER_KM,
                      1 / rule.rolling_circumference_m);
    check_revolutions(&check, "revs_per_mile", book->revs_per_mile, UNIT_PER_MILE,
                      1 / rule.rolling_circumference_m);
    double diameter_m = known_or(book->overall_diameter_m, rule.overall_diameter_m);
    if (clearly_above(2 * book->static_loaded_radius_m, diameter_m))
        diagnostics_add(diagnostics, place_of(book->given, "static_loaded_radius"), 1,
                        "this is above half the overall diameter, %.0f mm; expected the height of "
                        "the axle's centre above the ground, under load",
                        unit_from_si(UNIT_MM, diameter_m / 2));
}

/* A rear tyre without a size of its own has the front's. */
static void check_tyre(const struct tyre *tyre, const struct tyre *front,
                       struct diagnostics *diagnostics)
{
    const struct tyre *sized = tyre->size_given ? tyre : front;
    if (tyre->data_book.given != NULL && sized->size_given)
        check_book(&tyre->data_book, &sized->size, tyre->wheel.width_m, diagnostics);
}

static void check_fitment(const struct fitment *fitment, struct diagnostics *diagnostics)
{
    check_tyre(&fitment->tyre, &fitment->tyre, diagnostics);
    check_tyre(&fitment->rear, &fitment->tyre, diagnostics);
    check_tyre(&fitment->spare, &fitment->tyre, diagnostics);
}

bool data_book_check(const struct specification *specification, struct diagnostics *diagnostics)
{
    const struct tyres *tyres = &specification->tyres;
    size_t before = diagnostics->count;
    check_fitment(&tyres->fitted, diagnostics);
    check_tyre(&tyres->spare, &tyres->spare, diagnostics);
    for (size_t i = 0; i < tyres->options.count; i++)
        check_fitment(&tyres->options.items[i], diagnostics);
    return diagnostics->count == before;
}
