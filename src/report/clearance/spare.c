/* The spare: does it go in where it is carried, does it roll like the others, what does it weigh.
 */
#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"
#include "report/judge.h"
#include "report/clearance/view.h"
#include "size/designation.h"

struct spare_view {
    const struct plan *plan;
    const struct setup *setup;
    struct figures *figures;
};

static double deflated(const struct spare_view *view, double value)
{
    return view->setup->spare.deflated.given == NULL ? UNKNOWN : value;
}

/* One dimension, with air and, where that size is given, without. */
static void report_room(const struct spare_view *view, double space, double inflated,
                        double without_air, const char *at, const char *at_deflated)
{
    double empty = space - deflated(view, without_air);
    struct figure figure =
        figure_of(QUANTITY_SPARE_ROOM, space - inflated, "measured space less the largest tyre");
    figure.at = at;
    figure = figure_at_least(figure, 0);
    if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = "give clearance: spare_space";
    struct figure without =
        figure_of(QUANTITY_SPARE_ROOM, empty, "measured space less the spare without air");
    without.at = at_deflated;
    without = figure_at_least(without, 0);
    if (without.verdict == VERDICT_FAIL)
        without.action = "carry the spare elsewhere";
    if (figure.verdict == VERDICT_FAIL) {
        figure.action = "carry the spare elsewhere";
        if (without.verdict == VERDICT_OK) {
            figure.verdict = VERDICT_CAUTION;
            figure.action = "it goes in only without air: carry a pump";
        }
    }
    figures_add(view->figures, figure);
    if (known(empty))
        figures_add(view->figures, without);
}

static void report_space(const struct spare_view *view)
{
    const struct spare_space *space = &view->plan->specification->clearance.spare_space;
    const struct tyre *spare = &view->setup->spare;
    struct tyre_measures measures;
    tyre_measure(spare, &measures);
    report_room(view, space->diameter_m, measures.stated.overall_diameter_max_m,
                spare->deflated.diameter_m, "largest, diameter", "without air, diameter");
    report_room(view, space->width_m, measures.stated.width_on_rim_max_m, spare->deflated.width_m,
                "largest, width", "without air, width");
}

static void judge_circumference(const struct spare_view *view, int axle, const char *at,
                                double change, double circumference_m, const char *basis)
{
    struct figure figure = figure_of(QUANTITY_SPARE_CIRCUMFERENCE, change, basis);
    figure.axle = axle;
    figure.at = at;
    figure.limit = circumference_difference_allowed(circumference_m);
    if (!known(change)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "give the spare's and the tyres' data_book";
    } else if (clearly_above(fabs(change), figure.limit)) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = plan_drives_all_wheels(view->plan)
                            ? "it winds up coupled axles: short distances only, or one of the set"
                            : "it rolls unlike its neighbour: short distances only";
    } else
        figure.verdict = VERDICT_OK;
    figures_add(view->figures, figure);
}

/* Rolling circumference beside each axle's tyre; a quarter inch is quoted as the most between
 * coupled axles (common practice, no source). */
static void report_circumference(const struct spare_view *view, int axle, int shown_axle)
{
    const struct tyre *spare = &view->setup->spare, *tyre = &view->setup->axle[axle];
    struct tyre_figures axle_figures, spare_figures;
    bool mixed;
    figures_to_compare(tyre, spare, &axle_figures, &spare_figures, &mixed);
    double circumference = axle_figures.rolling_circumference_m;
    double change = spare_figures.rolling_circumference_m / circumference - 1;
    judge_circumference(view, shown_axle, "new", change, circumference,
                        "rolling circumference; a quarter inch is quoted (common practice, no "
                        "source)");
    double deeper = spare->tread_depth_m - tyre->tread_depth_m;
    if (known(deeper))
        judge_circumference(view, shown_axle, "as worn", change + 2 * PI * deeper / circumference,
                            circumference,
                            "with 2 pi x the difference of tread depth, a bound: the belt takes up "
                            "part of it");
}

static bool matches(const struct tyre *spare, const struct tyre *tyre)
{
    return tyre->size_given && designation_equal(&spare->size, &tyre->size);
}

/* A matched set of five, rotated or not. */
static void report_set(const struct spare_view *view)
{
    const struct tyre *spare = &view->setup->spare;
    bool matched = matches(spare, &view->setup->axle[AXLE_FRONT]) &&
                   matches(spare, &view->setup->axle[AXLE_REAR]);
    struct figure figure =
        figure_of(QUANTITY_SPARE_SET, UNKNOWN, "designation of the spare beside the other four");
    figure.verdict = VERDICT_OK;
    figure.at = matched ? spare->rotated == 1 ? "five alike, rotated" : "five alike, not rotated"
                        : "another tyre than the four";
    if (!matched) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = spare->size.prefix == PREFIX_T
                            ? "a temporary spare: its own speed and pressure apply"
                            : "for the way home only; one of the set can stay on";
    } else if (spare->rotated != 1 && plan_drives_all_wheels(view->plan)) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = "it stays new while four wear: rotate all five, or change it only in pairs";
    }
    figures_add(view->figures, figure);
}

static void report_mass(const struct spare_view *view)
{
    const struct tyre *before = &view->plan->fitted.spare, *after = &view->setup->spare;
    if (view->setup->is_fitted || !before->size_given || after->given == before->given)
        return;
    double change = after->mass_kg - before->mass_kg;
    struct figure figure = figure_of(QUANTITY_SPARE_MASS, change,
                                     "counted in the axle loads where the spare is carried");
    if (!known(change)) {
        figure.quantity = QUANTITY_ASSUMPTION;
        figure.basis = "assumption";
        figure.action = "no mass is given for both spares: no change of mass is taken";
    } else if (fabs(change) > 1e-9 * after->mass_kg &&
               !known(view->plan->specification->clearance.spare_space.at_m)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "give clearance: spare_space: at, so that the axle loads count it";
    }
    figures_add(view->figures, figure);
}

void report_spare_wheel(const struct plan *plan, size_t index, struct figures *figures)
{
    const struct spare_view view = {plan, &plan->setups[index], figures};
    const struct setup *setup = view.setup;
    if (!setup->spare.size_given)
        return;
    report_space(&view);
    bool alike = !setup_axles_differ(setup);
    for (int axle = 0; axle < (alike ? 1 : AXLE_COUNT); axle++)
        report_circumference(&view, axle, alike ? AXLE_NONE : axle);
    report_set(&view);
    report_mass(&view);
}
