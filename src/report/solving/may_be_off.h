/* How far off one measured input may be before the outcome of an option is another: the inputs on
 * which it hangs most, each changed alone. */
#ifndef TYRESUM_REPORT_SOLVING_MAY_BE_OFF_H
#define TYRESUM_REPORT_SOLVING_MAY_BE_OFF_H

#include "report/outcome.h"
#include "report/solving/judging.h"

enum { INPUTS_TOLD_MAX = 5 };

struct input_margin {
    const char *path;  /* of the key: "clearance.arch.front.above" */
    const char *words; /* "arch front above" */
    enum unit_kind kind;
    double within; /* signed: off by so much, the outcome is still the same */
    double beyond; /* and by so much another: 1/64 of it further, or 1/1024 of the range */
    double share;  /* of the range that is tried: the less, the more delicate */
    enum outcome becomes;
};

/* Of a setup with that outcome. The most delicate first, counted into `count`, at most
 * INPUTS_TOLD_MAX. False where it costs more than is left: then nothing is tried. */
bool may_be_off_find(const struct plan *plan, size_t index, enum outcome outcome,
                     struct judging *judging, struct input_margin out[INPUTS_TOLD_MAX],
                     size_t *count);

#endif
