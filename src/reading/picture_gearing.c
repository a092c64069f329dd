/* Engine speed against road speed in every gear: a line a gear, from idle to the engine's limit. */
#include <math.h>
#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "reading/picture_curves.h"

struct gear_chart {
    const struct picture *picture;
    struct box area;
    struct scale road, engine; /* in the unit shown, in rpm */
    enum unit_id unit;
    double size, idle_rpm;
    size_t legend_lines; /* of the panel with the most: all panels have one scale */
    bool limit_known;
};

static const double a_little_more = 1.06;

/* Where a line ends: at the engine's limit, or at the chart's edge. */
static struct point end_of(const struct gear_chart *chart, const struct figure *per_1000)
{
    double limit = curves_limit_rpm(chart->picture);
    double road = curve_road(chart->picture, per_1000, limit);
    double kept = fmin(road, chart->road.last);
    return (struct point){scale_place(&chart->road, kept),
                          scale_place(&chart->engine, limit * kept / road)};
}

static double fastest_of(const struct gear_chart *chart, const struct curves *curves)
{
    double fastest = 0;
    for (size_t i = 0; i < curves->count; i++)
        fastest = fmax(fastest, curve_road(chart->picture, curves->items[i].per_1000,
                                           curves_limit_rpm(chart->picture)));
    double top = chart->picture->layout->plan->specification->vehicle.top_speed_mps;
    return known(top) ? fmin(fastest, a_little_more * unit_from_si(chart->unit, top)) : fastest;
}

static struct gear_chart chart_of(const struct picture *picture)
{
    double idle = picture->layout->plan->specification->drivetrain.engine.idle_per_s;
    return (struct gear_chart){
        .picture = picture,
        .size = DRAWING_TEXT,
        .unit = curves_unit(picture),
        .idle_rpm = known(idle) ? unit_from_si(UNIT_RPM, idle) : 0,
        .limit_known = known(picture->layout->plan->specification->drivetrain.engine.limit_per_s),
    };
}

static void set_scales(struct gear_chart *chart, double fastest)
{
    double bottom = chart->area.y + chart->area.height;
    chart->road = (struct scale){0, fastest, chart->area.x, chart->area.x + chart->area.width};
    chart->engine =
        (struct scale){0, scale_up(curves_limit_rpm(chart->picture), 500), bottom, chart->area.y};
}

/* Speed limits that most roads have; thin, since the local law decides. */
static void draw_road_limits(const struct gear_chart *chart)
{
    static const double kmh[] = {50, 80, 100, 110, 130}, mph[] = {30, 55, 65, 75};
    const bool us = chart->unit == UNIT_MPH;
    const double *limits = us ? mph : kmh;
    size_t count = us ? sizeof mph / sizeof mph[0] : sizeof kmh / sizeof kmh[0];
    struct drawing *drawing = chart->picture->drawing;
    double size = chart->size, top = chart->area.y, bottom = top + chart->area.height;
    double places[sizeof kmh / sizeof kmh[0]];
    drawing_group(drawing, arena_format(drawing->arena, "usual speed limits of roads, in %s",
                                        unit_table[chart->unit].name));
    for (size_t i = 0; i < count; i++)
        places[i] = scale_place(&chart->road, limits[i]);
    while (count > 0 && places[count - 1] > chart->area.x + chart->area.width)
        count--;
    double line[sizeof kmh / sizeof kmh[0]];
    memcpy(line, places, sizeof line);
    places_spread(places, count, 2.2 * size, chart->area.x, chart->area.x + chart->area.width);
    for (size_t i = 0; i < count; i++) {
        drawing_line(drawing, (struct point){line[i], top}, (struct point){line[i], bottom},
                     (struct pen){.width = 0.7, .dash = DASH_DOT});
        drawing_text(drawing, (struct point){places[i], bottom + 2.6 * chart->size},
                     (struct text_style){.size = size, .anchor = ANCHOR_MIDDLE},
                     arena_format(drawing->arena, "%.0f", limits[i]));
    }
    drawing_text(drawing, (struct point){chart->area.x - 0.4 * size, bottom + 2.6 * chart->size},
                 (struct text_style){.size = size, .anchor = ANCHOR_END}, "road limits");
    drawing_group_end(drawing);
}

static void draw_curve(const struct gear_chart *chart, const struct curves *curves,
                       const struct curve *curve)
{
    const struct picture *picture = chart->picture;
    double from = chart->idle_rpm;
    struct point ends[] = {
        {scale_place(&chart->road, curve_road(chart->picture, curve->per_1000, from)),
         scale_place(&chart->engine, from)},
        end_of(chart, curve->per_1000)};
    drawing_group(picture->drawing, figure_sentence(picture->layout, curve->per_1000));
    drawing_line(picture->drawing, ends[0], ends[1],
                 (struct pen){.width = 1.1, .dash = curves->groups[curve->group].dash});
    drawing_group_end(picture->drawing);
}

