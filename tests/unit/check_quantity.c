/* Units against their exact definitions and against GNU units; decimals against strtod; every
 * kind of text that is no quantity. */
#include <string.h>

#include "base/nearest.h"
#include "suites.h"
#include "support.h"
#include "size/quantity_text.h"

/* Printed by `units -o %.17g -t 1UNIT SI` of GNU units 2.22. */
static const struct {
    enum unit_id unit;
    const char *written;
    double si;
} gnu_units[] = {
    {UNIT_MM, "1 mm", 0.001},
    {UNIT_CM, "1 cm", 0.01},
    {UNIT_M, "1 m", 1},
    {UNIT_KM, "1 km", 1000},
    {UNIT_IN, "1 in", 0.025400000000000002},
    {UNIT_FT, "1 ft", 0.30480000000000002},
    {UNIT_MI, "1 mi", 1609.3440000000001},
    {UNIT_KG, "1 kg", 1},
    {UNIT_G, "1 g", 0.001},
    {UNIT_TONNE, "1 t", 1000},
    {UNIT_LB, "1 lb", 0.45359237000000002},
    {UNIT_KPA, "1 kPa", 1000},
    {UNIT_BAR, "1 bar", 100000},
    {UNIT_PSI, "1 psi", 6894.7572931683599},
    {UNIT_KMH, "1 km/h", 0.27777777777777779},
    {UNIT_MPH, "1 mph", 0.44704000000000005},
    {UNIT_MPS, "1 m/s", 1},
    {UNIT_L, "1 L", 0.0010000000000000002},
    {UNIT_GAL, "1 gal", 0.0037854117840000006},
    {UNIT_GAL_IMP, "1 gal_imp", 0.0045460900000000009},
    {UNIT_M3, "1 m3", 1},
    {UNIT_NM, "1 Nm", 1},
    {UNIT_LB_FT, "1 lb-ft", 1.3558179483314006},
    {UNIT_N, "1 N", 1},
    {UNIT_KN, "1 kN", 1000},
    {UNIT_LBF, "1 lbf", 4.4482216152604996},
    {UNIT_N_PER_MM, "1 N/mm", 1000},
    {UNIT_LB_PER_IN, "1 lb/in", 175.12683524647636},
    {UNIT_DEG, "1 deg", 0.017453292519943295},
    {UNIT_RAD, "1 rad", 1},
    {UNIT_PERCENT, "1 %", 0.01},
    {UNIT_RPM, "1 rpm", 0.016666666666666666},
    {UNIT_L_PER_100KM, "1 L/100km", 1.0000000000000002e-08},
    {UNIT_MPG, "1 mpg", 2.3521458333333333e-06},
    {UNIT_MPG_IMP, "1 mpg_imp", 2.824809363318222e-06},
    {UNIT_M2, "1 m2", 1},
    {UNIT_FT2, "1 ft2", 0.092903040000000006},
    {UNIT_KG_PER_L, "1 kg/L", 999.99999999999989},
    {UNIT_KG_PER_M3, "1 kg/m3", 1},
    {UNIT_L_PER_MIN, "1 L/min", 1.6666666666666671e-05},
    {UNIT_CFM, "1 ft3/min", 0.00047194744320000004},
    {UNIT_S, "1 s", 1},
    {UNIT_MIN, "1 min", 60},
    {UNIT_PER_KM, "1 /km", 0.001},
    {UNIT_PER_MILE, "1 /mi", 0.00062137119223733392},
    {UNIT_KG_M2, "1 kg-m2", 1},
    {UNIT_LB_FT2, "1 lb-ft2", 0.042140110093804806},
    {UNIT_M_PER_KM, "1 m/km", 0.001},
    {UNIT_FT_PER_MILE, "1 ft/mi", 0.00018939393939393939},
};

static struct quantity quantity_of(const char *text, enum unit_kind kind)
{
    struct quantity quantity;
    struct quantity_error error;
    ck_assert_msg(quantity_parse(span_of(text), kind, &quantity, &error), "%s: %s", text,
                  error.message);
    return quantity;
}

START_TEST(unit_agrees_with_gnu_units)
{
    enum unit_id unit = gnu_units[_i].unit;
    struct quantity one = quantity_of(gnu_units[_i].written, unit_table[unit].kind);
    ck_assert_int_eq(one.unit, unit);
    assert_relative(one.si, gnu_units[_i].si, 1e-14, gnu_units[_i].written);
    assert_relative(unit_from_si(unit, one.si), 1, 1e-15, gnu_units[_i].written);
}
END_TEST

