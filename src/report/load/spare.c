/* The spare: whether it carries what it replaces, and at which pressure. */
#include "base/known.h"
#include "report/load/loaded_setup.h"
#include "tables/lookup.h"

/* The load that the spare may have to carry, on either axle. */
static double heaviest_load(const struct loaded_setup *loaded)
{
    return higher_of_pair((struct axle_pair){loaded->axle[AXLE_FRONT].load_built_kg,
                                             loaded->axle[AXLE_REAR].load_built_kg});
}

/* A spare of the size that the axles have is the same tyre, whatever it leaves out. */
static struct tyre spare_of(const struct setup *setup)
{
    struct tyre spare = setup->spare;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct tyre *tyre = &setup->axle[axle];
        if (!tyre->size_given || !designation_equal(&tyre->size, &spare.size))
            continue;
        if (spare.load_range == 0)
            spare.load_range = tyre->load_range;
        if (spare.data_book.given == NULL)
            spare.data_book = tyre->data_book;
        if (spare.wheel.given == NULL)
            spare.wheel = tyre->wheel;
        break;
    }
    return spare;
}

/* What the spare needs for the heaviest load; INFINITY where no pressure that it allows does. */
static double spare_pressure_Pa(const struct loaded_setup *loaded, const struct tyre *spare)
{
    const struct plan *plan = loaded->plan;
    const struct vehicle *vehicle = &plan->specification->vehicle;
    struct tyre_rating rating;
    tyre_rate(spare, vehicle->kind, vehicle->top_speed_mps, plan_pressure_system(plan), &rating);
    double load = heaviest_load(loaded) * (1 + load_reserve(plan->specification));
    double needed = pressure_for_load_Pa(&rating, false, load);
    if (!known(needed))
        return UNKNOWN;
    needed = pressure_rounded_up_Pa(fmax(needed, rating.floor_Pa), plan_pressure_system(plan));
    return clearly_above(needed, pressure_ceiling_Pa(&rating, &spare->wheel)) ? INFINITY : needed;
}

/* Where the load index was found to be too low already, that no pressure helps is no finding. */
static void report_spare_pressure(const struct loaded_setup *loaded, bool too_low,
                                  struct figures *figures)
{
    const struct tyre spare = spare_of(loaded->setup);
    double needed = spare_pressure_Pa(loaded, &spare);
    bool temporary = spare.size.prefix == PREFIX_T;
    struct figure figure = load_figure(QUANTITY_SPARE_PRESSURE, isfinite(needed) ? needed : UNKNOWN,
                                       AXLE_NONE, remark(BASIS_SPARE_PRESSURE));
    struct judgement how = {
        .holds = answer_of(known(needed), isfinite(needed)),
        .met = temporary ? VERDICT_CAUTION : VERDICT_OK,
        .if_met = remark(temporary ? ADVICE_SPARE_BY_ITS_MARKING : REMARK_NONE),
        .if_broken = remark(ADVICE_SPARE_TOO_WEAK),
        .if_unknown = remark(ADVICE_SPARE_UNKNOWN),
    };
    if (too_low && isinf(needed))
        how = (struct judgement){.if_met = remark(ADVICE_SPARE_TOO_WEAK)};
    figures_add(figures, judged(figure, &how));
}

void report_spare(const struct loaded_setup *loaded, struct figures *figures)
{
    const struct setup *setup = loaded->setup;
    if (!setup->spare.size_given)
        return;
    double needed = 0;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        needed = higher_of(needed, load_index_kg(setup->axle[axle].size.service.load_index));
    struct figure figure =
        load_figure(QUANTITY_SPARE_CAPACITY, load_index_kg(setup->spare.size.service.load_index),
                    AXLE_NONE, remark(BASIS_SPARE_CAPACITY));
    const struct judgement how = {.if_broken = remark(ADVICE_SPARE_OF_SET),
                                  .if_unknown = remark(ADVICE_GIVE_SPARE_SERVICE)};
    figure.limit_owner = LIMIT_OF_HOUSE;
    figure = judged(limited_at_least(figure, needed), &how);
    figures_add(figures, figure);
    report_spare_pressure(loaded, figure.verdict == VERDICT_FAIL, figures);
}