/* Gear numbers over the lines' ends, each over the middle of its lines. */
static void draw_gear_numbers(const struct gear_chart *chart, const struct curves *curves, double y)
{
    double places[CURVES_MAX];
    const char *labels[CURVES_MAX];
    size_t count = 0;
    for (size_t i = 0; i < curves->count; i++) {
        int gear = curves->items[i].gear;
        double least = INFINITY, most = 0;
        bool first = true;
        for (size_t j = 0; j < curves->count; j++) {
            if (curves->items[j].gear != gear)
                continue;
            first = first && j >= i;
            double at = end_of(chart, curves->items[j].per_1000).x;
            least = fmin(least, at);
            most = fmax(most, at);
        }
        bool captioned = curves->group_count > 1 && curve_is_highest(curves, &curves->items[i]);
        if (!first || captioned)
            continue;
        places[count] = (least + most) / 2;
        labels[count++] = arena_format(chart->picture->drawing->arena, "%d", gear);
    }
    places_spread(places, count, 1.8 * chart->size, chart->area.x,
                  chart->area.x + chart->area.width);
    for (size_t i = 0; i < count; i++)
        drawing_text(chart->picture->drawing, (struct point){places[i], y},
                     (struct text_style){.size = chart->size, .anchor = ANCHOR_MIDDLE}, labels[i]);
    drawing_text(chart->picture->drawing, (struct point){chart->area.x, y},
                 (struct text_style){.size = chart->size}, "gear");
}

/* The caption of each group, over the end of its line in the highest gear. */
static void draw_captions(const struct gear_chart *chart, const struct curves *curves, double y)
{
    size_t order[GROUPS_MAX], count = 0;
    struct point ends[GROUPS_MAX];
    double places[GROUPS_MAX], widest = 0;
    for (size_t i = 0; i < curves->group_count; i++) {
        size_t at = count++;
        for (; at > 0 &&
               curves->groups[order[at - 1]].highest->value > curves->groups[i].highest->value;
             at--)
            order[at] = order[at - 1];
        order[at] = i;
        widest = fmax(widest, drawing_text_width(curves->groups[i].caption, chart->size));
    }
    for (size_t i = 0; i < count; i++) {
        ends[i] = end_of(chart, curves->groups[order[i]].highest);
        places[i] = ends[i].x;
    }
    places_spread(places, count, widest + 0.5 * chart->size, chart->area.x,
                  chart->area.x + chart->area.width);
    struct drawing *drawing = chart->picture->drawing;
    drawing_text(drawing, (struct point){places[0] - widest / 2 - 0.4 * chart->size, y},
                 (struct text_style){.size = chart->size, .anchor = ANCHOR_END},
                 arena_format(drawing->arena, "%d:", curves->groups[0].highest->place.gear));
    for (size_t i = 0; i < count; i++) {
        drawing_line(drawing, ends[i], (struct point){places[i], y + 0.3 * chart->size},
                     (struct pen){.width = 0.5, .stroke = "#666"});
        drawing_text(drawing, (struct point){places[i], y},
                     (struct text_style){.size = chart->size, .anchor = ANCHOR_MIDDLE},
                     curves->groups[order[i]].caption);
    }
}

static void draw_legend(const struct gear_chart *chart, const struct curves *curves, double y,
                        double step)
{
    const struct picture *picture = chart->picture;
    for (size_t i = 0; i < curves->group_count; i++) {
        const struct curve_group *group = &curves->groups[i];
        double x = chart->area.x, size = chart->size, line = y + (double)i * step;
        drawing_line(picture->drawing, (struct point){x, line - 0.35 * size},
                     (struct point){x + 4 * size, line - 0.35 * size},
                     (struct pen){.width = 1.1, .dash = group->dash});
        drawing_text(picture->drawing, (struct point){x + 4.6 * size, line},
                     (struct text_style){.size = size}, group->words);
        double right = chart->area.x + chart->area.width;
        const char *words = arena_format(picture->layout->arena, "per 1000 rpm in gear %d",
                                         group->highest->place.gear);
        double middle = right - drawing_text_width(words, size);
        drawing_text(picture->drawing, (struct point){middle, line},
                     (struct text_style){.size = size}, words);
        picture_figure(picture, group->highest, (struct point){middle - 0.4 * size, line},
                       (struct text_style){.size = size, .anchor = ANCHOR_END});
    }
}

