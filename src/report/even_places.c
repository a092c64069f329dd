#include "report/even_places.h"

#include <stdint.h>
#include <string.h>

#include "base/known.h"

static const size_t NONE = SIZE_MAX;

/* Figures of one quantity of a part at one place. */
struct group {
    size_t first, last; /* of the figures: the first, and the last of the same setup */
    size_t next;        /* group with the same hash */
};

struct evening {
    const struct plan *plan;
    const struct figures *figures;
    struct group *groups;
    size_t count, buckets, *bucket;
    size_t *group_of, *next; /* of a figure: its group, the next of that group and its setup */
    bool *at_place;          /* [group * setups + setup] */
    bool *has_quantity;      /* [(part * QUANTITY_COUNT + quantity) * setups + setup] */
};

static size_t hashed(size_t hash, size_t value)
{
    return (hash ^ value) * 1099511628211u; /* FNV-1a, a word at a time */
}

static size_t hashed_number(size_t hash, double value)
{
    uint64_t bits = 0;
    if (known(value))
        memcpy(&bits, &value, sizeof bits);
    return hashed(hash, (size_t)(bits ^ bits >> 32));
}

/* Equal for figures of one group. */
static size_t hash_of(const struct figure *figure)
{
    const struct place *place = &figure->place;
    size_t hash = hashed((size_t)figure->part, (size_t)figure->quantity);
    hash = hashed(hash, (size_t)place->tyre * 8 + (size_t)place->posture);
    hash =
        hashed(hash, (size_t)place->gear * 64 + (size_t)place->range * 16 + (size_t)place->number);
    hash = hashed_number(hash, place->axle_ratio);
    hash = hashed_number(hash, place->engine_speed_per_s);
    hash = hashed_number(hash, place->road_speed_mps);
    hash = hashed_number(hash, place->grade);
    for (const char *at = place->name; at != NULL && *at != '\0'; at++)
        hash = hashed(hash, (unsigned char)*at);
    return hash ^ hash >> 15;
}

static size_t group_of(struct evening *evening, size_t index)
{
    const struct figure *figure = &evening->figures->items[index];
    size_t *bucket = &evening->bucket[hash_of(figure) % evening->buckets];
    for (size_t i = *bucket; i != NONE; i = evening->groups[i].next) {
        struct group *group = &evening->groups[i];
        const struct figure *first = &evening->figures->items[group->first];
        if (!figure_same(first, figure, SAME_PART | SAME_QUANTITY | SAME_PLACE))
            continue;
        if (first->setup == figure->setup)
            group->last = evening->next[group->last] = index;
        return i;
    }
    evening->groups[evening->count] = (struct group){index, index, *bucket};
    return *bucket = evening->count++;
}

/* Quantities that a program reads by one name, in several units, stand beside each other. */
static size_t first_of_name(size_t quantity)
{
    while (quantity > 0 &&
           strcmp(quantity_rows[quantity - 1].name, quantity_rows[quantity].name) == 0)
        quantity--;
    return quantity;
}

static bool *quantity_of(const struct evening *evening, const struct figure *figure, size_t setup)
{
    size_t row = (size_t)figure->part * QUANTITY_COUNT + first_of_name((size_t)figure->quantity);
    return &evening->has_quantity[row * evening->plan->count + setup];
}

static void group_all(struct evening *evening, struct arena *arena)
{
    size_t count = evening->figures->count, setups = evening->plan->count;
    evening->buckets = count + 1;
    evening->groups = arena_allocate_array(arena, count, sizeof *evening->groups);
    evening->group_of = arena_allocate_array(arena, count, sizeof *evening->group_of);
    evening->bucket = arena_allocate_array(arena, count + 1, sizeof *evening->bucket);
    evening->has_quantity =
        arena_allocate_array(arena, (size_t)PART_COUNT * QUANTITY_COUNT * setups, sizeof(bool));
    evening->next = arena_allocate_array(arena, count, sizeof *evening->next);
    for (size_t i = 0; i <= count; i++)
        evening->bucket[i] = NONE;
    for (size_t i = 0; i < count; i++) {
        evening->next[i] = NONE;
        evening->group_of[i] = group_of(evening, i);
    }
    evening->at_place = arena_allocate_array(arena, evening->count * setups, sizeof(bool));
    for (size_t i = 0; i < count; i++) {
        const struct figure *figure = &evening->figures->items[i];
        size_t setup = (size_t)figure->setup;
        evening->at_place[evening->group_of[i] * setups + setup] = true;
        *quantity_of(evening, figure, setup) = true;
    }
}

/* One for each state and axle that the first setup at that place has. */
static void add_unknown(const struct evening *evening, const struct group *group, int setup,
                        struct figures *out)
{
    for (size_t i = group->first; i != NONE; i = evening->next[i]) {
        const struct figure *like = &evening->figures->items[i];
        struct figure figure = figure_by(like->quantity, UNKNOWN, remark(BASIS_OTHER_OPTIONS));
        figure.part = like->part;
        figure.setup = setup;
        figure.state = like->state;
        figure.axle = like->axle;
        figure.place = like->place;
        figure.decimals = like->decimals;
        figure.instrument_mph = like->instrument_mph;
        figure.instrument_kmh = like->instrument_kmh;
        figures_add_as_is(out, figure);
    }
}

static void add_missing(const struct evening *evening, enum part part, struct figures *out)
{
    size_t setups = evening->plan->count;
    for (size_t setup = 0; setup < setups; setup++)
        for (size_t i = 0; i < evening->count; i++) {
            const struct figure *first = &evening->figures->items[evening->groups[i].first];
            if (first->part == part && first->place.pressure_as != AT_PRESSURE &&
                !evening->at_place[i * setups + setup] && *quantity_of(evening, first, setup))
                add_unknown(evening, &evening->groups[i], (int)setup, out);
        }
}

void figures_even_places(const struct plan *plan, const struct figures *figures,
                         struct figures *out)
{
    struct evening evening = {.plan = plan, .figures = figures};
    *out = (struct figures){.arena = figures->arena};
    group_all(&evening, figures->arena);
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        figures_add_as_is(out, *figure);
        if (i + 1 == figures->count || figure->part != figures->items[i + 1].part)
            add_missing(&evening, figure->part, out);
    }
}
