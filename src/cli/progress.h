/* How far a long computation has come: one line of a terminal, written over and erased at the end.
 */
#ifndef TYRESUM_CLI_PROGRESS_H
#define TYRESUM_CLI_PROGRESS_H

#include <stdbool.h>
#include <stdio.h>

struct progress {
    FILE *to;               /* NULL: nothing is told */
    double began_s, told_s; /* when; told_s UNKNOWN: not yet */
    int width;              /* of the line that stands there */
};

enum { PROGRESS_SIZE = 80 };

/* Told where it is a terminal that somebody reads. */
struct progress progress_begin(FILE *to, bool quiet);
/* A second after it began, and then five times a second. */
bool progress_is_due(const struct progress *progress, double now_s);
int progress_text(size_t done, size_t all, char text[PROGRESS_SIZE]);
/* `progress` is a struct progress. */
void progress_tell(void *data, size_t done, size_t all);
void progress_end(struct progress *progress);

#endif
