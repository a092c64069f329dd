/* Limits on lift, lift and diameter together, track, inset, spacers and travel; as the file says
 * they are, and with further work on an axle. */
#include "report/clearance/fit_limits.h"

#include "base/known.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "compute/springs.h"
#include "report/limits.h"

/* One axle of one setup, with what is done to it beside what the file says. */
struct worked_axle {
    const struct plan *plan;
    size_t index;
    int axle;
    struct fit_work work;
    struct figures *figures;
};

static struct figure figure_on(const struct worked_axle *on, enum quantity_id quantity,
                               double value, enum remark_id basis)
{
    return figure_on_axle(quantity, value, on->axle, remark(basis));
}

static double bump_stop_change_m(const struct plan *plan, int axle, double more_m)
{
    return known_or(suspension_of(plan, axle)->bump_stop_change_m, 0) + more_m;
}

double stance_travel_left_m(const struct stance *stance, int axle, double more_bump_stop_m)
{
    return bump_travel_left_m(
        suspension_of(stance->plan, axle)->travel_to_bump_m, stance->lift_m[axle],
        bump_stop_change_m(stance->plan, axle, more_bump_stop_m), stance->sag_m[axle]);
}

void travel_kept(const struct plan *plan, int axle, double more_bump_stop_m, struct figure out[2])
{
    const struct axle_suspension *suspension = suspension_of(plan, axle);
    double lift = axle_lift_m(plan->specification, axle);
    const double before[2] = {suspension->travel_to_bump_m, suspension->travel_to_droop_m};
    const double after[2] = {
        bump_travel_left_m(before[0], lift, bump_stop_change_m(plan, axle, more_bump_stop_m), 0),
        before[1] - lift};
    for (int i = 0; i < 2; i++) {
        out[i] =
            figure_on_axle(QUANTITY_TRAVEL_KEPT, before[i] > 0 ? after[i] / before[i] : UNKNOWN,
                           axle, remark(BASIS_TRAVEL_KEPT));
        out[i].place.posture = i == 0 ? AT_BUMP : AT_DROOP;
    }
}

static void report_travel_kept(const struct worked_axle *on)
{
    struct figure ends[2];
    travel_kept(on->plan, on->axle, on->work.bump_stop_m, ends);
    for (int i = 0; i < 2; i++) {
        if (known(ends[i].value) && on->plan->setups[on->index].is_fitted)
            figures_add(on->figures, ends[i]);
        report_limits(on->plan, on->figures,
                      &(struct limited_change){.figure = ends[i],
                                               .key = TRAVEL_KEPT_KEY,
                                               .whole = UNKNOWN,
                                               .if_unknown = ADVICE_GIVE_TRAVEL});
    }
}

/* How much the suspension raises the body, and together with the tyre. */
static void report_height_limits(const struct worked_axle *on)
{
    const struct plan *plan = on->plan;
    const struct beside *beside = &plan->beside[on->index];
    const struct limits *limits = &plan->specification->limits;
    double lift = axle_lift_m(plan->specification, on->axle);
    double taller =
        beside->after[on->axle].overall_diameter_m - beside->before[on->axle].overall_diameter_m;
    bool new_spring = known(suspension_of(plan, on->axle)->free_height_change_m);
    enum remark_id basis = new_spring ? BASIS_NEW_SPRING : BASIS_LIFT;
    struct figure height = figure_on(on, QUANTITY_RIDE_HEIGHT_CHANGE, lift, basis);
    struct figure both = figure_on(on, QUANTITY_DIAMETER_AND_SUSPENSION, lift + taller / 2, basis);
    if (plan->setups[on->index].is_fitted && new_spring)
        figures_add(on->figures, height);
    report_limits(plan, on->figures,
                  &(struct limited_change){.figure = height,
                                           .key = "ride_height_change",
                                           .house = &limits->ride_height_change,
                                           .whole = UNKNOWN,
                                           .if_unknown = ADVICE_GIVE_CHANGE});
    report_limits(plan, on->figures,
                  &(struct limited_change){.figure = both,
                                           .key = "diameter_and_suspension",
                                           .house = &limits->diameter_and_suspension,
                                           .whole = UNKNOWN,
                                           .if_unknown = ADVICE_GIVE_CHANGE});
}

static void report_track_limits(const struct worked_axle *on)
{
    const struct setup *setup = &on->plan->setups[on->index];
    const struct specification *specification = on->plan->specification;
    const struct limits *limits = &specification->limits;
    const struct wheel *before = &on->plan->fitted.axle[on->axle].wheel;
    struct wheel after = setup->axle[on->axle].wheel;
    after.spacer_m += on->work.spacer_m;
    bool fitted = setup->is_fitted;
    const struct {
        enum quantity_id quantity;
        const char *key;
        double value, whole;
        const struct window *house;
    } rows[] = {
        {QUANTITY_TRACK_CHANGE, "track_change", fitted ? 0 : track_change_m(before, &after),
         of_axle(specification->vehicle.track_m, on->axle), &limits->track_change},
        {QUANTITY_SPACER_CHANGE, "spacer_change",
         fitted ? 0 : known_or(after.spacer_m, 0) - known_or(before->spacer_m, 0), UNKNOWN, NULL},
        {QUANTITY_INSET_CHANGE, "inset_change", fitted ? 0 : after.inset_m - before->inset_m,
         UNKNOWN, &limits->inset_change},
    };
    if (!fitted)
        figures_add(on->figures, figure_on(on, QUANTITY_TRACK_CHANGE, rows[0].value, BASIS_TRACK));
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        report_limits(on->plan, on->figures,
                      &(struct limited_change){
                          .figure = figure_on(on, rows[i].quantity, rows[i].value, BASIS_TRACK),
                          .key = rows[i].key,
                          .house = rows[i].house,
                          .whole = rows[i].whole,
                          .if_unknown = ADVICE_GIVE_CHANGE,
                          .ask = TASK_READ_WHEEL});
}

static void report_with(const struct worked_axle *on)
{
    report_height_limits(on);
    report_track_limits(on);
    report_travel_kept(on);
}

void report_fit_limits(const struct plan *plan, size_t index, int axle, struct figures *figures)
{
    report_with(&(struct worked_axle){plan, index, axle, {0, 0}, figures});
}

bool fit_limits_hold(const struct plan *plan, size_t index, int axle, struct fit_work work)
{
    struct figures now = {.arena = plan->arena}, then = now;
    report_with(&(struct worked_axle){plan, index, axle, {0, 0}, &now});
    report_with(&(struct worked_axle){plan, index, axle, work, &then});
    for (size_t i = 0; i < then.count; i++)
        if (then.items[i].verdict == VERDICT_FAIL && now.items[i].verdict != VERDICT_FAIL)
            return false;
    return true;
}
