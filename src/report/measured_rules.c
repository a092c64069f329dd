#include "report/measured_rules.h"

#include "base/known.h"
#include "base/units.h"
#include "build/rule_check.h"
#include "compute/clearance.h"
#include "compute/dimensions.h"
#include "compute/fitment.h"

/* Common practice, no source: the standards let a tyre differ by some 4 %, and the nearest slip, a
 * mile for a kilometre, makes 60 %. */
static const double far_apart = 0.15;

struct book_check {
    const struct check *check;
    const struct data_book *book;
    const char *size;
};

static bool is_far(double given, double by_rule)
{
    return clearly_above(fabs(given - by_rule), far_apart * by_rule);
}

static void check_length(const struct book_check *book, const char *key, double given_m,
                         double by_rule_m, const char *expected)
{
    if (is_far(given_m, by_rule_m))
        FAULT(book->check, book->book->given, key,
              "this is far from what %s has by rule, %.0f mm; expected %s", book->size,
              unit_from_si(UNIT_MM, by_rule_m), expected);
}

static void check_revolutions(const struct book_check *book, const char *key, double given,
                              enum unit_id unit, double by_rule_per_m)
{
    if (is_far(unit_to_si(unit, given), by_rule_per_m))
        FAULT(book->check, book->book->given, key,
              "this is far from what %s turns by rule; expected about %.0f per km, which is %.0f "
              "per mile",
              book->size, unit_from_si(UNIT_PER_KM, by_rule_per_m),
              unit_from_si(UNIT_PER_MILE, by_rule_per_m));
}

static void check_book(const struct check *check, const struct data_book *book,
                       const struct designation *size)
{
    char name[DESIGNATION_CANONICAL_SIZE];
    struct tyre_dimensions rule;
    designation_canonical(size, name);
    figures_by_rule(size, UNKNOWN, &rule);
    const struct book_check of = {check, book, name};
    check_length(&of, "overall_diameter", book->overall_diameter_m, rule.overall_diameter_m,
                 "the tyre's diameter, from tread to tread");
    check_length(&of, "section_width", book->section_width_m, rule.section_width_m,
                 "its width on the measuring rim");
    check_length(&of, "static_loaded_radius", book->static_loaded_radius_m,
                 rule.static_loaded_radius_m, "the height of the axle's centre above the ground");
    check_revolutions(&of, "revs_per_km", book->revs_per_km, UNIT_PER_KM,
                      1 / rule.rolling_circumference_m);
    check_revolutions(&of, "revs_per_mile", book->revs_per_mile, UNIT_PER_MILE,
                      1 / rule.rolling_circumference_m);
    double diameter_m = known_or(book->overall_diameter_m, rule.overall_diameter_m);
    if (clearly_above(2 * book->static_loaded_radius_m, diameter_m))
        FAULT(check, book->given, "static_loaded_radius",
              "this is above half the overall diameter, %.0f mm; expected the height of the "
              "axle's centre above the ground, under load",
              unit_from_si(UNIT_MM, diameter_m / 2));
}

/* A rear tyre without a size of its own has the front's. */
static void check_tyre(const struct check *check, const struct tyre *tyre, const struct tyre *front)
{
    const struct tyre *sized = tyre->size_given ? tyre : front;
    if (tyre->data_book.given != NULL && sized->size_given)
        check_book(check, &tyre->data_book, &sized->size);
}

static void check_fitment(const struct check *check, const struct fitment *fitment)
{
    check_tyre(check, &fitment->tyre, &fitment->tyre);
    check_tyre(check, &fitment->rear, &fitment->tyre);
    check_tyre(check, &fitment->spare, &fitment->tyre);
}

static void rule_data_books_are_of_their_size(const struct check *check)
{
    const struct tyres *tyres = &check->specification->tyres;
    check_fitment(check, &tyres->fitted);
    check_tyre(check, &tyres->spare, &tyres->spare);
    for (size_t i = 0; i < tyres->options.count; i++)
        check_fitment(check, &tyres->options.items[i]);
}

static void check_point(const struct check *check, const struct body_point *point, const char *key,
                        double distance_m, const char *axle, double radius_m)
{
    if (lies_within_tyre(distance_m, point->height_m, radius_m))
        FAULT(check, point->given, key,
              "this point lies within the outline of the fitted %s tyre, whose static loaded "
              "radius is %.0f mm; expected a point clear of the tyre",
              axle, unit_from_si(UNIT_MM, radius_m));
}

static void check_points(const struct check *check, const struct point_list *points,
                         const struct tyre_measures fitted[AXLE_COUNT])
{
    for (size_t i = 0; i < points->count; i++) {
        const struct body_point *point = &points->items[i];
        check_point(check, point, "ahead", point->ahead_m, "front",
                    fitted[AXLE_FRONT].stated.static_loaded_radius_m);
        check_point(check, point, "behind", point->behind_m, "rear",
                    fitted[AXLE_REAR].stated.static_loaded_radius_m);
    }
}

static void rule_points_are_clear_of_tyres(const struct check *check)
{
    const struct specification *specification = check->specification;
    struct setup fitted;
    struct tyre_measures measures[AXLE_COUNT];
    setup_fitted(specification, &fitted);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        if (!fitted.axle[axle].size_given)
            return; /* its own fault */
        tyre_measure(&fitted.axle[axle], &measures[axle]);
    }
    check_points(check, &specification->clearance.front_overhang, measures);
    check_points(check, &specification->clearance.rear_overhang, measures);
    for (size_t i = 0; i < specification->carried.count; i++)
        check_points(check, &specification->carried.items[i].points, measures);
}

bool measured_rules_check(const struct specification *specification,
                          struct diagnostics *diagnostics)
{
    static void (*const rules[])(const struct check *) = {
        rule_data_books_are_of_their_size,
        rule_points_are_clear_of_tyres,
    };
    const struct check check = {specification, diagnostics};
    size_t before = diagnostics->count;
    for (size_t i = 0; i < sizeof rules / sizeof rules[0]; i++)
        rules[i](&check);
    return diagnostics->count == before;
}
