/* Keys of tyres: fitted, spare and options, with wheel and data book. */
#include "build/key_rows.h"

static const char *const load_range_letters[] = {"ABCDEFGHJLMN", NULL};

static const struct key data_book[] = {
    {"overall_diameter", QUANTITY(KIND_LENGTH), FIELD(struct data_book, overall_diameter_m),
     RANGE(0.1, 5), .use = USE_ALL, .doc = "overall diameter of the tyre maker's data book",
     .example = "763 mm"},
    {"section_width", QUANTITY(KIND_LENGTH), FIELD(struct data_book, section_width_m),
     RANGE(0.05, 1.5), .use = USE_ALL, .doc = "section width of the data book",
     .example = "260 mm"},
    {"revs_per_mile", QUANTITY(KIND_BARE), FIELD(struct data_book, revs_per_mile), RANGE(50, 5000),
     .use = USE_ALL, .doc = "revolutions per mile, a bare number", .example = "681"},
    {"revs_per_km", QUANTITY(KIND_BARE), FIELD(struct data_book, revs_per_km), RANGE(30, 3500),
     .use = USE_ALL, .doc = "revolutions per kilometre, a bare number", .example = "423",
     .instead = true},
    {"static_loaded_radius", QUANTITY(KIND_LENGTH), FIELD(struct data_book, static_loaded_radius_m),
     RANGE(0.05, 2.5), .use = USE_ALL, .doc = "axle centre to ground under the rated load",
     .example = "354 mm"},
    {"max_load", QUANTITY(KIND_MASS), FIELD(struct data_book, max_load_kg), RANGE(10, 20000),
     .use = USE_ALL, .doc = "maximum load moulded on the sidewall, single", .example = "1030 kg"},
    {"at_pressure", QUANTITY(KIND_PRESSURE), FIELD(struct data_book, at_pressure_Pa),
     RANGE(5e4, 1.2e6), .use = USE_ALL,
     .doc = "cold pressure that the maximum load is moulded with", .example = "240 kPa"},
    {"max_pressure", QUANTITY(KIND_PRESSURE), FIELD(struct data_book, max_pressure_Pa),
     RANGE(1e5, 1.2e6), .use = USE_ALL,
     .doc = "highest cold pressure that the sidewall allows, beside the load or alone",
     .example = "350 kPa"},
    {"max_load_dual", QUANTITY(KIND_MASS), FIELD(struct data_book, max_load_dual_kg),
     RANGE(10, 20000), .use = USE_ALL, .doc = "maximum load moulded on the sidewall, dual",
     .example = "935 kg"},
    {"rim_min", QUANTITY(KIND_LENGTH), FIELD(struct data_book, rim_min_m), RANGE(0.05, 0.7),
     .use = USE_ALL, .doc = "narrowest rim that the maker permits", .example = "6.5 in"},
    {"rim_max", QUANTITY(KIND_LENGTH), FIELD(struct data_book, rim_max_m), RANGE(0.05, 0.7),
     .use = USE_ALL, .doc = "widest rim that the maker permits", .example = "8.5 in"},
};
KEY_SET(data_book, struct data_book);

static const struct key mounting[] = {
    {"hub_bore", QUANTITY(KIND_LENGTH), FIELD(struct mounting, hub_bore_m), RANGE(0.02, 0.5),
     .use = USE_CLEARANCE, .doc = "the wheel's centre hole", .example = "106 mm"},
    {"bolts", QUANTITY(KIND_BARE), FIELD(struct mounting, bolts), RANGE(3, 12),
     .use = USE_CLEARANCE, .doc = "how many, a bare number", .example = "6"},
    {"bolt_circle", QUANTITY(KIND_LENGTH), FIELD(struct mounting, bolt_circle_m), RANGE(0.05, 0.6),
     .use = USE_CLEARANCE, .doc = "diameter of the circle that they stand on",
     .example = "139.7 mm"},
    {"brake_room", QUANTITY(KIND_LENGTH), FIELD(struct mounting, brake_room_m), RANGE(-0.1, 0.2),
     .use = USE_CLEARANCE, .doc = "least room round the brake, as tried with this wheel",
     .example = "6 mm"},
};
KEY_SET(mounting, struct mounting);

