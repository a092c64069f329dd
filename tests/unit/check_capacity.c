/* What a tyre carries at a pressure, against published load tables; and the inverse. */
#include <string.h>

#include "base/units.h"
#include "compute/capacity.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

#define POUND_KG 0.45359237

static struct tyre_rating rating_of(const struct tyre *tyre)
{
    struct tyre_rating rating;
    tyre_rate(tyre, CHOICE_NONE, UNKNOWN, &rating);
    return rating;
}

static double psi(double value)
{
    return unit_to_si(UNIT_PSI, value);
}

/* Standard load passenger tyres: kg at 1.5, 1.6 .. 2.5 bar by load index. Reimpell, in Automotive
 * Engineering: Powertrain, Chassis System and Vehicle Body (Elsevier), ch. 10.1 fig. 10.1-15,
 * quoting ETRTO. The table rounds to 5 kg: within 2.51 kg. */
enum { ETRTO_COLUMNS = 11 };
static const struct {
    int load_index;
    double kg[ETRTO_COLUMNS];
} etrto[] = {
    {70, {225, 235, 245, 260, 270, 280, 290, 300, 315, 325, 335}},
    {71, {230, 240, 255, 265, 275, 290, 300, 310, 325, 335, 345}},
    {73, {245, 255, 270, 280, 295, 305, 315, 330, 340, 355, 365}},
    {74, {250, 260, 275, 290, 300, 315, 325, 340, 350, 365, 375}},
    {76, {265, 280, 295, 310, 320, 335, 350, 360, 375, 385, 400}},
    {77, {275, 290, 305, 315, 330, 345, 360, 370, 385, 400, 412}},
    {79, {290, 305, 320, 335, 350, 365, 380, 395, 410, 425, 437}},
    {80, {300, 315, 330, 345, 360, 375, 390, 405, 420, 435, 450}},
    {82, {315, 330, 350, 365, 380, 395, 415, 430, 445, 460, 475}},
    {83, {325, 340, 360, 375, 390, 405, 425, 440, 455, 470, 487}},
};

START_TEST(standard_load_follows_the_etrto_table)
{
    char text[40], what[40];
    snprintf(text, sizeof text, "165/65R14 %dT", etrto[_i].load_index);
    struct tyre tyre = tyre_of(text);
    struct tyre_rating rating = rating_of(&tyre);
    for (int column = 0; column < ETRTO_COLUMNS; column++) {
        double kPa = 150 + 10 * column;
        snprintf(what, sizeof what, "load index %d at %g kPa", etrto[_i].load_index, kPa);
        assert_close(capacity_kg(&rating, false, kPa * 1e3), etrto[_i].kg[column], 2.51, what);
    }
}
END_TEST

#define MOTOR_HOME "tyre maker's load table in a motor-home owner's manual, 1990"
#define RV_GUIDE "Michelin RV load and inflation guide"
#define TRUCK_TABLE "El Trailero, truck load table, row 295/75R22.5"

/* Rows below the maximum, from the maximum as moulded. A pair is two tyres together; tolerance
 * of the load in its own unit: LT single 0.75 %, pair 1.1 %; C 3.2 kg a tyre, 8 kg a pair;
 * truck 0.2 %; P-metric 0.5 % (rows rounded to whole pounds from a kPa formula). */
struct table_row {
    const char *size;
    double max_load, max_dual, max_pressure; /* as moulded, in the row's units */
    int tyres;                               /* 1 single, 2 a pair of a dual fitment */
    double pressure, load, tolerance;
    enum unit_id load_unit, pressure_unit;
    const char *source;
};

#define LT_ROW(tyres, at, lb)                                                                      \
    {                                                                                              \
        "LT235/85R16 120/116Q E", 3042, 2778, 80, tyres, at, lb,                                   \
            (lb) * ((tyres) == 1 ? 0.0075 : 0.011), UNIT_LB, UNIT_PSI, MOTOR_HOME                  \
    }
#define C_ROW(tyres, at, kg)                                                                       \
    {                                                                                              \
        "205/65R15C", 850, 800, 375, tyres, at, kg, (tyres) == 1 ? 3.2 : 8, UNIT_KG, UNIT_KPA,     \
            RV_GUIDE                                                                               \
    }
