/* A tyre of the set as the spare, in place of the one that is carried now. */
#ifndef TYRESUM_REPORT_SPARE_OF_SET_H
#define TYRESUM_REPORT_SPARE_OF_SET_H

#include "report/plan.h"

/* Whether one may be ordered and is not known to be too large for `spare_space`; of a set with
 * another tyre behind, whichever of the two is taken. That the space was not measured is a finding
 * of its own. */
bool spare_of_set_may_be_carried(const struct plan *plan, const struct setup *setup);

/* Ordering one more of the tyre that both axles have, in place of another one that is carried now.
 * TASK_NONE where none may be. */
struct cure spare_of_set_cure(const struct plan *plan, const struct setup *setup);

#endif
