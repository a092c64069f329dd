/* How far off one measured input may be before the outcome of an option is another: the inputs on
 * which it hangs most, each changed alone. */
#ifndef TYRESUM_REPORT_SOLVING_MAY_BE_OFF_H
#define TYRESUM_REPORT_SOLVING_MAY_BE_OFF_H

#include "report/outcome.h"

enum { INPUTS_TOLD_MAX = 5 };

struct input_margin {
    const char *path; /* of the key: "clearance.arch.front.above" */
    enum unit_kind kind;
    double off;   /* signed: the nearest change at which the outcome is another */
    double share; /* of the range that is tried: the less, the more delicate */
    enum outcome becomes;
};

/* `figures`: the setup's own of all parts, which made the outcome. The most delicate first; returns
 * how many, at most INPUTS_TOLD_MAX. */
size_t may_be_off_find(const struct plan *plan, size_t index, const struct setup_figures *figures,
                       enum outcome outcome, struct input_margin out[INPUTS_TOLD_MAX]);

#endif
