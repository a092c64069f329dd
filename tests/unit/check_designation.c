/* Reading of size designations: forms, marks, faults with their columns. The notations are those
 * of ISO 4000-1, ISO 4223-1, UN R30 and UN R54 as the header of src/size/designation.c lists them.
 */
#include <check.h>
#include <stdio.h>

#include "designation_cases.h"
#include "suites.h"
#include "size/designation.h"

static struct designation read_or_fail(const char *text)
{
    struct designation out;
    struct designation_error error;
    if (!designation_parse(span_of(text), &out, &error))
        ck_abort_msg("\"%s\" column %zu: %s", text, error.column, error.message);
    return out;
}

/* Every spelling on the left is the tyre that is spelled on the right. */
static const struct {
    const char *text, *canonical;
} SPELLINGS[] = {
    {"205/55R16 91V", "205/55R16 91V"},
    {"P265/70R17 113S", "P265/70R17 113S"},
    {"LT245/75R16 120/116R", "LT245/75R16 120/116R"},
    {"T125/70D16 96M", "T125/70D16 96M"},
    {"HL245/40R20 102Y", "HL245/40R20 102Y"},
    {"HL245/40R20 102Y HL", "HL245/40R20 102Y"},
    {"HL 245/40 R 19 101 Y XL", "HL245/40R19 101Y"},
    {"235/65R16C 115/113R", "235/65R16C 115/113R"},
    {"235/65 R16 C 115/113 R", "235/65R16C 115/113R"},
    {"225/75R16CP 118R", "225/75R16CP 118R"},
    {"315/70R22.5 154/150L", "315/70R22.5 154/150L"},
    {"31x10.50R15LT 109R", "31x10.50R15LT 109R"},
    {"35x12.50R20LT 121Q", "35x12.50R20LT 121Q"},
    {"7.50R16LT 112/107N", "7.50R16LT 112/107N"},
    {"7.5R16lt112/107n", "7.50R16LT 112/107N"},
    {"6.50-16", "6.50-16"},
    {"11R22.5", "11R22.5"},
    {"11.00R22.5", "11R22.5"},
    {"8.50R17.5", "8.5R17.5"},
    {"8.0R16.5LT", "8.00R16.5LT"}, /* as the TRA yearbook writes light truck sizes, from memory */
    {"165R13 82T", "165R13 82T"},
    {"185R14C 102/100R", "185R14C 102/100R"},
    {"225/40ZR18 (92Y)", "225/40ZR18 (92Y)"},
    {"225/40 z r 18 ( 92 y ) xl", "225/40ZR18 (92Y) XL"},
    {"225/40ZR18 (Y)", "225/40ZR18 (Y)"},
    {"225/40ZR18", "225/40ZR18"},
    {"255/35RF19 96Y", "255/35RF19 96Y"},
    {"255/35ZRF19 (96Y)", "255/35ZRF19 (96Y)"},
    {"lt 245 / 75 r16 120/116 r", "LT245/75R16 120/116R"},
    {"  LT245/75R16\t120/116R  ", "LT245/75R16 120/116R"},
    {"31X10.5R15", "31x10.50R15"},
    {"31\xC3\x97"
     "10.50R15LT",
     "31x10.50R15LT"},
    {"31x10.50\xE2\x80\x93"
     "15LT",
     "31x10.50-15LT"},
    {"6.50\xE2\x80\x94"
     "16",
     "6.50-16"},
    {"6.50\xE2\x88\x92"
     "16",
     "6.50-16"},
    {"8R19\xC2\xBD 124/122L", "8R19.5 124/122L"},
    {"LT31x10.50R15", "31x10.50R15LT"},
    {"ST4.80-12", "4.80-12ST"},
    {"245/75R16 LT 120/116R", "LT245/75R16 120/116R"},
    {"205/55R1691V", "205/55R16 91V"},
    {"180/65R31591V", "180/65R315 91V"}, /* no code in inches is 31 */
    {"165r40087s", "165R400 87S"},
    {"220/55R390 88W", "220/55R390 88W"},
    {"245/700R470 116H", "245/700R470 116H"},
    {"245/640R18", "245/640R18"},
    {"P195/75B14 92S", "P195/75B14 92S"},
    {"400/60-15.5 145A8", "400/60-15.5 145A8"},
    {"205/55R16 91V RF", "205/55R16 91V XL"},
    {"205/55R16 94V REINFORCED", "205/55R16 94V XL"},
    {"205/55R16 94V extra load", "205/55R16 94V XL"},
    {"205/55R16 XL 94V", "205/55R16 94V XL"},
    {"205/55R16 91V SL", "205/55R16 91V SL"},
    {"205/55R16 91V LL", "205/55R16 91V LL"},
    {"LT245/75R16 120/116R LRE", "LT245/75R16 120/116R LR E"},
    {"LT245/75R16 120/116R LOAD RANGE E", "LT245/75R16 120/116R LR E"},
    {"LT245/75R16E", "LT245/75R16 LR E"},
    {"LT245/75R16/E 120/116R", "LT245/75R16 120/116R LR E"},
    {"LT245/75R16 120/116R E", "LT245/75R16 120/116R LR E"},
    {"LT235/75R15 C", "LT235/75R15 LR C"},
    {"7.50R16LTE", "7.50R16LT LR E"},
    {"11R22.5 H 146/143L", "11R22.5 146/143L LR H"},
    {"295/75R22.5 G", "295/75R22.5 LR G"},
    {"185R14C 8 PR", "185R14C 8PR"},
    {"185R14C 8-ply", "185R14C 8PR"},
    {"185R14C 8 PLY RATING", "185R14C 8PR"},
    {"12-16.5 NHS 10PR", "12-16.5NHS 10PR"},
    {"12-16.5 10PR NHS", "12-16.5NHS 10PR"},
    {"315/80R22.5 156/150L (154/150M)", "315/80R22.5 156/150L (154/150M)"},
    {"315/80R22.5 156/150L 154/150M", "315/80R22.5 156/150L (154/150M)"},
    {"205/55R16 91H M+S", "205/55R16 91H M+S"},
    {"205/55r16 91h m&s", "205/55R16 91H M+S"},
    {"205/55R16 M.S 91H", "205/55R16 91H M+S"},
    {"205/55R16 91H M S", "205/55R16 91H M+S"},
    {"205/55R16 91H ms 3pmsf XL", "205/55R16 91H XL M+S 3PMSF"},
    {"LT265/75R16 123/120Q POR M+S", "LT265/75R16 123/120Q POR M+S"},
    {"335/80R20 MPT 147K", "335/80R20 147K MPT"},
    {"7.50R16 ET 121/120L", "7.50R16 121/120L ET"},
    {"12R22.5 ML LR M", "12R22.5 LR M ML"},
    {"11R22.5 M", "11R22.5 LR M"},
};

