#include "compute/rims.h"

#include <stddef.h>

#include "base/known.h"
#include "tables/lookup.h"

#define INCH_M 0.0254

enum { HEAVY_RIM_TENTHS = 175 };

static double half_inches(double metres)
{
    return floor(metres / INCH_M * 2 + 0.5 + 1e-9) / 2 * INCH_M;
}

static double half_inches_up(double metres)
{
    return ceil(metres / INCH_M * 2 - 1e-9) / 2 * INCH_M;
}

static double half_inches_down(double metres)
{
    return floor(metres / INCH_M * 2 + 1e-9) / 2 * INCH_M;
}

bool on_heavy_rim(const struct designation *size)
{
    return size->rim_code_tenths % 10 != 0 && size->rim_code_tenths >= HEAVY_RIM_TENTHS;
}

const struct flotation_sizes_row *listed_flotation(const struct designation *size)
{
    return size->form == FORM_FLOTATION
               ? flotation_size_find(size->overall_diameter, size->section_width,
                                     size->rim_code_tenths)
               : NULL;
}

/* The aspect ratio that the rim factors go by. */
static int aspect_for_rims(const struct designation *size, const struct tyre_figures *figures)
{
    if (size->form == FORM_FULL_PROFILE)
        return FULL_PROFILE_ASPECT;
    if (size->aspect_percent > 0)
        return size->aspect_percent;
    return (int)floor(100 * figures->section_height_m / figures->section_width_m + 0.5);
}

static void set_measuring_rim(struct tyre_figures *out, double inches, enum figure_source source)
{
    out->measuring_rim_m = inches * INCH_M;
    out->measuring_rim_source = known(inches) ? source : SOURCE_NONE;
}

static void set_permitted_rims(struct tyre_figures *out, double min_in, double max_in,
                               enum figure_source source)
{
    out->rim_min_m = min_in * INCH_M;
    out->rim_max_m = max_in * INCH_M;
    out->rim_source = known(min_in) && known(max_in) ? source : SOURCE_NONE;
}

/* UN R30 and UN R54 6.1.1.1 with the listed width and its measuring rim in the place of the
 * nominal width and the theoretical rim: what 6.1.1.2 makes of a listed size. */
static void set_width_of_listed(struct tyre_figures *out, double listed_width_m, double rim_width_m)
{
    double rim = known_or(rim_width_m, out->measuring_rim_m);
    out->width_on_rim_m = section_width_on_rim_m(listed_width_m, rim, out->measuring_rim_m);
}

static void set_rims_by_factor(const struct designation *size, double rim_width_m,
                               struct tyre_figures *out)
{
    const struct rim_factors_row *factors = rim_factors_for(aspect_for_rims(size, out));
    double width = out->section_width_m;
    if (factors == NULL)
        return;
    set_measuring_rim(out, half_inches(factors->measuring_factor * width) / INCH_M, SOURCE_RULE);
    set_permitted_rims(out, half_inches_up(factors->permitted_min_factor * width) / INCH_M,
                       half_inches_down(factors->permitted_max_factor * width) / INCH_M,
                       SOURCE_RULE);
    double rim = known_or(rim_width_m, out->measuring_rim_m);
    if (known(rim))
        out->width_on_rim_m =
            section_width_on_rim_m(width, rim, factors->theoretical_factor * width);
}

static void set_rims_of_full_profile(const struct designation *size, double rim_width_m,
                                     struct tyre_figures *out)
{
    const struct full_profile_sizes_row *row =
        full_profile_size_find(size->section_width, size->rim_code_tenths);
    set_rims_by_factor(size, rim_width_m, out);
    if (row == NULL)
        return;
    set_measuring_rim(out, row->measuring_rim_in, SOURCE_TABLE);
    set_width_of_listed(out, row->section_width_mm * 1e-3, rim_width_m);
}

static void set_rims_of_numeric(const struct designation *size, double rim_width_m,
                                struct tyre_figures *out)
{
    const struct numeric_sizes_row *row = numeric_size_find(
        size->section_width, construction_key(size->construction), size->rim_code_tenths);
    if (row == NULL)
        return;
    set_measuring_rim(out, row->measuring_rim_in, SOURCE_TABLE);
    set_permitted_rims(out, row->rim_min_in, row->rim_max_in, SOURCE_TABLE);
    set_width_of_listed(out, row->section_width_mm * 1e-3, rim_width_m);
}

static void set_rims_of_flotation(const struct designation *size, double rim_width_m,
                                  struct tyre_figures *out)
{
    const struct flotation_sizes_row *listed = listed_flotation(size);
    const struct flotation_rims_row *rims =
        size->rim_code_tenths % 10 == 0 ? flotation_rims_find(size->section_width) : NULL;
    if (rims != NULL) {
        set_measuring_rim(out, rims->measuring_rim_in, SOURCE_TABLE);
        set_permitted_rims(out, rims->rim_min_in, rims->rim_max_in, SOURCE_TABLE);
    }
    if (listed != NULL)
        set_measuring_rim(out, listed->measuring_rim_in, SOURCE_TABLE);
    if (known(out->measuring_rim_m))
        set_width_of_listed(out,
                            listed != NULL ? listed->section_width_mm * 1e-3 : out->section_width_m,
                            rim_width_m);
}

/* Metric sizes on 15 degree rims: widths that no factor gives; but the width follows the rim. */
static void set_rims_of_heavy(const struct designation *size, double rim_width_m,
                              struct tyre_figures *out)
{
    const struct heavy_rims_row *row =
        heavy_rims_find(size->section_width, size->aspect_percent, size->rim_code_tenths);
    const struct rim_factors_row *factors = rim_factors_for(aspect_for_rims(size, out));
    if (row != NULL) {
        set_measuring_rim(out, row->measuring_rim_in, SOURCE_TABLE);
        set_permitted_rims(out, row->rim_min_in, row->rim_max_in, SOURCE_TABLE);
    }
    double rim = known_or(rim_width_m, out->measuring_rim_m);
    if (factors != NULL && known(factors->heavy_theoretical_factor) && known(rim))
        out->width_on_rim_m = section_width_on_rim_m(
            out->section_width_m, rim, factors->heavy_theoretical_factor * out->section_width_m);
}

void rims_by_rule(const struct designation *size, double rim_width_m, struct tyre_figures *out)
{
    out->width_on_rim_m = out->section_width_m;
    if (size->prefix == PREFIX_T)
        return;
    if (size->form == FORM_FULL_PROFILE)
        set_rims_of_full_profile(size, rim_width_m, out);
    else if (size->form == FORM_NUMERIC)
        set_rims_of_numeric(size, rim_width_m, out);
    else if (size->form == FORM_FLOTATION)
        set_rims_of_flotation(size, rim_width_m, out);
    else if (on_heavy_rim(size))
        set_rims_of_heavy(size, rim_width_m, out);
    else
        set_rims_by_factor(size, rim_width_m, out);
}
