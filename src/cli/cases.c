#include "cli/cases.h"

#include <string.h>

#include "base/diagnostics.h"
#include "base/utf8.h"
#include "cli/input.h"
#include "cli/mistakes.h"
#include "yaml/set_path.h"

enum { CASES_MAX = 10000 };

/* The values of one --each. */
struct sweep {
    struct each_value *values;
    size_t count;
};

/* What all cases write into, opened by the first that has something to write. */
struct results {
    struct arena *arena;
    struct rows_out *rows;
    struct sink *sink;
    bool refused; /* it cannot be begun, for any case */
};

struct counts {
    size_t run, wrong, failed, unread;
};

static bool is_closing(char c)
{
    return c == ']' || c == '}';
}

/* "V1,V2,...": commas within brackets and quotes part nothing. */
static bool split_values(struct arena *arena, const char *argument, struct sweep *out)
{
    struct span text = span_of(argument);
    size_t start = set_path_length(text) + 1, depth = 0, capacity = 0;
    char quote = '\0';
    for (size_t i = start; i <= text.length; i++) {
        char c = i < text.length ? text.at[i] : ',';
        if (quote != '\0' && i < text.length) {
            quote = c == quote ? '\0' : quote;
            continue;
        }
        quote = c == '"' || c == '\'' ? c : '\0';
        depth += c == '[' || c == '{';
        depth -= is_closing(c) && depth > 0;
        if (c != ',' || (depth > 0 && i < text.length))
            continue;
        while (start < i && is_blank(text.at[start]))
            start++;
        if (start == i) {
            diagnostics_plain("--each \"%s\" has nothing %s; expected --each PATH=V1,V2,...",
                              argument, i == text.length ? "at its end" : "before a comma");
            return false;
        }
        out->values = arena_grow(arena, out->values, out->count, &capacity, sizeof *out->values);
        struct span before = {text.at, start};
        out->values[out->count++] =
            (struct each_value){{text.at + start, i - start}, count_characters(before) + 1};
        start = i + 1;
    }
    return true;
}

static struct sweep *read_sweeps(struct arena *arena, const struct options *options,
                                 size_t *combinations)
{
    struct sweep *sweeps = arena_allocate_array(arena, options->each.count, sizeof *sweeps);
    *combinations = 1;
    for (size_t i = 0; i < options->each.count; i++) {
        if (!split_values(arena, options->each.items[i], &sweeps[i]))
            return NULL;
        if (sweeps[i].count > CASES_MAX / *combinations) {
            diagnostics_plain("--each asks for more than %d cases; expected fewer values, or "
                              "several runs",
                              CASES_MAX);
            return NULL;
        }
        *combinations *= sweeps[i].count;
    }
    return sweeps;
}

/* Files, or designations instead of one. */
static bool operands_agree(const struct options *options)
{
    size_t count = operand_count(options), files = 0;
    for (size_t i = 0; i < count; i++)
        files += operand_is_file(operand(options, i));
    if (files == 0 || files == count)
        return true;
    for (size_t i = 0; i < count; i++)
        if (operand_is_file(operand(options, i)) != operand_is_file(operand(options, 0)))
            diagnostics_plain("\"%s\" is %s, and \"%s\" is %s; expected files alone, or "
                              "designations alone",
                              operand(options, 0),
                              operand_is_file(operand(options, 0)) ? "a file" : "a designation",
                              operand(options, i),
                              operand_is_file(operand(options, i)) ? "a file" : "a designation");
    return false;
}

static const char *case_name(struct arena *arena, const struct build_source *source, bool files)
{
    const char *name = files ? input_name(source->path) : "";
    for (size_t i = 0; i < source->options->each.count; i++) {
        struct span value = source->each[i].text;
        name =
            arena_format(arena, "%s%s%.*s", name, *name ? "; " : "", (int)value.length, value.at);
    }
    return name;
}

static enum exit_status run_one(const struct command *command, const struct options *options,
                                const struct build_source *source, struct results *results,
                                bool files, case_run run)
{
    struct arena arena = ARENA_EMPTY;
    struct build_case build = {
        .command = command,
        .options = options,
        .source = source,
        .name = options->cases ? case_name(&arena, source, files) : NULL,
        .specification = arena_allocate(&arena, sizeof *build.specification),
        .results = results,
        .shared = results->arena,
    };
    build.tree = build_source_read(&arena, source, build.specification);
    enum exit_status status = build.tree == NULL ? EXIT_INPUT_WRONG : run(&arena, &build);
    arena_free(&arena);
    return status;
}

/* Every combination of the values, the last --each first. False where the rest is in vain. */
static bool run_sweeps(const struct command *command, const struct options *options,
                       struct build_source *source, const struct sweep *sweeps,
                       struct results *results, struct counts *counts, case_run run)
{
    struct each_value *each =
        arena_allocate_array(results->arena, options->each.count, sizeof *each);
    size_t combinations = 1;
    for (size_t i = 0; i < options->each.count; i++)
        combinations *= sweeps[i].count;
    source->each = each;
    for (size_t combination = 0; combination < combinations; combination++) {
        for (size_t i = options->each.count, rest = combination; i-- > 0;) {
            each[i] = sweeps[i].values[rest % sweeps[i].count];
            rest /= sweeps[i].count;
        }
        enum exit_status status = run_one(command, options, source, results,
                                          operand_count(options) > 1 && source->path != NULL, run);
        counts->run++;
        counts->wrong += status == EXIT_INPUT_WRONG;
        counts->unread += status == EXIT_LINES_UNREAD;
        counts->failed += status == EXIT_FINDING_FAIL;
        if (status == EXIT_NOT_WRITTEN || results->refused)
            return false;
    }
    return true;
}