#define P_ROW(mark, max, max_kPa, at, lb)                                                          \
    {                                                                                              \
        "P235/75R15" mark, max, NAN, max_kPa, 1, at, lb, (lb)*0.005, UNIT_LB, UNIT_KPA,            \
            "TRA formula as published by a committee member, 1753, 2028, 2183 lb"                  \
    }

static const struct table_row rows[] = {
    LT_ROW(1, 35, 1700),
    LT_ROW(2, 35, 3090),
    LT_ROW(1, 45, 2030),
    LT_ROW(2, 45, 3690),
    LT_ROW(1, 50, 2205),
    LT_ROW(2, 50, 4015),
    LT_ROW(1, 60, 2485),
    LT_ROW(2, 60, 4520),
    LT_ROW(1, 65, 2623),
    LT_ROW(2, 65, 4765),
    LT_ROW(1, 70, 2765),
    LT_ROW(2, 70, 5030),
    LT_ROW(1, 80, 3042),
    LT_ROW(2, 80, 5556),
    C_ROW(1, 210, 535),
    C_ROW(2, 210, 1005),
    C_ROW(1, 280, 675),
    C_ROW(2, 280, 1265),
    C_ROW(1, 340, 785),
    C_ROW(2, 340, 1480),
    C_ROW(1, 375, 850),
    C_ROW(2, 375, 1600),
    /* Of all heavy tyres the exponent of the European tables is taken, which gives 0.5 % less. */
    {"295/75R22.5", 6175, NAN, 110, 1, 105, 5980, 5980 * 0.0055, UNIT_LB, UNIT_PSI, TRUCK_TABLE},
    {"295/75R22.5", 6175, NAN, 110, 1, 110, 6175, 6175 * 0.002, UNIT_LB, UNIT_PSI, TRUCK_TABLE},
    P_ROW(" SL", 2028, 240, 180, 1753),
    P_ROW(" SL", 2028, 240, 240, 2028),
    P_ROW(" XL", 2183, 280, 180, 1753),
    P_ROW(" XL", 2183, 280, 240, 2028),
    P_ROW(" XL", 2183, 280, 280, 2183),
};

START_TEST(load_follows_the_published_row)
{
    const struct table_row *row = &rows[_i];
    struct tyre tyre = tyre_of(row->size);
    tyre.data_book.max_load_kg = unit_to_si(row->load_unit, row->max_load);
    tyre.data_book.max_load_dual_kg = unit_to_si(row->load_unit, row->max_dual);
    tyre.data_book.at_pressure_Pa = unit_to_si(row->pressure_unit, row->max_pressure);
    struct tyre_rating rating = rating_of(&tyre);
    double one =
        capacity_kg(&rating, row->tyres == 2, unit_to_si(row->pressure_unit, row->pressure));
    char what[160];
    snprintf(what, sizeof what, "%s, %d tyre(s) at %g (%s)", row->size, row->tyres, row->pressure,
             row->source);
    assert_close(unit_from_si(row->load_unit, one * row->tyres), row->load, row->tolerance, what);
    ck_assert(rating.moulded && !rating.ceiling_assumed);
}
END_TEST

#define PLY_TABLE "trade ply-rating table, maximum single loads"
#define JOURNAL "trade journal Tire Review, 'Watch That Load Capacity'"
#define SHEET "Toyo light-truck size and specification sheet"

/* Published maxima in lb at psi. */
static const struct {
    const char *size;
    double lb, dual_lb, psi;
    const char *source;
} maxima[] = {
    {"295/75R22.5 G", 6175, NAN, 110, PLY_TABLE},
    {"285/75R24.5 G", 6175, NAN, 110, PLY_TABLE},
    {"11R22.5 G", 6175, NAN, 105, PLY_TABLE},
    {"11R24.5 G", 6610, NAN, 105, PLY_TABLE},
    {"295/75R22.5 H", 6610, NAN, 120, PLY_TABLE},
    {"285/75R24.5 H", 6780, NAN, 120, PLY_TABLE},
    {"11R22.5 H", 6610, NAN, 120, PLY_TABLE},
    {"11R24.5 H", 7160, NAN, 120, PLY_TABLE},
    {"P235/75R15 105S SL", 2028, NAN, 35, JOURNAL},
    {"P235/75R15 108S XL", 2183, NAN, 41, JOURNAL},
    {"LT255/70R16 C", 2205, NAN, 50, JOURNAL},
    {"LT265/75R16 D", 3000, NAN, 65, JOURNAL},
    {"LT245/75R16 E", 3042, NAN, 80, JOURNAL},
    {"LT235/85R16 120/116Q E", 3042, 2778, 80, SHEET},
    {"LT245/75R16 120/116Q E", 3042, 2778, 80, SHEET},
    {"LT265/75R16 123/120Q E", 3415, 3085, 80, SHEET},
    {"LT305/70R16 124/121Q E", 3525, 3195, 65, SHEET},
    {"LT255/75R17 111/108Q C", 2405, 2205, 50, SHEET},
};

