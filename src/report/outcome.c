#include "report/outcome.h"

#include <stdlib.h>

#include "base/known.h"

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

/* What an outcome does not hang on stays unknown and leaves it open to nobody. */
static bool counts(const struct figure *figure)
{
    return figure->verdict != VERDICT_NONE &&
           (figure->verdict != VERDICT_UNKNOWN ||
            quantity_rows[figure->quantity].policy & POLICY_NEEDED);
}

static enum outcome outcome_by(enum verdict worst)
{
    switch (worst) {
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

static void find_worst(const struct setup_figures *figures, struct option_outcome *out)
{
    enum verdict worst = VERDICT_COUNT;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = figures->items[i];
        if (!counts(figure))
            continue;
        out->counts[figure->verdict]++;
        if (figure->verdict < worst) {
            worst = figure->verdict;
            out->why = figure;
        }
    }
    out->outcome = outcome_by(worst);
    if (out->outcome == OUTCOME_GO)
        out->why = NULL;
}

static bool has_margin(const struct figure *figure)
{
    return (figure->verdict == VERDICT_OK || figure->verdict == VERDICT_CAUTION) &&
           quantity_rows[figure->quantity].scale > 0 && known(figure->value) &&
           known(figure->limit);
}

static void find_closest(const struct setup_figures *figures, struct option_outcome *out)
{
    out->closest_margin = INFINITY;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = figures->items[i];
        if (!has_margin(figure))
            continue;
        double margin = fabs(figure->value - figure->limit) / quantity_rows[figure->quantity].scale;
        if (margin < out->closest_margin) {
            out->closest_margin = margin;
            out->closest = figure;
        }
    }
}

/* The larger amount serves for both: one bump stop, one pressure. */
static bool is_more(const struct cure *a, const struct cure *b)
{
    return known(a->then) && (!known(b->then) || fabs(a->then) > fabs(b->then));
}

/* Measuring is told apart by what is asked for, other work by its axle. */
static bool is_same_task(const struct task *a, const struct task *b)
{
    return a->cure.task == b->cure.task && a->axle == b->axle &&
           (a->cure.task != TASK_MEASURE || figure_same(a->reason, b->reason, SAME_ADVICE)) &&
           (a->cure.task != TASK_UNLOAD || figure_same(a->reason, b->reason, SAME_PLACE));
}

static void add_task(struct option_outcome *out, struct task task)
{
    for (size_t i = 0; i < out->task_count; i++)
        if (is_same_task(&out->tasks[i], &task)) {
            if (is_more(&task.cure, &out->tasks[i].cure))
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

static void find_tasks(const struct plan *plan, const struct setup_figures *figures,
                       struct option_outcome *out)
{
    out->tasks = arena_allocate_array(plan->arena, figures->count + 1, sizeof *out->tasks);
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = figures->items[i];
        struct task task = {.cure = figure->cure, .axle = figure->axle, .reason = figure};
        if (!counts(figure))
            continue;
        if (figure->verdict == VERDICT_UNKNOWN) {
            task.axle = AXLE_NONE;
            task.cure = (struct cure){.task = TASK_MEASURE, .now = UNKNOWN, .then = UNKNOWN};
        }
        if (figure->verdict == VERDICT_TASK || figure->verdict == VERDICT_UNKNOWN)
            add_task(out, task);
    }
    add_label(out);
    if (out->task_count > 0)
        qsort(out->tasks, out->task_count, sizeof *out->tasks, workshop_order);
    for (size_t i = 0; i < out->task_count; i++)
        out->work[task_rows[out->tasks[i].cure.task].kind]++;
}

void option_outcome_make(const struct plan *plan, const struct setup_figures *figures,
                         struct option_outcome *out)
{
    *out = (struct option_outcome){.why = NULL};
    find_worst(figures, out);
    find_closest(figures, out);
    if (out->outcome != OUTCOME_NO_GO)
        find_tasks(plan, figures, out);
}

int option_outcome_compare(const struct option_outcome *a, const struct option_outcome *b)
{
    static const enum task_kind heaviest_first[] = {TASK_TO_ALTER, TASK_TO_ORDER, TASK_TO_UNLOAD,
                                                    TASK_TO_MEASURE};
    if (a->outcome != b->outcome)
        return a->outcome < b->outcome ? -1 : 1;
    for (size_t i = 0; i < sizeof heaviest_first / sizeof heaviest_first[0]; i++) {
        size_t in_a = a->work[heaviest_first[i]], in_b = b->work[heaviest_first[i]];
        if (in_a != in_b)
            return in_a < in_b ? -1 : 1;
    }
    if (a->closest_margin != b->closest_margin)
        return a->closest_margin > b->closest_margin ? -1 : 1;
    return 0;
}
