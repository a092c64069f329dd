/* Ground and body clearance, angles and wheel-arch room. Lengths in m, angles in rad, places
 * rearward from the front axle. Changes are from the fitted state: fitted tyres, unladen weight,
 * no lift. */
#ifndef TYRESUM_COMPUTE_CLEARANCE_H
#define TYRESUM_COMPUTE_CLEARANCE_H

#include "base/known.h"
#include "compute/dimensions.h"
#include "build/specification.h"

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

/* Whether a point `distance` from the axle and `height` above ground lies within the tyre's outline
 * (static loaded radius): no ramp reaches it before the tyre does. False where one is unknown. */
bool lies_within_tyre(double distance_m, double height_m, double loaded_radius_m);

/* Angle of the ramp that touches a point `distance` from the axle and `height` above ground and
 * the tyre (static loaded radius R): a = asin(R/d) - atan2(R - h, x), d^2 = x^2 + (R - h)^2
 * (by 40 CFR 86.084-2, 49 CFR 523.2). UNKNOWN where the point lies within the tyre. */
double ramp_angle_rad(double distance_m, double height_m, double loaded_radius_m);

/* Ramp breakover over a point `at` behind the front axle: the sum for both axles. */
double breakover_angle_rad(double at_m, double height_m, double wheelbase_m, double front_radius_m,
                           double rear_radius_m);

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

/* With it: the radius that a corner of the tyre sweeps about the steering axis, in plan:
 * sqrt((D/2)^2 + (S/2 + offset)^2). `offset` is the tyre's centre plane outward of the axis for the
 * outer corner, and its negative for the inner one. */
double swept_corner_radius_m(double diameter_m, double width_m, double offset_m);

/* Room at lock lost by another tyre and wheel: the larger growth of the outer and the inner
 * corner's swept radius, since either may be the one that is nearest. Negative where both shrink.
 */
struct swept_tyre {
    double diameter_m, width_m;
    double centre_m; /* centre plane outward of the steering axis, at axle height */
};
double lock_room_lost_m(struct swept_tyre before, struct swept_tyre after);

/* Where the sidewall is known to come nearest, by how far the edge that moves more goes along the
 * wheel's axis, outward or inward, since either may be the one. Negative where both withdraw; never
 * more than the bound. */
double lock_room_lost_by_sidewall_m(struct edge_move move);

/* How the rim's edges move, by rim widths alone: as tyre_edge_move(). */
struct edge_move rim_edge_move(const struct wheel *before, const struct wheel *after);

/* Scrub radius: contact centre outward of where the steering axis meets the ground,
 * centre - R tan(kingpin inclination) (Reimpell et al., The Automotive Chassis, ch. 3, from
 * memory; camber left out). */
double scrub_radius_m(double centre_m, double loaded_radius_m, double kingpin_inclination_rad);

/* Room between twin tyres: their wheels stand face to face, so that the centre planes are twice the
 * inset apart (its sign is that of the one or the other). A spacer may stand behind both, so none
 * is counted. Geometry; both tyres unloaded. */
double twin_room_m(double inset_m, double section_width_m);

/* Pitch of the body from a change of height at both axles; nose down is positive. */
double rake_rad(struct axle_pair change_m, double wheelbase_m);

/* How much a headlamp's beam rises by that, as a fraction: (front - rear) / wheelbase. UN R48
 * 6.2.6 counts inclination so. */
double beam_rise(struct axle_pair change_m, double wheelbase_m);

/* What is left of the wheel's travel to bump in a loading state:
 * travel + lift - longer bump stop - sag. */
double bump_travel_left_m(double travel_m, double lift_m, double bump_stop_change_m, double sag_m);

#endif
