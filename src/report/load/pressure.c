/* What an axle's tyres carry, the pressure that they need and why, and the load at every pressure
 * from floor to ceiling. */
#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "report/judge.h"
#include "report/load/view.h"
#include "tables/lookup.h"

const char *pressure_text(const struct plan *plan, double pressure_Pa)
{
    enum unit_id unit = plan->us ? UNIT_PSI : UNIT_KPA;
    return arena_format(plan->arena, "%.0f %s", unit_from_si(unit, pressure_Pa),
                        unit_table[unit].name);
}

static const char *mass_text(const struct plan *plan, double mass_kg)
{
    enum unit_id unit = plan->us ? UNIT_LB : UNIT_KG;
    return arena_format(plan->arena, "%.0f %s", unit_from_si(unit, mass_kg), unit_table[unit].name);
}

static const char *source_of(const struct tyre_rating *rating)
{
    if (rating->moulded)
        return "moulded maximum";
    if (rating->listed)
        return "lower of load index and published maximum (assumed)";
    return rating->ceiling_assumed ? "load index at the load range's pressures (assumed)"
                                   : "load index";
}

static const char *reduction_of(const struct tyre_rating *rating)
{
    if (rating->speed_factor >= 1)
        return "";
    return is_commercial_tyre(rating) ? ", reduced at the top speed (UN R54 Annex 8, from memory)"
                                      : ", reduced at the top speed (ETRTO)";
}

/* The rule by which a capacity was found: "TRA LT-metric, moulded maximum". */
static const char *rating_basis(const struct plan *plan, const struct axle_pressures *axle)
{
    const struct tyre_rating *rating = &axle->rating;
    const char *class = inflation_rows[rating->class].basis; /* "TRA LT-metric: how certain" */
    return arena_format(plan->arena, "%.*s, %s%s%s%s", (int)strcspn(class, ":"), class,
                        source_of(rating),
                        axle->dual && rating->dual_assumed ? ", twin 0.91 of single (assumed)" : "",
                        rating->divisor > 1 ? ", / 1.10 on a light truck (49 CFR 571.110)" : "",
                        reduction_of(rating));
}

/* The first thing that is missing for a capacity, or for a pressure. */
static const char *missing_action(const struct axle_pressures *axle)
{
    if (!known(axle->placard_Pa))
        return "give tyres: fitted: placard";
    if (!known(axle->rating.reference_Pa))
        return "give load_range, or data_book: max_load and at_pressure";
    if (!known(axle->capacity_max_kg) || !known(axle->demand_replaced_kg))
        return "give the load index of both tyres";
    return "the load on this axle is not known: see its own row";
}

/* A passenger tyre on a light truck counts / 1.10, and what it replaces in full: the same tyre
 * again carries less, and the rule that divides both is named beside it. */
static const char *undivided_text(const struct plan *plan, const struct axle_pressures *axle)
{
    if (!clearly_above(axle->rating.divisor, 1) ||
        !clearly_above(axle->demand_replaced_kg, axle->demand_replaced_derated_kg))
        return "";
    return arena_format(plan->arena, " (that one counts in full; by 49 CFR 571.110 S4.2.2.2: %s)",
                        mass_text(plan, axle->demand_replaced_derated_kg));
}

/* The same tyre class at the old placard may carry less than the fitted tyre did: the headline. */
static void report_at_placard(const struct plan *plan, const struct axle_pressures *axle,
                              struct figures *figures, struct figure figure)
{
    figure.quantity = QUANTITY_TYRE_CAPACITY;
    figure.value = axle->capacity_at_placard_kg;
    figure.at = known(axle->placard_Pa) ? arena_format(plan->arena, "placard, %s",
                                                       pressure_text(plan, axle->placard_Pa))
                                        : "placard";
    figure.headline = HEADLINE_YES;
    bool fitted = figures->setup == 0;
    figure = figure_at_least(figure, fitted ? axle->load_built_kg : axle->demand_replaced_kg);
    if (figure.verdict == VERDICT_FAIL && fitted)
        figure.action = "does not carry the build at the placard pressure";
    else if (figure.verdict == VERDICT_FAIL)
        figure.action = arena_format(
            plan->arena, "less than the fitted tyre carried%s%s%s",
            isfinite(axle->recommended_Pa) ? ": inflate to " : "",
            isfinite(axle->recommended_Pa) ? pressure_text(plan, axle->recommended_Pa) : "",
            undivided_text(plan, axle));
    else if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = missing_action(axle);
    figures_add(figures, figure);
}

/* What was added to the table pressure, where anything was. */
static const char *for_speed_text(const struct plan *plan, const struct axle_pressures *axle)
{
    if (!(axle->rating.speed_pressure_Pa > 0))
        return "";
    return arena_format(
        plan->arena, ", with %s for the top speed (ETRTO%s)",
        pressure_text(plan, axle->rating.speed_pressure_Pa),
        axle->rating.speed_pressure_assumed ? ", taken as for a V tyre: ask the tyre maker" : "");
}

