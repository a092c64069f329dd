/* A tyre on a wheel with every choice of springs, heights and axle ratio. What hangs on one choice
 * alone is judged once for each, and the pieces are put together; those that are kept are judged
 * whole in the end. */
#include <float.h>
#include <string.h>

#include "base/known.h"
#include "report/shortlist/tried.h"

/* Some of the figures of a combination. */
struct piece {
    struct option_outcome found;
    double shortfall;
};

/* Springs and heights, front before rear, then the axle ratio. */
enum { SPRING_FRONT, HEIGHT_FRONT, SPRING_REAR, HEIGHT_REAR, RATIO, CHOICE_KINDS };

struct combinations {
    struct trial *trial;
    const struct choices *choices;
    struct shortlisted as_it_is;
    struct specification with_it;
    struct plan plan;
    struct standing *standing;
    struct piece of_tyre, *of_axle[AXLE_COUNT], *of_ratio;
    struct shortlisted *on_ratio; /* what is told of each */
    size_t at[CHOICE_KINDS], step[CHOICE_KINDS];
    double *least; /* of each combination and of all with fewer changes: the lowest level */
};

static size_t stand_count(const struct choices *choices, int axle)
{
    return choices->springs[axle] * choices->heights[axle];
}

/* --- pieces */

static struct figures *piece_begin(const struct combinations *all, struct arena *arena)
{
    struct figures *figures = &all->trial->figures;
    figures_restart(figures, arena);
    return figures;
}

/* What is found points to the figures, in the arena of the plan. */
static void piece_end(const struct plan *plan, const struct figures *figures, struct piece *out)
{
    struct figures own = *figures;
    own.items = arena_allocate_array(plan->arena, figures->count, sizeof *own.items);
    memcpy(own.items, figures->items, figures->count * sizeof *own.items);
    option_outcome_make(plan, &plan_group_figures(plan, &own)[1], &out->found);
    out->shortfall = shortfall_of(&out->found, NULL);
}

static void judge_tyre(struct combinations *all)
{
    struct figures *figures = piece_begin(all, &all->trial->scratch);
    report_tyre(&all->plan, figures);
    report_clearance_pieces(all->standing, CLEARANCE_OF_TYRE, figures);
    tried_report_part(all->trial, &all->plan, &all->as_it_is, &all->trial->load);
    piece_end(&all->plan, figures, &all->of_tyre);
}

static void judge_ratios(struct combinations *all)
{
    const struct choices *choices = all->choices;
    const struct axle_pair now = all->with_it.drivetrain.axle;
    all->of_ratio =
        arena_allocate_array(&all->trial->scratch, choices->ratio_count, sizeof *all->of_ratio);
    all->on_ratio =
        arena_allocate_array(&all->trial->scratch, choices->ratio_count, sizeof *all->on_ratio);
    for (size_t i = 0; i < choices->ratio_count; i++) {
        double ratio = choices->ratios[i];
        all->on_ratio[i] = all->as_it_is;
        if (i > 0)
            tried_set_ratio(&all->plan, ratio, &all->on_ratio[i]);
        all->of_ratio[i] = all->of_ratio[0];
        if (i > 0 && !axle_is_judged(&all->with_it))
            continue;
        struct figures *figures = piece_begin(all, &all->trial->scratch);
        if (i > 0)
            all->with_it.drivetrain.axle = (struct axle_pair){ratio, ratio};
        tried_report_part(all->trial, &all->plan, &all->on_ratio[i], &all->trial->speedometer);
        report_gearing(&all->plan, figures);
        piece_end(&all->plan, figures, &all->of_ratio[i]);
        all->with_it.drivetrain.axle = now;
    }
}

static void set_stand(struct combinations *all, int axle, size_t stand)
{
    struct suspension *suspension = &all->with_it.suspension;
    *(axle == AXLE_FRONT ? &suspension->front : &suspension->rear) =
        all->choices->stands[axle][stand].suspension;
    all->plan.tried[axle] = all->choices->stands[axle][stand].spring;
}

