/* JSON Schema of the build file, for editors: what the key table can say of a single key. Rules
 * between keys, and the range of a quantity with its unit, are told by `tyresum check` alone. */
#include <string.h>

#include "base/units.h"
#include "docgen/docgen.h"

enum { SETS_MAX = 64 };

struct schema {
    struct arena *arena;
    struct outbuf *out;
    const struct key_set *sets[SETS_MAX]; /* named by their place: $defs/set_1 */
    size_t count;
};

/* Keys without which the program refuses the mapping: the rules of build/rules.c that name
 * one key. */
static const struct {
    const char *set_key; /* the key that the mapping stands under; "" for the whole file */
    const char *required;
} required[] = {
    {"", "\"tyres\""},       {"tyres", "\"fitted\""},
    {"fitted", "\"size\""},  {"options", "\"name\", \"size\""},
    {"carried", "\"item\""}, {"drivetrain", "\"axle\""},
    {"setting", "\"kind\""},
};

static size_t set_number(struct schema *schema, const struct key_set *set)
{
    for (size_t i = 0; i < schema->count; i++)
        if (schema->sets[i] == set)
            return i;
    if (schema->count < SETS_MAX)
        schema->sets[schema->count++] = set;
    return schema->count - 1;
}

/* A unit's letters in either case, as the program reads them. */
static const char *unit_pattern(struct arena *arena, const char *name)
{
    const char *pattern = "";
    for (; *name != '\0'; name++) {
        if (is_letter(*name)) {
            char upper = upper_case(*name), lower = (char)(upper - 'A' + 'a');
            pattern = arena_format(arena, "%s[%c%c]", pattern, upper, lower);
        } else {
            pattern = arena_format(arena, "%s%c", pattern, *name);
        }
    }
    return pattern;
}

static const char *quantity_pattern(struct arena *arena, enum unit_kind kind)
{
    const char *units = "";
    for (int unit = UNIT_BARE + 1; unit < UNIT_COUNT; unit++)
        if (unit_table[unit].kind == kind)
            units = arena_format(arena, "%s%s%s", units, *units ? "|" : "",
                                 unit_pattern(arena, unit_table[unit].name));
    return arena_format(arena, "^[+-]?[0-9]+(\\.[0-9]+)?[ \\t]*(%s)$", units);
}

static void put_pattern(struct outbuf *out, const char *pattern)
{
    put_all(out, "{\"type\": \"string\", \"pattern\": ", NULL);
    put_json(out, pattern);
    put_all(out, "}", NULL);
}

/* A bare number may stand in quotes as well: they do not change what a value means. */
static void put_quantity(struct schema *schema, const struct key *key, enum unit_kind kind)
{
    struct arena *arena = schema->arena;
    if (kind != KIND_BARE) {
        put_pattern(schema->out, quantity_pattern(arena, kind));
        return;
    }
    put_all(schema->out, "{\"anyOf\": [{\"type\": \"number\"", NULL);
    if (key->min != 0 || key->max != 0)
        put_all(schema->out,
                arena_format(arena, ", \"minimum\": %.10g, \"maximum\": %.10g", key->min, key->max),
                NULL);
    put_all(schema->out, "}, ", NULL);
    put_pattern(schema->out, "^[+-]?[0-9]+(\\.[0-9]+)?$");
    put_all(schema->out, "]}", NULL);
}

static void put_choices(struct schema *schema, const struct key *key)
{
    put_all(schema->out, "{\"enum\": [\"", joined(schema->arena, key->choices, "\", \""), "\"]}",
            NULL);
}

static const char any_text[] = "{\"type\": [\"string\", \"number\", \"boolean\"]}";

static void put_pair(struct schema *schema, const struct key *key)
{
    put_all(schema->out, "{\"anyOf\": [", NULL);
    put_quantity(schema, key, key->unit);
    put_all(
        schema->out,
        ", {\"type\": \"object\", \"additionalProperties\": false, \"properties\": {\"front\": ",
        NULL);
    put_quantity(schema, key, key->unit);
    put_all(schema->out, ", \"rear\": ", NULL);
    put_quantity(schema, key, key->unit);
    put_all(schema->out, "}}]}", NULL);
}

/* [first, second], or with a third. */
static void put_tuple(struct schema *schema, const struct key *key)
{
    bool three = key->kind == KEY_TRIPLE_LIST;
    const char *count = three ? "3" : "2";
    put_all(schema->out, "{\"type\": \"array\", \"minItems\": ", count, ", \"maxItems\": ", count,
            ", \"prefixItems\": [", NULL);
    put_quantity(schema, key, key->unit);
    put_all(schema->out, ", ", NULL);
    put_quantity(schema, key, key->second_unit);
    if (three) {
        put_all(schema->out, ", ", NULL);
        put_quantity(schema, key, key->third_unit);
    }
    put_all(schema->out, "]}", NULL);
}

static void put_list(struct schema *schema, const struct key *key)
{
    struct outbuf *out = schema->out;
    put_all(out, "{\"type\": \"array\", \"items\": ", NULL);
    if (key->kind == KEY_NUMBER_LIST || key->kind == KEY_NUMBERS) {
        put_quantity(schema, key, key->unit);
    } else if (key->kind == KEY_TEXT_LIST && key->choices != NULL) {
        put_choices(schema, key);
    } else if (key->kind == KEY_TEXT_LIST) {
        put_all(out, any_text, NULL);
    } else {
        put_tuple(schema, key);
    }
    put_all(out, "}", NULL);
}

