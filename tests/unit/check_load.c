/* The pressure that an axle needs: as replaced, as built, floor, placard, ceiling. */
#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "compute/load.h"
#include "suites.h"
#include "support.h"

static struct specification specification;
static struct setup fitted, option;

static void stand_on(struct setup *setup, const char *size)
{
    *setup = (struct setup){.name = size};
    setup->axle[AXLE_FRONT] = setup->axle[AXLE_REAR] = tyre_of(size);
}

static void set_up(void)
{
    specification_clear(&specification);
    struct vehicle *vehicle = &specification.vehicle;
    vehicle->wheelbase_m = 2.8;
    vehicle->unladen_kg = (struct axle_pair){1300, 1200};
    vehicle->kind = VEHICLE_LIGHT_TRUCK;
    specification.limits.load_reserve = 0.10;
    specification.tyres.fitted.placard_Pa = (struct axle_pair){2.1e5, 2.3e5};
    stand_on(&fitted, "P255/70R16 109S");
    fitted.is_fitted = true;
}

static struct axle_pressures pressures_of(const struct setup *setup, enum axle axle)
{
    const struct load_conditions conditions = {&specification, &fitted, PRESSURE_METRIC};
    struct axle_pressures out;
    axle_pressures(&conditions, setup, axle, &out);
    return out;
}

/* 49 CFR 571.110: the candidate is divided by 1.10, the fitted tyre's demand is not; TRA P-metric
 * 1030 kg at 240 kPa by the square root, ETRTO extra load by 0.8 from 290 kPa, by hand. */
START_TEST(candidate_is_divided_and_the_demand_is_not)
{
    stand_on(&option, "265/70R16 116T XL");
    struct axle_pressures front = pressures_of(&option, AXLE_FRONT);
    double demand = 1030 * sqrt(210.0 / 240);
    assert_close(front.demand_replaced_kg, demand, 1e-6, "fitted tyre, undivided");
    assert_close(front.demand_replaced_derated_kg, demand / 1.10, 1e-6, "under the named rule");
    assert_close(front.as_replaced_Pa, 290e3 * pow(demand / (1250 / 1.10), 1 / 0.8), 1e-3,
                 "candidate, divided");
    assert_close(front.as_built_Pa, 290e3 * pow(1.1 * 650 / (1250 / 1.10), 1 / 0.8), 1e-3,
                 "650 kg and 10 % in reserve");
    ck_assert_int_eq(front.reason, REASON_REPLACED);
    assert_close(front.recommended_Pa, 240e3, 1e-6, "rounded up to 5 kPa from 236.2");
}
END_TEST

/* A light-truck tyre of a far higher load index carries less at the old placard: 1250 < 1380 kg,
 * and yet 1380 (230/550)^0.7 is below what the fitted one did. */
START_TEST(light_truck_tyre_at_the_old_placard_carries_less)
{
    stand_on(&option, "LT245/75R16 120/116S E");
    struct axle_pressures rear = pressures_of(&option, AXLE_REAR);
    ck_assert(rear.capacity_max_kg > 1030);
    assert_relative(rear.capacity_at_placard_kg, 3042 * 0.45359237 * pow(230.0 / 550, 0.7), 1e-9,
                    "by hand");
    ck_assert(rear.capacity_at_placard_kg < rear.demand_replaced_kg);
    ck_assert(rear.recommended_Pa > rear.placard_Pa);
}
END_TEST

/* Reimpell, quoting ETRTO: 0.3 bar at 210 km/h. The placard of a metric tyre has it already; that
 * of a P-metric one has not. */
