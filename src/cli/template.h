/* A commented build file to start from, made from the key table. */
#ifndef TYRESUM_CLI_TEMPLATE_H
#define TYRESUM_CLI_TEMPLATE_H

#include "base/arena.h"
#include "output/outbuf.h"

void template_write(struct arena *arena, struct outbuf *out);

#endif
