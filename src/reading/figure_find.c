#include "reading/figure_find.h"
#include "reading/prose.h"

#include <string.h>

#include "base/known.h"

static bool is_there(const struct place *place, const struct figure_query *query)
{
    return (query->tyre == AT_ANY_TYRE || place->tyre == query->tyre) &&
           (query->posture == AT_ANY_POSTURE || place->posture == query->posture) &&
           (query->speed_as == AT_SPEED || place->speed_as == query->speed_as) &&
           (query->setting == AT_ANY_SETTING || place->setting == query->setting) &&
           (query->pressure_as == AT_ANY_PRESSURE || place->pressure_as == query->pressure_as);
}

static bool fits(const struct figure *figure, const struct figure_query *query)
{
    if (!is_there(&figure->place, query))
        return false;
    if (figure->quantity != query->quantity ||
        (query->headline && figure->headline != HEADLINE_YES))
        return false;
    if (query->axle != AXLE_NONE && figure->axle != query->axle)
        return false;
    return query->state == STATE_NONE || figure->state == query->state;
}

const struct figure *figure_first(const struct layout *layout, size_t setup,
                                  struct figure_query query)
{
    const struct setup_figures *group = &layout->setups[setup];
    for (size_t i = 0; i < group->count; i++)
        if (fits(group->items[i], &query))
            return group->items[i];
    return NULL;
}

/* The first of those that stand furthest in a direction, 1 upward and -1 downward. */
static const struct figure *furthest(const struct setup_figures *group,
                                     const struct figure_query *query, int direction)
{
    const struct figure *found = NULL;
    for (size_t i = 0; i < group->count; i++) {
        const struct figure *figure = group->items[i];
        if (!fits(figure, query))
            continue;
        if (!known(figure->value))
            return figure;
        if (found == NULL || direction * figure->value > direction * found->value)
            found = figure;
    }
    return found;
}

const struct figure *figure_least(const struct layout *layout, size_t setup,
                                  struct figure_query query)
{
    return furthest(&layout->setups[setup], &query, -1);
}

const struct figure *figure_most(const struct layout *layout, size_t setup,
                                 struct figure_query query)
{
    return furthest(&layout->setups[setup], &query, 1);
}

const char *figure_value_text(const struct layout *layout, const struct figure *figure)
{
    if (figure == NULL || !known(figure->value))
        return "unknown";
    return figure_text(layout, figure, figure->value);
}

const char *figure_sentence(const struct layout *layout, const struct figure *figure)
{
    const char *const places[] = {figure_option(layout->plan, figure),
                                  figure_state(layout->plan, figure), axle_name(figure->axle),
                                  figure_at(layout->arena, layout->plan, figure)};
    const char *sentence = in_words(layout->arena, quantity_rows[figure->quantity].name);
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
        if (places[i] != NULL && *places[i] != '\0')
            sentence = arena_format(layout->arena, "%s, %s", sentence, places[i]);
    return arena_format(layout->arena, "%s: %s", sentence, figure_value_text(layout, figure));
}
