#include "reading/figure_find.h"
#include "reading/prose.h"

#include <string.h>

#include "base/known.h"

bool text_begins(const char *text, const char *beginning)
{
    return text != NULL && strncmp(text, beginning, strlen(beginning)) == 0;
}

static bool fits(const struct figure *figure, const struct figure_query *query)
{
    if (figure->quantity != query->quantity ||
        (query->headline && figure->headline != HEADLINE_YES))
        return false;
    if (query->axle != AXLE_NONE && figure->axle != query->axle)
        return false;
    if (query->state != NULL && (figure->state == NULL || strcmp(figure->state, query->state) != 0))
        return false;
    if (query->begins != NULL && !text_begins(figure->at, query->begins))
        return false;
    return query->holds == NULL || (figure->at != NULL && strstr(figure->at, query->holds) != NULL);
}

const struct figure *figure_first(const struct reading *reading, size_t setup,
                                  struct figure_query query)
{
    const struct setup_figures *group = &reading->setups[setup];
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

const struct figure *figure_least(const struct reading *reading, size_t setup,
                                  struct figure_query query)
{
    return furthest(&reading->setups[setup], &query, -1);
}

const struct figure *figure_most(const struct reading *reading, size_t setup,
                                 struct figure_query query)
{
    return furthest(&reading->setups[setup], &query, 1);
}

const char *figure_value_text(const struct reading *reading, const struct figure *figure)
{
    if (figure == NULL || !known(figure->value))
        return "unknown";
    return figure_text(reading, figure, figure->value);
}

const char *figure_sentence(const struct reading *reading, const struct figure *figure)
{
    const char *const places[] = {figure->option, figure->state, axle_name(figure->axle),
                                  figure->at};
    const char *sentence = in_words(reading->arena, quantity_rows[figure->quantity].name);
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
        if (places[i] != NULL && *places[i] != '\0')
            sentence = arena_format(reading->arena, "%s, %s", sentence, places[i]);
    return arena_format(reading->arena, "%s: %s", sentence, figure_value_text(reading, figure));
}
