/* One wheel arch with one setup: what changes in it, and the room that is left. */
#ifndef TYRESUM_REPORT_CLEARANCE_ARCH_VIEW_H
#define TYRESUM_REPORT_CLEARANCE_ARCH_VIEW_H

#include "compute/arch_fit.h"
#include "compute/clearance.h"
#include "report/clearance/view.h"

/* What of the tyre changes in the arch, beside the fitted tyre as measured. */
struct arch_change {
    const char *name;              /* "nominal", "largest", "largest, chains" */
    const char *at_ride, *at_bump; /* the same, where room above is meant */
    bool judged;                   /* the largest tyre is */
    double diameter_m;
    struct edge_move move;
    struct swept_tyre before, after;
    double chains_m;
    struct arch_rooms rooms; /* left; ride_m is the least of the states in which it is known */
};

struct arch_view {
    const struct plan *plan;
    size_t index;
    int axle;
    const struct setup *setup;
    const struct clearance_view *states; /* one a loading state */
    const struct arch *arch;
    const struct axle_suspension *suspension;
    struct figures *figures;
};

/* Room at lock, after a further change of inset. UNKNOWN at the rear axle. */
double arch_lock_room_m(const struct arch_view *view, const struct arch_change *change,
                        double inset_change_m);

/* What would make a room that is short fit: a sentence for its finding. */
const char *arch_remedy(const struct arch_view *view, const struct arch_change *change,
                        enum quantity_id quantity, bool at_bump, double room_m);

/* Where the arch is too small: the smallest single change of each kind that makes it fit. */
void report_arch_fit(const struct arch_view *view, const struct arch_change *change);

#endif
