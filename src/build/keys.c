#include "build/keys.h"

#include "build/key_rows.h"
#include "build/specification.h"

const char *const choices_speed_unit[] = {"km/h", "mph", NULL};
const char *const choices_setting_kind[] = {
    "pulses_per_km",    "pulses_per_mile",   "revs_per_km", "revs_per_mile",
    "circumference_mm", "driven_gear_teeth", "constant_k",  NULL};
const char *const choices_drive[] = {"front", "rear", "part_time_4wd", "full_time_4wd", NULL};
static const char *const choices_vehicle_kind[] = {"passenger_car", "light_truck", NULL};
static const char *const choices_aim[] = {"lowest_lawful", "as_before", NULL};
static const char *const choices_roof[] = {"roof", NULL};
static const char *const choices_sensor_place[] = {"wheel", "shaft", "cable", NULL};
static const char *const choices_fit[] = {"scale", "scale_and_offset", NULL};
static const char *const choices_rule[] = {"rule", NULL};
static const char *const choices_form[] = {"metric", "flotation", "numeric", "full_profile", "P",
                                           "LT",     "ST",        "T",       "HL",           "C",
                                           "CP",     "NHS",       NULL};
static const char *const choices_includes[] = {"driver", "fuel", "spare", "tools", "nothing", NULL};
static const char *const choices_seat[] = {"row_1", "row_2", "row_3", "row_4", NULL};
static const char *const load_range_letters[] = {"ABCDEFGHJLMN", NULL};

#define TYRE_USE (USE_ALL)

static const struct key data_book[] = {
    {"overall_diameter", QUANTITY(KIND_LENGTH), FIELD(struct data_book, overall_diameter_m),
     RANGE(0.1, 5), .use = TYRE_USE, .doc = "overall diameter of the tyre maker's data book"},
    {"section_width", QUANTITY(KIND_LENGTH), FIELD(struct data_book, section_width_m),
     RANGE(0.05, 1.5), .use = TYRE_USE, .doc = "section width of the data book"},
    {"revs_per_mile", QUANTITY(KIND_BARE), FIELD(struct data_book, revs_per_mile), RANGE(50, 5000),
     .use = TYRE_USE, .doc = "revolutions per mile, a bare number"},
    {"revs_per_km", QUANTITY(KIND_BARE), FIELD(struct data_book, revs_per_km), RANGE(30, 3500),
     .use = TYRE_USE, .doc = "revolutions per kilometre, a bare number"},
    {"static_loaded_radius", QUANTITY(KIND_LENGTH), FIELD(struct data_book, static_loaded_radius_m),
     RANGE(0.05, 2.5), .use = TYRE_USE, .doc = "axle centre to ground under the rated load"},
    {"max_load", QUANTITY(KIND_MASS), FIELD(struct data_book, max_load_kg), RANGE(10, 20000),
     .use = TYRE_USE, .doc = "maximum load moulded on the sidewall, single"},
    {"at_pressure", QUANTITY(KIND_PRESSURE), FIELD(struct data_book, at_pressure_Pa),
     RANGE(5e4, 1.2e6), .use = TYRE_USE,
     .doc = "cold pressure that the maximum load is moulded with"},
    {"max_load_dual", QUANTITY(KIND_MASS), FIELD(struct data_book, max_load_dual_kg),
     RANGE(10, 20000), .use = TYRE_USE, .doc = "maximum load moulded on the sidewall, dual"},
    {"rim_min", QUANTITY(KIND_LENGTH), FIELD(struct data_book, rim_min_m), RANGE(0.05, 0.7),
     .use = TYRE_USE, .doc = "narrowest rim that the maker permits"},
    {"rim_max", QUANTITY(KIND_LENGTH), FIELD(struct data_book, rim_max_m), RANGE(0.05, 0.7),
     .use = TYRE_USE, .doc = "widest rim that the maker permits"},
};
KEY_SET(data_book, struct data_book);

static const struct key mounting[] = {
    {"hub_bore", QUANTITY(KIND_LENGTH), FIELD(struct mounting, hub_bore_m), RANGE(0.02, 0.5),
     .use = USE_CLEARANCE, .doc = "the wheel's centre hole"},
    {"bolts", QUANTITY(KIND_BARE), FIELD(struct mounting, bolts), RANGE(3, 12),
     .use = USE_CLEARANCE, .doc = "how many, a bare number"},
    {"bolt_circle", QUANTITY(KIND_LENGTH), FIELD(struct mounting, bolt_circle_m), RANGE(0.05, 0.6),
     .use = USE_CLEARANCE, .doc = "diameter of the circle that they stand on"},
    {"brake_room", QUANTITY(KIND_LENGTH), FIELD(struct mounting, brake_room_m), RANGE(-0.1, 0.2),
     .use = USE_CLEARANCE, .doc = "least room round the brake, as tried with this wheel"},
};
KEY_SET(mounting, struct mounting);

