/* The whole answer in one sentence, which a terminal shows before all else. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/view.h"
#include "build/keys.h"

static const char *over_text(const struct gauge *gauge, struct instrument_line line)
{
    double percent = unit_from_si(UNIT_PERCENT, speed_error(line, gauge->at_mps));
    return arena_format(gauge->plan->arena, "%.2f %% %s at %s", fabs(percent),
                        percent < -0.005 ? "under" : "over", speed_text(gauge, gauge->at_mps));
}

/* "lawful by un_r39, 40 to 175 km/h" */
static const char *law_text(const struct gauge *gauge, const struct gauge_view *view,
                            struct instrument_line line)
{
    struct arena *arena = gauge->plan->arena;
    if (gauge->rule == NULL)
        return "lawful or not is unknown: no rule is given";
    struct scale_range scales =
        lawful_scales(gauge->rule, line.offset_mps, gauge->top_mps, view->spread);
    bool with_spread =
        line.scale >= scales.low * (1 - 1e-9) && line.scale <= scales.high * (1 + 1e-9);
    struct speed_range range = judged_range(gauge->rule, gauge->top_mps);
    struct lawful_check check;
    check_lawful(gauge->rule, line, gauge->top_mps, &check);
    if (!check.lawful)
        return arena_format(arena, "NOT lawful by %s (%s at %s)", gauge->rule->name,
                            check.reads_under ? "under" : "too far over",
                            speed_text(gauge, check.worst_true_mps));
    const char *to = speed_text(gauge, range.to_mps);
    return arena_format(
        arena, "lawful by %s, %s%s%s", gauge->rule->name,
        range.from_mps < range.to_mps
            ? arena_format(arena, "%.0f to %s", unit_from_si(gauge_unit(gauge), range.from_mps), to)
            : to,
        with_spread ? "" : ", if the tyre is nominal",
        readings_leave_law_open(gauge) ? ", if the few readings are right" : "");
}

static const char *no_setting_text(const struct gauge *gauge, const struct gauge_view *view)
{
    struct arena *arena = gauge->plan->arena;
    const char *kind = choices_setting_kind[gauge->instrument->setting.kind];
    const char *why = gauge->rule == NULL ? arena_format(arena, "no %s is within min and max", kind)
                                          : arena_format(arena, "no possible %s is lawful by %s",
                                                         kind, gauge->rule->name);
    return arena_format(arena, "%s: adapter of ratio %.4f needed; now %s", why,
                        adapter_ratio(view->line.scale, view->answer.target_scale - 1),
                        over_text(gauge, view->line));
}

static const char *answer_text(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct setting_answer *answer = &view->answer;
    struct arena *arena = gauge->plan->arena;
    if (!known(view->line.scale))
        return "unknown: the rolling circumference of both tyres is needed";
    if (!answer->asked)
        return arena_format(arena, "no setting is given to change; %s, %s",
                            over_text(gauge, view->line), law_text(gauge, view, view->line));
    if (!known(answer->nearest))
        return no_setting_text(gauge, view);
    double now = gauge->instrument->setting.now;
    bool same = fabs(answer->nearest - now) <= 1e-9 * now;
    const char *doubt = readings_are_far_off(gauge) ? "the readings are very far off: check them"
                                                    : setting_doubt(gauge, view);
    return arena_format(arena, "%s %.*f %s: then %s, %s%s%s", same ? "leave" : "enter",
                        setting_decimals(answer->nearest), answer->nearest,
                        choices_setting_kind[gauge->instrument->setting.kind],
                        over_text(gauge, view->line_set), law_text(gauge, view, view->line_set),
                        doubt == NULL ? "" : "; but ", doubt == NULL ? "" : doubt);
}

void report_answer(const struct gauge *gauge, const struct gauge_view *view)
{
    struct figure figure = gauge_figure(gauge, QUANTITY_ANSWER, view->answer.nearest,
                                        "what must be entered, what remains, whether it is lawful");
    figure.action = answer_text(gauge, view);
    figure.decimals = setting_decimals(known_or(view->answer.nearest, 0));
    figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(gauge->figures, figure);
}
