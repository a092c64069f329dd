/* Properties of pressures over random builds: no pressure that is told, of any part, is above a
 * ceiling or below a floor; what is recommended meets every demand and is no more than that;
 * nothing is ok that lacks something; and neither more load nor a lower rating ever helps. */
#include "base/known.h"
#include "compute/load.h"
#include "compute/ratings.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"

/* --- ceilings and floors */

/* What is moulded or rated, and nothing that is taken: none may be passed. */
static double stated_ceiling_Pa(const struct tyre *tyre)
{
    double moulded_Pa = tyre->data_book.max_pressure_Pa;
    if (!known(moulded_Pa) && !is_passenger_tyre(tyre))
        moulded_Pa = tyre->data_book.at_pressure_Pa;
    if (!known(moulded_Pa) && is_passenger_tyre(tyre) && tyre->size.prefix != PREFIX_T)
        moulded_Pa = fmax(350e3, tyre->data_book.at_pressure_Pa); /* 49 CFR 571.139 */
    return fmin(moulded_Pa, tyre->wheel.max_pressure_Pa);
}

/* The lowest pressure of the published tables, in kPa or in psi: ETRTO 150, TRA P-metric 140 (20),
 * flotation 180 (25), LT 250 (35), C 210 (30). */
static double table_floor_Pa(const struct tyre *tyre, bool us)
{
    const struct designation *size = &tyre->size;
    const double psi = 6894.757293168361;
    if (size->form == FORM_FLOTATION && size->prefix != PREFIX_LT)
        return us ? 25 * psi : 180e3;
    if (size->prefix == PREFIX_LT || size->form == FORM_NUMERIC)
        return us ? 35 * psi : 250e3;
    if (size->suffix == SUFFIX_C || size->suffix == SUFFIX_CP)
        return us ? 30 * psi : 210e3;
    if (size->prefix == PREFIX_P)
        return us ? 20 * psi : 140e3;
    return size->prefix == PREFIX_T ? 0 : 150e3;
}

/* Pairs that standards print, one step each: a ceiling in one reaches to the end of it. */
static double end_of_step_Pa(double ceiling_Pa)
{
    static const double pairs_kPa[][2] = {{240, 241.3165}, {248.2113, 250}, {280, 282.6850},
                                          {289.5798, 290}, {344.7379, 350}, {413.6854, 420},
                                          {448.1592, 450}, {550, 551.5806}, {650, 655.0019}};
    for (size_t i = 0; i < LENGTH_OF(pairs_kPa); i++)
        if (ceiling_Pa >= pairs_kPa[i][0] * 1e3 - 1 && ceiling_Pa <= pairs_kPa[i][1] * 1e3)
            return pairs_kPa[i][1] * 1e3;
    return ceiling_Pa;
}

static const struct tyre *tyre_of_figure(const struct run *run, const struct figure *figure)
{
    const struct setup *setup = &run->plan.setups[figure->setup];
    if (figure->quantity == QUANTITY_SPARE_PRESSURE)
        return &setup->spare;
    return figure->axle == AXLE_NONE ? NULL : &setup->axle[figure->axle];
}

static void require_between(const struct run *run, const struct figure *figure,
                            const struct tyre *tyre, double pressure_Pa, bool floored)
{
    double ceiling_Pa = end_of_step_Pa(stated_ceiling_Pa(tyre));
    double floor_Pa = table_floor_Pa(tyre, run->plan.us);
    REQUIRE(!(pressure_Pa > ceiling_Pa * (1 + 1e-6)), "%s: %g Pa above %g Pa", told_of(run, figure),
            pressure_Pa, ceiling_Pa);
    REQUIRE(!floored || pressure_Pa >= floor_Pa * (1 - 1e-8), "%s: %g Pa below %g Pa",
            told_of(run, figure), pressure_Pa, floor_Pa);
}

