#include "output/markup.h"
#include "reading/answer.h"
#include "reading/page.h"
#include "reading/page_frame.h"
#include "reading/prose.h"
#include "reading/task_list.h"

/* Names are cut in headings; the legend of the last part has them whole. */
enum { TITLE_WIDTH = 58 };

void page_raw(const struct layout *layout, const char *markup)
{
    outbuf_text(layout->out, markup);
}

void page_text(const struct layout *layout, const char *text)
{
    markup_text(layout->out, text);
}

void page_element(const struct layout *layout, const char *name, const char *attributes,
                  const char *text)
{
    page_raw(layout, arena_format(layout->arena, "<%s%s>", name, attributes));
    page_text(layout, text);
    page_raw(layout, arena_format(layout->arena, "</%s>\n", name));
}

/* A full disc with a tick, a ring with a tick, a square with a question mark, a full square with a
 * cross. */
void page_mark(const struct layout *layout, size_t setup)
{
    static const char tick[] =
        "<path d=\"M4 8.5l3 3 5-6\" stroke-width=\"2\" fill=\"none\" stroke=";
    static const char *const shapes[] = {
        "<circle cx=\"8\" cy=\"8\" r=\"8\" fill=\"currentColor\"/>",
        "<circle cx=\"8\" cy=\"8\" r=\"7\" fill=\"none\" stroke=\"currentColor\" "
        "stroke-width=\"1.6\"/>",
        "<rect x=\"1\" y=\"1\" width=\"14\" height=\"14\" fill=\"none\" stroke=\"currentColor\" "
        "stroke-width=\"1.6\"/><path d=\"M5.5 6a2.5 2.5 0 1 1 3.6 2.2Q8 8.8 8 10.2\" "
        "stroke=\"currentColor\" stroke-width=\"1.6\" fill=\"none\"/><circle cx=\"8\" cy=\"12.4\" "
        "r=\"1.1\" fill=\"currentColor\"/>",
        "<rect width=\"16\" height=\"16\" fill=\"currentColor\"/><path d=\"M4 4l8 8M12 4l-8 8\" "
        "stroke=\"#fff\" stroke-width=\"2\"/>",
    };
    enum outcome outcome = layout->outcomes[setup].outcome;
    page_raw(layout, "<svg class=\"mark\" viewBox=\"0 0 16 16\" aria-hidden=\"true\">");
    page_raw(layout, shapes[outcome]);
    if (outcome == OUTCOME_GO || outcome == OUTCOME_WORK) {
        page_raw(layout, tick);
        page_raw(layout, outcome == OUTCOME_GO ? "\"#fff\"/>" : "\"currentColor\"/>");
    }
    page_raw(layout, "</svg> ");
}

void page_figure_cell(const struct layout *layout, const struct figure *figure)
{
    if (figure == NULL) {
        page_raw(layout, "<td class=\"n\">-</td>");
        return;
    }
    page_raw(layout, layout->units == UNITS_BOTH ? "<td class=\"n\" title=\""
                                                 : "<td class=\"n v\" title=\"");
    page_text(layout, figure_sentence(layout, figure));
    page_raw(layout, "\">");
    page_text(layout, figure_value_text(layout, figure));
    page_raw(layout, "</td>");
}

static void begin(const struct layout *layout, const char *what)
{
    const char *name = layout->plan->specification->vehicle.name;
    name = name == NULL ? "vehicle" : text_cut(layout->arena, name, TITLE_WIDTH);
    page_begin(layout->out, arena_format(layout->arena, "%s: %s", what, name));
}

void page_html_sheet(const struct layout *layout, const struct page_part *parts, size_t count)
{
    size_t options = layout->plan->count - 1;
    begin(layout, "Tyre change");
    page_customer(layout);
    for (size_t i = 0; i < layout->plan->count; i++)
        if (task_list_shows(layout, layout->order[i]))
            page_workshop(layout, layout->order[i]);
    page_raw(layout, "<section class=\"sheet\">\n<h2>What it rests on</h2>\n");
    page_element(layout, "p", "", answer_title(layout));
    page_legend(layout);
    if (options > 1 && !page_leads_with_heights(options))
        page_heights(layout, layout->order, options);
    page_proof(layout);
    page_tables(layout, parts, count);
    page_raw(layout, "</section>\n");
    page_end(layout->out);
}

void page_html_tasks(const struct layout *layout)
{
    begin(layout, "Tasks");
    for (size_t i = 0; i < layout->plan->count; i++)
        if (task_list_shows(layout, layout->order[i]))
            page_workshop(layout, layout->order[i]);
    page_end(layout->out);
}

void page_html_part(const struct layout *layout, enum part part,
                    void (*picture)(const struct picture *))
{
    struct drawing drawing = {layout->out, layout->arena, true};
    begin(layout, part_name(part));
    page_part(layout, part);
    if (picture != NULL) {
        const struct picture on = picture_of(&drawing, layout);
        picture(&on);
    }
    page_end(layout->out);
}
