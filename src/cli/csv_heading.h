/* The headings of a CSV, found whatever their case and blanks. */
#ifndef TYRESUM_CLI_CSV_HEADING_H
#define TYRESUM_CLI_CSV_HEADING_H

#include "base/arena.h"
#include "cli/csv_record.h"

struct csv_heading {
    struct csv_shape shape;
    const char **names; /* as written, without quotes */
};

struct csv_heading csv_heading_read(struct arena *arena, struct span record,
                                    const struct csv_shape *shape);

/* Whether a record can be one: a NUL would cut a name short. Says so, `from` being what has it. */
bool csv_heading_is_text(struct span record, const char *from);

/* As written, or else the only one that differs in case and blanks alone. */
enum heading_found { HEADING_FOUND, HEADING_MISSING, HEADING_TWICE };
enum heading_found csv_heading_find(const struct csv_heading *heading, struct span name,
                                    size_t *index);

/* ", did you mean "Size"?", or what stands otherwise. */
const char *csv_heading_near(struct arena *arena, const struct csv_heading *heading,
                             struct span name, const char *otherwise);

/* A name of ours, or that behind "tyresum_" where the CSV has it already; and says so. */
void csv_heading_tell_own(const char *name, const char *own);
const char *csv_heading_own(struct arena *arena, const struct csv_heading *heading,
                            const char *name);

#endif
