/* Work that the file allows in a wheel arch, and which of it meets each room that is short. */
#include "report/clearance/arch.h"

#include "base/known.h"
#include "compute/load.h"
#include "output/number.h"
#include "report/clearance/fit_limits.h"

static bool is_within(double amount_m, double most_m)
{
    return meets_limit(amount_m, LIMIT_AT_MOST, most_m);
}

/* What a list of work can say, and a shop do: to a tenth of a millimetre, and enough. */
static double doable_m(double amount_m)
{
    return round_up_to_step(amount_m, 1e-4);
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
static bool bump_stop_is_allowed(const struct wheel_arch *arch, double needed_m)
{
    const struct plan *plan = arch->plan;
    double longer_m = doable_m(needed_m);
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
    return is_within(doable_m(amount_m), arch->plan->specification->allowed.trim_m);
}

/* Short, or at lock not surely there. */
static bool lacks(const struct wheel_arch *arch, enum arch_room room, double room_m)
{
    return is_short(room == ROOM_LOCK ? room_m - arch_lock_doubt_m(arch) : room_m);
}

/* How much of one kind of work a room needs; 0 where it lacks nothing. */
static double needed_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                       enum arch_room room, double room_m, enum cure_kind kind)
{
    if (!lacks(arch, room, room_m))
        return 0;
    const struct cures *cures = arch_cures(arch, tyre, room, room_m, 1u << kind);
    return (cures->offered & 1u << kind) ? cures->amount[kind] : INFINITY;
}

/* What a spacer leaves of a room outside or at lock. */
static double beside_spacer_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                              enum arch_room room, double thicker_m)
{
    return room == ROOM_OUTER ? tyre->rooms.outer_m - thicker_m
                              : arch_lock_room_m(arch, tyre, -thicker_m);
}

/* Whether that is enough, or trimming makes it so. What is not short as it stands must not become
 * so: no finding would then ask for the trimming. */
static enum answer stays_free(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                              enum arch_room room, double thicker_m)
{
    double now = room == ROOM_OUTER ? tyre->rooms.outer_m : tyre->rooms.lock_m;
    double then = beside_spacer_m(arch, tyre, room, thicker_m);
    if (is_short(now))
        return answer_of(true, trim_is_allowed(arch, needed_m(arch, tyre, room, then, CURE_TRIM)));
    return answer_of(known(then), !lacks(arch, room, then));
}

static enum answer helps_inside(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                                double thicker_m)
{
    enum answer outer = stays_free(arch, tyre, ROOM_OUTER, thicker_m);
    enum answer lock = stays_free(arch, tyre, ROOM_LOCK, thicker_m);
    if (outer == ANSWER_NO || lock == ANSWER_NO || !spacer_is_allowed(arch, thicker_m))
        return ANSWER_NO;
    return outer == ANSWER_YES ? lock : outer;
}

/* Room inside is had from a spacer alone; outside and at lock trimming gives what that takes. */
static void choose_inside(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                          struct arch_work *out)
{
    const struct arch_rooms *rooms = &tyre->rooms;
    double thicker = doable_m(-rooms->inner_m), rounded = enough_m(arch->plan, thicker);
    enum answer helps = helps_inside(arch, tyre, thicker);
    out->spacer_open = helps == ANSWER_UNKNOWN;
    if (helps != ANSWER_YES)
        return;
    out->spacer_m = helps_inside(arch, tyre, rounded) == ANSWER_YES ? rounded : thicker;
    out->task[ROOM_INNER] = TASK_SPACER;
    for (enum arch_room room = ROOM_OUTER; room <= ROOM_LOCK; room++)
        if (is_short(room == ROOM_OUTER ? rooms->outer_m : rooms->lock_m))
            out->task[room] = lacks(arch, room, beside_spacer_m(arch, tyre, room, out->spacer_m))
                                  ? TASK_TRIM_ARCH
                                  : TASK_SPACER;
}

static bool serves_alone(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                         double thicker_m)
{
    return spacer_is_allowed(arch, thicker_m) && arch_takes_inset(arch, tyre, -thicker_m);
}

/* A spacer that serves the sides and the lock alone. */
static void choose_spacer(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                          struct arch_work *out)
{
    const struct arch_rooms *rooms = &tyre->rooms;
    bool inside = is_short(rooms->inner_m);
    double inset = inside ? needed_m(arch, tyre, ROOM_INNER, rooms->inner_m, CURE_INSET)
                          : needed_m(arch, tyre, ROOM_LOCK, rooms->lock_m, CURE_INSET);
    double thicker = doable_m(-inset), rounded = enough_m(arch->plan, thicker);
    if (inset < 0 && isfinite(inset) && serves_alone(arch, tyre, thicker)) {
        out->spacer_m = serves_alone(arch, tyre, rounded) ? rounded : thicker;
        out->task[ROOM_INNER] = inside ? TASK_SPACER : TASK_NONE;
        if (is_short(rooms->lock_m) && (inside || out->task[ROOM_LOCK] == TASK_NONE))
            out->task[ROOM_LOCK] = TASK_SPACER;
    } else if (inside) {
        choose_inside(arch, tyre, out);
    }
}

