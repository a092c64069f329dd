/* A build file: text to specification, with every fault of meaning in one go. */
#ifndef TYRESUM_YAML_BUILD_FILE_H
#define TYRESUM_YAML_BUILD_FILE_H

#include <stdbool.h>

#include "base/arena.h"
#include "base/diagnostics.h"
#include "base/span.h"
#include "build/specification.h"

/* A specification in which nothing is given. */
void specification_clear(struct specification *out);

/* Reads source (which must outlive the result). False where any fault was added. */
bool build_file_read(struct arena *arena, struct span source, struct diagnostics *diagnostics,
                     struct specification *out);

/* The same from a tree that is read already. */
bool build_file_walk(struct arena *arena, struct node *root, struct diagnostics *diagnostics,
                     struct specification *out);

/* The rules between keys, each one named function in rules.c. */
void build_rules_check(const struct specification *specification, struct diagnostics *diagnostics);

/* Those of the speedometer, called by it: rules_speedometer.c. */
void build_rules_speedometer(const struct specification *specification,
                             struct diagnostics *diagnostics);

/* Place of a value within a mapping, or of the mapping itself where it has no such key. */
struct mark place_of(const struct node *mapping, const char *key);

#endif
