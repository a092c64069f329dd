/* tyresum tasks: what has to be done for each option, in workshop order. */
#include "base/known.h"
#include "cli/cases.h"
#include "cli/layout_out.h"
#include "cli/parts.h"
#include "reading/page.h"
#include "reading/task_list.h"
#include "reading/task_text.h"

/* A task of a setup, or that it has none. */
struct task_line {
    const struct layout *layout;
    size_t setup;
    size_t number;           /* from 1; 0: no task */
    const struct task *task; /* NULL: none */
    bool us;
};

static const struct option_outcome *outcome_of(const struct task_line *line)
{
    return &line->layout->outcomes[line->setup];
}

/* The finding that a task cures; without a task, what decides. */
static const struct figure *reason_of(const struct task_line *line)
{
    return line->task == NULL ? outcome_of(line)->why : line->task->reason;
}

static const char *option_name(const struct task_line *line)
{
    return line->layout->plan->setups[line->setup].name;
}

static const char *kind_name(const struct task_line *line)
{
    return line->task == NULL ? NULL : task_kind_name(task_rows[line->task->cure.task].kind);
}

/* Of no task, the axle of what fails. */
static const char *axle_of(const struct task_line *line)
{
    const struct figure *reason = reason_of(line);
    return line->task != NULL ? axle_name(line->task->axle)
           : reason != NULL   ? axle_name(reason->axle)
                              : NULL;
}

static const char *task_name(const struct task_line *line)
{
    return line->task == NULL ? NULL : task_rows[line->task->cure.task].name;
}

static const char *unit_name(const struct task_line *line)
{
    return line->task == NULL ? NULL : task_unit(line->layout->plan, line->task, line->us);
}

static const char *reason_text(const struct task_line *line)
{
    const struct figure *reason = reason_of(line);
    return reason == NULL ? NULL : finding_sentence(line->layout, reason);
}

static const char *basis_text(const struct task_line *line)
{
    const struct figure *reason = reason_of(line);
    return reason == NULL ? NULL : figure_basis(line->layout->arena, line->layout->plan, reason);
}

#define TASK_GETTER(name, expression)                                                              \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct task_line *line = data;                                                       \
        (void)us;                                                                                  \
        return (struct column_value){.text = (expression)};                                        \
    }

TASK_GETTER(get_option, option_name(line))
TASK_GETTER(get_outcome, outcome_name(outcome_of(line)->outcome))
TASK_GETTER(get_kind, kind_name(line))
TASK_GETTER(get_axle, axle_of(line))
TASK_GETTER(get_task, task_name(line))
TASK_GETTER(get_unit, unit_name(line))
TASK_GETTER(get_reason, reason_text(line))
TASK_GETTER(get_basis, basis_text(line))

static struct column_value get_number(const void *data, bool us)
{
    const struct task_line *line = data;
    (void)us;
    return (struct column_value){.value = line->number > 0 ? (double)line->number : UNKNOWN};
}

static struct column_value either(const char *text, struct task_number number)
{
    return (struct column_value){
        .text = text, .value = number.value, .decimals = number.decimals, .own_decimals = true};
}

static struct column_value get_now(const void *data, bool us)
{
    const struct task_line *line = data;
    (void)us;
    if (line->task == NULL)
        return (struct column_value){.value = UNKNOWN};
    return either(line->task->cure.now_text, task_now(line->layout->plan, line->task, line->us));
}

static struct column_value get_then(const void *data, bool us)
{
    const struct task_line *line = data;
    (void)us;
    if (line->task == NULL)
        return (struct column_value){.value = UNKNOWN};
    return either(line->task->cure.then_text, task_then(line->layout->plan, line->task, line->us));
}

#define COLUMN(name, title, kind, width, get)                                                      \
    {                                                                                              \
        name, NULL, title, UNIT_BARE, UNIT_BARE, 0, 0, kind, width, 0, GET(get)                    \
    }

const struct column task_columns[] = {
    COLUMN("option", "option", COLUMN_TEXT, 12, get_option),
    COLUMN("outcome", "outcome: go, work, open or no_go", COLUMN_TEXT, 7, get_outcome),
    COLUMN("number", "number", COLUMN_NUMBER, 6, get_number),
    COLUMN("kind", "kind of work", COLUMN_TEXT, 8, get_kind),
    COLUMN("axle", "axle", COLUMN_TEXT, 5, get_axle),
    COLUMN("task", "task", COLUMN_TEXT, 19, get_task),
    COLUMN("now", "as it is now", COLUMN_EITHER, 8, get_now),
    COLUMN("then", "as it shall be", COLUMN_EITHER, 8, get_then),
    COLUMN("unit", "unit", COLUMN_TEXT, 6, get_unit),
    COLUMN("reason", "the finding that the task cures", COLUMN_TEXT, 20, get_reason),
    COLUMN("basis", "basis", COLUMN_TEXT, 20, get_basis),
};
const size_t task_column_count = sizeof task_columns / sizeof task_columns[0];

/* One row, or two under `both` where the units differ. */
static void add_rows(struct rows_out *rows, struct task_line line)
{
    line.us = line.layout->units == UNITS_US;
    rows_add(rows, &line);
    line.us = true;
    if (line.layout->units == UNITS_BOTH && line.task != NULL && task_has_two_units(line.task))
        rows_add(rows, &line);
}

static void add_setup(struct rows_out *rows, const struct layout *layout, size_t setup)
{
    const struct option_outcome *outcome = &layout->outcomes[setup];
    if (outcome->task_count == 0)
        add_rows(rows, (struct task_line){.layout = layout, .setup = setup});
    for (size_t i = 0; i < outcome->task_count; i++)
        add_rows(rows, (struct task_line){layout, setup, i + 1, &outcome->tasks[i], false});
}

static bool write_rows(const struct build_case *build, const struct layout *layout)
{
    struct rows_out *rows = case_rows(build, task_columns, task_column_count);
    for (size_t i = 0; rows != NULL && i < layout->plan->count; i++)
        if (task_list_shows(layout, layout->order[i]))
            add_setup(rows, layout, layout->order[i]);
    return rows != NULL;
}

static bool write_list(const struct build_case *build, struct layout *layout)
{
    struct sink *sink = case_sink(build);
    if (sink == NULL)
        return false;
    layout_on(layout, build->options, sink);
    if (layout->format == FOR_HTML)
        page_html_tasks(layout);
    else if (layout->format == FOR_MARKDOWN)
        task_list_markdown(layout);
    else
        task_list_text(layout);
    return true;
}

static bool any_no_go(const struct layout *layout)
{
    for (size_t i = 0; i < layout->plan->count; i++)
        if (task_list_shows(layout, i) && layout->outcomes[i].outcome == OUTCOME_NO_GO)
            return true;
    return false;
}

static enum exit_status tasks_of_case(struct arena *arena, const struct build_case *build)
{
    const struct options *options = build->options;
    struct plan plan;
    if (!case_plan(arena, build, &plan))
        return EXIT_INPUT_WRONG;
    struct figures figures = {.arena = arena};
    parts_report(CMD_SHEET, &plan, &figures);
    struct layout layout = layout_of(arena, options, &plan, &figures, NULL);
    if (!(layout_is_rows(options) ? write_rows(build, &layout) : write_list(build, &layout)))
        return case_not_begun(build);
    return options->strict && any_no_go(&layout) ? EXIT_FINDING_FAIL : EXIT_COMPUTED;
}

enum exit_status run_tasks(struct arena *arena, const struct command *command,
                           const struct options *options)
{
    return cases_run(arena, command, options, tasks_of_case);
}
