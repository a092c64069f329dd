/* Where a wheel stands, and how it sits on hub and brake. */
#include "base/known.h"
#include "compute/clearance.h"
#include "report/judge.h"
#include "report/clearance/view.h"

struct wheel_view {
    const struct plan *plan;
    size_t index;
    int axle;
    const struct wheel *before, *after;
    struct figures *figures;
};

static struct figure wheel_figure(const struct wheel_view *view, enum quantity_id quantity,
                                  double value, const char *basis)
{
    struct figure figure = figure_of(quantity, value, basis);
    figure.axle = view->axle;
    return figure;
}

static void add_if_known(const struct wheel_view *view, enum quantity_id quantity, double value,
                         const char *basis)
{
    if (known(value))
        figures_add(view->figures, wheel_figure(view, quantity, value, basis));
}

/* Only the front axle steers. */
static void report_scrub(const struct wheel_view *view)
{
    const struct steering *steering = &view->plan->specification->clearance.steering;
    const struct beside *beside = &view->plan->beside[view->index];
    double lean = steering->kingpin_inclination_rad, centre = steering->axis_to_centre_m;
    if (view->axle != AXLE_FRONT || !known(lean))
        return;
    static const char basis[] = "centre plane from steering axis at axle height - loaded radius x "
                                "tan(kingpin inclination); camber left out";
    double moved = track_change_m(view->before, view->after) / 2;
    double before = scrub_radius_m(0, beside->before[AXLE_FRONT].static_loaded_radius_m, lean);
    double after = scrub_radius_m(moved, beside->after[AXLE_FRONT].static_loaded_radius_m, lean);
    if (view->plan->setups[view->index].is_fitted) {
        add_if_known(view, QUANTITY_SCRUB_RADIUS, centre + before, basis);
        return;
    }
    add_if_known(view, QUANTITY_SCRUB_RADIUS_CHANGE, after - before, basis);
    struct figure figure = wheel_figure(view, QUANTITY_SCRUB_RADIUS, centre + after, basis);
    if ((centre + before) * (centre + after) < 0) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = "the scrub radius changes sides: steering and braking pull otherwise";
    }
    if (known(figure.value))
        figures_add(view->figures, figure);
}

void report_wheel_place(const struct plan *plan, size_t index, int axle, struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct wheel_view view = {
        plan, index, axle, &plan->fitted.axle[axle].wheel, &setup->axle[axle].wheel, figures};
    add_if_known(&view, QUANTITY_BACKSPACING, backspacing_m(view.after),
                 "(rim width + flanges of about 25 mm together) / 2 + inset");
    report_scrub(&view);
    if (setup->is_fitted)
        return;
    struct edge_move rim = rim_edge_move(view.before, view.after);
    add_if_known(&view, QUANTITY_RIM_EDGE_INNER, rim.inner_m,
                 "rim width change / 2 + inset change - spacer change");
    add_if_known(&view, QUANTITY_RIM_EDGE_OUTER, rim.outer_m,
                 "rim width change / 2 - inset change + spacer change");
}

static bool judge_bore(const struct wheel_view *view)
{
    double before = view->before->mounting.hub_bore_m, after = view->after->mounting.hub_bore_m;
    if (!known(before) || !known(after))
        return false;
    struct figure figure =
        wheel_figure(view, QUANTITY_HUB_BORE, after, "beside the fitted wheel's centre hole");
    figure.limit = before;
    if (fabs(after - before) < 5e-5)
        figure.verdict = VERDICT_OK;
    else {
        figure.verdict = VERDICT_CAUTION;
        figure.action = after < before ? "smaller than the fitted wheel's: measure the hub first"
                                       : "larger than the fitted wheel's: it needs a centring ring";
    }
    figures_add(view->figures, figure);
    return true;
}

static bool judge_bolts(const struct wheel_view *view)
{
    const struct mounting *before = &view->before->mounting, *after = &view->after->mounting;
    double circle = after->bolt_circle_m - before->bolt_circle_m;
    double bolts = after->bolts - before->bolts;
    if (!known(circle) || !known(bolts))
        return false;
    struct figure figure = wheel_figure(view, QUANTITY_BOLT_CIRCLE, after->bolt_circle_m,
                                        "beside the fitted wheel's bolts");
    figure.limit = before->bolt_circle_m;
    bool same = bolts == 0 && fabs(circle) < 5e-5;
    figure.verdict = same ? VERDICT_OK : VERDICT_FAIL;
    if (!same)
        figure.action =
            arena_format(view->plan->arena, "%.0f bolts, and the hub has %.0f: %s", after->bolts,
                         before->bolts, bolts == 0 ? "the circle is another" : "it does not go on");
    figures_add(view->figures, figure);
    return true;
}

static bool judge_brake(const struct wheel_view *view)
{
    double room = view->after->mounting.brake_room_m;
    if (!known(room))
        return false;
    struct figure figure =
        figure_at_least(wheel_figure(view, QUANTITY_BRAKE_ROOM, room, "as tried"), 0);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = "it touches the brake: choose another wheel";
    figures_add(view->figures, figure);
    return true;
}

/* What is not given for both wheels stays to be checked by hand. */
static void report_by_hand(const struct wheel_view *view, bool bore, bool bolts, bool brake)
{
    if (bore && bolts && brake)
        return;
    struct figure figure = wheel_figure(view, QUANTITY_WHEEL_BY_HAND, UNKNOWN,
                                        "not given under wheel: mounting, of both wheels");
    figure.verdict = VERDICT_UNKNOWN;
    figure.action =
        arena_format(view->plan->arena, "check by hand:%s%s%s%s%s", bore ? "" : " hub bore",
                     bore || (bolts && brake) ? "" : ",", bolts ? "" : " bolt pattern",
                     bolts || brake ? "" : ",", brake ? "" : " room round the brake");
    figures_add(view->figures, figure);
}

void report_wheel_mounting(const struct plan *plan, size_t index, struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct wheel *front = &setup->axle[AXLE_FRONT].wheel;
    const struct wheel *fitted = &plan->fitted.axle[AXLE_FRONT].wheel;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct wheel_view view = {
            plan, index, axle, &plan->fitted.axle[axle].wheel, &setup->axle[axle].wheel, figures};
        bool is_fitted_wheel = view.after->given != NULL && view.after->given == view.before->given;
        bool as_front = axle == AXLE_REAR && view.after->given == front->given &&
                        view.before->given == fitted->given;
        if (setup->is_fitted || is_fitted_wheel || as_front)
            continue;
        bool bore = judge_bore(&view), bolts = judge_bolts(&view), brake = judge_brake(&view);
        report_by_hand(&view, bore, bolts, brake);
    }
}
