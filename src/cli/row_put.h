/* A row straight into csv, markdown or json. */
#ifndef TYRESUM_CLI_ROW_PUT_H
#define TYRESUM_CLI_ROW_PUT_H

#include <stdbool.h>

#include "cli/columns.h"
#include "output/writer.h"

/* The same bytes as writer_row() of the row's cells, which are not made: what is ready in the row
 * is written at once. False, and nothing written, in another format and where it needs the cells.
 */
bool row_put(struct writer *writer, const struct column_choice *choice, const void *row);

#endif
