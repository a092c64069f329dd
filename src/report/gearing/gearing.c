/* The gearing part: every setup on every axle ratio, section by section. */
#include "report/gearing/geared_setup.h"

#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"

void geared_add(const struct geared_setup *geared, struct figure figure)
{
    if (geared->is_choice)
        figure.headline = HEADLINE_ROWS_ONLY;
    figures_add(geared->figures, figure);
}

struct place place_on_axle(const struct geared_setup *geared)
{
    struct place place = place_none();
    if (geared->is_choice)
        place.axle_ratio = geared->ratio;
    return place;
}

struct place place_in_gear(const struct geared_setup *geared, size_t gear, size_t range)
{
    struct place place = place_on_axle(geared);
    place.range = geared->ranges[range].range;
    place.low_ratio = geared->ranges[range].low_ratio;
    if (geared->variable)
        place.gear_name = gear == 0 ? AT_LOWEST_GEAR : AT_HIGHEST_GEAR;
    else
        place.gear = (int)gear + 1;
    return place;
}

double overall_in(const struct geared_setup *geared, size_t gear, size_t range)
{
    return overall_ratio(geared->gears.items[gear], geared->ranges[range].ratio, geared->ratio,
                         geared->hub);
}

double fitted_overall_in(const struct geared_setup *geared, size_t gear, size_t range)
{
    return overall_ratio(geared->gears.items[gear], geared->ranges[range].ratio, geared->from_ratio,
                         geared->hub);
}

static void set_gears(struct geared_setup *geared)
{
    const struct variable_ratio *variable = &geared->drivetrain->variable;
    geared->variable = variable->given != NULL;
    geared->gears = geared->drivetrain->gears;
    if (!geared->variable)
        return;
    double *ends = arena_allocate_array(geared->plan->arena, 2, sizeof *ends);
    ends[0] = variable->lowest_gear;
    ends[1] = variable->highest_gear;
    geared->gears = (struct number_list){ends, 2};
}

static void set_ranges(struct geared_setup *geared)
{
    const struct transfer *transfer = &geared->drivetrain->transfer;
    size_t low_count = transfer->low.count;
    struct gear_range *ranges =
        arena_allocate_array(geared->plan->arena, low_count + 1, sizeof *ranges);
    ranges[0] = (struct gear_range){AT_HIGH_RANGE, UNKNOWN, known_or(transfer->high, 1)};
    for (size_t i = 0; i < low_count; i++) {
        double ratio = transfer->low.items[i];
        ranges[i + 1] = (struct gear_range){AT_LOW_RANGE, low_count == 1 ? UNKNOWN : ratio, ratio};
    }
    geared->ranges = ranges;
    geared->range_count = low_count + 1;
}

/* Where the change of engine speed is told, unless the file says where. */
static double usual_cruise_mps(const struct plan *plan)
{
    return plan->us ? unit_to_si(UNIT_MPH, 60) : unit_to_si(UNIT_KMH, 100);
}

static struct geared_setup on_own_axle(const struct plan *plan, size_t index,
                                       struct figures *figures)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    const struct beside *beside = &plan->beside[index];
    double ratio = driven_axle_ratio(plan->specification->vehicle.drive, drivetrain->axle);
    struct geared_setup geared = {
        .plan = plan,
        .drivetrain = drivetrain,
        .figures = figures,
        .setup = &plan->setups[index],
        .beside = beside,
        .from_ratio = ratio,
        .from_m = plan_circumference_m(plan, drivetrain->axle, beside->before),
        .ratio = ratio,
        .to_m = plan_circumference_m(plan, drivetrain->axle, beside->after),
        .hub = known_or(drivetrain->hub_reduction, 1),
        .slip = known_or(drivetrain->slip, 0),
        .cruise_mps = known_or(drivetrain->cruising_speed_mps, usual_cruise_mps(plan)),
    };
    set_gears(&geared);
    set_ranges(&geared);
    return geared;
}

