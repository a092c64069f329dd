/* Which tyres fit: sizes x wheels x axle ratios, each judged like an option of the build file. */
#ifndef TYRESUM_REPORT_SHORTLIST_H
#define TYRESUM_REPORT_SHORTLIST_H

#include "report/plan.h"

/* A size to be tried, with the load range where the list names one. */
struct candidate {
    struct designation size;
};

/* One that meets every limit, on one wheel and with one axle ratio. */
struct shortlisted {
    const struct candidate *candidate;
    const struct search_rim *rim;
    double axle_ratio;    /* UNKNOWN where the file has no drivetrain */
    double drive_remains; /* engine speed beside the fitted drive, a fraction; UNKNOWN too */
    double diameter_m, diameter_change_m;
    double load_kg; /* of the load index */
    struct axle_pair pressure_Pa;
    double speedometer_error;
    enum verdict worst; /* of what is not a fail */
    size_t unknowns;
    const char *closest_limit; /* name of the judged figure that is nearest to its limit */
    int closest_axle;
    double closest_margin; /* relative to the limit's own size */
};

/* Why candidates were dropped. */
struct drop_reason {
    const char *name; /* of the quantity, or "rim_diameter", "form", "overall_diameter_window" */
    size_t count;     /* candidates (size x wheel) that fail it, among others or alone */
    size_t alone;     /* those that would be in without it */
    double short_m;   /* where it is a length and alone: the least that is missing, UNKNOWN else */
};

enum { DROP_REASONS_MAX = 64 };

struct shortlist {
    struct shortlisted *items;
    size_t count, capacity;
    size_t tried; /* sizes x wheels x axle ratios */
    struct drop_reason reasons[DROP_REASONS_MAX];
    size_t reason_count;
};

/* Tries all and sorts: those with nothing unknown first, then the least |drive_remains|, then
 * the most load, then in the order of the lists. */
void shortlist_make(const struct plan *plan, const struct candidate *candidates, size_t count,
                    struct shortlist *out);

#endif
