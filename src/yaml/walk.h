/* Fills a specification from a tree, driven by the key table. All faults are added; reading goes
 * on. */
#ifndef TYRESUM_YAML_WALK_H
#define TYRESUM_YAML_WALK_H

#include "build/specification.h"
#include "yaml/walk_values.h"

/* Reads a whole file. */
void walk_file(struct walk *walk, struct node *root, struct specification *out);

#endif
