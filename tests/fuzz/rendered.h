/* What must hold of everything that the program writes. Each function gives NULL where all holds,
 * otherwise what is broken. Written from the formats' standards, not from the writers. */
#ifndef TYRESUM_TESTS_FUZZ_RENDERED_H
#define TYRESUM_TESTS_FUZZ_RENDERED_H

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#include "base/span.h"
#include "base/utf8.h"

static inline bool rendered_is_letter_or_digit(char c)
{
    return is_letter(c) || is_digit(c) || c == '_';
}

/* Whether the word begins there, case ignored. */
static inline bool rendered_begins(struct span text, const char *word)
{
    size_t i = 0;
    while (word[i] != '\0' && i < text.length && (text.at[i] | 0x20) == word[i])
        i++;
    return word[i] == '\0';
}

/* Whether the word stands there by itself: "inf" in "-inf kPa", not in "info". */
static inline bool rendered_has_word(struct span text, const char *word)
{
    size_t length = strlen(word);
    for (size_t i = 0; i + length <= text.length; i++) {
        if ((text.at[i] | 0x20) != word[0] ||
            (i > 0 && rendered_is_letter_or_digit(text.at[i - 1])))
            continue;
        bool ends = i + length == text.length || !rendered_is_letter_or_digit(text.at[i + length]);
        if (ends && rendered_begins((struct span){text.at + i, text.length - i}, word))
            return true;
    }
    return false;
}

/* "-0", "-0.0" and so on, as a number by itself. */
static inline bool rendered_has_negative_zero(struct span text)
{
    for (size_t i = 0; i + 1 < text.length; i++) {
        if (text.at[i] != '-' || text.at[i + 1] != '0' ||
            (i > 0 && (rendered_is_letter_or_digit(text.at[i - 1]) || text.at[i - 1] == '.' ||
                       text.at[i - 1] == '-')))
            continue;
        size_t end = i + 2;
        if (end + 1 < text.length && (text.at[end] == '.' || text.at[end] == ',') &&
            is_digit(text.at[end + 1]))
            for (end++; end < text.length && text.at[end] == '0';)
                end++;
        if (end == text.length || !rendered_is_letter_or_digit(text.at[end]))
            return true;
    }
    return false;
}

static inline bool rendered_contains(struct span text, const char *wanted)
{
    for (; text.length > 0; text.at++, text.length--)
        if (rendered_begins(text, wanted))
            return true;
    return false;
}

/* No number that is none. What the input holds itself may come back, as somebody's name. */
static inline const char *rendered_numbers_broken(struct span text, struct span input)
{
    static const char *const words[] = {"nan", "inf", "infinity"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++)
        if (rendered_has_word(text, words[i]) && !rendered_contains(input, words[i]))
            return words[i];
    if (rendered_has_negative_zero(text) && !rendered_contains(input, "-0"))
        return "a negative zero";
    return NULL;
}

static inline bool rendered_is_utf8(struct span text)
{
    while (text.length > 0) {
        struct utf8_character character = utf8_first(text);
        if (!character.valid)
            return false;
        text.at += character.length;
        text.length -= character.length;
    }
    return true;
}

/* Number of digits at the head of the text. */
static inline size_t rendered_digits(struct span text)
{
    size_t count = 0;
    while (count < text.length && is_digit(text.at[count]))
        count++;
    return count;
}

/* RFC 8259, section 6: how much of the text is one number; 0 where it is none, or "-0". */
static inline size_t json_number(struct span text)
{
    size_t at = text.length > 0 && text.at[0] == '-';
    size_t whole = rendered_digits((struct span){text.at + at, text.length - at});
    if (whole == 0 || (whole > 1 && text.at[at] == '0'))
        return 0;
    bool zero = text.at[at] == '0';
    at += whole;
    if (at < text.length && text.at[at] == '.') {
        size_t decimals = rendered_digits((struct span){text.at + at + 1, text.length - at - 1});
        if (decimals == 0)
            return 0;
        for (size_t i = 1; i <= decimals; i++)
            zero = zero && text.at[at + i] == '0';
        at += decimals + 1;
    }
    if (zero && text.at[0] == '-')
        return 0;
    if (at < text.length && (text.at[at] == 'e' || text.at[at] == 'E')) {
        at++;
        at += at < text.length && (text.at[at] == '+' || text.at[at] == '-');
        size_t exponent = rendered_digits((struct span){text.at + at, text.length - at});
        return exponent == 0 ? 0 : at + exponent;
    }
    return at;
}

/* Section 7: how much of the text is one string; 0 where it is none. */
static inline size_t json_string(struct span text)
{
    if (text.length == 0 || text.at[0] != '"')
        return 0;
    for (size_t i = 1; i < text.length; i++) {
        if ((unsigned char)text.at[i] < 0x20)
            return 0;
        if (text.at[i] == '"')
            return i + 1;
        if (text.at[i] != '\\')
            continue;
        if (++i >= text.length || strchr("\"\\/bfnrtu", text.at[i]) == NULL)
            return 0;
    }
    return 0;
}

