#include "compute/pull.h"

#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"

#define FOOT_M 0.3048

/* Rolling resistance by the formula: f = ROLLING_STILL + ROLLING_PER_SPEED v. */
#define ROLLING_STILL 0.01
#define ROLLING_PER_SPEED (0.01 / (147 * FOOT_M))

double torque_at_Nm(const struct pair_list *curve, double engine_speed)
{
    const struct value_pair *points = curve->items;
    for (size_t i = 0; i < curve->count; i++) {
        if (engine_speed == points[i].first)
            return points[i].second;
        if (i == 0 || engine_speed > points[i].first || engine_speed < points[i - 1].first)
            continue;
        double share =
            (engine_speed - points[i - 1].first) / (points[i].first - points[i - 1].first);
        return points[i - 1].second + share * (points[i].second - points[i - 1].second);
    }
    return UNKNOWN;
}

double peak_torque_per_s(const struct pair_list *curve, double limit_per_s)
{
    double peak = curve->items[0].first, most = curve->items[0].second;
    for (size_t i = 1; i < curve->count; i++) {
        double n = lower_of(curve->items[i].first, limit_per_s);
        double torque = torque_at_Nm(curve, n);
        if (torque > most) {
            most = torque;
            peak = n;
        }
        if (n < curve->items[i].first)
            break;
    }
    return peak;
}

double wheel_torque_Nm(double torque_Nm, double overall, double efficiency)
{
    return torque_Nm * overall * efficiency;
}

double tractive_force_N(double wheel_torque, double circumference_m)
{
    return wheel_torque * 2 * PI / circumference_m;
}

double air_factor(double density_kg_m3, double coefficient, double area_m2)
{
    return density_kg_m3 * coefficient * area_m2 / 2;
}

double rolling_coefficient(double given, double speed_mps)
{
    return known_or(given, ROLLING_STILL + ROLLING_PER_SPEED * speed_mps);
}

static double air_resistance_N(const struct puller *puller, double speed_mps)
{
    return puller->air_N_s2_m2 * speed_mps * speed_mps;
}

/* Where grip and not the engine holds: (grip/W - f) cos theta - sin theta = A/W. */
static struct climb climb_on_grip(const struct puller *puller, double air_share, double rolling)
{
    struct climb climb = {UNKNOWN, CLIMB_GRIP_UNKNOWN};
    if (!known(puller->grip_N))
        return climb;
    double net = puller->grip_N / puller->weight_N - rolling;
    climb.limit = CLIMB_GRIP;
    double over = air_share / sqrt(1 + net * net);
    if (fabs(over) < 1)
        climb.grade = tan(atan(net) - asin(over));
    return climb;
}

struct climb grade_climbed(const struct puller *puller, double force_N, double speed_mps)
{
    struct climb climb = {UNKNOWN, CLIMB_ENGINE};
    double weight = puller->weight_N, air = air_resistance_N(puller, speed_mps);
    double rolling = rolling_coefficient(puller->rolling, speed_mps);
    double share = (force_N - air) / weight, most = sqrt(1 + rolling * rolling);
    if (!known(share) || !known(rolling) || share <= -most)
        return climb;
    if (share >= most)
        return climb_on_grip(puller, air / weight, rolling);
    double slope = asin(share / most) - atan(rolling);
    if (known(puller->grip_N) && force_N > puller->grip_N * cos(slope))
        return climb_on_grip(puller, air / weight, rolling);
    climb.grade = tan(slope);
    return climb;
}

double resistance_N(const struct puller *puller, double speed_mps, double grade)
{
    double slope = atan(grade);
    double rolling = rolling_coefficient(puller->rolling, speed_mps);
    return air_resistance_N(puller, speed_mps) +
           puller->weight_N * (rolling * cos(slope) + sin(slope));
}

/* Pull less resistance on a piece of the curve, a v^2 + b v + c: torque is straight there, rolling
 * resistance at most linear, air resistance square. */
