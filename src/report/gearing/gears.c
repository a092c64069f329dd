/* Gear by gear: overall ratios, road and engine speeds, steps and crawl. */
#include "base/known.h"
#include "base/units.h"
#include "compute/gearing.h"
#include "report/gearing/geared_setup.h"

static void add_road_speed(const struct geared_setup *geared, struct place place, double overall,
                           double engine_speed)
{
    struct figure figure = figure_by(
        QUANTITY_ROAD_SPEED, road_speed_mps(geared->to_m, engine_speed, overall, geared->slip),
        remark(BASIS_ROAD_SPEED));
    figure.place = place;
    figure.place.engine_speed_per_s = engine_speed;
    geared_add(geared, figure);
}

static void report_ratio(const struct geared_setup *geared, struct place place, double overall,
                         bool headline)
{
    struct figure figure = figure_by(QUANTITY_OVERALL_RATIO, overall, remark(BASIS_OVERALL_RATIO));
    figure.place = place;
    geared_add(geared, figure);
    figure.quantity = QUANTITY_SPEED_PER_1000;
    figure.value = road_speed_mps(geared->to_m, unit_to_si(UNIT_RPM, 1000), overall, geared->slip);
    figure.basis = remark(BASIS_ROAD_SPEED);
    figure.headline = headline ? HEADLINE_YES : HEADLINE_NO;
    geared_add(geared, figure);
    const struct number_list *asked = &geared->drivetrain->engine_speeds_per_s;
    double limit = geared->drivetrain->engine.limit_per_s;
    bool limit_asked = false;
    for (size_t i = 0; i < asked->count; i++) {
        add_road_speed(geared, place, overall, asked->items[i]);
        limit_asked = limit_asked || same_value(asked->items[i], limit);
    }
    if (known(limit) && !limit_asked)
        add_road_speed(geared, place, overall, limit);
}

static void report_reverse(const struct geared_setup *geared, size_t range)
{
    double reverse = geared->drivetrain->reverse;
    struct place place = place_in_gear(geared, 0, range);
    place.gear = 0;
    place.gear_name = AT_REVERSE_GEAR;
    if (known(reverse))
        report_ratio(
            geared, place,
            overall_ratio(reverse, geared->ranges[range].ratio, geared->ratio, geared->hub), false);
}

void report_gears(const struct geared_setup *geared)
{
    size_t top = highest_gear(&geared->gears);
    for (size_t range = 0; range < geared->range_count; range++) {
        for (size_t gear = 0; gear < geared->gears.count; gear++)
            report_ratio(geared, place_in_gear(geared, gear, range),
                         overall_in(geared, gear, range), gear == top && range == 0);
        report_reverse(geared, range);
    }
}

struct number_list asked_road_speeds(const struct geared_setup *geared)
{
    static const double kmh[] = {80, 100, 110, 120}, mph[] = {50, 60, 65, 75};
    enum { USUAL = sizeof kmh / sizeof kmh[0] };
    const struct number_list *given = &geared->drivetrain->road_speeds_mps;
    size_t count = given->count > 0 ? given->count : USUAL;
    struct number_list asked = {
        arena_allocate_array(geared->plan->arena, count + 1, sizeof *asked.items), 0};
    bool cruise_stands = false;
    for (size_t i = 0; i < count; i++) {
        double usual = i >= USUAL         ? UNKNOWN
                       : geared->plan->us ? unit_to_si(UNIT_MPH, mph[i])
                                          : unit_to_si(UNIT_KMH, kmh[i]);
        double speed = given->count > 0 ? given->items[i] : usual;
        cruise_stands = cruise_stands || fabs(speed - geared->cruise_mps) < 1e-9;
        asked.items[asked.count++] = speed;
    }
    if (!cruise_stands)
        asked.items[asked.count++] = geared->cruise_mps;
    return asked;
}

