/* How the vehicle stands with one setup in one loading state: the tyres, the suspension and what
 * is aboard. Shared by the pieces of the clearance report. */
#ifndef TYRESUM_REPORT_CLEARANCE_STANCE_H
#define TYRESUM_REPORT_CLEARANCE_STANCE_H

#include "report/judge.h"
#include "report/plan.h"

/* Changes are from the fitted state. */
struct stance {
    const struct plan *plan;
    size_t index;
    const struct setup *setup;
    const struct state *state;
    const struct stance *fitted; /* the fitted setup in the same state */
    bool as_measured;            /* the fitted state itself: no lift, nothing carried */
    enum headline headline;
    double pressure_Pa[AXLE_COUNT]; /* to be set, the fitted tyre's placard; INFINITY: refused */
    double added_kg[AXLE_COUNT];    /* to the springs, by what is aboard */
    double lift_m[AXLE_COUNT], sag_m[AXLE_COUNT];
    double deflection_m[AXLE_COUNT]; /* of the tyre, under what is aboard */
    double radius_m[AXLE_COUNT];     /* static loaded radius less that */
    struct axle_pair body_change_m;  /* tyre, lift and sag */
    struct axle_pair tyre_change_m;  /* the tyre's part alone, beside the fitted one's */
};

/* Of a plan's setups, each in every state. */
struct standing {
    const struct plan *plan;
    struct stance **setups;
};

/* One a loading state, in their order. `fitted`: the fitted setup's, NULL for itself. */
struct stance *stances_make(const struct plan *plan, size_t index, const struct stance *fitted);
/* The fitted state, as it was measured. */
void stance_as_measured(const struct plan *plan, struct stance *out);
/* The fitted setup unladen, on the springs that it has. */
void stance_unladen(const struct plan *plan, struct stance *out);

/* The loaded radius of one setup in one loading state. */
double stance_radius_m(const struct plan *plan, size_t index, int state, int axle);

/* What a height hangs on: loads and springs, and how far the tyres give. */
enum { STANCE_NEEDS = 2 };
void stance_needs(const struct stance *stance, struct need needs[STANCE_NEEDS]);
/* Of what hangs on how far the springs of an axle give, or of both (AXLE_NONE); where that is
 * unknown, what to find out. */
struct need sag_need(const struct stance *stance, int of_axle, bool is_known);
/* The tyres of one axle alone. */
struct need deflection_need(const struct stance *stance, int axle);

/* A figure of this part in the stance's state. */
struct figure stance_figure(const struct stance *stance, enum quantity_id quantity, double value,
                            enum remark_id basis);

/* Judges a length of which something must be left: a fail at nothing, which is then the limit. */
struct figure judged_above_zero(struct figure figure, const struct need *needs, size_t need_count,
                                enum remark_id broken);

const struct axle_suspension *suspension_of(const struct plan *plan, int axle);

/* The plan as if an axle stood on another spring, NULL: on its own; `with_it` is filled, and has to
 * outlive it. */
struct plan plan_with_spring(const struct plan *plan, struct specification *with_it, int axle,
                             const struct spring_choice *choice);

/* Change of the static loaded radius from the fitted tyre's. */
double radius_change_m(const struct plan *plan, size_t index, int axle);

/* Height above the ground of a point that was measured at the fitted state. */
double height_in_stance_m(const struct stance *stance, double height_m, double at_m);

/* Clearance of what rides on the springs, by `ground` alone. */
double ground_change_m(const struct stance *stance, struct axle_pair change_m);

/* The pieces of the report. */
void report_body(const struct stance *stance, struct figures *figures);
void report_spring_choices(const struct plan *plan, struct figures *figures);
void report_tried_spring(const struct stance *stances, size_t count, int axle,
                         struct figures *figures);
void report_headlamp(const struct stance *stances, size_t count, struct figures *figures);
void report_angles(const struct stance *stance, struct figures *figures);
void report_angles_before(const struct plan *plan, struct figures *figures);
void report_arch(const struct stance *states, int axle, struct figures *figures);
void report_wheel_place(const struct plan *plan, size_t index, int axle, struct figures *figures);
void report_wheel_mounting(const struct plan *plan, size_t index, struct figures *figures);
void report_spare_wheel(const struct plan *plan, size_t index, struct figures *figures);

#endif
