/* The odometer counts the same turns: true distance, service intervals, consumption. Its own error
 * with the fitted tyre is that of its readings, or is taken as none. */
#include "base/known.h"
#include "report/judge.h"
#include "report/speedometer/gauge.h"
#include "tables/lookup.h"

/* Shown per true with the fitted tyre, with a setting: it counts what the speedometer counts. */
static double scale_with(const struct gauge *gauge, double setting)
{
    int kind = gauge->instrument->setting.kind;
    return !known(setting) || setting == gauge->now
               ? gauge->odometer_scale
               : 1 + error_with_setting(kind, setting, gauge->now, 1, 1, gauge->odometer_scale - 1);
}

static const struct odometer_rules_row *rule_of(const struct gauge *gauge)
{
    const char *name = gauge->instrument->odometer.rule;
    return name == NULL || gauge->source == LINE_NEW ? NULL : odometer_rule_find(name);
}

struct scale_range odometer_scales(const struct gauge *gauge)
{
    const struct odometer_rules_row *rule = rule_of(gauge);
    double each = gauge->line.scale / gauge->odometer_scale;
    if (rule == NULL)
        return (struct scale_range){UNKNOWN, UNKNOWN};
    return (struct scale_range){each * (1 - rule->under_percent / 100),
                                each * (1 + rule->over_percent / 100)};
}

/* By the bound that is broken or nearest. */
static struct figure error_figure(const struct gauge *gauge, const struct dial *dial,
                                  double setting)
{
    const struct odometer_rules_row *rule = rule_of(gauge);
    double error = shown_distance(1, scale_with(gauge, setting), dial->from_m, dial->to_m) - 1;
    struct figure figure =
        gauge_figure(gauge, QUANTITY_ODOMETER_ERROR, error, remark(BASIS_SHOWN_OVER_TRUE));
    if (rule == NULL)
        return figure;
    figure.basis = REMARK_WITH(gauge->plan->arena, BASIS_QUOTED, say_text(rule->basis));
    figure.limit_owner = LIMIT_OF_LAW;
    return clearly_above(1, 1 + error) ? limited_at_least(figure, -rule->under_percent / 100)
                                       : limited_at_most(figure, rule->over_percent / 100);
}

enum answer odometer_is_lawful(const struct gauge *gauge, const struct dial *dial, double setting)
{
    struct figure figure = error_figure(gauge, dial, setting);
    if (figure.limit_side == LIMIT_NO_SIDE)
        return ANSWER_NOT_ASKED;
    return answer_of(known(figure.value),
                     meets_limit(figure.value, figure.limit_side, figure.limit));
}

/* Judged as it is handed over: with the setting that is to be entered. */
static void report_error(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    struct arena *arena = gauge->plan->arena;
    enum answer now = odometer_is_lawful(gauge, dial, dial->set), then = now;
    if (answer->due)
        then = odometer_is_lawful(gauge, dial, answer->nearest);
    struct figure figure = error_figure(gauge, dial, dial->set);
    const struct need tyres = {known(figure.value), remark(ADVICE_GIVE_TYRE)};
    const struct judgement how = {
        .needs = &tyres,
        .need_count = 1,
        .holds = then == ANSWER_YES ? now : then,
        .cure = cure_by_setting(dial, then == ANSWER_YES),
        .if_cured = REMARK_WITH(arena, PHRASE_ENTER, say_setting(answer->nearest)),
        .if_broken = remark(known(answer->nearest) ? ADVICE_ODOMETER_BEYOND : ADVICE_ODOMETER)};
    figures_add(gauge->figures, rule_of(gauge) == NULL ? figure : judged(figure, &how));
}

/* A figure that another setting makes another one. */
static void add_as_set(const struct gauge *gauge, const struct dial *dial,
                       enum quantity_id quantity, double value, struct remark basis)
{
    struct figure figure = gauge_figure(gauge, quantity, value, basis);
    double nearest = dial->answer.nearest;
    if (known(nearest) && !same_value(nearest, dial->set))
        figure.advice = REMARK_WITH(gauge->plan->arena, ADVICE_AS_SET_NOW, say_setting(nearest));
    figures_add(gauge->figures, figure);
}

static void report_distance(const struct gauge *gauge, const struct dial *dial)
{
    const struct odometer *odometer = &gauge->instrument->odometer;
    double since = odometer->since_change_m, service = odometer->service_interval_m;
    double scale = scale_with(gauge, dial->set);
    double truth = true_distance(since, scale, dial->from_m, dial->to_m);
    if (known(since)) {
        figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_TRUE_SINCE_CHANGE, truth,
                                                 remark(BASIS_TRUE_SINCE_CHANGE)));
        figures_add(gauge->figures, gauge_figure(gauge, QUANTITY_OFF_SINCE_CHANGE, since - truth,
                                                 remark(BASIS_SHOWN_LESS_TRUE)));
    }
    if (known(service))
        add_as_set(gauge, dial, QUANTITY_SERVICE_DUE,
                   shown_distance(service, scale, dial->from_m, dial->to_m),
                   remark(BASIS_SERVICE_DUE));
}

static void report_consumption(const struct gauge *gauge, const struct dial *dial)
{
    double ratio = true_distance(1, scale_with(gauge, dial->set), dial->from_m, dial->to_m);
    double consumption = gauge->instrument->consumption_m3_per_m;
    add_as_set(gauge, dial, QUANTITY_CONSUMPTION_FACTOR, 1 / ratio, remark(BASIS_CONSUMPTION));
    add_as_set(gauge, dial, QUANTITY_ECONOMY_FACTOR, ratio, remark(BASIS_ECONOMY));
    if (known(consumption))
        add_as_set(gauge, dial, QUANTITY_TRUE_CONSUMPTION, consumption / ratio,
                   remark(BASIS_TRUE_CONSUMPTION));
}

void report_odometer(const struct gauge *gauge, const struct dial *dial)
{
    double scale = scale_with(gauge, dial->set);
    double per_100 = true_distance(100, scale, dial->from_m, dial->to_m);
    struct remark basis =
        remark(gauge->odometer_known ? BASIS_ODOMETER_READ : BASIS_ODOMETER_TAKEN);
    add_as_set(gauge, dial, QUANTITY_ODOMETER_TRUE, per_100, basis);
    report_error(gauge, dial);
    report_distance(gauge, dial);
    report_consumption(gauge, dial);
}
