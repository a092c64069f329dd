/* The odometer counts the same turns: true distance, service intervals, consumption. Its own error
 * with the fitted tyre is that of its readings, or is taken as none. */
#include "base/known.h"
#include "report/judge.h"
#include "report/speedometer/gauge.h"
#include "tables/lookup.h"

static void report_error(const struct gauge *gauge, const struct dial *dial)
{
    const char *name = gauge->instrument->odometer.rule;
    const struct odometer_rules_row *rule = name == NULL ? NULL : odometer_rule_find(name);
    double error = shown_distance(1, gauge->odometer_scale, dial->from_m, dial->to_m) - 1;
    struct figure figure =
        gauge_figure(gauge, QUANTITY_ODOMETER_ERROR, error, remark(BASIS_SHOWN_OVER_TRUE));
    if (rule != NULL) {
        double under = -rule->under_percent / 100, over = rule->over_percent / 100;
        const struct need tyres = {known(error), remark(ADVICE_GIVE_TYRE)};
        figure.based = REMARK_WITH(gauge->plan->arena, BASIS_QUOTED, say_text(rule->basis));
        figure.limit_owner = LIMIT_OF_LAW;
        figure =
            judged(error < 0 ? limited_at_least(figure, under) : limited_at_most(figure, over),
                   &(struct judgement){
                       .needs = &tyres, .need_count = 1, .if_broken = remark(ADVICE_ODOMETER)});
    }
    figures_add(gauge->figures, figure);
}

static void report_distance(const struct gauge *gauge, const struct dial *dial)
{
    const struct odometer *odometer = &gauge->instrument->odometer;
    double since = odometer->since_change_m, service = odometer->service_interval_m;
    double truth = true_distance(since, gauge->odometer_scale, dial->from_m, dial->to_m);
    if (known(since)) {
        figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_TRUE_SINCE_CHANGE, truth,
                                                 remark(BASIS_TRUE_SINCE_CHANGE)));
        figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_OFF_SINCE_CHANGE, since - truth,
                                                 remark(BASIS_SHOWN_LESS_TRUE)));
    }
    if (known(service))
        figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_SERVICE_DUE,
                                                 shown_distance(service, gauge->odometer_scale,
                                                                dial->from_m, dial->to_m),
                                                 remark(BASIS_SERVICE_DUE)));
}

static void report_consumption(const struct gauge *gauge, const struct dial *dial)
{
    double ratio = true_distance(1, gauge->odometer_scale, dial->from_m, dial->to_m);
    double consumption = gauge->instrument->consumption_m3_per_m;
    figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_CONSUMPTION_FACTOR, 1 / ratio,
                                             remark(BASIS_CONSUMPTION)));
    figures_add(gauge->figures,
                gauge_figure(gauge, QUANTITY_ECONOMY_FACTOR, ratio, remark(BASIS_ECONOMY)));
    if (known(consumption))
        figures_add(gauge->figures,
                    gauge_figure(gauge, QUANTITY_TRUE_CONSUMPTION, consumption / ratio,
                                 remark(BASIS_TRUE_CONSUMPTION)));
}

void report_odometer(const struct gauge *gauge, const struct dial *dial)
{
    double per_100 = true_distance(100, gauge->odometer_scale, dial->from_m, dial->to_m);
    struct remark basis =
        remark(gauge->odometer_known ? BASIS_ODOMETER_READ : BASIS_ODOMETER_TAKEN);
    figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_ODOMETER_TRUE, per_100, basis));
    report_error(gauge, dial);
    report_distance(gauge, dial);
    report_consumption(gauge, dial);
}
