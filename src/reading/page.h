/* What is laid out on pages: the sheet for the customer and for the workshop, the tasks, a part. */
#ifndef TYRESUM_READING_PAGE_H
#define TYRESUM_READING_PAGE_H

#include "reading/figure_find.h"
#include "reading/findings_text.h"
#include "reading/picture.h"

struct page_part {
    enum part part;
    bool headlines_only;
};

/* Markdown of the parts named: of several a sheet with its answer first. */
void page_markdown(const struct layout *layout, const struct page_part *parts, size_t count);
/* Its pieces, which are those of HTML pages as well: what each letter stands for, a part's findings
 * and table, what a sheet's answer rests on, the tables of figures with what was assumed. */
void page_legend(const struct layout *layout);
void page_part(const struct layout *layout, enum part part);
void page_proof(const struct layout *layout);
void page_tables(const struct layout *layout, const struct page_part *parts, size_t count);
void page_finding(const struct layout *layout, const struct figure *figure);
/* A setup's tasks, with boxes to tick or numbered. */
void page_markdown_tasks(const struct layout *layout, size_t setup, bool boxes);

/* Each one HTML page that needs no other file. picture NULL: none. */
void page_html_sheet(const struct layout *layout, const struct page_part *parts, size_t count);
void page_html_tasks(const struct layout *layout);
void page_html_part(const struct layout *layout, enum part part,
                    void (*picture)(const struct picture *));

/* Their pieces. */
void page_customer(const struct layout *layout);
/* The tyres by height: on the customer's page where that leaves its cards on one page or takes no
 * further one, else in the last part. */
bool page_leads_with_heights(size_t options);
void page_heights(const struct layout *layout, const size_t *setups, size_t count);
void page_workshop(const struct layout *layout, size_t setup);
void page_text(const struct layout *layout, const char *text);
void page_raw(const struct layout *layout, const char *markup);
/* An element with a text inside; attributes "" or such as " class=\"n\"". */
void page_element(const struct layout *layout, const char *name, const char *attributes,
                  const char *text);
/* The shape of an outcome: told apart without colour. */
void page_mark(const struct layout *layout, size_t setup);
/* A cell with a figure's value, whose title is its csv row in a sentence; "-" without one. */
void page_figure_cell(const struct layout *layout, const struct figure *figure);

#endif
