/* The parts of a build file, each with the commands that report it. */
#ifndef TYRESUM_CLI_PARTS_H
#define TYRESUM_CLI_PARTS_H

#include "report/plan.h"

/* Adds the figures of every part that the commands (enum command_bit) report. */
void parts_report(unsigned commands, const struct plan *plan, struct figures *figures);

#endif
