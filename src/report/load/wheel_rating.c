/* What the tyres and wheels of an axle are rated for: the axle's rating, and not only what stands
 * on it today. */
#include "base/known.h"
#include "report/load/loaded_setup.h"

static double axle_rating_kg(const struct loaded_setup *loaded, int axle)
{
    return rating_kg(&loaded->plan->specification->vehicle.ratings,
                     axle == AXLE_FRONT ? RATING_FRONT : RATING_REAR);
}

/* 49 CFR 571.110 and 571.120: the tyres of an axle carry its rating, at a pressure that they and
 * their wheels may have. */
void report_axle_rating(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    struct arena *arena = loaded->plan->arena;
    double tyres = tyres_on_axle(pressures->dual), rating = axle_rating_kg(loaded, axle);
    double sure = pressures->capacity_sure_kg * tyres;
    double highest = pressures->capacity_highest_kg * tyres;
    struct figure figure =
        load_figure(QUANTITY_TYRES_CARRY_RATING, sure, axle, remark(BASIS_TYRES_CARRY_RATING));
    bool unread =
        !meets_limit(sure, LIMIT_AT_LEAST, rating) && meets_limit(highest, LIMIT_AT_LEAST, rating);
    bool by_pressure = meets_limit(pressures->capacity_max_kg * tyres, LIMIT_AT_LEAST, rating);
    const struct need needs[] = {
        {known(pressures->capacity_max_kg), remark(ADVICE_GIVE_LOAD_INDEX)},
        {known(sure), remark(ADVICE_GIVE_LOAD_RANGE)},
        {known(rating), remark(ADVICE_GIVE_AXLE_RATING)},
        {!unread,
         read_sidewall(loaded->plan, pressures->as_rated_Pa, pressures->ceilings.highest_Pa)},
    };
    const struct judgement how = {
        .needs = needs,
        .need_count = sizeof needs / sizeof needs[0],
        .ask = !needs[0].known || (needs[1].known && !unread) ? TASK_NONE : TASK_READ_SIDEWALL,
        .if_broken = by_pressure ? REMARK_WITH(arena, ADVICE_PRESSURE_FOR_RATING,
                                               say_pressure(pressures->ceilings.highest_Pa))
                                 : remark(ADVICE_TYRES_FOR_RATING),
    };
    figure.limit_owner = LIMIT_OF_LAW;
    figures_add(figures, judged(limited_at_least(figure, rating), &how));
}

/* Of a wheel whose rating is only taken, what is above it is not known. */
static bool is_beyond_taken(double left, double given)
{
    return !known(given) && known(left) && !meets_limit(left, LIMIT_AT_LEAST, 0);
}

static enum remark_id basis_of(double given, double taken)
{
    return !known(given) && known(taken) ? BASIS_FITTED_WHEEL : BASIS_WHEEL_MAKER;
}

/* What the pressure that is needed hangs on, and what finds it out. */
static enum remark_id pressure_advice(const struct axle_pressures *pressures)
{
    if (!known(pressures->placard_Pa))
        return ADVICE_GIVE_PLACARD;
    return known(pressures->rating.reference_Pa) ? ADVICE_PRESSURE_UNKNOWN : ADVICE_GIVE_LOAD_RANGE;
}

static void report_wheel_pressure(const struct loaded_setup *loaded, int axle,
                                  struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    const struct wheel *wheel = &loaded->setup->axle[axle].wheel;
    if (isinf(pressures->needed_Pa))
        return; /* no pressure is enough, which is a finding already */
    /* What is taken of a fitted wheel is no ceiling that the rounded pressure keeps to. */
    bool rounded = known(wheel->max_pressure_Pa) && isfinite(pressures->recommended_Pa);
    double left_Pa =
        pressures->wheel_pressure_Pa - (rounded ? pressures->recommended_Pa : pressures->needed_Pa);
    bool beyond = is_beyond_taken(left_Pa, wheel->max_pressure_Pa);
    struct figure figure =
        load_figure(QUANTITY_WHEEL_PRESSURE, beyond ? UNKNOWN : left_Pa, axle,
                    remark(basis_of(wheel->max_pressure_Pa, pressures->wheel_pressure_Pa)));
    const struct need needs[] = {
        {known(pressures->wheel_pressure_Pa) && !beyond, remark(ADVICE_GIVE_WHEEL_PRESSURE)},
        {known(pressures->needed_Pa), remark(pressure_advice(pressures))},
    };
    bool by_sidewall = pressure_advice(pressures) == ADVICE_GIVE_LOAD_RANGE;
    struct judgement how = {.needs = needs,
                            .need_count = 2,
                            .ask = !needs[0].known ? TASK_READ_WHEEL
                                   : by_sidewall   ? TASK_READ_SIDEWALL
                                                   : TASK_NONE,
                            .if_broken = remark(ADVICE_WHEEL_FOR_PRESSURE)};
    figure.limit_owner = LIMIT_OF_MAKER;
    figure = limited_at_least(figure, 0);
    if (!known(pressures->wheel_load_kg) && !known(pressures->wheel_pressure_Pa)) {
        figure.limit_side = LIMIT_NO_SIDE; /* the finding on its load asks for both */
        how = (struct judgement){.if_met = remark(ADVICE_GIVE_WHEEL_PRESSURE)};
    }
    figures_add(figures, judged(figure, &how));
}

