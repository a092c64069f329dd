#include "yaml/walk.h"

#include "base/nearest.h"
#include "build/specification.h"
#include "yaml/walk_values.h"

enum { MAPPINGS_MAX = 2000 };

static void *field_of(const struct key *key, void *target)
{
    return (char *)target + key->offset;
}

static void clear_field(const struct key *key, void *field)
{
    static const struct axle_pair unknown_pair = {UNKNOWN, UNKNOWN};
    static const struct bound unknown_bound = {UNKNOWN, KIND_BARE};
    static const struct choice_or_value no_choice = {CHOICE_NONE, UNKNOWN};
    switch (key->kind) {
    case KEY_QUANTITY:
        *(double *)field = UNKNOWN;
        break;
    case KEY_QUANTITY_PAIR:
        *(struct axle_pair *)field = unknown_pair;
        break;
    case KEY_BOUND:
        *(struct bound *)field = unknown_bound;
        break;
    case KEY_CHOICE:
    case KEY_BOOLEAN:
        *(int *)field = CHOICE_NONE;
        break;
    case KEY_CHOICE_OR_VALUE:
        *(struct choice_or_value *)field = no_choice;
        break;
    case KEY_MAPPING:
        walk_clear(key->set, field);
        break;
    default: /* texts, letters, designations and lists are empty as allocated: all zero */
        break;
    }
}

void walk_clear(const struct key_set *set, void *target)
{
    for (size_t i = 0; i < set->count; i++)
        clear_field(&set->keys[i], field_of(&set->keys[i], target));
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
            "a number, such as 2.85 m",
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

/* A list of mappings; one mapping alone counts as a list of one. */
static void walk_mapping_list(struct walk *walk, const struct key *key, struct node *node,
                              void *field)
{
    struct {
        void *items;
        size_t count;
    } list = {NULL, 0};
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
    for (struct node *child = alone ? node : node->first; child != NULL; child = child->next) {
        walk_clear(key->set, item);
        walk_mapping(walk, key->set, child, item);
        item += key->set->size;
        if (alone)
            break;
    }
    memcpy(field, &list, sizeof list);
}

void walk_mapping(struct walk *walk, const struct key_set *set, struct node *node, void *target)
{
    if (node->kind != NODE_MAPPING) {
        bool colon = node->kind == NODE_SCALAR && memchr(node->text.at, ':', node->text.length);
        walk_fault(walk, node, "%s expects a mapping, such as {%s: ...}%s",
                   walk_key_name(walk, node), set->keys[0].name,
                   colon ? "; a blank is needed behind the colon" : "");
        return;
    }
    const struct node *self = node;
    memcpy(target, &self, sizeof self);
    for (struct node *child = node->first; child != NULL; child = child->next) {
        const struct key *key = find_key(set, child->key->text);
        if (key == NULL) {
            unknown_key(walk, set, child->key);
            continue;
        }
        child->used = true;
        void *field = field_of(key, target);
        if (key->kind == KEY_MAPPING)
            walk_mapping(walk, key->set, child, field);
        else if (key->kind == KEY_MAPPING_LIST)
            walk_mapping_list(walk, key, child, field);
        else
            walk_value(walk, key, child, field);
    }
}
