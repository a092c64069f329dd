/* Shared by the files of the shortlist: what is tried, how one is judged, which are kept. */
#ifndef TYRESUM_REPORT_SHORTLIST_TRIED_H
#define TYRESUM_REPORT_SHORTLIST_TRIED_H

#include "report/shortlist/shortlist.h"

/* What an axle may stand on. */
struct axle_stand {
    const struct spring_choice *spring; /* NULL: what it stands on now */
    double lift_m;                      /* that is added */
    struct axle_suspension suspension;  /* with both */
};

/* Every choice, the first of each as it is: of an axle, springs x heights, heights the faster. */
struct choices {
    struct axle_stand *stands[AXLE_COUNT];
    size_t springs[AXLE_COUNT], heights[AXLE_COUNT];
    double *ratios;
    size_t ratio_count;
};
void choices_make(const struct plan *plan, struct choices *out);
/* Of one tyre on one wheel. */
size_t choices_count(const struct choices *choices);

/* The figures of a part, of the tyre on the wheel before. */
struct trial;
struct remembered {
    void (*report)(const struct plan *plan, struct figures *figures);
    bool (*is_same)(const struct trial *trial, const struct shortlisted *a,
                    const struct shortlisted *b); /* of one size */
    struct shortlisted item;
    struct figure *figures;
    size_t count, room;
    struct arena arena;
};

struct trial {
    const struct plan *plan;
    const struct shortlist_request *request;
    struct choices choices;
    size_t all, judged; /* combinations, and those of a size that goes on its wheel */
    struct shortlist *out;
    const struct standing *fitted;
    struct remembered load, speedometer;
    struct figures figures;     /* room for those of one after the other */
    struct arena scratch, pair; /* of a tyre on its wheel, and of a pair of springs under it */
};

/* Tells how many have been tried. */
void tell_progress(const struct trial *trial, size_t done);

/* judging.c */

/* A plan of the fitted setup and of the tyre on its wheel, with what is changed; `with_it` is
 * filled, and has to outlive it. */
void tried_plan(struct trial *trial, const struct shortlisted *item, struct specification *with_it,
                struct plan *out);
void remember_parts(struct trial *trial);
/* Adds a part of a tyre, or the same as of that tyre on the wheel before. */
void tried_report_part(struct trial *trial, const struct plan *plan, const struct shortlisted *item,
                       struct remembered *last);
/* What is told of it, nothing being changed. */
void tried_measure(const struct plan *plan, struct shortlisted *item);
/* Over all parts, as every command judges; or, not `whole`, but where the first of them leave
 * nothing to show of it. The findings stay in item->found. */
void tried_judge(struct trial *trial, const struct plan *plan, bool whole,
                 struct shortlisted *item);
/* What other springs, heights and axles are beside the work that its figures ask for. */
void tried_add_changes(struct shortlisted *item);
void tried_set_ratio(const struct plan *plan, double ratio, struct shortlisted *item);
/* Whether any finding can hang on the axle ratio: elsewhere the one judgement stands for all. */
bool axle_is_judged(const struct specification *specification);
/* By how much in all the limits of a no go are missed. Of `item`, where there is one, what is
 * missed by most is noted. */
double shortfall_of(const struct option_outcome *found, struct shortlisted *item);

/* The lower the better: the outcome, and of a no go by how much it is one. Changes that leave it no
 * lower than it is with fewer of them are for nothing. */
double tried_level(const struct shortlisted *item);

/* ranking.c */

/* Negative where a stands before b. */
int best_first(const struct shortlisted *a, const struct shortlisted *b);
/* Whether none that is better than that is would be kept. */
bool is_full_of_better(const struct trial *trial, const struct shortlisted *item);
bool is_near_miss(const struct shortlist *list, double shortfall);
void keep(const struct trial *trial, const struct shortlisted *found);
void sort_kept(struct shortlist *out);
/* Counts what a tyre on a wheel fails by as it is: the pieces of its outcome. */
void count_fails(struct shortlist *out, const struct option_outcome *const *pieces, size_t count);
void count_dropped(struct shortlist *out, const char *reason);

/* combinations.c: a tyre on a wheel with every choice of springs, heights and axle ratio. */
void try_combinations(struct trial *trial, const struct shortlisted *as_it_is);

#endif
