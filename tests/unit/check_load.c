/* The pressure that an axle needs: as replaced, as built, floor, placard, ceiling. */
#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "compute/load.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

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

/* 49 CFR 571.110 S4.2.2.2 (NHTSA interpretation nht76-1.47): the maker divides by 1.10 before it
 * meets the axle rating, so that the fitted tyre counts divided, as the candidate does. TRA
 * P-metric 1030 kg at 240 kPa by the square root, ETRTO extra load by 0.8 from 290 kPa, by hand. */
START_TEST(candidate_and_fitted_are_both_divided)
{
    stand_on(&option, "265/70R16 116T XL");
    struct axle_pressures front = pressures_of(&option, AXLE_FRONT);
    double demand = 1030 * sqrt(210.0 / 240) / 1.10;
    assert_close(front.demand_replaced_kg, demand, 1e-6, "what the fitted tyre carried");
    assert_close(front.demands.replaced_Pa, 290e3 * pow(demand / (1250 / 1.10), 1 / 0.8), 1e-3,
                 "candidate");
    assert_close(front.demands.built_Pa, 290e3 * pow(1.1 * 650 / (1250 / 1.10), 1 / 0.8), 1e-3,
                 "650 kg and 10 % in reserve");
    ck_assert_int_eq(front.reason, REASON_PLACARD); /* 209.4 kPa would do */
    assert_close(front.recommended_Pa, 210e3, 1e-6, "the placard of its group");
    stand_on(&option, "P255/70R16 109S");
    front = pressures_of(&option, AXLE_FRONT);
    assert_close(front.demands.replaced_Pa, 210e3, 1e-3, "the same tyre again needs the same");
    assert_relative(front.capacity_at_placard_kg, front.demand_replaced_kg, 1e-12,
                    "and carries as much");
}
END_TEST

/* Index 116 XL on a light truck is 1250 / 1.10 kg at 290 kPa, and 10 % of that are kept free:
 * 1033.1 kg, by 5 kg (half of the scale's 10) less or more, and less by the ETRTO power under a
 * lower ceiling; no bound where half the rating is more than it carries. By hand. */
START_TEST(tyre_bears_its_capacity_less_the_reserve)
{
    stand_on(&option, "265/70R16 116T XL");
    specification.measured.scale_kg = 10;
    option.axle[AXLE_REAR].data_book.max_pressure_Pa = 290e3;
    for (int rating_kg = 1900; rating_kg <= 2300; rating_kg += 400) {
        specification.vehicle.ratings.rear_kg = rating_kg;
        struct axle_pressures rear = pressures_of(&option, AXLE_REAR);
        struct bearing bearing =
            tyre_bearing(&specification, &rear.rating, &rear.ceilings, false, &rear.demands);
        if (rating_kg == 2300) {
            ck_assert(!known(bearing.sure_kg) && !known(bearing.most_kg));
            continue;
        }
        assert_close(bearing.sure_kg, 1033.1 - 5, 0.1, "whatever the scale says");
        assert_close(bearing.most_kg, 1033.1 + 5, 0.1, "at best");
        rear.ceilings.highest_Pa = rear.ceilings.sure_Pa = 260e3;
        bearing = tyre_bearing(&specification, &rear.rating, &rear.ceilings, false, &rear.demands);
        assert_relative(bearing.sure_kg, 1033.06 * pow(260.0 / 290, 0.8) - 5, 1e-4, "at 260 kPa");
        rear.ceilings.sure_Pa = 200e3; /* what half the rating asks for must be read first */
        bearing = tyre_bearing(&specification, &rear.rating, &rear.ceilings, false, &rear.demands);
        assert_close(bearing.sure_kg, bearing.most_kg, 1e-9, "with the sidewall read");
    }
}
END_TEST

/* The tyres of an axle carry its rating (49 CFR 571.110, 571.120): 1900 kg are 950 a tyre, and an
 * extra load tyre of index 116 carries that at 290 (950 x 1.10 / 1250)^(1/0.8) = 231.8 kPa. */
