#include "reading/changes.h"

#include "base/known.h"
#include "reading/findings_text.h"
#include "output/writer.h"

#define QUERY(quantity_, ...)                                                                      \
    {                                                                                              \
        .quantity = quantity_, .axle = AXLE_NONE, .state = STATE_NONE, __VA_ARGS__                 \
    }

const struct change_row change_rows[] = {
    {"overall diameter", QUERY(QUANTITY_OVERALL_DIAMETER, .headline = false)},
    {"diameter, change", QUERY(QUANTITY_OVERALL_DIAMETER_CHANGE, .headline = false)},
    {"under the axle, change", QUERY(QUANTITY_UNDER_AXLE_CHANGE, .headline = false)},
    {"load index, per tyre", QUERY(QUANTITY_LOAD_AT_INDEX, .headline = false)},
    {"speed symbol", QUERY(QUANTITY_SPEED_SYMBOL, .headline = false)},
    {"speedometer error", QUERY(QUANTITY_SPEEDOMETER_ERROR, .tyre = AT_NOMINAL, .headline = false)},
    {"true speed", QUERY(QUANTITY_TRUE_SPEED, .speed_as = AT_SHOWN, .headline = true)},
    {"engine speed", QUERY(QUANTITY_ENGINE_SPEED, .headline = true)},
};
const size_t change_row_count = sizeof change_rows / sizeof change_rows[0];

const struct figure *change_figure(const struct layout *layout, size_t setup, size_t row)
{
    return figure_first(layout, setup, change_rows[row].query);
}

const char *change_text(const struct layout *layout, const struct figure *figure, bool with_unit)
{
    if (figure == NULL)
        return "-";
    if (!known(figure->value))
        return "unknown";
    const char *text = figure_text(layout, figure, figure->value);
    if (!with_unit)
        text = arena_copy(layout->arena, (struct span){text, strcspn(text, " ")});
    bool change = quantity_rows[figure->quantity].policy & POLICY_SIGNED;
    return change && figure->value > 0 ? arena_format(layout->arena, "+%s", text) : text;
}

/* The rear figure of a row whose first is the front one; otherwise NULL. */
static const struct figure *rear_change(const struct layout *layout, size_t setup, size_t row)
{
    const struct figure *figure = change_figure(layout, setup, row);
    struct figure_query query = change_rows[row].query;
    query.axle = AXLE_REAR;
    return figure != NULL && figure->axle == AXLE_FRONT ? figure_first(layout, setup, query) : NULL;
}

bool change_fails(const struct layout *layout, size_t setup, size_t row)
{
    const struct figure *figure = change_figure(layout, setup, row);
    const struct figure *rear = rear_change(layout, setup, row);
    return (figure != NULL && figure->verdict == VERDICT_FAIL) ||
           (rear != NULL && rear->verdict == VERDICT_FAIL);
}

const char *change_of_axles_text(const struct layout *layout, size_t setup, size_t row)
{
    const struct figure *figure = change_figure(layout, setup, row);
    const struct figure *rear = rear_change(layout, setup, row);
    const char *text = change_text(layout, figure, true);
    if (rear == NULL || same_text(text, change_text(layout, rear, true)))
        return text;
    return arena_format(layout->arena, "%s / %s", change_text(layout, figure, !known(rear->value)),
                        change_text(layout, rear, true));
}

/* "tyre capacity, front and rear": findings of one quantity and verdict are one matter. */
static const char *matter_name(const struct layout *layout, const struct finding_list *own,
                               size_t index)
{
    const struct figure *figure = own->items[index];
    const char *name = quantity_rows[figure->quantity].title;
    bool front = false, rear = false;
    for (size_t i = 0; i < own->count; i++)
        if (own->items[i]->quantity == figure->quantity &&
            own->items[i]->verdict == figure->verdict) {
            front = front || own->items[i]->axle == AXLE_FRONT;
            rear = rear || own->items[i]->axle == AXLE_REAR;
        }
    return arena_format(layout->arena, "%s%s%s%s", name, front || rear ? " " : "",
                        front ? (rear ? "front and rear" : "front") : "",
                        rear && !front ? "rear" : "");
}

static bool named_before(const struct finding_list *own, size_t index)
{
    for (size_t i = 0; i < index; i++)
        if (own->items[i]->quantity == own->items[index]->quantity &&
            own->items[i]->verdict == own->items[index]->verdict)
            return true;
    return false;
}

const char *matters_named(const struct layout *layout, const struct finding_list *list,
                          size_t width)
{
    enum { ROOM_FOR_MORE = 9 };
    const char *text = "";
    enum verdict last = VERDICT_NONE;
    for (size_t i = 0; i < list->count; i++) {
        if (named_before(list, i))
            continue;
        enum verdict verdict = list->items[i]->verdict;
        const char *longer =
            arena_format(layout->arena, "%s%s%s%s%s", text, *text ? "; " : "",
                         verdict == last ? "" : verdict_name(verdict), verdict == last ? "" : ": ",
                         matter_name(layout, list, i));
        size_t left = 0;
        for (size_t j = i + 1; j < list->count; j++)
            left += !named_before(list, j);
        if (*text != '\0' &&
            display_width(span_of(longer)) + (left > 0 ? ROOM_FOR_MORE : 0) > width)
            return arena_format(layout->arena, "%s; %zu more", text, left + 1);
        text = longer;
        last = verdict;
    }
    return text;
}
