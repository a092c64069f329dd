#include "compute/capacity.h"

#include <stddef.h>

#include "base/known.h"
#include "base/units.h"
#include "compute/rims.h"
#include "tables/lookup.h"

/* A truck tyre, whatever its size leaves out: by its rim, or by a load index above which UN R54
 * puts tyres into its upper group, without the mark of a light-truck or commercial tyre. */
static bool is_heavy(const struct designation *size)
{
    bool plain =
        size->prefix == PREFIX_NONE && size->suffix == SUFFIX_NONE && size->form != FORM_FLOTATION;
    return on_heavy_rim(size) || (plain && size->service.load_index > PASSENGER_LOAD_INDEX_MAX);
}

/* What no passenger tyre has on its sidewall, whatever letters a list leaves out: a load index for
 * twins (UN R54 has two, UN R30 one, from memory), a load range above B or a ply rating above 4
 * (common practice, no source). Its pressure is the maker's, as a commercial tyre's: at 250 kPa it
 * does not carry its load. */
static bool is_marked_for_loads(const struct designation *size, char load_range)
{
    enum { STANDARD_PLIES = 4 };
    return size->prefix == PREFIX_NONE && size->suffix == SUFFIX_NONE &&
           size->capacity == CAPACITY_UNMARKED &&
           (size->service.load_index_dual != LOAD_INDEX_NONE || size->ply_rating > STANDARD_PLIES ||
            load_range > 'B');
}

bool is_passenger_tyre(const struct tyre *tyre)
{
    const struct designation *size = &tyre->size;
    bool form = size->form == FORM_METRIC || size->form == FORM_FULL_PROFILE;
    bool prefix = size->prefix == PREFIX_NONE || size->prefix == PREFIX_P ||
                  size->prefix == PREFIX_HL || size->prefix == PREFIX_T;
    return form && prefix && size->suffix == SUFFIX_NONE && !is_heavy(size) &&
           !is_marked_for_loads(size, tyre->load_range);
}

enum inflation_key inflation_class(const struct designation *size, char load_range)
{
    if (size->prefix == PREFIX_T)
        return INFLATION_TEMPORARY;
    if (size->prefix == PREFIX_ST || size->suffix == SUFFIX_ST)
        return INFLATION_TRAILER;
    if (size->prefix == PREFIX_LT)
        return INFLATION_LT_METRIC;
    if (size->form == FORM_FLOTATION)
        return INFLATION_FLOTATION;
    if (is_heavy(size))
        return INFLATION_HEAVY;
    if (size->form == FORM_NUMERIC)
        return INFLATION_NUMERIC_LT;
    if (size->suffix == SUFFIX_C || size->suffix == SUFFIX_CP ||
        is_marked_for_loads(size, load_range))
        return INFLATION_COMMERCIAL;
    bool extra = size->capacity == CAPACITY_XL;
    if (size->prefix == PREFIX_P)
        return extra ? INFLATION_P_METRIC_EXTRA_LOAD : INFLATION_P_METRIC_STANDARD;
    if (size->prefix == PREFIX_HL || size->capacity == CAPACITY_HL)
        return INFLATION_METRIC_HIGH_LOAD;
    return extra ? INFLATION_METRIC_EXTRA_LOAD : INFLATION_METRIC_STANDARD;
}

enum tyre_group tyre_group(enum inflation_key class)
{
    static const enum tyre_group groups[] = {
        [INFLATION_METRIC_STANDARD] = GROUP_PASSENGER,
        [INFLATION_METRIC_EXTRA_LOAD] = GROUP_PASSENGER,
        [INFLATION_METRIC_HIGH_LOAD] = GROUP_PASSENGER,
        [INFLATION_P_METRIC_STANDARD] = GROUP_PASSENGER,
        [INFLATION_P_METRIC_EXTRA_LOAD] = GROUP_PASSENGER,
        [INFLATION_LT_METRIC] = GROUP_LIGHT_TRUCK,
        [INFLATION_FLOTATION] = GROUP_LIGHT_TRUCK,
        [INFLATION_NUMERIC_LT] = GROUP_LIGHT_TRUCK,
        [INFLATION_COMMERCIAL] = GROUP_COMMERCIAL,
        [INFLATION_HEAVY] = GROUP_HEAVY,
        [INFLATION_TRAILER] = GROUP_TRAILER,
        [INFLATION_TEMPORARY] = GROUP_TEMPORARY,
    };
    return groups[class];
}

static bool goes_by_load_range(enum inflation_key class)
{
    return tyre_group(class) == GROUP_LIGHT_TRUCK;
}

