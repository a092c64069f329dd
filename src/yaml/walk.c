#include "yaml/walk.h"

#include "base/nearest.h"
#include "build/keys.h"

enum { MAPPINGS_MAX = 2000 };

static void *field_of(const struct key *key, void *target)
{
    return (char *)target + key->offset;
}

static const struct key *find_key(const struct key_set *set, struct span name)
{
    for (size_t i = 0; i < set->count; i++)
        if (span_is(name, set->keys[i].name))
            return &set->keys[i];
    return NULL;
}

static void unknown_key(struct walk *walk, const struct key_set *set, const struct node *key)
{
    struct nearest nearest = nearest_start(key->text);
    if (key->text.length > 0 && is_digit(key->text.at[0])) {
        walk_fault(
            walk, key,
            "\"%s\" stands behind a comma, where a key is expected; write a decimal point in "
            "a number, such as 2.91 m",
            quotable(walk->arena, key->text));
        return;
    }
    for (size_t i = 0; i < set->count; i++)
        nearest_try(&nearest, set->keys[i].name);
    const char *name = quotable(walk->arena, key->text), *near = nearest_found(&nearest);
    if (near != NULL) {
        walk_fault(walk, key, "the key \"%s\" is not known here; did you mean \"%s\"?", name, near);
        return;
    }
    const char *list = "";
    for (size_t i = 0; i < set->count; i++)
        list = arena_format(walk->arena, "%s%s%s", list, i > 0 ? ", " : "", set->keys[i].name);
    walk_fault(walk, key, "the key \"%s\" is not known here; expected one of: %s", name, list);
}

static void walk_mapping(struct walk *walk, const struct key_set *set, const struct node *node,
                         void *target);

/* A list of mappings; one mapping alone counts as a list of one. */
static void walk_mapping_list(struct walk *walk, const struct key *key, const struct node *node,
                              void *field)
{
    struct mapping_list list = {NULL, 0};
    if (node->kind == NODE_SCALAR) {
        walk_fault(walk, node, "%s expects a list of mappings, such as \"- {%s: ...}\"",
                   walk_key_name(walk, node), key->set->keys[0].name);
        return;
    }
    if (node->kind == NODE_SEQUENCE && node->count > MAPPINGS_MAX) {
        walk_fault(walk, node, "%s has %zu items; at most %d are read", walk_key_name(walk, node),
                   node->count, MAPPINGS_MAX);
        return;
    }
    bool alone = node->kind == NODE_MAPPING;
    list.count = alone ? 1 : node->count;
    list.items = arena_allocate_array(walk->arena, list.count, key->set->size);
    char *item = list.items;
    for (const struct node *child = alone ? node : node->first; child != NULL;
         child = child->next) {
        key_set_clear(key->set, item);
        walk_mapping(walk, key->set, child, item);
        item += key->set->size;
        if (alone)
            break;
    }
    memcpy(field, &list, sizeof list);
}

/* A mapping that a word says there is none of: given, with nothing within. */
static void walk_none(struct walk *walk, const struct key *key, const struct node *node,
                      void *field)
{
    if (span_is(node->text, "none"))
        *(const struct given **)field = node->given;
    else
        walk_fault(walk, node, "%s expects a mapping, such as {%s: ...}, or none",
                   walk_key_name(walk, node), key->set->keys[0].name);
}

static void walk_mapping(struct walk *walk, const struct key_set *set, const struct node *node,
                         void *target)
{
    if (node->kind != NODE_MAPPING) {
        bool colon = node->kind == NODE_SCALAR && memchr(node->text.at, ':', node->text.length);
        walk_fault(walk, node, "%s expects a mapping, such as {%s: ...}%s",
                   walk_key_name(walk, node), set->keys[0].name,
                   colon ? "; a blank is needed behind the colon" : "");
        return;
    }
    *(const struct given **)target = node->given;
    for (const struct node *child = node->first; child != NULL; child = child->next) {
        const struct key *key = find_key(set, child->key->text);
        if (key == NULL) {
            unknown_key(walk, set, child->key);
            continue;
        }
        void *field = field_of(key, target);
        if (key->or_none && child->kind == NODE_SCALAR)
            walk_none(walk, key, child, field);
        else if (key->kind == KEY_MAPPING)
            walk_mapping(walk, key->set, child, field);
        else if (key->kind == KEY_MAPPING_LIST)
            walk_mapping_list(walk, key, child, field);
        else
            walk_value(walk, key, child, field);
    }
}

/* Where everything stands, for the rules. */
static struct given *take_places(struct walk *walk, struct node *node)
{
    static const enum given_form forms[] = {
        [NODE_SCALAR] = GIVEN_VALUE, [NODE_SEQUENCE] = GIVEN_LIST, [NODE_MAPPING] = GIVEN_MAPPING};
    struct given *given = arena_allocate(walk->arena, sizeof *given);
    given->mark = node->mark;
    given->form = forms[node->kind];
    if (node->key != NULL)
        given->key = node->key->text;
    const struct given **link = &given->first;
    for (struct node *child = node->first; child != NULL; child = child->next) {
        struct given *within = take_places(walk, child);
        *link = within;
        link = &within->next;
    }
    node->given = given;
    return given;
}

void walk_file(struct walk *walk, struct node *root, struct specification *out)
{
    take_places(walk, root);
    specification_clear(out);
    walk_mapping(walk, &build_file_keys, root, out);
}