START_TEST(half_the_axle_rating_is_a_floor)
{
    stand_on(&option, "265/70R16 116T XL");
    specification.vehicle.ratings.rear_kg = 1900;
    struct axle_pressures rear = pressures_of(&option, AXLE_REAR);
    ck_assert_int_eq(rear.reason, REASON_RATED);
    assert_close(rear.demands.rated_Pa, 231.8e3, 0.1e3, "by hand");
    assert_close(rear.recommended_Pa, 235e3, 1e-6, "up to 5 kPa");
    option.axle[AXLE_REAR].dual = 1; /* a quarter on each of four, and no dual index is marked */
    ck_assert(!known(pressures_of(&option, AXLE_REAR).recommended_Pa));
    assert_close(pressures_of(&option, AXLE_REAR).demand_rated_kg, 475, 1e-9, "a quarter");
    option.axle[AXLE_REAR].dual = 0;
    specification.vehicle.ratings.rear_kg = 2400; /* 1320 > 1250 kg */
    ck_assert_int_eq(pressures_of(&option, AXLE_REAR).reason, REASON_REFUSED);
    specification.vehicle.ratings.rear_kg = UNKNOWN; /* it is not counted, and that is said */
    ck_assert_int_eq(pressures_of(&option, AXLE_REAR).reason, REASON_PLACARD);
}
END_TEST

/* 450 kPa are the pressure of a commercial tyre and say nothing of a passenger tyre that replaces
 * it, whose highest is 350: what it replaces and half the axle rating decide. C type by 0.8: 1030
 * kg at 475 kPa are 986 at 450; an extra load tyre of index 112, 1120 kg, carries them undivided at
 * 290 (986 / 1120)^(1/0.8) = 247.4 kPa. */
START_TEST(placard_is_a_floor_for_its_own_group)
{
    stand_on(&fitted, "215/65R16C 109/107T");
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        fitted.axle[axle].data_book.max_load_kg = 1030;
        fitted.axle[axle].data_book.at_pressure_Pa = 475e3;
    }
    specification.vehicle.kind = VEHICLE_PASSENGER_CAR;
    specification.tyres.fitted.placard_Pa = (struct axle_pair){310e3, 450e3};
    stand_on(&option, "255/60R18 112H XL");
    struct axle_pressures rear = pressures_of(&option, AXLE_REAR);
    ck_assert_int_eq(rear.reason, REASON_REPLACED);
    assert_close(rear.demands.replaced_Pa, 247.4e3, 0.2e3, "by hand");
    assert_close(rear.recommended_Pa, 250e3, 1e-6, "below the placard of another group");
    stand_on(&option, "235/65R16C 115/113R");
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        option.axle[axle].data_book.max_load_kg = 1215;
        option.axle[axle].data_book.at_pressure_Pa = 475e3;
    }
    rear = pressures_of(&option, AXLE_REAR);
    ck_assert_int_eq(rear.reason, REASON_PLACARD);
    assert_close(rear.recommended_Pa, 450e3, 1e-6, "never below that of its own");
}
END_TEST

/* Light-truck tyres of range E are moulded with 450 or 550 kPa (published rows of both): what is
 * needed between them, the sidewall allows or not. LI 120, 1380 kg at 550 (TRA maximum 3042 lb):
 * 1250 kg take 550 (1250 / 1380)^(1/0.7) = 477.6 kPa. */
START_TEST(above_what_is_sure_the_sidewall_is_read)
{
    stand_on(&option, "LT245/75R16 120/116S E");
    specification.vehicle.ratings.rear_kg = 2500;
    struct axle_pressures rear = pressures_of(&option, AXLE_REAR);
    ck_assert_int_eq(rear.reason, REASON_UNREAD);
    assert_close(rear.needed_Pa, 477.6e3, 0.3e3, "by hand");
    ck_assert(!known(rear.recommended_Pa));
    ck_assert(rear.capacity_sure_kg < 1250 && rear.capacity_highest_kg > 1250);
    option.axle[AXLE_REAR].data_book.max_pressure_Pa = 550e3;
    rear = pressures_of(&option, AXLE_REAR);
    ck_assert_int_eq(rear.reason, REASON_RATED);
    assert_close(rear.recommended_Pa, 480e3, 1e-6, "as moulded");
    option.axle[AXLE_REAR].data_book.max_pressure_Pa = 450e3;
    ck_assert_int_eq(pressures_of(&option, AXLE_REAR).reason, REASON_REFUSED);
    specification.vehicle.ratings.rear_kg = 2900; /* above the load index: no sidewall helps */
    option.axle[AXLE_REAR].data_book.max_pressure_Pa = UNKNOWN;
    ck_assert_int_eq(pressures_of(&option, AXLE_REAR).reason, REASON_REFUSED);
    /* A passenger tyre up to 350 kPa (49 CFR 571.139): the 290 of its class are sure, and not the
     * 30 that ETRTO adds at 210 km/h to the 282 that 1110 kg of 1136 take; of a P-metric one 240,
     * and a placard of 300 proves 300. */
    stand_on(&option, "265/70R16 116H XL");
    specification.vehicle.top_speed_mps = 210 / 3.6;
    specification.vehicle.ratings.rear_kg = 2220;
    ck_assert_int_eq(pressures_of(&option, AXLE_REAR).reason, REASON_UNREAD);
    option.axle[AXLE_REAR].data_book.max_pressure_Pa = 340e3;
    assert_close(pressures_of(&option, AXLE_REAR).recommended_Pa, 315e3, 1e-6, "282 and 30 kPa");
    stand_on(&option, "P265/70R16 112H");
    specification.vehicle.ratings.rear_kg = 2000;
    specification.tyres.fitted.placard_Pa.rear = 300e3;
    assert_close(pressures_of(&option, AXLE_REAR).recommended_Pa, 300e3, 1e-6, "the placard");
    stand_on(&fitted, "LT245/75R16 120/116S E"); /* a placard of other tyres proves nothing */
    specification.vehicle.unladen_kg.rear = 1800;
    struct ceilings ceilings = pressures_of(&option, AXLE_REAR).ceilings;
    assert_close(ceilings.sure_Pa, 240e3, 1e-6, "its class");
    assert_close(ceilings.highest_Pa, 350e3, 1e-6, "49 CFR 571.139");
}
END_TEST

