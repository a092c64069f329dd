/* How a figure's facts look outside: its value and unit, its place, what is said of it. */
#ifndef TYRESUM_READING_FIGURE_VALUE_H
#define TYRESUM_READING_FIGURE_VALUE_H

#include "report/plan.h"

/* Unit and decimals of a figure in a unit system; its instrument's own where it has one. */
enum unit_id figure_unit(const struct figure *figure, bool us);
int figure_decimals(const struct figure *figure, bool us);

/* An SI value of the figure in that unit. What gets set is rounded up in it: what is printed is
 * what gets set. */
double figure_value(const struct figure *figure, double si, bool us);
/* The same where it is told with those decimals: what may be no more or no less stays within. */
double figure_rounded(const struct figure *figure, double si, bool us);
/* Its limit, which is told as it is. */
double figure_limit(const struct figure *figure, bool us);

/* Names and texts, NULL where it has none. */
const char *figure_option(const struct plan *plan, const struct figure *figure);
const char *figure_state(const struct plan *plan, const struct figure *figure);
const char *figure_at(struct arena *arena, const struct plan *plan, const struct figure *figure);
const char *figure_basis(struct arena *arena, const struct plan *plan, const struct figure *figure);
/* What to do in words, and the same with the key of the build file apart, in brackets. */
const char *figure_advice(struct arena *arena, const struct plan *plan,
                          const struct figure *figure);
const char *figure_action(struct arena *arena, const struct plan *plan,
                          const struct figure *figure);

#endif
