#include "base/units.h"

#include "base/nearest.h"

/* Exact: 1 in = 25.4 mm, 1 lb = 0.45359237 kg (international yard and pound agreement, 1959);
 * US gallon 231 in3; imperial gallon 4.54609 L. */
#define INCH 0.0254
#define POUND 0.45359237
#define MILE 1609.344
#define GALLON 3.785411784e-3
#define GALLON_IMPERIAL 4.54609e-3
const struct unit unit_table[UNIT_COUNT] = {
    [UNIT_BARE] = {"", KIND_BARE, 1, "1", 0},
    [UNIT_MM] = {"mm", KIND_LENGTH, 1e-3, "1/1000 m", 0},
    [UNIT_CM] = {"cm", KIND_LENGTH, 1e-2, "1/100 m", 0},
    [UNIT_M] = {"m", KIND_LENGTH, 1, "1 m", 0},
    [UNIT_KM] = {"km", KIND_LENGTH, 1e3, "1000 m", 0},
    [UNIT_IN] = {"in", KIND_LENGTH, INCH, "25.4 mm", 0},
    [UNIT_FT] = {"ft", KIND_LENGTH, 12 * INCH, "12 in", 0},
    [UNIT_MI] = {"mi", KIND_LENGTH, MILE, "5280 ft", 0},
    [UNIT_KG] = {"kg", KIND_MASS, 1, "1 kg", 0},
    [UNIT_G] = {"g", KIND_MASS, 1e-3, "1/1000 kg", 0},
    [UNIT_TONNE] = {"t", KIND_MASS, 1e3, "1000 kg", 0},
    [UNIT_LB] = {"lb", KIND_MASS, POUND, "0.45359237 kg", 0},
    [UNIT_KPA] = {"kPa", KIND_PRESSURE, 1e3, "1000 N/m2", 0},
    [UNIT_BAR] = {"bar", KIND_PRESSURE, 1e5, "100 kPa", 0},
    [UNIT_PSI] = {"psi", KIND_PRESSURE, POUND *GRAVITY_M_S2 / (INCH * INCH),
                  "1 lb * 9.80665 m/s2 / in2", 0},
    [UNIT_KMH] = {"km/h", KIND_SPEED, 1 / 3.6, "1000 m / 3600 s", 0},
    [UNIT_MPH] = {"mph", KIND_SPEED, MILE / 3600, "1 mi / 3600 s", 0},
    [UNIT_MPS] = {"m/s", KIND_SPEED, 1, "1 m/s", 0},
    [UNIT_L] = {"L", KIND_VOLUME, 1e-3, "1/1000 m3", 0},
    [UNIT_GAL] = {"gal", KIND_VOLUME, GALLON, "231 in3 (US)", 0},
    [UNIT_GAL_IMP] = {"gal_imp", KIND_VOLUME, GALLON_IMPERIAL, "4.54609 L", 0},
    [UNIT_M3] = {"m3", KIND_VOLUME, 1, "1 m3", 0},
    [UNIT_NM] = {"Nm", KIND_TORQUE, 1, "1 N m", 0},
    [UNIT_LB_FT] = {"lb-ft", KIND_TORQUE, POUND *GRAVITY_M_S2 * 12 * INCH,
                    "1 lb * 9.80665 m/s2 * ft", 0},
    [UNIT_N] = {"N", KIND_FORCE, 1, "1 N", 0},
    [UNIT_KN] = {"kN", KIND_FORCE, 1e3, "1000 N", 0},
    [UNIT_LBF] = {"lbf", KIND_FORCE, POUND *GRAVITY_M_S2, "1 lb * 9.80665 m/s2", 0},
    [UNIT_N_PER_MM] = {"N/mm", KIND_STIFFNESS, 1e3, "1 N / mm", 0},
    [UNIT_LB_PER_IN] = {"lb/in", KIND_STIFFNESS, POUND *GRAVITY_M_S2 / INCH,
                        "1 lb * 9.80665 m/s2 / in", 0},
    [UNIT_DEG] = {"deg", KIND_ANGLE, PI / 180, "pi/180 rad", 0},
    [UNIT_RAD] = {"rad", KIND_ANGLE, 1, "1 rad", 0},
    [UNIT_PERCENT] = {"%", KIND_FRACTION, 1e-2, "1/100", 0},
    [UNIT_RPM] = {"rpm", KIND_ROTATION, 1.0 / 60, "1 / 60 s", 0},
    [UNIT_L_PER_100KM] = {"L/100km", KIND_CONSUMPTION, 1e-8, "1 L / 100 km", 0},
    [UNIT_MPG] = {"mpg", KIND_CONSUMPTION, GALLON / MILE, "1 mi / US gallon, inverted", 1},
    [UNIT_MPG_IMP] = {"mpg_imp", KIND_CONSUMPTION, GALLON_IMPERIAL / MILE,
                      "1 mi / imperial gallon, inverted", 1},
    [UNIT_M2] = {"m2", KIND_AREA, 1, "1 m2", 0},
    [UNIT_FT2] = {"ft2", KIND_AREA, 144 * INCH *INCH, "144 in2", 0},
    [UNIT_KG_PER_L] = {"kg/L", KIND_DENSITY, 1e3, "1000 kg/m3", 0},
    [UNIT_KG_PER_M3] = {"kg/m3", KIND_DENSITY, 1, "1 kg/m3", 0},
    [UNIT_L_PER_MIN] = {"L/min", KIND_FLOW, 1e-3 / 60, "1 L / 60 s", 0},
    [UNIT_CFM] = {"ft3/min", KIND_FLOW, 1728 * INCH *INCH *INCH / 60, "1728 in3 / 60 s", 0},
    [UNIT_S] = {"s", KIND_TIME, 1, "1 s", 0},
    [UNIT_MIN] = {"min", KIND_TIME, 60, "60 s", 0},
    [UNIT_PER_KM] = {"/km", KIND_PER_LENGTH, 1e-3, "1 / 1000 m", 0},
    [UNIT_PER_MILE] = {"/mi", KIND_PER_LENGTH, 1 / MILE, "1 / 1609.344 m", 0},
    [UNIT_KG_M2] = {"kg-m2", KIND_INERTIA, 1, "1 kg m2", 0},
    [UNIT_LB_FT2] = {"lb-ft2", KIND_INERTIA, POUND * 144 * INCH *INCH, "1 lb ft2", 0},
    [UNIT_M_PER_KM] = {"m/km", KIND_FRACTION, 1e-3, "1 m / 1000 m", 0},
    [UNIT_FT_PER_MILE] = {"ft/mi", KIND_FRACTION, 1.0 / 5280, "1 ft / 5280 ft", 0},
};