START_TEST(every_spelling_has_its_canonical_one)
{
    char canonical[DESIGNATION_CANONICAL_SIZE];
    struct designation out = read_or_fail(SPELLINGS[_i].text);
    size_t length = designation_canonical(&out, canonical);
    ck_assert_str_eq(canonical, SPELLINGS[_i].canonical);
    ck_assert_uint_eq(length, strlen(canonical));
}
END_TEST

START_TEST(fields_of_a_metric_size)
{
    struct designation d = read_or_fail("LT245/75R16 120/116R LR E 10PR");
    ck_assert_int_eq(d.form, FORM_METRIC);
    ck_assert_int_eq(d.prefix, PREFIX_LT);
    ck_assert_int_eq(d.suffix, SUFFIX_NONE);
    ck_assert_int_eq(d.construction, CONSTRUCTION_RADIAL);
    ck_assert_int_eq(d.section_width, 245);
    ck_assert_int_eq(d.aspect_percent, 75);
    ck_assert_int_eq(d.overall_diameter, 0);
    ck_assert_int_eq(d.rim_code_tenths, 160);
    ck_assert_int_eq(d.service.load_index, 120);
    ck_assert_int_eq(d.service.load_index_dual, 116);
    ck_assert_str_eq(d.service.speed_symbol, "R");
    ck_assert_int_eq(d.second_service.load_index, LOAD_INDEX_NONE);
    ck_assert_str_eq(d.second_service.speed_symbol, "");
    ck_assert_int_eq(d.load_range, 'E');
    ck_assert_int_eq(d.ply_rating, 10);
    ck_assert(!d.z_marked && !d.run_flat && !d.hyphen && !d.rim_millimetric);
}
END_TEST

