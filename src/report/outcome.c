#include "report/outcome.h"

#include <stdlib.h>

#include "base/known.h"
#include "output/number.h"
#include "report/judge.h"

const char *outcome_name(enum outcome outcome)
{
    static const char *const names[] = {"go", "work", "open", "no_go"};
    return names[outcome];
}

const char *outcome_words(enum outcome outcome)
{
    static const char *const words[] = {"go", "go after work", "open", "no go"};
    return words[outcome];
}

/* What an outcome does not hang on may stay unknown: no outcome hangs on what the drive becomes.
 * Nor does what the driver is told make one. */
static bool decides(const struct figure *figure)
{
    if (figure->verdict == VERDICT_TASK)
        return figure->cure.task != TASK_TELL && figure->cure.task != TASK_PRESSURE_LABEL;
    return figure->verdict != VERDICT_UNKNOWN ||
           (quantity_rows[figure->quantity].policy & POLICY_NEEDED && figure->part != PART_GEARING);
}

enum outcome finding_outcome(const struct figure *finding)
{
    if (!decides(finding))
        return OUTCOME_GO;
    switch (finding->verdict) {
    case VERDICT_FAIL:
        return OUTCOME_NO_GO;
    case VERDICT_UNKNOWN:
        return OUTCOME_OPEN;
    case VERDICT_TASK:
        return OUTCOME_WORK;
    default:
        return OUTCOME_GO;
    }
}

/* --- findings */

struct judged_figures {
    const struct figure **items;
    size_t *same; /* of each, the number of the next of its quantity, round in a ring */
    size_t count;
};

static struct judged_figures keep_judged(struct arena *arena, const struct setup_figures *figures)
{
    size_t last[QUANTITY_COUNT] = {0}; /* and one more */
    struct judged_figures out = {arena_allocate_array(arena, figures->count, sizeof *out.items),
                                 arena_allocate_array(arena, figures->count, sizeof *out.same), 0};
    for (size_t i = 0; i < figures->count; i++) {
        if (figures->items[i]->verdict == VERDICT_NONE)
            continue;
        size_t *before = &last[figures->items[i]->quantity];
        out.same[out.count] = *before == 0 ? out.count : out.same[*before - 1];
        if (*before > 0)
            out.same[*before - 1] = out.count;
        out.items[out.count++] = figures->items[i];
        *before = out.count;
    }
    return out;
}

/* Of two as near to their limits, how each was computed must not choose. */
static double without_last_bits(double share)
{
    return round_to_decimals(share, 9);
}

double figure_excess(const struct figure *figure)
{
    if (!known(figure->value) || !known(figure->limit))
        return 0;
    bool within =
        figure->verdict == VERDICT_OK || quantity_rows[figure->quantity].policy & POLICY_TO_SET;
    double distance = fabs(figure->value - figure->limit) / (fabs(figure->limit) + 1e-3);
    return without_last_bits(within ? -distance : distance);
}

/* The same matter in another state or at another size: the worst stands for all, the first of
 * equals. */
static bool stands_for_all(const struct judged_figures *judged, size_t index)
{
    const struct figure *figure = judged->items[index];
    const unsigned matter = figure_matter(figure);
    double mine = UNKNOWN; /* until it is asked for */
    for (size_t i = judged->same[index]; i != index; i = judged->same[i]) {
        const struct figure *other = judged->items[i];
        if (other->verdict > figure->verdict || !figure_same(figure, other, matter))
            continue;
        if (other->verdict < figure->verdict)
            return false;
        mine = known(mine) ? mine : figure_excess(figure);
        double theirs = figure_excess(other);
        if (theirs > mine || (theirs == mine && i < index))
            return false;
    }
    return true;
}

static void find_findings(struct arena *arena, const struct judged_figures *judged,
                          struct option_outcome *out)
{
    out->findings = arena_allocate_array(arena, judged->count, sizeof *out->findings);
    for (int verdict = VERDICT_FAIL; verdict <= VERDICT_OK; verdict++)
        for (size_t i = 0; i < judged->count; i++)
            if ((int)judged->items[i]->verdict == verdict && stands_for_all(judged, i)) {
                out->findings[out->finding_count++] = judged->items[i];
                out->counts[verdict]++;
            }
}

