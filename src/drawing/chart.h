/* Scales, axes, dimensions and legends: what every drawing is put together from. */
#ifndef TYRESUM_DRAWING_CHART_H
#define TYRESUM_DRAWING_CHART_H

#include "drawing/drawing.h"

/* From a value to a place: linear, `first` at `at_first`. */
struct scale {
    double first, last;
    double at_first, at_last;
};

double scale_place(const struct scale *scale, double value);
/* 1, 2 or 5 times a power of ten, so that there are at most so many steps. */
double scale_step(double range, int most);
/* The value rounded up to a whole number of steps. */
double scale_up(double value, double step);

/* An axis below (or left of) the area, with thin lines across it, a number a step and its title. */
void axis_below(struct drawing *drawing, const struct scale *scale, struct box area, double size,
                const char *title);
void axis_left(struct drawing *drawing, const struct scale *scale, struct box area, double size,
               const char *title);

/* Moves places apart until neighbours keep the gap, in order, within the bounds where it can. */
void places_spread(double *places, size_t count, double gap, double lowest, double highest);

/* A dimension: a line with an arrow at each end. Where the ends are nearer than the arrows need,
 * they point inwards from outside. */
void dimension_line(struct drawing *drawing, struct point from, struct point to, double arrow);

#endif