static const struct key wheel[] = {
    {"width", QUANTITY(KIND_LENGTH), FIELD(struct wheel, width_m), RANGE(0.05, 0.7),
     .use = TYRE_USE, .doc = "rim width between the flanges"},
    {"inset", QUANTITY(KIND_LENGTH), FIELD(struct wheel, inset_m), RANGE(-0.3, 0.3),
     .use = TYRE_USE, .doc = "mounting face outward of the rim's centre line; outset is negative"},
    {"spacer", QUANTITY(KIND_LENGTH), FIELD(struct wheel, spacer_m), RANGE(0, 0.2), .use = TYRE_USE,
     .doc = "thickness of a spacer between hub and wheel"},
    {"max_load", QUANTITY(KIND_MASS), FIELD(struct wheel, max_load_kg), RANGE(50, 20000),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "the wheel's own load rating"},
    {"max_pressure", QUANTITY(KIND_PRESSURE), FIELD(struct wheel, max_pressure_Pa),
     RANGE(1e5, 1.5e6), .use = USE_LOAD | USE_SHORTLIST, .doc = "the wheel's own pressure rating"},
    {"mounting", MAPPING(mounting_set), FIELD(struct wheel, mounting), .use = USE_CLEARANCE,
     .doc = "hub bore, bolt circle and room round the brake"},
};
KEY_SET(wheel, struct wheel);

/* Keys that a tyre has wherever it stands: fitted, option, rear, spare. */
#define TYRE_KEYS                                                                                    \
    {"size", .kind = KEY_DESIGNATION, .use = TYRE_USE,                                               \
     .doc = "the designation on the sidewall, such as 205/55R16 91V"},                               \
        {"load_range",                                                                               \
         .kind = KEY_LETTER,                                                                         \
         FIELD(struct tyre, load_range),                                                             \
         .choices = load_range_letters,                                                              \
         .use = TYRE_USE,                                                                            \
         .doc = "load range letter of an LT tyre"},                                                  \
        {"wheel", MAPPING(wheel_set), FIELD(struct tyre, wheel), .use = TYRE_USE,                    \
         .doc = "the wheel that it stands on"},                                                      \
        {"data_book", MAPPING(data_book_set), FIELD(struct tyre, data_book), .use = TYRE_USE,        \
         .doc = "figures of the tyre maker or the sidewall; they replace computed ones"},            \
        {"mass",         QUANTITY(KIND_MASS),           FIELD(struct tyre, mass_kg),                 \
         RANGE(1, 1000), .use = USE_LOAD | USE_GEARING, .doc = "tyre and wheel together"},           \
        {"inertia",                                                                                  \
         QUANTITY(KIND_INERTIA),                                                                     \
         FIELD(struct tyre, inertia_kg_m2),                                                          \
         RANGE(0.01, 500),                                                                           \
         .use = USE_GEARING,                                                                         \
         .doc = "of tyre and wheel about the axle, such as 1.4 kg-m2"},                              \
        {"tread_depth",  QUANTITY(KIND_LENGTH),  FIELD(struct tyre, tread_depth_m),                  \
         RANGE(0, 0.05), .use = USE_SPEEDOMETER, .doc = "tread depth now"},                          \
        {"new_tread_depth",  QUANTITY(KIND_LENGTH),  FIELD(struct tyre, new_tread_depth_m),          \
         RANGE(0.001, 0.05), .use = USE_SPEEDOMETER, .doc = "tread depth when new"},                 \
        {"snow_chains", QUANTITY(KIND_LENGTH), FIELD(struct tyre, snow_chains_m),                    \
         RANGE(0, 0.1), .use = USE_CLEARANCE,  .doc = "room that snow chains need around the tyre"}, \
    {                                                                                                \
        "dual", .kind = KEY_BOOLEAN, FIELD(struct tyre, dual), .use = USE_LOAD,                      \
                .doc = "twin tyres: true, under rear where only that axle has them"                  \
    }

static const struct key tyre[] = {TYRE_KEYS};
KEY_SET_ALSO(tyre, struct tyre, &spare_keys);

static const struct key spare[] = {
    TYRE_KEYS,
    {"deflated", MAPPING(deflated_keys), FIELD(struct tyre, deflated), .use = USE_CLEARANCE,
     .doc = "its size without air, for a narrow space"},
    {"rotated", .kind = KEY_BOOLEAN, FIELD(struct tyre, rotated),
     .use = USE_CLEARANCE | USE_GEARING,
     .doc = "true where it takes its turn on the axles, so that all five wear alike"},
};
SHARED_KEY_SET(spare, struct tyre);

static const struct key fitted[] = {
    TYRE_KEYS,
    {"placard", PAIR(KIND_PRESSURE), FIELD(struct fitment, placard_Pa), RANGE(5e4, 1.2e6),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "cold pressures of the vehicle's placard"},
    {"rear", MAPPING(tyre_set), FIELD(struct fitment, rear), .use = TYRE_USE,
     .doc = "only where the rear axle's tyre differs"},
};
static const struct key_set option_set;
KEY_SET_ALSO(fitted, struct fitment, &option_set, &spare_keys);

