/* Where results go: standard output, or --output written whole or not at all. */
#ifndef TYRESUM_CLI_SINK_H
#define TYRESUM_CLI_SINK_H

#include <stdbool.h>

#include "base/arena.h"
#include "output/outbuf.h"

enum colour_choice { COLOUR_AUTO, COLOUR_ALWAYS, COLOUR_NEVER };

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

/* Columns of the terminal that standard output is, or 0 where it is none. */
int sink_terminal_width(const struct sink *sink);

/* Columns of a page to read: the terminal's, within bounds, or 100 where there is none. */
size_t sink_page_width(const struct sink *sink);

/* Colour as --color asks for it: of a terminal where nobody says otherwise. */
void sink_set_colour(struct sink *sink, enum colour_choice colour);

#endif