/* As moulded it is carried from its pressure on, never more, and less below. */
START_TEST(moulded_maximum_is_carried)
{
    const char *name = maxima[_i].size;
    struct tyre tyre = tyre_of(name);
    tyre.data_book.max_load_kg = maxima[_i].lb * POUND_KG;
    tyre.data_book.max_load_dual_kg = maxima[_i].dual_lb * POUND_KG;
    tyre.data_book.at_pressure_Pa = psi(maxima[_i].psi);
    struct tyre_rating rating = rating_of(&tyre);
    for (int dual = 0; dual < 2; dual++) {
        double lb = dual ? maxima[_i].dual_lb : maxima[_i].lb;
        if (!known(lb))
            continue;
        assert_relative(capacity_kg(&rating, dual, psi(maxima[_i].psi)) / POUND_KG, lb, 1e-12,
                        name);
        assert_relative(capacity_kg(&rating, dual, psi(maxima[_i].psi + 40)) / POUND_KG, lb, 1e-12,
                        name);
        ck_assert(capacity_kg(&rating, dual, psi(maxima[_i].psi - 1)) / POUND_KG < lb);
    }
}
END_TEST

/* Load index 116 of the twin is 1250 kg, 120 of the single 1400 kg (Directive 92/23/EEC Annex II).
 * A single that carries less by its data book leaves the twin no more; one that carries more, no
 * less. */
START_TEST(twin_never_carries_more_than_the_moulded_single)
{
    struct tyre tyre = tyre_of("LT245/75R16 120/116S");
    tyre.data_book.max_load_kg = 1200;
    struct tyre_rating rating = rating_of(&tyre);
    assert_close(rating.load_dual_kg, 1200, 1e-9, "below the index of twins");
    tyre.data_book.max_load_kg = 1380;
    rating = rating_of(&tyre);
    assert_close(rating.load_dual_kg, 1250, 1e-9, "above the index of twins");
}
END_TEST

/* Without the moulded figures: load index and class tables agree with the published maximum, and
 * never promise more at its pressure (pounds and kilograms are rounded apart: 1.5 %). */
START_TEST(tables_are_not_above_the_published_maximum)
{
    const char *name = maxima[_i].size;
    struct tyre tyre = tyre_of(name);
    if (tyre.size.service.load_index == LOAD_INDEX_NONE)
        return;
    struct tyre_rating rating = rating_of(&tyre);
    for (int dual = 0; dual < 2; dual++) {
        double kg = (dual ? maxima[_i].dual_lb : maxima[_i].lb) * POUND_KG;
        if (!known(kg))
            continue;
        assert_relative(capacity_max_kg(&rating, dual), kg, 0.015, name);
        ck_assert_msg(capacity_kg(&rating, dual, psi(maxima[_i].psi)) <= kg * 1.015, "%s", name);
    }
}
END_TEST

