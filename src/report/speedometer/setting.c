/* What to enter: the exact setting for the aim, the nearest lawful one, the smallest change that is
 * lawful, and what an adapter would have to do instead. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"
#include "build/keys.h"

/* The scale that the aim asks for. */
static double aimed_scale(const struct gauge *gauge, const struct dial *dial)
{
    const struct choice_or_value *aim = &gauge->instrument->aim;
    if (known(aim->value))
        return 1 + aim->value - gauge->line.offset_mps / gauge->at_mps;
    if (aim->choice == AIM_LOWEST_LAWFUL && gauge->law.rule != NULL)
        return lawful_scales(&gauge->law, gauge->line.offset_mps, dial->spread, NULL).low;
    return gauge->line.scale;
}

static struct remark aim_basis(const struct gauge *gauge)
{
    const struct choice_or_value *aim = &gauge->instrument->aim;
    if (known(aim->value))
        return remark(BASIS_AIM_OVER_READ);
    if (aim->choice == AIM_LOWEST_LAWFUL && gauge->law.rule != NULL)
        return remark(BASIS_AIM_LOWEST_LAWFUL);
    return remark(aim->choice == AIM_AS_BEFORE ? BASIS_AIM_AS_BEFORE : BASIS_AIM_ASSUMED);
}

static double setting_for_scale(const struct gauge *gauge, const struct dial *dial, double scale)
{
    const struct setting *setting = &gauge->instrument->setting;
    return setting_for_error(setting->kind, setting->now, dial->from_m, dial->to_m,
                             gauge->line.scale - 1, scale - 1);
}

static struct instrument_line line_with_setting(const struct gauge *gauge, const struct dial *dial,
                                                double setting)
{
    const struct setting *now = &gauge->instrument->setting;
    double error = error_with_setting(now->kind, setting, now->now, dial->from_m, dial->to_m,
                                      gauge->line.scale - 1);
    return (struct instrument_line){1 + error, gauge->line.offset_mps};
}

/* Settings between which every speed of the range is lawful; all of them where no rule is named. */
static void set_lawful(const struct gauge *gauge, const struct dial *dial, struct spread spread,
                       struct setting_answer *answer)
{
    answer->lawful_low = 0;
    answer->lawful_high = INFINITY;
    if (gauge->law.rule == NULL)
        return;
    struct scale_range scales = lawful_scales(&gauge->law, gauge->line.offset_mps, spread, NULL);
    double a = setting_for_scale(gauge, dial, scales.low);
    double b = setting_for_scale(gauge, dial, scales.high);
    bool rising = gauge->instrument->setting.kind == SETTING_CIRCUMFERENCE_MM;
    answer->lawful_low = rising ? a : b;
    answer->lawful_high = rising ? b : a;
}

static void search_settings(const struct gauge *gauge, const struct dial *dial,
                            struct spread spread, struct setting_answer *answer)
{
    const struct setting *setting = &gauge->instrument->setting;
    const struct setting_grid grid = {setting->now, setting->step, setting->min, setting->max,
                                      setting->choices};
    set_lawful(gauge, dial, spread, answer);
    answer->nearest =
        nearest_setting(&grid, answer->exact, answer->lawful_low, answer->lawful_high);
    answer->smallest =
        nearest_setting(&grid, setting->now, answer->lawful_low, answer->lawful_high);
}

/* Lawful with every circumference of the spread; where no setting is, on the nominal one alone.
 * What is not known of the spread is no reason to leave it out. */
void setting_answer_set(const struct gauge *gauge, struct dial *dial)
{
    const struct setting *setting = &gauge->instrument->setting;
    struct setting_answer *answer = &dial->answer;
    *answer = (struct setting_answer){
        .asked = setting->given != NULL && setting->kind != CHOICE_NONE && known(setting->now),
        .target_scale = aimed_scale(gauge, dial),
        .exact = UNKNOWN,
        .nearest = UNKNOWN,
        .smallest = UNKNOWN,
    };
    dial->line_set = (struct instrument_line){UNKNOWN, gauge->line.offset_mps};
    if (!answer->asked || !known(dial->line.scale))
        return;
    answer->exact = setting_for_scale(gauge, dial, answer->target_scale);
    search_settings(gauge, dial, dial->spread, answer);
    if (!known(answer->nearest) && known(dial->spread.over)) {
        search_settings(gauge, dial, (struct spread){0, 0}, answer);
        answer->nominal_alone = known(answer->nearest);
    }
    dial->line_set = line_with_setting(gauge, dial, answer->nearest);
}

int setting_decimals(double setting)
{
    for (int decimals = 0; decimals < 3; decimals++) {
        double scaled = setting * (decimals == 0 ? 1 : decimals == 1 ? 10 : 100);
        if (fabs(scaled - floor(scaled + 0.5)) < 1e-6)
            return decimals;
    }
    return 3;
}

/* What an instrument of that kind would hold that is set to the tyre; UNKNOWN where it counts what
 * no tyre tells. */
static double setting_of_tyre(int setting_kind, double circumference_m)
{
    switch (setting_kind) {
    case SETTING_CIRCUMFERENCE_MM:
        return unit_from_si(UNIT_MM, circumference_m);
    case SETTING_REVS_PER_KM:
        return unit_from_si(UNIT_PER_KM, 1 / circumference_m);
    case SETTING_REVS_PER_MILE:
        return unit_from_si(UNIT_PER_MILE, 1 / circumference_m);
    default:
        return UNKNOWN;
    }
}

