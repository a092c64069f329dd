/* Nothing given: what a reader of a build file begins with. */
#include "build/specification.h"

#include <string.h>

#include "build/keys.h"

static void clear_field(const struct key *key, void *field)
{
    switch (key->kind) {
    case KEY_QUANTITY:
        *(double *)field = UNKNOWN;
        break;
    case KEY_QUANTITY_PAIR:
        *(struct axle_pair *)field = (struct axle_pair){UNKNOWN, UNKNOWN};
        break;
    case KEY_BOUND:
        *(struct bound *)field = (struct bound){UNKNOWN, KIND_BARE};
        break;
    case KEY_TEXT:
        *(const char **)field = NULL;
        break;
    case KEY_LETTER:
        *(char *)field = '\0';
        break;
    case KEY_CHOICE:
    case KEY_BOOLEAN:
        *(int *)field = CHOICE_NONE;
        break;
    case KEY_CHOICE_OR_VALUE:
        *(struct choice_or_value *)field = (struct choice_or_value){CHOICE_NONE, UNKNOWN};
        break;
    case KEY_DESIGNATION:
        memset(&((struct tyre *)field)->size, 0, sizeof(struct designation));
        ((struct tyre *)field)->size_given = false;
        ((struct tyre *)field)->taken = NULL;
        break;
    case KEY_TEXT_LIST:
        memset(field, 0, sizeof(struct text_list));
        break;
    case KEY_NUMBER_LIST:
    case KEY_NUMBERS:
    case KEY_PAIR_LIST:
    case KEY_TRIPLE_LIST:
    case KEY_STATES:
    case KEY_MAPPING_LIST:
        memset(field, 0, sizeof(struct mapping_list));
        break;
    case KEY_MAPPING:
        key_set_clear(key->set, field);
        break;
    }
}

static void clear_keys(const struct key_set *set, void *target)
{
    for (size_t i = 0; i < set->count; i++)
        clear_field(&set->keys[i], (char *)target + set->keys[i].offset);
}

void key_set_clear(const struct key_set *set, void *target)
{
    *(const struct given **)target = NULL;
    clear_keys(set, target);
    for (int i = 0; i < 2 && set->also[i] != NULL; i++)
        clear_keys(set->also[i], target);
}

void specification_clear(struct specification *out)
{
    key_set_clear(&build_file_keys, out);
}

struct tyre tyre_unknown(void)
{
    struct tyre tyre;
    key_set_clear(&spare_keys, &tyre);
    return tyre;
}
