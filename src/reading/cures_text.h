/* The work that would meet a limit, in words. */
#ifndef TYRESUM_READING_CURES_TEXT_H
#define TYRESUM_READING_CURES_TEXT_H

#include "report/figures.h"

/* "it may rub: bump stops longer by 8 mm, or 8 mm trimmed off the arch; lift does not help here":
 * what is wrong, what would do, what would not. */
const char *cures_text(struct arena *arena, const char *wrong, const struct cures *cures, bool us);

#endif
