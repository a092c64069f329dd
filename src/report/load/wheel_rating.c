/* What the tyres and wheels of an axle are rated for: the axle's rating, and not only what stands
 * on it today. */
#include "base/known.h"
#include "report/load/loaded_setup.h"
#include "tables/lookup.h"

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
        figure_on_axle(QUANTITY_TYRES_CARRY_RATING, sure, axle, remark(BASIS_TYRES_CARRY_RATING));
    bool unread =
        !meets_limit(sure, LIMIT_AT_LEAST, rating) && meets_limit(highest, LIMIT_AT_LEAST, rating);
    bool by_pressure = meets_limit(pressures->capacity_max_kg * tyres, LIMIT_AT_LEAST, rating);
    bool sidewall_tells = pressures->rating.completed ||
                          (known(pressures->capacity_max_kg) && (!known(sure) || unread));
    const struct need needs[] = {
        {!pressures->rating.completed, remark(ADVICE_WRITE_SIZE)},
        {known(pressures->capacity_max_kg), remark(ADVICE_GIVE_LOAD_INDEX)},
        {known(sure), remark(ask_for_load(tyre_group(pressures->rating.class)))},
        {known(rating), remark(ADVICE_GIVE_AXLE_RATING)},
        {!unread,
         read_sidewall(loaded->plan, pressures->demands.rated_Pa, pressures->ceilings.highest_Pa)},
    };
    const struct judgement how = {
        .needs = needs,
        .need_count = sizeof needs / sizeof needs[0],
        .ask = sidewall_tells ? TASK_READ_SIDEWALL : TASK_NONE,
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
    return known(pressures->rating.reference_Pa)
               ? ADVICE_PRESSURE_UNKNOWN
               : ask_for_load(tyre_group(pressures->rating.class));
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
    if (left_Pa < 0 && !is_above_ceiling(pressures->needed_Pa, pressures->wheel_pressure_Pa))
        left_Pa = 0; /* one nominal step */
    bool beyond = is_beyond_taken(left_Pa, wheel->max_pressure_Pa);
    /* What the least load needs is sure to break a rating, and does not show that one is kept. */
    bool unweighed = pressures->reason == REASON_UNWEIGHED && left_Pa >= 0;
    struct figure figure =
        figure_on_axle(QUANTITY_WHEEL_PRESSURE, beyond || unweighed ? UNKNOWN : left_Pa, axle,
                       remark(basis_of(wheel->max_pressure_Pa, pressures->wheel_pressure_Pa)));
    const struct need needs[] = {
        {known(pressures->wheel_pressure_Pa) && !beyond, remark(ADVICE_GIVE_WHEEL_PRESSURE)},
        {known(pressures->needed_Pa) && !unweighed,
         unweighed ? weigh_again(loaded->plan->arena,
                                 tyre_doubt_kg(loaded->plan->specification, pressures->dual))
                   : remark(pressure_advice(pressures))},
    };
    bool by_sidewall = known(pressures->placard_Pa) && !known(pressures->rating.reference_Pa);
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

/* What a wheel of the axle has to bear: its share of the rating, or what is more, with what the
 * weighing may be off. */
static double wheel_duty_kg(const struct loaded_setup *loaded, int axle)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    double load = pressures->load_built_kg, rated = pressures->demand_rated_kg;
    return load <= rated ? rated : higher_of(load + weighing_of_tyre_kg(loaded, axle), rated);
}

static bool is_too_weak(const struct loaded_setup *loaded, int axle)
{
    double bears_kg = loaded->axle[axle].wheel_load_kg, duty_kg = wheel_duty_kg(loaded, axle);
    return known(bears_kg) && known(duty_kg) && !meets_limit(bears_kg, LIMIT_AT_LEAST, duty_kg);
}

static bool has_one_wheel(const struct loaded_setup *loaded)
{
    const struct tyre *tyres = loaded->setup->axle, *fitted = loaded->plan->fitted.axle;
    return tyres[AXLE_FRONT].wheel.given == tyres[AXLE_REAR].wheel.given &&
           fitted[AXLE_FRONT].wheel.given == fitted[AXLE_REAR].wheel.given;
}

/* Whether a listed rim stands as this wheel does, so that nothing else changes. */
static bool rim_stands(const struct search_rim *rim, const struct tyre *tyre)
{
    return size_goes_on_rim(&tyre->size, rim) && rim_stands_as(rim, &tyre->wheel);
}

/* Whether it is rated for load and pressure; what is not known of it is not >=. */
static bool rim_does(const struct search_rim *rim, const struct loaded_setup *loaded, int axle)
{
    return rim_stands(rim, &loaded->setup->axle[axle]) &&
           meets_limit(rim->max_load_kg, LIMIT_AT_LEAST, wheel_duty_kg(loaded, axle)) &&
           ceiling_reach_Pa(rim->max_pressure_Pa) >= loaded->axle[axle].most_told_Pa;
}

