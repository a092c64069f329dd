/* What columns mean where their title is too short to tell, and the words that one may hold: for
 * the lists of `tables` and for the schema. */
#ifndef TYRESUM_CLI_COLUMN_WORDS_H
#define TYRESUM_CLI_COLUMN_WORDS_H

#include <stddef.h>

#include "cli/columns.h"

/* The kinds of row that `check` gives, and NULL (cmd_check.c). */
extern const char *const check_kind_names[];

/* One line. */
const char *column_meaning(const struct column *column);

/* The word at that index of those that the column may hold; NULL past the last, and for a column
 * that may hold any. */
const char *column_word(const struct column *column, size_t index);

#endif
