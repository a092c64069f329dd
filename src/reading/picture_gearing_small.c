/* The highest gear alone, at cruising speeds: where a change of tyre is felt most. */
#include <math.h>

#include "reading/picture_curves.h"

enum { SMALL_SIZE = 9 };

struct cruise_chart {
    const struct picture *picture;
    struct box area;
    struct scale road, engine;
};

static void keep_highest(struct curves *curves)
{
    size_t kept = 0;
    for (size_t i = 0; i < curves->count; i++)
        if (curve_is_highest(curves, &curves->items[i]))
            curves->items[kept++] = curves->items[i];
    curves->count = kept;
}

static double rpm_at(const struct picture *picture, const struct figure *per_1000, double road)
{
    return 1000 * road / curve_road(picture, per_1000, 1000);
}

/* Steepest first, so that captions stand in the order of the lines' ends. */
static void sort_curves(struct curves *curves)
{
    for (size_t i = 1; i < curves->count; i++)
        for (size_t j = i;
             j > 0 && curves->items[j].per_1000->value < curves->items[j - 1].per_1000->value;
             j--) {
            struct curve swapped = curves->items[j];
            curves->items[j] = curves->items[j - 1];
            curves->items[j - 1] = swapped;
        }
}

static void set_scales(struct cruise_chart *chart, const struct curves *curves)
{
    const struct picture *picture = chart->picture;
    bool mph = curves_unit(picture) == UNIT_MPH;
    double from = mph ? 40 : 60, to = mph ? 90 : 140, least = INFINITY, most = 0;
    for (size_t i = 0; i < curves->count; i++) {
        least = fmin(least, rpm_at(picture, curves->items[i].per_1000, from));
        most = fmax(most, rpm_at(picture, curves->items[i].per_1000, to));
    }
    double bottom = chart->area.y + chart->area.height;
    chart->road = (struct scale){from, to, chart->area.x, chart->area.x + chart->area.width};
    chart->engine =
        (struct scale){500 * floor(least / 500), scale_up(most, 500), bottom, chart->area.y};
}

static void draw_lines(const struct cruise_chart *chart, const struct curves *curves)
{
    const struct picture *picture = chart->picture;
    double ends[CURVES_MAX], places[CURVES_MAX], right = chart->area.x + chart->area.width;
    for (size_t i = 0; i < curves->count; i++) {
        const struct figure *per_1000 = curves->items[i].per_1000;
        struct point from = {chart->area.x, scale_place(&chart->engine, rpm_at(picture, per_1000,
                                                                               chart->road.first))};
        struct point to = {
            right, scale_place(&chart->engine, rpm_at(picture, per_1000, chart->road.last))};
        ends[i] = places[i] = to.y;
        drawing_group(picture->drawing, figure_sentence(picture->layout, per_1000));
        drawing_line(picture->drawing, from, to,
                     (struct pen){.width = 1, .dash = curves->groups[curves->items[i].group].dash});
        drawing_group_end(picture->drawing);
    }
    places_spread(places, curves->count, 1.1 * SMALL_SIZE, chart->area.y + 0.3 * SMALL_SIZE,
                  chart->area.y + chart->area.height);
    for (size_t i = 0; i < curves->count; i++) {
        drawing_line(picture->drawing, (struct point){right, ends[i]},
                     (struct point){right + 1.4 * SMALL_SIZE, places[i]},
                     (struct pen){.width = 0.4, .stroke = "#666"});
        drawing_text(picture->drawing,
                     (struct point){right + 1.7 * SMALL_SIZE, places[i] + 0.35 * SMALL_SIZE},
                     (struct text_style){.size = SMALL_SIZE},
                     curves->groups[curves->items[i].group].caption);
    }
}

void picture_gearing_small(const struct picture *picture, double width, double height)
{
    struct curves *curves = arena_allocate(picture->layout->arena, sizeof *curves);
    for (size_t i = 0; i < picture->layout->plan->count; i++)
        curves_add(picture, i, OWN_AXLE, curves);
    keep_highest(curves);
    sort_curves(curves);
    if (curves->count == 0) {
        picture_no_gearing(picture, width, height);
        return;
    }
    struct drawing *drawing = picture->drawing;
    drawing_begin(drawing, width, height, "Engine speed in the highest gear",
                  "Engine speed against road speed in the highest gear at cruising speeds, each "
                  "setup with its dash and label.");
    drawing_text(drawing, (struct point){0, SMALL_SIZE},
                 (struct text_style){.size = 1.15 * SMALL_SIZE, .bold = true},
                 arena_format(drawing->arena, "Engine speed in gear %d", curves->items[0].gear));
    struct cruise_chart chart = {.picture = picture};
    chart.area = (struct box){5.6 * SMALL_SIZE, 2.2 * SMALL_SIZE, width - 11.5 * SMALL_SIZE,
                              height - 5.4 * SMALL_SIZE};
    set_scales(&chart, curves);
    axis_below(
        drawing, &chart.road, chart.area, SMALL_SIZE,
        arena_format(drawing->arena, "road speed, %s", unit_table[curves_unit(picture)].name));
    axis_left(drawing, &chart.engine, chart.area, SMALL_SIZE, "engine speed, rpm");
    draw_lines(&chart, curves);
    drawing_end(drawing);
}
