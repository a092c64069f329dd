/* Designations from arguments and from a stream of lines. */
#ifndef TYRESUM_CLI_STREAM_H
#define TYRESUM_CLI_STREAM_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/span.h"
#include "base/status.h"
#include "output/outbuf.h"
#include "text/designation.h"

struct stream_result {
    size_t lines, unread;
};

/* Calls take for every line (without its line end, a carriage return, or a byte order mark at
 * the very start), in order. A line longer than the buffer reaches take cut, and unread. Ends
 * early where out has failed. False with a message where the input cannot be read. */
bool stream_lines(int descriptor, struct outbuf *out, bool (*take)(struct span line, void *context),
                  void *context, struct stream_result *result);

/* Status of a stream; says on standard error how many lines could not be read. */
enum exit_status stream_status(const struct stream_result *result);

/* The text of a line's error and the line itself, for its row. */
void stream_error_text(struct span line, const struct designation_error *error, char *unread,
                       size_t unread_size, char *message, size_t message_size);

/* An argument as a designation; a fault goes to standard error with its place. */
bool argument_designation(struct arena *arena, const char *text, size_t number,
                          struct designation *out);

#endif
