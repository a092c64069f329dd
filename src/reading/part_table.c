#include "reading/part_table.h"

#include "base/known.h"
#include "base/letters.h"
#include "output/number.h"
#include "reading/remark_text.h"
#include "output/writer.h"

#include <string.h>

const char *option_label(const struct layout *layout, size_t setup)
{
    const struct setup *of = &layout->plan->setups[setup];
    return setup > 0 ? letters_of_number(layout->arena, of->number) : of->name;
}

static const char *number_text(const struct layout *layout, const struct figure *figure, double si,
                               bool us)
{
    char text[NUMBER_SIZE];
    double value = figure_rounded(figure, si, us);
    int decimals = figure_decimals(figure, us);
    /* A limit that is broken by less than the last place would print as met. */
    bool hidden = figure->verdict == VERDICT_FAIL && known(figure->value) &&
                  round_to_decimals(figure_value(figure, figure->value, us), decimals) ==
                      round_to_decimals(figure_value(figure, figure->limit, us), decimals);
    number_fixed(value, hidden ? decimals + 1 : decimals, layout->decimal_mark, text);
    return arena_copy(layout->arena, span_of(text));
}

const char *figure_text_in(const struct layout *layout, const struct figure *figure, double value,
                           bool us)
{
    enum unit_id unit = figure_unit(figure, us);
    return arena_format(layout->arena, "%s%s%s", number_text(layout, figure, value, us),
                        unit == UNIT_BARE ? "" : " ", unit_table[unit].name);
}

static bool has_both_units(const struct layout *layout, const struct figure *figure)
{
    return layout->units == UNITS_BOTH && figure_unit(figure, true) != figure_unit(figure, false);
}

/* A limit is told as it is: only what gets set is rounded up. */
const char *figure_limit_text(const struct layout *layout, const struct figure *figure)
{
    struct figure plain = *figure;
    if (quantity_rows[plain.quantity].policy & POLICY_TO_SET)
        plain.quantity = QUANTITY_PRESSURE_AS_BUILT;
    return figure_text(layout, &plain, figure->limit);
}

const char *figure_text(const struct layout *layout, const struct figure *figure, double value)
{
    const char *text = figure_text_in(layout, figure, value, layout->units == UNITS_US);
    if (!has_both_units(layout, figure))
        return text;
    return arena_format(layout->arena, "%s = %s", text,
                        figure_text_in(layout, figure, value, true));
}

static const char *mark_of(enum verdict verdict)
{
    switch (verdict) {
    case VERDICT_FAIL:
        return "!";
    case VERDICT_TASK:
        return "+";
    case VERDICT_CAUTION:
        return "~";
    case VERDICT_UNKNOWN:
        return "?";
    default:
        return " ";
    }
}

static const char *cell_text_of(const struct layout *layout, const struct figure *figure, bool us)
{
    const char *mark = mark_of(figure->verdict);
    if (!known(figure->value) && figure->instead.id != REMARK_NONE)
        return remark_text(layout->arena, &figure->instead, layout->plan->us);
    if (!known(figure->value))
        return figure->verdict == VERDICT_NONE ? NULL : arena_format(layout->arena, "-%s", mark);
    return arena_format(layout->arena, "%s%s", number_text(layout, figure, figure->value, us),
                        mark);
}

static bool same_line(const struct figure *a, const struct figure *b)
{
    return figure_same(a, b, SAME_PART | SAME_QUANTITY | SAME_AXLE | SAME_STATE | SAME_PLACE);
}

static bool tabulated(const struct figure *figure, enum part part, bool headlines_only)
{
    bool shown = figure->headline == HEADLINE_YES ||
                 (figure->headline == HEADLINE_UNLESS_OK && figure->verdict != VERDICT_OK);
    return figure->part == part && figure->headline != HEADLINE_ROWS_ONLY &&
           (shown || !headlines_only) && !(quantity_rows[figure->quantity].policy & POLICY_NOTE);
}

static const char *line_title(const struct layout *layout, const struct figure *figure)
{
    const char *axle = axle_name(figure->axle);
    const char *at = figure_at(layout->arena, layout->plan, figure);
    const char *place = at ? at : "";
    const char *state = figure_state(layout->plan, figure);
    return arena_format(layout->arena, "%s%s%s%s%s%s%s", quantity_rows[figure->quantity].title,
                        *axle ? ", " : "", axle, state ? ", " : "", state ? state : "",
                        *place ? ", " : "", place);
}

