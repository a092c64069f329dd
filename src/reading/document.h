/* Headings, lists and paragraphs of a page: Markdown, or HTML, as the layout asks for. */
#ifndef TYRESUM_READING_DOCUMENT_H
#define TYRESUM_READING_DOCUMENT_H

#include "reading/part_table.h"

/* Level 1 is the page's own title: of an HTML page its frame has it. */
void document_heading(const struct layout *layout, int level, const char *text);
void document_paragraph(const struct layout *layout, const char *text);
void document_list(const struct layout *layout);
/* `strong` may be "": an item of its text alone. */
void document_item(const struct layout *layout, const char *strong, const char *text);
void document_list_end(const struct layout *layout);
/* Before a table. */
void document_gap(const struct layout *layout);

#endif
