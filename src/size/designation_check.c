/* Contradictions between marks that are each right alone. */
#include "size/designation_internal.h"

#include <math.h>

bool check_dimensions(struct scanner *scanner)
{
    const struct designation *out = scanner->out;
    if (out->overall_diameter == 0)
        return true;
    bool flotation = out->form == FORM_FLOTATION;
    double rim_mm = out->rim_code_tenths / 10.0 * (out->rim_millimetric ? 1.0 : 25.4);
    double diameter_mm = flotation ? out->overall_diameter * 0.254 : out->overall_diameter;
    if (diameter_mm - rim_mm >= 60.0 && diameter_mm <= 1600.0)
        return true;
    return fault_between(scanner, scanner->rim_at, scanner->size_end,
                         "this rim does not go into the overall diameter; expected a rim at least "
                         "%s smaller than it and a diameter to %s",
                         flotation ? "2.4 inches" : "60 mm", flotation ? "60 inches" : "1600 mm");
}

static int row_of_ply_rating(int ply_rating)
{
    return ply_rating / 2 - 1;
}

/* Nominal pressures in kPa by load range A to N (TRA practice, from memory above F). */
static double load_range_pressure_kPa(char load_range)
{
    static const double PRESSURES_KPA[] = {200, 250, 350, 450, 550, 650,
                                           760, 830, 900, 930, 930, 930};
    return PRESSURES_KPA[row_of_ply_rating(load_range_ply_rating(load_range))];
}

struct load_index_range {
    int low, high;
};

/* Lowest and highest load index met with on tyres of a load range A to N, whatever their size. */
static struct load_index_range range_of_any_size(char load_range)
{
    static const struct load_index_range RANGES[] = {
        {20, 100}, {40, 112},  {55, 124},  {65, 130},  {75, 136},  {85, 144},
        {95, 152}, {105, 160}, {115, 170}, {125, 185}, {130, 195}, {135, 200},
    };
    return RANGES[row_of_ply_rating(load_range_ply_rating(load_range))];
}

/* Load grows as P^0.7 · Sd^1.39 · (Dr + Sd): the shape of the Tire and Rim Association formulas
 * (from memory; the constant is that for P-metric tyres), in steps of the load index, 80 a decade.
 */
static double load_index_by_size(const struct designation *out)
{
    double rim_mm = out->rim_code_tenths * 2.54, width_mm = out->section_width;
    double aspect = out->aspect_percent / 100.0;
    if (out->form == FORM_FLOTATION) {
        width_mm = out->section_width * 0.254;
        aspect = (out->overall_diameter * 0.254 - rim_mm) / 2.0 / width_mm;
    }
    double section_mm = (0.34848 + 0.6497 * aspect) * width_mm;
    double load_kg = 6.67e-5 * pow(load_range_pressure_kPa(out->load_range), 0.7) *
                     pow(section_mm, 1.39) * (rim_mm + section_mm);
    return 80.0 * log10(load_kg / 45.0);
}

/* By how much the formula is above the listed sizes of a class, least and most, with room for one
 * step of pressure either way; tables/standard_sizes.csv holds the sizes it was set by. */
static bool range_by_size(const struct designation *out, struct load_index_range *range)
{
    struct load_index_range below;
    if (out->overall_diameter > 0 && out->form == FORM_METRIC)
        return false;
    if (out->form == FORM_FLOTATION && out->section_width >= 750)
        below = out->section_width < 1200 ? (struct load_index_range){45, 58}
                                          : (struct load_index_range){51, 70};
    else if (out->form == FORM_METRIC && out->prefix == PREFIX_LT && !rim_has_half(out))
        below = (struct load_index_range){41, 61};
    else
        return false;
    int by_size = (int)load_index_by_size(out);
    *range = (struct load_index_range){by_size - below.high, by_size - below.low};
    return true;
}

static bool check_load_range(struct scanner *scanner)
{
    const struct designation *out = scanner->out;
    if (out->load_range == 0)
        return true;
    int ply_rating = load_range_ply_rating(out->load_range);
    if (out->ply_rating != 0 && out->ply_rating != ply_rating)
        return fault_between(scanner, scanner->ply_at,
                             scanner->ply_at + (out->ply_rating > 9 ? 2 : 1),
                             "a ply rating of %d contradicts load range %c; expected %d",
                             out->ply_rating, out->load_range, ply_rating);
    int load_index = out->service.load_index;
    if (load_index == LOAD_INDEX_NONE)
        return true;
    struct load_index_range range;
    if (!range_by_size(out, &range))
        range = range_of_any_size(out->load_range);
    if (load_index >= range.low && load_index <= range.high)
        return true;
    return fault_between(scanner, scanner->load_range_at, scanner->load_range_at + 1,
                         "load range %c contradicts load index %d; "
                         "expected a load index of about %d to %d with it",
                         out->load_range, load_index, range.low, range.high);
}

/* ZR means above 240 km/h; V (240), W and Y are what may stand with it (UN R30 2.29, from memory).
 */
static bool check_z_mark(struct scanner *scanner)
{
    const struct designation *out = scanner->out;
    char symbol = out->service.speed_symbol[0];
    if (!out->z_marked || symbol == '\0' || symbol >= 'V')
        return true;
    return fault_between(scanner, scanner->service_at, scanner->service_at + 1,
                         "the speed symbol %s contradicts ZR, which is above 240 km/h; "
                         "expected V, W or Y",
                         out->service.speed_symbol);
}

bool check_marks(struct scanner *scanner)
{
    return check_z_mark(scanner) && check_load_range(scanner);
}
