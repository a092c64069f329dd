/* Rules between keys, a file a part; rules.c calls them all. */
#ifndef TYRESUM_BUILD_RULES_H
#define TYRESUM_BUILD_RULES_H

#include "base/diagnostics.h"
#include "build/specification.h"

void clearance_rules_check(const struct specification *specification,
                           struct diagnostics *diagnostics);
void load_rules_check(const struct specification *specification, struct diagnostics *diagnostics);
void drivetrain_rules_check(const struct specification *specification,
                            struct diagnostics *diagnostics);

/* A name as a message quotes it. */
static inline const char *quoted(const struct diagnostics *diagnostics, const char *name)
{
    return quotable(diagnostics->arena, span_of(name));
}

#endif
