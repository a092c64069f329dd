/* Clearance: under axle and body, angles, wheel arches, wheels, spare, and the limits on all of
 * them; nominal, and with the largest tyre that the standard allows. */
#include "base/known.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "report/judge.h"
#include "report/clearance/view.h"

static void report_under_axle(const struct plan *plan, size_t index, int axle,
                              struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    double change = radius_change_m(plan, index, axle);
    double measured = of_axle(plan->specification->clearance.under_axle_m, axle);
    struct figure figure =
        figure_of(QUANTITY_UNDER_AXLE, measured + change, "measured + change of the loaded radius");
    figure.axle = axle;
    if (!known(figure.value)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = known(measured) ? "give data_book: overall_diameter of both tyres"
                                        : "give clearance: under_axle";
    }
    figures_add(figures, figure);
    figure.verdict = VERDICT_NONE;
    figure.action = NULL;
    if (setup->is_fitted)
        return;
    figure.quantity = QUANTITY_UNDER_AXLE_CHANGE;
    figure.value = change;
    figure.headline = axle == AXLE_FRONT ? HEADLINE_YES : HEADLINE_NO;
    figures_add(figures, figure);
}

/* What is left of the travel to bump in each state; none means standing on the bump stops. */
static void report_travel_left(const struct clearance_view *view, int axle, struct figures *figures)
{
    const struct axle_suspension *suspension = suspension_of(view->plan, axle);
    if (!known(suspension->travel_to_bump_m))
        return;
    double left =
        bump_travel_left_m(suspension->travel_to_bump_m, view->lift_m[axle],
                           known_or(suspension->bump_stop_change_m, 0), view->sag_m[axle]);
    struct figure figure = view_figure(view, QUANTITY_BUMP_TRAVEL_LEFT, left,
                                       "travel + lift - longer bump stop - sag");
    figure.axle = axle;
    if (!known(left)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "give vehicle: unladen and wheelbase, suspension: wheel_rate";
    } else if (figure_at_most(figure, 0).verdict == VERDICT_OK) {
        figure.limit = 0;
        figure.verdict = VERDICT_FAIL;
        figure.action = "it stands on its bump stops: stiffer springs, or less aboard";
    }
    figures_add(figures, figure);
}

/* Travel kept beside the fitted state: at bump as lift and bump stops leave it, at droop as lift
 * does, the damper's length being what it was. */
static void report_travel_kept(const struct plan *plan, const struct setup *setup, int axle,
                               struct figures *figures)
{
    const struct axle_suspension *suspension = suspension_of(plan, axle);
    double lift = axle_lift_m(plan, axle);
    const struct {
        double before, after;
        const char *at;
    } ends[] = {
        {suspension->travel_to_bump_m,
         bump_travel_left_m(suspension->travel_to_bump_m, lift,
                            known_or(suspension->bump_stop_change_m, 0), 0),
         "to bump"},
        {suspension->travel_to_droop_m, suspension->travel_to_droop_m - lift, "to droop"},
    };
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
        struct figure figure = figure_of(
            QUANTITY_TRAVEL_KEPT, ends[i].before > 0 ? ends[i].after / ends[i].before : UNKNOWN,
            "travel by lift and bump stops beside the fitted state's");
        figure.axle = axle;
        figure.at = ends[i].at;
        if (known(figure.value) && setup->is_fitted)
            figures_add(figures, figure);
        report_limits(plan, figures, figure, NULL, UNKNOWN);
    }
}

