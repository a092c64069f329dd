/* The commands: one table, from which dispatch, help, manual page and completion are made. */
#ifndef TYRESUM_CLI_COMMANDS_H
#define TYRESUM_CLI_COMMANDS_H

#include <stddef.h>

#include "base/arena.h"
#include "base/status.h"
#include "cli/columns.h"
#include "cli/options.h"

struct command {
    const char *name;
    unsigned bit; /* enum command_bit */
    const char *arguments;
    const char *purpose;
    enum exit_status (*run)(struct arena *arena, const struct command *command,
                            const struct options *options);
    const struct column *columns;
    const size_t *column_count;
    unsigned keys;       /* enum key_use: the parts of the build file that it reads */
    size_t operands_min; /* behind the command's own name */
    size_t operands_max;
};

extern const struct command command_table[];
extern const size_t command_count;

const struct command *command_find(const char *name);

/* operands[0] is the command's name; these are those behind it. */
const char *operand(const struct options *options, size_t index);
size_t operand_count(const struct options *options);

enum exit_status run_size(struct arena *, const struct command *, const struct options *);
enum exit_status run_compare(struct arena *, const struct command *, const struct options *);
enum exit_status run_part(struct arena *, const struct command *, const struct options *);
enum exit_status run_tasks(struct arena *, const struct command *, const struct options *);
enum exit_status run_shortlist(struct arena *, const struct command *, const struct options *);
enum exit_status run_check(struct arena *, const struct command *, const struct options *);
enum exit_status run_tables(struct arena *, const struct command *, const struct options *);

extern const struct column shortlist_columns[];
extern const size_t shortlist_column_count;
extern const struct column task_columns[];
extern const size_t task_column_count;
extern const struct column check_columns[];
extern const size_t check_column_count;
extern const struct column size_columns[], compare_columns[], figure_columns[];
extern const size_t size_column_count, compare_column_count, figure_column_count;

#endif
