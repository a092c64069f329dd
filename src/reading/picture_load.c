/* Axle loads as bars, a bar a loading state, against the axle's rating and what its tyres carry at
 * the placard and at the recommended pressure. */
#include <math.h>

#include "base/known.h"
#include "base/units.h"
#include "reading/picture.h"
#include "compute/fitment.h"
#include "compute/load.h"
#include "compute/ratings.h"

enum { MARKS = 3 };

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

static void set_capacity_mark(const struct picture *picture, size_t setup, int axle,
                              const struct figure *figure, struct load_mark *mark)
{
    mark->figure = figure;
    mark->kg = figure == NULL ? UNKNOWN : figure->value * tyres_of(picture, setup, axle);
}

static const char *pressure_words(const struct picture *picture, double pressure_Pa)
{
    enum unit_id unit = picture->layout->plan->us ? UNIT_PSI : UNIT_KPA;
    return arena_format(picture->layout->arena, "%.0f %s", unit_from_si(unit, pressure_Pa),
                        unit_table[unit].name);
}

static void marks_of(const struct picture *picture, size_t setup, int axle,
                     struct load_mark marks[MARKS])
{
    struct arena *arena = picture->layout->arena;
    const struct specification *specification = picture->layout->plan->specification;
    double placard = placard_Pa(specification, (enum axle)axle);
    const struct figure *pressure = recommended(picture, setup, axle);
    marks[0] =
        (struct load_mark){.words = "axle rating", .kg = axle_rating_kg(picture, axle), .width = 2};
    marks[1] = (struct load_mark){.dash = DASH_LONG, .width = 1.2};
    marks[1].words = known(placard) ? arena_format(arena, "tyres at placard, %s",
                                                   pressure_words(picture, placard))
                                    : "tyres at placard";
    set_capacity_mark(picture, setup, axle, capacity_at(picture, setup, axle, AT_PLACARD),
                      &marks[1]);
    bool refused = pressure != NULL && pressure->verdict == VERDICT_FAIL;
    marks[2] = (struct load_mark){.refused = refused, .dash = DASH_DOT, .width = 1.6};
    bool found = pressure != NULL && known(pressure->value);
    marks[2].words = refused ? "tyres: no allowed pressure is enough"
                     : found ? arena_format(arena, "tyres at recommended, %s",
                                            figure_value_text(picture->layout, pressure))
                             : "tyres at recommended pressure";
    set_capacity_mark(picture, setup, axle, capacity_at(picture, setup, axle, AT_RECOMMENDED),
                      &marks[2]);
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
        return "left of rating: unknown";
    return arena_format(arena, left->value < 0 ? "%s over the rating" : "%s left",
                        figure_text(picture->layout, left, fabs(left->value)));
}

