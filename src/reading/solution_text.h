/* What then, of one setup: the least change that makes a no go go, and what its outcome hangs on;
 * of the fitted one, which loads the springs suit that may be fitted. Behind its findings, a line
 * each.
 */
#ifndef TYRESUM_READING_SOLUTION_TEXT_H
#define TYRESUM_READING_SOLUTION_TEXT_H

#include "reading/findings_text.h"

enum { SOLUTION_LINES_MAX = 3 };
struct solution_line {
    const char *label, *text;
};
size_t solution_lines(const struct layout *layout, size_t setup,
                      struct solution_line out[SOLUTION_LINES_MAX]);

#endif
