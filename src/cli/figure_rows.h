/* Figures as tidy rows: part, option, state, axle, quantity, at, value, unit, limit, verdict,
 * basis, action; json has the place too. */
#ifndef TYRESUM_CLI_FIGURE_ROWS_H
#define TYRESUM_CLI_FIGURE_ROWS_H

#include "cli/rows_out.h"
#include "report/plan.h"

/* One row, or two under `both` where the units differ. texts is for this call alone: where a block
 * of it is allocated before the first row, hardly a row needs another. */
void figure_rows_add(struct rows_out *rows, struct arena *texts, const struct plan *plan,
                     const struct figure *figure, int units);

#endif
