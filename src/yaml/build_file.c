#include "yaml/build_file.h"

#include "build/keys.h"
#include "yaml/walk.h"

struct mark place_of(const struct node *mapping, const char *key)
{
    const struct node *value = tree_child(mapping, key);
    if (value != NULL)
        return value->mark;
    return mapping == NULL ? (struct mark){1, 1} : mapping->mark;
}

void specification_clear(struct specification *out)
{
    *out = (struct specification){.node = NULL};
    walk_clear(&build_file_keys, out);
}

bool build_file_walk(struct arena *arena, struct node *root, struct diagnostics *diagnostics,
                     struct specification *out)
{
    specification_clear(out);
    struct walk walk = {arena, diagnostics};
    walk_mapping(&walk, &build_file_keys, root, out);
    build_rules_check(out, diagnostics);
    return diagnostics->count == 0;
}

bool build_file_read(struct arena *arena, struct span source, struct diagnostics *diagnostics,
                     struct specification *out)
{
    specification_clear(out);
    struct node *root = tree_read(arena, source, diagnostics);
    return root != NULL && build_file_walk(arena, root, diagnostics, out);
}
