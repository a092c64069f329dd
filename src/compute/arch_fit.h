/* The smallest single change that would make a tyre fit its wheel arch. Rooms and changes in m. */
#ifndef TYRESUM_COMPUTE_ARCH_FIT_H
#define TYRESUM_COMPUTE_ARCH_FIT_H

#include <stdbool.h>

#include "base/known.h"

/* Room left, UNKNOWN where it is not known; INFINITY where nothing can be in the way (at lock, of
 * an axle that does not steer). */
struct arch_rooms {
    double ride_m;  /* the least over the loading states in which it is known */
    bool ride_open; /* there is a state in which it is not */
    double bump_m;
    double inner_m, outer_m;
    double lock_m;
    double lock_trim_m; /* how much can be cut away there: nothing of frame or strut */
};

/* Whether nothing that is known is short. */
bool arch_fits(const struct arch_rooms *rooms);

/* Each alone makes every room zero or more, and is the smallest that does; 0 where nothing is
 * short, INFINITY where it cannot do so alone, UNKNOWN where a room that is not known decides.
 * Longer bump stops help only at bump, lift only at ride height; trimming the arch helps
 * everywhere but inside, where strut or arm stand, and at lock as far as `lock_trim_m` says. */
double bump_stop_to_fit_m(const struct arch_rooms *rooms);
double lift_to_fit_m(const struct arch_rooms *rooms);
double trim_to_fit_m(const struct arch_rooms *rooms);

/* Room at lock after a further change of inset; convex or concave is not asked of the caller: the
 * room must have one hill over the inset, as the swept radius and its bound have. */
typedef double (*lock_room_at)(double inset_change_m, const void *data);

/* More inset (positive) moves the wheel inward: room inside falls by it, room outside grows. The
 * smallest change, of either sign, with nothing short inside, outside or at lock. */
double inset_to_fit_m(const struct arch_rooms *rooms, lock_room_at lock_room, const void *data);

#endif
