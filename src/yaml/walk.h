/* Fills a specification from a tree, driven by the key table. All faults are added; reading goes
 * on. */
#ifndef TYRESUM_YAML_WALK_H
#define TYRESUM_YAML_WALK_H

#include "base/arena.h"
#include "base/diagnostics.h"
#include "build/specification.h"
#include "yaml/tree.h"

struct walk {
    struct arena *arena;
    struct diagnostics *diagnostics;
};

/* Reads a whole file. */
void walk_file(struct walk *walk, struct node *root, struct specification *out);

#endif
