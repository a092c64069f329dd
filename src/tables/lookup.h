/* Typed look-ups in the reference tables. The row structures are generated from tables/
 * (tables_data.h); each table carries its source, edition and certainty, which table_find()
 * gives under the name noted here. Rows are constant and live as long as the program. */
#ifndef TYRESUM_TABLES_LOOKUP_H
#define TYRESUM_TABLES_LOOKUP_H

#include <stdbool.h>

#include "tables/tables_data.h"

/* Single figures of the same kind. The highest maximum pressure that 49 CFR 571.139 lets be moulded
 * on a passenger tyre, and the load index above which only tyres of UN R54 are made, whatever
 * their designation leaves out (both from memory). */
#define PASSENGER_TYRE_CEILING_Pa 350e3
enum { PASSENGER_LOAD_INDEX_MAX = 121 };

/* Table load_index: load in kg; UNKNOWN outside 0..200. */
double load_index_kg(int load_index);

/* The smallest load index that carries so many kg; -1 where none does or kg is not known. */
int load_index_for_kg(double kg);

/* Table speed_symbol: "A1".."A8", "B".."Y", "ZR", "(Y)", upper case. False where there is no
 * such symbol; *kmh is then untouched. For ZR and (Y) the speed is one that is exceeded:
 * speed_symbol_find(symbol)->kind says "over". */
bool speed_symbol_kmh(const char *symbol, double *kmh);
const struct speed_symbol_row *speed_symbol_find(const char *symbol);

/* Place of a symbol in the order of speeds from 0, to compare two of them; -1 where there is
 * no such symbol. H stands between U and V. */
int speed_symbol_order(const char *symbol);

/* Symbols from one to another, upward positive: H to W are two. ZR is moulded in the size and is no
 * step between two symbols of service descriptions. UNKNOWN where there is no such symbol. */
double speed_symbol_steps(const char *before, const char *after);

/* Table speed_load: per cent of the load index load allowed at a speed in km/h, linear between
 * the points, 100 below the first and for symbols without points. UNKNOWN above the symbol's
 * speed, for an unknown symbol, and for ZR, which leaves it to the maker. "(Y)" follows Y as
 * far as 300 km/h (from memory). */
double speed_load_percent(const char *symbol, double speed_kmh);

/* Table rim_code: nominal rim diameter in m of a rim code in tenths (16 is 160, 22.5 is 225); a
 * code that is not listed is 25.4 mm times it, rounded half up to the mm. A millimetric rim
 * (390 is 3900) is its own millimetres. UNKNOWN where it is not above zero. */
double rim_diameter_m(int rim_code_tenths, bool millimetric);

/* The next six give NULL where there is no such row. */

/* Table load_range: letter 'A'..'N', upper case. */
const struct load_range_row *load_range_find(char letter);

/* Table rolling: "radial", "diagonal", "bias_belted". */
const struct rolling_row *rolling_find(const char *construction);

/* Table tolerance: of UN R54 or of UN R30, by construction (0 radial, 1 diagonal, 2 bias-belted).
 * Only UN R54 knows special use tyres. */
const struct tolerance_row *tolerance_find(bool un_r54, int construction, bool special_use);

/* Table rim_factors: aspect ratio in per cent. measuring_factor is UNKNOWN below 20. */
const struct rim_factors_row *rim_factors_for(int aspect_percent);

/* Tables speedometer_rules and density by name. */
const struct speedometer_rules_row *speedometer_rule_find(const char *name);
const struct density_row *density_find(const char *name);

/* Table odometer_rules by name. */
const struct odometer_rules_row *odometer_rule_find(const char *name);

/* Table speedometer_test_speeds: the test speeds in km/h of a set (column test_speeds of a
 * speedometer rule) for a vehicle of that top speed, ascending; returns how many, 0 where the
 * set is silent. */
enum { TEST_SPEEDS_MAX = 4 };
int speedometer_test_speeds_kmh(const char *set, double top_speed_kmh,
                                double speeds_kmh[TEST_SPEEDS_MAX]);

/* Table speed_symbol_rules, row by row of one rule: the first where after is NULL, else the next;
 * NULL at the end. */
