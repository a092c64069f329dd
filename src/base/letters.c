#include "base/letters.h"

enum { LETTERS = 26 };

const char *letters_of_number(struct arena *arena, size_t number)
{
    const char *text = "";
    for (; number > 0; number = (number - 1) / LETTERS)
        text = arena_format(arena, "%c%s", (char)('A' + (number - 1) % LETTERS), text);
    return text;
}

size_t number_of_letters(struct span text, size_t most)
{
    size_t number = 0, i = 0;
    for (; i < text.length && is_letter(text.at[i]) && number <= most; i++)
        number = number * LETTERS + (size_t)(upper_case(text.at[i]) - 'A') + 1;
    return i == text.length && number <= most ? number : 0;
}
