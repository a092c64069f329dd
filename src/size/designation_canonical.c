/* The one spelling that is printed for each tyre. */
#include "size/designation.h"

#include "size/designation_internal.h"

const char *const PREFIX_TEXT[PREFIX_COUNT] = {"", "P", "LT", "ST", "T", "HL"};
const char *const SUFFIX_TEXT[SUFFIX_COUNT] = {"", "C", "CP", "LT", "ST", "NHS"};
const char *const SPECIAL_USE_TEXT[SPECIAL_USE_COUNT] = {"", "POR", "MPT", "ET", "ML"};

static char *put_text(char *to, const char *text)
{
    while (*text != '\0')
        *to++ = *text++;
    return to;
}

static char *put_number(char *to, int value)
{
    char digits[12];
    int count = 0;
    unsigned int left = value < 0 ? 0 : (unsigned int)value;
    do
        digits[count++] = (char)('0' + left % 10);
    while ((left /= 10) > 0);
    while (count > 0)
        *to++ = digits[--count];
    return to;
}

static char *put_decimals(char *to, int hundredths, int decimals)
{
    to = put_number(to, hundredths / 100);
    if (decimals == 0)
        return to;
    *to++ = '.';
    *to++ = (char)('0' + hundredths / 10 % 10);
    if (decimals == 2)
        *to++ = (char)('0' + hundredths % 10);
    return to;
}

static char *put_shortest(char *to, int hundredths)
{
    return put_decimals(to, hundredths, hundredths % 100 == 0 ? 0 : hundredths % 10 == 0 ? 1 : 2);
}

/* Two decimals, as the standards write them; 8.5R17.5 and the like on 15 degree rims have fewer. */
static char *put_numeric_width(char *to, const struct designation *designation)
{
    int tenths = designation->rim_code_tenths;
    if (designation->section_whole || (tenths % 10 == 5 && tenths != 165))
        return put_shortest(to, designation->section_width);
    return put_decimals(to, designation->section_width, 2);
}

static char *put_width(char *to, const struct designation *designation)
{
    switch (designation->form) {
    case FORM_METRIC:
        to = put_number(to, designation->section_width);
        *to++ = '/';
        return put_number(to, designation->overall_diameter > 0 ? designation->overall_diameter
                                                                : designation->aspect_percent);
    case FORM_FLOTATION:
        to = put_shortest(to, designation->overall_diameter);
        *to++ = 'x';
        return put_decimals(to, designation->section_width, 2);
    case FORM_NUMERIC:
        return put_numeric_width(to, designation);
    case FORM_FULL_PROFILE:
    case FORM_COUNT:
        break;
    }
    return put_number(to, designation->section_width);
}

static char *put_construction(char *to, const struct designation *designation)
{
    if (designation->construction == CONSTRUCTION_DIAGONAL) {
        *to++ = designation->hyphen ? '-' : 'D';
    } else if (designation->construction == CONSTRUCTION_BIAS_BELTED) {
        *to++ = 'B';
    } else {
        if (designation->z_marked)
            *to++ = 'Z';
        *to++ = 'R';
        if (designation->run_flat)
            *to++ = 'F';
    }
    return to;
}

static char *put_size(char *to, const struct designation *designation)
{
    to = put_text(to, PREFIX_TEXT[designation->prefix]);
    to = put_width(to, designation);
    to = put_construction(to, designation);
    to = put_shortest(to, designation->rim_code_tenths * 10);
    return put_text(to, SUFFIX_TEXT[designation->suffix]);
}

static char *put_service(char *to, const struct service_description *service, bool parentheses)
{
    if (service->speed_symbol[0] == '\0')
        return to;
    *to++ = ' ';
    if (parentheses)
        *to++ = '(';
    if (service->load_index != LOAD_INDEX_NONE)
        to = put_number(to, service->load_index);
    if (service->load_index_dual != LOAD_INDEX_NONE) {
        *to++ = '/';
        to = put_number(to, service->load_index_dual);
    }
    to = put_text(to, service->speed_symbol);
    if (parentheses)
        *to++ = ')';
    return to;
}

static char *put_marks(char *to, const struct designation *designation)
{
    static const char *const CAPACITIES[CAPACITY_COUNT] = {"", " SL", " XL", " HL", " LL"};
    if (designation->prefix != PREFIX_HL)
        to = put_text(to, CAPACITIES[designation->capacity]);
    if (designation->load_range != 0) {
        to = put_text(to, " LR ");
        *to++ = designation->load_range;
    }
    if (designation->ply_rating != 0) {
        *to++ = ' ';
        to = put_number(to, designation->ply_rating);
        to = put_text(to, "PR");
    }
    return to;
}

static char *put_use(char *to, const struct designation *designation)
{
    if (designation->special_use != SPECIAL_USE_NONE) {
        *to++ = ' ';
        to = put_text(to, SPECIAL_USE_TEXT[designation->special_use]);
    }
    if (designation->mud_and_snow)
        to = put_text(to, " M+S");
    return designation->severe_snow ? put_text(to, " 3PMSF") : to;
}

size_t designation_canonical(const struct designation *designation,
                             char text[DESIGNATION_CANONICAL_SIZE])
{
    char *to = put_size(text, designation);
    to = put_service(to, &designation->service, designation->service.speed_above);
    to = put_service(to, &designation->second_service, true);
    to = put_marks(to, designation);
    to = put_use(to, designation);
    *to = '\0';
    return (size_t)(to - text);
}

static bool service_equal(const struct service_description *a, const struct service_description *b)
{
    return a->load_index == b->load_index && a->load_index_dual == b->load_index_dual &&
           strcmp(a->speed_symbol, b->speed_symbol) == 0 && a->speed_above == b->speed_above;
}

bool designation_equal(const struct designation *a, const struct designation *b)
{
    return a->form == b->form && a->prefix == b->prefix && a->suffix == b->suffix &&
           a->construction == b->construction && a->hyphen == b->hyphen &&
           a->z_marked == b->z_marked && a->run_flat == b->run_flat &&
           a->section_width == b->section_width && a->section_whole == b->section_whole &&
           a->aspect_percent == b->aspect_percent && a->overall_diameter == b->overall_diameter &&
           a->rim_code_tenths == b->rim_code_tenths && a->rim_millimetric == b->rim_millimetric &&
           service_equal(&a->service, &b->service) &&
           service_equal(&a->second_service, &b->second_service) && a->capacity == b->capacity &&
           a->load_range == b->load_range && a->ply_rating == b->ply_rating &&
           a->special_use == b->special_use && a->mud_and_snow == b->mud_and_snow &&
           a->severe_snow == b->severe_snow;
}

const char *designation_form_name(enum tyre_form form)
{
    static const char *const NAMES[FORM_COUNT] = {"metric", "flotation", "numeric", "full_profile"};
    return NAMES[form];
}

const char *construction_key(enum construction construction)
{
    static const char *const keys[CONSTRUCTION_COUNT] = {
        [CONSTRUCTION_RADIAL] = "radial",
        [CONSTRUCTION_DIAGONAL] = "diagonal",
        [CONSTRUCTION_BIAS_BELTED] = "bias_belted",
    };
    return keys[construction];
}