/* Classes, their reference pressures and floors: kPa and psi are nominal pairs of the standards. */
static const struct {
    const char *size, *class;
    double exponent, kPa, psi, floor_kPa;
    double sure_kPa;    /* what every tyre of its kind may have; 0: nothing tells */
    double ceiling_kPa; /* what none may pass; 0: the reference */
} classes[] = {
    /* 350 kPa: the highest of those that 49 CFR 571.139 lets be moulded (from memory). */
    {"205/55R16 91V", "metric_standard", 0.8, 250, 36, 150, 250, 350},
    {"205/55R16 94V XL", "metric_extra_load", 0.8, 290, 42, 150, 290, 350},
    {"HL245/40R20 102Y", "metric_high_load", 0.8, 290, 42, 150, 290, 350},
    {"P255/70R16 109S", "p_metric_standard", 0.5, 240, 35, 140, 240, 350},
    {"P235/75R15 108S XL", "p_metric_extra_load", 0.5, 280, 41, 140, 280, 350},
    /* Of both pressures in use for a load range the lower; and never below the floor. */
    {"LT255/75R17 111/108Q C", "lt_metric", 0.7, 350, 50, 250, 250, 0},
    {"LT265/75R16 119/116Q D", "lt_metric", 0.7, 450, 65, 250, 350, 0},
    {"LT245/75R16 120/116Q E", "lt_metric", 0.7, 550, 80, 250, 450, 0},
    {"LT275/70R18 125/122R F", "lt_metric", 0.7, 650, 95, 250, 550, 0},
    {"31x10.50R15LT 109R C", "flotation", 0.7, 350, 50, 180, 240, 0} /* floor from memory */,
    {"7.50R16LT 112/107N D", "numeric_lt", 0.7, 450, 65, 250, 350, 0} /* floor from memory */,
    {"ST225/75R15 E", "trailer", 0.7, 550, 80, 0, 550, 0},
    {"T125/70D16 96M", "temporary", NAN, 420, 60, 0, 0, 0},
};

START_TEST(class_has_its_figures)
{
    const char *name = classes[_i].size;
    struct tyre tyre = tyre_of(name);
    struct tyre_rating rating = rating_of(&tyre);
    ck_assert_str_eq(inflation_rows[rating.class].class, classes[_i].class);
    if (known(classes[_i].exponent))
        assert_close(rating.exponent, classes[_i].exponent, 1e-12, name);
    assert_close(rating.reference_Pa, classes[_i].kPa * 1e3, 1e-6, name);
    for (int us = 0; us < 2 && known(rating.load_kg);
         us++) { /* either of the pair carries all, and is told as the other */
        double nominal = us ? psi(classes[_i].psi) : classes[_i].kPa * 1e3;
        assert_close(nominal_told_Pa(nominal, true), psi(classes[_i].psi), 1e-6, name);
        assert_close(nominal_told_Pa(nominal, false), classes[_i].kPa * 1e3, 1e-6, name);
        assert_relative(capacity_kg(&rating, false, nominal), capacity_max_kg(&rating, false),
                        1e-12, name);
    }
    assert_close(rating.floor_Pa[PRESSURE_METRIC], classes[_i].floor_kPa * 1e3, 1e-6, name);
    const struct ceilings ceilings = ceilings_of(&rating, &tyre.wheel, UNKNOWN);
    if (!(classes[_i].sure_kPa > 0)) {
        ck_assert(isinf(ceilings.sure_Pa) && isinf(ceilings.highest_Pa));
        return;
    }
    double highest_kPa = classes[_i].ceiling_kPa > 0 ? classes[_i].ceiling_kPa : classes[_i].kPa;
    assert_close(ceilings.sure_Pa, classes[_i].sure_kPa * 1e3, 1e-6, name);
    assert_close(ceilings.highest_Pa, highest_kPa * 1e3, 1e-6, name);
}
END_TEST

/* 49 CFR 571.110 S4.2.2.2: a passenger tyre on a light truck counts for its rating / 1.10. */
START_TEST(passenger_tyre_on_light_truck_is_divided)
{
    static const struct {
        const char *size;
        double divisor;
    } tyres[] = {
        {"P255/70R16 109S", 1.10},   {"265/65R17 112T", 1.10},      {"165R13 82T", 1.10},
        {"HL245/40R20 102Y", 1.10},  {"LT255/75R16 111/108Q C", 1}, {"215/65R16C 109/107T", 1},
        {"31x10.50R15LT 109R C", 1}, {"315/70R22.5 154/150L", 1},   {"7.50R16LT 112/107N D", 1},
        {"365/80R20 152K", 1},       {"7.50R15 135/133L", 1},
    };
    for (size_t i = 0; i < LENGTH_OF(tyres); i++) {
        struct tyre tyre = tyre_of(tyres[i].size);
        struct tyre_rating truck, car;
        tyre_rate(&tyre, VEHICLE_LIGHT_TRUCK, UNKNOWN, &truck);
        tyre_rate(&tyre, VEHICLE_PASSENGER_CAR, UNKNOWN, &car);
        assert_relative(capacity_max_kg(&car, false) / capacity_max_kg(&truck, false),
                        tyres[i].divisor, 1e-12, tyres[i].size);
    }
}
END_TEST

