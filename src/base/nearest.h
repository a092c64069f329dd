/* The nearest known name to a mistyped one, for "did you mean". */
#ifndef TYRESUM_BASE_NEAREST_H
#define TYRESUM_BASE_NEAREST_H

#include "base/span.h"

struct nearest {
    struct span wanted;
    const char *name;
    size_t distance;
};

struct nearest nearest_start(struct span wanted);
void nearest_try(struct nearest *nearest, const char *name);
/* The nearest name tried, or NULL where none is near enough to be meant. */
const char *nearest_found(const struct nearest *nearest);

#endif
