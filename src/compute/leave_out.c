#include "compute/leave_out.h"

#include <string.h>

#include "base/known.h"

struct load_question {
    const struct specification *specification;
    const struct state *state;
    const struct setup *fitted;
    const struct setup *setup;
    bool *left_out; /* the setup's, of this state */
    size_t may_stay[LEAVE_OUT_TRIED_MAX];
    size_t count;
};

/* Nominally, or surely: by more than the weighing may be off. */
static bool meets_ratings(const struct load_question *question, bool surely)
{
    const struct ratings *ratings = &question->specification->vehicle.ratings;
    struct axle_loads loads;
    axle_loads_in_state(question->specification, question->state, question->fitted, question->setup,
                        &loads);
    for (int i = 0; i < RATING_COUNT; i++) {
        enum rating rating = (enum rating)i;
        double doubt_kg = surely ? rating_doubt_kg(question->specification, rating) : 0;
        if (clearly_above(rated_load_kg(&loads, rating) + doubt_kg, rating_kg(ratings, rating)))
            return false;
    }
    return true;
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
        if (mass < least && meets_ratings(question, surely)) {
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

bool leave_out(const struct specification *specification, const struct state *state,
               const struct setup *fitted, const struct setup *setup)
{
    struct load_question question = {
        specification, state, fitted, setup, left_out_row(specification, setup, state), {0}, 0};
    find_items(&question);
    if (question.count == 0 || meets_ratings(&question, true))
        return false;
    bool met = meets_ratings(&question, false);
    unsigned best = best_of(&question, true);
    if (best == 0 && !met)
        best = best_of(&question, false);
    set_aside(&question, best);
    return best != 0;
}
