/* The odometer counts the same turns: true distance, service intervals, consumption. Its own error
 * with the fitted tyre is that of its readings, or is taken as none. */
#include "base/known.h"
#include "report/judge.h"
#include "report/speedometer/view.h"
#include "tables/lookup.h"

static void report_error(const struct gauge *gauge, const struct gauge_view *view)
{
    const char *name = gauge->instrument->odometer.rule;
    const struct odometer_rules_row *rule = name == NULL ? NULL : odometer_rule_find(name);
    double error = shown_distance(1, gauge->odometer_scale, view->from_m, view->to_m) - 1;
    struct figure figure = gauge_figure(gauge, QUANTITY_ODOMETER_ERROR, error, "shown / true - 1");
    if (rule != NULL) {
        double under = -rule->under_percent / 100, over = rule->over_percent / 100;
        figure.basis = rule->basis;
        figure = error < 0 ? figure_at_least(figure, under) : figure_at_most(figure, over);
        if (figure.verdict == VERDICT_FAIL)
            figure.action = "correct the setting, or note the difference in the logbook";
    }
    figures_add(gauge->figures, figure);
}

static void report_distance(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct odometer *odometer = &gauge->instrument->odometer;
    double since = odometer->since_change_m, service = odometer->service_interval_m;
    double truth = true_distance(since, gauge->odometer_scale, view->from_m, view->to_m);
    if (known(since)) {
        figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_TRUE_SINCE_CHANGE, truth,
                                                 "shown times C_new / C_old"));
        figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_OFF_SINCE_CHANGE, since - truth,
                                                 "shown less true"));
    }
    if (known(service))
        figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_SERVICE_DUE,
                                                 shown_distance(service, gauge->odometer_scale,
                                                                view->from_m, view->to_m),
                                                 "true interval times C_old / C_new"));
}

static void report_consumption(const struct gauge *gauge, const struct gauge_view *view)
{
    double ratio = true_distance(1, gauge->odometer_scale, view->from_m, view->to_m);
    double consumption = gauge->instrument->consumption_m3_per_m;
    figures_add(gauge->figures,
                gauge_figure(gauge, QUANTITY_CONSUMPTION_FACTOR, 1 / ratio,
                             "true consumption per distance = shown times C_old / C_new"));
    figures_add(gauge->figures,
                gauge_figure(gauge, QUANTITY_ECONOMY_FACTOR, ratio,
                             "true distance per volume = shown times C_new / C_old"));
    if (known(consumption))
        figures_add(gauge->figures,
                    gauge_figure(gauge, QUANTITY_TRUE_CONSUMPTION, consumption / ratio,
                                 "as worked out from the odometer with this tyre, corrected"));
}

void report_odometer(const struct gauge *gauge, const struct gauge_view *view)
{
    double per_100 = true_distance(100, gauge->odometer_scale, view->from_m, view->to_m);
    const char *basis = gauge->odometer_known
                            ? "100 (C_new / C_old) / (shown / true on the fitted tyre)"
                            : "100 C_new / C_old; the odometer is taken to be right on the fitted "
                              "tyre";
    figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_ODOMETER_TRUE, per_100, basis));
    report_error(gauge, view);
    report_distance(gauge, view);
    report_consumption(gauge, view);
}
