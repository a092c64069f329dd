/* Where a wheel stands, and how it sits on hub and brake. */
#include "base/known.h"
#include "compute/clearance.h"
#include "report/clearance/stance.h"
#include "report/judge.h"

/* A wheel beside the one that is fitted to the axle. */
struct changed_wheel {
    const struct plan *plan;
    size_t index;
    int axle;
    const struct wheel *before, *after;
    struct figures *figures;
};

static struct changed_wheel changed_wheel_of(const struct plan *plan, size_t index, int axle,
                                             struct figures *figures)
{
    return (struct changed_wheel){
        plan,   index, axle, &plan->fitted.axle[axle].wheel, &plan->setups[index].axle[axle].wheel,
        figures};
}

static struct figure wheel_figure(const struct changed_wheel *wheel, enum quantity_id quantity,
                                  double value, enum remark_id basis)
{
    return figure_on_axle(quantity, value, wheel->axle, remark(basis));
}

static void add_if_known(const struct changed_wheel *wheel, enum quantity_id quantity, double value,
                         enum remark_id basis)
{
    if (known(value))
        figures_add(wheel->figures, wheel_figure(wheel, quantity, value, basis));
}

/* Only the front axle steers. */
static void report_scrub(const struct changed_wheel *wheel)
{
    const struct steering *steering = &wheel->plan->specification->clearance.steering;
    const struct beside *beside = &wheel->plan->beside[wheel->index];
    double lean = steering->kingpin_inclination_rad, centre = steering->axis_to_centre_m;
    if (wheel->axle != AXLE_FRONT || !known(lean))
        return;
    double moved = track_change_m(wheel->before, wheel->after) / 2;
    double before = scrub_radius_m(0, beside->before[AXLE_FRONT].static_loaded_radius_m, lean);
    double after = scrub_radius_m(moved, beside->after[AXLE_FRONT].static_loaded_radius_m, lean);
    if (wheel->plan->setups[wheel->index].is_fitted) {
        add_if_known(wheel, QUANTITY_SCRUB_RADIUS, centre + before, BASIS_SCRUB);
        return;
    }
    add_if_known(wheel, QUANTITY_SCRUB_RADIUS_CHANGE, after - before, BASIS_SCRUB);
    double was = centre + before, is = centre + after, nothing = 1e-9;
    if (!known(is))
        return;
    bool same_side = fmin(was, is) > -nothing || fmax(was, is) < nothing;
    figures_add(wheel->figures,
                judged(wheel_figure(wheel, QUANTITY_SCRUB_RADIUS, is, BASIS_SCRUB),
                       &(struct judgement){.holds = answer_of(known(was), same_side),
                                           .broken = VERDICT_CAUTION,
                                           .met_is_none = true,
                                           .if_broken = remark(ADVICE_SCRUB_CHANGES_SIDES),
                                           .if_unknown = remark(ADVICE_GIVE_DIAMETERS)}));
}

void report_wheel_place(const struct plan *plan, size_t index, int axle, struct figures *figures)
{
    const struct changed_wheel wheel = changed_wheel_of(plan, index, axle, figures);
    add_if_known(&wheel, QUANTITY_BACKSPACING, backspacing_m(wheel.after), BASIS_BACKSPACING);
    report_scrub(&wheel);
    if (plan->setups[index].is_fitted)
        return;
    struct edge_move rim = rim_edge_move(wheel.before, wheel.after);
    add_if_known(&wheel, QUANTITY_RIM_EDGE_INNER, rim.inner_m, BASIS_RIM_INNER);
    add_if_known(&wheel, QUANTITY_RIM_EDGE_OUTER, rim.outer_m, BASIS_RIM_OUTER);
}

static bool judge_bore(const struct changed_wheel *wheel)
{
    double before = wheel->before->mounting.hub_bore_m, after = wheel->after->mounting.hub_bore_m;
    if (!known(before) || !known(after))
        return false;
    struct figure figure = wheel_figure(wheel, QUANTITY_HUB_BORE, after, BASIS_CENTRE_HOLE);
    figure.limit = before;
    figure.limit_owner = LIMIT_OF_PHYSICS;
    figures_add(wheel->figures,
                judged(figure, &(struct judgement){
                                   .holds = answer_of(true, fabs(after - before) < 5e-5),
                                   .broken = after < before ? VERDICT_FAIL : VERDICT_CAUTION,
                                   .if_broken = remark(after < before ? ADVICE_SMALLER_BORE
                                                                      : ADVICE_LARGER_BORE)}));
    return true;
}

