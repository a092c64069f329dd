/* What to enter: the exact setting for the aim, the nearest lawful one, the smallest change that is
 * lawful, and what an adapter would have to do instead. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/view.h"
#include "build/keys.h"

/* The scale that the aim asks for. */
static double aimed_scale(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct choice_or_value *aim = &gauge->instrument->aim;
    if (known(aim->value))
        return 1 + aim->value - gauge->line.offset_mps / gauge->at_mps;
    if (aim->choice == AIM_LOWEST_LAWFUL && gauge->rule != NULL)
        return lawful_scales(gauge->rule, gauge->line.offset_mps, gauge->top_mps, view->spread).low;
    return gauge->line.scale;
}

static const char *aim_text(const struct gauge *gauge)
{
    const struct choice_or_value *aim = &gauge->instrument->aim;
    if (known(aim->value))
        return "aim: the over-read asked for";
    if (aim->choice == AIM_LOWEST_LAWFUL && gauge->rule != NULL)
        return "aim: lowest_lawful, with the largest circumference too";
    return aim->choice == AIM_AS_BEFORE ? "aim: as_before" : "aim: as_before (assumed)";
}

static double setting_for_scale(const struct gauge *gauge, const struct gauge_view *view,
                                double scale)
{
    const struct setting *setting = &gauge->instrument->setting;
    return setting_for_error(setting->kind, setting->now, view->from_m, view->to_m,
                             gauge->line.scale - 1, scale - 1);
}

static struct instrument_line line_with_setting(const struct gauge *gauge,
                                                const struct gauge_view *view, double setting)
{
    const struct setting *now = &gauge->instrument->setting;
    double error = error_with_setting(now->kind, setting, now->now, view->from_m, view->to_m,
                                      gauge->line.scale - 1);
    return (struct instrument_line){1 + error, gauge->line.offset_mps};
}

/* Settings between which every speed of the range is lawful; all of them where no rule is named. */
static void set_lawful(const struct gauge *gauge, const struct gauge_view *view,
                       struct spread spread, struct setting_answer *answer)
{
    answer->lawful_low = 0;
    answer->lawful_high = INFINITY;
    if (gauge->rule == NULL)
        return;
    struct scale_range scales =
        lawful_scales(gauge->rule, gauge->line.offset_mps, gauge->top_mps, spread);
    double a = setting_for_scale(gauge, view, scales.low);
    double b = setting_for_scale(gauge, view, scales.high);
    bool rising = gauge->instrument->setting.kind == SETTING_CIRCUMFERENCE_MM;
    answer->lawful_low = rising ? a : b;
    answer->lawful_high = rising ? b : a;
}

static void search_settings(const struct gauge *gauge, const struct gauge_view *view,
                            struct spread spread, struct setting_answer *answer)
{
    const struct setting *setting = &gauge->instrument->setting;
    const struct setting_grid grid = {setting->now, setting->step, setting->min, setting->max,
                                      setting->choices};
    set_lawful(gauge, view, spread, answer);
    answer->nearest =
        nearest_setting(&grid, answer->exact, answer->lawful_low, answer->lawful_high);
    answer->smallest =
        nearest_setting(&grid, setting->now, answer->lawful_low, answer->lawful_high);
}

/* Lawful with every circumference of the spread; where no setting is, on the nominal one alone. */
void setting_answer_set(const struct gauge *gauge, struct gauge_view *view)
{
    const struct setting *setting = &gauge->instrument->setting;
    struct setting_answer *answer = &view->answer;
    *answer = (struct setting_answer){
        .asked = setting->given != NULL && setting->kind != CHOICE_NONE && known(setting->now),
        .target_scale = aimed_scale(gauge, view),
        .exact = UNKNOWN,
        .nearest = UNKNOWN,
        .smallest = UNKNOWN,
    };
    view->line_set = (struct instrument_line){UNKNOWN, gauge->line.offset_mps};
    if (!answer->asked || !known(view->line.scale))
        return;
    answer->exact = setting_for_scale(gauge, view, answer->target_scale);
    search_settings(gauge, view, view->spread, answer);
    if (!known(answer->nearest)) {
        search_settings(gauge, view, (struct spread){0, 0}, answer);
        answer->nominal_alone = known(answer->nearest);
    }
    view->line_set = line_with_setting(gauge, view, answer->nearest);
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

const char *setting_doubt(const struct gauge *gauge, const struct gauge_view *view)
{
    static const double far_apart = 0.3; /* a mile for a kilometre makes 0.38 or 0.61 */
    const struct setting *setting = &gauge->instrument->setting;
    double own = setting_of_tyre(setting->kind, view->from_m);
    if (!clearly_above(fabs(setting->now - own), far_apart * own))
        return NULL;
    return arena_format(
        gauge->plan->arena, "%s %.*f now is far from the fitted tyre's own %.0f: check the kind",
        choices_setting_kind[setting->kind], setting_decimals(setting->now), setting->now, own);
}

/* Fills in whether there is a setting to enter, and what to do. */
static struct figure judged_nearest(const struct gauge *gauge, const struct gauge_view *view,
                                    struct figure figure)
{
    figure.basis = gauge->rule == NULL ? "nearest possible; no rule named" : gauge->rule->basis;
    figure.verdict = known(figure.value) && gauge->rule != NULL ? VERDICT_OK : VERDICT_UNKNOWN;
    figure.action = gauge->rule == NULL ? "give speedometer: rule, such as un_r39"
                                        : "enter it, then check against a satellite receiver";
    const char *doubt = setting_doubt(gauge, view);
    if (doubt != NULL && known(figure.value)) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = doubt;
    } else if (view->answer.nominal_alone) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = "lawful on the nominal circumference and not on all that the standard "
                        "allows: enter it, then check against a satellite receiver";
    } else if (!known(view->answer.exact)) {
        figure.action = "give the rolling circumference of both tyres";
    } else if (!known(figure.value)) {
        figure.verdict = VERDICT_FAIL;
        figure.action = arena_format(
            gauge->plan->arena, "no setting is lawful: an adapter of ratio %.4f is needed",
            adapter_ratio(view->line.scale, view->answer.target_scale - 1));
    }
    return figure;
}

