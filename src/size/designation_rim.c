/* Rim diameter codes: inches, with the halves of drop centre rims, or millimetres. */
#include "size/designation_internal.h"

#define RIM_EXPECTED "8 to 30, 14.5 to 26.5 in the halves in use, or millimetres such as 390"

/* Codes that the standards list rims for, from memory. */
static bool is_inch_code(int tenths)
{
    if (tenths % 10 == 0)
        return is_whole_inch_code(tenths / 10);
    switch (tenths) {
    case 145:
    case 155:
    case 165:
    case 175:
    case 195:
    case 205:
    case 225:
    case 245:
    case 265:
        return true;
    default:
        return false;
    }
}

/* 315 to 415 in steps of 25, the 400 of earlier tyres, 420 to 540 of later ones: all end in 0 or 5.
 */
static bool is_millimetric_code(int millimetres)
{
    return millimetres >= 310 && millimetres <= 560 && millimetres % 5 == 0;
}

static bool rim_fault(struct scanner *scanner, const char *from, const char *to)
{
    struct span written = written_between(scanner, from, to - from < 12 ? to : from + 12);
    return fault_between(scanner, from, to, "%.*s is not a rim diameter code; expected %s",
                         (int)written.length, written.at, RIM_EXPECTED);
}

/* 205-55-16: the first hyphen stands where '/' belongs, and was read as a construction. */
static bool hyphen_for_slash(struct scanner *scanner, const char *from, int code)
{
    const struct designation *out = scanner->out;
    if (out->form != FORM_FULL_PROFILE || !out->hyphen || code < 31 || code > 95)
        return false;
    while (*from != '-')
        from--;
    fault_between(scanner, from, from + 1,
                  "a hyphen stands between section width and aspect ratio; "
                  "expected '/', as in %d/%d",
                  out->section_width, code);
    return true;
}

/* ISO 5775-1 sizes: section width in mm, hyphen, bead seat diameter in mm. */
static bool looks_like_bicycle(const struct designation *out)
{
    return out->form == FORM_NUMERIC && out->hyphen && out->section_whole &&
           out->section_width >= 1000;
}

static bool set_millimetric(struct scanner *scanner, const char *from, int millimetres)
{
    struct designation *out = scanner->out;
    if (looks_like_bicycle(out))
        return fault_between(scanner, from, scanner->at,
                             "a bead seat of %d mm behind a hyphen makes this a bicycle tyre "
                             "(ISO 5775-1); expected a rim diameter code such as 16 or 22.5",
                             millimetres);
    if (!is_millimetric_code(millimetres))
        return rim_fault(scanner, from, scanner->at);
    if (out->form == FORM_FLOTATION || out->form == FORM_NUMERIC)
        return fault_between(scanner, from, scanner->at,
                             "a rim in millimetres belongs to no size in inches; "
                             "expected a rim diameter code such as 15");
    out->rim_millimetric = true;
    out->rim_code_tenths = millimetres * 10;
    return true;
}

/* The digits of a rim code and of a load index may touch (1691V): the first two are the rim
 * where they make an inch code, else the first three. */
static int rim_digits_of_run(const char *from, int run)
{
    const char *behind = from + run;
    int two = (from[0] - '0') * 10 + from[1] - '0';
    int rim = two <= 30 ? 2 : 3;
    bool load_index_follows = *behind == '/' || is_letter(*behind);
    return load_index_follows && run - rim >= 2 && run - rim <= 3 ? rim : run;
}

static bool scan_half(struct scanner *scanner, const char *from, int *tenths)
{
    if (*scanner->at == FOLDED_HALF) {
        *tenths += 5;
        scanner->at++;
        return true;
    }
    if (*scanner->at != '.')
        return true;
    scanner->at++;
    if (*scanner->at != '5')
        return fault_expected(scanner, "5, as in the rim diameter code 22.5");
    scanner->at++;
    *tenths += 5;
    if (is_digit(scanner->at[0]) && !is_digit(scanner->at[1]))
        return rim_fault(scanner, from, scanner->at + 1);
    return true;
}

bool scan_rim(struct scanner *scanner)
{
    skip_blanks(scanner);
    const char *from = scanner->at;
    if (!is_digit(*from))
        return fault_expected(scanner, "a rim diameter code such as 16, 22.5 or 390");
    scanner->rim_at = from;
    int run = 0;
    while (is_digit(from[run]))
        run++;
    if (run > 3)
        run = rim_digits_of_run(from, run);
    scanner->at = from + run;
    if (*scanner->at == 'O' || *scanner->at == 'I')
        return fault_expected(scanner, "a rim diameter code such as 16, 22.5 or 390");
    if (run > 3)
        return rim_fault(scanner, from, scanner->at);
    int code = 0;
    for (int i = 0; i < run; i++)
        code = code * 10 + from[i] - '0';
    if (*from == '0')
        return rim_fault(scanner, from, scanner->at);
    if (run == 3)
        return set_millimetric(scanner, from, code);
    if (hyphen_for_slash(scanner, from, code))
        return false;
    int tenths = code * 10;
    if (!scan_half(scanner, from, &tenths))
        return false;
    if (!is_inch_code(tenths))
        return rim_fault(scanner, from, scanner->at);
    scanner->out->rim_code_tenths = tenths;
    return true;
}
