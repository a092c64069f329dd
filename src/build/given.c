#include "build/given.h"

const struct given *given_key(const struct given *mapping, const char *key)
{
    if (mapping == NULL || mapping->form != GIVEN_MAPPING)
        return NULL;
    for (const struct given *child = mapping->first; child != NULL; child = child->next)
        if (span_is(child->key, key))
            return child;
    return NULL;
}

bool is_given(const struct given *mapping, const char *key)
{
    return given_key(mapping, key) != NULL;
}

struct mark place_of(const struct given *mapping, const char *key)
{
    const struct given *value = given_key(mapping, key);
    if (value != NULL)
        return value->mark;
    return mapping == NULL ? (struct mark){.line = 1, .column = 1} : mapping->mark;
}
