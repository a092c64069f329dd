/* Characters, as they come and as they are shown. */
#include "base/utf8.h"

#include <stdio.h>

#include "output/writer.h"
#include "suites.h"
#include "support.h"

/* What a terminal would heed or nobody can read is its number: C0, DEL and C1 of ISO 6429, property
 * Bidi_Control of the Unicode Character Database (PropList.txt), and bytes that are no UTF-8. */
static const struct {
    const char *bytes, *text;
} steering[] = {
    {"a\x1B[2J", "a\\x1B[2J"},
    {"\x01\x08\x1F\x7F", "\\x01\\x08\\x1F\\x7F"},
    {"\xC2\x80\xC2\x9B\xC2\x9F", "\\u0080\\u009B\\u009F"},
    {"\xC2\xA0.", "\xC2\xA0."},
    {"\x9B\xE2\x82x", "\\x9B\\xE2\\x82x"},
    {"\xD8\x9C\xE2\x80\x8E\xE2\x80\x8F", "\\u061C\\u200E\\u200F"},
    {"\xE2\x80\xAA\xE2\x80\xAE", "\\u202A\\u202E"},
    {"\xE2\x81\xA6\xE2\x81\xA9", "\\u2066\\u2069"},
    {"\xE2\x80\xA8\xE2\x80\xA9", "\\u2028\\u2029"},
    {"\xE2\x80\x90\xE2\x81\xA5.", "\xE2\x80\x90\xE2\x81\xA5."}, /* their neighbours */
};

START_TEST(what_steers_is_shown)
{
    char shown[100];
    struct span text = span_of(steering[_i].bytes);
    ck_assert_uint_le(SHOWN_BYTES_MAX * text.length, sizeof shown - 1);
    ck_assert_str_eq(shown_write(text, shown), steering[_i].text);
}
END_TEST

/* Printable ASCII is 0x20 to 0x7E (ISO 646): what is counted eight at a time, byte by byte. */
START_TEST(plain_characters_are_counted)
{
    char text[24];
    for (int byte = 0; byte < 256; byte++)
        for (size_t at = 0; at < sizeof text; at++) {
            memset(text, at % 2 ? '~' : ' ', sizeof text);
            text[at] = (char)byte;
            size_t plain = byte >= 0x20 && byte <= 0x7E ? sizeof text : at;
            ck_assert_uint_eq(utf8_plain_length((struct span){text, sizeof text}), plain);
        }
}
END_TEST

/* East_Asian_Width and general category in the Unicode Character Database. */
static const struct {
    const char *text;
    size_t width;
} widths[] = {
    {"", 0},
    {"205/55R16", 9},
    {"\xC3\xA9", 1},                 /* U+00E9 */
    {"e\xCC\x81", 1},                /* e, U+0301 combining acute */
    {"\xE8\xBB\x8A", 2},             /* U+8ECA, W */
    {"\xEF\xBC\xA1", 2},             /* U+FF21, F */
    {"\xEF\xBD\xB1", 1},             /* U+FF71, halfwidth */
    {"\xE1\x84\x80\xE1\x85\xA1", 2}, /* U+1100 U+1161, one Hangul syllable */
    {"\xF0\x9F\x9A\x97", 2},         /* U+1F697, W */
    {"\xE2\x80\x8B", 0},             /* U+200B, Cf */
    {"\xC2\xB0", 1},                 /* U+00B0 degree sign */
    {"\xE2\x80\x93", 1},             /* U+2013 */
    {"\xE2\x80\xAE", 6},             /* \\u202E, as it is written */
    {"a\tb\x1B", 7},
};

START_TEST(display_widths)
{
    ck_assert_uint_eq(display_width(span_of(widths[_i].text)), widths[_i].width);
}
END_TEST

/* The Unicode Standard, section 3.10: the marks of the encoding schemes; and, without one, texts of
 * these schemes and some that are none. */
static const struct {
    const char *bytes;
    size_t length;
    const char *encoding;
} encoded[] = {
    {"\xFF\xFE"
     "a\0",
     4, "UTF-16"},
    {"\xFE\xFF\0a", 4, "UTF-16"},
    {"\xFF\xFE\0\0"
     "a\0\0\0",
     8, "UTF-32"},
    {"\0\0\xFE\xFF\0\0\0a", 8, "UTF-32"},
    {"\xFF\xFE", 2, "UTF-16"},
    {"2\0"
     "0\0"
     "5\0/\0",
     8, "UTF-16"},
    {"\0"
     "2\0"
     "0\0"
     "5\0/",
     8, "UTF-16"},
    {"#\0 \0\x16\x04\x38\x04", 8, "UTF-16"}, /* a comment of U+0416 U+0438 */
    {"2\0\0\0"
     "0\0\0\0",
     8, "UTF-32"},
    {"\0\0\0"
     "2\0\0\0"
     "0",
     8, "UTF-32"},
    {"\xEF\xBB\xBF"
     "205",
     6, NULL},
    {"205/55R16\0", 10, NULL},
    {"20\0"
     "5/55R16\n",
     11, NULL},
    {"\0\0\0\0\0\0\0\0", 8, NULL},
    {"a", 1, NULL},
    {"", 0, NULL},
};

START_TEST(other_encodings_are_known)
{
    struct span text = {encoded[_i].bytes, encoded[_i].length};
    const char *encoding = other_encoding(text);
    ck_assert_msg(same_text(encoding, encoded[_i].encoding), "%s", encoding ? encoding : "none");
}
END_TEST

Suite *utf8_suite(void)
{
    Suite *suite = suite_create("utf8");
    TCase *tests = tcase_create("utf8");
    tcase_set_tags(tests, "text");
    tcase_add_loop_test(tests, what_steers_is_shown, 0, LENGTH_OF(steering));
    tcase_add_test(tests, plain_characters_are_counted);
    tcase_add_loop_test(tests, display_widths, 0, LENGTH_OF(widths));
    tcase_add_loop_test(tests, other_encodings_are_known, 0, LENGTH_OF(encoded));
    suite_add_tcase(suite, tests);
    return suite;
}
