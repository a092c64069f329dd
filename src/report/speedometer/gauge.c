#include "report/limits.h"
#include "report/speedometer/gauge.h"

#include <string.h>

#include "base/known.h"
#include "base/units.h"

enum unit_id gauge_unit(const struct gauge *gauge)
{
    return gauge->mph ? UNIT_MPH : UNIT_KMH;
}

struct figure gauge_figure(const struct gauge *gauge, enum quantity_id quantity, double value,
                           struct remark basis)
{
    struct figure figure = figure_of(quantity, value);
    figure.basis = basis;
    figure.instrument_mph = gauge->mph;
    figure.instrument_kmh = !gauge->mph;
    return figure;
}

struct figure gauge_figure_at(const struct gauge *gauge, enum quantity_id quantity, double value,
                              struct remark basis, enum place_speed as, double speed_mps)
{
    struct figure figure = gauge_figure(gauge, quantity, value, basis);
    figure.place.speed_as = as;
    figure.place.road_speed_mps = speed_mps;
    figure.place.instrument_mph = gauge->mph;
    figure.place.instrument_kmh = !gauge->mph;
    return figure;
}

struct argument say_dial_speed(const struct gauge *gauge, double speed_mps)
{
    return say_speed(speed_mps, gauge_unit(gauge));
}

struct argument say_setting(double setting)
{
    return say_number(setting, number_decimals(setting, SETTING_DECIMALS));
}

struct remark law_basis(const struct gauge *gauge)
{
    const struct speedometer_rules_row *rule = gauge->law.rule;
    return remark_quoted(gauge->plan->arena, rule->basis, rule->certainty);
}

bool keeps_lawful(const struct gauge *gauge, struct instrument_line line, struct spread spread,
                  const struct calibration *doubt)
{
    struct scale_range scales = lawful_scales(&gauge->law, line.offset_mps, spread, doubt);
    return line.scale >= scales.low * (1 - 1e-9) && line.scale <= scales.high * (1 + 1e-9);
}

struct figure limited_by_law(struct figure figure, const struct lawful_check *check,
                             double true_mps)
{
    double bound = (check->bound_shown_mps - true_mps) / true_mps;
    if (check->lawful == ANSWER_NOT_ASKED)
        return figure;
    figure.limit_owner = LIMIT_OF_LAW;
    return check->reads_under ? limited_at_least(figure, bound) : limited_at_most(figure, bound);
}

struct remark off_law(const struct gauge *gauge, enum remark_id id,
                      const struct lawful_check *check)
{
    struct arena *arena = gauge->plan->arena;
    struct remark side = remark(check->reads_under ? PHRASE_READS_UNDER : PHRASE_READS_OVER);
    return REMARK_WITH(arena, id, say_remark(arena, side));
}

void gauge_assume(const struct gauge *gauge, enum remark_id taken)
{
    struct figure figure =
        gauge_figure(gauge, QUANTITY_ASSUMPTION, UNKNOWN, remark(BASIS_ASSUMPTION));
    figure.advice = remark(taken);
    figures_add(gauge->figures, figure);
}

/* Both kinds of reading in one list. */
static void collect_readings(struct gauge *gauge)
{
    const struct pair_list *pairs = &gauge->instrument->readings;
    const struct triple_list *timed = &gauge->instrument->timed_readings;
    size_t count = 0;
    struct value_pair *all =
        arena_allocate_array(gauge->plan->arena, pairs->count + timed->count, sizeof *all);
    for (size_t i = 0; i < pairs->count; i++)
        all[count++] = pairs->items[i];
    for (size_t i = 0; i < timed->count; i++) {
        const struct value_triple *item = &timed->items[i];
        all[count++] = (struct value_pair){.first = item->third,
                                           .second = timed_speed_mps(item->first, item->second)};
    }
    gauge->readings = (struct pair_list){all, count};
    for (size_t i = 0; i < count; i++)
        gauge->law.lowest_mps = fmin(gauge->law.lowest_mps, all[i].second);
}

/* --option may have left the setup that was measured out of the plan. */
static void find_measured(struct gauge *gauge)
{
    const struct fitment_list *options = &gauge->plan->specification->tyres.options;
    const char *on = gauge->instrument->readings_on;
    gauge->measured = gauge->plan->fitted;
    for (size_t i = 0; on != NULL && i < options->count; i++)
        if (strcmp(options->items[i].name, on) == 0)
            setup_option(&options->items[i], &gauge->plan->fitted, &gauge->measured);
}

/* Circumferences of the fitted tyre and of the one that was measured, by the same rule. */
static void measured_circumferences(const struct gauge *gauge, double *fitted_m, double *on_m)
{
    struct tyre_dimensions before, after;
    bool mixed;
    figures_to_compare(&gauge->plan->fitted.axle[gauge->axle], &gauge->measured.axle[gauge->axle],
                       &before, &after, &mixed);
    *fitted_m = before.rolling_circumference_m;
    *on_m = after.rolling_circumference_m;
}

static bool is_new(const struct setting *setting)
{
    return setting->given != NULL && setting->kind != CHOICE_NONE && !known(setting->now);
}

/* In the order of what is asked first. */
static enum line_source source_of(const struct gauge *gauge, double counted_error)
{
    if (is_new(&gauge->instrument->setting))
        return LINE_NEW;
    if (gauge->calibration != NULL)
        return LINE_OF_READINGS;
    if (known(gauge->instrument->fitted_error))
        return LINE_OF_ERROR;
    if (known(counted_error))
        return LINE_OF_SENSOR;
    return gauge->odometer_known ? LINE_OF_ODOMETER : LINE_TAKEN_TRUE;
}

