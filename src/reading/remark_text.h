/* The sentence of a remark: its row's words with the gaps filled. */
#ifndef TYRESUM_READING_REMARK_TEXT_H
#define TYRESUM_READING_REMARK_TEXT_H

#include "report/remark.h"

/* In the us system where `us`, otherwise metric; NULL for no remark. */
const char *remark_text(struct arena *arena, const struct remark *remark, bool us);

/* The keys of the build file that it, or a remark within it, has to do with; NULL for none. */
const char *remark_key(struct arena *arena, const struct remark *remark);

#endif
