/* Ground and body clearance, angles, arch room, track, spare: nominal, and with the largest tyre
 * that the standard allows. */
#include "base/known.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "report/clearance_view.h"
#include "report/plan.h"

static double in_pair(struct axle_pair pair, int axle)
{
    return axle == AXLE_FRONT ? pair.front : pair.rear;
}

static const struct axle_suspension *suspension_of(const struct plan *plan, int axle)
{
    const struct suspension *suspension = &plan->specification->suspension;
    return axle == AXLE_FRONT ? &suspension->front : &suspension->rear;
}

/* Sag under what a state adds to the springs; tyres and wheels do not ride on them. */
static double sag_in_state(const struct plan *plan, const struct setup *setup,
                           const struct state *state, int axle)
{
    struct axle_loads loads;
    axle_loads_in_state(plan->specification, state, &plan->fitted, setup, &loads);
    double added = loads.axle_kg[axle] - in_pair(plan->specification->vehicle.unladen_kg, axle) -
                   tyre_mass_change_kg(&plan->fitted, setup, (enum axle)axle);
    if (added == 0)
        return 0;
    return axle_sag_m(added, suspension_of(plan, axle)->wheel_rate_N_m);
}

static double radius_change(const struct plan *plan, size_t index, int axle)
{
    const struct beside *beside = &plan->beside[index];
    return beside->after[axle].static_loaded_radius_m - beside->before[axle].static_loaded_radius_m;
}

void clearance_view_make(const struct plan *plan, size_t index, const struct state *state,
                         struct clearance_view *out)
{
    *out = (struct clearance_view){.plan = plan, .index = index, .setup = &plan->setups[index],
                                   .state = state};
    double ride[AXLE_COUNT], tyre[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        out->sag_m[axle] = sag_in_state(plan, out->setup, state, axle);
        out->lift_m[axle] = known_or(suspension_of(plan, axle)->lift_m, 0);
        tyre[axle] = radius_change(plan, index, axle);
        ride[axle] = tyre[axle] + out->lift_m[axle] - out->sag_m[axle];
        out->radius_m[axle] = plan->beside[index].after[axle].static_loaded_radius_m;
    }
    out->body_change_m = (struct axle_pair){ride[AXLE_FRONT], ride[AXLE_REAR]};
    out->tyre_change_m = (struct axle_pair){tyre[AXLE_FRONT], tyre[AXLE_REAR]};
}

static struct figure view_figure(const struct clearance_view *view, enum quantity_id quantity,
                                 double value, const char *basis)
{
    struct figure figure = figure_of(PART_CLEARANCE, quantity, view->setup->name, value, basis);
    figure.state = state_name(view->state);
    return figure;
}

/* Change of a part that rides on the springs: at its place, or the smaller of both axles'. */
static double body_change(const struct clearance_view *view, struct axle_pair change)
{
    const struct specification *specification = view->plan->specification;
    double at = specification->clearance.ground_at_m;
    if (known(at))
        return change_at_m(change, at, specification->vehicle.wheelbase_m);
    if (!known(change.front) || !known(change.rear))
        return UNKNOWN;
    return fmin(change.front, change.rear);
}

static void report_body(const struct clearance_view *view, struct figures *figures)
{
    const struct clearance_measured *measured = &view->plan->specification->clearance;
    struct figure figure = view_figure(
        view, QUANTITY_BODY, measured->ground_m + body_change(view, view->body_change_m),
        "measured + loaded radius + lift - sag by the wheel rate");
    figure.headline = view->headline;
    if (!known(figure.value)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = known(measured->ground_m) ? "give vehicle: unladen, wheelbase and suspension: wheel_rate"
                                                  : "give clearance: ground";
    }
    figures_add(figures, figure);
    figure.verdict = VERDICT_NONE;
    figure.action = NULL;
    figure.headline = HEADLINE_NO;
    figure.quantity = QUANTITY_ROOF_HEIGHT;
    figure.value = measured->roof_height_m +
                   fmax(view->body_change_m.front, view->body_change_m.rear);
    if (known(figure.value))
        figures_add(figures, figure);
    if (view->setup->is_fitted)
        return;
    figure.quantity = QUANTITY_BODY_CHANGE;
    figure.value = body_change(view, view->tyre_change_m);
    figure.basis = "change of the static loaded radius, 0.912 D/2 for both";
    figures_add(figures, figure);
}

