/* What designations do not say and a command would like to know, as the --set that would give it.
 */
#ifndef TYRESUM_CLI_MISSING_SETS_H
#define TYRESUM_CLI_MISSING_SETS_H

#include "cli/cases.h"

/* "--set speedometer.rule=un_r39 --set ...": what is not given yet; empty where a file is read or
 * nothing is missing. */
const char *missing_sets(struct arena *arena, const struct build_case *build, const char *between);

#endif
