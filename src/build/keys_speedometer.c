/* Keys of the instrument: its readings, its setting, its odometer. */
#include "build/key_rows.h"

const char *const choices_speed_unit[] = {"km/h", "mph", NULL};
const char *const choices_setting_kind[] = {
    "pulses_per_km",    "pulses_per_mile",   "revs_per_km", "revs_per_mile",
    "circumference_mm", "driven_gear_teeth", "constant_k",  NULL};
static const char *const choices_aim[] = {"lowest_lawful", "as_before", NULL};
static const char *const choices_sensor_place[] = {"wheel", "shaft", "cable", NULL};
static const char *const columns_shown_true[] = {"shown", "true", NULL};
static const char *const columns_timed[] = {"distance", "time", "shown", NULL};
static const char *const choices_fit[] = {"scale", "scale_and_offset", NULL};

static const struct key setting[] = {
    {"kind", CHOICE(choices_setting_kind), FIELD(struct setting, kind), .use = USE_SPEEDOMETER,
     .doc = "what number the instrument takes", .example = "pulses_per_km"},
    {"now", QUANTITY(KIND_BARE), FIELD(struct setting, now), RANGE(1, 1e7), .use = USE_SPEEDOMETER,
     .doc = "the number it has now; a new instrument has none", .example = "2548"},
    {"step", QUANTITY(KIND_BARE), FIELD(struct setting, step), RANGE(1e-3, 1e6),
     .use = USE_SPEEDOMETER, .doc = "it goes in steps of", .example = "1"},
    {"min", QUANTITY(KIND_BARE), FIELD(struct setting, min), RANGE(0, 1e7), .use = USE_SPEEDOMETER,
     .doc = "the lowest that it takes", .example = "1000"},
    {"max", QUANTITY(KIND_BARE), FIELD(struct setting, max), RANGE(1, 1e7), .use = USE_SPEEDOMETER,
     .doc = "the highest that it takes", .example = "25000"},
    {"choices", .kind = KEY_NUMBER_LIST, .unit = KIND_BARE, FIELD(struct setting, choices),
     RANGE(1, 1e7), .use = USE_SPEEDOMETER,
     .doc = "the only numbers that it takes, where it offers a list and not steps",
     .example = "[2400, 2500, 2548]", .instead = true},
    {"driving_gear_teeth", QUANTITY(KIND_BARE), FIELD(struct setting, driving_gear_teeth),
     RANGE(1, 200), .use = USE_SPEEDOMETER,
     .doc = "of the gear that drives the driven one, with kind: driven_gear_teeth", .example = "7",
     .instead = true},
};
static const struct key_set setting_set = {
    setting, sizeof setting / sizeof setting[0], sizeof(struct setting), {NULL}, .one_line = 2};

static const struct key sensor[] = {
    {"on", CHOICE(choices_sensor_place), FIELD(struct sensor, on), .use = USE_SPEEDOMETER,
     .doc = "what it counts turns of: wheel, shaft (before the axle ratio) or cable",
     .example = "wheel"},
    {"pulses_per_turn", QUANTITY(KIND_BARE), FIELD(struct sensor, pulses_per_turn), RANGE(1, 1000),
     .use = USE_SPEEDOMETER, .doc = "teeth or pulses of one turn", .example = "4"},
    {"turns_per_km", QUANTITY(KIND_BARE), FIELD(struct sensor, turns_per_km), RANGE(50, 5000),
     .use = USE_SPEEDOMETER, .doc = "of a cable, with the fitted tyre", .example = "637"},
    {"characteristic_coefficient", QUANTITY(KIND_BARE),
     FIELD(struct sensor, characteristic_coefficient), RANGE(100, 1e6), .use = USE_SPEEDOMETER,
     .doc = "w as measured with the fitted tyre, counts per km; in place of all else here",
     .example = "8000", .instead = true},
};
KEY_SET(sensor, struct sensor);

static const struct key odometer[] = {
    {"readings", .kind = KEY_PAIR_LIST, .unit = KIND_LENGTH, .second_unit = KIND_LENGTH,
     FIELD(struct odometer, readings), .use = USE_SPEEDOMETER, .columns = columns_shown_true,
     .list_form = "[[10.3 km, 10 km], ...]",
     .doc = "[[shown, true], ...] over a measured distance, such as a measured mile",
     .example = "[[10.3 km, 10 km]]"},
    {"rule", TEXT, FIELD(struct odometer, rule), .use = USE_SPEEDOMETER,
     .doc = "a row of the table odometer_rules", .example = "eu_recording"},
    {"since_change", QUANTITY(KIND_LENGTH), FIELD(struct odometer, since_change_m), RANGE(1, 2e9),
     .use = USE_SPEEDOMETER, .doc = "distance shown since the tyres were changed",
     .example = "12000 km"},
    {"service_interval", QUANTITY(KIND_LENGTH), FIELD(struct odometer, service_interval_m),
     RANGE(1e3, 2e8), .use = USE_SPEEDOMETER, .doc = "true distance between services",
     .example = "15000 km"},
};
KEY_SET(odometer, struct odometer);

