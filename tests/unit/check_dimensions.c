/* Dimensions by the rules of UN R30 and UN R54, and the comparison of two tyres. */
#include <string.h>

#include "compute/dimensions.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

#define R30 "UN R30 6.1.1 to 6.1.2 with the rim diameters of Annex 5, by hand"
#define R54 "UN R54 6.1.1 to 6.1.2 with the rim diameters of Annex 5, by hand"
#define PUBLISHED "; measuring rim as published"

/* Lengths in mm, rim in inches; NAN where the source is silent. */
static const struct {
    const char *designation;
    double diameter, tolerance, section_height, measuring_rim;
    double load_kg, load_dual_kg, speed_kmh;
    const char *source;
} sizes[] = {
    {"205/55R16 91V", 632, 0.5, 113, 6.5, 615, NAN, 240, R30},
    {"195/65R15 91H", 635, 0.5, 127, 6.0, 615, NAN, 210, R30},
    {"225/45R17 94Y XL", 634, 0.5, 101, 7.5, 670, NAN, 300, R30 PUBLISHED},
    {"225/40ZR18 (92Y)", 637, 0.5, 90, 8.0, 630, NAN, 300, R30 PUBLISHED},
    {"P235/75R15 105S", 733, 0.5, 176, 6.5, 925, NAN, 180, R30 PUBLISHED},
    {"215/65R16C 109/107T", 686, 0.5, 140, 6.5, 1030, 975, 190, R54},
    {"LT235/85R16 120/116S", 806, 0.5, 200, 6.5, 1400, 1250, 180,
     "data sheet: 31.7 in overall, design rim 6.5"},
    {"LT245/75R16 120/116R", 774, 0.5, 184, 7.0, 1400, 1250, 170,
     "data sheet: 30.5 in overall, design rim 7.0"},
    {"LT265/75R16 123/120Q", 804, 0.5, 199, 7.5, 1550, 1400, 160,
     "data sheet: 31.7 in overall, design rim 7.5"},
    {"31x10.50R15LT 109R", 787.4, 0.5, 203.2, NAN, 1030, NAN, 170, "the diameter is moulded"},
    {"315/70R22.5 154/150L", 1014, 0.5, 221, NAN, 3750, 3350, 120, R54},
    {"165R13 82T", 600, 5, 135, NAN, 475, NAN, 190,
     "82 series convention, 600 mm; tables print about 596"},
    {"T125/70D16 96M", 582, 0.5, 88, NAN, 710, NAN, 130, R30},
};

START_TEST(size_has_its_published_figures)
{
    const char *name = sizes[_i].designation;
    struct tyre tyre = tyre_of(name);
    struct tyre_dimensions figures;
    figures_by_rule(&tyre.size, UNKNOWN, &figures);
    assert_close(figures.overall_diameter_m * 1e3, sizes[_i].diameter, sizes[_i].tolerance, name);
    assert_close(figures.section_height_m * 1e3, sizes[_i].section_height, sizes[_i].tolerance / 2,
                 name);
    if (known(sizes[_i].measuring_rim))
        assert_close(figures.measuring_rim_m / 0.0254, sizes[_i].measuring_rim, 1e-9, name);
    const struct service_description *service = &tyre.size.service;
    assert_close(load_index_kg(service->load_index), sizes[_i].load_kg, 0, name);
    if (known(sizes[_i].load_dual_kg))
        assert_close(load_index_kg(service->load_index_dual), sizes[_i].load_dual_kg, 0, name);
    else
        ck_assert_int_eq(service->load_index_dual, LOAD_INDEX_NONE);
    double kmh = UNKNOWN;
    ck_assert(speed_symbol_kmh(service->speed_symbol, &kmh));
    assert_close(kmh, sizes[_i].speed_kmh, 0, name);
}
END_TEST

