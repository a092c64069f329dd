#include "report/plan.h"

#include <string.h>

#include "base/known.h"
#include "compute/load.h"
#include "report/judge.h"
#include "tables/lookup.h"

static void set_beside(const struct setup *fitted, const struct setup *setup, struct beside *out)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        figures_to_compare(&fitted->axle[axle], &setup->axle[axle], &out->before[axle],
                           &out->after[axle], &out->mixed[axle]);
}

void plan_set_beside(struct plan *plan)
{
    plan->fitted = plan->setups[0];
    plan->fitted.is_fitted = plan->setups[0].is_fitted = true;
    plan->beside = arena_allocate_array(plan->arena, plan->count, sizeof *plan->beside);
    for (size_t i = 0; i < plan->count; i++)
        set_beside(&plan->fitted, &plan->setups[i], &plan->beside[i]);
}

bool plan_make(struct arena *arena, const struct specification *specification, bool us,
               const char *option_name, struct plan *out)
{
    const struct fitment_list *options = &specification->tyres.options;
    *out = (struct plan){.arena = arena, .specification = specification, .us = us};
    setup_fitted(specification, &out->fitted);
    out->setups = arena_allocate_array(arena, options->count + 1, sizeof *out->setups);
    out->setups[out->count++] = out->fitted;
    for (size_t i = 0; i < options->count; i++)
        if (option_name == NULL || strcmp(options->items[i].name, option_name) == 0)
            setup_option(&options->items[i], &out->fitted, &out->setups[out->count++]);
    plan_set_beside(out);
    return option_name == NULL || out->count > 1 || strcmp(option_name, "fitted") == 0;
}

struct setup_figures *plan_group_figures(const struct plan *plan, const struct figures *figures)
{
    struct arena *arena = plan->arena;
    struct setup_figures *groups = arena_allocate_array(arena, plan->count, sizeof *groups);
    for (size_t i = 0; i < figures->count; i++)
        groups[figures->items[i].setup].count++;
    for (size_t i = 0; i < plan->count; i++) {
        groups[i].items = arena_allocate_array(arena, groups[i].count, sizeof *groups[i].items);
        groups[i].count = 0;
    }
    for (size_t i = 0; i < figures->count; i++) {
        struct setup_figures *group = &groups[figures->items[i].setup];
        group->items[group->count++] = &figures->items[i];
    }
    return groups;
}

const char *plan_state_name(const struct plan *plan, int state)
{
    return state == STATE_NONE ? NULL : state_name(state_at(plan->specification, (size_t)state));
}

enum pressure_system plan_pressure_system(const struct plan *plan)
{
    return plan->us ? PRESSURE_US : PRESSURE_METRIC;
}

enum axle plan_driven_axle(const struct plan *plan)
{
    return plan->specification->vehicle.drive == DRIVE_FRONT ? AXLE_FRONT : AXLE_REAR;
}

bool plan_instrument_is_mph(const struct plan *plan)
{
    int unit = plan->specification->speedometer.unit;
    return unit == CHOICE_NONE ? plan->us : unit == SPEED_MPH;
}

void report_missing_part(struct figures *figures, enum part part, const char *key)
{
    figures->part = part;
    figures->setup = 0;
    struct figure figure = figure_of(QUANTITY_PART_MISSING, UNKNOWN, "build file");
    figure.verdict = VERDICT_UNKNOWN;
    figure.at = part_name(part);
    figure.action = arena_format(figures->arena, "give the key %s", key);
    figures_add(figures, figure);
}

/* One window: a finding for the bound that is broken or nearest. */
static void add_window(struct figures *figures, struct figure figure, double value, double min,
                       double max, const char *basis)
{
    figure.value = value;
    figure.basis = basis;
    if (!known(min) && !known(max))
        return;
    figure = figure_within(figure, min, max);
    if (figure.verdict == VERDICT_FAIL)
        figure.action = "choose a smaller change, or have it approved";
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = figure.quantity == QUANTITY_TRAVEL_KEPT
                            ? "give suspension: travel_to_bump and travel_to_droop"
                            : "give what this change is made of, for both tyres";
    figures_add(figures, figure);
}

