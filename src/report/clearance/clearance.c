/* Clearance: under axle and body, angles, wheel arches, wheels, spare, and the limits on all of
 * them; nominal, and with the largest tyre that the standard allows. */
#include "base/known.h"
#include "compute/load.h"
#include "report/clearance/fit_limits.h"

/* In a loading state the axle sinks with its tyres; springs do not matter to it. */
static void report_under_axle_loaded(const struct stance *stance, int axle, double unladen_m,
                                     struct figures *figures)
{
    double gives = stance->deflection_m[axle];
    if (!known(unladen_m) || gives == 0) /* the row without a state says it */
        return;
    const struct need need = deflection_need(stance, axle);
    struct figure figure =
        stance_figure(stance, QUANTITY_UNDER_AXLE, unladen_m - gives, BASIS_UNDER_AXLE_LOADED);
    figure.axle = axle;
    figures_add(figures, judged_above_zero(figure, &need, 1, ADVICE_ON_THE_GROUND));
}

static void report_under_axle(const struct stance *stances, size_t count, int axle,
                              struct figures *figures)
{
    const struct plan *plan = stances->plan;
    double change = radius_change_m(plan, stances->index, axle);
    double measured = of_axle(plan->specification->clearance.under_axle_m, axle);
    const struct need needs[] = {{known(measured), remark(ADVICE_GIVE_UNDER_AXLE)},
                                 {known(change), remark(ADVICE_GIVE_DIAMETERS)}};
    figures_add(figures, judged(figure_on_axle(QUANTITY_UNDER_AXLE, measured + change, axle,
                                               remark(BASIS_UNDER_AXLE)),
                                &(struct judgement){.needs = needs, .need_count = 2}));
    for (size_t i = 0; i < count; i++)
        report_under_axle_loaded(&stances[i], axle, measured + change, figures);
    if (stances->setup->is_fitted)
        return;
    struct figure figure =
        figure_on_axle(QUANTITY_UNDER_AXLE_CHANGE, change, axle, remark(BASIS_UNDER_AXLE));
    figure.headline = axle == AXLE_FRONT ? HEADLINE_YES : HEADLINE_NO;
    figures_add(figures, figure);
}

/* What is left of the travel to bump in each state; none means standing on the bump stops. */
static void report_travel_left(const struct stance *stance, int axle, struct figures *figures)
{
    if (!known(suspension_of(stance->plan, axle)->travel_to_bump_m))
        return;
    double left = stance_travel_left_m(stance, axle, 0);
    const struct need need = sag_need(stance, axle, known(left));
    struct figure figure =
        stance_figure(stance, QUANTITY_BUMP_TRAVEL_LEFT, left, BASIS_TRAVEL_LEFT);
    figure.axle = axle;
    figures_add(figures, judged_above_zero(figure, &need, 1, ADVICE_ON_BUMP_STOPS));
}

/* The state in which the body stands lowest: the one that a glance should see. */
static size_t lowest_state(const struct stance *fitted, size_t count)
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

static void report_states(struct stance *stances, size_t count, size_t lowest, unsigned pieces,
                          struct figures *figures)
{
    for (size_t i = 0; i < count; i++) {
        stances[i].headline = i == lowest ? HEADLINE_YES : HEADLINE_NO;
        if (pieces & CLEARANCE_OF_BOTH)
            report_body(&stances[i], figures);
        if (pieces & CLEARANCE_ANGLES)
            report_angles(&stances[i], figures);
        for (int axle = 0; axle < AXLE_COUNT && stances[i].setup->is_fitted; axle++)
            report_travel_left(&stances[i], axle, figures);
    }
    if (pieces & CLEARANCE_OF_BOTH)
        report_headlamp(stances, count, figures);
}

/* A new spring's lift where the mass below it is not known. */
static void report_spring_assumption(const struct plan *plan, struct figures *figures)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct axle_suspension *suspension = suspension_of(plan, axle);
        if (!known(suspension->free_height_change_m) || known(suspension->unsprung_kg))
            continue;
        struct figure figure =
            figure_on_axle(QUANTITY_ASSUMPTION, UNKNOWN, axle, remark(BASIS_ASSUMPTION));
        figure.advice = remark(TAKEN_ALL_SPRUNG);
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
}

/* What is told once, under the fitted setup. */
static void report_before(const struct plan *plan, struct figures *figures)
{
    figures->setup = 0;
    if (figures->verdicts_only)
        return;
    report_spring_assumption(plan, figures);
    report_angles_before(plan, figures);
    report_spring_choices(plan, figures);
}

static void report_axle(const struct stance *stances, size_t count, int axle, unsigned pieces,
                        struct figures *figures)
{
    const struct plan *plan = stances->plan;
    bool of_tyre = pieces & CLEARANCE_OF_TYRE,
         of_its_own = pieces & (axle == AXLE_FRONT ? CLEARANCE_OF_FRONT : CLEARANCE_OF_REAR);
    if (of_tyre)
        report_under_axle(stances, count, axle, figures);
    if (of_its_own) {
        report_arch(stances, axle, figures);
        report_tried_spring(stances, count, axle, figures);
    }
    if (of_tyre)
        report_wheel_place(plan, stances->index, axle, figures);
    if (of_its_own)
        report_fit_limits(plan, stances->index, axle, figures);
}

void report_clearance_pieces(const struct standing *standing, unsigned pieces,
                             struct figures *figures)
{
    const struct plan *plan = standing->plan;
    size_t count = state_count(plan->specification), start = figures->count;
    size_t lowest = lowest_state(standing->setups[0], count);
    figures->part = PART_CLEARANCE;
    report_before(plan, figures);
    for (size_t i = figures->first_setup; i < plan->count; i++) {
        figures->setup = (int)i;
        report_states(standing->setups[i], count, lowest, pieces, figures);
        for (int axle = 0; axle < AXLE_COUNT; axle++)
            report_axle(standing->setups[i], count, axle, pieces, figures);
        if (!(pieces & CLEARANCE_OF_TYRE))
            continue;
        report_wheel_mounting(plan, i, figures);
        report_spare_wheel(plan, i, figures);
        report_size_limits(plan, i, figures);
    }
    if (plan->specification->clearance.given != NULL)
        return;
    keep_what_is_known(figures, start);
    if (pieces & CLEARANCE_OF_TYRE)
        report_missing_part(figures, PART_CLEARANCE, "clearance");
}

void report_clearance(const struct plan *plan, struct figures *figures)
{
    report_clearance_pieces(standing_make(plan, NULL), CLEARANCE_WHOLE, figures);
}