/* UN R30 Annex 5 and UN R54 Annex 5 print the nominal rim diameter of each code. */
START_TEST(rim_code_has_its_diameter)
{
    static const struct {
        int tenths, mm;
    } codes[] = {
        {130, 330}, {140, 356}, {150, 381}, {160, 406}, {165, 419},
        {170, 432}, {175, 445}, {180, 457}, {190, 483}, {195, 495},
        {200, 508}, {210, 533}, {220, 559}, {225, 572}, {245, 622},
    };
    for (size_t i = 0; i < LENGTH_OF(codes); i++)
        assert_close(rim_diameter_m(codes[i].tenths, false) * 1e3, codes[i].mm, 1e-9, "Annex 5");
}
END_TEST

/* UN R30 6.1.2: H = 0.01 S1 Ra to the nearest mm, halves up; against 10^-2 in long double. */
START_TEST(section_height_is_rounded_half_up)
{
    for (int width = 100; width <= 500; width++)
        for (int aspect = 15; aspect <= 100; aspect++)
            ck_assert_int_eq(section_height_mm(width, aspect),
                             (int)floorl((long double)(2 * width * aspect + 100) / 200));
    ck_assert_int_eq(section_height_mm(205, 70), 144); /* 143.5 */
    ck_assert_int_eq(section_height_mm(195, 70), 137); /* 136.5 */
}
END_TEST

/* UN R30 6.1.1.1: S = S1 + 0.4 (A - A1), about 5 mm for each half inch of rim. */
START_TEST(section_width_follows_the_rim)
{
    struct tyre tyre = tyre_of("205/55R16 91V");
    for (int half = 10; half < 18; half++) {
        struct tyre_dimensions narrow, wide;
        figures_by_rule(&tyre.size, half * 0.0127, &narrow);
        figures_by_rule(&tyre.size, (half + 1) * 0.0127, &wide);
        assert_close((wide.width_on_rim_m - narrow.width_on_rim_m) * 1e3, 5, 1, "0.4 x 12.7 mm");
    }
    /* S1 = 205, A1 = 0.70 S1 = 143.5; A = 152.4 (6 in): 208.56; A = 190.5 (7.5 in): 223.8 */
    assert_close(section_width_on_rim_m(0.205, 0.1524, 0.1435) * 1e3, 209, 1e-9, "UN R30, 6 in");
    assert_close(section_width_on_rim_m(0.205, 0.1905, 0.1435) * 1e3, 224, 1e-9, "UN R30, 7.5 in");
}
END_TEST

/* UN R30 and R54 6.1.4, 6.1.5 (from memory): D from d + 2H 0.97 to d + 2H b, width to +4 % or +6 %.
 */
static const struct {
    const char *designation;
    double b, width;
} envelopes[] = {
    {"205/55R16 91V", 1.04, 1.04},
    {"LT245/75R16 120/116R", 1.04, 1.04},
    {"T125/70D16 96M", 1.08, 1.06},
    {"LT245/75D16 120/116N", 1.07, 1.06},
    {"P195/75B14 92S", 1.08, 1.06},
    {"LT245/75B16 120/116N", 1.07, 1.06},
    {"LT245/75R16 120/116R POR", 1.06, 1.04},
    {"LT245/75D16 120/116N POR", 1.09, 1.06},
    {"265/70R17 115T POR", 1.06, 1.04}, /* special use is known to UN R54 only */
    {"335/80R20 147K MPT", 1.06, 1.04},
    {"315/70R22.5 154/150L", 1.04, 1.04},
};

START_TEST(envelope_is_the_standards)
{
    const char *name = envelopes[_i].designation;
    struct tyre tyre = tyre_of(name);
    struct tyre_dimensions figures;
    figures_by_rule(&tyre.size, UNKNOWN, &figures);
    double rim = figures.rim_diameter_m, twice = 2 * figures.section_height_m;
    assert_close(figures.overall_diameter_min_m, rim + 0.97 * twice, 1e-12, name);
    assert_close(figures.overall_diameter_max_m, rim + envelopes[_i].b * twice, 1e-12, name);
    assert_close(figures.width_on_rim_max_m, figures.width_on_rim_m * envelopes[_i].width, 1e-12,
                 name);
}
END_TEST

