/* Tasks that a build file leaves without a figure, or out, for want of a key. */
#ifndef TYRESUM_CLI_TASK_KEYS_H
#define TYRESUM_CLI_TASK_KEYS_H

#include "build/given.h"
#include "report/tasks.h"

struct task_key {
    enum task_id task;
    const char *key;  /* its path */
    const char *when; /* path without which the task is not asked for; NULL: always asked */
    const char *so;   /* what comes of it that the key is missing */
};

extern const struct task_key task_keys[];
extern const size_t task_key_count;

/* Whether a file lacks the key of a row that it would need. */
bool task_key_is_missing(const struct given *file, const struct task_key *row);

#endif
