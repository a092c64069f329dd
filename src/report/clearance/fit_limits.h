/* Limits on what lift, wheels and bump stops change, and whether work on an axle keeps to them. */
#ifndef TYRESUM_REPORT_CLEARANCE_FIT_LIMITS_H
#define TYRESUM_REPORT_CLEARANCE_FIT_LIMITS_H

#include "report/clearance/stance.h"

/* The published limits' name of the travel that is kept. */
#define TRAVEL_KEPT_KEY "suspension_travel_kept"

/* Done to an axle beside what the file says. */
struct fit_work {
    double bump_stop_m, spacer_m; /* longer, thicker by so much */
};

void report_fit_limits(const struct plan *plan, size_t index, int axle, struct figures *figures);

/* Whether the work breaks none of the limits that is not broken without it. */
bool fit_limits_hold(const struct plan *plan, size_t index, int axle, struct fit_work work);

/* What is left of the travel to bump; without any the vehicle stands on its bump stops. */
double stance_travel_left_m(const struct stance *stance, int axle, double more_bump_stop_m);

/* Travel kept beside the fitted state, at bump and at droop: at bump as lift and bump stops leave
 * it, at droop as lift does, the damper's length being what it was. UNKNOWN where no travel is
 * given. */
void travel_kept(const struct plan *plan, int axle, double more_bump_stop_m, struct figure out[2]);

#endif
