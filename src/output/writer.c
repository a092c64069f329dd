#include "output/writer.h"

#include "output/utf8.h"

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

void writer_row(struct writer *writer, const struct cell *cells)
{
    writer->functions->row(writer, cells);
    writer->rows++;
}

void writer_end(struct writer *writer)
{
    writer->functions->end(writer);
}

size_t display_width(struct span text)
{
    size_t width = utf8_ascii_length(text); /* all of it, most often */
    text.at += width;
    text.length -= width;
    while (text.length > 0) {
        struct utf8_character character = utf8_first(text);
        width += utf8_width(character.code);
        text.at += character.length;
        text.length -= character.length;
    }
    return width;
}
