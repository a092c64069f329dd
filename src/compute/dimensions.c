#include "compute/dimensions.h"

#include <stddef.h>

#include "base/known.h"
#include "tables/lookup.h"
#include "tables/tables_data.h"

#define INCH_M 0.0254

enum { FULL_PROFILE_ASPECT = 82, HEAVY_RIM_TENTHS = 175 };

int section_height_mm(int section_width_mm, int aspect_percent)
{
    return (section_width_mm * aspect_percent + 50) / 100;
}

/* To whole millimetres, halves up; a billionth of slack for decimal figures in binary. */
static double whole_mm(double metres)
{
    return floor(metres * 1000 + 0.5 + 1e-9) / 1000;
}

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

double section_width_on_rim_m(double nominal_width_m, double rim_width_m, double theoretical_rim_m)
{
    return whole_mm(nominal_width_m + 0.4 * (rim_width_m - theoretical_rim_m));
}

static const char *construction_key(enum construction construction)
{
    static const char *const keys[CONSTRUCTION_COUNT] = {
        [CONSTRUCTION_RADIAL] = "radial",
        [CONSTRUCTION_DIAGONAL] = "diagonal",
        [CONSTRUCTION_BIAS_BELTED] = "bias_belted",
    };
    return keys[construction];
}

double rolling_circumference_m(enum construction construction, double overall_diameter_m)
{
    const struct rolling_row *row = rolling_find(construction_key(construction));
    return row == NULL ? UNKNOWN : row->circumference_factor * overall_diameter_m;
}

double worn_circumference_m(double circumference_m, double overall_diameter_m, double lost_m)
{
    return circumference_m * (overall_diameter_m - 2 * lost_m) / overall_diameter_m;
}

double static_loaded_radius_m(enum construction construction, double overall_diameter_m)
{
    const struct rolling_row *row = rolling_find(construction_key(construction));
    return row == NULL ? UNKNOWN : row->loaded_radius_factor * overall_diameter_m / 2;
}

/* Commercial, light-truck and heavy tyres are measured by UN R54, all others by UN R30. */
static bool measured_by_un_r54(const struct designation *size)
{
    return size->prefix == PREFIX_LT || size->prefix == PREFIX_ST || size->suffix != SUFFIX_NONE ||
           size->form == FORM_FLOTATION || size->form == FORM_NUMERIC ||
           (size->rim_code_tenths % 10 != 0 && size->rim_code_tenths >= HEAVY_RIM_TENTHS);
}

static void set_diameter(struct tyre_figures *out, double overall_diameter_m,
                         enum figure_source source)
{
    out->overall_diameter_m = overall_diameter_m;
    out->section_height_m = (overall_diameter_m - out->rim_diameter_m) / 2;
    out->diameter_source = known(overall_diameter_m) ? source : SOURCE_NONE;
}

/* Nominal width and diameter, each by the way that the form gives it. */
static void set_nominal(const struct designation *size, struct tyre_figures *out)
{
    double rim = out->rim_diameter_m;
    out->section_width_m = size->section_width * 1e-3;
    if (size->form == FORM_METRIC && size->overall_diameter > 0) {
        set_diameter(out, size->overall_diameter * 1e-3, SOURCE_MOULDED);
    } else if (size->form == FORM_METRIC) {
        int height = section_height_mm(size->section_width, size->aspect_percent);
        set_diameter(out, rim + 2e-3 * height, SOURCE_RULE);
    } else if (size->form == FORM_FLOTATION) {
        out->section_width_m = size->section_width * INCH_M / 100;
        set_diameter(out, size->overall_diameter * INCH_M / 100, SOURCE_MOULDED);
    } else if (size->form == FORM_NUMERIC) {
        const struct numeric_sizes_row *row = numeric_size_find(
            size->section_width, construction_key(size->construction), size->rim_code_tenths);
        out->section_width_m =
            row == NULL ? size->section_width * INCH_M / 100 : row->section_width_mm * 1e-3;
        set_diameter(out, row == NULL ? UNKNOWN : row->overall_diameter_mm * 1e-3, SOURCE_TABLE);
        out->measuring_rim_m = row == NULL ? UNKNOWN : row->measuring_rim_in * INCH_M;
    } else {
        const struct full_profile_sizes_row *row =
            full_profile_size_find(size->section_width, size->rim_code_tenths);
        int height = section_height_mm(size->section_width, FULL_PROFILE_ASPECT);
        if (row != NULL)
            set_diameter(out, row->overall_diameter_mm * 1e-3, SOURCE_TABLE);
        else
            set_diameter(out, rim + 2e-3 * height, SOURCE_CONVENTION);
        out->measuring_rim_m = row == NULL ? UNKNOWN : row->measuring_rim_in * INCH_M;
    }
}