/* UN R30 and R54 6.1.5.3 (from memory): 1 % more on the largest diameter of a snow tyre. */
START_TEST(snow_tyre_may_be_larger)
{
    static const char *const pairs[][2] = {
        {"205/55R16 91H", "205/55R16 91H M+S"},
        {"205/55R16 91H", "205/55R16 91H 3PMSF"},
        {"205/55R16 91H", "205/55R16 91H M+S 3PMSF"},
        {"LT245/75R16 120/116R POR", "LT245/75R16 120/116R POR M+S"},
    };
    for (size_t i = 0; i < LENGTH_OF(pairs); i++) {
        struct tyre normal = tyre_of(pairs[i][0]), snow = tyre_of(pairs[i][1]);
        struct tyre_dimensions a, b;
        figures_by_rule(&normal.size, UNKNOWN, &a);
        figures_by_rule(&snow.size, UNKNOWN, &b);
        assert_close(b.overall_diameter_max_m, 1.01 * a.overall_diameter_max_m, 1e-12, pairs[i][1]);
        assert_close(b.overall_diameter_min_m, a.overall_diameter_min_m, 0, pairs[i][1]);
        assert_close(b.overall_diameter_m, a.overall_diameter_m, 0, pairs[i][1]);
    }
}
END_TEST

/* Rims in inches and the width on a rim other than the measuring one, in mm, over the forms. Rims:
 * ETRTO and TRA (from memory); width by UN R30 and R54 6.1.1 from the listed width and rim. */
static const struct {
    const char *designation;
    double measuring, min, max, rim, width;
} rims[] = {
    {"7.50R16LT 112/107N", 6, 5.5, 6.5, 6.5, 215},   /* 210 + 0.4 x 12.7 */
    {"11R22.5 146/143L", 8.25, 7.5, 8.25, 7.5, 271}, /* 279 - 0.4 x 19.05 */
    {"6.50-16", 4.5, 4.5, 5.5, 5.5, 186},
    {"31x10.50R15LT 109R", 8.5, 7, 9, 8, 263},    /* 268 - 0.4 x 12.7 */
    {"35x12.50R20LT 121Q", 10, 8.5, 11, 11, 328}, /* 317.5 + 0.4 x 25.4 = 327.66 */
    {"31x10.50R16.5LT", 8.25, NAN, NAN, 8.25, 266},
    {"40x15.50R20LT", NAN, NAN, NAN, 11, 394},       /* not listed: 393.7 as moulded */
    {"165R13 82T", 4.5, 4, 5.5, 5, 172},             /* 0.65 x 165 is 4.22 in; 167 + 0.4 x 12.7 */
    {"315/70R22.5 154/150L", 9, 9, 9.75, 9.75, 320}, /* 315 + 0.4 (247.65 - 236.25) */
    {"315/35R22.5", NAN, NAN, NAN, 10, 315},
    {"T125/70D16 96M", NAN, NAN, NAN, 4, 125},
    {"5.20-10", NAN, NAN, NAN, 4, 132},
};

static void assert_rim(double rim_m, double inches, const char *name)
{
    if (known(inches))
        assert_close(rim_m / 0.0254, inches, 1e-9, name);
    else
        ck_assert_msg(!known(rim_m), "%s: %g in", name, rim_m / 0.0254);
}

START_TEST(rims_of_every_form)
{
    const char *name = rims[_i].designation;
    struct tyre tyre = tyre_of(name);
    struct tyre_dimensions figures;
    figures_by_rule(&tyre.size, rims[_i].rim * 0.0254, &figures);
    assert_rim(figures.measuring_rim_m, rims[_i].measuring, name);
    assert_rim(figures.rim_min_m, rims[_i].min, name);
    assert_rim(figures.rim_max_m, rims[_i].max, name);
    ck_assert_int_eq(figures.rim_min_source == SOURCE_NONE, !known(rims[_i].min));
    ck_assert_int_eq(figures.rim_max_source == SOURCE_NONE, !known(rims[_i].max));
    ck_assert_int_eq(figures.measuring_rim_source == SOURCE_NONE, !known(rims[_i].measuring));
    assert_close(figures.width_on_rim_m * 1e3, rims[_i].width, 0.5, name);
}
END_TEST

