/* Look-ups for load and pressure at speed, and for published maxima. */
#include <string.h>

#include "base/known.h"
#include "base/span.h"
#include "base/units.h"
#include "tables/lookup.h"

enum { LOAD_INDEX_LOW_MAX = 121 }; /* UN R54: the two groups of load indices */

/* Linear between two points; `before` may be NULL: the point itself. */
static double between(const struct speed_load_commercial_row *before,
                      const struct speed_load_commercial_row *after, double speed_kmh)
{
    if (before == NULL)
        return after->load_percent;
    return before->load_percent + (after->load_percent - before->load_percent) *
                                      (speed_kmh - before->speed_kmh) /
                                      (after->speed_kmh - before->speed_kmh);
}

/* UNKNOWN above the last point of that group and symbol. */
static double commercial_percent(const char *group, const char *symbol, double speed_kmh)
{
    const struct speed_load_commercial_row *before = NULL;
    for (int i = 0; i < speed_load_commercial_count; i++) {
        const struct speed_load_commercial_row *row = &speed_load_commercial_rows[i];
        if (!same_text(row->symbol, symbol) || !same_text(row->group, group))
            continue;
        if (speed_kmh <= row->speed_kmh)
            return between(before, row, speed_kmh);
        before = row;
    }
    return UNKNOWN;
}

static const char *group_of(int load_index)
{
    return load_index <= LOAD_INDEX_LOW_MAX ? "low" : "high";
}

double commercial_low_speed_percent(int load_index, double speed_kmh)
{
    if (load_index < 0 || !known(speed_kmh))
        return 100;
    return known_or(commercial_percent(group_of(load_index), "", speed_kmh), 100);
}

double commercial_over_speed_percent(int load_index, const char *symbol, double speed_kmh)
{
    if (load_index < 0 || symbol[0] == '\0' || !known(speed_kmh))
        return UNKNOWN;
    return commercial_percent(group_of(load_index), symbol, speed_kmh);
}

double commercial_last_percent(int load_index, const char *symbol)
{
    double percent = UNKNOWN;
    if (load_index < 0 || symbol[0] == '\0')
        return UNKNOWN;
    for (int i = 0; i < speed_load_commercial_count; i++)
        if (same_text(speed_load_commercial_rows[i].symbol, symbol) &&
            same_text(speed_load_commercial_rows[i].group, group_of(load_index)))
            percent = speed_load_commercial_rows[i].load_percent;
    return percent;
}

/* W and what is above it have rows of their own. */
static const char *speed_pressure_symbol(const char *symbol)
{
    double kmh, highest_of_v;
    bool above_v = speed_symbol_kmh(symbol, &kmh) && speed_symbol_kmh("V", &highest_of_v) &&
                   kmh > highest_of_v;
    return above_v ? "W" : "V";
}

double speed_pressure_added_kPa(const char *symbol, double speed_kmh)
{
    const char *rows_of = speed_pressure_symbol(symbol);
    double added = 0;
    for (int i = 0; i < speed_pressure_count; i++) {
        const struct speed_pressure_row *row = &speed_pressure_rows[i], *next = row + 1;
        if (strcmp(row->symbol, rows_of) != 0 || !(speed_kmh >= row->speed_kmh))
            continue;
        added = row->added_kPa;
        if (i + 1 < speed_pressure_count && strcmp(next->symbol, rows_of) == 0 &&
            speed_kmh < next->speed_kmh)
            added += (next->added_kPa - added) * (speed_kmh - row->speed_kmh) /
                     (next->speed_kmh - row->speed_kmh);
    }
    return added;
}

/* Whether a pressure is from the one to the other of a pair. */
static bool is_of_pair(double pressure_Pa, double metric_Pa, double us_Pa, struct nominal_step *out)
{
    const double slack_Pa = 1e-3;
    double low = metric_Pa < us_Pa ? metric_Pa : us_Pa,
           high = metric_Pa < us_Pa ? us_Pa : metric_Pa;
    if (!(pressure_Pa >= low - slack_Pa && pressure_Pa <= high + slack_Pa))
        return false;
    *out = (struct nominal_step){
        .metric_Pa = metric_Pa, .us_Pa = us_Pa, .low_Pa = low, .high_Pa = high};
    return true;
}

bool nominal_step_find(double pressure_Pa, struct nominal_step *out)
{
    const double kPa = unit_to_si(UNIT_KPA, 1), psi = unit_to_si(UNIT_PSI, 1);
    if (!known(pressure_Pa))
        return false;
    for (int i = 0; i < inflation_count; i++)
        if (is_of_pair(pressure_Pa, inflation_rows[i].reference_kPa * kPa,
                       inflation_rows[i].reference_psi * psi, out))
            return true;
    for (int i = 0; i < load_range_count; i++) /* the wide and the trailer columns are lower rows */
        if (is_of_pair(pressure_Pa, load_range_rows[i].lt_reference_kPa * kPa,
                       load_range_rows[i].lt_reference_psi * psi, out))
            return true;
    return false;
}

double nominal_told_Pa(double pressure_Pa, bool us)
{
    const double slack_Pa = 1e-3;
    struct nominal_step step;
    if (!nominal_step_find(pressure_Pa, &step) ||
        (pressure_Pa > step.low_Pa + slack_Pa && pressure_Pa < step.high_Pa - slack_Pa))
        return pressure_Pa;
    return us ? step.us_Pa : step.metric_Pa;
}

double ceiling_reach_Pa(double ceiling_Pa)
{
    struct nominal_step step;
    return nominal_step_find(ceiling_Pa, &step) ? step.high_Pa : ceiling_Pa;
}

bool is_above_ceiling(double pressure_Pa, double ceiling_Pa)
{
    return clearly_above(pressure_Pa, ceiling_reach_Pa(ceiling_Pa));
}

const struct light_truck_maxima_row *light_truck_maximum_find(int section_mm, int aspect_percent,
                                                              int rim_tenths, char load_range)
{
    for (int i = 0; load_range != '\0' && i < light_truck_maxima_count; i++) {
        const struct light_truck_maxima_row *row = &light_truck_maxima_rows[i];
        if (row->section_mm == section_mm && row->aspect_percent == aspect_percent &&
            row->rim_tenths == rim_tenths && row->load_range[0] == load_range)
            return row;
    }
    return NULL;
}