static bool is_of_build(const struct figure *figure)
{
    return quantity_rows[figure->quantity].policy & POLICY_OF_BUILD;
}

/* The first that decides; of those as bad the first of the option's own. */
static void find_why(struct option_outcome *out)
{
    for (size_t i = 0; i < out->finding_count; i++) {
        const struct figure *finding = out->findings[i];
        enum outcome outcome = finding_outcome(finding);
        bool own = out->why != NULL && is_of_build(out->why) && !is_of_build(finding);
        if (outcome > out->outcome || (own && outcome == out->outcome))
            out->why = finding;
        if (outcome > out->outcome)
            out->outcome = outcome;
    }
}

/* What the build has whichever tyre is chosen tells none of them apart. */
static bool has_margin(const struct figure *figure)
{
    const struct quantity_row *row = &quantity_rows[figure->quantity];
    return (figure->verdict == VERDICT_OK || figure->verdict == VERDICT_CAUTION) &&
           row->scale > 0 && !(row->policy & (POLICY_NO_MARGIN | POLICY_OF_BUILD)) &&
           known(figure->value) && known(figure->limit) &&
           meets_limit(figure->value, figure->limit_side, figure->limit);
}

static void find_closest(const struct judged_figures *judged, struct option_outcome *out)
{
    out->closest_margin = INFINITY;
    for (size_t i = 0; i < judged->count; i++) {
        const struct figure *figure = judged->items[i];
        if (!has_margin(figure))
            continue;
        double margin = fabs(figure->value - figure->limit) / quantity_rows[figure->quantity].scale;
        if (clearly_above(out->closest_margin, margin)) { /* the first of equals */
            out->closest_margin = margin;
            out->closest = figure;
        }
    }
}

/* --- tasks */

/* The larger amount serves for both: one bump stop, one pressure. Of speeds the lower does. */
static bool serves_both(const struct cure *a, const struct cure *b)
{
    bool lowest = task_rows[a->task].policy & TASK_LOWEST;
    double more = lowest ? fabs(b->then) - fabs(a->then) : fabs(a->then) - fabs(b->then);
    return known(a->then) && (!known(b->then) || more > 0);
}

static bool is_same_task(const struct task *a, const struct task *b)
{
    unsigned policy = task_rows[a->cure.task].policy;
    unsigned fields = (policy & TASK_BY_WORDS ? SAME_ADVICE : 0) |
                      (policy & TASK_BY_ITEM ? SAME_PLACE | SAME_STATE : 0);
    return a->cure.task == b->cure.task && a->axle == b->axle &&
           figure_same(a->reason, b->reason, fields);
}

static void add_task(struct option_outcome *out, struct task task)
{
    for (size_t i = 0; i < out->task_count; i++)
        if (is_same_task(&out->tasks[i], &task)) {
            if (serves_both(&task.cure, &out->tasks[i].cure))
                out->tasks[i] = task;
            return;
        }
    out->tasks[out->task_count++] = task;
}

static void add_label(struct option_outcome *out)
{
    for (size_t i = 0; i < out->task_count; i++)
        if (out->tasks[i].cure.task == TASK_TYRE_PRESSURE) {
            struct task label = {.axle = AXLE_NONE, .reason = out->tasks[i].reason};
            label.cure =
                (struct cure){.task = TASK_PRESSURE_LABEL, .now = UNKNOWN, .then = UNKNOWN};
            add_task(out, label);
            return;
        }
}

static int workshop_order(const void *left, const void *right)
{
    const struct task *a = left, *b = right;
    if (a->cure.task != b->cure.task)
        return a->cure.task < b->cure.task ? -1 : 1;
    if (a->axle != b->axle)
        return a->axle < b->axle ? -1 : 1;
    return a->reason < b->reason ? -1 : 1;
}

/* What cures a figure; of what is unknown, finding it out. */
static struct task task_for(const struct figure *figure)
{
    struct task task = {.cure = figure->cure, .reason = figure};
    if (figure->verdict == VERDICT_UNKNOWN)
        task.cure =
            (struct cure){.task = figure->cure.task == TASK_NONE ? TASK_MEASURE : figure->cure.task,
                          .now = UNKNOWN,
                          .then = UNKNOWN};
    bool by_axle = task_rows[task.cure.task].policy & TASK_BY_AXLE && !task.cure.of_set;
    task.axle = by_axle ? figure->axle : AXLE_NONE;
    return task;
}

