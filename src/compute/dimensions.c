#include "compute/dimensions.h"

#include <stddef.h>

#include "base/known.h"
#include "tables/lookup.h"
#include "tables/tables_data.h"

#define INCH_M 0.0254

int section_height_mm(int section_width_mm, int aspect_percent)
{
    return (section_width_mm * aspect_percent + 50) / 100;
}

_Static_assert((int)ROLLING_RADIAL == (int)CONSTRUCTION_RADIAL &&
                   (int)ROLLING_DIAGONAL == (int)CONSTRUCTION_DIAGONAL &&
                   (int)ROLLING_BIAS_BELTED == (int)CONSTRUCTION_BIAS_BELTED,
               "table rolling has a row for each construction, in their order");

double rolling_circumference_m(enum construction construction, double overall_diameter_m)
{
    return rolling_rows[construction].circumference_factor * overall_diameter_m;
}

double worn_circumference_m(double circumference_m, double overall_diameter_m, double lost_m)
{
    return circumference_m * (overall_diameter_m - 2 * lost_m) / overall_diameter_m;
}

double static_loaded_radius_m(enum construction construction, double overall_diameter_m)
{
    return rolling_rows[construction].loaded_radius_factor * overall_diameter_m / 2;
}

/* Commercial, light-truck, heavy and special use tyres are measured by UN R54, others by UN R30. */
static bool measured_by_un_r54(const struct designation *size)
{
    return size->prefix == PREFIX_LT || size->prefix == PREFIX_ST || size->suffix != SUFFIX_NONE ||
           size->form == FORM_FLOTATION || size->form == FORM_NUMERIC ||
           size->special_use != SPECIAL_USE_NONE || on_heavy_rim(size);
}

static void set_diameter(struct tyre_dimensions *out, double overall_diameter_m,
                         enum figure_source source)
{
    out->overall_diameter_m = overall_diameter_m;
    out->section_height_m = (overall_diameter_m - out->rim_diameter_m) / 2;
    out->diameter_source = known(overall_diameter_m) ? source : SOURCE_NONE;
}

static void set_metric(const struct designation *size, struct tyre_dimensions *out)
{
    out->section_width_m = size->section_width * 1e-3;
    if (size->overall_diameter > 0) {
        set_diameter(out, size->overall_diameter * 1e-3, SOURCE_MOULDED);
        return;
    }
    int height = section_height_mm(size->section_width, size->aspect_percent);
    set_diameter(out, out->rim_diameter_m + 2e-3 * height, SOURCE_RULE);
}

/* The diameter is the moulded one; what a standard lists for the size is half an inch less. */
static void set_flotation(const struct designation *size, struct tyre_dimensions *out)
{
    out->section_width_m = size->section_width * INCH_M / 100;
    set_diameter(out, size->overall_diameter * INCH_M / 100, SOURCE_MOULDED);
}

static void set_numeric(const struct designation *size, struct tyre_dimensions *out)
{
    const struct numeric_sizes_row *row = numeric_size_find(
        size->section_width, construction_key(size->construction), size->rim_code_tenths);
    out->section_width_m = size->section_width * INCH_M / 100;
    if (row == NULL)
        return;
    out->section_width_m = row->section_width_mm * 1e-3;
    out->width_source = SOURCE_TABLE;
    set_diameter(out, row->overall_diameter_mm * 1e-3, SOURCE_TABLE);
}

static void set_full_profile(const struct designation *size, struct tyre_dimensions *out)
{
    const struct full_profile_sizes_row *row =
        full_profile_size_find(size->section_width, size->rim_code_tenths);
    int height = section_height_mm(size->section_width, FULL_PROFILE_ASPECT);
    out->section_width_m = size->section_width * 1e-3;
    if (row != NULL)
        set_diameter(out, row->overall_diameter_mm * 1e-3, SOURCE_TABLE);
    else
        set_diameter(out, out->rim_diameter_m + 2e-3 * height, SOURCE_CONVENTION);
}

/* Nominal width and diameter, each by the way that the form gives it. */
static void set_nominal(const struct designation *size, struct tyre_dimensions *out)
{
    set_diameter(out, UNKNOWN, SOURCE_NONE);
    switch (size->form) {
    case FORM_METRIC:
        set_metric(size, out);
        break;
    case FORM_FLOTATION:
        set_flotation(size, out);
        break;
    case FORM_NUMERIC:
        set_numeric(size, out);
        break;
    case FORM_FULL_PROFILE:
    case FORM_COUNT:
        set_full_profile(size, out);
        break;
    }
}

