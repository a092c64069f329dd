/* What would make a tyre fit that does not: the smallest single change of bump stop, inset, trim
 * and lift, for one room and for all of them. */
#include "base/known.h"
#include "output/number.h"
#include "report/clearance/arch.h"

struct lock_question {
    const struct wheel_arch *arch;
    const struct arch_tyre *tyre;
};

static double ask_lock_room(double inset_change_m, const void *data)
{
    const struct lock_question *question = data;
    return arch_lock_room_m(question->arch, question->tyre, inset_change_m) -
           arch_lock_doubt_m(question->arch);
}

static double inset_for(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                        const struct arch_rooms *rooms)
{
    const struct lock_question question = {arch, tyre};
    return inset_to_fit_m(rooms, ask_lock_room, &question);
}

static void offer(struct cures *cures, enum cure_kind kind, double amount)
{
    cures->amount[kind] = amount;
    cures->offered |= 1u << kind;
}

/* For the sides and the lock, whatever is above. */
static void offer_inset(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                        struct cures *cures)
{
    struct arch_rooms sides = tyre->rooms;
    sides.ride_m = sides.bump_m = INFINITY;
    sides.ride_open = false;
    double inset = inset_for(arch, tyre, &sides);
    offer(cures, CURE_INSET, inset);
    if (!known(inset))
        cures->lacking[CURE_INSET] =
            remark(known(sides.inner_m) && known(sides.outer_m) ? PHRASE_LOCK_FOR_INSET
                                                                : PHRASE_SIDES_FOR_INSET);
}

static void offer_trim_at_lock(const struct arch_tyre *tyre, double amount_m, struct cures *cures)
{
    double most = tyre->rooms.lock_trim_m;
    offer(cures, CURE_TRIM, !known(most) ? UNKNOWN : amount_m > most ? INFINITY : amount_m);
    if (!known(most))
        cures->lacking[CURE_TRIM] = remark(PHRASE_MEETS_FOR_TRIM);
}

const struct cures *arch_cures(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                               enum arch_room room, double room_m, unsigned wanted)
{
    struct cures *cures = arena_allocate(arch->plan->arena, sizeof *cures);
    *cures = (struct cures){.offered = 0};
    if (room == ROOM_BUMP)
        offer(cures, CURE_BUMP_STOP, -room_m);
    if (room == ROOM_BUMP || room == ROOM_RIDE)
        offer(cures, CURE_LIFT, room == ROOM_RIDE ? -room_m : INFINITY);
    if (room == ROOM_LOCK)
        offer_trim_at_lock(tyre, arch_lock_doubt_m(arch) - room_m, cures);
    else if (room != ROOM_INNER)
        offer(cures, CURE_TRIM, -room_m);
    bool of_sides = room == ROOM_INNER || room == ROOM_OUTER || room == ROOM_LOCK;
    if (of_sides && wanted & 1u << CURE_INSET) /* which is searched for */
        offer_inset(arch, tyre, cures);
    return cures;
}

double enough_m(const struct plan *plan, double length_m)
{
    double step = plan->us ? 0.01 * 0.0254 : 1e-3;
    return copysign(round_up_to_step(fabs(length_m), step), length_m);
}

bool arch_takes_inset(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                      double inset_change_m)
{
    const struct lock_question question = {arch, tyre};
    const struct arch_rooms moved = {.ride_m = INFINITY,
                                     .bump_m = INFINITY,
                                     .inner_m = tyre->rooms.inner_m - inset_change_m,
                                     .outer_m = tyre->rooms.outer_m + inset_change_m,
                                     .lock_m = ask_lock_room(inset_change_m, &question)};
    return arch_fits(&moved);
}

/* A change that does it, one that cannot (INFINITY), or one of which the arch as it was measured
 * does not tell (UNKNOWN). */
static void add_fit(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                    enum quantity_id quantity, double amount_m, enum remark_id does,
                    enum remark_id does_not)
{
    bool cannot = isinf(amount_m);
    const struct arch_rooms *rooms = &tyre->rooms;
    const struct need needs[] = {
        arch_room_need(arch, tyre, ROOM_RIDE, rooms->ride_open ? UNKNOWN : rooms->ride_m),
        arch_room_need(arch, tyre, ROOM_BUMP, rooms->bump_m),
        arch_room_need(arch, tyre, ROOM_INNER, rooms->inner_m),
        arch_room_need(arch, tyre, ROOM_OUTER, rooms->outer_m),
        arch_room_need(arch, tyre, ROOM_LOCK, rooms->lock_m),
        {known(amount_m), remark(ADVICE_GIVE_MEETS)}};
    struct figure figure = figure_of(quantity, cannot ? UNKNOWN : amount_m);
    figure.basis = remark(BASIS_SMALLEST_CHANGE);
    figure.axle = arch->axle;
    figure.place.tyre = AT_LARGEST;
    figure.place.snow_chains = tyre->with_chains;
    struct remark says =
        cannot ? remark(does_not) : REMARK_WITH(arch->plan->arena, does, say_enough(amount_m));
    figures_add(arch->figures,
                judged(figure, &(struct judgement){.needs = needs,
                                                   .need_count =
                                                       cannot ? 0 : sizeof needs / sizeof needs[0],
                                                   .if_met = says}));
}

void report_arch_fit(const struct wheel_arch *arch, const struct arch_tyre *tyre)
{
    const struct plan *plan = arch->plan;
    struct arch_rooms sure = tyre->rooms, *rooms = &sure;
    if (arch_fits(rooms))
        return;
    sure.lock_m -= arch_lock_doubt_m(arch);
    double inset = inset_for(arch, tyre, rooms), rounded = enough_m(plan, inset);
    if (isfinite(inset) && arch_takes_inset(arch, tyre, rounded))
        inset = rounded; /* unless that would leave the other side short */
    add_fit(arch, tyre, QUANTITY_BUMP_STOP_TO_FIT, enough_m(plan, bump_stop_to_fit_m(rooms)),
            ADVICE_LONGER_BUMP_STOPS, ADVICE_BUMP_STOPS_DO_NOT);
    add_fit(arch, tyre, QUANTITY_INSET_TO_FIT, inset,
            inset > 0 ? PHRASE_MORE_INSET : PHRASE_LESS_INSET, ADVICE_INSET_DOES_NOT);
    add_fit(arch, tyre, QUANTITY_TRIM_TO_FIT, enough_m(plan, trim_to_fit_m(rooms)),
            ADVICE_TRIM_ARCH, ADVICE_TRIM_DOES_NOT);
    add_fit(arch, tyre, QUANTITY_LIFT_TO_FIT, enough_m(plan, lift_to_fit_m(rooms)),
            ADVICE_LIFT_MORE, ADVICE_LIFT_DOES_NOT);
}
