#include "reading/findings_text.h"

#include <stdlib.h>
#include <string.h>

#include "base/known.h"
#include "reading/prose.h"

enum { VERDICT_AT = 2, TEXT_AT = 11 };

static struct prose prose_of(const struct layout *layout)
{
    return (struct prose){.out = layout->out, .width = layout->width};
}

const char *size_text(const struct layout *layout, const struct setup *setup)
{
    char front[DESIGNATION_CANONICAL_SIZE], rear[DESIGNATION_CANONICAL_SIZE];
    designation_canonical(&setup->axle[AXLE_FRONT].size, front);
    designation_canonical(&setup->axle[AXLE_REAR].size, rear);
    if (strcmp(front, rear) == 0)
        return arena_copy(layout->arena, span_of(front));
    return arena_format(layout->arena, "front %s, rear %s", front, rear);
}

void legend_text(const struct layout *layout)
{
    struct prose prose = prose_of(layout);
    for (size_t i = 0; i < layout->plan->count; i++) {
        const struct setup *setup = &layout->plan->setups[i];
        const char *label = option_label(layout, i);
        prose_begin(&prose, VERDICT_AT, label, TEXT_AT);
        prose_words(&prose, size_text(layout, setup));
        if (!setup->is_fitted)
            prose_words(&prose, arena_format(layout->arena, "- %s", setup->name));
        prose_end(&prose);
    }
}

static int worst_first(const void *left, const void *right)
{
    const struct badness *a = left, *b = right;
    if (a->fails != b->fails)
        return a->fails > b->fails ? -1 : 1;
    if (a->unknowns != b->unknowns)
        return a->unknowns > b->unknowns ? -1 : 1;
    if (a->cautions != b->cautions)
        return a->cautions > b->cautions ? -1 : 1;
    return a->setup < b->setup ? -1 : 1;
}

/* How far beyond its limit, as a fraction; the larger is the worse. A pressure to set never passes
 * its ceiling, and what is ok passes none: of those the nearer is the worse. */
static double excess_of(const struct figure *figure)
{
    if (!known(figure->value) || !known(figure->limit))
        return 0;
    bool within =
        figure->verdict == VERDICT_OK || quantity_rows[figure->quantity].policy & POLICY_TO_SET;
    double distance = fabs(figure->value - figure->limit) / (fabs(figure->limit) + 1e-3);
    return within ? -distance : distance;
}

/* The same matter in another state or at another size: the worst stands for all. */
static bool same_matter(const struct figure *a, const struct figure *b)
{
    return figure_same(a, b, figure_matter(a));
}

static bool stands_for_all(const struct setup_figures *group, size_t index)
{
    const struct figure *figure = group->items[index];
    for (size_t i = 0; i < group->count; i++) {
        const struct figure *other = group->items[i];
        if (i == index || other->verdict == VERDICT_NONE || !same_matter(figure, other))
            continue;
        if (other->verdict != figure->verdict) {
            if (other->verdict < figure->verdict)
                return false;
            continue;
        }
        double mine = excess_of(figure), theirs = excess_of(other);
        if (theirs > mine || (theirs == mine && i < index))
            return false;
    }
    return true;
}

const char *finding_name(struct arena *arena, const struct plan *plan, const struct figure *figure,
                         size_t state_width)
{
    const char *state = figure_state(plan, figure);
    if (state != NULL && state_width > 0)
        state = text_cut(arena, state, state_width);
    const char *const places[] = {axle_name(figure->axle), state, figure_at(arena, plan, figure)};
    const char *name = quantity_rows[figure->quantity].title;
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
        if (places[i] != NULL && *places[i] != '\0')
            name = arena_format(arena, "%s, %s", name, places[i]);
    return name;
}

static void write_finding(const struct layout *layout, const struct figure *figure)
{
    struct prose prose = prose_of(layout);
    prose_begin(&prose, VERDICT_AT, verdict_name(figure->verdict), TEXT_AT);
    prose_words(&prose, arena_format(layout->arena,
                                     "%s:", finding_name(layout->arena, layout->plan, figure, 0)));
    if (known(figure->value))
        prose_words(&prose, figure_text(layout, figure, figure->value));
    if (known(figure->limit))
        prose_words(&prose,
                    arena_format(layout->arena, "(limit %s)", figure_limit_text(layout, figure)));
    const char *action = figure_action(layout->arena, layout->plan, figure);
    const char *basis = figure_basis(layout->arena, layout->plan, figure);
    if (action != NULL)
        prose_words(&prose, action);
    if (basis != NULL)
        prose_words(&prose, arena_format(layout->arena, "[%s]", basis));
    prose_end(&prose);
}

