/* Figures as tidy rows: part, option, state, axle, quantity, at, value, unit, limit, verdict,
 * basis, action. */
#ifndef TYRESUM_CLI_FIGURE_ROWS_H
#define TYRESUM_CLI_FIGURE_ROWS_H

#include "cli/rows_out.h"
#include "report/figures.h"

/* Unit and decimals of a figure in a unit system; its instrument's own where it has one. */
enum unit_id figure_unit(const struct figure *figure, bool us);
int figure_decimals(const struct figure *figure, bool us);

/* An SI value of the figure in that unit. A recommended pressure is rounded up in it: what is
 * printed is what gets set. */
double figure_value(const struct figure *figure, double si, bool us);

/* One row, or two under `both` where the units differ. */
void figure_rows_add(struct rows_out *rows, const struct figure *figure, int units);

#endif
