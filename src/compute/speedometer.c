#include "compute/speedometer.h"

#include <string.h>

#include "base/known.h"
#include "base/units.h"

/* Sums about the means, so that near-equal speeds lose no digits. */
static void fit_line(const struct pair_list *readings, struct reading_fit *out)
{
    size_t count = readings->count;
    double mean_true = 0, mean_shown = 0, square = 0, product = 0, rest = 0;
    for (size_t i = 0; i < count; i++) {
        mean_shown += readings->items[i].first / (double)count;
        mean_true += readings->items[i].second / (double)count;
    }
    for (size_t i = 0; i < count; i++) {
        double x = readings->items[i].second - mean_true;
        square += x * x;
        product += x * (readings->items[i].first - mean_shown);
    }
    out->line.scale = product / square;
    out->line.offset_mps = mean_shown - out->line.scale * mean_true;
    for (size_t i = 0; i < count; i++) {
        double left = readings->items[i].first -
                      shown_speed_mps(out->line, readings->items[i].second);
        rest += left * left;
    }
    out->standard_error_mps = count > 2 ? sqrt(rest / (double)(count - 2)) : UNKNOWN;
}

/* Through the origin: scale = sum(x y) / sum(x x). */
static void fit_scale(const struct pair_list *readings, struct reading_fit *out)
{
    double square = 0, product = 0, rest = 0;
    for (size_t i = 0; i < readings->count; i++) {
        square += readings->items[i].second * readings->items[i].second;
        product += readings->items[i].second * readings->items[i].first;
    }
    out->line = (struct instrument_line){product / square, 0};
    for (size_t i = 0; i < readings->count; i++) {
        double left = readings->items[i].first - out->line.scale * readings->items[i].second;
        rest += left * left;
    }
    out->standard_error_mps =
        readings->count > 1 ? sqrt(rest / (double)(readings->count - 1)) : UNKNOWN;
}

void fit_readings(const struct pair_list *readings, struct reading_fit *out)
{
    double least = INFINITY, most = -INFINITY;
    for (size_t i = 0; i < readings->count; i++) {
        least = fmin(least, readings->items[i].second);
        most = fmax(most, readings->items[i].second);
    }
    *out = (struct reading_fit){.readings = readings->count};
    out->scale_only = readings->count < 3 || most - least < 0.01 * most;
    if (out->scale_only)
        fit_scale(readings, out);
    else
        fit_line(readings, out);
}

double shown_speed_mps(struct instrument_line line, double true_mps)
{
    return line.scale * true_mps + line.offset_mps;
}

double true_speed_mps(struct instrument_line line, double shown_mps)
{
    return (shown_mps - line.offset_mps) / line.scale;
}

double speed_error(struct instrument_line line, double true_mps)
{
    return (shown_speed_mps(line, true_mps) - true_mps) / true_mps;
}

struct instrument_line line_on_circumference(struct instrument_line line, double from_m,
                                             double to_m)
{
    return (struct instrument_line){line.scale * (from_m / to_m), line.offset_mps};
}

static double rule_speed_mps(const struct speedometer_rules_row *rule, double value)
{
    return unit_to_si(strcmp(rule->unit, "mph") == 0 ? UNIT_MPH : UNIT_KMH, value);
}

/* One bound at one true speed; kept in *out where it is the tightest so far. */
static void try_bound(double shown, double bound, bool lower, double true_mps,
                      struct lawful_check *out)
{
    double excess = lower ? bound - shown : shown - bound;
    if (excess <= out->excess_mps)
        return;
    *out = (struct lawful_check){
        .worst_true_mps = true_mps,
        .excess_mps = excess,
        .reads_under = lower,
        .bound_shown_mps = bound,
    };
}

/* Bounds of what may be shown at a true speed. */
static double lower_bound_mps(const struct speedometer_rules_row *rule, double true_mps)
{
    return true_mps * (1 - rule->under_percent / 100) - rule_speed_mps(rule, rule->under_add);
}

