/* What the instrument will show with a setup: on its nominal circumference, over the range that
 * tyres of one size may have, and as the tread wears. */
#include <string.h>

#include "base/known.h"
#include "report/speedometer/view.h"
#include "tables/lookup.h"

/* Principal grooves, Directive 89/459/EEC; the 2/32 in of 49 CFR 570.9 are the same. */
#define WEAR_LIMIT_M 1.6e-3

static const char *construction_name(const struct tyre *tyre)
{
    return tyre->size.construction == CONSTRUCTION_RADIAL     ? "radial"
           : tyre->size.construction == CONSTRUCTION_DIAGONAL ? "diagonal"
                                                              : "bias_belted";
}

/* Tread gone where the depth now and when new are both given; 0 otherwise. */
static double tread_lost_m(const struct tyre *tyre)
{
    return clearly_above(tyre->new_tread_depth_m, tyre->tread_depth_m)
               ? tyre->new_tread_depth_m - tyre->tread_depth_m
               : 0;
}

/* How much smaller than new the measured tyre was while its error was measured, as a ratio. */
static double measured_wear(const struct gauge *gauge)
{
    const struct tyre *tyre = &gauge->measured.axle[gauge->axle];
    struct tyre_measures measures;
    tyre_measure(tyre, &measures);
    double lost = tread_lost_m(tyre);
    return lost > 0 ? worn_circumference_m(1, measures.stated.overall_diameter_m, lost) : 1;
}

struct spread circumference_spread(const struct gauge *gauge, const struct setup *setup,
                                   bool measured)
{
    const struct rolling_row *row = rolling_find(construction_name(&setup->axle[gauge->axle]));
    if (measured || row == NULL) /* the very tyre has been measured */
        return (struct spread){0, 0};
    double wear = known_or(measured_wear(gauge), 1);
    return (struct spread){.under = row->spread_under_percent / 100,
                           .over = (1 + row->spread_over_percent / 100) / wear - 1};
}

/* The line on a circumference that is `ratio` of the setup's. */
static struct instrument_line line_at(const struct gauge_view *view, double ratio)
{
    return line_on_circumference(view->line, 1, ratio);
}

static const char *correction_text(const struct gauge *gauge, const struct gauge_view *view)
{
    double setting = view->answer.nearest;
    if (!view->answer.asked || !known(setting))
        return "correct the setting";
    return arena_format(gauge->plan->arena, "enter %.*f", setting_decimals(setting), setting);
}

static const char *fault_text(const struct gauge *gauge, const struct gauge_view *view,
                              const struct lawful_check *check, const char *on)
{
    return arena_format(gauge->plan->arena, "%s at %s%s: %s",
                        check->reads_under ? "reads under" : "reads too far over",
                        speed_text(gauge, check->worst_true_mps), on, correction_text(gauge, view));
}

/* One state of the tyre: its error at a round speed, judged over the whole range. */
static void report_state(const struct gauge *gauge, const struct gauge_view *view, double ratio,
                         const char *state, const char *on, enum verdict broken)
{
    struct instrument_line line = line_at(view, ratio);
    struct figure figure = gauge_figure(gauge, QUANTITY_SPEEDOMETER_ERROR,
                                        speed_error(line, gauge->at_mps), gauge->rule->basis);
    struct lawful_check check;
    check_lawful(gauge->rule, line, gauge->top_mps, &check);
    figure.limit = (check.bound_shown_mps - check.worst_true_mps) / check.worst_true_mps;
    figure.verdict = check.lawful ? VERDICT_OK : broken;
    figure.at =
        arena_format(gauge->plan->arena, "%s, true %s", state, speed_text(gauge, gauge->at_mps));
    figure.action = check.lawful ? NULL : fault_text(gauge, view, &check, on);
    figure.headline = broken == VERDICT_FAIL ? HEADLINE_YES : HEADLINE_NO;
    figures_add(gauge->figures, figure);
}

/* Without a rule, or without a circumference, there is nothing to judge by. */
static void report_unjudged(const struct gauge *gauge, const struct gauge_view *view)
{
    struct figure figure =
        gauge_figure(gauge, QUANTITY_SPEEDOMETER_ERROR, speed_error(view->line, gauge->at_mps),
                     "1 + e_new = (1 + e) C_old / C_new");
    figure.at =
        arena_format(gauge->plan->arena, "nominal, true %s", speed_text(gauge, gauge->at_mps));
    figure.headline = HEADLINE_YES;
    figure.verdict = VERDICT_UNKNOWN;
    figure.action = !known(figure.value) ? "the rolling circumference of both tyres is needed"
                    : figure.value < -1e-9
                        ? "reads under, which few rules allow: give speedometer: rule, such as "
                          "un_r39"
                        : "give speedometer: rule, such as un_r39";
    figures_add(gauge->figures, figure);
}