/* From the narrowest width to the widest, in every series: half inches, the measuring rim among
 * those permitted. Rounded inward, 28 narrow sizes had the least above the largest. */
START_TEST(permitted_rims_are_a_range)
{
    static const int series[] = {20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95};
    for (int section = 105; section <= 455; section += 5)
        for (size_t i = 0; i < LENGTH_OF(series); i++) {
            char name[24];
            snprintf(name, sizeof name, "%d/%dR16", section, series[i]);
            struct tyre tyre = tyre_of(name);
            struct tyre_dimensions figures;
            figures_by_rule(&tyre.size, UNKNOWN, &figures);
            double least = figures.rim_min_m / 0.0127, most = figures.rim_max_m / 0.0127;
            double measuring = figures.measuring_rim_m / 0.0127;
            ck_assert_msg(least <= most + 1e-9 && least <= measuring + 1e-9 &&
                              measuring <= most + 1e-9,
                          "%s: %g in on %g to %g", name, measuring / 2, least / 2, most / 2);
            assert_close(least, round(least), 1e-9, name);
            assert_close(most, round(most), 1e-9, name);
        }
}
END_TEST

/* An end of the data book beyond the other, which the factors give (5.5 to 7 in): that one is not
 * known then. */
START_TEST(data_book_leaves_no_empty_range)
{
    struct tyre tyre = tyre_of("195/65R15 91H");
    struct tyre_measures measures;
    tyre.data_book.rim_min_m = 7.5 * 0.0254;
    tyre_measure(&tyre, &measures);
    assert_rim(measures.stated.rim_min_m, 7.5, "given");
    assert_rim(measures.stated.rim_max_m, UNKNOWN, "beyond it");
    ck_assert_int_eq(measures.stated.rim_max_source, SOURCE_NONE);
    tyre.data_book.rim_min_m = 7 * 0.0254;
    tyre_measure(&tyre, &measures);
    assert_rim(measures.stated.rim_max_m, 7, "the only one");
    ck_assert_int_eq(measures.stated.rim_max_source, SOURCE_RULE);
    tyre.data_book.rim_min_m = UNKNOWN;
    tyre.data_book.rim_max_m = 5 * 0.0254;
    tyre_measure(&tyre, &measures);
    assert_rim(measures.stated.rim_min_m, UNKNOWN, "beyond it");
    assert_rim(measures.stated.rim_max_m, 5, "given");
}
END_TEST

/* A flotation size is smaller than its name says (31 in: 775 mm in UN R54 Annex 5, from memory), so
 * that a new one may be 381 + 0.97 x 394 mm. */
START_TEST(flotation_size_may_be_smaller_than_moulded)
{
    struct tyre tyre = tyre_of("31x10.50R15LT 109R"), unlisted = tyre_of("34x10.50R17LT");
    struct tyre_dimensions figures;
    figures_by_rule(&tyre.size, UNKNOWN, &figures);
    assert_close(figures.overall_diameter_m, 0.7874, 1e-12, "as moulded");
    assert_close(figures.overall_diameter_min_m, 0.76318, 1e-9, "UN R54");
    assert_close(figures.overall_diameter_max_m, 0.381 + 1.04 * 0.4064, 1e-9, "UN R54");
    figures_by_rule(&unlisted.size, UNKNOWN, &figures);
    assert_close(figures.overall_diameter_min_m, 0.432 + 0.97 * (0.8636 - 0.432), 1e-9, "UN R54");
}
END_TEST

