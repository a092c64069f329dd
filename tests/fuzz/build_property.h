/* What must hold of every text that is read as a build file: it is reported whole, or refused with
 * places within it; never both, and the same the second time. For the fuzzers of raw bytes and of
 * mutated files. NULL where all holds, otherwise what is broken. */
#ifndef TYRESUM_TESTS_FUZZ_BUILD_PROPERTY_H
#define TYRESUM_TESTS_FUZZ_BUILD_PROPERTY_H

#include "program.h"

#include "base/diagnostics.h"
#include "base/utf8.h"
#include "cli/commands.h"
#include "designation_property.h"
#include "rendered.h"
#include "report/measured_rules.h"
#include "yaml/build_file.h"

enum { BUILD_RUNS = 16, BUILD_ARGUMENTS = 8 };

/* One of these is run on a file that is accepted, besides `sheet` for a program. */
static const char *const build_runs[BUILD_RUNS][BUILD_ARGUMENTS] = {
    {"sheet", "-"},
    {"sheet", "-", "--format", "csv", "--units", "us"},
    {"sheet", "-", "--format", "csv", "--decimal", "comma"},
    {"sheet", "-", "--format", "json", "--units", "both"},
    {"sheet", "-", "--format", "markdown"},
    {"sheet", "-", "--format", "html"},
    {"speedometer", "-", "--units", "us"},
    {"gearing", "-"},
    {"gearing", "-", "--format", "svg"},
    {"load", "-", "--units", "both"},
    {"load", "-", "--format", "svg"},
    {"clearance", "-"},
    {"clearance", "-", "--format", "svg"},
    {"compare", "-", "--format", "csv"},
    {"check", "-", "--format", "json"},
    {"shortlist", "-", "--format", "csv"},
};

/* Lines as YAML 1.1 breaks them (section 5.4). Gives the one of that number, from 1. */
static inline bool build_line(struct span source, size_t number, struct span *line)
{
    const char *end = source.at + source.length, *start = source.at;
    for (const char *at = start;; at++) {
        size_t left = (size_t)(end - at);
        size_t length =
            left > 1 && memcmp(at, "\r\n", 2) == 0       ? 2
            : left > 0 && (*at == '\n' || *at == '\r')   ? 1
            : left > 1 && memcmp(at, "\xC2\x85", 2) == 0 ? 2
            : left > 2 && (memcmp(at, "\xE2\x80\xA8", 3) == 0 || memcmp(at, "\xE2\x80\xA9", 3) == 0)
                ? 3
                : 0;
        if (length == 0 && left > 0)
            continue;
        if (--number == 0) {
            *line = (struct span){start, (size_t)(at - start)};
            return true;
        }
        if (left == 0)
            return false;
        start = at + length;
        at = start - 1;
    }
}

static inline const char *build_message_broken(const char *message)
{
    size_t blanks = 0;
    for (const char *at = message; *at != '\0'; at++) {
        blanks += *at == ' ';
        if ((unsigned char)*at < ' ' || *at == '\x7F')
            return "a message holds a control character";
    }
    return blanks < 3 ? "a message is no whole sentence" : NULL;
}

static inline const char *build_fault_broken(struct span source, const struct fault *fault)
{
    struct span line;
    if (fault->mark.line > 1 && fault->mark.column == 1 &&
        build_line(source, fault->mark.line - 1, &line) &&
        line.at + line.length == source.at + source.length)
        return build_message_broken(fault->message); /* behind a last line that has no end */
    if (fault->mark.line == 0 || !build_line(source, fault->mark.line, &line))
        return "a fault's line lies outside the file";
    size_t characters = property_characters((const unsigned char *)line.at, line.length);
    if (fault->mark.column < 1 || fault->mark.column > characters + 1)
        return "a fault's column lies outside its line";
    return build_message_broken(fault->message);
}

static inline const char *build_faults_broken(struct span source, const struct diagnostics *read)
{
    size_t shown = read->count < FAULTS_SHOWN_MAX ? read->count : FAULTS_SHOWN_MAX;
    const char *broken = NULL;
    for (size_t i = 0; i < shown && broken == NULL; i++)
        broken = build_fault_broken(source, &read->faults[i]);
    if (broken != NULL)
        return broken;
    return shown == 0 ? "a file is refused without a fault" : NULL;
}

/* What a terminal shows is lines of text; an input that is UTF-8 is not cut within a character. */
static inline bool build_is_text(const char *text, size_t length, struct span source)
{
    for (size_t i = 0; i < length; i++)
        if (((unsigned char)text[i] < ' ' && text[i] != '\n' && text[i] != '\t') ||
            text[i] == '\x7F')
            return false;
    return !rendered_is_utf8(source) || rendered_is_utf8((struct span){text, length});
}

static inline const char *build_errors_broken(const struct run *run, struct span source)
{
    return build_is_text(run->err, run->err_length, source) ? NULL : "standard error is no text";
}

static inline const char *build_refusal_broken(struct span source, const struct diagnostics *read)
{
    static const char *const sheet[] = {"sheet", "-", "--format", "json", NULL};
    struct run run;
    const char *broken = build_faults_broken(source, read);
    if (broken != NULL)
        return broken;
    program_run(sheet, source.at, source.length, &run);
    broken = build_errors_broken(&run, source);
    if (run.status != EXIT_INPUT_WRONG || run.out_length > 0)
        broken = "a file with faults is reported";
    else if (other_encoding(source) == NULL &&
             (strncmp(run.err, "standard input:", 15) != 0 || strstr(run.err, ": error: ") == NULL))
        broken = "a file with faults is refused without a place";
    program_forget(&run);
    return broken;
}