struct surplus {
    double a, b, c;
};

static struct surplus surplus_of(const struct puller *puller, double overall, double grade,
                                 const struct value_pair *from, const struct value_pair *to)
{
    double slope = atan(grade), weight = puller->weight_N;
    double rise =
        to->first > from->first ? (to->second - from->second) / (to->first - from->first) : 0;
    double start = from->second - rise * from->first; /* T = start + rise n */
    double per_torque =
        tractive_force_N(wheel_torque_Nm(1, overall, puller->efficiency), puller->circumference_m);
    double per_speed = engine_speed_per_s(puller->circumference_m, 1, overall, puller->slip);
    double rolling = known_or(puller->rolling, ROLLING_STILL);
    double rolling_rise = known(puller->rolling) ? 0 : ROLLING_PER_SPEED;
    return (struct surplus){
        .a = -puller->air_N_s2_m2,
        .b = per_torque * rise * per_speed - weight * rolling_rise * cos(slope),
        .c = per_torque * start - weight * (rolling * cos(slope) + sin(slope)),
    };
}

static double surplus_at(const struct surplus *surplus, double v)
{
    return (surplus->a * v + surplus->b) * v + surplus->c;
}

/* The larger root in [low, high], or 0. The parabola opens downward: where it is negative at
 * `high` and positive anywhere in between, its larger root is the end of that. */
static double last_root(const struct surplus *s, double low, double high)
{
    double root = UNKNOWN;
    if (s->a == 0)
        root = s->b == 0 ? UNKNOWN : -s->c / s->b;
    else if (s->b * s->b >= 4 * s->a * s->c)
        root = (-s->b - sqrt(s->b * s->b - 4 * s->a * s->c)) / (2 * s->a);
    return root >= low && root <= high ? root : 0;
}

/* The speed above which grip no longer carries the resistance: what resists grows with speed. */
static double grip_speed_mps(const struct puller *puller, double grade)
{
    if (!known(puller->grip_N))
        return INFINITY;
    double slope = atan(grade), weight = puller->weight_N;
    double rolling_rise = known(puller->rolling) ? 0 : ROLLING_PER_SPEED;
    double rolling = known_or(puller->rolling, ROLLING_STILL);
    double grip = puller->grip_N * cos(slope);
    double at_rest = weight * (rolling * cos(slope) + sin(slope));
    const struct surplus left = {
        .a = -puller->air_N_s2_m2,
        .b = -weight * rolling_rise * cos(slope),
        .c = grip - at_rest,
    };
    if (clearly_above(at_rest, grip)) /* just enough is enough, whatever the last bit says */
        return 0;
    return left.a == 0 && left.b == 0 ? INFINITY : last_root(&left, 0, INFINITY);
}

static double end_of_curve_per_s(const struct puller *puller)
{
    return lower_of(puller->torque->items[puller->torque->count - 1].first, puller->limit_per_s);
}

double speed_held_mps(const struct puller *puller, double overall, double grade)
{
    const struct pair_list *curve = puller->torque;
    if (!known(puller->weight_N) || !known(overall) || !known(puller->circumference_m))
        return UNKNOWN;
    double per_turn = road_speed_mps(puller->circumference_m, 1, overall, puller->slip);
    double top = lower_of(end_of_curve_per_s(puller) * per_turn, grip_speed_mps(puller, grade));
    for (size_t i = curve->count; i-- > 0;) {
        const struct value_pair *to = &curve->items[i], *from = i > 0 ? to - 1 : to;
        double low = from->first * per_turn, high = lower_of(to->first * per_turn, top);
        if (high < low)
            continue;
        struct surplus surplus = surplus_of(puller, overall, grade, from, to);
        if (surplus_at(&surplus, high) >= 0)
            return high;
        double held = last_root(&surplus, low, high);
        if (held > 0)
            return held;
    }
    return 0;
}

/* Power of the curve at n: torque is straight between points, so that on a piece the most power is
 * at an end or where d(n T)/dn = 0. */