/* ETRTO: C = 3.05 D radial, 2.99 D diagonal; loaded radius 0.912 D/2. */
/* What is moulded stands: 245 wide and 640 over all; 9.00 in is 228.6 mm where no table lists the
 * size, and its diameter is then unknown; a full-profile size that no table lists is of the 82
 * series (UN R30 Annex 5 lists them so): 0.82 * 215 = 176.3, 176 mm, twice, and 406 mm of rim. */
START_TEST(sizes_that_no_table_lists)
{
    static const struct {
        const char *size;
        double section_width_m, overall_diameter_m;
    } cases[] = {
        {"245/640R18", 0.245, 0.640},
        {"9.00R13", 0.2286, NAN},
        {"215R16", 0.215, 0.758},
    };
    /* (640 - 457) / 2 / 245 = 37 %; 0.90 x 245 mm is 8.68, 8.5 in (ISO 4000-1, from memory). */
    struct tyre moulded = tyre_of("245/640R18");
    struct tyre_dimensions by_ratio;
    figures_by_rule(&moulded.size, UNKNOWN, &by_ratio);
    assert_close(by_ratio.measuring_rim_m / 0.0254, 8.5, 1e-9, "ratio of moulded diameter");
    for (size_t i = 0; i < LENGTH_OF(cases); i++) {
        struct tyre tyre = tyre_of(cases[i].size);
        struct tyre_dimensions figures;
        figures_by_rule(&tyre.size, UNKNOWN, &figures);
        assert_close(figures.section_width_m, cases[i].section_width_m, 1e-12, cases[i].size);
        if (known(cases[i].overall_diameter_m))
            assert_close(figures.overall_diameter_m, cases[i].overall_diameter_m, 1e-12,
                         cases[i].size);
        else
            ck_assert(!known(figures.overall_diameter_m));
    }
}
END_TEST

START_TEST(rolling_goes_by_construction)
{
    assert_close(rolling_circumference_m(CONSTRUCTION_RADIAL, 0.632), 1.9276, 1e-9, "3.05 D");
    assert_close(rolling_circumference_m(CONSTRUCTION_DIAGONAL, 0.582), 1.74018, 1e-9, "2.99 D");
    assert_close(static_loaded_radius_m(CONSTRUCTION_RADIAL, 0.632), 0.288192, 1e-9, "0.912 D/2");
    /* C = 2 pi (2/3 free + 1/3 loaded) gives the same circumference back within 0.1 %. */
    double mean = 2 * 3.14159265358979 * (2.0 / 3 * 0.316 + 0.288192 / 3);
    assert_relative(mean, 1.9276, 0.001, "C from free and loaded radius");
}
END_TEST

/* Properties. */

static const char *const measured[] = {
    "205/55R16 91V",        "P255/70R16 109S",     "LT255/75R16 111/108Q", "31x10.50R15LT 109R",
    "315/70R22.5 154/150L", "215/65R16C 109/107T", "165R13 82T",           "7.50R16LT 112/107N",
};

static double maybe(uint64_t *state, double low, double high)
{
    return random_whole(state, 0, 1) ? random_between(state, low, high) : UNKNOWN;
}

static struct tyre random_tyre(uint64_t *state)
{
    struct tyre tyre = tyre_of(measured[random_whole(state, 0, (int)LENGTH_OF(measured) - 1)]);
    tyre.wheel.width_m = random_between(state, 0.12, 0.25);
    tyre.data_book.overall_diameter_m = maybe(state, 0.55, 1.1);
    tyre.data_book.section_width_m = maybe(state, 0.15, 0.35);
    tyre.data_book.revs_per_mile = maybe(state, 500, 900);
    if (!known(tyre.data_book.revs_per_mile))
        tyre.data_book.revs_per_km = maybe(state, 300, 600);
    tyre.data_book.static_loaded_radius_m = maybe(state, 0.25, 0.5);
    return tyre;
}

static bool from_book(enum figure_source source)
{
    return source == SOURCE_DATA_BOOK;
}