static void judge_axle(struct combinations *all, int axle)
{
    size_t count = stand_count(all->choices, axle);
    all->of_axle[axle] =
        arena_allocate_array(&all->trial->scratch, count, sizeof *all->of_axle[axle]);
    for (size_t i = 0; i < count; i++) {
        struct figures *figures = piece_begin(all, &all->trial->scratch);
        set_stand(all, axle, i);
        standing_set_springs(all->standing);
        report_clearance_pieces(
            all->standing, axle == AXLE_FRONT ? CLEARANCE_OF_FRONT : CLEARANCE_OF_REAR, figures);
        piece_end(&all->plan, figures, &all->of_axle[axle][i]);
    }
    set_stand(all, axle, 0);
}

static void judge_both(struct combinations *all, const size_t stand[AXLE_COUNT], struct piece *out)
{
    struct plan plan = all->plan;
    struct figures *figures = piece_begin(all, &all->trial->pair);
    plan.arena = &all->trial->pair;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        set_stand(all, axle, stand[axle]);
    standing_set_springs(all->standing);
    report_clearance_pieces(all->standing, CLEARANCE_OF_BOTH, figures);
    piece_end(&plan, figures, out);
}

static struct piece joined(struct arena *arena, const struct piece *a, const struct piece *b)
{
    struct piece out = {.shortfall = a->shortfall + b->shortfall};
    struct task *tasks =
        arena_allocate_array(arena, a->found.task_count + b->found.task_count, sizeof *tasks);
    option_outcome_join(&a->found, &b->found, tasks, &out.found);
    return out;
}

/* --- whether a limit asks for the changes */

static size_t index_of(const struct combinations *all)
{
    size_t place = 0;
    for (int kind = 0; kind < CHOICE_KINDS; kind++)
        place += all->at[kind] * all->step[kind];
    return place;
}

/* Of all that leave out some of the changes; INFINITY where there is none to leave out. */
static double least_of_fewer(const struct combinations *all, size_t place)
{
    double least = INFINITY;
    for (int kind = 0; kind < CHOICE_KINDS; kind++)
        if (all->at[kind] > 0)
            least = fmin(least, all->least[place - all->at[kind] * all->step[kind]]);
    return least;
}

static void set_steps(struct combinations *all)
{
    const struct choices *choices = all->choices;
    const size_t counts[CHOICE_KINDS] = {choices->springs[AXLE_FRONT], choices->heights[AXLE_FRONT],
                                         choices->springs[AXLE_REAR], choices->heights[AXLE_REAR],
                                         choices->ratio_count};
    size_t step = 1;
    for (int kind = CHOICE_KINDS; kind-- > 0; step *= counts[kind])
        all->step[kind] = step;
    all->least = arena_allocate_array(&all->trial->scratch, step, sizeof *all->least);
}

/* --- one combination after the other */

static struct shortlisted item_of(const struct combinations *all, size_t place,
                                  const struct piece *piece)
{
    struct shortlisted item = all->on_ratio[all->at[RATIO]];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        size_t spring = all->at[axle == AXLE_FRONT ? SPRING_FRONT : SPRING_REAR],
               height = all->at[axle == AXLE_FRONT ? HEIGHT_FRONT : HEIGHT_REAR];
        const struct axle_stand *stand =
            &all->choices->stands[axle][spring * all->choices->heights[axle] + height];
        item.spring[axle] = stand->spring;
        item.lift_m[axle] = stand->lift_m;
    }
    item.number = all->as_it_is.number + place;
    item.found = piece->found;
    item.shortfall = piece->shortfall;
    tried_add_changes(&item);
    return item;
}

