#include "yaml/one_line.h"

#include "base/utf8.h"

/* The next word of a scalar's text as a node of its own; an empty one at its end. */
static struct node *next_word(struct arena *arena, const struct node *node, size_t *at)
{
    struct span text = node->text;
    while (*at < text.length && is_blank(text.at[*at]))
        ++*at;
    size_t start = *at;
    while (*at < text.length && !is_blank(text.at[*at]))
        ++*at;
    struct mark mark = node->mark;
    if (node->as_written)
        mark.column += node->quoted + count_characters((struct span){text.at, start});
    struct node *word =
        tree_node(arena, NODE_SCALAR, (struct span){text.at + start, *at - start}, mark);
    word->as_written = node->as_written;
    return word;
}

static bool names_a_key(const struct key_set *set, struct span word)
{
    for (size_t i = 0; i < set->count; i++)
        if (span_is(word, set->keys[i].name))
            return true;
    return false;
}

static void expand(struct arena *arena, const struct key_set *set, struct node *node)
{
    struct node mapping = *tree_node(arena, NODE_MAPPING, (struct span){NULL, 0}, node->mark);
    mapping.key = node->key;
    mapping.next = node->next;
    size_t at = 0, without_name = set->one_line;
    for (;;) {
        struct node *word = next_word(arena, node, &at);
        if (word->text.length == 0)
            break;
        if (mapping.count < without_name && !names_a_key(set, word->text)) {
            struct span name = span_of(set->keys[mapping.count].name);
            tree_append(&mapping, tree_node(arena, NODE_SCALAR, name, word->mark), word);
        } else {
            without_name = 0;
            tree_append(&mapping, word, next_word(arena, node, &at));
        }
    }
    *node = mapping;
}

void one_lines_expand(struct arena *arena, const struct key_set *set, struct node *node)
{
    if (node->kind == NODE_SCALAR && set->one_line > 0 && node->text.length > 0)
        expand(arena, set, node);
    if (node->kind != NODE_MAPPING)
        return;
    for (size_t i = 0; i < set->count; i++) {
        if (set->keys[i].kind != KEY_MAPPING)
            continue;
        for (struct node *child = node->first; child != NULL; child = child->next)
            if (span_is(child->key->text, set->keys[i].name))
                one_lines_expand(arena, set->keys[i].set, child);
    }
}
