/* Springs at the wheel: constant, stepped and progressive. Travel in m from the unladen ride
 * height (compression positive), rates in N/m, forces in N at one wheel. */
#ifndef TYRESUM_COMPUTE_SPRINGS_H
#define TYRESUM_COMPUTE_SPRINGS_H

#include <stdbool.h>
#include <stddef.h>

#include "base/known.h"
#include "build/specification.h"

struct rate_point {
    double travel_m, rate_N_m;
};

enum spring_shape {
    SPRING_UNKNOWN,
    SPRING_CONSTANT, /* points[0]'s rate */
    SPRING_STEPPED,  /* each rate holds from its travel on; the first one before it too */
    SPRING_CURVED    /* linear between the points, constant beyond them */
};

struct spring {
    enum spring_shape shape;
    struct rate_point points[RATE_POINTS_MAX]; /* rising in travel, rates above zero */
    size_t count;
};

/* Wheel rate = spring rate x (spring travel / wheel travel)^2 (Barton and Fieldhouse, Automotive
 * Chassis Engineering, eq. 3.33). */
double wheel_rate_N_m(double spring_rate_N_m, double motion_ratio);

/* Two springs in series: k1 k2 / (k1 + k2). */
double series_rate_N_m(double first_N_m, double second_N_m);

/* The spring that a build file describes; at most RATE_POINTS_MAX points, which
 * the rules of the file see to. */
void spring_of_axle(const struct axle_suspension *suspension, struct spring *out);

/* Travel under an added force (negative: taken off), from the unladen ride height. The area under
 * the rate is the force; each piece is solved exactly. UNKNOWN where the spring is. */
double spring_travel_m(const struct spring *spring, double added_N);

/* The force that takes: what is added at one wheel. */
double spring_force_N(const struct spring *spring, double travel_m);

/* Ride height gained by another spring: what it stands longer unloaded, and what each of the two
 * gives under the same sprung weight: change + W/k_before - W/k_after. */
double ride_height_gained_m(double free_height_change_m, double sprung_weight_N,
                            double rate_before_N_m, double rate_after_N_m);

/* Lift as given, or by the new spring's rate and free height; 0 where neither is named. */
double axle_lift_m(const struct specification *specification, int axle);

/* What may come on an axle above unladen until it stands on its bump stops. INFINITY where no
 * travel to them is given, UNKNOWN where the springs are not known. */
double load_to_bump_kg(const struct specification *specification, int axle);

/* What an axle may always carry above unladen, so that a share of the travel to bump and to droop
 * that the fitted state has is kept under it: from below nothing where what is carried behind
 * lifts the front; UNKNOWN where the springs or the travel are. */
struct constant_load {
    double from_kg, to_kg;
};
struct constant_load constant_load_keeping(const struct specification *specification, int axle,
                                           double share);

/* Puts another spring under an axle instead of the one that is fitted, NULL: none, and more height
 * above what the springs give. */
void fit_spring(struct suspension *suspension, int axle, const struct spring_choice *choice,
                double more_m);

#endif
