#include "compute/speedometer.h"

#include "base/known.h"

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

double timed_speed_mps(double distance_m, double time_s)
{
    return distance_m / time_s;
}

double sensor_pulses_per_m(double pulses_per_turn, double turns_per_wheel_turn,
                           double circumference_m)
{
    return pulses_per_turn * turns_per_wheel_turn / circumference_m;
}

double error_of_counts(double got, double set)
{
    return got / set - 1;
}

double adapter_ratio(double scale, double target)
{
    return scale / (1 + target);
}

double setting_for_error(int setting_kind, double now, double from_m, double to_m, double error,
                         double target)
{
    double now_shown = from_m / to_m * (1 + error), shown = 1 + target;
    if (setting_kind == SETTING_CIRCUMFERENCE_MM)
        return now * shown / now_shown;
    return shown == 0 ? INFINITY : now * now_shown / shown;
}

double error_with_setting(int setting_kind, double setting, double now, double from_m, double to_m,
                          double error)
{
    double factor = setting_kind == SETTING_CIRCUMFERENCE_MM ? now / setting : setting / now;
    return from_m / to_m * (1 + error) / factor - 1;
}

static double slack(double value)
{
    return 1e-9 * fabs(value);
}

static bool is_between(double value, double low, double high)
{
    return value > 0 && !(value < low - slack(low)) && !(value > high + slack(high));
}

/* The nearer of two that lies between, or UNKNOWN. */
static double nearer(double exact, double best, double setting, double low, double high)
{
    if (!is_between(setting, low, high))
        return best;
    /* Of two as near the first: a last bit must not choose. */
    return known(best) && !clearly_above(fabs(best - exact), fabs(setting - exact)) ? best
                                                                                    : setting;
}

double nearest_setting(const struct setting_grid *grid, double exact, double low, double high)
{
    double best = UNKNOWN;
    if (!known(exact) || !known(low) || !known(high))
        return UNKNOWN;
    low = known(grid->min) ? fmax(low, grid->min) : low;
    high = known(grid->max) ? fmin(high, grid->max) : high;
    for (size_t i = 0; i < grid->choices.count; i++)
        best = nearer(exact, best, grid->choices.items[i], low, high);
    if (grid->choices.count > 0 || !(low - slack(low) <= high + slack(high)))
        return best;
    double step = known_or(grid->step, 1), base = known_or(grid->base, 0);
    double start = fmin(fmax(exact, low), high);
    double below = floor((start - base) / step);
    for (int i = -1; i <= 2; i++) /* one more either way, for what rounding moves across an end */
        best = nearer(exact, best, base + (below + i) * step, low, high);
    return best;
}

double true_distance(double shown, double scale, double from_m, double to_m)
{
    return shown * (to_m / from_m) / scale;
}

double shown_distance(double distance, double scale, double from_m, double to_m)
{
    return distance * scale / (to_m / from_m);
}
