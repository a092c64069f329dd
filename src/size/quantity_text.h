/* "2917 mm", "35 psi", "-820 mm", "4 %": a plain decimal number and a unit. */
#ifndef TYRESUM_SIZE_QUANTITY_TEXT_H
#define TYRESUM_SIZE_QUANTITY_TEXT_H

#include <stdbool.h>

#include "base/span.h"
#include "base/units.h"

struct quantity_error {
    size_t column, length; /* in characters, from 1, within the text */
    char message[480];
};

struct quantity {
    double si;
    enum unit_id unit; /* as written */
};

/* Reads a plain decimal (sign, digits, point, digits; at most 15 digits) from the head of the
 * text. Returns the bytes read, 0 where the text does not begin with one. Correctly rounded:
 * the digits make an integer below 10^15, divided by a power of ten below 10^15. */
size_t decimal_read(struct span text, double *value);

/* The whole text as a quantity of that kind, in SI. KIND_BARE reads a number without unit. */
bool quantity_parse(struct span text, enum unit_kind kind, struct quantity *out,
                    struct quantity_error *error);

#endif