/* Limits on lift, lift and diameter together, track and inset. */
static void report_fit_limits(const struct plan *plan, size_t index, int axle,
                              struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct beside *beside = &plan->beside[index];
    const struct limits *limits = &plan->specification->limits;
    const struct wheel *before = &plan->fitted.axle[axle].wheel, *after = &setup->axle[axle].wheel;
    double lift = axle_lift_m(plan, axle);
    double taller =
        beside->after[axle].overall_diameter_m - beside->before[axle].overall_diameter_m;
    double track = of_axle(plan->specification->vehicle.track_m, axle);
    struct figure figure = figure_of(QUANTITY_RIDE_HEIGHT_CHANGE, lift,
                                     known(suspension_of(plan, axle)->free_height_change_m)
                                         ? "free height change + W/k of the old - W/k of the new"
                                         : "suspension: lift");
    figure.axle = axle;
    if (setup->is_fitted && known(suspension_of(plan, axle)->free_height_change_m))
        figures_add(figures, figure);
    report_limits(plan, figures, figure, &limits->ride_height_change, UNKNOWN);
    figure.quantity = QUANTITY_DIAMETER_AND_SUSPENSION;
    figure.value = lift + taller / 2;
    report_limits(plan, figures, figure, &limits->diameter_and_suspension, UNKNOWN);
    figure.quantity = QUANTITY_TRACK_CHANGE;
    figure.value = setup->is_fitted ? 0 : track_change_m(before, after);
    figure.basis = "-2 x inset change + 2 x spacer change";
    if (!setup->is_fitted)
        figures_add(figures, figure);
    report_limits(plan, figures, figure, &limits->track_change, track);
    figure.quantity = QUANTITY_INSET_CHANGE;
    figure.value = setup->is_fitted ? 0 : after->inset_m - before->inset_m;
    report_limits(plan, figures, figure, &limits->inset_change, UNKNOWN);
    report_travel_kept(plan, setup, axle, figures);
}

/* The state in which the body stands lowest: the one that a glance should see. */
static size_t lowest_state(const struct clearance_view *fitted, size_t count)
{
    size_t lowest = 0;
    double least = INFINITY;
    for (size_t i = 0; i < count; i++) {
        double here = ground_change_m(&fitted[i], fitted[i].body_change_m);
        if (here < least) {
            least = here;
            lowest = i;
        }
    }
    return lowest;
}

static void report_states(struct clearance_view *views, size_t count, size_t lowest,
                          struct figures *figures)
{
    for (size_t i = 0; i < count; i++) {
        views[i].headline = i == lowest ? HEADLINE_YES : HEADLINE_NO;
        report_body(&views[i], figures);
        report_angles(&views[i], figures);
        for (int axle = 0; axle < AXLE_COUNT && views[i].setup->is_fitted; axle++)
            report_travel_left(&views[i], axle, figures);
    }
}

/* A new spring's lift where the mass below it is not known. */
static void report_spring_assumption(const struct plan *plan, struct figures *figures)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct axle_suspension *suspension = suspension_of(plan, axle);
        if (!known(suspension->free_height_change_m) || known(suspension->unsprung_kg))
            continue;
        struct figure figure = figure_of(QUANTITY_ASSUMPTION, UNKNOWN, "assumption");
        figure.axle = axle;
        figure.action = "no unsprung_mass is given: the whole axle load is taken to ride on the "
                        "springs, which makes a stiffer spring lift a little too much";
        figures_add(figures, figure);
    }
}

/* Of a file that measures nothing, only what needs no measuring: limits, moves of the wheel, the
 * spare, what to check by hand. That the rest is missing is said once. */
static void keep_what_is_known(struct figures *figures, size_t start)
{
    size_t kept = start;
    for (size_t i = start; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        bool told = known(figure->value) || figure->quantity == QUANTITY_ASSUMPTION ||
                    figure->quantity == QUANTITY_WHEEL_BY_HAND ||
                    (figure->verdict != VERDICT_NONE && figure->verdict != VERDICT_UNKNOWN);
        if (told)
            figures->items[kept++] = *figure;
    }
    figures->count = kept;
    report_missing_part(figures, PART_CLEARANCE, "clearance");
}

void report_clearance(const struct plan *plan, struct figures *figures)
{
    size_t count = state_count(plan->specification);
    struct clearance_view *fitted = clearance_views_make(plan, 0, NULL);
    size_t lowest = lowest_state(fitted, count), start = figures->count;
    figures->part = PART_CLEARANCE;
    figures->setup = 0;
    report_spring_assumption(plan, figures);
    report_angles_before(plan, figures);
    for (size_t i = 0; i < plan->count; i++) {
        figures->setup = (int)i;
        struct clearance_view *views = i == 0 ? fitted : clearance_views_make(plan, i, fitted);
        report_states(views, count, lowest, figures);
        for (int axle = 0; axle < AXLE_COUNT; axle++) {
            report_under_axle(plan, i, axle, figures);
            report_arch(views, axle, figures);
            report_wheel_place(plan, i, axle, figures);
            report_fit_limits(plan, i, axle, figures);
        }
        report_wheel_mounting(plan, i, figures);
        report_spare_wheel(plan, i, figures);
        report_size_limits(plan, i, figures);
    }
    if (plan->specification->clearance.given == NULL)
        keep_what_is_known(figures, start);
}
