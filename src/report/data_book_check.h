/* Faults of a build file that only a computed tyre shows: a data book that is not of its size. */
#ifndef TYRESUM_REPORT_DATA_BOOK_CHECK_H
#define TYRESUM_REPORT_DATA_BOOK_CHECK_H

#include <stdbool.h>

#include "base/diagnostics.h"
#include "build/specification.h"

/* Adds a fault for each length and count of revolutions of a data book that is so far from what
 * its size gives by rule that it must be a slip: a radius for a diameter, per km for per mile.
 * False where there was one. */
bool data_book_check(const struct specification *specification, struct diagnostics *diagnostics);

#endif
