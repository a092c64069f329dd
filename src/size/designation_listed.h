/* What the list of standard sizes says of a size that leaves its load index out. */
#ifndef TYRESUM_SIZE_DESIGNATION_LISTED_H
#define TYRESUM_SIZE_DESIGNATION_LISTED_H

#include "size/designation.h"

/* Of a size with a load range and no load index: the lowest that table `standard_sizes` has for
 * both. False where there is none. */
bool designation_listed(const struct designation *size, int *load_index, int *load_index_dual);

#endif