const struct speed_symbol_rules_row *symbol_rule_next(const char *name,
                                                      const struct speed_symbol_rules_row *after);

/* Table fitment_limits, row by row of one rule: the first where after is NULL, else the next;
 * NULL at the end, and at once where there is no such rule. Names: au_passenger, au_offroad,
 * au_nsw, au_victoria, au_south_australia, de_751, be_inspection, es_inspection. */
const struct fitment_limits_row *fitment_limits_next(const char *name,
                                                     const struct fitment_limits_row *after);
/* The first rule of all on a quantity; NULL where none limits it. */
const struct fitment_limits_row *fitment_limit_on(const char *quantity);

/* Table headlamp_dip, by the lamp's height above the ground in m; NULL where that is not known. */
const struct headlamp_dip_row *headlamp_dip_for(double height_m);

/* Table pressure_warning: the lowest pressure in kPa at which a warning must have come on, by
 * class (of table inflation) and load range letter (0 where the class has none). UNKNOWN
 * where the table is silent. */
double pressure_warning_minimum_kPa(const char *class, char load_range);

/* Table speed_load_commercial (UN R54 Annex 8, from memory): per cent of the load index load at
 * a speed in km/h. At low speed 100 or more by load index, 100 where no increase is tabulated.
 * Above the symbol's own speed: UNKNOWN where the annex grants nothing. */
double commercial_low_speed_percent(int load_index, double speed_kmh);
double commercial_over_speed_percent(int load_index, const char *symbol, double speed_kmh);
/* The last that the annex grants above the symbol's own speed; UNKNOWN where it grants nothing. */
double commercial_last_percent(int load_index, const char *symbol);

/* Table speed_pressure: kPa to add to a tyre of that speed symbol for a top speed in km/h; 0 where
 * it is not known. Symbols up to V have one row, W and those above it, which the table leaves to
 * the maker, another. */
double speed_pressure_added_kPa(const char *symbol, double speed_kmh);

/* Standards print psi and kPa in nominal pairs (80 psi, 550 kPa), which are no exact conversions
 * and yet one step: those of tables load_range and inflation. What lies between the two is of the
 * step too: 345 kPa are 50 psi, written otherwise. False where a pressure is in none. */
struct nominal_step {
    double low_Pa, high_Pa;
    double metric_Pa, us_Pa; /* the same two as they are printed: 550 kPa, 80 psi */
};
bool nominal_step_find(double pressure_Pa, struct nominal_step *out);

/* The one in the user's unit where the pressure is exactly either of a pair, otherwise itself. */
double nominal_told_Pa(double pressure_Pa, bool us);

/* How far a ceiling reaches: to the end of its step. */
double ceiling_reach_Pa(double ceiling_Pa);

/* Whether a pressure is above a ceiling, whichever of both is written in which unit. False where
 * either is unknown. */
bool is_above_ceiling(double pressure_Pa, double ceiling_Pa);

/* Table light_truck_maxima, by the numbers of an LT-metric designation; NULL where not listed. */
const struct light_truck_maxima_row *light_truck_maximum_find(int section_mm, int aspect_percent,
                                                              int rim_tenths, char load_range);

/* Tables numeric_sizes and full_profile_sizes, by the numbers of the designation: section in
 * hundredths of an inch or in mm, rim code in tenths, construction "radial" or "diagonal"
 * (full-profile sizes are radial). NULL where the size is not listed. */
const struct numeric_sizes_row *numeric_size_find(int section_hundredths, const char *construction,
                                                  int rim_tenths);
const struct full_profile_sizes_row *full_profile_size_find(int section_mm, int rim_tenths);

/* Tables flotation_sizes (by all three numbers of the designation, hundredths of an inch and
 * tenths), flotation_rims (by section width) and heavy_rims. NULL where not listed. */
const struct flotation_sizes_row *flotation_size_find(int diameter_hundredths,
                                                      int section_hundredths, int rim_tenths);
const struct flotation_rims_row *flotation_rims_find(int section_hundredths);
const struct heavy_rims_row *heavy_rims_find(int section_mm, int aspect_percent, int rim_tenths);

#endif
