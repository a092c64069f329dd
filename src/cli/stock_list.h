/* The sizes that `shortlist` tries: the built-in list, or a CSV of the shop's own stock. */
#ifndef TYRESUM_CLI_STOCK_LIST_H
#define TYRESUM_CLI_STOCK_LIST_H

#include <stdbool.h>

#include "base/arena.h"
#include "report/shortlist.h"

struct stock_list {
    struct candidate *items;
    size_t count;
};

/* search.list: "builtin" (or nothing), or a file beside the build file, whose sizes stand under
 * search.column, otherwise "designation" or "size". False with a message where it cannot be read;
 * a record whose size cannot be read is named on standard error and passed over. */
bool stock_list_read(struct arena *arena, const struct search *search, const char *build_path,
                     struct stock_list *out);

#endif
