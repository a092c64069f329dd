/* The parts of a build file, each with the commands that report it. */
#ifndef TYRESUM_CLI_PARTS_H
#define TYRESUM_CLI_PARTS_H

#include "report/plan.h"

/* The keys that are its own (build/keys.h), beside those that all parts read. */
struct part_row {
    unsigned command, use;
    void (*report)(const struct plan *plan, struct figures *figures);
    enum part part;
};
enum { PART_ROW_COUNT = PART_SOLVING }; /* which is made of all of them and has no row */
extern const struct part_row part_rows[PART_ROW_COUNT];

/* Adds the figures of every part that the commands (enum command_bit) report. */
void parts_report(unsigned commands, const struct plan *plan, struct figures *figures);

#endif
