/* tyresum check: whether a build file is understood, what is assumed, missing, not used. */
#include "base/diagnostics.h"
#include "cli/cases.h"
#include "cli/column_words.h"
#include "reading/figure_value.h"
#include "cli/parts.h"
#include "reading/prose.h"
#include "cli/task_keys.h"
#include "cli/template.h"
#include "cli/unused_keys.h"

enum { TEXT_AT = 15 };

enum check_kind {
    CHECK_UNDERSTOOD,
    CHECK_DOUBT,
    CHECK_ASSUMPTION,
    CHECK_MISSING,
    CHECK_TASK,
    CHECK_NOT_USED,
};

const char *const check_kind_names[] = {"understood", "doubt",    "assumption", "missing",
                                        "task",       "not_used", NULL};
static const char *const kind_titles[] = {
    NULL,
    "Understood, and to be looked at again",
    "Taken as (assumptions)",
    "Missing, so that a figure stays unknown",
    "Missing, so that a task is not given or has no figure",
    "Given, but no figure changes without it: nothing needs it, or it is what would be taken",
};

struct check_row {
    enum check_kind kind;
    const struct figure *matter; /* the first of those that the row stands for; NULL if none */
    const char *part, *options, *key, *text;
    double line;
};

struct check_rows {
    struct arena *arena;
    struct check_row *items;
    size_t count;
};

#define CHECK_TEXT(name, expression)                                                               \
    static struct column_value name(const void *data, bool us)                                     \
    {                                                                                              \
        const struct check_row *row = data;                                                        \
        (void)us;                                                                                  \
        return (struct column_value){.text = (expression)};                                        \
    }

CHECK_TEXT(get_kind, check_kind_names[row->kind])
CHECK_TEXT(get_part, row->part)
CHECK_TEXT(get_options, row->options)
CHECK_TEXT(get_key, row->key)
CHECK_TEXT(get_text, row->text)

static struct column_value get_line(const void *data, bool us)
{
    (void)us;
    const struct check_row *row = data;
    return (struct column_value){.value = row->line > 0 ? row->line : UNKNOWN};
}

#define TEXT_COLUMN(name, get)                                                                     \
    {                                                                                              \
        name, NULL, name, UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_TEXT, 12, 0, GET(get)                 \
    }

const struct column check_columns[] = {
    TEXT_COLUMN("kind", get_kind),
    TEXT_COLUMN("part", get_part),
    TEXT_COLUMN("options", get_options),
    {"line", NULL, "line", UNIT_BARE, UNIT_BARE, 0, 0, COLUMN_NUMBER, 6, 0, GET(get_line)},
    TEXT_COLUMN("key", get_key),
    TEXT_COLUMN("text", get_text),
};
const size_t check_column_count = sizeof check_columns / sizeof check_columns[0];

/* Whether two figures tell the same; states, axles and speeds do not tell them apart. */
static bool same_matter(enum check_kind kind, const struct figure *a, const struct figure *b)
{
    return figure_same(a, b,
                       SAME_PART | SAME_ADVICE | (kind == CHECK_ASSUMPTION ? 0 : SAME_QUANTITY));
}

static bool is_of_kind(enum check_kind kind, const struct figure *figure)
{
    if (kind == CHECK_DOUBT)
        return figure->verdict == VERDICT_CAUTION &&
               quantity_rows[figure->quantity].policy & POLICY_DOUBT;
    return kind == CHECK_ASSUMPTION
               ? figure->quantity == QUANTITY_ASSUMPTION
               : figure->quantity != QUANTITY_ASSUMPTION && figure->verdict == VERDICT_UNKNOWN;
}

static bool has_matter(const struct check_rows *rows, enum check_kind kind,
                       const struct figure *figure)
{
    for (size_t i = 0; i < rows->count; i++)
        if (rows->items[i].kind == kind && rows->items[i].matter != NULL &&
            same_matter(kind, rows->items[i].matter, figure))
            return true;
    return false;
}

