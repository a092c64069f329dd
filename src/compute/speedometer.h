/* What a speedometer shows with other tyres, and what to enter so that it shows something else.
 * Speeds in m/s; an error is e = (shown - true) / true. The instrument is a straight line,
 * shown = scale * true + offset. */
#ifndef TYRESUM_COMPUTE_SPEEDOMETER_H
#define TYRESUM_COMPUTE_SPEEDOMETER_H

#include <stddef.h>

#include "build/specification.h"

struct instrument_line {
    double scale, offset_mps;
};

double shown_speed_mps(struct instrument_line line, double true_mps);
double true_speed_mps(struct instrument_line line, double shown_mps);

/* (shown - true)/true at a true speed. */
double speed_error(struct instrument_line line, double true_mps);

/* The same instrument on tyres of another circumference: it counts revolutions, so what it shows
 * at a true speed falls as the circumference grows. shown = scale * (C_from/C_to) * true + offset.
 * Without an offset: 1 + e_new = (1 + e) C_from / C_to. */
struct instrument_line line_on_circumference(struct instrument_line line, double from_m,
                                             double to_m);

/* True speed over a measured distance by stopwatch. */
double timed_speed_mps(double distance_m, double time_s);

/* Counts that a sensor gives per metre: pulses per turn of what it sits on, times the turns of
 * that per turn of the wheel (axle ratio for the propeller shaft, 1 at the wheel), over C. */
double sensor_pulses_per_m(double pulses_per_turn, double turns_per_wheel_turn,
                           double circumference_m);

/* An instrument that is set to so many counts per distance and gets others: e = got/set - 1. For
 * recording equipment got is the characteristic coefficient w, set the constant k (Regulation (EU)
 * 165/2014, Annex I, I b and c). */
double error_of_counts(double got, double set);

/* Ratio that an adapter must have between sensor and instrument, pulses in to pulses out, where
 * the instrument's scale is `scale` and `target` is wanted. */
double adapter_ratio(double scale, double target);

/* New setting: what is entered, for an over-read `target` on a circumference `to_m`, where
 * `now` gave the error `error` on `from_m`. Counts per distance and driven-gear teeth:
 * now * (C_from/C_to) (1 + error)/(1 + target); a circumference: the inverse of both ratios. Of a
 * target of -1, which shows nothing, INFINITY counts or no circumference. */
double setting_for_error(int setting_kind, double now, double from_m, double to_m, double error,
                         double target);

/* The error that remains with a setting: the inverse of the above. */
double error_with_setting(int setting_kind, double setting, double now, double from_m, double to_m,
                          double error);

/* What the instrument can take: a list, or from min to max in steps counted from `base`. */
struct setting_grid {
    double base, step, min, max; /* UNKNOWN: 0, 1, no lower, no upper end */
    struct number_list choices;  /* where not empty, these alone, within min and max */
};

/* The possible setting nearest to `exact` of those between low and high (a billionth of slack);
 * the lower of two that are as near. UNKNOWN where there is none, or where one of the three is. */
double nearest_setting(const struct setting_grid *grid, double exact, double low, double high);

/* Odometer: distance true for a distance shown, where it shows `scale` times the true one on
 * C_from; and back. */
double true_distance(double shown, double scale, double from_m, double to_m);
double shown_distance(double distance, double scale, double from_m, double to_m);

#endif
