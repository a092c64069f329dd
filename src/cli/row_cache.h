/* Rows already written, by the line that they came from. A stock list of a million lines names a
 * few thousand sizes: a size met again is copied and not computed again. Memory is fixed; a row
 * depends on its line and the options alone, so a copy is what would be computed. */
#ifndef TYRESUM_CLI_ROW_CACHE_H
#define TYRESUM_CLI_ROW_CACHE_H

#include <stdbool.h>
#include <stdint.h>

#include "base/arena.h"
#include "base/span.h"
#include "output/outbuf.h"

struct row_cache;

struct row_cache *row_cache_new(struct arena *arena);

/* Where a line belongs; kept from the look-up to the store. */
uint64_t row_cache_key(struct span line);

/* Writes the row of a line met before. False where it was not. */
bool row_cache_write(const struct row_cache *cache, uint64_t key, struct span line,
                     struct outbuf *out);

/* Keeps a row that was just written: the text in out from `start` on. */
void row_cache_keep(struct row_cache *cache, uint64_t key, struct span line, struct span row);

#endif
