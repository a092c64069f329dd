/* The sheet as a page: for the customer and for the workshop. */
#ifndef TYRESUM_CLI_PAGE_H
#define TYRESUM_CLI_PAGE_H

#include "cli/figure_find.h"
#include "cli/findings_text.h"

struct page_part {
    enum part part;
    bool headlines_only;
};

/* Markdown of the parts named: findings first. */
void page_markdown(const struct reading *reading, const struct page_part *parts, size_t count);

/* One HTML page that needs no other file. */
void page_html(const struct reading *reading);

/* Its pieces. Options stand in blocks, so that a table fits the paper. */
struct page_block {
    size_t first, count; /* options of the plan, from 1; count 0: the fitted setup alone */
};
bool page_next_block(const struct reading *reading, struct page_block *block);
/* Setup of a column: the fitted one first. */
size_t page_setup(const struct page_block *block, size_t column);
void page_table_begin(const struct reading *reading, const struct page_block *block,
                      const char *caption, bool full); /* full: headings name the tyres */
void page_table_end(const struct reading *reading);
void page_text(const struct reading *reading, const char *text);
void page_raw(const struct reading *reading, const char *markup);
void page_workshop(const struct reading *reading);
void page_drawings(const struct reading *reading);

/* "room at lock, front, largest": what a finding is about; and what it says of it. */
const char *finding_name(const struct reading *reading, const struct figure *figure);
const char *finding_says(const struct reading *reading, const struct figure *figure);

#endif
