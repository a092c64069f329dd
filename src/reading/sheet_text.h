/* The head of the terminal's sheet: what is wrong with each option and what it changes, three
 * lines an option. */
#ifndef TYRESUM_READING_SHEET_TEXT_H
#define TYRESUM_READING_SHEET_TEXT_H

#include "reading/part_table.h"

void sheet_head_text(const struct layout *layout);

#endif
