#include "reading/findings_text.h"

#include <stdlib.h>
#include <string.h>

#include "base/known.h"
#include "reading/prose.h"

enum { VERDICT_AT = 2, TEXT_AT = 11 };

static struct prose prose_of(const struct reading *reading)
{
    return (struct prose){.out = reading->out, .width = reading->width};
}

const char *size_text(const struct reading *reading, const struct setup *setup)
{
    char front[DESIGNATION_CANONICAL_SIZE], rear[DESIGNATION_CANONICAL_SIZE];
    designation_canonical(&setup->axle[AXLE_FRONT].size, front);
    designation_canonical(&setup->axle[AXLE_REAR].size, rear);
    if (strcmp(front, rear) == 0)
        return arena_copy(reading->arena, span_of(front));
    return arena_format(reading->arena, "front %s, rear %s", front, rear);
}

void legend_text(const struct reading *reading)
{
    struct prose prose = prose_of(reading);
    for (size_t i = 0; i < reading->plan->count; i++) {
        const struct setup *setup = &reading->plan->setups[i];
        const char *label = option_label(reading, setup->name);
        prose_begin(&prose, VERDICT_AT, label, TEXT_AT);
        prose_words(&prose, size_text(reading, setup));
        if (!setup->is_fitted)
            prose_words(&prose, arena_format(reading->arena, "- %s", setup->name));
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
        figure->verdict == VERDICT_OK || figure->quantity == QUANTITY_PRESSURE_RECOMMENDED;
    double distance = fabs(figure->value - figure->limit) / (fabs(figure->limit) + 1e-3);
    return within ? -distance : distance;
}

/* Several rules may limit one quantity: each is a matter of its own. */
static bool is_limited(enum quantity_id quantity)
{
    switch (quantity) {
    case QUANTITY_OVERALL_DIAMETER_CHANGE:
    case QUANTITY_DIAMETER_CHANGE_SHARE:
    case QUANTITY_RIDE_HEIGHT_CHANGE:
    case QUANTITY_DIAMETER_AND_SUSPENSION:
    case QUANTITY_TRACK_CHANGE:
    case QUANTITY_INSET_CHANGE:
    case QUANTITY_TRAVEL_KEPT:
    case QUANTITY_LOAD_INDEX_CHANGE:
    case QUANTITY_SPEED_SYMBOL_CHANGE:
        return true;
    default:
        return false;
    }
}

/* The same matter in another state or at another size: the worst stands for all. */
static bool same_matter(const struct figure *a, const struct figure *b)
{
    bool placed = a->quantity != QUANTITY_TYRE_CAPACITY &&
                  a->quantity != QUANTITY_PRESSURE_AS_REPLACED &&
                  a->quantity != QUANTITY_SPARE_ROOM;
    if (is_limited(a->quantity) && strcmp(a->basis, b->basis) != 0)
        return false;
    return a->quantity == b->quantity && a->axle == b->axle && a->part == b->part &&
           (placed || a->at == b->at);
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

const char *finding_name(struct arena *arena, const struct figure *figure)
{
    const char *const places[] = {axle_name(figure->axle), figure->state, figure->at};
    const char *name = quantity_rows[figure->quantity].title;
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++)
        if (places[i] != NULL && *places[i] != '\0')
            name = arena_format(arena, "%s, %s", name, places[i]);
    return name;
}

static void write_finding(const struct reading *reading, const struct figure *figure)
{
    struct prose prose = prose_of(reading);
    prose_begin(&prose, VERDICT_AT, verdict_name(figure->verdict), TEXT_AT);
    prose_words(&prose, arena_format(reading->arena, "%s:", finding_name(reading->arena, figure)));
    if (known(figure->value))
        prose_words(&prose, figure_text(reading, figure, figure->value));
    if (known(figure->limit))
        prose_words(&prose,
                    arena_format(reading->arena, "(limit %s)", figure_limit_text(reading, figure)));
    if (figure->action != NULL)
        prose_words(&prose, figure->action);
    if (figure->basis != NULL)
        prose_words(&prose, arena_format(reading->arena, "[%s]", figure->basis));
    prose_end(&prose);
}

/* The figure of a setup that stands for the same matter with the same verdict, or NULL. */
static const struct figure *counterpart(const struct setup_figures *group,
                                        const struct figure *figure)
{
    for (size_t i = 0; i < group->count; i++)
        if (group->items[i]->verdict == figure->verdict && same_matter(group->items[i], figure))
            return group->items[i];
    return NULL;
}

static bool every_setup_has(const struct reading *reading, const struct figure *figure)
{
    for (size_t i = 1; i < reading->plan->count; i++)
        if (counterpart(&reading->setups[i], figure) == NULL)
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

void reading_group(struct reading *reading)
{
    reading->setups = plan_group_figures(reading->plan, reading->figures);
    for (size_t i = 0; i < reading->plan->count; i++)
        keep_figures_to_read(&reading->setups[i]);
    const struct setup_figures *fitted = &reading->setups[0];
    reading->shared.items =
        arena_allocate_array(reading->arena, fitted->count, sizeof *reading->shared.items);
    for (size_t i = 0; reading->plan->count > 1 && i < fitted->count; i++)
        if (fitted->items[i]->verdict != VERDICT_NONE && fitted->items[i]->verdict != VERDICT_OK &&
            every_setup_has(reading, fitted->items[i]))
            reading->shared.items[reading->shared.count++] = fitted->items[i];
}

/* True of a matter that every setup has: the build's, not the tyre's. */
static bool is_shared(const struct reading *reading, const struct figure *figure)
{
    return counterpart(&reading->shared, figure) != NULL;
}

static void add_finding(struct finding_list *list, const struct figure *figure)
{
    list->items[list->count++] = figure;
}

/* What is wrong whichever tyre is chosen, once, as the worst setup has it. */
struct finding_list findings_shared(const struct reading *reading)
{
    const struct setup_figures *fitted = &reading->setups[0];
    struct finding_list list = {
        arena_allocate_array(reading->arena, fitted->count, sizeof *list.items), 0};
    for (int verdict = VERDICT_FAIL; verdict < VERDICT_OK; verdict++)
        for (size_t i = 0; i < fitted->count; i++) {
            const struct figure *worst = fitted->items[i];
            if ((int)worst->verdict != verdict || !stands_for_all(fitted, i) ||
                !is_shared(reading, worst))
                continue;
            for (size_t j = 1; j < reading->plan->count; j++) {
                const struct figure *other = counterpart(&reading->setups[j], fitted->items[i]);
                if (excess_of(other) > excess_of(worst))
                    worst = other;
            }
            add_finding(&list, worst);
        }
    return list;
}

struct finding_list findings_of(const struct reading *reading, size_t setup)
{
    const struct setup_figures *group = &reading->setups[setup];
    struct finding_list list = {
        arena_allocate_array(reading->arena, group->count, sizeof *list.items), 0};
    for (int verdict = VERDICT_FAIL; verdict < VERDICT_OK; verdict++)
        for (size_t i = 0; i < group->count; i++)
            if ((int)group->items[i]->verdict == verdict && stands_for_all(group, i) &&
                !is_shared(reading, group->items[i]))
                add_finding(&list, group->items[i]);
    return list;
}

const char *counts_text(const struct reading *reading, const struct badness *badness)
{
    return arena_format(reading->arena, "%zu fail, %zu unknown, %zu caution, %zu ok",
                        badness->fails, badness->unknowns, badness->cautions, badness->oks);
}

static void write_setup(const struct reading *reading, const struct badness *badness)
{
    const struct setup *setup = &reading->plan->setups[badness->setup];
    struct finding_list own = findings_of(reading, badness->setup);
    struct prose prose = prose_of(reading);
    const char *label = option_label(reading, setup->name);
    prose_begin(&prose, 0, label, VERDICT_AT);
    prose_words(&prose,
                arena_format(reading->arena, "%s%s%s: %s", setup->is_fitted ? "" : setup->name,
                             setup->is_fitted ? "" : ", ", size_text(reading, setup),
                             counts_text(reading, badness)));
    prose_end(&prose);
    for (size_t i = 0; i < own.count; i++)
        write_finding(reading, own.items[i]);
}

/* Findings of the setup, also those that every setup shares: none is without them. */
static size_t count_verdict(const struct reading *reading, size_t setup, enum verdict verdict)
{
    const struct setup_figures *group = &reading->setups[setup];
    size_t count = 0;
    for (size_t i = 0; i < group->count; i++)
        count += group->items[i]->verdict == verdict && stands_for_all(group, i);
    return count;
}

const struct badness *findings_order(const struct reading *reading)
{
    const struct plan *plan = reading->plan;
    struct badness *all = arena_allocate_array(reading->arena, plan->count, sizeof *all);
    for (size_t i = 0; i < plan->count; i++)
        all[i] = (struct badness){
            i, count_verdict(reading, i, VERDICT_FAIL), count_verdict(reading, i, VERDICT_UNKNOWN),
            count_verdict(reading, i, VERDICT_CAUTION), count_verdict(reading, i, VERDICT_OK)};
    qsort(all, plan->count, sizeof *all, worst_first);
    return all;
}

void shared_findings_text(const struct reading *reading)
{
    struct finding_list shared = findings_shared(reading);
    struct prose prose = prose_of(reading);
    if (shared.count > 0)
        prose_line(&prose, 0, VERDICT_AT,
                   "whichever tyre is chosen (the worst of them, counted with each)");
    for (size_t i = 0; i < shared.count; i++)
        write_finding(reading, shared.items[i]);
}

void own_findings_text(const struct reading *reading)
{
    const struct badness *all = findings_order(reading);
    for (size_t i = 0; i < reading->plan->count; i++)
        write_setup(reading, &all[i]);
}

void findings_text(const struct reading *reading)
{
    shared_findings_text(reading);
    own_findings_text(reading);
}

/* Labels of all setups for which the same was taken. */
const char *labels_taken(const struct reading *reading, const char *assumption)
{
    const char *labels = "";
    for (size_t i = 0; i < reading->figures->count; i++) {
        const struct figure *figure = &reading->figures->items[i];
        if (figure->quantity == QUANTITY_ASSUMPTION && figure->action == assumption)
            labels = arena_format(reading->arena, "%s%s%s", labels, *labels ? " " : "",
                                  option_label(reading, figure->option));
    }
    return labels;
}

static bool is_listed(const struct finding_list *list, const struct figure *assumption)
{
    for (size_t i = 0; i < list->count; i++)
        if (list->items[i]->action == assumption->action)
            return true;
    return false;
}

struct finding_list assumptions_made(const struct reading *reading)
{
    struct finding_list list = {
        arena_allocate_array(reading->arena, reading->figures->count, sizeof *list.items), 0};
    for (size_t i = 0; i < reading->figures->count; i++) {
        const struct figure *figure = &reading->figures->items[i];
        if (figure->quantity == QUANTITY_ASSUMPTION && !is_listed(&list, figure))
            add_finding(&list, figure);
    }
    return list;
}

void assumptions_text(const struct reading *reading)
{
    struct prose prose = prose_of(reading);
    struct finding_list made = assumptions_made(reading);
    if (made.count > 0)
        outbuf_text(reading->out, "\nTaken as (assumptions)\n");
    for (size_t i = 0; i < made.count; i++) {
        prose_begin(&prose, VERDICT_AT, labels_taken(reading, made.items[i]->action), TEXT_AT);
        prose_words(&prose, made.items[i]->action);
        prose_end(&prose);
    }
}

const char cautions[] =
    "For planning only. The vehicle placard, the tyre maker's data book, the wheel's own rating, "
    "local codes and a licensed engineer's approval decide. Trailer dynamics and moving loads are "
    "not covered. Weigh the vehicle as loaded.";

void cautions_text(const struct reading *reading)
{
    struct prose prose = prose_of(reading);
    outbuf_text(reading->out, "\n");
    prose_line(&prose, 0, 0, cautions);
}
