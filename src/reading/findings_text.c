#include "reading/findings_text.h"

#include <string.h>

#include "base/known.h"
#include "reading/prose.h"
#include "tables/certainty.h"

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

/* "room at lock, front: -3 mm (limit 0 mm); trim the arch by 3 mm": the thing, its figure, what to
 * do. */
static const char *sentence(const struct layout *layout, const struct figure *figure,
                            const char *action)
{
    struct arena *arena = layout->arena;
    const char *name = finding_name(arena, layout->plan, figure, 0), *text = "";
    if (known(figure->value))
        text = figure_text(layout, figure, figure->value);
    if (known(figure->limit))
        text = arena_format(arena, *text ? "%s (limit %s)" : "%slimit %s", text,
                            figure_limit_text(layout, figure));
    if (action != NULL)
        text = arena_format(arena, "%s%s%s", text, *text ? "; " : "", action);
    return *text ? arena_format(arena, "%s: %s", name, text) : name;
}

const char *finding_sentence(const struct layout *layout, const struct figure *figure)
{
    return sentence(layout, figure, figure_action(layout->arena, layout->plan, figure));
}

const char *finding_in_words(const struct layout *layout, const struct figure *figure)
{
    return sentence(layout, figure, figure_advice(layout->arena, layout->plan, figure));
}

void finding_text(const struct layout *layout, const struct figure *figure)
{
    struct prose prose = prose_of(layout);
    const char *basis = figure_basis(layout->arena, layout->plan, figure);
    prose_begin(&prose, VERDICT_AT, verdict_name(figure->verdict), TEXT_AT);
    prose_words(&prose, finding_sentence(layout, figure));
    if (basis != NULL)
        prose_words(&prose, arena_format(layout->arena, "[%s]", basis));
    prose_end(&prose);
}

/* Both unknown for want of the same. */
static bool want_the_same(const struct figure *a, const struct figure *b)
{
    return a->verdict == VERDICT_UNKNOWN && b->verdict == VERDICT_UNKNOWN &&
           a->advice.id != REMARK_NONE && figure_same(a, b, SAME_ADVICE);
}

/* "2 figures: find the load range, for tyre capacity, front; pressure recommended, front": what is
 * wanted, once, and all that hangs on it. */
static void wanting_text(const struct layout *layout, const struct finding_list *list, size_t first)
{
    struct prose prose = prose_of(layout);
    const struct figure *figure = list->items[first];
    const char *names = finding_name(layout->arena, layout->plan, figure, 0);
    size_t count = 1;
    for (size_t i = first + 1; i < list->count; i++)
        if (want_the_same(figure, list->items[i])) {
            names = arena_format(layout->arena, "%s; %s", names,
                                 finding_name(layout->arena, layout->plan, list->items[i], 0));
            count++;
        }
    prose_begin(&prose, VERDICT_AT, verdict_name(figure->verdict), TEXT_AT);
    prose_words(&prose, arena_format(layout->arena, "%zu figures: %s, for %s", count,
                                     figure_action(layout->arena, layout->plan, figure), names));
    prose_end(&prose);
}

