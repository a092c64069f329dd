#include "output/number.h"

#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

/* A fraction this close under the half counts as the half: see number.h. */
static const double half_with_noise = 0.5 - 1e-9;

/* From here on a double holds no decimals worth writing. */
static const double plain_limit = 1e15;
static const double all_integers_from = 9007199254740992.0; /* 2^53 */

enum { SIGNIFICANT = 10, CUT_SIGNIFICANT = 15 };

static const uint32_t powers_of_ten[] = {1,      10,      100,      1000,      10000,
                                         100000, 1000000, 10000000, 100000000, 1000000000};

#define TEN(tens, end)                                                                             \
    tens "0" end tens "1" end tens "2" end tens "3" end tens "4" end tens "5" end tens             \
         "6" end tens "7" end tens "8" end tens "9" end
#define HUNDRED(hundreds, end)                                                                     \
    TEN(hundreds "0", end)                                                                         \
    FROM_TEN(hundreds, end)
#define FROM_TEN(hundreds, end)                                                                    \
    TEN(hundreds "1", end)                                                                         \
    TEN(hundreds "2", end)                                                                         \
    TEN(hundreds "3", end)                                                                         \
    TEN(hundreds "4", end)                                                                         \
    TEN(hundreds "5", end)                                                                         \
    TEN(hundreds "6", end)                                                                         \
    TEN(hundreds "7", end)                                                                         \
    TEN(hundreds "8", end)                                                                         \
    TEN(hundreds "9", end)
#define FROM_HUNDRED(end)                                                                          \
    HUNDRED("1", end)                                                                              \
    HUNDRED("2", end)                                                                              \
    HUNDRED("3", end)                                                                              \
    HUNDRED("4", end)                                                                              \
    HUNDRED("5", end)                                                                              \
    HUNDRED("6", end)                                                                              \
    HUNDRED("7", end)                                                                              \
    HUNDRED("8", end)                                                                              \
    HUNDRED("9", end)
const char number_triples[] = HUNDRED("0", "\0") FROM_HUNDRED("\0");
const char number_shorts[] = TEN("", "\0\0\1") FROM_TEN("", "\0\2") FROM_HUNDRED("\3");

double number_scale(int decimals)
{
    return powers_of_ten[decimals];
}

struct decimal {
    uint64_t whole;
    uint32_t fraction; /* in units of the last place */
};

static int usable_decimals(int decimals)
{
    if (decimals < 0)
        return 0;
    return decimals > NUMBER_DECIMALS_MAX ? NUMBER_DECIMALS_MAX : decimals;
}

/* magnitude is not negative and below 2^53. The fraction is taken in two halves of its bits, so
 * that the first product is exact (26 bits by the 21 bits of 5^9) and the second far finer than
 * the 1e-9 of the rounding rule; one product alone would be too coarse from seven decimals on. */
static struct decimal round_decimal(double magnitude, int decimals)
{
    const uint32_t scale = powers_of_ten[decimals];
    struct decimal result = {.whole = (uint64_t)(int64_t)magnitude};
    double fraction = magnitude - (double)(int64_t)result.whole;
    double high = (double)(int32_t)(fraction * 0x1p26) * 0x1p-26;
    double exact = high * scale;
    int32_t units = (int32_t)exact;
    double rest = (exact - units) + (fraction - high) * scale;
    int32_t carried = (int32_t)rest;
    units += carried + (rest - carried >= half_with_noise);
    result.fraction = (uint32_t)units;
    if (result.fraction >= scale) {
        result.fraction -= scale;
        result.whole++;
    }
    return result;
}

double round_to_decimals(double value, int decimals)
{
    double magnitude = fabs(value);
    if (!(magnitude < all_integers_from)) /* unknown passes through as well */
        return value;
    decimals = usable_decimals(decimals);
    const double scale = powers_of_ten[decimals];
    struct decimal parts = round_decimal(magnitude, decimals);
    double scaled = (double)parts.whole * scale + parts.fraction;
    /* One correctly rounded quotient gives the double nearest to the decimal figure. */
    double rounded =
        scaled < all_integers_from ? scaled / scale : (double)parts.whole + parts.fraction / scale;
    return value < 0 && rounded != 0 ? -rounded : rounded;
}

int number_decimals(double value, int most)
{
    int decimals = 0;
    while (decimals < most && fabs(value - round_to_decimals(value, decimals)) > 1e-8)
        decimals++;
    return decimals;
}

static int count_digits(uint64_t number)
{
    int count = 1;
    for (; number >= 10000; number /= 10000)
        count += 4;
    return count + (number >= 10) + (number >= 100) + (number >= 1000);
}

/* The last `count` digits of the number, with zeros in front where it has fewer. */
static void put_digits(uint32_t number, int count, char *text)
{
    for (; count >= 3; number /= 1000) {
        count -= 3;
        memcpy(text + count, number_triples + (size_t)(number % 1000) * 4, 3);
    }
    memcpy(text, number_triples + (size_t)(number % 1000) * 4 + 3 - count, (size_t)count);
}

static size_t put_whole(uint64_t number, char *text)
{
    if (number < 10000)
        return (size_t)(number_whole(number, 1, (uint32_t)number, text) - text);
    const uint32_t group = 100000000;
    int count = count_digits(number), left = count;
    for (; number >= group; number /= group) {
        left -= 8;
        put_digits((uint32_t)(number % group), 8, text + left);
    }
    put_digits((uint32_t)number, left, text);
    return (size_t)count;
}