/* Said of every tyre at once is only what is true of each: the build's own, as the worst has it,
 * and what is the same to the last fact. */
static unsigned shared_fields(const struct figure *figure)
{
    bool of_build = quantity_rows[figure->quantity].policy & POLICY_OF_BUILD;
    return figure_matter(figure) | SAME_VERDICT |
           (of_build
                ? 0
                : SAME_STATE | SAME_PLACE | SAME_VALUE | SAME_LIMIT | SAME_BASIS | SAME_ADVICE);
}

/* The figure of a setup that says the same, or NULL. */
static const struct figure *counterpart(const struct setup_figures *group,
                                        const struct figure *figure)
{
    for (size_t i = 0; i < group->count; i++)
        if (figure_same(figure, group->items[i], shared_fields(figure)))
            return group->items[i];
    return NULL;
}

static bool every_setup_has(const struct layout *layout, const struct figure *figure)
{
    for (size_t i = 1; i < layout->plan->count; i++)
        if (counterpart(&layout->setups[i], figure) == NULL)
            return false;
    return true;
}

static void keep_figures_to_read(struct setup_figures *group)
{
    size_t kept = 0;
    for (size_t i = 0; i < group->count; i++)
        if (group->items[i]->headline != HEADLINE_ROWS_ONLY)
            group->items[kept++] = group->items[i];
    group->count = kept;
}

void layout_group(struct layout *layout)
{
    layout->setups = plan_group_figures(layout->plan, layout->figures);
    for (size_t i = 0; i < layout->plan->count; i++)
        keep_figures_to_read(&layout->setups[i]);
    const struct setup_figures *fitted = &layout->setups[0];
    layout->shared.items =
        arena_allocate_array(layout->arena, fitted->count, sizeof *layout->shared.items);
    for (size_t i = 0; layout->plan->count > 1 && i < fitted->count; i++)
        if (fitted->items[i]->verdict != VERDICT_NONE && fitted->items[i]->verdict != VERDICT_OK &&
            every_setup_has(layout, fitted->items[i]))
            layout->shared.items[layout->shared.count++] = fitted->items[i];
}

/* True of a matter that every setup has: the build's, not the tyre's. */
static bool is_shared(const struct layout *layout, const struct figure *figure)
{
    return counterpart(&layout->shared, figure) != NULL;
}

static void add_finding(struct finding_list *list, const struct figure *figure)
{
    list->items[list->count++] = figure;
}

/* What is wrong whichever tyre is chosen, once, as the worst setup has it. */
struct finding_list findings_shared(const struct layout *layout)
{
    const struct setup_figures *fitted = &layout->setups[0];
    struct finding_list list = {
        arena_allocate_array(layout->arena, fitted->count, sizeof *list.items), 0};
    for (int verdict = VERDICT_FAIL; verdict < VERDICT_OK; verdict++)
        for (size_t i = 0; i < fitted->count; i++) {
            const struct figure *worst = fitted->items[i];
            if ((int)worst->verdict != verdict || !stands_for_all(fitted, i) ||
                !is_shared(layout, worst))
                continue;
            for (size_t j = 1; j < layout->plan->count; j++) {
                const struct figure *other = counterpart(&layout->setups[j], fitted->items[i]);
                if (excess_of(other) > excess_of(worst))
                    worst = other;
            }
            add_finding(&list, worst);
        }
    return list;
}

struct finding_list findings_of(const struct layout *layout, size_t setup)
{
    const struct setup_figures *group = &layout->setups[setup];
    struct finding_list list = {
        arena_allocate_array(layout->arena, group->count, sizeof *list.items), 0};
    for (int verdict = VERDICT_FAIL; verdict < VERDICT_OK; verdict++)
        for (size_t i = 0; i < group->count; i++)
            if ((int)group->items[i]->verdict == verdict && stands_for_all(group, i) &&
                !is_shared(layout, group->items[i]))
                add_finding(&list, group->items[i]);
    return list;
}

const char *counts_text(const struct layout *layout, const struct badness *badness)
{
    return arena_format(layout->arena, "%zu fail, %zu unknown, %zu caution, %zu ok", badness->fails,
                        badness->unknowns, badness->cautions, badness->oks);
}

