/* Gear by gear: overall ratios, road and engine speeds, steps and crawl. */
#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"
#include "report/gearing/view.h"

static const char speed_basis[] = "v = C n (1 - slip) / overall ratio";

static void add_road_speed(const struct drive_view *view, const char *gear, double overall,
                           double engine_speed)
{
    struct figure figure =
        figure_of(QUANTITY_ROAD_SPEED,
                  road_speed_mps(view->to_m, engine_speed, overall, view->slip), speed_basis);
    figure.at = arena_format(view->plan->arena, "%s, %s", gear, rotation_text(view, engine_speed));
    drive_add(view, figure);
}

static void report_ratio(const struct drive_view *view, const char *gear, double overall,
                         bool headline)
{
    struct figure figure =
        figure_of(QUANTITY_OVERALL_RATIO, overall, "gear x transfer x axle x hub reduction");
    figure.at = gear;
    drive_add(view, figure);
    figure.quantity = QUANTITY_SPEED_PER_1000;
    figure.value = road_speed_mps(view->to_m, unit_to_si(UNIT_RPM, 1000), overall, view->slip);
    figure.basis = speed_basis;
    figure.headline = headline ? HEADLINE_YES : HEADLINE_NO;
    drive_add(view, figure);
    const struct number_list *asked = &view->drivetrain->engine_speeds_per_s;
    for (size_t i = 0; i < asked->count; i++)
        add_road_speed(view, gear, overall, asked->items[i]);
    double limit = view->drivetrain->engine.limit_per_s;
    for (size_t i = 0; i < asked->count; i++)
        if (asked->items[i] == limit)
            return;
    if (known(limit))
        add_road_speed(view, gear, overall, limit);
}

void report_gears(const struct drive_view *view)
{
    size_t top = highest_gear(&view->gears);
    for (size_t range = 0; range < view->range_count; range++) {
        for (size_t gear = 0; gear < view->gears.count; gear++)
            report_ratio(view, gear_text(view, gear, range), overall_in(view, gear, range),
                         gear == top && range == 0);
        const char *name = view->ranges[range].name;
        if (known(view->drivetrain->reverse))
            report_ratio(view,
                         arena_format(view->plan->arena, "%sreverse%s%s", view->prefix,
                                      *name ? " " : "", name),
                         overall_ratio(view->drivetrain->reverse, view->ranges[range].ratio,
                                       view->ratio, view->hub),
                         false);
    }
}

struct number_list asked_road_speeds(const struct drive_view *view)
{
    static const double kmh[] = {80, 100, 110, 120}, mph[] = {50, 60, 65, 75};
    enum { USUAL = sizeof kmh / sizeof kmh[0] };
    const struct number_list *given = &view->drivetrain->road_speeds_mps;
    size_t count = given->count > 0 ? given->count : USUAL;
    struct number_list asked = {
        arena_allocate_array(view->plan->arena, count + 1, sizeof *asked.items), 0};
    bool cruise_stands = false;
    for (size_t i = 0; i < count; i++) {
        double usual = i >= USUAL       ? UNKNOWN
                       : view->plan->us ? unit_to_si(UNIT_MPH, mph[i])
                                        : unit_to_si(UNIT_KMH, kmh[i]);
        double speed = given->count > 0 ? given->items[i] : usual;
        cruise_stands = cruise_stands || fabs(speed - view->cruise_mps) < 1e-9;
        asked.items[asked.count++] = speed;
    }
    if (!cruise_stands)
        asked.items[asked.count++] = view->cruise_mps;
    return asked;
}

/* Engine speed in the highest gear at the usual road speeds, and in every gear at those that the
 * file asks for, as far as the engine's limit lets it go. */
static void add_engine_speed(const struct drive_view *view, size_t gear, size_t range,
                             double speed_mps)
{
    bool highest = gear == highest_gear(&view->gears) && range == 0;
    double value =
        engine_speed_per_s(view->to_m, speed_mps, overall_in(view, gear, range), view->slip);
    if (!highest && (view->drivetrain->road_speeds_mps.count == 0 ||
                     value > view->drivetrain->engine.limit_per_s))
        return;
    struct figure figure = figure_of(QUANTITY_ENGINE_SPEED, value, speed_basis);
    const char *place =
        highest ? arena_format(view->plan->arena, "%s%s", view->prefix, gear_name(view, gear))
                : gear_text(view, gear, range);
    figure.at = arena_format(view->plan->arena, "%s, %s", place, road_speed_text(view, speed_mps));
    bool cruising = highest && fabs(speed_mps - view->cruise_mps) < 1e-9;
    figure.headline = cruising ? HEADLINE_YES : HEADLINE_NO;
    drive_add(view, figure);
}

void report_cruising(const struct drive_view *view)
{
    struct number_list speeds = asked_road_speeds(view);
    for (size_t range = 0; range < view->range_count; range++)
        for (size_t gear = view->gears.count; gear-- > 0;)
            for (size_t i = 0; i < speeds.count; i++)
                add_engine_speed(view, gear, range, speeds.items[i]);
}

/* Steps are the gearbox's own: told once, with the fitted setup. */
void report_steps(const struct drive_view *view)
{
    if (!view->setup->is_fitted || view->is_choice)
        return;
    const struct number_list *gears = &view->gears;
    struct figure figure = figure_of(
        QUANTITY_RATIO_SPREAD, gears->items[lowest_gear(gears)] / gears->items[highest_gear(gears)],
        "lowest / highest gear; the same on every tyre");
    drive_add(view, figure);
    double limit = view->drivetrain->engine.limit_per_s;
    for (size_t gear = 0; gear < gears->count && !view->variable; gear++) {
        size_t next = next_gear_up(gears, gear);
        if (next == gears->count)
            continue;
        double step = gears->items[gear] / gears->items[next];
        figure.quantity = QUANTITY_GEAR_STEP;
        figure.value = step;
        figure.basis = "ratio / ratio of the next gear; the same on every tyre";
        figure.at = arena_format(view->plan->arena, "gear %zu to %zu", gear + 1, next + 1);
        drive_add(view, figure);
        if (!known(limit))
            continue;
        figure.quantity = QUANTITY_UPSHIFT_DROP;
        figure.value = limit - limit / step;
        figure.basis = "n (1 - 1/step); the same on every tyre";
        figure.line = figure.at;
        figure.at =
            arena_format(view->plan->arena, "%s, %s", figure.at, rotation_text(view, limit));
        drive_add(view, figure);
        figure.line = NULL;
    }
}

static size_t lowest_range(const struct drive_view *view)
{
    size_t lowest = 0;
    for (size_t i = 1; i < view->range_count; i++)
        if (view->ranges[i].ratio > view->ranges[lowest].ratio)
            lowest = i;
    return lowest;
}

void report_crawl(const struct drive_view *view)
{
    double crawl = overall_in(view, lowest_gear(&view->gears), lowest_range(view));
    struct figure figure =
        figure_of(QUANTITY_CRAWL_RATIO, crawl, "first gear x lowest range x axle x hub reduction");
    figure.headline = HEADLINE_YES;
    figure.at = view->is_choice ? arena_format(view->plan->arena, "axle %s",
                                               ratio_text(view->plan->arena, view->ratio))
                                : NULL;
    drive_add(view, figure);
    double idle = view->drivetrain->engine.idle_per_s;
    if (!known(idle))
        return;
    figure.quantity = QUANTITY_CRAWL_SPEED;
    figure.value = road_speed_mps(view->to_m, idle, crawl, 0);
    figure.basis = "v = C n / overall ratio at idle, without slip";
    drive_add(view, figure);
}
