/* The sheet to print: one page of A4 or Letter for up to four options. Black on white; what is
 * wrong is said in words, and never by colour alone. */
#include <string.h>

#include "base/known.h"
#include "reading/changes.h"
#include "reading/page.h"
#include "reading/prose.h"
#include "output/markup.h"

/* Names and sentences from the file are cut, so that they leave the sheet its one page. */
enum {
    BLOCK_OPTIONS = 4,
    NAME_WIDTH = 44,
    TITLE_WIDTH = 70,
    SENTENCE_WIDTH = 180,
    OTHERS_WIDTH = 150,
    ASSUMPTIONS_WIDTH = 420,
    FINDINGS_IN_FULL = 20
};

static const char style[] =
    "@page { margin: 9mm }\n"
    "body { font: 6.9pt/1.12 sans-serif; color: #000; background: #fff; margin: 0 auto;"
    " max-width: 192mm }\n"
    "h1 { font-size: 12pt; margin: 0; border-bottom: 1.5pt solid #000 }\n"
    "h2 { font-size: 9pt; margin: 3pt 0 1pt 0; border-bottom: .6pt solid #000;"
    " break-after: avoid }\n"
    "h3 { font-size: 7pt; margin: 1.5pt 0 0 0; break-after: avoid }\n"
    "p { margin: 1pt 0 }\n"
    "ul { margin: 0 0 1pt 0; padding-left: 7pt }\n"
    "li { break-inside: avoid }\n"
    "table { border-collapse: collapse; width: 100%; margin: 0 0 2pt 0; table-layout: fixed }\n"
    "caption { text-align: left; padding: 1pt 0 }\n"
    "th, td { border: .5pt solid #555; padding: .3pt 2.5pt; text-align: left;"
    " vertical-align: top; overflow-wrap: anywhere }\n"
    "td { text-align: right }\n"
    "th:first-child { width: 22% }\n"
    "thead { display: table-header-group }\n"
    "tbody th { font-weight: normal }\n"
    "tr, figure, table { break-inside: avoid }\n"
    ".wrong { font-weight: bold }\n"
    ".findings { columns: 3; column-gap: 9pt; overflow-wrap: anywhere; font-size: 6.4pt;"
    " line-height: 1.12 }\n"
    ".drawings { display: flex; flex-wrap: wrap; gap: 0 4pt; justify-content: space-between }\n"
    "figure { margin: 1pt 0 }\n"
    "figcaption { font-size: 6.4pt; text-align: center }\n"
    "svg { display: block; max-width: 100%; height: auto }\n"
    ".box { font-size: 9pt; line-height: .8 }\n"
    ".sign { display: flex; gap: 12pt; margin: 14pt 0 2pt 0 }\n"
    ".sign span { flex: 1; border-top: .6pt solid #000 }\n"
    ".small { font-size: 5.8pt; line-height: 1.12 }\n";

void page_raw(const struct layout *layout, const char *markup)
{
    outbuf_text(layout->out, markup);
}

void page_text(const struct layout *layout, const char *text)
{
    markup_text(layout->out, text);
}

bool page_next_block(const struct layout *layout, struct setup_block *block)
{
    size_t options = layout->plan->count - 1;
    if (block->first == 0)
        block->first = 1;
    else if (block->first + block->count > options)
        return false;
    else
        block->first += block->count;
    size_t left = options - (block->first - 1);
    block->count = left < BLOCK_OPTIONS ? left : BLOCK_OPTIONS;
    return true;
}

void page_table_begin(const struct layout *layout, const struct setup_block *block,
                      const char *caption, bool full)
{
    page_raw(layout, "<table>\n<caption>");
    page_text(layout, caption);
    page_raw(layout, "</caption>\n<thead><tr><th scope=\"col\">figure</th>");
    for (size_t i = 0; i <= block->count; i++) {
        const struct setup *setup = &layout->plan->setups[setup_in_block(block, i)];
        page_raw(layout, "<th scope=\"col\">");
        page_text(layout, option_label(layout, setup_in_block(block, i)));
        if (full) {
            page_raw(layout, ": ");
            page_text(layout, size_text(layout, setup));
        }
        page_raw(layout, "</th>");
    }
    page_raw(layout, "</tr></thead>\n<tbody>\n");
}

void page_table_end(const struct layout *layout)
{
    page_raw(layout, "</tbody>\n</table>\n");
}

static void row_heading(const struct layout *layout, const char *text)
{
    page_raw(layout, "<tr><th scope=\"row\">");
    page_text(layout, text);
    page_raw(layout, "</th>");
}

static void cell(const struct layout *layout, const char *text, bool wrong)
{
    page_raw(layout, wrong ? "<td class=\"wrong\">" : "<td>");
    page_text(layout, text);
    page_raw(layout, "</td>");
}

static void text_row(const struct layout *layout, const struct setup_block *block,
                     const char *title,
                     const char *(*text)(const struct layout *layout, size_t setup))
{
    row_heading(layout, title);
    for (size_t i = 0; i <= block->count; i++)
        cell(layout, text(layout, setup_in_block(block, i)), false);
    page_raw(layout, "</tr>\n");
}

static const char *setup_name(const struct layout *layout, size_t setup)
{
    return setup == 0 ? "as it stands"
                      : text_cut(layout->arena, layout->plan->setups[setup].name, NAME_WIDTH);
}

