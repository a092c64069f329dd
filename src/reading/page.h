/* The sheet as a page: for the customer and for the workshop. */
#ifndef TYRESUM_READING_PAGE_H
#define TYRESUM_READING_PAGE_H

#include "reading/figure_find.h"
#include "reading/findings_text.h"

struct page_part {
    enum part part;
    bool headlines_only;
};

/* Markdown of the parts named: findings first, or as a sheet the answer and each option's work. */
void page_markdown(const struct layout *layout, const struct page_part *parts, size_t count,
                   bool as_sheet);
/* Of a sheet: what stands before its parts; and one setup's tasks, with boxes to tick or
 * numbered. */
void page_markdown_answer(const struct layout *layout);
/* What all share, each setup's work and findings; of a part too. */
void page_markdown_options(const struct layout *layout);
void page_markdown_tasks(const struct layout *layout, size_t setup, bool boxes);
void page_markdown_finding(const struct layout *layout, const struct figure *figure);

/* One HTML page that needs no other file. */
void page_html(const struct layout *layout);

/* Its pieces. Options stand in blocks, so that a table fits the paper. */
bool page_next_block(const struct layout *layout, struct setup_block *block);
void page_table_begin(const struct layout *layout, const struct setup_block *block,
                      const char *caption, bool full); /* full: headings name the tyres */
void page_table_end(const struct layout *layout);
void page_text(const struct layout *layout, const char *text);
void page_raw(const struct layout *layout, const char *markup);
void page_workshop(const struct layout *layout);
void page_drawings(const struct layout *layout);

#endif
