/* Random tyres, spelled by a speller of the test's own with random case, blanks and dashes, are
 * read as what they are. */
#include <check.h>
#include <inttypes.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "../fuzz/designation_property.h"
#include "designation_cases.h"
#include "support.h"

enum { ROUNDS = 100000, ROOM = 512 };

static uint64_t state;

static int below(int limit)
{
    return random_whole(&state, 0, limit - 1);
}

static bool one_in(int n)
{
    return below(n) == 0;
}

static char letter_of(const char *letters)
{
    return letters[below((int)strlen(letters))];
}

static void random_service(struct service_description *service, bool above)
{
    *service = (struct service_description){LOAD_INDEX_NONE, LOAD_INDEX_NONE, "", above};
    service->load_index = above && one_in(3) ? LOAD_INDEX_NONE : below(201);
    if (above) {
        service->speed_symbol[0] = letter_of("VWY");
        return;
    }
    if (one_in(3) && service->load_index >= 12)
        service->load_index_dual = service->load_index - below(13);
    service->speed_symbol[0] = letter_of("ABCDEFGHJKLMNPQRSTUVWY");
    if (service->speed_symbol[0] == 'A')
        service->speed_symbol[1] = (char)('1' + below(8));
}

static int random_inch_rim(int least)
{
    static const int CODES[] = {80,  90,  100, 120, 130, 140, 145, 150, 155, 160, 165, 170, 175,
                                180, 190, 195, 200, 205, 210, 220, 225, 230, 240, 245, 260, 300};
    int code;
    do
        code = CODES[below((int)(sizeof CODES / sizeof CODES[0]))];
    while (code < least);
    return code;
}

static void random_rim_mm(struct designation *d)
{
    d->rim_millimetric = true;
    d->rim_code_tenths = 3150 + 250 * below(5);
}

static void random_metric(struct designation *d)
{
    static const enum size_prefix PREFIXES[] = {PREFIX_NONE, PREFIX_NONE, PREFIX_P, PREFIX_LT,
                                                PREFIX_ST,   PREFIX_T,    PREFIX_HL};
    static const enum size_suffix SUFFIXES[] = {SUFFIX_NONE, SUFFIX_NONE, SUFFIX_C, SUFFIX_CP,
                                                SUFFIX_NHS};
    d->form = FORM_METRIC;
    d->prefix = PREFIXES[below(7)];
    if (d->prefix == PREFIX_NONE)
        d->suffix = SUFFIXES[below(5)];
    d->section_width = 90 + 5 * below(80);
    d->rim_code_tenths = random_inch_rim(80);
    if (one_in(8))
        random_rim_mm(d);
    if (one_in(10))
        d->overall_diameter = 850 + below(200);
    else
        d->aspect_percent = 15 + below(86);
}

static void random_inches(struct designation *d)
{
    static const enum size_suffix SUFFIXES[] = {SUFFIX_NONE, SUFFIX_LT, SUFFIX_ST, SUFFIX_NHS};
    d->suffix = SUFFIXES[below(4)];
    if (one_in(2)) {
        d->form = FORM_FLOTATION;
        d->overall_diameter = 3300 + 50 * below(20);
        d->section_width = 650 + 25 * below(40);
        d->rim_code_tenths = random_inch_rim(80);
    } else {
        d->form = FORM_NUMERIC;
        d->section_width = 300 + 25 * below(80);
        d->rim_code_tenths = random_inch_rim(80);
        bool drop_centre = d->rim_code_tenths % 10 == 5 && d->rim_code_tenths != 165;
        d->section_whole = d->section_width % 100 == 0 && (drop_centre || one_in(2));
    }
    while (d->form == FORM_FLOTATION && d->rim_code_tenths * 10 > d->overall_diameter - 240)
        d->rim_code_tenths = random_inch_rim(80);
}

static void random_full_profile(struct designation *d)
{
    static const enum size_suffix SUFFIXES[] = {SUFFIX_NONE, SUFFIX_C, SUFFIX_LT, SUFFIX_CP};
    d->form = FORM_FULL_PROFILE;
    d->section_width = 105 + 10 * below(22);
    d->rim_code_tenths = random_inch_rim(100);
    d->suffix = SUFFIXES[below(4)];
    if (one_in(8))
        random_rim_mm(d);
}