/* An end of the lawful settings that any number reaches is none. */
static double finite(double setting)
{
    return setting > 0 && setting < INFINITY ? setting : UNKNOWN;
}

static void report_around(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct setting_answer *answer = &view->answer;
    const char *kind = choices_setting_kind[gauge->instrument->setting.kind];
    const char *lawful_basis =
        answer->nominal_alone
            ? "lawful at every speed judged, on the nominal circumference alone"
            : "lawful at every speed judged, with the smallest and the largest circumference";
    const struct {
        enum quantity_id quantity;
        double value;
        const char *basis;
        enum headline headline;
    } rows[] = {
        {QUANTITY_SETTING_SMALLEST, answer->smallest, "the lawful setting nearest to the one now",
         HEADLINE_NO},
        {QUANTITY_SETTING_LAWFUL_LEAST, finite(answer->lawful_low), lawful_basis,
         HEADLINE_ROWS_ONLY},
        {QUANTITY_SETTING_LAWFUL_MOST, finite(answer->lawful_high), lawful_basis,
         HEADLINE_ROWS_ONLY},
    };
    for (size_t i = 0; gauge->rule != NULL && i < sizeof rows / sizeof rows[0]; i++) {
        struct figure figure = gauge_figure(gauge, rows[i].quantity, rows[i].value, rows[i].basis);
        figure.at = kind;
        figure.headline = rows[i].headline;
        if (i == 0 && known(rows[i].value))
            figure.decimals = setting_decimals(rows[i].value);
        figures_add(gauge->figures, figure);
    }
}

/* The errors that remain, and what else would do it. */
static void report_remaining(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct setting_answer *answer = &view->answer;
    struct instrument_line exact = {answer->target_scale, gauge->line.offset_mps};
    struct figure figure =
        gauge_figure(gauge, QUANTITY_REMAINING_ERROR, speed_error(view->line_set, gauge->at_mps),
                     "error with the setting to enter");
    figure.headline = HEADLINE_YES;
    figures_add(gauge->figures, figure);
    figure = gauge_figure(gauge, QUANTITY_REMAINING_EXACT, speed_error(exact, gauge->at_mps),
                          "error with the exact setting");
    figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(gauge->figures, figure);
    figure = gauge_figure(gauge, QUANTITY_ADAPTER_RATIO,
                          adapter_ratio(view->line.scale, answer->target_scale - 1),
                          "what an adapter must do to meet the aim with the setting now");
    figure.headline = known(answer->nearest) ? HEADLINE_ROWS_ONLY : HEADLINE_NO;
    figures_add(gauge->figures, figure);
    double driving = gauge->instrument->setting.driving_gear_teeth;
    if (known(driving))
        figures_add(gauge->figures,
                    gauge_figure(gauge, QUANTITY_GEAR_RATIO, answer->exact / driving,
                                 "driven teeth for the aim over driving teeth"));
}

void report_setting(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct setting_answer *answer = &view->answer;
    report_sensor(gauge, view);
    if (!answer->asked)
        return;
    struct figure figure =
        gauge_figure(gauge, QUANTITY_SETTING_EXACT, answer->exact, aim_text(gauge));
    figure.at = choices_setting_kind[gauge->instrument->setting.kind];
    figures_add(gauge->figures, figure);
    figure.quantity = QUANTITY_SETTING_NEAREST;
    figure.value = answer->nearest;
    figure.decimals = setting_decimals(known_or(answer->nearest, 0));
    figure.headline = HEADLINE_YES;
    figures_add(gauge->figures, judged_nearest(gauge, view, figure));
    report_around(gauge, view);
    report_remaining(gauge, view);
}
