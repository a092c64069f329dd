/* The workshop's part of the sheet: what to set, what to measure, and who did it; and the drawings
 * between both parts. */
#include "base/known.h"
#include "build/keys.h"
#include "compute/gearing.h"
#include "reading/page.h"
#include "reading/picture.h"
#include "reading/prose.h"

struct workshop_row {
    const char *title;
    struct figure_query query;
    bool to_check; /* by hand: a box to tick */
};

#define ROW(title, quantity_, axle_)                                                               \
    {                                                                                              \
        title, {.quantity = quantity_, .axle = axle_, .state = STATE_NONE}, false                  \
    }
#define ROOM(title, quantity_, axle_, posture_)                                                    \
    {                                                                                              \
        title,                                                                                     \
            {.quantity = quantity_,                                                                \
             .axle = axle_,                                                                        \
             .state = STATE_NONE,                                                                  \
             .tyre = AT_LARGEST,                                                                   \
             .posture = posture_},                                                                 \
            true                                                                                   \
    }

static const struct workshop_row rows[] = {
    ROW("set: pressure, cold, front", QUANTITY_PRESSURE_RECOMMENDED, AXLE_FRONT),
    ROW("set: pressure, cold, rear", QUANTITY_PRESSURE_RECOMMENDED, AXLE_REAR),
    ROW("enter", QUANTITY_SETTING_NEAREST, AXLE_NONE),
    ROW("error that remains", QUANTITY_REMAINING_ERROR, AXLE_NONE),
    ROOM("room above at bump, front", QUANTITY_ARCH_ABOVE, AXLE_FRONT, AT_BUMP),
    ROOM("room inside, front", QUANTITY_ARCH_INNER, AXLE_FRONT, AT_ANY_POSTURE),
    ROOM("room outside, front", QUANTITY_ARCH_OUTER, AXLE_FRONT, AT_ANY_POSTURE),
    ROOM("room at lock, front", QUANTITY_ARCH_LOCK, AXLE_FRONT, AT_ANY_POSTURE),
    ROOM("room above at bump, rear", QUANTITY_ARCH_ABOVE, AXLE_REAR, AT_BUMP),
    ROOM("room inside, rear", QUANTITY_ARCH_INNER, AXLE_REAR, AT_ANY_POSTURE),
    ROOM("room outside, rear", QUANTITY_ARCH_OUTER, AXLE_REAR, AT_ANY_POSTURE),
    ROOM("room round the spare", QUANTITY_SPARE_ROOM, AXLE_NONE, AT_ANY_POSTURE),
};

/* The setting's figure is without a unit: its kind is told with it. */
static const char *row_title(const struct layout *layout, const struct workshop_row *row)
{
    int kind = layout->plan->specification->speedometer.setting.kind;
    if (row->query.quantity != QUANTITY_SETTING_NEAREST || kind == CHOICE_NONE)
        return row->title;
    return arena_format(layout->arena, "%s, %s", row->title,
                        in_words(layout->arena, choices_setting_kind[kind]));
}

static const char *value_text(const struct layout *layout, const struct figure *figure)
{
    if (figure == NULL)
        return "-";
    if (known(figure->value))
        return figure_text(layout, figure, figure->value);
    if (figure->verdict == VERDICT_NONE)
        return "-";
    return figure->verdict == VERDICT_FAIL ? "none is enough" : "unknown";
}

static void put_cell(const struct layout *layout, const struct workshop_row *row, size_t setup)
{
    const struct figure *figure = figure_least(layout, setup, row->query);
    bool wrong = figure != NULL && figure->verdict == VERDICT_FAIL;
    page_raw(layout, wrong ? "<td class=\"wrong\">! " : "<td>");
    page_text(layout, value_text(layout, figure));
    if (row->to_check && setup > 0)
        page_raw(layout, " <span class=\"box\">&#9744;</span>");
    page_raw(layout, "</td>");
}

static bool any_figure(const struct layout *layout, const struct workshop_row *row)
{
    for (size_t i = 0; i < layout->plan->count; i++)
        if (figure_first(layout, i, row->query) != NULL)
            return true;
    return false;
}

static void put_row(const struct layout *layout, const struct setup_block *block,
                    const struct workshop_row *row)
{
    page_raw(layout, "<tr><th scope=\"row\">");
    page_text(layout, row_title(layout, row));
    page_raw(layout, "</th>");
    for (size_t j = 0; j <= block->count; j++)
        put_cell(layout, row, setup_in_block(block, j));
    page_raw(layout, "</tr>\n");
}

void page_workshop(const struct layout *layout)
{
    enum { ROW_COUNT = sizeof rows / sizeof rows[0] };
    bool shown[ROW_COUNT];
    for (size_t i = 0; i < ROW_COUNT; i++)
        shown[i] = any_figure(layout, &rows[i]);
    page_raw(layout, "<h2>For the workshop</h2>\n");
    for (struct setup_block block = {0, 0}; page_next_block(layout, &block);) {
        page_table_begin(layout, &block,
                         "To set, and room to check by hand: computed with the largest tyre "
                         "allowed; tick what was measured",
                         false);
        for (size_t i = 0; i < ROW_COUNT; i++)
            if (shown[i])
                put_row(layout, &block, &rows[i]);
        page_table_end(layout);
    }
    page_raw(layout, "<p class=\"sign\"><span>option fitted</span><span>checked by</span>"
                     "<span>date</span><span>odometer</span></p>\n");
}

/* --- drawings */

static void figure_begin(const struct layout *layout)
{
    page_raw(layout, "<figure>\n");
}

static void figure_end(const struct layout *layout, const char *caption)
{
    if (*caption != '\0') {
        page_raw(layout, "<figcaption>");
        page_text(layout, caption);
        page_raw(layout, "</figcaption>\n");
    }
    page_raw(layout, "</figure>\n");
}

void page_drawings(const struct layout *layout)
{
    enum { ARCH_WIDTH = 176, ARCH_HEIGHT = 90, HALF_WIDTH = 352, HEIGHT_LEAST = 130 };
    struct drawing drawing = {layout->out, layout->arena, true};
    const struct picture picture = {&drawing, layout};
    const struct specification *specification = layout->plan->specification;
    page_raw(layout, "<div class=\"drawings\">\n");
    for (size_t i = 1; specification->clearance.given != NULL && i < layout->plan->count; i++) {
        figure_begin(layout);
        picture_arch_small(&picture, i, ARCH_WIDTH, ARCH_HEIGHT);
        figure_end(layout, arena_format(layout->arena, "%s: front wheel in its arch",
                                        picture_letter(&picture, i)));
    }
    page_raw(layout, "</div>\n<div class=\"drawings\">\n");
    double height = picture_load_small_height(&picture);
    height = height < HEIGHT_LEAST ? HEIGHT_LEAST : height;
    if (specification->vehicle.given != NULL) {
        figure_begin(layout);
        picture_load_small(&picture, HALF_WIDTH, height);
        figure_end(layout, "");
    }
    if (has_gearbox(&specification->drivetrain)) {
        figure_begin(layout);
        picture_gearing_small(&picture, HALF_WIDTH, height);
        figure_end(layout, "");
    }
    page_raw(layout, "</div>\n");
}
