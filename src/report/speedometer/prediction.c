/* What the instrument will show with a setup: on its nominal circumference, over the range that
 * tyres of one size may have, and as the tread wears. */
#include "base/known.h"
#include "report/speedometer/gauge.h"
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

/* How much smaller than new the measured tyre was while its error was measured, as a ratio; UNKNOWN
 * where it is worn and its diameter is not known. A prediction by counts is one on new tyres. */
static double measured_wear(const struct gauge *gauge)
{
    const struct tyre *tyre = &gauge->measured.axle[gauge->axle];
    struct tyre_measures measures;
    tyre_measure(tyre, &measures);
    double lost = tread_lost_m(tyre);
    return lost > 0 && measured_on_a_tyre(gauge)
               ? worn_circumference_m(1, measures.stated.overall_diameter_m, lost)
               : 1;
}

static struct remark diameter_advice(const struct gauge *gauge, const struct setup *setup)
{
    return REMARK_WITH(gauge->plan->arena, ADVICE_GIVE_DIAMETER, say_text(setup->name));
}

struct remark measured_wear_advice(const struct gauge *gauge)
{
    return diameter_advice(gauge, &gauge->measured);
}

/* The very tyre that was measured differs from its like when new by its wear alone. */
struct spread circumference_spread(const struct gauge *gauge, const struct setup *setup,
                                   bool measured)
{
    const struct rolling_row *row = rolling_find(construction_name(&setup->axle[gauge->axle]));
    double wear = measured_wear(gauge);
    if (measured || row == NULL)
        return (struct spread){.under = 0, .over = 1 / wear - 1};
    return (struct spread){
        .under = row->spread_under_percent / 100,
        .over = (1 + row->spread_over_percent / 100) / wear - 1,
    };
}

/* The line on a circumference that is `ratio` of the setup's. */
static struct instrument_line line_at(const struct dial *dial, double ratio)
{
    return line_on_circumference(dial->line, 1, ratio);
}

/* One state of the tyre: its place, and its circumference beside the nominal one. */
struct tyre_state {
    enum place_tyre at;
    double ratio;
    enum remark_id on;     /* said where it is broken */
    struct remark missing; /* what to give where the ratio is unknown */
    enum verdict broken;
};

static struct remark correction(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    if (answer->asked && dial->is_new)
        return remark(PHRASE_NONE_BETTER);
    return answer->asked && known(answer->nearest) && !answer->left
               ? REMARK_WITH(gauge->plan->arena, PHRASE_ENTER, say_setting(answer->nearest))
               : remark(ADVICE_CORRECT);
}

static struct remark fault(const struct gauge *gauge, const struct dial *dial,
                           const struct lawful_check *check, const struct tyre_state *state)
{
    struct arena *arena = gauge->plan->arena;
    return REMARK_WITH(
        arena, ADVICE_OFF_AT,
        say_remark(arena, remark(check->reads_under ? PHRASE_READS_UNDER : PHRASE_READS_OVER)),
        say_dial_speed(gauge, check->worst_true_mps), say_remark(arena, remark(state->on)),
        say_remark(arena, correction(gauge, dial)));
}

/* Its error at a round speed, judged over the whole range. */
static void report_state(const struct gauge *gauge, const struct dial *dial,
                         const struct tyre_state *state)
{
    struct instrument_line line = line_at(dial, state->ratio);
    struct figure figure =
        gauge_figure_at(gauge, QUANTITY_SPEEDOMETER_ERROR, speed_error(line, gauge->at_mps),
                        law_basis(gauge), AT_TRUE, gauge->at_mps);
    struct lawful_check check;
    check_lawful(&gauge->law, line, &check);
    figure.place.tyre = state->at;
    figure.headline = state->broken == VERDICT_FAIL ? HEADLINE_YES : HEADLINE_NO;
    bool cured = state->broken == VERDICT_FAIL && is_lawful(gauge, dial->line_set);
    const struct need ratio = {known(state->ratio), state->missing};
    figure = judged(limited_by_law(figure, &check, check.worst_true_mps),
                    &(struct judgement){.needs = &ratio,
                                        .need_count = 1,
                                        .holds = check.lawful,
                                        .broken = state->broken,
                                        .cure = cure_by_setting(dial, cured),
                                        .if_broken = fault(gauge, dial, &check, state)});
    figures_add(gauge->figures, figure);
}

/* Without a rule, or without a circumference, there is nothing to judge by. */
static void report_unjudged(const struct gauge *gauge, const struct dial *dial)
{
    struct figure figure =
        gauge_figure_at(gauge, QUANTITY_SPEEDOMETER_ERROR, speed_error(dial->line, gauge->at_mps),
                        remark(BASIS_NEW_ERROR), AT_TRUE, gauge->at_mps);
    figure.place.tyre = AT_NOMINAL;
    figure.headline = HEADLINE_YES;
    const struct need needs[] = {
        dial_missing(gauge, dial),
        {known(figure.value), remark(ADVICE_NONE_LAWFUL)}, /* of a new instrument */
        {false,
         remark(gauge->no_rule == ADVICE_GIVE_RULE && figure.value < -1e-9 ? ADVICE_GIVE_RULE_UNDER
                                                                           : gauge->no_rule)},
    };
    figures_add(gauge->figures,
                judged(figure, &(struct judgement){.needs = needs, .need_count = 3}));
}

