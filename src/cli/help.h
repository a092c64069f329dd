/* Help made from the command, option and key tables. */
#ifndef TYRESUM_CLI_HELP_H
#define TYRESUM_CLI_HELP_H

#include "cli/commands.h"
#include "output/outbuf.h"

void help_program(struct outbuf *out);
/* One screen. */
void help_command(struct outbuf *out, const struct command *command);
/* The long lists, of one command or (NULL) of all. */
void help_keys(struct outbuf *out, const struct command *only);
void help_columns(struct outbuf *out, const struct command *only);

#endif
