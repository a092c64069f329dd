#include "reading/document.h"

#include "output/markdown_text.h"
#include "output/markup.h"

static bool is_html(const struct layout *layout)
{
    return layout->format == FOR_HTML;
}

static void put(const struct layout *layout, const char *text)
{
    if (is_html(layout))
        markup_text(layout->out, text);
    else
        markdown_text(layout->out, span_of(text));
}

void document_heading(const struct layout *layout, int level, const char *text)
{
    outbuf_text(layout->out, is_html(layout) ? arena_format(layout->arena, "<h%d>", level)
                             : level == 1    ? "# "
                             : level == 2    ? "\n## "
                                             : "\n### ");
    put(layout, text);
    outbuf_text(layout->out,
                is_html(layout) ? arena_format(layout->arena, "</h%d>\n", level) : "\n");
}

void document_paragraph(const struct layout *layout, const char *text)
{
    outbuf_text(layout->out, is_html(layout) ? "<p>" : "\n");
    put(layout, text);
    outbuf_text(layout->out, is_html(layout) ? "</p>\n" : "\n");
}

void document_list(const struct layout *layout)
{
    outbuf_text(layout->out, is_html(layout) ? "<ul>\n" : "\n");
}

void document_item(const struct layout *layout, const char *strong, const char *text)
{
    outbuf_text(layout->out, is_html(layout) ? "<li>" : "- ");
    if (strong[0] != '\0') {
        outbuf_text(layout->out, is_html(layout) ? "<b>" : "**");
        put(layout, strong);
        outbuf_text(layout->out, is_html(layout) ? "</b> " : "** ");
    }
    put(layout, text);
    outbuf_text(layout->out, is_html(layout) ? "</li>\n" : "\n");
}

void document_list_end(const struct layout *layout)
{
    if (is_html(layout))
        outbuf_text(layout->out, "</ul>\n");
}

void document_gap(const struct layout *layout)
{
    if (!is_html(layout))
        outbuf_char(layout->out, '\n');
}
