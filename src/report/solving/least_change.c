#include "report/solving/least_change.h"

#include "base/known.h"

struct change_search {
    const struct plan *plan;
    size_t index;
    struct change_choices choices;
    enum answer *others_go; /* [wheel + 1][axle ratio + 1]: but for the clearance */
    struct least_change *out;
    double least_shortfall;
};

static void judge_with(const struct change_search *search, const struct change_set *set,
                       struct arena *scratch, void (*report)(const struct plan *, struct figures *),
                       struct option_outcome *found)
{
    struct specification *with_it = arena_allocate(scratch, sizeof *with_it);
    struct plan plan = plan_with_changes(scratch, search->plan, search->index, set, with_it);
    struct figures figures = {.arena = scratch};
    report(&plan, &figures);
    option_outcome_make(&plan, &plan_group_figures(&plan, &figures)[1], found);
}

/* All that no spring and no lift changes. */
static void report_others(const struct plan *plan, struct figures *figures)
{
    report_tyre(plan, figures);
    report_load(plan, figures);
    report_speedometer(plan, figures);
    report_gearing(plan, figures);
}

/* What is open goes as far as is known. */
static bool goes(const struct option_outcome *found)
{
    return found->outcome != OUTCOME_NO_GO;
}

/* How many limits fail, which tells the nearest of those that stay no go. */
static void note_what_stands(struct change_search *search, const struct option_outcome *found)
{
    double shortfall = (double)found->counts[VERDICT_FAIL];
    if (found->why == NULL || shortfall >= search->least_shortfall)
        return;
    search->least_shortfall = shortfall;
    search->out->stands = found->why->quantity;
}

static bool others_go(struct change_search *search, const struct change_set *set)
{
    size_t ratios = search->plan->specification->drivetrain.axle_choices.count + 1;
    enum answer *answer = &search->others_go[(size_t)(set->choice[CHANGE_WHEEL] + 1) * ratios +
                                             (size_t)(set->choice[CHANGE_AXLE_RATIO] + 1)];
    if (*answer == ANSWER_NOT_ASKED) {
        struct arena scratch = ARENA_EMPTY;
        struct option_outcome found;
        judge_with(search, set, &scratch, report_others, &found);
        *answer = answer_of(true, goes(&found));
        if (!goes(&found))
            note_what_stands(search, &found);
        arena_free(&scratch);
    }
    return *answer == ANSWER_YES;
}

static void try_set(struct change_search *search, const struct change_set *set)
{
    struct arena scratch = ARENA_EMPTY;
    struct option_outcome found;
    if (!others_go(search, set))
        return;
    judge_with(search, set, &scratch, report_clearance, &found);
    if (!goes(&found)) {
        note_what_stands(search, &found);
    } else {
        judge_with(search, set, &scratch, report_every_part, &found);
        if (!search->out->found || option_outcome_compare(&found, &search->out->outcome) < 0) {
            search->out->found = true;
            search->out->set = *set;
            search->out->outcome = found;
        }
    }
    arena_free(&scratch);
}

/* All sets of so many more changes, of this kind and those after it. */
static void try_all(struct change_search *search, struct change_set *set, int kind, int more)
{
    if (more == 0) {
        try_set(search, set);
        return;
    }
    if (CHANGE_KINDS - kind < more)
        return;
    try_all(search, set, kind + 1, more);
    for (size_t i = 0; i < search->choices.count[kind]; i++) {
        set->choice[kind] = search->choices.choice[kind][i];
        try_all(search, set, kind + 1, more - 1);
    }
    set->choice[kind] = AS_IT_IS;
}

void least_change_find(const struct plan *plan, size_t index, struct least_change *out)
{
    const struct specification *specification = plan->specification;
    struct change_search search = {.plan = plan,
                                   .index = index,
                                   .choices = changes_allowed(plan, index),
                                   .out = out,
                                   .least_shortfall = INFINITY};
    struct change_set set = no_changes();
    *out = (struct least_change){.sets = change_sets(&search.choices), .stands = QUANTITY_COUNT};
    search.others_go = arena_allocate_array(plan->arena,
                                            (specification->search.rims.count + 1) *
                                                (specification->drivetrain.axle_choices.count + 1),
                                            sizeof *search.others_go);
    if (out->sets > LEAST_CHANGE_TRIES_MAX)
        return;
    for (int size = 1; size <= CHANGE_KINDS && !out->found; size++)
        try_all(&search, &set, 0, size);
    out->outcome.why = out->outcome.closest = NULL; /* they went with their figures */
    out->outcome.findings = NULL;
    out->outcome.tasks = NULL;
}
