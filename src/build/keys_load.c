/* Keys of what is carried, of what is planned, and of running at low pressure. */
#include "build/key_rows.h"

static const char *const choices_roof[] = {"roof", NULL};
static const char *const choices_seat[] = {"row_1", "row_2", "row_3", "row_4", NULL};

static const struct key carried[] = {
    {"item", TEXT, FIELD(struct carried_item, item), .use = USE_LOAD, .doc = "what it is",
     .example = "instrument racks"},
    {"mass", QUANTITY(KIND_MASS), FIELD(struct carried_item, mass_kg), RANGE(0, 20000),
     .use = USE_LOAD, .doc = "its mass", .example = "118 kg"},
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct carried_item, at_m), RANGE(-5, 20), .use = USE_LOAD,
     .doc = "rearward from the front axle; ahead of it is negative", .example = "3350 mm"},
    {"side", QUANTITY(KIND_LENGTH), FIELD(struct carried_item, side_m), RANGE(-2, 2),
     .use = USE_LOAD, .doc = "from the centre line; left is negative", .example = "200 mm"},
    {"removed", .kind = KEY_BOOLEAN, FIELD(struct carried_item, removed), .use = USE_LOAD,
     .doc = "true for what is taken off the vehicle", .example = "true", .instead = true},
    {"can_be_left_out", .kind = KEY_BOOLEAN, FIELD(struct carried_item, can_be_left_out),
     .use = USE_LOAD | USE_SHORTLIST,
     .doc = "true where it may stay behind so that the rest is borne", .example = "true"},
    {"volume", QUANTITY(KIND_VOLUME), FIELD(struct carried_item, volume_m3), RANGE(0, 10),
     .use = USE_LOAD, .doc = "of a liquid carried", .example = "90 L", .instead = true},
    {"of", TEXT, FIELD(struct carried_item, of), .use = USE_LOAD,
     .doc = "which liquid: a row of the table density", .example = "diesel", .instead = true},
    {"density", QUANTITY(KIND_DENSITY), FIELD(struct carried_item, density_kg_m3),
     RANGE(100, 20000), .use = USE_LOAD, .doc = "of a liquid that the table does not know",
     .example = "0.835 kg/L", .instead = true},
    {"dry_mass", QUANTITY(KIND_MASS), FIELD(struct carried_item, dry_mass_kg), RANGE(0, 5000),
     .use = USE_LOAD, .doc = "of the empty tank", .example = "38 kg", .instead = true},
    {"on", CHOICE(choices_roof), FIELD(struct carried_item, on_roof), .use = USE_LOAD,
     .doc = "roof, where it counts against the roof rating", .example = "roof"},
    {"occupants", QUANTITY(KIND_BARE), FIELD(struct carried_item, occupants), RANGE(0, 20),
     .use = USE_LOAD, .doc = "number of people", .example = "3", .instead = true},
    {"occupant_mass", QUANTITY(KIND_MASS), FIELD(struct carried_item, occupant_mass_kg),
     RANGE(1, 300), .use = USE_LOAD, .doc = "each; 75 kg where not given", .example = "75 kg",
     .instead = true},
    {"seat", CHOICE(choices_seat), FIELD(struct carried_item, seat), .use = USE_LOAD,
     .doc = "the row that they sit in", .example = "row_2", .instead = true},
    {"tow_ball", QUANTITY(KIND_MASS), FIELD(struct carried_item, tow_ball_kg), RANGE(0, 2000),
     .use = USE_LOAD, .doc = "load of the coupling on the tow ball", .example = "160 kg",
     .instead = true},
    {"trailer_mass", QUANTITY(KIND_MASS), FIELD(struct carried_item, trailer_mass_kg),
     RANGE(0, 60000), .use = USE_LOAD, .doc = "of the whole trailer", .example = "1700 kg",
     .instead = true},
    {"point", MAPPINGS(added_point_keys), FIELD(struct carried_item, points), .use = USE_CLEARANCE,
     .doc = "a low point that it brings: {ahead, behind or at, and height}"},
    {"top", QUANTITY(KIND_LENGTH), FIELD(struct carried_item, top_m), RANGE(0.5, 6),
     .use = USE_CLEARANCE, .doc = "its highest point above the ground at the fitted state",
     .example = "2150 mm"},
};
SHARED_KEY_SET(carried, struct carried_item);

static const struct key room_for[] = {
    {"item", TEXT, FIELD(struct planned_item, item), .use = USE_LOAD, .doc = "what it is to be",
     .example = "roof tent"},
    {"at", QUANTITY(KIND_LENGTH), FIELD(struct planned_item, at_m), RANGE(-5, 20), .use = USE_LOAD,
     .doc = "rearward from the front axle; ahead of it is negative", .example = "1700 mm"},
    {"mass", QUANTITY(KIND_MASS), FIELD(struct planned_item, mass_kg), RANGE(1, 20000),
     .use = USE_LOAD, .doc = "where it is known: from where to where it may be carried is told",
     .example = "55 kg"},
    {"on", CHOICE(choices_roof), FIELD(struct planned_item, on_roof), .use = USE_LOAD,
     .doc = "roof, where it counts against the roof rating", .example = "roof"},
};
SHARED_KEY_SET(room_for, struct planned_item);

static const struct key off_road[] = {
    {"pressure", PAIR(KIND_PRESSURE), FIELD(struct off_road, pressure_Pa), RANGE(3e4, 1e6),
     .use = USE_LOAD, .doc = "cold pressure for sand, mud or rock", .example = "120 kPa"},
    {"speed", QUANTITY(KIND_SPEED), FIELD(struct off_road, speed_mps), RANGE(0.5, 40),
     .use = USE_LOAD, .doc = "highest speed that is driven on it", .example = "30 km/h"},
    {"compressor_flow", QUANTITY(KIND_FLOW), FIELD(struct off_road, compressor_flow_m3_per_s),
     RANGE(1e-5, 1), .use = USE_LOAD, .doc = "free air that the compressor delivers",
     .example = "150 L/min"},
};
SHARED_KEY_SET(off_road, struct off_road);