/* UN R54 has load indices above 121 in its upper group, of trucks: a size that leaves the rest out
 * is no passenger tyre. Nor is one with a load index for twins (UN R54, from memory), a load range
 * or many plies (common practice, no source). Letters decide before the index. */
START_TEST(tyre_for_loads_is_known_by_its_marks)
{
    static const struct {
        enum inflation_key class;
        const char *sizes[5];
    } marked[] = {
        {INFLATION_HEAVY, {"365/80R20 152K", "7.50R15 135/133L", "205/75R17.5 124/122M"}},
        {INFLATION_NUMERIC_LT, {"7.50R16 112/107N D"}},
        {INFLATION_LT_METRIC, {"LT265/75R16 123/120Q E"}},
        {INFLATION_METRIC_STANDARD, {"265/70R17 121S", "265/70R17 115S 4PR"}},
        {INFLATION_COMMERCIAL,
         {"225/75R16C 121/120R", "265/70R17 121/118S", "265/70R17 115S LR E",
          "265/70R17 115S 10PR"}},
        {INFLATION_P_METRIC_STANDARD, {"P265/70R17 113S"}},
    };
    for (size_t i = 0; i < LENGTH_OF(marked); i++)
        for (const char *const *size = marked[i].sizes; *size != NULL; size++) {
            struct tyre tyre = tyre_of(*size);
            enum inflation_key class = rating_of(&tyre).class;
            ck_assert_msg(class == marked[i].class, "%s: %s", *size, inflation_rows[class].class);
            ck_assert(is_passenger_tyre(&tyre) == (tyre_group(class) == GROUP_PASSENGER));
        }
}
END_TEST

/* Common practice, no source: where the tables end their last figure stays, since nothing lets a
 * tyre carry more for being driven faster than its symbol. Steps of a table do not hang on the
 * last bit of a conversion: 240 km/h, 66 2/3 m/s. */
START_TEST(faster_never_carries_more)
{
    static const char *const sizes[] = {
        "205/55R16 91V",        "225/45R17 94W",       "225/45R17 94Y",       "255/55ZR18 (109Y)",
        "195/65R15 91H",        "175/80R14 88T",       "205/65R16C 107/105N", "225/75R16CP 118R",
        "LT245/75R16 120/116Q", "315/70R22.5 154/150L"};
    for (size_t i = 0; i < LENGTH_OF(sizes); i++) {
        struct tyre tyre = tyre_of(sizes[i]);
        double before = 1;
        for (double kmh = 60; kmh <= 360; kmh += 5) {
            struct tyre_rating rating, converted;
            tyre_rate(&tyre, CHOICE_NONE, kmh / 3.6, &rating);
            tyre_rate(&tyre, CHOICE_NONE, kmh / 3.6 * (1 + 4e-16), &converted);
            ck_assert_msg(rating.speed_factor <= before, "%s at %g km/h: %g, before %g", sizes[i],
                          kmh, rating.speed_factor, before);
            assert_close(converted.speed_factor, rating.speed_factor, 1e-12, sizes[i]);
            before = rating.speed_factor;
        }
    }
}
END_TEST

/* ETRTO as quoted by Reimpell et al.: V 210 100, 220 97, 230 94, 240 91 %, linear between. */
START_TEST(load_falls_at_high_speed)
{
    static const struct {
        const char *size;
        double kmh, fraction;
    } points[] = {
        {"205/55R16 91V", 180, 1},     {"205/55R16 91V", 210, 1},    {"205/55R16 91V", 220, 0.97},
        {"205/55R16 91V", 225, 0.955}, {"205/55R16 91V", 240, 0.91}, {"225/45R17 94W", 250, 0.95},
        {"225/45R17 94W", 270, 0.85},  {"225/45R17 94Y", 300, 0.85}, {"195/65R15 91H", 210, 1},
    };
    for (size_t i = 0; i < LENGTH_OF(points); i++) {
        struct tyre tyre = tyre_of(points[i].size);
        struct tyre_rating rating;
        tyre_rate(&tyre, CHOICE_NONE, points[i].kmh / 3.6, &rating);
        assert_close(rating.speed_factor, points[i].fraction, 1e-9, points[i].size);
        assert_relative(capacity_max_kg(&rating, false), rating.load_kg * points[i].fraction, 1e-9,
                        points[i].size);
    }
}
END_TEST

