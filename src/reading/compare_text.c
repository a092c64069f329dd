#include "reading/compare_text.h"

#include "output/utf8.h"
#include "output/writer.h"
#include "reading/findings_text.h"
#include "reading/prose.h"
#include "reading/remark_text.h"

enum { LINES_MAX = 3, ROOM_FOR_MORE = 14 };

/* The notes of a setup, joined as long as they fit. */
struct note {
    struct arena *arena;
    const char *text;
    size_t room;       /* characters left */
    size_t left_out;   /* what did not fit */
    enum verdict said; /* of the last one */
    const struct plan *plan;
};

/* "; fail: room at lock", or ", room inside" behind one of the same verdict. */
static void add(struct note *note, enum verdict verdict, const char *what)
{
    bool same = verdict == note->said;
    const char *text = arena_format(note->arena, "%s%s%s%s", same ? "; " : " ",
                                    same ? "" : verdict_name(verdict), same ? "" : ": ", what);
    size_t width = display_width(span_of(text)) + 1;
    if (note->left_out > 0 || width > note->room) {
        note->left_out++;
        return;
    }
    if (!same && note->said != VERDICT_NONE)
        note->text = arena_format(note->arena, "%s.", note->text);
    note->text = arena_format(note->arena, "%s%s", note->text, text);
    note->room -= width;
    note->said = verdict;
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
static void add_findings(struct note *note, const struct compared *fitted,
                         const struct compared *row, enum verdict verdict)
{
    for (int shared = 0; shared < (row->setup->is_fitted ? 1 : 2); shared++)
        for (size_t i = 0; i < row->found.finding_count; i++) {
            const struct figure *finding = row->found.findings[i];
            if (finding->verdict != verdict ||
                (verdict == VERDICT_UNKNOWN && finding_outcome(finding) == OUTCOME_GO) ||
                (!row->setup->is_fitted && is_shared(fitted, finding) != (shared == 1)))
                continue;
            add(note, verdict, finding_name(note->arena, note->plan, finding, 0));
        }
}

static void add_tasks(struct note *note, const struct compared *row)
{
    for (size_t i = 0; i < row->found.task_count; i++) {
        const struct task *task = &row->found.tasks[i];
        const struct task_row *about = &task_rows[task->cure.task];
        const char *axle = axle_name(task->axle);
        if (about->kind != TASK_TO_MEASURE) /* which is told by what is unknown */
            add(note, VERDICT_TASK,
                arena_format(note->arena, "%s%s%s", about->title, *axle ? ", " : "", axle));
    }
}

static void write_setup(struct arena *arena, const struct plan *plan, struct prose *prose,
                        const struct compared *fitted, const struct compared *row)
{
    bool of_file = plan->specification->given != NULL;
    struct note note = {
        .arena = arena,
        .plan = plan,
        .room = LINES_MAX * prose->width - ROOM_FOR_MORE,
        .text = arena_format(arena, "%s: %s:", row->setup->name, outcome_words(row->outcome)),
    };
    note.room -= display_width(span_of(note.text));
    add_findings(&note, fitted, row, VERDICT_FAIL);
    if (of_file) /* of designations alone nearly all is unknown */
        add_findings(&note, fitted, row, VERDICT_UNKNOWN);
    add_tasks(&note, row);
    for (size_t i = 0; i < row->note_count; i++)
        add(&note, VERDICT_CAUTION, remark_text(arena, &row->notes[i], plan->us));
    add_findings(&note, fitted, row, VERDICT_CAUTION);
    if (note.left_out > 0)
        note.text = arena_format(arena, "%s; and %zu more", note.text, note.left_out);
    if (note.said != VERDICT_NONE)
        prose_line(prose, 0, 4, note.text);
}

void compare_notes_text(struct arena *arena, const struct plan *plan,
                        const struct compared *const *rows, struct prose *prose)
{
    if (!prose->markup)
        prose_end(prose);
    for (size_t i = 0; i < plan->count; i++) {
        write_setup(arena, plan, prose, rows[0], rows[i]);
        if (plan_shows_both_axles(plan, i))
            prose_line(prose, 0, 4,
                       arena_format(arena, "%s: its row is that of the %s axle%s",
                                    rows[i]->setup->name, axle_name((int)rows[i]->axle),
                                    plan_drives_all_wheels(plan) ? "" : ", which is driven"));
    }
    if (plan->specification->given == NULL)
        prose_line(prose, 0, 4, "open: designations alone tell no more; a build file does");
    if (report_takes_true(plan))
        prose_line(prose, 0, 4, "taken so: the speedometer reads true on the fitted tyre");
}
