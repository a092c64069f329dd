/* The law in detail: the test speeds, where the instrument crosses a bound, and the circumferences
 * on which it stays lawful as it is set now. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/view.h"

static void report_test_speed(const struct gauge *gauge, double true_mps,
                              struct instrument_line line, const char *when)
{
    struct figure figure = gauge_figure(gauge, QUANTITY_TEST_SPEED_ERROR,
                                        speed_error(line, true_mps), gauge->rule->basis);
    struct lawful_check check;
    check_lawful_at(gauge->rule, true_mps, shown_speed_mps(line, true_mps), &check);
    figure.limit = check.bound_shown_mps / true_mps - 1;
    figure.verdict = !known(figure.value) ? VERDICT_UNKNOWN
                     : check.lawful       ? VERDICT_OK
                                          : VERDICT_FAIL;
    figure.at = arena_format(gauge->plan->arena, "%s, true %s", when, speed_text(gauge, true_mps));
    figure.action = check.lawful        ? NULL
                    : check.reads_under ? "reads under: correct the setting"
                                        : "reads too far over: correct the setting";
    figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(gauge->figures, figure);
}

static void report_test_speeds(const struct gauge *gauge, const struct gauge_view *view)
{
    double speeds[TEST_SPEEDS_MAX];
    double top_kmh = unit_from_si(UNIT_KMH, gauge->top_mps);
    int count = speedometer_test_speeds_kmh(gauge->rule->test_speeds, top_kmh, speeds);
    for (int i = 0; i < count; i++) {
        double true_mps = unit_to_si(UNIT_KMH, speeds[i]);
        report_test_speed(gauge, true_mps, view->line, "as set now");
        if (known(view->answer.nearest))
            report_test_speed(gauge, true_mps, view->line_set, "as entered");
    }
}

/* From which speed on, and to which side, the instrument leaves the law or comes back to it. */
static void report_crossing(const struct gauge *gauge, const struct gauge_view *view,
                            double true_mps, bool lower)
{
    if (!known(true_mps))
        return;
    struct figure figure =
        gauge_figure(gauge, QUANTITY_LAWFUL_CROSSING, true_mps, gauge->rule->basis);
    struct lawful_check above;
    double beyond = true_mps * 1.001;
    check_lawful_at(gauge->rule, beyond, shown_speed_mps(view->line, beyond), &above);
    figure.at =
        lower ? "as set now, least that may be shown" : "as set now, most that may be shown";
    figure.action = arena_format(gauge->plan->arena, "%s %s this true speed",
                                 lower ? "reads under" : "reads too far over",
                                 above.lawful ? "below" : "above");
    figures_add(gauge->figures, figure);
}

static void report_circumferences(const struct gauge *gauge, const struct gauge_view *view)
{
    struct length_range lawful =
        lawful_circumferences(gauge->rule, view->line, view->to_m, gauge->top_mps);
    const struct {
        enum quantity_id quantity;
        double value;
    } rows[] = {{QUANTITY_CIRCUMFERENCE_LEAST, lawful.least_m},
                {QUANTITY_CIRCUMFERENCE_MOST, lawful.most_m}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        bool found = lawful.least_m <= lawful.most_m && rows[i].value < INFINITY;
        struct figure figure = gauge_figure(gauge, rows[i].quantity,
                                            found ? rows[i].value : UNKNOWN, gauge->rule->basis);
        figure.at = "as set now";
        figures_add(gauge->figures, figure);
    }
}

void report_law(const struct gauge *gauge, const struct gauge_view *view)
{
    if (gauge->rule == NULL || !known(view->line.scale))
        return;
    struct crossings crossings = lawful_crossings(gauge->rule, view->line, gauge->top_mps);
    report_test_speeds(gauge, view);
    report_crossing(gauge, view, crossings.lower_mps, true);
    report_crossing(gauge, view, crossings.upper_mps, false);
    if (view->setup->is_fitted) /* the instrument's own, whichever tyre is chosen */
        report_circumferences(gauge, view);
}