static void draw_limit(const struct gear_chart *chart)
{
    struct drawing *drawing = chart->picture->drawing;
    double y = scale_place(&chart->engine, curves_limit_rpm(chart->picture));
    drawing_line(drawing, (struct point){chart->area.x, y},
                 (struct point){chart->area.x + chart->area.width, y},
                 (struct pen){.width = 0.8, .dash = chart->limit_known ? DASH_NONE : DASH_SHORT});
    double limit = curves_limit_rpm(chart->picture);
    drawing_text(
        drawing,
        (struct point){chart->area.x, chart->area.y + chart->area.height + 3.9 * chart->size},
        (struct text_style){.size = chart->size},
        arena_format(drawing->arena,
                     chart->limit_known ? "lines end at the engine's limit, %.0f rpm"
                                        : "engine's limit unknown: drawn to %.0f rpm",
                     limit));
}

/* One panel: its lines, and its heading. */
struct panel {
    struct curves *curves;
    const char *title;
};

static void add_panel(const struct picture *picture, size_t setup, enum curves_of which,
                      struct panel *panels, size_t *count)
{
    struct arena *arena = picture->layout->arena;
    struct panel panel = {arena_allocate(arena, sizeof *panel.curves),
                          picture_setup_title(picture, setup, 0, INFINITY)};
    if (which == OWN_AXLE && setup > 0)
        curves_add(picture, 0, OWN_AXLE, panel.curves);
    curves_add(picture, setup, which, panel.curves);
    if (which == EVERY_AXLE) {
        if (panel.curves->group_count < 2)
            return;
        panel.title = arena_format(arena, "%s on each axle ratio", picture_letter(picture, setup));
    }
    if (panel.curves->count > 0)
        panels[(*count)++] = panel;
}

/* All panels, in one scale. */
struct gear_panels {
    struct gear_chart chart;
    struct panel *items;
    size_t count;
    double fastest;
};

enum { HEIGHT = 356, MARGIN = DRAWING_TEXT };

static void draw_panel(const struct picture *picture, const void *context, size_t index, double top)
{
    const struct gear_panels *panels = context;
    const struct curves *curves = panels->items[index].curves;
    const char *title = panels->items[index].title;
    struct gear_chart copy = panels->chart, *chart = &copy;
    struct box box = {MARGIN, top, DRAWING_WIDTH - 2 * MARGIN, HEIGHT - MARGIN};
    struct drawing *drawing = picture->drawing;
    double size = chart->size;
    double legend = 1.5 * size * (double)chart->legend_lines;
    chart->area = (struct box){box.x + 6 * size, box.y + 5.2 * size, box.width - 8 * size,
                               box.height - 10.4 * size - legend};
    set_scales(chart, panels->fastest);
    drawing_text(drawing, (struct point){box.x, box.y + size},
                 (struct text_style){.size = size, .bold = true},
                 drawing_fit(drawing, title, 1.13 * size, box.width - size));
    axis_below(drawing, &chart->road, chart->area, size, "");
    drawing_text(drawing,
                 (struct point){chart->area.x + chart->area.width,
                                chart->area.y + chart->area.height + 3.9 * size},
                 (struct text_style){.size = size, .anchor = ANCHOR_END},
                 arena_format(drawing->arena, "road speed, %s", unit_table[chart->unit].name));
    axis_left(drawing, &chart->engine, chart->area, size, "engine speed, rpm");
    draw_road_limits(chart);
    draw_limit(chart);
    for (size_t i = 0; i < curves->count; i++)
        draw_curve(chart, curves, &curves->items[i]);
    draw_gear_numbers(chart, curves, chart->area.y - 1.1 * size);
    if (curves->group_count > 1)
        draw_captions(chart, curves, chart->area.y - 2.4 * size);
    draw_legend(chart, curves, chart->area.y + chart->area.height + 5.6 * size, 1.5 * size);
}

void picture_gearing(const struct picture *picture)
{
    const struct plan *plan = picture->layout->plan;
    struct gear_panels all = {.chart = chart_of(picture)};
    all.items = arena_allocate_array(picture->layout->arena, 2 * plan->count, sizeof *all.items);
    for (size_t i = plan->count > 1 ? 1 : 0; i < plan->count; i++) {
        add_panel(picture, i, OWN_AXLE, all.items, &all.count);
        add_panel(picture, i, EVERY_AXLE, all.items, &all.count);
    }
    for (size_t i = 0; i < all.count; i++) {
        const struct curves *curves = all.items[i].curves;
        all.fastest = fmax(all.fastest, fastest_of(&all.chart, curves));
        if (curves->group_count > all.chart.legend_lines)
            all.chart.legend_lines = curves->group_count;
    }
    const struct panels panels = {
        .title = "Engine speed against road speed in every gear",
        .description = "A line a gear from idle to the engine's limit, or to a little above the "
                       "top speed; low ranges are not drawn. Each tyre has its dash; below stands "
                       "the road speed at 1000 rpm in the highest gear.",
        .count = all.count,
        .height = HEIGHT,
        .context = &all,
        .draw = draw_panel,
    };
    if (all.count == 0)
        picture_no_gearing(picture, 120);
    else
        picture_panels(picture, &panels);
}
