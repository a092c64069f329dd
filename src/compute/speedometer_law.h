/* Whether what a speedometer shows is lawful, and how far it may be moved. A rule is a row of the
 * table speedometer_rules; its two bounds of what may be shown are straight lines in the true
 * speed, as the instrument is, so that the worst of each stands at an end of the range in which it
 * is asked. Speeds in m/s. */
#ifndef TYRESUM_COMPUTE_SPEEDOMETER_LAW_H
#define TYRESUM_COMPUTE_SPEEDOMETER_LAW_H

#include <stdbool.h>

#include "base/known.h"
#include "compute/least_squares.h"
#include "compute/speedometer.h"
#include "tables/lookup.h"

struct speed_range {
    double from_mps, to_mps;
};

/* A rule for a vehicle. */
struct law {
    const struct speedometer_rules_row *rule; /* NULL: none named */
    double top_mps;                           /* where the rule names no end of its own */
    double lowest_mps;                        /* lowest true speed that was read; INFINITY: none */
};

/* The true speeds at which each bound is asked. The upper one is tied to the speeds that the rule
 * names. The lower one, where the rule names none, holds at every speed: it is judged from 20 km/h
 * or the lowest reading, whichever is lower. */
struct speed_range under_judged(const struct law *law);
struct speed_range over_judged(const struct law *law);
/* From the lower to the higher of both. */
struct speed_range judged_range(const struct law *law);

/* Least and most that may be shown at a true speed; UNKNOWN where the rule does not ask it. */
struct speed_range lawful_shown(const struct law *law, double true_mps);

/* Least and most true speed at which that may be shown: UN R39 gives (V1 - 4)/1.1 to V1; UNKNOWN
 * where the rule does not ask it there. */
struct speed_range lawful_true(const struct law *law, double shown_mps);

/* The rule's window over the whole range. Where a number is unknown, all of it is; where the rule
 * asks nothing, the answer is ANSWER_NOT_ASKED. */
struct lawful_check {
    enum answer lawful;
    double worst_true_mps;  /* where the nearest or broken bound stands */
    double excess_mps;      /* shown beyond the bound there; negative where there is room */
    bool reads_under;       /* the bound is the lower one */
    double bound_shown_mps; /* that bound */
};
void check_lawful(const struct law *law, struct instrument_line line, struct lawful_check *out);

/* At one true speed, by the bounds that are asked there. */
void check_lawful_at(const struct law *law, double true_mps, double shown_mps,
                     struct lawful_check *out);

/* True speeds within the range at which the instrument crosses a bound: under it on one side,
 * lawful on the other. UNKNOWN where it does not. */
struct crossings {
    double lower_mps, upper_mps;
};
struct crossings lawful_crossings(const struct law *law, struct instrument_line line);

/* How far the circumference may lie from its nominal, as fractions: C (1 - under) to C (1 + over).
 */
struct spread {
    double under, over;
};

/* Scales at which an instrument of that offset, on the nominal circumference, is lawful over the
 * whole range with every circumference of the spread; low > high where no scale is, both UNKNOWN
 * where a number is. doubt: the calibration that gave the offset, whose 95 % band then keeps within
 * the law too, or NULL. */
struct scale_range {
    double low, high;
};
struct scale_range lawful_scales(const struct law *law, double offset_mps, struct spread spread,
                                 const struct calibration *doubt);

/* Circumferences on which an instrument that has `line` on circumference_m is lawful; from above
 * to below where none is. */
struct length_range {
    double least_m, most_m;
};
struct length_range lawful_circumferences(const struct law *law, struct instrument_line line,
                                          double circumference_m);

#endif
