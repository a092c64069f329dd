/* Room in a wheel arch, measured with the fitted tyre; nominal, and with the largest tyre that
 * the standard allows, which is what is judged; without and with snow chains. */
#include "report/clearance/arch.h"

#include "base/known.h"
#include "compute/load.h"

/* How far off the measured lengths that a room is made of may be together. */
static double doubt_m(const struct wheel_arch *arch, enum arch_room room)
{
    double tape = known_or(arch->plan->specification->measured.tape_m, 0);
    return room == ROOM_LOCK   ? arch_lock_doubt_m(arch)
           : room == ROOM_BUMP ? 2 * tape /* above, and travel to bump */
                               : tape;
}

/* Room that is there but within what the tape may be off proves nothing: at lock it is not known,
 * elsewhere a caution. */
static struct figure judged_room(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                                 enum arch_room room, struct figure figure, enum remark_id broken)
{
    double room_m = figure.value, doubt = doubt_m(arch, room);
    bool doubtful =
        meets_limit(room_m, LIMIT_AT_LEAST, 0) && !meets_limit(room_m, LIMIT_AT_LEAST, doubt);
    const struct need is_known = arch_room_need(arch, tyre, room, room_m);
    bool wheels = !is_known.known && is_known.advice.id == ADVICE_GIVE_BOTH_WHEELS;
    const struct remark within_tape =
        REMARK_WITH(arch->plan->arena, ADVICE_WITHIN_TAPE, say_enough(doubt));
    const struct need needs[] = {
        is_known,
        {room != ROOM_LOCK || !doubtful, within_tape},
        {room != ROOM_INNER || !tyre->work.spacer_open,
         remark(known(tyre->rooms.outer_m) ? PHRASE_LOCK_FOR_INSET : PHRASE_SIDES_FOR_INSET)},
    };
    const struct cure cure = arch_cure(arch, tyre, room, room_m);
    figure.limit_owner = LIMIT_OF_PHYSICS;
    figure.headline = figure.state == STATE_NONE && !tyre->with_chains ? HEADLINE_YES : HEADLINE_NO;
    figure = judged(limited_at_least(figure, 0),
                    &(struct judgement){.needs = needs,
                                        .need_count = sizeof needs / sizeof needs[0],
                                        .cure = cure,
                                        .ask = wheels ? TASK_READ_WHEEL : TASK_NONE,
                                        .met = doubtful ? VERDICT_CAUTION : VERDICT_OK,
                                        .if_met = doubtful ? within_tape : remark(REMARK_NONE),
                                        .if_cured = arch_cure_told(arch, &cure),
                                        .if_broken = remark(broken)});
    if (figure.verdict == VERDICT_FAIL && !arch->figures->verdicts_only)
        figure.cures = arch_cures(arch, tyre, room, room_m, ~0u);
    return figure;
}

/* Adds a room; the largest tyre's is judged: nothing left is a fail. */
static void add_room(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                     enum arch_room room, double room_m, const struct stance *state)
{
    static const enum remark_id by_lock[] = {BASIS_LOCK_BOUND, BASIS_LOCK_SWEPT,
                                             BASIS_LOCK_SIDEWALL};
    const struct steering *steering = &arch->plan->specification->clearance.steering;
    enum remark_id lock = by_lock[arch_lock_rule(arch)];
    if (lock == BASIS_LOCK_BOUND && known(steering->axis_to_centre_m))
        lock = BASIS_LOCK_UNTOLD;
    const struct {
        enum quantity_id quantity;
        enum place_posture posture;
        enum remark_id basis, broken;
    } rows[ROOM_COUNT] = {
        [ROOM_RIDE] = {QUANTITY_ARCH_ABOVE, AT_RIDE_HEIGHT, BASIS_ARCH_RIDE, ADVICE_MAY_RUB},
        [ROOM_BUMP] = {QUANTITY_ARCH_ABOVE, AT_BUMP, BASIS_ARCH_BUMP, ADVICE_MAY_RUB},
        [ROOM_INNER] = {QUANTITY_ARCH_INNER, AT_ANY_POSTURE, BASIS_ARCH_INNER,
                        ADVICE_MAY_RUB_INSIDE},
        [ROOM_OUTER] = {QUANTITY_ARCH_OUTER, AT_ANY_POSTURE, BASIS_ARCH_OUTER, ADVICE_MAY_RUB},
        [ROOM_LOCK] = {QUANTITY_ARCH_LOCK, AT_ANY_POSTURE, lock,
                       steering->meets == MEETS_FRAME ? ADVICE_MAY_RUB_FRAME : ADVICE_MAY_RUB},
    };
    struct figure figure = figure_of(rows[room].quantity, room_m);
    figure.basis = remark(rows[room].basis);
    figure.axle = arch->axle;
    figure.place.tyre = tyre->largest ? AT_LARGEST : AT_NOMINAL;
    figure.place.posture = rows[room].posture;
    figure.place.snow_chains = tyre->with_chains;
    if (state != NULL)
        figure.state = state_number(arch->plan->specification, state->state);
    if (tyre->largest)
        figure = judged_room(arch, tyre, room, figure, rows[room].broken);
    figures_add(arch->figures, figure);
}

