/* One mutation of a build file, chosen by bytes: of its tree before it is written, or of its text
 * after. A mutation says where it was made, and whether the file must then be refused. */
#ifndef TYRESUM_TESTS_FUZZ_MUTATIONS_H
#define TYRESUM_TESTS_FUZZ_MUTATIONS_H

#include "mutant_text.h"

#include "build/keys.h"
#include "size/quantity_text.h"

enum {
    NODES_MAX = 2048,
    PATH_MAX_DEPTH = 16,
    NAME_SIZE = 128,
    FLOW_DEPTHS = 5,
    SMALL_CHOICES = 232
};

struct spot {
    struct node *node, *parent;
};

struct mutant {
    const uint8_t *data;
    size_t size;
    struct arena *arena;
    struct spot places[NODES_MAX];
    size_t count;
    struct written *written;
    const struct spot *place; /* what is mutated; its names are told by a fault elsewhere */
    char before[NAME_SIZE];   /* its key before it was renamed */
    bool more;                /* something is there once more: a fault may stand in the copies */
    bool anywhere;            /* the text itself is changed: a fault may stand anywhere */
    bool refused;             /* this must not be accepted */
    const char *what;
};

static inline size_t next_byte(struct mutant *mutant)
{
    if (mutant->size == 0)
        return 0;
    mutant->size--;
    return *mutant->data++;
}

static inline size_t next_below(struct mutant *mutant, size_t limit)
{
    size_t high = limit > 256 ? next_byte(mutant) : 0;
    return limit == 0 ? 0 : (high * 256 + next_byte(mutant)) % limit;
}

static inline void collect(struct mutant *mutant, struct node *parent)
{
    for (struct node *child = parent->first; child != NULL; child = child->next) {
        if (mutant->count < NODES_MAX)
            mutant->places[mutant->count++] = (struct spot){child, parent};
        collect(mutant, child);
    }
}

static inline bool any_place(const struct spot *place)
{
    return place->node != NULL;
}

static inline bool is_keyed(const struct spot *place)
{
    return place->node->key != NULL;
}

static inline bool is_scalar(const struct spot *place)
{
    return place->node->kind == NODE_SCALAR;
}

static inline bool is_quantity(const struct spot *place)
{
    struct quantity read;
    struct quantity_error error;
    for (int kind = 0; kind < KIND_COUNT && is_scalar(place) && !place->node->quoted; kind++)
        if (quantity_parse(place->node->text, (enum unit_kind)kind, &read, &error))
            return true;
    return false;
}

static inline bool is_item(const struct spot *place)
{
    return place->parent->kind == NODE_SEQUENCE;
}

static inline struct node *parent_of(const struct mutant *mutant, const struct node *node)
{
    for (size_t i = 0; i < mutant->count; i++)
        if (mutant->places[i].node == node)
            return mutant->places[i].parent;
    return NULL;
}

/* The mapping or list in which a fault may stand at a neighbour: of a pair, the list of pairs;
 * never the whole file. */
static const struct node *around(const struct mutant *mutant, const struct spot *place)
{
    const struct node *outer = parent_of(mutant, place->parent);
    return outer != NULL && parent_of(mutant, outer) != NULL ? outer : place->parent;
}

/* One of the places that suit, and the only one that is mutated; false where there is none. */
static inline bool choose(struct mutant *mutant, bool (*suits)(const struct spot *))
{
    size_t start = next_below(mutant, mutant->count);
    for (size_t i = 0; i < mutant->count; i++) {
        const struct spot *place = &mutant->places[(start + i) % mutant->count];
        if (!suits(place))
            continue;
        mutant->place = place;
        mutant->written->wanted = place->node;
        mutant->written->around = around(mutant, place);
        return true;
    }
    return false;
}

static inline struct node *copy_of(struct mutant *mutant, const struct node *node)
{
    struct node *copy = arena_allocate(mutant->arena, sizeof *copy);
    *copy = *node;
    return copy;
}

static inline void insert_behind(const struct spot *place, struct node *node)
{
    node->next = place->node->next;
    place->node->next = node;
}

static inline void set_text(struct mutant *mutant, struct node *node, struct span text)
{
    node->text = (struct span){arena_copy(mutant->arena, text), text.length};
    node->kind = NODE_SCALAR;
    node->first = node->last = NULL;
}

static inline bool is_known_key(const struct key_set *set, struct span name, size_t depth)
{
    for (size_t i = 0; i < set->count && depth < PATH_MAX_DEPTH; i++)
        if (span_is(name, set->keys[i].name) ||
            (set->keys[i].set != NULL && is_known_key(set->keys[i].set, name, depth + 1)))
            return true;
    return false;
}

