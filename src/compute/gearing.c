#include "compute/gearing.h"

#include "base/known.h"

double overall_ratio(double gear, double transfer, double axle, double hub_reduction)
{
    return gear * transfer * axle * hub_reduction;
}

double road_speed_mps(double circumference_m, double engine_speed, double overall, double slip)
{
    return circumference_m * engine_speed * (1 - slip) / overall;
}

double engine_speed_per_s(double circumference_m, double road_speed, double overall, double slip)
{
    return road_speed * overall / (circumference_m * (1 - slip));
}

double effective_axle_ratio(double axle, double circumference_old_m, double circumference_new_m)
{
    return axle * (circumference_old_m / circumference_new_m);
}

double restoring_axle_ratio(double axle, double circumference_old_m, double circumference_new_m)
{
    return axle * (circumference_new_m / circumference_old_m);
}

double nearest_axle_choice(const struct number_list *choices, double wanted)
{
    double nearest = UNKNOWN, distance = INFINITY;
    for (size_t i = 0; i < choices->count; i++) {
        double apart = fabs(log(choices->items[i] / wanted));
        if (apart < distance) {
            distance = apart;
            nearest = choices->items[i];
        }
    }
    return nearest;
}

double circumference_mismatch(struct axle_pair axle, double front_m, double rear_m)
{
    return (axle.front / front_m) / (axle.rear / rear_m) - 1;
}
