/* Fields of a CSV record (RFC 4180): separated by ',' or ';', quoted where need be. */
#ifndef TYRESUM_CLI_CSV_RECORD_H
#define TYRESUM_CLI_CSV_RECORD_H

#include <stdbool.h>
#include <stddef.h>

#include "base/span.h"

struct csv_shape {
    char separator;
    size_t fields;
};

/* Where the reading of a record stands. Only a quote that begins a field opens it, so that a rim of
 * 17" in a field without quotes is text (RFC 4180, 2, rules 5 to 7). */
struct csv_place {
    bool within; /* a field that began with a quote */
    bool open;   /* that quote is not closed */
    bool inside; /* behind a field's first byte */
};

static inline void csv_step(struct csv_place *place, char byte, bool separates)
{
    if (byte == '"' && (place->within || !place->inside)) {
        place->within = place->inside = true;
        place->open = !place->open; /* a doubled one closes and opens again */
    } else if (separates && !place->open) {
        *place = (struct csv_place){false, false, false};
    } else {
        place->inside = true;
    }
}

/* By the heading: ';' where it has more of those outside quotes than of ',' or tabs. */
struct csv_shape csv_shape_of(struct span header);

/* Whether a quote is not closed. Of records as they are read from a stream (stream.h) only the
 * last, which has no line end, can be so. */
bool csv_quote_open(struct span record, const struct csv_shape *shape);

size_t csv_count_fields(struct span record, const struct csv_shape *shape);

/* Bytes of the first so many fields with the separators between them; all of a record that has no
 * more. */
size_t csv_length_of_fields(struct span record, const struct csv_shape *shape, size_t fields);

/* The text of a field without its quotes, in `out`: cut to size - 1 bytes, and a NUL. Nowhere
 * (NULL) where the record has no such field. */
struct span csv_field_cut(struct span record, const struct csv_shape *shape, size_t index,
                          char *out, size_t size);

/* The first field, which is taken off the rest of a record: for all of them in turn, where
 * csv_field_cut would begin at the first each time. out must hold the rest's length + 1. */
struct span csv_next_field(struct span *rest, const struct csv_shape *shape, char *out);

#endif
