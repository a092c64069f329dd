/* The drawings of the parts, from their figures: what a figure says is written beside its line,
 * and what is unknown is dashed and says so. */
#ifndef TYRESUM_READING_PICTURE_H
#define TYRESUM_READING_PICTURE_H

#include "reading/figure_find.h"
#include "drawing/chart.h"

struct picture {
    struct drawing *drawing;
    const struct layout *layout;
};

/* A whole file each, a panel an option. */
void picture_gearing(const struct picture *picture);
void picture_clearance(const struct picture *picture);
void picture_load(const struct picture *picture);

/* Pieces for a page: small, each with its own title. */
void picture_gearing_small(const struct picture *picture, double width, double height);
void picture_arch_small(const struct picture *picture, size_t setup, double width, double height);
void picture_load_small(const struct picture *picture, double width, double height);

/* Height that the small load drawing needs for all setups. */
double picture_load_small_height(const struct picture *picture);

/* "fitted", or the option's letter, name and size: cut to the width. */
const char *picture_setup_title(const struct picture *picture, size_t setup, double size,
                                double width);
const char *picture_letter(const struct picture *picture, size_t setup);

/* A figure beside its place, in a group that names it; unknown as such. */
void picture_figure(const struct picture *picture, const struct figure *figure, struct point at,
                    struct text_style style);

#endif