/* What is left of the rating, behind the bars. */
static void draw_left(const struct load_chart *chart, const struct figure *left, struct point at)
{
    const struct picture *picture = chart->picture;
    drawing_group(picture->drawing, left == NULL ? "left of the axle rating: unknown"
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

/* Marks from the right to the left, those without a place first: words stand before their line, and
 * a line begins at its words, so that no line crosses the words of another. */
static void order_marks(struct load_mark marks[MARKS])
{
    for (size_t i = 1; i < MARKS; i++)
        for (size_t j = i; j > 0 && known(marks[j - 1].kg) && !(marks[j].kg <= marks[j - 1].kg);
             j--) {
            struct load_mark swapped = marks[j];
            marks[j] = marks[j - 1];
            marks[j - 1] = swapped;
        }
}

static void draw_mark(const struct load_chart *chart, const struct load_mark *mark, int axle,
                      double text_y, double bottom)
{
    const struct picture *picture = chart->picture;
    struct drawing *drawing = picture->drawing;
    double size = chart->size;
    const char *words = mark_words(chart, mark, axle);
    drawing_group(drawing,
                  mark->figure != NULL ? figure_sentence(picture->layout, mark->figure) : words);
    if (!known(mark->kg)) {
        drawing_line(drawing, (struct point){chart->area.x, text_y - 0.35 * size},
                     (struct point){chart->area.x + 3 * size, text_y - 0.35 * size},
                     (struct pen){.width = mark->width, .dash = DASH_SHORT});
        drawing_text(drawing, (struct point){chart->area.x + 3.5 * size, text_y},
                     (struct text_style){.size = size}, words);
    } else {
        double x = scale_place(&chart->scale, to_shown(picture, mark->kg));
        drawing_line(drawing, (struct point){x, text_y - 0.8 * size}, (struct point){x, bottom},
                     (struct pen){.width = mark->width, .dash = mark->dash});
        drawing_text(drawing, (struct point){x - 0.5 * size, text_y},
                     (struct text_style){.size = size, .anchor = ANCHOR_END}, words);
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
    order_marks(marks);
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
        draw_mark(chart, &marks[i], axle, y + (1.4 * (double)i + 1) * size, bottom);
    return bottom + 1.2 * size;
}

static double panel_height(const struct picture *picture, double size)
{
    double states = (double)state_count(picture->layout->plan->specification);
    return (2 + AXLE_COUNT * (1.4 * MARKS + 1.5 + 1.7 * states) + 4) * size;
}

void picture_load(const struct picture *picture)
{
    enum { WIDTH = 820, LEFT = 12, NAMES = 150, BEHIND = 150, SIZE = 11, GAP = 24 };
    const struct plan *plan = picture->layout->plan;
    double height = panel_height(picture, SIZE), top = LEFT;
    struct load_chart chart = {.picture = picture, .size = SIZE};
    double most = heaviest_of(picture), step = scale_step(most, 8);
    drawing_begin(picture->drawing, WIDTH, (double)plan->count * (height + GAP) + 2 * LEFT,
                  "Axle loads against ratings and tyre capacity",
                  "For each setup and axle, a bar a loading state; lines mark the axle rating and "
                  "what the tyres of the axle carry at the placard and at the recommended "
                  "pressure. What is unknown is dashed.");
    for (size_t i = 0; i < plan->count; i++, top += height + GAP) {
        chart.setup = i;
        chart.area = (struct box){LEFT + NAMES, top + 2 * SIZE, WIDTH - 2 * LEFT - NAMES - BEHIND,
                                  height - 6 * SIZE};
        chart.scale =
            (struct scale){0, scale_up(most, step), chart.area.x, chart.area.x + chart.area.width};
        drawing_text(picture->drawing, (struct point){LEFT, top + SIZE},
                     (struct text_style){.size = 1.15 * SIZE, .bold = true},
                     picture_setup_title(picture, i, 1.3 * SIZE, WIDTH - 2 * LEFT));
        axis_below(picture->drawing, &chart.scale, chart.area, SIZE,
                   arena_format(picture->layout->arena, "axle load, %s", unit_shown(picture)));
        double y = chart.area.y + 0.2 * SIZE;
        for (int axle = 0; axle < AXLE_COUNT; axle++)
            y = draw_axle(&chart, axle, y, LEFT);
    }
    drawing_end(picture->drawing);
}

static const struct figure *heaviest_load(const struct picture *picture, size_t setup, int axle)
{
    return figure_most(
        picture->layout, setup,
        (struct figure_query){.quantity = QUANTITY_AXLE_LOAD, .axle = axle, .state = STATE_NONE});
}

enum { SMALL_SIZE = 9 };

static double small_row_height(void)
{
    return 1.22 * SMALL_SIZE;
}

double picture_load_small_height(const struct picture *picture)
{
    return 6 * SMALL_SIZE + AXLE_COUNT * (double)picture->layout->plan->count * small_row_height();
}

static void draw_small_row(struct load_chart *chart, int axle, double top)
{
    const struct picture *picture = chart->picture;
    double size = chart->size, height = small_row_height();
    struct box row = {chart->area.x, top + 0.06 * size, chart->area.width, height - 0.12 * size};
    drawing_text(picture->drawing, (struct point){chart->area.x - 0.5 * size, top + size},
                 (struct text_style){.size = size, .anchor = ANCHOR_END},
                 arena_format(picture->layout->arena, "%s, %s",
                              picture_letter(picture, chart->setup), axle_name(axle)));
    draw_bar(chart, heaviest_load(picture, chart->setup, axle), axle, row);
    struct load_mark marks[MARKS];
    marks_of(picture, chart->setup, axle, marks);
    for (size_t i = 0; i < MARKS; i++) {
        if (!known(marks[i].kg))
            continue;
        double x = scale_place(&chart->scale, to_shown(picture, marks[i].kg));
        drawing_line(picture->drawing, (struct point){x, top}, (struct point){x, top + height},
                     (struct pen){.width = marks[i].width, .dash = marks[i].dash});
    }
    const struct figure *pressure = recommended(picture, chart->setup, axle);
    bool refused = pressure != NULL && pressure->verdict == VERDICT_FAIL;
    drawing_text(picture->drawing,
                 (struct point){chart->area.x + chart->area.width + 0.7 * size, top + size},
                 (struct text_style){.size = size, .bold = refused},
                 refused ? "not enough" : figure_value_text(picture->layout, pressure));
}

static void draw_small_legend(const struct load_chart *chart, double y)
{
    static const struct {
        const char *words;
        enum dash dash;
        double width;
    } legend[MARKS] = {{"rating", DASH_NONE, 2},
                       {"tyres at placard", DASH_LONG, 1.2},
                       {"at recommended", DASH_DOT, 1.6}};
    double x = chart->area.x - 5 * chart->size, size = chart->size;
    for (size_t i = 0; i < MARKS; i++) {
        drawing_line(chart->picture->drawing, (struct point){x, y - 0.3 * size},
                     (struct point){x + 2 * size, y - 0.3 * size},
                     (struct pen){.width = legend[i].width, .dash = legend[i].dash});
        drawing_text(chart->picture->drawing, (struct point){x + 2.4 * size, y},
                     (struct text_style){.size = size}, legend[i].words);
        x += 3.4 * size + drawing_text_width(legend[i].words, size);
    }
}

void picture_load_small(const struct picture *picture, double width, double height)
{
    const struct plan *plan = picture->layout->plan;
    struct load_chart chart = {.picture = picture, .size = SMALL_SIZE};
    double most = heaviest_of(picture), step = scale_step(most, 5), names = 7 * SMALL_SIZE;
    drawing_begin(picture->drawing, width, height, "Heaviest axle loads",
                  "For each setup and axle the load of its heaviest state as a bar, against the "
                  "axle rating and what its tyres carry at the placard and the recommended "
                  "pressure.");
    drawing_text(picture->drawing, (struct point){0, SMALL_SIZE},
                 (struct text_style){.size = 1.15 * SMALL_SIZE, .bold = true},
                 "Axle loads, heaviest state; pressure recommended");
    chart.area = (struct box){names, 1.8 * SMALL_SIZE, width - names - 7.5 * SMALL_SIZE,
                              AXLE_COUNT * (double)plan->count * small_row_height()};
    chart.scale =
        (struct scale){0, scale_up(most, step), chart.area.x, chart.area.x + chart.area.width};
    axis_below(picture->drawing, &chart.scale, chart.area, SMALL_SIZE, unit_shown(picture));
    double top = chart.area.y;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        for (size_t i = 0; i < plan->count; i++, top += small_row_height()) {
            chart.setup = i;
            draw_small_row(&chart, axle, top);
        }
    draw_small_legend(&chart, top + 3.7 * SMALL_SIZE);
    drawing_end(picture->drawing);
}
