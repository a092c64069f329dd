/* The least that makes a no go go: of all sets of changes that the file allows a smallest one,
 * every smaller one having been tried. What counts is each choice of another wheel, axle ratio,
 * spring or height, and each piece of work that is then to be done: what is ordered, left out,
 * altered or set. */
#ifndef TYRESUM_REPORT_SOLVING_LEAST_CHANGE_H
#define TYRESUM_REPORT_SOLVING_LEAST_CHANGE_H

#include "report/solving/changes.h"
#include "report/solving/judging.h"

/* Where none makes it go: a limit that every set leaves broken, as the best of them leaves it; or
 * what is left by the set that breaks the fewest. */
struct standing_limit {
    struct figure figure; /* its row, axle and numbers */
    double short_by;      /* UNKNOWN: it has no distance */
    bool always;
};

struct least_change {
    bool found;
    bool all_tried; /* that could be smaller; else only those for which judgements were left */
    struct change_set set;         /* of those as small the best by outcome, work and margin */
    struct option_outcome outcome; /* with it: its tasks belong to the set */
    size_t changes;                /* choices and tasks */
    double sets;                   /* of choices that there are */
    size_t tried;                  /* of them */
    struct standing_limit stands;
};

/* Whether a task counts among the changes. */
bool task_is_change(const struct task *task);

/* Of a setup that is a no go, which `now` says. */
void least_change_find(const struct plan *plan, size_t index, const struct option_outcome *now,
                       struct judging *judging, struct least_change *out);

#endif
