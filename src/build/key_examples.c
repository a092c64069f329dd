#include "build/key_examples.h"

#include <math.h>
#include <string.h>

#include "size/quantity_text.h"

/* `end` is the end of the key's path, at a point; the longest that fits decides. The figures
 * are those of an invented vehicle. */
static const struct {
    const char *end, *text;
} examples[] = {
    {"vehicle.name", "my vehicle"},
    {"unladen", "{front: 1290 kg, rear: 1180 kg}"},
    {"includes", "[driver, fuel]"},
    {"ratings.front", "1550 kg"},
    {"ratings.rear", "1750 kg"},
    {"ratings.gross", "3200 kg"},
    {"ratings.roof", "100 kg"},
    {"ratings.tow_ball", "350 kg"},
    {"ratings.combination", "6000 kg"},
    {"row_1", "1350 mm"},
    {"row_2", "2250 mm"},
    {"row_3", "3100 mm"},
    {"row_4", "3900 mm"},
    {"vehicle.kind", "light_truck"},
    {"drive", "full_time_4wd"},
    {"top_speed", "175 km/h"},
    {"track", "{front: 1520 mm, rear: 1530 mm}"},
    {"drag.coefficient", "0.42"},
    {"pressure_warning", "180 kPa"},
    {"air_density", "1.225 kg/m3"},
    {"size", "P255/70R16 109S"},
    {"options.name", "one step taller"},
    {"options.size", "LT255/75R16 111/108S"},
    {"load_range", "C"},
    {"placard", "{front: 210 kPa, rear: 230 kPa}"},
    {"spare.wheel", "{width: 7.5 in, inset: 30 mm}"},
    {"spare.data_book", "{max_load: 1030 kg, at_pressure: 240 kPa}"},
    {"spare.mass", "24 kg"},
    {"fitted.rear", "{size: P255/70R16 109S}"},
    {"options.rear", "{size: LT255/75R16 111/108S}"},
    {"options.spare", "{size: LT255/75R16 111/108S}"},
    {"options.wheel", "{width: 8 in, inset: 15 mm, max_load: 1250 kg}"},
    {"options.data_book", "{max_load: 1090 kg, at_pressure: 350 kPa}"},
    {"wheel.width", "7.5 in"},
    {"deflated.diameter", "590 mm"},
    {"deflated.width", "190 mm"},
    {"inset", "30 mm"},
    {"spacer", "0 mm"},
    {"hub_bore", "106 mm"},
    {"bolts", "6"},
    {"bolt_circle", "139.7 mm"},
    {"brake_room", "6 mm"},
    {"wheel.max_load", "1100 kg"},
    {"wheel.max_pressure", "450 kPa"},
    {"data_book.overall_diameter", "763 mm"},
    {"data_book.section_width", "260 mm"},
    {"revs_per_mile", "681"},
    {"revs_per_km", "423"},
    {"static_loaded_radius", "354 mm"},
    {"data_book.max_load", "1030 kg"},
    {"at_pressure", "240 kPa"},
    {"max_load_dual", "935 kg"},
    {"rim_min", "6.5 in"},
    {"rim_max", "8.5 in"},
    {"fitted.mass", "24 kg"},
    {"options.mass", "29 kg"},
    {"tread_depth", "6.5 mm"},
    {"new_tread_depth", "9 mm"},
    {"snow_chains", "12 mm"},
    {"dual", "false"},
    {"gears", "[3.52, 2.04, 1.40, 1.00, 0.75]"},
    {"lowest_gear", "2.63"},
    {"highest_gear", "0.39"},
    {"reverse", "3.22"},
    {"road_speeds", "[60 km/h, 100 km/h]"},
    {"engine_speeds", "[2000 rpm, 3000 rpm]"},
    {"grades", "[5 %, 10 %]"},
    {"transfer.high", "1.00"},
    {"transfer.low", "2.48"},
    {"hub_reduction", "1.00"},
    {"drivetrain.axle", "3.91"},
    {"axle_choices", "[4.10, 4.30, 4.56]"},
    {"efficiency", "88 %"},
    {"slip", "0 %"},
    {"idle", "700 rpm"},
    {"engine.limit", "4400 rpm"},
    {"torque", "[[1200 rpm, 310 Nm], [2000 rpm, 450 Nm], [3600 rpm, 380 Nm]]"},
    {"grip", "0.8"},
    {"rolling_resistance", "0.015"},
    {"speedometer.unit", "km/h"},
    {"speedometer.rule", "un_r39"},
    {"fitted_error", "3 %"},
    {"speedometer.readings", "[[50 km/h, 48.5 km/h], [100 km/h, 97.0 km/h]]"},
    {"readings_on", "fitted"},
    {"setting.kind", "pulses_per_km"},
    {"setting.now", "2548"},
    {"setting.step", "1"},
    {"setting.min", "1000"},
    {"setting.max", "25000"},
    {"driving_gear_teeth", "7"},
    {"pulses_per_turn", "4"},
    {"turns_per_km", "637"},
    {"characteristic_coefficient", "8000"},
    {"odometer.rule", "eu_recording"},
    {"since_change", "12000 km"},
    {"service_interval", "15000 km"},
    {"range.from", "20 km/h"},
    {"range.to", "160 km/h"},
    {"range.step", "10 km/h"},
    {"aim", "lowest_lawful"},
    {"carried.item", "drawers and fridge"},
    {"carried.mass", "118 kg"},
    {"carried.at", "3350 mm"},
    {"carried.side", "200 mm"},
    {"removed", "true"},
    {"volume", "90 L"},
    {"carried.of", "diesel"},
    {"dry_mass", "38 kg"},
    {"carried.on", "roof"},
    {"occupants", "3"},
    {"occupant_mass", "75 kg"},
    {"seat", "row_2"},
    {"carried.tow_ball", "160 kg"},
    {"trailer_mass", "1700 kg"},
    {"states", "{workshop: [], touring: all}"},
    {"lift", "40 mm"},
    {"wheel_rate", "62 N/mm"},
    {"wheel_rate_steps", "[[0 mm, 45 N/mm], [60 mm, 70 N/mm]]"},
    {"wheel_rate_curve", "[[0 mm, 45 N/mm], [100 mm, 80 N/mm]]"},
    {"motion_ratio", "0.65"},
    {"suspension.front.spring_rate", "147 N/mm"},
    {"helper_rate", "40 N/mm"},
    {"helper_closes_at", "20 mm"},
    {"free_height_change", "30 mm"},
    {"wheel_rate_before", "50 N/mm"},
    {"unsprung_mass", "160 kg"},
    {"travel_to_droop", "95 mm"},
    {"travel_to_bump", "80 mm"},
    {"bump_stop_change", "10 mm"},
    {"point.item", "winch mount"},
    {"point.height", "400 mm"},
    {"point.ahead", "760 mm"},
    {"point.behind", "900 mm"},
    {"point.at", "1600 mm"},
    {"carried.top", "2150 mm"},
    {"room_for.item", "roof tent"},
    {"room_for.at", "1700 mm"},
    {"off_road.pressure", "120 kPa"},
    {"off_road.speed", "30 km/h"},
    {"suspension.rear", "{lift: 50 mm, wheel_rate: 74 N/mm, travel_to_bump: 85 mm}"},
    {"clearance.ground", "220 mm"},
    {"ground_at", "1500 mm"},
    {"under_axle", "{front: 205 mm, rear: 205 mm}"},
    {"arch.front.above", "110 mm"},
    {"arch.front.inner", "28 mm"},
    {"arch.front.outer", "22 mm"},
    {"at_lock", "14 mm"},
    {"arch.rear", "{above: 115 mm, inner: 30 mm, outer: 25 mm}"},
    {"axis_to_centre", "40 mm"},
    {"kingpin_inclination", "12 deg"},
    {"garage_entrance", "2000 mm"},
    {"wading_depth", "500 mm"},
    {"step_height", "480 mm"},
    {"headlamp.height", "820 mm"},
    {"headlamp.dip", "1.2 %"},
    {"spare_space.at", "3700 mm"},
    {"front_overhang.item", "bumper"},
    {"front_overhang.height", "420 mm"},
    {"front_overhang.ahead", "880 mm"},
    {"rear_overhang.item", "tow bar"},
    {"rear_overhang.height", "430 mm"},
    {"rear_overhang.behind", "1050 mm"},
    {"belly.item", "transfer case"},
    {"belly.height", "235 mm"},
    {"belly.at", "1500 mm"},
    {"spare_space.diameter", "800 mm"},
    {"spare_space.width", "260 mm"},
    {"roof_height", "1890 mm"},
    {"diameter_change", "{min: -26 mm, max: 50 mm}"},
    {"ride_height_change", "{max: 50 mm}"},
    {"diameter_and_suspension", "{max: 75 mm}"},
    {"track_change", "{max: 50 mm}"},
    {"inset_change", "{min: -13 mm}"},
    {"load_reserve", "10 %"},
    {"limits.speedometer", "rule"},
    {"published", "[au_offroad]"},
    {"rims", "[{diameter: 17, width: 8 in, inset: 25 mm}]"},
    {"forms", "[metric, LT]"},
    {"search.overall_diameter", "{min: 780 mm, max: 830 mm}"},
    {"list", "builtin"},
    {"search.column", "size"},
};

