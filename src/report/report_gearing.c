/* Overall ratios, road and engine speeds, crawl, and the axle ratio that gives the drive back. */
#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"
#include "report/plan.h"

static const char speed_basis[] = "v = C n (1 - slip) / overall ratio";

/* One setup's drive: circumference of the driven axle, and the vehicle's ratios. */
struct drive_view {
    const struct plan *plan;
    const struct drivetrain *drivetrain;
    struct figures *figures;
    const struct setup *setup;
    double from_m, to_m;
    double axle, hub, high, low, slip;
};

static struct figure drive_figure(const struct drive_view *view, enum quantity_id quantity,
                                  double value, const char *basis)
{
    return figure_of(PART_GEARING, quantity, view->setup->name, value, basis);
}

static const char *gear_text(const struct drive_view *view, size_t gear, const char *range)
{
    return arena_format(view->plan->arena, "gear %zu%s%s", gear + 1, *range ? " " : "", range);
}

static void report_gear(const struct drive_view *view, size_t gear, double transfer,
                        const char *range)
{
    double overall = overall_ratio(view->drivetrain->gears.items[gear], transfer, view->axle, view->hub);
    struct figure figure = drive_figure(view, QUANTITY_OVERALL_RATIO, overall,
                                        "gear x transfer x axle x hub reduction");
    figure.at = gear_text(view, gear, range);
    figures_add(view->figures, figure);
    figure.quantity = QUANTITY_SPEED_PER_1000;
    figure.value = road_speed_mps(view->to_m, unit_to_si(UNIT_RPM, 1000), overall, view->slip);
    figure.basis = speed_basis;
    bool highest = gear + 1 == view->drivetrain->gears.count && strcmp(range, "low") != 0;
    figure.headline = highest ? HEADLINE_YES : HEADLINE_NO;
    figures_add(view->figures, figure);
    figure.headline = HEADLINE_NO;
    double limit = view->drivetrain->engine.limit_per_s;
    if (!known(limit))
        return;
    figure.quantity = QUANTITY_ROAD_SPEED;
    figure.value = road_speed_mps(view->to_m, limit, overall, view->slip);
    figure.at = arena_format(view->plan->arena, "%s, %.0f rpm", gear_text(view, gear, range),
                             unit_from_si(UNIT_RPM, limit));
    figures_add(view->figures, figure);
}

/* Engine speed in the highest gear at the usual road speeds. */
static void report_cruising(const struct drive_view *view)
{
    static const double kmh[] = {80, 100, 110, 120}, mph[] = {50, 60, 65, 75};
    const struct number_list *gears = &view->drivetrain->gears;
    if (gears->count == 0)
        return;
    double top = overall_ratio(gears->items[gears->count - 1], view->high, view->axle, view->hub);
    enum unit_id unit = view->plan->us ? UNIT_MPH : UNIT_KMH;
    for (size_t i = 0; i < sizeof kmh / sizeof kmh[0]; i++) {
        double speed = view->plan->us ? mph[i] : kmh[i];
        struct figure figure = drive_figure(
            view, QUANTITY_ENGINE_SPEED,
            engine_speed_per_s(view->to_m, unit_to_si(unit, speed), top, view->slip), speed_basis);
        figure.at = arena_format(view->plan->arena, "%s, %.0f %s",
                                 gear_text(view, gears->count - 1, ""), speed, unit_table[unit].name);
        figure.headline = i == 1 ? HEADLINE_YES : HEADLINE_NO;
        figures_add(view->figures, figure);
    }
}

static void report_crawl(const struct drive_view *view)
{
    const struct number_list *gears = &view->drivetrain->gears;
    double low = known(view->low) ? view->low : view->high;
    if (gears->count == 0)
        return;
    double crawl = overall_ratio(gears->items[0], low, view->axle, view->hub);
    struct figure figure = drive_figure(view, QUANTITY_CRAWL_RATIO, crawl,
                                        "first gear x lowest range x axle x hub reduction");
    figure.headline = HEADLINE_YES;
    figures_add(view->figures, figure);
    double idle = view->drivetrain->engine.idle_per_s;
    if (!known(idle))
        return;
    figure.quantity = QUANTITY_CRAWL_SPEED;
    figure.value = road_speed_mps(view->to_m, idle, crawl, 0);
    figure.basis = speed_basis;
    figures_add(view->figures, figure);
}

