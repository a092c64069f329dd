#include "base/diagnostics.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

enum { LINE_SHOWN_MAX = 160, QUOTE_MAX = 60 };

static bool is_continuation(char byte)
{
    return ((unsigned char)byte & 0xC0) == 0x80;
}

size_t count_characters(struct span text)
{
    size_t count = 0;
    for (size_t i = 0; i < text.length; i++)
        count += !is_continuation(text.at[i]);
    return count;
}

const char *quotable(struct arena *arena, struct span text)
{
    size_t length = text.length;
    if (length > QUOTE_MAX)
        for (length = QUOTE_MAX; length > 0 && is_continuation(text.at[length]);)
            length--;
    char *copy = arena_allocate(arena, length + 4);
    for (size_t i = 0; i < length; i++)
        copy[i] = is_control(text.at[i]) ? '?' : text.at[i];
    if (length < text.length)
        memcpy(copy + length, "...", 3);
    return copy;
}

void diagnostics_add(struct diagnostics *diagnostics, struct mark mark, size_t length,
                     const char *format, ...)
{
    size_t index = diagnostics->count++;
    if (index >= FAULTS_SHOWN_MAX)
        return;
    va_list arguments, again;
    va_start(arguments, format);
    va_copy(again, arguments);
    int size = vsnprintf(NULL, 0, format, arguments);
    va_end(arguments);
    char *message = arena_allocate(diagnostics->arena, size < 0 ? 1 : (size_t)size + 1);
    if (size >= 0)
        vsnprintf(message, (size_t)size + 1, format, again);
    va_end(again);
    hide_control_characters(message);
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

static void print_caret(struct span line, size_t column, size_t length)
{
    size_t character = 0;
    for (size_t i = 0; i < line.length && character + 1 < column; i++)
        if (!is_continuation(line.at[i])) {
            fputc(line.at[i] == '\t' ? '\t' : ' ', stderr);
            character++;
        }
    while (++character < column)
        fputc(' ', stderr);
    fputc('^', stderr);
    for (size_t i = 1; i < length && i < LINE_SHOWN_MAX; i++)
        fputc('~', stderr);
    fputc('\n', stderr);
}

static void print_line(struct span line, struct mark mark, size_t length)
{
    if (line.length == 0 || count_characters(line) > LINE_SHOWN_MAX)
        return;
    fputs("    ", stderr);
    for (size_t i = 0; i < line.length; i++)
        fputc(is_control(line.at[i]) && line.at[i] != '\t' ? '?' : line.at[i], stderr);
    fputs("\n    ", stderr);
    print_caret(line, mark.column, length);
}

static void print_fault(const struct diagnostics *diagnostics, const struct fault *fault)
{
    struct mark mark = fault->mark;
    struct source_text from = {diagnostics->source_name, diagnostics->source, false};
    if (mark.source > 0)
        from = diagnostics->others[mark.source - 1];
    fputs(from.name, stderr);
    bool placed = mark.line > 0 && from.text.at != NULL;
    if (placed && !from.one_line)
        fprintf(stderr, ":%zu", mark.line);
    if (placed)
        fprintf(stderr, ":%zu", mark.column);
    fprintf(stderr, ": error: %s\n", fault->message);
    if (placed)
        print_line(line_of(from.text, mark.line), mark, fault->length);
}

void diagnostics_print(struct diagnostics *diagnostics)
{
    size_t shown = diagnostics->count < FAULTS_SHOWN_MAX ? diagnostics->count : FAULTS_SHOWN_MAX;
    qsort(diagnostics->faults, shown, sizeof diagnostics->faults[0], by_place);
    for (size_t i = 0; i < shown; i++)
        print_fault(diagnostics, &diagnostics->faults[i]);
    if (diagnostics->count > shown)
        fprintf(stderr, "%s: error: and %zu more faults that are not shown.\n",
                diagnostics->source_name, diagnostics->count - shown);
}

void diagnostics_plain(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    fputs("tyresum: error: ", stderr);
    vfprintf(stderr, format, arguments);
    fputc('\n', stderr);
    va_end(arguments);
}
