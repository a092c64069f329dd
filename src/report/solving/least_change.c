#include "report/solving/least_change.h"

#include <stdint.h>

#include "base/known.h"

struct change_search {
    const struct plan *plan;
    size_t index;
    const struct option_outcome *now;
    struct judging *judging;
    struct change_choices choices;
    struct change_set others; /* the last that were judged but for the clearance */
    enum answer others_go;
    struct least_change *out;
    struct arena scratch;
    double *short_by; /* of each fail of the option: at best; INFINITY: some set has none of it */
    size_t fewest_fails;
};

/* All whose fails no spring and no lift changes. */
static void report_others(const struct plan *plan, struct figures *figures)
{
    report_tyre(plan, figures);
    report_load(plan, figures);
    report_speedometer_verdicts(plan, figures);
    report_gearing(plan, figures);
}

static void report_verdicts(const struct plan *plan, struct figures *figures)
{
    report_clearance(plan, figures);
    report_others(plan, figures);
}

static void judge_with(const struct change_search *search, const struct change_set *set,
                       struct arena *arena, void (*report)(const struct plan *, struct figures *),
                       struct option_outcome *found)
{
    struct specification *with_it = arena_allocate(arena, sizeof *with_it);
    struct plan plan = plan_with_changes(arena, search->plan, search->index, set, with_it);
    struct figures figures = {.arena = arena, .verdicts_only = true, .first_setup = 1};
    report(&plan, &figures);
    option_outcome_make(&plan, &plan_group_figures(&plan, &figures)[1], found);
}

/* What is open goes as far as is known. */
static bool goes(const struct option_outcome *found)
{
    return found->outcome != OUTCOME_NO_GO;
}

/* --- how much a set is */

bool task_is_change(const struct task *task)
{
    enum task_kind kind = task_rows[task->cure.task].kind;
    return kind == TASK_TO_ORDER || kind == TASK_TO_UNLOAD || kind == TASK_TO_ALTER ||
           kind == TASK_TO_SET;
}

static size_t changes_in(const struct change_set *set, const struct option_outcome *found)
{
    size_t count = choices_made(set);
    for (size_t i = 0; i < found->task_count; i++)
        count += task_is_change(&found->tasks[i]);
    return count;
}

/* What is proven to go is better than what stays open, however small; then the smaller set. */
static bool is_less(const struct least_change *out, size_t changes,
                    const struct option_outcome *found)
{
    bool open = found->outcome == OUTCOME_OPEN, was_open = out->outcome.outcome == OUTCOME_OPEN;
    if (!out->found || open != was_open)
        return !out->found || was_open;
    if (changes != out->changes)
        return changes < out->changes;
    return option_outcome_compare(found, &out->outcome) < 0;
}

static void keep_if_less(struct change_search *search, const struct change_set *set,
                         const struct option_outcome *found)
{
    struct least_change *out = search->out;
    size_t changes = changes_in(set, found);
    if (!goes(found) || !is_less(out, changes, found))
        return;
    out->found = true;
    out->set = *set;
    out->outcome = *found; /* its counts alone: what it points to goes */
    out->changes = changes;
}

/* Whether a set of so many choices may be smaller than what was found. */
static bool may_be_less(const struct least_change *out, size_t choices)
{
    return !out->found || out->outcome.outcome == OUTCOME_OPEN || choices <= out->changes;
}

/* --- what stands in the way */

/* By how much the same limit on the same axle is missed; UNKNOWN where that has no distance,
 * INFINITY where it is not missed. */
static double missed_by(const struct option_outcome *found, const struct figure *limit)
{
    double most = INFINITY;
    for (size_t i = 0; i < found->counts[VERDICT_FAIL]; i++) {
        const struct figure *figure = found->findings[i];
        double here = fabs(figure->value - figure->limit);
        if (!figure_same(figure, limit, SAME_PART | SAME_QUANTITY | SAME_AXLE))
            continue;
        if (!isfinite(here))
            return UNKNOWN;
        most = isinf(most) ? here : fmax(most, here);
    }
    return most;
}

static void note_what_stands(struct change_search *search, const struct option_outcome *found)
{
    const struct option_outcome *now = search->now;
    for (size_t i = 0; i < now->counts[VERDICT_FAIL]; i++) {
        double missed = missed_by(found, now->findings[i]), *least = &search->short_by[i];
        if (isinf(missed) || isinf(*least))
            *least = INFINITY;
        else if (!(missed >= *least))
            *least = missed;
    }
    if (found->counts[VERDICT_FAIL] >= search->fewest_fails)
        return;
    search->fewest_fails = found->counts[VERDICT_FAIL];
    search->out->stands =
        (struct standing_limit){*found->why, fabs(found->why->value - found->why->limit), false};
}

