/* Each setup beside the fitted tyre, a row each: what it measures, changes and carries, and what
 * becomes of it. */
#ifndef TYRESUM_REPORT_COMPARE_H
#define TYRESUM_REPORT_COMPARE_H

#include "compute/load.h"
#include "report/outcome.h"

enum { COMPARED_NOTES_MAX = 3 };

struct compared {
    const struct setup *setup;
    enum axle axle;                       /* whose tyre the row is of */
    struct tyre_dimensions before, after; /* by the same rule */
    double width_change_m;
    double revs_per_m, diameter_m; /* data book where given */
    double error, true_at_100;     /* of the speedometer */
    double effective, restoring;   /* axle ratios, or multipliers of it */
    double load_kg, load_before_kg;
    struct equal_load equal_load;
    struct option_outcome found; /* over all parts; of designations alone, over what they tell */
    enum outcome outcome;        /* designations alone leave it open */
    enum verdict worst;          /* that the outcome hangs on */
    /* What no finding of the file tells. */
    struct remark notes[COMPARED_NOTES_MAX];
    size_t note_count;
};

/* What the rows of a plan have in common. */
struct comparison {
    const struct plan *plan;
    const struct setup_figures *groups;
    const double *true_at_100;
    struct figures figures;
};

/* Reports the parts that the plan's specification can tell of: of a file, all. */
void comparison_begin(const struct plan *plan, struct comparison *out);
/* The row of a setup of the plan; 0 is the fitted one. */
void comparison_row(const struct comparison *comparison, size_t index, struct compared *out);

#endif
