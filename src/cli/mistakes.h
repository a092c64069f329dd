/* What to say besides, when the arguments show which mistake was made. */
#ifndef TYRESUM_CLI_MISTAKES_H
#define TYRESUM_CLI_MISTAKES_H

#include "cli/options.h"

/* The arguments could not all be read as designations: two of them may be one with a blank in it,
 * or one may be a file. */
void hint_at_arguments(const struct options *options);

/* A build file cannot be opened: what was given may be a designation. */
void hint_at_designation(const char *path);

#endif
