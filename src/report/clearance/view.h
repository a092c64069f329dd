/* Shared by the parts of the clearance report: one setup in one loading state, the suspension as
 * it stands, and the low points that are on the vehicle then. */
#ifndef TYRESUM_REPORT_CLEARANCE_VIEW_H
#define TYRESUM_REPORT_CLEARANCE_VIEW_H

#include "report/plan.h"

/* One setup in one loading state. Changes are from the fitted state. */
struct clearance_view {
    const struct plan *plan;
    size_t index;
    const struct setup *setup;
    const struct state *state;
    const struct clearance_view *fitted; /* the fitted setup in the same state */
    bool as_measured;                    /* the fitted state itself: no lift, nothing carried */
    enum headline headline;
    double lift_m[AXLE_COUNT], sag_m[AXLE_COUNT], radius_m[AXLE_COUNT];
    struct axle_pair body_change_m; /* tyre, lift and sag */
    struct axle_pair tyre_change_m; /* the tyre's part alone */
};

/* One view a loading state, in their order. `fitted`: the fitted setup's, NULL for itself. */
struct clearance_view *clearance_views_make(const struct plan *plan, size_t index,
                                            const struct clearance_view *fitted);
/* The fitted state, as it was measured. */
void clearance_view_measured(const struct plan *plan, struct clearance_view *out);

/* A figure of this part with the view's setup and state. */
struct figure view_figure(const struct clearance_view *view, enum quantity_id quantity,
                          double value, const char *basis);

const struct axle_suspension *suspension_of(const struct plan *plan, int axle);

/* Lift as given, or by the new spring's rate and free height; 0 where neither is named. */
double axle_lift_m(const struct plan *plan, int axle);

/* Change of the static loaded radius from the fitted tyre's. */
double radius_change_m(const struct plan *plan, size_t index, int axle);

/* Height above the ground, in the view, of a point that was measured at the fitted state. */
double height_in_view_m(const struct clearance_view *view, double height_m, double at_m);

/* Where a point lies: one of the lists of `clearance`, or the same place of an added part. */
enum point_place { POINT_AHEAD, POINT_BETWEEN, POINT_BEHIND };

typedef double (*point_measure)(const struct clearance_view *view, const struct body_point *point);

struct governing_point {
    double value;     /* the least over the points; UNKNOWN where one is, or where there is none */
    const char *item; /* NULL where it has no name */
    size_t points;
};

/* The least of a measure over the points there, measured ones and those of what is aboard; a
 * measured point that goes by the name of a removed item has gone with it. Points for which
 * `counts` (or NULL) is false are passed over. */
struct governing_point least_over_points(const struct clearance_view *view, enum point_place place,
                                         point_measure measure,
                                         bool (*counts)(const struct clearance_view *view,
                                                        const struct body_point *point));

/* "12 mm" or "0.47 in" in the user's units, rounded away from zero so that it is enough. */
const char *length_text(const struct plan *plan, double length_m);
double length_enough_m(const struct plan *plan, double length_m);

/* The pieces of the report. */
void report_body(const struct clearance_view *view, struct figures *figures);
void report_angles(const struct clearance_view *view, struct figures *figures);
void report_angles_before(const struct plan *plan, struct figures *figures);
void report_arch(const struct clearance_view *states, int axle, struct figures *figures);
void report_wheel_place(const struct plan *plan, size_t index, int axle, struct figures *figures);
void report_wheel_mounting(const struct plan *plan, size_t index, struct figures *figures);
void report_spare_wheel(const struct plan *plan, size_t index, struct figures *figures);

/* Clearance of what rides on the springs, by `ground` alone. */
double ground_change_m(const struct clearance_view *view, struct axle_pair change_m);

#endif
