/* Size designations, read by hand from left to right.
 *
 *   designation   [prefix] size {mark}
 *   size          width / ratio construction rim      metric; a ratio above 200 is a diameter
 *                 diameter x width construction rim   flotation, inches
 *                 width construction rim              numeric (inches) or full profile (mm)
 *   construction  R ZR RF ZRF D B -
 *   mark          C CP LT ST NHS, service description, capacity class, load range, ply rating,
 *                 snow (M+S, 3PMSF) and special use (POR, MPT, ET, ML)
 *
 * Blanks may stand between any two of these. One letter can mean several things, and what was
 * read before decides: C is "commercial" behind a size without prefix, a load range behind an LT
 * size; RF before the rim code is run-flat, behind it reinforced; three digits of a rim are mm. */
#include "size/designation.h"

#include "size/designation_internal.h"

#define CONSTRUCTION_EXPECTED "a construction: R, ZR, RF, ZRF, D, B or -"

enum { NARROWEST_NUMERIC = 300, WIDEST_NUMERIC = 2450 }; /* hundredths of an inch */

struct decimal {
    const char *from, *to;
    int hundredths;
    bool whole; /* no decimals written */
};

int scan_digits(struct scanner *scanner, int *value)
{
    const char *from = scanner->at;
    int sum = 0;
    while (is_digit(*scanner->at)) {
        if (sum < 10000)
            sum = sum * 10 + *scanner->at - '0';
        scanner->at++;
    }
    *value = sum;
    return (int)(scanner->at - from);
}

static bool scan_decimals(struct scanner *scanner, struct decimal *decimal)
{
    if (*scanner->at == FOLDED_HALF) {
        decimal->hundredths += 50;
        decimal->whole = false;
        scanner->at++;
    } else if (*scanner->at == '.') {
        scanner->at++;
        if (!is_digit(*scanner->at))
            return fault_expected(scanner, "a digit behind the decimal point");
        decimal->hundredths += (*scanner->at++ - '0') * 10;
        if (is_digit(*scanner->at))
            decimal->hundredths += *scanner->at++ - '0';
        if (is_digit(*scanner->at))
            return fault_expected(scanner, "at most two decimals");
        decimal->whole = false;
    } else if (*scanner->at == ',' && is_digit(scanner->at[1])) {
        return fault_expected(scanner, decimal->hundredths >= 10000
                                           ? "'/' before the aspect ratio, as in 205/55R16"
                                           : "a decimal point");
    }
    decimal->to = scanner->at;
    return true;
}

static bool scan_decimal(struct scanner *scanner, struct decimal *decimal, const char *expected)
{
    skip_blanks(scanner);
    decimal->from = scanner->at;
    decimal->whole = true;
    if (!is_digit(*scanner->at))
        return fault_expected(scanner, expected);
    if (*scanner->at == '0')
        return fault_between(scanner, scanner->at, scanner->at + 1,
                             "a number begins with 0; expected %s", expected);
    int whole, count = scan_digits(scanner, &whole);
    if (count > 4)
        return fault_between(scanner, decimal->from, scanner->at,
                             "a number of %d digits is no size; expected %s", count, expected);
    decimal->hundredths = whole * 100;
    if (*scanner->at == 'O' || *scanner->at == 'I') /* for 0 and 1, which no mark begins with */
        return fault_expected(scanner, expected);
    return scan_decimals(scanner, decimal);
}

static bool scan_prefix(struct scanner *scanner)
{
    skip_blanks(scanner);
    const char *at = scanner->at;
    if (is_digit(*at))
        return true;
    enum size_prefix prefix = PREFIX_NONE;
    if (at[0] == 'P')
        prefix = PREFIX_P;
    else if (at[0] == 'T')
        prefix = PREFIX_T;
    else if (at[0] == 'L' && at[1] == 'T')
        prefix = PREFIX_LT;
    else if (at[0] == 'S' && at[1] == 'T')
        prefix = PREFIX_ST;
    else if (at[0] == 'H' && at[1] == 'L')
        prefix = PREFIX_HL;
    if (at[0] == 'R' && is_digit(at[1]))
        return fault_between(scanner, at, at + 1,
                             "the rim diameter stands first; expected the section width first, "
                             "as in 205/55R16");
    int length = prefix == PREFIX_P || prefix == PREFIX_T ? 1 : 2;
    if (prefix == PREFIX_NONE)
        return fault_expected(scanner, "the section width or overall diameter of a tyre, "
                                       "or a prefix P, LT, ST, T or HL");
    scanner->out->prefix = prefix;
    if (prefix == PREFIX_HL)
        scanner->out->capacity = CAPACITY_HL;
    scanner->prefix_at = at;
    scanner->at += length;
    return true;
}

