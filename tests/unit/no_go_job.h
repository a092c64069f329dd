/* Random jobs whose first option is a no go that changes may help, and what they have to choose
 * from. */
#ifndef TYRESUM_TESTS_NO_GO_JOB_H
#define TYRESUM_TESTS_NO_GO_JOB_H

#include "judged_build.h"

enum { RIMS = 2 };

/* What a job's first option is given to choose from, at most one spring and one height an axle. */
struct offered {
    struct search_rim rims[RIMS];
    struct spring_choice springs[AXLE_COUNT];
    double lifts[AXLE_COUNT], ratio;
};

struct axle_suspension *axle_suspension_of(struct specification *specification, int axle);

/* One that would go stands first and alone, if there is one, and is made a no go: by a house that
 * raises little, or narrow arches. */
void make_no_go(struct run *run, struct specification *specification);

/* Choices near to what the option has. */
void offer_changes(struct run *run, struct offered *out, struct specification *specification);

#endif
