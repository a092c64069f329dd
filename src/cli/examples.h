/* Examples of use: for the help, the manual page, and the test that runs every one of them. */
#ifndef TYRESUM_CLI_EXAMPLES_H
#define TYRESUM_CLI_EXAMPLES_H

#include <stdbool.h>
#include <stddef.h>

struct example {
    const char *command; /* the name in the command table */
    const char *line;    /* as typed into a shell; build.yaml stands for any build file */
    const char *purpose;
    bool in_help; /* one of the three that the program's own help shows */
};

extern const struct example example_table[];
extern const size_t example_count;

#endif