/* The smallest angle of a list of points; *governing names the point. */
static double smallest_angle(const struct clearance_view *view, const struct point_list *points,
                             double (*angle)(const struct clearance_view *view,
                                             const struct body_point *point),
                             const char **governing)
{
    double smallest = UNKNOWN;
    for (size_t i = 0; i < points->count; i++) {
        double here = angle(view, &points->items[i]);
        if (!known(here))
            return UNKNOWN;
        if (!known(smallest) || here < smallest) {
            smallest = here;
            *governing = points->items[i].item;
        }
    }
    return smallest;
}

static double height_of(const struct clearance_view *view, const struct body_point *point,
                        double at_m)
{
    double wheelbase = view->plan->specification->vehicle.wheelbase_m;
    return point->height_m + change_at_m(view->body_change_m, at_m, wheelbase);
}

static double approach_of(const struct clearance_view *view, const struct body_point *point)
{
    return ramp_angle_rad(point->ahead_m, height_of(view, point, -point->ahead_m),
                          view->radius_m[AXLE_FRONT]);
}

static double departure_of(const struct clearance_view *view, const struct body_point *point)
{
    double wheelbase = view->plan->specification->vehicle.wheelbase_m;
    return ramp_angle_rad(point->behind_m, height_of(view, point, wheelbase + point->behind_m),
                          view->radius_m[AXLE_REAR]);
}

static double breakover_of(const struct clearance_view *view, const struct body_point *point)
{
    return breakover_angle_rad(point->at_m, height_of(view, point, point->at_m),
                               view->plan->specification->vehicle.wheelbase_m,
                               view->radius_m[AXLE_FRONT], view->radius_m[AXLE_REAR]);
}

static void report_angles(const struct clearance_view *view, struct figures *figures)
{
    const struct clearance_measured *measured = &view->plan->specification->clearance;
    const struct {
        enum quantity_id quantity;
        const struct point_list *points;
        double (*angle)(const struct clearance_view *view, const struct body_point *point);
        const char *key;
    } angles[] = {
        {QUANTITY_APPROACH, &measured->front_overhang, approach_of, "clearance: front_overhang"},
        {QUANTITY_DEPARTURE, &measured->rear_overhang, departure_of, "clearance: rear_overhang"},
        {QUANTITY_BREAKOVER, &measured->belly, breakover_of, "clearance: belly"},
    };
    for (size_t i = 0; i < sizeof angles / sizeof angles[0]; i++) {
        const char *governing = NULL;
        double angle = smallest_angle(view, angles[i].points, angles[i].angle, &governing);
        struct figure figure = view_figure(view, angles[i].quantity, angle,
                                           "tangent to the loaded tyre (40 CFR 86.084-2, 49 CFR 523.2)");
        figure.headline = view->headline;
        if (governing != NULL)
            figure.basis = arena_format(view->plan->arena, "%s; governed by: %s", figure.basis, governing);
        if (!known(angle)) {
            figure.verdict = VERDICT_UNKNOWN;
            figure.action = angles[i].points->count == 0
                                ? arena_format(view->plan->arena, "give %s", angles[i].key)
                                : "give vehicle: wheelbase and unladen, suspension: wheel_rate, and points outside the tyre";
        }
        figures_add(figures, figure);
    }
}

static void report_under_axle(const struct plan *plan, size_t index, int axle,
                              struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    double change = radius_change(plan, index, axle);
    double measured = in_pair(plan->specification->clearance.under_axle_m, axle);
    struct figure figure = figure_of(PART_CLEARANCE, QUANTITY_UNDER_AXLE, setup->name,
                                     measured + change, "measured + change of the loaded radius");
    figure.axle = axle;
    if (!known(measured)) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = "give clearance: under_axle";
    }
    figures_add(figures, figure);
    figure.verdict = VERDICT_NONE;
    figure.action = NULL;
    if (setup->is_fitted)
        return;
    figure.quantity = QUANTITY_UNDER_AXLE_CHANGE;
    figure.value = change;
    figure.headline = axle == AXLE_FRONT ? HEADLINE_YES : HEADLINE_NO;
    figures_add(figures, figure);
}