/* With the fitted tyre. What is read on a tyre whose circumference is unknown is unknown there. */
static void set_line(struct gauge *gauge)
{
    double fitted_m, on_m, error = 0;
    measured_circumferences(gauge, &fitted_m, &on_m);
    double counted = sensor_error(gauge, fitted_m);
    gauge->source = source_of(gauge, counted);
    gauge->now = gauge->source == LINE_NEW ? setting_that_reads_true(gauge, fitted_m)
                                           : gauge->instrument->setting.now;
    if (gauge->source == LINE_OF_READINGS) {
        const struct calibration *calibration = gauge->calibration;
        struct instrument_line line = {calibration->scale.value, calibration->offset.value};
        gauge->line = line_on_circumference(line, on_m, fitted_m);
        return;
    }
    if (gauge->source == LINE_OF_ERROR)
        error = gauge->instrument->fitted_error;
    else if (gauge->source == LINE_OF_SENSOR)
        error = counted;
    else if (gauge->source == LINE_OF_ODOMETER)
        error = gauge->odometer_scale - 1;
    gauge->line = (struct instrument_line){1 + error, 0};
}

static void set_odometer(struct gauge *gauge)
{
    struct calibration calibration;
    const struct pair_list *readings = &gauge->instrument->odometer.readings;
    double fitted_m, on_m;
    gauge->odometer_scale = 1;
    gauge->odometer_known = readings->count > 0;
    if (!gauge->odometer_known)
        return;
    calibrate_scale(readings, &calibration);
    measured_circumferences(gauge, &fitted_m, &on_m);
    gauge->odometer_scale = calibration.scale.value * (on_m / fitted_m);
}

/* Why a rule that is named judges nothing; ADVICE_GIVE_RULE where none is, REMARK_NONE where it
 * does. */
static enum remark_id no_rule(const struct speedometer_rules_row *rule, int kind)
{
    if (rule == NULL)
        return ADVICE_GIVE_RULE;
    switch (is_of_kind(rule->vehicle_kinds, kind)) {
    case ANSWER_YES:
        return REMARK_NONE;
    case ANSWER_NO:
        return ADVICE_NOT_ITS_RULE;
    default:
        return ADVICE_GIVE_KIND;
    }
}

void gauge_set(const struct plan *plan, struct figures *figures, struct gauge *gauge)
{
    const struct instrument *instrument = &plan->specification->speedometer;
    double top = plan->specification->vehicle.top_speed_mps;
    bool mph = plan_instrument_is_mph(plan);
    const struct speedometer_rules_row *rule =
        instrument->rule == NULL ? NULL : speedometer_rule_find(instrument->rule);
    const enum remark_id none = no_rule(rule, plan->specification->vehicle.kind);
    *gauge = (struct gauge){
        .plan = plan,
        .instrument = instrument,
        .figures = figures,
        .mph = mph,
        .no_rule = none,
        .law = {.rule = none == REMARK_NONE ? rule : NULL,
                .top_mps = known_or(top, unit_to_si(UNIT_KMH, 120)),
                .lowest_mps = INFINITY},
        .axle = plan_driven_axle(plan),
        .top_assumed = !known(top),
        .at_mps = mph ? unit_to_si(UNIT_MPH, 60) : unit_to_si(UNIT_KMH, 100),
    };
    find_measured(gauge);
    collect_readings(gauge);
    calibrate(gauge);
    set_odometer(gauge);
    set_line(gauge);
}

/* What an option says of the setting that it is handed over with; UNKNOWN: nothing. */
static double setting_named(const struct setup *setup)
{
    return setup->as_set == NULL ? UNKNOWN : setup->as_set->setting;
}

/* The error that was measured belongs to the setting now, and scales with what is set instead. */
static void set_as_handed_over(const struct gauge *gauge, struct dial *dial)
{
    double named = setting_named(dial->setup);
    dial->set = known_or(named, gauge->source == LINE_NEW ? UNKNOWN : gauge->now);
    dial->is_new = gauge->source == LINE_NEW && !known(named);
    dial->line = known(named) ? line_with_setting(gauge, dial, named)
                              : line_on_circumference(gauge->line, dial->from_m, dial->to_m);
}

void dial_set(const struct gauge *gauge, size_t index, struct dial *dial)
{
    const struct beside *beside = &gauge->plan->beside[index];
    const struct tyre_dimensions *after = &beside->after[gauge->axle];
    *dial = (struct dial){
        .setup = &gauge->plan->setups[index],
        .from_m = beside->before[gauge->axle].rolling_circumference_m,
        .to_m = after->rolling_circumference_m,
        .diameter_m = after->overall_diameter_m,
    };
    dial->measured =
        measured_on_a_tyre(gauge) && strcmp(dial->setup->name, gauge->measured.name) == 0;
    dial->spread = circumference_spread(gauge, dial->setup, dial->measured);
    set_as_handed_over(gauge, dial);
    setting_answer_set(gauge, dial);
}

bool measured_on_a_tyre(const struct gauge *gauge)
{
    return gauge->source != LINE_OF_SENSOR && gauge->source != LINE_NEW;
}

struct need dial_missing(const struct gauge *gauge, const struct dial *dial)
{
    if (!known(gauge->line.scale * dial->from_m / dial->to_m))
        return (struct need){false, remark(ADVICE_GIVE_TYRE)};
    if (dial->answer.asked && !known(gauge->now))
        return (struct need){false, sensor_advice(gauge)};
    bool spread_counts = dial->answer.asked && gauge->law.rule != NULL;
    return (struct need){!spread_counts || known(dial->spread.over), measured_wear_advice(gauge)};
}
