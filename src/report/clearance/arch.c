/* Room in a wheel arch, measured with the fitted tyre; nominal, and with the largest tyre that
 * the standard allows, which is what is judged; without and with snow chains. */
#include "base/known.h"
#include "compute/load.h"
#include "report/judge.h"
#include "report/clearance/arch_view.h"

/* The fitted tyre is the one that was measured: as large as it is. */
static bool is_as_measured(const struct arch_view *view, bool largest)
{
    return view->setup->is_fitted || !largest;
}

static struct arch_change change_of(const struct arch_view *view, bool largest, bool chains)
{
    static const char *const names[2][2][3] = {
        {{"nominal", "ride height, nominal", "bump, nominal"},
         {"nominal, chains", "ride height, nominal, chains", "bump, nominal, chains"}},
        {{"largest", "ride height, largest", "bump, largest"},
         {"largest, chains", "ride height, largest, chains", "bump, largest, chains"}}};
    const struct beside *beside = &view->plan->beside[view->index];
    const struct tyre_figures *before = &beside->before[view->axle];
    const struct tyre_figures *after = &beside->after[view->axle];
    const struct tyre *fitted = &view->plan->fitted.axle[view->axle];
    const struct tyre *tyre = &view->setup->axle[view->axle];
    bool nominal = is_as_measured(view, largest);
    double axis = view->plan->specification->clearance.steering.axis_to_centre_m;
    /* Without both rim widths the section widths on them are not known. */
    bool same = view->setup->is_fitted;
    double width_before = same || known(fitted->wheel.width_m) ? before->width_on_rim_m : UNKNOWN;
    double width_after = nominal ? after->width_on_rim_m : after->width_on_rim_max_m;
    if (!same && !known(tyre->wheel.width_m))
        width_after = UNKNOWN;
    struct arch_change change = {
        .name = names[largest][chains][0],
        .at_ride = names[largest][chains][1],
        .at_bump = names[largest][chains][2],
        .judged = largest,
        .chains_m = chains ? tyre->snow_chains_m : 0,
        .before = {before->overall_diameter_m, width_before, axis},
        .after = {nominal ? after->overall_diameter_m : after->overall_diameter_max_m, width_after,
                  axis + (same ? 0 : track_change_m(&fitted->wheel, &tyre->wheel) / 2)},
    };
    change.diameter_m = change.after.diameter_m - before->overall_diameter_m;
    if (!same)
        change.move = tyre_edge_move(width_before, &fitted->wheel, width_after, &tyre->wheel);
    return change;
}

static bool is_steered(const struct arch_view *view)
{
    return view->axle == AXLE_FRONT;
}

double arch_lock_room_m(const struct arch_view *view, const struct arch_change *change,
                        double inset_change_m)
{
    if (!is_steered(view))
        return UNKNOWN;
    double room = view->arch->at_lock_m - change->chains_m;
    if (known(view->plan->specification->clearance.steering.axis_to_centre_m)) {
        struct swept_tyre after = change->after;
        after.centre_m -= inset_change_m;
        return room - lock_room_lost_m(change->before, after);
    }
    struct edge_move move = {.inner_m = change->move.inner_m + inset_change_m,
                             .outer_m = change->move.outer_m - inset_change_m};
    return room - lock_room_lost_at_most_m(change->diameter_m, move);
}

static double room_at_ride(const struct arch_view *view, const struct arch_change *change,
                           const struct clearance_view *body)
{
    return arch_room_at_ride_m(view->arch->above_m - change->chains_m, change->diameter_m,
                               body->lift_m[view->axle], body->sag_m[view->axle]);
}

static void set_rooms(const struct arch_view *view, struct arch_change *change)
{
    const struct arch *arch = view->arch;
    const struct specification *specification = view->plan->specification;
    change->rooms = (struct arch_rooms){
        .ride_m = UNKNOWN,
        .bump_m = arch_room_at_bump_m(arch->above_m - change->chains_m,
                                      view->suspension->travel_to_bump_m, change->diameter_m,
                                      known_or(view->suspension->bump_stop_change_m, 0)),
        .inner_m = arch->inner_m - change->chains_m - change->move.inner_m,
        .outer_m = arch->outer_m - change->chains_m - change->move.outer_m,
        .lock_m = arch_lock_room_m(view, change, 0),
    };
    for (size_t i = 0; i < state_count(specification); i++)
        change->rooms.ride_m =
            lower_of(change->rooms.ride_m, room_at_ride(view, change, &view->states[i]));
}

