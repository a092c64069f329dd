/* Shared by the two halves of the clearance report: the body, and the wheel arch. */
#ifndef TYRESUM_REPORT_CLEARANCE_VIEW_H
#define TYRESUM_REPORT_CLEARANCE_VIEW_H

#include "report/plan.h"

/* One setup in one loading state. Changes are from the fitted state. */
struct clearance_view {
    const struct plan *plan;
    size_t index;
    const struct setup *setup;
    const struct state *state;
    enum headline headline;
    double lift_m[AXLE_COUNT], sag_m[AXLE_COUNT], radius_m[AXLE_COUNT];
    struct axle_pair body_change_m; /* tyre, lift and sag */
    struct axle_pair tyre_change_m; /* the tyre's part alone */
};

void clearance_view_make(const struct plan *plan, size_t index, const struct state *state,
                         struct clearance_view *out);

/* Room in one wheel arch, at ride height in every state, at bump and at lock. */
void report_arch(const struct plan *plan, size_t index, int axle, struct figures *figures);

#endif
