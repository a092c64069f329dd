#include "base/nearest.h"

#include <stdint.h>

enum { NAME_LENGTH_MAX = 64 };

/* Edit distance with swaps of neighbours (optimal string alignment), case ignored. */
static size_t edit_distance(struct span a, struct span b)
{
    size_t rows[3][NAME_LENGTH_MAX + 1];
    size_t *before = rows[0], *previous = rows[1], *current = rows[2];
    for (size_t j = 0; j <= b.length; j++)
        previous[j] = j;
    for (size_t i = 1; i <= a.length; i++) {
        current[0] = i;
        for (size_t j = 1; j <= b.length; j++) {
            char x = upper_case(a.at[i - 1]), y = upper_case(b.at[j - 1]);
            size_t best = previous[j - 1] + (x != y);
            if (previous[j] + 1 < best)
                best = previous[j] + 1;
            if (current[j - 1] + 1 < best)
                best = current[j - 1] + 1;
            if (i > 1 && j > 1 && x == upper_case(b.at[j - 2]) && upper_case(a.at[i - 2]) == y &&
                before[j - 2] + 1 < best)
                best = before[j - 2] + 1;
            current[j] = best;
        }
        size_t *oldest = before;
        before = previous;
        previous = current;
        current = oldest;
    }
    return previous[b.length];
}

struct nearest nearest_start(struct span wanted)
{
    return (struct nearest){.wanted = wanted, .name = NULL, .distance = SIZE_MAX};
}

static size_t allowed(const struct nearest *nearest)
{
    return nearest->wanted.length / 3 + 1;
}

/* The distance is never less than the difference of the lengths. */
void nearest_try(struct nearest *nearest, const char *name)
{
    struct span wanted = nearest->wanted, other = span_of(name);
    if (wanted.length > NAME_LENGTH_MAX || other.length > NAME_LENGTH_MAX ||
        other.length > wanted.length + allowed(nearest) ||
        wanted.length > other.length + allowed(nearest))
        return;
    size_t distance = edit_distance(wanted, other);
    if (distance < nearest->distance) {
        nearest->distance = distance;
        nearest->name = name;
    }
}

const char *nearest_found(const struct nearest *nearest)
{
    return nearest->name != NULL && nearest->distance <= allowed(nearest) ? nearest->name : NULL;
}
