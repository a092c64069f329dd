/* Names, units and decimals of every figure that a part reports: one row each. Scripts rely on
 * the names. */
#ifndef TYRESUM_REPORT_QUANTITIES_H
#define TYRESUM_REPORT_QUANTITIES_H

#include "base/units.h"

/* What the tree does with a quantity wherever it stands; no other place compares identifiers for
 * the same end. */
enum quantity_policy {
    POLICY_RULES = 1 << 0,      /* several rules may limit it: each is a matter of its own */
    POLICY_PLACES = 1 << 1,     /* each place is a matter of its own */
    POLICY_SIGNED = 1 << 2,     /* a change: told with its sign */
    POLICY_TO_SET = 1 << 3,     /* set by hand: rounded up, and never above its ceiling */
    POLICY_NOTE = 1 << 4,       /* a sentence, with no line in a table */
    POLICY_OF_SPARE = 1 << 5,   /* of the spare that is carried already */
    POLICY_OF_BUILD = 1 << 6,   /* the build's own, whichever tyre is chosen */
    POLICY_BY_HAND = 1 << 7,    /* tried by hand, of every wheel */
    POLICY_OF_SIZE = 1 << 8,    /* judged of designations alone */
    POLICY_OF_PLACARD = 1 << 9, /* at the old placard: the pressure to be set decides */
    POLICY_NO_MARGIN = 1 << 10, /* its distance to the limit is no margin */
    POLICY_ASSUMED = 1 << 11,   /* what was taken where the file is silent: numbered */
    POLICY_ANSWER = 1 << 12,    /* its advice is the whole answer, told before all else */
    POLICY_NEEDED = 1 << 13,    /* an outcome needs it: unknown, the option is open */
    POLICY_OF_FILE = 1 << 14,   /* told once, under the fitted setup, and true of every setup */
    POLICY_DOUBT = 1 << 15,     /* a caution on it doubts what the file says */
    POLICY_LISTED = 1 << 16,    /* told of every tyre that is tried, judged or not */
    POLICY_AT_MOST = 1 << 17,   /* may be no more: rounded down where it is rounded */
    POLICY_AT_LEAST = 1 << 18,  /* may be no less: rounded up */
    POLICY_IN_ARCH = 1 << 19    /* a room that work on the wheel arch gives */
};

/*    identifier, name, title in tables, metric unit, us unit, decimals metric, decimals us, policy,
 *    scale of margins */
