#include "size/quantity_text.h"

#include <stdarg.h>
#include <stdio.h>

#include "base/utf8.h"

enum { DIGITS_MAX = 15, QUOTE_MAX = 40 };

static const double power_of_ten[DIGITS_MAX + 1] = {1,   1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                                    1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

size_t decimal_read(struct span text, double *value)
{
    size_t at = 0;
    bool negative = false;
    if (at < text.length && (text.at[at] == '-' || text.at[at] == '+'))
        negative = text.at[at++] == '-';
    long long integer = 0;
    int digits = 0, after_point = 0;
    bool point = false;
    for (; at < text.length; at++) {
        char c = text.at[at];
        if (c == '.' && !point && digits > 0 && at + 1 < text.length && is_digit(text.at[at + 1])) {
            point = true;
            continue;
        }
        if (!is_digit(c))
            break;
        if (++digits > DIGITS_MAX)
            return 0;
        integer = integer * 10 + (c - '0');
        after_point += point;
    }
    if (digits == 0)
        return 0;
    double magnitude = (double)integer / power_of_ten[after_point];
    *value = negative && integer != 0 ? -magnitude : magnitude;
    return at;
}

static bool fail(struct quantity_error *error, struct span text, size_t start, const char *format,
                 ...) __attribute__((format(printf, 4, 5)));

static bool fail(struct quantity_error *error, struct span text, size_t start, const char *format,
                 ...)
{
    size_t length = count_characters(span_from(text, start));
    error->column = count_characters((struct span){text.at, start}) + 1;
    error->length = length == 0 ? 1 : length;
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(error->message, sizeof error->message, format, arguments);
    va_end(arguments);
    return false;
}

/* A text as it is shown, its beginning where it is long. */
#define QUOTE(text)                                                                                \
    shown_write((struct span){(text).at, utf8_cut(text, QUOTE_MAX)},                               \
                (char[SHOWN_BYTES_MAX * QUOTE_MAX + 1]){0})

/* Why the head of a text is no number, said in the way that helps. */
static bool not_a_number(struct quantity_error *error, struct span text, enum unit_kind kind)
{
    bool negative = text.length > 0 && text.at[0] == '-';
    bool sign = negative || (text.length > 0 && text.at[0] == '+');
    struct span number = span_from(text, sign);
    if (number.length > 1 && number.at[0] == '.' && is_digit(number.at[1]))
        return fail(error, text, 0,
                    "\"%s\" begins with a point; write a digit before it, such as %s0%s",
                    QUOTE(text), negative ? "-" : "", QUOTE(number));
    size_t digits = 0;
    while (digits < number.length && (is_digit(number.at[digits]) || number.at[digits] == '.'))
        digits++;
    if (digits > DIGITS_MAX)
        return fail(error, text, 0, "this number has more than %d digits; fewer are expected",
                    DIGITS_MAX);
    return fail(error, text, 0, "\"%s\" is not %s; expected a plain decimal number, such as %s",
                QUOTE(text), unit_kind_name(kind), unit_kind_example(kind));
}

static bool check_unit(struct span text, size_t start, struct span name, enum unit_kind kind,
                       struct quantity *out, struct quantity_error *error)
{
    const char *what = unit_kind_name(kind), *example = unit_kind_example(kind);
    if (name.at[0] == ',' || name.at[0] == '.')
        return fail(error, text, start,
                    "\"%s\" is not a plain decimal number; write a decimal point, such as %s",
                    QUOTE(text), example);
    if (is_digit(name.at[0]) || name.at[0] == '_' || name.at[0] == ':' ||
        (upper_case(name.at[0]) == 'E' && name.length > 1 && !is_letter(name.at[1])) ||
        (upper_case(name.at[0]) == 'X' && name.length > 1))
        return fail(error, text, start,
                    "\"%s\" is not a plain decimal number; expected %s, such as %s", QUOTE(text),
                    what, example);
    if (kind == KIND_BARE)
        return fail(error, text, start,
                    "\"%s\" follows a number that takes no unit; expected %s, such as %s",
                    QUOTE(name), what, example);
    enum unit_id unit = unit_find(name);
    if (unit == UNIT_COUNT) {
        const char *near = unit_nearest(name, kind);
        return fail(error, text, start,
                    "the unit \"%s\" is not known; expected %s, such as %s%s%s%s", QUOTE(name),
                    what, example, near ? " (nearest unit: " : "", near ? near : "",
                    near ? ")" : "");
    }
    if (unit_table[unit].kind != kind)
        return fail(error, text, start, "\"%s\" is the unit of %s; expected %s, such as %s",
                    QUOTE(name), unit_kind_name(unit_table[unit].kind), what, example);
    out->unit = unit;
    return true;
}

bool quantity_parse(struct span text, enum unit_kind kind, struct quantity *out,
                    struct quantity_error *error)
{
    double value;
    size_t read = decimal_read(text, &value);
    if (read == 0)
        return not_a_number(error, text, kind);
    size_t start = read;
    while (start < text.length && is_blank(text.at[start]))
        start++;
    struct span name = {text.at + start, text.length - start};
    while (name.length > 0 && is_blank(name.at[name.length - 1]))
        name.length--;
    if (name.length == 0) {
        if (kind != KIND_BARE)
            return fail(error, text, 0, "\"%s\" has no unit; expected %s, such as %s", QUOTE(text),
                        unit_kind_name(kind), unit_kind_example(kind));
        *out = (struct quantity){value, UNIT_BARE};
        return true;
    }
    if (!check_unit(text, start, name, kind, out, error))
        return false;
    if (unit_table[out->unit].reciprocal && value <= 0)
        return fail(error, text, 0, "\"%s\" must be above zero", QUOTE(text));
    out->si = unit_to_si(out->unit, value);
    return true;
}
