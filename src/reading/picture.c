#include "reading/picture.h"

#include <string.h>

#include "reading/findings_text.h"

struct picture picture_of(struct drawing *drawing, const struct layout *layout)
{
    struct layout *one_unit = arena_allocate(layout->arena, sizeof *one_unit);
    *one_unit = *layout;
    one_unit->units = layout->units == UNITS_US ? UNITS_US : UNITS_METRIC;
    return (struct picture){drawing, one_unit};
}

enum { CAUTION_LINES_MAX = 4 };

static double line_height(void)
{
    return 1.3 * DRAWING_TEXT;
}

/* Bytes of the words that fit in the width; at least one word. */
static size_t fitting(struct arena *arena, const char *text, double width)
{
    size_t taken = strcspn(text, " ");
    for (size_t next = taken; text[next] == ' ';) {
        next += 1 + strcspn(text + next + 1, " ");
        const char *line = arena_copy(arena, (struct span){text, next});
        if (drawing_text_width(line, DRAWING_TEXT) > width)
            break;
        taken = next;
    }
    return taken;
}

void picture_begin(const struct picture *picture, double height, const char *title,
                   const char *description)
{
    bool alone = !picture->drawing->inside_page;
    drawing_begin(picture->drawing, DRAWING_WIDTH,
                  height + (alone ? (CAUTION_LINES_MAX + 0.5) * line_height() : 0), title,
                  description);
}

void picture_end(const struct picture *picture, double height)
{
    struct arena *arena = picture->layout->arena;
    double y = height + line_height();
    const char *text = picture->drawing->inside_page ? "" : cautions;
    for (; *text != '\0'; y += line_height()) {
        size_t taken = fitting(arena, text, DRAWING_WIDTH - 2 * DRAWING_TEXT);
        drawing_text(picture->drawing, (struct point){DRAWING_TEXT, y},
                     (struct text_style){.size = DRAWING_TEXT},
                     arena_copy(arena, (struct span){text, taken}));
        text += taken + (text[taken] == ' ');
    }
    drawing_end(picture->drawing);
}

void picture_panels(const struct picture *picture, const struct panels *panels)
{
    bool page = picture->drawing->inside_page;
    size_t drawings = page ? panels->count : 1, each = page ? 1 : panels->count;
    for (size_t i = 0; i < drawings; i++) {
        outbuf_text(picture->drawing->out, page ? "<figure>\n" : "");
        picture_begin(picture, (double)each * panels->height, panels->title, panels->description);
        for (size_t j = 0; j < each; j++)
            panels->draw(picture, panels->context, i + j, (double)j * panels->height);
        picture_end(picture, (double)each * panels->height);
        outbuf_text(picture->drawing->out, page ? "</figure>\n" : "");
    }
}

const char *picture_letter(const struct picture *picture, size_t setup)
{
    return option_label(picture->layout, setup);
}

const char *picture_setup_title(const struct picture *picture, size_t setup, double size,
                                double width)
{
    const struct setup *shown = &picture->layout->plan->setups[setup];
    const char *label = picture_letter(picture, setup);
    const char *tyre = size_text(picture->layout, shown);
    const char *text =
        shown->is_fitted
            ? arena_format(picture->layout->arena, "%s: %s", label, tyre)
            : arena_format(picture->layout->arena, "%s: %s, %s", label, tyre, shown->name);
    return drawing_fit(picture->drawing, text, size, width);
}

void picture_figure(const struct picture *picture, const struct figure *figure, struct point at,
                    struct text_style style)
{
    if (figure == NULL) {
        drawing_text(picture->drawing, at, style, figure_value_text(picture->layout, NULL));
        return;
    }
    drawing_group(picture->drawing, figure_sentence(picture->layout, figure));
    style.figure = true;
    drawing_text(picture->drawing, at, style, figure_value_text(picture->layout, figure));
    drawing_group_end(picture->drawing);
}
