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

/* What is said needs no memory of its own, since it may be that there is none left. */
struct said {
    char text[2048];
    size_t length;
};

static void said_end(struct said *said)
{
    fwrite(said->text, 1, said->length, stderr);
    said->length = 0;
}

static void say_as_it_is(struct said *said, const char *text, size_t length)
{
    if (length > sizeof said->text - said->length)
        said_end(said);
    memcpy(said->text + said->length, text, length);
    said->length += length;
}

static void say_number(struct said *said, size_t number)
{
    char text[32];
    say_as_it_is(said, text, (size_t)snprintf(text, sizeof text, ":%zu", number));
}

static void say_shown(struct said *said, struct span text)
{
    while (text.length > 0) {
        struct shown_character first = shown_first(text);
        say_as_it_is(said, first.text, first.length);
        text = span_from(text, first.taken);
    }
}

/* The line as it is shown, but for tabulators, which stay; and under it a caret. */
static void say_line(struct said *said, struct span line, struct mark mark, size_t length)
{
    if (line.length == 0 || count_characters(line) > LINE_SHOWN_MAX)
        return;
    size_t end = mark.column + (length == 0               ? 1
                                : length < LINE_SHOWN_MAX ? length
                                                          : LINE_SHOWN_MAX);
    char below[(2 * LINE_SHOWN_MAX + 2) * sizeof(((struct shown_character *)0)->text)];
    char *under = below;
    say_as_it_is(said, "    ", 4);
    for (size_t column = 1; line.length > 0 || column < end; column++) {
        struct shown_character first = {.width = 1}; /* behind the line's end */
        bool tab = line.length > 0 && *line.at == '\t';
        if (line.length > 0)
            first = tab ? (struct shown_character){"\t", 1, 1, 1, false} : shown_first(line);
        say_as_it_is(said, first.text, first.length);
        line = span_from(line, first.taken);
        if (column >= end)
            continue;
        memset(under, column >= mark.column ? '~' : tab ? '\t' : ' ', first.width);
        if (column == mark.column)
            *under = '^';
        under += column == mark.column && first.width == 0 ? 1 : first.width;
    }
    say_as_it_is(said, "\n    ", 5);
    say_as_it_is(said, below, (size_t)(under - below));
    say_as_it_is(said, "\n", 1);
}

static void print_fault(const struct diagnostics *diagnostics, const struct fault *fault)
{
    struct mark mark = fault->mark;
    struct source_text from = {diagnostics->source_name, diagnostics->source, false};
    if (mark.source > 0)
        from = diagnostics->others[mark.source - 1];
    struct said said = {.length = 0};
    say_shown(&said, span_of(from.name));
    bool placed = mark.line > 0 && from.text.at != NULL;
    if (placed && !from.one_line)
        say_number(&said, mark.line);
    if (placed)
        say_number(&said, mark.column);
    say_as_it_is(&said, ": error: ", 9);
    say_shown(&said, span_of(fault->message));
    say_as_it_is(&said, "\n", 1);
    if (placed)
        say_line(&said, line_of(from.text, mark.line), mark, fault->length);
    said_end(&said);
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

/* A message is cut where it is longer than any path and what is said of it. */
static void tell_with(const char *before, const char *format, va_list arguments)
{
    char message[8192];
    struct said said = {.length = 0};
    int length = vsnprintf(message, sizeof message, format, arguments);
    say_as_it_is(&said, before, strlen(before));
    if (length > 0)
        say_shown(&said, span_of(message));
    say_as_it_is(&said, "\n", 1);
    said_end(&said);
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
