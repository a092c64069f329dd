/* The body above the ground: clearance, roof, wading depth, step, rake and headlamps. */
#include "base/known.h"
#include "compute/axle_loads.h"
#include "compute/clearance.h"
#include "report/judge.h"
#include "report/clearance/view.h"
#include "tables/lookup.h"

double ground_change_m(const struct clearance_view *view, struct axle_pair change_m)
{
    const struct specification *specification = view->plan->specification;
    double at = specification->clearance.ground_at_m;
    if (known(at))
        return change_at_m(change_m, at, specification->vehicle.wheelbase_m);
    return lower_of_pair(change_m);
}

static double height_between(const struct clearance_view *view, const struct body_point *point)
{
    return height_in_view_m(view, point->height_m, point->at_m);
}

/* The measured lowest part, or a point between the axles that now stands lower. */
static void report_lowest(const struct clearance_view *view, struct figures *figures)
{
    const struct clearance_measured *measured = &view->plan->specification->clearance;
    struct figure figure = view_figure(
        view, QUANTITY_BODY, measured->ground_m + ground_change_m(view, view->body_change_m),
        "measured + loaded radius + lift - sag by the wheel rate");
    figure.headline = view->headline;
    struct governing_point lowest = least_over_points(view, POINT_BETWEEN, height_between, NULL);
    if (known(figure.value) && known(lowest.value) && clearly_above(figure.value, lowest.value)) {
        figure.value = lowest.value;
        if (lowest.item != NULL)
            figure.basis =
                arena_format(view->plan->arena, "%s; governed by: %s", figure.basis, lowest.item);
    }
    if (!known(figure.value)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = known(measured->ground_m)
                            ? "give vehicle: unladen, wheelbase and suspension: wheel_rate"
                            : "give clearance: ground";
    } else if (figure_at_most(figure, 0).verdict == VERDICT_OK) {
        figure.limit = 0;
        figure.verdict = VERDICT_FAIL;
        figure.action = "it would stand on the ground: stiffer springs, or less aboard";
    }
    figures_add(figures, figure);
    if (view->setup->is_fitted)
        return;
    struct figure change =
        view_figure(view, QUANTITY_BODY_CHANGE, ground_change_m(view, view->tyre_change_m),
                    "change of the static loaded radius, 0.912 D/2 for both");
    figures_add(figures, change);
}

/* How much more the largest new tyre of an option's size lifts the body than the nominal one, at
 * most: half of what its diameter is larger. The fitted tyre is as it was measured. */
static double growth_m(const struct clearance_view *view, int axle)
{
    const struct tyre_figures *after = &view->plan->beside[view->index].after[axle];
    return view->setup->is_fitted ? 0
                                  : (after->overall_diameter_max_m - after->overall_diameter_m) / 2;
}

/* The roof, or what stands higher on it. The higher axle's change counts: a door is met in front
 * or behind. */
static double roof_height_m(const struct clearance_view *view, struct axle_pair change_m,
                            const char **item)
{
    const struct specification *specification = view->plan->specification;
    double highest = specification->clearance.roof_height_m;
    for (size_t i = 0; i < specification->carried.count; i++) {
        const struct carried_item *carried = &specification->carried.items[i];
        if (carried->removed == 1 || !state_holds(view->state, carried->item) ||
            !known(carried->top_m) || !clearly_above(carried->top_m, known_or(highest, 0)))
            continue;
        highest = carried->top_m;
        *item = carried->item;
    }
    return highest + higher_of_pair(change_m);
}

