/* The one judge. A verdict is written in judge.c and nowhere else: from the value, the limit, what
 * both hang on, and what to say in each case. What is unknown can become nothing but unknown. */
#ifndef TYRESUM_REPORT_JUDGE_H
#define TYRESUM_REPORT_JUDGE_H

#include "base/known.h"
#include "report/figures.h"

/* One thing that a figure hangs on, and what to ask for where it is not known. */
struct need {
    bool known;
    struct remark advice;
};

/* How a figure is judged. What is broken is a task where a cure is given, and `broken` otherwise.
 * The first need that is not known decides; then whether the condition
 * holds, where one is asked; then the limit that the figure carries, where it has a side. With
 * none of the three a figure without a value is unknown where `if_unknown` says what is missing,
 * and has no verdict otherwise. */
struct judgement {
    const struct need *needs;
    size_t need_count;
    enum answer holds;   /* of a condition that is no limit */
    enum verdict broken; /* VERDICT_NONE: fail */
    enum verdict met;    /* VERDICT_NONE: ok; or say `met_is_none` */
    bool met_is_none;
    struct cure cure;
    enum task_id ask; /* the task that finds out what is unknown; TASK_NONE: to measure or read */
    struct remark if_met, if_broken, if_unknown;
    struct remark if_cured; /* of a task; none: if_broken */
    /* How far off the figure may be by what was measured: nearer to its limit than that, on either
     * side, nothing is proven (ISO 14253-1, from memory): `doubtful`, unknown where not said. */
    double tolerance;
    enum verdict doubtful;
    struct remark if_doubtful;
};

struct figure judged(struct figure figure, const struct judgement *how);

/* The figure with a limit to be judged by. */
struct figure limited_at_least(struct figure figure, double limit);
struct figure limited_at_most(struct figure figure, double limit);
/* By the bound that is broken or nearest; the upper one where both are as near, whatever a
 * conversion of units makes of the last bit. UNKNOWN: no such bound. */
struct figure limited_within(struct figure figure, double min, double max);

/* Whether a value meets a limit on that side, with a billionth of slack so that what meets it
 * exactly does. Both must be known. */
bool meets_limit(double value, enum limit_side side, double limit);

#endif
