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

/* Figures of a drawing have one unit: of both the first. */
struct picture picture_of(struct drawing *drawing, const struct layout *layout);

/* A whole file each, a panel an option. */
void picture_gearing(const struct picture *picture);
void picture_clearance(const struct picture *picture);
void picture_load(const struct picture *picture);

/* Pieces for a page. */
/* The tyres of setups beside the fitted one, by height and width. */
void picture_tyre_heights(const struct picture *picture, const size_t *setups, size_t count);
bool picture_arch_known(const struct picture *picture, size_t setup); /* any of its rooms */
void picture_arch_small(const struct picture *picture, size_t setup);

/* "fitted", or the option's letter, name and size: cut to the width. */
const char *picture_setup_title(const struct picture *picture, size_t setup, double size,
                                double width);
const char *picture_letter(const struct picture *picture, size_t setup);

/* A drawing of the common width; one that is a file of its own has the cautions below it. */
void picture_begin(const struct picture *picture, double height, const char *title,
                   const char *description);
void picture_end(const struct picture *picture, double height);

/* Panels below each other: in a file one drawing, on a page a drawing each, so that none is broken
 * over two sheets. */
struct panels {
    const char *title, *description;
    size_t count;
    double height; /* of each */
    const void *context;
    void (*draw)(const struct picture *picture, const void *context, size_t index, double top);
};
void picture_panels(const struct picture *picture, const struct panels *panels);

/* A figure beside its place, in a group that names it; unknown as such. */
void picture_figure(const struct picture *picture, const struct figure *figure, struct point at,
                    struct text_style style);

#endif
