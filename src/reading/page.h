/* The sheet as a page: for the customer and for the workshop. */
#ifndef TYRESUM_READING_PAGE_H
#define TYRESUM_READING_PAGE_H

#include "reading/figure_find.h"
#include "reading/findings_text.h"

struct page_part {
    enum part part;
    bool headlines_only;
};

/* Markdown of the parts named: findings first. */
void page_markdown(const struct reading *reading, const struct page_part *parts, size_t count);

/* One HTML page that needs no other file. */
void page_html(const struct reading *reading);

/* Its pieces. Options stand in blocks, so that a table fits the paper. */
bool page_next_block(const struct reading *reading, struct setup_block *block);
void page_table_begin(const struct reading *reading, const struct setup_block *block,
                      const char *caption, bool full); /* full: headings name the tyres */
void page_table_end(const struct reading *reading);
void page_text(const struct reading *reading, const char *text);
void page_raw(const struct reading *reading, const char *markup);
void page_workshop(const struct reading *reading);
void page_drawings(const struct reading *reading);

/* What a finding says of its matter (finding_name). */
const char *finding_says(const struct reading *reading, const struct figure *figure);

#endif
