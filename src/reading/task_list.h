/* The work on each option as a list to tick, best option first. */
#ifndef TYRESUM_READING_TASK_LIST_H
#define TYRESUM_READING_TASK_LIST_H

#include "reading/part_table.h"

/* The options; the fitted tyre where no option is there. */
bool task_list_shows(const struct layout *layout, size_t setup);

void task_list_text(const struct layout *layout);
void task_list_markdown(const struct layout *layout);

#endif