/* What is advised, in whatever words. */
static void require_advice_between(const struct run *run, const struct figure *figure,
                                   const struct remark *advice, const struct tyre *tyre)
{
    for (size_t i = 0; i < advice->count; i++) {
        const struct argument *argument = &advice->arguments[i];
        if (argument->kind == ARGUMENT_PRESSURE)
            require_between(run, figure, tyre, argument->value, false);
        if (argument->kind == ARGUMENT_REMARK)
            require_advice_between(run, figure, argument->remark, tyre);
    }
}

/* Any figure that is a pressure and neither a difference of two nor what the vehicle has. */
static bool is_pressure(const struct figure *figure)
{
    return quantity_rows[figure->quantity].metric == UNIT_KPA &&
           figure->quantity != QUANTITY_WHEEL_PRESSURE &&
           figure->quantity != QUANTITY_WARNING_AS_SET &&
           figure->quantity != QUANTITY_PRESSURE_AS_SET;
}

static int between_in_system(struct run *run)
{
    int checked = 0;
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        const struct tyre *tyre = tyre_of_figure(run, figure);
        REQUIRE(tyre != NULL || !is_pressure(figure), "%s: of no tyre", told_of(run, figure));
        if (tyre == NULL)
            continue;
        require_advice_between(run, figure, &figure->advice, tyre);
        if (figure->cure.task == TASK_TYRE_PRESSURE)
            require_between(run, figure, tyre, figure->cure.then, true);
        if (known(figure->place.pressure_Pa))
            require_between(run, figure, tyre, figure->place.pressure_Pa, true);
        if (!known(figure->value) || !is_pressure(figure))
            continue;
        bool warning = figure->quantity == QUANTITY_WARNING_THRESHOLD;
        require_between(run, figure, tyre, figure->value, !warning);
        for (int us = 0; us < 2; us++) /* as it is told, in either unit */
            REQUIRE(warning || !(figure_value(figure, figure->value, us) >
                                 figure_limit(figure, us) * (1 + 1e-8)),
                    "%s: told above its ceiling", told_of(run, figure));
        /* What is no more than above the pressure to set is within reach. */
        if (figure->advice.id == ADVICE_WARNING_STAYS)
            require_between(run, figure, tyre, figure->value * 1.001, false);
        checked++;
    }
    return checked;
}

static int between(struct run *run)
{
    int checked = between_in_system(run);
    run_compute(run, true);
    return checked + between_in_system(run);
}

START_TEST(no_pressure_is_above_a_ceiling_or_below_a_floor)
{
    check_builds("between floor and ceiling", between);
}
END_TEST

/* --- the recommended pressure */

static double axle_rating(const struct run *run, enum axle axle)
{
    const struct ratings *ratings = &run->specification->vehicle.ratings;
    return axle == AXLE_FRONT ? ratings->front_kg : ratings->rear_kg;
}

static struct axle_pressures pressures_of(const struct run *run, const struct setup *setup,
                                          enum axle axle)
{
    const struct load_conditions conditions = {run->specification, &run->plan.fitted,
                                               PRESSURE_METRIC};
    struct axle_pressures out;
    axle_pressures(&conditions, setup, axle, &out);
    return out;
}

static void require_load_met(const struct run *run, const struct axle_pressures *needed,
                             double load_kg, const char *what)
{
    double table_Pa = needed->recommended_Pa - needed->rating.speed_pressure_Pa;
    REQUIRE(!(capacity_kg(&needed->rating, needed->dual, table_Pa) < load_kg * (1 - 1e-9)),
            "seed %llu, %s: does not carry %g kg", (unsigned long long)run->seed, what, load_kg);
}