static const struct {
    const char *name, *example;
    enum unit_id unit;
} kinds[KIND_COUNT] = {
    [KIND_BARE] = {"a bare number", "3.83", UNIT_BARE},
    [KIND_LENGTH] = {"a length", "2917 mm", UNIT_MM},
    [KIND_MASS] = {"a mass", "62 kg", UNIT_KG},
    [KIND_PRESSURE] = {"a pressure", "240 kPa", UNIT_KPA},
    [KIND_SPEED] = {"a speed", "98 km/h", UNIT_KMH},
    [KIND_VOLUME] = {"a volume", "90 L", UNIT_L},
    [KIND_TORQUE] = {"a torque", "450 Nm", UNIT_NM},
    [KIND_FORCE] = {"a force", "4000 N", UNIT_N},
    [KIND_STIFFNESS] = {"a spring rate", "62 N/mm", UNIT_N_PER_MM},
    [KIND_ANGLE] = {"an angle", "34 deg", UNIT_DEG},
    [KIND_FRACTION] = {"a percentage", "3 %", UNIT_PERCENT},
    [KIND_ROTATION] = {"an engine speed", "2000 rpm", UNIT_RPM},
    [KIND_CONSUMPTION] = {"a fuel consumption", "11 L/100km", UNIT_L_PER_100KM},
    [KIND_AREA] = {"an area", "3.0 m2", UNIT_M2},
    [KIND_DENSITY] = {"a density", "0.835 kg/L", UNIT_KG_PER_L},
    [KIND_FLOW] = {"a flow", "150 L/min", UNIT_L_PER_MIN},
    [KIND_TIME] = {"a time", "60 s", UNIT_S},
    [KIND_PER_LENGTH] = {"a number per distance", "417 /km", UNIT_PER_KM},
    [KIND_INERTIA] = {"a moment of inertia", "1.4 kg-m2", UNIT_KG_M2},
};

enum unit_id unit_find(struct span name)
{
    for (int exact = 1; exact >= 0; exact--)
        for (int unit = UNIT_BARE + 1; unit < UNIT_COUNT; unit++)
            if (exact ? span_is(name, unit_table[unit].name)
                      : span_is_but_for_case(name, unit_table[unit].name))
                return (enum unit_id)unit;
    return UNIT_COUNT;
}

/* Other people's names of a unit, which are nearer to another unit or to none. */
static const struct {
    const char *name;
    enum unit_id unit;
} other_names[] = {
    {"kph", UNIT_KMH},         {"kmph", UNIT_KMH},   {"km/hr", UNIT_KMH},  {"mi/h", UNIT_MPH},
    {"inch", UNIT_IN},         {"inches", UNIT_IN},  {"\"", UNIT_IN},      {"J", UNIT_IN},
    {"JJ", UNIT_IN},           {"feet", UNIT_FT},    {"'", UNIT_FT},       {"lbs", UNIT_LB},
    {"pounds", UNIT_LB},       {"kgs", UNIT_KG},     {"kgf", UNIT_KG},     {"ft-lb", UNIT_LB_FT},
    {"ft-lbs", UNIT_LB_FT},    {"lbft", UNIT_LB_FT}, {"ftlb", UNIT_LB_FT}, {"litre", UNIT_L},
    {"litres", UNIT_L},        {"liters", UNIT_L},   {"ltr", UNIT_L},      {"degrees", UNIT_DEG},
    {"percent", UNIT_PERCENT}, {"r/min", UNIT_RPM},  {"1/min", UNIT_RPM},
};

const char *unit_nearest(struct span name, enum unit_kind kind)
{
    for (size_t i = 0; i < sizeof other_names / sizeof other_names[0]; i++)
        if (unit_table[other_names[i].unit].kind == kind &&
            span_is_but_for_case(name, other_names[i].name))
            return unit_table[other_names[i].unit].name;
    struct nearest nearest = nearest_start(name);
    for (int unit = UNIT_BARE + 1; unit < UNIT_COUNT; unit++)
        if (unit_table[unit].kind == kind)
            nearest_try(&nearest, unit_table[unit].name);
    return nearest_found(&nearest);
}

const char *unit_kind_name(enum unit_kind kind)
{
    return kinds[kind].name;
}

const char *unit_kind_example(enum unit_kind kind)
{
    return kinds[kind].example;
}

enum unit_id unit_of_kind(enum unit_kind kind)
{
    return kinds[kind].unit;
}