void findings_text(const struct layout *layout, const struct finding_list *list)
{
    for (size_t i = 0; i < list->count; i++) {
        size_t before = 0, after = i + 1;
        while (before < i && !want_the_same(list->items[before], list->items[i]))
            before++;
        while (after < list->count && !want_the_same(list->items[i], list->items[after]))
            after++;
        if (before < i)
            continue;
        if (after < list->count)
            wanting_text(layout, list, i);
        else
            finding_text(layout, list->items[i]);
    }
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

static bool is_better(const struct layout *layout, size_t a, size_t b)
{
    if (a == 0 || b == 0)
        return b == 0 && a != 0;
    return option_outcome_compare(&layout->whole[a], &layout->whole[b]) < 0;
}

/* By insertion, so that equals keep the file's order. */
static void sort_setups(struct layout *layout)
{
    size_t count = layout->plan->count;
    layout->order = arena_allocate_array(layout->arena, count, sizeof *layout->order);
    for (size_t i = 0; i < count; i++) {
        size_t at = i;
        for (; at > 0 && is_better(layout, i, layout->order[at - 1]); at--)
            layout->order[at] = layout->order[at - 1];
        layout->order[at] = i;
    }
}

static void find_shared(struct layout *layout)
{
    const struct setup_figures *fitted = &layout->setups[0];
    layout->shared.items =
        arena_allocate_array(layout->arena, fitted->count, sizeof *layout->shared.items);
    for (size_t i = 0; layout->plan->count > 1 && i < fitted->count; i++)
        if (fitted->items[i]->verdict != VERDICT_NONE && fitted->items[i]->verdict != VERDICT_OK &&
            every_setup_has(layout, fitted->items[i]))
            layout->shared.items[layout->shared.count++] = fitted->items[i];
}

static struct option_outcome *outcomes_of(const struct layout *layout,
                                          const struct setup_figures *setups)
{
    size_t count = layout->plan->count;
    struct option_outcome *outcomes = arena_allocate_array(layout->arena, count, sizeof *outcomes);
    for (size_t i = 0; i < count; i++)
        option_outcome_make(layout->plan, &setups[i], &outcomes[i]);
    return outcomes;
}

void layout_group(struct layout *layout, const struct figures *every_part)
{
    layout->setups = plan_group_figures(layout->plan, layout->figures);
    layout->every = plan_group_figures(layout->plan, layout->figures);
    layout->outcomes = layout->whole = outcomes_of(layout, layout->setups);
    if (every_part != NULL)
        layout->whole = outcomes_of(layout, plan_group_figures(layout->plan, every_part));
    for (size_t i = 0; i < layout->plan->count; i++)
        keep_figures_to_read(&layout->setups[i]);
    sort_setups(layout);
    find_shared(layout);
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

/* The same of another setup, where it is the worse. */
static const struct figure *worst_of_all(const struct layout *layout, const struct figure *finding)
{
    const struct figure *worst = finding;
    for (size_t i = 1; i < layout->plan->count; i++) {
        const struct figure *other = counterpart(&layout->setups[i], finding);
        if (other != NULL && figure_excess(other) > figure_excess(worst))
            worst = other;
    }
    return worst;
}

/* What is wrong whichever tyre is chosen, once, as the worst setup has it. */
struct finding_list findings_shared(const struct layout *layout)
{
    const struct option_outcome *fitted = &layout->outcomes[0];
    struct finding_list list = {
        arena_allocate_array(layout->arena, fitted->finding_count, sizeof *list.items), 0};
    for (size_t i = 0; i < fitted->finding_count; i++)
        if (is_shared(layout, fitted->findings[i]))
            add_finding(&list, worst_of_all(layout, fitted->findings[i]));
    return list;
}

struct finding_list findings_of(const struct layout *layout, size_t setup)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    struct finding_list list = {
        arena_allocate_array(layout->arena, outcome->finding_count, sizeof *list.items), 0};
    for (size_t i = 0; i < outcome->finding_count; i++)
        if (outcome->findings[i]->verdict != VERDICT_OK && !is_shared(layout, outcome->findings[i]))
            add_finding(&list, outcome->findings[i]);
    return list;
}

bool is_told_as_task(const struct layout *layout, size_t setup, const struct figure *finding)
{
    bool no_go = layout->outcomes[setup].outcome == OUTCOME_NO_GO;
    return finding->verdict == VERDICT_TASK || (!no_go && finding->verdict == VERDICT_UNKNOWN &&
                                                finding_outcome(finding) == OUTCOME_OPEN);
}

/* "2 fail, 3 tasks, 1 caution": each once, as it is told. */
static const char *counts_text(const struct layout *layout, size_t setup)
{
    static const struct {
        enum verdict verdict;
        const char *one, *many;
    } words[] = {
        {VERDICT_FAIL, "fail", "fail"},
        {VERDICT_UNKNOWN, "unknown", "unknown"},
        {VERDICT_TASK, "task", "tasks"},
        {VERDICT_CAUTION, "caution", "cautions"},
    };
    const struct option_outcome *outcome = &layout->outcomes[setup];
    size_t counts[VERDICT_COUNT] = {[VERDICT_TASK] = outcome->task_count};
    const char *text = "";
    for (size_t i = 0; i < outcome->finding_count; i++)
        if (!is_told_as_task(layout, setup, outcome->findings[i]))
            counts[outcome->findings[i]->verdict]++;
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        size_t count = counts[words[i].verdict];
        if (count > 0)
            text = arena_format(layout->arena, "%s%s%zu %s", text, *text ? ", " : "", count,
                                count == 1 ? words[i].one : words[i].many);
    }
    return *text ? text : "nothing found wrong";
}

const char *standing_text(const struct layout *layout, size_t setup)
{
    bool of_part = layout->whole != layout->outcomes;
    return arena_format(layout->arena, "%s%s %s", outcome_words(layout->whole[setup].outcome),
                        of_part ? "; in this part" : ";", counts_text(layout, setup));
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

/* A figure that is shown and is there for more than its basis. */
static bool tells_from_memory(const struct figure *figure)
{
    return figure->headline != HEADLINE_ROWS_ONLY && rests_on_memory(&figure->basis) &&
           (known(figure->value) || known(figure->limit));
}

const char *memory_note(const struct layout *layout)
{
    bool told[QUANTITY_COUNT] = {false};
    const char *names = NULL;
    for (size_t i = 0; i < layout->figures->count; i++) {
        const struct figure *figure = &layout->figures->items[i];
        if (told[figure->quantity] || !tells_from_memory(figure))
            continue;
        const char *title = quantity_rows[figure->quantity].title;
        told[figure->quantity] = true;
        names = names == NULL ? title : arena_format(layout->arena, "%s; %s", names, title);
    }
    return names == NULL ? NULL
                         : arena_format(layout->arena,
                                        "These rest on figures " FROM_MEMORY
                                        ", of publications that were not seen: %s.",
                                        names);
}

void cautions_text(const struct layout *layout)
{
    struct prose prose = prose_of(layout);
    const char *memory = memory_note(layout);
    outbuf_text(layout->out, "\n");
    if (memory != NULL)
        prose_line(&prose, 0, 0, memory);
    prose_line(&prose, 0, 0, cautions);
}