static const struct key wheel[] = {
    {"width", QUANTITY(KIND_LENGTH), FIELD(struct wheel, width_m), RANGE(0.05, 0.7), .use = USE_ALL,
     .doc = "rim width between the flanges", .example = "7.5 in"},
    {"inset", QUANTITY(KIND_LENGTH), FIELD(struct wheel, inset_m), RANGE(-0.3, 0.3), .use = USE_ALL,
     .doc = "mounting face outward of the rim's centre line; outset is negative",
     .example = "30 mm"},
    {"spacer", QUANTITY(KIND_LENGTH), FIELD(struct wheel, spacer_m), RANGE(0, 0.2), .use = USE_ALL,
     .doc = "thickness of a spacer between hub and wheel", .example = "0 mm"},
    {"max_load", QUANTITY(KIND_MASS), FIELD(struct wheel, max_load_kg), RANGE(50, 20000),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "the wheel's own load rating", .example = "1100 kg"},
    {"max_pressure", QUANTITY(KIND_PRESSURE), FIELD(struct wheel, max_pressure_Pa),
     RANGE(1e5, 1.5e6), .use = USE_LOAD | USE_SHORTLIST, .doc = "the wheel's own pressure rating",
     .example = "450 kPa"},
    {"mounting", MAPPING(mounting_set), FIELD(struct wheel, mounting), .use = USE_CLEARANCE,
     .doc = "hub bore, bolt circle and room round the brake"},
};
KEY_SET(wheel, struct wheel);

/* Keys that a tyre has wherever it stands, with the examples that differ from place to place. A
 * size is always given where a tyre cannot be left out. */
#define TYRE_KEYS(size_, always_, wheel_, book_, mass_)                                            \
    {"size",           .kind = KEY_DESIGNATION,                                                    \
     .use = USE_ALL,   .doc = "the designation on the sidewall, such as 205/55R16 91V",            \
     .example = size_, .always = always_},                                                         \
        {"load_range",                                                                             \
         .kind = KEY_LETTER,                                                                       \
         FIELD(struct tyre, load_range),                                                           \
         .choices = load_range_letters,                                                            \
         .use = USE_ALL,                                                                           \
         .doc = "load range letter of an LT tyre",                                                 \
         .example = "C"},                                                                          \
        {"wheel",                                                                                  \
         MAPPING(wheel_set),                                                                       \
         FIELD(struct tyre, wheel),                                                                \
         .use = USE_ALL,                                                                           \
         .doc = "the wheel that it stands on",                                                     \
         .example = wheel_},                                                                       \
        {"data_book",                                                                              \
         MAPPING(data_book_set),                                                                   \
         FIELD(struct tyre, data_book),                                                            \
         .use = USE_ALL,                                                                           \
         .doc = "figures of the tyre maker or the sidewall; they replace computed ones",           \
         .example = book_},                                                                        \
        {"mass",          QUANTITY(KIND_MASS),           FIELD(struct tyre, mass_kg),              \
         RANGE(1, 1000),  .use = USE_LOAD | USE_GEARING, .doc = "tyre and wheel together",         \
         .example = mass_},                                                                        \
        {"inertia",                                                                                \
         QUANTITY(KIND_INERTIA),                                                                   \
         FIELD(struct tyre, inertia_kg_m2),                                                        \
         RANGE(0.01, 500),                                                                         \
         .use = USE_GEARING,                                                                       \
         .doc = "of tyre and wheel about the axle, such as 1.4 kg-m2",                             \
         .example = "1.4 kg-m2"},                                                                  \
        {"tread_depth",      QUANTITY(KIND_LENGTH),  FIELD(struct tyre, tread_depth_m),            \
         RANGE(0, 0.05),     .use = USE_SPEEDOMETER, .doc = "tread depth now",                     \
         .example = "6.5 mm"},                                                                     \
        {"new_tread_depth",  QUANTITY(KIND_LENGTH),  FIELD(struct tyre, new_tread_depth_m),        \
         RANGE(0.001, 0.05), .use = USE_SPEEDOMETER, .doc = "tread depth when new",                \
         .example = "9 mm"},                                                                       \
        {"snow_chains",                                                                            \
         QUANTITY(KIND_LENGTH),                                                                    \
         FIELD(struct tyre, snow_chains_m),                                                        \
         RANGE(0, 0.1),                                                                            \
         .use = USE_CLEARANCE,                                                                     \
         .doc = "room that snow chains need around the tyre",                                      \
         .example = "12 mm"},                                                                      \
    {                                                                                              \
        "dual", .kind = KEY_BOOLEAN, FIELD(struct tyre, dual), .use = USE_LOAD,                    \
                .doc = "twin tyres: true, under rear where only that axle has them",               \
                .example = "false"                                                                 \
    }