/* The aspect ratio that the rim factors go by; 0 where the form has none. */
static int aspect_for_rims(const struct designation *size, const struct tyre_figures *figures)
{
    if (size->form == FORM_FULL_PROFILE)
        return FULL_PROFILE_ASPECT;
    if (size->form != FORM_METRIC)
        return 0;
    if (size->aspect_percent > 0)
        return size->aspect_percent;
    return (int)floor(100 * figures->section_height_m / figures->section_width_m + 0.5);
}

/* Measuring and permitted rims, and the width on the rim in use. */
static void set_rims(const struct designation *size, double rim_width_m, struct tyre_figures *out)
{
    int aspect = aspect_for_rims(size, out);
    const struct rim_factors_row *factors = aspect > 0 ? rim_factors_for(aspect) : NULL;
    out->width_on_rim_m = out->section_width_m;
    if (factors == NULL)
        return;
    if (!known(out->measuring_rim_m))
        out->measuring_rim_m = half_inches(factors->measuring_factor * out->section_width_m);
    out->rim_min_m = half_inches_up(factors->permitted_min_factor * out->section_width_m);
    out->rim_max_m = half_inches_down(factors->permitted_max_factor * out->section_width_m);
    out->rim_source = SOURCE_RULE;
    double rim = known_or(rim_width_m, out->measuring_rim_m);
    if (known(rim))
        out->width_on_rim_m = section_width_on_rim_m(
            out->section_width_m, rim, factors->theoretical_factor * out->section_width_m);
}

/* The envelope that the standard allows a new tyre. */
static void set_envelope(const struct designation *size, struct tyre_figures *out)
{
    const struct tolerance_row *row = tolerance_find(out->un_r54 ? "un_r54" : "un_r30",
                                                     construction_key(size->construction), false);
    if (row == NULL)
        return;
    double height = out->section_height_m, rim = out->rim_diameter_m;
    out->overall_diameter_min_m = rim + 2 * height * row->height_min_factor;
    out->overall_diameter_max_m = rim + 2 * height * row->height_max_factor;
    out->width_on_rim_max_m = out->width_on_rim_m * row->width_max_factor;
}

void figures_by_rule(const struct designation *size, double rim_width_m, struct tyre_figures *out)
{
    *out = (struct tyre_figures){
        .overall_diameter_min_m = UNKNOWN,
        .overall_diameter_max_m = UNKNOWN,
        .width_on_rim_max_m = UNKNOWN,
        .measuring_rim_m = UNKNOWN,
        .rim_min_m = UNKNOWN,
        .rim_max_m = UNKNOWN,
        .width_source = SOURCE_RULE,
        .un_r54 = measured_by_un_r54(size),
    };
    out->rim_diameter_m = rim_diameter_m(size->rim_code_tenths, size->rim_millimetric);
    set_nominal(size, out);
    set_rims(size, rim_width_m, out);
    set_envelope(size, out);
    out->rolling_circumference_m =
        rolling_circumference_m(size->construction, out->overall_diameter_m);
    out->static_loaded_radius_m =
        static_loaded_radius_m(size->construction, out->overall_diameter_m);
    out->circumference_source = out->radius_source = out->diameter_source;
}