static void put_mapping(struct schema *schema, const struct key *key)
{
    const char *reference = arena_format(schema->arena, "{\"$ref\": \"#/$defs/set_%zu\"}",
                                         set_number(schema, key->set) + 1);
    if (key->or_none)
        put_all(schema->out, "{\"anyOf\": [", reference, ", {\"const\": \"none\"}]}", NULL);
    else if (key->kind == KEY_MAPPING)
        put_all(schema->out, reference, NULL);
    else
        put_all(schema->out, "{\"anyOf\": [", reference,
                ", {\"type\": \"array\", \"items\": ", reference, "}]}", NULL);
}

/* Either of two: a word or quantity, a quantity of one kind or another. */
static void put_either(struct schema *schema, const struct key *key)
{
    put_all(schema->out, "{\"anyOf\": [", NULL);
    if (key->kind == KEY_BOUND)
        put_quantity(schema, key, key->second_unit);
    else
        put_choices(schema, key);
    put_all(schema->out, ", ", NULL);
    put_quantity(schema, key, key->unit);
    put_all(schema->out, "]}", NULL);
}

static void put_value(struct schema *schema, const struct key *key)
{
    struct outbuf *out = schema->out;
    switch (key->kind) {
    case KEY_QUANTITY:
        put_quantity(schema, key, key->unit);
        break;
    case KEY_QUANTITY_PAIR:
        put_pair(schema, key);
        break;
    case KEY_BOUND:
    case KEY_CHOICE_OR_VALUE:
        put_either(schema, key);
        break;
    case KEY_TEXT:
        put_all(out, any_text, NULL);
        break;
    case KEY_LETTER:
        put_pattern(out, arena_format(schema->arena, "^[%sabcdefghjlmn]$", key->choices[0]));
        break;
    case KEY_CHOICE:
        put_choices(schema, key);
        break;
    case KEY_BOOLEAN:
        put_all(out, "{\"enum\": [true, false, \"true\", \"false\", \"yes\", \"no\"]}", NULL);
        break;
    case KEY_DESIGNATION:
        put_all(out, "{\"type\": \"string\", \"minLength\": 1}", NULL);
        break;
    case KEY_TEXT_LIST:
    case KEY_NUMBER_LIST:
    case KEY_PAIR_LIST:
    case KEY_TRIPLE_LIST:
        put_list(schema, key);
        break;
    case KEY_NUMBERS:
        put_all(out, "{\"anyOf\": [", NULL);
        put_quantity(schema, key, key->unit);
        put_all(out, ", ", NULL);
        put_list(schema, key);
        put_all(out, "]}", NULL);
        break;
    case KEY_MAPPING:
    case KEY_MAPPING_LIST:
        put_mapping(schema, key);
        break;
    case KEY_STATES:
        put_all(
            out,
            "{\"type\": \"object\", \"additionalProperties\": {\"anyOf\": [{\"const\": \"all\"}, "
            "{\"type\": \"array\", \"items\": ",
            any_text, "}]}}", NULL);
        break;
    }
}

static void put_set(struct schema *schema, const struct key_set *set, const char *set_key)
{
    struct outbuf *out = schema->out;
    put_all(out, "\"type\": \"object\", \"additionalProperties\": false,\n", NULL);
    for (size_t i = 0; i < sizeof required / sizeof required[0]; i++)
        if (strcmp(required[i].set_key, set_key) == 0)
            put_all(out, "\"required\": [", required[i].required, "],\n", NULL);
    put_all(out, "\"properties\": {", NULL);
    for (size_t i = 0; i < set->count; i++) {
        put_all(out, i > 0 ? ",\n  " : "\n  ", NULL);
        put_json(out, set->keys[i].name);
        put_all(out, ": {\"description\": ", NULL);
        put_json(out, set->keys[i].doc);
        put_all(out, ", \"allOf\": [", NULL);
        put_value(schema, &set->keys[i]);
        put_all(out, "]}", NULL);
    }
    put_all(out, "}", NULL);
}

/* The key that a set stands under, found from the root. */
static const char *key_of_set(const struct key_set *from, const struct key_set *wanted)
{
    for (size_t i = 0; i < from->count; i++) {
        const struct key *key = &from->keys[i];
        if (key->set == wanted)
            return key->name;
        const char *below = key->set == NULL ? NULL : key_of_set(key->set, wanted);
        if (below != NULL)
            return below;
    }
    return NULL;
}

void write_build_schema(struct arena *arena, struct outbuf *out)
{
    struct schema schema = {.arena = arena, .out = out};
    put_all(out,
            "{\"$schema\": \"https://json-schema.org/draft/2020-12/schema\",\n"
            "\"title\": \"build file of tyresum\",\n",
            NULL);
    put_set(&schema, &build_file_keys, "");
    put_all(out, ",\n\"$defs\": {", NULL);
    for (size_t i = 0; i < schema.count; i++) { /* sets are added while others are written */
        put_all(out, arena_format(arena, "%s\n\"set_%zu\": {", i > 0 ? "," : "", i + 1), NULL);
        const char *key = key_of_set(&build_file_keys, schema.sets[i]);
        put_set(&schema, schema.sets[i], key == NULL ? "-" : key);
        put_all(out, "}", NULL);
    }
    put_all(out, "}}\n", NULL);
}
