/* Text inside markup: what XML 1.0 and HTML give a meaning is escaped. */
#ifndef TYRESUM_OUTPUT_MARKUP_H
#define TYRESUM_OUTPUT_MARKUP_H

#include "output/outbuf.h"

/* For content and for attributes in double quotes. Ill-formed UTF-8 and characters that XML 1.0,
 * section 2.2, does not allow or that set a direction become U+FFFD; line breaks and tabs become a
 * blank. */
void markup_text(struct outbuf *out, const char *text);
void markup_span(struct outbuf *out, struct span rest);

#endif
