/* Number text without locale. The one rounding rule of the program is here: half away from
 * zero, where a value within 1e-9 of a half in the last place (binary noise of a decimal
 * figure) counts as the half. */
#ifndef TYRESUM_OUTPUT_NUMBER_H
#define TYRESUM_OUTPUT_NUMBER_H

#include <stddef.h>

enum { NUMBER_SIZE = 40, NUMBER_DECIMALS_MAX = 9 };

/* value rounded to so many decimals, by the rule above. */
double round_to_decimals(double value, int decimals);

/* Decimals without which it is another number, at most so many. */
int number_decimals(double value, int most);

/* "-12.50"; never "-0", never an exponent; magnitudes past 1e15 are cut to significant digits
 * and still written plainly. The value must be finite. Returns the length; text ends in NUL. */
size_t number_fixed(double value, int decimals, char decimal_mark, char text[NUMBER_SIZE]);

/* Up to ten significant digits, shortest (no trailing zeros), plain or with exponent as JSON
 * allows it, never "-0". The value must be finite. */
size_t number_significant(double value, char text[NUMBER_SIZE]);

#endif
