/* The vehicle, limits, search, and the whole file: its other parts have files of their own. */
#include "build/key_rows.h"

static const char *const choices_vehicle_kind[] = {"passenger_car", "light_truck", NULL};
const char *const choices_drive[] = {"front", "rear", "part_time_4wd", "full_time_4wd", NULL};
static const char *const choices_includes[] = {"driver", "fuel", "spare", "tools", "nothing", NULL};
static const char *const choices_rule[] = {"rule", NULL};
static const char *const choices_form[] = {"metric", "flotation", "numeric", "full_profile", "P",
                                           "LT",     "ST",        "T",       "HL",           "C",
                                           "CP",     "NHS",       NULL};

static const struct key ratings[] = {
    {"front", QUANTITY(KIND_MASS), FIELD(struct ratings, front_kg), RANGE(50, 30000),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "front axle rating", .example = "1550 kg"},
    {"rear", QUANTITY(KIND_MASS), FIELD(struct ratings, rear_kg), RANGE(50, 30000),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "rear axle rating", .example = "1750 kg"},
    {"gross", QUANTITY(KIND_MASS), FIELD(struct ratings, gross_kg), RANGE(100, 60000),
     .use = USE_LOAD, .doc = "gross vehicle rating", .example = "3200 kg"},
    {"roof", QUANTITY(KIND_MASS), FIELD(struct ratings, roof_kg), RANGE(0, 2000), .use = USE_LOAD,
     .doc = "roof load rating", .example = "100 kg"},
    {"tow_ball", QUANTITY(KIND_MASS), FIELD(struct ratings, tow_ball_kg), RANGE(0, 2000),
     .use = USE_LOAD, .doc = "tow-ball load rating", .example = "350 kg"},
    {"combination", QUANTITY(KIND_MASS), FIELD(struct ratings, combination_kg), RANGE(100, 90000),
     .use = USE_LOAD, .doc = "rating of vehicle and trailer together", .example = "6000 kg"},
};
KEY_SET(ratings, struct ratings);

static const struct key seats[] = {
    {"row_1", QUANTITY(KIND_LENGTH), FIELD(struct seats, row_m[0]), RANGE(-3, 15), .use = USE_LOAD,
     .doc = "first row of seats, rearward from the front axle", .example = "1350 mm"},
    {"row_2", QUANTITY(KIND_LENGTH), FIELD(struct seats, row_m[1]), RANGE(-3, 15), .use = USE_LOAD,
     .doc = "second row", .example = "2250 mm"},
    {"row_3", QUANTITY(KIND_LENGTH), FIELD(struct seats, row_m[2]), RANGE(-3, 15), .use = USE_LOAD,
     .doc = "third row", .example = "3100 mm"},
    {"row_4", QUANTITY(KIND_LENGTH), FIELD(struct seats, row_m[3]), RANGE(-3, 15), .use = USE_LOAD,
     .doc = "fourth row", .example = "3900 mm"},
};
KEY_SET(seats, struct seats);

static const struct key drag[] = {
    {"coefficient", QUANTITY(KIND_BARE), FIELD(struct drag, coefficient), RANGE(0.05, 3),
     .use = USE_GEARING, .doc = "drag coefficient, a bare number", .example = "0.42"},
    {"area", QUANTITY(KIND_AREA), FIELD(struct drag, area_m2), RANGE(0.1, 20), .use = USE_GEARING,
     .doc = "frontal area", .example = "3.0 m2"},
    {"air_density", QUANTITY(KIND_DENSITY), FIELD(struct drag, air_density_kg_m3), RANGE(0.3, 2),
     .use = USE_GEARING, .doc = "1.225 kg/m3 where not given; less at height",
     .example = "1.225 kg/m3"},
};
KEY_SET(drag, struct drag);

