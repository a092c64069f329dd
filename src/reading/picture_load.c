/* Axle loads as bars, a bar a loading state, against the axle's rating and what its tyres carry at
 * the pressure to set: of the fitted tyre at the placard's. */
#include <math.h>

#include "base/known.h"
#include "base/units.h"
#include "reading/picture.h"
#include "compute/fitment.h"
#include "compute/load.h"
#include "compute/ratings.h"

enum { MARKS = 2, SIZE = DRAWING_TEXT };

static const double axis_without_figures_kg = 2000;

/* A line across an axle's bars, and how it is told. */
struct load_mark {
    const struct figure *figure; /* NULL or unknown: cannot be placed */
    const char *words;
    double kg;
    bool refused; /* no pressure is enough: the words say it */
    enum dash dash;
    double width;
};

struct load_chart {
    const struct picture *picture;
    size_t setup;
    struct box area; /* of the bars */
    struct scale scale;
    double size;
};

static double to_shown(const struct picture *picture, double kg)
{
    return picture->layout->plan->us ? unit_from_si(UNIT_LB, kg) : kg;
}

static const char *unit_shown(const struct picture *picture)
{
    return unit_table[picture->layout->plan->us ? UNIT_LB : UNIT_KG].name;
}

static double tyres_of(const struct picture *picture, size_t setup, int axle)
{
    return tyres_on_axle(tyre_is_dual(&picture->layout->plan->setups[setup].axle[axle]));
}

static const struct figure *axle_load(const struct picture *picture, size_t setup, int axle,
                                      int state)
{
    return figure_first(
        picture->layout, setup,
        (struct figure_query){.quantity = QUANTITY_AXLE_LOAD, .axle = axle, .state = state});
}

static const struct figure *rating_left(const struct picture *picture, size_t setup, int axle,
                                        int state)
{
    return figure_first(
        picture->layout, setup,
        (struct figure_query){.quantity = QUANTITY_AXLE_RATING_LEFT, .axle = axle, .state = state});
}

static const struct figure *capacity_at(const struct picture *picture, size_t setup, int axle,
                                        enum place_pressure pressure)
{
    return figure_first(picture->layout, setup,
                        (struct figure_query){.quantity = QUANTITY_TYRE_CAPACITY,
                                              .axle = axle,
                                              .state = STATE_NONE,
                                              .pressure_as = pressure});
}

static const struct figure *recommended(const struct picture *picture, size_t setup, int axle)
{
    return figure_first(picture->layout, setup,
                        (struct figure_query){.quantity = QUANTITY_PRESSURE_RECOMMENDED,
                                              .axle = axle,
                                              .state = STATE_NONE});
}

static double axle_rating_kg(const struct picture *picture, int axle)
{
    return rating_kg(&picture->layout->plan->specification->vehicle.ratings,
                     axle == AXLE_FRONT ? RATING_FRONT : RATING_REAR);
}

static void marks_of(const struct picture *picture, size_t setup, int axle,
                     struct load_mark marks[MARKS])
{
    struct arena *arena = picture->layout->arena;
    const struct figure *pressure = recommended(picture, setup, axle);
    bool refused = pressure != NULL && pressure->verdict == VERDICT_FAIL;
    bool found = pressure != NULL && known(pressure->value);
    marks[0] =
        (struct load_mark){.words = "axle rating", .kg = axle_rating_kg(picture, axle), .width = 2};
    marks[1] = (struct load_mark){.refused = refused, .dash = DASH_LONG, .width = 1.6};
    marks[1].words = refused ? "tyres: no allowed pressure is enough"
                     : found ? arena_format(arena, "tyres at recommended, %s",
                                            figure_value_text(picture->layout, pressure))
                             : "tyres at recommended pressure";
    const struct figure *figure = capacity_at(picture, setup, axle, AT_RECOMMENDED);
    marks[1].figure = figure;
    marks[1].kg = figure == NULL ? UNKNOWN : figure->value * tyres_of(picture, setup, axle);
}

static double heaviest_of(const struct picture *picture)
{
    double most = 0;
    const struct plan *plan = picture->layout->plan;
    for (size_t i = 0; i < plan->count; i++)
        for (int axle = 0; axle < AXLE_COUNT; axle++) {
            struct load_mark marks[MARKS];
            marks_of(picture, i, axle, marks);
            for (size_t j = 0; j < MARKS; j++)
                most = higher_of(most, marks[j].kg);
            for (size_t j = 0; j < state_count(plan->specification); j++) {
                const struct figure *load = axle_load(picture, i, axle, (int)j);
                if (load != NULL)
                    most = higher_of(most, load->value);
            }
        }
    return to_shown(picture, most > 0 ? most : axis_without_figures_kg);
}