static void random_construction(struct designation *d)
{
    d->construction =
        one_in(4) ? (enum construction)below(CONSTRUCTION_COUNT) : CONSTRUCTION_RADIAL;
    d->hyphen = d->construction == CONSTRUCTION_DIAGONAL && one_in(2);
    d->z_marked = d->construction == CONSTRUCTION_RADIAL && one_in(6);
    d->run_flat = d->construction == CONSTRUCTION_RADIAL && one_in(8);
}

/* A load range stands without a load index here: which ones go together is tested by name. */
static void random_marks(struct designation *d)
{
    if (one_in(3)) {
        d->load_range = letter_of("ABCDEFGHJLMN");
    } else if (!one_in(5)) {
        random_service(&d->service, one_in(8));
        if (d->z_marked && !d->service.speed_above)
            d->service.speed_symbol[0] = letter_of("VWY"), d->service.speed_symbol[1] = '\0';
        if (one_in(6))
            random_service(&d->second_service, false);
    }
    d->capacity = d->prefix == PREFIX_HL ? CAPACITY_HL
                  : one_in(4)            ? (enum capacity_class)below(CAPACITY_COUNT)
                                         : CAPACITY_UNMARKED;
    if (one_in(4))
        d->ply_rating =
            d->load_range != 0 ? load_range_ply_rating(d->load_range) : 2 * (1 + below(12));
    d->mud_and_snow = one_in(4);
    d->severe_snow = one_in(6);
    if (one_in(6))
        d->special_use = (enum special_use)below(SPECIAL_USE_COUNT);
}

static struct designation random_designation(void)
{
    struct designation d = {
        .service = {LOAD_INDEX_NONE, LOAD_INDEX_NONE, "", false},
        .second_service = {LOAD_INDEX_NONE, LOAD_INDEX_NONE, "", false},
    };
    int form = below(5);
    if (form < 2)
        random_metric(&d);
    else if (form < 4)
        random_inches(&d);
    else
        random_full_profile(&d);
    random_construction(&d);
    random_marks(&d);
    return d;
}

/* The speller: parts, with blanks between them where `must` says so or chance will. */
static char spelled[ROOM];

static void part(const char *text, bool must)
{
    char *to = spelled + strlen(spelled);
    for (int blanks = must ? 1 + below(2) : one_in(4) ? 1 + below(3) : 0; blanks > 0; blanks--)
        *to++ = one_in(5) ? '\t' : ' ';
    bool small = one_in(2);
    for (; *text != '\0'; text++)
        *to++ = small && *text >= 'A' && *text <= 'Z' ? (char)(*text - 'A' + 'a') : *text;
    *to = '\0';
}

static void number_part(int value)
{
    char text[16];
    snprintf(text, sizeof text, "%d", value);
    part(text, false);
}

/* Trailing zeros of a decimal fraction come and go, unless they tell 10.00 from 10. */
static void inches_part(int hundredths, bool keep)
{
    char text[16];
    snprintf(text, sizeof text, "%d.%02d", hundredths / 100, hundredths % 100);
    if (hundredths % 10 == 0 && one_in(2))
        text[strlen(text) - 1] = '\0';
    if (hundredths % 100 == 0 && !keep && one_in(2))
        *strchr(text, '.') = '\0';
    part(text, false);
}

static void spell_width(const struct designation *d)
{
    static const char *const TIMES[] = {"x", "X", "\xC3\x97"};
    if (d->form == FORM_METRIC) {
        number_part(d->section_width);
        part("/", false);
        number_part(d->overall_diameter > 0 ? d->overall_diameter : d->aspect_percent);
    } else if (d->form == FORM_FLOTATION) {
        inches_part(d->overall_diameter, false);
        part(TIMES[below(3)], false);
        inches_part(d->section_width, false);
    } else if (d->form == FORM_NUMERIC && d->section_whole) {
        number_part(d->section_width / 100);
    } else if (d->form == FORM_NUMERIC) {
        inches_part(d->section_width, true);
    } else {
        number_part(d->section_width);
    }
}

static void spell_construction(const struct designation *d)
{
    static const char *const DASHES[] = {"-", "\xE2\x80\x90", "\xE2\x80\x93", "\xE2\x88\x92"};
    if (d->hyphen)
        part(DASHES[below(4)], false);
    else if (d->construction == CONSTRUCTION_DIAGONAL)
        part("D", false);
    else if (d->construction == CONSTRUCTION_BIAS_BELTED)
        part("B", false);
    else
        part(d->z_marked ? d->run_flat ? "ZRF" : "ZR" : d->run_flat ? "RF" : "R", false);
}

