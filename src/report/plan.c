#include "report/plan.h"

#include <string.h>

#include "base/known.h"
#include "base/letters.h"
#include "compute/gearing.h"
#include "compute/leave_out.h"
#include "compute/springs.h"
#include "report/judge.h"

static void set_beside(const struct setup *fitted, const struct setup *setup, struct beside *out)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        figures_to_compare(&fitted->axle[axle], &setup->axle[axle], &out->before[axle],
                           &out->after[axle], &out->mixed[axle]);
}

/* Each state is judged without what the file lets stay behind so that the rest is borne. */
static void set_left_out(const struct plan *plan, struct setup *setup)
{
    const struct specification *specification = plan->specification;
    size_t states = state_count(specification), items = specification->carried.count;
    bool any = false;
    for (size_t i = 0; i < items; i++)
        any = any || specification->carried.items[i].can_be_left_out == 1;
    struct bearing bearing[AXLE_COUNT];
    setup->left_out = NULL; /* what bears the load is asked with all aboard */
    if (!any)
        return;
    setup_bearing(plan, setup, bearing);
    setup->left_out = arena_allocate_array(plan->arena, states * items, sizeof *setup->left_out);
    for (size_t i = 0; i < states; i++)
        leave_out(specification, state_at(specification, i), &plan->fitted, setup, bearing);
}

void plan_set_beside(struct plan *plan)
{
    plan->setups[0].is_fitted = true;
    plan->fitted = plan->setups[0];
    for (size_t i = 0; i < plan->count; i++)
        set_left_out(plan, &plan->setups[i]);
    plan->fitted = plan->setups[0];
    plan->beside = arena_allocate_array(plan->arena, plan->count, sizeof *plan->beside);
    for (size_t i = 0; i < plan->count; i++)
        set_beside(&plan->fitted, &plan->setups[i], &plan->beside[i]);
}

/* By its name or by the letters that it has in the file; 0: no option, or the name of one that is
 * the letters of another. */
static size_t option_number(const struct fitment_list *options, const char *text)
{
    size_t lettered = number_of_letters(span_of(text), options->count);
    for (size_t i = 0; i < options->count; i++)
        if (strcmp(options->items[i].name, text) == 0)
            return lettered == 0 || lettered == i + 1 ? i + 1 : 0;
    return lettered;
}

bool plan_make(struct arena *arena, const struct specification *specification, bool us,
               const char *option_name, struct plan *out)
{
    const struct fitment_list *options = &specification->tyres.options;
    size_t only = option_name == NULL ? 0 : option_number(options, option_name);
    *out = (struct plan){.arena = arena, .specification = specification, .us = us};
    setup_fitted(specification, &out->fitted);
    out->setups = arena_allocate_array(arena, options->count + 1, sizeof *out->setups);
    out->setups[out->count++] = out->fitted;
    for (size_t i = 0; i < options->count; i++)
        if (option_name == NULL || i + 1 == only) {
            setup_option(&options->items[i], &out->fitted, &out->setups[out->count]);
            out->setups[out->count++].number = i + 1;
        }
    plan_set_beside(out);
    return option_name == NULL || out->count > 1 || strcmp(option_name, "fitted") == 0;
}

void plan_try_spring(struct plan *plan, struct specification *with_it, int axle,
                     const struct spring_choice *choice, double more_m)
{
    fit_spring(&with_it->suspension, axle, choice, more_m);
    if (choice != NULL)
        plan->tried[axle] = choice;
}

static bool is_of_file(const struct figure *figure)
{
    return figure->setup == 0 && quantity_rows[figure->quantity].policy & POLICY_OF_FILE;
}

static void add_to_group(struct setup_figures *group, const struct figure *figure)
{
    group->items[group->count++] = figure;
}

struct setup_figures *plan_group_figures(const struct plan *plan, const struct figures *figures)
{
    struct arena *arena = plan->arena;
    struct setup_figures *groups = arena_allocate_array(arena, plan->count, sizeof *groups);
    size_t of_file = 0;
    for (size_t i = 0; i < figures->count; i++) {
        groups[figures->items[i].setup].count++;
        of_file += is_of_file(&figures->items[i]);
    }
    for (size_t i = 0; i < plan->count; i++) {
        groups[i].items =
            arena_allocate_array(arena, groups[i].count + of_file, sizeof *groups[i].items);
        groups[i].count = 0;
    }
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        add_to_group(&groups[figure->setup], figure);
        for (size_t other = 1; is_of_file(figure) && other < plan->count; other++)
            add_to_group(&groups[other], figure);
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

double plan_circumference_m(const struct plan *plan, struct axle_pair ratio,
                            const struct tyre_dimensions figures[AXLE_COUNT])
{
    return driven_circumference_m(plan->specification->vehicle.drive, ratio,
                                  figures[AXLE_FRONT].rolling_circumference_m,
                                  figures[AXLE_REAR].rolling_circumference_m);
}

struct axle_pair plan_axle_ratio(const struct plan *plan)
{
    struct axle_pair ratio = plan->specification->drivetrain.axle;
    return (struct axle_pair){known_or(ratio.front, 1), known_or(ratio.rear, 1)};
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
    struct figure figure = figure_of(QUANTITY_PART_MISSING, UNKNOWN);
    figure.basis = remark(BASIS_BUILD_FILE);
    figure.place.name = part_name(part);
    const struct need need = {false,
                              REMARK_WITH(figures->arena, ADVICE_GIVE_THE_KEY, say_text(key))};
    figures_add(figures, judged(figure, &(struct judgement){.needs = &need, .need_count = 1}));
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