static void set_rims(const struct designation *size, double rim_width_m,
                     struct tyre_dimensions *out)
{
    const struct tyre_on_rim tyre = {size, out->section_width_m, out->section_height_m,
                                     rim_width_m};
    struct rims rims;
    rims_by_rule(&tyre, &rims);
    out->measuring_rim_m = rims.measuring_m;
    out->rim_min_m = rims.min_m;
    out->rim_max_m = rims.max_m;
    out->width_on_rim_m = rims.section_width_m;
    out->measuring_rim_source = rims.measuring_source;
    out->rim_min_source = out->rim_max_source = rims.permitted_source;
}

/* The diameter that the least one is reckoned from: a flotation size's moulded diameter is above
 * the one that UN R54 lists for it, and a new tyre may be smaller than that by the tolerance. */
static double least_nominal_m(const struct designation *size, const struct tyre_dimensions *figures)
{
    const struct flotation_sizes_row *listed = listed_flotation(size);
    return listed == NULL ? figures->overall_diameter_m : listed->design_diameter_mm * 1e-3;
}

/* The envelope that the standard allows a new tyre. */
static void set_envelope(const struct designation *size, struct tyre_dimensions *out)
{
    const struct tolerance_row *row =
        tolerance_find(out->un_r54, (int)size->construction, size->special_use != SPECIAL_USE_NONE);
    if (row == NULL)
        return;
    double rim = out->rim_diameter_m;
    out->overall_diameter_min_m = rim + (least_nominal_m(size, out) - rim) * row->height_min_factor;
    out->overall_diameter_max_m = rim + 2 * out->section_height_m * row->height_max_factor;
    if (size->mud_and_snow || size->severe_snow)
        out->overall_diameter_max_m *= row->snow_diameter_factor;
    out->width_on_rim_max_m = out->width_on_rim_m * row->width_max_factor;
}

void figures_without_rim(const struct designation *size, struct tyre_dimensions *out)
{
    *out = (struct tyre_dimensions){
        .overall_diameter_min_m = UNKNOWN,
        .overall_diameter_max_m = UNKNOWN,
        .width_on_rim_max_m = UNKNOWN,
        .width_source = SOURCE_MOULDED,
        .un_r54 = measured_by_un_r54(size),
    };
    out->rim_diameter_m = rim_diameter_m(size->rim_code_tenths, size->rim_millimetric);
    set_nominal(size, out);
    out->rolling_circumference_m =
        rolling_circumference_m(size->construction, out->overall_diameter_m);
    out->static_loaded_radius_m =
        static_loaded_radius_m(size->construction, out->overall_diameter_m);
    out->circumference_source = out->radius_source = out->diameter_source;
}

void figures_on_rim(const struct designation *size, double rim_width_m, struct tyre_dimensions *out)
{
    set_rims(size, rim_width_m, out);
    set_envelope(size, out);
}

void figures_by_rule(const struct designation *size, double rim_width_m,
                     struct tyre_dimensions *out)
{
    figures_without_rim(size, out);
    figures_on_rim(size, rim_width_m, out);
}

/* Puts a data-book diameter in, with all that is computed from it. */
static void take_diameter(const struct designation *size, double diameter_m,
                          struct tyre_dimensions *figures)
{
    set_diameter(figures, diameter_m, SOURCE_DATA_BOOK);
    if (!known(
            figures->overall_diameter_max_m)) /* no rule for the size: the standard's tolerance */
        set_envelope(size, figures);
    figures->overall_diameter_min_m = fmin(figures->overall_diameter_min_m, diameter_m);
    figures->overall_diameter_max_m = fmax(figures->overall_diameter_max_m, diameter_m);
    figures->rolling_circumference_m = rolling_circumference_m(size->construction, diameter_m);
    figures->static_loaded_radius_m = static_loaded_radius_m(size->construction, diameter_m);
    figures->circumference_source = figures->radius_source = SOURCE_RULE;
}

static void take_width(double section_width_m, struct tyre_dimensions *figures)
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

/* Each end by itself. What a rule gives for the other is no end of one range where it lies beyond.
 */
static void take_permitted_rims(const struct data_book *book, struct tyre_dimensions *figures)
{
    if (known(book->rim_min_m)) {
        figures->rim_min_m = book->rim_min_m;
        figures->rim_min_source = SOURCE_DATA_BOOK;
    }
    if (known(book->rim_max_m)) {
        figures->rim_max_m = book->rim_max_m;
        figures->rim_max_source = SOURCE_DATA_BOOK;
    }
    if (!clearly_above(figures->rim_min_m, figures->rim_max_m))
        return;
    if (known(book->rim_min_m)) {
        figures->rim_max_m = UNKNOWN;
        figures->rim_max_source = SOURCE_NONE;
    } else {
        figures->rim_min_m = UNKNOWN;
        figures->rim_min_source = SOURCE_NONE;
    }
}

static void take_data_book(const struct designation *size, const struct data_book *book,
                           struct tyre_dimensions *figures)
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
    take_permitted_rims(book, figures);
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
                        struct tyre_dimensions *first_out, struct tyre_dimensions *second_out,
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
