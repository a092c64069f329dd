#include "reading/compare_text.h"

#include "base/letters.h"
#include "output/writer.h"
#include "reading/figure_value.h"
#include "reading/prose.h"
#include "reading/remark_text.h"
#include "size/designation_listed.h"

/* Beside the name stand its letter, a designation, a change of diameter and an outcome. */
enum { HANGING = 3, NAME_WIDTH = 30, NAME_LEAST = 8, BESIDE_NAME = 52 };

/* What is said of a setup under one word, each matter once, with all its axles. */
struct matter {
    const char *name;
    bool axle[AXLE_COUNT];
};
struct group {
    struct arena *arena;
    const struct plan *plan;
    struct matter *matters;
    size_t count, capacity;
};

static void add(struct group *group, const char *name, int axle)
{
    size_t i = 0;
    while (i < group->count && strcmp(group->matters[i].name, name) != 0)
        i++;
    if (i == group->count) {
        group->matters = arena_grow(group->arena, group->matters, group->count, &group->capacity,
                                    sizeof *group->matters);
        group->matters[group->count++] = (struct matter){.name = name};
    }
    if (axle != AXLE_NONE)
        group->matters[i].axle[axle] = true;
}

/* " caution: rim width; pressure warning must come by, front and rear." or nothing. */
static const char *group_text(const struct group *group, const char *word)
{
    const char *text = "";
    for (size_t i = 0; i < group->count; i++) {
        const struct matter *matter = &group->matters[i];
        bool front = matter->axle[AXLE_FRONT], rear = matter->axle[AXLE_REAR];
        text = arena_format(group->arena, "%s%s %s%s%s%s%s", text, i == 0 ? "" : ";", matter->name,
                            front || rear ? ", " : "", front ? axle_name(AXLE_FRONT) : "",
                            front && rear ? " and " : "", rear ? axle_name(AXLE_REAR) : "");
    }
    return group->count == 0 ? "" : arena_format(group->arena, " %s:%s.", word, text);
}

static struct group group_of(struct arena *arena, const struct plan *plan)
{
    return (struct group){.arena = arena, .plan = plan};
}

/* The quantity's title; with its place where each place is a matter of its own. */
static const char *matter_name(const struct group *group, const struct figure *figure)
{
    const struct quantity_row *row = &quantity_rows[figure->quantity];
    const char *at = figure_at(group->arena, group->plan, figure);
    bool own = row->policy & (POLICY_RULES | POLICY_PLACES) && at != NULL && *at != '\0';
    return own ? arena_format(group->arena, "%s, %s", row->title, at) : row->title;
}

/* Whether the fitted tyre has it too: then it tells nothing of the option. */
static bool is_shared(const struct compared *fitted, const struct figure *finding)
{
    for (size_t i = 0; i < fitted->found.finding_count; i++)
        if (figure_same(fitted->found.findings[i], finding,
                        SAME_QUANTITY | SAME_VERDICT | SAME_AXLE | SAME_STATE | SAME_PLACE))
            return true;
    return false;
}

/* Findings of a verdict: the option's own, then those of every tyre. What is unknown counts where
 * the outcome hangs on it. */
static void add_findings(struct group *group, const struct compared *fitted,
                         const struct compared *row, enum verdict verdict)
{
    for (int shared = 0; shared < (row->setup->is_fitted ? 1 : 2); shared++)
        for (size_t i = 0; i < row->found.finding_count; i++) {
            const struct figure *finding = row->found.findings[i];
            if (finding->verdict != verdict ||
                (verdict == VERDICT_UNKNOWN && finding_outcome(finding) == OUTCOME_GO) ||
                (!row->setup->is_fitted && is_shared(fitted, finding) != (shared == 1)))
                continue;
            add(group, matter_name(group, finding), finding->axle);
        }
}

/* What is done; of what is measured, what to do; of what is told, its matter; of what stays behind,
 * the item. */
static const char *task_name(const struct group *group, const struct task *task)
{
    const struct task_row *row = &task_rows[task->cure.task];
    const char *item = task->reason->place.name;
    const char *advice = figure_action(group->arena, group->plan, task->reason);
    if (task->cure.task == TASK_MEASURE && advice != NULL)
        return advice;
    if (task->cure.task == TASK_MEASURE || task->cure.task == TASK_TELL)
        return matter_name(group, task->reason);
    return row->policy & TASK_BY_ITEM && item != NULL
               ? arena_format(group->arena, "%s %s", row->title, item)
               : row->title;
}

