#include "tables/tables.h"

#include <math.h>
#include <string.h>

#include "tables/certainty.h"
#include "tables/tables_data.h"

size_t tables_count(void)
{
    return all_tables_count;
}

const struct table *table_at(size_t index)
{
    return index < all_tables_count ? &all_tables[index] : NULL;
}

const struct table *table_find(const char *name)
{
    for (size_t i = 0; i < all_tables_count; i++)
        if (strcmp(all_tables[i].name, name) == 0)
            return &all_tables[i];
    return NULL;
}

/* Digits of a whole number, at least so many, ending before `end`; returns their start. */
static char *digits_before(char *end, long long value, int least)
{
    for (; value > 0 || least > 0; value /= 10, least--)
        *--end = (char)('0' + value % 10);
    return end;
}

/* The shortest plain decimal. tablegen admits at most 15 digits, `decimals` of them behind the
 * point, so that value times that power of ten rounds to the very digits of the file. */
static size_t number_text(double value, int decimals, char text[TABLE_CELL_SIZE])
{
    char digits[24], *end = digits + sizeof digits, *from;
    size_t length = 0, count, whole;
    long long scaled;
    double power = 1;
    for (int i = 0; i < decimals; i++)
        power *= 10;
    scaled = llround(fabs(value) * power);
    for (; decimals > 0 && scaled % 10 == 0; decimals--)
        scaled /= 10;
    from = digits_before(end, scaled, decimals + 1);
    count = (size_t)(end - from);
    whole = count - (size_t)decimals;
    if (value < 0)
        text[length++] = '-';
    memcpy(text + length, from, whole);
    length += whole;
    if (decimals > 0) {
        text[length++] = '.';
        memcpy(text + length, from + whole, (size_t)decimals);
        length += (size_t)decimals;
    }
    text[length] = '\0';
    return length;
}

size_t table_cell(const struct table *table, size_t row, size_t column, char text[TABLE_CELL_SIZE])
{
    const struct table_column *description = &table->columns[column];
    const char *cell = (const char *)table->data + row * table->row_size + description->offset;
    double number = NAN;
    int integer;
    text[0] = '\0';
    switch (description->type) {
    case TABLE_TEXT:
        return strlen(strcpy(text, cell));
    case TABLE_INTEGER:
        memcpy(&integer, cell, sizeof integer);
        return integer < 0 ? 0 : number_text(integer, 0, text);
    case TABLE_NUMBER:
        memcpy(&number, cell, sizeof number);
    }
    return isnan(number) ? 0 : number_text(number, description->decimals, text);
}

static const char *const certainties[][2] = {
#define CERTAINTY_ROW(word, meaning) {word, meaning},
    CERTAINTIES(CERTAINTY_ROW)
#undef CERTAINTY_ROW
};
enum { CERTAINTY_COUNT = sizeof certainties / sizeof *certainties };

const char *certainty_word(size_t index)
{
    return index < CERTAINTY_COUNT ? certainties[index][0] : NULL;
}

const char *certainty_meaning(size_t index)
{
    return index < CERTAINTY_COUNT ? certainties[index][1] : NULL;
}

/* The words differ in their first letters. */
bool certainty_is_memory(const char *word)
{
    return word[0] == certainties[CERTAINTY_COUNT - 1][0][0];
}

bool table_certain_by_row(const struct table *table)
{
    bool by_row = false;
    for (size_t i = 0; i < table->column_count && !by_row; i++)
        by_row = strcmp(table->columns[i].name, "certainty") == 0;
    return by_row;
}