/* Properties over all classes, and forms of tyre that a class has more of. */
static const char *const more_sizes[] = {
    "235/65R16C 115/113R",  "225/75R16CP 118R", "185R14C 102/100R",     "33x12.50R17LT 114Q C",
    "7.00R16LT 117/116N D", "6.50-16",          "315/70R22.5 154/150L", "11R22.5 148/145L"};

START_TEST(capacity_rises_and_inverts)
{
    uint64_t state = random_start("capacity_rises_and_inverts");
    for (int run = 0, runs = rounds(30000); run < runs; run++) {
        size_t size =
            (size_t)random_whole(&state, 0, LENGTH_OF(classes) + LENGTH_OF(more_sizes) - 1);
        struct tyre tyre = tyre_of(
            size < LENGTH_OF(classes) ? classes[size].size : more_sizes[size - LENGTH_OF(classes)]);
        tyre.data_book.max_load_kg = random_between(&state, 400, 3000);
        if (size >= LENGTH_OF(classes) || random_whole(&state, 0, 1)) /* of C it alone tells */
            tyre.data_book.at_pressure_Pa = random_between(&state, 2e5, 8e5);
        struct tyre_rating rating = rating_of(&tyre);
        double low = rating.reference_Pa * random_between(&state, 0.2, 1);
        double high = random_between(&state, low, 1.2 * rating.reference_Pa);
        double at_low = capacity_kg(&rating, false, low),
               at_high = capacity_kg(&rating, false, high);
        struct nominal_step step = {rating.reference_Pa, rating.reference_Pa, 0, 0};
        nominal_step_find(rating.reference_Pa, &step);
        if (!known(rating.exponent)) { /* temporary spare: no load but at its one pressure */
            ck_assert(known(at_low) == (low >= step.low_Pa));
            continue;
        }
        ck_assert(at_low <= at_high && at_high <= capacity_max_kg(&rating, false));
        if (low < step.low_Pa) /* from there on it carries all */
            assert_relative(pressure_for_load_Pa(&rating, false, at_low), low, 1e-9,
                            inflation_rows[rating.class].class);
        double above = capacity_max_kg(&rating, false) * random_between(&state, 1.000001, 2);
        ck_assert(isinf(pressure_for_load_Pa(&rating, false, above)));
    }
}
END_TEST

START_TEST(missing_figures_stay_unknown)
{
    struct tyre tyre = tyre_of("LT245/75R16 120/116Q"); /* no load range: no reference */
    struct tyre_rating rating = rating_of(&tyre);
    ck_assert(!known(capacity_kg(&rating, false, 3e5)));
    ck_assert(!known(pressure_for_load_Pa(&rating, false, 1000)));
    tyre = tyre_of("205/55R16"); /* no load index */
    rating = rating_of(&tyre);
    ck_assert(!known(capacity_kg(&rating, false, 3e5)));
    tyre = tyre_of("205/55R16 91V"); /* no dual index */
    rating = rating_of(&tyre);
    ck_assert(!known(capacity_kg(&rating, true, 2e5)));
    ck_assert(rating.standard_load_assumed);
}
END_TEST

/* P-metric tyres of one load index are moulded with 240, 300 or 350 kPa (49 CFR 571.139 S5.5.4,
 * from memory) and carry it at the 240 of their class (formula of the Tire and Rim Association):
 * what is moulded is a ceiling. 2028 and 1753 lb at 240 and 180 kPa are published, for P235/75R15.
 */
