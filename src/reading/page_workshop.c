/* The workshop's part: a page an option, with its tasks to tick, what was computed beside what is
 * measured, and who did it. */
#include "base/known.h"
#include "build/keys.h"
#include "compute/gearing.h"
#include "reading/answer.h"
#include "reading/page.h"
#include "reading/prose.h"
#include "reading/task_text.h"

enum { NAME_WIDTH = 90 };

struct workshop_row {
    const char *title;
    struct figure_query query;
};

#define ROW(title, quantity_, axle_)                                                               \
    {                                                                                              \
        title,                                                                                     \
        {                                                                                          \
            .quantity = quantity_, .axle = axle_, .state = STATE_NONE                              \
        }                                                                                          \
    }
#define ROOM(title, quantity_, axle_, posture_)                                                    \
    {                                                                                              \
        title,                                                                                     \
        {                                                                                          \
            .quantity = quantity_, .axle = axle_, .state = STATE_NONE, .tyre = AT_LARGEST,         \
            .posture = posture_                                                                    \
        }                                                                                          \
    }

static const struct workshop_row rows[] = {
    ROW("cold pressure, front", QUANTITY_PRESSURE_RECOMMENDED, AXLE_FRONT),
    ROW("cold pressure, rear", QUANTITY_PRESSURE_RECOMMENDED, AXLE_REAR),
    ROW("speedometer setting", QUANTITY_SETTING_NEAREST, AXLE_NONE),
    ROW("speedometer error, once set", QUANTITY_REMAINING_ERROR, AXLE_NONE),
    ROW("heaviest axle load, front", QUANTITY_AXLE_LOAD, AXLE_FRONT),
    ROW("heaviest axle load, rear", QUANTITY_AXLE_LOAD, AXLE_REAR),
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

/* The figure of a row that is known, or NULL: what is not is a task to measure. */
static const struct figure *known_figure(const struct layout *layout, size_t setup,
                                         const struct workshop_row *row)
{
    const struct figure *figure = row->query.quantity == QUANTITY_AXLE_LOAD
                                      ? figure_most(layout, setup, row->query)
                                      : figure_least(layout, setup, row->query);
    return figure != NULL && known(figure->value) ? figure : NULL;
}

static void put_measured(const struct layout *layout, size_t setup)
{
    bool any = false;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const struct figure *figure = known_figure(layout, setup, &rows[i]);
        if (figure == NULL)
            continue;
        if (!any)
            page_raw(layout,
                     "<table>\n<caption>To measure beside the computed (rooms: largest tyre "
                     "of the size)</caption>\n<thead><tr><th scope=\"col\">figure</th>"
                     "<th scope=\"col\" class=\"n\">computed</th>"
                     "<th scope=\"col\">measured</th></tr></thead>\n<tbody>\n");
        any = true;
        page_raw(layout, "<tr>");
        page_element(layout, "th", " scope=\"row\"", row_title(layout, &rows[i]));
        page_figure_cell(layout, figure);
        page_raw(layout, "<td class=\"fill\">&nbsp;</td></tr>\n");
    }
    if (any)
        page_raw(layout, "</tbody>\n</table>\n");
}

static void put_tasks(const struct layout *layout, size_t setup)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    if (outcome->task_count == 0) {
        page_element(layout, "p", "",
                     outcome->outcome == OUTCOME_NO_GO ? "No work makes it fit; what fails:"
                                                       : "Nothing to do.");
        return;
    }
    page_raw(
        layout,
        "<table>\n<caption>Work, in this order</caption>\n<thead><tr>"
        "<th scope=\"col\" class=\"v\">done</th><th scope=\"col\" class=\"n v\">no.</th>"
        "<th scope=\"col\" class=\"v\">kind</th><th scope=\"col\">what to do</th></tr></thead>\n"
        "<tbody>\n");
    for (size_t i = 0; i < outcome->task_count; i++) {
        const struct task *task = &outcome->tasks[i];
        page_raw(layout, "<tr><td><span class=\"box\">&nbsp;</span></td>");
        page_element(layout, "td", " class=\"n\"", arena_format(layout->arena, "%zu", i + 1));
        page_element(layout, "td", " class=\"v\"", task_kind_name(task_rows[task->cure.task].kind));
        page_raw(layout, "<th scope=\"row\">");
        page_text(layout, task_text_in_full(layout, task));
        page_raw(layout, "</th></tr>\n");
    }
    page_raw(layout, "</tbody>\n</table>\n");
}

/* What fails of a no go, the build's own with it. */
static void put_fails(const struct layout *layout, size_t setup)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    if (outcome->outcome != OUTCOME_NO_GO)
        return;
    page_raw(layout, "<ul>\n");
    for (size_t i = 0; i < outcome->counts[VERDICT_FAIL]; i++)
        page_finding(layout, outcome->findings[i]);
    page_raw(layout, "</ul>\n");
}

static void put_drawings(const struct layout *layout, size_t setup)
{
    struct drawing drawing = {layout->out, layout->arena, true};
    const struct picture picture = picture_of(&drawing, layout);
    if (picture_arch_known(&picture, setup)) {
        page_raw(layout, "<figure>\n");
        picture_arch_small(&picture, setup);
        page_raw(layout, "</figure>\n");
    }
}

void page_workshop(const struct layout *layout, size_t setup)
{
    const struct setup *option = &layout->plan->setups[setup];
    enum outcome outcome = layout->outcomes[setup].outcome;
    page_raw(layout, arena_format(layout->arena, "<section class=\"sheet %s\">\n<h2>",
                                  outcome_name(outcome)));
    page_mark(layout, setup);
    page_text(layout, arena_format(layout->arena, "For the workshop: %s, %s: ",
                                   option_label(layout, setup), size_text(layout, option)));
    page_element(layout, "b", " class=\"says\"", outcome_words(outcome));
    page_raw(layout, "</h2>\n");
    page_element(layout, "p", "", text_cut(layout->arena, option->name, NAME_WIDTH));
    put_tasks(layout, setup);
    put_fails(layout, setup);
    if (outcome != OUTCOME_NO_GO) {
        put_measured(layout, setup);
        put_drawings(layout, setup);
        page_raw(layout,
                 "<p>Wheel nuts: by the vehicle maker's figure, and again after the first drive. "
                 "An alteration is for a licensed person to approve; this page approves none.</p>\n"
                 "<p class=\"sign\"><span>fitted by</span><span>checked by</span>"
                 "<span>date</span><span>odometer</span></p>\n");
    }
    page_raw(layout, "</section>\n");
}