/* The exact value is judged, and what rounding up would put above a ceiling is told more finely. */
START_TEST(rounding_up_never_refuses)
{
    stand_on(&option, "265/70R16 116T XL");
    specification.vehicle.ratings.rear_kg = 1900; /* 231.8 kPa, see above */
    option.axle[AXLE_REAR].wheel.max_pressure_Pa = 233e3;
    assert_close(pressures_of(&option, AXLE_REAR).recommended_Pa, 232e3, 1e-6, "to 1 kPa");
    option.axle[AXLE_REAR].wheel.max_pressure_Pa = 231e3;
    ck_assert_int_eq(pressures_of(&option, AXLE_REAR).reason, REASON_REFUSED);
    const double psi = 6894.757293168361;
    assert_close(pressure_to_set_Pa(440.9e3, 441.3e3, PRESSURE_METRIC), 441e3, 1e-6, "to 1 kPa");
    assert_close(pressure_to_set_Pa(441.02e3, 441.3e3, PRESSURE_METRIC), 441.1e3, 1e-6, "0.1");
    assert_close(pressure_to_set_Pa(64.2 * psi, 450e3, PRESSURE_US), 65 * psi, 1e-6, "to 1 psi");
    assert_close(pressure_to_set_Pa(65.11 * psi, 450e3, PRESSURE_US), 65.2 * psi, 1e-6, "0.1 psi");
}
END_TEST

/* Standards print 35 psi and 240 kPa, 50 and 350, 65 and 450, 80 and 550 as one step each, and in
 * tables of the Tire and Rim Association a tyre carries the same at either. A ceiling reaches to
 * the end of its step; what is told is rounded up from the exact need. */
START_TEST(nominal_pair_is_one_step)
{
    const double psi = 6894.757293168361;
    ck_assert(!is_above_ceiling(80 * psi, 550e3) && !is_above_ceiling(350e3, 50 * psi));
    ck_assert(!is_above_ceiling(350e3, 345e3)); /* 50 psi, written otherwise */
    ck_assert(is_above_ceiling(81 * psi, 550e3) && is_above_ceiling(351e3, 50 * psi));
    ck_assert(is_above_ceiling(240.005e3, 239.9e3)); /* in no pair */
    const struct {
        double need_Pa, ceiling_Pa, metric_kPa, us_psi;
    } told[] = {
        {240.005e3, 240e3, 241, 35}, /* rounded up, and not the 240 that are too little */
        {35 * psi, 240e3, 240, 35},  /* which even 241.4 kPa would pass */
        {80 * psi, 550e3, 550, 80},   {550e3, 80 * psi, 550, 80},
        {447.9e3, 65 * psi, 450, 65}, {344e3, 50 * psi, 345, 50},
    };
    for (size_t i = 0; i < LENGTH_OF(told); i++) {
        double need_Pa = told[i].need_Pa, ceiling_Pa = told[i].ceiling_Pa;
        ck_assert(!is_above_ceiling(need_Pa, ceiling_Pa));
        assert_close(pressure_to_set_Pa(need_Pa, ceiling_Pa, PRESSURE_METRIC),
                     told[i].metric_kPa * 1e3, 1e-3, "in kPa");
        assert_close(pressure_to_set_Pa(need_Pa, ceiling_Pa, PRESSURE_US), told[i].us_psi * psi,
                     1e-3, "in psi");
    }
}
END_TEST

