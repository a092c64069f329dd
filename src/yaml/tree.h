/* A YAML text as a tree with positions. Read from libyaml's events, not by its own loader:
 * that one accepts duplicate keys and takes quadratic time on nested open brackets. Aliases,
 * anchors, tags and second documents are refused; so is more than 1 MiB or 64 levels. */
#ifndef TYRESUM_YAML_TREE_H
#define TYRESUM_YAML_TREE_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/diagnostics.h"
#include "base/span.h"
#include "build/given.h"

enum { TREE_BYTES_MAX = 1024 * 1024, TREE_DEPTH_MAX = 64 };

enum node_kind { NODE_SCALAR, NODE_MAPPING, NODE_SEQUENCE };

struct node {
    enum node_kind kind;
    struct mark mark;
    struct span text; /* of a scalar, unquoted */
    bool quoted;
    bool as_written;    /* in one line and without escapes: its characters are the file's */
    struct node *key;   /* of a mapping's child: its key, a scalar */
    struct node *next;  /* the next child of the same parent */
    struct node *first; /* children of a mapping (its values) or sequence */
    struct node *last;
    size_t count;
    const struct given *given; /* its place as rules know it, of the last walk */
};

/* The root, or NULL with at least one fault added. `source` must outlive the tree. */
struct node *tree_read(struct arena *arena, struct span source, struct diagnostics *diagnostics);

/* The same of one value, which begins at a column of another source of the diagnostics. */
struct node *tree_read_value(struct arena *arena, struct span value, struct mark at,
                             struct diagnostics *diagnostics);

/* A node that no text has: a scalar where there is a text, otherwise an empty collection. */
struct node *tree_node(struct arena *arena, enum node_kind kind, struct span text,
                       struct mark mark);
/* Adds a child to a sequence, or to a mapping under a key. */
void tree_append(struct node *parent, struct node *key, struct node *child);

/* The value under a key of a mapping; NULL where the node is no mapping or has no such key. */
const struct node *tree_child(const struct node *mapping, const char *key);

#endif
