/* A mapping that may be written in one line: the values of its first keys, then the name and value
 * of others, such as `pulses_per_km 2548 step 1`. */
#ifndef TYRESUM_YAML_ONE_LINE_H
#define TYRESUM_YAML_ONE_LINE_H

#include "build/keys.h"
#include "yaml/tree.h"

/* Makes of every such text below the node the mapping that it stands for. */
void one_lines_expand(struct arena *arena, const struct key_set *set, struct node *node);

#endif
