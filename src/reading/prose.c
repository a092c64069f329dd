#include "reading/prose.h"

#include <stdbool.h>

#include "output/markup.h"
#include "output/tone.h"
#include "base/utf8.h"
#include "output/writer.h"

static void pad_to(struct prose *prose, size_t column)
{
    for (; prose->position < column; prose->position++)
        outbuf_char(prose->out, ' ');
}

static void put(struct prose *prose, struct span text)
{
    if (prose->markup)
        markup_span(prose->out, text);
    else
        put_shown(prose->out, text);
}

void prose_begin(struct prose *prose, size_t at, const char *first, size_t indent)
{
    if (prose->markup)
        outbuf_text(prose->out, "<p>");
    prose->position = 0;
    prose->indent = prose->start = indent;
    prose->fresh = true;
    if (*first == '\0')
        return;
    if (!prose->markup)
        pad_to(prose, at);
    const char *tone = tone_begin(prose->out, span_of(first));
    outbuf_text(prose->out, tone);
    put(prose, span_of(first));
    outbuf_text(prose->out, tone_end(tone));
    prose->position += display_width(span_of(first));
    prose->fresh = prose->position < indent;
}

void prose_words(struct prose *prose, const char *text)
{
    while (*text != '\0') {
        size_t length = 0;
        while (text[length] != '\0' && text[length] != ' ')
            length++;
        struct span word = {text, length};
        size_t width = display_width(word);
        if (!prose->markup && length > 0 && !prose->fresh &&
            prose->position + 1 + width > prose->width) {
            outbuf_char(prose->out, '\n');
            prose->position = 0;
            prose->start = prose->indent;
            prose->fresh = true;
        }
        if (length > 0) {
            if (!prose->markup)
                pad_to(prose, prose->fresh ? prose->start : prose->position + 1);
            else if (prose->position > 0)
                outbuf_char(prose->out, ' ');
            put(prose, word);
            prose->position += width;
            prose->fresh = false;
        }
        text += length + (text[length] == ' ');
    }
}

void prose_end(struct prose *prose)
{
    outbuf_text(prose->out, prose->markup ? "</p>\n" : "\n");
    prose->position = 0;
}

void prose_line(struct prose *prose, size_t at, size_t indent, const char *text)
{
    prose_begin(prose, at, "", at > indent ? at : indent);
    prose->start = at;
    prose_words(prose, text);
    prose_end(prose);
}

const char *text_cut(struct arena *arena, const char *text, size_t width)
{
    struct span rest = span_of(text);
    if (display_width(rest) <= width)
        return text;
    size_t used = 3;
    while (rest.length > 0) {
        struct shown_character first = shown_first(rest);
        used += first.width;
        if (used > width)
            break;
        rest = span_from(rest, first.taken);
    }
    return arena_format(arena, "%.*s...", (int)(rest.at - text), text);
}

const char *in_words(struct arena *arena, const char *name)
{
    char *words = arena_copy(arena, span_of(name));
    for (char *at = words; *at != '\0'; at++)
        if (*at == '_')
            *at = ' ';
    return words;
}
