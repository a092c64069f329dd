/* Error, lawful or not, the setting to enter, a speed table, odometer and consumption. */
#include "base/known.h"
#include "base/units.h"
#include "compute/speedometer.h"
#include "report/plan.h"
#include "tables/lookup.h"
#include "text/keys.h"

/* Everything about the instrument that holds for all setups. */
struct gauge {
    const struct plan *plan;
    const struct instrument *instrument;
    struct figures *figures;
    bool mph;
    const struct speedometer_rules_row *rule; /* NULL: none named */
    struct instrument_line line;              /* with the fitted tyre, as it is now */
    bool line_known;
    double top_mps;
    bool top_assumed;
    enum axle axle;
};

/* One setup's view of it. */
struct gauge_view {
    const struct setup *setup;
    double from_m, to_m; /* rolling circumference, fitted and this setup's */
    struct instrument_line line;
    double spread; /* how much larger the circumference may be */
};

static struct figure gauge_figure(const struct gauge *gauge, const struct gauge_view *view,
                                  enum quantity_id quantity, double value, const char *basis)
{
    struct figure figure = figure_of(PART_SPEEDOMETER, quantity, view->setup->name, value, basis);
    figure.instrument_mph = gauge->mph;
    figure.instrument_kmh = !gauge->mph;
    return figure;
}

static enum unit_id gauge_unit(const struct gauge *gauge)
{
    return gauge->mph ? UNIT_MPH : UNIT_KMH;
}

static const char *speed_text(const struct gauge *gauge, double speed_mps)
{
    return arena_format(gauge->plan->arena, "%.0f %s", unit_from_si(gauge_unit(gauge), speed_mps),
                        unit_table[gauge_unit(gauge)].name);
}

static const struct setup *setup_named(const struct plan *plan, const char *name)
{
    for (size_t i = 0; i < plan->count; i++)
        if (strcmp(plan->setups[i].name, name) == 0)
            return &plan->setups[i];
    return NULL;
}

/* The line with the fitted tyre: from readings, from the error given, or taken to be true. */
static void set_line(struct gauge *gauge)
{
    const struct instrument *instrument = gauge->instrument;
    gauge->line_known = known(instrument->fitted_error) || instrument->readings.count > 0;
    gauge->line = (struct instrument_line){1 + known_or(instrument->fitted_error, 0), 0};
    if (instrument->readings.count == 0)
        return;
    struct reading_fit fit;
    fit_readings(&instrument->readings, &fit);
    gauge->line = fit.line;
    if (instrument->readings_on == NULL || strcmp(instrument->readings_on, "fitted") == 0)
        return;
    struct setup on;
    const struct setup *found = setup_named(gauge->plan, instrument->readings_on);
    if (found == NULL) { /* left out by --option: resolved for the readings alone */
        const struct fitment_list *options = &gauge->plan->specification->tyres.options;
        for (size_t i = 0; i < options->count; i++)
            if (strcmp(options->items[i].name, instrument->readings_on) == 0)
                setup_option(&options->items[i], &gauge->plan->fitted, &on);
        found = &on;
    }
    struct tyre_figures before, after;
    bool mixed;
    figures_to_compare(&gauge->plan->fitted.axle[gauge->axle], &found->axle[gauge->axle], &before,
                       &after, &mixed);
    gauge->line = line_on_circumference(fit.line, after.rolling_circumference_m,
                                        before.rolling_circumference_m);
}

static void set_gauge(const struct plan *plan, struct figures *figures, struct gauge *gauge)
{
    const struct instrument *instrument = &plan->specification->speedometer;
    double top = plan->specification->vehicle.top_speed_mps;
    *gauge = (struct gauge){
        .plan = plan,
        .instrument = instrument,
        .figures = figures,
        .mph = instrument->unit == CHOICE_NONE ? plan->us : instrument->unit == SPEED_MPH,
        .rule = instrument->rule == NULL ? NULL : speedometer_rule_find(instrument->rule),
        .top_mps = known_or(top, unit_to_si(UNIT_KMH, 120)),
        .top_assumed = !known(top),
        .axle = plan_driven_axle(plan),
    };
    set_line(gauge);
}

/* What a setting must meet to be taken. */
struct setting_check {
    const struct gauge *gauge;
    const struct gauge_view *view;
};

static struct instrument_line line_with_setting(const struct gauge *gauge,
                                                const struct gauge_view *view, double setting)
{
    const struct setting *now = &gauge->instrument->setting;
    double error = error_with_setting(now->kind, setting, now->now, view->from_m, view->to_m,
                                      gauge->line.scale - 1);
    return (struct instrument_line){1 + error, gauge->line.offset_mps};
}

static bool setting_is_lawful(double setting, const void *context)
{
    const struct setting_check *check = context;
    const struct gauge *gauge = check->gauge;
    return gauge->rule == NULL ||
           is_lawful_with_spread(gauge->rule, line_with_setting(gauge, check->view, setting),
                                 gauge->top_mps, check->view->spread);
}