static const struct key vehicle[] = {
    {"name", TEXT, FIELD(struct vehicle, name), .use = USE_ALL, .doc = "what you call the vehicle",
     .example = "my vehicle", .always = true},
    {"wheelbase", QUANTITY(KIND_LENGTH), FIELD(struct vehicle, wheelbase_m), RANGE(0.5, 15),
     .use = USE_LOAD | USE_CLEARANCE, .doc = "distance between the axles", .example = "2917 mm"},
    {"unladen", PAIR(KIND_MASS), FIELD(struct vehicle, unladen_kg), RANGE(10, 30000),
     .use = USE_LOAD | USE_CLEARANCE | USE_GEARING,
     .doc = "axle loads as weighed, with what `includes` lists",
     .example = "{front: 1290 kg, rear: 1180 kg}"},
    {"includes", .kind = KEY_TEXT_LIST, FIELD(struct vehicle, includes),
     .choices = choices_includes, .use = USE_LOAD, .doc = "what was aboard when it was weighed",
     .example = "[driver, fuel]"},
    {"ratings", MAPPING(ratings_set), FIELD(struct vehicle, ratings),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "the vehicle maker's ratings"},
    {"seats", MAPPING(seats_set), FIELD(struct vehicle, seats), .use = USE_LOAD,
     .doc = "where occupants sit"},
    {"kind", CHOICE(choices_vehicle_kind), FIELD(struct vehicle, kind), .use = USE_ALL,
     .doc = "light_truck means multipurpose vehicles too", .example = "light_truck"},
    {"category", TEXT, FIELD(struct vehicle, category), .use = USE_ALL,
     .doc = "as the national rules that limit it name it", .example = "NA"},
    {"frame", .kind = KEY_BOOLEAN, FIELD(struct vehicle, frame),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "yes: it has a frame fit for heavy off-road use",
     .example = "yes"},
    {"drive", CHOICE(choices_drive), FIELD(struct vehicle, drive), .use = USE_GEARING,
     .doc = "which axles are driven", .example = "full_time_4wd"},
    {"top_speed", QUANTITY(KIND_SPEED), FIELD(struct vehicle, top_speed_mps), RANGE(1, 200),
     .use = USE_ALL, .doc = "the vehicle's top speed", .example = "175 km/h"},
    {"track", PAIR(KIND_LENGTH), FIELD(struct vehicle, track_m), RANGE(0.3, 4),
     .use = USE_CLEARANCE | USE_LOAD, .doc = "between the wheels' centre lines",
     .example = "{front: 1520 mm, rear: 1530 mm}"},
    {"pressure_warning", PAIR(KIND_PRESSURE), FIELD(struct vehicle, pressure_warning_Pa),
     RANGE(5e4, 1e6), .use = USE_LOAD,
     .doc = "pressure at which the vehicle's own warning comes on", .example = "180 kPa"},
    {"drag", MAPPING(drag_set), FIELD(struct vehicle, drag), .use = USE_GEARING,
     .doc = "only for grades and speed held"},
};
KEY_SET(vehicle, struct vehicle);

static const struct key length_window[] = {
    {"min", BOUND(KIND_LENGTH, KIND_FRACTION), FIELD(struct window, min), RANGE(-5, 5),
     .use = USE_ALL, .doc = "the least allowed", .example = "2917 mm"},
    {"max", BOUND(KIND_LENGTH, KIND_FRACTION), FIELD(struct window, max), RANGE(-5, 5),
     .use = USE_ALL, .doc = "the most allowed", .example = "2917 mm"},
};
KEY_SET(length_window, struct window);

static const struct key limits[] = {
    {"diameter_change", MAPPING(length_window_set), FIELD(struct limits, diameter_change),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "of the overall diameter, a length or %",
     .example = "{min: -26 mm, max: 50 mm}"},
    {"ride_height_change", MAPPING(length_window_set), FIELD(struct limits, ride_height_change),
     .use = USE_CLEARANCE, .doc = "by the suspension", .example = "{max: 50 mm}"},
    {"diameter_and_suspension", MAPPING(length_window_set),
     FIELD(struct limits, diameter_and_suspension), .use = USE_CLEARANCE,
     .doc = "lift and tyre diameter together", .example = "{max: 75 mm}"},
    {"track_change", MAPPING(length_window_set), FIELD(struct limits, track_change),
     .use = USE_CLEARANCE, .doc = "by inset and spacers, a length or %", .example = "{max: 50 mm}"},
    {"inset_change", MAPPING(length_window_set), FIELD(struct limits, inset_change),
     .use = USE_CLEARANCE, .doc = "less inset is negative", .example = "{min: -13 mm}"},
    {"load_reserve", QUANTITY(KIND_FRACTION), FIELD(struct limits, load_reserve), RANGE(0, 1),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "to be kept on every tyre above its load",
     .example = "10 %"},
    {"speedometer", CHOICE(choices_rule), FIELD(struct limits, speedometer), .use = USE_SHORTLIST,
     .doc = "rule: the speedometer must stay lawful", .example = "rule"},
    {"speed_symbol", TEXT, FIELD(struct limits, speed_symbol), .use = USE_ALL,
     .doc = "a row of the table speed_symbol_rules, for marked tyres below the top speed",
     .example = "eu_winter"},
    {"published", .kind = KEY_TEXT_LIST, FIELD(struct limits, published),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "rows of the table fitment_limits",
     .example = "[au_offroad]"},
};
KEY_SET(limits, struct limits);

