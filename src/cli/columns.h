/* Columns of a command's rows: name, unit, decimals and getter in one row of one table, for both
 * unit systems. From it come the headings, the choice by --columns, and the cells. */
#ifndef TYRESUM_CLI_COLUMNS_H
#define TYRESUM_CLI_COLUMNS_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/units.h"
#include "cli/options.h"
#include "output/writer.h"

/* What a getter gives: a text, or an SI value (UNKNOWN: absent), or an object; of a column that
 * holds either the text, and the value where there is none. */
struct column_value {
    const char *text;             /* of a text column; NULL: absent */
    const struct member *members; /* of an object column; NULL: absent */
    double value;
    int decimals; /* used where own_decimals is set: the rows of the column differ */
    bool own_decimals;
};

enum column_kind {
    COLUMN_NUMBER,
    COLUMN_TEXT,
    COLUMN_OBJECT, /* of json alone */
    COLUMN_EITHER  /* a number or a text */
};

/* Where a row has the value ready, `get` is NULL and `at` is its offset: a double in SI (`at_us`
 * where the other system has another), or a struct span. `needs` are bits of the command's own, for
 * what it makes only where a column asks for it; what only `at_us` needs is the bit above. */
struct column {
    const char *name;    /* metric */
    const char *name_us; /* NULL: one unit only */
    const char *title;
    enum unit_id unit : 8, unit_us : 8;
    signed char decimals, decimals_us;
    enum column_kind kind : 8;
    unsigned char width;
    signed char priority;
    struct column_value (*get)(const void *row, bool us);
    unsigned at, at_us;
    unsigned needs;
};

/* As `needs`: the row's first member is an array of texts that the input brings along, and
 * `at` the text's place there. */
enum { COLUMN_BROUGHT = 1u << 30 };
/* And: only where the build has what it tells of. */
enum { COLUMN_SOMETIMES = 1u << 29 };
/* And: `at` has the address of a text that many rows share, or none. */
enum { COLUMN_SHARED = 1u << 28 };
/* And: `at` has a word. */
enum { COLUMN_WORD = 1u << 27 };

/* A short text that csv needs no quotes for and json no escapes; of fixed size, and so copied at
 * once.
 */
enum { WORD_SIZE = 16 };
struct word {
    char text[WORD_SIZE - 1];
    unsigned char length;
};

/* It stays as it is while rows are written; and as the run's one writer wrote it, once it has. */
struct shared_text {
    struct span text, written;
};

/* The last initializers of a column that its getter makes. */
#define GET(getter) getter, 0, 0, 0

/* A column in one of its two units. */
struct chosen_column {
    enum {
        READY_NOT,
        READY_NUMBER,
        READY_TEXT,
        READY_WORD,
        READY_SHARED,
        READY_CASE,
        READY_BROUGHT,
        READY_LEFT_OUT
    } ready;
    /* How its csv is made: of a ready number, by its decimals; PUT_CELL for what is not common. */
    enum { PUT_UNITS, PUT_TENTHS, PUT_HUNDREDTHS, PUT_TEXT, PUT_WORD, PUT_SHARED, PUT_CELL } put;
    const struct column *column;
    bool us;
    enum unit_id unit;
    int decimals;
    size_t at;
    double raise; /* of a ready number: makes from SI what number_of_raised() takes */
};

struct column_choice {
    struct chosen_column *items;
    struct heading *headings;
    size_t count;
    unsigned needs;        /* of them all */
    const char *case_name; /* what the column `case` says, of several builds */
};

/* The columns that the options ask for. False with a message where --columns names none. */
bool columns_choose(struct arena *arena, const struct column *columns, size_t count,
                    const struct options *options, struct column_choice *out);

/* Its cells are absent from here on, and nothing is made for it alone. */
void columns_leave_out(struct column_choice *choice, size_t index);

/* The cell of one column; and those of a row: cells must hold choice->count. */
struct cell column_cell(const struct column_choice *choice, const struct chosen_column *chosen,
                        const void *row);
void columns_fill(const struct column_choice *choice, const void *row, struct cell *cells);

#endif
