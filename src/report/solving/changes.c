#include "report/solving/changes.h"

#include "base/known.h"
#include "compute/springs.h"

struct change_set no_changes(void)
{
    struct change_set set;
    for (int kind = 0; kind < CHANGE_KINDS; kind++)
        set.choice[kind] = AS_IT_IS;
    return set;
}

size_t change_count(const struct change_set *set)
{
    size_t count = 0;
    for (int kind = 0; kind < CHANGE_KINDS; kind++)
        count += set->choice[kind] != AS_IT_IS;
    return count;
}

static const struct axle_suspension *suspension_at(const struct specification *specification,
                                                   int axle)
{
    return axle == AXLE_FRONT ? &specification->suspension.front : &specification->suspension.rear;
}

static int spring_kind(int axle)
{
    return axle == AXLE_FRONT ? CHANGE_SPRING_FRONT : CHANGE_SPRING_REAR;
}

static int lift_kind(int axle)
{
    return axle == AXLE_FRONT ? CHANGE_LIFT_FRONT : CHANGE_LIFT_REAR;
}

const struct search_rim *changed_wheel(const struct plan *plan, const struct change_set *set)
{
    int choice = set->choice[CHANGE_WHEEL];
    return choice == AS_IT_IS ? NULL : &plan->specification->search.rims.items[choice];
}

const struct spring_choice *changed_spring(const struct plan *plan, const struct change_set *set,
                                           int axle)
{
    int choice = set->choice[spring_kind(axle)];
    return choice == AS_IT_IS
               ? NULL
               : &suspension_at(plan->specification, axle)->spring_choices.items[choice];
}

double added_lift_m(const struct plan *plan, const struct change_set *set, int axle)
{
    int choice = set->choice[lift_kind(axle)];
    return choice == AS_IT_IS
               ? 0
               : suspension_at(plan->specification, axle)->lift_choices.items[choice];
}

double changed_axle_ratio(const struct plan *plan, const struct change_set *set)
{
    int choice = set->choice[CHANGE_AXLE_RATIO];
    return choice == AS_IT_IS ? UNKNOWN
                              : plan->specification->drivetrain.axle_choices.items[choice];
}

/* --- what is allowed */

static bool takes_wheel(const struct tyre *tyre, const struct search_rim *rim)
{
    return tyre->size_given && !tyre->size.rim_millimetric &&
           fabs(tyre->size.rim_code_tenths / 10.0 - rim->diameter_code) < 1e-9;
}

static bool wheel_changes(const struct plan *plan, size_t index, int choice)
{
    const struct search_rim *rim = &plan->specification->search.rims.items[choice];
    const struct setup *setup = &plan->setups[index];
    bool differs = false;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct wheel *now = &setup->axle[axle].wheel;
        if (!takes_wheel(&setup->axle[axle], rim))
            return false;
        differs = differs || !same_value(now->width_m, rim->width_m) ||
                  !same_value(now->inset_m, rim->inset_m) ||
                  !same_value(now->max_load_kg, rim->max_load_kg) ||
                  !same_value(now->max_pressure_Pa, rim->max_pressure_Pa);
    }
    return plan->specification->allowed.wheel == 1 && differs;
}

static bool ratio_changes(const struct plan *plan, size_t index, int choice)
{
    const struct specification *specification = plan->specification;
    (void)index;
    return specification->allowed.axle_ratio == 1 &&
           specification->drivetrain.axle_choices.items[choice] !=
               of_axle(specification->drivetrain.axle, plan_driven_axle(plan));
}

static bool spring_changes(const struct plan *plan, size_t index, int choice)
{
    (void)plan, (void)index, (void)choice;
    return true;
}

static bool front_lift_changes(const struct plan *plan, size_t index, int choice)
{
    (void)index;
    return plan->specification->suspension.front.lift_choices.items[choice] != 0;
}

static bool rear_lift_changes(const struct plan *plan, size_t index, int choice)
{
    (void)index;
    return plan->specification->suspension.rear.lift_choices.items[choice] != 0;
}

struct change_choices changes_allowed(const struct plan *plan, size_t index)
{
    const struct specification *specification = plan->specification;
    const struct suspension *suspension = &specification->suspension;
    const struct {
        size_t count;
        bool (*changes)(const struct plan *plan, size_t index, int choice);
    } kinds[CHANGE_KINDS] = {
        [CHANGE_WHEEL] = {specification->search.rims.count, wheel_changes},
        [CHANGE_AXLE_RATIO] = {specification->drivetrain.axle_choices.count, ratio_changes},
        [CHANGE_SPRING_FRONT] = {suspension->front.spring_choices.count, spring_changes},
        [CHANGE_SPRING_REAR] = {suspension->rear.spring_choices.count, spring_changes},
        [CHANGE_LIFT_FRONT] = {suspension->front.lift_choices.count, front_lift_changes},
        [CHANGE_LIFT_REAR] = {suspension->rear.lift_choices.count, rear_lift_changes},
    };
    struct change_choices out;
    for (int kind = 0; kind < CHANGE_KINDS; kind++) {
        out.count[kind] = 0;
        out.choice[kind] =
            arena_allocate_array(plan->arena, kinds[kind].count + 1, sizeof *out.choice[kind]);
        for (int i = 0; i < (int)kinds[kind].count; i++)
            if (kinds[kind].changes(plan, index, i))
                out.choice[kind][out.count[kind]++] = i;
    }
    return out;
}

/* --- with them */

static void set_wheel(struct setup *setup, const struct search_rim *rim)
{
    for (int axle = 0; axle < AXLE_COUNT && rim != NULL; axle++) {
        const struct tyre unknown = tyre_unknown();
        struct wheel *wheel = &setup->axle[axle].wheel;
        *wheel = unknown.wheel;
        wheel->given = rim->given;
        wheel->width_m = rim->width_m;
        wheel->inset_m = rim->inset_m;
        wheel->max_load_kg = rim->max_load_kg;
        wheel->max_pressure_Pa = rim->max_pressure_Pa;
        wheel->spacer_m = 0;
    }
}

static void set_suspension(const struct plan *plan, const struct change_set *set,
                           struct specification *with_it)
{
    struct axle_suspension *axles[AXLE_COUNT] = {
        [AXLE_FRONT] = &with_it->suspension.front, [AXLE_REAR] = &with_it->suspension.rear};
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        double more_m = added_lift_m(plan, set, axle);
        *axles[axle] = suspension_with_spring(suspension_at(plan->specification, axle),
                                              changed_spring(plan, set, axle));
        if (more_m == 0)
            continue;
        if (known(axles[axle]->free_height_change_m)) /* a spacer below the spring stands alike */
            axles[axle]->free_height_change_m += more_m;
        else
            axles[axle]->lift_m = known_or(axles[axle]->lift_m, 0) + more_m;
    }
}

struct plan plan_with_changes(struct arena *arena, const struct plan *plan, size_t index,
                              const struct change_set *set, struct specification *with_it)
{
    struct plan out = *plan;
    double ratio = changed_axle_ratio(plan, set);
    *with_it = *plan->specification;
    set_suspension(plan, set, with_it);
    if (known(ratio))
        with_it->drivetrain.axle = (struct axle_pair){ratio, ratio};
    out.arena = arena;
    out.specification = with_it;
    out.count = 2;
    out.setups = arena_allocate_array(arena, 2, sizeof *out.setups);
    out.setups[0] = plan->setups[0];
    out.setups[1] = plan->setups[index];
    set_wheel(&out.setups[1], changed_wheel(plan, set));
    plan_set_beside(&out);
    return out;
}
