#include "yaml/build_file.h"

#include "build/rules.h"
#include "yaml/one_line.h"
#include "yaml/walk.h"

bool build_file_walk(struct arena *arena, struct node *root, struct diagnostics *diagnostics,
                     struct specification *out)
{
    struct walk walk = {arena, diagnostics};
    one_lines_expand(arena, &build_file_keys, root);
    walk_file(&walk, root, out);
    build_rules_check(out, diagnostics);
    return diagnostics->count == 0;
}

struct node *build_file_read(struct arena *arena, struct span source,
                             struct diagnostics *diagnostics, struct specification *out)
{
    specification_clear(out);
    struct node *root = tree_read(arena, source, diagnostics);
    return root != NULL && build_file_walk(arena, root, diagnostics, out) ? root : NULL;
}