/* The scale that the aim asks for. */
static double aimed_scale(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct choice_or_value *aim = &gauge->instrument->aim;
    double at = unit_to_si(gauge_unit(gauge), gauge->mph ? 60 : 100);
    if (known(aim->value))
        return 1 + aim->value - gauge->line.offset_mps / at;
    if (aim->choice == AIM_LOWEST_LAWFUL && gauge->rule != NULL)
        return lowest_lawful_scale(gauge->rule, gauge->line.offset_mps, gauge->top_mps,
                                   view->spread);
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

static bool has_setting(const struct gauge *gauge)
{
    const struct setting *setting = &gauge->instrument->setting;
    return setting->node != NULL && setting->kind != CHOICE_NONE;
}

static double exact_setting(const struct gauge *gauge, const struct gauge_view *view, double target)
{
    const struct setting *setting = &gauge->instrument->setting;
    return setting_for_error(setting->kind, setting->now, view->from_m, view->to_m,
                             gauge->line.scale - 1, target);
}

/* The nearest lawful setting to what the aim asks for; UNKNOWN where there is none. */
static double setting_to_enter(const struct gauge *gauge, const struct gauge_view *view)
{
    const struct setting *setting = &gauge->instrument->setting;
    const struct setting_grid grid = {setting->step, setting->min, setting->max};
    const struct setting_check check = {gauge, view};
    double exact = exact_setting(gauge, view, aimed_scale(gauge, view) - 1);
    return known(exact) ? nearest_setting(&grid, exact, setting_is_lawful, &check) : UNKNOWN;
}

static int setting_decimals(const struct gauge *gauge)
{
    double step = known_or(gauge->instrument->setting.step, 1);
    return step == floor(step) ? 0 : 2;
}

static const char *correction_text(const struct gauge *gauge, const struct gauge_view *view)
{
    double setting = has_setting(gauge) ? setting_to_enter(gauge, view) : UNKNOWN;
    if (!known(setting))
        return "correct the setting";
    return arena_format(gauge->plan->arena, "enter %.*f", setting_decimals(gauge), setting);
}

static void report_lawful(const struct gauge *gauge, const struct gauge_view *view)
{
    double at = unit_to_si(gauge_unit(gauge), gauge->mph ? 60 : 100);
    struct figure figure = gauge_figure(gauge, view, QUANTITY_SPEEDOMETER_ERROR,
                                        speed_error(view->line, at),
                                        "1 + e_new = (1 + e) C_old / C_new");
    figure.at = arena_format(gauge->plan->arena, "nominal, true %s", speed_text(gauge, at));
    figure.headline = HEADLINE_YES;
    if (!known(figure.value) || gauge->rule == NULL) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = known(figure.value) ? "give speedometer: rule, such as un_r39"
                                            : "the rolling circumference of both tyres is needed";
        figures_add(gauge->figures, figure);
        return;
    }
    for (int largest = 0; largest < 2; largest++) {
        struct instrument_line line = view->line;
        if (largest)
            line = line_on_circumference(line, 1, 1 + view->spread);
        struct lawful_check check;
        check_lawful(gauge->rule, line, gauge->top_mps, &check);
        figure.value = speed_error(line, at);
        figure.limit = (check.bound_shown_mps - check.worst_true_mps) / check.worst_true_mps;
        figure.verdict = check.lawful ? VERDICT_OK : largest ? VERDICT_CAUTION : VERDICT_FAIL;
        figure.basis = gauge->rule->basis;
        figure.at = arena_format(gauge->plan->arena, "%s, true %s", largest ? "largest" : "nominal",
                                 speed_text(gauge, at));
        figure.action =
            check.lawful ? NULL
                         : arena_format(gauge->plan->arena, "%s at %s%s: %s",
                                        check.reads_under ? "reads under" : "reads too far over",
                                        speed_text(gauge, check.worst_true_mps),
                                        largest ? " on the largest tyre allowed" : "",
                                        correction_text(gauge, view));
        figure.headline = largest ? HEADLINE_NO : HEADLINE_YES;
        figures_add(gauge->figures, figure);
        if (view->spread == 0)
            return;
    }
}

static void report_setting(const struct gauge *gauge, const struct gauge_view *view)
{
    if (!has_setting(gauge) || view->setup->is_fitted)
        return;
    double target = aimed_scale(gauge, view) - 1;
    double exact = exact_setting(gauge, view, target), nearest = setting_to_enter(gauge, view);
    struct figure figure =
        gauge_figure(gauge, view, QUANTITY_SETTING_EXACT, exact, aim_text(gauge));
    figure.at = choices_setting_kind[gauge->instrument->setting.kind];
    figures_add(gauge->figures, figure);
    figure.quantity = QUANTITY_SETTING_NEAREST;
    figure.value = nearest;
    figure.decimals = setting_decimals(gauge);
    figure.headline = HEADLINE_YES;
    figure.basis = gauge->rule == NULL ? "nearest possible; no rule named" : gauge->rule->basis;
    figure.verdict = known(nearest) && gauge->rule != NULL ? VERDICT_OK : VERDICT_UNKNOWN;
    figure.action = gauge->rule == NULL ? "give speedometer: rule, such as un_r39"
                                        : "enter it, then check against a satellite receiver";
    if (!known(exact)) {
        figure.action = "give the rolling circumference of both tyres";
    } else if (!known(nearest)) {
        figure.verdict = VERDICT_FAIL;
        figure.action = arena_format(gauge->plan->arena,
                                     "no setting is lawful: an adapter of ratio %.4f is needed",
                                     view->from_m / view->to_m * gauge->line.scale / (1 + target));
    }
    figures_add(gauge->figures, figure);
    figure.verdict = VERDICT_NONE;
    figure.action = figure.at = NULL;
    figure.decimals = DECIMALS_OF_QUANTITY;
    figure.quantity = QUANTITY_REMAINING_ERROR;
    figure.basis = "error with the setting to enter";
    double at = unit_to_si(gauge_unit(gauge), gauge->mph ? 60 : 100);
    figure.value =
        known(nearest) ? speed_error(line_with_setting(gauge, view, nearest), at) : UNKNOWN;
    figures_add(gauge->figures, figure);
}