/* Fifteen significant digits and zeros up to the point; with an exponent only where even that
 * would not fit into NUMBER_SIZE. Nothing for what is not finite. */
static size_t put_cut(double value, char decimal_mark, char text[NUMBER_SIZE])
{
    char digits[NUMBER_SIZE];
    text[0] = '\0';
    if (!isfinite(value))
        return 0;
    int length = snprintf(digits, sizeof digits, "%.*e", CUT_SIGNIFICANT - 1, fabs(value));
    digits[1] = decimal_mark;
    int exponent = 0;
    for (const char *at = strchr(digits, 'e') + 2; *at != '\0'; at++)
        exponent = exponent * 10 + (*at - '0');
    char *to = text;
    if (value < 0)
        *to++ = '-';
    if (exponent + 3 > NUMBER_SIZE) { /* its digits, a sign and the NUL */
        memcpy(to, digits, (size_t)length + 1);
        return (size_t)(to - text) + (size_t)length;
    }
    *to++ = digits[0];
    memcpy(to, digits + 2, CUT_SIGNIFICANT - 1);
    to += CUT_SIGNIFICANT - 1;
    memset(to, '0', (size_t)(exponent - (CUT_SIGNIFICANT - 1)));
    to += exponent - (CUT_SIGNIFICANT - 1);
    *to = '\0';
    return (size_t)(to - text);
}

static size_t put_plain(double value, int decimals, char decimal_mark, char text[NUMBER_SIZE])
{
    struct decimal parts = round_decimal(fabs(value), decimals);
    char *to = text;
    if (value < 0 && (parts.whole | parts.fraction) != 0)
        *to++ = '-';
    to += put_whole(parts.whole, to);
    if (decimals > 0) {
        *to++ = decimal_mark;
        put_digits(parts.fraction, decimals, to);
        to += decimals;
    }
    *to = '\0';
    return (size_t)(to - text);
}

size_t number_fixed(double value, int decimals, char decimal_mark, char text[NUMBER_SIZE])
{
    static const double raise[] = {NUMBER_PARTS, 10.0 * NUMBER_PARTS, 100.0 * NUMBER_PARTS};
    if (decimals >= 0 && decimals <= NUMBER_RAISED_DECIMALS) {
        char *end = number_of_raised(value * raise[decimals], decimals, decimal_mark, text);
        if (end != NULL) {
            *end = '\0';
            return (size_t)(end - text);
        }
    }
    decimals = usable_decimals(decimals);
    return fabs(value) < plain_limit ? put_plain(value, decimals, decimal_mark, text)
                                     : put_cut(value, decimal_mark, text);
}

/* Ten digits as an integer, the first not zero, and how many of them stand after the point
 * (above ten: zeros between the point and the first digit). */
struct significand {
    uint64_t digits;
    int decimals;
};

/* False where the tenth digit hangs on bits that a product of doubles does not keep. */
static bool significand_of(double magnitude, struct significand *result)
{
    static const double scales[] = {1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6, 1e7,
                                    1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14};
    int decimals = SIGNIFICANT - 1;
    while (decimals > 0 && magnitude * scales[decimals] >= 1e10)
        decimals--;
    while (decimals < 14 && magnitude * scales[decimals] < 1e9)
        decimals++;
    double scaled = magnitude * scales[decimals];
    if (!(scaled >= 1e9 && scaled < 9999999999.0))
        return false;
    result->digits = (uint64_t)(int64_t)scaled;
    result->decimals = decimals;
    double rest = scaled - (double)(int64_t)result->digits;
    result->digits += rest > 0.5;
    return fabs(rest - 0.5) > 1e-5;
}

/* Without zeros behind the point. Copies are of one length: what is too much is written over. */
static size_t put_significand(struct significand number, char *text)
{
    char digits[2 * SIGNIFICANT] = "";
    uint32_t behind_first = (uint32_t)(number.digits % 1000000000);
    digits[0] = (char)('0' + number.digits / 1000000000);
    number_triple(behind_first / 1000000, digits + 1);
    number_triple(behind_first / 1000 % 1000, digits + 4);
    number_triple(behind_first % 1000, digits + 7);
    const int whole = SIGNIFICANT - number.decimals;
    int used = SIGNIFICANT;
    while (used > whole && digits[used - 1] == '0')
        used--;
    if (whole <= 0) {
        char *to = text + 2 - whole;
        memcpy(text, "0.0000", 6);
        memcpy(to, digits, SIGNIFICANT);
        return (size_t)(to + used - text);
    }
    memcpy(text, digits, SIGNIFICANT);
    if (used == whole)
        return (size_t)whole;
    text[whole] = '.';
    memcpy(text + whole + 1, digits + whole, SIGNIFICANT);
    return (size_t)used + 1;
}

size_t number_significant(double value, char text[NUMBER_SIZE])
{
    double magnitude = fabs(value);
    struct significand number;
    size_t length = 0;
    if (value < 0)
        text[length++] = '-';
    char *end = number_of_hundredths(magnitude, text + length);
    if (end != NULL) {
        length = (size_t)(end - text);
    } else if (magnitude < 1e10 && magnitude == (double)(int64_t)magnitude) {
        length += put_whole((uint64_t)(int64_t)magnitude, text + length);
    } else if (magnitude >= 1e-4 && magnitude < 1e10 && significand_of(magnitude, &number)) {
        length += put_significand(number, text + length);
    } else {
        int written = snprintf(text, NUMBER_SIZE, "%.*g", SIGNIFICANT, value);
        return written > 0 ? (size_t)written : 0;
    }
    text[length] = '\0';
    return length;
}