static void report_axle_ratio(const struct drive_view *view)
{
    const struct drivetrain *drivetrain = view->drivetrain;
    double restoring = restoring_axle_ratio(view->axle, view->from_m, view->to_m);
    struct figure figure =
        drive_figure(view, QUANTITY_EFFECTIVE_AXLE,
                     effective_axle_ratio(view->axle, view->from_m, view->to_m),
                     "axle ratio x C_old / C_new");
    figure.headline = HEADLINE_YES;
    figures_add(view->figures, figure);
    figure.quantity = QUANTITY_RESTORING_AXLE;
    figure.value = restoring;
    figure.basis = "axle ratio x C_new / C_old";
    figures_add(view->figures, figure);
    double nearest = nearest_axle_choice(&drivetrain->axle_choices, restoring);
    if (!known(nearest) || view->setup->is_fitted)
        return;
    figure.quantity = QUANTITY_NEAREST_AXLE;
    figure.value = nearest;
    figure.basis = "of axle_choices, nearest in ratio to the restoring one";
    figures_add(view->figures, figure);
    figure.quantity = QUANTITY_AXLE_REMAINS;
    figure.value = nearest / restoring - 1;
    figure.basis = "engine speed at a road speed beside the fitted tyre's, with the nearest choice";
    figures_add(view->figures, figure);
}

static void report_mismatch(const struct drive_view *view)
{
    int drive = view->plan->specification->vehicle.drive;
    if (drive != DRIVE_PART_TIME_4WD && drive != DRIVE_FULL_TIME_4WD)
        return;
    const struct tyre *front = &view->setup->axle[AXLE_FRONT], *rear = &view->setup->axle[AXLE_REAR];
    struct tyre_figures front_figures, rear_figures;
    bool mixed;
    figures_to_compare(front, rear, &front_figures, &rear_figures, &mixed);
    double mismatch = circumference_mismatch(view->drivetrain->axle,
                                             front_figures.rolling_circumference_m,
                                             rear_figures.rolling_circumference_m);
    struct figure figure = drive_figure(view, QUANTITY_MISMATCH, mismatch,
                                        "(ratio_front / C_front) / (ratio_rear / C_rear) - 1; "
                                        "handbooks ask for equal size, make and wear (common "
                                        "practice, no source)");
    /* Common practice, no source: a quarter inch of circumference is quoted; about 0.3 %. */
    double allowed = 0.25 * 0.0254 / front_figures.rolling_circumference_m;
    figure.limit = allowed;
    figure.headline = HEADLINE_UNLESS_OK;
    if (!known(mismatch))
        figure.verdict = VERDICT_UNKNOWN;
    else
        figure.verdict = fabs(mismatch) > allowed ? VERDICT_CAUTION : VERDICT_OK;
    if (figure.verdict == VERDICT_CAUTION)
        figure.action = "coupled axles wind up: use tyres and ratios that match front to rear";
    figures_add(view->figures, figure);
}

static void report_drive(const struct plan *plan, size_t index, struct figures *figures)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    enum axle axle = plan_driven_axle(plan);
    double ratio = axle == AXLE_FRONT ? drivetrain->axle.front : drivetrain->axle.rear;
    const struct drive_view view = {
        .plan = plan,
        .drivetrain = drivetrain,
        .figures = figures,
        .setup = &plan->setups[index],
        .from_m = plan->beside[index].before[axle].rolling_circumference_m,
        .to_m = plan->beside[index].after[axle].rolling_circumference_m,
        .axle = ratio,
        .hub = known_or(drivetrain->hub_reduction, 1),
        .high = known_or(drivetrain->transfer.high, 1),
        .low = drivetrain->transfer.low,
        .slip = known_or(drivetrain->slip, 0),
    };
    bool ranges = known(view.low);
    report_cruising(&view);
    for (size_t gear = 0; gear < drivetrain->gears.count; gear++)
        report_gear(&view, gear, view.high, ranges ? "high" : "");
    for (size_t gear = 0; ranges && gear < drivetrain->gears.count; gear++)
        report_gear(&view, gear, view.low, "low");
    report_crawl(&view);
    report_axle_ratio(&view);
    report_mismatch(&view);
}

static void report_drive_assumptions(const struct plan *plan, struct figures *figures)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    struct figure figure =
        figure_of(PART_GEARING, QUANTITY_ASSUMPTION, plan->fitted.name, UNKNOWN, "assumption");
    const struct {
        bool missing;
        const char *text;
    } assumed[] = {
        {!known(drivetrain->transfer.high), "no transfer: high is given: 1 is taken"},
        {!known(drivetrain->slip), "no slip is given: a locked converter or a clutch is taken"},
        {plan->specification->vehicle.drive == CHOICE_NONE,
         "no vehicle: drive is given: the rear axle is taken as driven"},
    };
    for (size_t i = 0; i < sizeof assumed / sizeof assumed[0]; i++) {
        figure.action = assumed[i].text;
        if (assumed[i].missing)
            figures_add(figures, figure);
    }
}

void report_gearing(const struct plan *plan, struct figures *figures)
{
    if (plan->specification->drivetrain.node == NULL) {
        report_missing_part(figures, PART_GEARING, "drivetrain");
        return;
    }
    report_drive_assumptions(plan, figures);
    for (size_t i = 0; i < plan->count; i++)
        report_drive(plan, i, figures);
}
