/* An example value for every key of the build file, for the template and the manual page. All
 * of them together make a build file that is understood. */
#ifndef TYRESUM_BUILD_KEY_EXAMPLES_H
#define TYRESUM_BUILD_KEY_EXAMPLES_H

#include <stdbool.h>

#include "base/arena.h"
#include "build/keys.h"

/* The example for the key at a path such as "tyres.fitted.wheel.width", as it is written behind
 * the colon. A key without a row in the table gets one from its kind and range; a mapping
 * without one gets NULL: its keys have their own. */
const char *key_example(struct arena *arena, const char *path, const struct key *key);

/* True of a key that stands for the same as one before it, such as revs_per_km beside
 * revs_per_mile: only one of them is given. */
bool key_is_alternative(struct arena *arena, const char *path);

/* True of the few keys that every build file has. */
bool key_is_always_given(const char *path);

#endif
