/* What every HTML page has: a style, a title, and the cautions at its end. No script, no file from
 * outside. Text is dark on white; colour says nothing that words and shapes do not. */
#ifndef TYRESUM_READING_PAGE_FRAME_H
#define TYRESUM_READING_PAGE_FRAME_H

#include "output/outbuf.h"

void page_begin(struct outbuf *out, const char *title);
void page_end(struct outbuf *out);

#endif
