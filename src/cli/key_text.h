/* What a key of the build file takes, in words: for the manual and the list of keys. */
#ifndef TYRESUM_CLI_KEY_TEXT_H
#define TYRESUM_CLI_KEY_TEXT_H

#include "base/arena.h"
#include "build/keys.h"

/* "a length, or {front: ..., rear: ...}". */
const char *key_kind_text(struct arena *arena, const struct key *key);

/* ", 1000 to 9000 mm", or "". */
const char *key_range_text(struct arena *arena, const struct key *key);

/* All choices of an option or key, with a separator between. */
const char *joined(struct arena *arena, const char *const *choices, const char *separator);

#endif
