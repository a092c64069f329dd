/* Which tyres fit: sizes x wheels x springs x heights x axle ratios, each judged like an option of
 * the build file. */
#ifndef TYRESUM_REPORT_SHORTLIST_SHORTLIST_H
#define TYRESUM_REPORT_SHORTLIST_SHORTLIST_H

#include "report/outcome.h"

/* A size to be tried, with the load range where the list names one. */
struct candidate {
    struct designation size;
};

/* One on one wheel, with springs, heights and an axle ratio, judged like an option of the build
 * file. */
struct shortlisted {
    const struct candidate *candidate; /* NULL: the option that is kept */
    const struct search_rim *rim;      /* NULL: the wheel that it has */
    double rim_width_m, inset_m;
    const struct spring_choice *spring[AXLE_COUNT]; /* NULL: as the file has it */
    double lift_m[AXLE_COUNT];                      /* that is added; 0: none */
    double axle_ratio;                              /* UNKNOWN where the file has no drivetrain */
    bool other_axle;                                /* which has to be ordered */
    bool unasked;         /* no limit is met by its changes that is not met without one of them */
    size_t number;        /* among all that are tried, in their order */
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

enum { DROP_REASONS_MAX = 64, NEAR_MISSES_MAX = 10, SHORTLIST_ROWS_MAX = 10000 };

/* What is tried. */
struct shortlist_request {
    const struct candidate *candidates; /* NULL: the plan's one option, on the wheel that it has */
    size_t count;
    size_t best; /* rows to keep at most */
    /* Called now and then with how many of all have been tried; NULL: nobody asks. */
    void (*progress)(void *of, size_t done, size_t all);
    void *progress_of;
};

/* How many combinations are judged where the file offers springs or heights; 0 where it does not.
 */
size_t shortlist_size(const struct plan *plan, const struct shortlist_request *request);
enum { SHORTLIST_SIZE_MAX = 10000000 };

struct shortlist {
    struct shortlisted *items;
    size_t count, capacity;
    struct shortlisted misses[NEAR_MISSES_MAX]; /* of the no go, the nearest first */
    size_t miss_count;
    size_t tried;                   /* sizes x wheels x springs x heights x axle ratios */
    size_t outcomes[OUTCOME_NO_GO]; /* of all that go or are open, kept or not: */
    bool asked_only;                /* but for springs and heights that no limit asks for */
    struct drop_reason reasons[DROP_REASONS_MAX];
    size_t reason_count;
};

/* Tries all, keeps the best of those that are no no go, and sorts: changes that no limit asks for
 * behind all else; then by outcome, the least work and the closest margin (option_outcome_compare);
 * then the least |drive_remains|, then the most load, then in the order of the lists. */
void shortlist_make(const struct plan *plan, const struct shortlist_request *request,
                    struct shortlist *out);

#endif
