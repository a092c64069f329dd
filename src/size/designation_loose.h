/* Sizes as staff and stock lists write them: 245/75/16, 265 70 17, 33/12.50/17, 205/55R16 91V TL
 * DOT2219. Tried where a text is no designation as moulded; where only one reading is possible it
 * is taken. */
#ifndef TYRESUM_SIZE_DESIGNATION_LOOSE_H
#define TYRESUM_SIZE_DESIGNATION_LOOSE_H

#include "size/designation.h"

enum { TAKEN_SIZE = 160 };

/* designation_parse, then the loose readings. `taken` says what was added or passed over; empty of
 * a designation as moulded. A text with two readings is a fault that names both. */
bool designation_read(struct span text, struct designation *out, struct designation_error *error,
                      char taken[TAKEN_SIZE]);

#endif
