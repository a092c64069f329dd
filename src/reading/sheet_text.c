#include "reading/sheet_text.h"

#include "base/known.h"
#include "reading/changes.h"
#include "reading/findings_text.h"
#include "reading/prose.h"
#include "output/writer.h"

enum { LABEL_WIDTH = 3 };

static void put_line(const struct layout *layout, const char *label, const char *text)
{
    size_t used = display_width(span_of(label));
    outbuf_text(layout->out, label);
    for (; used < LABEL_WIDTH; used++)
        outbuf_char(layout->out, ' ');
    outbuf_text(layout->out, text_cut(layout->arena, text, layout->width - used));
    outbuf_char(layout->out, '\n');
}

/* "LT255/75R16 111/108Q, one step taller", and how it stands at the line's end. */
static const char *first_line(const struct layout *layout, const struct badness *badness,
                              size_t label_width)
{
    const struct setup *setup = &layout->plan->setups[badness->setup];
    const char *size = size_text(layout, setup), *counts = counts_text(layout, badness);
    const char *name =
        setup->is_fitted ? size : arena_format(layout->arena, "%s, %s", size, setup->name);
    size_t counts_width = display_width(span_of(counts)) + 2;
    size_t room = layout->width - label_width - counts_width;
    name = text_cut(layout->arena, name, room);
    size_t pad = room - display_width(span_of(name)) + 2;
    return arena_format(layout->arena, "%s%*s%s", name, (int)pad, "", counts);
}

static const char *setting_text(const struct layout *layout, size_t setup)
{
    const struct figure *figure = figure_first(
        layout, setup,
        (struct figure_query){
            .quantity = QUANTITY_SETTING_NEAREST, .axle = AXLE_NONE, .state = STATE_NONE});
    if (figure == NULL)
        return NULL;
    if (!known(figure->value))
        return figure->verdict == VERDICT_FAIL ? "no lawful setting" : "setting unknown";
    bool left = figure->value == layout->plan->specification->speedometer.setting.now;
    return arena_format(layout->arena, "%s %s", left ? "leave" : "enter",
                        change_text(layout, figure, true));
}

static const char *add_item(const struct layout *layout, const char *text, const char *item,
                            size_t width)
{
    if (item == NULL)
        return text;
    const char *longer = arena_format(layout->arena, "%s%s%s", text, *text ? ", " : "", item);
    return display_width(span_of(longer)) <= width ? longer : text;
}

/* What it changes: as many items as the line takes, those that get set first. */
static const char *changes_line(const struct layout *layout, size_t setup, size_t width)
{
    const char *text =
        add_item(layout, "",
                 arena_format(layout->arena, "pressure %s", pressures_text(layout, setup)), width);
    text = add_item(layout, text, setting_text(layout, setup), width);
    for (size_t i = 0; i < change_row_count; i++) {
        const struct figure *figure = change_figure(layout, setup, i);
        bool told = setup > 0 && change_rows[i].query.quantity == QUANTITY_OVERALL_DIAMETER;
        if (change_rows[i].word == NULL || figure == NULL || !known(figure->value) || told)
            continue;
        const char *at =
            change_rows[i].query.headline ? figure_at(layout->arena, layout->plan, figure) : NULL;
        text = add_item(layout, text,
                        arena_format(layout->arena, "%s %s%s%s%s",
                                     change_of_axles_text(layout, setup, i), change_rows[i].word,
                                     at ? " (" : "", at ? at : "", at ? ")" : ""),
                        width);
    }
    return text;
}

void sheet_head_text(const struct layout *layout)
{
    const struct badness *order = findings_order(layout);
    for (size_t i = 0; i < layout->plan->count; i++) {
        size_t setup = order[i].setup;
        const char *label = option_label(layout, setup);
        const char *lead = arena_format(layout->arena, "%s ", label);
        size_t lead_width = display_width(span_of(lead));
        size_t label_width = lead_width > LABEL_WIDTH ? lead_width : LABEL_WIDTH;
        size_t width = layout->width - LABEL_WIDTH;
        put_line(layout, lead, first_line(layout, &order[i], label_width));
        put_line(layout, "", matters_text(layout, setup, width));
        put_line(layout, "", changes_line(layout, setup, width));
    }
}