static const char *names_of(struct arena *arena, const struct plan *plan, const bool *concerned)
{
    size_t length = 1;
    for (size_t i = 0; i < plan->count; i++)
        length += concerned[i] ? strlen(plan->setups[i].name) + 2 : 0;
    char *list = arena_allocate(arena, length), *end = list;
    for (size_t i = 0; i < plan->count; i++)
        if (concerned[i])
            end = stpcpy(stpcpy(end, end > list ? "; " : ""), plan->setups[i].name);
    return list;
}

static bool concerns(const struct setup_figures *setup, enum check_kind kind,
                     const struct figure *matter)
{
    for (size_t i = 0; i < setup->count; i++)
        if (is_of_kind(kind, setup->items[i]) && same_matter(kind, setup->items[i], matter))
            return true;
    return false;
}

/* The setups that a matter concerns, or "all". */
static const char *options_of(struct arena *arena, const struct plan *plan, enum check_kind kind,
                              const struct setup_figures *setups, const struct figure *matter)
{
    bool *concerned = arena_allocate_array(arena, plan->count, sizeof *concerned);
    size_t count = 0;
    for (size_t i = 0; i < plan->count; i++)
        count += concerned[i] = concerns(&setups[i], kind, matter);
    return count == plan->count ? "all" : names_of(arena, plan, concerned);
}

static void add_figures(struct check_rows *rows, const struct plan *plan, enum check_kind kind,
                        const struct figures *figures, const struct setup_figures *setups)
{
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (!is_of_kind(kind, figure) || has_matter(rows, kind, figure))
            continue;
        rows->items[rows->count++] = (struct check_row){
            .kind = kind,
            .matter = figure,
            .part = part_name(figure->part),
            .options = options_of(rows->arena, plan, kind, setups, figure),
            .key = kind != CHECK_ASSUMPTION ? quantity_rows[figure->quantity].name : NULL,
            .text = figure_action(rows->arena, plan, figure),
        };
    }
}

static void add_task_keys(struct check_rows *rows, const struct given *file)
{
    for (size_t i = 0; i < task_key_count; i++) {
        const struct task_key *row = &task_keys[i];
        if (task_key_is_missing(file, row))
            rows->items[rows->count++] = (struct check_row){
                .kind = CHECK_TASK,
                .key = row->key,
                .text = arena_format(rows->arena, "%s: %s (key %s)", task_rows[row->task].word,
                                     row->so, row->key),
            };
    }
}

static void add_unused(struct check_rows *rows, const struct unused_keys *unused)
{
    for (size_t i = 0; i < unused->count; i++)
        rows->items[rows->count++] = (struct check_row){
            .kind = CHECK_NOT_USED,
            .key = unused->items[i].path,
            .line = (double)unused->items[i].mark.line,
            .text = "no figure changes without it",
        };
}

static struct check_rows collect(struct arena *arena, const struct plan *plan, struct node *tree,
                                 const char *option, const char *name)
{
    struct figures figures = {.arena = arena};
    struct unused_keys unused;
    parts_report(CMD_ANY, plan, &figures);
    unused_keys_find(arena, plan, tree, option, &figures, &unused);
    const struct setup_figures *setups = plan_group_figures(plan, &figures);
    struct check_rows rows = {.arena = arena};
    rows.items = arena_allocate_array(arena, 1 + figures.count + task_key_count + unused.count,
                                      sizeof *rows.items);
    rows.items[rows.count++] = (struct check_row){
        .kind = CHECK_UNDERSTOOD,
        .text =
            arena_format(arena, "%s is understood: %zu values%s", name, unused.given,
                         unused.stopped_early
                             ? arena_format(arena, " (of the first %zu was tried which are used)",
                                            unused.tried_max)
                             : ""),
    };
    add_figures(&rows, plan, CHECK_DOUBT, &figures, setups);
    add_figures(&rows, plan, CHECK_ASSUMPTION, &figures, setups);
    add_figures(&rows, plan, CHECK_MISSING, &figures, setups);
    add_task_keys(&rows, plan->specification->given);
    add_unused(&rows, &unused);
    return rows;
}

