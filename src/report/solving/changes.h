/* What may be changed on a vehicle beside its tyres: of each kind one choice of the file's, or
 * none; and what becomes of an option with a set of such changes. */
#ifndef TYRESUM_REPORT_SOLVING_CHANGES_H
#define TYRESUM_REPORT_SOLVING_CHANGES_H

#include "report/outcome.h"

enum change_kind {
    CHANGE_WHEEL,      /* one of search: rims; in front alone where the option has two sizes */
    CHANGE_WHEEL_REAR, /* of an option with a size of its own there */
    CHANGE_AXLE_RATIO,
    CHANGE_SPRING_FRONT,
    CHANGE_SPRING_REAR,
    CHANGE_LIFT_FRONT, /* height above what the springs give */
    CHANGE_LIFT_REAR,
    CHANGE_KINDS
};

enum { AS_IT_IS = -1 };

/* Work on the arches that the file allows and that is not taken, so that another kind does it all.
 */
enum work_withheld {
    WITHHOLD_TRIM = 1 << 0,
    WITHHOLD_BUMP_STOP = 1 << 1,
    WITHHOLD_SPACER = 1 << 2,
    WORK_WITHHELD_ALL = 1 << 3
};

/* A choice of each kind, by its number among those of the file, or AS_IT_IS. */
struct change_set {
    int choice[CHANGE_KINDS];
    unsigned withheld; /* bits of work_withheld */
};
struct change_set no_changes(void);
size_t choices_made(const struct change_set *set);

/* The choices that the file allows for a setup and that change something. */
struct change_choices {
    int *choice[CHANGE_KINDS];
    size_t count[CHANGE_KINDS];
};
struct change_choices changes_allowed(const struct plan *plan, size_t index);
/* How many sets of them there are, but for the one that changes nothing. */
double change_sets(const struct change_choices *choices);

/* A plan of two setups, the fitted one and that with the changes; `with_it` is filled, and has to
 * outlive it, as has the arena. */
struct plan plan_with_changes(struct arena *arena, const struct plan *plan, size_t index,
                              const struct change_set *set, struct specification *with_it);

/* The choice itself. */
const struct search_rim *changed_wheel(const struct plan *plan, size_t index,
                                       const struct change_set *set, int axle);
const struct spring_choice *changed_spring(const struct plan *plan, const struct change_set *set,
                                           int axle);
double added_lift_m(const struct plan *plan, const struct change_set *set, int axle);
double changed_axle_ratio(const struct plan *plan,
                          const struct change_set *set); /* UNKNOWN: as is */

#endif
