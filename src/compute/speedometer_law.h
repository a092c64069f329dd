/* Whether what a speedometer shows is lawful, and how far it may be moved. A rule is a row of the
 * table speedometer_rules; its two bounds of what may be shown are straight lines in the true
 * speed, as the instrument is, so that the worst stands at an end of the range judged: from the
 * lowest test speed to the rule's own end or the vehicle's top speed. Speeds in m/s. */
#ifndef TYRESUM_COMPUTE_SPEEDOMETER_LAW_H
#define TYRESUM_COMPUTE_SPEEDOMETER_LAW_H

#include <stdbool.h>

#include "base/known.h"
#include "compute/speedometer.h"
#include "tables/lookup.h"

struct speed_range {
    double from_mps, to_mps;
};

/* The true speeds at which a rule is judged. top_mps: where the rule names no end of its own. */
struct speed_range judged_range(const struct speedometer_rules_row *rule, double top_mps);

/* Least and most that may be shown at a true speed. */
struct speed_range lawful_shown(const struct speedometer_rules_row *rule, double true_mps);

/* Least and most true speed at which that may be shown: UN R39 gives (V1 - 4)/1.1 to V1. */
struct speed_range lawful_true(const struct speedometer_rules_row *rule, double shown_mps);

/* The rule's window over the whole range. Where a number is unknown, all of it is. */
struct lawful_check {
    enum answer lawful;
    double worst_true_mps;  /* where the nearest or broken bound stands */
    double excess_mps;      /* shown beyond the bound there; negative where there is room */
    bool reads_under;       /* the bound is the lower one */
    double bound_shown_mps; /* that bound */
};
void check_lawful(const struct speedometer_rules_row *rule, struct instrument_line line,
                  double top_mps, struct lawful_check *out);

/* At one true speed, by the same window. */
void check_lawful_at(const struct speedometer_rules_row *rule, double true_mps, double shown_mps,
                     struct lawful_check *out);

/* True speeds within the range at which the instrument crosses a bound: under it on one side,
 * lawful on the other. UNKNOWN where it does not. */
struct crossings {
    double lower_mps, upper_mps;
};
struct crossings lawful_crossings(const struct speedometer_rules_row *rule,
                                  struct instrument_line line, double top_mps);

/* How far the circumference may lie from its nominal, as fractions: C (1 - under) to C (1 + over).
 */
struct spread {
    double under, over;
};

/* Scales at which an instrument of that offset, on the nominal circumference, is lawful over the
 * whole range with every circumference of the spread; low > high where no scale is, both UNKNOWN
 * where a number is. */
struct scale_range {
    double low, high;
};
struct scale_range lawful_scales(const struct speedometer_rules_row *rule, double offset_mps,
                                 double top_mps, struct spread spread);

/* Circumferences on which an instrument that has `line` on circumference_m is lawful; from above
 * to below where none is. */
struct length_range {
    double least_m, most_m;
};
struct length_range lawful_circumferences(const struct speedometer_rules_row *rule,
                                          struct instrument_line line, double circumference_m,
                                          double top_mps);

#endif