static inline bool build_number_column(const struct command *command, struct span heading)
{
    for (size_t i = 0; i < *command->column_count; i++) {
        const struct column *column = &command->columns[i];
        if (span_is(heading, column->name) ||
            (column->name_us != NULL && span_is(heading, column->name_us)))
            return column->kind == COLUMN_NUMBER;
    }
    return false;
}

static inline const char *build_csv_broken(const struct command *command, struct span out,
                                           bool comma)
{
    struct span headings[CSV_FIELDS_MAX], fields[CSV_FIELDS_MAX];
    const char separator = comma ? ';' : ',';
    size_t columns, count, length = csv_record(out, separator, headings, &columns);
    if (length == 0)
        return "csv has no heading";
    while (length < out.length) {
        out = (struct span){out.at + length, out.length - length};
        length = csv_record(out, separator, fields, &count);
        if (length == 0 || count != columns)
            return "a row of csv is none";
        for (size_t i = 0; i < count; i++)
            if (build_number_column(command, headings[i]) &&
                !csv_is_number(fields[i], comma ? ',' : '.'))
                return "a number of csv is none";
    }
    return NULL;
}

static inline const char *build_rows_broken(const char *const *arguments, const struct run *run,
                                            struct span source)
{
    const struct span out = {run->out, run->out_length};
    const char *format =
        arguments[2] != NULL && strcmp(arguments[2], "--format") == 0 ? arguments[3] : "table";
    const char *broken = rendered_numbers_broken(out, source);
    size_t rows;
    if (broken == NULL && !build_is_text(run->out, run->out_length, source))
        broken = "standard output is no text";
    if (broken == NULL && strcmp(format, "json") == 0)
        broken = json_broken(out, false, &rows);
    if (broken == NULL && strcmp(format, "csv") == 0)
        broken = build_csv_broken(command_find(arguments[0]), out,
                                  arguments[4] != NULL && strcmp(arguments[4], "--decimal") == 0);
    return broken;
}

/* A file that is accepted is reported, whole and each time the same. A command may miss its own
 * part of the file; `sheet` misses nothing. */
static inline const char *build_run_broken(const char *const *arguments, struct span source,
                                           bool twice)
{
    struct run run, again;
    program_run(arguments, source.at, source.length, &run);
    const char *broken = build_errors_broken(&run, source);
    if (broken != NULL)
        ;
    else if (run.status == EXIT_INPUT_WRONG && strcmp(arguments[0], "sheet") != 0)
        broken = run.out_length > 0 || run.err_length == 0 ? "a refusal prints rows" : NULL;
    else if (run.status != EXIT_COMPUTED)
        broken = "the exit status is wrong";
    else
        broken = build_rows_broken(arguments, &run, source);
    if (broken == NULL && twice) {
        program_run(arguments, source.at, source.length, &again);
        if (again.status != run.status || again.out_length != run.out_length ||
            memcmp(again.out, run.out, run.out_length) != 0 || strcmp(again.err, run.err) != 0)
            broken = "the second time another output";
        program_forget(&again);
    }
    program_forget(&run);
    return broken;
}

static inline unsigned build_hash(struct span source)
{
    unsigned hash = 2166136261U; /* FNV-1a */
    for (size_t i = 0; i < source.length; i++)
        hash = (hash ^ (unsigned char)source.at[i]) * 16777619U;
    return hash ^ hash >> 16;
}

/* A list of the shop's own is another file, which is none of the fuzzer's. */
static inline bool build_may_run(const char *command, const struct specification *specification)
{
    const char *list = specification->search.list;
    return strcmp(command, "shortlist") != 0 || list == NULL || strcmp(list, "builtin") == 0;
}

static inline const char *build_report_broken(struct span source,
                                              const struct specification *specification)
{
    static const char *const sheet[] = {"sheet", "-", "--format", "json", NULL};
    unsigned hash = build_hash(source);
    const char *const *other = build_runs[hash % BUILD_RUNS];
    const char *broken = build_run_broken(sheet, source, hash / BUILD_RUNS % 4 == 0);
    if (broken == NULL && hash / BUILD_RUNS % 4 != 0 && build_may_run(other[0], specification))
        broken = build_run_broken(other, source, hash / BUILD_RUNS % 4 == 1);
    return broken;
}

/* Reads as the program does; true where the file is accepted. */
static inline bool build_read(struct arena *arena, struct span source, struct diagnostics *read,
                              struct specification *specification)
{
    *read = (struct diagnostics){.arena = arena, .source_name = "standard input"};
    bool understood = build_file_read(arena, source, read, specification);
    return measured_rules_check(specification, read) && understood;
}

static inline const char *build_broken(const char *text, size_t size)
{
    struct arena arena = ARENA_EMPTY;
    struct diagnostics *read = arena_allocate(&arena, sizeof *read);
    struct specification *specification = arena_allocate(&arena, sizeof *specification);
    const struct span source = {text, size};
    const char *broken;
    if (build_read(&arena, source, read, specification))
        broken = read->count > 0 ? "a file with faults is accepted"
                                 : build_report_broken(source, specification);
    else
        broken = build_refusal_broken(source, read);
    arena_free(&arena);
    return broken;
}

#endif
