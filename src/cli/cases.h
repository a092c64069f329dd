/* A command that reads a build, once for each: of several files, and of every value of --each. */
#ifndef TYRESUM_CLI_CASES_H
#define TYRESUM_CLI_CASES_H

#include "cli/build_source.h"
#include "cli/commands.h"
#include "cli/rows_out.h"
#include "report/plan.h"

struct build_case {
    const struct command *command;
    const struct options *options;
    const struct build_source *source;
    const char *name; /* what tells it from the others; NULL: it is the only one */
    struct specification *specification;
    struct node *tree;
    struct arena *shared; /* of all of them, for what their rows keep */
    struct results *results;
};

/* Computes and writes one. EXIT_COMPUTED, EXIT_FINDING_FAIL, EXIT_INPUT_WRONG of this build alone,
 * or EXIT_NOT_WRITTEN. */
typedef enum exit_status (*case_run)(struct arena *arena, const struct build_case *build);

/* Each build in turn; what is wrong in one is told, and the others are still written. */
enum exit_status cases_run(struct arena *arena, const struct command *command,
                           const struct options *given, case_run run);

/* The plan of a build, with --option. False with a message where it has no such option. */
bool case_plan(struct arena *arena, const struct build_case *build, struct plan *out);

/* The rows that all builds share, begun with the first; NULL with a message where they cannot be.
 */
struct rows_out *case_rows(const struct build_case *build, const struct column *columns,
                           size_t count);
/* The same of a command with one table: rows for a program are shared, a table for reading is the
 * case's own and ended by case_table_end. */
struct rows_out *case_table(struct arena *arena, const struct build_case *build,
                            const struct column *columns, size_t count);
/* Where words may stand below the table; NULL where it is shared. */
struct sink *case_table_end(const struct build_case *build, struct rows_out *rows);
/* What is laid out for reading: where it goes, with the case above it. NULL with a message. */
struct sink *case_sink(const struct build_case *build);
/* What a case that got none of them ends with. */
enum exit_status case_not_begun(const struct build_case *build);

#endif
