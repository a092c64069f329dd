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

/* Without a getter: a text that the input brings along. The row's first member is then the array of
 * them, and `decimals` the text's place there. */
struct column {
    const char *name;    /* metric */
    const char *name_us; /* NULL: one unit only */
    const char *title;
    enum unit_id unit, unit_us;
    int decimals, decimals_us;
    enum column_kind kind;
    int width, priority;
    struct column_value (*get)(const void *row, bool us);
};

/* A column in one of its two units. */
struct chosen_column {
    const struct column *column;
    bool us;
};

struct column_choice {
    struct chosen_column *items;
    struct heading *headings;
    size_t count;
};

/* The columns that the options ask for. False with a message where --columns names none. */
bool columns_choose(struct arena *arena, const struct column *columns, size_t count,
                    const struct options *options, struct column_choice *out);

/* The cells of one row; cells must hold choice->count. */
void columns_fill(const struct column_choice *choice, const void *row, struct cell *cells);

#endif
