/* Over random builds: to know more of steering, tape or data book never makes good what failed,
 * unless it is the measured value itself that does. */
#include <string.h>

#include "base/known.h"
#include "compute/capacity.h"
#include "compute/dimensions.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"

/* The build without that knowledge, and with it; false where there is nothing to know. */
struct knowledge {
    const char *what;
    bool (*take)(struct run *run);
    bool (*give)(struct run *run);
};

static struct tyre *tyre_of_option(const struct run *run, size_t option)
{
    return &run->specification->tyres.options.items[option].tyre;
}

static bool take_steering(struct run *run)
{
    struct steering *steering = &run->specification->clearance.steering;
    steering->axis_to_centre_m = steering->lock_rad = steering->kingpin_inclination_rad = UNKNOWN;
    steering->touches = steering->meets = CHOICE_NONE;
    return true;
}

/* Where the tyre stands and how far it turns, and not what of it comes nearest to what. */
static bool give_steering(struct run *run)
{
    struct steering *steering = &run->specification->clearance.steering;
    steering->axis_to_centre_m = 0.04;
    steering->lock_rad = 0.6;
    steering->kingpin_inclination_rad = 0.2;
    return true;
}

static bool take_tolerance(struct run *run)
{
    run->specification->measured.tape_m = run->specification->measured.scale_kg = UNKNOWN;
    return true;
}

static bool give_tolerance(struct run *run)
{
    run->specification->measured.tape_m = 0.005;
    run->specification->measured.scale_kg = 25;
    return true;
}

static bool take_data_books(struct run *run)
{
    const struct data_book none = tyre_unknown().data_book;
    struct tyres *tyres = &run->specification->tyres;
    tyres->fitted.tyre.data_book = tyres->fitted.rear.data_book = none;
    for (size_t i = 0; i < tyres->options.count; i++)
        tyres->options.items[i].tyre.data_book = tyres->options.items[i].rear.data_book = none;
    return tyres->options.count > 0;
}

/* Of the options alone, and smaller than the size: a difference of two sources is none. */
static bool give_diameters(struct run *run)
{
    for (size_t i = 0; i < run->specification->tyres.options.count; i++) {
        struct tyre *tyre = tyre_of_option(run, i);
        struct tyre_measures measures;
        tyre_measure(tyre, &measures);
        tyre->data_book.overall_diameter_m = 0.97 * measures.stated.overall_diameter_m;
        tyre->data_book.static_loaded_radius_m = 0.49 * measures.stated.overall_diameter_m;
    }
    return true;
}

/* What is taken of the tyres anyway, as moulded. */
static bool give_maxima(struct run *run)
{
    for (size_t i = 0; i < run->specification->tyres.options.count; i++) {
        struct tyre *tyre = tyre_of_option(run, i);
        struct tyre_rating rating;
        tyre_rate(tyre, CHOICE_NONE, UNKNOWN, &rating);
        tyre->data_book.max_load_kg = rating.load_kg;
        tyre->data_book.at_pressure_Pa = rating.reference_Pa;
    }
    return true;
}

static const struct knowledge knowledge[] = {
    {"steering geometry", take_steering, give_steering},
    {"how far off tape and scale may be", take_tolerance, give_tolerance},
    {"diameters of the options' data books", take_data_books, give_diameters},
    {"maxima as moulded", take_data_books, give_maxima},
};

/* A spare is measured by itself, and no difference. */
static bool is_of_spare(const struct figure *figure)
{
    const char *name = quantity_rows[figure->quantity].name;
    return strncmp(name, "spare", strlen("spare")) == 0;
}

static bool makes_good(const struct figure *before, const struct figure *after)
{
    return before->verdict == VERDICT_FAIL && !is_of_spare(before) &&
           (after->verdict == VERDICT_OK || after->verdict == VERDICT_CAUTION ||
            after->verdict == VERDICT_NONE);
}

static int know_more(struct run *run, const struct knowledge *more)
{
    static struct run less;
    int checked = 0;
    if (!more->take(run))
        return 0;
    run_compute(run, false);
    less = *run;
    more->give(run);
    run_compute(run, false);
    for (size_t i = 0; i < less.figures.count; i++) {
        const struct figure *before = &less.figures.items[i],
                            *after = find_like(run, &less, before, i);
        if (after == NULL)
            continue;
        REQUIRE(!makes_good(before, after), "%s: %s makes it %s: %.9g of %.9g, before %.9g",
                told_of(run, after), more->what, verdict_name(after->verdict), after->value,
                after->limit, before->value);
        REQUIRE(before->quantity != QUANTITY_ARCH_LOCK ||
                    !(after->value > before->value + 1e-9 && more->take == take_steering),
                "%s: geometry gives %g m, the bound %g m", told_of(run, after), after->value,
                before->value);
        checked += before->verdict == VERDICT_FAIL;
    }
    return checked;
}

static void check_knowledge(const struct knowledge *more)
{
    uint64_t seed = random_start(more->what);
    int checked = 0, few = properties_count(BUILDS_FEW);
    for (int i = 0; i < few || (checked == 0 && i < 40 * few); i++, seed++) {
        struct run run;
        run_make(&run, seed, &as_drawn);
        checked += know_more(&run, more);
        run_free(&run);
    }
    REQUIRE(checked > 0, "%s: nothing failed", more->what);
}

START_TEST(to_know_more_makes_nothing_good)
{
    check_knowledge(&knowledge[_i]);
}
END_TEST

Suite *properties_knowledge_suite(void)
{
    Suite *suite = suite_create("properties_knowledge");
    TCase *more = tcase_create("knowledge");
    tcase_set_timeout(more, 0);
    tcase_add_loop_test(more, to_know_more_makes_nothing_good, 0, (int)LENGTH_OF(knowledge));
    suite_add_tcase(suite, more);
    return suite;
}
