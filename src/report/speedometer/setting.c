/* What to enter: the exact setting for the aim, the nearest lawful one, and the smallest change
 * that is lawful. What is lawful as it stands is left, unless the file names an aim. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"

struct aim_taken aim_taken(const struct gauge *gauge)
{
    const struct choice_or_value *aim = &gauge->instrument->aim;
    bool named = known(aim->value) || aim->choice != CHOICE_NONE;
    if (known(aim->value))
        return (struct aim_taken){AIM_IS_OVER_READ, named};
    if (aim->choice == AIM_AS_BEFORE && gauge->source != LINE_NEW)
        return (struct aim_taken){AIM_IS_AS_BEFORE, named};
    if (aim->choice != AIM_AS_BEFORE && gauge->law.rule != NULL)
        return (struct aim_taken){AIM_IS_LOWEST_LAWFUL, named};
    return (struct aim_taken){AIM_IS_ZERO, false};
}

/* The scale that the aim asks for. */
static double aimed_scale(const struct gauge *gauge, double lowest_lawful)
{
    double over_read = 0;
    switch (aim_taken(gauge).kind) {
    case AIM_IS_AS_BEFORE:
        return gauge->line.scale;
    case AIM_IS_LOWEST_LAWFUL:
        return lowest_lawful;
    case AIM_IS_OVER_READ:
        over_read = gauge->instrument->aim.value;
        break;
    case AIM_IS_ZERO:
        break;
    }
    return 1 + over_read - gauge->line.offset_mps / gauge->at_mps;
}

static double setting_for_scale(const struct gauge *gauge, const struct dial *dial, double scale)
{
    return setting_for_error(gauge->instrument->setting.kind, gauge->now, dial->from_m, dial->to_m,
                             gauge->line.scale - 1, scale - 1);
}

struct instrument_line line_with_setting(const struct gauge *gauge, const struct dial *dial,
                                         double setting)
{
    double error = error_with_setting(gauge->instrument->setting.kind, setting, gauge->now,
                                      dial->from_m, dial->to_m, gauge->line.scale - 1);
    return (struct instrument_line){1 + error, gauge->line.offset_mps};
}

/* One that cannot be set takes what it has, alone: the only one of its choices. */
static struct setting_grid grid_of(const struct gauge *gauge, double *set)
{
    const struct setting *setting = &gauge->instrument->setting;
    bool fixed = gauge->plan->specification->allowed.calibrate == 0;
    double base = gauge->source == LINE_NEW ? setting->min : setting->now;
    return (struct setting_grid){base, setting->step, setting->min, setting->max,
                                 fixed ? (struct number_list){set, 1} : setting->choices};
}

/* Scales between which every speed of the range is lawful; all of them where no rule is named. */
static struct scale_range scales_with(const struct gauge *gauge, const struct dial *dial,
                                      enum setting_margin margin)
{
    struct spread spread = margin == MARGIN_NONE ? (struct spread){0, 0} : dial->spread;
    return gauge->law.rule == NULL
               ? (struct scale_range){0, INFINITY}
               : lawful_scales(&gauge->law, gauge->line.offset_mps, spread,
                               margin == MARGIN_ALL ? gauge->calibration : NULL);
}

/* Those of them that are lawful for the odometer, which the setting moves too. */
static struct scale_range narrowed(struct scale_range scales, struct scale_range odometer)
{
    if (!known(scales.low) || !known(odometer.low))
        return scales;
    return (struct scale_range){fmax(scales.low, odometer.low), fmin(scales.high, odometer.high)};
}

static bool is_lawful_as_set(const struct dial *dial, const struct setting_answer *answer)
{
    return !dial->is_new && dial->set >= answer->lawful_low * (1 - 1e-9) &&
           dial->set <= answer->lawful_high * (1 + 1e-9);
}

/* Whether another setting comes nearer to what the aim asks for. */
static bool is_nearer(const struct dial *dial, const struct setting_answer *answer)
{
    return clearly_above(fabs(dial->set - answer->exact), fabs(answer->nearest - answer->exact));
}

/* Whether the setting stays: lawful, and no aim is named that another would meet better. */
static bool stays(const struct gauge *gauge, const struct dial *dial,
                  const struct setting_answer *answer)
{
    bool aimless = gauge->law.rule != NULL && !aim_taken(gauge).named;
    return is_lawful_as_set(dial, answer) && (aimless || !is_nearer(dial, answer));
}

