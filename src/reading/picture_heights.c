/* Tyres from behind, on the ground and to one scale, the fitted one first where there are several:
 * its height is a line across all. */
#include <math.h>

#include "base/known.h"
#include "reading/picture.h"
#include "report/outcome.h"

enum { TALLEST = 62, SIZE = DRAWING_TEXT };

static const struct pen tyre_pen = {.width = 1.4, .fill = "#eee"};
static const struct pen rim_pen = {.width = 0.8, .fill = "#fff"};
static const struct pen fitted_pen = {.width = 0.9, .dash = DASH_DOT};
static const struct pen unknown_pen = {.width = 1, .dash = DASH_SHORT};

static const struct tyre_dimensions *tyre_of(const struct picture *picture, size_t setup)
{
    return &picture->layout->plan->beside[setup].after[AXLE_FRONT];
}

static double tallest_of(const struct picture *picture)
{
    double most = 0;
    for (size_t i = 0; i < picture->layout->plan->count; i++)
        for (int axle = 0; axle < AXLE_COUNT; axle++)
            most = higher_of(
                most, known_or(picture->layout->plan->beside[i].after[axle].overall_diameter_m, 0));
    return most > 0 ? most : 1;
}

static void draw_tyre(const struct picture *picture, size_t setup, double middle, double ground,
                      double pixels_per_m)
{
    const struct tyre_dimensions *tyre = tyre_of(picture, setup);
    double height = known_or(tyre->overall_diameter_m, tallest_of(picture)) * pixels_per_m;
    double width = known_or(tyre->section_width_m, 0.2) * pixels_per_m;
    bool drawn = known(tyre->overall_diameter_m) && known(tyre->section_width_m);
    double rim = known_or(tyre->rim_diameter_m, 0) * pixels_per_m;
    drawing_rectangle(picture->drawing,
                      (struct box){middle - width / 2, ground - height, width, height}, 5,
                      drawn ? tyre_pen : unknown_pen);
    drawing_rectangle(
        picture->drawing,
        (struct box){middle - 0.4 * width, ground - height / 2 - rim / 2, 0.8 * width, rim}, 1,
        rim_pen);
}

static void put_words(const struct picture *picture, size_t setup, double middle, double ground)
{
    const struct figure *height = figure_first(
        picture->layout, setup,
        (struct figure_query){
            .quantity = QUANTITY_OVERALL_DIAMETER, .axle = AXLE_NONE, .state = STATE_NONE});
    struct text_style style = {.size = SIZE, .anchor = ANCHOR_MIDDLE};
    drawing_text(picture->drawing, (struct point){middle, ground + 1.2 * SIZE}, style,
                 picture_letter(picture, setup));
    picture_figure(picture, height, (struct point){middle, ground + 2.5 * SIZE}, style);
}

void picture_tyre_heights(const struct picture *picture, const size_t *setups, size_t count)
{
    const struct plan *plan = picture->layout->plan;
    bool beside_fitted = count > 1;
    size_t shown = count + beside_fitted;
    double step = beside_fitted ? fmin(DRAWING_WIDTH / (double)shown, 110) : 64;
    double ground = 2 + TALLEST, pixels_per_m = TALLEST / tallest_of(picture);
    drawing_begin(picture->drawing, step * (double)shown, ground + (beside_fitted ? 3.2 * SIZE : 2),
                  "Height and width of the tyres",
                  "Each tyre from behind, to one scale; the dotted line is the height of the "
                  "fitted one.");
    for (size_t i = 0; i < shown; i++) {
        size_t setup = i == 0 && beside_fitted ? 0 : setups[i - beside_fitted];
        double middle = ((double)i + 0.5) * step;
        draw_tyre(picture, setup, middle, ground, pixels_per_m);
        if (beside_fitted)
            put_words(picture, setup, middle, ground);
    }
    double fitted = tyre_of(picture, 0)->overall_diameter_m * pixels_per_m;
    if (plan->count > 1)
        drawing_line(picture->drawing, (struct point){0, ground - fitted},
                     (struct point){step * (double)shown, ground - fitted}, fitted_pen);
    drawing_line(picture->drawing, (struct point){0, ground},
                 (struct point){step * (double)shown, ground}, (struct pen){.width = 1});
    drawing_end(picture->drawing);
}
