/* Room in a wheel arch, measured with the fitted tyre; nominal, and with the largest tyre that
 * the standard allows, which is what is judged. */
#include "base/known.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "report/clearance_view.h"

/* What of the tyre changes in the arch: beside the fitted tyre as measured. */
struct arch_change {
    const char *size; /* "nominal" or "largest" */
    double diameter_m;
    struct edge_move move;
    double tyre_diameter_m, tyre_width_m;
    double chains_m;
};

struct arch_view {
    const struct plan *plan;
    size_t index;
    int axle;
    const struct setup *setup;
    const struct arch *arch;
    const struct axle_suspension *suspension;
    struct figures *figures;
};

static struct arch_change change_of(const struct arch_view *view, bool largest)
{
    const struct beside *beside = &view->plan->beside[view->index];
    const struct tyre_figures *before = &beside->before[view->axle];
    const struct tyre_figures *after = &beside->after[view->axle];
    const struct tyre *fitted = &view->plan->fitted.axle[view->axle];
    const struct tyre *tyre = &view->setup->axle[view->axle];
    struct arch_change change = {
        .size = largest ? "largest" : "nominal",
        .tyre_diameter_m = largest ? after->overall_diameter_max_m : after->overall_diameter_m,
        .tyre_width_m = largest ? after->width_on_rim_max_m : after->width_on_rim_m,
        .chains_m = known_or(tyre->snow_chains_m, 0),
    };
    change.diameter_m = change.tyre_diameter_m - before->overall_diameter_m;
    /* Without both rim widths the section widths on them are not known. */
    double width_before = known(fitted->wheel.width_m) ? before->width_on_rim_m : UNKNOWN;
    double width_after = known(tyre->wheel.width_m) ? change.tyre_width_m : UNKNOWN;
    if (view->setup->is_fitted && !largest)
        change.move = (struct edge_move){0, 0};
    else
        change.move = tyre_edge_move(width_before, &fitted->wheel, width_after, &tyre->wheel);
    return change;
}

/* Adds a room; the largest tyre's is judged: nothing left is a fail. */
static void add_room(const struct arch_view *view, const struct arch_change *change,
                     enum quantity_id quantity, const char *state, const char *where,
                     const char *basis, double room)
{
    struct figure figure = figure_of(PART_CLEARANCE, quantity, view->setup->name, room, basis);
    figure.state = state;
    figure.axle = view->axle;
    figure.at = *where == '\0' ? change->size
                               : arena_format(view->plan->arena, "%s, %s", where, change->size);
    bool judged = change->size[0] == 'l';
    if (judged) {
        figure = figure_at_least(figure, 0);
        figure.headline = state == NULL ? HEADLINE_YES : HEADLINE_NO;
        if (figure.verdict == VERDICT_FAIL)
            figure.action = "it may rub";
        else if (figure.verdict == VERDICT_UNKNOWN)
            figure.action = arena_format(view->plan->arena,
                                         "give clearance: arch: %s, wheel width and inset%s",
                                         axle_name(view->axle),
                                         quantity == QUANTITY_ARCH_ABOVE
                                             ? ", suspension: travel_to_bump and wheel_rate"
                                             : "");
    }
    figures_add(view->figures, figure);
}

static void report_above(const struct arch_view *view, const struct arch_change *change)
{
    const struct specification *specification = view->plan->specification;
    double above = view->arch->above_m - change->chains_m;
    for (size_t i = 0; i < state_count(specification); i++) {
        struct clearance_view body;
        clearance_view_make(view->plan, view->index, state_at(specification, i), &body);
        add_room(view, change, QUANTITY_ARCH_ABOVE, state_name(body.state), "ride height",
                 "above - dD/2 + lift - sag",
                 arch_room_at_ride_m(above, change->diameter_m, body.lift_m[view->axle],
                                     body.sag_m[view->axle]));
    }
    add_room(view, change, QUANTITY_ARCH_ABOVE, NULL, "bump",
             "above - travel to bump - dD/2 + bump stop change; lift does not help there",
             arch_room_at_bump_m(above, view->suspension->travel_to_bump_m, change->diameter_m,
                                 known_or(view->suspension->bump_stop_change_m, 0)));
}