static void write_row_for_reading(struct arena *arena, struct prose *prose,
                                  const struct check_row *row)
{
    if (row->kind == CHECK_NOT_USED) {
        prose_begin(prose, 2, arena_format(arena, "line %.0f", row->line), TEXT_AT);
        prose_words(prose, row->key);
    } else if (row->kind == CHECK_TASK) {
        prose_line(prose, 2, 4, row->text);
        return;
    } else {
        prose_begin(prose, 2, row->part, TEXT_AT);
        if (row->key != NULL)
            prose_words(prose,
                        arena_format(arena, "%s:", quantity_rows[row->matter->quantity].title));
        prose_words(prose, row->text != NULL ? row->text : "something that it needs");
        if (row->kind != CHECK_DOUBT && !same_text(row->options, "all") &&
            !same_text(row->options, ""))
            prose_words(prose, arena_format(arena, "(%s)", row->options));
    }
    prose_end(prose);
}

static void write_for_reading(struct sink *sink, const struct check_rows *rows)
{
    struct outbuf *out = &sink->out;
    struct prose prose = {.out = out, .width = sink_page_width(sink)};
    for (size_t i = 0; i < rows->count; i++) {
        const struct check_row *row = &rows->items[i];
        if (row->kind == CHECK_UNDERSTOOD) {
            put_shown(out, span_of(row->text));
            outbuf_text(out, "\n");
            continue;
        }
        if (row->kind != rows->items[i - 1].kind) {
            outbuf_text(out, "\n");
            prose_line(&prose, 0, 2, kind_titles[row->kind]);
        }
        write_row_for_reading(rows->arena, &prose, row);
    }
}

static bool write_rows(const struct build_case *build, const struct check_rows *checked)
{
    struct rows_out *rows = case_rows(build, check_columns, check_column_count);
    for (size_t i = 0; rows != NULL && i < checked->count; i++)
        rows_add(rows, &checked->items[i]);
    return rows != NULL;
}

static bool write_list(const struct build_case *build, const struct check_rows *checked)
{
    struct sink *sink = case_sink(build);
    if (sink != NULL)
        write_for_reading(sink, checked);
    return sink != NULL;
}

static enum exit_status check_case(struct arena *arena, const struct build_case *build)
{
    const struct options *options = build->options;
    struct plan plan;
    if (!case_plan(arena, build, &plan))
        return EXIT_INPUT_WRONG;
    struct check_rows rows =
        collect(arena, &plan, build->tree, options->option, build_source_name(build->source));
    bool reading = options->columns == NULL && strcmp(options->format, "table") == 0;
    return (reading ? write_list(build, &rows) : write_rows(build, &rows)) ? EXIT_COMPUTED
                                                                           : case_not_begun(build);
}

static enum exit_status write_template(struct arena *arena, const struct options *options)
{
    struct sink *sink = arena_allocate(arena, sizeof *sink);
    if (!sink_open(arena, sink, options->output))
        return EXIT_NOT_WRITTEN;
    template_write(arena, &sink->out);
    return sink_close(sink, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

enum exit_status run_check(struct arena *arena, const struct command *command,
                           const struct options *options)
{
    if (options->template != (operand_count(options) == 0)) {
        diagnostics_plain("`check` reads a build file, or prints one with --template; expected "
                          "tyresum check FILE, or tyresum check --template");
        return EXIT_INPUT_WRONG;
    }
    if (options->template && sink_stands()) {
        diagnostics_plain(
            "\"%s\" is there already, and a template would replace it; expected a new "
            "file",
            options->output);
        return EXIT_INPUT_WRONG;
    }
    return options->template ? write_template(arena, options)
                             : cases_run(arena, command, options, check_case);
}
