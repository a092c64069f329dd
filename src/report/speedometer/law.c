/* The law in detail: the test speeds, where the instrument crosses a bound, and the circumferences
 * on which it stays lawful as it is set now. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"

/* Of a new instrument nothing is set now. */
static enum place_setting setting_told(const struct dial *dial)
{
    return dial->is_new ? AT_SETTING_ENTERED : AT_SETTING_NOW;
}

static void report_test_speed(const struct gauge *gauge, const struct dial *dial, double true_mps,
                              enum place_setting setting)
{
    struct instrument_line line = setting == AT_SETTING_NOW ? dial->line : dial->line_set;
    struct figure figure =
        gauge_figure_at(gauge, QUANTITY_TEST_SPEED_ERROR, speed_error(line, true_mps),
                        law_basis(gauge), AT_TRUE, true_mps);
    struct lawful_check check, entered;
    check_lawful_at(&gauge->law, true_mps, shown_speed_mps(line, true_mps), &check);
    check_lawful_at(&gauge->law, true_mps, shown_speed_mps(dial->line_set, true_mps), &entered);
    figure.place.setting = setting;
    figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(
        gauge->figures,
        judged(limited_by_law(figure, &check, true_mps),
               &(struct judgement){.holds = check.lawful,
                                   .cure = cure_by_setting(dial, entered.lawful == ANSWER_YES),
                                   .if_broken = off_law(gauge, ADVICE_TEST_SPEED, &check)}));
}

static void report_test_speeds(const struct gauge *gauge, const struct dial *dial)
{
    double speeds[TEST_SPEEDS_MAX];
    double top_kmh = unit_from_si(UNIT_KMH, gauge->law.top_mps);
    int count = speedometer_test_speeds_kmh(gauge->law.rule->test_speeds, top_kmh, speeds);
    for (int i = 0; i < count; i++) {
        double true_mps = unit_to_si(UNIT_KMH, speeds[i]);
        if (!dial->is_new)
            report_test_speed(gauge, dial, true_mps, AT_SETTING_NOW);
        if (known(dial->answer.nearest))
            report_test_speed(gauge, dial, true_mps, AT_SETTING_ENTERED);
    }
}

/* From which speed on, and to which side, the instrument leaves the law or comes back to it. */
static void report_crossing(const struct gauge *gauge, const struct dial *dial, double true_mps,
                            bool lower)
{
    if (!known(true_mps))
        return;
    struct figure figure =
        gauge_figure(gauge, QUANTITY_LAWFUL_CROSSING, true_mps, law_basis(gauge));
    struct lawful_check above;
    double beyond = true_mps * 1.001;
    check_lawful_at(&gauge->law, beyond, shown_speed_mps(dial->line, beyond), &above);
    figure.place.setting = setting_told(dial);
    figure.place.name = lower ? "least that may be shown" : "most that may be shown";
    figure.advice =
        off_law(gauge, above.lawful == ANSWER_YES ? ADVICE_CROSSES_BELOW : ADVICE_CROSSES_ABOVE,
                &(struct lawful_check){.reads_under = lower});
    figures_add(gauge->figures, figure);
}

static void report_circumferences(const struct gauge *gauge, const struct dial *dial)
{
    struct length_range lawful = lawful_circumferences(&gauge->law, dial->line, dial->to_m);
    const struct {
        enum quantity_id quantity;
        double value;
    } rows[] = {{QUANTITY_CIRCUMFERENCE_LEAST, lawful.least_m},
                {QUANTITY_CIRCUMFERENCE_MOST, lawful.most_m}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        bool found = lawful.least_m <= lawful.most_m && rows[i].value < INFINITY;
        struct figure figure = gauge_figure(gauge, rows[i].quantity,
                                            found ? rows[i].value : UNKNOWN, law_basis(gauge));
        figure.place.setting = setting_told(dial);
        figures_add(gauge->figures, figure);
    }
}

void report_law(const struct gauge *gauge, const struct dial *dial)
{
    if (gauge->law.rule == NULL || !known(dial->line.scale))
        return;
    struct crossings crossings = lawful_crossings(&gauge->law, dial->line);
    report_test_speeds(gauge, dial);
    report_crossing(gauge, dial, crossings.lower_mps, true);
    report_crossing(gauge, dial, crossings.upper_mps, false);
    if (dial->setup->is_fitted) /* the instrument's own, whichever tyre is chosen */
        report_circumferences(gauge, dial);
}