struct remark setting_doubt(const struct gauge *gauge, const struct dial *dial)
{
    static const double far_apart = 0.3; /* a mile for a kilometre makes 0.38 or 0.61 */
    const struct setting *setting = &gauge->instrument->setting;
    double own = setting_of_tyre(setting->kind, dial->from_m);
    if (!clearly_above(fabs(setting->now - own), far_apart * own))
        return remark(REMARK_NONE);
    return REMARK_WITH(gauge->plan->arena, ADVICE_CHECK_KIND,
                       say_text(choices_setting_kind[setting->kind]), say_setting(setting->now),
                       say_number(own, 0));
}

/* The kind of setting that a figure is, for which it has no unit. */
static struct figure setting_figure(const struct gauge *gauge, enum quantity_id quantity,
                                    double value, struct remark basis)
{
    struct figure figure = gauge_figure(gauge, quantity, value, basis);
    figure.place.name = choices_setting_kind[gauge->instrument->setting.kind];
    return figure;
}

/* Whether there is a setting to enter, and what to do. */
static void report_nearest(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    struct arena *arena = gauge->plan->arena;
    struct figure figure =
        setting_figure(gauge, QUANTITY_SETTING_NEAREST, answer->nearest,
                       gauge->law.rule == NULL ? remark(BASIS_NEAREST_NO_RULE) : law_basis(gauge));
    figure.decimals = setting_decimals(known_or(answer->nearest, 0));
    figure.headline = HEADLINE_YES;
    bool found = known(answer->nearest);
    struct remark doubt = setting_doubt(gauge, dial);
    bool doubted = doubt.id != REMARK_NONE;
    const struct need needs[] = {
        {known(dial->line.scale), remark(ADVICE_GIVE_TYRE)},
        dial_missing(gauge, dial),
        {gauge->law.rule != NULL || !found, doubted ? doubt : remark(ADVICE_GIVE_RULE)},
    };
    double ratio = adapter_ratio(dial->line.scale, answer->target_scale - 1);
    figure = judged(figure,
                    &(struct judgement){
                        .needs = needs,
                        .need_count = sizeof needs / sizeof needs[0],
                        .holds = answer_of(true, found),
                        .met = doubted || answer->nominal_alone ? VERDICT_CAUTION : VERDICT_OK,
                        .if_met = doubted ? doubt
                                          : remark(answer->nominal_alone ? ADVICE_NOMINAL_ALONE
                                                                         : ADVICE_ENTER_AND_CHECK),
                        .if_broken = REMARK_WITH(arena, ADVICE_ADAPTER, say_number(ratio, 4))});
    figures_add(gauge->figures, figure);
}

/* An end of the lawful settings that any number reaches is none. */
static double finite(double setting)
{
    return setting > 0 && setting < INFINITY ? setting : UNKNOWN;
}

static void report_around(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    enum remark_id lawful = answer->nominal_alone ? BASIS_LAWFUL_NOMINAL : BASIS_LAWFUL_SPREAD;
    const struct {
        enum quantity_id quantity;
        double value;
        enum remark_id basis;
        enum headline headline;
    } rows[] = {
        {QUANTITY_SETTING_SMALLEST, answer->smallest, BASIS_SMALLEST_SETTING_CHANGE, HEADLINE_NO},
        {QUANTITY_SETTING_LAWFUL_LEAST, finite(answer->lawful_low), lawful, HEADLINE_ROWS_ONLY},
        {QUANTITY_SETTING_LAWFUL_MOST, finite(answer->lawful_high), lawful, HEADLINE_ROWS_ONLY},
    };
    for (size_t i = 0; gauge->law.rule != NULL && i < sizeof rows / sizeof rows[0]; i++) {
        struct figure figure =
            setting_figure(gauge, rows[i].quantity, rows[i].value, remark(rows[i].basis));
        figure.headline = rows[i].headline;
        if (i == 0 && known(rows[i].value))
            figure.decimals = setting_decimals(rows[i].value);
        figures_add(gauge->figures, figure);
    }
}

/* The errors that remain, and what else would do it. */
static void report_remaining(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    struct instrument_line exact = {answer->target_scale, gauge->line.offset_mps};
    struct figure figure =
        gauge_figure(gauge, QUANTITY_REMAINING_ERROR, speed_error(dial->line_set, gauge->at_mps),
                     remark(BASIS_REMAINING));
    figure.headline = HEADLINE_YES;
    figures_add(gauge->figures, figure);
    figure = gauge_figure(gauge, QUANTITY_REMAINING_EXACT, speed_error(exact, gauge->at_mps),
                          remark(BASIS_REMAINING_EXACT));
    figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(gauge->figures, figure);
    figure = gauge_figure(gauge, QUANTITY_ADAPTER_RATIO,
                          adapter_ratio(dial->line.scale, answer->target_scale - 1),
                          remark(BASIS_ADAPTER));
    figure.headline = known(answer->nearest) ? HEADLINE_ROWS_ONLY : HEADLINE_NO;
    figures_add(gauge->figures, figure);
    double driving = gauge->instrument->setting.driving_gear_teeth;
    if (known(driving))
        figures_add(gauge->figures,
                    gauge_figure(gauge, QUANTITY_GEAR_RATIO, answer->exact / driving,
                                 remark(BASIS_GEAR_RATIO)));
}

void report_setting(const struct gauge *gauge, const struct dial *dial)
{
    report_sensor(gauge, dial);
    if (!dial->answer.asked)
        return;
    figures_add(gauge->figures, setting_figure(gauge, QUANTITY_SETTING_EXACT, dial->answer.exact,
                                               aim_basis(gauge)));
    report_nearest(gauge, dial);
    report_around(gauge, dial);
    report_remaining(gauge, dial);
}
