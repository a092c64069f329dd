/* Text inside Markdown, so that it is read as it stands. */
#ifndef TYRESUM_OUTPUT_MARKDOWN_TEXT_H
#define TYRESUM_OUTPUT_MARKDOWN_TEXT_H

#include "output/outbuf.h"

/* One line: breaks become blanks, what would steer a terminal is escaped (base/utf8.h). */
void markdown_text(struct outbuf *out, struct span text);

#endif