static const char *tasks_text(struct arena *arena, const struct plan *plan,
                              const struct option_outcome *found)
{
    const char *text = "";
    bool of_file = plan->specification->given != NULL;
    for (int kind = of_file ? TASK_TO_MEASURE : TASK_TO_ORDER; kind <= TASK_TO_TELL; kind++) {
        struct group group = group_of(arena, plan);
        for (size_t i = 0; i < found->task_count; i++)
            if ((int)task_rows[found->tasks[i].cure.task].kind == kind)
                add(&group, task_name(&group, &found->tasks[i]), found->tasks[i].axle);
        const char *word = kind == TASK_TO_TELL      ? "tell the driver"
                           : kind == TASK_TO_MEASURE ? "find out"
                                                     : task_kind_name((enum task_kind)kind);
        text = arena_format(arena, "%s%s", text, group_text(&group, word));
    }
    return text;
}

static const char *findings_text(struct arena *arena, const struct plan *plan,
                                 const struct compared *fitted, const struct compared *row,
                                 enum verdict verdict)
{
    struct group group = group_of(arena, plan);
    for (size_t i = 0; verdict == VERDICT_CAUTION && i < row->note_count; i++)
        add(&group, remark_text(arena, &row->notes[i], plan->us), AXLE_NONE);
    add_findings(&group, fitted, row, verdict);
    return group_text(&group, verdict_name(verdict));
}

const char *compare_option_text(struct arena *arena, const struct setup *setup, size_t page_width)
{
    size_t room = page_width < BESIDE_NAME + NAME_LEAST   ? NAME_LEAST
                  : page_width < BESIDE_NAME + NAME_WIDTH ? page_width - BESIDE_NAME
                                                          : NAME_WIDTH;
    const char *name = text_cut(arena, setup->name, room);
    return setup->number == 0
               ? name
               : arena_format(arena, "%s  %s", letters_of_number(arena, setup->number), name);
}

/* With the letter that stands before it in the table. */
static void begin(struct arena *arena, struct prose *prose, const struct setup *setup)
{
    prose_begin(prose, 0, letters_of_number(arena, setup->number), HANGING);
    prose->start = setup->number == 0 ? 0 : prose->start;
}

/* Of designations alone nearly all is unknown, and only what can be told is. */
static void write_setup(struct arena *arena, const struct plan *plan, struct prose *prose,
                        const struct compared *fitted, const struct compared *row)
{
    bool no_go = row->found.outcome == OUTCOME_NO_GO && plan->specification->given != NULL;
    const char *said =
        arena_format(arena, "%s%s%s%s", findings_text(arena, plan, fitted, row, VERDICT_FAIL),
                     no_go ? findings_text(arena, plan, fitted, row, VERDICT_UNKNOWN) : "",
                     tasks_text(arena, plan, &row->found),
                     findings_text(arena, plan, fitted, row, VERDICT_CAUTION));
    if (*said == '\0')
        return;
    begin(arena, prose, row->setup);
    prose_words(prose, arena_format(arena, "%s: %s.%s", row->setup->name,
                                    outcome_words(row->outcome), said));
    prose_end(prose);
}

/* What was added to sizes as they were written, and what stands for a load index that was not. */
static void write_taken(struct arena *arena, const struct compared *row, struct prose *prose)
{
    const struct tyre *tyre = &row->setup->axle[row->axle];
    enum listed_end end = row->setup->is_fitted ? LISTED_HIGHEST : LISTED_LOWEST;
    char size[DESIGNATION_CANONICAL_SIZE], listed[LISTED_NOTE_SIZE];
    int load_index, dual;
    designation_canonical(&tyre->size, size);
    if (tyre->taken != NULL)
        prose_line(prose, 0, HANGING,
                   arena_format(arena, "taken so: %s is read as %s: %s", row->setup->name, size,
                                tyre->taken));
    if (!designation_listed(&tyre->size, end, &load_index, &dual))
        return;
    designation_listed_note(load_index, tyre->size.load_range, end, listed);
    prose_line(
        prose, 0, HANGING,
        arena_format(arena, "taken so: %s: %s; read the sidewall", row->setup->name, listed));
}

void compare_notes_text(struct arena *arena, const struct plan *plan,
                        const struct compared *const *rows, struct prose *prose)
{
    if (!prose->markup)
        prose_end(prose);
    for (size_t i = 0; i < plan->count; i++) {
        write_setup(arena, plan, prose, rows[0], rows[i]);
        if (!plan_shows_both_axles(plan, i))
            continue;
        begin(arena, prose, rows[i]->setup);
        prose_words(prose, arena_format(arena, "%s: its row is that of the %s axle%s",
                                        rows[i]->setup->name, axle_name((int)rows[i]->axle),
                                        plan_drives_all_wheels(plan) ? "" : ", which is driven"));
        prose_end(prose);
    }
    if (plan->specification->given == NULL)
        prose_line(prose, 0, HANGING, "open: designations alone tell no more; a build file does");
    for (size_t i = 0; i < plan->count; i++)
        write_taken(arena, rows[i], prose);
    if (report_takes_true(plan))
        prose_line(prose, 0, HANGING, "taken so: the speedometer reads true on the fitted tyre");
}