/* A room as it will be when a spacer is fitted anyway. */
static double room_to_trim_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                             enum arch_room room, double room_m)
{
    bool moved = tyre->work.task[ROOM_INNER] == TASK_SPACER &&
                 (room == ROOM_OUTER || room == ROOM_LOCK) && is_short(room_m);
    return moved ? beside_spacer_m(arch, tyre, room, tyre->work.spacer_m) : room_m;
}

static double trim_needed_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                            enum arch_room room, double room_m)
{
    return needed_m(arch, tyre, room, room_to_trim_m(arch, tyre, room, room_m), CURE_TRIM);
}

/* Rounded up in the user's units, where that is still allowed. */
static double enough_of(const struct wheel_arch *arch, double exact_m,
                        bool (*is_allowed)(const struct wheel_arch *arch, double amount_m))
{
    double rounded = enough_m(arch->plan, exact_m);
    return is_allowed(arch, rounded) ? rounded : doable_m(exact_m);
}

/* Trimming first, a spacer where it does more or better, a bump stop where nothing is trimmed by as
 * much anyway. */
static void choose(const struct wheel_arch *arch, struct arch_tyre *tyre)
{
    const struct arch_rooms *rooms = &tyre->rooms;
    const double room_m[ROOM_COUNT] = {[ROOM_RIDE] = rooms->ride_m,
                                       [ROOM_BUMP] = rooms->bump_m,
                                       [ROOM_OUTER] = rooms->outer_m,
                                       [ROOM_LOCK] = rooms->lock_m};
    struct arch_work *work = &tyre->work;
    double anyway_m = 0, bump_m = trim_needed_m(arch, tyre, ROOM_BUMP, rooms->bump_m);
    for (int room = 0; room < ROOM_COUNT; room++)
        if (is_short(room_m[room]) &&
            trim_is_allowed(arch, trim_needed_m(arch, tyre, room, room_m[room])))
            work->task[room] = TASK_TRIM_ARCH;
    if (known(arch->plan->specification->allowed.spacer_m))
        choose_spacer(arch, tyre, work);
    for (int room = 0; room < ROOM_COUNT; room++)
        if (room != ROOM_BUMP && work->task[room] == TASK_TRIM_ARCH)
            anyway_m = fmax(anyway_m, enough_of(arch, trim_needed_m(arch, tyre, room, room_m[room]),
                                                trim_is_allowed));
    if (is_short(rooms->bump_m) && bump_m > anyway_m &&
        bump_stop_is_allowed(arch, needed_m(arch, tyre, ROOM_BUMP, rooms->bump_m, CURE_BUMP_STOP)))
        work->task[ROOM_BUMP] = TASK_BUMP_STOP;
}

void arch_work_make(const struct wheel_arch *arch, const struct arch_work *tighter,
                    struct arch_tyre *tyre)
{
    const struct allowed *allowed = &arch->plan->specification->allowed;
    struct arch_work *out = &tyre->work;
    *out = (struct arch_work){.spacer_m = UNKNOWN};
    if (known(allowed->trim_m) || known(allowed->bump_stop_m) || known(allowed->spacer_m))
        choose(arch, tyre);
    for (int room = 0; tighter != NULL && room < ROOM_COUNT; room++) {
        if (out->task[room] != TASK_NONE && tighter->task[room] != TASK_NONE)
            out->task[room] = tighter->task[room];
        if (tighter->task[room] == TASK_SPACER)
            out->spacer_m = tighter->spacer_m;
    }
}

struct cure arch_cure(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                      enum arch_room room, double room_m)
{
    struct cure cure = {.task = tyre->work.task[room], .now = UNKNOWN, .then = UNKNOWN};
    double now = spacer_now_m(arch);
    if (!is_short(room_m))
        cure.task = TASK_NONE;
    switch (cure.task) {
    case TASK_BUMP_STOP:
        cure.then = enough_of(arch, needed_m(arch, tyre, room, room_m, CURE_BUMP_STOP),
                              bump_stop_is_allowed);
        break;
    case TASK_TRIM_ARCH:
        cure.then = enough_of(arch, trim_needed_m(arch, tyre, room, room_m), trim_is_allowed);
        break;
    case TASK_SPACER:
        cure.now = now > 0 ? now : UNKNOWN;
        cure.then = now + tyre->work.spacer_m;
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
