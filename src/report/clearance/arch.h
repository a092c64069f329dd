/* One wheel arch with one setup: the tyre in it, and the room that is left. */
#ifndef TYRESUM_REPORT_CLEARANCE_ARCH_H
#define TYRESUM_REPORT_CLEARANCE_ARCH_H

#include "compute/arch_fit.h"
#include "compute/clearance.h"
#include "report/clearance/stance.h"
#include "report/judge.h"

struct wheel_arch {
    const struct plan *plan;
    size_t index;
    int axle;
    const struct setup *setup;
    const struct stance *states; /* one a loading state */
    const struct arch *measured;
    const struct axle_suspension *suspension;
    struct figures *figures;
};

/* Where room is measured. */
enum arch_room { ROOM_RIDE, ROOM_BUMP, ROOM_INNER, ROOM_OUTER, ROOM_LOCK, ROOM_COUNT };

/* The work that meets each room that is short, as far as the file allows it. */
struct arch_work {
    enum task_id task[ROOM_COUNT];
    double spacer_m;  /* thicker by so much; UNKNOWN: none helps */
    bool spacer_open; /* a room that is not known says whether one would */
};

/* A tyre in the arch, beside the fitted one that was measured: the nominal one, or the largest
 * that the standard allows, which is judged; without or with snow chains. */
struct arch_tyre {
    bool largest, with_chains;
    double chains_m;
    double diameter_change_m;
    struct edge_move move;
    struct swept_tyre before, after;
    struct arch_rooms rooms;
    struct arch_work work; /* of the largest */
};

void arch_tyre_make(const struct wheel_arch *arch, bool largest, bool with_chains,
                    struct arch_tyre *out);

/* Room above at ride height in one loading state. */
double arch_ride_room_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                        const struct stance *state);
/* Room at lock, after a further change of inset. INFINITY at the rear axle, which does not steer.
 */
double arch_lock_room_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                        double inset_change_m);

/* How far off the measured room at lock may be: less than that is no room. */
double arch_lock_doubt_m(const struct wheel_arch *arch);

/* What the room at lock goes by: the geometry of what comes nearest, where the file says which part
 * of the tyre that is, and otherwise the bound. */
enum lock_rule { LOCK_BY_BOUND, LOCK_BY_TREAD, LOCK_BY_SIDEWALL };
enum lock_rule arch_lock_rule(const struct wheel_arch *arch);

/* What a room hangs on: whether it is known, and the first thing to ask for where it is not. */
struct need arch_room_need(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                           enum arch_room room, double room_m);

/* What would make a room that is short fit, each change by itself; `wanted`: bits of the kinds that
 * are read. */
const struct cures *arch_cures(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                               enum arch_room room, double room_m, unsigned wanted);

/* In the user's units, rounded away from zero so that it is enough. */
double enough_m(const struct plan *plan, double length_m);

/* Whether nothing is short inside, outside or at lock after a further change of inset. */
bool arch_takes_inset(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                      double inset_change_m);

/* Where the arch is too small: the smallest single change of each kind that makes it fit. */
void report_arch_fit(const struct wheel_arch *arch, const struct arch_tyre *tyre);

/* Sets the tyre's work. A longer bump stop goes before trimming, which goes before a spacer; what
 * is to be trimmed for one room gives all others as much, and what a spacer does for the room
 * inside it does at lock as well. `tighter`: the work for a tyre that leaves less room all round,
 * which is done anyway; or NULL. */
void arch_work_make(const struct wheel_arch *arch, const struct arch_work *tighter,
                    struct arch_tyre *tyre);

/* What cures a room that is short, with the least amount that does, rounded up where that is
 * allowed; and what to say of it. TASK_NONE where no work does. */
struct cure arch_cure(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                      enum arch_room room, double room_m);
struct remark arch_cure_told(const struct wheel_arch *arch, const struct cure *cure);

#endif
