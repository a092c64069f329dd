#include "base/letters.h"

enum { LETTERS = 26 };

const char *letters_of_number(struct arena *arena, size_t number)
{
    const char *text = "";
    for (; number > 0; number = (number - 1) / LETTERS)
        text = arena_format(arena, "%c%s", (char)('A' + (number - 1) % LETTERS), text);
    return text;
}

size_t number_of_letters(const char *text, size_t most)
{
    size_t number = 0;
    for (; is_letter(*text) && number <= most; text++)
        number = number * LETTERS + (size_t)(upper_case(*text) - 'A') + 1;
    return *text == '\0' && number <= most ? number : 0;
}
