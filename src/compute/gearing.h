/* Overall ratios, road speed and engine speed. Engine speed n in 1/s, circumference C in m,
 * road speed v in m/s: v = C n (1 - slip) / overall, overall = gear * transfer * axle * hub. */
#ifndef TYRESUM_COMPUTE_GEARING_H
#define TYRESUM_COMPUTE_GEARING_H

#include "text/specification.h"

double overall_ratio(double gear, double transfer, double axle, double hub_reduction);

double road_speed_mps(double circumference_m, double engine_speed_per_s, double overall,
                      double slip);
double engine_speed_per_s(double circumference_m, double road_speed, double overall, double slip);

/* The axle ratio that would give the same drive on the fitted tyre: axle * C_old / C_new. */
double effective_axle_ratio(double axle, double circumference_old_m, double circumference_new_m);

/* The axle ratio that gives the fitted tyre's drive back: axle * C_new / C_old. */
double restoring_axle_ratio(double axle, double circumference_old_m, double circumference_new_m);

/* The choice whose ratio to `wanted` is nearest to one; UNKNOWN where the list is empty. */
double nearest_axle_choice(const struct number_list *choices, double wanted);

/* Slip between coupled axles: (ratio_front/C_front)/(ratio_rear/C_rear) - 1, positive when the
 * front turns faster than it rolls. */
double circumference_mismatch(struct axle_pair axle, double front_m, double rear_m);

#endif