/* The first thing that a room is not known for. */
static const char *what_is_missing(const struct arch_view *view, const struct arch_change *change,
                                   enum quantity_id quantity, bool at_bump)
{
    const struct arch *arch = view->arch;
    const struct {
        enum quantity_id quantity;
        const char *key;
        double measured_m;
    } measured[] = {{QUANTITY_ARCH_ABOVE, "above", arch->above_m},
                    {QUANTITY_ARCH_INNER, "inner", arch->inner_m},
                    {QUANTITY_ARCH_OUTER, "outer", arch->outer_m},
                    {QUANTITY_ARCH_LOCK, "at_lock", arch->at_lock_m}};
    for (size_t i = 0; i < sizeof measured / sizeof measured[0]; i++)
        if (measured[i].quantity == quantity && !known(measured[i].measured_m))
            return arena_format(view->plan->arena, "give clearance: arch: %s: %s",
                                axle_name(view->axle), measured[i].key);
    if (!known(change->diameter_m))
        return "give data_book: overall_diameter of both tyres";
    if (quantity == QUANTITY_ARCH_ABOVE)
        return at_bump ? "give suspension: travel_to_bump"
                       : "give suspension: wheel_rate, and vehicle: unladen and wheelbase";
    return "give wheel: width and inset of both";
}

/* Adds a room; the largest tyre's is judged: nothing left is a fail. */
static void add_room(const struct arch_view *view, const struct arch_change *change,
                     enum quantity_id quantity, const struct clearance_view *body, bool at_bump,
                     const char *basis, double room)
{
    struct figure figure = figure_of(quantity, room, basis);
    figure.axle = view->axle;
    figure.at = at_bump ? change->at_bump : body != NULL ? change->at_ride : change->name;
    if (body != NULL)
        figure.state = state_number(view->plan->specification, body->state);
    if (change->judged) {
        figure = figure_at_least(figure, 0);
        figure.headline = body == NULL && change->chains_m == 0 ? HEADLINE_YES : HEADLINE_NO;
        if (figure.verdict == VERDICT_FAIL)
            figure.action = arch_remedy(view, change, quantity, at_bump, room);
        else if (figure.verdict == VERDICT_UNKNOWN)
            figure.action = what_is_missing(view, change, quantity, at_bump);
    }
    figures_add(view->figures, figure);
}

static void report_above(const struct arch_view *view, const struct arch_change *change)
{
    const struct specification *specification = view->plan->specification;
    for (size_t i = 0; i < state_count(specification); i++)
        add_room(view, change, QUANTITY_ARCH_ABOVE, &view->states[i], false,
                 "above - dD/2 + lift - sag", room_at_ride(view, change, &view->states[i]));
    add_room(view, change, QUANTITY_ARCH_ABOVE, NULL, true,
             "above - travel to bump - dD/2 + bump stop change; lift does not help there",
             change->rooms.bump_m);
}

static void report_sides(const struct arch_view *view, const struct arch_change *change)
{
    bool steering = known(view->plan->specification->clearance.steering.axis_to_centre_m);
    add_room(view, change, QUANTITY_ARCH_INNER, NULL, false,
             "inner - (dS/2 + inset change - spacer change)", change->rooms.inner_m);
    add_room(view, change, QUANTITY_ARCH_OUTER, NULL, false,
             "outer - (dS/2 - inset change + spacer change)", change->rooms.outer_m);
    if (is_steered(view))
        add_room(view, change, QUANTITY_ARCH_LOCK, NULL, false,
                 steering ? "swept corner radius about the steering axis, outer and inner corner"
                          : "bound sqrt((dD/2)^2 + (edge move)^2), no steering geometry",
                 change->rooms.lock_m);
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
        {QUANTITY_TYRE_EDGE_INNER, nominal->move.inner_m},
        {QUANTITY_TYRE_EDGE_OUTER, nominal->move.outer_m},
    };
    for (size_t i = 0; i < sizeof changes / sizeof changes[0]; i++) {
        struct figure figure = figure_of(changes[i].quantity, changes[i].value,
                                         "nominal to nominal, by the same rule for both tyres");
        figure.axle = view->axle;
        figure.at = "nominal";
        figures_add(view->figures, figure);
    }
}

static void report_change(const struct arch_view *view, const struct arch_change *change)
{
    report_above(view, change);
    report_sides(view, change);
    if (change->judged)
        report_arch_fit(view, change);
}

void report_arch(const struct clearance_view *states, int axle, struct figures *figures)
{
    const struct plan *plan = states->plan;
    const struct arches *arches = &plan->specification->clearance.arch;
    const struct arch_view view = {
        .plan = plan,
        .index = states->index,
        .axle = axle,
        .setup = states->setup,
        .states = states,
        .arch = axle == AXLE_FRONT ? &arches->front : &arches->rear,
        .suspension = suspension_of(plan, axle),
        .figures = figures,
    };
    bool has_chains = view.setup->axle[axle].snow_chains_m > 0;
    for (int largest = 0; largest < 2; largest++)
        for (int chains = 0; chains < 1 + has_chains; chains++) {
            struct arch_change change = change_of(&view, largest == 1, chains == 1);
            set_rooms(&view, &change);
            report_change(&view, &change);
            if (!largest && !chains && !view.setup->is_fitted)
                report_changes(&view, &change);
        }
}
