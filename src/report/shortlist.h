/* Which tyres fit: sizes x wheels x axle ratios, each judged like an option of the build file. */
#ifndef TYRESUM_REPORT_SHORTLIST_H
#define TYRESUM_REPORT_SHORTLIST_H

#include "report/outcome.h"

/* A size to be tried, with the load range where the list names one. */
struct candidate {
    struct designation size;
};

/* One on one wheel and with one axle ratio, judged like an option of the build file. */
struct shortlisted {
    const struct candidate *candidate;
    const struct search_rim *rim;
    double axle_ratio;    /* UNKNOWN where the file has no drivetrain */
    bool other_axle;      /* which has to be ordered */
    bool axle_unasked;    /* another axle, and no limit is met by it that is not met without */
    double drive_remains; /* engine speed beside the fitted drive, a fraction; UNKNOWN too */
    double diameter_m, diameter_change_m;
    double load_kg; /* of the load index */
    struct axle_pair pressure_Pa;
    double speedometer_error;
    struct option_outcome found; /* its counts and margin; findings and tasks are not kept */
    /* What is nearest to its limit; of a no go, what fails by most: its margin is negative. */
    const struct quantity_row *closest_limit;
    int closest_axle;
    double closest_left;   /* SI; UNKNOWN where it cannot be told */
    double closest_margin; /* the same in the scale of the quantity's row */
    double shortfall; /* of a no go: how much its limits are missed by in all, in the same scale */
};

/* Why candidates were dropped. */
struct drop_reason {
    const char *name; /* of the quantity, or "rim_diameter", "form", "overall_diameter_window" */
    size_t count;     /* sizes on wheels that fail it, among others or alone */
    size_t alone;     /* those that would be in without it */
    double short_m;   /* where it is a length and alone: the least that is missing, UNKNOWN else */
};

enum { DROP_REASONS_MAX = 64, NEAR_MISSES_MAX = 10 };

struct shortlist {
    struct shortlisted *items;
    size_t count, capacity;
    struct shortlisted misses[NEAR_MISSES_MAX]; /* of the no go, the nearest first */
    size_t miss_count;
    size_t tried; /* sizes x wheels x axle ratios */
    struct drop_reason reasons[DROP_REASONS_MAX];
    size_t reason_count;
};

/* Tries all, keeps those that are no no go, and sorts: another axle that no limit asks for behind
 * all else; then by outcome, the least work and the closest margin (option_outcome_compare); then
 * the least |drive_remains|, then the most load, then in the order of the lists. */
void shortlist_make(const struct plan *plan, const struct candidate *candidates, size_t count,
                    struct shortlist *out);

#endif
