/* The room that a tyre leaves in its arch, from the room that the fitted one left. */
#include "base/known.h"
#include "compute/load.h"
#include "report/clearance/arch.h"

static bool is_steered(const struct wheel_arch *arch)
{
    return arch->axle == AXLE_FRONT;
}

enum lock_rule arch_lock_rule(const struct wheel_arch *arch)
{
    const struct steering *steering = &arch->plan->specification->clearance.steering;
    if (steering->touches == TOUCHES_TREAD && known(steering->axis_to_centre_m))
        return LOCK_BY_TREAD;
    return steering->touches == TOUCHES_SIDEWALL ? LOCK_BY_SIDEWALL : LOCK_BY_BOUND;
}

/* Trimming helps where it is the arch that the tyre meets, and nowhere else. */
static double lock_trim_m(const struct wheel_arch *arch)
{
    int meets = arch->plan->specification->clearance.steering.meets;
    return meets == MEETS_ARCH ? INFINITY : meets == MEETS_FRAME ? 0 : UNKNOWN;
}

double arch_ride_room_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                        const struct stance *state)
{
    return arch_room_at_ride_m(arch->measured->above_m - tyre->chains_m, tyre->diameter_change_m,
                               state->lift_m[arch->axle], state->sag_m[arch->axle]);
}

double arch_lock_room_m(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                        double inset_change_m)
{
    if (!is_steered(arch))
        return INFINITY;
    double room = arch->measured->at_lock_m - tyre->chains_m;
    struct swept_tyre after = tyre->after;
    after.centre_m -= inset_change_m;
    struct edge_move move = {.inner_m = tyre->move.inner_m + inset_change_m,
                             .outer_m = tyre->move.outer_m - inset_change_m};
    switch (arch_lock_rule(arch)) {
    case LOCK_BY_TREAD:
        return room - lock_room_lost_m(tyre->before, after);
    case LOCK_BY_SIDEWALL:
        return room - lock_room_lost_by_sidewall_m(move);
    default:
        return room - lock_room_lost_at_most_m(tyre->diameter_change_m, move);
    }
}

double arch_lock_doubt_m(const struct wheel_arch *arch)
{
    return known_or(arch->plan->specification->measured.tape_m, 0);
}

static void set_rooms(const struct wheel_arch *arch, struct arch_tyre *tyre)
{
    const struct arch *measured = arch->measured;
    tyre->rooms = (struct arch_rooms){
        .ride_m = UNKNOWN,
        .bump_m = arch_room_at_bump_m(measured->above_m - tyre->chains_m,
                                      arch->suspension->travel_to_bump_m, tyre->diameter_change_m,
                                      known_or(arch->suspension->bump_stop_change_m, 0)),
        .inner_m = measured->inner_m - tyre->chains_m - tyre->move.inner_m,
        .outer_m = measured->outer_m - tyre->chains_m - tyre->move.outer_m,
        .lock_m = arch_lock_room_m(arch, tyre, 0),
        .lock_trim_m = lock_trim_m(arch),
    };
    for (size_t i = 0; i < state_count(arch->plan->specification); i++) {
        double room = arch_ride_room_m(arch, tyre, &arch->states[i]);
        tyre->rooms.ride_m = lower_of(tyre->rooms.ride_m, room);
        tyre->rooms.ride_open = tyre->rooms.ride_open || !known(room);
    }
}

void arch_tyre_make(const struct wheel_arch *arch, bool largest, bool with_chains,
                    struct arch_tyre *out)
{
    const struct beside *beside = &arch->plan->beside[arch->index];
    const struct tyre_dimensions *before = &beside->before[arch->axle];
    const struct tyre_dimensions *after = &beside->after[arch->axle];
    const struct tyre *fitted = &arch->plan->fitted.axle[arch->axle];
    const struct tyre *tyre = &arch->setup->axle[arch->axle];
    double axis = arch->plan->specification->clearance.steering.axis_to_centre_m;
    bool same = arch->setup->is_fitted;
    bool nominal = same || !largest; /* the fitted tyre is the one that was measured */
    /* Without both rim widths the section widths on them are not known. */
    double width_before = same || known(fitted->wheel.width_m) ? before->width_on_rim_m : UNKNOWN;
    double width_after = nominal ? after->width_on_rim_m : after->width_on_rim_max_m;
    if (!same && !known(tyre->wheel.width_m))
        width_after = UNKNOWN;
    *out = (struct arch_tyre){
        .largest = largest,
        .with_chains = with_chains,
        .chains_m = with_chains ? tyre->snow_chains_m : 0,
        .before = {before->overall_diameter_m, width_before, axis},
        .after = {nominal ? after->overall_diameter_m : after->overall_diameter_max_m, width_after,
                  axis + (same ? 0 : track_change_m(&fitted->wheel, &tyre->wheel) / 2)},
    };
    out->diameter_change_m = out->after.diameter_m - before->overall_diameter_m;
    if (!same)
        out->move = tyre_edge_move(width_before, &fitted->wheel, width_after, &tyre->wheel);
    set_rooms(arch, out);
}

struct need arch_room_need(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                           enum arch_room room, double room_m)
{
    const struct arch *measured = arch->measured;
    const struct {
        double measured_m;
        const char *key;
        enum remark_id otherwise;
    } rows[ROOM_COUNT] = {
        [ROOM_RIDE] = {measured->above_m, "above", REMARK_NONE /* what its springs lack */},
        [ROOM_BUMP] = {measured->above_m, "above", ADVICE_GIVE_TRAVEL_TO_BUMP},
        [ROOM_INNER] = {measured->inner_m, "inner", ADVICE_GIVE_BOTH_WHEELS},
        [ROOM_OUTER] = {measured->outer_m, "outer", ADVICE_GIVE_BOTH_WHEELS},
        [ROOM_LOCK] = {measured->at_lock_m, "at_lock", ADVICE_GIVE_BOTH_WHEELS},
    };
    struct need need = {known(room_m), remark(rows[room].otherwise)};
    if (room == ROOM_RIDE)
        need = sag_need(arch->states, arch->axle, known(room_m));
    if (!known(rows[room].measured_m))
        need.advice = REMARK_WITH(arch->plan->arena, ADVICE_GIVE_ARCH,
                                  say_text(axle_name(arch->axle)), say_text(rows[room].key));
    else if (!known(tyre->diameter_change_m))
        need.advice = remark(ADVICE_GIVE_DIAMETERS);
    return need;
}