static void assert_pressures(struct run *run, const struct setup *setup, enum axle axle)
{
    const struct axle_pressures needed = pressures_of(run, setup, axle);
    const char *what = arena_format(&run->arena, "seed %llu, %s, %s", (unsigned long long)run->seed,
                                    setup->name, axle_name((int)axle));
    double tyres = needed.dual ? 4 : 2;
    for (size_t i = 0; i < state_count(run->specification) && known(needed.load_built_kg); i++) {
        struct axle_loads loads;
        axle_loads_in_state(run->specification, state_at(run->specification, i), &run->plan.fitted,
                            setup, &loads);
        REQUIRE(needed.load_built_kg >= loads.axle_kg[axle] / tyres - 1e-9,
                "%s: the heaviest tyre carries less than its share", what);
    }
    if (!isfinite(needed.recommended_Pa))
        return;
    double most = table_floor_Pa(&setup->axle[axle], false);
    bool alike = needed.placard_group == tyre_group(needed.rating.class);
    const double demands[] = {needed.demands.replaced_Pa, needed.demands.built_Pa,
                              needed.demands.rated_Pa, alike ? needed.placard_Pa : UNKNOWN};
    for (size_t i = 0; i < LENGTH_OF(demands); i++)
        most = known(demands[i]) ? fmax(most, demands[i]) : most;
    REQUIRE(needed.recommended_Pa >= most * (1 - 1e-9), "%s: %g Pa is below %g Pa", what,
            needed.recommended_Pa, most);
    REQUIRE(needed.recommended_Pa < most + 5e3 * (1 + 1e-9), "%s: %g Pa is a step more than %g Pa",
            what, needed.recommended_Pa, most);
    require_load_met(run, &needed, needed.demand_built_kg, what);
    if (known(axle_rating(run, axle)))
        require_load_met(run, &needed, axle_rating(run, axle) / tyres, what);
}

/* What the spare is told to need is no less than the placard of its group, and carries on either
 * axle what stands there and the tyre's share of the axle rating. */
static void assert_spare(struct run *run, const struct figure *figure)
{
    const struct setup *setup = &run->plan.setups[figure->setup];
    const struct vehicle *vehicle = &run->specification->vehicle;
    struct tyre_rating rating;
    struct tyre spare = setup->spare;
    for (enum axle axle = AXLE_FRONT; axle < AXLE_COUNT; axle++)
        if (designation_equal(&setup->axle[axle].size, &spare.size))
            return; /* it takes what its designation leaves out from the tyre */
    tyre_rate(&spare, vehicle->kind, vehicle->top_speed_mps, &rating);
    for (enum axle axle = AXLE_FRONT; axle < AXLE_COUNT; axle++) {
        struct axle_pressures on = pressures_of(run, setup, axle);
        double carries = capacity_kg(&rating, false, figure->value - rating.speed_pressure_Pa);
        bool alike = on.placard_group == tyre_group(rating.class);
        REQUIRE(!(alike && figure->value < on.placard_Pa * (1 - 1e-9)), "%s: below the placard",
                told_of(run, figure));
        REQUIRE(!(carries < on.demand_built_kg * (1 - 1e-9)), "%s: less than the load",
                told_of(run, figure));
        REQUIRE(!(carries < on.demand_rated_kg * (1 - 1e-9)), "%s: less than the rating",
                told_of(run, figure));
    }
}

static int spares(struct run *run)
{
    int checked = 0;
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->quantity != QUANTITY_SPARE_PRESSURE || !known(figure->value))
            continue;
        assert_spare(run, figure);
        checked++;
    }
    return checked;
}

START_TEST(spare_pressure_meets_every_demand)
{
    check_builds("spares", spares);
}
END_TEST

static int pressures(struct run *run)
{
    for (size_t i = 0; i < run->plan.count; i++)
        for (enum axle axle = AXLE_FRONT; axle < AXLE_COUNT; axle++)
            assert_pressures(run, &run->plan.setups[i], axle);
    return 1;
}

START_TEST(recommended_pressure_meets_every_demand)
{
    check_builds("pressures", pressures);
}
END_TEST

/* --- nothing is ok that lacks something */

/* What must be known for an ok of the axle. */
static bool has_all(const struct run *run, const struct figure *figure)
{
    enum axle axle = (enum axle)figure->axle;
    const struct setup *setup = &run->plan.setups[figure->setup];
    const struct ratings *ratings = &run->specification->vehicle.ratings;
    bool loaded = known(run->specification->vehicle.unladen_kg.front);
    switch (figure->quantity) {
    case QUANTITY_PRESSURE_RECOMMENDED:
        return loaded && known(axle_rating(run, axle)) &&
               known(of_axle(run->specification->tyres.fitted.placard_Pa, axle)) &&
               (setup->axle[axle].size.service.load_index >= 0 ||
                known(setup->axle[axle].data_book.max_load_kg));
    case QUANTITY_TYRES_CARRY_RATING:
        return known(axle_rating(run, axle)) && (setup->axle[axle].size.service.load_index >= 0 ||
                                                 known(setup->axle[axle].data_book.max_load_kg));
    case QUANTITY_WHEEL_LOAD:
        return loaded && known(axle_rating(run, axle));
    case QUANTITY_SPARE_PRESSURE:
        return loaded && known(ratings->front_kg) && known(ratings->rear_kg);
    default:
        return true;
    }
}

