/* Manual pages, completions and schemas, written while building from the tables that the program
 * itself runs on: commands, options, columns, keys, units. */
#ifndef TYRESUM_DOCGEN_DOCGEN_H
#define TYRESUM_DOCGEN_DOCGEN_H

#include "base/arena.h"
#include "cli/commands.h"
#include "cli/key_text.h"
#include "cli/lists.h"
#include "output/outbuf.h"
#include "build/keys.h"

void write_manual(struct arena *arena, struct outbuf *out);       /* tyresum(1) */
void write_build_manual(struct arena *arena, struct outbuf *out); /* tyresum-build(5) */
void write_bash_completion(struct arena *arena, struct outbuf *out);
void write_zsh_completion(struct arena *arena, struct outbuf *out);
void write_fish_completion(struct arena *arena, struct outbuf *out);
void write_build_schema(struct arena *arena, struct outbuf *out); /* of the build file */
void write_rows_schema(struct arena *arena, struct outbuf *out);  /* of what json holds */

/* Text for mdoc: what roff would take for its own is escaped. */
void put_roff(struct outbuf *out, const char *text);
void put_manual_head(struct outbuf *out, const char *name, const char *section,
                     const char *purpose);

/* Several texts behind one another, up to a NULL. */
void put_all(struct outbuf *out, ...) __attribute__((sentinel));

/* A JSON string with its quotes. */
void put_json(struct outbuf *out, const char *text);

/* All column names of a command, metric and us, with a separator between. */
const char *column_names(struct arena *arena, const struct command *command, const char *separator);

/* With a blank between. */
void put_table_names(struct outbuf *out);

/* Every path of --set with its equals sign, a blank behind each. */
void put_key_paths(struct outbuf *out);

/* A shell's command that lists the option names of the build file `$file`. */
#define LIST_OPTIONS                                                                               \
    "tyresum compare \"$file\" --format csv --columns option --no-header 2>/dev/null"

bool takes_file(const struct command *command);

#endif
