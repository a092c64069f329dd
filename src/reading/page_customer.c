/* The customer's part of the sheet: each option as a card, best first, in plain words and without
 * the rules that stand behind them. */
#include <string.h>

#include "base/known.h"
#include "reading/answer.h"
#include "reading/page.h"
#include "reading/place_text.h"
#include "reading/prose.h"
#include "reading/task_list.h"
#include "reading/task_text.h"

enum { NAME_WIDTH = 90, NEED_WIDTH = 110, NEEDS_MAX = 4 };

/* What changes for who drives it; some of it before and after the speedometer is set, of which one
 * is told. */
enum change_when { ALWAYS, UNLESS_SET, ONCE_SET };
struct change {
    const char *title;
    struct figure_query query;
    bool least, with_place;
    enum change_when when;
};

#define QUERY(...)                                                                                 \
    {                                                                                              \
        .axle = AXLE_NONE, .state = STATE_NONE, __VA_ARGS__                                        \
    }

static const struct change changes[] = {
    {"height of the tyre", QUERY(.quantity = QUANTITY_OVERALL_DIAMETER), false, false, ALWAYS},
    {"clearance under the axle", QUERY(.quantity = QUANTITY_UNDER_AXLE), false, false, ALWAYS},
    {"speedometer off by", QUERY(.quantity = QUANTITY_SPEEDOMETER_ERROR, .tyre = AT_NOMINAL), false,
     false, UNLESS_SET},
    {"speedometer off by, once set", QUERY(.quantity = QUANTITY_REMAINING_ERROR), false, false,
     ONCE_SET},
    {"true speed", QUERY(.quantity = QUANTITY_TRUE_SPEED, .headline = true), false, true,
     UNLESS_SET},
    {"true speed, once set", QUERY(.quantity = QUANTITY_TRUE_SPEED, .setting = AT_SETTING_ENTERED),
     false, true, ONCE_SET},
    {"engine speed", QUERY(.quantity = QUANTITY_ENGINE_SPEED, .headline = true), false, true,
     ALWAYS},
    {"load that the tyres have unused", QUERY(.quantity = QUANTITY_CAPACITY_LEFT), true, false,
     ALWAYS},
};

static const struct figure *changed(const struct layout *layout, size_t setup,
                                    const struct change *change, int axle)
{
    struct figure_query query = change->query;
    query.axle = axle;
    return change->least ? figure_least(layout, setup, query) : figure_first(layout, setup, query);
}

/* The fitted tyre's figure beside one that is so once the speedometer is set: as it is now. */
static const struct figure *changed_from(const struct layout *layout, const struct change *change,
                                         int axle)
{
    return changed(layout, 0, change->when == ONCE_SET ? change - 1 : change, axle);
}

/* ", shown 100 km/h"; a setting is told in the title. */
static const char *at_text(const struct layout *layout, const struct change *change,
                           const struct figure *figure)
{
    struct place place = figure->place;
    place.setting = AT_ANY_SETTING;
    return change->with_place ? arena_format(layout->arena, ", %s",
                                             place_text(layout->arena, &place, layout->plan->us))
                              : "";
}

/* AXLE_NONE: one line serves both axles. */
static void put_line(const struct layout *layout, size_t setup, const struct change *change,
                     int axle)
{
    const struct figure *then = changed(layout, setup, change, axle);
    page_raw(layout, "<tr>");
    page_element(layout, "th", " scope=\"row\"",
                 arena_format(layout->arena, "%s%s%s%s", change->title,
                              axle == AXLE_NONE ? "" : ", ", axle_name(axle),
                              at_text(layout, change, then)));
    if (setup > 0)
        page_figure_cell(layout, changed_from(layout, change, axle));
    page_figure_cell(layout, then);
    page_raw(layout, "</tr>\n");
}

/* Of an option that is no go nothing is set. */
static bool is_told(const struct layout *layout, size_t setup, const struct change *change)
{
    bool set =
        layout->outcomes[setup].outcome != OUTCOME_NO_GO && answer_sets_speedometer(layout, setup);
    return change->when == ALWAYS || (change->when == ONCE_SET) == set;
}

