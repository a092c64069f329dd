/* The gearing part: every drive that the file describes, section by section. */
#include "report/gearing/view.h"

#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"

void drive_add(const struct drive_view *view, struct figure figure)
{
    if (view->is_choice)
        figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(view->figures, figure);
}

const char *gear_name(const struct drive_view *view, size_t gear)
{
    if (view->variable)
        return gear == 0 ? "lowest gear" : "highest gear";
    return arena_format(view->plan->arena, "gear %zu", gear + 1);
}

const char *gear_text(const struct drive_view *view, size_t gear, size_t range)
{
    const char *name = view->ranges[range].name;
    return arena_format(view->plan->arena, "%s%s%s%s", view->prefix, gear_name(view, gear),
                        *name ? " " : "", name);
}

const char *road_speed_text(const struct drive_view *view, double speed_mps)
{
    enum unit_id unit = view->plan->us ? UNIT_MPH : UNIT_KMH;
    return arena_format(view->plan->arena, "%.4g %s", unit_from_si(unit, speed_mps),
                        unit_table[unit].name);
}

const char *rotation_text(const struct drive_view *view, double engine_speed)
{
    return arena_format(view->plan->arena, "%.0f rpm", unit_from_si(UNIT_RPM, engine_speed));
}

const char *ratio_text(struct arena *arena, double ratio)
{
    char *text = arena_format(arena, "%.3f", ratio);
    size_t length = strlen(text);
    if (text[length - 1] == '0')
        text[length - 1] = '\0';
    return text;
}

double overall_in(const struct drive_view *view, size_t gear, size_t range)
{
    return overall_ratio(view->gears.items[gear], view->ranges[range].ratio, view->ratio,
                         view->hub);
}

double fitted_overall_in(const struct drive_view *view, size_t gear, size_t range)
{
    return overall_ratio(view->gears.items[gear], view->ranges[range].ratio, view->from_ratio,
                         view->hub);
}

static void set_gears(struct drive_view *view)
{
    const struct variable_ratio *variable = &view->drivetrain->variable;
    view->variable = variable->given != NULL;
    view->gears = view->drivetrain->gears;
    if (!view->variable)
        return;
    double *ends = arena_allocate_array(view->plan->arena, 2, sizeof *ends);
    ends[0] = variable->lowest_gear;
    ends[1] = variable->highest_gear;
    view->gears = (struct number_list){ends, 2};
}

static void set_ranges(struct drive_view *view)
{
    const struct transfer *transfer = &view->drivetrain->transfer;
    struct arena *arena = view->plan->arena;
    struct range *ranges = arena_allocate_array(arena, transfer->low.count + 1, sizeof *ranges);
    ranges[0] = (struct range){transfer->low.count > 0 ? "high" : "", known_or(transfer->high, 1)};
    for (size_t i = 0; i < transfer->low.count; i++) {
        double ratio = transfer->low.items[i];
        ranges[i + 1] = (struct range){
            transfer->low.count == 1 ? "low"
                                     : arena_format(arena, "low %s", ratio_text(arena, ratio)),
            ratio};
    }
    view->ranges = ranges;
    view->range_count = transfer->low.count + 1;
}

static double circumference_of(const struct plan *plan, struct axle_pair axle,
                               const struct tyre_figures *figures)
{
    return driven_circumference_m(plan->specification->vehicle.drive, axle,
                                  figures[AXLE_FRONT].rolling_circumference_m,
                                  figures[AXLE_REAR].rolling_circumference_m);
}

static struct drive_view view_of(const struct plan *plan, size_t index, struct figures *figures)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    const struct beside *beside = &plan->beside[index];
    double ratio = driven_axle_ratio(plan->specification->vehicle.drive, drivetrain->axle);
    double usual = plan->us ? unit_to_si(UNIT_MPH, 60) : unit_to_si(UNIT_KMH, 100);
    struct drive_view view = {
        .plan = plan,
        .drivetrain = drivetrain,
        .figures = figures,
        .setup = &plan->setups[index],
        .beside = beside,
        .prefix = "",
        .from_ratio = ratio,
        .from_m = circumference_of(plan, drivetrain->axle, beside->before),
        .ratio = ratio,
        .to_m = circumference_of(plan, drivetrain->axle, beside->after),
        .hub = known_or(drivetrain->hub_reduction, 1),
        .slip = known_or(drivetrain->slip, 0),
        .cruise_mps = known_or(drivetrain->cruising_speed_mps, usual),
    };
    set_gears(&view);
    set_ranges(&view);
    return view;
}

