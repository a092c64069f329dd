/* The speed table, shown to true and back, over the instrument's range and at posted limits. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"

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
    double top = gauge->top_assumed ? usual : fmax(gauge->law.top_mps, usual);
    return (struct table_range){known_or(given->from_mps, step),
                                known_or(given->to_mps, step * ceil(top / step - 1e-9)), step};
}

/* Speeds that are read as one: a tenth of the dial's unit apart. */
static bool same_speed(const struct gauge *gauge, double a_mps, double b_mps)
{
    return fabs(a_mps - b_mps) < unit_to_si(gauge_unit(gauge), 0.1);
}

static void report_line(const struct gauge *gauge, const struct dial *dial, bool shown_given,
                        double speed)
{
    struct figure figure =
        shown_given
            ? gauge_figure_at(gauge, QUANTITY_TRUE_SPEED, true_speed_mps(dial->line, speed),
                              remark(BASIS_TRUE_SPEED), AT_SHOWN, speed)
            : gauge_figure_at(gauge, QUANTITY_SHOWN_SPEED, shown_speed_mps(dial->line, speed),
                              remark(BASIS_SHOWN_SPEED), AT_TRUE, speed);
    bool round_speed = same_speed(gauge, speed, gauge->at_mps);
    figure.headline = shown_given && round_speed ? HEADLINE_YES : HEADLINE_NO;
    figures_add(gauge->figures, figure);
}

/* What is true at the round speed once the setting is entered. */
static void report_entered(const struct gauge *gauge, const struct dial *dial)
{
    struct figure figure =
        gauge_figure_at(gauge, QUANTITY_TRUE_SPEED, true_speed_mps(dial->line_set, gauge->at_mps),
                        remark(BASIS_TRUE_ENTERED), AT_SHOWN, gauge->at_mps);
    figure.place.setting = AT_SETTING_ENTERED;
    if (known(dial->answer.nearest))
        figures_add(gauge->figures, figure);
}

static void report_lines(const struct gauge *gauge, const struct dial *dial,
                         const struct table_range *range, bool shown_given)
{
    bool round_done = !shown_given;
    double last = range->to_mps + 1e-9;
    for (int i = 0; range->from_mps + i * range->step_mps <= last; i++) {
        double speed = range->from_mps + i * range->step_mps;
        bool round_speed = same_speed(gauge, speed, gauge->at_mps);
        bool passed = speed > gauge->at_mps;
        if (!round_done && passed && !round_speed) /* the sheet's own line, in its place */
            report_line(gauge, dial, true, gauge->at_mps);
        round_done = round_done || passed || round_speed;
        report_line(gauge, dial, shown_given, speed);
    }
    if (!round_done)
        report_line(gauge, dial, true, gauge->at_mps);
}

static void report_limit(const struct gauge *gauge, const struct dial *dial, double limit_mps)
{
    if (!dial->is_new)
        figures_add(gauge->figures, gauge_figure_at(gauge, QUANTITY_SHOWN_AT_LIMIT,
                                                    shown_speed_mps(dial->line, limit_mps),
                                                    remark(BASIS_SHOWN_NOW), AT_POSTED, limit_mps));
    if (!known(dial->answer.nearest))
        return;
    struct figure figure =
        gauge_figure_at(gauge, QUANTITY_SHOWN_AT_LIMIT, shown_speed_mps(dial->line_set, limit_mps),
                        remark(BASIS_SHOWN_ENTERED), AT_POSTED, limit_mps);
    figure.place.setting = AT_SETTING_ENTERED;
    figure.headline = dial->is_new ? HEADLINE_NO : HEADLINE_ROWS_ONLY;
    figures_add(gauge->figures, figure);
}

/* The window of the rule at a round speed, as far as it asks one; whichever tyre: with the fitted
 * one. */
static void report_window(const struct gauge *gauge, double speed)
{
    struct speed_range shown = lawful_shown(&gauge->law, speed);
    struct speed_range truth = lawful_true(&gauge->law, speed);
    const struct {
        enum quantity_id quantity;
        double value;
        enum place_speed as;
    } rows[] = {{QUANTITY_LAWFUL_SHOWN_LEAST, shown.from_mps, AT_TRUE},
                {QUANTITY_LAWFUL_SHOWN_MOST, shown.to_mps, AT_TRUE},
                {QUANTITY_LAWFUL_TRUE_LEAST, truth.from_mps, AT_SHOWN},
                {QUANTITY_LAWFUL_TRUE_MOST, truth.to_mps, AT_SHOWN}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        if (!known(rows[i].value))
            continue;
        struct figure figure = gauge_figure_at(gauge, rows[i].quantity, rows[i].value,
                                               law_basis(gauge), rows[i].as, speed);
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

static bool is_given_before(const struct gauge *gauge, size_t index)
{
    const double *items = gauge->instrument->posted_limits.items;
    for (size_t i = 0; i < index; i++)
        if (same_speed(gauge, items[i], items[index]))
            return true;
    return false;
}

static void report_posted_limits(const struct gauge *gauge, const struct dial *dial)
{
    enum { USUAL_LIMITS = 9 };
    const struct number_list *given = &gauge->instrument->posted_limits;
    size_t count = given->count > 0 ? given->count : USUAL_LIMITS;
    for (size_t i = 0; i < count; i++) {
        if (given->count > 0 && is_given_before(gauge, i))
            continue;
        double limit = given->count > 0 ? given->items[i] : usual_limit_mps(gauge, i);
        report_limit(gauge, dial, limit);
        if (dial->setup->is_fitted && gauge->law.rule != NULL)
            report_window(gauge, limit);
    }
}

void report_speed_table(const struct gauge *gauge, const struct dial *dial)
{
    struct table_range range = range_of(gauge);
    report_lines(gauge, dial, &range, true);
    report_entered(gauge, dial);
    report_lines(gauge, dial, &range, false);
    report_posted_limits(gauge, dial);
}