static struct geared_setup on_choice(const struct geared_setup *own, double choice)
{
    struct geared_setup geared = *own;
    geared.is_choice = true;
    geared.ratio = choice;
    geared.to_m =
        plan_circumference_m(own->plan, (struct axle_pair){choice, choice}, own->beside->after);
    return geared;
}

struct geared_setups {
    struct geared_setup *items;
    size_t count;
};

/* Each setup, and each option on each axle choice; the fitted setup too where it stands alone. */
static struct geared_setups geared_setups_make(const struct plan *plan, struct figures *figures)
{
    const struct number_list *choices = &plan->specification->drivetrain.axle_choices;
    size_t most = plan->count * (choices->count + 1);
    struct geared_setups all = {arena_allocate_array(plan->arena, most, sizeof *all.items), 0};
    for (size_t i = figures->first_setup; i < plan->count; i++) {
        const struct geared_setup *own = &all.items[all.count];
        all.items[all.count++] = on_own_axle(plan, i, figures);
        for (size_t j = 0; j < choices->count && (i > 0 || plan->count == 1); j++)
            all.items[all.count++] = on_choice(own, choices->items[j]);
    }
    return all;
}

static bool axles_differ(const struct plan *plan)
{
    const struct axle_pair *axle = &plan->specification->drivetrain.axle;
    bool differ = !same_value(axle->front, axle->rear);
    for (size_t i = 0; i < plan->count; i++) {
        double front_m = plan->beside[i].after[AXLE_FRONT].rolling_circumference_m;
        double rear_m = plan->beside[i].after[AXLE_REAR].rolling_circumference_m;
        differ = differ || !known(front_m) || !same_value(front_m, rear_m);
    }
    return differ;
}

static void report_gear_assumptions(const struct plan *plan, struct figures *figures)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    int drive = plan->specification->vehicle.drive;
    figures_assume(figures, !known(drivetrain->transfer.high), remark(TAKEN_HIGH_RANGE));
    figures_assume(figures, !known(drivetrain->slip), remark(TAKEN_NO_SLIP));
    figures_assume(figures, drive == CHOICE_NONE, remark(TAKEN_REAR_DRIVE));
    figures_assume(figures, drive == DRIVE_FULL_TIME_4WD && axles_differ(plan),
                   remark(TAKEN_EQUAL_SHARES));
    figures_assume(figures, !known(drivetrain->cruising_speed_mps),
                   REMARK_WITH(figures->arena, TAKEN_CRUISING_SPEED,
                               say_speed(usual_cruise_mps(plan), plan->us ? UNIT_MPH : UNIT_KMH)));
    figures_assume(figures, !gears_fall(&drivetrain->gears), remark(TAKEN_GEARS_AS_LISTED));
    report_pull_assumptions(plan, figures);
}

void report_gearing(const struct plan *plan, struct figures *figures)
{
    static const struct {
        void (*report)(const struct geared_setup *geared);
        bool judges; /* and does not only tell */
    } sections[] = {
        {report_cruising, false},     {report_axle_ratio, true}, {report_driveline, true},
        {report_held, false},         {report_gears, false},     {report_steps, false},
        {report_crawl, false},        {report_pull, false},      {report_grades, false},
        {report_acceleration, false},
    };
    figures->part = PART_GEARING;
    if (plan->specification->drivetrain.given == NULL) {
        report_missing_part(figures, PART_GEARING, "drivetrain");
        return;
    }
    if (!has_gearbox(&plan->specification->drivetrain)) { /* the axle alone, for a sensor's sake */
        report_missing_part(figures, PART_GEARING, "drivetrain: gears");
        return;
    }
    figures->setup = 0;
    report_gear_assumptions(plan, figures);
    struct geared_setups all = geared_setups_make(plan, figures);
    for (size_t i = 0; i < sizeof sections / sizeof sections[0]; i++)
        for (size_t j = 0; j < all.count && (sections[i].judges || !figures->verdicts_only); j++) {
            figures->setup = (int)(all.items[j].setup - plan->setups);
            sections[i].report(&all.items[j]);
        }
}
