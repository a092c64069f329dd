/* The same places for every option: rows that a program lays side by side. */
#ifndef TYRESUM_REPORT_EVEN_PLACES_H
#define TYRESUM_REPORT_EVEN_PLACES_H

#include "report/plan.h"

/* The figures, and one that is unknown at every place that a quantity has with another setup of the
 * plan only: a pivot by option has no place that some options lack. The steps of a tyre's own
 * pressure table stay as they are. */
void figures_even_places(const struct plan *plan, const struct figures *figures,
                         struct figures *out);

#endif
