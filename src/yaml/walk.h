/* Fills a struct from a tree, driven by a key table. All faults are added; reading goes on. */
#ifndef TYRESUM_YAML_WALK_H
#define TYRESUM_YAML_WALK_H

#include "base/arena.h"
#include "base/diagnostics.h"
#include "build/keys.h"
#include "yaml/tree.h"

struct walk {
    struct arena *arena;
    struct diagnostics *diagnostics;
};

/* Every target of the set becomes "not given": UNKNOWN, NULL, CHOICE_NONE, empty. */
void walk_clear(const struct key_set *set, void *target);

/* Reads a mapping into target, which was cleared; its first member takes the node. */
void walk_mapping(struct walk *walk, const struct key_set *set, struct node *node, void *target);

#endif