/* Engine speed in the highest gear at the usual road speeds, and in every gear at those that the
 * file asks for, as far as the engine's limit lets it go. */
static void add_engine_speed(const struct geared_setup *geared, size_t gear, size_t range,
                             double speed_mps)
{
    bool highest = gear == highest_gear(&geared->gears) && range == 0;
    double value =
        engine_speed_per_s(geared->to_m, speed_mps, overall_in(geared, gear, range), geared->slip);
    if (!highest && (geared->drivetrain->road_speeds_mps.count == 0 ||
                     clearly_above(value, geared->drivetrain->engine.limit_per_s)))
        return;
    struct figure figure = figure_by(QUANTITY_ENGINE_SPEED, value, remark(BASIS_ROAD_SPEED));
    figure.place = place_in_gear(geared, gear, range);
    figure.place.road_speed_mps = speed_mps;
    bool cruising = highest && fabs(speed_mps - geared->cruise_mps) < 1e-9;
    figure.headline = cruising ? HEADLINE_YES : HEADLINE_NO;
    geared_add(geared, figure);
}

void report_cruising(const struct geared_setup *geared)
{
    struct number_list speeds = asked_road_speeds(geared);
    for (size_t range = 0; range < geared->range_count; range++)
        for (size_t gear = geared->gears.count; gear-- > 0;)
            for (size_t i = 0; i < speeds.count; i++)
                add_engine_speed(geared, gear, range, speeds.items[i]);
}

static void report_step(const struct geared_setup *geared, size_t gear, size_t next)
{
    double step = geared->gears.items[gear] / geared->gears.items[next];
    double limit = geared->drivetrain->engine.limit_per_s;
    struct figure figure = figure_by(QUANTITY_GEAR_STEP, step, remark(BASIS_GEAR_STEP));
    figure.place.gear = (int)gear + 1;
    figure.place.to_gear = (int)next + 1;
    geared_add(geared, figure);
    if (!known(limit))
        return;
    figure.quantity = QUANTITY_UPSHIFT_DROP;
    figure.value = limit - limit / step;
    figure.basis = remark(BASIS_UPSHIFT_DROP);
    figure.place.engine_speed_per_s = limit;
    geared_add(geared, figure);
}

/* Steps are the gearbox's own: told once, with the fitted setup. */
void report_steps(const struct geared_setup *geared)
{
    if (!geared->setup->is_fitted || geared->is_choice)
        return;
    const struct number_list *gears = &geared->gears;
    double spread = gears->items[lowest_gear(gears)] / gears->items[highest_gear(gears)];
    geared_add(geared, figure_by(QUANTITY_RATIO_SPREAD, spread, remark(BASIS_RATIO_SPREAD)));
    for (size_t gear = 0; gear < gears->count && !geared->variable; gear++) {
        size_t next = next_gear_up(gears, gear);
        if (next < gears->count)
            report_step(geared, gear, next);
    }
}

static size_t lowest_range(const struct geared_setup *geared)
{
    size_t lowest = 0;
    for (size_t i = 1; i < geared->range_count; i++)
        if (geared->ranges[i].ratio > geared->ranges[lowest].ratio)
            lowest = i;
    return lowest;
}

void report_crawl(const struct geared_setup *geared)
{
    double crawl = overall_in(geared, lowest_gear(&geared->gears), lowest_range(geared));
    struct figure figure = figure_by(QUANTITY_CRAWL_RATIO, crawl, remark(BASIS_CRAWL_RATIO));
    figure.headline = HEADLINE_YES;
    figure.place = place_on_axle(geared);
    geared_add(geared, figure);
    double idle = geared->drivetrain->engine.idle_per_s;
    if (!known(idle))
        return;
    figure.quantity = QUANTITY_CRAWL_SPEED;
    figure.value = road_speed_mps(geared->to_m, idle, crawl, 0);
    figure.basis = remark(BASIS_CRAWL_SPEED);
    geared_add(geared, figure);
}
