#include "output/writer.h"

#include "base/utf8.h"

static const struct writer_functions *const formats[] = {&writer_table, &writer_csv, &writer_json,
                                                         &writer_markdown, &writer_html};

const struct writer_functions *writer_find(const char *name)
{
    for (size_t i = 0; i < sizeof formats / sizeof formats[0]; i++)
        if (strcmp(formats[i]->name, name) == 0)
            return formats[i];
    return NULL;
}

void writer_begin(struct writer *writer, const struct writer_functions *functions,
                  struct outbuf *out, struct arena *arena, struct writer_options options,
                  const struct heading *headings, size_t columns)
{
    *writer = (struct writer){.functions = functions,
                              .out = out,
                              .arena = arena,
                              .options = options,
                              .headings = headings,
                              .columns = columns};
    functions->begin(writer);
}

void writer_begin_again(struct writer *writer)
{
    writer->options.with_header = true;
    writer->functions->begin(writer);
}

bool writer_reads(const struct writer *writer, size_t column)
{
    return writer->functions->reads == NULL || writer->functions->reads(writer, column);
}

void writer_row(struct writer *writer, const struct cell *cells)
{
    writer->functions->row(writer, cells);
    writer->rows++;
}

void writer_end(struct writer *writer)
{
    writer->functions->end(writer);
}

static struct shown_character shown_with_breaks(struct span text)
{
    bool breaks = *text.at == '\t' || *text.at == '\n' || *text.at == '\r';
    return breaks ? (struct shown_character){{*text.at}, 1, 1, 1, false} : shown_first(text);
}

size_t display_width(struct span text)
{
    size_t width = utf8_plain_length(text); /* all of it, most often */
    for (text = span_from(text, width); text.length > 0;) {
        struct shown_character first = shown_with_breaks(text);
        width += first.width;
        text = span_from(text, first.taken);
    }
    return width;
}

static void put_safe(struct outbuf *out, struct span text, bool in_line)
{
    for (;;) {
        size_t plain = utf8_plain_length(text);
        outbuf_put(out, (struct span){text.at, plain});
        text = span_from(text, plain);
        if (text.length == 0)
            return;
        struct shown_character first = shown_with_breaks(text);
        if (in_line && !first.escaped && first.text[0] > 0 && first.text[0] < ' ')
            *first.text = ' ';
        outbuf_put(out, (struct span){first.text, first.length});
        text = span_from(text, first.taken);
    }
}

void put_shown(struct outbuf *out, struct span text)
{
    put_safe(out, text, true);
}

void put_data(struct outbuf *out, struct span text)
{
    if (out->terminal)
        put_safe(out, text, false);
    else
        outbuf_put(out, text);
}
