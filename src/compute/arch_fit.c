#include "compute/arch_fit.h"

/* As findings are judged: a billionth of a metre does not count as short. */
#define SLACK_M 1e-9
/* Two changes that near to each other are one. */
#define SAME_CHANGE_M 1e-12

static bool is_short(double room_m)
{
    return known(room_m) && room_m < -SLACK_M;
}

/* How much is missing; 0 where nothing is, or where the room is not known. */
static double missing_m(double room_m)
{
    return is_short(room_m) ? -room_m : 0;
}

bool arch_fits(const struct arch_rooms *rooms)
{
    return !is_short(rooms->ride_m) && !is_short(rooms->bump_m) && !is_short(rooms->inner_m) &&
           !is_short(rooms->outer_m) && !is_short(rooms->lock_m);
}

/* The amount, where every room that it must leave is known. */
static double if_all_known(const struct arch_rooms *rooms, double amount_m)
{
    bool all = !rooms->ride_open && known(rooms->ride_m) && known(rooms->bump_m) &&
               known(rooms->inner_m) && known(rooms->outer_m) && known(rooms->lock_m);
    return all ? amount_m : UNKNOWN;
}

double bump_stop_to_fit_m(const struct arch_rooms *rooms)
{
    struct arch_rooms others = *rooms;
    others.bump_m = 0;
    return arch_fits(&others) ? if_all_known(rooms, missing_m(rooms->bump_m)) : INFINITY;
}

double lift_to_fit_m(const struct arch_rooms *rooms)
{
    struct arch_rooms others = *rooms;
    others.ride_m = 0;
    return arch_fits(&others) ? if_all_known(rooms, missing_m(rooms->ride_m)) : INFINITY;
}

double trim_to_fit_m(const struct arch_rooms *rooms)
{
    double most = fmax(fmax(missing_m(rooms->ride_m), missing_m(rooms->bump_m)),
                       fmax(missing_m(rooms->outer_m), missing_m(rooms->lock_m)));
    if (is_short(rooms->inner_m) || missing_m(rooms->lock_m) > rooms->lock_trim_m)
        return INFINITY;
    if (is_short(rooms->lock_m) && !known(rooms->lock_trim_m))
        return UNKNOWN;
    return if_all_known(rooms, most);
}

/* The inset change in [low, high] with the most room at lock. */
static double best_for_lock(double low, double high, lock_room_at lock_room, const void *data)
{
    enum { STEPS_MOST = 120 };
    for (int i = 0; i < STEPS_MOST && high - low > SAME_CHANGE_M; i++) {
        double a = low + (high - low) / 3, b = high - (high - low) / 3;
        if (lock_room(a, data) < lock_room(b, data))
            low = a;
        else
            high = b;
    }
    return (low + high) / 2;
}

/* Between a change that is short at lock and one that is not: where the room is just enough. */
static double just_enough(double short_m, double enough_m, lock_room_at lock_room, const void *data)
{
    enum { STEPS_MOST = 80 };
    for (int i = 0; i < STEPS_MOST && fabs(enough_m - short_m) > SAME_CHANGE_M; i++) {
        double middle = (short_m + enough_m) / 2;
        if (lock_room(middle, data) < 0) /* without the slack, so that what is done is enough */
            short_m = middle;
        else
            enough_m = middle;
    }
    return enough_m;
}

/* By the sides and the lock alone. */
static double inset_for_sides_m(const struct arch_rooms *rooms, lock_room_at lock_room,
                                const void *data)
{
    double most = rooms->inner_m, least = -rooms->outer_m;
    if (!known(most) || !known(least))
        return UNKNOWN;
    if (least > most + SLACK_M)
        return INFINITY;
    double nearest = fmax(least, fmin(0, most)); /* to no change at all */
    if (!known(rooms->lock_m) || !is_short(lock_room(nearest, data)))
        return nearest;
    double best = best_for_lock(least, most, lock_room, data);
    if (is_short(lock_room(best, data)))
        return INFINITY;
    return just_enough(nearest, best, lock_room, data);
}

double inset_to_fit_m(const struct arch_rooms *rooms, lock_room_at lock_room, const void *data)
{
    double inset_m = inset_for_sides_m(rooms, lock_room, data);
    if (is_short(rooms->ride_m) || is_short(rooms->bump_m) || isinf(inset_m))
        return INFINITY;
    return if_all_known(rooms, inset_m);
}