static const struct key option[] = {
    {"name", TEXT, FIELD(struct fitment, name), .use = TYRE_USE,
     .doc = "what you call this option"},
    TYRE_KEYS,
    {"rear", MAPPING(tyre_set), FIELD(struct fitment, rear), .use = TYRE_USE,
     .doc = "only where the rear axle's tyre differs"},
    {"spare", MAPPING(spare_keys), FIELD(struct fitment, spare),
     .use = USE_LOAD | USE_CLEARANCE | USE_GEARING, .doc = "the option's own spare"},
};
KEY_SET_ALSO(option, struct fitment, &fitted_set, &spare_keys);

static const struct key tyres[] = {
    {"fitted", MAPPING(fitted_set), FIELD(struct tyres, fitted), .use = USE_ALL,
     .doc = "what the vehicle stands on now"},
    {"spare", MAPPING(spare_keys), FIELD(struct tyres, spare),
     .use = USE_LOAD | USE_CLEARANCE | USE_GEARING, .doc = "the spare as carried now"},
    {"options", MAPPINGS(option_set), FIELD(struct tyres, options), .use = USE_ALL,
     .doc = "what may be fitted instead"},
};
KEY_SET(tyres, struct tyres);

static const struct key ratings[] = {
    {"front", QUANTITY(KIND_MASS), FIELD(struct ratings, front_kg), RANGE(50, 30000),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "front axle rating"},
    {"rear", QUANTITY(KIND_MASS), FIELD(struct ratings, rear_kg), RANGE(50, 30000),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "rear axle rating"},
    {"gross", QUANTITY(KIND_MASS), FIELD(struct ratings, gross_kg), RANGE(100, 60000),
     .use = USE_LOAD, .doc = "gross vehicle rating"},
    {"roof", QUANTITY(KIND_MASS), FIELD(struct ratings, roof_kg), RANGE(0, 2000), .use = USE_LOAD,
     .doc = "roof load rating"},
    {"tow_ball", QUANTITY(KIND_MASS), FIELD(struct ratings, tow_ball_kg), RANGE(0, 2000),
     .use = USE_LOAD, .doc = "tow-ball load rating"},
    {"combination", QUANTITY(KIND_MASS), FIELD(struct ratings, combination_kg), RANGE(100, 90000),
     .use = USE_LOAD, .doc = "rating of vehicle and trailer together"},
};
KEY_SET(ratings, struct ratings);

static const struct key seats[] = {
    {"row_1", QUANTITY(KIND_LENGTH), FIELD(struct seats, row_m[0]), RANGE(-3, 15), .use = USE_LOAD,
     .doc = "first row of seats, rearward from the front axle"},
    {"row_2", QUANTITY(KIND_LENGTH), FIELD(struct seats, row_m[1]), RANGE(-3, 15), .use = USE_LOAD,
     .doc = "second row"},
    {"row_3", QUANTITY(KIND_LENGTH), FIELD(struct seats, row_m[2]), RANGE(-3, 15), .use = USE_LOAD,
     .doc = "third row"},
    {"row_4", QUANTITY(KIND_LENGTH), FIELD(struct seats, row_m[3]), RANGE(-3, 15), .use = USE_LOAD,
     .doc = "fourth row"},
};
KEY_SET(seats, struct seats);

static const struct key drag[] = {
    {"coefficient", QUANTITY(KIND_BARE), FIELD(struct drag, coefficient), RANGE(0.05, 3),
     .use = USE_GEARING, .doc = "drag coefficient, a bare number"},
    {"area", QUANTITY(KIND_AREA), FIELD(struct drag, area_m2), RANGE(0.1, 20), .use = USE_GEARING,
     .doc = "frontal area"},
    {"air_density", QUANTITY(KIND_DENSITY), FIELD(struct drag, air_density_kg_m3), RANGE(0.3, 2),
     .use = USE_GEARING, .doc = "1.225 kg/m3 where not given; less at height"},
};
KEY_SET(drag, struct drag);

static const struct key vehicle[] = {
    {"name", TEXT, FIELD(struct vehicle, name), .use = USE_ALL, .doc = "what you call the vehicle"},
    {"wheelbase", QUANTITY(KIND_LENGTH), FIELD(struct vehicle, wheelbase_m), RANGE(0.5, 15),
     .use = USE_LOAD | USE_CLEARANCE, .doc = "distance between the axles"},
    {"unladen", PAIR(KIND_MASS), FIELD(struct vehicle, unladen_kg), RANGE(10, 30000),
     .use = USE_LOAD | USE_CLEARANCE | USE_GEARING,
     .doc = "axle loads as weighed, with what `includes` lists"},
    {"includes", .kind = KEY_TEXT_LIST, FIELD(struct vehicle, includes),
     .choices = choices_includes, .use = USE_LOAD, .doc = "what was aboard when it was weighed"},
    {"ratings", MAPPING(ratings_set), FIELD(struct vehicle, ratings),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "the vehicle maker's ratings"},
    {"seats", MAPPING(seats_set), FIELD(struct vehicle, seats), .use = USE_LOAD,
     .doc = "where occupants sit"},
    {"kind", CHOICE(choices_vehicle_kind), FIELD(struct vehicle, kind), .use = USE_ALL,
     .doc = "light_truck means multipurpose vehicles too"},
    {"drive", CHOICE(choices_drive), FIELD(struct vehicle, drive), .use = USE_GEARING,
     .doc = "which axles are driven"},
    {"top_speed", QUANTITY(KIND_SPEED), FIELD(struct vehicle, top_speed_mps), RANGE(1, 200),
     .use = USE_ALL, .doc = "the vehicle's top speed"},
    {"track", PAIR(KIND_LENGTH), FIELD(struct vehicle, track_m), RANGE(0.3, 4),
     .use = USE_CLEARANCE | USE_LOAD, .doc = "between the wheels' centre lines"},
    {"pressure_warning", PAIR(KIND_PRESSURE), FIELD(struct vehicle, pressure_warning_Pa),
     RANGE(5e4, 1e6), .use = USE_LOAD,
     .doc = "pressure at which the vehicle's own warning comes on"},
    {"drag", MAPPING(drag_set), FIELD(struct vehicle, drag), .use = USE_GEARING,
     .doc = "only for grades and speed held"},
};
KEY_SET(vehicle, struct vehicle);

