/* The lists of `tyresum tables` that are no reference table: of what the program itself prints and
 * reads. */
#ifndef TYRESUM_CLI_LISTS_H
#define TYRESUM_CLI_LISTS_H

#include "base/arena.h"
#include "base/status.h"
#include "cli/columns.h"

struct rows_out;
struct list {
    const char *name, *purpose;
    const struct column *columns;
    size_t column_count;
    void (*add_rows)(struct rows_out *rows, struct arena *arena);
};

extern const struct list list_table[];
extern const size_t list_count;

const struct list *list_find(const char *name);
enum exit_status list_print(struct arena *arena, const struct options *options,
                            const struct list *list);

#endif