struct lines {
    const struct figure **items;
    size_t count;
    size_t title_room; /* characters: what of a title is longer breaks */
};

/* The first figure of each line, in order. */
static struct lines find_lines(const struct layout *layout, enum part part, bool headlines_only)
{
    const struct figures *figures = layout->figures;
    struct lines lines = {arena_allocate_array(layout->arena, figures->count, sizeof *lines.items),
                          0, 0};
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        bool fresh = tabulated(figure, part, headlines_only);
        for (size_t j = 0; fresh && j < lines.count; j++)
            fresh = !same_line(lines.items[j], figure);
        if (fresh)
            lines.items[lines.count++] = figure;
    }
    return lines;
}

static const struct figure *find_figure(const struct setup_figures *group,
                                        const struct figure *line)
{
    for (size_t i = 0; i < group->count; i++)
        if (same_line(line, group->items[i]))
            return group->items[i];
    return NULL;
}

static size_t wider(size_t width, const char *text)
{
    size_t other = text == NULL ? 1 : display_width(span_of(text));
    return other > width ? other : width;
}

enum { GAP = 2 };

/* Characters that the column of a setup takes, with the gap before it. */
static size_t setup_width(const struct layout *layout, const struct lines *lines, size_t setup)
{
    bool us = layout->units == UNITS_US;
    size_t width = wider(0, option_label(layout, setup));
    for (size_t i = 0; i < lines->count; i++) {
        const struct figure *figure = find_figure(&layout->setups[setup], lines->items[i]);
        width = wider(width, figure == NULL ? NULL : cell_text_of(layout, figure, us));
    }
    return GAP + width;
}

static size_t unit_width(const struct layout *layout, const struct lines *lines)
{
    bool us = layout->units == UNITS_US;
    size_t unit = 4;
    for (size_t i = 0; i < lines->count; i++)
        unit = wider(unit, unit_table[figure_unit(lines->items[i], us)].name);
    return unit;
}

/* Characters for the titles: what is left on the page beside all options, where that is room enough
 * for titles to break well; otherwise beside the fitted setup and the widest option, and not so
 * little that every word stands alone. */
static size_t title_room(const struct layout *layout, const struct lines *lines)
{
    enum { LEAST = 24, BREAKS_WELL = 36 };
    size_t widest = 0, all = 0;
    for (size_t i = 1; i < layout->plan->count; i++) {
        size_t width = setup_width(layout, lines, i);
        widest = width > widest ? width : widest;
        all += width;
    }
    size_t taken = GAP + unit_width(layout, lines) + setup_width(layout, lines, 0);
    if (layout->width >= taken + all + BREAKS_WELL)
        return layout->width - taken - all;
    return layout->width > taken + widest + LEAST ? layout->width - taken - widest : LEAST;
}

enum { FIXED_COLUMNS = 2 };

size_t setup_in_block(const struct setup_block *block, size_t column)
{
    return column == 0 ? 0 : block->first + column - 1;
}

static void write_line(const struct layout *layout, const struct figure *line, const char *title,
                       const struct setup_block *block, struct writer *writer, bool us)
{
    struct cell *cells =
        arena_allocate_array(layout->arena, block->count + 1 + FIXED_COLUMNS, sizeof *cells);
    cells[0] = (struct cell){.kind = CELL_TEXT, .text = span_of(title)};
    cells[1] =
        (struct cell){.kind = CELL_TEXT, .text = span_of(unit_table[figure_unit(line, us)].name)};
    for (size_t j = 0; j <= block->count; j++) {
        const struct figure *figure = find_figure(&layout->setups[setup_in_block(block, j)], line);
        cells[FIXED_COLUMNS + j] =
            cell_text(figure == NULL ? NULL : cell_text_of(layout, figure, us));
    }
    writer_row(writer, cells);
}

/* What of a title does not fit beside the figures, below it. */
static void write_rest(const struct layout *layout, const char *rest, size_t columns,
                       struct writer *writer)
{
    struct cell *cells = arena_allocate_array(layout->arena, columns, sizeof *cells);
    for (size_t i = 0; i < columns; i++)
        cells[i] = (struct cell){.kind = CELL_TEXT, .text = span_of("")};
    cells[0].text = span_of(arena_format(layout->arena, "  %s", rest));
    writer_row(writer, cells);
}

