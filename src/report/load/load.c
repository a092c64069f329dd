/* Load: axle loads and ratings, the pressure that carries them, wheels, spare, and what is taken
 * or not covered. */
#include "base/known.h"
#include "report/load/loaded_setup.h"

static bool counts_occupants(const struct carried_list *carried)
{
    for (size_t i = 0; i < carried->count; i++)
        if (known(carried->items[i].occupants) && !known(carried->items[i].occupant_mass_kg))
            return true;
    return false;
}

/* What was taken where the file is silent. */
static void report_assumptions(const struct loaded_setup *loaded, struct figures *figures)
{
    const struct specification *specification = loaded->plan->specification;
    const struct axle_pressures *front = &loaded->axle[AXLE_FRONT],
                                *rear = &loaded->axle[AXLE_REAR];
    const struct tyre *tyres = loaded->setup->axle;
    bool passenger = is_passenger_tyre(&tyres[AXLE_FRONT]) || is_passenger_tyre(&tyres[AXLE_REAR]);
    const struct {
        bool taken;
        enum remark_id id;
    } each[] = {
        {front->rating.ceiling_assumed || rear->rating.ceiling_assumed, TAKEN_LT_CEILING},
        {front->wheel_assumed || rear->wheel_assumed, TAKEN_WHEEL_RATING},
        {front->rating.listed || rear->rating.listed, TAKEN_LISTED},
        {front->rating.standard_load_assumed || rear->rating.standard_load_assumed,
         TAKEN_STANDARD_LOAD},
        {specification->vehicle.kind == CHOICE_NONE && passenger, TAKEN_NO_KIND},
        {(front->dual && front->rating.dual_assumed) || (rear->dual && rear->rating.dual_assumed),
         TAKEN_TWIN},
        {specification->carried.count == 0, TAKEN_NOTHING_CARRIED},
        {counts_occupants(&specification->carried), TAKEN_OCCUPANTS},
    };
    for (size_t i = 0; i < sizeof each / sizeof each[0]; i++)
        figures_assume(figures, each[i].taken, remark(each[i].id));
}

static void report_axle(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    report_pressure(loaded, axle, figures);
    report_axle_rating(loaded, axle, figures);
    report_wheel_rating(loaded, axle, figures);
    report_twins(loaded, axle, figures);
    report_pressure_warning(loaded, axle, figures);
}

static struct loaded_setup load_setup(const struct plan *plan, const struct setup *setup)
{
    const struct load_conditions conditions = {plan->specification, &plan->fitted,
                                               plan_pressure_system(plan)};
    struct loaded_setup loaded = {.plan = plan, .setup = setup};
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        axle_pressures(&conditions, setup, (enum axle)axle, &loaded.axle[axle]);
    return loaded;
}

void setup_bearing(const struct plan *plan, const struct setup *setup,
                   struct bearing out[AXLE_COUNT])
{
    const struct loaded_setup loaded = load_setup(plan, setup);
    const struct bearing spare = spare_bearing(&loaded);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct axle_pressures *each = &loaded.axle[axle];
        struct bearing tyre = tyre_bearing(plan->specification, &each->rating, &each->ceilings,
                                           each->dual, &each->demands);
        out[axle] = lower_bearing(lower_bearing(tyre, wheel_bearing(&loaded, axle)), spare);
    }
}

void report_load(const struct plan *plan, struct figures *figures)
{
    figures->part = PART_LOAD;
    struct loaded_setup *setups = arena_allocate_array(plan->arena, plan->count, sizeof *setups);
    for (size_t i = figures->first_setup; i < plan->count; i++) {
        struct loaded_setup *loaded = &setups[i];
        figures->setup = (int)i;
        *loaded = load_setup(plan, &plan->setups[i]);
        report_ratings(loaded, figures);
        for (int axle = 0; axle < AXLE_COUNT; axle++)
            report_axle(loaded, axle, figures);
        report_margins(loaded, figures);
        report_spare(loaded, figures);
        report_off_road(loaded, figures);
        report_not_covered(loaded, figures);
        report_assumptions(loaded, figures);
    }
    if (!figures->verdicts_only)
        report_pressure_tables(setups, plan->count, figures);
}
