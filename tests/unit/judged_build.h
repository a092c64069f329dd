/* For the properties of outcomes: a specification judged over all parts, and many jobs so. */
#ifndef TYRESUM_TESTS_JUDGED_BUILD_H
#define TYRESUM_TESTS_JUDGED_BUILD_H

#include "property_run.h"
#include "report/outcome.h"

enum { OUTCOMES = OUTCOME_NO_GO + 1 };

struct judged_build {
    struct specification specification;
    struct plan plan;
    struct figures figures;
    struct option_outcome *outcomes; /* one a setup */
};

/* What was met while checking. */
struct tally {
    int outcomes[OUTCOMES], tasks[TASK_COUNT];
    int checked;
};

/* Of its specification, which may be one that was changed. */
void judge_build(struct run *run, struct judged_build *out);

/* With lists of its own, to be changed: options, items, states. */
void copy_specification(struct arena *arena, const struct specification *from,
                        struct specification *out);

/* The finding that decides, as a sentence. */
const char *told_why(struct run *run, const struct judged_build *build, size_t setup);

/* Calls `check` with so many jobs, or 1,500 where TEST_LONG is 1. */
void check_jobs(const char *what, int few,
                void (*check)(struct run *run, struct judged_build *build, struct tally *tally),
                struct tally *tally);

#endif
