/* Limits on what a change amounts to: the house's own, and those of the published rules that the
 * file names. A finding each, of the bound that is broken or nearest. */
#ifndef TYRESUM_REPORT_LIMITS_H
#define TYRESUM_REPORT_LIMITS_H

#include "report/judge.h"
#include "report/plan.h"

struct limited_change {
    struct figure figure;       /* its quantity, value and places */
    const char *key;            /* of `limits`, and of the table of published limits */
    const struct window *house; /* NULL: the house sets none */
    double whole; /* what limits in per cent are a share of: the fitted diameter or track */
    enum remark_id if_unknown; /* what to give where the value is not known */
    enum task_id ask;          /* and what finds it out; TASK_NONE: to measure or read */
};

void report_limits(const struct plan *plan, struct figures *figures,
                   const struct limited_change *change);

/* Rules that the file names and that are for another kind of vehicle alone judge nothing: a finding
 * each, made of this figure. */
void report_rules_of_others(const struct plan *plan, struct figures *figures, struct figure figure);

/* Whether a vehicle of that kind (enum vehicle_kind or CHOICE_NONE) is of a rule's: any,
 * passenger_car or light_truck. */
enum answer is_of_kind(const char *kinds, int kind);

/* Whether the vehicle is of one of a rule's categories, "MC NA"; yes where it names none. */
enum answer is_of_category(const char *categories, const struct vehicle *vehicle);

#endif
