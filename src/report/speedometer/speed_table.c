/* The speed table, shown to true and back, over the instrument's range and at posted limits. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/view.h"

/* Speeds of the table: lowest, highest and step. */
struct table_range {
    double from_mps, to_mps, step_mps;
};

/* Where not given: from one step up to the first line at or above the top speed, and not below
 * what roads allow. */
static struct table_range range_of(const struct gauge *gauge)
{
    const struct speed_table *given = &gauge->instrument->range;
    enum unit_id unit = gauge_unit(gauge);
    double step = known_or(given->step_mps, unit_to_si(unit, gauge->mph ? 10 : 20));
    double usual = unit_to_si(unit, gauge->mph ? 80 : 140);
    double top = gauge->top_assumed ? usual : fmax(gauge->top_mps, usual);
    return (struct table_range){known_or(given->from_mps, step),
                                known_or(given->to_mps, step * ceil(top / step - 1e-9)), step};
}

static void report_line(const struct gauge *gauge, const struct gauge_view *view, bool shown_given,
                        double speed)
{
    struct figure figure =
        shown_given ? gauge_figure(gauge, QUANTITY_TRUE_SPEED, true_speed_mps(view->line, speed),
                                   "true = shown (C_new / C_old) / (1 + e)")
                    : gauge_figure(gauge, QUANTITY_SHOWN_SPEED, shown_speed_mps(view->line, speed),
                                   "shown = true (1 + e) C_old / C_new");
    figure.at = arena_format(gauge->plan->arena, "%s %s", shown_given ? "shown" : "true",
                             speed_text(gauge, speed));
    bool round_speed = fabs(speed - gauge->at_mps) < 1e-9;
    figure.headline = shown_given && round_speed ? HEADLINE_YES : HEADLINE_NO;
    figures_add(gauge->figures, figure);
}

static void report_lines(const struct gauge *gauge, const struct gauge_view *view,
                         const struct table_range *range, bool shown_given)
{
    bool round_done = !shown_given;
    double last = range->to_mps + 1e-9;
    for (int i = 0; range->from_mps + i * range->step_mps <= last; i++) {
        double speed = range->from_mps + i * range->step_mps;
        if (!round_done && speed > gauge->at_mps + 1e-9) /* the sheet's own line, in its place */
            report_line(gauge, view, true, gauge->at_mps);
        round_done = round_done || speed > gauge->at_mps - 1e-9;
        report_line(gauge, view, shown_given, speed);
    }
    if (!round_done)
        report_line(gauge, view, true, gauge->at_mps);
}

static void report_limit(const struct gauge *gauge, const struct gauge_view *view, double limit_mps)
{
    struct figure figure =
        gauge_figure(gauge, QUANTITY_SHOWN_AT_LIMIT, shown_speed_mps(view->line, limit_mps),
                     "what is shown at exactly the limit, as set now");
    figure.at = arena_format(gauge->plan->arena, "posted %s", speed_text(gauge, limit_mps));
    figures_add(gauge->figures, figure);
    if (!known(view->answer.nearest))
        return;
    figure.value = shown_speed_mps(view->line_set, limit_mps);
    figure.basis = "what is shown at exactly the limit, with the setting to enter";
    figure.at =
        arena_format(gauge->plan->arena, "posted %s, as entered", speed_text(gauge, limit_mps));
    figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(gauge->figures, figure);
}

/* The window of the rule at a round speed, whichever tyre: with the fitted one. */
static void report_window(const struct gauge *gauge, double speed)
{
    struct speed_range shown = lawful_shown(gauge->rule, speed);
    struct speed_range truth = lawful_true(gauge->rule, speed);
    const struct {
        enum quantity_id quantity;
        double value;
        const char *at;
    } rows[] = {{QUANTITY_LAWFUL_SHOWN_LEAST, shown.from_mps, "true"},
                {QUANTITY_LAWFUL_SHOWN_MOST, shown.to_mps, "true"},
                {QUANTITY_LAWFUL_TRUE_LEAST, truth.from_mps, "shown"},
                {QUANTITY_LAWFUL_TRUE_MOST, truth.to_mps, "shown"}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct figure figure =
            gauge_figure(gauge, rows[i].quantity, rows[i].value, gauge->rule->basis);
        figure.at = arena_format(gauge->plan->arena, "%s %s", rows[i].at, speed_text(gauge, speed));
        figure.headline = HEADLINE_ROWS_ONLY;
        figures_add(gauge->figures, figure);
    }
}

/* Limits that are posted somewhere, where the file names none. */
static double usual_limit_mps(const struct gauge *gauge, size_t index)
{
    static const double kmh[] = {30, 50, 60, 80, 90, 100, 110, 120, 130};
    static const double mph[] = {20, 30, 40, 50, 55, 60, 65, 70, 75};
    return unit_to_si(gauge_unit(gauge), gauge->mph ? mph[index] : kmh[index]);
}

static void report_posted_limits(const struct gauge *gauge, const struct gauge_view *view)
{
    enum { USUAL_LIMITS = 9 };
    const struct number_list *given = &gauge->instrument->posted_limits;
    size_t count = given->count > 0 ? given->count : USUAL_LIMITS;
    for (size_t i = 0; i < count; i++) {
        double limit = given->count > 0 ? given->items[i] : usual_limit_mps(gauge, i);
        report_limit(gauge, view, limit);
        if (view->setup->is_fitted && gauge->rule != NULL)
            report_window(gauge, limit);
    }
}

void report_speed_table(const struct gauge *gauge, const struct gauge_view *view)
{
    struct table_range range = range_of(gauge);
    report_lines(gauge, view, &range, true);
    report_lines(gauge, view, &range, false);
    report_posted_limits(gauge, view);
}
