/* Generic access to the reference tables, which the CSV files of tables/ hold and tablegen
 * compiles in. Typed look-ups are in lookup.h, the row structures in the generated
 * tables_data.h. Everything here is constant: no start-up, no allocation, no locale. */
#ifndef TYRESUM_TABLES_TABLES_H
#define TYRESUM_TABLES_TABLES_H

#include <stdbool.h>
#include <stddef.h>

enum table_type {
    TABLE_INTEGER, /* int in the row; -1 where the cell is empty */
    TABLE_NUMBER,  /* double in the row; UNKNOWN (NaN) where the cell is empty */
    TABLE_TEXT     /* char array in the row, ends in NUL */
};

enum {
    TABLE_NAME_SIZE = 40,
    TABLE_DECIMALS_MAX = 9,
    TABLE_CELL_SIZE = 512 /* room for any cell of any table with its NUL; tablegen sees to it */
};

/* Name and type of a column, and where its field stands in a row. Units are in the name. */
struct table_column {
    char name[TABLE_NAME_SIZE];
    enum table_type type;
    size_t offset;
    int decimals; /* numbers: most decimals that any cell of the file has */
};

struct table {
    const char *name, *title, *source, *edition;
    const char *certainty; /* a word of certainty.h */
    const char *note;      /* one note a line, no newline at the end; empty where there is none */
    size_t rows, row_size;
    const void *data; /* struct NAME_row[rows] */
    size_t column_count;
    const struct table_column *columns;
};

/* All tables, ordered by name. */
size_t tables_count(void);
const struct table *table_at(size_t index); /* NULL past the end */

/* The words for how sure a figure is, the surest first, and what each says; NULL past the end. */
const char *certainty_word(size_t index);
const char *certainty_meaning(size_t index);

/* Whether a row's word is the least sure of them: from memory. */
bool certainty_is_memory(const char *word);

/* Whether the table says row by row how sure it is; its own word is then that of the least sure. */
bool table_certain_by_row(const struct table *table);

/* The table of that name, NULL where there is none. */
const struct table *table_find(const char *name);

/* The cell's text exactly as the CSV file has it, with a NUL; returns its length. The row and
 * the column must exist. */
size_t table_cell(const struct table *table, size_t row, size_t column, char text[TABLE_CELL_SIZE]);

#endif