static void report_sides(const struct arch_view *view, const struct arch_change *change)
{
    add_room(view, change, QUANTITY_ARCH_INNER, NULL, "",
             "inner - (dS/2 + inset change - spacer change)",
             view->arch->inner_m - change->chains_m - change->move.inner_m);
    add_room(view, change, QUANTITY_ARCH_OUTER, NULL, "",
             "outer - (dS/2 - inset change + spacer change)",
             view->arch->outer_m - change->chains_m - change->move.outer_m);
}

static void report_lock(const struct arch_view *view, const struct arch_change *change)
{
    const struct steering *steering = &view->plan->specification->clearance.steering;
    const struct tyre_figures *before = &view->plan->beside[view->index].before[view->axle];
    const struct wheel *old = &view->plan->fitted.axle[view->axle].wheel;
    const struct wheel *new = &view->setup->axle[view->axle].wheel;
    double lost;
    const char *basis;
    if (known(steering->axis_to_centre_m)) {
        double centre = steering->axis_to_centre_m + track_change_m(old, new) / 2;
        if (view->setup->is_fitted)
            centre = steering->axis_to_centre_m;
        lost = swept_corner_radius_m(change->tyre_diameter_m, change->tyre_width_m, centre) -
               swept_corner_radius_m(before->overall_diameter_m, before->width_on_rim_m,
                                     steering->axis_to_centre_m);
        basis = "swept corner radius about the steering axis";
    } else {
        lost = lock_room_lost_at_most_m(change->diameter_m, change->move);
        basis = "bound sqrt((dD/2)^2 + (edge move)^2), no steering geometry";
    }
    add_room(view, change, QUANTITY_ARCH_LOCK, NULL, "", basis,
             view->arch->at_lock_m - change->chains_m - lost);
}

/* Nominal to nominal, the tyre's part alone. */
static void report_changes(const struct arch_view *view, const struct arch_change *nominal)
{
    const struct {
        enum quantity_id quantity;
        double value;
    } changes[] = {
        {QUANTITY_ARCH_ABOVE_CHANGE, -nominal->diameter_m / 2},
        {QUANTITY_ARCH_INNER_CHANGE, -nominal->move.inner_m},
        {QUANTITY_ARCH_OUTER_CHANGE, -nominal->move.outer_m},
    };
    for (size_t i = 0; i < sizeof changes / sizeof changes[0]; i++) {
        struct figure figure =
            figure_of(PART_CLEARANCE, changes[i].quantity, view->setup->name, changes[i].value,
                      "nominal to nominal, by the same rule for both tyres");
        figure.axle = view->axle;
        figure.at = "nominal";
        figures_add(view->figures, figure);
    }
}

void report_arch(const struct plan *plan, size_t index, int axle, struct figures *figures)
{
    const struct specification *specification = plan->specification;
    const struct arches *arches = &specification->clearance.arch;
    const struct suspension *suspension = &specification->suspension;
    const struct arch_view view = {
        .plan = plan,
        .index = index,
        .axle = axle,
        .setup = &plan->setups[index],
        .arch = axle == AXLE_FRONT ? &arches->front : &arches->rear,
        .suspension = axle == AXLE_FRONT ? &suspension->front : &suspension->rear,
        .figures = figures,
    };
    for (int largest = 0; largest < 2; largest++) {
        /* The fitted tyre is the one that was measured: as large as it is. */
        struct arch_change change = change_of(&view, largest == 1 && !view.setup->is_fitted);
        change.size = largest ? "largest" : "nominal";
        report_above(&view, &change);
        report_sides(&view, &change);
        if (axle == AXLE_FRONT)
            report_lock(&view, &change);
        if (largest == 0 && !view.setup->is_fitted)
            report_changes(&view, &change);
    }
}