START_TEST(speed_counts_once)
{
    specification.vehicle.top_speed_mps = 210 / 3.6;
    stand_on(&option, "255/70R16 111H");
    struct axle_pressures fast = pressures_of(&option, AXLE_FRONT);
    specification.vehicle.top_speed_mps = 100 / 3.6;
    struct axle_pressures slow = pressures_of(&option, AXLE_FRONT);
    assert_close(fast.as_replaced_Pa - slow.as_replaced_Pa, 30e3, 1e-6, "P-metric replaced");
    assert_close(fast.as_built_Pa - slow.as_built_Pa, 30e3, 1e-6, "as built");
    stand_on(&fitted, "255/70R16 111H");
    slow = pressures_of(&option, AXLE_FRONT);
    specification.vehicle.top_speed_mps = 210 / 3.6;
    fast = pressures_of(&option, AXLE_FRONT);
    assert_close(fast.as_replaced_Pa, slow.as_replaced_Pa, 1e-6, "like for like");
}
END_TEST

/* Statics: 1200 kg on an axle is 600 a side, and 300 on each of two twins. */
START_TEST(twins_share_a_side)
{
    stand_on(&option, "LT245/75R16 120/116S E");
    assert_close(pressures_of(&option, AXLE_REAR).load_built_kg, 600, 1e-9, "one tyre a side");
    option.axle[AXLE_REAR].dual = 1;
    assert_close(pressures_of(&option, AXLE_REAR).load_built_kg, 300, 1e-9, "twins");
    /* Fitted twins of index 116 carry 1250 kg each at 550 kPa (a maximum moulded in pounds may
     * differ by a hundredth), and the axle's four of them are the demand on whatever replaces them.
     */
    stand_on(&fitted, "LT245/75R16 120/116S E");
    fitted.axle[AXLE_REAR].dual = 1;
    double each = 1250 * pow(230.0 / 550, 0.7);
    assert_relative(pressures_of(&option, AXLE_REAR).demand_replaced_kg, each, 0.01, "by twins");
    option.axle[AXLE_REAR].dual = 0;
    assert_relative(pressures_of(&option, AXLE_REAR).demand_replaced_kg, 2 * each, 0.01,
                    "by one tyre a side");
}
END_TEST

static const char *const candidates[] = {
    "255/70R16 111H",         "265/70R16 116T XL",      "P265/70R16 112S",
    "LT245/75R16 120/116S E", "LT255/75R16 111/108Q C", "31x10.50R15LT 109R C",
    "7.50R16LT 112/107N D",
};

/* Whatever the vehicle: what is recommended lies between floor and ceiling, not below the placard
 * of the same class, in whole steps, and carries both demands; where nothing does, it is refused.
 */
START_TEST(recommended_pressure_carries_and_is_allowed)
{
    uint64_t state = random_start("recommended_pressure_carries_and_is_allowed");
    const int runs = rounds(20000);
    int refused = 0, given = 0;
    for (int run = 0; run < runs; run++) {
        stand_on(&fitted, candidates[random_whole(&state, 0, (int)LENGTH_OF(candidates) - 1)]);
        stand_on(&option, candidates[random_whole(&state, 0, (int)LENGTH_OF(candidates) - 1)]);
        specification.vehicle.unladen_kg.front = random_between(&state, 400, 2600);
        specification.vehicle.top_speed_mps = random_between(&state, 25, 44);
        specification.vehicle.kind = random_whole(&state, 0, 1);
        specification.tyres.fitted.placard_Pa.front = random_between(&state, 1.5e5, 3.4e5);
        option.axle[AXLE_FRONT].wheel.max_pressure_Pa = random_between(&state, 2.5e5, 6e5);
        struct axle_pressures front = pressures_of(&option, AXLE_FRONT);
        ck_assert(known(front.recommended_Pa));
        if (isinf(front.recommended_Pa)) {
            ck_assert_int_eq(front.reason, REASON_REFUSED);
            ck_assert(isinf(front.needed_Pa) || front.needed_Pa > front.ceiling_Pa);
            refused++;
            continue;
        }
        given++;
        ck_assert(front.recommended_Pa >= front.floor_Pa);
        ck_assert(front.recommended_Pa <= front.ceiling_Pa * (1 + 1e-9));
        ck_assert(front.capacity_at_recommended_kg >= front.demand_built_kg * (1 - 1e-9));
        ck_assert(front.capacity_at_recommended_kg >= front.demand_replaced_kg * (1 - 1e-9));
        assert_close(fmod(front.recommended_Pa + 1, 5e3), 1, 1e-3, "whole steps of 5 kPa");
        struct tyre_rating before;
        tyre_rate(&fitted.axle[AXLE_FRONT], CHOICE_NONE, UNKNOWN, PRESSURE_METRIC, &before);
        if (before.class == front.rating.class)
            ck_assert(front.recommended_Pa >= front.placard_Pa - 1e-6);
    }
    ck_assert(refused > runs / 20 && given > runs / 20); /* both were tried */
}
END_TEST

