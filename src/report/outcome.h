/* What becomes of an option: ready as it is, ready after work, open until something is known, or no
 * go; why; and the work, in workshop order. One judgement for every command. */
#ifndef TYRESUM_REPORT_OUTCOME_H
#define TYRESUM_REPORT_OUTCOME_H

#include "report/plan.h"

/* Best first. */
enum outcome { OUTCOME_GO, OUTCOME_WORK, OUTCOME_OPEN, OUTCOME_NO_GO };

/* One piece of work. */
struct task {
    struct cure cure;
    int axle;
    const struct figure *reason; /* the finding that it cures */
};

struct option_outcome {
    enum outcome outcome;
    /* What was judged: of each matter the worst figure stands for all, fail first, then unknown,
     * task, caution and ok; in the figures' order among equals. */
    const struct figure **findings;
    size_t finding_count;
    size_t counts[VERDICT_COUNT]; /* findings by verdict; of VERDICT_TASK, the tasks themselves */
    const struct figure *why;     /* the finding that decides, one of the option's own before the
                                     build's; NULL of go */
    const struct figure *closest; /* of what is met, nearest to its limit; NULL: none */
    double closest_margin;        /* in the scale of its quantity's row; INFINITY: none */
    struct task *tasks;           /* of a no go none: what fails is no work */
    size_t task_count;
    size_t work[TASK_TO_TELL + 1]; /* tasks by kind */
};

/* Of one setup's figures, all parts of them. */
void option_outcome_make(const struct plan *plan, const struct setup_figures *figures,
                         struct option_outcome *out);

/* Two pieces of a setup's figures together, no matter of which is in both. `tasks` has room for
 * those of both; findings are not kept, nor which of them decides. */
void option_outcome_join(const struct option_outcome *a, const struct option_outcome *b,
                         struct task *tasks, struct option_outcome *out);

/* The worst verdict that the outcome hangs on: fail of a no go, task of one that needs work. */
enum verdict option_outcome_verdict(const struct option_outcome *outcome);

/* The outcome that a finding would make alone. */
enum outcome finding_outcome(const struct figure *finding);

/* How far beyond its limit, as a fraction; the larger is the worse. A pressure to set never passes
 * its ceiling, and what is ok passes none: of those the nearer is the worse. */
double figure_excess(const struct figure *figure);

/* go, work, open, no_go; and for people: "go after work". */
const char *outcome_name(enum outcome outcome);
const char *outcome_words(enum outcome outcome);

/* Whether one is better for the shop: by outcome, then what fails, then the least work (alter,
 * order, unload, measure, in that order), then the closest margin. Negative where a is. */
int option_outcome_compare(const struct option_outcome *a, const struct option_outcome *b);

#endif
