/* The least that makes a no go go: of all sets of changes that the file allows a smallest one,
 * every smaller one having been tried. */
#ifndef TYRESUM_REPORT_SOLVING_LEAST_CHANGE_H
#define TYRESUM_REPORT_SOLVING_LEAST_CHANGE_H

#include "report/solving/changes.h"

enum { LEAST_CHANGE_TRIES_MAX = 100000 };

struct least_change {
    bool found;
    struct change_set set;         /* of those as small the best by outcome, work and margin */
    struct option_outcome outcome; /* with it; findings and tasks are not kept */
    size_t sets;                   /* sets that there are; beyond the most none is tried */
    /* Where none makes it go: what stands in the way of the one that comes nearest. */
    enum quantity_id stands;
};

/* Of a setup that is a no go. */
void least_change_find(const struct plan *plan, size_t index, struct least_change *out);

#endif
