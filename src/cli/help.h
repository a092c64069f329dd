/* Help made from the command, option and key tables. */
#ifndef TYRESUM_CLI_HELP_H
#define TYRESUM_CLI_HELP_H

#include "cli/commands.h"
#include "output/outbuf.h"

void help_program(struct outbuf *out);
void help_command(struct outbuf *out, const struct command *command);

#endif