static void spell_service(const struct service_description *service, bool parentheses)
{
    if (service->speed_symbol[0] == '\0')
        return;
    part(parentheses ? "(" : "", true);
    if (service->load_index != LOAD_INDEX_NONE)
        number_part(service->load_index);
    if (service->load_index_dual != LOAD_INDEX_NONE) {
        part("/", false);
        number_part(service->load_index_dual);
    }
    part(service->speed_symbol, false);
    if (parentheses)
        part(")", false);
}

static void spell_use(const struct designation *d)
{
    static const char *const SPECIAL[SPECIAL_USE_COUNT] = {"", "POR", "MPT", "ET", "ML"};
    static const char *const SNOW[] = {"M+S", "M&S", "M.S", "M/S", "M-S", "M S", "MS", "M + S"};
    if (d->severe_snow)
        part("3PMSF", true);
    part(SPECIAL[d->special_use], true);
    if (d->mud_and_snow)
        part(SNOW[below(8)], true);
}

static void spell_marks(const struct designation *d)
{
    static const char *const CAPACITIES[CAPACITY_COUNT][4] = {
        {"", "", "", ""},
        {"SL", "SL", "SL", "STANDARD LOAD"},
        {"XL", "EXTRA LOAD", "REINFORCED", "RF"},
        {"HL", "HL", "HL", "HIGH LOAD"},
        {"LL", "LL", "LL", "LIGHT LOAD"},
    };
    spell_service(&d->service, d->service.speed_above);
    spell_service(&d->second_service, one_in(2));
    if (d->prefix != PREFIX_HL)
        part(CAPACITIES[d->capacity][below(4)], true);
    if (d->load_range != 0) {
        char letter[2] = {d->load_range, '\0'};
        part(one_in(2) ? "LR" : "LOAD RANGE", true);
        part(letter, false);
    }
    if (d->ply_rating != 0) {
        static const char *const PLY[] = {"PR", "PLY", "-PLY", "PLY RATING"};
        char text[24];
        snprintf(text, sizeof text, "%d%s", d->ply_rating, PLY[below(4)]);
        part(text, true);
    }
    spell_use(d);
}

static void spell(const struct designation *d)
{
    static const char *const PREFIXES[PREFIX_COUNT] = {"", "P", "LT", "ST", "T", "HL"};
    static const char *const SUFFIXES[SUFFIX_COUNT] = {"", "C", "CP", "LT", "ST", "NHS"};
    spelled[0] = '\0';
    part(PREFIXES[d->prefix], false);
    spell_width(d);
    spell_construction(d);
    char rim[16];
    snprintf(rim, sizeof rim, d->rim_code_tenths % 10 ? "%d.5" : "%d", d->rim_code_tenths / 10);
    part(rim, false);
    part(SUFFIXES[d->suffix], false);
    spell_marks(d);
}

START_TEST(random_tyres_are_read_as_they_are)
{
    uint64_t seed = random_start("random_tyres_are_read_as_they_are");
    state = seed * 2654435769u + 1;
    for (int round = 0, last = rounds(ROUNDS); round < last; round++) {
        struct designation made = random_designation(), read;
        struct designation_error error;
        spell(&made);
        if (strlen(spelled) > DESIGNATION_LENGTH_MAX)
            continue;
        if (!designation_parse(span_of(spelled), &read, &error))
            ck_abort_msg("seed %" PRIu64 " \"%s\" column %zu: %s", seed, spelled, error.column,
                         error.message);
        ck_assert_msg(designation_equal(&made, &read), "seed %" PRIu64 " \"%s\" is read otherwise",
                      seed, spelled);
        const char *broken = property_broken(spelled, strlen(spelled));
        ck_assert_msg(broken == NULL, "seed %" PRIu64 " \"%s\": %s", seed, spelled, broken);
    }
}
END_TEST

TCase *designation_random_case(void)
{
    TCase *random_case = tcase_create("random tyres");
    tcase_set_tags(random_case, "text");
    tcase_add_test(random_case, random_tyres_are_read_as_they_are);
    return random_case;
}