/* A wheel that is ok bears its share of the axle's rating. */
static bool bears_its_share(const struct run *run, const struct figure *figure)
{
    const struct tyre *tyre = tyre_of_figure(run, figure);
    double share = figure->quantity == QUANTITY_WHEEL_LOAD
                       ? axle_rating(run, (enum axle)figure->axle) / (tyre->dual == 1 ? 4 : 2)
                       : 0;
    return !(tyre != NULL && tyre->wheel.max_load_kg < share * (1 - 1e-9));
}

static int lacking(struct run *run)
{
    int checked = 0;
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->part != PART_LOAD || figure->verdict != VERDICT_OK)
            continue;
        REQUIRE(known(figure->value) && has_all(run, figure), "%s is ok, and lacks something",
                told_of(run, figure));
        REQUIRE(bears_its_share(run, figure), "%s", told_of(run, figure));
        checked++;
    }
    return checked;
}

START_TEST(nothing_is_ok_that_lacks_something)
{
    check_builds("ok lacks nothing", lacking);
}
END_TEST

/* --- neither more load nor a lower rating helps */

/* The build with one thing made worse, and the verdicts that this must not better. */
struct worse {
    const char *what;
    bool (*make)(struct run *run, size_t setup, enum axle axle); /* false: nothing to be worse */
    bool counts_fitted, counts_spare;
};

static bool more_weight(struct run *run, size_t setup, enum axle axle)
{
    struct axle_pair *unladen = &run->specification->vehicle.unladen_kg;
    (void)setup;
    *(axle == AXLE_FRONT ? &unladen->front : &unladen->rear) += 60;
    return known(unladen->front);
}

/* A fitted wheel whose rating is not given is taken to be good for half of it, and so gains. */
static bool higher_axle_rating(struct run *run, size_t setup, enum axle axle)
{
    struct ratings *ratings = &run->specification->vehicle.ratings;
    double *rating = axle == AXLE_FRONT ? &ratings->front_kg : &ratings->rear_kg;
    const struct wheel *wheel = &run->plan.setups[setup].axle[axle].wheel;
    *rating += 100;
    return known(*rating) && known(wheel->max_load_kg) && known(wheel->max_pressure_Pa);
}

/* By one step; what the step of 121 to 122 changes beside the load is passed over. */
static bool lower_load_index(struct run *run, size_t setup, enum axle axle)
{
    struct service_description *service = &run->plan.setups[setup].axle[axle].size.service;
    if (setup == 0 || service->load_index <= 0 || service->load_index == 122)
        return false;
    service->load_index--;
    if (service->load_index_dual > service->load_index)
        service->load_index_dual = service->load_index;
    return true;
}

static bool lower_max_load(struct run *run, size_t setup, enum axle axle)
{
    double *load = &run->plan.setups[setup].axle[axle].data_book.max_load_kg;
    *load *= 0.95;
    return setup > 0 && known(*load);
}

static bool lower_wheel_load(struct run *run, size_t setup, enum axle axle)
{
    double *load = &run->plan.setups[setup].axle[axle].wheel.max_load_kg;
    *load *= 0.9;
    return known(*load);
}

static bool lower_wheel_pressure(struct run *run, size_t setup, enum axle axle)
{
    double *pressure = &run->plan.setups[setup].axle[axle].wheel.max_pressure_Pa;
    *pressure -= 60e3;
    return known(*pressure);
}

