#include "drawing/chart.h"

#include <math.h>

#include "output/number.h"

static const struct pen grid = {.width = 0.4, .stroke = "#999"};
static const struct pen frame = {.width = 1};

double scale_place(const struct scale *scale, double value)
{
    return scale->at_first + (value - scale->first) / (scale->last - scale->first) *
                                 (scale->at_last - scale->at_first);
}

double scale_step(double range, int most)
{
    double step = pow(10, floor(log10(range / most)));
    while (range / step > most) {
        double lead = step / pow(10, floor(log10(step) + 1e-9));
        step *= lead > 1.5 && lead < 3 ? 2.5 : 2;
    }
    return step;
}

double scale_up(double value, double step)
{
    return ceil(value / step - 1e-9) * step;
}

static int decimals_of(double step)
{
    return step >= 1 ? 0 : (int)ceil(-log10(step) - 1e-9);
}

static const char *tick_text(struct drawing *drawing, double value, double step)
{
    char text[NUMBER_SIZE];
    number_fixed(value, decimals_of(step), '.', text);
    return arena_copy(drawing->arena, span_of(text));
}

void axis_below(struct drawing *drawing, const struct scale *scale, struct box area, double size,
                const char *title)
{
    double bottom = area.y + area.height, right = area.x + area.width;
    double step = scale_step(scale->last - scale->first, (int)(area.width / (5 * size)));
    int ticks = (int)((scale->last - scale->first) / step + 1e-6);
    struct text_style style = {.size = size, .anchor = ANCHOR_MIDDLE};
    for (int tick = 0; tick <= ticks; tick++) {
        double value = scale->first + tick * step;
        double x = scale_place(scale, value);
        drawing_line(drawing, (struct point){x, area.y}, (struct point){x, bottom}, grid);
        drawing_text(drawing, (struct point){x, bottom + 1.2 * size}, style,
                     tick_text(drawing, value, step));
    }
    drawing_line(drawing, (struct point){area.x, bottom}, (struct point){right, bottom}, frame);
    style.anchor = ANCHOR_END;
    if (*title != '\0')
        drawing_text(drawing, (struct point){right, bottom + 2.5 * size}, style, title);
}

void axis_left(struct drawing *drawing, const struct scale *scale, struct box area, double size,
               const char *title)
{
    double bottom = area.y + area.height;
    double step = scale_step(scale->last - scale->first, (int)(area.height / (2.2 * size)));
    int ticks = (int)((scale->last - scale->first) / step + 1e-6);
    struct text_style style = {.size = size, .anchor = ANCHOR_END};
    for (int tick = 0; tick <= ticks; tick++) {
        double value = scale->first + tick * step;
        double y = scale_place(scale, value);
        drawing_line(drawing, (struct point){area.x, y}, (struct point){area.x + area.width, y},
                     grid);
        drawing_text(drawing, (struct point){area.x - 0.4 * size, y + 0.35 * size}, style,
                     tick_text(drawing, value, step));
    }
    drawing_line(drawing, (struct point){area.x, area.y}, (struct point){area.x, bottom}, frame);
    style.turned = -90;
    style.anchor = ANCHOR_MIDDLE;
    drawing_text(drawing, (struct point){area.x - 3.9 * size, area.y + area.height / 2}, style,
                 title);
}

void places_spread(double *places, size_t count, double gap, double lowest, double highest)
{
    if (count == 0)
        return;
    places[0] = fmax(places[0], lowest);
    for (size_t i = 1; i < count; i++)
        places[i] = fmax(places[i], places[i - 1] + gap);
    places[count - 1] = fmin(places[count - 1], highest);
    for (size_t i = count - 1; i-- > 0;)
        places[i] = fmin(places[i], places[i + 1] - gap);
}

static void arrow_head(struct drawing *drawing, struct point tip, struct point back, double length)
{
    double x = back.x - tip.x, y = back.y - tip.y, size = hypot(x, y);
    if (size == 0)
        return;
    x *= length / size;
    y *= length / size;
    const struct point corners[] = {tip,
                                    {tip.x + x - 0.3 * y, tip.y + y + 0.3 * x},
                                    {tip.x + x + 0.3 * y, tip.y + y - 0.3 * x}};
    drawing_lines(drawing, corners, 3, true, (struct pen){.fill = "black"});
}

void dimension_line(struct drawing *drawing, struct point from, struct point to, double arrow)
{
    const struct pen thin = {.width = 0.6};
    double x = to.x - from.x, y = to.y - from.y, length = hypot(x, y);
    if (length > 2.5 * arrow) {
        drawing_line(drawing, from, to, thin);
        arrow_head(drawing, from, to, arrow);
        arrow_head(drawing, to, from, arrow);
        return;
    }
    x = length > 0 ? x / length * 2.5 * arrow : 0;
    y = length > 0 ? y / length * 2.5 * arrow : 2.5 * arrow;
    struct point before = {from.x - x, from.y - y}, behind = {to.x + x, to.y + y};
    drawing_line(drawing, before, behind, thin);
    arrow_head(drawing, from, before, arrow);
    arrow_head(drawing, to, behind, arrow);
}
