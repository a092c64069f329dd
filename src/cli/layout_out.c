#include "cli/layout_out.h"

#include <stdint.h>

#include "reading/findings_text.h"

struct layout layout_of(struct arena *arena, const struct options *options, const struct plan *plan,
                        const struct figures *figures, const struct figures *every_part)
{
    struct layout layout = {
        .arena = arena,
        .plan = plan,
        .figures = figures,
        .units = (enum unit_systems)options->units,
        .decimal_mark = options->decimal == 1 ? ',' : '.',
        .with_header = !options->no_header,
        .format = span_is(span_of(options->format), "markdown") ? FOR_MARKDOWN
                  : span_is(span_of(options->format), "html")   ? FOR_HTML
                                                                : FOR_TERMINAL,
        .width = SIZE_MAX,
    };
    layout_group(&layout, every_part);
    return layout;
}

void layout_on(struct layout *layout, const struct options *options, struct sink *sink)
{
    enum { PAPER_WIDTH = 110 }; /* of characters in 9 pt */
    layout->out = &sink->out;
    if (span_is(span_of(options->format), "table"))
        sink_set_colour(sink, (enum colour_choice)options->color);
    if (layout->format == FOR_HTML)
        layout->width = PAPER_WIDTH;
    else if (layout->format == FOR_TERMINAL) /* no line of Markdown is too long: one table a part */
        layout->width = sink_page_width(sink);
}

bool layout_is_rows(const struct options *options)
{
    struct span format = span_of(options->format);
    return options->columns != NULL || span_is(format, "csv") || span_is(format, "json");
}
