/* The sizes that `shortlist` tries: the built-in list, or a CSV of the shop's own stock. */
#ifndef TYRESUM_CLI_STOCK_LIST_H
#define TYRESUM_CLI_STOCK_LIST_H

#include <stdbool.h>

#include "base/arena.h"
#include "cli/build_source.h"
#include "cli/csv_heading.h"
#include "report/shortlist/shortlist.h"

struct stock_list {
    struct candidate *items; /* each size once */
    size_t count;
    /* Of a CSV, one an item: the numbers of the records that hold it, and of each carried column
     * the fields of those records. NULL of the built-in list. */
    const char **records;
    const char ***carried;
    struct csv_heading carry; /* headings of the carried columns */
    size_t read, unread;      /* records */
};

/* search.list: "builtin" (or nothing), or a file beside the build file, whose sizes stand under
 * search.column, otherwise "designation" or "size". carry: headings with commas between, or NULL.
 * False with a message, at its place in the build file, where it cannot be read or holds no size; a
 * record whose size cannot be read is named on standard error and passed over. */
bool stock_list_read(struct arena *arena, const struct search *search,
                     const struct build_source *source, const char *carry, struct stock_list *out);

#endif
