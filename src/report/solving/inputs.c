#include "report/solving/inputs.h"

#include <string.h>

#include "base/known.h"
#include "base/letters.h"
#include "build/keys.h"
#include "compute/axle_loads.h"

enum {
    LOAD = 1 << PART_LOAD,
    SPEEDOMETER = 1 << PART_SPEEDOMETER,
    STANDS_OTHERWISE = LOAD | JUDGED_CLEARANCE,
    ARCHES = JUDGED_OF_FRONT | JUDGED_OF_REAR
};

/* What is measured or weighed, not what is only offered, asked for, rated or moulded: where its
 * path begins and its key, any where none is named; what reads it, so that the outcome of nothing
 * else changes with it; and how far is looked, as no measurement of the kind is off by more
 * (common practice, no source), a share of the value where that is said. */
static const struct {
    const char *begins, *key;
    enum unit_kind kind;
    double range;
    bool share;
    unsigned read_by;
} tried[] = {
    {"vehicle.unladen", NULL, KIND_MASS, 100, false, STANDS_OTHERWISE},
    {"vehicle.wheelbase", NULL, KIND_LENGTH, 0.05, false, STANDS_OTHERWISE},
    {"vehicle.track", NULL, KIND_LENGTH, 0.05, false, STANDS_OTHERWISE},
    {"vehicle.seats", NULL, KIND_LENGTH, 0.3, false, STANDS_OTHERWISE},
    {"carried", NULL, KIND_MASS, 100, false, STANDS_OTHERWISE},
    {"carried", NULL, KIND_LENGTH, 0.3, false, STANDS_OTHERWISE},
    {"carried", NULL, KIND_VOLUME, 0.3, true, STANDS_OTHERWISE},
    {"carried", NULL, KIND_DENSITY, 0.1, true, STANDS_OTHERWISE},
    {"suspension", NULL, KIND_LENGTH, 0.05, false, JUDGED_OF_BOTH | ARCHES},
    {"suspension", NULL, KIND_MASS, 100, false, JUDGED_OF_BOTH | ARCHES},
    {"suspension", NULL, KIND_STIFFNESS, 0.3, true, JUDGED_OF_BOTH | ARCHES},
    {"clearance.arch.front", NULL, KIND_LENGTH, 0.05, false, JUDGED_OF_FRONT},
    {"clearance.arch.rear", NULL, KIND_LENGTH, 0.05, false, JUDGED_OF_REAR},
    {"clearance.steering", NULL, KIND_LENGTH, 0.05, false, JUDGED_OF_TYRE | ARCHES},
    {"clearance.spare_space", NULL, KIND_LENGTH, 0.05, false, STANDS_OTHERWISE},
    {"clearance.under_axle", NULL, KIND_LENGTH, 0.05, false, JUDGED_OF_TYRE},
    {"clearance", NULL, KIND_LENGTH, 0.05, false, JUDGED_OF_BOTH},
    {"clearance", NULL, KIND_ANGLE, 0.05, false, JUDGED_OF_TYRE | ARCHES},
    {"clearance", NULL, KIND_FRACTION, 0.02, false, JUDGED_OF_BOTH},
    {"speedometer.fitted_error", NULL, KIND_FRACTION, 0.05, false, SPEEDOMETER},
    {"speedometer.readings", NULL, KIND_SPEED, 5 / 3.6, false, SPEEDOMETER},
    {"tyres", "mass", KIND_MASS, 20, false, JUDGED_WHOLE},
    {"tyres", "tread_depth", KIND_LENGTH, 0.003, false, JUDGED_WHOLE},
    {"tyres", "inset", KIND_LENGTH, 0.05, false, JUDGED_WHOLE},
    {"tyres", "spacer", KIND_LENGTH, 0.05, false, JUDGED_WHOLE},
};

struct collecting {
    struct inputs *inputs;
    size_t option; /* the number of the one whose inputs count */
};

/* Where a walk through the keys stands. */
struct at {
    const char *path, *words;
};

static bool begins_with(const char *text, const char *begin)
{
    return strncmp(text, begin, strlen(begin)) == 0;
}

/* NOLINTNEXTLINE(readability-non-const-parameter): who tries the input changes the value */
static void add_input(struct inputs *inputs, struct at at, const struct key *key, double *value,
                      enum unit_kind kind)
{
    for (size_t i = 0; i < sizeof tried / sizeof tried[0] && known(*value); i++) {
        bool named = tried[i].key == NULL || strcmp(tried[i].key, key->name) == 0;
        if (tried[i].kind != kind || !named || !begins_with(at.path, tried[i].begins))
            continue;
        bool bounded = key->min != 0 || key->max != 0;
        inputs->items = arena_grow(inputs->arena, inputs->items, inputs->count, &inputs->capacity,
                                   sizeof *inputs->items);
        inputs->items[inputs->count++] =
            (struct input){at.path,
                           at.words,
                           value,
                           kind,
                           tried[i].range * (tried[i].share ? fabs(*value) : 1),
                           bounded ? key->min : -INFINITY,
                           bounded ? key->max : INFINITY,
                           tried[i].read_by};
        return;
    }
}