/* The answer that keeps a margin; where no setting does, it has none to enter. */
static struct setting_answer answer_with(const struct gauge *gauge, const struct dial *dial,
                                         enum setting_margin margin, bool with_odometer)
{
    double set = dial->set;
    const struct setting_grid grid = grid_of(gauge, &set);
    struct scale_range scales = scales_with(gauge, dial, margin);
    struct setting_answer answer = {
        .asked = true, .margin = margin, .with_odometer = with_odometer};
    if (with_odometer)
        scales = narrowed(scales, odometer_scales(gauge));
    double a = setting_for_scale(gauge, dial, scales.low);
    double b = setting_for_scale(gauge, dial, scales.high);
    bool rising = gauge->instrument->setting.kind == SETTING_CIRCUMFERENCE_MM;
    answer.target_scale = aimed_scale(gauge, scales.low);
    answer.exact = setting_for_scale(gauge, dial, answer.target_scale);
    answer.lawful_low = rising ? a : b;
    answer.lawful_high = rising ? b : a;
    answer.nearest = nearest_setting(&grid, answer.exact, answer.lawful_low, answer.lawful_high);
    answer.smallest =
        is_lawful_as_set(dial, &answer)
            ? dial->set
            : nearest_setting(&grid, dial->set, answer.lawful_low, answer.lawful_high);
    answer.left = stays(gauge, dial, &answer);
    answer.nearest = answer.left ? dial->set : answer.nearest;
    answer.below = nearest_setting(&grid, answer.exact, 0, answer.exact);
    answer.above = nearest_setting(&grid, answer.exact, answer.exact, INFINITY);
    return answer;
}

/* The most margin with which a setting is lawful; where none is even on the nominal circumference,
 * what the most margin asks for that can be told. What is not known of the spread is no reason to
 * leave it out; that the readings leave the law open is none to change what is lawful by them. */
static struct setting_answer best_answer(const struct gauge *gauge, const struct dial *dial,
                                         bool with_odometer)
{
    struct setting_answer best = {.exact = UNKNOWN};
    for (int margin = MARGIN_ALL; margin <= MARGIN_NONE; margin++) {
        struct setting_answer answer =
            answer_with(gauge, dial, (enum setting_margin)margin, with_odometer);
        if (margin == MARGIN_ALL || known(answer.nearest) || !known(best.exact))
            best = answer;
        if (known(best.nearest) || !known(dial->spread.over))
            break;
    }
    struct setting_answer with_less = answer_with(gauge, dial, MARGIN_OF_TYRE, with_odometer);
    bool unnamed = !aim_taken(gauge).named;
    return unnamed && best.margin == MARGIN_ALL && !best.left && with_less.left ? with_less : best;
}

/* Lawful for the odometer too where a setting is; otherwise for the speedometer alone. */
static struct setting_answer answer_of_both(const struct gauge *gauge, const struct dial *dial)
{
    if (!known(odometer_scales(gauge).low))
        return best_answer(gauge, dial, false);
    struct setting_answer both = best_answer(gauge, dial, true);
    return known(both.nearest) ? both : best_answer(gauge, dial, false);
}

bool is_lawful(const struct gauge *gauge, struct instrument_line line)
{
    struct lawful_check check = {.lawful = ANSWER_UNKNOWN};
    if (gauge->law.rule != NULL)
        check_lawful(&gauge->law, line, &check);
    return check.lawful == ANSWER_YES;
}

/* A new instrument is to be set; one that is not lawful, where the setting makes it so; and what is
 * lawful, where an aim is named that the setting meets better. */
static bool is_due(const struct gauge *gauge, const struct dial *dial)
{
    const struct setting_answer *answer = &dial->answer;
    if (!known(answer->nearest) || answer->left)
        return false;
    return dial->is_new || (aim_taken(gauge).named && is_nearer(dial, answer)) ||
           (!is_lawful(gauge, dial->line) && is_lawful(gauge, dial->line_set)) ||
           (odometer_is_lawful(gauge, dial, dial->set) == ANSWER_NO &&
            odometer_is_lawful(gauge, dial, answer->nearest) == ANSWER_YES);
}

struct cure cure_by_setting(const struct dial *dial, bool meets)
{
    bool cures = dial->answer.due && meets;
    return (struct cure){.task = cures ? TASK_SPEEDOMETER_SETTING : TASK_NONE,
                         .now = dial->set,
                         .then = dial->answer.nearest};
}

void setting_answer_set(const struct gauge *gauge, struct dial *dial)
{
    const struct setting *setting = &gauge->instrument->setting;
    bool asked = setting->given != NULL && setting->kind != CHOICE_NONE &&
                 (known(setting->now) || gauge->source == LINE_NEW);
    dial->answer = (struct setting_answer){.asked = asked,
                                           .target_scale = UNKNOWN,
                                           .exact = UNKNOWN,
                                           .lawful_low = UNKNOWN,
                                           .lawful_high = UNKNOWN,
                                           .nearest = UNKNOWN,
                                           .smallest = UNKNOWN,
                                           .below = UNKNOWN,
                                           .above = UNKNOWN};
    if (asked && known(dial->line.scale) && known(gauge->now))
        dial->answer = answer_of_both(gauge, dial);
    dial->line_set = line_with_setting(gauge, dial, dial->answer.nearest);
    if (dial->is_new)
        dial->line = dial->line_set;
    dial->answer.due = is_due(gauge, dial);
}

/* What an instrument of that kind would hold that is set to the tyre; UNKNOWN where it counts what
 * no tyre tells. */
double setting_of_tyre(int setting_kind, double circumference_m)
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