START_TEST(fields_of_a_flotation_size)
{
    struct designation d = read_or_fail("38.5x14.50-15LT");
    ck_assert_int_eq(d.form, FORM_FLOTATION);
    ck_assert_int_eq(d.suffix, SUFFIX_LT);
    ck_assert_int_eq(d.construction, CONSTRUCTION_DIAGONAL);
    ck_assert(d.hyphen);
    ck_assert_int_eq(d.overall_diameter, 3850);
    ck_assert_int_eq(d.section_width, 1450);
    ck_assert_int_eq(d.rim_code_tenths, 150);
    ck_assert_int_eq(d.service.load_index, LOAD_INDEX_NONE);
}
END_TEST

START_TEST(fields_of_other_forms)
{
    struct designation d = read_or_fail("11R22.5 144/142L");
    ck_assert_int_eq(d.form, FORM_NUMERIC);
    ck_assert_int_eq(d.section_width, 1100);
    ck_assert_int_eq(d.rim_code_tenths, 225);
    d = read_or_fail("165R13 82T");
    ck_assert_int_eq(d.form, FORM_FULL_PROFILE);
    ck_assert_int_eq(d.section_width, 165);
    ck_assert_int_eq(d.aspect_percent, 0);
    d = read_or_fail("245/700R470");
    ck_assert_int_eq(d.overall_diameter, 700);
    ck_assert_int_eq(d.aspect_percent, 0);
    ck_assert(d.rim_millimetric);
    ck_assert_int_eq(d.rim_code_tenths, 4700);
    d = read_or_fail("255/35ZRF19 (96Y)");
    ck_assert(d.z_marked && d.run_flat && d.service.speed_above);
    d = read_or_fail("400/60-15.5 145A8");
    ck_assert_str_eq(d.service.speed_symbol, "A8");
    d = read_or_fail("HL245/40R20");
    ck_assert_int_eq(d.capacity, CAPACITY_HL);
}
END_TEST

START_TEST(ten_and_ten_point_oh_are_two_tyres)
{
    struct designation a = read_or_fail("10R15LT"), b = read_or_fail("10.00R15LT");
    ck_assert(!designation_equal(&a, &b));
    a = read_or_fail("11R22.5");
    b = read_or_fail("11.00R22.5");
    ck_assert(designation_equal(&a, &b));
}
END_TEST

/* One thing differs, and so the tyre does. */
static const char *const DIFFERENT[][2] = {
    {"205/55R16", "205/55RF16"},
    {"205/55R16", "205/55ZR16"},
    {"205/55R16", "205/55B16"},
    {"205/55D16", "205/55-16"},
    {"205/55R16", "P205/55R16"},
    {"205/55R16", "205/55R16C"},
    {"205/55R16", "215/55R16"},
    {"205/55R16", "205/60R16"},
    {"205/650R440", "205/660R440"},
    {"205/55R16", "205/55R16.5"},
    {"31x10.50R15LT", "31.5x10.50R15LT"},
    {"205/55R16 91V", "205/55R16 92V"},
    {"205/55R16 91V", "205/55R16 91/91V"},
    {"205/55R16 91V", "205/55R16 91W"},
    {"205/55R16 91V", "205/55R16 (91V)"},
    {"205/55R16 91A1", "205/55R16 91A2"},
    {"205/55R16 91V 90V", "205/55R16 91V 90W"},
    {"205/55R16 91V", "205/55R16 91V XL"},
    {"205/55R16 LR B", "205/55R16 LR C"},
    {"205/55R16", "205/55R16 4PR"},
    {"205/55R16", "205/55R16 M+S"},
    {"205/55R16", "205/55R16 3PMSF"},
    {"205/55R16 POR", "205/55R16 MPT"},
};

START_TEST(tyres_that_differ_are_not_equal)
{
    struct designation a = read_or_fail(DIFFERENT[_i][0]), b = read_or_fail(DIFFERENT[_i][1]);
    ck_assert(designation_equal(&a, &a) && designation_equal(&b, &b));
    ck_assert(!designation_equal(&a, &b) && !designation_equal(&b, &a));
}
END_TEST