static const struct key speed_table[] = {
    {"from", QUANTITY(KIND_SPEED), FIELD(struct speed_table, from_mps), RANGE(0.25, 150),
     .use = USE_SPEEDOMETER, .doc = "lowest speed of the speed table", .example = "20 km/h"},
    {"to", QUANTITY(KIND_SPEED), FIELD(struct speed_table, to_mps), RANGE(0.5, 150),
     .use = USE_SPEEDOMETER, .doc = "highest speed of the speed table, the end of the dial",
     .example = "160 km/h"},
    {"step", QUANTITY(KIND_SPEED), FIELD(struct speed_table, step_mps), RANGE(0.25, 50),
     .use = USE_SPEEDOMETER, .doc = "between two lines of the speed table", .example = "10 km/h"},
};
KEY_SET(speed_table, struct speed_table);

static const struct key instrument[] = {
    {"unit", CHOICE(choices_speed_unit), FIELD(struct instrument, unit), .use = USE_SPEEDOMETER,
     .doc = "the unit of its dial", .example = "km/h"},
    {"rule", TEXT, FIELD(struct instrument, rule), .use = USE_SPEEDOMETER | USE_SHORTLIST,
     .doc = "a row of the table speedometer_rules, such as un_r39", .example = "un_r39"},
    {"fitted_error", QUANTITY(KIND_FRACTION), FIELD(struct instrument, fitted_error),
     RANGE(-0.5, 0.5), .use = USE_SPEEDOMETER | USE_SHORTLIST,
     .doc = "(shown - true)/true with the fitted tyre, as it is now", .example = "3 %"},
    {"readings", .kind = KEY_PAIR_LIST, .unit = KIND_SPEED, .second_unit = KIND_SPEED,
     FIELD(struct instrument, readings), .use = USE_SPEEDOMETER, .columns = columns_shown_true,
     .doc = "[[shown, true], ...] of a road test; they replace fitted_error",
     .example = "[[50 km/h, 48.5 km/h], [100 km/h, 97.0 km/h]]", .instead = true},
    {"timed_readings", .columns = columns_timed, .kind = KEY_TRIPLE_LIST, .unit = KIND_LENGTH,
     .second_unit = KIND_TIME, .third_unit = KIND_SPEED, FIELD(struct instrument, timed_readings),
     .use = USE_SPEEDOMETER, .list_form = "[[1 mi, 61.3 s, 60 mph], ...]",
     .doc = "[[distance, time, shown], ...] of a measured mile by stopwatch",
     .example = "[[1 mi, 61.3 s, 60 mph]]", .instead = true},
    {"readings_on", TEXT, FIELD(struct instrument, readings_on), .use = USE_SPEEDOMETER,
     .doc = "fitted, or the name of the option that the readings were taken on",
     .example = "fitted", .instead = true},
    {"fit", CHOICE(choices_fit), FIELD(struct instrument, fit), .use = USE_SPEEDOMETER,
     .doc = "what is fitted to the readings: scale_and_offset where they allow it, or scale alone",
     .example = "scale"},
    {"setting", MAPPING(setting_set), FIELD(struct instrument, setting), .use = USE_SPEEDOMETER,
     .doc = "the number that it takes; in one line: KIND NOW step N min N max N"},
    {"aim", .kind = KEY_CHOICE_OR_VALUE, .unit = KIND_FRACTION, .choices = choices_aim,
     FIELD(struct instrument, aim), RANGE(-0.2, 0.2), .use = USE_SPEEDOMETER,
     .doc = "lowest_lawful, as_before or a target over-read such as 2 %",
     .example = "lowest_lawful"},
    {"sensor", MAPPING(sensor_set), FIELD(struct instrument, sensor), .use = USE_SPEEDOMETER,
     .doc = "where its counts come from"},
    {"odometer", MAPPING(odometer_set), FIELD(struct instrument, odometer), .use = USE_SPEEDOMETER,
     .doc = "the distance that it shows"},
    {"range", MAPPING(speed_table_set), FIELD(struct instrument, range), .use = USE_SPEEDOMETER,
     .doc = "of the speed table; up to the top speed where not given"},
    {"posted_limits", .kind = KEY_NUMBER_LIST, .unit = KIND_SPEED,
     FIELD(struct instrument, posted_limits), RANGE(1, 100), .use = USE_SPEEDOMETER,
     .doc = "speed limits at which to say what must be shown", .example = "[50 km/h, 80 km/h]"},
    {"consumption", QUANTITY(KIND_CONSUMPTION), FIELD(struct instrument, consumption_m3_per_m),
     RANGE(1e-9, 1e-5), .use = USE_SPEEDOMETER,
     .doc = "as worked out from the odometer's distance, to be corrected", .example = "11 L/100km"},
};
SHARED_KEY_SET(instrument, struct instrument);
