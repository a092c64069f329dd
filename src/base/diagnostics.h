/* Faults of the input, collected so that all are reported in one go:
 *   FILE:LINE:COLUMN: error: what is wrong; what was expected
 * then the line and a caret. Lines and columns count from 1, columns in characters. */
#ifndef TYRESUM_BASE_DIAGNOSTICS_H
#define TYRESUM_BASE_DIAGNOSTICS_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/span.h"

struct mark {
    size_t line, column; /* line 0: the fault has no place of its own */
    size_t source;       /* 0: the text itself; otherwise what diagnostics_source gave */
};

struct fault {
    struct mark mark;
    size_t length; /* characters to underline */
    const char *message;
};

enum { FAULTS_SHOWN_MAX = 50 };

/* Another text that a part of the input came from. */
struct source_text {
    const char *name; /* "--set 2", or a file's name */
    struct span text;
    bool one_line; /* its places are columns alone */
};

struct diagnostics {
    struct arena *arena;
    const char *source_name; /* the file's name, "standard input" or "argument 2" */
    struct span source;      /* the text that lines are quoted from; may be empty */
    struct source_text *others;
    size_t other_count, other_capacity;
    struct fault faults[FAULTS_SHOWN_MAX];
    size_t count; /* all of them, those past the maximum too */
};

void diagnostics_add(struct diagnostics *diagnostics, struct mark mark, size_t length,
                     const char *format, ...) __attribute__((format(printf, 4, 5)));

/* Takes another text in, for marks to point into: their `source`. */
size_t diagnostics_source(struct diagnostics *diagnostics, struct source_text text);

/* Writes all to standard error, ordered by place. */
void diagnostics_print(struct diagnostics *diagnostics);

/* One message without a place: "tyresum: error: ...". */
void diagnostics_plain(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* One line for standard error that is no error. It and all that is written above hold nothing that
 * would steer a terminal (base/utf8.h). */
void tell(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* Bytes of the line break that a text begins with, 0 where there is none. Lines are those of
 * YAML 1.1 (section 5.4), as libyaml counts them: U+0085, U+2028 and U+2029 end one too. */
size_t line_break_length(struct span text);

/* A piece of the input as it may be quoted in a message: as it is shown, cut when long. */
const char *quotable(struct arena *arena, struct span text);

#endif