/* Text, column, and words that the message must hold. */
static const struct {
    const char *text;
    size_t column, length;
    const char *words;
} FAULTS[] = {
    {"", 1, 1, "text ends"},
    {"   ", 4, 1, "text ends"},
    {"E78-14", 1, 1, "prefix P, LT, ST, T or HL"},
    {"205", 4, 1, "aspect ratio"},
    {"205/", 5, 1, "aspect ratio"},
    {"205/55", 7, 1, "a construction"},
    {"205/55 16", 8, 1, "a construction"},
    {"205/55R", 8, 1, "rim diameter code"},
    {"205/55Z16", 8, 1, "R behind Z"},
    {"205/55R16 9", 12, 1, "a speed symbol"},
    {"205/55R16 91/", 14, 1, "a load index"},
    {"205/55R16 (91Y", 15, 1, "')'"},
    {"205/55R16 91V\xC3\xA9", 14, 1, "'\xC3\xA9' stands here"},
    {"31\xC3\x97"
     "10.50Q15",
     9, 1, "'Q' stands here"},
    {"205/55R16 91V\x01", 14, 1, "control character"},
    {"205/55R16 91V\xFF", 14, 1, "not UTF-8"},
    {"205/5R16", 5, 1, "aspect ratio of 5"},
    {"205/150R16", 5, 3, "aspect ratio of 150"},
    {"205/55.5R16", 5, 4, "no decimals"},
    {"205/55R166", 8, 3, "166 is not a rim diameter code"},
    {"205/55R31", 8, 2, "31 is not a rim diameter code"},
    {"205/55R16.4", 11, 1, "5, as in"},
    {"205/55R18.5", 8, 4, "18.5 is not a rim diameter code"},
    {"205/55R622", 8, 3, "622 is not a rim diameter code"},
    {"35-622", 4, 3, "bicycle"},
    {"28x1.75", 4, 4, "section width"},
    {"35x12.50R390", 10, 3, "millimetres"},
    {"31/10.50R15", 3, 1, "31x10.50R15"},
    {"750R16", 1, 3, "750 mm"},
    {"6,50-16", 2, 1, "decimal point"},
    {"1x10.50R15", 1, 1, "overall diameter"},
    {"16x12.50R8", 4, 5, "section width"},
    {"18x8.50R16", 9, 2, "overall diameter"},
    {"245/420R16", 9, 2, "overall diameter"},
    {"1.50-16", 1, 4, "section width"},
    {"165SR13", 4, 1, "before the R"},
    {"205/55R16 91X", 13, 1, "speed symbol"},
    {"205/55R16 91I", 13, 1, "speed symbol"},
    {"205/55R16 91O", 13, 1, "speed symbol"},
    {"205/55R16 91A9", 14, 1, "1 to 8"},
    {"205/55R16 201V", 11, 3, "above 200"},
    {"205/55R16 091V", 11, 3, "begins with 0"},
    {"235/65R16C 113/115R", 16, 3, "above the single"},
    {"235/65R16C 115/116R", 16, 3, "above the single"},
    {"235/65R16C 115/13R", 16, 2, "far below"},
    {"205/55R16 (91H)", 11, 5, "V, W or Y"},
    {"205/55R16 (121/118Y)", 11, 10, "V, W or Y"},
    {"205/55R16 91V 92V 93V", 19, 1, "third"},
    {"225/45ZR17 91H", 12, 1, "contradicts ZR"},
    {"HL245/40R20 102Y SL", 18, 2, "capacity class"},
    {"205/55R16 91V SL XL", 18, 2, "capacity class"},
    {"P205/55R16C", 11, 1, "prefix P"},
    {"P31x10.50R15", 1, 1, "prefix P"},
    {"HL165R13", 1, 2, "prefix HL"},
    {"LT245/75R16LT", 12, 2, "already"},
    {"31x10.50R15LT NHS", 15, 3, "already"},
    {"205/55R16 E", 11, 1, "load range or a speed symbol"},
    {"LT245/75R16 LR K", 16, 1, "load range letter"},
    {"LT245/75R16 LR EX", 16, 1, "load range letter"},
    {"LT245/75R16 LR E LR E", 21, 1, "second load range"},
    {"LT245/75R16 120/116R LR E 8PR", 27, 1, "contradicts load range E"},
    {"LT245/75R16 120/116R LR C", 25, 1, "contradicts load index 120"},
    {"31x10.50R15LT 109R LR F", 23, 1, "contradicts load index 109"},
    {"185R14C 7PR", 9, 1, "ply rating"},
    {"185R14C 8PR 8PR", 13, 1, "second ply rating"},
    {"205/55R16 91H M+S M+S", 19, 3, "second mark"},
    {"LT265/75R16 POR MPT", 17, 3, "second mark"},
    {"205/55R16 91H M+SX", 15, 1, "letter M alone"},
    {"205/55R16 91V sold", 15, 1, "'s' stands here"},
    {"205/55R16 91V STD", 15, 1, "'S' stands here"},
    {"LT245/75R16 120/116R STEEL", 22, 1, "'S' stands here"},
};

