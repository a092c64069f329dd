/* The whole answer in one sentence, which a terminal shows before all else. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"
#include "build/keys.h"

static const char *setting_kind(const struct gauge *gauge)
{
    return choices_setting_kind[gauge->instrument->setting.kind];
}

/* "3.01 % over" */
static struct argument say_error(const struct gauge *gauge, double error)
{
    struct arena *arena = gauge->plan->arena;
    double percent = unit_from_si(UNIT_PERCENT, error);
    return say_remark(
        arena, REMARK_WITH(arena, percent < -0.005 ? PHRASE_PERCENT_UNDER : PHRASE_PERCENT_OVER,
                           say_number(fabs(percent), 2)));
}

/* "3.01 % over at 100 km/h" */
static struct argument say_over(const struct gauge *gauge, struct instrument_line line)
{
    struct arena *arena = gauge->plan->arena;
    return say_remark(arena, REMARK_WITH(arena, PHRASE_ERROR_AT,
                                         say_error(gauge, speed_error(line, gauge->at_mps)),
                                         say_dial_speed(gauge, gauge->at_mps)));
}

/* "20 to 175 km/h" */
static struct remark range_judged(const struct gauge *gauge)
{
    struct arena *arena = gauge->plan->arena;
    struct speed_range range = judged_range(&gauge->law);
    struct argument to = say_dial_speed(gauge, range.to_mps);
    if (range.from_mps >= range.to_mps)
        return REMARK_WITH(arena, PHRASE_SPEED, to);
    double from = unit_from_si(gauge_unit(gauge), range.from_mps);
    bool whole = fabs(from - floor(from + 0.5)) < 0.005;
    return REMARK_WITH(arena, PHRASE_SPEED_RANGE, say_number(from, whole ? 0 : 1), to);
}

static struct remark not_lawful(const struct gauge *gauge, const struct lawful_check *check)
{
    struct arena *arena = gauge->plan->arena;
    struct remark side = remark(check->reads_under ? PHRASE_UNDER : PHRASE_TOO_FAR_OVER);
    return REMARK_WITH(arena, PHRASE_NOT_LAWFUL, say_text(gauge->law.rule->name),
                       say_remark(arena, side), say_dial_speed(gauge, check->worst_true_mps));
}

/* "lawful by un_r39, 20 to 175 km/h"; the line must be known. */
static struct remark law_of(const struct gauge *gauge, const struct dial *dial,
                            struct instrument_line line)
{
    struct arena *arena = gauge->plan->arena;
    if (gauge->law.rule == NULL)
        return remark(PHRASE_NO_RULE);
    struct lawful_check check;
    check_lawful(&gauge->law, line, &check);
    if (check.lawful != ANSWER_YES)
        return not_lawful(gauge, &check);
    bool with_spread = keeps_lawful(gauge, line, dial->spread, NULL);
    struct spread spread = with_spread ? dial->spread : (struct spread){0, 0};
    bool with_readings = keeps_lawful(gauge, line, spread, gauge->calibration);
    return REMARK_WITH(arena, PHRASE_LAWFUL, say_text(gauge->law.rule->name),
                       say_remark(arena, range_judged(gauge)),
                       say_remark(arena, remark(with_spread ? REMARK_NONE : PHRASE_IF_NOMINAL)),
                       say_remark(arena, remark(with_readings ? REMARK_NONE : PHRASE_IF_READINGS)));
}

static struct remark no_choice(const struct gauge *gauge, const struct dial *dial)
{
    struct arena *arena = gauge->plan->arena;
    struct argument kind = say_text(setting_kind(gauge));
    struct remark why = gauge->law.rule == NULL ? REMARK_WITH(arena, PHRASE_NONE_WITHIN, kind)
                                                : REMARK_WITH(arena, PHRASE_NONE_LAWFUL, kind,
                                                              say_text(gauge->law.rule->name));
    double ratio = adapter_ratio(dial->line.scale, dial->answer.target_scale - 1);
    if (!known(ratio))
        return why;
    return REMARK_WITH(arena, ADVICE_ANSWER_NO_CHOICE, say_remark(arena, why), say_number(ratio, 4),
                       say_over(gauge, dial->line));
}

static struct argument say_doubt(const struct gauge *gauge, const struct dial *dial)
{
    struct arena *arena = gauge->plan->arena;
    struct remark doubt =
        readings_are_far_off(gauge) ? remark(PHRASE_READINGS_FAR_OFF) : setting_doubt(gauge, dial);
    return say_remark(arena, doubt.id == REMARK_NONE
                                 ? doubt
                                 : REMARK_WITH(arena, PHRASE_BUT, say_remark(arena, doubt)));
}

/* "; 19 driven_gear_teeth: 1.20 % over; 18: 1.92 % under", where the settings are far apart. */
static struct argument say_either_side(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    struct arena *arena = gauge->plan->arena;
    if (!setting_is_coarse(gauge, dial))
        return say_remark(arena, remark(REMARK_NONE));
    return say_remark(arena, REMARK_WITH(arena, PHRASE_EITHER_SIDE, say_setting(answer->above),
                                         say_text(setting_kind(gauge)),
                                         say_error(gauge, error_with(gauge, dial, answer->above)),
                                         say_setting(answer->below),
                                         say_error(gauge, error_with(gauge, dial, answer->below))));
}

/* "aim: lowest_lawful", or that no aim is needed. */
static struct argument say_aim(const struct gauge *gauge, const struct dial *dial)
{
    struct arena *arena = gauge->plan->arena;
    bool stands = dial->answer.left && gauge->law.rule != NULL && !aim_taken(gauge).named;
    return say_remark(
        arena, stands ? remark(PHRASE_STANDS)
                      : REMARK_WITH(arena, PHRASE_AIM, say_remark(arena, aim_remark(gauge))));
}

static struct remark answer_of_dial(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    struct arena *arena = gauge->plan->arena;
    struct need missing = dial_missing(gauge, dial);
    if (!missing.known)
        return REMARK_WITH(arena, ADVICE_ANSWER_UNKNOWN, say_remark(arena, missing.advice));
    if (!answer->asked)
        return REMARK_WITH(arena, ADVICE_ANSWER_NO_SETTING, say_over(gauge, dial->line),
                           say_remark(arena, law_of(gauge, dial, dial->line)));
    if (!known(answer->nearest))
        return no_choice(gauge, dial);
    return REMARK_WITH(arena, answer->left ? ADVICE_ANSWER_LEAVE : ADVICE_ANSWER_ENTER,
                       say_setting(answer->nearest), say_text(setting_kind(gauge)),
                       say_aim(gauge, dial), say_over(gauge, dial->line_set),
                       say_remark(arena, law_of(gauge, dial, dial->line_set)),
                       say_either_side(gauge, dial), say_doubt(gauge, dial));
}

void report_answer(const struct gauge *gauge, const struct dial *dial)
{
    struct figure figure =
        gauge_figure(gauge, QUANTITY_ANSWER, dial->answer.nearest, remark(BASIS_ANSWER));
    figure.advice = answer_of_dial(gauge, dial);
    figure.decimals = number_decimals(known_or(dial->answer.nearest, 0), SETTING_DECIMALS);
    figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(gauge->figures, figure);
}