static double upper_bound_mps(const struct speedometer_rules_row *rule, double true_mps)
{
    return true_mps * (1 + rule->over_percent / 100) + rule_speed_mps(rule, rule->over_add);
}

/* Ends of the true speeds at which the rule is judged. */
static void judged_range(const struct speedometer_rules_row *rule, double top_mps, double ends[2])
{
    ends[1] = known(rule->applies_to) ? rule_speed_mps(rule, rule->applies_to) : top_mps;
    ends[0] = fmin(rule_speed_mps(rule, fmax(rule->over_from, rule->under_from)), ends[1]);
}

void check_lawful(const struct speedometer_rules_row *rule, struct instrument_line line,
                  double top_mps, struct lawful_check *out)
{
    double ends[2];
    judged_range(rule, top_mps, ends);
    *out = (struct lawful_check){.excess_mps = -INFINITY};
    for (int end = 0; end < 2; end++) {
        double true_mps = ends[end], shown = shown_speed_mps(line, true_mps);
        try_bound(shown, upper_bound_mps(rule, true_mps), false, true_mps, out);
        try_bound(shown, lower_bound_mps(rule, true_mps), true, true_mps, out);
    }
    /* A billionth of slack: a setting that meets the bound exactly meets it. */
    out->lawful = out->excess_mps <= 1e-9 * fmax(1, ends[1]);
}

double lowest_lawful_scale(const struct speedometer_rules_row *rule, double offset_mps,
                           double top_mps, double spread)
{
    double ends[2], lowest = 0;
    judged_range(rule, top_mps, ends);
    for (int end = 0; end < 2; end++) {
        double needed = lower_bound_mps(rule, ends[end]) - offset_mps;
        lowest = fmax(lowest, needed * (1 + spread) / ends[end]);
    }
    return lowest;
}

bool is_lawful_with_spread(const struct speedometer_rules_row *rule, struct instrument_line line,
                           double top_mps, double spread)
{
    struct lawful_check nominal, largest;
    check_lawful(rule, line, top_mps, &nominal);
    check_lawful(rule, line_on_circumference(line, 1, 1 + spread), top_mps, &largest);
    return nominal.lawful && largest.lawful;
}

double setting_for_error(int setting_kind, double now, double from_m, double to_m, double error,
                         double target)
{
    double factor = from_m / to_m * (1 + error) / (1 + target);
    return setting_kind == SETTING_CIRCUMFERENCE_MM ? now / factor : now * factor;
}

double error_with_setting(int setting_kind, double setting, double now, double from_m, double to_m,
                          double error)
{
    double factor = setting_kind == SETTING_CIRCUMFERENCE_MM ? now / setting : setting / now;
    return from_m / to_m * (1 + error) / factor - 1;
}

static bool possible(const struct setting_grid *grid, double setting)
{
    double slack = 1e-9 * fabs(setting);
    return setting > 0 && !(setting < grid->min - slack) && !(setting > grid->max + slack);
}

double nearest_setting(const struct setting_grid *grid, double exact,
                       bool (*accept)(double setting, const void *context), const void *context)
{
    enum { STEPS_TRIED = 1000 };
    double step = known_or(grid->step, 1), base = known_or(grid->min, 0);
    double start = exact; /* an exact value beyond an end starts from that end */
    if (known(grid->max) && start > grid->max)
        start = grid->max;
    if (start < base)
        start = base;
    double below = floor((start - base) / step + 1e-9);
    for (int i = 0; i < STEPS_TRIED; i++) {
        double low = base + (below - i) * step, high = base + (below + 1 + i) * step;
        bool low_ok = possible(grid, low) && accept(low, context);
        bool high_ok = possible(grid, high) && accept(high, context);
        if (low_ok && high_ok)
            return fabs(low - exact) <= fabs(high - exact) ? low : high;
        if (low_ok || high_ok)
            return low_ok ? low : high;
    }
    return UNKNOWN;
}
