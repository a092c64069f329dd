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
        .markdown = span_is(span_of(options->format), "markdown"),
        .width = SIZE_MAX,
    };
    layout_group(&layout, every_part);
    return layout;
}

void layout_on(struct layout *layout, struct sink *sink)
{
    layout->out = &sink->out;
    if (!layout->markdown) /* no line of a page is too long: one table a part */
        layout->width = sink_page_width(sink);
}

bool layout_is_rows(const struct options *options)
{
    struct span format = span_of(options->format);
    return options->columns != NULL || span_is(format, "csv") || span_is(format, "json");
}
