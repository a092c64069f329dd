/* What a speedometer shows with other tyres, whether that is lawful, and what to enter. Speeds in
 * m/s; an error is e = (shown - true) / true. The instrument is a straight line,
 * shown = scale * true + offset. */
#ifndef TYRESUM_COMPUTE_SPEEDOMETER_H
#define TYRESUM_COMPUTE_SPEEDOMETER_H

#include <stdbool.h>
#include <stddef.h>

#include "tables/lookup.h"
#include "text/specification.h"

struct instrument_line {
    double scale, offset_mps;
};

/* Least squares of shown on true; with fewer than two different true speeds the scale alone
 * (offset 0), through the origin. */
struct reading_fit {
    struct instrument_line line;
    size_t readings;
    bool scale_only;
    double standard_error_mps; /* of a reading; UNKNOWN with no degree of freedom left */
};
void fit_readings(const struct pair_list *readings, struct reading_fit *out);

double shown_speed_mps(struct instrument_line line, double true_mps);
double true_speed_mps(struct instrument_line line, double shown_mps);

/* (shown - true)/true at a true speed. */
double speed_error(struct instrument_line line, double true_mps);

/* The same instrument on tyres of another circumference: it counts revolutions, so what it shows
 * at a true speed falls as the circumference grows. shown = scale * (C_from/C_to) * true + offset.
 * Without an offset: 1 + e_new = (1 + e) C_from / C_to. */
struct instrument_line line_on_circumference(struct instrument_line line, double from_m,
                                             double to_m);

/* The rule's window over its whole range of true speeds, from the lowest test speed up. shown - true and both bounds are linear
 * in the true speed, so the worst stands at an end of the range. */
struct lawful_check {
    bool lawful;
    double worst_true_mps;  /* where the nearest or broken bound stands */
    double excess_mps;      /* shown beyond the bound there; negative where there is room */
    bool reads_under;       /* the bound is the lower one */
    double bound_shown_mps; /* that bound */
};
/* top_mps: top of the range, where the rule names no speed of its own. */
void check_lawful(const struct speedometer_rules_row *rule, struct instrument_line line,
                  double top_mps, struct lawful_check *out);

/* The lowest scale at which an instrument of that offset never shows less than the rule's lower
 * bound, over the rule's range, with every circumference up to `spread` (fraction) above the
 * nominal one: scale * v / (1 + spread) + offset >= bound(v). */
double lowest_lawful_scale(const struct speedometer_rules_row *rule, double offset_mps,
                           double top_mps, double spread);

/* Lawful on the nominal circumference, and on the largest within `spread` as well. */
bool is_lawful_with_spread(const struct speedometer_rules_row *rule, struct instrument_line line,
                           double top_mps, double spread);

/* New setting: what is entered, for an over-read `target` on a circumference `to_m`, where
 * `now` gave the error `error` on `from_m`. Counts per distance and driven-gear teeth:
 * now * (C_from/C_to) (1 + error)/(1 + target); a circumference: the inverse of both ratios. */
double setting_for_error(int setting_kind, double now, double from_m, double to_m, double error,
                         double target);

/* The error that remains with a setting: the inverse of the above. */
double error_with_setting(int setting_kind, double setting, double now, double from_m, double to_m,
                          double error);

/* What the instrument can take: from min to max in steps (from min, or from 0). */
struct setting_grid {
    double step, min, max; /* UNKNOWN: 1, no lower, no upper end */
};

/* The possible setting nearest to `exact` for which accept(setting, context) holds; UNKNOWN where
 * there is none within a thousand steps. */
double nearest_setting(const struct setting_grid *grid, double exact,
                       bool (*accept)(double setting, const void *context), const void *context);

#endif
