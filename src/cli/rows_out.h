/* From a command's rows to a writer in the format asked for, with the terminal's width. */
#ifndef TYRESUM_CLI_ROWS_OUT_H
#define TYRESUM_CLI_ROWS_OUT_H

#include <stdbool.h>

#include "cli/columns.h"
#include "cli/sink.h"
#include "output/writer.h"

struct rows_out {
    struct sink sink;
    struct writer writer;
    struct column_choice choice;
    struct cell *cells;
};

/* False with a message where columns or output are wrong. */
bool rows_begin(struct arena *arena, struct rows_out *out, const struct options *options,
                const struct column *columns, size_t count, bool streaming);
void rows_add(struct rows_out *out, const void *row);
/* True where all was written. */
bool rows_end(struct rows_out *out, bool keep);

#endif