static double most_power_W(const struct puller *puller, double from_per_s, double to_per_s)
{
    const struct pair_list *curve = puller->torque;
    double most = UNKNOWN;
    double from = higher_of(from_per_s, curve->items[0].first);
    double to = lower_of(to_per_s, end_of_curve_per_s(puller));
    if (from > to)
        return UNKNOWN;
    for (size_t i = 0; i < curve->count; i++) {
        const struct value_pair *point = &curve->items[i];
        double tries[] = {from, to, point->first, UNKNOWN};
        if (i > 0) {
            double rise = (point->second - point[-1].second) / (point->first - point[-1].first);
            tries[3] = rise < 0 ? (point->second - rise * point->first) / (-2 * rise) : UNKNOWN;
        }
        for (size_t j = 0; j < sizeof tries / sizeof tries[0]; j++)
            if (tries[j] >= from && tries[j] <= to)
                most = higher_of(most, 2 * PI * tries[j] * torque_at_Nm(curve, tries[j]));
    }
    return most;
}

static bool holds_variable(const struct puller *puller, double v, double lowest, double highest,
                           double grade)
{
    double from = engine_speed_per_s(puller->circumference_m, v, highest, puller->slip);
    double to = engine_speed_per_s(puller->circumference_m, v, lowest, puller->slip);
    double force = most_power_W(puller, from, to) * puller->efficiency * (1 - puller->slip) / v;
    if (known(puller->grip_N))
        force = known(force) ? lower_of(force, puller->grip_N * cos(atan(grade))) : UNKNOWN;
    return known(force) && !clearly_above(resistance_N(puller, v, grade), force);
}

/* Between the ends of the range: downward in steps, then by halving. */
static double held_within_range_mps(const struct puller *puller, double lowest, double highest,
                                    double grade)
{
    enum { STEPS = 512, HALVINGS = 60 };
    double top =
        road_speed_mps(puller->circumference_m, end_of_curve_per_s(puller), highest, puller->slip);
    double bottom = road_speed_mps(puller->circumference_m, puller->torque->items[0].first, lowest,
                                   puller->slip);
    double step = (top - bottom) / STEPS, high = top, low = top;
    int tries = 0;
    while (!holds_variable(puller, low, lowest, highest, grade)) {
        if (tries++ == STEPS)
            return 0;
        high = low;
        low = top - tries * step;
    }
    for (int i = 0; i < HALVINGS && high > low; i++) {
        double middle = (low + high) / 2;
        if (holds_variable(puller, middle, lowest, highest, grade))
            low = middle;
        else
            high = middle;
    }
    return low;
}

/* Where the range keeps the engine below its most power, the lowest gear pulls most, and where it
 * keeps it above, the highest: both ends are exact. */
double speed_held_variable_mps(const struct puller *puller, double lowest, double highest,
                               double grade)
{
    if (!known(puller->weight_N) || !known(lowest) || !known(puller->circumference_m))
        return UNKNOWN;
    double ends =
        higher_of(speed_held_mps(puller, lowest, grade), speed_held_mps(puller, highest, grade));
    return higher_of(ends, held_within_range_mps(puller, lowest, highest, grade));
}

double rotating_mass_kg(double inertia_kg_m2, double circumference_m)
{
    double per_metre = 2 * PI / circumference_m;
    return inertia_kg_m2 * per_metre * per_metre;
}

double wheel_inertia_kg_m2(double mass_kg, double overall_diameter_m)
{
    double gyration_m = 0.7 * overall_diameter_m / 2;
    return mass_kg * gyration_m * gyration_m;
}

double acceleration_mps2(const struct puller *puller, double force_N, double speed_mps,
                         double rotating_kg)
{
    double force = known(force_N) ? lower_of(force_N, puller->grip_N) : UNKNOWN;
    double mass = puller->weight_N / GRAVITY_M_S2 + rotating_kg;
    return (force - resistance_N(puller, speed_mps, 0)) / mass;
}
