/* `--set readings=@road.csv`: a list of values from the columns of a CSV. */
#ifndef TYRESUM_CLI_LIST_FILE_H
#define TYRESUM_CLI_LIST_FILE_H

#include "build/keys.h"
#include "yaml/tree.h"

/* The list as if it were written out, each value with its place in the file. `text` is "@" and the
 * file's name, as it stands at the mark. NULL with the fault added where it cannot be read. */
struct node *list_file_read(struct arena *arena, const struct key *key, struct span text,
                            struct mark at, struct diagnostics *diagnostics);

#endif
