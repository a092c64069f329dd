#include "report/solving/changes.h"

#include "base/known.h"

struct change_set no_changes(void)
{
    struct change_set set = {.withheld = 0};
    for (int kind = 0; kind < CHANGE_KINDS; kind++)
        set.choice[kind] = AS_IT_IS;
    return set;
}

size_t choices_made(const struct change_set *set)
{
    size_t count = 0;
    for (int kind = 0; kind < CHANGE_KINDS; kind++)
        count += set->choice[kind] != AS_IT_IS;
    return count;
}

static int spring_kind(int axle)
{
    return axle == AXLE_FRONT ? CHANGE_SPRING_FRONT : CHANGE_SPRING_REAR;
}

static int lift_kind(int axle)
{
    return axle == AXLE_FRONT ? CHANGE_LIFT_FRONT : CHANGE_LIFT_REAR;
}

static int wheel_kind(const struct setup *setup, int axle)
{
    return axle == AXLE_REAR && setup_axles_differ(setup) ? CHANGE_WHEEL_REAR : CHANGE_WHEEL;
}

const struct search_rim *changed_wheel(const struct plan *plan, size_t index,
                                       const struct change_set *set, int axle)
{
    int choice = set->choice[wheel_kind(&plan->setups[index], axle)];
    return choice == AS_IT_IS ? NULL : &plan->specification->search.rims.items[choice];
}

const struct spring_choice *changed_spring(const struct plan *plan, const struct change_set *set,
                                           int axle)
{
    int choice = set->choice[spring_kind(axle)];
    return choice == AS_IT_IS ? NULL
                              : &suspension_at(&plan->specification->suspension, axle)
                                     ->spring_choices.items[choice];
}

double added_lift_m(const struct plan *plan, const struct change_set *set, int axle)
{
    int choice = set->choice[lift_kind(axle)];
    return choice == AS_IT_IS
               ? 0
               : suspension_at(&plan->specification->suspension, axle)->lift_choices.items[choice];
}

double changed_axle_ratio(const struct plan *plan, const struct change_set *set)
{
    int choice = set->choice[CHANGE_AXLE_RATIO];
    return choice == AS_IT_IS ? UNKNOWN
                              : plan->specification->drivetrain.axle_choices.items[choice];
}

/* --- what is allowed */

static bool wheel_changes(const struct plan *plan, size_t index, int kind,
                          const struct search_rim *rim)
{
    const struct setup *setup = &plan->setups[index];
    bool differs = false;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct wheel *now = &setup->axle[axle].wheel;
        if (wheel_kind(setup, axle) != kind)
            continue;
        if (!setup->axle[axle].size_given || !size_goes_on_rim(&setup->axle[axle].size, rim))
            return false;
        differs = differs || !rim_stands_as(rim, now) ||
                  !same_value(now->max_load_kg, rim->max_load_kg) ||
                  !same_value(now->max_pressure_Pa, rim->max_pressure_Pa);
    }
    return plan->specification->allowed.wheel == 1 && differs;
}

static size_t choice_count(const struct specification *specification, int kind)
{
    const struct suspension *suspension = &specification->suspension;
    switch ((enum change_kind)kind) {
    case CHANGE_WHEEL:
    case CHANGE_WHEEL_REAR:
        return specification->search.rims.count;
    case CHANGE_AXLE_RATIO:
        return specification->drivetrain.axle_choices.count;
    case CHANGE_SPRING_FRONT:
        return suspension->front.spring_choices.count;
    case CHANGE_SPRING_REAR:
        return suspension->rear.spring_choices.count;
    case CHANGE_LIFT_FRONT:
        return suspension->front.lift_choices.count;
    case CHANGE_LIFT_REAR:
        return suspension->rear.lift_choices.count;
    default:
        return 0;
    }
}