static const char *const alternatives[] = {
    "revs_per_km",          "fitted.rear",
    "options.rear",         "continuously_variable",
    "speedometer.readings", "timed_readings",
    "readings_on",          "setting.choices",
    "driving_gear_teeth",   "characteristic_coefficient",
    "carried.volume",       "carried.of",
    "carried.density",      "carried.dry_mass",
    "carried.occupants",    "carried.occupant_mass",
    "carried.seat",         "carried.tow_ball",
    "carried.trailer_mass", "carried.removed",
    "point.behind",         "point.at",
    "wheel_rate_steps",     "wheel_rate_curve",
    "spring_rate",          "motion_ratio",
    "free_height_change",
};

static const char *const always_given[] = {"vehicle.name", "tyres.fitted.size",
                                           "tyres.options.name", "tyres.options.size"};

static bool ends_with(const char *path, const char *end)
{
    size_t length = strlen(path), wanted = strlen(end);
    return length >= wanted && strcmp(path + length - wanted, end) == 0 &&
           (length == wanted || path[length - wanted - 1] == '.');
}

/* What stands under an alternative is part of it. */
bool key_is_alternative(struct arena *arena, const char *path)
{
    for (size_t i = 0; i < sizeof alternatives / sizeof alternatives[0]; i++)
        if (ends_with(path, alternatives[i]))
            return true;
    const char *point = strrchr(path, '.');
    return point != NULL &&
           key_is_alternative(arena, arena_format(arena, "%.*s", (int)(point - path), path));
}

