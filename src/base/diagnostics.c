#include "base/diagnostics.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

#include "base/utf8.h"

enum { LINE_SHOWN_MAX = 160, QUOTE_MAX = 60 };

static const char *shown(struct arena *arena, struct span text)
{
    return shown_write(text, arena_allocate(arena, SHOWN_BYTES_MAX * text.length + 1));
}

const char *quotable(struct arena *arena, struct span text)
{
    size_t length = utf8_cut(text, QUOTE_MAX);
    const char *quote = shown(arena, (struct span){text.at, length});
    return length < text.length ? arena_format(arena, "%s...", quote) : quote;
}

void diagnostics_add(struct diagnostics *diagnostics, struct mark mark, size_t length,
                     const char *format, ...)
{
    size_t index = diagnostics->count++;
    if (index >= FAULTS_SHOWN_MAX)
        return;
    va_list arguments;
    va_start(arguments, format);
    const char *message = arena_format_with(diagnostics->arena, format, arguments);
    va_end(arguments);
    diagnostics->faults[index] = (struct fault){mark, length, message};
}

size_t diagnostics_source(struct diagnostics *diagnostics, struct source_text text)
{
    diagnostics->others =
        arena_grow(diagnostics->arena, diagnostics->others, diagnostics->other_count,
                   &diagnostics->other_capacity, sizeof *diagnostics->others);
    diagnostics->others[diagnostics->other_count] = text;
    return ++diagnostics->other_count;
}

static int by_place(const void *left, const void *right)
{
    const struct fault *a = left, *b = right;
    if (a->mark.source != b->mark.source)
        return a->mark.source < b->mark.source ? -1 : 1;
    if (a->mark.line != b->mark.line)
        return a->mark.line < b->mark.line ? -1 : 1;
    if (a->mark.column != b->mark.column)
        return a->mark.column < b->mark.column ? -1 : 1;
    return 0;
}

size_t line_break_length(struct span text)
{
    static const char *const breaks[] = {"\r\n",     "\n",           "\r",
                                         "\xC2\x85", "\xE2\x80\xA8", "\xE2\x80\xA9"};
    if (text.length == 0 || memchr("\n\r\xC2\xE2", *text.at, 4) == NULL)
        return 0;
    for (size_t i = 0; i < sizeof breaks / sizeof breaks[0]; i++) {
        size_t length = strlen(breaks[i]);
        if (text.length >= length && memcmp(text.at, breaks[i], length) == 0)
            return length;
    }
    return 0;
}

/* The text of a line counted from 1, without its line end. */
static struct span line_of(struct span source, size_t line)
{
    struct span rest = source;
    size_t length = 0;
    while (length < rest.length) {
        size_t ended = line_break_length((struct span){rest.at + length, rest.length - length});
        if (ended > 0 && line == 1)
            break;
        length += ended > 0 ? ended : 1;
        if (ended == 0)
            continue;
        rest = (struct span){rest.at + length, rest.length - length};
        length = 0;
        line--;
    }
    return (struct span){rest.at, line == 1 ? length : 0};
}

/* The line as it is shown, but for tabulators, which stay; and under it a caret. */
static void print_line(struct arena *arena, struct span line, struct mark mark, size_t length)
{
    if (line.length == 0 || count_characters(line) > LINE_SHOWN_MAX)
        return;
    size_t end = mark.column + (length == 0               ? 1
                                : length < LINE_SHOWN_MAX ? length
                                                          : LINE_SHOWN_MAX);
    char *above = arena_allocate(arena, 2 * (SHOWN_BYTES_MAX * line.length + end + 1));
    char *below = above + SHOWN_BYTES_MAX * line.length + 1, *to = above, *under = below;
    for (size_t column = 1; line.length > 0 || column < end; column++) {
        struct shown_character first = {.width = 1}; /* behind the line's end */
        bool tab = line.length > 0 && *line.at == '\t';
        if (line.length > 0)
            first = tab ? (struct shown_character){"\t", 1, 1, 1, false} : shown_first(line);
        memcpy(to, first.text, first.length);
        to += first.length;
        line = span_from(line, first.taken);
        if (column >= end)
            continue;
        memset(under, column >= mark.column ? '~' : tab ? '\t' : ' ', first.width);
        if (column == mark.column)
            *under = '^';
        under += column == mark.column && first.width == 0 ? 1 : first.width;
    }
    fprintf(stderr, "    %s\n    %s\n", above, below);
}

static void print_fault(const struct diagnostics *diagnostics, const struct fault *fault)
{
    struct mark mark = fault->mark;
    struct source_text from = {diagnostics->source_name, diagnostics->source, false};
    if (mark.source > 0)
        from = diagnostics->others[mark.source - 1];
    struct arena arena = ARENA_EMPTY;
    fputs(shown(&arena, span_of(from.name)), stderr);
    bool placed = mark.line > 0 && from.text.at != NULL;
    if (placed && !from.one_line)
        fprintf(stderr, ":%zu", mark.line);
    if (placed)
        fprintf(stderr, ":%zu", mark.column);
    fprintf(stderr, ": error: %s\n", shown(&arena, span_of(fault->message)));
    if (placed)
        print_line(&arena, line_of(from.text, mark.line), mark, fault->length);
    arena_free(&arena);
}

void diagnostics_print(struct diagnostics *diagnostics)
{
    size_t kept = diagnostics->count < FAULTS_SHOWN_MAX ? diagnostics->count : FAULTS_SHOWN_MAX;
    qsort(diagnostics->faults, kept, sizeof diagnostics->faults[0], by_place);
    for (size_t i = 0; i < kept; i++)
        print_fault(diagnostics, &diagnostics->faults[i]);
    if (diagnostics->count > kept)
        tell("%s: error: and %zu more faults that are not shown.", diagnostics->source_name,
             diagnostics->count - kept);
}

static void tell_with(const char *before, const char *format, va_list arguments)
{
    struct arena arena = ARENA_EMPTY;
    const char *message = arena_format_with(&arena, format, arguments);
    fprintf(stderr, "%s%s\n", before, shown(&arena, span_of(message)));
    arena_free(&arena);
}

void tell(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    tell_with("", format, arguments);
    va_end(arguments);
}

void diagnostics_plain(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    tell_with("tyresum: error: ", format, arguments);
    va_end(arguments);
}
