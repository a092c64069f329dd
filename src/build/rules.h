/* What no single key of a build file can check: rules between them. */
#ifndef TYRESUM_BUILD_RULES_H
#define TYRESUM_BUILD_RULES_H

#include "build/specification.h"

/* Adds a fault for each rule that is broken. */
void build_rules_check(const struct specification *specification, struct diagnostics *diagnostics);

#endif
