/* Where results go: standard output, or --output written whole or not at all. */
#ifndef TYRESUM_CLI_SINK_H
#define TYRESUM_CLI_SINK_H

#include <stdbool.h>

#include "base/arena.h"
#include "output/outbuf.h"

struct sink {
    struct outbuf out;
    const char *path;           /* as given; NULL for standard output */
    const char *target;         /* the file behind a symbolic link */
    const char *temporary_path; /* NULL where the file is written straight */
};

/* False with a message where it cannot be opened. path NULL: standard output. */
bool sink_open(struct arena *arena, struct sink *sink, const char *path);

/* Flushes; puts the temporary file in its place if keep, removes it otherwise. False with a
 * message (none for a closed pipe) where something could not be written. */
bool sink_close(struct sink *sink, bool keep);

bool sink_is_terminal(const struct sink *sink);

/* Columns for a table: the terminal's, what COLUMNS says, or 100 where neither is known. */
int sink_width(const struct sink *sink);

/* Columns of a page to read: the same, within bounds. */
size_t sink_page_width(const struct sink *sink);

#endif