static void report_roof(const struct clearance_view *view, struct figures *figures)
{
    const struct clearance_measured *measured = &view->plan->specification->clearance;
    const char *item = NULL;
    double height = roof_height_m(view, view->body_change_m, &item);
    const char *basis = "measured + the larger of both axles' changes";
    if (item != NULL)
        basis = arena_format(view->plan->arena, "%s; highest: %s", basis, item);
    if (known(height))
        figures_add(figures, view_figure(view, QUANTITY_ROOF_HEIGHT, height, basis));
    if (!view->setup->is_fitted && known(measured->roof_height_m)) {
        figures_add(figures,
                    view_figure(view, QUANTITY_ROOF_CHANGE, higher_of_pair(view->tyre_change_m),
                                "change of the loaded radius"));
    }
    if (!known(measured->garage_entrance_m))
        return;
    const struct axle_pair largest_m = {view->body_change_m.front + growth_m(view, AXLE_FRONT),
                                        view->body_change_m.rear + growth_m(view, AXLE_REAR)};
    struct figure room =
        view_figure(view, QUANTITY_GARAGE_ROOM,
                    measured->garage_entrance_m - roof_height_m(view, largest_m, &item), basis);
    room.at = "largest";
    room = figure_at_least(room, 0);
    room.action = room.verdict == VERDICT_FAIL      ? "it does not pass the entrance"
                  : room.verdict == VERDICT_UNKNOWN ? "give clearance: roof_height"
                                                    : NULL;
    figures_add(figures, room);
}

/* Wading depth goes with the lower end, the step with the higher one. */
static void report_depths(const struct clearance_view *view, struct figures *figures)
{
    const struct clearance_measured *measured = &view->plan->specification->clearance;
    if (known(measured->wading_depth_m))
        figures_add(figures,
                    view_figure(view, QUANTITY_WADING_DEPTH,
                                measured->wading_depth_m + lower_of_pair(view->body_change_m),
                                "the maker's depth + the smaller of both axles' changes"));
    if (known(measured->step_height_m))
        figures_add(figures,
                    view_figure(view, QUANTITY_STEP_HEIGHT,
                                measured->step_height_m + higher_of_pair(view->body_change_m),
                                "measured + the larger of both axles' changes"));
}

static void judge_dip(const struct clearance_view *view, double rise, struct figures *figures)
{
    const struct headlamp *lamp = &view->plan->specification->clearance.headlamp;
    if (!known(lamp->dip))
        return;
    struct figure dip = view_figure(view, QUANTITY_HEADLAMP_DIP, lamp->dip - rise,
                                    "UN R48 6.2.6.1.2, by the lamp's height");
    /* The rule goes by the lamp's height on the unladen vehicle. */
    double height = lamp->height_m + view->tyre_change_m.front + view->lift_m[AXLE_FRONT];
    const struct headlamp_dip_row *row = headlamp_dip_for(height);
    if (row == NULL) {
        dip.verdict = VERDICT_UNKNOWN;
        dip.action = "give clearance: headlamp: height";
    } else {
        dip = figure_within(dip, row->dip_min_percent / 100, row->dip_max_percent / 100);
        if (dip.verdict == VERDICT_FAIL)
            dip.action = dip.limit <= dip.value ? "the beam is too low: have the headlamps set"
                                                : "the beam dazzles: have the headlamps set";
        if (dip.verdict == VERDICT_UNKNOWN)
            dip.action = "give vehicle: wheelbase and unladen, suspension: wheel_rate";
    }
    figures_add(figures, dip);
}

static void report_pitch(const struct clearance_view *view, struct figures *figures)
{
    double wheelbase = view->plan->specification->vehicle.wheelbase_m;
    double rake = rake_rad(view->body_change_m, wheelbase);
    double rise = beam_rise(view->body_change_m, wheelbase);
    if (known(rake)) {
        figures_add(figures, view_figure(view, QUANTITY_RAKE, rake,
                                         "(rear - front change of height) / wheelbase"));
        figures_add(figures,
                    view_figure(view, QUANTITY_HEADLAMP_AIM, rise,
                                "(front - rear change of height) / wheelbase; up is positive"));
    }
    judge_dip(view, rise, figures);
}

void report_body(const struct clearance_view *view, struct figures *figures)
{
    report_lowest(view, figures);
    report_roof(view, figures);
    report_depths(view, figures);
    report_pitch(view, figures);
}