const struct search_rim *wheel_to_order(const struct loaded_setup *loaded, int axle)
{
    const struct specification *specification = loaded->plan->specification;
    int other = has_one_wheel(loaded) ? AXLE_COUNT - 1 - axle : axle;
    bool due = is_too_weak(loaded, axle) || is_too_weak(loaded, other);
    if (!due || specification->allowed.wheel != 1)
        return NULL;
    for (size_t i = 0; i < specification->search.rims.count; i++) {
        const struct search_rim *rim = &specification->search.rims.items[i];
        if (rim_does(rim, loaded, axle) && rim_does(rim, loaded, other))
            return rim;
    }
    return NULL;
}

/* Up to its share of the rating it does as it is marked; of what is above that the weighing tells.
 */
static struct bearing bearing_of_wheel(double bears_kg, double rated_kg, double doubt_kg)
{
    if (clearly_above(rated_kg, bears_kg))
        return (struct bearing){UNKNOWN, UNKNOWN};
    return (struct bearing){higher_of(bears_kg - doubt_kg, rated_kg), bears_kg + doubt_kg};
}

struct bearing wheel_bearing(const struct loaded_setup *loaded, int axle)
{
    const struct specification *specification = loaded->plan->specification;
    const struct axle_pressures *pressures = &loaded->axle[axle];
    const struct tyre *tyre = &loaded->setup->axle[axle];
    double rated_kg = pressures->demand_rated_kg, doubt_kg = weighing_of_tyre_kg(loaded, axle);
    struct bearing bearing = bearing_of_wheel(pressures->wheel_load_kg, rated_kg, doubt_kg);
    if (!known(tyre->wheel.max_load_kg)) /* what is taken of it is no bound that is sure */
        return (struct bearing){bearing.sure_kg, UNKNOWN};
    for (size_t i = 0; specification->allowed.wheel == 1 && i < specification->search.rims.count;
         i++) {
        const struct search_rim *rim = &specification->search.rims.items[i];
        struct bearing ordered = bearing_of_wheel(rim->max_load_kg, rated_kg, doubt_kg);
        if (rim_stands(rim, tyre) &&
            ceiling_reach_Pa(rim->max_pressure_Pa) >= pressures->ceilings.sure_Pa)
            bearing = higher_bearing(bearing, (struct bearing){ordered.sure_kg, ordered.sure_kg});
    }
    return bearing;
}

/* What is ordered has been on no hub. One wheel of the whole set is tried on once, in front. */
static void report_trial(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    if ((axle == AXLE_REAR && has_one_wheel(loaded)) || wheel_to_order(loaded, axle) == NULL)
        return;
    const struct judgement how = {.holds = ANSWER_NO,
                                  .cure = {.task = TASK_TRY_WHEEL, .now = UNKNOWN, .then = UNKNOWN},
                                  .if_broken = remark(ADVICE_TRY_ORDERED_WHEEL)};
    figures_add(figures, judged(figure_on_axle(QUANTITY_WHEEL_BY_HAND, UNKNOWN, axle,
                                               remark(BASIS_WHEEL_ORDERED)),
                                &how));
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
        figure_on_axle(QUANTITY_WHEEL_LOAD, known(load) && !beyond ? left : UNKNOWN, axle,
                       remark(basis_of(wheel->max_load_kg, pressures->wheel_load_kg)));
    const struct need needs[] = {
        {known(pressures->wheel_load_kg) && !beyond,
         remark(known(pressures->wheel_pressure_Pa) ? ADVICE_GIVE_WHEEL_LOAD : ADVICE_GIVE_WHEEL)},
        {known(load), remark(ADVICE_WEIGH)},
        {known(rated) || breaks_today, remark(ADVICE_GIVE_AXLE_RATING)},
    };
    const double tolerance_kg = weighing_of_tyre_kg(loaded, axle);
    const bool ordered = wheel_to_order(loaded, axle) != NULL;
    const struct cure cure = {.task = ordered ? TASK_WHEEL : TASK_NONE,
                              .now = UNKNOWN,
                              .then = UNKNOWN,
                              .of_set = has_one_wheel(loaded)};
    /* A wheel that surely does is ordered then, and there is nothing to weigh. */
    const bool replaced = ordered && is_too_weak(loaded, axle);
    const struct judgement how = {.needs = needs,
                                  .need_count = sizeof needs / sizeof needs[0],
                                  .holds = replaced ? ANSWER_NO : ANSWER_NOT_ASKED,
                                  .cure = cure,
                                  .tolerance = load > rated ? tolerance_kg : 0,
                                  .if_doubtful = weigh_again(loaded->plan->arena, tolerance_kg),
                                  .ask = needs[0].known ? TASK_NONE : TASK_READ_WHEEL,
                                  .if_cured = remark(ADVICE_ORDER_WHEEL),
                                  .if_broken = if_too_weak(loaded->plan->arena, pressures)};
    figure.limit_owner = LIMIT_OF_MAKER;
    figures_add(figures, judged(limited_at_least(figure, 0), &how));
    report_wheel_pressure(loaded, axle, figures);
    report_trial(loaded, axle, figures);
}
