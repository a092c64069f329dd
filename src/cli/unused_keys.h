/* Keys that a build file gives although nothing is computed from them. */
#ifndef TYRESUM_CLI_UNUSED_KEYS_H
#define TYRESUM_CLI_UNUSED_KEYS_H

#include "base/arena.h"
#include "base/diagnostics.h"
#include "report/plan.h"

struct node;

struct unused_key {
    const char *path; /* such as "tyres.options.tread_depth" */
    struct mark mark;
};

struct unused_keys {
    struct unused_key *items;
    size_t count;
    size_t given;       /* keys with a value, in the whole file */
    size_t tried_max;   /* so many are tried: the fewer, the more figures the file gives */
    bool stopped_early; /* there are more keys than are tried */
};

/* Found by trying: a key is not used if every figure of every part is the same without it. This
 * holds whatever the computations are, where a list of uses kept by hand would grow wrong. Names
 * (of the vehicle, an item, an option) are taken as used. `baseline` are the figures of the whole
 * file; its tree is changed for a while and put back. */
void unused_keys_find(struct arena *arena, const struct plan *plan, struct node *tree,
                      const char *option, const struct figures *baseline, struct unused_keys *out);

#endif
