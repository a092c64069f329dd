/* A part laid out for reading: a line a figure, a column an option. */
#ifndef TYRESUM_READING_PART_TABLE_H
#define TYRESUM_READING_PART_TABLE_H

#include "output/outbuf.h"
#include "reading/figure_value.h"
#include "report/outcome.h"
#include "report/plan.h"

enum reading_format { FOR_TERMINAL, FOR_MARKDOWN, FOR_HTML };

struct layout {
    struct arena *arena;
    struct outbuf *out;
    const struct plan *plan;
    const struct figures *figures;
    enum unit_systems units;
    char decimal_mark;
    bool with_header;
    enum reading_format format;
    size_t width;                    /* of the page, in characters */
    struct setup_figures *setups;    /* one a setup of the plan, without HEADLINE_ROWS_ONLY */
    struct setup_figures *every;     /* the same with HEADLINE_ROWS_ONLY */
    struct setup_figures shared;     /* findings of the fitted setup that every other has too */
    struct option_outcome *outcomes; /* one a setup: of the parts that are reported */
    struct option_outcome *whole;    /* of all parts: what becomes of it, and the order; the same
                                        where all are reported */
    size_t *order;                   /* of the setups: best first, the fitted one last */
};

/* Setups that stand side by side: the fitted one always first, to compare with. */
struct setup_block {
    size_t first, count; /* options of the plan, from 1; count 0: the fitted setup alone */
};
size_t setup_in_block(const struct setup_block *block, size_t column);

/* "fitted", or the letter that the option has in its file. */
const char *option_label(const struct layout *layout, size_t setup);

/* The part's figures; only the headlines where asked. False, and nothing, where there are none. */
bool part_table(const struct layout *layout, enum part part, bool headlines_only);

/* A figure's value with its unit, for a sentence. */
const char *figure_text(const struct layout *layout, const struct figure *figure, double value);
/* The same in one unit system, whatever was asked for. */
const char *figure_text_in(const struct layout *layout, const struct figure *figure, double value,
                           bool us);
const char *figure_limit_text(const struct layout *layout, const struct figure *figure);

#endif
