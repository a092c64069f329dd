#include "reading/sheet_text.h"

#include "base/known.h"
#include "reading/changes.h"
#include "reading/findings_text.h"
#include "reading/prose.h"
#include "output/writer.h"

enum { LABEL_WIDTH = 3 };

static void put_line(const struct reading *reading, const char *label, const char *text)
{
    size_t used = display_width(span_of(label));
    outbuf_text(reading->out, label);
    for (; used < LABEL_WIDTH; used++)
        outbuf_char(reading->out, ' ');
    outbuf_text(reading->out, text_cut(reading->arena, text, reading->width - used));
    outbuf_char(reading->out, '\n');
}

/* "LT255/75R16 111/108Q, one step taller", and how it stands at the line's end. */
static const char *first_line(const struct reading *reading, const struct badness *badness,
                              size_t label_width)
{
    const struct setup *setup = &reading->plan->setups[badness->setup];
    const char *size = size_text(reading, setup), *counts = counts_text(reading, badness);
    const char *name =
        setup->is_fitted ? size : arena_format(reading->arena, "%s, %s", size, setup->name);
    size_t counts_width = display_width(span_of(counts)) + 2;
    size_t room = reading->width - label_width - counts_width;
    name = text_cut(reading->arena, name, room);
    size_t pad = room - display_width(span_of(name)) + 2;
    return arena_format(reading->arena, "%s%*s%s", name, (int)pad, "", counts);
}

static const char *setting_text(const struct reading *reading, size_t setup)
{
    const struct figure *figure = figure_first(
        reading, setup,
        (struct figure_query){QUANTITY_SETTING_NEAREST, AXLE_NONE, NULL, NULL, NULL, false});
    if (figure == NULL)
        return NULL;
    return known(figure->value)
               ? arena_format(reading->arena, "enter %s", change_text(reading, figure, true))
               : "no lawful setting";
}

static const char *add_item(const struct reading *reading, const char *text, const char *item,
                            size_t width)
{
    if (item == NULL)
        return text;
    const char *longer = arena_format(reading->arena, "%s%s%s", text, *text ? ", " : "", item);
    return display_width(span_of(longer)) <= width ? longer : text;
}

/* What it changes: as many items as the line takes, those that get set first. */
static const char *changes_line(const struct reading *reading, size_t setup, size_t width)
{
    const char *text = add_item(
        reading, "", arena_format(reading->arena, "pressure %s", pressures_text(reading, setup)),
        width);
    text = add_item(reading, text, setting_text(reading, setup), width);
    for (size_t i = 0; i < change_row_count; i++) {
        const struct figure *figure = change_figure(reading, setup, i);
        bool told = setup > 0 && change_rows[i].query.quantity == QUANTITY_OVERALL_DIAMETER;
        if (change_rows[i].word == NULL || figure == NULL || !known(figure->value) || told)
            continue;
        const char *at = change_rows[i].query.headline ? figure->at : NULL;
        text = add_item(reading, text,
                        arena_format(reading->arena, "%s %s%s%s%s",
                                     change_of_axles_text(reading, setup, i), change_rows[i].word,
                                     at ? " (" : "", at ? at : "", at ? ")" : ""),
                        width);
    }
    return text;
}

void sheet_head_text(const struct reading *reading)
{
    const struct badness *order = findings_order(reading);
    for (size_t i = 0; i < reading->plan->count; i++) {
        size_t setup = order[i].setup;
        const char *label = option_label(reading, reading->plan->setups[setup].name);
        const char *lead = arena_format(reading->arena, "%s ", label);
        size_t lead_width = display_width(span_of(lead));
        size_t label_width = lead_width > LABEL_WIDTH ? lead_width : LABEL_WIDTH;
        size_t width = reading->width - LABEL_WIDTH;
        put_line(reading, lead, first_line(reading, &order[i], label_width));
        put_line(reading, "", matters_text(reading, setup, width));
        put_line(reading, "", changes_line(reading, setup, width));
    }
}