static const struct key transfer[] = {
    {"high", QUANTITY(KIND_BARE), FIELD(struct transfer, high), RANGE(0.1, 10), .use = USE_GEARING,
     .doc = "transfer ratio in high range"},
    {"low", .kind = KEY_NUMBERS, .unit = KIND_BARE, FIELD(struct transfer, low), RANGE(0.1, 50),
     .use = USE_GEARING, .doc = "transfer ratio in low range, or a list of several ranges"},
};
KEY_SET(transfer, struct transfer);

static const struct key variable_ratio[] = {
    {"lowest_gear", QUANTITY(KIND_BARE), FIELD(struct variable_ratio, lowest_gear), RANGE(0.1, 30),
     .use = USE_GEARING, .doc = "ratio for moving off: the largest number"},
    {"highest_gear", QUANTITY(KIND_BARE), FIELD(struct variable_ratio, highest_gear),
     RANGE(0.1, 30), .use = USE_GEARING, .doc = "ratio for cruising: the smallest number"},
};
KEY_SET(variable_ratio, struct variable_ratio);

static const struct key engine[] = {
    {"idle", QUANTITY(KIND_ROTATION), FIELD(struct engine, idle_per_s), RANGE(1, 100),
     .use = USE_GEARING, .doc = "engine speed at idle"},
    {"limit", QUANTITY(KIND_ROTATION), FIELD(struct engine, limit_per_s), RANGE(5, 400),
     .use = USE_GEARING, .doc = "highest engine speed"},
    {"torque", .kind = KEY_PAIR_LIST, .unit = KIND_ROTATION, .second_unit = KIND_TORQUE,
     FIELD(struct engine, torque), .use = USE_GEARING,
     .doc = "[[1200 rpm, 310 Nm], ...], rising in engine speed"},
};
KEY_SET(engine, struct engine);

static const struct key drivetrain[] = {
    {"gears", .kind = KEY_NUMBER_LIST, .unit = KIND_BARE, FIELD(struct drivetrain, gears),
     RANGE(0.1, 30), .use = USE_GEARING, .doc = "gearbox ratios, first gear first"},
    {"continuously_variable", MAPPING(variable_ratio_set), FIELD(struct drivetrain, variable),
     .use = USE_GEARING, .doc = "instead of gears: the range of a continuously variable gearbox"},
    {"reverse", QUANTITY(KIND_BARE), FIELD(struct drivetrain, reverse), RANGE(0.1, 30),
     .use = USE_GEARING, .doc = "ratio of reverse"},
    {"transfer", MAPPING(transfer_set), FIELD(struct drivetrain, transfer), .use = USE_GEARING,
     .doc = "transfer gearbox"},
    {"hub_reduction", QUANTITY(KIND_BARE), FIELD(struct drivetrain, hub_reduction), RANGE(0.1, 10),
     .use = USE_GEARING, .doc = "portal or hub reduction"},
    {"axle", PAIR(KIND_BARE), FIELD(struct drivetrain, axle), RANGE(0.5, 20), .use = USE_GEARING,
     .doc = "axle ratio"},
    {"axle_choices", .kind = KEY_NUMBER_LIST, .unit = KIND_BARE, .example = "[4.10, 4.30, 4.56]",
     FIELD(struct drivetrain, axle_choices), RANGE(0.5, 20), .use = USE_GEARING | USE_SHORTLIST,
     .doc = "axle ratios that can be ordered"},
    {"efficiency", QUANTITY(KIND_FRACTION), FIELD(struct drivetrain, efficiency), RANGE(0.1, 1),
     .use = USE_GEARING, .doc = "of the whole drivetrain"},
    {"slip", QUANTITY(KIND_FRACTION), FIELD(struct drivetrain, slip), RANGE(0, 0.9),
     .use = USE_GEARING, .doc = "of a torque converter that is not locked"},
    {"engine", MAPPING(engine_set), FIELD(struct drivetrain, engine), .use = USE_GEARING,
     .doc = "engine speeds and torque"},
    {"grip", QUANTITY(KIND_BARE), FIELD(struct drivetrain, grip), RANGE(0.01, 2),
     .use = USE_GEARING, .doc = "friction coefficient of the surface, a bare number"},
    {"rolling_resistance", QUANTITY(KIND_BARE), FIELD(struct drivetrain, rolling_resistance),
     RANGE(0, 1), .use = USE_GEARING, .doc = "rolling resistance coefficient, a bare number"},
    {"cruising_speed", QUANTITY(KIND_SPEED), FIELD(struct drivetrain, cruising_speed_mps),
     RANGE(1, 150), .use = USE_GEARING, .doc = "where the change of engine speed is told"},
    {"road_speeds", .kind = KEY_NUMBER_LIST, .unit = KIND_SPEED,
     FIELD(struct drivetrain, road_speeds_mps), RANGE(0.1, 150), .use = USE_GEARING,
     .doc = "engine speed is told at these, in every gear"},
    {"engine_speeds", .kind = KEY_NUMBER_LIST, .unit = KIND_ROTATION,
     FIELD(struct drivetrain, engine_speeds_per_s), RANGE(1, 400), .use = USE_GEARING,
     .doc = "road speed is told at these, in every gear"},
    {"grades", .kind = KEY_NUMBER_LIST, .unit = KIND_FRACTION, FIELD(struct drivetrain, grades),
     RANGE(0, 1), .use = USE_GEARING, .example = "[5 %, 10 %]",
     .doc = "the speed held is told on these"},
};
KEY_SET(drivetrain, struct drivetrain);