START_TEST(every_fault_is_named_where_it_stands)
{
    struct designation out;
    struct designation_error error;
    const char *text = FAULTS[_i].text;
    ck_assert_msg(!designation_parse(span_of(text), &out, &error), "\"%s\" was read", text);
    ck_assert_msg(error.column == FAULTS[_i].column, "\"%s\": column %zu, not %zu: %s", text,
                  error.column, FAULTS[_i].column, error.message);
    ck_assert_msg(error.length == FAULTS[_i].length, "\"%s\": length %zu, not %zu", text,
                  error.length, FAULTS[_i].length);
    ck_assert_msg(strstr(error.message, FAULTS[_i].words) != NULL, "\"%s\": %s", text,
                  error.message);
}
END_TEST

START_TEST(a_long_text_is_refused)
{
    char text[DESIGNATION_LENGTH_MAX + 40];
    memset(text, ' ', sizeof text);
    memcpy(text, "205/55R16", 9);
    struct designation out;
    struct designation_error error;
    ck_assert(designation_parse((struct span){text, DESIGNATION_LENGTH_MAX}, &out, &error));
    ck_assert(!designation_parse((struct span){text, sizeof text}, &out, &error));
    ck_assert_uint_eq(error.column, DESIGNATION_LENGTH_MAX + 1);
}
END_TEST

/* TRA load range letters and the ply ratings they replace; I and K are not used. */
START_TEST(load_range_letters)
{
    static const char LETTERS[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    static const int RATINGS[26] = {2, 4, 6, 8, 10, 12, 14, 16, 0, 18, 0, 20, 22, 24};
    for (int i = 0; i < 26; i++)
        ck_assert_int_eq(load_range_ply_rating(LETTERS[i]), RATINGS[i]);
    ck_assert_int_eq(load_range_ply_rating('\0'), 0);
}
END_TEST

START_TEST(form_names)
{
    ck_assert_str_eq(designation_form_name(FORM_METRIC), "metric");
    ck_assert_str_eq(designation_form_name(FORM_FLOTATION), "flotation");
    ck_assert_str_eq(designation_form_name(FORM_NUMERIC), "numeric");
    ck_assert_str_eq(designation_form_name(FORM_FULL_PROFILE), "full_profile");
}
END_TEST

Suite *designation_suite(void)
{
    Suite *suite = suite_create("designation");
    TCase *forms = tcase_create("forms");
    tcase_set_tags(forms, "text");
    tcase_add_loop_test(forms, every_spelling_has_its_canonical_one, 0,
                        (int)(sizeof SPELLINGS / sizeof SPELLINGS[0]));
    tcase_add_test(forms, fields_of_a_metric_size);
    tcase_add_test(forms, fields_of_a_flotation_size);
    tcase_add_test(forms, fields_of_other_forms);
    tcase_add_loop_test(forms, tyres_that_differ_are_not_equal, 0,
                        (int)(sizeof DIFFERENT / sizeof DIFFERENT[0]));
    tcase_add_test(forms, ten_and_ten_point_oh_are_two_tyres);
    tcase_add_test(forms, load_range_letters);
    tcase_add_test(forms, form_names);
    suite_add_tcase(suite, forms);
    TCase *faults = tcase_create("faults");
    tcase_set_tags(faults, "text");
    tcase_add_loop_test(faults, every_fault_is_named_where_it_stands, 0,
                        (int)(sizeof FAULTS / sizeof FAULTS[0]));
    tcase_add_test(faults, a_long_text_is_refused);
    suite_add_tcase(suite, faults);
    suite_add_tcase(suite, designation_property_case());
    suite_add_tcase(suite, designation_random_case());
    suite_add_tcase(suite, designation_listed_case());
    suite_add_tcase(suite, designation_counter_case());
    suite_add_tcase(suite, designation_plain_case());
    suite_add_tcase(suite, designation_typed_case());
    return suite;
}
