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

/* A path as it is meant in a file, or a link: from that file's own folder. */
const char *path_beside(struct arena *arena, const char *from, const char *path);

/* Before anything is read: the path of --output, or NULL; false with a message where it cannot be
 * looked at. What is opened for reading is then asked whether it is that file; true with a message
 * where it is. */
bool sink_announce(const char *path);
bool sink_would_replace(int descriptor, const char *name);
/* The same without the message. */
bool sink_replaces(int descriptor);

/* Whether the path announced is a file that is there already. */
bool sink_stands(void);

/* False with a message where it cannot be opened. path NULL, or "-": standard output. */
bool sink_open(struct arena *arena, struct sink *sink, const char *path);

/* Flushes and puts the temporary file in its place if keep; drops what is not written yet, and
 * removes the file, otherwise. False with a
 * message (none for a closed pipe) where something could not be written. */
bool sink_close(struct sink *sink, bool keep);

bool sink_is_terminal(const struct sink *sink);

/* Columns for a table: the terminal's, what COLUMNS says, or 100 where neither is known. */
int sink_width(const struct sink *sink);

/* Columns of a page to read: the same, within bounds. */
size_t sink_page_width(const struct sink *sink);

/* Colour as --color asks for it: of a terminal where nobody says otherwise. */
void sink_set_colour(struct sink *sink, enum colour_choice colour);

#endif
