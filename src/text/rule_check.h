/* What a rule between keys looks at, and how it says what is wrong. */
#ifndef TYRESUM_TEXT_RULE_CHECK_H
#define TYRESUM_TEXT_RULE_CHECK_H

#include "base/diagnostics.h"
#include "text/build_file.h"
#include "text/specification.h"

struct check {
    const struct specification *specification;
    struct diagnostics *diagnostics;
};

/* At the value of a key of the mapping, or at the mapping where it has no such key. */
#define FAULT(check, mapping, key, ...)                                                            \
    diagnostics_add((check)->diagnostics, place_of(mapping, key), 1, __VA_ARGS__)

#endif
