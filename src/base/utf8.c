#include "base/utf8.h"

#include <stdio.h>

#include "base/width_ranges.h"

static unsigned char byte_at(struct span text, size_t index)
{
    return (unsigned char)text.at[index];
}

/* How many bytes a first byte announces, 0 where none can start with it, and the range of the
 * second byte: Unicode Standard, table 3-7, "Well-Formed UTF-8 Byte Sequences". */
static size_t announced_length(unsigned char first, unsigned char *low, unsigned char *high)
{
    *low = 0x80;
    *high = 0xBF;
    if (first < 0xC2 || first > 0xF4)
        return 0;
    if (first == 0xE0)
        *low = 0xA0;
    else if (first == 0xED)
        *high = 0x9F;
    else if (first == 0xF0)
        *low = 0x90;
    else if (first == 0xF4)
        *high = 0x8F;
    return first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
}

struct utf8_character utf8_first(struct span text)
{
    unsigned char first = byte_at(text, 0), low, high;
    if (first < 0x80)
        return (struct utf8_character){first, 1, true};
    struct utf8_character character = {0xFFFD, 1, false};
    size_t length = announced_length(first, &low, &high);
    if (length == 0)
        return character;
    uint32_t code = first & (0x7Fu >> length);
    for (; character.length < length; character.length++) {
        if (character.length == text.length)
            return character;
        unsigned char next = byte_at(text, character.length);
        if (next < low || next > high)
            return character;
        code = code << 6 | (next & 0x3Fu);
        low = 0x80;
        high = 0xBF;
    }
    return (struct utf8_character){code, length, true};
}

static bool in_ranges(uint32_t code, const struct character_range *ranges, size_t count)
{
    while (count > 0) {
        size_t middle = count / 2;
        if (code < ranges[middle].first) {
            count = middle;
        } else if (code > ranges[middle].last) {
            ranges += middle + 1;
            count -= middle + 1;
        } else {
            return true;
        }
    }
    return false;
}

size_t utf8_width(uint32_t code)
{
    if (code < 0x300)
        return 1;
    if (in_ranges(code, invisible, sizeof invisible / sizeof invisible[0]))
        return 0;
    return in_ranges(code, wide, sizeof wide / sizeof wide[0]) ? 2 : 1;
}

size_t count_characters(struct span text)
{
    size_t count = utf8_plain_length(text); /* all of it, most often */
    text = span_from(text, count);
    for (; text.length > 0; count++)
        text = span_from(text, utf8_first(text).length);
    return count;
}

size_t utf8_cut(struct span text, size_t bytes)
{
    if (text.length <= bytes)
        return text.length;
    while (bytes > 0 && (byte_at(text, bytes) & 0xC0) == 0x80)
        bytes--;
    return bytes;
}

static bool is_control(uint32_t code)
{
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x2028 || code == 0x2029;
}

static bool turns_round(uint32_t code)
{
    return code == 0x61C || code == 0x200E || code == 0x200F ||
           (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

bool holds_control_character(struct span text)
{
    for (; text.length > 0; text = span_from(text, utf8_first(text).length))
        if (is_control(utf8_first(text).code))
            return true;
    return false;
}

struct shown_character shown_first(struct span text)
{
    struct utf8_character character = utf8_first(text);
    struct shown_character shown = {.taken = character.length};
    uint32_t code = character.code;
    shown.escaped = !character.valid || is_control(code) || turns_round(code);
    if (!shown.escaped) {
        memcpy(shown.text, text.at, character.length);
        shown.length = character.length;
        shown.width = utf8_width(code);
        return shown;
    }
    if (character.valid && code >= 0x80)
        shown.length = (size_t)snprintf(shown.text, sizeof shown.text, "\\u%04X", (unsigned)code);
    else
        for (size_t i = 0; i < character.length; i++)
            shown.length +=
                (size_t)sprintf(shown.text + shown.length, "\\x%02X", (unsigned)byte_at(text, i));
    shown.width = shown.length;
    return shown;
}

char *shown_write(struct span text, char *out)
{
    char *to = out;
    while (text.length > 0) {
        struct shown_character shown = shown_first(text);
        memcpy(to, shown.text, shown.length);
        to += shown.length;
        text = span_from(text, shown.taken);
    }
    *to = '\0';
    return out;
}

/* Text of ours is ASCII for the most part, whose upper bytes are NUL: always on the same side. */
const char *other_encoding(struct span text)
{
    enum { LOOKED_AT = 256 };
    if (text.length >= 4 &&
        (memcmp(text.at, "\xFF\xFE\0\0", 4) == 0 || memcmp(text.at, "\0\0\xFE\xFF", 4) == 0))
        return "UTF-32";
    if (text.length >= 2 &&
        (memcmp(text.at, "\xFF\xFE", 2) == 0 || memcmp(text.at, "\xFE\xFF", 2) == 0))
        return "UTF-16";
    size_t nul[4] = {0}, count = text.length < LOOKED_AT ? text.length / 4 : LOOKED_AT / 4;
    for (size_t i = 0; i < 4 * count; i++)
        nul[i % 4] += text.at[i] == '\0';
    if (count == 0)
        return NULL;
    bool upper_first = nul[0] == count && nul[3] == 0, upper_last = nul[3] == count && nul[0] == 0;
    if ((upper_first && nul[1] == count) || (upper_last && nul[2] == count))
        return "UTF-32";
    bool big_end = nul[0] + nul[2] >= count && nul[1] + nul[3] == 0,
         little_end = nul[1] + nul[3] >= count && nul[0] + nul[2] == 0;
    return big_end || little_end ? "UTF-16" : NULL;
}