static void report_speeds(const struct gauge *gauge, const struct gauge_view *view)
{
    static const double kmh[] = {30, 40, 50, 60, 80, 100, 110, 120, 130};
    static const double mph[] = {20, 30, 40, 50, 60, 65, 70, 75, 80};
    for (size_t i = 0; i < sizeof kmh / sizeof kmh[0]; i++) {
        double speed = unit_to_si(gauge_unit(gauge), gauge->mph ? mph[i] : kmh[i]);
        struct figure figure =
            gauge_figure(gauge, view, QUANTITY_TRUE_SPEED, true_speed_mps(view->line, speed),
                         "true = shown (C_new / C_old) / (1 + e)");
        figure.headline = (gauge->mph ? mph[i] == 60 : kmh[i] == 100) ? HEADLINE_YES : HEADLINE_NO;
        figure.at = arena_format(gauge->plan->arena, "shown %s", speed_text(gauge, speed));
        figures_add(gauge->figures, figure);
        figure.headline = HEADLINE_NO;
        figure.quantity = QUANTITY_SHOWN_SPEED;
        figure.value = shown_speed_mps(view->line, speed);
        figure.basis = "shown = true (1 + e) C_old / C_new";
        figure.at = arena_format(gauge->plan->arena, "true %s", speed_text(gauge, speed));
        figures_add(gauge->figures, figure);
    }
}

static void report_distance(const struct gauge *gauge, const struct gauge_view *view)
{
    /* The odometer counts the same revolutions; its own error with the fitted tyre is not known
     * and is taken as none, as for consumption. */
    double ratio = view->to_m / view->from_m;
    struct figure figure =
        gauge_figure(gauge, view, QUANTITY_ODOMETER_TRUE, 100 * ratio,
                     "100 C_new / C_old; the odometer is taken to be right on the fitted tyre");
    figures_add(gauge->figures, figure);
    figure.quantity = QUANTITY_CONSUMPTION_FACTOR;
    figure.value = 1 / ratio;
    figure.basis = "true consumption per distance = shown times C_old / C_new";
    figures_add(gauge->figures, figure);
}

static void report_instrument(const struct gauge *gauge)
{
    struct gauge_view fitted = {.setup = &gauge->plan->fitted};
    struct figure figure = gauge_figure(gauge, &fitted, QUANTITY_ASSUMPTION, UNKNOWN, "assumption");
    if (!gauge->line_known) {
        figure.action = "no fitted_error and no readings are given: the fitted tyre is taken to read true";
        figures_add(gauge->figures, figure);
    }
    if (gauge->top_assumed) {
        figure.action = "no vehicle: top_speed is given: lawfulness is judged up to 120 km/h, the highest test speed";
        figures_add(gauge->figures, figure);
    }
    if (gauge->instrument->readings.count == 0)
        return;
    struct reading_fit fit;
    fit_readings(&gauge->instrument->readings, &fit);
    figure = gauge_figure(gauge, &fitted, QUANTITY_READING_FIT_ERROR, fit.standard_error_mps,
                          fit.scale_only ? "least squares, scale alone (too few or too like speeds for more)"
                                         : "least squares, scale and offset");
    figure.at = arena_format(gauge->plan->arena, "%zu readings", fit.readings);
    figures_add(gauge->figures, figure);
}

void report_speedometer(const struct plan *plan, struct figures *figures)
{
    struct gauge gauge;
    set_gauge(plan, figures, &gauge);
    report_instrument(&gauge);
    for (size_t i = 0; i < plan->count; i++) {
        const struct beside *beside = &plan->beside[i];
        struct gauge_view view = {
            .setup = &plan->setups[i],
            .from_m = beside->before[gauge.axle].rolling_circumference_m,
            .to_m = beside->after[gauge.axle].rolling_circumference_m,
        };
        const struct rolling_row *rolling = rolling_find("radial");
        view.spread = view.setup->is_fitted ? 0 : rolling->spread_over_percent / 100;
        view.line = line_on_circumference(gauge.line, view.from_m, view.to_m);
        report_lawful(&gauge, &view);
        report_setting(&gauge, &view);
        report_speeds(&gauge, &view);
        report_distance(&gauge, &view);
    }
}
