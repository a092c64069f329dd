/* A wheel in its arch, to scale: from the side, cut through the axle seen from the front, and
 * from above at lock. */
#ifndef TYRESUM_READING_PICTURE_ARCH_H
#define TYRESUM_READING_PICTURE_ARCH_H

#include "reading/picture.h"

/* Lengths in m. Walls are where the room ends, from the hub's centre: the fitted tyre's edge and
 * the room measured there. An edge of the largest tyre is the wall less the room that is left, so
 * that the gap drawn is the figure. UNKNOWN where a figure is. */
struct arch_shape {
    size_t setup;
    int axle;
    double fitted_radius, radius, largest_radius;
    double rim_radius, rim_width;
    double wall_ride, wall_bump;
    double fitted_inner, fitted_outer; /* edges, inward negative */
    double inner, outer, largest_inner, largest_outer;
    double wall_inner, wall_outer;
    const struct figure *ride, *bump, *inside, *outside, *lock; /* judged: least of the largest */
    const struct figure *was_ride, *was_bump, *was_inside, *was_outside, *was_lock;
};

void arch_shape_make(const struct picture *picture, size_t setup, int axle,
                     struct arch_shape *shape);

void picture_arch_side(const struct picture *picture, const struct arch_shape *shape,
                       struct box box, double size);
void picture_arch_section(const struct picture *picture, const struct arch_shape *shape,
                          struct box box, double size);
void picture_arch_lock(const struct picture *picture, const struct arch_shape *shape,
                       struct box box, double size);
void picture_arch_legend(const struct picture *picture, struct box box, double size);

#endif
