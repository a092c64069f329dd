/* A build written to a file, and what a command wrote of it: for the properties that read what is
 * printed. The fixture makes a folder for both, and takes it along. */
#ifndef TYRESUM_TESTS_OUTPUT_RUN_H
#define TYRESUM_TESTS_OUTPUT_RUN_H

#include <stddef.h>

enum { OUTPUT_MAX = 4 << 20 };

extern char build_path[], output_path[];

void output_set_up(void);
void output_tear_down(void);

void write_build(const char *text, size_t length);
/* Ends in a NUL; returns the length, 0 where nothing was written. text must hold OUTPUT_MAX. */
size_t read_output(char *text);

#endif