/* Whether anything that is tried may stand there or below. */
static bool leads_to_inputs(const char *path)
{
    if (strstr(path, "_choices") != NULL)
        return false;
    for (size_t i = 0; i < sizeof tried / sizeof tried[0]; i++)
        if (begins_with(path, tried[i].begins) || begins_with(tried[i].begins, path))
            return true;
    return false;
}

static struct at below(struct arena *arena, struct at at, const char *name, const char *words)
{
    char *in_blanks = arena_copy(arena, span_of(words));
    for (char *c = in_blanks; *c != '\0'; c++)
        if (*c == '_')
            *c = ' ';
    return (struct at){*at.path ? arena_format(arena, "%s.%s", at.path, name) : name,
                       *at.words ? arena_format(arena, "%s %s", at.words, in_blanks) : in_blanks};
}

static void collect(const struct collecting *in, const struct key_set *set, void *target,
                    struct at at);

/* What the file calls an element; NULL where it has no name. */
static const char *name_of(const struct key_set *set, const char *element)
{
    for (size_t i = 0; i < set->count; i++)
        if (set->keys[i].kind == KEY_TEXT &&
            (strcmp(set->keys[i].name, "item") == 0 || strcmp(set->keys[i].name, "name") == 0))
            return *(const char *const *)(element + set->keys[i].offset);
    return NULL;
}

/* Its words are its own. */
static void collect_option(const struct collecting *in, const struct key *key,
                           struct mapping_list *list, struct at at)
{
    struct arena *arena = in->inputs->arena;
    struct at here = below(arena, at, letters_of_number(arena, in->option), "");
    here.words = "";
    collect(in, key->set, (char *)list->items + (in->option - 1) * key->set->size, here);
}

static void collect_list(const struct collecting *in, const struct key *key,
                         struct mapping_list *list, struct at at)
{
    if (strcmp(at.path, "tyres.options") == 0) {
        collect_option(in, key, list, at);
        return;
    }
    struct arena *arena = in->inputs->arena;
    char *copy = arena_allocate_array(arena, list->count, key->set->size);
    if (list->count > 0)
        memcpy(copy, list->items, list->count * key->set->size);
    list->items = copy;
    for (size_t i = 0; i < list->count; i++) {
        char *element = copy + i * key->set->size;
        const char *number = arena_format(arena, "%zu", i + 1), *name = name_of(key->set, element);
        struct at here = below(arena, at, number, name == NULL ? number : name);
        if (leads_to_inputs(here.path))
            collect(in, key->set, element, here);
    }
}

/* The true one of each reading. */
static void collect_readings(const struct collecting *in, const struct key *key,
                             struct pair_list *list, struct at at)
{
    struct arena *arena = in->inputs->arena;
    struct value_pair *copy = arena_allocate_array(arena, list->count, sizeof *copy);
    for (size_t i = 0; i < list->count; i++) {
        const char *number = arena_format(arena, "%zu", i + 1);
        copy[i] = list->items[i];
        add_input(in->inputs, below(arena, at, number, number), key, &copy[i].second,
                  key->second_unit);
    }
    list->items = copy;
}

static void collect_key(const struct collecting *in, const struct key *key, void *field,
                        struct at at)
{
    struct axle_pair *pair = field;
    struct arena *arena = in->inputs->arena;
    if (key->kind == KEY_MAPPING)
        collect(in, key->set, field, at);
    else if (key->kind == KEY_MAPPING_LIST)
        collect_list(in, key, field, at);
    else if (key->kind == KEY_PAIR_LIST)
        collect_readings(in, key, field, at);
    else if (key->kind == KEY_QUANTITY)
        add_input(in->inputs, at, key, field, key->unit);
    else if (key->kind == KEY_QUANTITY_PAIR) {
        add_input(in->inputs, below(arena, at, "front", "front"), key, &pair->front, key->unit);
        add_input(in->inputs, below(arena, at, "rear", "rear"), key, &pair->rear, key->unit);
    }
}

static void collect(const struct collecting *in, const struct key_set *set, void *target,
                    struct at at)
{
    for (size_t i = 0; i < set->count; i++) {
        const struct key *key = &set->keys[i];
        struct at here = below(in->inputs->arena, at, key->name, key->name);
        if (*at.path == '\0')
            here.words = ""; /* which part of the file says a person nothing */
        if (leads_to_inputs(here.path))
            collect_key(in, key, (char *)target + key->offset, here);
    }
}

/* What is taken where the file is silent stands in the copy as if it were said. */
static void write_what_is_taken(struct arena *arena, struct carried_list *carried)
{
    struct carried_item *copy = arena_allocate_array(arena, carried->count, sizeof *copy);
    for (size_t i = 0; i < carried->count; i++) {
        copy[i] = carried->items[i];
        if (known(copy[i].occupants))
            copy[i].occupant_mass_kg = known_or(copy[i].occupant_mass_kg, OCCUPANT_MASS_KG);
    }
    carried->items = copy;
}

void inputs_collect(struct arena *arena, struct specification *copy, size_t option,
                    struct inputs *out)
{
    const struct collecting in = {out, option};
    *out = (struct inputs){.arena = arena};
    write_what_is_taken(arena, &copy->carried);
    collect(&in, &build_file_keys, copy, (struct at){"", ""});
}