static const struct key search_rim[] = {
    {"diameter", QUANTITY(KIND_BARE), FIELD(struct search_rim, diameter_code), RANGE(8, 30),
     .use = USE_SHORTLIST, .doc = "rim diameter code, a bare number", .example = "19"},
    {"width", QUANTITY(KIND_LENGTH), FIELD(struct search_rim, width_m), RANGE(0.05, 0.7),
     .use = USE_SHORTLIST, .doc = "rim width", .example = "375 mm"},
    {"inset", QUANTITY(KIND_LENGTH), FIELD(struct search_rim, inset_m), RANGE(-0.3, 0.3),
     .use = USE_SHORTLIST, .doc = "inset", .example = "30 mm"},
    {"max_load", QUANTITY(KIND_MASS), FIELD(struct search_rim, max_load_kg), RANGE(50, 20000),
     .use = USE_SHORTLIST, .doc = "the wheel's own load rating", .example = "62 kg"},
    {"max_pressure", QUANTITY(KIND_PRESSURE), FIELD(struct search_rim, max_pressure_Pa),
     RANGE(1e5, 1.5e6), .use = USE_SHORTLIST, .doc = "the wheel's own pressure rating",
     .example = "240 kPa"},
};
KEY_SET(search_rim, struct search_rim);

static const struct key search[] = {
    {"rims", MAPPINGS(search_rim_set), FIELD(struct search, rims), .use = USE_SHORTLIST,
     .doc = "wheels to be tried", .example = "[{diameter: 17, width: 8 in, inset: 25 mm}]"},
    {"forms", .kind = KEY_TEXT_LIST, FIELD(struct search, forms), .choices = choices_form,
     .use = USE_SHORTLIST, .doc = "forms of designation; metric is the one without letters",
     .example = "[metric, LT]"},
    {"overall_diameter", MAPPING(length_window_set), FIELD(struct search, overall_diameter),
     .use = USE_SHORTLIST, .doc = "window of the overall diameter",
     .example = "{min: 780 mm, max: 830 mm}"},
    {"list", TEXT, FIELD(struct search, list), .use = USE_SHORTLIST,
     .doc = "builtin, or a CSV file of the shop's own stock", .example = "builtin"},
    {"column", TEXT, FIELD(struct search, column), .use = USE_SHORTLIST,
     .doc = "heading of the CSV column that holds the sizes", .example = "size"},
};
KEY_SET(search, struct search);

static const struct key build_file[] = {
    {"vehicle", MAPPING(vehicle_set), FIELD(struct specification, vehicle), .use = USE_ALL,
     .doc = "the vehicle as weighed and rated"},
    {"tyres", MAPPING(tyres_keys), FIELD(struct specification, tyres), .use = USE_ALL,
     .doc = "tyres fitted, spare and options"},
    {"drivetrain", MAPPING(drivetrain_keys), FIELD(struct specification, drivetrain),
     .use = USE_GEARING | USE_SHORTLIST, .doc = "gearbox, transfer, axles, engine"},
    {"speedometer", MAPPING(instrument_keys), FIELD(struct specification, speedometer),
     .use = USE_SPEEDOMETER | USE_SHORTLIST, .doc = "the instrument and its readings"},
    {"carried", MAPPINGS(carried_keys), FIELD(struct specification, carried),
     .use = USE_LOAD | USE_CLEARANCE | USE_SHORTLIST,
     .doc = "everything added to or taken off the vehicle"},
    {"states", .kind = KEY_STATES, FIELD(struct specification, states),
     .use = USE_LOAD | USE_CLEARANCE | USE_SHORTLIST,
     .doc = "what is aboard: a name and `all` or a list of items",
     .example = "{workshop: [], touring: all}"},
    {"room_for", MAPPINGS(room_for_keys), FIELD(struct specification, room_for), .use = USE_LOAD,
     .doc = "places for items to come: the largest mass that each may have"},
    {"off_road", MAPPING(off_road_keys), FIELD(struct specification, off_road), .use = USE_LOAD,
     .doc = "running at low pressure, and the compressor that brings the tyres back"},
    {"suspension", MAPPING(suspension_keys), FIELD(struct specification, suspension),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "lift and springs"},
    {"clearance", MAPPING(clearance_keys), FIELD(struct specification, clearance),
     .use = USE_CLEARANCE | USE_SHORTLIST, .doc = "what was measured with the fitted tyre"},
    {"limits", MAPPING(limits_set), FIELD(struct specification, limits), .use = USE_ALL,
     .doc = "house and published limits; each becomes a finding"},
    {"search", MAPPING(search_set), FIELD(struct specification, search), .use = USE_SHORTLIST,
     .doc = "what `shortlist` tries"},
    {"allowed", MAPPING(allowed_keys), FIELD(struct specification, allowed), .use = USE_ALL,
     .doc = "what the shop may do to make an option fit"},
    {"measured", MAPPING(measured_keys), FIELD(struct specification, measured), .use = USE_ALL,
     .doc = "how far off a measurement may be"},
};

const struct key_set build_file_keys = {
    build_file, sizeof build_file / sizeof build_file[0], sizeof(struct specification), {NULL}, 0};
