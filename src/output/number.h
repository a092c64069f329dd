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

/* A number below 1000 as three digits. A fourth byte is written. */
static inline char *number_triple(uint32_t number, char *to)
{
    memcpy(to, number_triples + (size_t)number * 4, 4);
    return to + 3;
}

/* The whole of a number that is counted in so many parts of one, without zeros in front; NULL where
 * it is 10000 or more. Up to three bytes more may be written than the text has. */
static inline char *number_whole(uint64_t counted, unsigned parts, uint32_t whole, char *to)
{
    if (counted < 1000 * parts) {
        const char *text = number_shorts + (size_t)whole * 4;
        memcpy(to, text, 4);
        return to + text[3];
    }
    if (counted >= 10000 * parts)
        return NULL;
    *to = (char)('0' + whole / 1000);
    return number_triple(whole % 1000, to + 1);
}

/* One that is counted in its last place, of so many decimals; NULL from 10000. Two bytes of a
 * triple are written behind the mark, whether one or two of them count: they are there sooner than
 * the sum of '0' and a digit. */
enum { NUMBER_RAISED_DECIMALS = 2 };
static inline char *number_counted(uint64_t counted, int decimals, char decimal_mark, char *to)
{
    const uint32_t parts = decimals == 0 ? 1 : decimals == 1 ? 10 : 100;
    const uint32_t whole = (uint32_t)counted / parts, rest = (uint32_t)counted - whole * parts;
    to = number_whole(counted, parts, whole, to);
    if (to == NULL || decimals == 0)
        return to;
    to[0] = decimal_mark;
    memcpy(to + 1, number_triples + (size_t)rest * 4 + (3 - decimals), 2);
    return to + 1 + decimals;
}

/* What number_of_raised() takes is multiplied by this too, so that one conversion gives the whole
 * number and how near to a half it was. */
enum { NUMBER_PARTS_BITS = 20, NUMBER_PARTS = 1 << NUMBER_PARTS_BITS };

/* The whole number next to one that rounds to none or more; far above any limit for what is
 * negative, too large or unknown. False where it is so near to a half that the last bits of a
 * product could tell. Doubles from 2^52 to 2^53 are whole numbers, which their bits count: in the
 * middle of them those below nothing have room too. */
static inline bool number_next(double parts, uint64_t *next)
{
    enum { NEAR = 2 };
    const double ones = 0x1.8p52, counted = parts + (ones + NUMBER_PARTS / 2.0);
    uint64_t from, above;
    memcpy(&from, &ones, sizeof from);
    memcpy(&above, &counted, sizeof above);
    *next = (above - from) >> NUMBER_PARTS_BITS;
    const uint32_t last_bits = (uint32_t)above; /* those of `from` are 0 */
    return ((last_bits + NEAR) & (NUMBER_PARTS - 2 * NEAR)) != 0;
}

/* The text of number_fixed(), without a NUL, for a number of NUMBER_RAISED_DECIMALS at the most
 * that is already multiplied by 10^decimals and NUMBER_PARTS: not below nothing when rounded, below
 * 10000, and not beside a half. Returns its end; NULL for any other, with nothing of use at `to`.
 */
static inline char *number_of_raised(double parts, int decimals, char decimal_mark, char *to)
{
    uint64_t counted;
    return decimals <= NUMBER_RAISED_DECIMALS && number_next(parts, &counted)
               ? number_counted(counted, decimals, decimal_mark, to)
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
    to = number_counted((uint64_t)nearest, 2, '.', to);
    return nearest % 100 == 0 ? to - 3 : to - (nearest % 10 == 0);
}

#endif
