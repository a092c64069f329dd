/* Number text without locale. The one rounding rule of the program is here: half away from
 * zero, where a value within 1e-9 of a half in the last place (binary noise of a decimal
 * figure) counts as the half. */
#ifndef TYRESUM_OUTPUT_NUMBER_H
#define TYRESUM_OUTPUT_NUMBER_H

#include <math.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

enum { NUMBER_SIZE = 40, NUMBER_DECIMALS_MAX = 9 };

/* 10^decimals, for 0 to NUMBER_DECIMALS_MAX. */
double number_scale(int decimals);

/* value rounded to so many decimals, by the rule above. */
double round_to_decimals(double value, int decimals);

/* Up, and down, to so many decimals or to whole steps: of what must be enough, and of what must not
 * be passed. A millionth of the last place is binary noise. */
static inline double round_up_to_decimals(double value, int decimals)
{
    double scale = pow(10, decimals);
    return ceil(value * scale - 1e-6) / scale;
}
static inline double round_down_to_decimals(double value, int decimals)
{
    double scale = pow(10, decimals);
    return floor(value * scale + 1e-6) / scale;
}
static inline double round_up_to_step(double value, double step)
{
    return ceil(value / step - 1e-6) * step;
}

/* Decimals without which it is another number, at most so many. */
int number_decimals(double value, int most);

/* "-12.50"; never "-0", never an exponent; magnitudes past 1e15 are cut to significant digits
 * and still written plainly. The value must be finite. Returns the length; text ends in NUL. */
size_t number_fixed(double value, int decimals, char decimal_mark, char text[NUMBER_SIZE]);

/* Up to ten significant digits, shortest (no trailing zeros), plain or with exponent as JSON
 * allows it, never "-0". The value must be finite. */
size_t number_significant(double value, char text[NUMBER_SIZE]);

/* "000" to "999", four bytes each; and "0" to "999", each with its length in the fourth byte. */
extern const char number_triples[], number_shorts[];

/* A number below 1000 as three digits, and one below 10000 without zeros in front. Up to three
 * bytes more may be written than the text has. */
static inline char *number_triple(uint32_t number, char *to)
{
    memcpy(to, number_triples + (size_t)number * 4, 4);
    return to + 3;
}
static inline char *number_whole(uint32_t number, char *to)
{
    if (number >= 1000) {
        *to = (char)('0' + number / 1000);
        return number_triple(number % 1000, to + 1);
    }
    const char *text = number_shorts + (size_t)number * 4;
    memcpy(to, text, 4);
    return to + text[3];
}

/* One below 1000000, its last two digits behind the mark. */
static inline char *number_in_hundredths(uint32_t hundredths, char decimal_mark, char *to)
{
    to = number_whole(hundredths / 100, to);
    to[0] = decimal_mark;
    memcpy(to + 1, number_triples + (size_t)(hundredths % 100) * 4 + 1, 2);
    return to + 3;
}

/* What number_of_raised() takes is multiplied by this too, so that one conversion gives the whole
 * number and how near to a half it was. */
enum { NUMBER_PARTS_BITS = 20, NUMBER_PARTS = 1 << NUMBER_PARTS_BITS };

/* The whole number next to one that is not negative and rounds to less than the limit, in parts.
 * False for any other, and for one so near to a half that the last bits of a product could tell. */
static inline bool number_next(double parts, uint32_t limit, uint32_t *next)
{
    enum { NEAR = 2 };
    if (!(parts >= 0 && parts < (limit - 0.5) * NUMBER_PARTS))
        return false;
    int64_t above = (int64_t)parts + NUMBER_PARTS / 2;
    *next = (uint32_t)(above >> NUMBER_PARTS_BITS);
    return (uint32_t)(above - NEAR) % NUMBER_PARTS < NUMBER_PARTS - 2 * NEAR;
}

/* The text of number_fixed(), without a NUL, for a number of no, one or two decimals that is
 * already multiplied by 10^decimals and NUMBER_PARTS: not negative, below 10000, and not beside a
 * half. Returns its end; NULL for any other, with nothing of use at `to`. */
enum { NUMBER_RAISED_DECIMALS = 2 };
static inline char *number_of_raised_units(double parts, char *to)
{
    uint32_t units;
    return number_next(parts, 10000, &units) ? number_whole(units, to) : NULL;
}
static inline char *number_of_raised_tenths(double parts, char decimal_mark, char *to)
{
    uint32_t tenths;
    if (!number_next(parts, 100000, &tenths))
        return NULL;
    to = number_whole(tenths / 10, to);
    to[0] = decimal_mark;
    to[1] = (char)('0' + tenths % 10);
    return to + 2;
}
static inline char *number_of_raised_hundredths(double parts, char decimal_mark, char *to)
{
    uint32_t hundredths;
    return number_next(parts, 1000000, &hundredths)
               ? number_in_hundredths(hundredths, decimal_mark, to)
               : NULL;
}
static inline char *number_of_raised(double parts, int decimals, char decimal_mark, char *to)
{
    return decimals == 0   ? number_of_raised_units(parts, to)
           : decimals == 1 ? number_of_raised_tenths(parts, decimal_mark, to)
           : decimals == 2 ? number_of_raised_hundredths(parts, decimal_mark, to)
                           : NULL;
}

/* The text of number_significant(), without a NUL, for a number from 1 to 10000 that has two
 * decimals at the most, as nearly all have: the rest of its ten digits are then zeros, whichever
 * place the first one has. Returns its end; NULL for any other. */
static inline char *number_of_hundredths(double value, char *to)
{
    if (!(value >= 1 && value < 9999))
        return NULL;
    double hundredths = value * 100;
    int32_t nearest = (int32_t)(hundredths + 0.5);
    if (!(fabs(hundredths - nearest) < 4e-8))
        return NULL;
    to = number_in_hundredths((uint32_t)nearest, '.', to);
    return nearest % 100 == 0 ? to - 3 : to - (nearest % 10 == 0);
}

#endif
