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

/* Whether a rule is for this vehicle, and what to ask for where that cannot be told. */
struct scope {
    enum answer applies;
    enum remark_id ask;
};

static bool is_in_per_cent(enum quantity_id quantity)
{
    return unit_table[quantity_rows[quantity].metric].kind == KIND_FRACTION;
}

/* In the quantity that its unit asks for: a diameter has one for lengths and one for per cent, and
 * other lengths are limited as lengths. */
static void add_window(struct figures *figures, const struct limited_change *change,
                       struct figure figure, struct bounds bounds, struct scope scope)
{
    const struct need in_scope = {scope.applies != ANSWER_UNKNOWN, remark(scope.ask)};
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
                                &(struct judgement){.needs = &in_scope,
                                                    .need_count = 1,
                                                    .ask = in_scope.known ? change->ask : TASK_NONE,
                                                    .if_broken = remark(ADVICE_SMALLER_CHANGE),
                                                    .if_unknown = remark(change->if_unknown)}));
}

enum answer is_of_kind(const char *kinds, int kind)
{
    if (strcmp(kinds, "any") == 0)
        return ANSWER_YES;
    bool of_cars = strcmp(kinds, "passenger_car") == 0;
    return answer_of(kind != CHOICE_NONE, (kind == VEHICLE_PASSENGER_CAR) == of_cars);
}

/* A category within one that is named counts: MD1 is one of MD. */
static bool is_among(const char *categories, const char *category)
{
    for (const char *at = categories; *at != '\0'; at += strspn(at, " ")) {
        size_t length = strcspn(at, " ");
        if (strncmp(at, category, length) == 0)
            return true;
        at += length;
    }
    return false;
}

enum answer is_of_category(const char *categories, const struct vehicle *vehicle)
{
    if (categories == NULL || *categories == '\0')
        return ANSWER_YES;
    return answer_of(vehicle->category != NULL,
                     vehicle->category != NULL && is_among(categories, vehicle->category));
}

/* A passenger car has no such frame unless the file says so. */
static enum answer of_frame(const char *frame, const struct vehicle *vehicle)
{
    int has = vehicle->frame == CHOICE_NONE && vehicle->kind == VEHICLE_PASSENGER_CAR
                  ? 0
                  : vehicle->frame;
    if (frame == NULL || *frame == '\0')
        return ANSWER_YES;
    return answer_of(has != CHOICE_NONE, (has == 1) == (strcmp(frame, "yes") == 0));
}

static enum answer of_drive(const char *drive, int given)
{
    if (drive == NULL || *drive == '\0')
        return ANSWER_YES;
    return answer_of(given != CHOICE_NONE,
                     given == DRIVE_PART_TIME_4WD || given == DRIVE_FULL_TIME_4WD);
}

static struct scope scope_of(const struct fitment_limits_row *row, const struct vehicle *vehicle)
{
    /* A category decides where both name one: an MC may be called a passenger car. */
    bool by_category = row->categories[0] != '\0' && vehicle->category != NULL;
    const struct scope parts[] = {
        {by_category ? ANSWER_YES : is_of_kind(row->vehicle_kinds, vehicle->kind),
         ADVICE_GIVE_KIND},
        {is_of_category(row->categories, vehicle), ADVICE_GIVE_CATEGORY},
        {of_frame(row->frame, vehicle), ADVICE_GIVE_FRAME},
        {of_drive(row->drive, vehicle->drive), ADVICE_GIVE_DRIVE},
    };
    struct scope scope = {ANSWER_YES, REMARK_NONE};
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        if (parts[i].applies == ANSWER_NO)
            return parts[i];
        if (parts[i].applies == ANSWER_UNKNOWN && scope.applies == ANSWER_YES)
            scope = parts[i];
    }
    return scope;
}

static struct figure by_rule(const struct plan *plan, struct figure figure,
                             const struct fitment_limits_row *row)
{
    figure.place.name = row->name;
    figure.limit_owner = LIMIT_OF_LAW;
    figure.basis = remark_quoted(plan->arena, row->basis, row->certainty);
    return figure;
}

/* Whether any row of a rule may be this vehicle's. */
static bool may_apply(const char *rule, const struct vehicle *vehicle)
{
    const struct fitment_limits_row *row = fitment_limits_next(rule, NULL);
    while (row != NULL && scope_of(row, vehicle).applies == ANSWER_NO)
        row = fitment_limits_next(rule, row);
    return row != NULL;
}

void report_rules_of_others(const struct plan *plan, struct figures *figures, struct figure figure)
{
    const struct text_list *names = &plan->specification->limits.published;
    for (size_t i = 0; i < names->count; i++) {
        const struct fitment_limits_row *first = fitment_limits_next(names->items[i], NULL);
        if (first != NULL && !may_apply(first->name, &plan->specification->vehicle))
            figures_add(figures,
                        judged(by_rule(plan, figure, first),
                               &(struct judgement){.holds = ANSWER_UNKNOWN,
                                                   .if_unknown = remark(ADVICE_NOT_ITS_RULE)}));
    }
}

static void add_published(const struct plan *plan, struct figures *figures,
                          const struct limited_change *change)
{
    const struct text_list *names = &plan->specification->limits.published;
    for (size_t i = 0; i < names->count; i++) {
        bool asked = false; /* once a rule and quantity */
        for (const struct fitment_limits_row *row = fitment_limits_next(names->items[i], NULL);
             row != NULL; row = fitment_limits_next(names->items[i], row)) {
            if (strcmp(row->quantity, change->key) != 0)
                continue;
            struct scope scope = scope_of(row, &plan->specification->vehicle);
            if (scope.applies == ANSWER_NO || (asked && scope.applies == ANSWER_UNKNOWN))
                continue;
            asked = asked || scope.applies == ANSWER_UNKNOWN;
            bool percent = strcmp(row->unit, "percent") == 0;
            double unit = percent ? 1e-2 : strcmp(row->unit, "mm") == 0 ? 1e-3 : 1;
            add_window(figures, change, by_rule(plan, change->figure, row),
                       (struct bounds){row->min * unit, row->max * unit, percent}, scope);
        }
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
        figure.basis = remark(BASIS_HOUSE_LIMIT);
        add_window(figures, &limited, figure,
                   (struct bounds){house->min.value, house->max.value, kind == KIND_FRACTION},
                   (struct scope){ANSWER_YES, REMARK_NONE});
    }
    add_published(plan, figures, &limited);
}