static void put_change(const struct layout *layout, size_t setup, const struct change *change)
{
    const struct figure *then = changed(layout, setup, change, AXLE_NONE);
    if (then == NULL || !is_told(layout, setup, change))
        return;
    const struct figure *rear = change->least || then->axle != AXLE_FRONT
                                    ? NULL
                                    : changed(layout, setup, change, AXLE_REAR);
    if (rear == NULL ||
        strcmp(figure_value_text(layout, then), figure_value_text(layout, rear)) == 0) {
        put_line(layout, setup, change, AXLE_NONE);
        return;
    }
    put_line(layout, setup, change, AXLE_FRONT);
    put_line(layout, setup, change, AXLE_REAR);
}

static void put_changes(const struct layout *layout, size_t setup)
{
    const char *label = option_label(layout, setup);
    page_raw(layout, "<table>\n");
    page_element(layout, "caption", " class=\"heard\"",
                 arena_format(layout->arena, "What changes with %s", label));
    page_raw(layout, "<thead><tr><th scope=\"col\">figure</th>");
    if (setup > 0)
        page_raw(layout, "<th scope=\"col\" class=\"n\">now</th>");
    page_element(layout, "th", " scope=\"col\" class=\"n\"",
                 setup == 0 ? "now" : arena_format(layout->arena, "with %s", label));
    page_raw(layout, "</tr></thead>\n<tbody>\n");
    for (size_t i = 0; i < sizeof changes / sizeof changes[0]; i++)
        put_change(layout, setup, &changes[i]);
    page_raw(layout, "</tbody>\n</table>\n");
}

static void put_in(const struct layout *layout, const char *attributes, const char *strong,
                   const char *text)
{
    if (strcmp(text, "-") == 0)
        return;
    page_raw(layout, "<p>");
    page_element(layout, "b", "", strong);
    page_element(layout, "span", attributes, text);
    page_raw(layout, "</p>\n");
}

static void put_need(const struct layout *layout, const char *strong, const char *text)
{
    put_in(layout, "", strong, text);
}

/* What the driver must know of it; NULL of any other task. */
static const char *told(const struct layout *layout, const struct task *task)
{
    return task_rows[task->cure.task].kind != TASK_TO_TELL
               ? NULL
               : figure_advice(layout->arena, layout->plan, task->reason);
}

static bool tells(const struct layout *layout, size_t setup, const char *text)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    for (size_t i = 0; i < outcome->task_count; i++) {
        const char *other = told(layout, &outcome->tasks[i]);
        if (other != NULL && strcmp(text, other) == 0)
            return true;
    }
    return false;
}

/* Of several options, whether each that may be fitted tells it: then it is told once, above. */
static bool all_tell(const struct layout *layout, const char *text)
{
    size_t options = layout->plan->count - 1;
    for (size_t i = 0; i < options; i++)
        if (layout->outcomes[layout->order[i]].outcome != OUTCOME_NO_GO &&
            !tells(layout, layout->order[i], text))
            return false;
    return options > 1;
}

static void put_told(const struct layout *layout, size_t setup, bool of_all)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    for (size_t i = 0; i < outcome->task_count; i++) {
        const char *text = told(layout, &outcome->tasks[i]);
        if (text != NULL && all_tell(layout, text) == of_all)
            put_need(layout, of_all ? "To know, with each of them: " : "To know: ", text);
    }
}

static void put_needs(const struct layout *layout, size_t setup)
{
    const char *cells[ANSWER_COLUMNS];
    answer_row(layout, setup, cells);
    if (layout->outcomes[setup].outcome == OUTCOME_NO_GO) {
        put_need(layout, "Why not: ",
                 text_cut(layout->arena, finding_in_words(layout, layout->outcomes[setup].why),
                          NEED_WIDTH));
        return;
    }
    put_in(layout, " class=\"v\"", "Cold pressures, front / rear: ", cells[ANSWER_PRESSURES]);
    put_need(layout, "Speedometer set to: ", cells[ANSWER_ENTER]);
    put_need(layout, "Other work: ", cells[ANSWER_WORK]);
    put_need(layout, "Closest margin: ", cells[ANSWER_MARGIN]);
    put_told(layout, setup, false);
}

