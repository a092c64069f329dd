/* What a rule between keys looks at, and how it says what is wrong. */
#ifndef TYRESUM_BUILD_RULE_CHECK_H
#define TYRESUM_BUILD_RULE_CHECK_H

#include "base/diagnostics.h"
#include "yaml/build_file.h"
#include "build/specification.h"

struct check {
    const struct specification *specification;
    struct diagnostics *diagnostics;
};

/* At the value of a key of the mapping, or at the mapping where it has no such key. */
#define FAULT(check, mapping, key, ...)                                                            \
    diagnostics_add((check)->diagnostics, place_of(mapping, key), 1, __VA_ARGS__)

#endif