bool key_is_always_given(const char *path)
{
    for (size_t i = 0; i < sizeof always_given / sizeof always_given[0]; i++)
        if (strcmp(path, always_given[i]) == 0)
            return true;
    return false;
}

static const char *listed_example(const char *path)
{
    const char *best = NULL;
    size_t longest = 0;
    for (size_t i = 0; i < sizeof examples / sizeof examples[0]; i++) {
        size_t length = strlen(examples[i].end);
        if (length > longest && ends_with(path, examples[i].end)) {
            longest = length;
            best = examples[i].text;
        }
    }
    return best;
}

/* The usual example of the kind where the range has it, otherwise the middle of the range. */
static const char *example_in_range(struct arena *arena, enum unit_kind kind, const struct key *key)
{
    struct quantity usual;
    struct quantity_error error;
    bool within = quantity_parse(span_of(unit_kind_example(kind)), kind, &usual, &error) &&
                  usual.si >= key->min && usual.si <= key->max;
    if (within || (key->min == 0 && key->max == 0))
        return unit_kind_example(kind);
    enum unit_id unit = unit_of_kind(kind);
    double middle = unit_from_si(unit, (key->min + key->max) / 2);
    double rounded = fabs(middle) >= 10 ? floor(middle) : floor(middle * 100) / 100;
    return arena_format(arena, "%g%s%s", rounded, unit == UNIT_BARE ? "" : " ",
                        unit_table[unit].name);
}

static const char *example_of_kind(struct arena *arena, const struct key *key)
{
    const char *value = example_in_range(arena, key->unit, key);
    switch (key->kind) {
    case KEY_LETTER:
        return arena_format(arena, "%c", key->choices[0][0]);
    case KEY_CHOICE:
    case KEY_CHOICE_OR_VALUE:
        return key->choices[0];
    case KEY_BOOLEAN:
        return "true";
    case KEY_DESIGNATION:
        return "205/55R16 91V";
    case KEY_TEXT:
        return "a name";
    case KEY_TEXT_LIST:
        return arena_format(arena, "[%s]", key->choices != NULL ? key->choices[0] : "a name");
    case KEY_NUMBER_LIST:
    case KEY_NUMBERS:
        return arena_format(arena, "[%s]", value);
    case KEY_PAIR_LIST:
        return arena_format(arena, "[[%s, %s]]", unit_kind_example(key->unit),
                            unit_kind_example(key->second_unit));
    case KEY_TRIPLE_LIST:
        return arena_format(arena, "[[%s, %s, %s]]", unit_kind_example(key->unit),
                            unit_kind_example(key->second_unit),
                            unit_kind_example(key->third_unit));
    case KEY_STATES:
        return "{touring: all}";
    case KEY_MAPPING:
    case KEY_MAPPING_LIST:
        return NULL;
    case KEY_QUANTITY:
    case KEY_QUANTITY_PAIR:
    case KEY_BOUND:
        break;
    }
    return value;
}

/* "[[1 mi, 61.3 s, 60 mph], ...]" as a value that can be given. */
static const char *without_dots(struct arena *arena, const char *example)
{
    const char *dots = strstr(example, ", ...");
    if (dots == NULL)
        return example;
    return arena_format(arena, "%.*s%s", (int)(dots - example), example, dots + strlen(", ..."));
}

const char *key_example(struct arena *arena, const char *path, const struct key *key)
{
    const char *listed = listed_example(path);
    if (listed != NULL)
        return listed;
    return key->example != NULL ? without_dots(arena, key->example) : example_of_kind(arena, key);
}