START_TEST(moulded_pressure_of_a_passenger_tyre_is_a_ceiling)
{
    struct tyre tyre = tyre_of("P235/75R15 105S");
    tyre.data_book.max_load_kg = unit_to_si(UNIT_LB, 2028);
    tyre.data_book.max_pressure_Pa = 300e3;
    struct tyre_rating rating = rating_of(&tyre);
    struct ceilings ceilings = ceilings_of(&rating, &tyre.wheel, UNKNOWN);
    assert_close(unit_from_si(UNIT_LB, capacity_kg(&rating, false, 180e3)), 1753, 5, "published");
    assert_close(unit_from_si(UNIT_LB, capacity_kg(&rating, false, 240e3)), 2028, 1e-6,
                 "published");
    assert_close(ceilings.sure_Pa, 300e3, 0, "as moulded");
    assert_close(ceilings.highest_Pa, 300e3, 0, "as moulded");
    tyre.data_book.max_pressure_Pa = UNKNOWN;
    tyre.data_book.at_pressure_Pa = 300e3; /* moulded beside the load: no reference either */
    rating = rating_of(&tyre);
    assert_close(rating.reference_Pa, 240e3, 0, "of the class");
    assert_close(ceilings_of(&rating, &tyre.wheel, UNKNOWN).highest_Pa, 300e3, 0, "as moulded");
    tyre.data_book.at_pressure_Pa = psi(35); /* the class's own, in the other unit */
    rating = rating_of(&tyre);
    ceilings = ceilings_of(&rating, &tyre.wheel, 260e3);
    assert_close(ceilings.sure_Pa, 260e3, 0, "a placard of its own group is proof");
    assert_close(ceilings.highest_Pa, 350e3, 0, "49 CFR 571.139, from memory");
    tyre.wheel.max_pressure_Pa = 250e3;
    ceilings = ceilings_of(&rating, &tyre.wheel, 260e3);
    assert_close(ceilings.sure_Pa, 250e3, 0, "the wheel's own rating");
    assert_close(ceilings.highest_Pa, 250e3, 0, "the wheel's own rating");
}
END_TEST

/* The pressure for the top speed comes off a ceiling: ETRTO by Reimpell, 30 kPa at 210 km/h. */
START_TEST(capacity_under_a_ceiling_leaves_room_for_speed)
{
    struct tyre tyre = tyre_of("205/55R16 91V");
    struct tyre_rating rating;
    tyre_rate(&tyre, CHOICE_NONE, 210 / 3.6, &rating);
    assert_close(capacity_under_kg(&rating, false, 250e3), 615 * pow(220.0 / 250, 0.8), 1e-6,
                 "250 less 30 kPa");
    assert_close(capacity_under_kg(&rating, false, 280e3), 615, 1e-6, "enough for both");
    assert_close(capacity_under_kg(&rating, false, INFINITY), 615, 1e-6, "no ceiling");
}
END_TEST

Suite *capacity_suite(void)
{
    Suite *suite = suite_create("capacity");
    TCase *published = tcase_create("published");
    tcase_add_loop_test(published, standard_load_follows_the_etrto_table, 0, (int)LENGTH_OF(etrto));
    tcase_add_loop_test(published, load_follows_the_published_row, 0, (int)LENGTH_OF(rows));
    tcase_add_loop_test(published, moulded_maximum_is_carried, 0, (int)LENGTH_OF(maxima));
    tcase_add_loop_test(published, tables_are_not_above_the_published_maximum, 0,
                        (int)LENGTH_OF(maxima));
    tcase_add_loop_test(published, class_has_its_figures, 0, (int)LENGTH_OF(classes));
    tcase_add_test(published, twin_never_carries_more_than_the_moulded_single);
    tcase_add_test(published, passenger_tyre_on_light_truck_is_divided);
    tcase_add_test(published, tyre_for_loads_is_known_by_its_marks);
    tcase_add_test(published, load_falls_at_high_speed);
    tcase_add_test(published, faster_never_carries_more);
    suite_add_tcase(suite, published);
    TCase *properties = tcase_create("properties");
    tcase_add_test(properties, capacity_rises_and_inverts);
    tcase_add_test(properties, missing_figures_stay_unknown);
    tcase_add_test(properties, moulded_pressure_of_a_passenger_tyre_is_a_ceiling);
    tcase_add_test(properties, capacity_under_a_ceiling_leaves_room_for_speed);
    suite_add_tcase(suite, properties);
    return suite;
}