/* Puts a data-book diameter in, with all that is computed from it. */
static void take_diameter(const struct designation *size, double diameter_m,
                          struct tyre_figures *figures)
{
    set_diameter(figures, diameter_m, SOURCE_DATA_BOOK);
    figures->overall_diameter_min_m = fmin(figures->overall_diameter_min_m, diameter_m);
    figures->overall_diameter_max_m = fmax(figures->overall_diameter_max_m, diameter_m);
    figures->rolling_circumference_m = rolling_circumference_m(size->construction, diameter_m);
    figures->static_loaded_radius_m = static_loaded_radius_m(size->construction, diameter_m);
    figures->circumference_source = figures->radius_source = SOURCE_RULE;
}

static void take_width(double section_width_m, struct tyre_figures *figures)
{
    double change = section_width_m - figures->section_width_m;
    figures->section_width_m = section_width_m;
    figures->width_on_rim_m += change;
    figures->width_on_rim_max_m += change;
    figures->width_source = SOURCE_DATA_BOOK;
}

static double circumference_of(const struct data_book *book)
{
    return known(book->revs_per_mile) ? 1609.344 / book->revs_per_mile : 1000 / book->revs_per_km;
}

static void take_data_book(const struct designation *size, const struct data_book *book,
                           struct tyre_figures *figures)
{
    if (known(book->overall_diameter_m))
        take_diameter(size, book->overall_diameter_m, figures);
    if (known(book->section_width_m))
        take_width(book->section_width_m, figures);
    if (known(circumference_of(book))) {
        figures->rolling_circumference_m = circumference_of(book);
        figures->circumference_source = SOURCE_DATA_BOOK;
    }
    if (known(book->static_loaded_radius_m)) {
        figures->static_loaded_radius_m = book->static_loaded_radius_m;
        figures->radius_source = SOURCE_DATA_BOOK;
    }
    if (known(book->rim_min_m) || known(book->rim_max_m)) {
        figures->rim_min_m = known_or(book->rim_min_m, figures->rim_min_m);
        figures->rim_max_m = known_or(book->rim_max_m, figures->rim_max_m);
        figures->rim_source = SOURCE_DATA_BOOK;
    }
}

void tyre_measure(const struct tyre *tyre, struct tyre_measures *out)
{
    figures_by_rule(&tyre->size, tyre->wheel.width_m, &out->by_rule);
    out->stated = out->by_rule;
    take_data_book(&tyre->size, &tyre->data_book, &out->stated);
}

/* A figure that only one of two books has is dropped. */
static void keep_if_both(double *first, double *second, bool *mixed)
{
    if (known(*first) == known(*second))
        return;
    *first = *second = UNKNOWN;
    *mixed = true;
}

static void keep_revs_if_both(struct data_book *first, struct data_book *second, bool *mixed)
{
    if (known(circumference_of(first)) == known(circumference_of(second)))
        return;
    first->revs_per_mile = first->revs_per_km = UNKNOWN;
    second->revs_per_mile = second->revs_per_km = UNKNOWN;
    *mixed = true;
}

void figures_to_compare(const struct tyre *first, const struct tyre *second,
                        struct tyre_figures *first_out, struct tyre_figures *second_out,
                        bool *mixed)
{
    struct data_book a = first->data_book, b = second->data_book;
    figures_by_rule(&first->size, first->wheel.width_m, first_out);
    figures_by_rule(&second->size, second->wheel.width_m, second_out);
    *mixed = false;
    /* A size that no rule measures has only its data book: nothing could take its place. */
    if (known(first_out->overall_diameter_m) && known(second_out->overall_diameter_m)) {
        keep_if_both(&a.overall_diameter_m, &b.overall_diameter_m, mixed);
        keep_if_both(&a.static_loaded_radius_m, &b.static_loaded_radius_m, mixed);
        keep_revs_if_both(&a, &b, mixed);
    }
    keep_if_both(&a.section_width_m, &b.section_width_m, mixed);
    take_data_book(&first->size, &a, first_out);
    take_data_book(&second->size, &b, second_out);
}