/* Nominal to nominal, the tyre's part alone. */
static void report_changes(const struct wheel_arch *arch, const struct arch_tyre *nominal)
{
    const struct {
        enum quantity_id quantity;
        double value;
    } changes[] = {
        {QUANTITY_ARCH_ABOVE_CHANGE, -nominal->diameter_change_m / 2},
        {QUANTITY_ARCH_INNER_CHANGE, -nominal->move.inner_m},
        {QUANTITY_ARCH_OUTER_CHANGE, -nominal->move.outer_m},
        {QUANTITY_TYRE_EDGE_INNER, nominal->move.inner_m},
        {QUANTITY_TYRE_EDGE_OUTER, nominal->move.outer_m},
    };
    for (size_t i = 0; i < sizeof changes / sizeof changes[0]; i++) {
        struct figure figure = figure_of(changes[i].quantity, changes[i].value);
        figure.basis = remark(BASIS_ARCH_CHANGE);
        figure.axle = arch->axle;
        figure.place.tyre = AT_NOMINAL;
        figures_add(arch->figures, figure);
    }
}

static void report_tyre_in_arch(const struct wheel_arch *arch, const struct arch_tyre *tyre)
{
    if (arch->figures->verdicts_only && !tyre->largest)
        return;
    for (size_t i = 0; i < state_count(arch->plan->specification); i++)
        add_room(arch, tyre, ROOM_RIDE, arch_ride_room_m(arch, tyre, &arch->states[i]),
                 &arch->states[i]);
    add_room(arch, tyre, ROOM_BUMP, tyre->rooms.bump_m, NULL);
    add_room(arch, tyre, ROOM_INNER, tyre->rooms.inner_m, NULL);
    add_room(arch, tyre, ROOM_OUTER, tyre->rooms.outer_m, NULL);
    if (!isinf(tyre->rooms.lock_m))
        add_room(arch, tyre, ROOM_LOCK, tyre->rooms.lock_m, NULL);
    if (tyre->largest)
        report_arch_fit(arch, tyre);
}

/* The same work serves with and without chains: that for the tyre that wears them comes first. */
static void report_in_arch(const struct wheel_arch *arch, bool has_chains)
{
    struct arch_tyre tyres[2][2];
    for (int largest = 0; largest < 2; largest++)
        for (int chains = has_chains; chains >= 0; chains--)
            arch_tyre_make(arch, largest == 1, chains == 1, &tyres[largest][chains]);
    for (int chains = has_chains; chains >= 0; chains--)
        arch_work_make(arch, has_chains && chains == 0 ? &tyres[1][1].work : NULL,
                       &tyres[1][chains]);
    for (int largest = 0; largest < 2; largest++)
        for (int chains = 0; chains < 1 + has_chains; chains++) {
            report_tyre_in_arch(arch, &tyres[largest][chains]);
            if (!largest && !chains && !arch->setup->is_fitted)
                report_changes(arch, &tyres[0][0]);
        }
}

void report_arch(const struct stance *states, int axle, struct figures *figures)
{
    const struct plan *plan = states->plan;
    const struct arches *arches = &plan->specification->clearance.arch;
    const struct wheel_arch arch = {
        .plan = plan,
        .index = states->index,
        .axle = axle,
        .setup = states->setup,
        .states = states,
        .measured = axle == AXLE_FRONT ? &arches->front : &arches->rear,
        .suspension = suspension_of(plan, axle),
        .figures = figures,
    };
    report_in_arch(&arch, arch.setup->axle[axle].snow_chains_m > 0);
}
