/* Keys of gearbox, axles and engine. */
#include "build/key_rows.h"

static const struct key transfer[] = {
    {"high", QUANTITY(KIND_BARE), FIELD(struct transfer, high), RANGE(0.1, 10), .use = USE_GEARING,
     .doc = "transfer ratio in high range", .example = "1.00"},
    {"low", .kind = KEY_NUMBERS, .unit = KIND_BARE, FIELD(struct transfer, low), RANGE(0.1, 50),
     .use = USE_GEARING, .doc = "transfer ratio in low range, or a list of several ranges",
     .example = "2.37"},
};
KEY_SET(transfer, struct transfer);

static const struct key variable_ratio[] = {
    {"lowest_gear", QUANTITY(KIND_BARE), FIELD(struct variable_ratio, lowest_gear), RANGE(0.1, 30),
     .use = USE_GEARING, .doc = "ratio for moving off: the largest number", .example = "2.63"},
    {"highest_gear", QUANTITY(KIND_BARE), FIELD(struct variable_ratio, highest_gear),
     RANGE(0.1, 30), .use = USE_GEARING, .doc = "ratio for cruising: the smallest number",
     .example = "0.39"},
};
KEY_SET(variable_ratio, struct variable_ratio);

static const struct key engine[] = {
    {"idle", QUANTITY(KIND_ROTATION), FIELD(struct engine, idle_per_s), RANGE(1, 100),
     .use = USE_GEARING, .doc = "engine speed at idle", .example = "700 rpm"},
    {"limit", QUANTITY(KIND_ROTATION), FIELD(struct engine, limit_per_s), RANGE(5, 400),
     .use = USE_GEARING, .doc = "highest engine speed", .example = "4400 rpm"},
    {"torque", .kind = KEY_PAIR_LIST, .unit = KIND_ROTATION, .second_unit = KIND_TORQUE,
     FIELD(struct engine, torque), .use = USE_GEARING,
     .doc = "[[1200 rpm, 310 Nm], ...], rising in engine speed",
     .example = "[[1200 rpm, 310 Nm], [2000 rpm, 450 Nm], [3600 rpm, 380 Nm]]"},
};
KEY_SET(engine, struct engine);

static const struct key drivetrain[] = {
    {"gears", .kind = KEY_NUMBER_LIST, .unit = KIND_BARE, FIELD(struct drivetrain, gears),
     RANGE(0.1, 30), .use = USE_GEARING, .doc = "gearbox ratios, first gear first",
     .example = "[3.87, 2.21, 1.49, 1.07, 0.79]", .list_form = "[3.87, 2.21, 1.49]"},
    {"continuously_variable", MAPPING(variable_ratio_set), FIELD(struct drivetrain, variable),
     .use = USE_GEARING, .doc = "instead of gears: the range of a continuously variable gearbox",
     .instead = true},
    {"reverse", QUANTITY(KIND_BARE), FIELD(struct drivetrain, reverse), RANGE(0.1, 30),
     .use = USE_GEARING, .doc = "ratio of reverse", .example = "3.22"},
    {"transfer", MAPPING(transfer_set), FIELD(struct drivetrain, transfer), .use = USE_GEARING,
     .doc = "transfer gearbox"},
    {"hub_reduction", QUANTITY(KIND_BARE), FIELD(struct drivetrain, hub_reduction), RANGE(0.1, 10),
     .use = USE_GEARING, .doc = "portal or hub reduction", .example = "1.00"},
    {"axle", PAIR(KIND_BARE), FIELD(struct drivetrain, axle), RANGE(0.5, 20), .use = USE_GEARING,
     .doc = "axle ratio", .example = "3.83"},
    {"axle_choices", .kind = KEY_NUMBER_LIST, .unit = KIND_BARE,
     FIELD(struct drivetrain, axle_choices), RANGE(0.5, 20), .use = USE_GEARING | USE_SHORTLIST,
     .doc = "axle ratios that can be ordered", .example = "[4.05, 4.37, 4.61]"},
    {"efficiency", QUANTITY(KIND_FRACTION), FIELD(struct drivetrain, efficiency), RANGE(0.1, 1),
     .use = USE_GEARING, .doc = "of the whole drivetrain", .example = "88 %"},
    {"slip", QUANTITY(KIND_FRACTION), FIELD(struct drivetrain, slip), RANGE(0, 0.9),
     .use = USE_GEARING, .doc = "of a torque converter that is not locked", .example = "0 %"},
    {"engine", MAPPING(engine_set), FIELD(struct drivetrain, engine), .use = USE_GEARING,
     .doc = "engine speeds and torque"},
    {"grip", QUANTITY(KIND_BARE), FIELD(struct drivetrain, grip), RANGE(0.01, 2),
     .use = USE_GEARING, .doc = "friction coefficient of the surface, a bare number",
     .example = "0.8"},
    {"rolling_resistance", QUANTITY(KIND_BARE), FIELD(struct drivetrain, rolling_resistance),
     RANGE(0, 1), .use = USE_GEARING, .doc = "rolling resistance coefficient, a bare number",
     .example = "0.015"},
    {"cruising_speed", QUANTITY(KIND_SPEED), FIELD(struct drivetrain, cruising_speed_mps),
     RANGE(1, 150), .use = USE_GEARING, .doc = "where the change of engine speed is told",
     .example = "98 km/h"},
    {"road_speeds", .kind = KEY_NUMBER_LIST, .unit = KIND_SPEED,
     FIELD(struct drivetrain, road_speeds_mps), RANGE(0.1, 150), .use = USE_GEARING,
     .doc = "engine speed is told at these, in every gear", .example = "[60 km/h, 100 km/h]",
     .list_form = "[...]"},
    {"engine_speeds", .kind = KEY_NUMBER_LIST, .unit = KIND_ROTATION,
     FIELD(struct drivetrain, engine_speeds_per_s), RANGE(1, 400), .use = USE_GEARING,
     .doc = "road speed is told at these, in every gear", .example = "[2000 rpm, 3000 rpm]",
     .list_form = "[...]"},
    {"grades", .kind = KEY_NUMBER_LIST, .unit = KIND_FRACTION, FIELD(struct drivetrain, grades),
     RANGE(0, 1), .use = USE_GEARING, .doc = "the speed held is told on these",
     .example = "[5 %, 10 %]"},
};
SHARED_KEY_SET(drivetrain, struct drivetrain);