static inline void rename_key(struct mutant *mutant)
{
    if (!choose(mutant, is_keyed))
        return;
    struct node *key = copy_of(mutant, mutant->place->node->key);
    char name[NAME_SIZE];
    size_t length = key->text.length < NAME_SIZE - 2 ? key->text.length : NAME_SIZE - 2;
    size_t at = next_below(mutant, length), how = next_byte(mutant);
    char letter = (char)('a' + next_byte(mutant) % 26);
    memcpy(name, key->text.at, length);
    snprintf(mutant->before, sizeof mutant->before, "%.*s", (int)length, name);
    if (how % 3 == 0 && length > 1) {
        memmove(name + at, name + at + 1, length - at - 1);
        length--;
    } else if (how % 3 == 1) {
        memmove(name + at + 1, name + at, length - at);
        name[at] = letter;
        length++;
    } else {
        name[at] = letter;
    }
    set_text(mutant, key, (struct span){name, length});
    const struct node *outer = mutant->place->parent->key; /* states have names of their own */
    bool free_name = outer != NULL && span_is(outer->text, "states");
    mutant->refused = !free_name && !is_known_key(&build_file_keys, key->text, 0);
    mutant->place->node->key = key;
}

static inline void duplicate(struct mutant *mutant)
{
    if (!choose(mutant, any_place))
        return;
    struct node *twin = copy_of(mutant, mutant->place->node);
    const struct spot *other = &mutant->places[next_below(mutant, mutant->count)];
    if (next_byte(mutant) % 2 == 0 && is_scalar(mutant->place) && is_scalar(other))
        twin->text = other->node->text;
    insert_behind(mutant->place, twin);
    mutant->written->wanted = twin;
    mutant->refused = is_keyed(mutant->place);
    mutant->more = true;
}

/* What is no quantity of any kind, as it is written. */
static const char *const no_quantities[] = {
    "",
    "~",
    "null",
    "true",
    "nan",
    ".nan",
    "NaN mm",
    "inf",
    ".inf",
    "-.inf kg",
    "1e3 mm",
    "0x10 mm",
    "1_000 kg",
    "1:30",
    "2,5 mm",
    ".5 mm",
    "5. mm",
    "--5 mm",
    "- mm",
    "mm",
    "5 furlongs",
    "\"\"",
    "'5 m m'",
    "5 \xC2\xB5m",
    "\xEF\xBC\x95 mm",
    "1234567890123456 mm",
    "0.0000000000000001 mm",
    "5 mm mm",
    "\"5\\n\\nmm\"",
    "\"5\\u0000 mm\"",
    "\"5\\e[31m mm\"",
    "{}",
    "[[]]",
    "{a: b}",
    "[[1 mm, 2 mm]]",
};

/* Numbers at the ends of what is read. */
static const char *const hard_numbers[] = {
    "0",
    "-0",
    "0.0",
    "-1",
    "1",
    "0.00000000000001",
    "999999999999999",
    "-999999999999999",
    "100000000000000",
    "0.000001",
    "1000000",
    "0.5",
    "90",
    "89.9999999999",
    "100",
    "99.9999",
    "1.0000000000001",
    "-0.0000000001",
    "3",
    "12",
    "256",
    "65536",
};

static const char *const hard_words[] = {
    "all",
    "fitted",
    "builtin",
    "rule",
    "lowest_lawful",
    "as_before",
    "roof",
    "row_4",
    "false",
    "diesel",
    "un_r39",
    "eu_recording",
    "au_offroad",
    "front",
    "passenger_car",
    "A",
    "N",
    "rear",
    "wheel",
    "shaft",
    "cable",
    "scale",
    "scale_and_offset",
    "circumference_mm",
    "revs_per_km",
    "driven_gear_teeth",
    "mph",
    "T125/70D15 95M",
    "185R14C 102/100R",
    "315/80R22.5 156/150L",
    "31x10.50R15LT 109Q",
    "7.50R16 116/114L",
    "205/55ZRF16 (91Y)",
    "LT255/75R16 111/108Q",
    "155/80R13 79T",
    "205/55R16",
    "37x12.50R17LT 124Q",
    "255/70R22.5 140/137M",
    "P155/80R13 79S",
};

#define ONE_OF(mutant, list) (list)[next_below(mutant, sizeof(list) / sizeof(list)[0])]

static inline void replace_by_no_quantity(struct mutant *mutant)
{
    if (!choose(mutant, is_quantity))
        return;
    set_text(mutant, mutant->place->node, span_of(ONE_OF(mutant, no_quantities)));
    /* An item of nothing behind a comma is no item. */
    mutant->refused = is_keyed(mutant->place) || mutant->place->node->text.length > 0;
}

static inline void replace_number(struct mutant *mutant)
{
    if (!choose(mutant, is_quantity))
        return;
    double value;
    struct span text = mutant->place->node->text;
    size_t read = decimal_read(text, &value);
    const char *number = ONE_OF(mutant, hard_numbers);
    set_text(mutant, mutant->place->node,
             span_of(arena_format(mutant->arena, "%s%.*s", number, (int)(text.length - read),
                                  text.at + read)));
}

static inline void replace_unit(struct mutant *mutant)
{
    if (!choose(mutant, is_quantity))
        return;
    double value;
    struct span text = mutant->place->node->text;
    size_t read = decimal_read(text, &value);
    const char *unit = unit_table[next_below(mutant, UNIT_COUNT)].name;
    set_text(mutant, mutant->place->node,
             span_of(arena_format(mutant->arena, "%.*s %s", (int)read, text.at, unit)));
}