START_TEST(every_unit_is_compared)
{
    ck_assert_uint_eq(LENGTH_OF(gnu_units), UNIT_COUNT - 1); /* all but UNIT_BARE */
    for (size_t i = 0; i < LENGTH_OF(gnu_units); i++)
        ck_assert_int_eq(gnu_units[i].unit, UNIT_BARE + 1 + (int)i);
}
END_TEST

/* Texts that a user writes, with their SI value from the definitions. */
static const struct {
    const char *text;
    enum unit_kind kind;
    double si;
    const char *source;
} written[] = {
    {"9.5 in", KIND_LENGTH, 0.2413, "1 in = 25.4 mm exactly (agreement of 1959)"},
    {"137 lb", KIND_MASS, 62.14215469, "1 lb = 0.45359237 kg exactly (agreement of 1959)"},
    {"35 psi", KIND_PRESSURE, 241316.50526089263, "GNU units 2.22"},
    {"2.4 bar", KIND_PRESSURE, 240000, "1 bar = 100 kPa"},
    {"60 mph", KIND_SPEED, 26.8224, "1 mi = 1609.344 m exactly"},
    {"98 km/h", KIND_SPEED, 98 / 3.6, "1 h = 3600 s"},
    {"31 gal", KIND_VOLUME, 0.117347765304, "US gallon 231 in3 exactly"},
    {"5 gal_imp", KIND_VOLUME, 0.02273045, "imperial gallon 4.54609 L exactly"},
    {"450 lb-ft", KIND_TORQUE, 610.11807674913018, "GNU units 2.22"},
    {"480 lb/in", KIND_STIFFNESS, 84060.880918308655, "GNU units 2.22"},
    {"180 deg", KIND_ANGLE, 3.14159265358979, "pi rad"},
    {"12 mpg", KIND_CONSUMPTION, 19.601215277777776e-8, "GNU units 2.22: 19.60 L/100km"},
    {"14 mpg_imp", KIND_CONSUMPTION, 20.177209737987294e-8, "GNU units 2.22: 20.18 L/100km"},
    {"637 /km", KIND_PER_LENGTH, 0.637, "by definition"},
    {"-820 mm", KIND_LENGTH, -0.82, "a sign is part of the number"},
    {"+5 mm", KIND_LENGTH, 0.005, "a sign is part of the number"},
    {"4%", KIND_FRACTION, 0.04, "the blank may be left out"},
    {"2917mm", KIND_LENGTH, 2.917, "the blank may be left out"},
    {"240 KPA", KIND_PRESSURE, 240000, "case is forgiven"},
    {"62  kg ", KIND_MASS, 62, "blanks are forgiven"},
    {"3.83", KIND_BARE, 3.83, "a ratio is bare"},
    {"007", KIND_BARE, 7, "leading zeros are decimal and not octal"},
};

START_TEST(written_quantity_has_its_si_value)
{
    double si = quantity_of(written[_i].text, written[_i].kind).si;
    assert_relative(si, written[_i].si, 1e-14, written[_i].text);
}
END_TEST

/* JIS D 5601: 637 cable revolutions per km, quoted as 1025 per mile. */
START_TEST(cable_revolutions_per_mile)
{
    double si = quantity_of("637 /km", KIND_PER_LENGTH).si;
    assert_close(unit_from_si(UNIT_PER_MILE, si), 1025, 0.5, "JIS D 5601");
}
END_TEST

