/* Faults of a build file that only a computed tyre shows: a low point where the fitted tyre is. */
#ifndef TYRESUM_REPORT_IMPOSSIBLE_GEOMETRY_H
#define TYRESUM_REPORT_IMPOSSIBLE_GEOMETRY_H

#include <stdbool.h>

#include "base/diagnostics.h"
#include "build/specification.h"

/* Adds a fault for each overhang point, measured or of an added part, that lies within the fitted
 * tyre's outline (static loaded radius). False where there was one. */
bool impossible_geometry_check(const struct specification *specification,
                               struct diagnostics *diagnostics);

#endif
