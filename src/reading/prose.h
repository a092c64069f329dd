/* Lines of text for the terminal: wrapped at the width, with a hanging indent. */
#ifndef TYRESUM_READING_PROSE_H
#define TYRESUM_READING_PROSE_H

#include <stdbool.h>

#include "base/arena.h"
#include "base/span.h"
#include "output/outbuf.h"

struct prose {
    struct outbuf *out;
    size_t width;    /* of a line, in characters */
    size_t indent;   /* of the lines that follow the first */
    size_t position; /* in the line now */
    size_t start;    /* where the next word goes while `fresh` */
    bool fresh;      /* no word stands behind what the line begins with */
    bool markup;     /* HTML: paragraphs that the browser breaks */
};

/* Begins a line with `first` at column `at`; what follows hangs at `indent`. */
void prose_begin(struct prose *prose, size_t at, const char *first, size_t indent);
/* Adds words, breaking the line before one that does not fit. */
void prose_words(struct prose *prose, const char *text);
void prose_end(struct prose *prose);
/* A whole paragraph. */
void prose_line(struct prose *prose, size_t at, size_t indent, const char *text);

/* A name in words: "load_range" is "load range", and a line can break there. */
const char *in_words(struct arena *arena, const char *name);

/* The text, cut with three points where it takes more than so many characters. */
const char *text_cut(struct arena *arena, const char *text, size_t width);

#endif
