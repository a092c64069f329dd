/* Overall ratios, road speed and engine speed. Engine speed n in 1/s, circumference C in m,
 * road speed v in m/s: v = C n (1 - slip) / overall, overall = gear * transfer * axle * hub. */
#ifndef TYRESUM_COMPUTE_GEARING_H
#define TYRESUM_COMPUTE_GEARING_H

#include "build/specification.h"

double overall_ratio(double gear, double transfer, double axle, double hub_reduction);

double road_speed_mps(double circumference_m, double engine_speed_per_s, double overall,
                      double slip);
double engine_speed_per_s(double circumference_m, double road_speed, double overall, double slip);

/* The axle ratio that counts for a drive (enum drive; CHOICE_NONE counts as rear): the driven
 * axle's, and the rear one where all wheels are driven. */
double driven_axle_ratio(int drive, struct axle_pair axle);

/* The circumference that goes with it. With full-time drive the centre differential's cage turns
 * at the mean of its two shafts (a symmetric differential is taken): C = ratio / mean(ratio_front
 * / C_front, ratio_rear / C_rear), which is C itself where both axles are alike. */
double driven_circumference_m(int drive, struct axle_pair axle, double front_m, double rear_m);

/* The axle ratio that would give the same drive on the fitted tyre: axle * C_old / C_new. */
double effective_axle_ratio(double axle, double circumference_old_m, double circumference_new_m);

/* The axle ratio that gives the fitted tyre's drive back: axle * C_new / C_old. */
double restoring_axle_ratio(double axle, double circumference_old_m, double circumference_new_m);

/* The choice whose ratio to `wanted` is nearest to one; UNKNOWN where the list is empty. */
double nearest_axle_choice(const struct number_list *choices, double wanted);

/* What an axle ratio is chosen for: pull of the fitted tyre or more, or its engine speed at a
 * road speed or less. */
enum axle_aim { AIM_DRIVE_BACK, AIM_CRUISE_BACK };

/* Rank from 1 of choices->items[index] among the choices. Those that meet the aim come first;
 * of two that both do, or both do not, the one nearer in ratio to `restoring`. Equal ones keep
 * their order. */
size_t axle_choice_rank(const struct number_list *choices, size_t index, double restoring,
                        enum axle_aim aim);

/* Whether the drivetrain has more than an axle: gears, or a range of them. */
bool has_gearbox(const struct drivetrain *drivetrain);

/* Indices in a list of gears, in whatever order it stands. The list is not empty. */
size_t lowest_gear(const struct number_list *gears);  /* the largest ratio */
size_t highest_gear(const struct number_list *gears); /* the smallest ratio */
/* The next gear up: the largest ratio below that gear's; gears->count where there is none. */
size_t next_gear_up(const struct number_list *gears, size_t gear);
bool gears_fall(const struct number_list *gears); /* each ratio below the one before */

/* Slip between coupled axles: (ratio_front/C_front)/(ratio_rear/C_rear) - 1, positive when the
 * front turns faster than it rolls. */
double circumference_mismatch(struct axle_pair axle, double front_m, double rear_m);

/* How far two circumferences may differ where axles are coupled: 1/4 in, as handbooks quote
 * (common practice, no source). As a share of the circumference; and as tread depth between two
 * tyres, by the rule above. */
#define CIRCUMFERENCE_DIFFERENCE_ALLOWED_M (0.25 * 0.0254)
double circumference_difference_allowed(double circumference_m);
double tread_difference_allowed_m(double circumference_m, double overall_diameter_m);

#endif