/* A word, or what another place of the file has. */
static inline void replace_by_word(struct mutant *mutant)
{
    if (!choose(mutant, any_place))
        return;
    const struct spot *other = &mutant->places[next_below(mutant, mutant->count)];
    if (next_byte(mutant) % 2 == 0 && is_scalar(other))
        set_text(mutant, mutant->place->node, other->node->text);
    else
        set_text(mutant, mutant->place->node, span_of(ONE_OF(mutant, hard_words)));
}

static inline void remove_node(struct mutant *mutant)
{
    if (!choose(mutant, any_place))
        return;
    struct node **link = &mutant->place->parent->first;
    while (*link != mutant->place->node)
        link = &(*link)->next;
    *link = mutant->place->node->next;
    mutant->written->wanted = mutant->place->parent;
}

static inline void duplicate_item(struct mutant *mutant)
{
    if (!choose(mutant, is_item))
        return;
    mutant->more = true;
    for (size_t i = next_byte(mutant) % 16;; i--) {
        insert_behind(mutant->place, copy_of(mutant, mutant->place->node));
        if (i == 0)
            break;
    }
}

static inline void lead_value(struct mutant *mutant)
{
    static const char *const leads[] = {"&a ", "!a ", "!!str ", "!!float ", "&b !!map ", "!<x> "};
    if (!choose(mutant, any_place))
        return;
    mutant->refused = true;
    if (next_byte(mutant) % 4 == 0)
        set_text(mutant, mutant->place->node, span_of("*a"));
    else
        mutant->written->lead = ONE_OF(mutant, leads);
}

static inline void change_nothing(struct mutant *mutant)
{
    mutant->anywhere = true;
}

/* Changes of the text, after it is written. */
static inline void change_byte(struct mutant *mutant)
{
    struct written *out = mutant->written;
    out->text[next_below(mutant, out->size)] = (char)next_byte(mutant);
}

static inline void insert_bytes(struct mutant *mutant)
{
    static const char *const pieces[] = {"\t",          "\"",
                                         "'",           "#",
                                         "\n",          "\r",
                                         ": ",          "- ",
                                         "{",           "}",
                                         "[",           "]",
                                         ",",           "\xEF\xBB\xBF",
                                         "\xC2\x85",    "\xE2\x80\xA8",
                                         "\n---\n",     "\n...\n",
                                         "%YAML 1.1\n", "|\n",
                                         ">\n",         "? ",
                                         "<<: ",        "\xFF",
                                         "\x1B",        "@"};
    struct written *out = mutant->written;
    const char *piece = ONE_OF(mutant, pieces);
    size_t at = next_below(mutant, out->size), length = strlen(piece);
    if (out->size + length > sizeof out->text)
        return;
    memmove(out->text + at + length, out->text + at, out->size - at);
    memcpy(out->text + at, piece, length);
    out->size += length;
}

static inline void cut_text(struct mutant *mutant)
{
    struct written *out = mutant->written;
    size_t at = next_below(mutant, out->size);
    size_t length = next_byte(mutant);
    if (length == 0 || length > out->size - at)
        length = out->size - at;
    memmove(out->text + at, out->text + at + length, out->size - at - length);
    out->size -= length;
}

/* One line goes in or out by up to three blanks. */
static inline void change_indent(struct mutant *mutant)
{
    struct written *out = mutant->written;
    size_t line = next_below(mutant, out->line), by = 1 + next_byte(mutant) % 3, at = 0;
    while (line > 0 && at < out->size)
        line -= out->text[at++] == '\n';
    bool in = next_byte(mutant) % 2 == 0 && out->size + by <= sizeof out->text;
    if (in) {
        memmove(out->text + at + by, out->text + at, out->size - at);
        memset(out->text + at, ' ', by);
        out->size += by;
        return;
    }
    size_t blanks = 0;
    while (blanks < by && at + blanks < out->size && out->text[at + blanks] == ' ')
        blanks++;
    memmove(out->text + at, out->text + at + blanks, out->size - at - blanks);
    out->size -= blanks;
}

static const struct {
    const char *name;
    void (*tree)(struct mutant *);
    void (*text)(struct mutant *);
} mutations[] = {
    {"a key renamed", rename_key, NULL},
    {"a node twice", duplicate, NULL},
    {"no quantity", replace_by_no_quantity, NULL},
    {"another number", replace_number, NULL},
    {"another number", replace_number, NULL},
    {"another unit", replace_unit, NULL},
    {"another word", replace_by_word, NULL},
    {"a node less", remove_node, NULL},
    {"an item more", duplicate_item, NULL},
    {"an anchor, tag or alias", lead_value, NULL},
    {"a byte changed", change_nothing, change_byte},
    {"bytes inserted", change_nothing, insert_bytes},
    {"bytes cut", change_nothing, cut_text},
    {"indentation changed", change_nothing, change_indent},
};

#endif