void page_heights(const struct layout *layout, const size_t *setups, size_t count)
{
    struct drawing drawing = {layout->out, layout->arena, true};
    const struct picture picture = picture_of(&drawing, layout);
    page_raw(layout, "<figure>\n");
    picture_tyre_heights(&picture, setups, count);
    page_raw(layout, "</figure>\n");
}

static void put_card(const struct layout *layout, size_t setup)
{
    const struct setup *option = &layout->plan->setups[setup];
    enum outcome outcome = layout->outcomes[setup].outcome;
    page_raw(layout, arena_format(layout->arena, "<article class=\"card %s\">\n<h3>",
                                  outcome_name(outcome)));
    page_mark(layout, setup);
    page_text(layout, arena_format(layout->arena, "%s: ", option_label(layout, setup)));
    page_element(layout, "b", " class=\"says\"", outcome_words(outcome));
    page_raw(layout, "</h3>\n");
    const char *size = size_text(layout, option);
    page_element(layout, "h4", "",
                 setup == 0 ? size
                            : arena_format(layout->arena, "%s, %s", size,
                                           text_cut(layout->arena, option->name, NAME_WIDTH)));
    put_changes(layout, setup);
    page_raw(layout, "<div class=\"pair\"><div>\n");
    put_needs(layout, setup);
    page_raw(layout, "</div>\n");
    page_heights(layout, &setup, 1);
    page_raw(layout, "</div>\n</article>\n");
}

/* Which to take, where one can be taken. */
static void put_choice(const struct layout *layout)
{
    size_t best = layout->order[0];
    enum outcome outcome = layout->outcomes[best].outcome;
    const char *text =
        outcome == OUTCOME_NO_GO ? "None of them may be fitted as this vehicle is built."
        : outcome == OUTCOME_OPEN
            ? arena_format(layout->arena,
                           "None is sure yet. Nearest is %s: measure or read first what the "
                           "workshop's page asks for.",
                           option_label(layout, best))
            : arena_format(layout->arena, "Our choice: %s, %s: %s.", option_label(layout, best),
                           size_text(layout, &layout->plan->setups[best]), outcome_words(outcome));
    page_raw(layout, "<p class=\"first\"><b>");
    page_text(layout, text);
    page_raw(layout, "</b> Best first; every option stands below.</p>\n");
}

/* What the build has whichever tyre is chosen. */
static void put_shared(const struct layout *layout)
{
    struct finding_list deciding;
    const char *build = answer_build(layout, &deciding);
    if (build == NULL)
        return;
    page_element(layout, "p", "", build);
    if (deciding.count == 0)
        return;
    page_raw(layout, "<ul>\n");
    for (size_t i = 0; i < deciding.count && i < NEEDS_MAX; i++)
        page_element(
            layout, "li", "",
            text_cut(layout->arena, finding_in_words(layout, deciding.items[i]), NEED_WIDTH));
    page_raw(layout, "</ul>\n");
    if (deciding.count > NEEDS_MAX)
        page_element(layout, "p", "",
                     arena_format(layout->arena, "%zu more are told in the last part.",
                                  deciding.count - NEEDS_MAX));
}

bool page_leads_with_heights(size_t options)
{
    enum { CARDS_BELOW_IT = 4, CARDS_WITHOUT = 6 };
    return options > 1 && (options <= CARDS_BELOW_IT || options > CARDS_WITHOUT);
}

void page_customer(const struct layout *layout)
{
    size_t shown = 0;
    for (size_t i = 0; i < layout->plan->count; i++)
        shown += task_list_shows(layout, layout->order[i]);
    page_raw(layout, "<section>\n<h2>For the customer</h2>\n");
    put_choice(layout);
    put_shared(layout);
    put_told(layout, layout->order[0], true);
    if (page_leads_with_heights(shown))
        page_heights(layout, layout->order, shown);
    page_raw(layout, "<div class=\"cards\">\n");
    for (size_t i = 0; i < layout->plan->count; i++)
        if (task_list_shows(layout, layout->order[i]))
            put_card(layout, layout->order[i]);
    page_raw(layout, "</div>\n");
    page_element(layout, "p", "", cautions);
    page_raw(layout, "</section>\n");
}