static struct drive_view view_on_choice(const struct drive_view *on_own, double choice)
{
    struct drive_view view = *on_own;
    view.is_choice = true;
    view.prefix = arena_format(view.plan->arena, "axle %s, ", ratio_text(view.plan->arena, choice));
    view.ratio = choice;
    view.to_m = circumference_of(view.plan, (struct axle_pair){choice, choice}, view.beside->after);
    return view;
}

struct views {
    struct drive_view *items;
    size_t count;
};

/* Each setup, and each option on each axle choice; the fitted setup too where it stands alone. */
static struct views views_make(const struct plan *plan, struct figures *figures)
{
    const struct number_list *choices = &plan->specification->drivetrain.axle_choices;
    struct views views = {
        arena_allocate_array(plan->arena, plan->count * (choices->count + 1), sizeof *views.items),
        0};
    for (size_t i = 0; i < plan->count; i++) {
        const struct drive_view *own = &views.items[views.count];
        views.items[views.count++] = view_of(plan, i, figures);
        for (size_t j = 0; j < choices->count && (i > 0 || plan->count == 1); j++)
            views.items[views.count++] = view_on_choice(own, choices->items[j]);
    }
    return views;
}

static void add_assumption(struct figures *figures, const char *text)
{
    struct figure figure = figure_of(QUANTITY_ASSUMPTION, UNKNOWN, "assumption");
    figure.action = text;
    figures_add(figures, figure);
}

static bool axles_differ(const struct plan *plan)
{
    const struct axle_pair *axle = &plan->specification->drivetrain.axle;
    bool differ = axle->front != axle->rear;
    for (size_t i = 0; i < plan->count; i++)
        differ = differ || plan->beside[i].after[AXLE_FRONT].rolling_circumference_m !=
                               plan->beside[i].after[AXLE_REAR].rolling_circumference_m;
    return differ;
}

static void report_drive_assumptions(const struct plan *plan, struct figures *figures)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    int drive = plan->specification->vehicle.drive;
    const struct {
        bool missing;
        const char *text;
    } assumed[] = {
        {!known(drivetrain->transfer.high), "no transfer: high is given: 1 is taken"},
        {!known(drivetrain->slip), "no slip is given: a locked converter or a clutch is taken"},
        {drive == CHOICE_NONE, "no vehicle: drive is given: the rear axle is taken as driven"},
        {drive == DRIVE_FULL_TIME_4WD && axles_differ(plan),
         "the centre differential is taken to share turns equally front and rear"},
        {!known(drivetrain->cruising_speed_mps),
         plan->us ? "no cruising_speed is given: 60 mph is taken"
                  : "no cruising_speed is given: 100 km/h is taken"},
    };
    for (size_t i = 0; i < sizeof assumed / sizeof assumed[0]; i++)
        if (assumed[i].missing)
            add_assumption(figures, assumed[i].text);
    if (!gears_fall(&drivetrain->gears))
        add_assumption(figures, "the gears do not fall in ratio from one to the next: each keeps "
                                "its number, and the smallest ratio counts as the highest gear");
    report_pull_assumptions(plan, add_assumption, figures);
}

void report_gearing(const struct plan *plan, struct figures *figures)
{
    static void (*const sections[])(const struct drive_view *) = {
        report_cruising, report_axle_ratio, report_driveline, report_held,   report_gears,
        report_steps,    report_crawl,      report_pull,      report_grades, report_acceleration,
    };
    figures->part = PART_GEARING;
    if (plan->specification->drivetrain.given == NULL) {
        report_missing_part(figures, PART_GEARING, "drivetrain");
        return;
    }
    figures->setup = 0;
    report_drive_assumptions(plan, figures);
    struct views views = views_make(plan, figures);
    for (size_t i = 0; i < sizeof sections / sizeof sections[0]; i++)
        for (size_t j = 0; j < views.count; j++) {
            figures->setup = (int)(views.items[j].setup - plan->setups);
            sections[i](&views.items[j]);
        }
}
