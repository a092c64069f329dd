/* What a function gave, made wrong on purpose: 5 per cent up or down, to see which checks notice.
 * In the environment: SPOIL_FORMULA names the function; SPOIL_TABLE a table, SPOIL_COLUMN its
 * column (or any) and SPOIL_ROWS its rows ("from FIRST LAST", or "bit BIT VALUE": those in whose
 * number that bit is so). SPOIL_FACTOR is 1.05 or 0.95, or `turns`: each call in another direction,
 * for what is used in a ratio of two. SPOIL_REACHED is a file to which the functions that were
 * called are added. */
#ifndef SPOIL_H
#define SPOIL_H

#include <stdbool.h>
#include <stddef.h>

/* Notes that the function was called; true where it is the one to spoil. */
bool spoil_chosen(const char *function);
void spoil_reached_to(const char *path); /* where to say so, as SPOIL_REACHED does */
void spoil_forget(void);                 /* says so now; what comes is another command */

double spoil_double(double value);
int spoil_integer(int value); /* by one */

/* All that looks like a number of ordinary size; pointers, counts and text never do. */
void spoil_memory(void *start, size_t size);
void spoil_changed(void *start, const void *before, size_t size);

/* From now on tables that are read count as reached, by their names. */
enum { SPOIL_PAGE = 4096 };
void spoil_watch_tables(void);

/* A copy of a table's row with every number spoilt, and the row that it is a copy of. */
const void *spoil_row(const void *row);
const void *spoil_original(const void *copy);

#endif
