#include "compute/springs.h"

#include "compute/clearance.h"
#include "compute/pull.h"

double wheel_rate_N_m(double spring_rate_N_m, double motion_ratio)
{
    return spring_rate_N_m * motion_ratio * motion_ratio;
}

double series_rate_N_m(double first_N_m, double second_N_m)
{
    return first_N_m * second_N_m / (first_N_m + second_N_m);
}

static void take_points(const struct pair_list *list, enum spring_shape shape, struct spring *out)
{
    if (list->count > RATE_POINTS_MAX)
        return;
    out->shape = shape;
    out->count = list->count;
    for (size_t i = 0; i < list->count; i++)
        out->points[i] = (struct rate_point){list->items[i].first, list->items[i].second};
}

/* With a helper: both in series until it is closed, the main spring alone after that. */
static void take_constant(const struct axle_suspension *suspension, double rate_N_m,
                          struct spring *out)
{
    if (!known(rate_N_m))
        return;
    out->shape = SPRING_CONSTANT;
    out->points[out->count++] = (struct rate_point){0, rate_N_m};
    if (!known(suspension->helper_rate_N_m) || !known(suspension->helper_closes_at_m))
        return;
    double both_N_m = series_rate_N_m(rate_N_m, suspension->helper_rate_N_m);
    out->shape = SPRING_STEPPED;
    out->count = 0;
    out->points[out->count++] =
        (struct rate_point){suspension->helper_closes_at_m - 1, both_N_m}; /* and before it */
    out->points[out->count++] = (struct rate_point){suspension->helper_closes_at_m, rate_N_m};
}

void spring_of_axle(const struct axle_suspension *suspension, struct spring *out)
{
    out->shape = SPRING_UNKNOWN;
    out->count = 0;
    if (suspension->wheel_rate_steps.count > 0)
        take_points(&suspension->wheel_rate_steps, SPRING_STEPPED, out);
    else if (suspension->wheel_rate_curve.count > 0)
        take_points(&suspension->wheel_rate_curve, SPRING_CURVED, out);
    else
        take_constant(
            suspension,
            known_or(suspension->wheel_rate_N_m,
                     wheel_rate_N_m(suspension->spring_rate_N_m, suspension->motion_ratio)),
            out);
}

/* Rate just beside a travel, on the side that the movement goes to. */
static double rate_beside(const struct spring *spring, double travel_m, bool compressing)
{
    const struct rate_point *points = spring->points;
    size_t above = 0; /* first point beyond the travel */
    while (above < spring->count &&
           (compressing ? points[above].travel_m <= travel_m : points[above].travel_m < travel_m))
        above++;
    if (above == 0)
        return points[0].rate_N_m;
    if (spring->shape != SPRING_CURVED || above == spring->count)
        return points[above - 1].rate_N_m;
    const struct rate_point *from = &points[above - 1], *to = &points[above];
    return from->rate_N_m + (to->rate_N_m - from->rate_N_m) * (travel_m - from->travel_m) /
                                (to->travel_m - from->travel_m);
}

/* The next point in the direction of the movement; INFINITY away where there is none. */
static double next_point(const struct spring *spring, double travel_m, bool compressing)
{
    double next = compressing ? INFINITY : -INFINITY;
    for (size_t i = 0; i < spring->count; i++) {
        double at = spring->points[i].travel_m;
        if (compressing && at > travel_m)
            next = fmin(next, at);
        else if (!compressing && at < travel_m)
            next = fmax(next, at);
    }
    return next;
}

/* Travel within a piece in which the rate goes linearly from `rate_N_m` with `slope` per metre:
 * the positive root of slope d^2 / 2 + rate d = force. */
static double travel_in_piece(double rate_N_m, double slope, double force_N)
{
    return 2 * force_N / (rate_N_m + sqrt(rate_N_m * rate_N_m + 2 * slope * force_N));
}

double spring_travel_m(const struct spring *spring, double added_N)
{
    if (spring->shape == SPRING_UNKNOWN || !known(added_N))
        return UNKNOWN;
    if (spring->shape == SPRING_CONSTANT)
        return added_N / spring->points[0].rate_N_m;
    bool compressing = added_N > 0;
    double sign = compressing ? 1 : -1, left = fabs(added_N), travel = 0;
    for (size_t piece = 0; piece <= spring->count; piece++) {
        double next = next_point(spring, travel, compressing), length = fabs(next - travel);
        double rate = rate_beside(spring, travel, compressing);
        double rate_there = isinf(length) ? rate : rate_beside(spring, next, !compressing);
        double takes = length * (rate + rate_there) / 2;
        if (left <= takes) {
            double slope = isinf(length) ? 0 : (rate_there - rate) / length;
            return travel + sign * travel_in_piece(rate, slope, left);
        }
        left -= takes;
        travel = next;
    }
    return UNKNOWN;
}

