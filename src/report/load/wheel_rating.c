/* What the tyres and wheels of an axle are rated for. */
#include "base/known.h"
#include "report/load/loaded_setup.h"

/* 49 CFR 571.110 and 571.120: the tyres of an axle carry its rating. */
void report_axle_rating(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    double rating = rating_kg(&loaded->plan->specification->vehicle.ratings,
                              axle == AXLE_FRONT ? RATING_FRONT : RATING_REAR);
    struct figure figure = load_figure(QUANTITY_TYRES_CARRY_RATING,
                                       pressures->capacity_max_kg * tyres_on_axle(pressures->dual),
                                       axle, remark(BASIS_TYRES_CARRY_RATING));
    const struct need needs[] = {
        {known(figure.value), remark(ADVICE_GIVE_LOAD_INDEX)},
        {known(rating), remark(ADVICE_GIVE_AXLE_RATING)},
    };
    const struct judgement how = {
        .needs = needs, .need_count = 2, .if_broken = remark(ADVICE_TYRES_FOR_RATING)};
    figure.limit_owner = LIMIT_OF_LAW;
    figures_add(figures, judged(limited_at_least(figure, rating), &how));
}

static void report_wheel_pressure(const struct loaded_setup *loaded, int axle,
                                  struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    const struct wheel *wheel = &loaded->setup->axle[axle].wheel;
    if (isinf(pressures->needed_Pa))
        return; /* no pressure is enough, which is a finding already */
    struct figure figure =
        load_figure(QUANTITY_WHEEL_PRESSURE, wheel->max_pressure_Pa - pressures->needed_Pa, axle,
                    remark(BASIS_WHEEL_MAKER));
    const struct need needs[] = {
        {known(wheel->max_pressure_Pa), remark(ADVICE_GIVE_WHEEL_PRESSURE)},
        {known(pressures->needed_Pa), remark(ADVICE_PRESSURE_UNKNOWN)},
    };
    struct judgement how = {
        .needs = needs, .need_count = 2, .if_broken = remark(ADVICE_WHEEL_FOR_PRESSURE)};
    figure.limit_owner = LIMIT_OF_MAKER;
    figure = limited_at_least(figure, 0);
    if (!known(wheel->max_load_kg) && !known(wheel->max_pressure_Pa)) {
        figure.limit_side = LIMIT_NO_SIDE; /* the finding on its load asks for both */
        how = (struct judgement){.if_met = remark(ADVICE_GIVE_WHEEL_PRESSURE)};
    }
    figures_add(figures, judged(figure, &how));
}

void report_wheel_rating(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct wheel *wheel = &loaded->setup->axle[axle].wheel;
    double load = loaded->axle[axle].load_built_kg;
    struct figure figure = load_figure(QUANTITY_WHEEL_LOAD, wheel->max_load_kg - load, axle,
                                       remark(BASIS_WHEEL_MAKER));
    const struct need needs[] = {
        {known(wheel->max_load_kg),
         remark(known(wheel->max_pressure_Pa) ? ADVICE_GIVE_WHEEL_LOAD : ADVICE_GIVE_WHEEL)},
        {known(load), remark(ADVICE_WEIGH)},
    };
    const struct judgement how = {
        .needs = needs, .need_count = 2, .if_broken = remark(ADVICE_WHEEL_FOR_LOAD)};
    figure.limit_owner = LIMIT_OF_MAKER;
    figures_add(figures, judged(limited_at_least(figure, 0), &how));
    report_wheel_pressure(loaded, axle, figures);
}
