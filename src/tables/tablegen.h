/* What tablegen reads a table into, and writes it from. */
#ifndef TYRESUM_TABLES_TABLEGEN_H
#define TYRESUM_TABLES_TABLEGEN_H

#include <stdbool.h>
#include <stddef.h>

enum { COLUMNS_MAX = 24 };

enum type { INTEGER, NUMBER, TEXT, TYPE_COUNT };

enum field { TITLE, SOURCE, EDITION, CERTAINTY, FIELD_COUNT };
extern const char *const field_names[FIELD_COUNT];

struct column {
    char *name;
    enum type type;
    size_t length_max; /* text */
    size_t whole;      /* number: most digits before the point */
    int decimals;      /* number: most digits behind it */
};

struct table {
    const char *path;
    size_t line; /* being read, from 1 */
    char *name, *fields[FIELD_COUNT], *note;
    struct column columns[COLUMNS_MAX];
    size_t type_count, column_count, row_count;
    char **cells; /* row_count * column_count */
    bool key_unique, key_named;
};

/* Says what went wrong, and ends the program; so does grown() where memory is at its end. */
_Noreturn void fail(const char *path);
void *grown(void *memory, size_t size);

/* OUTDIR/tables_data.h and OUTDIR/tables_data.c. */
void write_header(const char *directory, const struct table *tables, size_t count);
void write_data(const char *directory, const struct table *tables, size_t count);

#endif