static const struct key setting[] = {
    {"kind", CHOICE(choices_setting_kind), FIELD(struct setting, kind), .use = USE_SPEEDOMETER,
     .doc = "what number the instrument takes"},
    {"now", QUANTITY(KIND_BARE), FIELD(struct setting, now), RANGE(1, 1e7), .use = USE_SPEEDOMETER,
     .doc = "the number it has now"},
    {"step", QUANTITY(KIND_BARE), FIELD(struct setting, step), RANGE(1e-3, 1e6),
     .use = USE_SPEEDOMETER, .doc = "it goes in steps of"},
    {"min", QUANTITY(KIND_BARE), FIELD(struct setting, min), RANGE(0, 1e7), .use = USE_SPEEDOMETER,
     .doc = "the lowest that it takes"},
    {"max", QUANTITY(KIND_BARE), FIELD(struct setting, max), RANGE(1, 1e7), .use = USE_SPEEDOMETER,
     .doc = "the highest that it takes"},
    {"choices", .kind = KEY_NUMBER_LIST, .unit = KIND_BARE, FIELD(struct setting, choices),
     RANGE(1, 1e7), .use = USE_SPEEDOMETER, .example = "[2400, 2500, 2548]",
     .doc = "the only numbers that it takes, where it offers a list and not steps"},
    {"driving_gear_teeth", QUANTITY(KIND_BARE), FIELD(struct setting, driving_gear_teeth),
     RANGE(1, 200), .use = USE_SPEEDOMETER,
     .doc = "of the gear that drives the driven one, with kind: driven_gear_teeth"},
};
KEY_SET(setting, struct setting);

static const struct key sensor[] = {
    {"on", CHOICE(choices_sensor_place), FIELD(struct sensor, on), .use = USE_SPEEDOMETER,
     .doc = "what it counts turns of: wheel, shaft (before the axle ratio) or cable"},
    {"pulses_per_turn", QUANTITY(KIND_BARE), FIELD(struct sensor, pulses_per_turn), RANGE(1, 1000),
     .use = USE_SPEEDOMETER, .doc = "teeth or pulses of one turn"},
    {"turns_per_km", QUANTITY(KIND_BARE), FIELD(struct sensor, turns_per_km), RANGE(50, 5000),
     .use = USE_SPEEDOMETER, .doc = "of a cable, with the fitted tyre"},
    {"characteristic_coefficient", QUANTITY(KIND_BARE),
     FIELD(struct sensor, characteristic_coefficient), RANGE(100, 1e6), .use = USE_SPEEDOMETER,
     .doc = "w as measured with the fitted tyre, counts per km; in place of all else here"},
};
KEY_SET(sensor, struct sensor);

static const struct key odometer[] = {
    {"readings", .kind = KEY_PAIR_LIST, .unit = KIND_LENGTH, .second_unit = KIND_LENGTH,
     FIELD(struct odometer, readings), .use = USE_SPEEDOMETER, .example = "[[10.3 km, 10 km], ...]",
     .doc = "[[shown, true], ...] over a measured distance, such as a measured mile"},
    {"rule", TEXT, FIELD(struct odometer, rule), .use = USE_SPEEDOMETER,
     .doc = "a row of the table odometer_rules"},
    {"since_change", QUANTITY(KIND_LENGTH), FIELD(struct odometer, since_change_m), RANGE(1, 2e9),
     .use = USE_SPEEDOMETER, .doc = "distance shown since the tyres were changed"},
    {"service_interval", QUANTITY(KIND_LENGTH), FIELD(struct odometer, service_interval_m),
     RANGE(1e3, 2e8), .use = USE_SPEEDOMETER, .doc = "true distance between services"},
};
KEY_SET(odometer, struct odometer);

