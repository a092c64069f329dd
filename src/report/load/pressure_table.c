/* Load at every pressure from floor to ceiling, of all setups. */
#include "base/known.h"
#include "base/units.h"
#include "report/load/loaded_setup.h"
#include "tables/lookup.h"

/* True where both axles have the same tyres: what a tyre carries is then told once. */
static bool axles_alike(const struct loaded_setup *loaded)
{
    const struct axle_pressures *front = &loaded->axle[AXLE_FRONT],
                                *rear = &loaded->axle[AXLE_REAR];
    const struct tyre *tyres = loaded->setup->axle;
    return !loaded->setup->own_rear_size &&
           tyres[AXLE_FRONT].data_book.given == tyres[AXLE_REAR].data_book.given &&
           front->dual == rear->dual && front->rating.class == rear->rating.class &&
           tyres[AXLE_FRONT].load_range == tyres[AXLE_REAR].load_range &&
           same_value(front->ceilings.sure_Pa, rear->ceilings.sure_Pa);
}

/* Steps of the table: fine where the whole range is short. */
static double table_step_Pa(const struct plan *plan, double range_Pa)
{
    if (plan->us)
        return unit_to_si(UNIT_PSI, clearly_above(range_Pa, unit_to_si(UNIT_PSI, 20)) ? 5 : 1);
    return unit_to_si(UNIT_KPA, clearly_above(range_Pa, 150e3) ? 25 : 10);
}

/* As a row tells it, in whole units: 79.8 psi, which are 550 kPa, stand with 80 psi. */
static double as_told_Pa(const struct plan *plan, double pressure_Pa)
{
    enum unit_id unit = plan->us ? UNIT_PSI : UNIT_KPA;
    return unit_to_si(unit, round(unit_from_si(unit, pressure_Pa)));
}

/* The highest pressure of a table: a whole unit below the ceiling where that reads as one above it.
 */
static double table_end_Pa(const struct plan *plan, double end_Pa, double ceiling_Pa)
{
    enum unit_id unit = plan->us ? UNIT_PSI : UNIT_KPA;
    return is_above_ceiling(as_told_Pa(plan, end_Pa), ceiling_Pa)
               ? unit_to_si(unit, floor(unit_from_si(unit, end_Pa)))
               : end_Pa;
}

/* Where an axle's table runs: from the floor of the class to the lowest maximum of tyre and wheel,
 * from which on the load no longer rises. Without a floor nothing published can be continued. */
struct table_range {
    double low_Pa, high_Pa, step_Pa;
};

static bool table_range_of(const struct loaded_setup *loaded, int axle, struct table_range *out)
{
    const struct plan *plan = loaded->plan;
    const struct axle_pressures *pressures = &loaded->axle[axle];
    out->low_Pa = pressure_rounded_up_Pa(pressures->floor_Pa, plan_pressure_system(plan));
    const double sure_Pa = pressures->ceilings.sure_Pa;
    out->high_Pa = table_end_Pa(
        plan, nominal_told_Pa(fmin(pressures->rating.reference_Pa, sure_Pa), plan->us), sure_Pa);
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

/* One row; a step that reads as the last pressure of the table does has none. */
static void add_table_row(const struct loaded_setup *loaded, int axle,
                          const struct table_range *range, double pressure_Pa,
                          struct figures *figures)
{
    const struct plan *plan = loaded->plan;
    const struct axle_pressures *pressures = &loaded->axle[axle];
    struct figure figure = figure_on_axle(
        QUANTITY_TYRE_CAPACITY, capacity_kg(&pressures->rating, pressures->dual, pressure_Pa),
        axles_alike(loaded) ? AXLE_NONE : axle, capacity_basis(plan->arena, pressures));
    figure.place.pressure_as = AT_PRESSURE;
    figure.place.pressure_Pa = as_told_Pa(plan, pressure_Pa);
    bool told = pressure_Pa < range->high_Pa &&
                figure.place.pressure_Pa == as_told_Pa(plan, range->high_Pa);
    if (!told && known(figure.value))
        figures_add(figures, figure);
}

/* Pressure by pressure and not setup by setup, so that a table for reading is in order. */
void report_pressure_tables(const struct loaded_setup *setups, size_t count,
                            struct figures *figures)
{
    enum { HIGHEST_STEP = 300 };
    double grid =
        count > 0 && setups[0].plan->us ? unit_to_si(UNIT_PSI, 1) : unit_to_si(UNIT_KPA, 5);
    for (int step = 1; step <= HIGHEST_STEP; step++)
        for (size_t i = 0; i < count; i++) {
            figures->setup = (int)i;
            for (int axle = 0; axle < (axles_alike(&setups[i]) ? 1 : AXLE_COUNT); axle++) {
                struct table_range range;
                if (!table_range_of(&setups[i], axle, &range))
                    continue;
                double at = table_pressure(&range, step * grid, grid);
                if (known(at))
                    add_table_row(&setups[i], axle, &range, at, figures);
            }
        }
}
