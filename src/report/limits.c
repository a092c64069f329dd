#include "report/limits.h"

#include <string.h>

#include "base/known.h"
#include "report/judge.h"
#include "tables/lookup.h"

/* A window, in the change's own unit or as a share of the whole. */
struct bounds {
    double min, max;
    bool is_share;
};

static bool is_in_per_cent(enum quantity_id quantity)
{
    return unit_table[quantity_rows[quantity].metric].kind == KIND_FRACTION;
}

/* In the quantity that its unit asks for: a diameter has one for lengths and one for per cent, and
 * other lengths are limited as lengths. */
static void add_window(struct figures *figures, const struct limited_change *change,
                       struct figure figure, struct bounds bounds)
{
    if (bounds.is_share && figure.quantity == QUANTITY_OVERALL_DIAMETER_CHANGE) {
        figure.quantity = QUANTITY_DIAMETER_CHANGE_SHARE;
        figure.value /= change->whole;
    } else if (bounds.is_share && !is_in_per_cent(figure.quantity)) {
        bounds.min *= change->whole;
        bounds.max *= change->whole;
    }
    if (!known(bounds.min) && !known(bounds.max))
        return;
    figures_add(figures, judged(limited_within(figure, bounds.min, bounds.max),
                                &(struct judgement){.if_broken = remark(ADVICE_SMALLER_CHANGE),
                                                    .if_unknown = remark(change->if_unknown)}));
}

static bool row_applies(const struct fitment_limits_row *row, int kind)
{
    if (strcmp(row->vehicle_kinds, "passenger_car") == 0)
        return kind != VEHICLE_LIGHT_TRUCK;
    if (strcmp(row->vehicle_kinds, "light_truck") == 0)
        return kind != VEHICLE_PASSENGER_CAR;
    return true;
}

static struct figure by_rule(const struct plan *plan, struct figure figure,
                             const struct fitment_limits_row *row)
{
    figure.place.name = row->name;
    figure.limit_owner = LIMIT_OF_LAW;
    figure.based = REMARK_WITH(plan->arena, BASIS_QUOTED, say_text(row->basis));
    return figure;
}

static bool applies_to(const char *rule, int kind)
{
    const struct fitment_limits_row *row = fitment_limits_next(rule, NULL);
    while (row != NULL && !row_applies(row, kind))
        row = fitment_limits_next(rule, row);
    return row != NULL;
}

void report_rules_of_others(const struct plan *plan, struct figures *figures, struct figure figure)
{
    const struct text_list *names = &plan->specification->limits.published;
    for (size_t i = 0; i < names->count; i++) {
        const struct fitment_limits_row *first = fitment_limits_next(names->items[i], NULL);
        if (first == NULL || applies_to(first->name, plan->specification->vehicle.kind))
            continue;
        bool of_trucks = strcmp(first->vehicle_kinds, "light_truck") == 0;
        figures_add(figures, judged(by_rule(plan, figure, first),
                                    &(struct judgement){
                                        .holds = ANSWER_UNKNOWN,
                                        .if_unknown = remark(of_trucks ? ADVICE_RULE_OF_TRUCKS
                                                                       : ADVICE_RULE_OF_CARS)}));
    }
}

static void add_published(const struct plan *plan, struct figures *figures,
                          const struct limited_change *change)
{
    const struct text_list *names = &plan->specification->limits.published;
    for (size_t i = 0; i < names->count; i++)
        for (const struct fitment_limits_row *row = fitment_limits_next(names->items[i], NULL);
             row != NULL; row = fitment_limits_next(names->items[i], row)) {
            if (strcmp(row->quantity, change->key) != 0 ||
                !row_applies(row, plan->specification->vehicle.kind))
                continue;
            bool percent = strcmp(row->unit, "percent") == 0;
            double unit = percent ? 1e-2 : strcmp(row->unit, "mm") == 0 ? 1e-3 : 1;
            add_window(figures, change, by_rule(plan, change->figure, row),
                       (struct bounds){row->min * unit, row->max * unit, percent});
        }
}

void report_limits(const struct plan *plan, struct figures *figures,
                   const struct limited_change *change)
{
    const struct window *house = change->house;
    struct limited_change limited = *change;
    limited.figure.headline = HEADLINE_NO;
    if (house != NULL && house->given != NULL) {
        struct figure figure = limited.figure;
        int kind = known(house->min.value) ? house->min.kind : house->max.kind;
        figure.place.name = "house";
        figure.limit_owner = LIMIT_OF_HOUSE;
        figure.based = remark(BASIS_HOUSE_LIMIT);
        add_window(figures, &limited, figure,
                   (struct bounds){house->min.value, house->max.value, kind == KIND_FRACTION});
    }
    add_published(plan, figures, &limited);
}