static const struct key speed_table[] = {
    {"from", QUANTITY(KIND_SPEED), FIELD(struct speed_table, from_mps), RANGE(0.25, 150),
     .use = USE_SPEEDOMETER, .doc = "lowest speed of the speed table"},
    {"to", QUANTITY(KIND_SPEED), FIELD(struct speed_table, to_mps), RANGE(0.5, 150),
     .use = USE_SPEEDOMETER, .doc = "highest speed of the speed table, the end of the dial"},
    {"step", QUANTITY(KIND_SPEED), FIELD(struct speed_table, step_mps), RANGE(0.25, 50),
     .use = USE_SPEEDOMETER, .doc = "between two lines of the speed table"},
};
KEY_SET(speed_table, struct speed_table);

static const struct key instrument[] = {
    {"unit", CHOICE(choices_speed_unit), FIELD(struct instrument, unit), .use = USE_SPEEDOMETER,
     .doc = "the unit of its dial"},
    {"rule", TEXT, FIELD(struct instrument, rule), .use = USE_SPEEDOMETER | USE_SHORTLIST,
     .doc = "a row of the table speedometer_rules, such as un_r39"},
    {"fitted_error", QUANTITY(KIND_FRACTION), FIELD(struct instrument, fitted_error),
     RANGE(-0.5, 0.5), .use = USE_SPEEDOMETER | USE_SHORTLIST,
     .doc = "(shown - true)/true with the fitted tyre, as it is now"},
    {"readings", .kind = KEY_PAIR_LIST, .unit = KIND_SPEED, .second_unit = KIND_SPEED,
     FIELD(struct instrument, readings), .use = USE_SPEEDOMETER,
     .doc = "[[shown, true], ...] of a road test; they replace fitted_error"},
    {"timed_readings", .kind = KEY_TRIPLE_LIST, .unit = KIND_LENGTH, .second_unit = KIND_TIME,
     .third_unit = KIND_SPEED, FIELD(struct instrument, timed_readings), .use = USE_SPEEDOMETER,
     .example = "[[1 mi, 61.3 s, 60 mph], ...]",
     .doc = "[[distance, time, shown], ...] of a measured mile by stopwatch"},
    {"readings_on", TEXT, FIELD(struct instrument, readings_on), .use = USE_SPEEDOMETER,
     .doc = "fitted, or the name of the option that the readings were taken on"},
    {"fit", CHOICE(choices_fit), FIELD(struct instrument, fit), .use = USE_SPEEDOMETER,
     .doc = "what is fitted to the readings: scale_and_offset where they allow it, or scale alone"},
    {"setting", MAPPING(setting_set), FIELD(struct instrument, setting), .use = USE_SPEEDOMETER,
     .doc = "the number that the instrument takes"},
    {"aim", .kind = KEY_CHOICE_OR_VALUE, .unit = KIND_FRACTION, .choices = choices_aim,
     FIELD(struct instrument, aim), RANGE(-0.2, 0.2), .use = USE_SPEEDOMETER,
     .doc = "lowest_lawful, as_before or a target over-read such as 2 %"},
    {"sensor", MAPPING(sensor_set), FIELD(struct instrument, sensor), .use = USE_SPEEDOMETER,
     .doc = "where its counts come from"},
    {"odometer", MAPPING(odometer_set), FIELD(struct instrument, odometer), .use = USE_SPEEDOMETER,
     .doc = "the distance that it shows"},
    {"range", MAPPING(speed_table_set), FIELD(struct instrument, range), .use = USE_SPEEDOMETER,
     .doc = "of the speed table; up to the top speed where not given"},
    {"posted_limits", .kind = KEY_NUMBER_LIST, .unit = KIND_SPEED,
     FIELD(struct instrument, posted_limits), RANGE(1, 100), .use = USE_SPEEDOMETER,
     .example = "[50 km/h, 80 km/h]", .doc = "speed limits at which to say what must be shown"},
    {"consumption", QUANTITY(KIND_CONSUMPTION), FIELD(struct instrument, consumption_m3_per_m),
     RANGE(1e-9, 1e-5), .use = USE_SPEEDOMETER,
     .doc = "as worked out from the odometer's distance, to be corrected"},
};
KEY_SET(instrument, struct instrument);