/* From the state that the nominal stands for (the tread now, of the tyre that was measured; new,
 * of any other) to another depth of tread, as a ratio of circumferences. */
static double wear_ratio(const struct gauge *gauge, const struct dial *dial, double depth_m)
{
    const struct tyre *tyre = &dial->setup->axle[gauge->axle];
    double as_new = known_or(tyre->new_tread_depth_m, tyre->tread_depth_m);
    double state = dial->measured ? known_or(tyre->tread_depth_m, as_new) : as_new;
    return worn_circumference_m(1, dial->diameter_m, as_new - depth_m) /
           worn_circumference_m(1, dial->diameter_m, as_new - state);
}

static void report_wear(const struct gauge *gauge, const struct dial *dial)
{
    const struct tyre *tyre = &dial->setup->axle[gauge->axle];
    struct remark diameter = diameter_advice(gauge, dial->setup);
    double now = tyre->tread_depth_m, limit = wear_ratio(gauge, dial, WEAR_LIMIT_M);
    const struct {
        bool there;
        struct tyre_state state;
    } rows[] = {
        {!(measured_wear(gauge) >= 1),
         {AT_NEW, 1 / measured_wear(gauge), PHRASE_WHEN_NEW, measured_wear_advice(gauge),
          VERDICT_CAUTION}},
        {!dial->measured && known(now) && known(tyre->new_tread_depth_m),
         {AT_TREAD_NOW, wear_ratio(gauge, dial, now), PHRASE_WITH_ITS_TREAD, diameter,
          VERDICT_CAUTION}},
        {known(limit) && !(known(now) && !clearly_above(now, WEAR_LIMIT_M)),
         {AT_TREAD_WORN, limit, PHRASE_WHEN_WORN, diameter, VERDICT_CAUTION}},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        if (rows[i].there)
            report_state(gauge, dial, &rows[i].state);
}

void report_prediction(const struct gauge *gauge, const struct dial *dial)
{
    if (!known(dial->line.scale) || gauge->law.rule == NULL) {
        report_unjudged(gauge, dial);
        return;
    }
    const struct tyre_state sizes[] = {
        {AT_NOMINAL, 1, REMARK_NONE, remark(REMARK_NONE), VERDICT_FAIL},
        {AT_LARGEST, 1 + dial->spread.over, PHRASE_ON_LARGEST, measured_wear_advice(gauge),
         VERDICT_CAUTION},
        {AT_SMALLEST, 1 - dial->spread.under, PHRASE_ON_SMALLEST, remark(REMARK_NONE),
         VERDICT_CAUTION},
    };
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++)
        if (i == 0 || (!dial->measured && sizes[i].ratio != 1))
            report_state(gauge, dial, &sizes[i]);
    report_wear(gauge, dial);
}

/* Every system that counts wheel turns is off as the speedometer is. Within what tyres of one size
 * may differ (table rolling) it has been built to bear it. */
static void report_change(const struct gauge *gauge, const struct dial *dial)
{
    double change = dial->to_m / dial->from_m - 1;
    const struct rolling_row *row =
        rolling_find(construction_name(&dial->setup->axle[gauge->axle]));
    struct figure figure = gauge_figure(gauge, QUANTITY_CIRCUMFERENCE_CHANGE, change,
                                        remark(BASIS_CIRCUMFERENCE_CHANGE));
    if (row != NULL && known(change)) {
        /* No change at all is none above, whatever a conversion of units leaves. */
        figure = change > 1e-9 ? limited_at_most(figure, row->spread_over_percent / 100)
                               : limited_at_least(figure, -row->spread_under_percent / 100);
        figure.limit_owner = LIMIT_OF_MAKER;
        figure = judged(figure, &(struct judgement){.broken = VERDICT_CAUTION,
                                                    .if_broken = remark(ADVICE_COUNT_ALIKE)});
    }
    figures_add(gauge->figures, figure);
}

void report_wheel_speed_systems(const struct gauge *gauge, const struct dial *dial, size_t index)
{
    const struct beside *beside = &gauge->plan->beside[index];
    double before = beside->before[AXLE_FRONT].rolling_circumference_m /
                    beside->before[AXLE_REAR].rolling_circumference_m;
    double after = beside->after[AXLE_FRONT].rolling_circumference_m /
                   beside->after[AXLE_REAR].rolling_circumference_m;
    if (dial->setup->is_fitted)
        return;
    report_change(gauge, dial);
    if (!known(after / before) || fabs(after / before - 1) < 1e-9)
        return;
    figures_add(gauge->figures,
                judged(gauge_figure(gauge, QUANTITY_AXLES_CHANGE, after / before - 1,
                                    remark(BASIS_AXLES_CHANGE)),
                       &(struct judgement){.holds = ANSWER_NO,
                                           .broken = VERDICT_CAUTION,
                                           .if_broken = remark(ADVICE_NO_MATCHED_SET)}));
}