/* More weight never needs less pressure. */
START_TEST(more_load_needs_no_less)
{
    uint64_t state = random_start("more_load_needs_no_less");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        stand_on(&option, candidates[random_whole(&state, 0, (int)LENGTH_OF(candidates) - 1)]);
        double light = random_between(&state, 300, 2000);
        specification.vehicle.unladen_kg.front = light;
        struct axle_pressures before = pressures_of(&option, AXLE_FRONT);
        specification.vehicle.unladen_kg.front = light + random_between(&state, 0, 500);
        struct axle_pressures after = pressures_of(&option, AXLE_FRONT);
        ck_assert(after.as_built_Pa >= before.as_built_Pa);
        ck_assert(after.recommended_Pa >= before.recommended_Pa);
    }
}
END_TEST

/* No pressure is enough, whatever else is not known; and what is not known gives no number. */
START_TEST(unknown_and_impossible)
{
    stand_on(&option, "195/65R15 91H");
    specification.vehicle.unladen_kg.front = 1700;
    specification.tyres.fitted.placard_Pa = (struct axle_pair){UNKNOWN, UNKNOWN};
    ck_assert_int_eq(pressures_of(&option, AXLE_FRONT).reason, REASON_REFUSED);
    specification.vehicle.unladen_kg.front = 700;
    struct axle_pressures front = pressures_of(&option, AXLE_FRONT);
    ck_assert_int_eq(front.reason, REASON_NONE);
    ck_assert(!known(front.recommended_Pa) && !known(front.needed_Pa));
    specification.tyres.fitted.placard_Pa = (struct axle_pair){2.1e5, 2.1e5};
    stand_on(&option, "265/70R16 116T XL");
    specification.vehicle.unladen_kg.front = UNKNOWN;
    ck_assert(!known(pressures_of(&option, AXLE_FRONT).recommended_Pa));
}
END_TEST

/* At the largest extra axle load the heavier tyre is at its ceiling less the reserve. */
START_TEST(tyres_left_is_the_rest)
{
    stand_on(&option, "LT245/75R16 120/116S E");
    struct axle_pressures front = pressures_of(&option, AXLE_FRONT);
    struct axle_loads loads;
    axle_loads_in_state(&specification, NULL, &fitted, &option, &loads);
    double left = axle_tyres_left_kg(&specification, &front, &loads, AXLE_FRONT);
    double most = capacity_kg(&front.rating, false, front.ceiling_Pa);
    assert_relative((1300 + left) / 2 * 1.10, most, 1e-9, "by the definition");
}
END_TEST

Suite *load_suite(void)
{
    Suite *suite = suite_create("load");
    TCase *published = tcase_create("published");
    tcase_add_checked_fixture(published, set_up, NULL);
    tcase_add_test(published, candidate_is_divided_and_the_demand_is_not);
    tcase_add_test(published, light_truck_tyre_at_the_old_placard_carries_less);
    tcase_add_test(published, speed_counts_once);
    tcase_add_test(published, twins_share_a_side);
    suite_add_tcase(suite, published);
    TCase *load = tcase_create("load");
    tcase_add_checked_fixture(load, set_up, NULL);
    tcase_add_test(load, recommended_pressure_carries_and_is_allowed);
    tcase_add_test(load, more_load_needs_no_less);
    tcase_add_test(load, unknown_and_impossible);
    tcase_add_test(load, tyres_left_is_the_rest);
    suite_add_tcase(suite, load);
    return suite;
}