/* Reference pressure of tyres that carry a load range letter. Without a moulded maximum the load
 * index counts as carried at the higher pressure in use, which is the lower capacity and what
 * `size` shows; up to the lower one, or the floor where that is above it (35 psi and 250 kPa are
 * one step), every such tyre may go. */
static void take_load_range(char letter, struct tyre_rating *out)
{
    const struct load_range_row *row = load_range_find(letter);
    if (row == NULL)
        return;
    if (out->class == INFLATION_TRAILER) {
        out->reference_Pa = unit_to_si(UNIT_KPA, row->trailer_reference_kPa);
        out->ceiling_Pa = out->reference_Pa;
        return;
    }
    out->reference_Pa = unit_to_si(UNIT_KPA, row->lt_reference_kPa);
    out->ceiling_Pa = out->reference_Pa;
    if (!known(out->reference_Pa)) /* a letter without pressures in use */
        return;
    out->sure_Pa = unit_to_si(
        UNIT_KPA, higher_of(row->lt_wide_reference_kPa, inflation_rows[out->class].floor_kPa));
    out->ceiling_assumed = true;
}

/* The published maximum of the size and load range, where it was seen: the lower of it and the
 * load index is safe, since moulded maxima can be below the index (3042 lb against 1400 kg). */
static void take_listed(const struct designation *size, char letter, struct tyre_rating *out)
{
    const struct light_truck_maxima_row *row = light_truck_maximum_find(
        size->section_width, size->aspect_percent, size->rim_code_tenths, letter);
    if (row == NULL)
        return;
    out->load_kg = lower_of(out->load_kg, unit_to_si(UNIT_LB, row->single_lb));
    if (row->dual_lb > 0)
        out->load_dual_kg = lower_of(out->load_dual_kg, unit_to_si(UNIT_LB, row->dual_lb));
    out->reference_Pa = unit_to_si(UNIT_KPA, row->at_kPa);
    out->listed = true;
}

static void take_moulded_load(const struct data_book *book, struct tyre_rating *out)
{
    if (known(book->max_load_kg))
        out->load_kg = book->max_load_kg;
    if (known(book->max_load_dual_kg))
        out->load_dual_kg = book->max_load_dual_kg;
    else if (clearly_above(out->load_dual_kg, book->max_load_kg))
        out->load_dual_kg = book->max_load_kg; /* the index of twins may not promise more */
}

/* The pressure moulded on a passenger tyre is the highest that it may have, and not the one at
 * which it carries its load: P-metric tyres of one load index are moulded with 240, 300 or 350 kPa
 * and carry it at the 240 of their class all the same (49 CFR 571.139 S5.5.4 and the formula of the
 * Tire and Rim Association). A pressure beside the load that is no higher than the class's own says
 * nothing of a maximum. */
static void take_moulded_maximum(const struct data_book *book, struct tyre_rating *out)
{
    double moulded_Pa = book->max_pressure_Pa;
    if (!known(moulded_Pa) && is_above_ceiling(book->at_pressure_Pa, out->reference_Pa))
        moulded_Pa = book->at_pressure_Pa;
    out->moulded = known(book->max_load_kg);
    if (known(moulded_Pa))
        out->ceiling_Pa = out->sure_Pa = moulded_Pa;
}

/* Without a moulded maximum a passenger tyre may surely have the reference pressure of its class,
 * and the placard's where that is higher: not what the top speed would add, which the sidewall
 * decides. */
static void take_sure_maximum(struct tyre_rating *out)
{
    if (tyre_group(out->class) == GROUP_PASSENGER && !known(out->sure_Pa))
        out->sure_Pa = out->reference_Pa;
}

/* The sidewall's or data book's own maximum replaces the tables; a lone max_load lowers the load.
 * On a tyre for load its pressure is the reference and the ceiling at once. */
static void take_moulded(const struct data_book *book, struct tyre_rating *out)
{
    take_moulded_load(book, out);
    if (tyre_group(out->class) == GROUP_PASSENGER) {
        take_moulded_maximum(book, out);
        return;
    }
    double ceiling_Pa = book->max_pressure_Pa;
    if (known(book->at_pressure_Pa)) {
        out->reference_Pa = book->at_pressure_Pa;
        out->listed = false;
        out->moulded = known(book->max_load_kg);
        if (!known(ceiling_Pa) && is_commercial_tyre(out))
            ceiling_Pa = book->at_pressure_Pa;
        out->ceiling_assumed = false;
    }
    if (!known(ceiling_Pa))
        return;
    out->ceiling_Pa = out->sure_Pa = ceiling_Pa;
    out->ceiling_assumed = false;
}

