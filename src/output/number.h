/* Number text without locale. The one rounding rule of the program is here: half away from
 * zero, where a value within 1e-9 of a half in the last place (binary noise of a decimal
 * figure) counts as the half. */
#ifndef TYRESUM_OUTPUT_NUMBER_H
#define TYRESUM_OUTPUT_NUMBER_H

#include <math.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

enum { NUMBER_SIZE = 40, NUMBER_DECIMALS_MAX = 9 };

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

/* "00" to "99", one behind the other; and one of them as two characters. */
extern const char number_digit_pairs[];
static inline char *number_pair(uint32_t number, char *to)
{
    memcpy(to, number_digit_pairs + (size_t)number * 2, 2);
    return to + 2;
}

/* The text of number_fixed(), without a NUL, for a number that is already multiplied by
 * 10^decimals: not negative, below 10000, of two decimals at the most, and not so near to a half
 * that the last bits of a product could tell. Returns its end; NULL for any other, with nothing of
 * use at `to`. */
static inline char *number_of_raised(double raised, int decimals, char decimal_mark, char *to)
{
    static const double limit = 1e6, near = 1e-6;
    double magnitude = raised + 0.5;
    if (!(raised >= 0 && magnitude < limit))
        return NULL;
    uint32_t units = (uint32_t)(int32_t)magnitude;
    uint32_t whole = decimals == 0 ? units : decimals == 1 ? units / 10 : units / 100;
    if (!(fabs(magnitude - (int32_t)units - 0.5) < 0.5 - near) || whole >= 10000 || decimals > 2)
        return NULL;
    uint32_t rest = whole;
    if (whole >= 100) {
        uint32_t hundreds = whole / 100;
        rest = whole % 100;
        if (hundreds >= 10)
            to = number_pair(hundreds, to);
        else
            *to++ = (char)('0' + hundreds);
    }
    if (whole >= 10)
        to = number_pair(rest, to);
    else
        *to++ = (char)('0' + rest);
    if (decimals > 0)
        *to++ = decimal_mark;
    if (decimals == 1)
        *to++ = (char)('0' + (units - whole * 10));
    else if (decimals == 2)
        to = number_pair(units - whole * 100, to);
    return to;
}

#endif
