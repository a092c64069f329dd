#include "compute/clearance.h"

#define RIM_FLANGES_M 0.025

struct edge_move tyre_edge_move(double width_before_m, const struct wheel *before,
                                double width_after_m, const struct wheel *after)
{
    double wider = (width_after_m - width_before_m) / 2;
    double inward = (after->inset_m - before->inset_m) - (after->spacer_m - before->spacer_m);
    return (struct edge_move){.inner_m = wider + inward, .outer_m = wider - inward};
}

double track_change_m(const struct wheel *before, const struct wheel *after)
{
    return 2 * (after->spacer_m - before->spacer_m) - 2 * (after->inset_m - before->inset_m);
}

double backspacing_m(const struct wheel *wheel)
{
    return (wheel->width_m + RIM_FLANGES_M) / 2 + wheel->inset_m;
}

/* Plain: the lengths of vehicles neither overflow nor vanish when squared. */
static double diagonal_m(double across_m, double up_m)
{
    return sqrt(across_m * across_m + up_m * up_m);
}

bool lies_within_tyre(double distance_m, double height_m, double loaded_radius_m)
{
    return diagonal_m(distance_m, loaded_radius_m - height_m) <= loaded_radius_m;
}

double ramp_angle_rad(double distance_m, double height_m, double loaded_radius_m)
{
    double below_axle = loaded_radius_m - height_m;
    double reach = diagonal_m(distance_m, below_axle);
    if (lies_within_tyre(distance_m, height_m, loaded_radius_m))
        return UNKNOWN;
    return asin(loaded_radius_m / reach) - atan2(below_axle, distance_m);
}

double breakover_angle_rad(double at_m, double height_m, double wheelbase_m, double front_radius_m,
                           double rear_radius_m)
{
    return ramp_angle_rad(at_m, height_m, front_radius_m) +
           ramp_angle_rad(wheelbase_m - at_m, height_m, rear_radius_m);
}

double change_at_m(struct axle_pair change_m, double at_m, double wheelbase_m)
{
    return change_m.front + (change_m.rear - change_m.front) * at_m / wheelbase_m;
}

double arch_room_at_ride_m(double above_m, double diameter_change_m, double lift_m, double sag_m)
{
    return above_m - diameter_change_m / 2 + lift_m - sag_m;
}

double arch_room_at_bump_m(double above_m, double travel_m, double diameter_change_m,
                           double bump_stop_change_m)
{
    return above_m - travel_m - diameter_change_m / 2 + bump_stop_change_m;
}

double lock_room_lost_at_most_m(double diameter_change_m, struct edge_move move)
{
    if (!known(diameter_change_m) || !known(move.inner_m) || !known(move.outer_m))
        return UNKNOWN;
    double taller = fmax(0, diameter_change_m / 2);
    double edge = fmax(0, fmax(move.inner_m, move.outer_m));
    return diagonal_m(taller, edge);
}

double swept_corner_radius_m(double diameter_m, double width_m, double offset_m)
{
    return diagonal_m(diameter_m / 2, width_m / 2 + offset_m);
}

static double corner_growth(struct swept_tyre before, struct swept_tyre after, double side)
{
    return swept_corner_radius_m(after.diameter_m, after.width_m, side * after.centre_m) -
           swept_corner_radius_m(before.diameter_m, before.width_m, side * before.centre_m);
}

double lock_room_lost_m(struct swept_tyre before, struct swept_tyre after)
{
    double outer = corner_growth(before, after, 1), inner = corner_growth(before, after, -1);
    if (!known(outer) || !known(inner))
        return UNKNOWN;
    return fmax(outer, inner);
}

double lock_room_lost_by_sidewall_m(struct edge_move move)
{
    if (!known(move.inner_m) || !known(move.outer_m))
        return UNKNOWN;
    return fmax(move.inner_m, move.outer_m);
}

struct edge_move rim_edge_move(const struct wheel *before, const struct wheel *after)
{
    return tyre_edge_move(before->width_m, before, after->width_m, after);
}

double scrub_radius_m(double centre_m, double loaded_radius_m, double kingpin_inclination_rad)
{
    return centre_m - loaded_radius_m * tan(kingpin_inclination_rad);
}

double twin_room_m(double inset_m, double section_width_m)
{
    return 2 * fabs(inset_m) - section_width_m;
}

double rake_rad(struct axle_pair change_m, double wheelbase_m)
{
    return atan((change_m.rear - change_m.front) / wheelbase_m);
}

double beam_rise(struct axle_pair change_m, double wheelbase_m)
{
    return (change_m.front - change_m.rear) / wheelbase_m;
}

double bump_travel_left_m(double travel_m, double lift_m, double bump_stop_change_m, double sag_m)
{
    return travel_m + lift_m - bump_stop_change_m - sag_m;
}
