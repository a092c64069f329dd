/* Characters of UTF-8 text, checked, and the room they take on a terminal. */
#ifndef TYRESUM_BASE_UTF8_H
#define TYRESUM_BASE_UTF8_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/eight.h"
#include "base/span.h"

#define UTF8_REPLACEMENT "\xEF\xBF\xBD" /* U+FFFD */

struct utf8_character {
    uint32_t code;
    size_t length; /* in bytes, at least 1 */
    bool valid;    /* false: these bytes are to be replaced by one U+FFFD */
};

/* The first character of a text that is not empty. What is ill-formed is cut as the Unicode
 * Standard, section 3.9, "U+FFFD Substitution of Maximal Subparts", recommends. */
struct utf8_character utf8_first(struct span text);

/* Bytes at the start that are printable ASCII, eight at a time while there are so many; each takes
 * the room of one character. */
static inline size_t utf8_plain_length(struct span text)
{
    size_t length = 0;
    for (uint64_t bytes; length + 8 <= text.length; length += 8) {
        bytes = eight_at(text.at + length);
        if ((ascii_below(bytes, ' ') | ascii_is(bytes, 0x7F) | bytes) & EIGHT(0x80))
            break;
    }
    while (length < text.length && text.at[length] >= ' ' && text.at[length] < 0x7F)
        length++;
    return length;
}

/* Characters (not bytes) of a text. */
size_t count_characters(struct span text);

/* How much of a text fits in so many bytes, to the end of a character. */
size_t utf8_cut(struct span text, size_t bytes);

/* 0 for combining and other invisible characters, 2 for wide ones, 1 for all others. */
size_t utf8_width(uint32_t code);

/* Whether a text is not of one line: line ends and other control characters (C0, DEL and C1 of
 * ISO 6429; U+2028 and U+2029). */
bool holds_control_character(struct span text);

/* A character as a message or a terminal has it: what would steer the terminal or turn the line
 * round (Bidi_Control of Unicode), and what is no UTF-8, by its number, such as \x1B or \u202E. */
struct shown_character {
    char text[16];
    size_t length; /* of that text, in bytes */
    size_t width;
    size_t taken; /* bytes that it stands for */
    bool escaped;
};

/* The first character of a text that is not empty. */
struct shown_character shown_first(struct span text);

enum { SHOWN_BYTES_MAX = 4 }; /* for each byte of a text */

/* The whole text so, into room for SHOWN_BYTES_MAX times its length, and a NUL. */
char *shown_write(struct span text, char *out);

/* "UTF-16" or "UTF-32" where a text begins as such, with its mark or without, else NULL. */
const char *other_encoding(struct span text);

#endif
