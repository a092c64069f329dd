#include "cli/unused_keys.h"

#include <string.h>

#include "base/known.h"
#include "cli/commands.h"
#include "cli/parts.h"
#include "yaml/build_file.h"
#include "build/keys.h"

/* Each try reads and computes the whole file again: a few milliseconds, and more where it gives
 * many figures or values. Then fewer are tried, so that all tries together take a few seconds at
 * the most for figures, and for values what a few files take. */
enum { KEYS_TRIED_MAX = 1000, FIGURES_TRIED_MAX = 4000000, VALUES_TRIED_MAX = 300000 };

struct trial {
    struct arena *arena;
    const struct plan *plan;
    struct node *tree;
    const char *option;
    const struct figures *baseline;
    struct arena *scratch;
    struct figures *figures; /* room for those of one trial after the other */
    struct unused_keys *out;
};

/* Whether a part gives what it gave of the whole file. */
static bool part_is_same(const struct trial *trial, const struct part_row *part,
                         const struct plan *plan)
{
    const struct figures *baseline = trial->baseline;
    struct figures *figures = trial->figures;
    size_t from = 0, count = 0;
    while (from < baseline->count && baseline->items[from].part != part->part)
        from++;
    while (from + count < baseline->count && baseline->items[from + count].part == part->part)
        count++;
    figures_restart(figures, plan->arena);
    part->report(plan, figures);
    if (figures->count != count)
        return false;
    for (size_t i = 0; i < count; i++)
        if (!figure_same(&baseline->items[from + i], &figures->items[i], SAME_ALL))
            return false;
    return true;
}

/* The parts whose own the key is first: they tell soonest that it is used. */
static bool parts_are_same(const struct trial *trial, const struct plan *plan, unsigned use)
{
    bool of_one_part = use != USE_ALL;
    for (int own = 1; own >= 0; own--)
        for (size_t i = 0; i < PART_ROW_COUNT; i++)
            if ((of_one_part && part_rows[i].use & use) == own &&
                !part_is_same(trial, &part_rows[i], plan))
                return false;
    return true;
}

/* Whether the file as its tree now is gives the figures of the whole file. Without a key that is
 * needed there is a fault, or no such option: then it does not. */
static bool gives_the_same(const struct trial *trial, unsigned use)
{
    struct arena *scratch = trial->scratch;
    struct diagnostics *diagnostics = arena_allocate(scratch, sizeof *diagnostics);
    struct specification *specification = arena_allocate(scratch, sizeof *specification);
    diagnostics->arena = scratch;
    struct plan plan;
    bool same = build_file_walk(scratch, trial->tree, diagnostics, specification) &&
                plan_make(scratch, specification, trial->plan->us, trial->option, &plan) &&
                parts_are_same(trial, &plan, use);
    arena_reuse(scratch);
    return same;
}

/* Takes a child out of its mapping, tries, and puts it back. */
static bool is_unused(const struct trial *trial, struct node *mapping, struct node *child,
                      unsigned use)
{
    struct node **link = &mapping->first;
    while (*link != child)
        link = &(*link)->next;
    *link = child->next;
    bool unused = gives_the_same(trial, use);
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
    else if (!is_name(key) && !(key->use & USE_CHOOSING) && !is_read_elsewhere(use) &&
             is_unused(trial, mapping, child, use))
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

static size_t count_values(const struct node *node)
{
    size_t count = node->first == NULL;
    for (const struct node *child = node->first; child != NULL; child = child->next)
        count += count_values(child);
    return count;
}

/* How many tries of so much each make no more than `most`. */
static size_t tries_of(size_t each, size_t most)
{
    return each > most / KEYS_TRIED_MAX ? most / each : KEYS_TRIED_MAX;
}

void unused_keys_find(struct arena *arena, const struct plan *plan, struct node *tree,
                      const char *option, const struct figures *baseline, struct unused_keys *out)
{
    size_t by_figures = tries_of(baseline->count, FIGURES_TRIED_MAX);
    size_t by_values = tries_of(count_values(tree), VALUES_TRIED_MAX);
    *out = (struct unused_keys){
        .items = arena_allocate_array(arena, KEYS_TRIED_MAX, sizeof *out->items),
        .tried_max = by_figures < by_values ? by_figures : by_values,
    };
    struct arena scratch = ARENA_EMPTY;
    struct figures figures = {.room = arena};
    const struct trial trial = {arena, plan, tree, option, baseline, &scratch, &figures, out};
    try_mapping(&trial, &build_file_keys, tree, "", USE_ALL);
    arena_free(&scratch);
}
