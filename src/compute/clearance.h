/* Ground and body clearance, angles and wheel-arch room. Lengths in m, angles in rad, places
 * rearward from the front axle. Changes are from the fitted state: fitted tyres, unladen weight,
 * no lift. */
#ifndef TYRESUM_COMPUTE_CLEARANCE_H
#define TYRESUM_COMPUTE_CLEARANCE_H

#include "base/known.h"
#include "compute/dimensions.h"
#include "text/specification.h"

/* Axle sag in m under an added sprung load, by two wheel rates: dF g / (2 rate). */
double axle_sag_m(double added_load_kg, double wheel_rate_N_m);

/* How the tyre's edges move when wheel and tyre change; outward (outer) and inward (inner) are
 * positive. outer = (S2 - S1)/2 - (inset2 - inset1) + (spacer2 - spacer1);
 * inner = (S2 - S1)/2 + (inset2 - inset1) - (spacer2 - spacer1). */
struct edge_move {
    double inner_m, outer_m;
};
struct edge_move tyre_edge_move(double width_before_m, const struct wheel *before,
                                double width_after_m, const struct wheel *after);

/* -2 d(inset) + 2 d(spacer). */
double track_change_m(const struct wheel *before, const struct wheel *after);

/* Mounting face to the rim's inner edge, with flanges of about 25 mm together:
 * (width + flanges)/2 + inset. */
double backspacing_m(const struct wheel *wheel);

/* Angle of the ramp that touches a point `distance` from the axle and `height` above ground and
 * the tyre (static loaded radius R): a = asin(R/d) - atan2(R - h, x), d^2 = x^2 + (R - h)^2
 * (by 40 CFR 86.084-2, 49 CFR 523.2). UNKNOWN where the point lies within the tyre. */
double ramp_angle_rad(double distance_m, double height_m, double loaded_radius_m);

/* Ramp breakover over a point `at` behind the front axle: the sum for both axles. */
double breakover_angle_rad(double at_m, double height_m, double wheelbase_m,
                           double front_radius_m, double rear_radius_m);

/* A change known at both axles, at a place between or beyond them (linear). */
double change_at_m(struct axle_pair change_m, double at_m, double wheelbase_m);

/* Room above the tyre at ride height: above - dD/2 + lift - sag. */
double arch_room_at_ride_m(double above_m, double diameter_change_m, double lift_m, double sag_m);

/* Room above at full bump: above - travel - dD/2 + bump stop change. Lift does not help there. */
double arch_room_at_bump_m(double above_m, double travel_m, double diameter_change_m,
                           double bump_stop_change_m);

/* Room at lock without steering geometry falls by at most sqrt((dD/2)^2 + (edge move)^2); parts
 * that shrink count as nothing. */
double lock_room_lost_at_most_m(double diameter_change_m, struct edge_move move);

/* With it: the radius that the tyre's farther corner sweeps about the steering axis,
 * sqrt((D/2)^2 + (S/2 + |axis to centre|)^2). */
double swept_corner_radius_m(double diameter_m, double width_m, double axis_to_centre_m);

#endif