static const struct {
    const char *text;
    enum unit_kind kind;
    size_t column;
    const char *says, *says_too; /* parts of the message */
} refused[] = {
    {"2917", KIND_LENGTH, 1, "no unit", "2917 mm"},
    {"35 psi", KIND_LENGTH, 4, "pressure", "a length"},
    {"35 kg", KIND_PRESSURE, 4, "mass", "a pressure"},
    {"100 rpm", KIND_SPEED, 5, "engine speed", "a speed"},
    {"2917 mn", KIND_LENGTH, 6, "not known", "nearest unit: mm"},
    {"35 pis", KIND_PRESSURE, 4, "not known", "nearest unit: psi"},
    {"35 kpq", KIND_PRESSURE, 4, "not known", "nearest unit: kPa"},
    {"62 furlongs", KIND_LENGTH, 4, "not known", "2917 mm"},
    {"1e3 mm", KIND_LENGTH, 2, "plain decimal", "2917 mm"},
    {"1e3", KIND_BARE, 2, "plain decimal", "3.83"},
    {"1E+3 mm", KIND_LENGTH, 2, "plain decimal", "2917 mm"},
    {"0x10 mm", KIND_LENGTH, 2, "plain decimal", "2917 mm"},
    {"0x10", KIND_BARE, 2, "plain decimal", "3.83"},
    {"1_000 mm", KIND_LENGTH, 2, "plain decimal", "2917 mm"},
    {"1:30", KIND_TIME, 2, "plain decimal", "60 s"},
    {"1 000 mm", KIND_LENGTH, 3, "plain decimal", "2917 mm"},
    {".5 mm", KIND_LENGTH, 1, "begins with a point", "0.5 mm"},
    {"5. mm", KIND_LENGTH, 2, "point", "2917 mm"},
    {"1.2.3 mm", KIND_LENGTH, 4, "point", "2917 mm"},
    {"nan", KIND_BARE, 1, "nan", "3.83"},
    {".nan", KIND_BARE, 1, "nan", "3.83"},
    {"NaN mm", KIND_LENGTH, 1, "NaN", "2917 mm"},
    {"inf kg", KIND_MASS, 1, "inf", "62 kg"},
    {"-.inf", KIND_BARE, 1, "inf", "3.83"},
    {"2,4 bar", KIND_PRESSURE, 2, "decimal point", "240 kPa"},
    {"1,000 mm", KIND_LENGTH, 2, "decimal point", "2917 mm"},
    {"", KIND_LENGTH, 1, "a length", "2917 mm"},
    {"   ", KIND_LENGTH, 1, "a length", "2917 mm"},
    {"mm", KIND_LENGTH, 1, "not a length", "2917 mm"},
    {"-", KIND_LENGTH, 1, "not a length", "2917 mm"},
    {"--5 mm", KIND_LENGTH, 1, "not a length", "2917 mm"},
    {"- 5 mm", KIND_LENGTH, 1, "not a length", "2917 mm"},
    {"3.83 mm", KIND_BARE, 6, "takes no unit", "3.83"},
    {"1234567890123456 mm", KIND_LENGTH, 1, "15 digits", "15 digits"},
    {"0.0000000000000001 mm", KIND_LENGTH, 1, "15 digits", "15 digits"},
    {"0 mpg", KIND_CONSUMPTION, 1, "above zero", "above zero"},
    {"-12 mpg", KIND_CONSUMPTION, 1, "above zero", "above zero"},
    {"5 \xC2\xB5m", KIND_LENGTH, 3, "not known", "2917 mm"},
    {"\xC2\xBD in", KIND_LENGTH, 1, "not a length", "2917 mm"},
    {"\xEF\xBC\x95 mm", KIND_LENGTH, 1, "not a length", "2917 mm"}, /* full-width 5 */
};

START_TEST(bad_quantity_is_refused)
{
    struct quantity quantity;
    struct quantity_error error = {0, 0, ""};
    const char *text = refused[_i].text;
    ck_assert_msg(!quantity_parse(span_of(text), refused[_i].kind, &quantity, &error),
                  "\"%s\" was read as %g", text, quantity.si);
    ck_assert_msg(error.column == refused[_i].column, "\"%s\": column %zu, expected %zu (%s)", text,
                  error.column, refused[_i].column, error.message);
    ck_assert_msg(strstr(error.message, refused[_i].says) != NULL &&
                      strstr(error.message, refused[_i].says_too) != NULL,
                  "\"%s\": message is: %s", text, error.message);
    ck_assert_uint_ge(error.length, 1);
}
END_TEST

/* A very long text must neither overflow the message nor be cut within a character. */
START_TEST(long_text_fits_the_message)
{
    char text[2000] = "5 ";
    for (size_t i = 2; i + 3 < sizeof text; i += 2)
        memcpy(text + i, "\xC2\xB5", 3);
    for (size_t cut = 0; cut < 3; cut++) {
        struct quantity quantity;
        struct quantity_error error;
        struct span span = {text + cut, strlen(text) - cut};
        ck_assert(!quantity_parse(span, KIND_LENGTH, &quantity, &error));
        ck_assert_uint_lt(strlen(error.message), sizeof error.message - 1);
        const unsigned char *quote = (const unsigned char *)strrchr(error.message, '"');
        ck_assert_msg(quote != NULL, "no closing quote: %s", error.message);
        ck_assert_msg(quote[-1] != 0xC2, "a character is cut in two: %s", error.message);
    }
}
END_TEST

/* A build file may hold any character in quotes; a message that repeats it must not steer the
 * terminal that it is shown on. */
START_TEST(message_holds_no_control_character)
{
    static const char *const texts[] = {"28\x1B[31m50 mm", "50 m\x07m", "\x7F 50 mm", "1\n2 mm"};
    for (size_t i = 0; i < LENGTH_OF(texts); i++) {
        struct quantity quantity;
        struct quantity_error error;
        ck_assert(!quantity_parse(span_of(texts[i]), KIND_LENGTH, &quantity, &error));
        for (const char *at = error.message; *at != '\0'; at++)
            ck_assert_msg((unsigned char)*at >= ' ' && *at != 0x7F, "text %zu: byte %d", i, *at);
    }
}
END_TEST