#define QUANTITIES(X)                                                                              \
    X(OVERALL_DIAMETER, "overall_diameter", "overall diameter", UNIT_MM, UNIT_IN, 0, 2,            \
      POLICY_OF_SIZE, 0)                                                                           \
    X(OVERALL_DIAMETER_CHANGE, "overall_diameter_change", "diameter change", UNIT_MM, UNIT_IN, 1,  \
      2, POLICY_RULES | POLICY_SIGNED | POLICY_OF_SIZE | POLICY_NEEDED, 0.02)                      \
    X(DIAMETER_CHANGE_SHARE, "overall_diameter_change_percent", "diameter change", UNIT_PERCENT,   \
      UNIT_PERCENT, 2, 2, POLICY_RULES | POLICY_OF_SIZE | POLICY_NEEDED, 0.02)                     \
    X(DIAMETER_LEAST, "overall_diameter_min", "smallest diameter when new", UNIT_MM, UNIT_IN, 1,   \
      2, 0, 0)                                                                                     \
    X(DIAMETER_LARGEST, "overall_diameter_max", "largest diameter when new", UNIT_MM, UNIT_IN, 1,  \
      2, 0, 0)                                                                                     \
    X(WIDTH_LARGEST, "section_width_max", "largest section width when new", UNIT_MM, UNIT_IN, 1,   \
      2, 0, 0)                                                                                     \
    X(STATIC_LOADED_RADIUS, "static_loaded_radius", "static loaded radius", UNIT_MM, UNIT_IN, 1,   \
      2, 0, 0)                                                                                     \
    X(MEASURING_RIM, "measuring_rim", "measuring rim", UNIT_IN, UNIT_IN, 2, 2, 0, 0)               \
    X(RIM_LEAST, "rim_min", "narrowest rim", UNIT_IN, UNIT_IN, 2, 2, 0, 0)                         \
    X(RIM_LARGEST, "rim_max", "widest rim", UNIT_IN, UNIT_IN, 2, 2, 0, 0)                          \
    X(SECTION_WIDTH, "section_width_on_rim", "section width on its rim", UNIT_MM, UNIT_IN, 0, 2,   \
      0, 0)                                                                                        \
    X(REVOLUTIONS, "revolutions", "revolutions", UNIT_PER_KM, UNIT_PER_MILE, 1, 1, 0, 0)           \
    X(LOAD_AT_INDEX, "load_index_load", "load by the index", UNIT_KG, UNIT_LB, 0, 0,               \
      POLICY_OF_SIZE | POLICY_NEEDED, 0)                                                           \
    X(LOAD_INDEX_LISTED, "load_index_listed", "load index, beside lists", UNIT_BARE, UNIT_BARE, 0, \
      0, POLICY_DOUBT | POLICY_NOTE | POLICY_NO_MARGIN, 0)                                         \
    X(SPEED_SYMBOL, "speed_symbol_speed", "speed by the symbol", UNIT_KMH, UNIT_MPH, 0, 0,         \
      POLICY_NEEDED, 5)                                                                            \
    X(RIM_WIDTH, "rim_width", "rim width", UNIT_IN, UNIT_IN, 2, 2,                                 \
      POLICY_NO_MARGIN | POLICY_NEEDED, 0)                                                         \
    X(AXLE_LOAD, "axle_load", "axle load", UNIT_KG, UNIT_LB, 0, 0, POLICY_NEEDED, 0)               \
    X(AXLE_RATING_LEFT, "axle_rating_left", "unused axle rating", UNIT_KG, UNIT_LB, 0, 0,          \
      POLICY_OF_BUILD | POLICY_NEEDED, 150)                                                        \
    X(LEFT_OUT, "left_out", "left out", UNIT_KG, UNIT_LB, 0, 0, POLICY_PLACES, 0)                  \
    X(GROSS_LOAD, "gross_load", "gross load", UNIT_KG, UNIT_LB, 0, 0, 0, 0)                        \
    X(GROSS_LEFT, "gross_left", "unused gross rating", UNIT_KG, UNIT_LB, 0, 0,                     \
      POLICY_OF_BUILD | POLICY_NEEDED, 150)                                                        \
    X(ROOF_LEFT, "roof_left", "unused roof rating", UNIT_KG, UNIT_LB, 0, 0,                        \
      POLICY_OF_BUILD | POLICY_NEEDED, 20)                                                         \
    X(TOW_BALL_LEFT, "tow_ball_left", "unused tow-ball rating", UNIT_KG, UNIT_LB, 0, 0,            \
      POLICY_OF_BUILD | POLICY_NEEDED, 20)                                                         \
    X(COMBINATION_LEFT, "combination_left", "unused combination rating", UNIT_KG, UNIT_LB, 0, 0,   \
      POLICY_OF_BUILD | POLICY_NEEDED, 150)                                                        \
    X(AXLE_RATING_LEFT_SHARE, "axle_rating_left_percent", "unused axle rating", UNIT_PERCENT,      \
      UNIT_PERCENT, 1, 1, 0, 0)                                                                    \
    X(GROSS_LEFT_SHARE, "gross_left_percent", "unused gross rating", UNIT_PERCENT, UNIT_PERCENT,   \
      1, 1, 0, 0)                                                                                  \
    X(ROOF_LEFT_SHARE, "roof_left_percent", "unused roof rating", UNIT_PERCENT, UNIT_PERCENT, 1,   \
      1, 0, 0)                                                                                     \
    X(TOW_BALL_LEFT_SHARE, "tow_ball_left_percent", "unused tow-ball rating", UNIT_PERCENT,        \
      UNIT_PERCENT, 1, 1, 0, 0)                                                                    \
    X(COMBINATION_LEFT_SHARE, "combination_left_percent", "unused combination rating",             \
      UNIT_PERCENT, UNIT_PERCENT, 1, 1, 0, 0)                                                      \
    X(PLACE_FROM, "place_from", "may stand from", UNIT_MM, UNIT_IN, 0, 1, POLICY_AT_LEAST, 0)      \
    X(PLACE_TO, "place_to", "may stand to", UNIT_MM, UNIT_IN, 0, 1, POLICY_AT_MOST, 0)             \
    X(LARGEST_ITEM, "largest_item", "heaviest item still possible", UNIT_KG, UNIT_LB, 0, 0,        \
      POLICY_AT_MOST, 0)                                                                           \
    X(WEIGHED_WITH, "weighed_with", "aboard when weighed", UNIT_BARE, UNIT_BARE, 0, 0,             \
      POLICY_NEEDED | POLICY_DOUBT, 0)                                                             \
    X(TYRE_LOAD, "tyre_load", "load on the heaviest tyre", UNIT_KG, UNIT_LB, 0, 0, 0, 0)           \
    X(TYRE_CAPACITY, "tyre_capacity", "tyre capacity", UNIT_KG, UNIT_LB, 0, 0,                     \
      POLICY_PLACES | POLICY_OF_PLACARD | POLICY_NEEDED, 0)                                        \
    X(CAPACITY_LEFT, "capacity_left", "unused capacity, heaviest tyre", UNIT_PERCENT,              \
      UNIT_PERCENT, 1, 1, 0, 0)                                                                    \
    X(TYRES_CARRY_RATING, "tyres_carry_axle_rating", "axle rating, carried by its tyres", UNIT_KG, \
      UNIT_LB, 0, 0, POLICY_NEEDED, 150)                                                           \
    X(WHEEL_LOAD, "wheel_rating_left", "unused wheel rating", UNIT_KG, UNIT_LB, 0, 0,              \
      POLICY_NEEDED, 100)                                                                          \
    X(PRESSURE_AS_REPLACED, "pressure_as_replaced", "pressure as replaced", UNIT_KPA, UNIT_PSI, 0, \
      1, 0, 0)                                                                                     \
    X(PRESSURE_AS_RATED, "pressure_as_rated", "pressure for the axle rating", UNIT_KPA, UNIT_PSI,  \
      0, 1, 0, 0)                                                                                  \
    X(PRESSURE_AS_BUILT, "pressure_as_built", "pressure as built", UNIT_KPA, UNIT_PSI, 0, 1, 0, 0) \
    X(PRESSURE_RECOMMENDED, "pressure_recommended", "pressure recommended, cold", UNIT_KPA,        \
      UNIT_PSI, 0, 0, POLICY_TO_SET | POLICY_NEEDED | POLICY_LISTED, 1e5)                          \
    X(PRESSURE_AS_SET, "pressure_as_set", "pressure as set, cold", UNIT_KPA, UNIT_PSI, 0, 0,       \
      POLICY_NO_MARGIN, 0)                                                                         \
    X(SPARE_CAPACITY, "spare_capacity", "spare: load by its index", UNIT_KG, UNIT_LB, 0, 0,        \
      POLICY_OF_SPARE | POLICY_NEEDED | POLICY_NO_MARGIN, 0)                                       \
    X(SPARE_PRESSURE, "spare_pressure", "spare: pressure that it needs", UNIT_KPA, UNIT_PSI, 0, 0, \
      POLICY_TO_SET | POLICY_OF_SPARE | POLICY_NEEDED, 0)                                          \
    X(WHEEL_PRESSURE, "wheel_pressure_left", "unused wheel pressure rating", UNIT_KPA, UNIT_PSI,   \
      0, 1, POLICY_NEEDED, 5e4)                                                                    \
    X(WARNING_THRESHOLD, "warning_threshold", "pressure warning must come by", UNIT_KPA, UNIT_PSI, \
      0, 1, 0, 0)                                                                                  \
    X(WARNING_AS_SET, "warning_as_set", "the vehicle's own pressure warning", UNIT_KPA, UNIT_PSI,  \
      0, 1, 0, 0)                                                                                  \
    X(TWIN_ROOM, "twin_room", "room between twin tyres", UNIT_MM, UNIT_IN, 0, 2, POLICY_NEEDED,    \
      0.02)                                                                                        \
    X(MARGIN_DIFFERENCE, "margin_difference", "front tyres' margin over the rear's", UNIT_PERCENT, \
      UNIT_PERCENT, 1, 1, 0, 0)                                                                    \
    X(LOADED_RADIUS, "loaded_radius", "loaded radius", UNIT_MM, UNIT_IN, 0, 2, 0, 0)               \
    X(TYRE_DEFLECTION, "tyre_deflection", "deflection", UNIT_MM, UNIT_IN, 0, 2, 0, 0)              \
    X(CONTACT_LENGTH, "contact_length", "contact length, at most", UNIT_MM, UNIT_IN, 0, 1, 0, 0)   \
    X(CLEARANCE_LOST, "clearance_lost", "clearance lost to low pressure", UNIT_MM, UNIT_IN, 0, 2,  \
      0, 0)                                                                                        \
    X(OFF_ROAD_SPEED, "off_road_speed", "speed that low pressure allows", UNIT_KMH, UNIT_MPH, 0,   \
      0, 0, 0)                                                                                     \
    X(FREE_AIR, "free_air", "free air to fill the tyres again", UNIT_L, UNIT_L, 0, 0, 0, 0)        \
    X(INFLATING_TIME, "inflating_time", "time to fill the tyres again", UNIT_MIN, UNIT_MIN, 1, 1,  \
      0, 0)                                                                                        \
    X(NOT_COVERED, "not_covered", "not covered", UNIT_BARE, UNIT_BARE, 0, 0, 0, 0)                 \
    X(SPEEDOMETER_ERROR, "speedometer_error", "speedometer error", UNIT_PERCENT, UNIT_PERCENT, 2,  \
      2, POLICY_SIGNED | POLICY_NEEDED | POLICY_LISTED, 0.02)                                      \
    X(TRUE_SPEED, "true_speed", "true speed", UNIT_KMH, UNIT_MPH, 1, 1, 0, 0)                      \
    X(SHOWN_SPEED, "shown_speed", "shown speed", UNIT_KMH, UNIT_MPH, 1, 1, 0, 0)                   \
    X(SETTING_EXACT, "setting_exact", "setting that meets the aim", UNIT_BARE, UNIT_BARE, 2, 2, 0, \
      0)                                                                                           \
    X(SETTING_NEAREST, "setting_nearest", "setting to enter", UNIT_BARE, UNIT_BARE, 2, 2,          \
      POLICY_NEEDED, 0)                                                                            \
    X(REMAINING_ERROR, "remaining_error", "error that remains", UNIT_PERCENT, UNIT_PERCENT, 2, 2,  \
      0, 0)                                                                                        \
    X(READING_FIT_ERROR, "reading_standard_error", "standard error of a reading", UNIT_KMH,        \
      UNIT_MPH, 2, 2, 0, 0)                                                                        \
    X(ANSWER, "what_to_enter", "what to enter", UNIT_BARE, UNIT_BARE, 2, 2, POLICY_ANSWER, 0)      \
    X(SETTING_BELOW, "setting_below", "setting below the exact one", UNIT_BARE, UNIT_BARE, 2, 2,   \
      0, 0)                                                                                        \
    X(SETTING_ABOVE, "setting_above", "setting above the exact one", UNIT_BARE, UNIT_BARE, 2, 2,   \
      0, 0)                                                                                        \
    X(ERROR_BELOW, "remaining_error_below", "error with the setting below", UNIT_PERCENT,          \
      UNIT_PERCENT, 2, 2, 0, 0)                                                                    \
    X(ERROR_ABOVE, "remaining_error_above", "error with the setting above", UNIT_PERCENT,          \
      UNIT_PERCENT, 2, 2, 0, 0)                                                                    \
    X(REMAINING_EXACT, "remaining_error_exact", "error with the exact setting", UNIT_PERCENT,      \
      UNIT_PERCENT, 2, 2, 0, 0)                                                                    \
    X(SETTING_SMALLEST, "setting_smallest_change", "smallest change that is lawful", UNIT_BARE,    \
      UNIT_BARE, 2, 2, 0, 0)                                                                       \
    X(SETTING_LAWFUL_LEAST, "setting_lawful_least", "lowest lawful setting", UNIT_BARE, UNIT_BARE, \
      2, 2, 0, 0)                                                                                  \
    X(SETTING_LAWFUL_MOST, "setting_lawful_most", "highest lawful setting", UNIT_BARE, UNIT_BARE,  \
      2, 2, 0, 0)                                                                                  \
    X(ADAPTER_RATIO, "adapter_ratio", "adapter instead, pulses in to out", UNIT_BARE, UNIT_BARE,   \
      4, 4, 0, 0)                                                                                  \
    X(GEAR_RATIO, "speedometer_gear_ratio", "driven to driving teeth for the aim", UNIT_BARE,      \
      UNIT_BARE, 4, 4, 0, 0)                                                                       \
    X(SENSOR_COUNTS, "sensor_counts", "counts that reach the instrument", UNIT_PER_KM,             \
      UNIT_PER_MILE, 1, 1, 0, 0)                                                                   \
    X(CIRCUMFERENCE_CHANGE, "circumference_change", "rolling circumference change", UNIT_PERCENT,  \
      UNIT_PERCENT, 2, 2, 0, 0)                                                                    \
    X(AXLES_CHANGE, "front_to_rear_change", "front to rear circumference, change", UNIT_PERCENT,   \
      UNIT_PERCENT, 2, 2, 0, 0)                                                                    \
    X(TEST_SPEED_ERROR, "test_speed_error", "error at a test speed", UNIT_PERCENT, UNIT_PERCENT,   \
      2, 2, 0, 0)                                                                                  \
    X(READING_ERROR, "reading_error", "error of a reading", UNIT_PERCENT, UNIT_PERCENT, 2, 2, 0,   \
      0)                                                                                           \
    X(READING_RESIDUAL, "reading_residual", "reading, distance from the line", UNIT_KMH, UNIT_MPH, \
      2, 2, POLICY_DOUBT, 0)                                                                       \
    X(FIT_SCALE, "fit_scale", "slope of the readings", UNIT_BARE, UNIT_BARE, 5, 5, 0, 0)           \
    X(FIT_OFFSET, "fit_offset", "shown at standstill", UNIT_KMH, UNIT_MPH, 2, 2, 0, 0)             \
    X(MEASURED_ERROR, "measured_error", "error by the readings", UNIT_PERCENT, UNIT_PERCENT, 2, 2, \
      POLICY_DOUBT, 0)                                                                             \
    X(LAWFUL_CROSSING, "lawful_crossing", "speed where the law is crossed", UNIT_KMH, UNIT_MPH, 1, \
      1, 0, 0)                                                                                     \
    X(CIRCUMFERENCE_MOST, "largest_lawful_circumference", "largest lawful circumference", UNIT_MM, \
      UNIT_IN, 0, 2, 0, 0)                                                                         \
    X(CIRCUMFERENCE_LEAST, "smallest_lawful_circumference", "smallest lawful circumference",       \
      UNIT_MM, UNIT_IN, 0, 2, 0, 0)                                                                \
    X(LAWFUL_SHOWN_LEAST, "lawful_shown_least", "least that may be shown", UNIT_KMH, UNIT_MPH, 2,  \
      2, 0, 0)                                                                                     \
    X(LAWFUL_SHOWN_MOST, "lawful_shown_most", "most that may be shown", UNIT_KMH, UNIT_MPH, 2, 2,  \
      0, 0)                                                                                        \
    X(LAWFUL_TRUE_LEAST, "lawful_true_least", "least that may be true", UNIT_KMH, UNIT_MPH, 2, 2,  \
      0, 0)                                                                                        \
    X(LAWFUL_TRUE_MOST, "lawful_true_most", "most that may be true", UNIT_KMH, UNIT_MPH, 2, 2, 0,  \
      0)                                                                                           \
    X(SHOWN_AT_LIMIT, "shown_at_limit", "shown at the limit", UNIT_KMH, UNIT_MPH, 1, 1, 0, 0)      \
    X(ODOMETER_ERROR, "odometer_error", "odometer error", UNIT_PERCENT, UNIT_PERCENT, 2, 2, 0, 0)  \
    X(TRUE_SINCE_CHANGE, "true_since_change", "true distance since the change", UNIT_KM, UNIT_MI,  \
      1, 1, 0, 0)                                                                                  \
    X(OFF_SINCE_CHANGE, "odometer_off_since_change", "odometer off since the change", UNIT_KM,     \
      UNIT_MI, 1, 1, 0, 0)                                                                         \
    X(SERVICE_DUE, "service_due_at_shown", "service due when shown", UNIT_KM, UNIT_MI, 0, 0, 0, 0) \
    X(ECONOMY_FACTOR, "economy_factor", "true economy: shown times", UNIT_BARE, UNIT_BARE, 4, 4,   \
      0, 0)                                                                                        \
    X(TRUE_CONSUMPTION, "true_consumption", "true consumption", UNIT_L_PER_100KM, UNIT_MPG, 2, 2,  \
      0, 0)                                                                                        \
    X(ODOMETER_TRUE, "odometer_true_per_100", "true distance per 100 shown", UNIT_BARE, UNIT_BARE, \
      2, 2, 0, 0)                                                                                  \
    X(CONSUMPTION_FACTOR, "consumption_factor", "true consumption: shown times", UNIT_BARE,        \
      UNIT_BARE, 4, 4, 0, 0)                                                                       \
    X(OVERALL_RATIO, "overall_ratio", "overall ratio", UNIT_BARE, UNIT_BARE, 3, 3, 0, 0)           \
    X(SPEED_PER_1000, "speed_per_1000_rpm", "road speed per 1000 rpm", UNIT_KMH, UNIT_MPH, 2, 2,   \
      0, 0)                                                                                        \
    X(ENGINE_SPEED, "engine_speed", "engine speed", UNIT_RPM, UNIT_RPM, 0, 0, 0, 0)                \
    X(ROAD_SPEED, "road_speed", "road speed", UNIT_KMH, UNIT_MPH, 1, 1, 0, 0)                      \
    X(CRAWL_RATIO, "crawl_ratio", "crawl ratio", UNIT_BARE, UNIT_BARE, 2, 2, 0, 0)                 \
    X(CRAWL_SPEED, "crawl_speed", "crawl speed at idle", UNIT_KMH, UNIT_MPH, 2, 2, 0, 0)           \
    X(EFFECTIVE_AXLE, "effective_axle_ratio", "effective axle ratio", UNIT_BARE, UNIT_BARE, 3, 3,  \
      0, 0)                                                                                        \
    X(RESTORING_AXLE, "restoring_axle_ratio", "restoring axle ratio", UNIT_BARE, UNIT_BARE, 3, 3,  \
      0, 0)                                                                                        \
    X(NEAREST_AXLE, "nearest_axle_choice", "nearest axle choice", UNIT_BARE, UNIT_BARE, 3, 3, 0,   \
      0)                                                                                           \
    X(AXLE_REMAINS, "axle_choice_remains", "engine speed still off by", UNIT_PERCENT,              \
      UNIT_PERCENT, 2, 2, 0, 0)                                                                    \
    X(AXLE_REMAINS_SPEED, "axle_choice_remains_rpm", "engine speed change", UNIT_RPM, UNIT_RPM, 0, \
      0, 0, 0)                                                                                     \
    X(DRIVE_BACK_RANK, "drive_back_rank", "rank, to bring back the drive", UNIT_BARE, UNIT_BARE,   \
      0, 0, 0, 0)                                                                                  \
    X(CRUISE_BACK_RANK, "cruise_back_rank", "rank, to bring back the cruise", UNIT_BARE,           \
      UNIT_BARE, 0, 0, 0, 0)                                                                       \
    X(GEAR_STEP, "gear_step", "step to the next gear", UNIT_BARE, UNIT_BARE, 3, 3, 0, 0)           \
    X(UPSHIFT_DROP, "upshift_drop", "drop at the upshift", UNIT_RPM, UNIT_RPM, 0, 0, 0, 0)         \
    X(RATIO_SPREAD, "ratio_spread", "spread of the gearbox", UNIT_BARE, UNIT_BARE, 2, 2, 0, 0)     \
    X(WHEEL_TORQUE, "wheel_torque", "wheel torque", UNIT_NM, UNIT_LB_FT, 0, 0, 0, 0)               \
    X(TRACTIVE_FORCE, "tractive_force", "tractive force", UNIT_N, UNIT_LBF, 0, 0, 0, 0)            \
    X(GRIP_FORCE, "grip_force", "force that grip allows", UNIT_N, UNIT_LBF, 0, 0, 0, 0)            \
    X(AIR_RESISTANCE, "air_resistance", "air resistance", UNIT_N, UNIT_LBF, 0, 1, 0, 0)            \
    X(ROLLING_RESISTANCE, "rolling_resistance", "rolling resistance", UNIT_N, UNIT_LBF, 0, 1, 0,   \
      0)                                                                                           \
    X(GRADE, "grade", "grade climbed", UNIT_PERCENT, UNIT_PERCENT, 1, 1, 0, 0)                     \
    X(GRIP_GRADE, "grade_grip_limit", "grade that grip allows", UNIT_PERCENT, UNIT_PERCENT, 1, 1,  \
      0, 0)                                                                                        \
    X(SPEED_HELD, "speed_held", "speed held", UNIT_KMH, UNIT_MPH, 1, 1, 0, 0)                      \
    X(GEAR_NEEDED, "gear_needed", "gear needed", UNIT_BARE, UNIT_BARE, 0, 0, 0, 0)                 \
    X(ACCELERATION_CHANGE, "acceleration_change", "acceleration change", UNIT_PERCENT,             \
      UNIT_PERCENT, 1, 1, 0, 0)                                                                    \
    X(MISMATCH, "circumference_mismatch", "front turns faster by", UNIT_PERCENT, UNIT_PERCENT, 2,  \
      2, 0, 0)                                                                                     \
    X(MISMATCH_SLIP, "mismatch_slip", "slip front to rear", UNIT_M_PER_KM, UNIT_FT_PER_MILE, 1, 1, \
      0, 0)                                                                                        \
    X(SPARE_MISMATCH, "spare_mismatch", "spare's circumference to the set's", UNIT_PERCENT,        \
      UNIT_PERCENT, 2, 2, 0, 0)                                                                    \
    X(SPARE_SLIP, "spare_slip", "slip beside the spare", UNIT_M_PER_KM, UNIT_FT_PER_MILE, 1, 1, 0, \
      0)                                                                                           \
    X(TREAD_DIFFERENCE, "tread_difference_allowed", "tread depth may differ by", UNIT_MM, UNIT_IN, \
      1, 3, 0, 0)                                                                                  \
    X(UNDER_AXLE, "under_axle_clearance", "clearance under the axle", UNIT_MM, UNIT_IN, 0, 2, 0,   \
      0)                                                                                           \
    X(UNDER_AXLE_CHANGE, "under_axle_clearance_change", "clearance under the axle, change",        \
      UNIT_MM, UNIT_IN, 1, 2, POLICY_SIGNED, 0)                                                    \
    X(BODY, "body_clearance", "body clearance", UNIT_MM, UNIT_IN, 0, 2, 0, 0)                      \
    X(BODY_CHANGE, "body_clearance_change", "body clearance, change by the tyre", UNIT_MM,         \
      UNIT_IN, 1, 2, 0, 0)                                                                         \
    X(APPROACH, "approach_angle", "approach angle", UNIT_DEG, UNIT_DEG, 1, 1, 0, 0)                \
    X(DEPARTURE, "departure_angle", "departure angle", UNIT_DEG, UNIT_DEG, 1, 1, 0, 0)             \
    X(BREAKOVER, "breakover_angle", "ramp breakover angle", UNIT_DEG, UNIT_DEG, 1, 1, 0, 0)        \
    X(ARCH_ABOVE, "arch_above", "room above the tyre", UNIT_MM, UNIT_IN, 0, 2,                     \
      POLICY_NEEDED | POLICY_IN_ARCH, 0.02)                                                        \
    X(ARCH_INNER, "arch_inner", "room inside", UNIT_MM, UNIT_IN, 0, 2,                             \
      POLICY_NEEDED | POLICY_IN_ARCH, 0.02)                                                        \
    X(ARCH_OUTER, "arch_outer", "room outside", UNIT_MM, UNIT_IN, 0, 2,                            \
      POLICY_NEEDED | POLICY_IN_ARCH, 0.02)                                                        \
    X(ARCH_LOCK, "arch_at_lock", "room at lock", UNIT_MM, UNIT_IN, 0, 2,                           \
      POLICY_NEEDED | POLICY_IN_ARCH, 0.02)                                                        \
    X(ARCH_ABOVE_CHANGE, "arch_above_change", "room above, change", UNIT_MM, UNIT_IN, 1, 2, 0, 0)  \
    X(ARCH_INNER_CHANGE, "arch_inner_change", "room inside, change", UNIT_MM, UNIT_IN, 1, 2, 0, 0) \
    X(ARCH_OUTER_CHANGE, "arch_outer_change", "room outside, change", UNIT_MM, UNIT_IN, 1, 2, 0,   \
      0)                                                                                           \
    X(TRACK_CHANGE, "track_change", "track change", UNIT_MM, UNIT_IN, 1, 2,                        \
      POLICY_RULES | POLICY_NEEDED, 0.02)                                                          \
    X(SPACER_CHANGE, "spacer_change", "spacer change", UNIT_MM, UNIT_IN, 1, 2,                     \
      POLICY_RULES | POLICY_NEEDED, 0.01)                                                          \
    X(INSET_CHANGE, "inset_change", "inset change", UNIT_MM, UNIT_IN, 1, 2,                        \
      POLICY_RULES | POLICY_NEEDED, 0.01)                                                          \
    X(RIDE_HEIGHT_CHANGE, "ride_height_change", "ride height change", UNIT_MM, UNIT_IN, 1, 2,      \
      POLICY_RULES | POLICY_NEEDED, 0.02)                                                          \
    X(RIDE_HEIGHT, "ride_height", "height beside the vehicle as weighed", UNIT_MM, UNIT_IN, 0, 2,  \
      POLICY_SIGNED, 0)                                                                            \
    X(CONSTANT_LOAD, "constant_load", "load that the springs always carry", UNIT_KG, UNIT_LB, 0,   \
      0, POLICY_SIGNED | POLICY_NEEDED, 150)                                                       \
    X(DIAMETER_AND_SUSPENSION, "diameter_and_suspension", "diameter and suspension together",      \
      UNIT_MM, UNIT_IN, 1, 2, POLICY_RULES | POLICY_NEEDED, 0.02)                                  \
    X(SPARE_ROOM, "spare_room", "room round the spare", UNIT_MM, UNIT_IN, 0, 2,                    \
      POLICY_PLACES | POLICY_OF_SPARE | POLICY_NEEDED, 0.05)                                       \
    X(ROOF_HEIGHT, "roof_height", "roof height", UNIT_MM, UNIT_IN, 0, 2, 0, 0)                     \
    X(ROOF_CHANGE, "roof_height_change", "roof height, change by the tyre", UNIT_MM, UNIT_IN, 1,   \
      2, 0, 0)                                                                                     \
    X(GARAGE_ROOM, "garage_room", "room under the garage entrance", UNIT_MM, UNIT_IN, 0, 2, 0,     \
      0.05)                                                                                        \
    X(WADING_DEPTH, "wading_depth", "wading depth", UNIT_MM, UNIT_IN, 0, 2, 0, 0)                  \
    X(STEP_HEIGHT, "step_height", "step height", UNIT_MM, UNIT_IN, 0, 2, 0, 0)                     \
    X(RAKE, "rake", "rake, nose down from the fitted state", UNIT_DEG, UNIT_DEG, 2, 2, 0, 0)       \
    X(PITCH, "pitch", "pitch by the load, nose down", UNIT_DEG, UNIT_DEG, 2, 2, 0, 0)              \
    X(HEADLAMP_AIM, "headlamp_aim_change", "headlamp aim, up from the fitted state", UNIT_PERCENT, \
      UNIT_PERCENT, 2, 2, 0, 0)                                                                    \
    X(HEADLAMP_DIP, "headlamp_dip", "headlamp dip", UNIT_PERCENT, UNIT_PERCENT, 2, 2, 0, 0)        \
    X(APPROACH_CHANGE, "approach_angle_change", "approach angle, change", UNIT_DEG, UNIT_DEG, 2,   \
      2, 0, 0)                                                                                     \
    X(DEPARTURE_CHANGE, "departure_angle_change", "departure angle, change", UNIT_DEG, UNIT_DEG,   \
      2, 2, 0, 0)                                                                                  \
    X(BREAKOVER_CHANGE, "breakover_angle_change", "ramp breakover angle, change", UNIT_DEG,        \
      UNIT_DEG, 2, 2, 0, 0)                                                                        \
    X(APPROACH_BEFORE, "approach_angle_before", "approach angle as measured", UNIT_DEG, UNIT_DEG,  \
      1, 1, 0, 0)                                                                                  \
    X(DEPARTURE_BEFORE, "departure_angle_before", "departure angle as measured", UNIT_DEG,         \
      UNIT_DEG, 1, 1, 0, 0)                                                                        \
    X(BREAKOVER_BEFORE, "breakover_angle_before", "ramp breakover angle as measured", UNIT_DEG,    \
      UNIT_DEG, 1, 1, 0, 0)                                                                        \
    X(BUMP_TRAVEL_LEFT, "bump_travel_left", "travel left to bump", UNIT_MM, UNIT_IN, 0, 2, 0, 0)   \
    X(TRAVEL_KEPT, "suspension_travel_kept", "suspension travel kept", UNIT_PERCENT, UNIT_PERCENT, \
      1, 1, POLICY_RULES | POLICY_NEEDED, 0)                                                       \
    X(BUMP_STOP_TO_FIT, "bump_stop_to_fit", "bump stop alone, to fit", UNIT_MM, UNIT_IN, 0, 2, 0,  \
      0)                                                                                           \
    X(INSET_TO_FIT, "inset_to_fit", "inset alone, to fit", UNIT_MM, UNIT_IN, 0, 2, 0, 0)           \
    X(TRIM_TO_FIT, "trim_to_fit", "trim alone, to fit", UNIT_MM, UNIT_IN, 0, 2, 0, 0)              \
    X(LIFT_TO_FIT, "lift_to_fit", "lift alone, to fit", UNIT_MM, UNIT_IN, 0, 2, 0, 0)              \
    X(BACKSPACING, "backspacing", "backspacing", UNIT_MM, UNIT_IN, 1, 2, 0, 0)                     \
    X(RIM_EDGE_INNER, "rim_edge_inner_move", "inner rim edge moves inward by", UNIT_MM, UNIT_IN,   \
      1, 2, 0, 0)                                                                                  \
    X(RIM_EDGE_OUTER, "rim_edge_outer_move", "outer rim edge moves outward by", UNIT_MM, UNIT_IN,  \
      1, 2, 0, 0)                                                                                  \
    X(TYRE_EDGE_INNER, "tyre_edge_inner_move", "inner tyre edge moves inward by", UNIT_MM,         \
      UNIT_IN, 1, 2, 0, 0)                                                                         \
    X(TYRE_EDGE_OUTER, "tyre_edge_outer_move", "outer tyre edge moves outward by", UNIT_MM,        \
      UNIT_IN, 1, 2, 0, 0)                                                                         \
    X(SCRUB_RADIUS, "scrub_radius", "scrub radius", UNIT_MM, UNIT_IN, 1, 2, 0, 0)                  \
    X(SCRUB_RADIUS_CHANGE, "scrub_radius_change", "scrub radius, change", UNIT_MM, UNIT_IN, 1, 2,  \
      0, 0)                                                                                        \
    X(WHEEL_BY_HAND, "wheel_to_check", "wheel, to check by hand", UNIT_BARE, UNIT_BARE, 0, 0,      \
      POLICY_BY_HAND, 0)                                                                           \
    X(HUB_BORE, "hub_bore", "hub bore", UNIT_MM, UNIT_IN, 1, 2, 0, 0)                              \
    X(BOLT_CIRCLE, "bolt_pattern", "bolt circle", UNIT_MM, UNIT_IN, 1, 2, 0, 0)                    \
    X(BRAKE_ROOM, "brake_room", "room round the brake", UNIT_MM, UNIT_IN, 1, 2, 0, 0.005)          \
    X(SPARE_CIRCUMFERENCE, "spare_circumference_change", "spare: circumference to its axle's",     \
      UNIT_PERCENT, UNIT_PERCENT, 2, 2, POLICY_OF_SPARE, 0)                                        \
    X(SPARE_SET, "spare_set", "matched spare", UNIT_BARE, UNIT_BARE, 0, 0, POLICY_OF_SPARE, 0)     \
    X(SPARE_MASS, "spare_mass_change", "spare: heavier by", UNIT_KG, UNIT_LB, 1, 1,                \
      POLICY_OF_SPARE, 0)                                                                          \
    X(LOAD_INDEX_CHANGE, "load_index_change", "load index, change in steps", UNIT_BARE, UNIT_BARE, \
      0, 0, POLICY_RULES | POLICY_OF_SIZE | POLICY_NEEDED, 0)                                      \
    X(SPEED_SYMBOL_CHANGE, "speed_symbol_change", "speed symbol, change in steps", UNIT_BARE,      \
      UNIT_BARE, 0, 0, POLICY_RULES | POLICY_OF_SIZE | POLICY_NEEDED, 0)                           \
    X(PART_MISSING, "part_missing", "part not computed", UNIT_BARE, UNIT_BARE, 0, 0,               \
      POLICY_NOTE | POLICY_NEEDED | POLICY_OF_FILE, 0)                                             \
    X(MIXED_SOURCES, "mixed_sources", "figures of two kinds", UNIT_BARE, UNIT_BARE, 0, 0,          \
      POLICY_NOTE, 0)                                                                              \
    X(ASSUMPTION, "assumption", "taken as", UNIT_BARE, UNIT_BARE, 0, 0,                            \
      POLICY_NOTE | POLICY_ASSUMED, 0)                                                             \
    X(LEAST_LENGTH, "least_change", "least change", UNIT_MM, UNIT_IN, 0, 2, POLICY_NOTE, 0)        \
    X(LEAST_NUMBER, "least_change", "least change", UNIT_BARE, UNIT_BARE, 3, 3, POLICY_NOTE, 0)    \
    X(LEAST_SPRING, "least_change", "least change", UNIT_N_PER_MM, UNIT_LB_PER_IN, 1, 0,           \
      POLICY_NOTE, 0)                                                                              \
    X(LEAST_MASS, "least_change", "least change", UNIT_KG, UNIT_LB, 0, 0, POLICY_NOTE, 0)          \
    X(LEAST_PRESSURE, "least_change", "least change", UNIT_KPA, UNIT_PSI, 0, 1, POLICY_NOTE, 0)    \
    X(LEAST_SHARE, "least_change", "least change", UNIT_PERCENT, UNIT_PERCENT, 1, 1, POLICY_NOTE,  \
      0)                                                                                           \
    X(LEAST_NONE, "least_change", "least change", UNIT_BARE, UNIT_BARE, 0, 0, POLICY_NOTE, 0)      \
    X(OFF_LENGTH, "may_be_off", "may be off", UNIT_MM, UNIT_IN, 1, 2, POLICY_NOTE | POLICY_SIGNED, \
      0)                                                                                           \
    X(OFF_MASS, "may_be_off", "may be off", UNIT_KG, UNIT_LB, 0, 0, POLICY_NOTE | POLICY_SIGNED,   \
      0)                                                                                           \
    X(OFF_ANGLE, "may_be_off", "may be off", UNIT_DEG, UNIT_DEG, 2, 2,                             \
      POLICY_NOTE | POLICY_SIGNED, 0)                                                              \
    X(OFF_SHARE, "may_be_off", "may be off", UNIT_PERCENT, UNIT_PERCENT, 2, 2,                     \
      POLICY_NOTE | POLICY_SIGNED, 0)                                                              \
    X(OFF_STIFFNESS, "may_be_off", "may be off", UNIT_N_PER_MM, UNIT_LB_PER_IN, 1, 0,              \
      POLICY_NOTE | POLICY_SIGNED, 0)                                                              \
    X(OFF_SPEED, "may_be_off", "may be off", UNIT_KMH, UNIT_MPH, 2, 2,                             \
      POLICY_NOTE | POLICY_SIGNED, 0)                                                              \
    X(OFF_VOLUME, "may_be_off", "may be off", UNIT_L, UNIT_GAL, 1, 2, POLICY_NOTE | POLICY_SIGNED, \
      0)                                                                                           \
    X(OFF_DENSITY, "may_be_off", "may be off", UNIT_KG_PER_L, UNIT_KG_PER_L, 3, 3,                 \
      POLICY_NOTE | POLICY_SIGNED, 0)                                                              \
    X(OFF_NONE, "may_be_off", "may be off", UNIT_BARE, UNIT_BARE, 0, 0, POLICY_NOTE, 0)

#define QUANTITY_ID(id, name, title, metric, us, decimals, decimals_us, policy, scale)             \
    QUANTITY_##id,
enum quantity_id { QUANTITIES(QUANTITY_ID) QUANTITY_COUNT };
#undef QUANTITY_ID

/* Texts as arrays, here as in the tables: a pointer is put right by the loader each time. */
struct quantity_row {
    char name[40], title[52];
    enum unit_id metric, us;
    int decimals_metric, decimals_us;
    unsigned policy; /* enum quantity_policy */
    double scale;    /* SI: a margin of that much is a comfortable one (common practice, no source);
                        0: its distance to a limit is not compared */
};

extern const struct quantity_row quantity_rows[QUANTITY_COUNT];

#endif