/* Of a tyre that must carry all that it can, the reference pressure as each unit prints it: range C
 * 350 kPa, 50 psi (and not the 50.8 that 350 kPa are); range E 550 and 80, whichever is moulded. */
START_TEST(full_load_is_told_as_tables_print_it)
{
    static const struct {
        const char *size;
        double moulded_kPa, kPa, psi;
    } tyres[] = {{"LT255/75R17 111/108Q C", 350, 350, 50},
                 {"LT255/75R17 111/108Q C", 344.7378647, 345, 50},
                 {"LT245/75R16 120/116Q E", 550, 550, 80},
                 {"LT245/75R16 120/116Q E", 551.5805835, 550, 80}};
    for (size_t i = 0; i < LENGTH_OF(tyres); i++) {
        struct tyre tyre = tyre_of(tyres[i].size);
        tyre.data_book.max_load_kg = 1000;
        tyre.data_book.at_pressure_Pa = tyres[i].moulded_kPa * 1e3;
        struct tyre_rating rating;
        tyre_rate(&tyre, CHOICE_NONE, UNKNOWN, &rating);
        const struct ceilings ceilings = ceilings_of(&rating, &tyre.wheel, UNKNOWN);
        const struct pressure_demands demands = {.replaced_Pa = 0,
                                                 .built_Pa =
                                                     pressure_for_load_Pa(&rating, false, 999.9),
                                                 .rated_Pa = UNKNOWN,
                                                 .placard_Pa = UNKNOWN};
        for (int us = 0; us < 2; us++) {
            const struct pressure_choice choice =
                choose_pressure(&demands, &rating, &ceilings, us ? PRESSURE_US : PRESSURE_METRIC);
            assert_close(unit_from_si(us ? UNIT_PSI : UNIT_KPA, choice.recommended_Pa),
                         us ? tyres[i].psi : tyres[i].kPa, 1e-5, tyres[i].size);
            assert_close(capacity_kg(&rating, false, choice.recommended_Pa), 1000, 1e-9, "all");
        }
    }
}
END_TEST

/* 49 CFR 571.110: the vehicle's maker had to fit wheels for half the axle rating. Of a wheel that
 * is not the fitted one nobody knows that. */
