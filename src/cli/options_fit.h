/* Whether all options that were given mean something for what the command is asked to do. */
#ifndef TYRESUM_CLI_OPTIONS_FIT_H
#define TYRESUM_CLI_OPTIONS_FIT_H

#include "cli/commands.h"

/* False with a message that names what the first idle one goes with. */
bool options_fit(const struct command *command, const struct options *options);

#endif