/* What was not tried might break another. */
static void find_what_stands(struct change_search *search)
{
    for (size_t i = 0; search->out->all_tried && i < search->now->counts[VERDICT_FAIL]; i++)
        if (!isinf(search->short_by[i])) {
            search->out->stands =
                (struct standing_limit){*search->now->findings[i], search->short_by[i], true};
            return;
        }
}

/* --- the search */

/* Of sets alike but for springs and heights, which are tried one after the other. */
static bool others_go(struct change_search *search, const struct change_set *set)
{
    bool judged = search->others_go != ANSWER_NOT_ASKED;
    for (int kind = CHANGE_WHEEL; kind <= CHANGE_AXLE_RATIO; kind++)
        judged = judged && search->others.choice[kind] == set->choice[kind];
    if (!judged) {
        struct option_outcome found;
        judge_with(search, set, &search->scratch, report_others, &found);
        search->others = *set;
        search->others_go = answer_of(true, goes(&found));
        if (!goes(&found))
            note_what_stands(search, &found);
        arena_reuse(&search->scratch);
    }
    return search->others_go == ANSWER_YES;
}

/* Where several kinds of work on the arches are done, one may do what two did. */
static void try_with_less(struct change_search *search, const struct change_set *set)
{
    for (unsigned without = 1; without < WORK_WITHHELD_ALL; without++) {
        struct change_set less = *set;
        struct option_outcome found;
        less.withheld = without;
        judge_with(search, &less, &search->scratch, report_verdicts, &found);
        keep_if_less(search, &less, &found);
        arena_reuse(&search->scratch);
    }
}

static void try_set(struct change_search *search, const struct change_set *set)
{
    enum { JUDGEMENTS = 2 };
    struct option_outcome found;
    if (!search->out->all_tried || !judging_take(search->judging, JUDGEMENTS)) {
        search->out->all_tried = false;
        return;
    }
    search->out->tried++;
    if (!others_go(search, set))
        return;
    judge_with(search, set, &search->scratch, report_clearance, &found);
    if (!goes(&found)) {
        note_what_stands(search, &found);
        arena_reuse(&search->scratch);
        return;
    }
    judge_with(search, set, &search->scratch, report_verdicts, &found);
    keep_if_less(search, set, &found);
    bool altered = found.work[TASK_TO_ALTER] > 1;
    arena_reuse(&search->scratch);
    if (altered)
        try_with_less(search, set);
}

/* All sets of so many more choices, of this kind and those after it. */
static void try_all(struct change_search *search, struct change_set *set, int kind, size_t more)
{
    if (more == 0) {
        try_set(search, set);
        return;
    }
    if ((size_t)(CHANGE_KINDS - kind) < more)
        return;
    try_all(search, set, kind + 1, more);
    for (size_t i = 0; i < search->choices.count[kind]; i++) {
        set->choice[kind] = search->choices.choice[kind][i];
        try_all(search, set, kind + 1, more - 1);
    }
    set->choice[kind] = AS_IT_IS;
}

void least_change_find(const struct plan *plan, size_t index, const struct option_outcome *now,
                       struct judging *judging, struct least_change *out)
{
    struct change_search search = {.plan = plan,
                                   .index = index,
                                   .now = now,
                                   .judging = judging,
                                   .choices = changes_allowed(plan, index),
                                   .out = out,
                                   .fewest_fails = SIZE_MAX};
    struct change_set set = no_changes();
    *out = (struct least_change){.all_tried = true, .sets = change_sets(&search.choices)};
    search.short_by =
        arena_allocate_array(plan->arena, now->counts[VERDICT_FAIL] + 1, sizeof *search.short_by);
    for (size_t i = 0; i < now->counts[VERDICT_FAIL]; i++)
        search.short_by[i] = missed_by(now, now->findings[i]);
    note_what_stands(&search, now);
    for (size_t size = 1; size <= CHANGE_KINDS && may_be_less(out, size); size++)
        try_all(&search, &set, 0, size);
    arena_free(&search.scratch);
    if (out->found)
        judge_with(&search, &out->set, plan->arena, report_verdicts, &out->outcome);
    else
        find_what_stands(&search);
}
