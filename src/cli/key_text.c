#include "cli/key_text.h"

#include "base/units.h"

const char *joined(struct arena *arena, const char *const *choices, const char *separator)
{
    const char *list = "";
    for (size_t i = 0; choices[i] != NULL; i++)
        list = arena_format(arena, "%s%s%s", list, i > 0 ? separator : "", choices[i]);
    return list;
}

const char *key_range_text(struct arena *arena, const struct key *key)
{
    if (key->min == 0 && key->max == 0)
        return "";
    enum unit_id unit = unit_of_kind(key->unit);
    return arena_format(arena, ", %.6g to %.6g%s%s", unit_from_si(unit, key->min),
                        unit_from_si(unit, key->max), unit == UNIT_BARE ? "" : " ",
                        unit_table[unit].name);
}

const char *key_kind_text(struct arena *arena, const struct key *key)
{
    const char *kind = unit_kind_name(key->unit);
    switch (key->kind) {
    case KEY_QUANTITY:
        return kind;
    case KEY_QUANTITY_PAIR:
        return arena_format(arena, "%s, or {front: ..., rear: ...}", kind);
    case KEY_BOUND:
        return arena_format(arena, "%s or %s", kind, unit_kind_name(key->second_unit));
    case KEY_TEXT:
        return "a name";
    case KEY_LETTER:
        return arena_format(arena, "a letter of %s", key->choices[0]);
    case KEY_CHOICE:
        return arena_format(arena, "one of %s", joined(arena, key->choices, ", "));
    case KEY_BOOLEAN:
        return "yes or no, true or false";
    case KEY_CHOICE_OR_VALUE:
        return arena_format(arena, "one of %s, or %s", joined(arena, key->choices, ", "), kind);
    case KEY_DESIGNATION:
        return "a size designation";
    case KEY_TEXT_LIST:
        return key->choices == NULL
                   ? "a list of names"
                   : arena_format(arena, "a list of %s", joined(arena, key->choices, ", "));
    case KEY_NUMBER_LIST:
        return arena_format(arena, "a list, each %s", kind);
    case KEY_PAIR_LIST:
        return arena_format(arena, "a list of pairs: %s and %s", kind,
                            unit_kind_name(key->second_unit));
    case KEY_NUMBERS:
        return arena_format(arena, "%s, or a list of them", kind);
    case KEY_TRIPLE_LIST:
        return arena_format(arena, "a list of triples: %s, %s and %s", kind,
                            unit_kind_name(key->second_unit), unit_kind_name(key->third_unit));
    case KEY_MAPPING:
        return key->or_none ? "a mapping, or none" : "a mapping";
    case KEY_MAPPING_LIST:
        return "a list of mappings, or one";
    case KEY_STATES:
        return "a mapping of names";
    }
    return "";
}