/* By what is known before both axles are looked at together, which can only make it worse. */
static bool is_in_vain(const struct combinations *all, struct shortlisted *item, double fewer)
{
    const struct trial *trial = all->trial;
    item->unasked = !clearly_above(fewer, tried_level(item));
    if (item->found.outcome == OUTCOME_NO_GO)
        return item->unasked || !is_near_miss(trial->out, item->shortfall);
    if (!item->unasked)
        return false;
    if (!isfinite(item->found.closest_margin)) /* it may come to have any */
        item->found.closest_margin = DBL_MAX;
    return is_full_of_better(trial, item);
}

static void try_ratios(struct combinations *all, const size_t stand[AXLE_COUNT],
                       const struct piece *springs)
{
    struct piece both;
    bool judged_both = false;
    for (size_t i = 0; i < all->choices->ratio_count; i++) {
        all->at[RATIO] = i;
        size_t place = index_of(all);
        double fewer = least_of_fewer(all, place);
        struct piece piece = joined(&all->trial->pair, springs, &all->of_ratio[i]);
        struct shortlisted item = item_of(all, place, &piece);
        all->least[place] = fewer;
        if (is_in_vain(all, &item, fewer))
            continue;
        if (!judged_both)
            judge_both(all, stand, &both);
        judged_both = true;
        piece = joined(&all->trial->pair, &piece, &both);
        item = item_of(all, place, &piece);
        item.unasked = !clearly_above(fewer, tried_level(&item));
        all->least[place] = fmin(fewer, tried_level(&item));
        if (!item.unasked || item.found.outcome != OUTCOME_NO_GO)
            keep(all->trial, &item);
    }
}

static void try_stands(struct combinations *all)
{
    const struct choices *choices = all->choices;
    size_t stand[AXLE_COUNT];
    for (stand[0] = 0; stand[0] < stand_count(choices, AXLE_FRONT); stand[0]++) {
        struct piece front =
            joined(&all->trial->scratch, &all->of_tyre, &all->of_axle[AXLE_FRONT][stand[0]]);
        all->at[SPRING_FRONT] = stand[0] / choices->heights[AXLE_FRONT];
        all->at[HEIGHT_FRONT] = stand[0] % choices->heights[AXLE_FRONT];
        for (stand[1] = 0; stand[1] < stand_count(choices, AXLE_REAR); stand[1]++) {
            all->at[SPRING_REAR] = stand[1] / choices->heights[AXLE_REAR];
            all->at[HEIGHT_REAR] = stand[1] % choices->heights[AXLE_REAR];
            struct piece rear =
                joined(&all->trial->pair, &front, &all->of_axle[AXLE_REAR][stand[1]]);
            try_ratios(all, stand, &rear);
            arena_reuse(&all->trial->pair);
            tell_progress(all->trial, all->trial->out->tried + index_of(all) + 1);
        }
    }
}

/* What a tyre on its wheel fails by, nothing being changed. */
static void count_as_it_is(struct combinations *all)
{
    static const size_t first[AXLE_COUNT] = {0, 0};
    struct piece both;
    judge_both(all, first, &both);
    const struct option_outcome *const pieces[] = {
        &all->of_tyre.found, &both.found, &all->of_axle[AXLE_FRONT]->found,
        &all->of_axle[AXLE_REAR]->found, &all->of_ratio->found};
    count_fails(all->trial->out, pieces, sizeof pieces / sizeof pieces[0]);
    arena_reuse(&all->trial->pair);
}

void try_combinations(struct trial *trial, const struct shortlisted *as_it_is)
{
    struct combinations all = {.trial = trial, .choices = &trial->choices, .as_it_is = *as_it_is};
    tried_plan(trial, as_it_is, &all.with_it, &all.plan);
    tried_measure(&all.plan, &all.as_it_is);
    all.standing = standing_make(&all.plan, trial->fitted);
    judge_tyre(&all);
    judge_ratios(&all);
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        judge_axle(&all, axle);
    set_steps(&all);
    count_as_it_is(&all);
    try_stands(&all);
}