static void change_table_row(const struct layout *layout, const struct setup_block *block,
                             size_t row)
{
    const struct figure *any = NULL;
    for (size_t i = 0; any == NULL && i <= block->count; i++)
        any = change_figure(layout, setup_in_block(block, i), row);
    if (any == NULL)
        return;
    const struct change_row *change = &change_rows[row];
    const char *at = change->query.headline ? figure_at(layout->arena, layout->plan, any) : NULL;
    row_heading(layout, at != NULL ? arena_format(layout->arena, "%s, %s", change->title, at)
                                   : change->title);
    for (size_t i = 0; i <= block->count; i++) {
        bool wrong = change_fails(layout, setup_in_block(block, i), row);
        const char *text = change_of_axles_text(layout, setup_in_block(block, i), row);
        cell(layout, wrong ? arena_format(layout->arena, "! %s", text) : text, wrong);
    }
    page_raw(layout, "</tr>\n");
}

static void put_changes(const struct layout *layout)
{
    for (struct setup_block block = {0, 0}; page_next_block(layout, &block);) {
        page_table_begin(layout, &block, "What changes; ! is beyond a limit", true);
        text_row(layout, &block, "choice", setup_name);
        for (size_t i = 0; i < change_row_count; i++)
            change_table_row(layout, &block, i);
        page_table_end(layout);
    }
}

static void put_item(const struct layout *layout, const struct figure *figure)
{
    page_raw(layout, "<li><b>");
    page_text(layout, verdict_name(figure->verdict));
    page_raw(layout, "</b> ");
    page_text(layout, finding_name(layout->arena, layout->plan, figure, NAME_WIDTH));
    page_raw(layout, ": ");
    page_text(layout, text_cut(layout->arena, finding_says(layout, figure), SENTENCE_WIDTH));
    page_raw(layout, "</li>\n");
}

/* What is not told in full: named, a matter once for both axles. */
static void put_others(const struct layout *layout, struct finding_list list, size_t from)
{
    const struct finding_list others = {list.items + from, list.count - from};
    page_raw(layout, "<li>also ");
    page_text(layout, matters_named(layout, &others, OTHERS_WIDTH));
    page_raw(layout, "</li>\n");
}

/* The worst in full; of the others the names, so that one sheet holds all. */
static void put_list(const struct layout *layout, struct finding_list list, size_t most)
{
    if (list.count == 0)
        return;
    size_t full = list.count <= most + 1 ? list.count : most;
    page_raw(layout, "<ul>\n");
    for (size_t i = 0; i < full; i++)
        put_item(layout, list.items[i]);
    if (full < list.count)
        put_others(layout, list, full);
    page_raw(layout, "</ul>\n");
}

static void put_needs(const struct layout *layout)
{
    /* Lists of so many setups as stand on one sheet share its room. */
    size_t most = FINDINGS_IN_FULL / (layout->plan->count + 1);
    most = most > 5 ? 5 : most < 3 ? 3 : most;
    struct finding_list shared = findings_shared(layout);
    page_raw(layout, "<h2>What it needs, and cautions</h2>\n<div class=\"findings\">\n");
    if (shared.count > 0)
        page_raw(layout,
                 "<h3>Whichever tyre is chosen (the worst of them, counted with each)</h3>\n");
    put_list(layout, shared, most);
    for (size_t i = 0; i < layout->plan->count; i++) {
        size_t setup = layout->order[i];
        const char *name = setup == 0
                               ? "fitted"
                               : arena_format(layout->arena, "%s, %s", option_label(layout, setup),
                                              setup_name(layout, setup));
        page_raw(layout, "<h3>");
        page_text(layout,
                  arena_format(layout->arena, "%s: %s", name, standing_text(layout, setup)));
        page_raw(layout, "</h3>\n");
        put_list(layout, findings_of(layout, setup), most);
    }
    page_raw(layout, "</div>\n");
}

/* As many assumptions as a few lines hold; the terminal's sheet has them all. */
static void put_small_print(const struct layout *layout)
{
    struct finding_list made = assumptions_made(layout);
    const char *text = "";
    size_t told = 0;
    for (; told < made.count; told++) {
        const char *action = figure_action(layout->arena, layout->plan, made.items[told]);
        const char *longer = arena_format(layout->arena, "%s%s%s: %s", text, told > 0 ? "; " : "",
                                          labels_taken(layout, made.items[told]), action);
        if (told > 0 && strlen(longer) > ASSUMPTIONS_WIDTH)
            break;
        text = longer;
    }
    page_raw(layout, "<p class=\"small\">");
    if (made.count > 0) {
        page_raw(layout, "<b>Taken as:</b> ");
        page_text(layout, text);
        page_text(layout, told < made.count
                              ? arena_format(layout->arena, "; %zu more in the full sheet. ",
                                             made.count - told)
                              : ". ");
    }
    const char *memory = memory_note(layout);
    if (memory != NULL)
        page_text(layout, arena_format(layout->arena, "%s ", memory));
    page_text(layout, cautions);
    page_raw(layout, "</p>\n");
}

void page_html(const struct layout *layout)
{
    const char *name = layout->plan->specification->vehicle.name;
    name = arena_format(layout->arena, "Tyre change: %s",
                        name == NULL ? "vehicle" : text_cut(layout->arena, name, TITLE_WIDTH));
    page_raw(layout, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                     "<meta name=\"viewport\" content=\"width=device-width\">\n<title>");
    page_text(layout, name);
    page_raw(layout, "</title>\n<style>\n");
    page_raw(layout, style);
    page_raw(layout, "</style>\n</head>\n<body>\n<h1>");
    page_text(layout, name);
    page_raw(layout, "</h1>\n<main>\n<section>\n<h2>For the customer</h2>\n");
    put_changes(layout);
    put_needs(layout);
    page_drawings(layout);
    page_raw(layout, "</section>\n<section>\n");
    page_workshop(layout);
    page_raw(layout, "</section>\n</main>\n");
    put_small_print(layout);
    page_raw(layout, "</body>\n</html>\n");
}