/* What to do about a wheel that bears too little, and for which load it would do. */
static struct remark if_too_weak(struct arena *arena, const struct axle_pressures *axle)
{
    if (!meets_limit(axle->wheel_load_kg, LIMIT_AT_LEAST, axle->load_built_kg))
        return remark(ADVICE_WHEEL_FOR_LOAD);
    return REMARK_WITH(arena, ADVICE_WHEEL_FOR_RATING, say_mass(axle->demand_rated_kg),
                       say_mass(axle->wheel_load_kg * tyres_on_axle(axle->dual)));
}

/* Whether one of the listed rims stands as this wheel does, so that nothing else changes, and is
 * rated for load and pressure. */
static bool listed_rim_does(const struct loaded_setup *loaded, int axle, double load_kg)
{
    const struct specification *specification = loaded->plan->specification;
    const struct tyre *tyre = &loaded->setup->axle[axle];
    if (specification->allowed.wheel != 1 || tyre->size.rim_millimetric)
        return false;
    for (size_t i = 0; i < specification->search.rims.count; i++) {
        const struct search_rim *rim = &specification->search.rims.items[i];
        bool alike = fabs(rim->diameter_code * 10 - tyre->size.rim_code_tenths) < 0.5 &&
                     fabs(rim->width_m - tyre->wheel.width_m) < 1e-6 &&
                     fabs(rim->inset_m - tyre->wheel.inset_m) < 1e-6;
        if (alike && rim->max_load_kg >= load_kg &&
            rim->max_pressure_Pa >= loaded->axle[axle].recommended_Pa)
            return true; /* what is not known of it is not >= */
    }
    return false;
}

/* 49 CFR 571.110 S4.4.2, 571.120 S5.1.2 ask of the wheels what they ask of the tyres, and German
 * inspectors do of what is fitted later (secondary): half the axle rating each. */
void report_wheel_rating(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    const struct wheel *wheel = &loaded->setup->axle[axle].wheel;
    double load = pressures->load_built_kg, rated = pressures->demand_rated_kg;
    double left = pressures->wheel_load_kg - higher_of(load, rated);
    bool beyond = is_beyond_taken(left, wheel->max_load_kg);
    bool breaks_today = known(load) && !meets_limit(pressures->wheel_load_kg, LIMIT_AT_LEAST, load);
    struct figure figure =
        load_figure(QUANTITY_WHEEL_LOAD, known(load) && !beyond ? left : UNKNOWN, axle,
                    remark(basis_of(wheel->max_load_kg, pressures->wheel_load_kg)));
    const struct need needs[] = {
        {known(pressures->wheel_load_kg) && !beyond,
         remark(known(pressures->wheel_pressure_Pa) ? ADVICE_GIVE_WHEEL_LOAD : ADVICE_GIVE_WHEEL)},
        {known(load), remark(ADVICE_WEIGH)},
        {known(rated) || breaks_today, remark(ADVICE_GIVE_AXLE_RATING)},
    };
    const double tolerance_kg = weighing_of_tyre_kg(loaded, axle);
    const bool ordered = listed_rim_does(loaded, axle, higher_of(load, rated));
    const struct cure cure = {
        .task = ordered ? TASK_WHEEL : TASK_NONE, .now = UNKNOWN, .then = UNKNOWN};
    const struct judgement how = {.needs = needs,
                                  .need_count = sizeof needs / sizeof needs[0],
                                  .cure = cure,
                                  .tolerance = load > rated ? tolerance_kg : 0,
                                  .if_doubtful = weigh_again(loaded->plan->arena, tolerance_kg),
                                  .ask = needs[0].known ? TASK_NONE : TASK_READ_WHEEL,
                                  .if_broken = if_too_weak(loaded->plan->arena, pressures)};
    figure.limit_owner = LIMIT_OF_MAKER;
    figures_add(figures, judged(limited_at_least(figure, 0), &how));
    report_wheel_pressure(loaded, axle, figures);
}
