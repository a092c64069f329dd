#include "report/compare.h"

#include "base/known.h"
#include "compute/gearing.h"
#include "size/designation_listed.h"
#include "tables/lookup.h"

static bool is_file(const struct plan *plan)
{
    return plan->specification->given != NULL;
}

/* Designations alone tell of the tyre only; whatever else an outcome needs is unknown. */
static void report_sizes(const struct plan *plan, struct figures *figures)
{
    report_tyre(plan, figures);
    figures->part = PART_CLEARANCE;
    for (size_t i = 0; i < plan->count; i++) {
        figures->setup = (int)i;
        report_size_limits(plan, i, figures);
    }
    report_speedometer_verdicts(plan, figures);
}

void comparison_begin(const struct plan *plan, struct comparison *out)
{
    double *true_at_100 = arena_allocate_array(plan->arena, plan->count, sizeof *true_at_100);
    report_true_at_100(plan, true_at_100);
    *out = (struct comparison){
        .plan = plan, .true_at_100 = true_at_100, .figures = {.arena = plan->arena}};
    if (is_file(plan))
        report_every_part(plan, &out->figures);
    else
        report_sizes(plan, &out->figures);
    out->groups = plan_group_figures(plan, &out->figures);
}

static double load_of(const struct setup *setup, enum axle axle)
{
    return load_index_kg(designation_load_index(&setup->axle[axle].size,
                                                setup->is_fitted ? LISTED_HIGHEST : LISTED_LOWEST));
}

/* The error of the instrument with this setup at 100 in its unit. */
static double nominal_error(const struct setup_figures *figures)
{
    double error = UNKNOWN;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = figures->items[i];
        if (figure->quantity == QUANTITY_SPEEDOMETER_ERROR && figure->place.tyre == AT_NOMINAL)
            error = figure->value;
    }
    return error;
}

/* On the rims in use where both are known, otherwise nominal to nominal. */
static double width_change(const struct plan *plan, const struct compared *row)
{
    if (known(plan->fitted.axle[row->axle].wheel.width_m) &&
        known(row->setup->axle[row->axle].wheel.width_m))
        return row->after.width_on_rim_m - row->before.width_on_rim_m;
    return row->after.section_width_m - row->before.section_width_m;
}

/* Of the axle with the higher placard; where the axles have other tyres, of the row's own. */
static void find_equal_load(const struct plan *plan, size_t index, struct compared *row)
{
    const struct load_conditions conditions = {plan->specification, &plan->fitted,
                                               plan_pressure_system(plan)};
    enum axle axle = row->axle;
    for (int other = 0; other < AXLE_COUNT && !plan_shows_both_axles(plan, index); other++)
        if (placard_Pa(plan->specification, (enum axle)other) >
            placard_Pa(plan->specification, axle))
            axle = (enum axle)other;
    equal_load_find(&conditions, &plan->setups[index], axle, &row->equal_load);
}

static void add_note(struct compared *row, struct remark note)
{
    row->notes[row->note_count++] = note;
}

/* A load index alone says nothing of what a tyre carries at the fitted one's pressure. */
static void note_load(struct arena *arena, struct compared *row)
{
    const struct equal_load *load = &row->equal_load;
    if (!known(load->pressure_Pa))
        add_note(row, remark(PHRASE_CARRIES_UNKNOWN));
    else if (isinf(load->pressure_Pa))
        add_note(row, REMARK_WITH(arena, PHRASE_CARRIES_NEVER, say_pressure(load->fitted_Pa)));
    else if (clearly_above(load->pressure_Pa, load->fitted_Pa))
        add_note(row, REMARK_WITH(arena, PHRASE_CARRIES_LESS, say_pressure(load->fitted_Pa),
                                  say_pressure(load->pressure_Pa)));
}

/* Beside the fitted tyre, where the file does not say what a finding needs: a lower speed symbol,
 * and an instrument that would read under if the fitted tyre reads true. */
static void note_beside(const struct plan *plan, struct compared *row)
{
    const struct specification *specification = plan->specification;
    const char *before = plan->fitted.axle[row->axle].size.service.speed_symbol;
    const char *after = row->setup->axle[row->axle].size.service.speed_symbol;
    if (!known(specification->vehicle.top_speed_mps) &&
        speed_symbol_order(after) < speed_symbol_order(before))
        add_note(row, remark(PHRASE_SLOWER));
    if (specification->speedometer.rule == NULL && row->error < -1e-9)
        add_note(row, remark(PHRASE_READS_LOW));
}

void comparison_row(const struct comparison *comparison, size_t index, struct compared *out)
{
    const struct plan *plan = comparison->plan;
    const struct setup *setup = &plan->setups[index];
    enum axle axle = plan_driven_axle(plan);
    struct axle_pair ratios = plan_axle_ratio(plan);
    double ratio = of_axle(ratios, axle);
    struct tyre_measures measures;
    tyre_measure(&setup->axle[axle], &measures);
    *out = (struct compared){
        .setup = setup,
        .axle = axle,
        .before = plan->beside[index].before[axle],
        .after = plan->beside[index].after[axle],
        .revs_per_m = 1 / measures.stated.rolling_circumference_m,
        .diameter_m = measures.stated.overall_diameter_m,
        .error = nominal_error(&comparison->groups[index]),
        .true_at_100 = comparison->true_at_100[index],
        .load_kg = load_of(setup, axle),
        .load_before_kg = load_of(&plan->fitted, axle),
    };
    double from = plan_circumference_m(plan, ratios, plan->beside[index].before);
    double to = plan_circumference_m(plan, ratios, plan->beside[index].after);
    out->width_change_m = width_change(plan, out);
    out->effective = effective_axle_ratio(ratio, from, to);
    out->restoring = restoring_axle_ratio(ratio, from, to);
    find_equal_load(plan, index, out);
    option_outcome_make(plan, &comparison->groups[index], &out->found);
    out->outcome = is_file(plan) ? out->found.outcome : OUTCOME_OPEN;
    out->worst = option_outcome_verdict(&out->found);
    if (setup->is_fitted)
        return;
    note_beside(plan, out);
    note_load(plan->arena, out);
}
