/* Keys of what the shop may do, how well it measures, and what an option is handed over with. */
#include "build/key_rows.h"

static const struct key allowed[] = {
    {"trim", QUANTITY(KIND_LENGTH), FIELD(struct allowed, trim_m), RANGE(0, 0.1), .use = USE_ALL,
     .doc = "off sheet metal or liner, above, outside or at lock; never inside",
     .example = "10 mm"},
    {"bump_stop", QUANTITY(KIND_LENGTH), FIELD(struct allowed, bump_stop_m), RANGE(0, 0.2),
     .use = USE_ALL, .doc = "how much longer than it is", .example = "15 mm"},
    {"spacer", QUANTITY(KIND_LENGTH), FIELD(struct allowed, spacer_m), RANGE(0, 0.1),
     .use = USE_ALL, .doc = "how thick", .example = "10 mm"},
    {"calibrate", .kind = KEY_BOOLEAN, FIELD(struct allowed, calibrate), .use = USE_ALL,
     .doc = "no where the instrument cannot be set; yes where a setting is given",
     .example = "yes"},
    {"spare", .kind = KEY_BOOLEAN, FIELD(struct allowed, spare), .use = USE_ALL,
     .doc = "a spare of the set may be ordered; yes unless said otherwise", .example = "yes"},
    {"wheel", .kind = KEY_BOOLEAN, FIELD(struct allowed, wheel), .use = USE_ALL | USE_CHOOSING,
     .doc = "another of search: rims may be ordered", .example = "yes"},
    {"axle_ratio", .kind = KEY_BOOLEAN, FIELD(struct allowed, axle_ratio),
     .use = USE_ALL | USE_CHOOSING, .doc = "one of drivetrain: axle_choices may be ordered",
     .example = "yes"},
    {"pressure_warning", .kind = KEY_BOOLEAN, FIELD(struct allowed, pressure_warning),
     .use = USE_ALL, .doc = "the vehicle's own threshold can be set", .example = "yes"},
};
SHARED_KEY_SET(allowed, struct allowed);

static const struct key measured[] = {
    {"tape", QUANTITY(KIND_LENGTH), FIELD(struct measured, tape_m), RANGE(0, 0.05), .use = USE_ALL,
     .doc = "how far off a measured length may be", .example = "3 mm"},
    {"scale", QUANTITY(KIND_MASS), FIELD(struct measured, scale_kg), RANGE(0, 500), .use = USE_ALL,
     .doc = "how far off a weighed axle may be", .example = "10 kg"},
};
SHARED_KEY_SET(measured, struct measured);

static const struct key as_set[] = {
    {"front", QUANTITY(KIND_PRESSURE), FIELD(struct as_set, pressure_Pa.front), RANGE(5e4, 1.2e6),
     .use = USE_ALL, .doc = "cold pressure that the front tyres are set to", .example = "330 kPa"},
    {"rear", QUANTITY(KIND_PRESSURE), FIELD(struct as_set, pressure_Pa.rear), RANGE(5e4, 1.2e6),
     .use = USE_ALL, .doc = "cold pressure that the rear tyres are set to", .example = "345 kPa"},
    {"setting", QUANTITY(KIND_BARE), FIELD(struct as_set, setting), RANGE(1e-6, 1e9),
     .use = USE_ALL, .doc = "what is entered in the instrument, a bare number", .example = "2550"},
    {"pressure_warning", QUANTITY(KIND_PRESSURE), FIELD(struct as_set, pressure_warning_Pa),
     RANGE(5e4, 1e6), .use = USE_ALL, .doc = "the threshold that the warning is set to",
     .example = "250 kPa"},
    {"headlamp_dip", QUANTITY(KIND_FRACTION), FIELD(struct as_set, headlamp_dip), RANGE(-0.1, 0.1),
     .use = USE_ALL, .doc = "the dip that the headlamps are aimed to", .example = "1.2 %"},
    {"speed_label", .kind = KEY_BOOLEAN, FIELD(struct as_set, speed_label), .use = USE_ALL,
     .doc = "a label with the tyres' speed is in the driver's view", .example = "yes"},
};
SHARED_KEY_SET(as_set, struct as_set);
