#include "reading/picture.h"

#include "reading/findings_text.h"

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