/* Whether a choice is allowed and leaves something other than it is. */
static bool changes_something(const struct plan *plan, size_t index, int kind, int choice)
{
    const struct specification *specification = plan->specification;
    struct change_set set = no_changes();
    set.choice[kind] = choice;
    switch ((enum change_kind)kind) {
    case CHANGE_WHEEL:
    case CHANGE_WHEEL_REAR:
        return wheel_changes(plan, index, kind, &specification->search.rims.items[choice]);
    case CHANGE_AXLE_RATIO:
        return specification->allowed.axle_ratio == 1 &&
               changed_axle_ratio(plan, &set) !=
                   of_axle(specification->drivetrain.axle, plan_driven_axle(plan));
    case CHANGE_LIFT_FRONT:
        return added_lift_m(plan, &set, AXLE_FRONT) != 0;
    case CHANGE_LIFT_REAR:
        return added_lift_m(plan, &set, AXLE_REAR) != 0;
    default:
        return true;
    }
}

struct change_choices changes_allowed(const struct plan *plan, size_t index)
{
    struct change_choices out;
    for (int kind = 0; kind < CHANGE_KINDS; kind++) {
        size_t count = choice_count(plan->specification, kind);
        out.count[kind] = 0;
        out.choice[kind] = arena_allocate_array(plan->arena, count + 1, sizeof *out.choice[kind]);
        for (int i = 0; i < (int)count; i++)
            if (changes_something(plan, index, kind, i))
                out.choice[kind][out.count[kind]++] = i;
    }
    return out;
}

double change_sets(const struct change_choices *choices)
{
    double sets = 1;
    for (int kind = 0; kind < CHANGE_KINDS; kind++)
        sets *= (double)choices->count[kind] + 1;
    return sets - 1;
}

/* --- with them */

/* The option as the file would have it with those wheels, an axle without a new one with its own:
 * its spare may stand on one like them. */
static void set_wheels(struct arena *arena, const struct plan *plan, size_t index,
                       const struct change_set *set, struct setup *setup)
{
    struct fitment *option = arena_allocate(arena, sizeof *option);
    size_t number = setup->number;
    struct wheel rear = setup->axle[AXLE_REAR].wheel;
    *option = plan->specification->tyres.options.items[number - 1];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct search_rim *rim = changed_wheel(plan, index, set, axle);
        struct wheel *wheel = axle == AXLE_FRONT ? &option->tyre.wheel : &option->rear.wheel;
        *wheel = rim == NULL ? setup->axle[axle].wheel : wheel_of_rim(rim);
        if (rim != NULL)
            wheel->spacer_m = 0;
    }
    setup_option(option, &plan->setups[0], setup);
    if (changed_wheel(plan, index, set, AXLE_REAR) == NULL)
        setup->axle[AXLE_REAR].wheel = rear; /* not one like the front's */
    setup->number = number;
}

struct plan plan_with_changes(struct arena *arena, const struct plan *plan, size_t index,
                              const struct change_set *set, struct specification *with_it)
{
    struct plan out = *plan;
    double ratio = changed_axle_ratio(plan, set);
    *with_it = *plan->specification;
    if (set->withheld & WITHHOLD_TRIM)
        with_it->allowed.trim_m = UNKNOWN;
    if (set->withheld & WITHHOLD_BUMP_STOP)
        with_it->allowed.bump_stop_m = UNKNOWN;
    if (set->withheld & WITHHOLD_SPACER)
        with_it->allowed.spacer_m = UNKNOWN;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        plan_try_spring(&out, with_it, axle, changed_spring(plan, set, axle),
                        added_lift_m(plan, set, axle));
    if (known(ratio))
        with_it->drivetrain.axle = (struct axle_pair){ratio, ratio};
    out.arena = arena;
    out.specification = with_it;
    out.count = 2;
    out.setups = arena_allocate_array(arena, 2, sizeof *out.setups);
    out.setups[0] = plan->setups[0];
    out.setups[1] = plan->setups[index];
    if (set->choice[CHANGE_WHEEL] != AS_IT_IS || set->choice[CHANGE_WHEEL_REAR] != AS_IT_IS)
        set_wheels(arena, plan, index, set, &out.setups[1]);
    plan_set_beside(&out);
    return out;
}