static bool judge_bolts(const struct changed_wheel *wheel)
{
    const struct mounting *before = &wheel->before->mounting, *after = &wheel->after->mounting;
    double circle = after->bolt_circle_m - before->bolt_circle_m;
    double bolts = after->bolts - before->bolts;
    if (!known(circle) || !known(bolts))
        return false;
    struct figure figure =
        wheel_figure(wheel, QUANTITY_BOLT_CIRCLE, after->bolt_circle_m, BASIS_BOLTS);
    figure.limit = bolts == 0 ? before->bolt_circle_m : UNKNOWN; /* else it is not what is broken */
    figure.limit_owner = LIMIT_OF_PHYSICS;
    figures_add(
        wheel->figures,
        judged(figure,
               &(struct judgement){
                   .holds = answer_of(true, bolts == 0 && fabs(circle) < 5e-5),
                   .if_broken = REMARK_WITH(
                       wheel->plan->arena, bolts == 0 ? ADVICE_OTHER_CIRCLE : ADVICE_OTHER_BOLTS,
                       say_number(after->bolts, 0), say_number(before->bolts, 0))}));
    return true;
}

static bool judge_brake(const struct changed_wheel *wheel)
{
    double room = wheel->after->mounting.brake_room_m;
    if (!known(room))
        return false;
    struct figure figure = wheel_figure(wheel, QUANTITY_BRAKE_ROOM, room, BASIS_AS_TRIED);
    figure.limit_owner = LIMIT_OF_PHYSICS;
    double tape = known_or(wheel->plan->specification->measured.tape_m, 0);
    bool doubtful = !meets_limit(room, LIMIT_AT_LEAST, tape);
    figures_add(wheel->figures,
                judged(limited_at_least(figure, 0),
                       &(struct judgement){.met = doubtful ? VERDICT_CAUTION : VERDICT_OK,
                                           .if_met = doubtful ? REMARK_WITH(wheel->plan->arena,
                                                                            ADVICE_WITHIN_TAPE,
                                                                            say_enough(tape))
                                                              : remark(REMARK_NONE),
                                           .if_broken = remark(ADVICE_TOUCHES_BRAKE)}));
    return true;
}

/* What is not given for both wheels is found by trying the wheel on. */
static void report_by_hand(const struct changed_wheel *wheel, bool bore, bool bolts, bool brake)
{
    static const enum remark_id rows[] = {ADVICE_CHECK_ONE, ADVICE_CHECK_TWO, ADVICE_CHECK_THREE};
    struct arena *arena = wheel->plan->arena;
    struct argument open[3];
    size_t count = 0;
    if (!bore)
        open[count++] = say_remark(arena, remark(PHRASE_HUB_BORE));
    if (!bolts)
        open[count++] = say_remark(arena, remark(PHRASE_BOLT_PATTERN));
    if (!brake)
        open[count++] = say_remark(arena, remark(PHRASE_BRAKE_ROOM));
    if (count == 0)
        return;
    figures_add(
        wheel->figures,
        judged(wheel_figure(wheel, QUANTITY_WHEEL_BY_HAND, UNKNOWN, BASIS_MOUNTING_OPEN),
               &(struct judgement){.holds = ANSWER_NO,
                                   .cure = {TASK_TRY_WHEEL, UNKNOWN, UNKNOWN, NULL, NULL},
                                   .if_broken = remark_make(arena, rows[count - 1], open, count)}));
}

/* The wheel that is fitted, named or not, stays on. */
static bool is_fitted_wheel(const struct changed_wheel *wheel)
{
    const struct plan *plan = wheel->plan;
    const struct tyre *before = &plan->fitted.axle[wheel->axle];
    const struct tyre *after = &plan->setups[wheel->index].axle[wheel->axle];
    return after->wheel.given == before->wheel.given &&
           (after->wheel.given != NULL || same_rim_code(before, after));
}

void report_wheel_mounting(const struct plan *plan, size_t index, struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct wheel *front = &setup->axle[AXLE_FRONT].wheel;
    const struct wheel *fitted = &plan->fitted.axle[AXLE_FRONT].wheel;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct changed_wheel wheel = changed_wheel_of(plan, index, axle, figures);
        const struct given *before = wheel.before->given, *after = wheel.after->given;
        bool as_front = axle == AXLE_REAR && after == front->given && before == fitted->given;
        if (setup->is_fitted || is_fitted_wheel(&wheel) || as_front)
            continue;
        bool bore = judge_bore(&wheel), bolts = judge_bolts(&wheel), brake = judge_brake(&wheel);
        report_by_hand(&wheel, bore, bolts, brake);
    }
}
