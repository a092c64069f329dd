/* What the weighed figures hold, and what is carried beside it: the fuel of how many tanks. */
#include <string.h>

#include "base/known.h"
#include "compute/axle_loads.h"
#include "report/load/loaded_setup.h"
#include "tables/lookup.h"

enum { TANKS_NAMED = 2 };

/* Tanks whose fuel counts at once; a tank that is removed takes the weighed fuel with it. */
struct tanks {
    int count;
    struct argument names[TANKS_NAMED]; /* of the first */
};

static void add_tank(struct tanks *tanks, struct argument name)
{
    if (tanks->count < TANKS_NAMED)
        tanks->names[tanks->count] = name;
    tanks->count++;
}

static bool holds_fuel(const struct carried_item *item)
{
    const struct density_row *liquid = item->of == NULL ? NULL : density_find(item->of);
    return liquid != NULL && liquid->fuel;
}

static bool is_weighed_with_fuel(const struct vehicle *vehicle)
{
    for (size_t i = 0; i < vehicle->includes.count; i++)
        if (strcmp(vehicle->includes.items[i], "fuel") == 0)
            return true;
    return false;
}

static struct tanks tanks_in_state(const struct loaded_setup *loaded, const struct state *state)
{
    const struct specification *specification = loaded->plan->specification;
    const struct carried_list *carried = &specification->carried;
    bool weighed = is_weighed_with_fuel(&specification->vehicle);
    struct tanks tanks = {.count = 0};
    for (size_t i = 0; i < carried->count; i++)
        weighed = weighed && !(carried->items[i].removed == 1 && holds_fuel(&carried->items[i]) &&
                               state_holds(state, carried->items[i].item));
    if (weighed)
        add_tank(&tanks, say_remark(loaded->plan->arena, remark(PHRASE_WEIGHED_TANK)));
    for (size_t i = 0; i < carried->count; i++)
        if (carried->items[i].removed != 1 && holds_fuel(&carried->items[i]) &&
            state_holds(state, carried->items[i].item))
            add_tank(&tanks, say_text(carried->items[i].item));
    return tanks;
}

/* Right of a second tank and of cans, wrong where one tank takes another's place. */
static void report_tanks(const struct loaded_setup *loaded, struct figures *figures)
{
    const struct specification *specification = loaded->plan->specification;
    for (size_t i = 0; i < state_count(specification); i++) {
        const struct tanks tanks = tanks_in_state(loaded, state_at(specification, i));
        if (tanks.count < TANKS_NAMED)
            continue;
        struct remark advice =
            remark_make(loaded->plan->arena, ADVICE_TWO_TANKS, tanks.names, TANKS_NAMED);
        figures_add(
            figures,
            judged(figure_on_axle(QUANTITY_WEIGHED_WITH, UNKNOWN, AXLE_NONE, remark(BASIS_WEIGHED)),
                   &(struct judgement){
                       .holds = ANSWER_NO, .broken = VERDICT_CAUTION, .if_broken = advice}));
        return; /* one state is enough to ask */
    }
}

/* Without `includes` nobody can tell what the weighed figure holds: fuel and driver might count
 * twice or not at all. */
void report_weighed(const struct loaded_setup *loaded, struct figures *figures)
{
    const struct vehicle *vehicle = &loaded->plan->specification->vehicle;
    if (!known(vehicle->unladen_kg.front))
        return;
    if (vehicle->includes.count > 0) {
        report_tanks(loaded, figures);
        return;
    }
    struct figure figure =
        figure_on_axle(QUANTITY_WEIGHED_WITH, UNKNOWN, AXLE_NONE, remark(BASIS_WEIGHED));
    figures_add(figures,
                judged(figure, &(struct judgement){.if_unknown = remark(ADVICE_GIVE_INCLUDES)}));
}
