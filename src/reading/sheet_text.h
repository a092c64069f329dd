/* The sheet's first screen on a terminal: which tyre, and what it takes; then each option's tasks,
 * what fails, and cautions. */
#ifndef TYRESUM_READING_SHEET_TEXT_H
#define TYRESUM_READING_SHEET_TEXT_H

#include "reading/part_table.h"

/* A line for the vehicle, a table with a row a setup. */
void sheet_head_text(const struct layout *layout);
/* What decides of all, each setup, best first, and what else they share; of a part too. */
void sheet_options_text(const struct layout *layout);

/* The work on one setup, numbered; with boxes to tick where asked. */
void tasks_text(const struct layout *layout, size_t setup, bool boxes);

#endif
