/* Faults of a build file that only sums show: rules that need its tyres measured. */
#ifndef TYRESUM_REPORT_MEASURED_RULES_H
#define TYRESUM_REPORT_MEASURED_RULES_H

#include <stdbool.h>

#include "base/diagnostics.h"
#include "build/specification.h"

/* Adds a fault for each rule that is broken; false where there was one. A data book is not so far
 * from what its size gives by rule that it must be a slip: a radius for a diameter, per km for per
 * mile. No low point, measured or of an added part, lies within the fitted tyre's outline. */
bool measured_rules_check(const struct specification *specification,
                          struct diagnostics *diagnostics);

#endif
