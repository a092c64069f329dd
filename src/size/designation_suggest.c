#include "size/designation_suggest.h"

enum { TEXT_MAX = 60 };

struct slip {
    char text[TEXT_MAX + 1];
    size_t length;
};

static bool is_at(const struct slip *slip, size_t at, bool (*class)(char))
{
    return at < slip->length && class(slip->text[at]);
}

/* A letter between digits, or at the head before one, that looks like a digit. */
static void letters_for_digits(struct slip *slip)
{
    for (size_t i = 0; i < slip->length; i++) {
        bool beside = (i > 0 && is_at(slip, i - 1, is_digit)) || is_at(slip, i + 1, is_digit);
        char c = slip->text[i];
        if (beside && (c == 'O' || c == 'o'))
            slip->text[i] = '0';
        else if (beside && (c == 'I' || c == 'l'))
            slip->text[i] = '1';
    }
}

static void stars_and_commas(struct slip *slip)
{
    for (size_t i = 0; i < slip->length; i++)
        if (slip->text[i] == '*')
            slip->text[i] = 'x';
        else if (slip->text[i] == ',')
            slip->text[i] = '.';
}

static size_t end_of_digits(const struct slip *slip, size_t at)
{
    while (is_at(slip, at, is_digit))
        at++;
    return at;
}

/* 205-55-16, 205/55/16, 205 55 16, 205x55R16: three numbers with other marks between. */
static void marks_of_a_metric_size(struct slip *slip)
{
    size_t start = 0;
    while (start < slip->length && !is_digit(slip->text[start]))
        start++;
    size_t first = end_of_digits(slip, start), second = end_of_digits(slip, first + 1);
    if (first != start + 3 || second != first + 3 || !is_at(slip, second + 1, is_digit))
        return;
    slip->text[first] = '/';
    slip->text[second] = 'R';
}

/* "V91" for "91V", at the end. */
static void symbol_before_index(struct slip *slip)
{
    size_t end = slip->length, start = end;
    while (start > 0 && is_digit(slip->text[start - 1]))
        start--;
    if (end - start < 2 || end - start > 3 || start < 2 || !is_letter(slip->text[start - 1]) ||
        !is_blank(slip->text[start - 2]))
        return;
    char symbol = slip->text[start - 1];
    memmove(slip->text + start - 1, slip->text + start, end - start);
    slip->text[end - 1] = symbol;
}

bool designation_suggest(struct span text, char suggestion[DESIGNATION_CANONICAL_SIZE])
{
    static void (*const corrections[])(struct slip *) = {
        letters_for_digits, stars_and_commas, marks_of_a_metric_size, symbol_before_index};
    struct slip slip = {.length = text.length};
    if (text.length > TEXT_MAX)
        return false;
    memcpy(slip.text, text.at, text.length);
    for (size_t i = 0; i < sizeof corrections / sizeof corrections[0]; i++) {
        struct designation designation;
        struct designation_error error;
        corrections[i](&slip);
        struct span corrected = {slip.text, slip.length};
        if (designation_parse(corrected, &designation, &error)) {
            designation_canonical(&designation, suggestion);
            return true;
        }
    }
    return false;
}