/* Until the service description came behind the size, a speed letter stood before the R. */
static bool construction_fault(struct scanner *scanner)
{
    const char *at = scanner->at;
    if (is_speed_symbol_letter(at[0]) && at[1] == 'R')
        return fault_between(scanner, at, at + 1,
                             "the speed letter %c stands before the R, as it did in former times; "
                             "expected R, and the service description behind the rim diameter code",
                             at[0]);
    if (is_speed_symbol_letter(at[0]) && scanner->out->section_whole &&
        scanner->out->form == FORM_NUMERIC && scanner->out->section_width >= WIDEST_NUMERIC &&
        at[1] == ' ')
        return fault_between(scanner, at, at + 1,
                             "a service description stands before the size; expected the size "
                             "first, as in 205/55R16 91V");
    return fault_expected(scanner, CONSTRUCTION_EXPECTED);
}

static bool scan_radial(struct scanner *scanner)
{
    struct designation *out = scanner->out;
    if (*scanner->at == 'Z') {
        out->z_marked = true;
        scanner->at++;
        skip_blanks(scanner);
        if (*scanner->at != 'R')
            return fault_expected(scanner, "R behind Z");
    }
    scanner->at++;
    skip_blanks(scanner);
    if (*scanner->at == 'F') {
        out->run_flat = true;
        scanner->at++;
    }
    out->construction = CONSTRUCTION_RADIAL;
    return true;
}

static bool scan_construction(struct scanner *scanner)
{
    struct designation *out = scanner->out;
    skip_blanks(scanner);
    switch (*scanner->at) {
    case 'R':
    case 'Z':
        return scan_radial(scanner);
    case '-':
        out->hyphen = true;
        out->construction = CONSTRUCTION_DIAGONAL;
        break;
    case 'D':
        out->construction = CONSTRUCTION_DIAGONAL;
        break;
    case 'B':
        out->construction = CONSTRUCTION_BIAS_BELTED;
        break;
    default:
        return construction_fault(scanner);
    }
    scanner->at++;
    return true;
}

static bool set_aspect(struct scanner *scanner, const struct decimal *ratio)
{
    int value = ratio->hundredths / 100;
    if (!ratio->whole)
        return fault_between(scanner, ratio->from, ratio->to,
                             "an aspect ratio has no decimals; expected a whole number such as 75");
    if (value > 200)
        scanner->out->overall_diameter = value;
    else if (value >= ASPECT_MIN && value <= ASPECT_MAX)
        scanner->out->aspect_percent = value;
    else
        return fault_between(scanner, ratio->from, ratio->to,
                             "an aspect ratio of %d is on no tyre; expected 15 to 100 percent, "
                             "or an overall diameter in mm",
                             value);
    return true;
}

/* 55/205R16: a ratio before '/' and a width in mm behind it. False and a fault where it is so. */
static bool check_order(struct scanner *scanner, const struct decimal *width)
{
    int ratio = width->hundredths / 100, behind = 0;
    const char *at = scanner->at + 1;
    while (*at == ' ')
        at++;
    for (int digits = 0; digits < 4 && is_digit(*at); digits++)
        behind = behind * 10 + *at++ - '0';
    if (!width->whole || ratio < 20 || ratio > 95 || behind < 105 || behind > 405)
        return true;
    return fault_between(scanner, width->from, at,
                         "the aspect ratio %d stands before the section width %d; "
                         "expected the width first, as in %d/%d",
                         ratio, behind, behind, ratio);
}

static bool scan_metric(struct scanner *scanner, const struct decimal *width)
{
    if (!check_order(scanner, width))
        return false;
    if (width->hundredths < 6000)
        return fault_between(scanner, scanner->at, scanner->at + 1,
                             "'/' stands behind a size in inches; expected x, as in 31x10.50R15, "
                             "or a section width in mm before it");
    if (!width->whole || width->hundredths < 9000 || width->hundredths > METRIC_WIDTH_MAX * 100)
        return fault_between(scanner, width->from, width->to,
                             "the section width before '/' is on no tyre; "
                             "expected a whole number from 90 to 650 mm");
    scanner->out->form = FORM_METRIC;
    scanner->out->section_width = width->hundredths / 100;
    scanner->at++;
    struct decimal ratio = {0};
    return scan_decimal(scanner, &ratio,
                        "an aspect ratio such as 75, or an overall diameter in mm") &&
           set_aspect(scanner, &ratio);
}

