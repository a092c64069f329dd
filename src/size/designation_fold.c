/* Folding of the text before it is scanned, and the making of faults. */
#include "size/designation_internal.h"

#include <stdarg.h>
#include <stdio.h>

#include "base/utf8.h"

static char folded_beyond_ascii(const unsigned char *text, size_t size)
{
    if (size == 2 && text[0] == 0xC3 && text[1] == 0x97) /* multiplication sign */
        return 'X';
    if (size == 2 && text[0] == 0xC2 && text[1] == 0xA0) /* no-break space */
        return ' ';
    if (size == 2 && text[0] == 0xC2 && text[1] == 0xBD) /* one half */
        return FOLDED_HALF;
    if (size == 3 && text[0] == 0xE2 && text[1] == 0x80) {
        if (text[2] >= 0x90 && text[2] <= 0x95) /* hyphens and dashes U+2010 to U+2015 */
            return '-';
        if (text[2] == 0x89 || text[2] == 0xAF) /* thin and narrow no-break space */
            return ' ';
    }
    if (size == 3 && text[0] == 0xE2 && text[1] == 0x88 && text[2] == 0x92) /* minus sign */
        return '-';
    return FOLDED_FOREIGN;
}

static char folded_ascii(unsigned char c)
{
    if (c >= 'a' && c <= 'z')
        return (char)(c - 'a' + 'A');
    if (c == '\t')
        return ' ';
    return c < ' ' || c == 0x7F ? FOLDED_FOREIGN : (char)c;
}

bool scanner_fold(struct scanner *scanner)
{
    const unsigned char *from = (const unsigned char *)scanner->source.at;
    size_t left = scanner->source.length;
    char *to = scanner->text, *end = scanner->text + DESIGNATION_LENGTH_MAX;
    while (left > 0 && to < end) {
        size_t size = 1;
        if (*from < 0x80) {
            *to++ = folded_ascii(*from);
        } else {
            size = utf8_first((struct span){(const char *)from, left}).length;
            *to++ = folded_beyond_ascii(from, size);
        }
        from += size;
        left -= size;
    }
    *to = '\0';
    scanner->at = scanner->text;
    if (left == 0)
        return true;
    scanner->at = end;
    return fault_between(
        scanner, end, end,
        "the text is too long for a size designation; expected at most %d characters",
        DESIGNATION_LENGTH_MAX);
}

static bool fault(struct scanner *scanner, const char *from, const char *to, const char *format,
                  va_list arguments)
{
    scanner->error->column = (size_t)(from - scanner->text) + 1;
    scanner->error->length = to > from ? (size_t)(to - from) : 1;
    vsnprintf(scanner->error->message, sizeof scanner->error->message, format, arguments);
    return false;
}

bool fault_between(struct scanner *scanner, const char *from, const char *to, const char *format,
                   ...)
{
    va_list arguments;
    va_start(arguments, format);
    fault(scanner, from, to, format, arguments);
    va_end(arguments);
    return false;
}

struct span written_between(const struct scanner *scanner, const char *from, const char *to)
{
    struct span left = scanner->source;
    const char *begin = left.at;
    for (const char *folded = scanner->text; folded < to; folded++) {
        if (folded == from)
            begin = left.at;
        left = span_from(left, utf8_first(left).length);
    }
    return (struct span){begin, (size_t)(left.at - begin)};
}

/* The digit that a letter is commonly mistaken for where digits stand beside it, else 0. */
static char digit_meant(const struct scanner *scanner)
{
    const char *at = scanner->at;
    bool beside = is_digit(at[1]) || (at > scanner->text && is_digit(at[-1]));
    return !beside ? 0 : *at == 'O' ? '0' : *at == 'I' ? '1' : 0;
}

bool fault_expected(struct scanner *scanner, const char *expected)
{
    const char *at = scanner->at;
    if (*at == '\0')
        return fault_between(scanner, at, at, "the text ends here; expected %s", expected);
    struct span written = written_between(scanner, at, at + 1);
    unsigned char first = (unsigned char)written.at[0];
    if (first == ' ' || first == '\t')
        return fault_between(scanner, at, at, "a blank stands here; expected %s", expected);
    if (holds_control_character(written))
        return fault_between(scanner, at, at, "the control character %s stands here; expected %s",
                             shown_first(written).text, expected);
    if (digit_meant(scanner) != 0)
        return fault_between(scanner, at, at,
                             "the letter %c stands here among digits; expected the digit %c, or %s",
                             first, digit_meant(scanner), expected);
    if (!utf8_first(written).valid)
        return fault_between(scanner, at, at,
                             "a byte that is not UTF-8 text stands here; expected %s", expected);
    return fault_between(scanner, at, at, "'%s' stands here; expected %s",
                         shown_first(written).text, expected);
}
