/* The speedometer's part: what to enter comes first, then error, law, tables, odometer. */
#include "base/known.h"
#include "report/speedometer/gauge.h"

/* The tyre that the error was measured on tells no wear. */
static void report_wear_taken(const struct gauge *gauge)
{
    const struct tyre *tyre = &gauge->measured.axle[gauge->axle];
    bool asked = gauge->instrument->setting.given != NULL;
    if (!measured_on_a_tyre(gauge) || (gauge->plan->count == 1 && !asked) ||
        (known(tyre->tread_depth_m) && known(tyre->new_tread_depth_m)))
        return;
    gauge_assume(gauge, gauge->measured.is_fitted ? TAKEN_NEW_FITTED : TAKEN_NEW_MEASURED);
}

static void report_assumptions(const struct gauge *gauge)
{
    if (gauge->source == LINE_NEW)
        gauge_assume(gauge, TAKEN_NEW_INSTRUMENT);
    else if (gauge->source == LINE_TAKEN_TRUE)
        gauge_assume(gauge, TAKEN_TRUE);
    else if (gauge->source == LINE_OF_ODOMETER)
        gauge_assume(gauge, TAKEN_AS_ODOMETER);
    if (gauge->top_assumed && gauge->law.rule != NULL && !known(gauge->law.rule->applies_to))
        gauge_assume(gauge, TAKEN_TOP_SPEED);
    report_wear_taken(gauge);
}

/* What is judged of one setup, and nothing that is only told. */
static void report_verdicts(const struct gauge *gauge, const struct dial *dial, size_t index)
{
    report_prediction(gauge, dial);
    report_setting(gauge, dial);
    if (gauge->source != LINE_NEW) /* whose odometer is nobody's yet */
        report_odometer(gauge, dial);
    report_wheel_speed_systems(gauge, dial, index);
}

void report_speedometer_verdicts(const struct plan *plan, struct figures *figures)
{
    struct gauge gauge;
    gauge_set(plan, figures, &gauge);
    figures->part = PART_SPEEDOMETER;
    for (size_t i = figures->first_setup; i < plan->count; i++) {
        struct dial dial;
        figures->setup = (int)i;
        dial_set(&gauge, i, &dial);
        report_verdicts(&gauge, &dial, i);
    }
}

bool report_takes_true(const struct plan *plan)
{
    struct figures unused = {.arena = plan->arena};
    struct gauge gauge;
    gauge_set(plan, &unused, &gauge);
    return gauge.source == LINE_TAKEN_TRUE;
}

void report_true_at_100(const struct plan *plan, double *true_speeds)
{
    struct figures unused = {.arena = plan->arena};
    struct gauge gauge;
    gauge_set(plan, &unused, &gauge);
    enum unit_id unit = gauge_unit(&gauge);
    for (size_t i = 0; i < plan->count; i++) {
        struct dial dial;
        dial_set(&gauge, i, &dial);
        true_speeds[i] = unit_from_si(unit, true_speed_mps(dial.line, unit_to_si(unit, 100)));
    }
}

void report_speedometer(const struct plan *plan, struct figures *figures)
{
    struct gauge gauge;
    gauge_set(plan, figures, &gauge);
    figures->part = PART_SPEEDOMETER;
    figures->setup = 0;
    report_assumptions(&gauge);
    for (size_t i = figures->first_setup; i < plan->count; i++) {
        struct dial dial;
        figures->setup = (int)i;
        dial_set(&gauge, i, &dial);
        report_answer(&gauge, &dial);
        if (dial.setup->is_fitted)
            report_readings(&gauge);
        report_verdicts(&gauge, &dial, i);
        report_readings_judged(&gauge, &dial);
        report_law(&gauge, &dial);
        if (!figures->verdicts_only)
            report_speed_table(&gauge, &dial);
    }
}
