/* The figures of the setting: what to enter and what is around it, the errors that remain, and what
 * an adapter would have to do instead. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"
#include "build/keys.h"

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

/* "lowest_lawful", "2 % over", "zero error, none named" */
struct remark aim_remark(const struct gauge *gauge)
{
    struct aim_taken aim = aim_taken(gauge);
    double percent = unit_from_si(UNIT_PERCENT, gauge->instrument->aim.value);
    switch (aim.kind) {
    case AIM_IS_OVER_READ:
        return REMARK_WITH(gauge->plan->arena,
                           percent < 0 ? PHRASE_PERCENT_UNDER : PHRASE_PERCENT_OVER,
                           say_setting(fabs(percent)));
    case AIM_IS_AS_BEFORE:
        return remark(PHRASE_AS_BEFORE);
    case AIM_IS_LOWEST_LAWFUL:
        return remark(aim.named ? PHRASE_LOWEST_LAWFUL : PHRASE_LOWEST_LAWFUL_TAKEN);
    case AIM_IS_ZERO:
        break;
    }
    int choice = gauge->instrument->aim.choice;
    return remark(choice == AIM_LOWEST_LAWFUL ? PHRASE_ZERO_NO_RULE
                  : choice == AIM_AS_BEFORE   ? PHRASE_ZERO_NEW
                                              : PHRASE_ZERO_TAKEN);
}

/* What the lawful settings keep room for: the smallest and the largest circumference, and the 95 %
 * of the readings. */
static struct remark margin_kept(const struct gauge *gauge, const struct dial *dial)
{
    enum setting_margin margin = dial->answer.margin;
    return remark(margin == MARGIN_NONE                                ? PHRASE_MARGIN_NONE
                  : margin == MARGIN_ALL && gauge->calibration != NULL ? PHRASE_MARGIN_READINGS
                                                                       : PHRASE_MARGIN_SPREAD);
}

static struct remark aim_basis(const struct gauge *gauge, const struct dial *dial)
{
    struct arena *arena = gauge->plan->arena;
    struct remark margin = aim_taken(gauge).kind == AIM_IS_LOWEST_LAWFUL ? margin_kept(gauge, dial)
                                                                         : remark(REMARK_NONE);
    return REMARK_WITH(arena, BASIS_AIM, say_remark(arena, aim_remark(gauge)),
                       say_remark(arena, margin));
}

/* The kind of setting that a figure is, for which it has no unit. */
static struct figure setting_figure(const struct gauge *gauge, enum quantity_id quantity,
                                    double value, struct remark basis)
{
    struct figure figure = gauge_figure(gauge, quantity, value, basis);
    figure.place.name = choices_setting_kind[gauge->instrument->setting.kind];
    return figure;
}

/* Why the setting to enter is one with care; REMARK_NONE where it is not. */
static struct remark care(const struct gauge *gauge, const struct dial *dial)
{
    struct remark doubt = setting_doubt(gauge, dial);
    if (doubt.id != REMARK_NONE || gauge->law.rule == NULL)
        return doubt;
    if (dial->answer.margin == MARGIN_NONE)
        return remark(dial->measured ? ADVICE_NOT_WHEN_NEW : ADVICE_NOMINAL_ALONE);
    return remark(dial->answer.margin == MARGIN_OF_TYRE && gauge->calibration != NULL
                      ? ADVICE_NO_READING_MARGIN
                      : REMARK_NONE);
}

/* What is lawful as it stands, and of which an aim that is named asks more, is work all the same;
 * so is a new instrument. */
static void report_exact(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    bool by_law = gauge->law.rule != NULL && !is_lawful(gauge, dial->line);
    bool asked_for = answer->due && !by_law && (dial->is_new || aim_taken(gauge).named);
    const struct judgement how = {
        .holds = asked_for ? ANSWER_NO : ANSWER_NOT_ASKED,
        .cure = cure_by_setting(dial, asked_for),
        .if_cured =
            REMARK_WITH(gauge->plan->arena, dial->is_new ? ADVICE_ENTER_NEW : ADVICE_ENTER_FOR_AIM,
                        say_setting(answer->nearest))};
    figures_add(gauge->figures, judged(setting_figure(gauge, QUANTITY_SETTING_EXACT, answer->exact,
                                                      aim_basis(gauge, dial)),
                                       &how));
}

