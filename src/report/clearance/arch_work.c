#include "report/clearance/arch_work.h"

#include "base/known.h"
#include "compute/load.h"
#include "report/clearance/fit_limits.h"

static bool is_within(double amount_m, double most_m)
{
    return meets_limit(amount_m, LIMIT_AT_MOST, most_m);
}

static bool is_short(double room_m)
{
    return known(room_m) && !meets_limit(room_m, LIMIT_AT_LEAST, 0);
}

static double spacer_now_m(const struct wheel_arch *arch)
{
    return known_or(arch->setup->axle[arch->axle].wheel.spacer_m, 0);
}

/* What was measured was measured with the fitted tyre as it stands: a spacer there is an option. */
static bool spacer_is_allowed(const struct wheel_arch *arch, double thicker_m)
{
    const struct allowed *allowed = &arch->plan->specification->allowed;
    return !arch->setup->is_fitted &&
           is_within(spacer_now_m(arch) + thicker_m, allowed->spacer_m) &&
           fit_limits_hold(arch->plan, arch->index, arch->axle,
                           (struct fit_work){.spacer_m = thicker_m});
}

/* No state may come to stand on bump stops that it does not stand on now. */
static bool bump_stop_is_allowed(const struct wheel_arch *arch, double longer_m)
{
    const struct plan *plan = arch->plan;
    if (!is_within(longer_m, plan->specification->allowed.bump_stop_m) ||
        !fit_limits_hold(plan, arch->index, arch->axle, (struct fit_work){.bump_stop_m = longer_m}))
        return false;
    for (size_t i = 0; i < state_count(plan->specification); i++)
        if (stance_travel_left_m(&arch->states[i], arch->axle, 0) > 0 &&
            stance_travel_left_m(&arch->states[i], arch->axle, longer_m) <= 0)
            return false;
    return true;
}

static bool trim_is_allowed(const struct wheel_arch *arch, double amount_m)
{
    return is_within(amount_m, arch->plan->specification->allowed.trim_m);
}

/* How much of one kind of work a room needs; 0 where it is not short. */
static double needed_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                       enum arch_room room, double room_m, enum cure_kind kind)
{
    if (!is_short(room_m))
        return 0;
    const struct cures *cures = arch_cures(arch, tyre, room, room_m);
    return cures->offered & 1u << kind ? cures->amount[kind] : INFINITY;
}

/* Room inside is had from a spacer alone, and room at lock as well, where what a spacer takes away
 * outside and at lock is there. */
static void choose_spacer(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                          struct arch_work *out)
{
    const struct arch_rooms *rooms = &tyre->rooms;
    bool inside = is_short(rooms->inner_m);
    if (!known(arch->plan->specification->allowed.spacer_m))
        return;
    double inset = inside ? needed_m(arch, tyre, ROOM_INNER, rooms->inner_m, CURE_INSET)
                          : needed_m(arch, tyre, ROOM_LOCK, rooms->lock_m, CURE_INSET);
    bool helps = inset < 0 && isfinite(inset) && spacer_is_allowed(arch, -inset);
    out->spacer_m = helps ? -inset : UNKNOWN;
    out->spacer_open = inside && !known(inset) && spacer_is_allowed(arch, -rooms->inner_m);
    if (inside && helps)
        out->task[ROOM_INNER] = TASK_SPACER;
}

/* By trimming what is not had from a spacer anyway. */
static void choose_at_lock(const struct wheel_arch *arch, double needed_trim_m,
                           struct arch_work *out)
{
    bool spacer = known(out->spacer_m), anyway = out->task[ROOM_INNER] == TASK_SPACER;
    bool trim = trim_is_allowed(arch, needed_trim_m);
    out->task[ROOM_LOCK] = spacer && (anyway || !trim) ? TASK_SPACER
                           : trim                      ? TASK_TRIM_ARCH
                                                       : TASK_NONE;
}

