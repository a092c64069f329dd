#include "cli/unused_keys.h"

#include <string.h>

#include "base/known.h"
#include "cli/commands.h"
#include "cli/parts.h"
#include "yaml/build_file.h"
#include "build/keys.h"

/* Each try computes the whole file again: a few milliseconds, and more where it has many options.
 * Then fewer are tried, so that all tries together take a few seconds at the most. */
enum { KEYS_TRIED_MAX = 1000, FIGURES_TRIED_MAX = 4000000 };

struct trial {
    struct arena *arena;
    const struct plan *plan;
    struct node *tree;
    const char *option;
    const struct figures *baseline;
    struct unused_keys *out;
};

static bool same_figures(const struct figures *a, const struct figures *b)
{
    if (a->count != b->count)
        return false;
    for (size_t i = 0; i < a->count; i++)
        if (!figure_same(&a->items[i], &b->items[i], SAME_ALL))
            return false;
    return true;
}

/* Whether the file as its tree now is gives the figures of the whole file. Without a key that is
 * needed there is a fault, or no such option: then it does not. */
static bool gives_the_same(const struct trial *trial)
{
    struct arena scratch = ARENA_EMPTY;
    struct diagnostics *diagnostics = arena_allocate(&scratch, sizeof *diagnostics);
    struct specification *specification = arena_allocate(&scratch, sizeof *specification);
    diagnostics->arena = &scratch;
    struct plan plan;
    bool same = false;
    if (build_file_walk(&scratch, trial->tree, diagnostics, specification) &&
        plan_make(&scratch, specification, trial->plan->us, trial->option, &plan)) {
        struct figures figures = {.arena = &scratch};
        parts_report(CMD_ANY, &plan, &figures);
        same = same_figures(trial->baseline, &figures);
    }
    arena_free(&scratch);
    return same;
}

/* Takes a child out of its mapping, tries, and puts it back. */
static bool is_unused(const struct trial *trial, struct node *mapping, struct node *child)
{
    struct node **link = &mapping->first;
    while (*link != child)
        link = &(*link)->next;
    *link = child->next;
    bool unused = gives_the_same(trial);
    *link = child;
    return unused;
}

static bool is_name(const struct key *key)
{
    return key->kind == KEY_TEXT &&
           (strcmp(key->name, "name") == 0 || strcmp(key->name, "item") == 0);
}

/* True of a key that only commands without a part of their own read, where they exist. */
static bool is_read_elsewhere(unsigned use)
{
    enum { USE_PARTS = USE_SPEEDOMETER | USE_GEARING | USE_LOAD | USE_CLEARANCE };
    for (size_t i = 0; i < command_count && !(use & USE_PARTS); i++)
        if (command_table[i].keys & use && command_table[i].bit != CMD_CHECK)
            return true;
    return false;
}

static void try_mapping(const struct trial *trial, const struct key_set *set, struct node *mapping,
                        const char *path, unsigned use);

static void try_key(const struct trial *trial, const struct key *key, struct node *mapping,
                    struct node *child, const char *path, unsigned use)
{
    if (key->kind == KEY_MAPPING || key->kind == KEY_MAPPING_LIST) {
        if (child->kind == NODE_MAPPING)
            try_mapping(trial, key->set, child, path, use);
        for (struct node *item = child->first; child->kind == NODE_SEQUENCE && item != NULL;
             item = item->next)
            try_mapping(trial, key->set, item, path, use);
        return;
    }
    struct unused_keys *out = trial->out;
    if (out->given++ >= out->tried_max)
        out->stopped_early = true;
    else if (!is_name(key) && !is_read_elsewhere(use) && is_unused(trial, mapping, child))
        out->items[out->count++] = (struct unused_key){path, child->key->mark};
}

static void try_mapping(const struct trial *trial, const struct key_set *set, struct node *mapping,
                        const char *path, unsigned use)
{
    for (struct node *child = mapping->first; child != NULL; child = child->next)
        for (size_t i = 0; i < set->count; i++)
            if (span_is(child->key->text, set->keys[i].name))
                try_key(
                    trial, &set->keys[i], mapping, child,
                    arena_format(trial->arena, "%s%s%s", path, *path ? "." : "", set->keys[i].name),
                    use & set->keys[i].use);
}

void unused_keys_find(struct arena *arena, const struct plan *plan, struct node *tree,
                      const char *option, const struct figures *baseline, struct unused_keys *out)
{
    bool many = baseline->count > FIGURES_TRIED_MAX / KEYS_TRIED_MAX;
    *out = (struct unused_keys){
        .items = arena_allocate_array(arena, KEYS_TRIED_MAX, sizeof *out->items),
        .tried_max = many ? FIGURES_TRIED_MAX / baseline->count : KEYS_TRIED_MAX,
    };
    const struct trial trial = {arena, plan, tree, option, baseline, out};
    try_mapping(&trial, &build_file_keys, tree, "", USE_ALL);
}
