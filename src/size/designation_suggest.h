/* The designation that a text which is none was most likely meant to be. */
#ifndef TYRESUM_SIZE_DESIGNATION_SUGGEST_H
#define TYRESUM_SIZE_DESIGNATION_SUGGEST_H

#include "size/designation.h"

/* Tries the slips that people make: O for 0, a wrong mark between the numbers, a decimal comma,
 * the speed symbol in front of the load index. False where none of them gives a designation. */
bool designation_suggest(struct span text, char suggestion[DESIGNATION_CANONICAL_SIZE]);

#endif
