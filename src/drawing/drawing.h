/* Line drawings as SVG 1.1: black on white, lines told apart by their dashes, the generic font
 * sans-serif, no style sheet, no script, no file from outside. Lengths are pixels of 1/96 inch;
 * y runs down. */
#ifndef TYRESUM_DRAWING_DRAWING_H
#define TYRESUM_DRAWING_DRAWING_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "output/outbuf.h"

struct drawing {
    struct outbuf *out;
    struct arena *arena;
    bool inside_page; /* in HTML: no XML declaration, and a role for screen readers */
};

struct box {
    double x, y, width, height;
};

struct point {
    double x, y;
};

enum dash {
    DASH_NONE,
    DASH_LONG,
    DASH_SHORT,
    DASH_DOT,
    DASH_LONG_DOT,
    DASH_LONG_DOT_DOT,
    DASH_COUNT
};

/* How something is drawn. fill NULL: none; width 0: no outline. */
struct pen {
    double width;
    enum dash dash;
    const char *fill;
    const char *stroke; /* NULL: black */
};

enum anchor { ANCHOR_START, ANCHOR_MIDDLE, ANCHOR_END };

struct text_style {
    double size;
    enum anchor anchor;
    bool bold;
    bool figure;   /* marks the text that gives the figure of its group */
    double turned; /* degrees, clockwise about its place */
};

/* As wide as a page of A4 or Letter within its margins, and text that is 9 pt there: what every
 * drawing keeps to. On a screen all is larger by a sixth, so that the text is 14 px. */
enum { DRAWING_WIDTH = 708, DRAWING_TEXT = 12 };

/* The outermost element, with what a screen reader says of it. */
void drawing_begin(struct drawing *drawing, double width, double height, const char *title,
                   const char *description);
void drawing_end(struct drawing *drawing);

/* What belongs together, named: the title is read out, and shown where the pointer rests. */
void drawing_group(struct drawing *drawing, const char *title);
void drawing_group_end(struct drawing *drawing);

void drawing_line(struct drawing *drawing, struct point from, struct point to, struct pen pen);
void drawing_lines(struct drawing *drawing, const struct point *points, size_t count, bool closed,
                   struct pen pen);
void drawing_rectangle(struct drawing *drawing, struct box box, double corner, struct pen pen);
void drawing_circle(struct drawing *drawing, struct point centre, double radius, struct pen pen);
/* Degrees from the right, counter-clockwise as seen. */
void drawing_arc(struct drawing *drawing, struct point centre, double radius, double from_degrees,
                 double to_degrees, struct pen pen);
void drawing_text(struct drawing *drawing, struct point at, struct text_style style,
                  const char *text);

/* Room that a text takes at most, in the widest of the usual sans-serif fonts. */
double drawing_text_width(const char *text, double size);
/* The text, cut with an ellipsis where it is wider. */
const char *drawing_fit(struct drawing *drawing, const char *text, double size, double width);

#endif
