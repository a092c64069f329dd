/* A row out for every line in: `size -` and `compare -`, from lines or from a column of a CSV
 * whose other columns pass through untouched. */
#ifndef TYRESUM_CLI_ROW_STREAM_H
#define TYRESUM_CLI_ROW_STREAM_H

#include "base/status.h"
#include "cli/rows_out.h"
#include "size/designation.h"

struct row_stream;

/* Adds the row of one designation with rows_add; false where it could not be read, after adding
 * a row that says why. */
typedef bool (*row_filler)(struct span designation, struct rows_out *rows, void *context);

/* Runs the whole stream from standard input and says at the end how much could not be read. A row
 * that costs more to compute than to look up is remembered by its line where `remember` is set. */
enum exit_status row_stream_run(struct arena *arena, const struct options *options,
                                const struct column *columns, size_t count, row_filler fill,
                                void *context, bool remember);

/* The line as its row quotes it, and "column N: why". */
enum { UNREAD_SIZE = 2 * DESIGNATION_LENGTH_MAX, UNREAD_MESSAGE_SIZE = 400 };
void unread_text(struct span line, const struct designation_error *error, char unread[UNREAD_SIZE],
                 char message[UNREAD_MESSAGE_SIZE]);

#endif
