#include "compute/rims.h"

#include <stddef.h>

#include "base/known.h"
#include "tables/lookup.h"
#include "tables/tables.h"

#define INCH_M 0.0254

enum { HEAVY_RIM_TENTHS = 175 };

/* To half inches, halves up, in inches. */
static double to_half_in(double metres)
{
    return whole_part(metres * (2 / INCH_M) + 0.5 + 1e-9) / 2;
}

bool on_heavy_rim(const struct designation *size)
{
    return size->rim_code_tenths >= HEAVY_RIM_TENTHS && size->rim_code_tenths % 10 != 0;
}

const struct flotation_sizes_row *listed_flotation(const struct designation *size)
{
    return size->form == FORM_FLOTATION
               ? flotation_size_find(size->overall_diameter, size->section_width,
                                     size->rim_code_tenths)
               : NULL;
}

/* To whole millimetres, halves up; a billionth of slack for decimal figures in binary. */
static double whole_mm(double metres)
{
    return whole_part(metres * 1000 + 0.5 + 1e-9) / 1000;
}

double section_width_on_rim_m(double nominal_width_m, double rim_width_m, double theoretical_rim_m)
{
    return whole_mm(nominal_width_m + 0.4 * (rim_width_m - theoretical_rim_m));
}

/* The factors go by the aspect ratio. */
static const struct rim_factors_row *factors_of(const struct tyre_on_rim *tyre)
{
    if (tyre->size->form == FORM_FULL_PROFILE)
        return rim_factors_for(FULL_PROFILE_ASPECT);
    if (tyre->size->aspect_percent > 0)
        return rim_factors_for(tyre->size->aspect_percent);
    return rim_factors_for((int)floor(100 * tyre->section_height_m / tyre->section_width_m + 0.5));
}

static void set_measuring_rim(struct rims *out, double inches, enum figure_source source)
{
    out->measuring_m = inches * INCH_M;
    out->measuring_source = known(inches) ? source : SOURCE_NONE;
}

static void set_permitted_rims(struct rims *out, double min_in, double max_in,
                               enum figure_source source)
{
    out->min_m = min_in * INCH_M;
    out->max_m = max_in * INCH_M;
    out->permitted_source = known(min_in) && known(max_in) ? source : SOURCE_NONE;
}

/* UN R30 and UN R54 6.1.1.1 with the listed width and its measuring rim in the place of the
 * nominal width and the theoretical rim: what 6.1.1.2 makes of a listed size. */
static void set_width_of_listed(const struct tyre_on_rim *tyre, double listed_width_m,
                                struct rims *out)
{
    double rim = known_or(tyre->rim_width_m, out->measuring_m);
    out->section_width_m = section_width_on_rim_m(listed_width_m, rim, out->measuring_m);
}

static enum figure_source factor_source(const char *certainty)
{
    return certainty_is_memory(certainty) ? SOURCE_RULE : SOURCE_DERIVED;
}

static void set_rims_by_factor(const struct tyre_on_rim *tyre, struct rims *out)
{
    const struct rim_factors_row *factors = factors_of(tyre);
    double width = tyre->section_width_m;
    if (factors == NULL)
        return;
    set_measuring_rim(out, to_half_in(factors->measuring_factor * width),
                      factor_source(factors->measuring_certainty));
    set_permitted_rims(out, to_half_in(factors->permitted_min_factor * width),
                       to_half_in(factors->permitted_max_factor * width),
                       factor_source(factors->permitted_certainty));
    double rim = known_or(tyre->rim_width_m, out->measuring_m);
    if (known(rim))
        out->section_width_m =
            section_width_on_rim_m(width, rim, factors->theoretical_factor * width);
}

static void set_rims_of_full_profile(const struct tyre_on_rim *tyre, struct rims *out)
{
    const struct full_profile_sizes_row *row =
        full_profile_size_find(tyre->size->section_width, tyre->size->rim_code_tenths);
    set_rims_by_factor(tyre, out);
    if (row == NULL)
        return;
    set_measuring_rim(out, row->measuring_rim_in, SOURCE_TABLE);
    set_width_of_listed(tyre, row->section_width_mm * 1e-3, out);
}

static void set_rims_of_numeric(const struct tyre_on_rim *tyre, struct rims *out)
{
    const struct numeric_sizes_row *row =
        numeric_size_find(tyre->size->section_width, construction_key(tyre->size->construction),
                          tyre->size->rim_code_tenths);
    if (row == NULL)
        return;
    set_measuring_rim(out, row->measuring_rim_in, SOURCE_TABLE);
    set_permitted_rims(out, row->rim_min_in, row->rim_max_in, SOURCE_TABLE);
    set_width_of_listed(tyre, row->section_width_mm * 1e-3, out);
}

static void set_rims_of_flotation(const struct tyre_on_rim *tyre, struct rims *out)
{
    const struct flotation_sizes_row *listed = listed_flotation(tyre->size);
    const struct flotation_rims_row *rims = tyre->size->rim_code_tenths % 10 == 0
                                                ? flotation_rims_find(tyre->size->section_width)
                                                : NULL;
    if (rims != NULL) {
        set_measuring_rim(out, rims->measuring_rim_in, SOURCE_TABLE);
        set_permitted_rims(out, rims->rim_min_in, rims->rim_max_in, SOURCE_TABLE);
    }
    if (listed != NULL)
        set_measuring_rim(out, listed->measuring_rim_in, SOURCE_TABLE);
    if (known(out->measuring_m))
        set_width_of_listed(
            tyre, listed != NULL ? listed->section_width_mm * 1e-3 : tyre->section_width_m, out);
}

/* Metric sizes on 15 degree rims: widths that no factor gives; but the width follows the rim. */
static void set_rims_of_heavy(const struct tyre_on_rim *tyre, struct rims *out)
{
    const struct heavy_rims_row *row = heavy_rims_find(
        tyre->size->section_width, tyre->size->aspect_percent, tyre->size->rim_code_tenths);
    const struct rim_factors_row *factors = factors_of(tyre);
    if (row != NULL) {
        set_measuring_rim(out, row->measuring_rim_in, SOURCE_TABLE);
        set_permitted_rims(out, row->rim_min_in, row->rim_max_in, SOURCE_TABLE);
    }
    double rim = known_or(tyre->rim_width_m, out->measuring_m);
    if (factors != NULL && known(factors->heavy_theoretical_factor) && known(rim))
        out->section_width_m = section_width_on_rim_m(
            tyre->section_width_m, rim, factors->heavy_theoretical_factor * tyre->section_width_m);
}

void rims_by_rule(const struct tyre_on_rim *tyre, struct rims *out)
{
    *out = (struct rims){.measuring_m = UNKNOWN,
                         .min_m = UNKNOWN,
                         .max_m = UNKNOWN,
                         .section_width_m = tyre->section_width_m};
    if (tyre->size->prefix == PREFIX_T)
        return;
    if (tyre->size->form == FORM_FULL_PROFILE)
        set_rims_of_full_profile(tyre, out);
    else if (tyre->size->form == FORM_NUMERIC)
        set_rims_of_numeric(tyre, out);
    else if (tyre->size->form == FORM_FLOTATION)
        set_rims_of_flotation(tyre, out);
    else if (on_heavy_rim(tyre->size))
        set_rims_of_heavy(tyre, out);
    else
        set_rims_by_factor(tyre, out);
}