/* Limits on lift, lift and diameter together, track and inset. */
static void report_fit_limits(const struct plan *plan, size_t index, int axle,
                              struct figures *figures)
{
    const struct setup *setup = &plan->setups[index];
    const struct beside *beside = &plan->beside[index];
    const struct limits *limits = &plan->specification->limits;
    const struct wheel *before = &plan->fitted.axle[axle].wheel, *after = &setup->axle[axle].wheel;
    double lift = known_or(suspension_of(plan, axle)->lift_m, 0);
    double taller = beside->after[axle].overall_diameter_m - beside->before[axle].overall_diameter_m;
    double track = in_pair(plan->specification->vehicle.track_m, axle);
    struct figure figure = figure_of(PART_CLEARANCE, QUANTITY_RIDE_HEIGHT_CHANGE, setup->name, lift,
                                     "suspension: lift");
    figure.axle = axle;
    report_limits(plan, figures, figure, &limits->ride_height_change, UNKNOWN);
    figure.quantity = QUANTITY_DIAMETER_AND_SUSPENSION;
    figure.value = lift + taller / 2;
    report_limits(plan, figures, figure, &limits->diameter_and_suspension, UNKNOWN);
    figure.quantity = QUANTITY_TRACK_CHANGE;
    figure.value = track_change_m(before, after);
    figure.basis = "-2 x inset change + 2 x spacer change";
    if (!setup->is_fitted)
        figures_add(figures, figure);
    report_limits(plan, figures, figure, &limits->track_change, track);
    figure.quantity = QUANTITY_INSET_CHANGE;
    figure.value = after->inset_m - before->inset_m;
    report_limits(plan, figures, figure, &limits->inset_change, UNKNOWN);
}

static void report_spare_room(const struct plan *plan, const struct setup *setup,
                              struct figures *figures)
{
    const struct spare_space *space = &plan->specification->clearance.spare_space;
    if (setup->spare.size_node == NULL)
        return;
    struct tyre_measures measures;
    tyre_measure(&setup->spare, &measures);
    struct figure figure = figure_of(PART_CLEARANCE, QUANTITY_SPARE_ROOM, setup->name,
                                     space->diameter_m - measures.stated.overall_diameter_max_m,
                                     "measured space less the largest tyre");
    for (int width = 0; width < 2; width++) {
        figure.at = width ? "largest, width" : "largest, diameter";
        if (width)
            figure.value = space->width_m - measures.stated.width_on_rim_max_m;
        figure = figure_at_least(figure, 0);
        figure.action = figure.verdict == VERDICT_UNKNOWN ? "give clearance: spare_space"
                        : figure.verdict == VERDICT_FAIL  ? "carry the spare elsewhere"
                                                          : NULL;
        figures_add(figures, figure);
    }
}

/* The state in which the body stands lowest: the one that a glance should see. */
static size_t lowest_state(const struct plan *plan)
{
    size_t lowest = 0;
    double least = INFINITY;
    for (size_t i = 0; i < state_count(plan->specification); i++) {
        struct clearance_view view;
        clearance_view_make(plan, 0, state_at(plan->specification, i), &view);
        double here = body_change(&view, view.body_change_m);
        if (here < least) {
            least = here;
            lowest = i;
        }
    }
    return lowest;
}

void report_clearance(const struct plan *plan, struct figures *figures)
{
    const struct specification *specification = plan->specification;
    size_t lowest = lowest_state(plan);
    for (size_t i = 0; i < plan->count; i++) {
        for (size_t j = 0; j < state_count(specification); j++) {
            struct clearance_view view;
            clearance_view_make(plan, i, state_at(specification, j), &view);
            view.headline = j == lowest ? HEADLINE_YES : HEADLINE_NO;
            report_body(&view, figures);
            report_angles(&view, figures);
        }
        for (int axle = 0; axle < AXLE_COUNT; axle++) {
            report_under_axle(plan, i, axle, figures);
            report_arch(plan, i, axle, figures);
            report_fit_limits(plan, i, axle, figures);
        }
        report_spare_room(plan, &plan->setups[i], figures);
    }
}
