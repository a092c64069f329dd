/* Clearance: under axle and body, angles, wheel arches, wheels, spare, and the limits on all of
 * them; nominal, and with the largest tyre that the standard allows. */
#include "base/known.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "report/limits.h"
#include "report/clearance/stance.h"

static struct figure axle_figure(enum quantity_id quantity, int axle, double value,
                                 enum remark_id basis)
{
    struct figure figure = figure_of(quantity, value, NULL);
    figure.based = remark(basis);
    figure.axle = axle;
    return figure;
}

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
    figures_add(figures,
                judged(axle_figure(QUANTITY_UNDER_AXLE, axle, measured + change, BASIS_UNDER_AXLE),
                       &(struct judgement){.needs = needs, .need_count = 2}));
    for (size_t i = 0; i < count; i++)
        report_under_axle_loaded(&stances[i], axle, measured + change, figures);
    if (stances->setup->is_fitted)
        return;
    struct figure figure = axle_figure(QUANTITY_UNDER_AXLE_CHANGE, axle, change, BASIS_UNDER_AXLE);
    figure.headline = axle == AXLE_FRONT ? HEADLINE_YES : HEADLINE_NO;
    figures_add(figures, figure);
}

/* What is left of the travel to bump in each state; none means standing on the bump stops. */
static void report_travel_left(const struct stance *stance, int axle, struct figures *figures)
{
    const struct axle_suspension *suspension = suspension_of(stance->plan, axle);
    if (!known(suspension->travel_to_bump_m))
        return;
    double left =
        bump_travel_left_m(suspension->travel_to_bump_m, stance->lift_m[axle],
                           known_or(suspension->bump_stop_change_m, 0), stance->sag_m[axle]);
    const struct need need = {known(left), remark(ADVICE_GIVE_FOR_TRAVEL)};
    struct figure figure =
        stance_figure(stance, QUANTITY_BUMP_TRAVEL_LEFT, left, BASIS_TRAVEL_LEFT);
    figure.axle = axle;
    figures_add(figures, judged_above_zero(figure, &need, 1, ADVICE_ON_BUMP_STOPS));
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
        enum place_posture posture;
    } ends[] = {
        {suspension->travel_to_bump_m,
         bump_travel_left_m(suspension->travel_to_bump_m, lift,
                            known_or(suspension->bump_stop_change_m, 0), 0),
         AT_BUMP},
        {suspension->travel_to_droop_m, suspension->travel_to_droop_m - lift, AT_DROOP},
    };
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
        struct figure figure = axle_figure(
            QUANTITY_TRAVEL_KEPT, axle,
            ends[i].before > 0 ? ends[i].after / ends[i].before : UNKNOWN, BASIS_TRAVEL_KEPT);
        figure.place.posture = ends[i].posture;
        if (known(figure.value) && setup->is_fitted)
            figures_add(figures, figure);
        report_limits(plan, figures,
                      &(struct limited_change){figure, "suspension_travel_kept", NULL, UNKNOWN,
                                               ADVICE_GIVE_TRAVEL});
    }
}

/* How much the suspension raises the body, and together with the tyre. */
static void report_height_limits(const struct plan *plan, size_t index, int axle,
                                 struct figures *figures)
{
    const struct beside *beside = &plan->beside[index];
    const struct limits *limits = &plan->specification->limits;
    double lift = axle_lift_m(plan, axle);
    double taller =
        beside->after[axle].overall_diameter_m - beside->before[axle].overall_diameter_m;
    bool new_spring = known(suspension_of(plan, axle)->free_height_change_m);
    enum remark_id basis = new_spring ? BASIS_NEW_SPRING : BASIS_LIFT;
    struct figure height = axle_figure(QUANTITY_RIDE_HEIGHT_CHANGE, axle, lift, basis);
    struct figure both =
        axle_figure(QUANTITY_DIAMETER_AND_SUSPENSION, axle, lift + taller / 2, basis);
    if (plan->setups[index].is_fitted && new_spring)
        figures_add(figures, height);
    report_limits(plan, figures,
                  &(struct limited_change){height, "ride_height_change",
                                           &limits->ride_height_change, UNKNOWN,
                                           ADVICE_GIVE_CHANGE});
    report_limits(plan, figures,
                  &(struct limited_change){both, "diameter_and_suspension",
                                           &limits->diameter_and_suspension, UNKNOWN,
                                           ADVICE_GIVE_CHANGE});
}

