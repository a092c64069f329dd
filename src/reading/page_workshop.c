/* The workshop's part of the sheet: what to set, what to measure, and who did it; and the drawings
 * between both parts. */
#include "base/known.h"
#include "reading/page.h"
#include "reading/picture.h"
#include "reading/prose.h"

struct workshop_row {
    const char *title;
    struct figure_query query;
    bool to_check; /* by hand: a box to tick */
};

#define ROW(title, quantity, axle)                                                                 \
    {                                                                                              \
        title, {quantity, axle, NULL, NULL, NULL, false}, false                                    \
    }
#define ROOM(title, quantity, axle, begins)                                                        \
    {                                                                                              \
        title, {quantity, axle, NULL, begins, "largest", false}, true                              \
    }

static const struct workshop_row rows[] = {
    ROW("set: pressure, cold, front", QUANTITY_PRESSURE_RECOMMENDED, AXLE_FRONT),
    ROW("set: pressure, cold, rear", QUANTITY_PRESSURE_RECOMMENDED, AXLE_REAR),
    ROW("enter", QUANTITY_SETTING_NEAREST, AXLE_NONE),
    ROW("error that remains", QUANTITY_REMAINING_ERROR, AXLE_NONE),
    ROOM("room above at bump, front", QUANTITY_ARCH_ABOVE, AXLE_FRONT, "bump"),
    ROOM("room inside, front", QUANTITY_ARCH_INNER, AXLE_FRONT, NULL),
    ROOM("room outside, front", QUANTITY_ARCH_OUTER, AXLE_FRONT, NULL),
    ROOM("room at lock, front", QUANTITY_ARCH_LOCK, AXLE_FRONT, NULL),
    ROOM("room above at bump, rear", QUANTITY_ARCH_ABOVE, AXLE_REAR, "bump"),
    ROOM("room inside, rear", QUANTITY_ARCH_INNER, AXLE_REAR, NULL),
    ROOM("room outside, rear", QUANTITY_ARCH_OUTER, AXLE_REAR, NULL),
    ROOM("room round the spare", QUANTITY_SPARE_ROOM, AXLE_NONE, NULL),
};

/* The setting's figure is without a unit: its kind stands beside the exact one. */
static const char *setting_kind(const struct reading *reading)
{
    for (size_t i = 0; i < reading->plan->count; i++) {
        const struct figure *exact = figure_first(
            reading, i,
            (struct figure_query){QUANTITY_SETTING_EXACT, AXLE_NONE, NULL, NULL, NULL, false});
        if (exact != NULL && exact->at != NULL)
            return exact->at;
    }
    return NULL;
}

static const char *row_title(const struct reading *reading, const struct workshop_row *row,
                             const char *kind)
{
    if (row->query.quantity != QUANTITY_SETTING_NEAREST || kind == NULL)
        return row->title;
    return arena_format(reading->arena, "%s, %s", row->title, in_words(reading->arena, kind));
}

static const char *value_text(const struct reading *reading, const struct figure *figure)
{
    if (figure == NULL)
        return "-";
    if (known(figure->value))
        return figure_text(reading, figure, figure->value);
    if (figure->verdict == VERDICT_NONE)
        return "-";
    return figure->verdict == VERDICT_FAIL ? "none is enough" : "unknown";
}

static void put_cell(const struct reading *reading, const struct workshop_row *row, size_t setup)
{
    const struct figure *figure = figure_least(reading, setup, row->query);
    bool wrong = figure != NULL && figure->verdict == VERDICT_FAIL;
    page_raw(reading, wrong ? "<td class=\"wrong\">! " : "<td>");
    page_text(reading, value_text(reading, figure));
    if (row->to_check && setup > 0)
        page_raw(reading, " <span class=\"box\">&#9744;</span>");
    page_raw(reading, "</td>");
}

static bool any_figure(const struct reading *reading, const struct workshop_row *row)
{
    for (size_t i = 0; i < reading->plan->count; i++)
        if (figure_first(reading, i, row->query) != NULL)
            return true;
    return false;
}

static void put_row(const struct reading *reading, const struct setup_block *block,
                    const struct workshop_row *row, const char *kind)
{
    page_raw(reading, "<tr><th scope=\"row\">");
    page_text(reading, row_title(reading, row, kind));
    page_raw(reading, "</th>");
    for (size_t j = 0; j <= block->count; j++)
        put_cell(reading, row, setup_in_block(block, j));
    page_raw(reading, "</tr>\n");
}

void page_workshop(const struct reading *reading)
{
    enum { ROW_COUNT = sizeof rows / sizeof rows[0] };
    /* Once and not a block: what looks at all setups for each of them takes quadratic time. */
    const char *kind = setting_kind(reading);
    bool shown[ROW_COUNT];
    for (size_t i = 0; i < ROW_COUNT; i++)
        shown[i] = any_figure(reading, &rows[i]);
    page_raw(reading, "<h2>For the workshop</h2>\n");
    for (struct setup_block block = {0, 0}; page_next_block(reading, &block);) {
        page_table_begin(reading, &block,
                         "To set, and room to check by hand: computed with the largest tyre "
                         "allowed; tick what was measured",
                         false);
        for (size_t i = 0; i < ROW_COUNT; i++)
            if (shown[i])
                put_row(reading, &block, &rows[i], kind);
        page_table_end(reading);
    }
    page_raw(reading, "<p class=\"sign\"><span>option fitted</span><span>checked by</span>"
                      "<span>date</span><span>odometer</span></p>\n");
}

/* --- drawings */

static void figure_begin(const struct reading *reading)
{
    page_raw(reading, "<figure>\n");
}

static void figure_end(const struct reading *reading, const char *caption)
{
    if (*caption != '\0') {
        page_raw(reading, "<figcaption>");
        page_text(reading, caption);
        page_raw(reading, "</figcaption>\n");
    }
    page_raw(reading, "</figure>\n");
}

void page_drawings(const struct reading *reading)
{
    enum { ARCH_WIDTH = 176, ARCH_HEIGHT = 90, HALF_WIDTH = 352, HEIGHT_LEAST = 130 };
    struct drawing drawing = {reading->out, reading->arena, true};
    const struct picture picture = {&drawing, reading};
    const struct specification *specification = reading->plan->specification;
    page_raw(reading, "<div class=\"drawings\">\n");
    for (size_t i = 1; specification->clearance.node != NULL && i < reading->plan->count; i++) {
        figure_begin(reading);
        picture_arch_small(&picture, i, ARCH_WIDTH, ARCH_HEIGHT);
        figure_end(reading, arena_format(reading->arena, "%s: front wheel in its arch",
                                         picture_letter(&picture, i)));
    }
    page_raw(reading, "</div>\n<div class=\"drawings\">\n");
    double height = picture_load_small_height(&picture);
    height = height < HEIGHT_LEAST ? HEIGHT_LEAST : height;
    if (specification->vehicle.node != NULL) {
        figure_begin(reading);
        picture_load_small(&picture, HALF_WIDTH, height);
        figure_end(reading, "");
    }
    if (specification->drivetrain.node != NULL) {
        figure_begin(reading);
        picture_gearing_small(&picture, HALF_WIDTH, height);
        figure_end(reading, "");
    }
    page_raw(reading, "</div>\n");
}