static bool scan_flotation(struct scanner *scanner, const struct decimal *diameter)
{
    if (diameter->hundredths < 1400 || diameter->hundredths > 6000)
        return fault_between(
            scanner, diameter->from, diameter->to,
            "the overall diameter before x is on no tyre; expected 14 to 60 inches");
    scanner->out->form = FORM_FLOTATION;
    scanner->out->overall_diameter = diameter->hundredths;
    scanner->at++;
    struct decimal width = {0};
    if (!scan_decimal(scanner, &width, "a section width in inches, such as 10.50"))
        return false;
    if (width.whole && width.hundredths >= 40000 && width.hundredths <= 250000)
        return fault_between(scanner, width.from, width.to,
                             "the section width behind x has lost its decimal point; "
                             "expected inches, such as %d.%02d",
                             width.hundredths / 10000, width.hundredths / 100 % 100);
    if (width.hundredths < 400 || width.hundredths > 2500 ||
        width.hundredths * 10 > diameter->hundredths * 7)
        return fault_between(scanner, width.from, width.to,
                             "the section width behind x does not fit the overall diameter; "
                             "expected 4 to 25 inches and at most 0.7 of the diameter");
    scanner->out->section_width = width.hundredths;
    return true;
}

static bool set_width_alone(struct scanner *scanner, const struct decimal *width)
{
    struct designation *out = scanner->out;
    out->form = width->whole && width->hundredths >= 10000 ? FORM_FULL_PROFILE : FORM_NUMERIC;
    out->section_whole = out->form == FORM_NUMERIC && width->whole;
    out->section_width = width->hundredths / (out->form == FORM_NUMERIC ? 1 : 100);
    if (out->form == FORM_FULL_PROFILE && out->section_width > 330)
        return fault_between(scanner, width->from, width->to,
                             "a section width of %d mm without an aspect ratio is on no tyre; "
                             "expected 100 to 330 mm, or inches with a point as in 7.50R16",
                             out->section_width);
    return true;
}

/* Behind the construction, so that 35-622 is told to be a bicycle's by its rim. */
static bool check_numeric_width(struct scanner *scanner, const struct decimal *width)
{
    if (scanner->out->form != FORM_NUMERIC ||
        (width->hundredths >= NARROWEST_NUMERIC && width->hundredths <= WIDEST_NUMERIC))
        return true;
    struct span written = written_between(scanner, width->from, width->to);
    return fault_between(scanner, width->from, width->to,
                         "a section width of %.*s inches is on no tyre; expected 3 to 24.5 inches, "
                         "or millimetres such as 165 or 205/55",
                         (int)written.length, written.at);
}

/* 20555R16: width and ratio without the '/' between them. */
static bool check_run_together(struct scanner *scanner)
{
    skip_blanks(scanner);
    const char *from = scanner->at;
    int run = 0;
    while (is_digit(from[run]))
        run++;
    if (run != 5 || from[0] == '0')
        return true;
    return fault_between(scanner, from, from + run,
                         "section width and aspect ratio run together; expected '/' between them, "
                         "as in %.3s/%.2s",
                         from, from + 3);
}

static bool scan_size(struct scanner *scanner)
{
    struct decimal first = {0};
    if (!check_run_together(scanner))
        return false;
    if (!scan_decimal(scanner, &first, "the section width or overall diameter of a tyre"))
        return false;
    skip_blanks(scanner);
    if (*scanner->at == '/') {
        if (!scan_metric(scanner, &first))
            return false;
    } else if (*scanner->at == 'X') {
        if (!scan_flotation(scanner, &first))
            return false;
    } else if (!is_letter(*scanner->at) && *scanner->at != '-') {
        return fault_expected(scanner, "'/' and an aspect ratio, x and a section width, "
                                       "or a construction: R, ZR, RF, ZRF, D, B or -");
    } else if (!set_width_alone(scanner, &first)) {
        return false;
    }
    return scan_construction(scanner) && scan_rim(scanner) && check_numeric_width(scanner, &first);
}

/* On the 15 degree rims of heavy vehicles 11 and 11.00 are one width. */
static void settle_section_whole(struct designation *out)
{
    if (out->form == FORM_NUMERIC && rim_has_half(out) && out->rim_code_tenths != 165)
        out->section_whole = out->section_width % 100 == 0;
}

bool designation_parse(struct span text, struct designation *out, struct designation_error *error)
{
    struct scanner scanner;
    scanner.out = out;
    scanner.error = error;
    scanner.source = text;
    scanner.prefix_at = scanner.size_end = scanner.rim_at = scanner.service_at = NULL;
    scanner.capacity_at = scanner.load_range_at = scanner.ply_at = NULL;
    *out = (struct designation){
        .service = {LOAD_INDEX_NONE, LOAD_INDEX_NONE, "", false},
        .second_service = {LOAD_INDEX_NONE, LOAD_INDEX_NONE, "", false},
    };
    if (!scanner_fold(&scanner) || !scan_prefix(&scanner) || !scan_size(&scanner))
        return false;
    settle_section_whole(out);
    scanner.size_end = scanner.at;
    return check_dimensions(&scanner) && move_prefix_behind(&scanner) && scan_marks(&scanner) &&
           check_marks(&scanner);
}
