/* What must hold of every text, be it a designation or not. Shared by the unit tests and the
 * fuzzer: each reports what is broken in its own way. */
#ifndef TYRESUM_TESTS_DESIGNATION_PROPERTY_H
#define TYRESUM_TESTS_DESIGNATION_PROPERTY_H

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#include "size/designation.h"

/* Whether the second byte goes with the first (Unicode Standard, Table 3-7): no overlong form, no
 * surrogate, nothing beyond U+10FFFF. */
static inline bool property_goes_on(unsigned char first, unsigned char second)
{
    return first == 0xE0   ? second >= 0xA0
           : first == 0xED ? second < 0xA0
           : first == 0xF0 ? second >= 0x90
           : first == 0xF4 ? second < 0x90
                           : true;
}

/* Characters as an editor counts them: a byte that is no UTF-8 counts as one. */
static inline size_t property_characters(const unsigned char *text, size_t size)
{
    size_t count = 0;
    for (size_t i = 0; i < size; count++) {
        size_t follow = text[i] >= 0xF0 && text[i] <= 0xF4   ? 3
                        : text[i] >= 0xE0 && text[i] <= 0xEF ? 2
                        : text[i] >= 0xC2 && text[i] <= 0xDF ? 1
                                                             : 0;
        size_t have = 0;
        while (have < follow && i + have + 1 < size && (text[i + have + 1] & 0xC0) == 0x80 &&
               (have > 0 || property_goes_on(text[i], text[i + 1])))
            have++;
        i += have == follow ? follow + 1 : 1;
    }
    return count;
}

/* How often each digit but 0 stands in a text: no spelling may lose or invent one. */
static inline void property_count_digits(const char *text, size_t size, int counts[10])
{
    memset(counts, 0, 10 * sizeof counts[0]);
    for (size_t i = 0; i < size; i++)
        if (text[i] > '0' && text[i] <= '9')
            counts[text[i] - '0']++;
}

static inline bool property_has_half(const char *text, size_t size)
{
    for (size_t i = 0; i + 1 < size; i++)
        if (memcmp(text + i, "\xC2\xBD", 2) == 0)
            return true;
    return false;
}

static inline const char *property_of_error(const char *text, size_t size,
                                            const struct designation_error *error)
{
    size_t characters = property_characters((const unsigned char *)text, size);
    if (error->column < 1 || error->column > characters + 1)
        return "the error's column lies outside the text";
    if (error->length < 1 || error->column + error->length > characters + 2)
        return "the error's length reaches beyond the text";
    if (memchr(error->message, '\0', sizeof error->message) == NULL)
        return "the message does not end";
    size_t length = strlen(error->message);
    if (length >= sizeof error->message - 1)
        return "the message was cut";
    const char *expected = strstr(error->message, "; expected ");
    if (expected == NULL || expected == error->message || strlen(expected) <= strlen("; expected "))
        return "the message does not say what is wrong and what was expected";
    for (size_t i = 0; i < length; i++)
        if ((unsigned char)error->message[i] < ' ')
            return "the message holds a control character";
    return NULL;
}

static inline const char *property_of_reading(const char *text, size_t size,
                                              const struct designation *read)
{
    char canonical[DESIGNATION_CANONICAL_SIZE], again[DESIGNATION_CANONICAL_SIZE];
    size_t length = designation_canonical(read, canonical);
    if (length >= sizeof canonical || strlen(canonical) != length)
        return "the canonical spelling's length is wrong";
    struct designation reread;
    struct designation_error error;
    if (!designation_parse((struct span){canonical, length}, &reread, &error))
        return "the canonical spelling is not read";
    if (!designation_equal(read, &reread))
        return "the canonical spelling is another tyre";
    designation_canonical(&reread, again);
    if (strcmp(canonical, again) != 0)
        return "the canonical spelling has another canonical spelling";
    int digits_written[10], digits_spelled[10];
    property_count_digits(text, size, digits_written);
    property_count_digits(canonical, length, digits_spelled);
    if (memcmp(digits_written, digits_spelled, sizeof digits_written) != 0 &&
        !property_has_half(text, size))
        return "a part of the text was not read";
    return NULL;
}

/* NULL where all holds, else what is broken. */
static inline const char *property_broken(const char *text, size_t size)
{
    struct designation read;
    struct designation_error error;
    memset(&error, 'x', sizeof error);
    if (designation_parse((struct span){text, size}, &read, &error))
        return property_of_reading(text, size, &read);
    return property_of_error(text, size, &error);
}

#endif