static void count_work(struct option_outcome *out)
{
    out->counts[VERDICT_TASK] = out->task_count;
    if (out->outcome == OUTCOME_NO_GO)
        out->task_count = 0;
    for (size_t i = 0; i < out->task_count; i++)
        out->work[task_rows[out->tasks[i].cure.task].kind]++;
}

static bool calls_for_task(const struct figure *figure)
{
    return figure->verdict == VERDICT_TASK ||
           (figure->verdict == VERDICT_UNKNOWN && decides(figure));
}

static void find_tasks(struct arena *arena, const struct judged_figures *judged,
                       struct option_outcome *out)
{
    size_t count = 0;
    for (size_t i = 0; i < judged->count; i++)
        count += calls_for_task(judged->items[i]);
    out->tasks = arena_allocate_array(arena, count + 1, sizeof *out->tasks); /* and the label */
    for (size_t i = 0; i < judged->count; i++)
        if (calls_for_task(judged->items[i]))
            add_task(out, task_for(judged->items[i]));
    add_label(out);
    if (out->task_count > 0)
        qsort(out->tasks, out->task_count, sizeof *out->tasks, workshop_order);
    count_work(out);
}

void option_outcome_make(const struct plan *plan, const struct setup_figures *figures,
                         struct option_outcome *out)
{
    *out = (struct option_outcome){.why = NULL};
    const struct judged_figures kept = keep_judged(plan->arena, figures);
    find_findings(plan->arena, &kept, out);
    find_why(out);
    find_closest(&kept, out);
    find_tasks(plan->arena, &kept, out);
}

void option_outcome_join(const struct option_outcome *a, const struct option_outcome *b,
                         struct task *tasks, struct option_outcome *out)
{
    const struct option_outcome *nearer =
        clearly_above(a->closest_margin, b->closest_margin) ? b : a; /* the first of equals */
    *out = (struct option_outcome){.outcome = a->outcome > b->outcome ? a->outcome : b->outcome,
                                   .closest = nearer->closest,
                                   .closest_margin = nearer->closest_margin,
                                   .tasks = tasks};
    for (int i = 0; i < VERDICT_COUNT; i++)
        out->counts[i] = a->counts[i] + b->counts[i];
    for (size_t i = 0; i < a->task_count; i++)
        tasks[out->task_count++] = a->tasks[i];
    for (size_t i = 0; i < b->task_count; i++)
        add_task(out, b->tasks[i]);
    count_work(out);
}

enum verdict option_outcome_verdict(const struct option_outcome *outcome)
{
    switch (outcome->outcome) {
    case OUTCOME_NO_GO:
        return VERDICT_FAIL;
    case OUTCOME_OPEN:
        return VERDICT_UNKNOWN;
    case OUTCOME_WORK:
        return VERDICT_TASK;
    default:
        return outcome->counts[VERDICT_CAUTION] > 0 ? VERDICT_CAUTION : VERDICT_OK;
    }
}

/* That nothing is near to a limit may be because nothing is known: it never ranks best. */
static double margin_to_rank(const struct option_outcome *outcome)
{
    return isfinite(outcome->closest_margin) ? without_last_bits(outcome->closest_margin) : -1;
}

int option_outcome_compare(const struct option_outcome *a, const struct option_outcome *b)
{
    static const enum task_kind heaviest_first[] = {TASK_TO_ALTER, TASK_TO_ORDER, TASK_TO_UNLOAD,
                                                    TASK_TO_MEASURE};
    if (a->outcome != b->outcome)
        return a->outcome < b->outcome ? -1 : 1;
    if (a->counts[VERDICT_FAIL] != b->counts[VERDICT_FAIL])
        return a->counts[VERDICT_FAIL] < b->counts[VERDICT_FAIL] ? -1 : 1;
    for (size_t i = 0; i < sizeof heaviest_first / sizeof heaviest_first[0]; i++) {
        size_t in_a = a->work[heaviest_first[i]], in_b = b->work[heaviest_first[i]];
        if (in_a != in_b)
            return in_a < in_b ? -1 : 1;
    }
    double of_a = margin_to_rank(a), of_b = margin_to_rank(b);
    if (of_a != of_b)
        return of_a > of_b ? -1 : 1;
    return 0;
}
