/* One build: the text of a file, or a tree made of the designations that stand instead of one, with
 * the values of --set and --each put in before it is read. */
#ifndef TYRESUM_CLI_BUILD_SOURCE_H
#define TYRESUM_CLI_BUILD_SOURCE_H

#include "build/specification.h"
#include "cli/options.h"

/* One value of an --each, as it stands among the others. */
struct each_value {
    struct span text;
    size_t column; /* from 1, in characters */
};

struct build_source {
    const struct options *options;
    const char *path;              /* of the file; NULL: the operands are designations */
    struct span text;              /* of the file */
    const struct each_value *each; /* one for each --each */
};

/* Whether an operand is a file and no designation. */
bool operand_is_file(const char *operand);

/* What messages call it: the file's name, or "the arguments". */
const char *build_source_name(const struct build_source *source);

/* Reads and checks the whole build; all faults go to standard error. Its tree, or NULL where there
 * are any. */
struct node;
struct node *build_source_read(struct arena *arena, const struct build_source *source,
                               struct specification *out);

/* A fault that shows only when the build is put to use, at its place in the file. */
void build_source_fault(struct arena *arena, const struct build_source *source, struct mark place,
                        const char *message);

#endif