/* Whether there is a setting to enter, and what to do. */
static void report_nearest(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    struct figure figure =
        setting_figure(gauge, QUANTITY_SETTING_NEAREST, answer->nearest,
                       gauge->law.rule == NULL ? remark(BASIS_NEAREST_NO_RULE) : law_basis(gauge));
    figure.decimals = number_decimals(known_or(answer->nearest, 0), SETTING_DECIMALS);
    figure.headline = HEADLINE_YES;
    bool found = known(answer->nearest);
    struct remark doubt = care(gauge, dial);
    bool doubted = doubt.id != REMARK_NONE;
    const struct need needs[] = {
        dial_missing(gauge, dial),
        {gauge->law.rule != NULL || !found, doubted ? doubt : remark(ADVICE_GIVE_RULE)},
    };
    double ratio = adapter_ratio(dial->line.scale, answer->target_scale - 1);
    figure =
        judged(figure,
               &(struct judgement){
                   .needs = needs,
                   .need_count = sizeof needs / sizeof needs[0],
                   .holds = answer_of(true, found),
                   .met = doubted ? VERDICT_CAUTION : VERDICT_OK,
                   .if_met = doubted ? doubt
                                     : remark(answer->left ? ADVICE_LEAVE : ADVICE_ENTER_AND_CHECK),
                   .if_broken = known(ratio) ? REMARK_WITH(gauge->plan->arena, ADVICE_ADAPTER,
                                                           say_number(ratio, 4))
                                             : remark(ADVICE_NONE_LAWFUL)});
    figures_add(gauge->figures, figure);
}

/* An end of the lawful settings that any number reaches is none. */
static double finite(double setting)
{
    return setting > 0 && setting < INFINITY ? setting : UNKNOWN;
}

static void report_lawful(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    struct arena *arena = gauge->plan->arena;
    struct remark lawful = REMARK_WITH(
        arena, BASIS_LAWFUL_SETTINGS, say_remark(arena, margin_kept(gauge, dial)),
        say_remark(arena, remark(answer->with_odometer ? PHRASE_ODOMETER_TOO : REMARK_NONE)));
    const struct {
        enum quantity_id quantity;
        double value;
        struct remark basis;
        enum headline headline;
    } rows[] = {
        {QUANTITY_SETTING_SMALLEST, answer->smallest, remark(BASIS_SMALLEST_SETTING_CHANGE),
         HEADLINE_NO},
        {QUANTITY_SETTING_LAWFUL_LEAST, finite(answer->lawful_low), lawful, HEADLINE_ROWS_ONLY},
        {QUANTITY_SETTING_LAWFUL_MOST, finite(answer->lawful_high), lawful, HEADLINE_ROWS_ONLY},
    };
    for (size_t i = dial->is_new; i < sizeof rows / sizeof rows[0]; i++) {
        struct figure figure =
            setting_figure(gauge, rows[i].quantity, rows[i].value, rows[i].basis);
        figure.headline = rows[i].headline;
        if (i == 0 && known(rows[i].value))
            figure.decimals = number_decimals(rows[i].value, SETTING_DECIMALS);
        figures_add(gauge->figures, figure);
    }
}

double error_with(const struct gauge *gauge, const struct dial *dial, double setting)
{
    return speed_error(line_with_setting(gauge, dial, setting), gauge->at_mps);
}

bool setting_is_coarse(const struct gauge *gauge, const struct dial *dial)
{
    static const double coarse = 0.005; /* between two settings; common practice, no source */
    const struct setting_answer *answer = &dial->answer;
    return fabs(error_with(gauge, dial, answer->below) - error_with(gauge, dial, answer->above)) >
           coarse;
}

/* The possible settings on either side of the exact one, and what they make of the error. */
static void report_either_side(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    const struct {
        enum quantity_id setting, error;
        double value;
    } sides[] = {{QUANTITY_SETTING_BELOW, QUANTITY_ERROR_BELOW, answer->below},
                 {QUANTITY_SETTING_ABOVE, QUANTITY_ERROR_ABOVE, answer->above}};
    enum headline headline = setting_is_coarse(gauge, dial) ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    for (size_t i = 0; i < sizeof sides / sizeof sides[0]; i++) {
        if (!known(sides[i].value))
            continue;
        struct figure figure =
            setting_figure(gauge, sides[i].setting, sides[i].value, remark(BASIS_EITHER_SIDE));
        figure.headline = headline;
        figure.decimals = number_decimals(sides[i].value, SETTING_DECIMALS);
        figures_add(gauge->figures, figure);
        figure = gauge_figure(gauge, sides[i].error, error_with(gauge, dial, sides[i].value),
                              remark(BASIS_EITHER_SIDE_ERROR));
        figure.headline = headline;
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
    double driving = gauge->instrument->setting.driving_gear_teeth;
    if (known(driving))
        figures_add(gauge->figures,
                    gauge_figure(gauge, QUANTITY_GEAR_RATIO, answer->exact / driving,
                                 remark(BASIS_GEAR_RATIO)));
    if (dial->is_new)
        return;
    figure = gauge_figure(gauge, QUANTITY_ADAPTER_RATIO,
                          adapter_ratio(dial->line.scale, answer->target_scale - 1),
                          remark(BASIS_ADAPTER));
    figure.headline = known(answer->nearest) ? HEADLINE_ROWS_ONLY : HEADLINE_NO;
    figures_add(gauge->figures, figure);
}

void report_setting(const struct gauge *gauge, const struct dial *dial)
{
    report_sensor(gauge, dial);
    if (!dial->answer.asked)
        return;
    report_exact(gauge, dial);
    report_nearest(gauge, dial);
    if (gauge->law.rule != NULL)
        report_lawful(gauge, dial);
    report_either_side(gauge, dial);
    report_remaining(gauge, dial);
}
