#include "report/spare_of_set.h"

#include "base/known.h"
#include "report/judge.h"

static bool goes_in(double space_m, double needed_m)
{
    return !known(space_m) || !known(needed_m) ||
           meets_limit(space_m - needed_m, LIMIT_AT_LEAST, 0);
}

bool spare_of_set_may_be_carried(const struct plan *plan, const struct setup *setup)
{
    const struct specification *specification = plan->specification;
    const struct spare_space *space = &specification->clearance.spare_space;
    if (specification->allowed.spare == 0)
        return false;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct tyre_measures measures;
        tyre_measure(&setup->axle[axle], &measures);
        if (!setup->axle[axle].size_given ||
            !goes_in(space->diameter_m, measures.stated.overall_diameter_max_m) ||
            !goes_in(space->width_m, measures.stated.width_on_rim_max_m))
            return false;
    }
    return true;
}

/* With the load range that stands beside it, since it is ordered so. */
static const char *told(struct arena *arena, const struct tyre *tyre)
{
    struct designation size = tyre->size;
    char text[DESIGNATION_CANONICAL_SIZE];
    size.load_range = tyre->load_range;
    size_t length = designation_canonical(&size, text);
    return arena_copy(arena, (struct span){text, length});
}

struct cure spare_of_set_cure(const struct plan *plan, const struct setup *setup)
{
    const struct tyre *of_set = &setup->axle[AXLE_FRONT];
    struct cure cure = {.task = TASK_NONE, .now = UNKNOWN, .then = UNKNOWN};
    if (setup_axles_differ(setup) || same_tyre(of_set, &setup->spare) ||
        !spare_of_set_may_be_carried(plan, setup))
        return cure;
    cure.task = TASK_SPARE;
    cure.now_text = told(plan->arena, &setup->spare);
    cure.then_text = told(plan->arena, of_set);
    return cure;
}
