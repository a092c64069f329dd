/* A build file: text to specification, with every fault of meaning in one go. */
#ifndef TYRESUM_YAML_BUILD_FILE_H
#define TYRESUM_YAML_BUILD_FILE_H

#include "build/specification.h"
#include "yaml/tree.h"

/* Reads source (which must outlive the result). The tree, or NULL where any fault was added. */
struct node *build_file_read(struct arena *arena, struct span source,
                             struct diagnostics *diagnostics, struct specification *out);

/* The same from a tree that is read already. False where any fault was added. */
bool build_file_walk(struct arena *arena, struct node *root, struct diagnostics *diagnostics,
                     struct specification *out);

#endif
