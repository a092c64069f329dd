/* Reading what is given: a build file, from a file or standard input, or any bytes. */
#ifndef TYRESUM_CLI_INPUT_H
#define TYRESUM_CLI_INPUT_H

#include <stdbool.h>
#include <sys/types.h>

#include "base/arena.h"
#include "base/diagnostics.h"
#include "build/specification.h"

/* Name as messages give it: "standard input" for "-". */
const char *input_name(const char *path);

/* As read(2), but for a signal that comes between and for a descriptor that someone left
 * non-blocking: then it waits. */
ssize_t input_read(int descriptor, void *buffer, size_t size);

/* What is said of a text whose name and encoding these are. */
#define OTHER_ENCODING "%s is %s text; save it as UTF-8"

/* All of a file that is no larger than a build file may be, with a byte too many where it is.
 * NULL, or what to say where it cannot be read. */
const char *input_read_path(struct arena *arena, const char *path, struct span *out);

/* --option named none of the file's options: says so, with the nearest. */
void report_unknown_option(const struct specification *specification, const char *name);

#endif