static void compare_with_strtod(const char *text, size_t length)
{
    double value = NAN;
    size_t read = decimal_read(span_of(text), &value);
    ck_assert_msg(read == length, "%s: %zu bytes read, expected %zu", text, read, length);
    ck_assert_msg(value == strtod(text, NULL), "%s: %.17g, strtod %.17g", text, value,
                  strtod(text, NULL));
}

/* strtod rounds correctly in glibc; so must decimal_read, to the last bit. */
START_TEST(decimal_agrees_with_strtod)
{
    uint64_t state = random_start("decimal_agrees_with_strtod");
    for (int run = 0, runs = rounds(200000); run < runs; run++) {
        char text[40];
        size_t at = 0;
        int digits = random_whole(&state, 1, 15), point = random_whole(&state, 1, digits);
        if (random_whole(&state, 0, 3) == 0)
            text[at++] = random_whole(&state, 0, 1) ? '-' : '+';
        for (int i = 0; i < digits; i++) {
            if (i == point)
                text[at++] = '.';
            text[at++] = (char)('0' + random_whole(&state, 0, 9));
        }
        text[at] = '\0';
        compare_with_strtod(text, at);
    }
}
END_TEST

START_TEST(decimal_stops_where_the_number_ends)
{
    static const struct {
        const char *text;
        size_t bytes;
        double value;
    } heads[] = {
        {"12abc", 2, 12}, {"12.5.6", 4, 12.5}, {"12.", 2, 12}, {"12 .5", 2, 12}, {"0e5", 1, 0},
        {"-0", 2, 0},     {"", 0, 0},          {"+", 0, 0},    {".5", 0, 0},     {"e5", 0, 0},
    };
    for (size_t i = 0; i < LENGTH_OF(heads); i++) {
        double value = 0;
        ck_assert_uint_eq(decimal_read(span_of(heads[i].text), &value), heads[i].bytes);
        ck_assert_msg(value == heads[i].value && !signbit(value), "%s: %g", heads[i].text, value);
    }
}
END_TEST

/* Bytes behind the span are not the quantity's. */
START_TEST(span_bounds_are_kept)
{
    struct quantity quantity;
    struct quantity_error error;
    ck_assert(quantity_parse((struct span){"28500 mmm", 8}, KIND_LENGTH, &quantity, &error));
    assert_relative(quantity.si, 28.5, 1e-14, "28500 mm");
    ck_assert(quantity_parse((struct span){"123456", 3}, KIND_BARE, &quantity, &error));
    assert_close(quantity.si, 123, 0, "123");
}
END_TEST

START_TEST(nearest_unit_is_of_the_kind)
{
    for (int unit = UNIT_BARE + 1; unit < UNIT_COUNT; unit++) {
        const struct unit *row = &unit_table[unit];
        const char *near = unit_nearest(span_of(row->name), row->kind);
        ck_assert_msg(near != NULL && strcmp(near, row->name) == 0, "%s: %s", row->name,
                      near ? near : "none");
    }
    ck_assert_ptr_null(unit_nearest(span_of("parsecs of sand"), KIND_LENGTH));
}
END_TEST

Suite *quantity_suite(void)
{
    Suite *suite = suite_create("quantity");
    TCase *units = tcase_create("units");
    tcase_set_tags(units, "text");
    tcase_add_loop_test(units, unit_agrees_with_gnu_units, 0, (int)LENGTH_OF(gnu_units));
    tcase_add_test(units, every_unit_is_compared);
    tcase_add_loop_test(units, written_quantity_has_its_si_value, 0, (int)LENGTH_OF(written));
    tcase_add_test(units, cable_revolutions_per_mile);
    tcase_add_test(units, nearest_unit_is_of_the_kind);
    suite_add_tcase(suite, units);
    TCase *texts = tcase_create("texts");
    tcase_set_tags(texts, "text");
    tcase_add_loop_test(texts, bad_quantity_is_refused, 0, (int)LENGTH_OF(refused));
    tcase_add_test(texts, long_text_fits_the_message);
    tcase_add_test(texts, message_holds_no_control_character);
    tcase_add_test(texts, decimal_agrees_with_strtod);
    tcase_add_test(texts, decimal_stops_where_the_number_ends);
    tcase_add_test(texts, span_bounds_are_kept);
    suite_add_tcase(suite, texts);
    return suite;
}