static bool read_file(struct arena *arena, struct build_source *source)
{
    const char *wrong = input_read_path(arena, source->path, &source->text);
    if (wrong == NULL)
        return true;
    diagnostics_plain("%s", wrong);
    hint_at_designation(source->path);
    return false;
}

static enum exit_status ended(struct results *results, const struct counts *counts, bool whole)
{
    bool keep = counts->wrong < counts->run && !results->refused, written = true;
    if (results->rows != NULL)
        written = rows_end(results->rows, keep);
    else if (results->sink != NULL)
        written = sink_close(results->sink, keep);
    if (!written || (!whole && !results->refused))
        return EXIT_NOT_WRITTEN;
    if (!keep)
        return EXIT_INPUT_WRONG;
    return counts->failed > 0                   ? EXIT_FINDING_FAIL
           : counts->wrong + counts->unread > 0 ? EXIT_LINES_UNREAD
                                                : EXIT_COMPUTED;
}

/* A page or a drawing is of one build. */
static bool format_takes_cases(const struct options *options)
{
    struct span format = span_of(options->format);
    if (!options->cases || (!span_is(format, "html") && !span_is(format, "svg")))
        return true;
    diagnostics_plain("--format %s shows one build; expected one file, and no --each",
                      options->format);
    return false;
}

enum exit_status cases_run(struct arena *arena, const struct command *command,
                           const struct options *given, case_run run)
{
    struct options options = *given;
    size_t count = operand_count(&options), combinations;
    bool designations = !operand_is_file(operand(&options, 0));
    options.cases = options.each.count > 0 || (count > 1 && !designations);
    struct sweep *sweeps = read_sweeps(arena, &options, &combinations);
    if (sweeps == NULL || !operands_agree(&options) || !format_takes_cases(&options))
        return EXIT_INPUT_WRONG;
    struct results results = {.arena = arena};
    struct counts counts = {0, 0, 0, 0};
    bool whole = true;
    for (size_t i = 0; whole && i < (designations ? 1 : count); i++) {
        struct build_source source = {.options = &options,
                                      .path = designations ? NULL : operand(&options, i)};
        if (designations || read_file(arena, &source)) {
            whole = run_sweeps(command, &options, &source, sweeps, &results, &counts, run);
        } else {
            counts.run++;
            counts.wrong++;
        }
    }
    return ended(&results, &counts, whole);
}

bool case_plan(struct arena *arena, const struct build_case *build, struct plan *out)
{
    const struct options *options = build->options;
    if (plan_make(arena, build->specification, options->units == UNITS_US, options->option, out))
        return true;
    report_unknown_option(build->specification, options->option);
    return false;
}

struct rows_out *case_rows(const struct build_case *build, const struct column *columns,
                           size_t count)
{
    struct results *results = build->results;
    if (results->rows == NULL) {
        struct rows_out *rows = arena_allocate(results->arena, sizeof *rows);
        enum exit_status begun =
            rows_begin(results->arena, rows, build->options, columns, count, false);
        results->refused = begun == EXIT_INPUT_WRONG;
        if (begun != EXIT_COMPUTED)
            return NULL;
        results->rows = rows;
    }
    results->rows->choice.case_name = build->name;
    return results->rows;
}

enum exit_status case_not_begun(const struct build_case *build)
{
    return build->results->refused ? EXIT_INPUT_WRONG : EXIT_NOT_WRITTEN;
}

struct sink *case_sink(const struct build_case *build)
{
    struct results *results = build->results;
    bool first = results->sink == NULL;
    if (first) {
        struct sink *sink = arena_allocate(results->arena, sizeof *sink);
        if (!sink_open(results->arena, sink, build->options->output))
            return NULL;
        results->sink = sink;
    }
    if (build->name != NULL) {
        struct outbuf *out = &results->sink->out;
        outbuf_text(out, first ? "" : "\n");
        outbuf_text(out, strcmp(build->options->format, "markdown") == 0 ? "# " : "case ");
        put_shown(out, span_of(build->name));
        outbuf_text(out, "\n\n");
    }
    return results->sink;
}

struct rows_out *case_table(struct arena *arena, const struct build_case *build,
                            const struct column *columns, size_t count)
{
    struct options options = *build->options;
    struct span format = span_of(options.format);
    if (span_is(format, "csv") || span_is(format, "json") || span_is(format, "html") ||
        (options.cases && options.columns))
        return case_rows(build, columns, count);
    options.cases = false; /* it stands above */
    struct sink *sink = case_sink(build);
    struct rows_out *rows = arena_allocate(arena, sizeof *rows);
    if (sink == NULL)
        return NULL;
    build->results->refused = !rows_begin_in(arena, rows, &options, columns, count, sink);
    return build->results->refused ? NULL : rows;
}

struct sink *case_table_end(const struct build_case *build, struct rows_out *rows)
{
    if (rows->page)
        rows_table_end(rows); /* its page goes on */
    if (rows == build->results->rows)
        return rows->page ? &rows->sink : NULL;
    writer_end(&rows->writer);
    return build->results->sink;
}
