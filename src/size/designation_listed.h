/* What the list of standard sizes says of a size that leaves its load index out. */
#ifndef TYRESUM_SIZE_DESIGNATION_LISTED_H
#define TYRESUM_SIZE_DESIGNATION_LISTED_H

#include "size/designation.h"

enum listed_end { LISTED_LOWEST, LISTED_HIGHEST };

/* Of a size with a load range and no load index: the lowest or highest that table `standard_sizes`
 * has for both. False where there is none. */
bool designation_listed(const struct designation *size, enum listed_end end, int *load_index,
                        int *load_index_dual);

/* "load index 121 as listed for load range E, the lowest": of what was found so. */
enum { LISTED_NOTE_SIZE = 64 };
void designation_listed_note(int load_index, char load_range, enum listed_end end,
                             char note[LISTED_NOTE_SIZE]);

/* The highest load index that table `standard_sizes` has for the size, whichever load range,
 * capacity or construction it lists it with; LOAD_INDEX_NONE where it has none. */
int designation_listed_highest(const struct designation *size);

/* The load index as moulded, or else as listed; LOAD_INDEX_NONE where neither is. */
int designation_load_index(const struct designation *size, enum listed_end end);

#endif