START_TEST(fitted_wheel_is_taken_for_half_the_axle_rating)
{
    static const struct given its_wheel, another;
    specification.vehicle.ratings.rear_kg = 1900;
    stand_on(&option, "P255/70R16 109S");
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        fitted.axle[axle].wheel.given = option.axle[axle].wheel.given = &its_wheel;
    struct axle_pressures rear = pressures_of(&option, AXLE_REAR);
    assert_close(rear.wheel_load_kg, 950, 1e-9, "half of 1900");
    assert_close(rear.wheel_pressure_Pa, 230e3, 1e-9, "the placard");
    ck_assert(rear.wheel_assumed);
    option.axle[AXLE_REAR].wheel.given = &another;
    rear = pressures_of(&option, AXLE_REAR);
    ck_assert(!known(rear.wheel_load_kg) && !known(rear.wheel_pressure_Pa) && !rear.wheel_assumed);
    stand_on(&option, "265/65R17 112S"); /* no wheel is named, and it cannot be the same */
    ck_assert(!known(pressures_of(&option, AXLE_REAR).wheel_load_kg));
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
    assert_close(fast.demands.replaced_Pa - slow.demands.replaced_Pa, 30e3, 1e-6,
                 "P-metric replaced");
    assert_close(fast.demands.built_Pa - slow.demands.built_Pa, 30e3, 1e-6, "as built");
    stand_on(&fitted, "255/70R16 111H");
    slow = pressures_of(&option, AXLE_FRONT);
    specification.vehicle.top_speed_mps = 210 / 3.6;
    fast = pressures_of(&option, AXLE_FRONT);
    assert_close(fast.demands.replaced_Pa, slow.demands.replaced_Pa, 1e-6, "like for like");
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
    int refused = 0, given = 0, unread = 0;
    for (int run = 0; run < runs; run++) {
        stand_on(&fitted, candidates[random_whole(&state, 0, (int)LENGTH_OF(candidates) - 1)]);
        stand_on(&option, candidates[random_whole(&state, 0, (int)LENGTH_OF(candidates) - 1)]);
        specification.vehicle.unladen_kg.front = random_between(&state, 400, 2600);
        specification.vehicle.top_speed_mps = random_between(&state, 25, 44);
        specification.vehicle.kind = random_whole(&state, 0, 1);
        specification.vehicle.ratings.front_kg = random_between(&state, 800, 2600);
        specification.tyres.fitted.placard_Pa.front = random_between(&state, 1.5e5, 3.4e5);
        option.axle[AXLE_FRONT].wheel.max_pressure_Pa = random_between(&state, 2.5e5, 6e5);
        struct axle_pressures front = pressures_of(&option, AXLE_FRONT);
        if (isinf(front.recommended_Pa)) {
            ck_assert_int_eq(front.reason, REASON_REFUSED);
            ck_assert(isinf(front.needed_Pa) || front.needed_Pa > front.ceilings.highest_Pa);
            refused++;
            continue;
        }
        if (!known(front.recommended_Pa)) {
            ck_assert_int_eq(front.reason, REASON_UNREAD);
            ck_assert(front.needed_Pa > front.ceilings.sure_Pa);
            ck_assert(!is_above_ceiling(front.needed_Pa, front.ceilings.highest_Pa));
            unread++;
            continue;
        }
        given++;
        ck_assert(front.recommended_Pa >= front.floor_Pa);
        ck_assert(!is_above_ceiling(front.recommended_Pa, front.ceilings.sure_Pa));
        ck_assert(front.capacity_at_recommended_kg >= front.demand_built_kg * (1 - 1e-9));
        ck_assert(front.capacity_at_recommended_kg >= front.demand_replaced_kg * (1 - 1e-9));
        ck_assert(front.capacity_at_recommended_kg >= front.demand_rated_kg * (1 - 1e-9));
        if (front.needed_Pa + 5e3 < front.ceilings.sure_Pa)
            assert_close(fmod(front.recommended_Pa + 1, 5e3), 1, 1e-3, "whole steps of 5 kPa");
        struct tyre_rating before;
        tyre_rate(&fitted.axle[AXLE_FRONT], CHOICE_NONE, UNKNOWN, &before);
        if (tyre_group(before.class) == tyre_group(front.rating.class))
            ck_assert(front.recommended_Pa >= front.placard_Pa - 1e-6);
    }
    ck_assert(refused > runs / 20 && given > runs / 20 && unread > runs / 50); /* all were tried */
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
        ck_assert(after.demands.built_Pa >= before.demands.built_Pa);
        ck_assert(after.needed_Pa >= before.needed_Pa);
        ck_assert(!(after.recommended_Pa < before.recommended_Pa));
        ck_assert(known(before.recommended_Pa) || !isfinite(after.recommended_Pa));
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

/* At the largest extra axle load the heavier tyre bears what it may. */
START_TEST(axle_left_is_the_rest)
{
    stand_on(&option, "LT245/75R16 120/116S E");
    struct axle_loads loads;
    axle_loads_in_state(&specification, NULL, &fitted, &option, &loads);
    double left = axle_left_kg(&specification, &loads, AXLE_FRONT, false, 900);
    assert_close((1300 + left) / 2, 900, 1e-9, "by the definition");
    left = axle_left_kg(&specification, &loads, AXLE_FRONT, true, 450);
    assert_close((1300 + left) / 4, 450, 1e-9, "on twins");
}
END_TEST

Suite *load_suite(void)
{
    Suite *suite = suite_create("load");
    TCase *published = tcase_create("published");
    tcase_add_checked_fixture(published, set_up, NULL);
    tcase_add_test(published, candidate_and_fitted_are_both_divided);
    tcase_add_test(published, half_the_axle_rating_is_a_floor);
    tcase_add_test(published, tyre_bears_its_capacity_less_the_reserve);
    tcase_add_test(published, placard_is_a_floor_for_its_own_group);
    tcase_add_test(published, above_what_is_sure_the_sidewall_is_read);
    tcase_add_test(published, rounding_up_never_refuses);
    tcase_add_test(published, nominal_pair_is_one_step);
    tcase_add_test(published, full_load_is_told_as_tables_print_it);
    tcase_add_test(published, fitted_wheel_is_taken_for_half_the_axle_rating);
    tcase_add_test(published, light_truck_tyre_at_the_old_placard_carries_less);
    tcase_add_test(published, speed_counts_once);
    tcase_add_test(published, twins_share_a_side);
    suite_add_tcase(suite, published);
    TCase *load = tcase_create("load");
    tcase_add_checked_fixture(load, set_up, NULL);
    tcase_add_test(load, recommended_pressure_carries_and_is_allowed);
    tcase_add_test(load, more_load_needs_no_less);
    tcase_add_test(load, unknown_and_impossible);
    tcase_add_test(load, axle_left_is_the_rest);
    suite_add_tcase(suite, load);
    return suite;
}
