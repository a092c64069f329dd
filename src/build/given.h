/* Which keys of a build file are given, and where: the places that its reader found, so that a
 * rule can say what is wrong there. A mapping is known by its `struct given`: NULL where there is
 * none, and the same one only where the same lines are meant. */
#ifndef TYRESUM_BUILD_GIVEN_H
#define TYRESUM_BUILD_GIVEN_H

#include <stdbool.h>

#include "base/diagnostics.h"

enum given_form { GIVEN_VALUE, GIVEN_LIST, GIVEN_MAPPING };

struct given {
    struct span key; /* empty for an item of a list and for the whole file */
    struct mark mark;
    enum given_form form;
    const struct given *first; /* of what stands within */
    const struct given *next;  /* beside it */
};

/* The value under a key; NULL where the mapping is not given or has no such key. */
const struct given *given_key(const struct given *mapping, const char *key);

/* True also of a key whose value is at fault. */
bool is_given(const struct given *mapping, const char *key);

/* Place of a value within a mapping, or of the mapping itself where it has no such key. */
struct mark place_of(const struct given *mapping, const char *key);

#endif
