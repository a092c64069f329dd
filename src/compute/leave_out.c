#include "compute/leave_out.h"

#include <string.h>

#include "base/known.h"

struct load_question {
    const struct specification *specification;
    const struct state *state;
    const struct setup *fitted;
    const struct setup *setup;
    const struct bearing *bearing; /* one an axle; NULL: ratings alone are asked for */
    bool *left_out;                /* the setup's, of this state */
    size_t may_stay[LEAVE_OUT_TRIED_MAX];
    size_t count;
};

static bool is_borne(const struct load_question *question, const struct axle_loads *loads,
                     bool surely)
{
    for (int axle = 0; question->bearing != NULL && axle < AXLE_COUNT; axle++) {
        const struct bearing *bearing = &question->bearing[axle];
        double load_kg = tyre_load_kg(question->specification, loads, (enum axle)axle,
                                      tyre_is_dual(&question->setup->axle[axle]));
        if (clearly_above(load_kg, surely ? bearing->sure_kg : bearing->most_kg))
            return false;
    }
    return true;
}

/* At all, or surely: by more than the weighing may be off. */
static bool is_met(const struct load_question *question, bool surely)
{
    struct axle_loads loads;
    axle_loads_in_state(question->specification, question->state, question->fitted, question->setup,
                        &loads);
    for (int rating = 0; rating < RATING_COUNT; rating++)
        if (!rating_is_kept(question->specification, &loads, (enum rating)rating, surely))
            return false;
    return is_borne(question, &loads, surely);
}

static void find_items(struct load_question *question)
{
    const struct carried_list *carried = &question->specification->carried;
    for (size_t i = 0; i < carried->count && question->count < LEAVE_OUT_TRIED_MAX; i++)
        if (carried->items[i].can_be_left_out == 1 &&
            state_holds(question->state, carried->items[i].item))
            question->may_stay[question->count++] = i;
}

static size_t bits_in(unsigned set)
{
    size_t bits = 0;
    for (; set != 0; set &= set - 1)
        bits++;
    return bits;
}

static double set_aside(struct load_question *question, unsigned set)
{
    double mass = 0;
    for (size_t i = 0; i < question->count; i++) {
        bool out = set >> i & 1;
        question->left_out[question->may_stay[i]] = out;
        if (out)
            mass += item_mass_kg(&question->specification->carried.items[question->may_stay[i]]);
    }
    return mass;
}

static unsigned lightest_of(struct load_question *question, bool surely, size_t bits)
{
    unsigned best = 0;
    double least = INFINITY;
    for (unsigned set = 1; set < 1u << question->count; set++) {
        if (bits_in(set) != bits)
            continue;
        double mass = set_aside(question, set);
        if (mass < least && is_met(question, surely)) {
            least = mass;
            best = set;
        }
    }
    return best;
}

static unsigned best_of(struct load_question *question, bool surely)
{
    unsigned best = 0;
    for (size_t bits = 1; best == 0 && bits <= question->count; bits++)
        best = lightest_of(question, surely, bits);
    return best;
}

/* Whether what is asked for is met, with what stays behind for it. */
static bool find_best(struct load_question *question, unsigned *best)
{
    *best = 0;
    if (is_met(question, true))
        return true;
    bool met = is_met(question, false);
    *best = best_of(question, true);
    if (*best == 0 && !met)
        *best = best_of(question, false);
    return met || *best != 0;
}

bool leave_out(const struct specification *specification, const struct state *state,
               const struct setup *fitted, const struct setup *setup,
               const struct bearing bearing[AXLE_COUNT])
{
    unsigned best;
    struct load_question question = {.specification = specification,
                                     .state = state,
                                     .fitted = fitted,
                                     .setup = setup,
                                     .bearing = bearing,
                                     .left_out = left_out_row(specification, setup, state)};
    find_items(&question);
    if (question.count == 0)
        return false;
    if (!find_best(&question, &best)) {
        set_aside(&question, 0);
        question.bearing = NULL;
        find_best(&question, &best);
    }
    set_aside(&question, best);
    return best != 0;
}
