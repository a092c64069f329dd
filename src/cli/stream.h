/* A stream of lines, or of CSV records, in constant memory; and designations from arguments. */
#ifndef TYRESUM_CLI_STREAM_H
#define TYRESUM_CLI_STREAM_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/span.h"
#include "cli/csv_record.h"
#include "output/outbuf.h"
#include "size/designation_loose.h"

enum stream_kind {
    STREAM_LINES,
    STREAM_RECORDS /* RFC 4180: a line end within quotes does not end the record */
};

/* One line or record as it came, and what ended it: "\n", "\r\n" or nothing at the end. */
struct stream_item {
    struct span text, line_end;
    struct csv_shape shape; /* of records: the heading's */
    bool cut; /* longer than is read: only its beginning is here, the rest is passed over */
};

enum { STREAM_BUFFER = 2 * 1024 * 1024 };

/* Calls take for every item, in order, a byte order mark at the very start left out. Flushes at
 * each read where out is a terminal or eager. Ends early where take returns false or out has
 * failed. False with a message where the input cannot be read, which it calls by the name. */
bool stream_items(int descriptor, const char *name, enum stream_kind kind, struct outbuf *out,
                  bool (*take)(const struct stream_item *item, void *context), void *context);

/* Why an argument is no designation, with its place, to standard error. `name` is how messages call
 * it, such as "argument 2". */
void argument_unread(struct arena *arena, const char *text, const char *name,
                     const struct designation_error *error);

#endif
