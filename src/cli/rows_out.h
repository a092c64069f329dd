/* From a command's rows to a writer in the format asked for, with the terminal's width. */
#ifndef TYRESUM_CLI_ROWS_OUT_H
#define TYRESUM_CLI_ROWS_OUT_H

#include <stdbool.h>

#include "base/status.h"
#include "cli/columns.h"
#include "cli/sink.h"
#include "output/writer.h"

struct rows_out {
    struct sink sink;
    struct writer writer;
    struct column_choice choice;
    struct cell *cells;
    /* A stream's table on a terminal has no room for a column of messages: each stands under its
     * row. NULL where the column is in the table, or there is none. */
    const struct chosen_column *error_below;
    bool page; /* of HTML: with a frame around its table */
    bool ended;
};

/* EXIT_COMPUTED to go on; otherwise, with a message, EXIT_INPUT_WRONG where --columns names none
 * of the columns, and EXIT_NOT_WRITTEN where the output cannot be opened. */
enum exit_status rows_begin(struct arena *arena, struct rows_out *out,
                            const struct options *options, const struct column *columns,
                            size_t count, bool streaming);
/* The same into a sink that is open already, which writer_end and no rows_end ends. */
bool rows_begin_in(struct arena *arena, struct rows_out *out, const struct options *options,
                   const struct column *columns, size_t count, struct sink *sink);
void rows_add(struct rows_out *out, const void *row);
/* Ends the table, for what stands below it. */
void rows_table_end(struct rows_out *out);
/* True where all was written. */
bool rows_end(struct rows_out *out, bool keep);

#endif
