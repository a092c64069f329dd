/* What then: the least change that makes a no go go. */
#ifndef TYRESUM_REPORT_SOLVING_SOLVING_H
#define TYRESUM_REPORT_SOLVING_SOLVING_H

#include "report/outcome.h"

/* Adds the part's figures, by what all other parts have added. */
void report_solving(const struct plan *plan, struct figures *figures);

#endif