/* A bar to its value, dark where it passes the axle's rating; dashed where it is unknown. */
static void draw_bar(const struct load_chart *chart, const struct figure *load, int axle,
                     struct box row)
{
    const struct picture *picture = chart->picture;
    struct drawing *drawing = picture->drawing;
    double size = chart->size;
    struct point label = {row.x + 0.5 * size, row.y + row.height / 2 + 0.36 * size};
    if (load == NULL || !known(load->value)) {
        drawing_rectangle(drawing, row, 0, (struct pen){.width = 1, .dash = DASH_SHORT});
        drawing_text(drawing, label, (struct text_style){.size = size}, "load unknown");
        return;
    }
    double end = scale_place(&chart->scale, to_shown(picture, load->value));
    double rating = axle_rating_kg(picture, axle);
    struct box bar = {row.x, row.y, end - row.x, row.height};
    drawing_group(drawing, figure_sentence(picture->layout, load));
    drawing_rectangle(drawing, bar, 0, (struct pen){.width = 1, .fill = "#ddd"});
    if (known(rating) && load->value > rating) {
        double from = scale_place(&chart->scale, to_shown(picture, rating));
        drawing_rectangle(drawing, (struct box){from, row.y, end - from, row.height}, 0,
                          (struct pen){.width = 1, .fill = "#333"});
    }
    drawing_text(drawing, label, (struct text_style){.size = size, .figure = true},
                 figure_value_text(picture->layout, load));
    drawing_group_end(drawing);
}

static const char *left_words(const struct picture *picture, const struct figure *left)
{
    struct arena *arena = picture->layout->arena;
    if (left == NULL || !known(left->value))
        return "unused rating: unknown";
    return arena_format(arena, left->value < 0 ? "%s over the rating" : "%s unused",
                        figure_text(picture->layout, left, fabs(left->value)));
}

/* What is left of the rating, behind the bars. */
static void draw_left(const struct load_chart *chart, const struct figure *left, struct point at)
{
    const struct picture *picture = chart->picture;
    drawing_group(picture->drawing, left == NULL ? "unused axle rating: unknown"
                                                 : figure_sentence(picture->layout, left));
    drawing_text(picture->drawing, at,
                 (struct text_style){.size = chart->size,
                                     .bold = left != NULL && left->verdict == VERDICT_FAIL},
                 left_words(picture, left));
    drawing_group_end(picture->drawing);
}

static const char *mark_words(const struct load_chart *chart, const struct load_mark *mark,
                              int axle)
{
    const struct picture *picture = chart->picture;
    struct arena *arena = picture->layout->arena;
    if (!known(mark->kg))
        return mark->refused ? mark->words : arena_format(arena, "%s: unknown", mark->words);
    if (mark->figure == NULL)
        return arena_format(arena, "%s: %.0f %s", mark->words, to_shown(picture, mark->kg),
                            unit_shown(picture));
    return arena_format(arena, "%s: %.0f x %s", mark->words, tyres_of(picture, chart->setup, axle),
                        figure_value_text(picture->layout, mark->figure));
}

/* Its words with a sample of its line above the bars, and the line across them. */
static void draw_mark(const struct load_chart *chart, const struct load_mark *mark, int axle,
                      double text_y, double bars, double bottom)
{
    const struct picture *picture = chart->picture;
    struct drawing *drawing = picture->drawing;
    const struct pen pen = {.width = mark->width,
                            .dash = known(mark->kg) ? mark->dash : DASH_SHORT};
    double size = chart->size, sample = text_y - 0.35 * size;
    const char *words = mark_words(chart, mark, axle);
    drawing_group(drawing,
                  mark->figure != NULL ? figure_sentence(picture->layout, mark->figure) : words);
    drawing_line(drawing, (struct point){chart->area.x, sample},
                 (struct point){chart->area.x + 3 * size, sample}, pen);
    drawing_text(drawing, (struct point){chart->area.x + 3.5 * size, text_y},
                 (struct text_style){.size = size}, words);
    if (known(mark->kg)) {
        double x = scale_place(&chart->scale, to_shown(picture, mark->kg));
        drawing_line(drawing, (struct point){x, bars}, (struct point){x, bottom}, pen);
    }
    drawing_group_end(drawing);
}