static bool lower_maximum(struct run *run, size_t setup, enum axle axle)
{
    double *pressure = &run->plan.setups[setup].axle[axle].data_book.max_pressure_Pa;
    *pressure -= 60e3;
    return setup > 0 && known(*pressure);
}

static const struct worse worse[] = {
    {"more weight", more_weight, true, true},
    {"a higher axle rating", higher_axle_rating, true, true},
    {"a lower load index", lower_load_index, false, false},
    {"a lower moulded load", lower_max_load, false, false},
    {"a lower wheel rating", lower_wheel_load, true, false},
    {"a lower pressure of the wheel", lower_wheel_pressure, true, false},
    {"a lower moulded pressure", lower_maximum, false, false},
};

static bool is_watched(const struct figure *figure, const struct worse *how, size_t setup,
                       enum axle axle)
{
    bool there = figure->setup == (int)setup && figure->axle == (int)axle;
    switch (figure->quantity) {
    case QUANTITY_PRESSURE_RECOMMENDED:
    case QUANTITY_TYRES_CARRY_RATING:
    case QUANTITY_WHEEL_LOAD:
        return there;
    case QUANTITY_SPARE_PRESSURE:
        return figure->setup == (int)setup && how->counts_spare;
    default:
        return false;
    }
}

static void require_no_better(struct run *before, struct run *after, const struct worse *how,
                              size_t setup, enum axle axle)
{
    for (size_t i = 0; i < before->figures.count; i++) {
        const struct figure *was = &before->figures.items[i];
        if (was->part != PART_LOAD || !is_watched(was, how, setup, axle))
            continue;
        const struct figure *is = find_like(after, before, was, 0);
        /* What was not known to do, and now is known not to, may be ordered anew. */
        bool ordered = is != NULL && was->verdict == VERDICT_UNKNOWN &&
                       is->verdict == VERDICT_TASK && is->cure.task == TASK_SPARE;
        REQUIRE(is != NULL && (is->verdict <= was->verdict || ordered), "%s betters it from %s: %s",
                how->what, verdict_name(was->verdict), told_of(before, was));
        bool pressure =
            was->quantity != QUANTITY_TYRES_CARRY_RATING && was->quantity != QUANTITY_WHEEL_LOAD;
        REQUIRE(!(pressure ? is->value < was->value - 1e-3 : is->value > was->value + 1e-6),
                "%s: %g after %g: %s", how->what, is->value, was->value, told_of(before, was));
    }
}

/* The build once more, with the load part alone. */
static int make_worse(struct run *run, const struct worse *how, size_t setup, enum axle axle)
{
    struct run after;
    run_make(&after, run->seed, &as_drawn);
    bool made = how->make(&after, setup, axle);
    if (made) {
        if (setup == 0)
            after.plan.fitted = after.plan.setups[0];
        after.figures = (struct figures){.arena = &after.arena};
        report_load(&after.plan, &after.figures);
        require_no_better(run, &after, how, setup, axle);
    }
    run_free(&after);
    return made;
}

static int none_helps(struct run *run)
{
    int checked = 0;
    size_t setup = run->seed % run->plan.count;
    enum axle axle = run->seed / 3 % 2 ? AXLE_REAR : AXLE_FRONT;
    for (size_t i = 0; i < LENGTH_OF(worse); i++)
        checked += make_worse(run, &worse[i], setup, axle);
    return checked;
}

START_TEST(neither_more_load_nor_a_lower_rating_helps)
{
    check_builds("worse never helps", none_helps);
}
END_TEST

Suite *properties_pressure_suite(void)
{
    Suite *suite = suite_create("properties_pressure");
    TCase *pressure = tcase_create("pressure");
    tcase_set_timeout(pressure, 0);
    tcase_add_test(pressure, no_pressure_is_above_a_ceiling_or_below_a_floor);
    tcase_add_test(pressure, recommended_pressure_meets_every_demand);
    tcase_add_test(pressure, spare_pressure_meets_every_demand);
    tcase_add_test(pressure, nothing_is_ok_that_lacks_something);
    tcase_add_test(pressure, neither_more_load_nor_a_lower_rating_helps);
    suite_add_tcase(suite, pressure);
    return suite;
}