static void report_track_limits(const struct plan *plan, size_t index, int axle,
                                struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct limits *limits = &plan->specification->limits;
    const struct wheel *before = &plan->fitted.axle[axle].wheel, *after = &setup->axle[axle].wheel;
    bool fitted = setup->is_fitted;
    struct figure track = axle_figure(QUANTITY_TRACK_CHANGE, axle,
                                      fitted ? 0 : track_change_m(before, after), BASIS_TRACK);
    struct figure inset = axle_figure(QUANTITY_INSET_CHANGE, axle,
                                      fitted ? 0 : after->inset_m - before->inset_m, BASIS_TRACK);
    if (!fitted)
        figures_add(figures, track);
    report_limits(plan, figures,
                  &(struct limited_change){track, "track_change", &limits->track_change,
                                           of_axle(plan->specification->vehicle.track_m, axle),
                                           ADVICE_GIVE_CHANGE});
    struct figure spacer = track;
    spacer.quantity = QUANTITY_SPACER_CHANGE;
    spacer.value = fitted ? 0 : known_or(after->spacer_m, 0) - known_or(before->spacer_m, 0);
    report_limits(
        plan, figures,
        &(struct limited_change){spacer, "spacer_change", NULL, UNKNOWN, ADVICE_GIVE_CHANGE});
    report_limits(plan, figures,
                  &(struct limited_change){inset, "inset_change", &limits->inset_change, UNKNOWN,
                                           ADVICE_GIVE_CHANGE});
}

/* Limits on lift, lift and diameter together, track, inset and travel. */
static void report_fit_limits(const struct plan *plan, size_t index, int axle,
                              struct figures *figures)
{
    report_height_limits(plan, index, axle, figures);
    report_track_limits(plan, index, axle, figures);
    report_travel_kept(plan, &plan->setups[index], axle, figures);
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

static void report_states(struct stance *stances, size_t count, size_t lowest,
                          struct figures *figures)
{
    for (size_t i = 0; i < count; i++) {
        stances[i].headline = i == lowest ? HEADLINE_YES : HEADLINE_NO;
        report_body(&stances[i], figures);
        report_angles(&stances[i], figures);
        for (int axle = 0; axle < AXLE_COUNT && stances[i].setup->is_fitted; axle++)
            report_travel_left(&stances[i], axle, figures);
    }
}

/* A new spring's lift where the mass below it is not known. */
static void report_spring_assumption(const struct plan *plan, struct figures *figures)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct axle_suspension *suspension = suspension_of(plan, axle);
        if (!known(suspension->free_height_change_m) || known(suspension->unsprung_kg))
            continue;
        struct figure figure = axle_figure(QUANTITY_ASSUMPTION, axle, UNKNOWN, BASIS_ASSUMPTION);
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
    report_missing_part(figures, PART_CLEARANCE, "clearance");
}

void report_clearance(const struct plan *plan, struct figures *figures)
{
    size_t count = state_count(plan->specification);
    struct stance *fitted = stances_make(plan, 0, NULL);
    size_t lowest = lowest_state(fitted, count), start = figures->count;
    figures->part = PART_CLEARANCE;
    figures->setup = 0;
    report_spring_assumption(plan, figures);
    report_angles_before(plan, figures);
    for (size_t i = 0; i < plan->count; i++) {
        figures->setup = (int)i;
        struct stance *stances = i == 0 ? fitted : stances_make(plan, i, fitted);
        report_states(stances, count, lowest, figures);
        for (int axle = 0; axle < AXLE_COUNT; axle++) {
            report_under_axle(stances, count, axle, figures);
            report_arch(stances, axle, figures);
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