static const struct key carried[] = {
    {"item", TEXT, FIELD(struct carried_item, item), .use = USE_LOAD, .doc = "what it is"},
    {"mass", QUANTITY(KIND_MASS), FIELD(struct carried_item, mass_kg), RANGE(0, 20000),
     .use = USE_LOAD, .doc = "its mass"},
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct carried_item, at_m), RANGE(-5, 20), .use = USE_LOAD,
     .doc = "rearward from the front axle; ahead of it is negative"},
    {"side", QUANTITY(KIND_LENGTH), FIELD(struct carried_item, side_m), RANGE(-2, 2),
     .use = USE_LOAD, .doc = "from the centre line; left is negative"},
    {"removed", .kind = KEY_BOOLEAN, FIELD(struct carried_item, removed), .use = USE_LOAD,
     .doc = "true for what is taken off the vehicle"},
    {"volume", QUANTITY(KIND_VOLUME), FIELD(struct carried_item, volume_m3), RANGE(0, 10),
     .use = USE_LOAD, .doc = "of a liquid carried"},
    {"of", TEXT, FIELD(struct carried_item, of), .use = USE_LOAD,
     .doc = "which liquid: a row of the table density"},
    {"density", QUANTITY(KIND_DENSITY), FIELD(struct carried_item, density_kg_m3),
     RANGE(100, 20000), .use = USE_LOAD, .doc = "of a liquid that the table does not know"},
    {"dry_mass", QUANTITY(KIND_MASS), FIELD(struct carried_item, dry_mass_kg), RANGE(0, 5000),
     .use = USE_LOAD, .doc = "of the empty tank"},
    {"on", CHOICE(choices_roof), FIELD(struct carried_item, on_roof), .use = USE_LOAD,
     .doc = "roof, where it counts against the roof rating"},
    {"occupants", QUANTITY(KIND_BARE), FIELD(struct carried_item, occupants), RANGE(0, 20),
     .use = USE_LOAD, .doc = "number of people"},
    {"occupant_mass", QUANTITY(KIND_MASS), FIELD(struct carried_item, occupant_mass_kg),
     RANGE(1, 300), .use = USE_LOAD, .doc = "each; 75 kg where not given"},
    {"seat", CHOICE(choices_seat), FIELD(struct carried_item, seat), .use = USE_LOAD,
     .doc = "the row that they sit in"},
    {"tow_ball", QUANTITY(KIND_MASS), FIELD(struct carried_item, tow_ball_kg), RANGE(0, 2000),
     .use = USE_LOAD, .doc = "load of the coupling on the tow ball"},
    {"trailer_mass", QUANTITY(KIND_MASS), FIELD(struct carried_item, trailer_mass_kg),
     RANGE(0, 60000), .use = USE_LOAD, .doc = "of the whole trailer"},
    {"point", MAPPINGS(added_point_keys), FIELD(struct carried_item, points), .use = USE_CLEARANCE,
     .doc = "a low point that it brings: {ahead, behind or at, and height}"},
    {"top", QUANTITY(KIND_LENGTH), FIELD(struct carried_item, top_m), RANGE(0.5, 6),
     .use = USE_CLEARANCE, .doc = "its highest point above the ground at the fitted state"},
};
KEY_SET(carried, struct carried_item);

static const struct key room_for[] = {
    {"item", TEXT, FIELD(struct planned_item, item), .use = USE_LOAD, .doc = "what it is to be"},
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct planned_item, at_m), RANGE(-5, 20), .use = USE_LOAD,
     .doc = "rearward from the front axle; ahead of it is negative"},
    {"on", CHOICE(choices_roof), FIELD(struct planned_item, on_roof), .use = USE_LOAD,
     .doc = "roof, where it counts against the roof rating"},
};
KEY_SET(room_for, struct planned_item);

static const struct key off_road[] = {
    {"pressure", PAIR(KIND_PRESSURE), FIELD(struct off_road, pressure_Pa), RANGE(3e4, 1e6),
     .use = USE_LOAD, .doc = "cold pressure for sand, mud or rock"},
    {"speed", QUANTITY(KIND_SPEED), FIELD(struct off_road, speed_mps), RANGE(0.5, 40),
     .use = USE_LOAD, .doc = "highest speed that is driven on it"},
    {"compressor_flow", QUANTITY(KIND_FLOW), FIELD(struct off_road, compressor_flow_m3_per_s),
     RANGE(1e-5, 1), .use = USE_LOAD, .doc = "free air that the compressor delivers"},
};
KEY_SET(off_road, struct off_road);

#define WINDOW_KEYS(kind_, other, low, high)                                                        \
    {                                                                                               \
        {"min",          BOUND(kind_, other),       FIELD(struct window, min), RANGE(low, high),    \
         .use = USE_ALL, .doc = "the least allowed"},                                               \
            {"max",          BOUND(kind_, other),      FIELD(struct window, max), RANGE(low, high), \
             .use = USE_ALL, .doc = "the most allowed"},                                            \
    }
static const struct key length_window[] = WINDOW_KEYS(KIND_LENGTH, KIND_FRACTION, -5, 5);
KEY_SET(length_window, struct window);

static const struct key limits[] = {
    {"diameter_change", MAPPING(length_window_set), FIELD(struct limits, diameter_change),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "of the overall diameter, a length or %"},
    {"ride_height_change", MAPPING(length_window_set), FIELD(struct limits, ride_height_change),
     .use = USE_CLEARANCE, .doc = "by the suspension"},
    {"diameter_and_suspension", MAPPING(length_window_set),
     FIELD(struct limits, diameter_and_suspension), .use = USE_CLEARANCE,
     .doc = "lift and tyre diameter together"},
    {"track_change", MAPPING(length_window_set), FIELD(struct limits, track_change),
     .use = USE_CLEARANCE, .doc = "by inset and spacers, a length or %"},
    {"inset_change", MAPPING(length_window_set), FIELD(struct limits, inset_change),
     .use = USE_CLEARANCE, .doc = "less inset is negative"},
    {"load_reserve", QUANTITY(KIND_FRACTION), FIELD(struct limits, load_reserve), RANGE(0, 1),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "to be kept on every tyre above its load"},
    {"speedometer", CHOICE(choices_rule), FIELD(struct limits, speedometer), .use = USE_SHORTLIST,
     .doc = "rule: the speedometer must stay lawful"},
    {"published", .kind = KEY_TEXT_LIST, FIELD(struct limits, published), .example = "[au_offroad]",
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "rows of the table fitment_limits"},
};
KEY_SET(limits, struct limits);