/* Bytes of the words that fit in so many characters; at least one word. */
static size_t fitting(const char *text, size_t width)
{
    size_t taken = strcspn(text, " ");
    for (size_t next = taken; text[next] == ' ';) {
        next += 1 + strcspn(text + next + 1, " ");
        if (display_width((struct span){text, next}) > width)
            break;
        taken = next;
    }
    return taken;
}

/* Its title breaks where it is wider than the room there is. */
static void write_broken(const struct layout *layout, const struct figure *line, size_t room,
                         const struct setup_block *block, struct writer *writer)
{
    const char *title = line_title(layout, line);
    size_t taken = layout->format == FOR_TERMINAL ? fitting(title, room) : strlen(title);
    write_line(layout, line, arena_copy(layout->arena, (struct span){title, taken}), block, writer,
               layout->units == UNITS_US);
    for (title += taken; *title == ' '; title += taken) {
        title++;
        taken = fitting(title, room - 2);
        write_rest(layout, arena_copy(layout->arena, (struct span){title, taken}),
                   block->count + 1 + FIXED_COLUMNS, writer);
    }
}

/* Under `both` a figure with two units has a second line. */
static void write_lines(const struct layout *layout, const struct lines *lines,
                        const struct setup_block *block, struct writer *writer)
{
    for (size_t i = 0; i < lines->count; i++) {
        const struct figure *line = lines->items[i];
        write_broken(layout, line, lines->title_room, block, writer);
        if (has_both_units(layout, line))
            write_line(layout, line, "", block, writer, true);
    }
}

/* "load: fitted beside A to D" */
static const char *block_caption(const struct layout *layout, enum part part,
                                 const struct setup_block *block)
{
    const char *first = block->count == 0 ? "" : option_label(layout, block->first);
    const char *last =
        block->count < 2 ? "" : option_label(layout, block->first + block->count - 1);
    return arena_format(layout->arena, "%s: fitted%s%s%s%s", part_name(part),
                        *first ? " beside " : "", first, *last ? " to " : "", last);
}

static void write_block(const struct layout *layout, enum part part, const struct lines *lines,
                        const struct setup_block *block)
{
    static const char *const names[] = {"table", "markdown", "html"};
    size_t columns = block->count + 1 + FIXED_COLUMNS;
    struct heading *headings = arena_allocate_array(layout->arena, columns, sizeof *headings);
    headings[0] = (struct heading){.name = "figure", .title = part_name(part), .unit = ""};
    headings[1] = (struct heading){.name = "unit", .title = "unit", .unit = ""};
    for (size_t i = 0; i <= block->count; i++) {
        size_t setup = setup_in_block(block, i);
        const char *label = option_label(layout, setup);
        headings[FIXED_COLUMNS + i] =
            (struct heading){.name = label, .title = label, .unit = "", .numeric = true};
    }
    struct writer writer;
    struct writer_options options = {
        .with_header = layout->with_header,
        .decimal_mark = '\0', /* cells are texts: aligned at their end */
        .caption = block_caption(layout, part, block),
    };
    writer_begin(&writer, writer_find(names[layout->format]), layout->out, layout->arena, options,
                 headings, columns);
    write_lines(layout, lines, block, &writer);
    writer_end(&writer);
}

/* Lines and units, and the fitted setup, which every block shows. */
static size_t fixed_width(const struct layout *layout, const struct lines *lines)
{
    size_t line = 0, room = lines->title_room;
    for (size_t i = 0; i < lines->count; i++)
        line = wider(line, line_title(layout, lines->items[i]));
    return (line < room ? line : room) + GAP + unit_width(layout, lines) +
           setup_width(layout, lines, 0);
}

/* Options from `first` on that fit on the page; one at the least. */
static size_t options_that_fit(const struct layout *layout, const struct lines *lines, size_t first)
{
    size_t used = fixed_width(layout, lines), count = 0;
    while (first + count < layout->plan->count) {
        used += setup_width(layout, lines, first + count);
        if (count > 0 && used > layout->width)
            break;
        count++;
    }
    return count;
}

bool part_table(const struct layout *layout, enum part part, bool headlines_only)
{
    struct lines lines = find_lines(layout, part, headlines_only);
    if (lines.count == 0)
        return false;
    lines.title_room = title_room(layout, &lines);
    struct setup_block block = {1, 0};
    do {
        block.count = options_that_fit(layout, &lines, block.first);
        if (block.first > 1)
            outbuf_char(layout->out, '\n');
        write_block(layout, part, &lines, &block);
        block.first += block.count;
    } while (block.first < layout->plan->count);
    return true;
}
