/* For the properties of outcomes: what the shop does, put into the keys of the build; numbers as
 * the list of tasks has them. */
#ifndef TYRESUM_TESTS_WORKSHOP_H
#define TYRESUM_TESTS_WORKSHOP_H

#include "judged_build.h"

/* All tasks of an option but one, `left_out`, which may be beyond the last. */
void do_tasks(struct run *run, const struct judged_build *before, size_t setup, size_t left_out,
              struct judged_build *out);

#endif