static inline size_t json_object(struct span text);

static inline size_t json_value(struct span text)
{
    if (text.length >= 4 && memcmp(text.at, "null", 4) == 0)
        return 4;
    if (text.length > 0 && text.at[0] == '{')
        return json_object(text);
    size_t string = json_string(text);
    return string > 0 ? string : json_number(text);
}

/* {"name":value,...}: how much of the text is one such object; 0 where it is none. */
static inline size_t json_object(struct span text)
{
    size_t at = 0;
    if (text.length < 2 || text.at[at++] != '{')
        return 0;
    for (;;) {
        size_t name = json_string((struct span){text.at + at, text.length - at});
        at += name;
        if (name == 0 || at >= text.length || text.at[at++] != ':')
            return 0;
        size_t value = json_value((struct span){text.at + at, text.length - at});
        at += value;
        if (value == 0 || at >= text.length)
            return 0;
        if (text.at[at] == '}')
            return at + 1;
        if (text.at[at++] != ',')
            return 0;
    }
}

/* Rows as json: in one array, or each in a line of its own. Counts the rows. */
static inline const char *json_broken(struct span text, bool lines, size_t *rows)
{
    *rows = 0;
    if (!rendered_is_utf8(text))
        return "json is not UTF-8";
    size_t at = 0;
    if (!lines && (text.length < 3 || text.at[at++] != '['))
        return "json does not begin as an array";
    while (at < text.length && text.at[at] != ']') {
        if (!lines && at + 1 < text.length && text.at[at] == '\n' && text.at[at + 1] == ']')
            break;
        at += !lines && *rows > 0 && text.at[at] == ',';
        at += !lines && at < text.length && text.at[at] == '\n';
        size_t object = json_object((struct span){text.at + at, text.length - at});
        at += object;
        if (object == 0 || (lines && (at == text.length || text.at[at++] != '\n')))
            return "a row of json is no object";
        ++*rows;
    }
    if (!lines && !span_is((struct span){text.at + at, text.length - at}, "\n]\n") &&
        !span_is((struct span){text.at + at, text.length - at}, "]\n"))
        return "json does not end as an array";
    return NULL;
}

/* RFC 4180: how much of the text is one field, quotes and all; its end is the separator or the
 * line's end. SIZE_MAX where it is wrongly quoted. */
static inline size_t csv_field_length(struct span text, char separator)
{
    size_t at = 0;
    if (text.length == 0 || text.at[0] != '"') {
        while (at < text.length && text.at[at] != separator && text.at[at] != '\n') {
            if (text.at[at] == '"' || text.at[at] == '\r')
                return (size_t)-1;
            at++;
        }
        return at;
    }
    for (at = 1; at < text.length; at++) {
        if (text.at[at] != '"')
            continue;
        if (at + 1 < text.length && text.at[at + 1] == '"')
            at++;
        else
            break;
    }
    if (at >= text.length)
        return (size_t)-1;
    at++;
    return at < text.length && text.at[at] != separator && text.at[at] != '\n' ? (size_t)-1 : at;
}

enum { CSV_FIELDS_MAX = 96 };

/* The fields of the record at the head of the text, as they stand. Gives the length with the line
 * feed behind it, which a line must have; 0 where it is no record. */
static inline size_t csv_record(struct span text, char separator, struct span *fields,
                                size_t *count)
{
    size_t at = 0;
    *count = 0;
    while (at <= text.length && *count < CSV_FIELDS_MAX) {
        struct span rest = {text.at + at, text.length - at};
        size_t length = csv_field_length(rest, separator);
        if (length == (size_t)-1)
            return 0;
        fields[(*count)++] = (struct span){rest.at, length};
        at += length;
        if (at >= text.length)
            return 0;
        if (text.at[at++] == '\n')
            return at;
    }
    return 0;
}

/* A plain decimal as csv has it: sign, digits, mark, digits; an exponent only far beyond what is
 * met; empty where absent. */
static inline bool csv_is_number(struct span field, char mark)
{
    if (field.length == 0)
        return true;
    size_t at = field.at[0] == '-';
    size_t whole = rendered_digits((struct span){field.at + at, field.length - at});
    at += whole;
    if (whole == 0)
        return false;
    if (at < field.length && field.at[at] == mark) {
        size_t decimals = rendered_digits((struct span){field.at + at + 1, field.length - at - 1});
        if (decimals == 0)
            return false;
        at += decimals + 1;
    }
    if (at < field.length && field.at[at] == 'e')
        return true;
    return at == field.length && !rendered_has_negative_zero(field);
}

#endif