/* The diameter that a circumference or radius was computed from counts as its source. */
static void assert_one_source(const struct tyre_dimensions *a, const struct tyre_dimensions *b)
{
    ck_assert_int_eq(from_book(a->diameter_source), from_book(b->diameter_source));
    ck_assert_int_eq(from_book(a->circumference_source), from_book(b->circumference_source));
    ck_assert_int_eq(from_book(a->radius_source), from_book(b->radius_source));
    ck_assert_int_eq(from_book(a->width_source), from_book(b->width_source));
}

static double circumference_stated(const struct data_book *book)
{
    return known(book->revs_per_mile) ? 1609.344 / book->revs_per_mile : 1000 / book->revs_per_km;
}

static bool one_sided(double a, double b)
{
    return known(a) != known(b);
}

START_TEST(comparison_never_mixes_sources)
{
    uint64_t state = random_start("comparison_never_mixes_sources");
    for (int run = 0, runs = rounds(20000); run < runs; run++) {
        struct tyre a = random_tyre(&state), b = random_tyre(&state);
        const struct data_book *x = &a.data_book, *y = &b.data_book;
        struct tyre_dimensions first, second;
        bool mixed = false;
        figures_to_compare(&a, &b, &first, &second, &mixed);
        assert_one_source(&first, &second);
        double cx = circumference_stated(x), cy = circumference_stated(y);
        bool expected = one_sided(x->overall_diameter_m, y->overall_diameter_m) ||
                        one_sided(x->section_width_m, y->section_width_m) || one_sided(cx, cy) ||
                        one_sided(x->static_loaded_radius_m, y->static_loaded_radius_m);
        ck_assert_int_eq(mixed, expected);
        if (known(cx) && known(cy)) {
            assert_relative(first.rolling_circumference_m, cx, 1e-14, "both state revolutions");
            assert_relative(second.rolling_circumference_m, cy, 1e-14, "both state revolutions");
        }
        if (known(x->overall_diameter_m) && known(y->overall_diameter_m))
            assert_close(second.overall_diameter_m, y->overall_diameter_m, 0, "both state D");
    }
}
END_TEST

/* Fitted against itself changes exactly nothing, whatever its data book says. */
START_TEST(tyre_against_itself_changes_nothing)
{
    uint64_t state = random_start("tyre_against_itself_changes_nothing");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        struct tyre tyre = random_tyre(&state);
        struct tyre_dimensions first, second;
        bool mixed = true;
        figures_to_compare(&tyre, &tyre, &first, &second, &mixed);
        ck_assert(!mixed);
        assert_close(first.overall_diameter_m - second.overall_diameter_m, 0, 0, "diameter");
        assert_close(first.width_on_rim_m - second.width_on_rim_m, 0, 0, "width");
        assert_close(first.width_on_rim_max_m - second.width_on_rim_max_m, 0, 0, "largest width");
        assert_close(first.rolling_circumference_m - second.rolling_circumference_m, 0, 0, "C");
        assert_close(first.static_loaded_radius_m - second.static_loaded_radius_m, 0, 0, "radius");
    }
}
END_TEST

/* Every figure that a data book states replaces the computed one, and nothing falls outside the
 * envelope that is printed with it. */
