/* One value of each kind that is no mapping: from a node into its target. */
#ifndef TYRESUM_YAML_WALK_VALUES_H
#define TYRESUM_YAML_WALK_VALUES_H

#include "base/arena.h"
#include "base/diagnostics.h"
#include "build/keys.h"
#include "yaml/tree.h"

struct walk {
    struct arena *arena;
    struct diagnostics *diagnostics;
};

/* Reads one value; what is a fault is added to the walk's diagnostics. */
void walk_value(struct walk *walk, const struct key *key, const struct node *node, void *field);

/* A fault at the node's place: the whole scalar is underlined. */
void walk_fault(struct walk *walk, const struct node *node, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* "the key" or what stands in its place, for a message. */
const char *walk_key_name(struct walk *walk, const struct node *node);

#endif