static const char *reason_text(const struct plan *plan, const struct axle_pressures *axle)
{
    switch (axle->reason) {
    case REASON_REPLACED:
        return arena_format(plan->arena, "as replaced: carries the %s that the fitted tyre did",
                            mass_text(plan, axle->demand_replaced_kg));
    case REASON_BUILT:
        return arena_format(plan->arena, "as built: carries %s a tyre (%s, with the reserve)%s",
                            mass_text(plan, axle->demand_built_kg),
                            plan_state_name(plan, axle->heaviest_state),
                            for_speed_text(plan, axle));
    case REASON_FLOOR:
        return "the class floor: the lowest pressure of its tables";
    case REASON_PLACARD:
        return "placard: no setting is below it";
    case REASON_REFUSED:
        return "no pressure that tyre and wheel allow carries it";
    default:
        return "";
    }
}

static bool within_ceiling(const struct axle_pressures *axle, double pressure_Pa)
{
    return isfinite(pressure_Pa) && !clearly_above(pressure_Pa, axle->ceiling_Pa);
}

static const char *refused_action(const struct plan *plan, const struct axle_pressures *axle)
{
    if (!within_ceiling(axle, axle->as_built_Pa) || within_ceiling(axle, axle->as_replaced_Pa))
        return "choose a tyre of more capacity, or carry less on this axle";
    bool divided =
        *undivided_text(plan, axle) != '\0' && within_ceiling(axle, axle->as_replaced_derated_Pa);
    return arena_format(
        plan->arena,
        "it carries the build, and not what the fitted tyre did (%s a tyre): choose "
        "one of more capacity%s",
        mass_text(plan, axle->demand_replaced_kg),
        divided ? "; both divided by 1.10, as 49 CFR 571.110 does, it would" : "");
}

static void report_recommended(const struct plan *plan, const struct axle_pressures *axle,
                               struct figures *figures, struct figure figure)
{
    figure.quantity = QUANTITY_PRESSURE_RECOMMENDED;
    figure.at = NULL;
    figure.headline = HEADLINE_YES;
    figure.value = isfinite(axle->recommended_Pa) ? axle->recommended_Pa : UNKNOWN;
    figure.limit = isfinite(axle->ceiling_Pa) ? axle->ceiling_Pa : UNKNOWN;
    if (axle->reason == REASON_REFUSED) {
        figure.verdict = VERDICT_FAIL;
        figure.action = refused_action(plan, axle);
    } else if (axle->reason == REASON_NONE) {
        figure.verdict = VERDICT_UNKNOWN;
        figure.action = missing_action(axle);
    } else {
        figure.verdict = axle->rating.ceiling_assumed ? VERDICT_CAUTION : VERDICT_OK;
        figure.action = axle->rating.ceiling_assumed
                            ? "check the maximum load and pressure on the sidewall"
                            : NULL;
    }
    figure.basis = axle->reason == REASON_NONE ? figure.basis : reason_text(plan, axle);
    figures_add(figures, figure);
}

static void report_capacities(const struct plan *plan, const struct axle_pressures *axle,
                              struct figures *figures, struct figure figure)
{
    figure.quantity = QUANTITY_TYRE_CAPACITY;
    figure.value = axle->capacity_at_recommended_kg;
    if (known(figure.value)) {
        figure.at = pressure_text(plan, axle->recommended_Pa);
        figure.line = "recommended pressure";
        figures_add(figures, figure);
    }
    figure.line = NULL;
    figure.at = "maximum";
    figure.value = axle->capacity_max_kg;
    figures_add(figures, figure);
    figure.at = NULL;
    figure.quantity = QUANTITY_CAPACITY_LEFT;
    figure.value = axle->capacity_at_recommended_kg / axle->load_built_kg - 1;
    figure.basis = "capacity at the recommended pressure over the load, less 1";
    if (known(figure.value))
        figures_add(figures, figure);
}

static void report_demands(const struct axle_pressures *axle, struct figures *figures,
                           struct figure figure)
{
    const struct {
        enum quantity_id quantity;
        double pressure_Pa;
        const char *at;
    } pressures[] = {
        {QUANTITY_PRESSURE_AS_REPLACED, axle->as_replaced_Pa, NULL},
        {QUANTITY_PRESSURE_AS_REPLACED, axle->as_replaced_derated_Pa, "49 CFR 571.110"},
        {QUANTITY_PRESSURE_AS_BUILT, axle->as_built_Pa, NULL},
    };
    figure.limit = isfinite(axle->ceiling_Pa) ? axle->ceiling_Pa : UNKNOWN;
    for (size_t i = 0; i < sizeof pressures / sizeof pressures[0]; i++) {
        if (i == 1 && axle->demand_replaced_derated_kg == axle->demand_replaced_kg)
            continue;
        figure.quantity = pressures[i].quantity;
        figure.at = pressures[i].at;
        figure.value = isfinite(pressures[i].pressure_Pa)
                           ? fmax(pressures[i].pressure_Pa, axle->floor_Pa)
                           : UNKNOWN;
        figure.action = isinf(pressures[i].pressure_Pa)
                            ? "more load than this tyre carries at any pressure"
                            : NULL; /* the recommended pressure is refused then, and says so */
        figures_add(figures, figure);
    }
}

