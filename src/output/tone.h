/* Words of outcomes and verdicts in colour on a terminal. The words carry all meaning. */
#ifndef TYRESUM_OUTPUT_TONE_H
#define TYRESUM_OUTPUT_TONE_H

#include "output/outbuf.h"

/* What is before and behind the text so that it stands in colour, where the output has colour and
 * the text is such a word; "" otherwise. */
const char *tone_begin(const struct outbuf *out, struct span text);
const char *tone_end(const char *begun);

#endif