/* A twin without a load index of its own. */
static void assume_dual(struct tyre_rating *out)
{
    if (known(out->load_dual_kg) || !goes_by_load_range(out->class))
        return;
    out->load_dual_kg = LT_DUAL_SHARE * out->load_kg;
    out->dual_assumed = known(out->load_dual_kg);
}

static bool is_metric_class(enum inflation_key class)
{
    return class == INFLATION_METRIC_STANDARD || class == INFLATION_METRIC_EXTRA_LOAD ||
           class == INFLATION_METRIC_HIGH_LOAD;
}

static bool is_p_metric_class(enum inflation_key class)
{
    return class == INFLATION_P_METRIC_STANDARD || class == INFLATION_P_METRIC_EXTRA_LOAD;
}

/* The tables have steps at whole speeds, which no last bit of a conversion may pass over. */
static double table_kmh(double speed_mps)
{
    return round(unit_from_si(UNIT_KMH, speed_mps) * 1e9) / 1e9;
}

/* Per cent of the load at a speed. Above all that the tables grant for the symbol their last figure
 * stays (that it is driven too fast is a finding of its own): no tyre carries more for that. */
static double percent_at_speed(const struct service_description *service, bool commercial,
                               double kmh)
{
    double highest_kmh, percent = speed_load_percent(service->speed_symbol, kmh);
    if (!known(percent) && commercial)
        percent = commercial_over_speed_percent(service->load_index, service->speed_symbol, kmh);
    if (!known(percent) && commercial)
        percent = commercial_last_percent(service->load_index, service->speed_symbol);
    if (!known(percent) && speed_symbol_kmh(service->speed_symbol, &highest_kmh))
        percent = speed_load_percent(service->speed_symbol, highest_kmh);
    return percent;
}

/* Load and pressure at the vehicle's top speed. */
static void take_top_speed(const struct service_description *service, double top_speed_mps,
                           struct tyre_rating *out)
{
    double kmh = table_kmh(top_speed_mps);
    if (!known(kmh) || service->speed_symbol[0] == '\0')
        return;
    double percent = percent_at_speed(service, is_commercial_tyre(out), kmh);
    if (known(percent))
        out->speed_factor = percent / 100;
    if (is_metric_class(out->class))
        out->speed_pressure_Pa =
            unit_to_si(UNIT_KPA, speed_pressure_added_kPa(service->speed_symbol, kmh));
    double symbol_kmh, last_kmh;
    out->speed_pressure_assumed = speed_symbol_kmh(service->speed_symbol, &symbol_kmh) &&
                                  speed_symbol_kmh("W", &last_kmh) && symbol_kmh > last_kmh;
}

bool is_commercial_tyre(const struct tyre_rating *rating)
{
    return goes_by_load_range(rating->class) || rating->class == INFLATION_COMMERCIAL ||
           rating->class == INFLATION_HEAVY;
}

void size_rate(const struct designation *size, char load_range, struct tyre_rating *out)
{
    const enum inflation_key class = inflation_class(size, load_range);
    const struct inflation_row *row = &inflation_rows[class];
    const double floor = unit_to_si(UNIT_KPA, row->floor_kPa);
    const double floor_us = known_or(unit_to_si(UNIT_PSI, row->floor_psi), floor);
    *out = (struct tyre_rating){
        .class = class,
        .load_kg = load_index_kg(size->service.load_index),
        .load_dual_kg = load_index_kg(size->service.load_index_dual),
        .reference_Pa = unit_to_si(UNIT_KPA, row->reference_kPa),
        .exponent = row->exponent,
        .floor_Pa = {known_or(floor, 0), known_or(floor_us, 0)},
        .ceiling_Pa = UNKNOWN,
        .sure_Pa = UNKNOWN,
        .load_index = size->service.load_index,
        .divisor = 1,
        .speed_factor = 1,
        .standard_load_assumed =
            class == INFLATION_METRIC_STANDARD && size->capacity == CAPACITY_UNMARKED,
    };
    if (goes_by_load_range(class) || class == INFLATION_TRAILER)
        take_load_range(load_range, out);
    if (class == INFLATION_LT_METRIC)
        take_listed(size, load_range, out);
    if ((is_metric_class(class) || is_p_metric_class(class)) &&
        size->service.load_index <= PASSENGER_LOAD_INDEX_MAX)
        out->ceiling_Pa = PASSENGER_TYRE_CEILING_Pa;
}