double spring_force_N(const struct spring *spring, double travel_m)
{
    if (spring->shape == SPRING_UNKNOWN || !known(travel_m))
        return UNKNOWN;
    if (spring->shape == SPRING_CONSTANT)
        return travel_m * spring->points[0].rate_N_m;
    bool compressing = travel_m > 0;
    double at = 0, force_N = 0;
    while (at != travel_m) {
        double next = next_point(spring, at, compressing);
        double to = compressing ? fmin(next, travel_m) : fmax(next, travel_m);
        force_N += (to - at) *
                   (rate_beside(spring, at, compressing) + rate_beside(spring, to, !compressing)) /
                   2;
        at = to;
    }
    return force_N;
}

double ride_height_gained_m(double free_height_change_m, double sprung_weight_N,
                            double rate_before_N_m, double rate_after_N_m)
{
    return free_height_change_m + sprung_weight_N / rate_before_N_m -
           sprung_weight_N / rate_after_N_m;
}

double axle_lift_m(const struct specification *specification, int axle)
{
    const struct axle_suspension *suspension = suspension_at(&specification->suspension, axle);
    if (!known(suspension->free_height_change_m))
        return known_or(suspension->lift_m, 0);
    struct spring spring;
    spring_of_axle(suspension, &spring);
    double sprung_kg =
        of_axle(specification->vehicle.unladen_kg, axle) - known_or(suspension->unsprung_kg, 0);
    double rate = spring.shape == SPRING_CONSTANT ? spring.points[0].rate_N_m : UNKNOWN;
    return ride_height_gained_m(suspension->free_height_change_m, sprung_kg * GRAVITY_M_S2 / 2,
                                suspension->wheel_rate_before_N_m, rate);
}

/* What takes so much travel of both springs of an axle. */
static double load_over_kg(const struct axle_suspension *suspension, double travel_m)
{
    struct spring spring;
    spring_of_axle(suspension, &spring);
    return spring_force_N(&spring, travel_m) * 2 / GRAVITY_M_S2;
}

struct constant_load constant_load_keeping(const struct specification *specification, int axle,
                                           double share)
{
    const struct axle_suspension *suspension = suspension_at(&specification->suspension, axle);
    double lift = axle_lift_m(specification, axle);
    double to_bump = bump_travel_left_m((1 - share) * suspension->travel_to_bump_m, lift,
                                        known_or(suspension->bump_stop_change_m, 0), 0);
    return (struct constant_load){
        load_over_kg(suspension, lift - (1 - share) * suspension->travel_to_droop_m),
        load_over_kg(suspension, to_bump)};
}

double load_to_bump_kg(const struct specification *specification, int axle)
{
    if (!known(suspension_at(&specification->suspension, axle)->travel_to_bump_m))
        return INFINITY;
    return constant_load_keeping(specification, axle, 0).to_kg;
}

static void replace_spring(struct axle_suspension *with, const struct spring_choice *choice)
{
    with->wheel_rate_N_m = choice->wheel_rate_N_m;
    with->wheel_rate_steps.count = with->wheel_rate_curve.count = 0;
    with->spring_rate_N_m = with->motion_ratio = UNKNOWN;
    with->helper_rate_N_m = with->helper_closes_at_m = UNKNOWN;
    with->lift_m = choice->lift_m;
    with->free_height_change_m = choice->free_height_change_m;
}

void fit_spring(struct suspension *suspension, int axle, const struct spring_choice *choice,
                double more_m)
{
    struct axle_suspension *with = axle == AXLE_FRONT ? &suspension->front : &suspension->rear;
    if (choice != NULL)
        replace_spring(with, choice);
    if (more_m == 0)
        return;
    if (known(with->free_height_change_m)) /* a spacer below the spring stands alike */
        with->free_height_change_m += more_m;
    else
        with->lift_m = known_or(with->lift_m, 0) + more_m;
}
