#include "cli/rows_out.h"

static struct writer_options writer_options_of(const struct options *options,
                                               const struct sink *sink, bool streaming)
{
    return (struct writer_options){
        .with_header = !options->no_header,
        .decimal_mark = options->decimal == 1 ? ',' : '.',
        .streaming = streaming,
        .width = sink_terminal_width(sink),
    };
}

enum exit_status rows_begin(struct arena *arena, struct rows_out *out,
                            const struct options *options, const struct column *columns,
                            size_t count, bool streaming)
{
    if (!columns_choose(arena, columns, count, options, &out->choice))
        return EXIT_INPUT_WRONG;
    for (size_t i = 0; streaming && i < out->choice.count; i++)
        if (span_is(span_of(out->choice.headings[i].name), "error"))
            out->choice.headings[i].priority = 0; /* a stream's faults are always shown */
    if (!sink_open(arena, &out->sink, options->output))
        return EXIT_NOT_WRITTEN;
    out->cells = arena_allocate_array(arena, out->choice.count, sizeof *out->cells);
    writer_begin(&out->writer, writer_find(options->format), &out->sink.out, arena,
                 writer_options_of(options, &out->sink, streaming), out->choice.headings,
                 out->choice.count);
    return EXIT_COMPUTED;
}

void rows_add(struct rows_out *out, const void *row)
{
    columns_fill(&out->choice, row, out->cells);
    writer_row(&out->writer, out->cells);
}

bool rows_end(struct rows_out *out, bool keep)
{
    if (keep)
        writer_end(&out->writer);
    return sink_close(&out->sink, keep);
}