/* One axle: the words of its marks, then a bar a state. Returns where it ends. */
static double draw_axle(struct load_chart *chart, int axle, double y, double left)
{
    const struct picture *picture = chart->picture;
    struct drawing *drawing = picture->drawing;
    const struct specification *specification = picture->layout->plan->specification;
    double size = chart->size, row_height = 1.7 * size;
    struct load_mark marks[MARKS];
    marks_of(picture, chart->setup, axle, marks);
    drawing_text(drawing, (struct point){left, y + size},
                 (struct text_style){.size = size, .bold = true}, axle_name(axle));
    double bars = y + (1.4 * MARKS + 0.3) * size;
    double bottom = bars + (double)state_count(specification) * row_height;
    for (size_t i = 0; i < state_count(specification); i++) {
        const char *state = state_name(state_at(specification, i));
        double top = bars + (double)i * row_height, text = top + row_height / 2 + 0.2 * size;
        struct box row = {chart->area.x, top + 0.15 * size, chart->area.width,
                          row_height - 0.3 * size};
        drawing_text(drawing, (struct point){chart->area.x - 0.5 * size, text},
                     (struct text_style){.size = size, .anchor = ANCHOR_END},
                     drawing_fit(drawing, state, size, chart->area.x - left - 0.5 * size));
        draw_bar(chart, axle_load(picture, chart->setup, axle, (int)i), axle, row);
        draw_left(chart, rating_left(picture, chart->setup, axle, (int)i),
                  (struct point){chart->area.x + chart->area.width + 0.8 * size, text});
    }
    for (size_t i = 0; i < MARKS; i++)
        draw_mark(chart, &marks[i], axle, y + (1.4 * (double)i + 1) * size, bars, bottom);
    return bottom + 0.8 * size;
}

static double panel_height(const struct picture *picture)
{
    double states = (double)state_count(picture->layout->plan->specification);
    return (2 + AXLE_COUNT * (1.4 * MARKS + 1.1 + 1.7 * states) + 3.5) * SIZE;
}

/* Characters of the widest state's name, in pixels, but no more than a quarter of the width. */
static double names_width(const struct picture *picture)
{
    const struct specification *specification = picture->layout->plan->specification;
    double widest = drawing_text_width("front", 1.13 * SIZE);
    for (size_t i = 0; i < state_count(specification); i++)
        widest =
            fmax(widest, drawing_text_width(state_name(state_at(specification, i)), SIZE) + SIZE);
    return fmin(widest, DRAWING_WIDTH / 4.0);
}

struct load_panels {
    double names, behind, height, most;
};

static void draw_panel(const struct picture *picture, const void *context, size_t index, double top)
{
    enum { LEFT = DRAWING_TEXT };
    const struct load_panels *panels = context;
    struct load_chart chart = {.picture = picture, .size = SIZE, .setup = index};
    chart.area = (struct box){LEFT + panels->names, top + 2 * SIZE,
                              DRAWING_WIDTH - 2 * LEFT - panels->names - panels->behind,
                              panels->height - 5.2 * SIZE};
    chart.scale = (struct scale){0, scale_up(panels->most, scale_step(panels->most, 8)),
                                 chart.area.x, chart.area.x + chart.area.width};
    drawing_text(picture->drawing, (struct point){LEFT, top + SIZE},
                 (struct text_style){.size = SIZE, .bold = true},
                 picture_setup_title(picture, index, 1.13 * SIZE, DRAWING_WIDTH - 2 * LEFT));
    axis_below(picture->drawing, &chart.scale, chart.area, SIZE,
               arena_format(picture->layout->arena, "axle load, %s", unit_shown(picture)));
    double y = chart.area.y + 0.2 * SIZE;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        y = draw_axle(&chart, axle, y, LEFT);
}

void picture_load(const struct picture *picture)
{
    const struct load_panels each = {
        .names = names_width(picture),
        .behind = drawing_text_width("unused rating: unknown", 1.13 * SIZE) + SIZE,
        .height = panel_height(picture),
        .most = heaviest_of(picture),
    };
    const struct panels panels = {
        .title = "Axle loads against ratings and tyre capacity",
        .description = "For each axle, a bar a loading state; lines mark the axle rating and what "
                       "the tyres of the axle carry at the recommended pressure. What is unknown "
                       "is dashed.",
        .count = picture->layout->plan->count,
        .height = each.height + SIZE,
        .context = &each,
        .draw = draw_panel,
    };
    picture_panels(picture, &panels);
}
