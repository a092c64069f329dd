/* What may stay behind so that a state meets the vehicle maker's ratings, and is borne. */
#ifndef TYRESUM_COMPUTE_LEAVE_OUT_H
#define TYRESUM_COMPUTE_LEAVE_OUT_H

#include "compute/load.h"
#include "compute/ratings.h"

/* Of many items that may be left out only so many are tried. */
enum { LEAVE_OUT_TRIED_MAX = 12 };

/* The fewest items, and of as few the lightest, of those aboard that can be left out, without which
 * no rating that is known is passed and what bears each axle does, surely or, where that cannot be
 * had, at all; where that cannot be had either, without which no rating is passed. Marked in the
 * setup's left_out, which must be there. Nothing is where nothing has to be, or where nothing that
 * may be left out helps. True where something is. */
bool leave_out(const struct specification *specification, const struct state *state,
               const struct setup *fitted, const struct setup *setup,
               const struct bearing bearing[AXLE_COUNT]);

#endif
