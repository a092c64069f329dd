#include "report/solving/judging.h"

#include "compute/axle_loads.h"
#include "compute/load.h"

struct judging judging_begin(const struct specification *specification)
{
    size_t states = state_count(specification), items = specification->carried.count;
    return (struct judging){JUDGING_MOST, 100 + states * (40 + items), NULL};
}

bool judging_take(struct judging *judging, size_t count)
{
    if (count > judging->left / judging->each)
        return false;
    judging->left -= count * judging->each;
    return true;
}

struct judging judging_share(struct judging *judging, size_t among)
{
    struct judging share = {judging->left / among, judging->each, judging->options};
    judging->left -= share.left;
    return share;
}
