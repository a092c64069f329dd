#include "report/clearance/low_points.h"

#include <string.h>

#include "base/known.h"
#include "base/span.h"
#include "compute/load.h"

/* True where an item that is taken off in this state has the point's name. */
static bool is_removed(const struct stance *stance, const struct body_point *point)
{
    const struct carried_list *carried = &stance->plan->specification->carried;
    for (size_t i = 0; point->item != NULL && !stance->as_measured && i < carried->count; i++) {
        const struct carried_item *item = &carried->items[i];
        if (item->removed == 1 && item->item != NULL && strcmp(item->item, point->item) == 0 &&
            state_holds(stance->state, item->item))
            return true;
    }
    return false;
}

static bool lies_there(const struct body_point *point, enum point_place place)
{
    return known(place == POINT_AHEAD    ? point->ahead_m
                 : place == POINT_BEHIND ? point->behind_m
                                         : point->at_m);
}

static void try_point(const struct stance *stance, const struct body_point *point,
                      struct governor governor, point_measure measure,
                      struct governing_point *least)
{
    double here = measure(stance, point);
    bool first = least->points++ == 0;
    if (!first && !known(least->value))
        return; /* one that is not known may be the least: none governs */
    if (first || !known(here) || clearly_above(least->value, here)) {
        least->value = here;
        least->governor = governor;
    }
}

struct governing_point
least_over_points(const struct stance *stance, enum point_place place, point_measure measure,
                  bool (*counts)(const struct stance *stance, const struct body_point *point))
{
    const struct specification *specification = stance->plan->specification;
    const struct clearance_measured *measured = &specification->clearance;
    const struct point_list *list = place == POINT_AHEAD    ? &measured->front_overhang
                                    : place == POINT_BEHIND ? &measured->rear_overhang
                                                            : &measured->belly;
    struct governing_point least = {.value = UNKNOWN};
    for (size_t i = 0; i < list->count; i++)
        if (!is_removed(stance, &list->items[i]) &&
            (counts == NULL || counts(stance, &list->items[i])))
            try_point(stance, &list->items[i],
                      (struct governor){GOVERNED_BY_POINT, (int)i, list->items[i].item}, measure,
                      &least);
    for (size_t i = 0; !stance->as_measured && i < specification->carried.count; i++) {
        const struct carried_item *item = &specification->carried.items[i];
        if (item->removed == 1 ||
            !item_is_aboard(specification, stance->setup, stance->state, item))
            continue;
        for (size_t j = 0; j < item->points.count; j++) {
            const struct body_point *point = &item->points.items[j];
            if (lies_there(point, place) && (counts == NULL || counts(stance, point)))
                try_point(stance, point,
                          (struct governor){GOVERNED_BY_ITEM, (int)i,
                                            point->item != NULL ? point->item : item->item},
                          measure, &least);
        }
    }
    return least;
}
