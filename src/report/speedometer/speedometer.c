/* The speedometer's part: what to enter comes first, then error, law, tables, odometer. */
#include "base/known.h"
#include "report/speedometer/view.h"

static void report_assumptions(const struct gauge *gauge)
{
    const struct tyre *fitted = &gauge->plan->fitted.axle[gauge->axle];
    if (!gauge->line_known)
        gauge_assume(gauge, "no fitted_error and no readings are given: the fitted tyre is taken "
                            "to read true");
    else if (gauge->calibration == NULL && !known(gauge->instrument->fitted_error) &&
             gauge->odometer_known && gauge->instrument->sensor.given == NULL)
        gauge_assume(gauge, "no reading of speed is given: the speedometer is taken to be off as "
                            "the odometer is");
    if (gauge->top_assumed && gauge->rule != NULL && !known(gauge->rule->applies_to))
        gauge_assume(gauge, "no vehicle: top_speed is given: lawfulness is judged up to 120 km/h, "
                            "the highest test speed");
    if (gauge->plan->count > 1 &&
        !(known(fitted->tread_depth_m) && known(fitted->new_tread_depth_m)))
        gauge_assume(gauge, "the fitted tyre has no tread_depth and new_tread_depth: its error is "
                            "taken as that of a new tyre");
}

/* What is judged of one setup, and nothing that is only told. */
static void report_verdicts(const struct gauge *gauge, const struct gauge_view *view, size_t index)
{
    report_prediction(gauge, view);
    report_setting(gauge, view);
    report_odometer(gauge, view);
    report_wheel_speed_systems(gauge, view, index);
}

void report_speedometer_verdicts(const struct plan *plan, struct figures *figures)
{
    struct gauge gauge;
    gauge_set(plan, figures, &gauge);
    figures->part = PART_SPEEDOMETER;
    for (size_t i = 0; i < plan->count; i++) {
        struct gauge_view view;
        figures->setup = (int)i;
        gauge_view_set(&gauge, i, &view);
        report_verdicts(&gauge, &view, i);
    }
}

bool report_takes_true(const struct plan *plan)
{
    struct figures unused = {.arena = plan->arena};
    struct gauge gauge;
    gauge_set(plan, &unused, &gauge);
    return !gauge.line_known;
}

void report_true_at_100(const struct plan *plan, double *true_speeds)
{
    struct figures unused = {.arena = plan->arena};
    struct gauge gauge;
    gauge_set(plan, &unused, &gauge);
    enum unit_id unit = gauge_unit(&gauge);
    for (size_t i = 0; i < plan->count; i++) {
        struct gauge_view view;
        gauge_view_set(&gauge, i, &view);
        true_speeds[i] = unit_from_si(unit, true_speed_mps(view.line, unit_to_si(unit, 100)));
    }
}

void report_speedometer(const struct plan *plan, struct figures *figures)
{
    struct gauge gauge;
    gauge_set(plan, figures, &gauge);
    figures->part = PART_SPEEDOMETER;
    figures->setup = 0;
    report_assumptions(&gauge);
    for (size_t i = 0; i < plan->count; i++) {
        struct gauge_view view;
        figures->setup = (int)i;
        gauge_view_set(&gauge, i, &view);
        report_answer(&gauge, &view);
        if (view.setup->is_fitted)
            report_readings(&gauge);
        report_verdicts(&gauge, &view, i);
        report_readings_judged(&gauge, &view);
        report_law(&gauge, &view);
        report_speed_table(&gauge, &view);
    }
}
