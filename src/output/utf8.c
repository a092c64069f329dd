#include "output/utf8.h"

#include "output/width_ranges.h"

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
