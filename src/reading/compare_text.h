/* Below the table of `compare`: why each outcome is what it is, in words. */
#ifndef TYRESUM_READING_COMPARE_TEXT_H
#define TYRESUM_READING_COMPARE_TEXT_H

#include "reading/prose.h"
#include "report/compare.h"

/* "D  road tyre": an option with the letter that it has in its file, for a table; a long name is
 * cut to what a page of that many columns leaves, and stands whole in the notes. */
const char *compare_option_text(struct arena *arena, const struct setup *setup, size_t page_width);

/* rows: one a setup of the plan. */
void compare_notes_text(struct arena *arena, const struct plan *plan,
                        const struct compared *const *rows, struct prose *prose);

#endif