/* From the state that the nominal stands for (the tread now, of the tyre that was measured; new,
 * of any other) to another depth of tread, as a ratio of circumferences. */
static double wear_ratio(const struct gauge *gauge, const struct gauge_view *view, double depth_m)
{
    const struct tyre *tyre = &view->setup->axle[gauge->axle];
    double as_new = known_or(tyre->new_tread_depth_m, tyre->tread_depth_m);
    double state = view->measured ? known_or(tyre->tread_depth_m, as_new) : as_new;
    return worn_circumference_m(1, view->diameter_m, as_new - depth_m) /
           worn_circumference_m(1, view->diameter_m, as_new - state);
}

static void report_wear(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct tyre *tyre = &view->setup->axle[gauge->axle];
    struct arena *arena = gauge->plan->arena;
    double now = tyre->tread_depth_m, limit = wear_ratio(gauge, view, WEAR_LIMIT_M);
    double reference = measured_wear(gauge);
    if (reference < 1 && !view->measured)
        report_state(gauge, view, 1 / reference,
                     arena_format(arena, "new, after %s worn", gauge->measured.name),
                     " when new, since the error was measured on worn tread", VERDICT_CAUTION);
    if (known(now) && known(tyre->new_tread_depth_m) && !view->measured)
        report_state(gauge, view, wear_ratio(gauge, view, now),
                     arena_format(arena, "with %.1f mm of tread", now * 1e3),
                     " with the tread that it has", VERDICT_CAUTION);
    if (!known(limit) || (known(now) && !clearly_above(now, WEAR_LIMIT_M)))
        return;
    report_state(gauge, view, limit, arena_format(arena, "worn to %.1f mm", WEAR_LIMIT_M * 1e3),
                 " when worn", VERDICT_CAUTION);
}

void report_prediction(const struct gauge *gauge, const struct gauge_view *view)
{
    if (!known(view->line.scale) || gauge->rule == NULL) {
        report_unjudged(gauge, view);
        return;
    }
    report_state(gauge, view, 1, "nominal", "", VERDICT_FAIL);
    if (view->spread.over > 0)
        report_state(gauge, view, 1 + view->spread.over, "largest", " on the largest tyre allowed",
                     VERDICT_CAUTION);
    if (view->spread.under > 0)
        report_state(gauge, view, 1 - view->spread.under, "smallest",
                     " on the smallest tyre allowed", VERDICT_CAUTION);
    report_wear(gauge, view);
}

/* Every system that counts wheel turns is off as the speedometer is. Within what tyres of one size
 * may differ (table rolling) it has been built to bear it. */
static void report_change(const struct gauge *gauge, const struct gauge_view *view)
{
    double change = view->to_m / view->from_m - 1;
    const struct rolling_row *row =
        rolling_find(construction_name(&view->setup->axle[gauge->axle]));
    struct figure figure =
        gauge_figure(gauge, QUANTITY_CIRCUMFERENCE_CHANGE, change,
                     "C_new / C_old - 1; limit: tyres of one size, table rolling");
    if (row != NULL && known(change)) {
        figure.limit = /* no change at all is none above, whatever a conversion of units leaves */
            (change > 1e-9 ? row->spread_over_percent : -row->spread_under_percent) / 100;
        figure.verdict =
            clearly_above(fabs(change), fabs(figure.limit)) ? VERDICT_CAUTION : VERDICT_OK;
    }
    if (figure.verdict == VERDICT_CAUTION)
        figure.action = "anti-lock, stability, gearbox and cruise control count the same turns: "
                        "correct them alike, and fit a matched set";
    figures_add(gauge->figures, figure);
}

void report_wheel_speed_systems(const struct gauge *gauge, const struct gauge_view *view,
                                size_t index)
{
    const struct beside *beside = &gauge->plan->beside[index];
    double before = beside->before[AXLE_FRONT].rolling_circumference_m /
                    beside->before[AXLE_REAR].rolling_circumference_m;
    double after = beside->after[AXLE_FRONT].rolling_circumference_m /
                   beside->after[AXLE_REAR].rolling_circumference_m;
    if (view->setup->is_fitted)
        return;
    report_change(gauge, view);
    if (!known(after / before) || fabs(after / before - 1) < 1e-9)
        return;
    struct figure figure = gauge_figure(gauge, QUANTITY_AXLES_CHANGE, after / before - 1,
                                        "(C_front / C_rear) new / old - 1");
    figure.verdict = VERDICT_CAUTION;
    figure.action = "not a matched set: systems that compare the wheel speeds of the axles see a "
                    "difference on a straight road";
    figures_add(gauge->figures, figure);
}