void report_pressure(const struct load_view *view, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &view->axle[axle];
    struct figure figure =
        figure_of(QUANTITY_TYRE_LOAD, pressures->load_built_kg,
                  pressures->dual ? "a quarter of the axle load, or half the heavier corner"
                                  : "half the axle load, or the heavier corner");
    figure.axle = axle;
    figure.state = pressures->heaviest_state;
    figures_add(figures, figure);
    figure.state = STATE_NONE;
    figure.basis = rating_basis(view->plan, pressures);
    report_at_placard(view->plan, pressures, figures, figure);
    report_recommended(view->plan, pressures, figures, figure);
    report_capacities(view->plan, pressures, figures, figure);
    report_demands(pressures, figures, figure);
}

/* Steps of the table: fine where the whole range is short. */
static double table_step_Pa(const struct plan *plan, double range_Pa)
{
    if (plan->us)
        return unit_to_si(UNIT_PSI, clearly_above(range_Pa, unit_to_si(UNIT_PSI, 20)) ? 5 : 1);
    return unit_to_si(UNIT_KPA, clearly_above(range_Pa, 150e3) ? 25 : 10);
}

/* Where an axle's table runs: from the floor of the class to the lowest maximum of tyre and wheel,
 * from which on the load no longer rises. Without a floor nothing published can be continued. */
struct table_range {
    double low_Pa, high_Pa, step_Pa;
};

static bool table_range_of(const struct load_view *view, int axle, struct table_range *out)
{
    const struct plan *plan = view->plan;
    const struct axle_pressures *pressures = &view->axle[axle];
    out->low_Pa = pressure_rounded_up_Pa(pressures->floor_Pa, plan_pressure_system(plan));
    out->high_Pa = fmin(pressures->rating.reference_Pa, pressures->ceiling_Pa);
    if (!(out->low_Pa > 0) || !isfinite(out->high_Pa) || out->high_Pa < out->low_Pa)
        return false;
    out->step_Pa = table_step_Pa(plan, out->high_Pa - out->low_Pa);
    return true;
}

/* The pressure of the table that falls into one step of the grid, (at - grid, at]; UNKNOWN where
 * none does. */
static double table_pressure(const struct table_range *range, double at_Pa, double grid_Pa)
{
    double slack = 1e-6 * grid_Pa;
    if (range->high_Pa > at_Pa - grid_Pa + slack && range->high_Pa <= at_Pa + slack)
        return range->high_Pa;
    if (at_Pa < range->low_Pa - slack || at_Pa > range->high_Pa)
        return UNKNOWN;
    double steps = at_Pa / range->step_Pa;
    bool on_step = fabs(steps - round(steps)) < 1e-6;
    return on_step || fabs(at_Pa - range->low_Pa) < slack ? at_Pa : UNKNOWN;
}

/* One row; a pressure that already has one, as the recommended, is not told twice. */
static void add_table_row(const struct load_view *view, int axle, double pressure_Pa,
                          struct figures *figures)
{
    const struct plan *plan = view->plan;
    const struct axle_pressures *pressures = &view->axle[axle];
    struct figure figure = figure_of(QUANTITY_TYRE_CAPACITY,
                                     capacity_kg(&pressures->rating, pressures->dual, pressure_Pa),
                                     rating_basis(plan, pressures));
    figure.axle = axles_alike(view) ? AXLE_NONE : axle;
    figure.at = pressure_text(plan, pressure_Pa);
    bool told = figure.axle != AXLE_NONE && isfinite(pressures->recommended_Pa) &&
                strcmp(figure.at, pressure_text(plan, pressures->recommended_Pa)) == 0;
    if (!told && known(figure.value))
        figures_add(figures, figure);
}

/* Pressure by pressure and not setup by setup, so that a table for reading is in order. */
void report_pressure_tables(const struct load_view *views, size_t count, struct figures *figures)
{
    enum { HIGHEST_STEP = 300 };
    double grid =
        count > 0 && views[0].plan->us ? unit_to_si(UNIT_PSI, 1) : unit_to_si(UNIT_KPA, 5);
    for (int step = 1; step <= HIGHEST_STEP; step++)
        for (size_t i = 0; i < count; i++) {
            figures->setup = (int)i;
            for (int axle = 0; axle < (axles_alike(&views[i]) ? 1 : AXLE_COUNT); axle++) {
                struct table_range range;
                if (!table_range_of(&views[i], axle, &range))
                    continue;
                double at = table_pressure(&range, step * grid, grid);
                if (known(at))
                    add_table_row(&views[i], axle, at, figures);
            }
        }
}