static const struct key search_rim[] = {
    {"diameter", QUANTITY(KIND_BARE), FIELD(struct search_rim, diameter_code), RANGE(8, 30),
     .use = USE_SHORTLIST, .doc = "rim diameter code, a bare number"},
    {"width", QUANTITY(KIND_LENGTH), FIELD(struct search_rim, width_m), RANGE(0.05, 0.7),
     .use = USE_SHORTLIST, .doc = "rim width"},
    {"inset", QUANTITY(KIND_LENGTH), FIELD(struct search_rim, inset_m), RANGE(-0.3, 0.3),
     .use = USE_SHORTLIST, .doc = "inset"},
    {"max_load", QUANTITY(KIND_MASS), FIELD(struct search_rim, max_load_kg), RANGE(50, 20000),
     .use = USE_SHORTLIST, .doc = "the wheel's own load rating"},
    {"max_pressure", QUANTITY(KIND_PRESSURE), FIELD(struct search_rim, max_pressure_Pa),
     RANGE(1e5, 1.5e6), .use = USE_SHORTLIST, .doc = "the wheel's own pressure rating"},
};
KEY_SET(search_rim, struct search_rim);

static const struct key search[] = {
    {"rims", MAPPINGS(search_rim_set), FIELD(struct search, rims), .use = USE_SHORTLIST,
     .doc = "wheels to be tried"},
    {"forms", .kind = KEY_TEXT_LIST, FIELD(struct search, forms), .choices = choices_form,
     .use = USE_SHORTLIST, .example = "[metric, LT]",
     .doc = "forms of designation; metric is the one without letters"},
    {"overall_diameter", MAPPING(length_window_set), FIELD(struct search, overall_diameter),
     .use = USE_SHORTLIST, .doc = "window of the overall diameter"},
    {"list", TEXT, FIELD(struct search, list), .use = USE_SHORTLIST,
     .doc = "builtin, or a CSV file of the shop's own stock"},
    {"column", TEXT, FIELD(struct search, column), .use = USE_SHORTLIST,
     .doc = "heading of the CSV column that holds the sizes"},
};
KEY_SET(search, struct search);

static const struct key build_file[] = {
    {"vehicle", MAPPING(vehicle_set), FIELD(struct specification, vehicle), .use = USE_ALL,
     .doc = "the vehicle as weighed and rated"},
    {"tyres", MAPPING(tyres_set), FIELD(struct specification, tyres), .use = USE_ALL,
     .doc = "tyres fitted, spare and options"},
    {"drivetrain", MAPPING(drivetrain_set), FIELD(struct specification, drivetrain),
     .use = USE_GEARING | USE_SHORTLIST, .doc = "gearbox, transfer, axles, engine"},
    {"speedometer", MAPPING(instrument_set), FIELD(struct specification, speedometer),
     .use = USE_SPEEDOMETER | USE_SHORTLIST, .doc = "the instrument and its readings"},
    {"carried", MAPPINGS(carried_set), FIELD(struct specification, carried),
     .use = USE_LOAD | USE_CLEARANCE | USE_SHORTLIST,
     .doc = "everything added to or taken off the vehicle"},
    {"states", .kind = KEY_STATES, FIELD(struct specification, states),
     .use = USE_LOAD | USE_CLEARANCE | USE_SHORTLIST,
     .doc = "what is aboard: a name and `all` or a list of items"},
    {"room_for", MAPPINGS(room_for_set), FIELD(struct specification, room_for), .use = USE_LOAD,
     .doc = "places for items to come: the largest mass that each may have"},
    {"off_road", MAPPING(off_road_set), FIELD(struct specification, off_road), .use = USE_LOAD,
     .doc = "running at low pressure, and the compressor that brings the tyres back"},
    {"suspension", MAPPING(suspension_keys), FIELD(struct specification, suspension),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "lift and springs"},
    {"clearance", MAPPING(clearance_keys), FIELD(struct specification, clearance),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "what was measured with the fitted tyre"},
    {"limits", MAPPING(limits_set), FIELD(struct specification, limits), .use = USE_ALL,
     .doc = "house and published limits; each becomes a finding"},
    {"search", MAPPING(search_set), FIELD(struct specification, search), .use = USE_SHORTLIST,
     .doc = "what `shortlist` tries"},
};

const struct key_set build_file_keys = {
    build_file, sizeof build_file / sizeof build_file[0], sizeof(struct specification), {NULL}};
