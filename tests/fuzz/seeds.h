/* The inputs of a fuzz target in one file of text, so that a difference in git can be read. A
 * record is a line "seed NAME", or "broke NAME: WORDS" for an input that once broke something, and
 * below it the input's lines, each behind a bar. In them \\ is a backslash and \xHH any byte; what
 * ends in a backslash has no line feed behind it. Other lines are comments. */
#ifndef TYRESUM_TESTS_FUZZ_SEEDS_H
#define TYRESUM_TESTS_FUZZ_SEEDS_H

#include <stdbool.h>
#include <stddef.h>

struct seed {
    char *name;
    char *broke; /* what it once broke; NULL of one that is kept for what it reaches */
    unsigned char *bytes;
    size_t size;
};

struct seeds {
    struct seed *all;
    size_t count;
};

/* These end the program, with words, where a file cannot be read or written or is none of these. */
struct seeds seeds_read(const char *path);
void seeds_write(const char *path, const struct seeds *seeds);

/* What is added is kept, not copied. */
void seeds_add(struct seeds *seeds, struct seed seed);

#endif