static const struct key tyre[] = {TYRE_KEYS("P255/70R16 109S", false, NULL, NULL, "62 kg")};
KEY_SET_ALSO(tyre, struct tyre, &spare_keys);

static const struct key spare[] = {
    TYRE_KEYS("P255/70R16 109S", false, "{width: 7.5 in, inset: 30 mm}",
              "{max_load: 1030 kg, at_pressure: 240 kPa}", "24 kg"),
    {"deflated", MAPPING(deflated_keys), FIELD(struct tyre, deflated), .use = USE_CLEARANCE,
     .doc = "its size without air, for a narrow space"},
    {"rotated", .kind = KEY_BOOLEAN, FIELD(struct tyre, rotated),
     .use = USE_CLEARANCE | USE_GEARING,
     .doc = "true where it takes its turn on the axles, so that all five wear alike",
     .example = "true"},
};
SHARED_KEY_SET(spare, struct tyre);

static const struct key fitted[] = {
    TYRE_KEYS("P255/70R16 109S", true, NULL, NULL, "24 kg"),
    {"placard", PAIR(KIND_PRESSURE), FIELD(struct fitment, placard_Pa), RANGE(5e4, 1.2e6),
     .use = USE_LOAD | USE_SHORTLIST, .doc = "cold pressures of the vehicle's placard",
     .example = "{front: 210 kPa, rear: 230 kPa}"},
    {"rear", MAPPING(tyre_set), FIELD(struct fitment, rear), .use = USE_ALL,
     .doc = "only where the rear axle's tyre differs", .example = "{size: P255/70R16 109S}",
     .instead = true},
};
static const struct key_set option_set;
KEY_SET_ALSO(fitted, struct fitment, &option_set, &spare_keys);

static const struct key option[] = {
    {"name", TEXT, FIELD(struct fitment, name), .use = USE_ALL, .doc = "what you call this option",
     .example = "one step taller", .always = true},
    TYRE_KEYS("LT255/75R16 111/108S", true, "{width: 8 in, inset: 15 mm, max_load: 1250 kg}",
              "{max_load: 1090 kg, at_pressure: 350 kPa}", "29 kg"),
    {"rear", MAPPING(tyre_set), FIELD(struct fitment, rear), .use = USE_ALL,
     .doc = "only where the rear axle's tyre differs", .example = "{size: LT255/75R16 111/108S}",
     .instead = true},
    {"spare", MAPPING(spare_keys), FIELD(struct fitment, spare),
     .use = USE_LOAD | USE_CLEARANCE | USE_GEARING, .doc = "the option's own spare, or none",
     .example = "{size: LT255/75R16 111/108S}", .or_none = true},
    {"as_set", MAPPING(as_set_keys), FIELD(struct fitment, as_set), .use = USE_ALL,
     .doc = "what it is handed over with", .instead = true},
};
KEY_SET_ALSO(option, struct fitment, &fitted_set, &spare_keys);

static const struct key tyres[] = {
    {"fitted", MAPPING(fitted_set), FIELD(struct tyres, fitted), .use = USE_ALL,
     .doc = "what the vehicle stands on now"},
    {"spare", MAPPING(spare_keys), FIELD(struct tyres, spare),
     .use = USE_LOAD | USE_CLEARANCE | USE_GEARING, .doc = "the spare as carried now, or none",
     .or_none = true},
    {"options", MAPPINGS(option_set), FIELD(struct tyres, options), .use = USE_ALL,
     .doc = "what may be fitted instead"},
};
SHARED_KEY_SET(tyres, struct tyres);