static bool row_applies(const struct fitment_limits_row *row, int kind)
{
    if (strcmp(row->vehicle_kinds, "passenger_car") == 0)
        return kind != VEHICLE_LIGHT_TRUCK;
    if (strcmp(row->vehicle_kinds, "light_truck") == 0)
        return kind != VEHICLE_PASSENGER_CAR;
    return true;
}

/* A published row that is for another kind of vehicle alone judges nothing, which is said once. */
static void add_if_for_others(struct figures *figures, struct figure figure, const char *name,
                              int kind)
{
    const struct fitment_limits_row *row = fitment_limits_next(name, NULL), *first = row;
    for (; row != NULL; row = fitment_limits_next(name, row))
        if (row_applies(row, kind))
            return;
    if (first == NULL)
        return;
    figure.basis = first->basis;
    figure.verdict = VERDICT_UNKNOWN;
    figure.action =
        strcmp(first->vehicle_kinds, "light_truck") == 0
            ? "these limits are for a light_truck, and vehicle: kind says passenger_car: "
              "name the limits for it"
            : "these limits are for a passenger_car, and vehicle: kind says light_truck: "
              "name the limits for it";
    figures_add(figures, figure);
}

static void add_published(const struct plan *plan, struct figures *figures, struct figure figure,
                          double whole)
{
    const struct specification *specification = plan->specification;
    const struct text_list *names = &specification->limits.published;
    for (size_t i = 0; i < names->count; i++) {
        const struct fitment_limits_row *row = fitment_limits_next(names->items[i], NULL);
        if (figure.quantity == QUANTITY_OVERALL_DIAMETER_CHANGE)
            add_if_for_others(figures, figure, names->items[i], specification->vehicle.kind);
        for (; row != NULL; row = fitment_limits_next(names->items[i], row)) {
            if (strcmp(row->quantity, quantity_rows[figure.quantity].name) != 0 &&
                !(figure.quantity == QUANTITY_OVERALL_DIAMETER_CHANGE &&
                  strcmp(row->quantity, "diameter_change") == 0))
                continue;
            if (!row_applies(row, specification->vehicle.kind))
                continue;
            struct figure limited = figure;
            bool is_share = unit_table[quantity_rows[figure.quantity].metric].kind == KIND_FRACTION;
            bool percent = strcmp(row->unit, "percent") == 0;
            double unit = percent ? 1e-2 : strcmp(row->unit, "mm") == 0 ? 1e-3 : 1;
            if (percent && figure.quantity == QUANTITY_OVERALL_DIAMETER_CHANGE)
                limited.quantity = QUANTITY_DIAMETER_CHANGE_SHARE;
            else if (percent && !is_share) /* told in lengths, since the quantity is one */
                unit *= whole;
            bool as_share = limited.quantity == QUANTITY_DIAMETER_CHANGE_SHARE;
            add_window(figures, limited, as_share ? figure.value / whole : figure.value,
                       row->min * unit, row->max * unit, row->basis);
        }
    }
}

void report_limits(const struct plan *plan, struct figures *figures, struct figure figure,
                   const struct window *house, double whole)
{
    figure.headline = HEADLINE_NO;
    if (house != NULL && house->given != NULL) {
        bool percent =
            (known(house->min.value) ? house->min.kind : house->max.kind) == KIND_FRACTION;
        struct figure limited = figure;
        double scale = 1, value = figure.value;
        if (percent && figure.quantity == QUANTITY_OVERALL_DIAMETER_CHANGE) {
            limited.quantity = QUANTITY_DIAMETER_CHANGE_SHARE;
            value = figure.value / whole;
        } else if (percent) {
            scale = whole;
        }
        add_window(figures, limited, value, house->min.value * scale, house->max.value * scale,
                   "house limit (limits)");
    }
    add_published(plan, figures, figure, whole);
}

bool setup_axles_differ(const struct setup *setup)
{
    return setup->own_rear_size;
}

bool plan_shows_both_axles(const struct plan *plan, size_t index)
{
    return setup_axles_differ(&plan->setups[index]) || setup_axles_differ(&plan->fitted);
}

bool plan_drives_all_wheels(const struct plan *plan)
{
    int drive = plan->specification->vehicle.drive;
    return drive == DRIVE_PART_TIME_4WD || drive == DRIVE_FULL_TIME_4WD;
}
