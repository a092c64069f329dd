/* What a rule between keys looks at, and how it says what is wrong. Rules are functions of a file
 * a part; rules.c calls them all. */
#ifndef TYRESUM_BUILD_RULE_CHECK_H
#define TYRESUM_BUILD_RULE_CHECK_H

#include "build/specification.h"

struct check {
    const struct specification *specification;
    struct diagnostics *diagnostics;
};

#define FAULT_AT(check, mark, ...) diagnostics_add((check)->diagnostics, mark, 1, __VA_ARGS__)
/* At the value of a key of the mapping, or at the mapping where it has no such key. */
#define FAULT(check, mapping, key, ...) FAULT_AT(check, place_of(mapping, key), __VA_ARGS__)

/* So many figures are worked out of one file at the most. */
enum { FIGURES_MAX = 200000 };

/* A name as a message quotes it. */
static inline const char *quoted(const struct check *check, const char *name)
{
    return quotable(check->diagnostics->arena, span_of(name));
}

void check_load_rules(const struct check *check);
void check_speedometer_rules(const struct check *check);
void check_drivetrain_rules(const struct check *check);
void check_clearance_rules(const struct check *check);

#endif