void tyre_rate(const struct tyre *tyre, int vehicle_kind, double top_speed_mps,
               struct tyre_rating *out)
{
    size_rate(&tyre->size, tyre->load_range, out);
    take_moulded(&tyre->data_book, out);
    assume_dual(out);
    if (vehicle_kind == VEHICLE_LIGHT_TRUCK && is_passenger_tyre(tyre))
        out->divisor = PASSENGER_TYRE_DIVISOR;
    take_top_speed(&tyre->size.service, top_speed_mps, out);
    take_sure_maximum(out);
    out->completed = tyre->size.completed;
    if (!out->completed)
        return;
    out->standard_load_assumed = false; /* what one class carries, another of this size may not */
    out->load_kg = out->load_dual_kg = out->reference_Pa = UNKNOWN;
}

double capacity_max_kg(const struct tyre_rating *rating, bool dual)
{
    double load = dual ? rating->load_dual_kg : rating->load_kg;
    return load * rating->speed_factor / rating->divisor;
}

double capacity_kg(const struct tyre_rating *rating, bool dual, double pressure_Pa)
{
    double most = capacity_max_kg(rating, dual);
    if (!known(rating->reference_Pa) || !known(pressure_Pa))
        return UNKNOWN;
    if (!is_above_ceiling(rating->reference_Pa, pressure_Pa)) /* either of a nominal pair does */
        return most;
    return most * pow(pressure_Pa / rating->reference_Pa, rating->exponent);
}

bool is_below_tables(const struct tyre_rating *rating, double pressure_Pa)
{
    return clearly_above(least_pressure_Pa(rating), pressure_Pa);
}

static double low_speed_factor(const struct tyre_rating *rating, double speed_mps)
{
    if (!is_commercial_tyre(rating))
        return 1;
    return commercial_low_speed_percent(rating->load_index, table_kmh(speed_mps)) / 100;
}

double capacity_at_speed_kg(const struct tyre_rating *rating, bool dual, double pressure_Pa,
                            double speed_mps)
{
    double plain_kg = capacity_kg(rating, dual, pressure_Pa);
    return is_below_tables(rating, pressure_Pa) ? plain_kg
                                                : plain_kg * low_speed_factor(rating, speed_mps);
}

double speed_for_load_mps(const struct tyre_rating *rating, bool dual, double pressure_Pa,
                          double load_kg)
{
    enum { FASTEST_KMH = 120 };
    double needed = load_kg / capacity_kg(rating, dual, pressure_Pa);
    if (!is_commercial_tyre(rating) || is_below_tables(rating, pressure_Pa) || !known(needed))
        return UNKNOWN;
    for (int kmh = FASTEST_KMH; kmh > 0; kmh--) { /* the factor falls with speed */
        double mps = unit_to_si(UNIT_KMH, kmh);
        if (low_speed_factor(rating, mps) >= needed - 1e-12)
            return mps;
    }
    return 0;
}

double pressure_for_load_Pa(const struct tyre_rating *rating, bool dual, double load_kg)
{
    double share = load_kg / capacity_max_kg(rating, dual);
    if (!known(share) || !known(rating->reference_Pa))
        return UNKNOWN;
    if (share > 1 + 1e-12)
        return INFINITY;
    if (!known(rating->exponent)) /* temporary spare: one pressure, whatever the load */
        return rating->reference_Pa;
    return rating->reference_Pa * pow(share, 1 / rating->exponent);
}

struct ceilings ceilings_of(const struct tyre_rating *rating, const struct wheel *wheel,
                            double proven_Pa)
{
    double highest_Pa = lower_of(rating->ceiling_Pa, wheel->max_pressure_Pa);
    double sure_Pa = lower_of(higher_of(rating->sure_Pa, proven_Pa), highest_Pa);
    return (struct ceilings){known_or(highest_Pa, INFINITY), known_or(sure_Pa, INFINITY)};
}

double capacity_under_kg(const struct tyre_rating *rating, bool dual, double ceiling_Pa)
{
    if (isinf(ceiling_Pa)) /* nothing keeps the pressure for the top speed from being added */
        return capacity_max_kg(rating, dual);
    return capacity_kg(rating, dual, ceiling_reach_Pa(ceiling_Pa) - rating->speed_pressure_Pa);
}

double pressure_rounded_up_Pa(double pressure_Pa, enum pressure_system system)
{
    if (!known(pressure_Pa) || isinf(pressure_Pa))
        return pressure_Pa;
    double step = system == PRESSURE_US ? unit_to_si(UNIT_PSI, 1) : 5000;
    return ceil(pressure_Pa / step - 1e-9) * step;
}
