/* Which of those that are tried are kept, in which order, and why the rest is dropped. */
#include <stdlib.h>
#include <string.h>

#include "base/known.h"
#include "report/shortlist/tried.h"

/* --- why */

static struct drop_reason *reason_of(struct shortlist *out, const char *name)
{
    for (size_t i = 0; i < out->reason_count; i++)
        if (strcmp(out->reasons[i].name, name) == 0)
            return &out->reasons[i];
    if (out->reason_count == DROP_REASONS_MAX)
        return &out->reasons[DROP_REASONS_MAX - 1];
    out->reasons[out->reason_count] = (struct drop_reason){.name = name, .short_m = UNKNOWN};
    return &out->reasons[out->reason_count++];
}

void count_dropped(struct shortlist *out, const char *reason)
{
    reason_of(out, reason)->count++;
}

/* What is missed by a tyre on a wheel, each quantity once. */
struct missed {
    const char *names[DROP_REASONS_MAX];
    double missing[DROP_REASONS_MAX]; /* of a length */
    size_t count;
};

static void note_missed(struct missed *missed, const struct figure *figure)
{
    const struct quantity_row *quantity = &quantity_rows[figure->quantity];
    bool length = unit_table[quantity->metric].kind == KIND_LENGTH;
    double lacks = length ? fabs(figure->value - figure->limit) : UNKNOWN;
    size_t i = 0;
    while (i < missed->count && strcmp(missed->names[i], quantity->name) != 0)
        i++;
    if (i == missed->count && i < DROP_REASONS_MAX) {
        missed->names[i] = quantity->name;
        missed->missing[i] = lacks;
        missed->count++;
    } else if (i < missed->count && lacks > missed->missing[i]) {
        missed->missing[i] = lacks;
    }
}

void count_fails(struct shortlist *out, const struct option_outcome *const *pieces, size_t count)
{
    struct missed missed = {.count = 0};
    for (size_t i = 0; i < count; i++) /* fails come first among findings */
        for (size_t j = 0;
             j < pieces[i]->finding_count && pieces[i]->findings[j]->verdict == VERDICT_FAIL; j++)
            note_missed(&missed, pieces[i]->findings[j]);
    for (size_t i = 0; i < missed.count; i++) {
        struct drop_reason *reason = reason_of(out, missed.names[i]);
        reason->count++;
        reason->alone += missed.count == 1;
        if (missed.count == 1)
            reason->short_m = lower_of(reason->short_m, missed.missing[i]);
    }
}

/* --- the order */

int best_first(const struct shortlisted *a, const struct shortlisted *b)
{
    if (a->unasked != b->unasked)
        return a->unasked ? 1 : -1;
    int better = option_outcome_compare(&a->found, &b->found);
    if (better != 0)
        return better;
    double x = fabs(known_or(a->drive_remains, 1)), y = fabs(known_or(b->drive_remains, 1));
    if (x != y)
        return x < y ? -1 : 1;
    double of_a = known_or(a->load_kg, 0), of_b = known_or(b->load_kg, 0);
    if (of_a != of_b)
        return of_a > of_b ? -1 : 1;
    return a->number < b->number ? -1 : a->number > b->number;
}

static int nearest_miss_first(const struct shortlisted *a, const struct shortlisted *b)
{
    return a->shortfall < b->shortfall ? -1 : a->shortfall > b->shortfall;
}

bool is_near_miss(const struct shortlist *list, double shortfall)
{
    return list->count == 0 && (list->miss_count < NEAR_MISSES_MAX ||
                                shortfall < list->misses[NEAR_MISSES_MAX - 1].shortfall);
}

/* In its place among the nearest. */
static void keep_miss(struct shortlist *out, const struct shortlisted *item)
{
    size_t at = out->miss_count;
    while (at > 0 && nearest_miss_first(item, &out->misses[at - 1]) < 0)
        at--;
    if (out->miss_count < NEAR_MISSES_MAX)
        out->miss_count++;
    memmove(&out->misses[at + 1], &out->misses[at],
            (out->miss_count - 1 - at) * sizeof out->misses[0]);
    out->misses[at] = *item;
}

/* --- as many as are asked for: once they are there, a heap with the last of them on top */

static void sink_down(struct shortlist *out, size_t at)
{
    struct shortlisted moved = out->items[at];
    for (size_t below = 2 * at + 1; below < out->count; at = below, below = 2 * at + 1) {
        if (below + 1 < out->count && best_first(&out->items[below + 1], &out->items[below]) > 0)
            below++;
        if (best_first(&out->items[below], &moved) <= 0)
            break;
        out->items[at] = out->items[below];
    }
    out->items[at] = moved;
}

bool is_full_of_better(const struct trial *trial, const struct shortlisted *item)
{
    const struct shortlist *out = trial->out;
    return out->count == trial->request->best && best_first(&out->items[0], item) <= 0;
}

static void keep_item(const struct trial *trial, const struct shortlisted *item)
{
    struct shortlist *out = trial->out;
    if (is_full_of_better(trial, item))
        return;
    if (out->count == trial->request->best) {
        out->items[0] = *item;
        sink_down(out, 0);
        return;
    }
    out->items =
        arena_grow(trial->plan->arena, out->items, out->count, &out->capacity, sizeof *out->items);
    out->items[out->count++] = *item;
    for (size_t i = out->count / 2; out->count == trial->request->best && i > 0; i--)
        sink_down(out, i - 1);
}

/* What would outlive the figures that it points to. */
static void forget_figures(struct option_outcome *found)
{
    found->findings = NULL;
    found->why = found->closest = NULL;
    found->tasks = NULL;
    found->finding_count = found->task_count = 0;
}

void keep(const struct trial *trial, const struct shortlisted *found)
{
    struct shortlisted item = *found;
    forget_figures(&item.found);
    if (item.found.outcome != OUTCOME_NO_GO) {
        if (!item.unasked || !trial->out->asked_only)
            trial->out->outcomes[item.found.outcome]++;
        keep_item(trial, &item);
    } else if (is_near_miss(trial->out, item.shortfall)) {
        keep_miss(trial->out, &item);
    }
}

static int in_order(const void *left, const void *right)
{
    return best_first(left, right);
}

void sort_kept(struct shortlist *out)
{
    if (out->count > 0)
        qsort(out->items, out->count, sizeof *out->items, in_order);
}