static void write_setup(const struct layout *layout, const struct badness *badness)
{
    const struct setup *setup = &layout->plan->setups[badness->setup];
    struct finding_list own = findings_of(layout, badness->setup);
    struct prose prose = prose_of(layout);
    const char *label = option_label(layout, badness->setup);
    prose_begin(&prose, 0, label, VERDICT_AT);
    prose_words(&prose,
                arena_format(layout->arena, "%s%s%s: %s", setup->is_fitted ? "" : setup->name,
                             setup->is_fitted ? "" : ", ", size_text(layout, setup),
                             counts_text(layout, badness)));
    prose_end(&prose);
    for (size_t i = 0; i < own.count; i++)
        write_finding(layout, own.items[i]);
}

/* Findings of the setup, also those that every setup shares: none is without them. */
static size_t count_verdict(const struct layout *layout, size_t setup, enum verdict verdict)
{
    const struct setup_figures *group = &layout->setups[setup];
    size_t count = 0;
    for (size_t i = 0; i < group->count; i++)
        count += group->items[i]->verdict == verdict && stands_for_all(group, i);
    return count;
}

const struct badness *findings_order(const struct layout *layout)
{
    const struct plan *plan = layout->plan;
    struct badness *all = arena_allocate_array(layout->arena, plan->count, sizeof *all);
    for (size_t i = 0; i < plan->count; i++)
        all[i] = (struct badness){
            i, count_verdict(layout, i, VERDICT_FAIL), count_verdict(layout, i, VERDICT_UNKNOWN),
            count_verdict(layout, i, VERDICT_CAUTION), count_verdict(layout, i, VERDICT_OK)};
    qsort(all, plan->count, sizeof *all, worst_first);
    return all;
}

void shared_findings_text(const struct layout *layout)
{
    struct finding_list shared = findings_shared(layout);
    struct prose prose = prose_of(layout);
    if (shared.count > 0)
        prose_line(&prose, 0, VERDICT_AT,
                   "whichever tyre is chosen (the worst of them, counted with each)");
    for (size_t i = 0; i < shared.count; i++)
        write_finding(layout, shared.items[i]);
}

void own_findings_text(const struct layout *layout)
{
    const struct badness *all = findings_order(layout);
    for (size_t i = 0; i < layout->plan->count; i++)
        write_setup(layout, &all[i]);
}

void findings_text(const struct layout *layout)
{
    shared_findings_text(layout);
    own_findings_text(layout);
}

/* Labels of all setups for which the same was taken. */
const char *labels_taken(const struct layout *layout, const struct figure *assumption)
{
    const char *labels = "";
    for (size_t i = 0; i < layout->figures->count; i++) {
        const struct figure *figure = &layout->figures->items[i];
        if (figure_same(figure, assumption, SAME_QUANTITY | SAME_ADVICE))
            labels = arena_format(layout->arena, "%s%s%s", labels, *labels ? " " : "",
                                  option_label(layout, (size_t)figure->setup));
    }
    return labels;
}

static bool is_listed(const struct finding_list *list, const struct figure *assumption)
{
    for (size_t i = 0; i < list->count; i++)
        if (figure_same(list->items[i], assumption, SAME_ADVICE))
            return true;
    return false;
}

struct finding_list assumptions_made(const struct layout *layout)
{
    struct finding_list list = {
        arena_allocate_array(layout->arena, layout->figures->count, sizeof *list.items), 0};
    for (size_t i = 0; i < layout->figures->count; i++) {
        const struct figure *figure = &layout->figures->items[i];
        if (figure->quantity == QUANTITY_ASSUMPTION && !is_listed(&list, figure))
            add_finding(&list, figure);
    }
    return list;
}

void assumptions_text(const struct layout *layout)
{
    struct prose prose = prose_of(layout);
    struct finding_list made = assumptions_made(layout);
    if (made.count > 0)
        outbuf_text(layout->out, "\nTaken as (assumptions)\n");
    for (size_t i = 0; i < made.count; i++) {
        prose_begin(&prose, VERDICT_AT, labels_taken(layout, made.items[i]), TEXT_AT);
        prose_words(&prose, figure_action(layout->arena, layout->plan, made.items[i]));
        prose_end(&prose);
    }
}

const char cautions[] =
    "For planning only. The vehicle placard, the tyre maker's data book, the wheel's own rating, "
    "local codes and a licensed engineer's approval decide. Trailer dynamics and moving loads are "
    "not covered. Weigh the vehicle as loaded.";

void cautions_text(const struct layout *layout)
{
    struct prose prose = prose_of(layout);
    outbuf_text(layout->out, "\n");
    prose_line(&prose, 0, 0, cautions);
}
