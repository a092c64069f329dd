/* The formats that there are, for the list in writer.c. */
#ifndef TYRESUM_OUTPUT_FORMATS_H
#define TYRESUM_OUTPUT_FORMATS_H

#include <math.h>

#include "output/writer.h"

extern const struct writer_functions writer_table, writer_csv, writer_json, writer_markdown;

/* No writer prints an unknown value as a number, even if one gets this far. */
static inline bool cell_is_absent(const struct cell *cell)
{
    return cell->kind == CELL_ABSENT || cell->kind == CELL_OBJECT ||
           (cell->kind == CELL_NUMBER && !isfinite(cell->value));
}

#endif
