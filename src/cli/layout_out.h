/* What a command lays out for reading, as the options ask for it. */
#ifndef TYRESUM_CLI_LAYOUT_OUT_H
#define TYRESUM_CLI_LAYOUT_OUT_H

#include "cli/options.h"
#include "cli/sink.h"
#include "reading/part_table.h"

/* A layout with its figures grouped, for words alone until it has where to write. every_part: the
 * figures of all parts where these are not, for what becomes of each option; else NULL. */
struct layout layout_of(struct arena *arena, const struct options *options, const struct plan *plan,
                        const struct figures *figures, const struct figures *every_part);
/* Gives it its output and the width of the page there. */
void layout_on(struct layout *layout, const struct options *options, struct sink *sink);

/* Rows for a program, or a choice of columns; otherwise something to read. */
bool layout_is_rows(const struct options *options);

#endif
