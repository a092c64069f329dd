/* One tyre of the plan, on its axle, beside the fitted one there: what the sections of the tyre
 * part tell of. */
#ifndef TYRESUM_REPORT_TYRE_CANDIDATE_H
#define TYRESUM_REPORT_TYRE_CANDIDATE_H

#include "report/plan.h"

struct candidate {
    const struct plan *plan;
    struct figures *figures;
    const struct setup *setup;
    const struct tyre *tyre, *fitted;
    struct tyre_dimensions stated;        /* with its data book */
    struct tyre_dimensions before, after; /* by the same rule for both */
    bool mixed;
    int axle; /* AXLE_NONE where both axles are alike */
};

/* Adds the figure with the candidate's axle. */
void candidate_add(const struct candidate *candidate, struct figure figure);

/* The section of the speed symbol. */
void report_speed_symbol(const struct candidate *candidate);

#endif