static void choose(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                   struct arch_work *out)
{
    const struct arch_rooms *rooms = &tyre->rooms;
    const double room_m[ROOM_COUNT] = {[ROOM_RIDE] = rooms->ride_m,
                                       [ROOM_BUMP] = rooms->bump_m,
                                       [ROOM_OUTER] = rooms->outer_m,
                                       [ROOM_LOCK] = rooms->lock_m};
    double trim_m[ROOM_COUNT], anyway_m = 0;
    for (int room = 0; room < ROOM_COUNT; room++) {
        trim_m[room] = needed_m(arch, tyre, room, room_m[room], CURE_TRIM);
        if (is_short(room_m[room]) && trim_is_allowed(arch, trim_m[room]))
            out->task[room] = TASK_TRIM_ARCH;
    }
    choose_spacer(arch, tyre, out);
    if (is_short(rooms->lock_m))
        choose_at_lock(arch, trim_m[ROOM_LOCK], out);
    for (int room = 0; room < ROOM_COUNT; room++)
        if (room != ROOM_BUMP && out->task[room] == TASK_TRIM_ARCH)
            anyway_m = fmax(anyway_m, trim_m[room]);
    if (is_short(rooms->bump_m) && trim_m[ROOM_BUMP] > anyway_m &&
        bump_stop_is_allowed(arch, needed_m(arch, tyre, ROOM_BUMP, rooms->bump_m, CURE_BUMP_STOP)))
        out->task[ROOM_BUMP] = TASK_BUMP_STOP;
}

void arch_work_make(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                    const struct arch_work *tighter, struct arch_work *out)
{
    const struct allowed *allowed = &arch->plan->specification->allowed;
    *out = (struct arch_work){.spacer_m = UNKNOWN};
    if (known(allowed->trim_m) || known(allowed->bump_stop_m) || known(allowed->spacer_m))
        choose(arch, tyre, out);
    for (int room = 0; tighter != NULL && room < ROOM_COUNT; room++) {
        if (out->task[room] != TASK_NONE && tighter->task[room] != TASK_NONE)
            out->task[room] = tighter->task[room];
        if (tighter->task[room] == TASK_SPACER)
            out->spacer_m = tighter->spacer_m;
    }
}

/* Rounded up in the user's units, where that is still allowed. */
static double enough_of(const struct wheel_arch *arch, double exact_m,
                        bool (*is_allowed)(const struct wheel_arch *arch, double amount_m))
{
    double rounded = enough_m(arch->plan, exact_m);
    return is_allowed(arch, rounded) ? rounded : exact_m;
}

struct cure arch_cure(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                      enum arch_room room, double room_m)
{
    struct cure cure = {.task = tyre->work.task[room], .now = UNKNOWN, .then = UNKNOWN};
    double now = spacer_now_m(arch), thicker;
    if (!is_short(room_m))
        cure.task = TASK_NONE;
    switch (cure.task) {
    case TASK_BUMP_STOP:
        cure.then = enough_of(arch, needed_m(arch, tyre, room, room_m, CURE_BUMP_STOP),
                              bump_stop_is_allowed);
        break;
    case TASK_TRIM_ARCH:
        cure.then = enough_of(arch, needed_m(arch, tyre, room, room_m, CURE_TRIM), trim_is_allowed);
        break;
    case TASK_SPACER:
        thicker = enough_of(arch, tyre->work.spacer_m, spacer_is_allowed);
        if (!arch_takes_inset(arch, tyre, -thicker))
            thicker = tyre->work.spacer_m;
        cure.now = now > 0 ? now : UNKNOWN;
        cure.then = now + thicker;
        break;
    default:
        break;
    }
    return cure;
}

struct remark arch_cure_told(const struct wheel_arch *arch, const struct cure *cure)
{
    switch (cure->task) {
    case TASK_BUMP_STOP:
        return REMARK_WITH(arch->plan->arena, ADVICE_LONGER_BUMP_STOPS, say_enough(cure->then));
    case TASK_TRIM_ARCH:
        return REMARK_WITH(arch->plan->arena, ADVICE_TRIM_ARCH, say_enough(cure->then));
    case TASK_SPACER:
        return REMARK_WITH(arch->plan->arena, ADVICE_FIT_SPACER, say_enough(cure->then));
    default:
        return remark(REMARK_NONE);
    }
}
