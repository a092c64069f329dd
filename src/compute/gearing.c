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

double driven_axle_ratio(int drive, struct axle_pair axle)
{
    return drive == DRIVE_FRONT ? axle.front : axle.rear;
}

double driven_circumference_m(int drive, struct axle_pair axle, double front_m, double rear_m)
{
    if (drive == DRIVE_FRONT)
        return front_m;
    bool alike = axle.front == axle.rear && front_m == rear_m;
    if (drive != DRIVE_FULL_TIME_4WD || alike)
        return rear_m;
    return axle.rear / ((axle.front / front_m + axle.rear / rear_m) / 2);
}

double effective_axle_ratio(double axle, double circumference_old_m, double circumference_new_m)
{
    return axle * (circumference_old_m / circumference_new_m);
}

double restoring_axle_ratio(double axle, double circumference_old_m, double circumference_new_m)
{
    return axle * (circumference_new_m / circumference_old_m);
}

/* A billionth: what a last bit may leave, or a register that is wider than a number. */
static const double ratio_slack = 1e-9;

double nearest_axle_choice(const struct number_list *choices, double wanted)
{
    double nearest = UNKNOWN, distance = INFINITY;
    for (size_t i = 0; i < choices->count; i++) {
        double apart = fabs(log(choices->items[i] / wanted));
        if (distance - apart > ratio_slack) {
            distance = apart;
            nearest = choices->items[i];
        }
    }
    return nearest;
}

static bool meets(double ratio, double restoring, enum axle_aim aim)
{
    double surplus = ratio / restoring - 1; /* the restoring ratio itself meets both aims */
    return aim == AIM_DRIVE_BACK ? surplus >= -ratio_slack : surplus <= ratio_slack;
}

static bool stands_before(double a, double b, double restoring, enum axle_aim aim)
{
    bool a_meets = meets(a, restoring, aim), b_meets = meets(b, restoring, aim);
    if (a_meets != b_meets)
        return a_meets;
    return fabs(log(b / restoring)) - fabs(log(a / restoring)) > ratio_slack;
}

size_t axle_choice_rank(const struct number_list *choices, size_t index, double restoring,
                        enum axle_aim aim)
{
    size_t rank = 1;
    double own = choices->items[index];
    for (size_t i = 0; i < choices->count; i++) {
        bool before = stands_before(choices->items[i], own, restoring, aim);
        bool after = stands_before(own, choices->items[i], restoring, aim);
        rank += before || (!after && i < index);
    }
    return rank;
}

bool has_gearbox(const struct drivetrain *drivetrain)
{
    return drivetrain->gears.count > 0 || drivetrain->variable.given != NULL;
}

size_t lowest_gear(const struct number_list *gears)
{
    size_t lowest = 0;
    for (size_t i = 1; i < gears->count; i++)
        if (gears->items[i] > gears->items[lowest])
            lowest = i;
    return lowest;
}

size_t highest_gear(const struct number_list *gears)
{
    size_t highest = 0;
    for (size_t i = 1; i < gears->count; i++)
        if (gears->items[i] < gears->items[highest])
            highest = i;
    return highest;
}

size_t next_gear_up(const struct number_list *gears, size_t gear)
{
    size_t next = gears->count;
    for (size_t i = 0; i < gears->count; i++)
        if (gears->items[i] < gears->items[gear] &&
            (next == gears->count || gears->items[i] > gears->items[next]))
            next = i;
    return next;
}

bool gears_fall(const struct number_list *gears)
{
    for (size_t i = 1; i < gears->count; i++)
        if (!(gears->items[i] < gears->items[i - 1]))
            return false;
    return true;
}

double circumference_mismatch(struct axle_pair axle, double front_m, double rear_m)
{
    return (axle.front / front_m) / (axle.rear / rear_m) - 1;
}

double circumference_difference_allowed(double circumference_m)
{
    return CIRCUMFERENCE_DIFFERENCE_ALLOWED_M / circumference_m;
}

double tread_difference_allowed_m(double circumference_m, double overall_diameter_m)
{
    return circumference_difference_allowed(circumference_m) * overall_diameter_m / 2;
}
