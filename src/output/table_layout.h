/* Where the columns of a terminal table stand, how their titles break, and which are left out. */
#ifndef TYRESUM_OUTPUT_TABLE_LAYOUT_H
#define TYRESUM_OUTPUT_TABLE_LAYOUT_H

#include <stdbool.h>
#include <stddef.h>

#include "base/span.h"
#include "output/writer.h"

enum { TITLE_LINES_MAX = 4, COLUMN_GAP = 2 };

/* All in characters. The first three are what the rows need, the others are set by the layout. */
struct layout_column {
    size_t left;  /* of numbers, in front of the decimal mark */
    size_t right; /* of numbers, the decimal mark and what follows it */
    size_t body;  /* the widest cell as a whole */
    bool left_out;
    size_t start, width;
    size_t title_count;
    struct span title[TITLE_LINES_MAX];
};

struct table_layout {
    struct layout_column *columns; /* as many as the writer has */
    size_t width;
    size_t title_lines; /* of the column with the most */
    bool any_left_out;
};

/* Width of the widest word of a text: what no column can be narrower than. */
size_t longest_word(const char *title);

/* Widens the table's titles only as far as two lines need; where that is wider than the options
 * allow, breaks them over more lines, and then leaves out columns, the highest priority first
 * (of equals the last, and PRIORITY_BELOW behind all), but never one of priority 0. */
void table_layout_set(struct table_layout *layout, const struct writer *writer);

#endif
