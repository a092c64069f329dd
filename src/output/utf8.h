/* Characters of UTF-8 text, checked, and the room they take on a terminal. */
#ifndef TYRESUM_OUTPUT_UTF8_H
#define TYRESUM_OUTPUT_UTF8_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include "base/span.h"
#include "output/eight.h"

#define UTF8_REPLACEMENT "\xEF\xBF\xBD" /* U+FFFD */

struct utf8_character {
    uint32_t code;
    size_t length; /* in bytes, at least 1 */
    bool valid;    /* false: these bytes are to be replaced by one U+FFFD */
};

/* The first character of a text that is not empty. What is ill-formed is cut as the Unicode
 * Standard, section 3.9, "U+FFFD Substitution of Maximal Subparts", recommends. */
struct utf8_character utf8_first(struct span text);

/* Bytes at the start that are ASCII, eight at a time while there are so many; each takes the room
 * of one character. */
static inline size_t utf8_ascii_length(struct span text)
{
    size_t length = 0;
    while (length + 8 <= text.length && !any_beyond_ascii(eight_at(text.at + length)))
        length += 8;
    while (length < text.length && (unsigned char)text.at[length] < 0x80)
        length++;
    return length;
}

/* 0 for combining and other invisible characters, 2 for wide ones, 1 for all others. */
size_t utf8_width(uint32_t code);

#endif