START_TEST(data_book_replaces_what_it_states)
{
    uint64_t state = random_start("data_book_replaces_what_it_states");
    for (int run = 0, runs = rounds(5000); run < runs; run++) {
        struct tyre tyre = random_tyre(&state);
        struct tyre_measures measures;
        tyre_measure(&tyre, &measures);
        const struct tyre_dimensions *stated = &measures.stated, *rule = &measures.by_rule;
        const struct data_book *book = &tyre.data_book;
        assert_close(stated->overall_diameter_m,
                     known_or(book->overall_diameter_m, rule->overall_diameter_m), 0, "diameter");
        assert_close(stated->section_width_m,
                     known_or(book->section_width_m, rule->section_width_m), 0, "width");
        /* UN R30 6.1.1.1: S = S1 + 0.4 (A - A1), so on one rim S differs as S1 does */
        if (known(rule->width_on_rim_m))
            assert_close(stated->width_on_rim_m - rule->width_on_rim_m,
                         stated->section_width_m - rule->section_width_m, 1e-12, "on its rim");
        ck_assert(stated->overall_diameter_max_m >= stated->overall_diameter_m);
        ck_assert(stated->overall_diameter_min_m <= stated->overall_diameter_m);
        ck_assert(stated->width_on_rim_max_m >= stated->width_on_rim_m);
        ck_assert(!from_book(rule->diameter_source) && !from_book(rule->circumference_source));
        double c = circumference_stated(book);
        if (known(c))
            assert_relative(stated->rolling_circumference_m, c, 1e-14, "revolutions");
        else if (known(book->overall_diameter_m))
            assert_relative(
                stated->rolling_circumference_m,
                rolling_circumference_m(tyre.size.construction, book->overall_diameter_m), 1e-14,
                "circumference of the stated diameter");
    }
}
END_TEST

/* A size that no rule and no table measures is unknown, and its data book is all there is. */
START_TEST(size_without_rule_needs_its_data_book)
{
    struct tyre tyre = tyre_of("5.20-10"), other = tyre_of("205/55R16 91V");
    struct tyre_dimensions figures, first, second;
    figures_by_rule(&tyre.size, UNKNOWN, &figures);
    ck_assert(!known(figures.overall_diameter_m) && !known(figures.rolling_circumference_m));
    ck_assert(!known(figures.overall_diameter_max_m));
    ck_assert_int_eq(figures.diameter_source, SOURCE_NONE);
    tyre.data_book.overall_diameter_m = 0.498;
    bool mixed;
    figures_to_compare(&tyre, &other, &first, &second, &mixed);
    assert_close(first.overall_diameter_m, 0.498, 0, "its data book");
    assert_close(second.overall_diameter_m, 0.632, 1e-12, "UN R30");
    /* Its tolerance is that of UN R54 6.1.5 about the stated diameter, diagonal: 254 + 244 x 1.07.
     */
    assert_close(first.overall_diameter_max_m, 0.51508, 1e-9, "UN R54");
    assert_close(first.overall_diameter_min_m, 0.49068, 1e-9, "UN R54");
}
END_TEST

Suite *dimensions_suite(void)
{
    Suite *suite = suite_create("dimensions");
    TCase *rules = tcase_create("rules");
    tcase_add_loop_test(rules, size_has_its_published_figures, 0, (int)LENGTH_OF(sizes));
    tcase_add_test(rules, rim_code_has_its_diameter);
    tcase_add_test(rules, section_height_is_rounded_half_up);
    tcase_add_test(rules, section_width_follows_the_rim);
    tcase_add_test(rules, sizes_that_no_table_lists);
    tcase_add_loop_test(rules, envelope_is_the_standards, 0, (int)LENGTH_OF(envelopes));
    tcase_add_test(rules, snow_tyre_may_be_larger);
    tcase_add_loop_test(rules, rims_of_every_form, 0, (int)LENGTH_OF(rims));
    tcase_add_test(rules, permitted_rims_are_a_range);
    tcase_add_test(rules, data_book_leaves_no_empty_range);
    tcase_add_test(rules, flotation_size_may_be_smaller_than_moulded);
    tcase_add_test(rules, rolling_goes_by_construction);
    suite_add_tcase(suite, rules);
    TCase *comparison = tcase_create("comparison");
    tcase_add_test(comparison, comparison_never_mixes_sources);
    tcase_add_test(comparison, tyre_against_itself_changes_nothing);
    tcase_add_test(comparison, data_book_replaces_what_it_states);
    tcase_add_test(comparison, size_without_rule_needs_its_data_book);
    suite_add_tcase(suite, comparison);
    return suite;
}
