/* The path of --set: which value of a build file it means. A path may be cut to any ending; of the
 * places that end so the shortest is meant. An option stands by its letter, an item of any list by
 * its number, both by their name, and in quotes by nothing else. */
#ifndef TYRESUM_YAML_SET_PATH_H
#define TYRESUM_YAML_SET_PATH_H

#include "base/diagnostics.h"
#include "build/keys.h"
#include "yaml/tree.h"

enum { PATH_STEPS_MAX = 12 };

/* One step down from the root: into a mapping by a name, or into a list by a number. */
struct path_step {
    struct span name;      /* empty: by number */
    size_t number;         /* from 1; 0: of an item that the list does not have */
    size_t of;             /* so many items */
    struct span called;    /* the name of an item that has one */
    const struct key *key; /* of a row of the key table; NULL otherwise */
};

struct set_path {
    struct path_step steps[PATH_STEPS_MAX];
    size_t count;
};

/* Bytes of the path in "PATH=VALUE": all of the text where no '=' ends it. */
size_t set_path_length(struct span text);

/* Finds the place; `text` is the path alone, which begins at the mark. False with the fault added
 * where none or more than one is meant. */
bool set_path_find(struct arena *arena, const struct node *root, struct span text, struct mark mark,
                   struct diagnostics *diagnostics, struct set_path *out);

/* Puts the value there. False with a fault at the mark where another that was given so would be
 * lost. What stands in the way in the file itself is left, for its reader to refuse. */
bool set_path_put(struct arena *arena, struct node *root, const struct set_path *path,
                  struct node *value, struct mark mark, struct diagnostics *diagnostics);

#endif
