/* The options of the command line: one table, from which the parser, the help, the manual page
 * and the completion are made. */
#ifndef TYRESUM_CLI_OPTIONS_H
#define TYRESUM_CLI_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>

#include "base/units.h"

/* Commands that take an option, as bits; CMD_ANY for all. */
enum command_bit {
    CMD_SIZE = 1 << 0,
    CMD_COMPARE = 1 << 1,
    CMD_SPEEDOMETER = 1 << 2,
    CMD_GEARING = 1 << 3,
    CMD_LOAD = 1 << 4,
    CMD_CLEARANCE = 1 << 5,
    CMD_SHEET = 1 << 6,
    CMD_TABLES = 1 << 7,
    CMD_SHORTLIST = 1 << 8,
    CMD_CHECK = 1 << 9,
    CMD_TASKS = 1 << 10,
    CMD_FILE = CMD_COMPARE | CMD_SPEEDOMETER | CMD_GEARING | CMD_LOAD | CMD_CLEARANCE | CMD_SHEET |
               CMD_TASKS,
    CMD_BUILD = CMD_FILE | CMD_SHORTLIST | CMD_CHECK, /* all that read a build */
    CMD_ANY = (1 << 11) - 1
};

struct option_row;
enum { OPTIONS_MAX = 32 };

/* The values of an option that may stand more than once. */
struct texts {
    const char **items;
    size_t count;
};

struct options {
    const char *format;
    int units; /* enum unit_systems */
    const char *columns;
    bool no_header, wide;
    int decimal; /* 0 point, 1 comma */
    const char *option;
    bool strict;
    int color; /* enum colour_choice */
    const char *output;
    int from; /* 0 lines, 1 csv */
    const char *column, *fitted, *best, *carry;
    bool skip_blank, line_buffered, quiet;
    bool bom;      /* csv begins with a byte order mark */
    bool template; /* of `check` */
    bool help, version;
    struct texts set, each;
    bool cases; /* rows of several builds: the column `case` says which */
    const struct option_row *given[OPTIONS_MAX]; /* on the command line, in order */
    size_t given_count;
    const char **operands; /* what is no option, in order; [0] may be the command */
    size_t operand_count;
};

enum option_kind { OPTION_FLAG, OPTION_TEXT, OPTION_CHOICE, OPTION_TEXTS };

struct option_row {
    const char *name; /* without the two dashes */
    enum option_kind kind;
    const char *argument; /* as the help shows it; NULL for a flag */
    const char *const *choices;
    size_t offset; /* in struct options */
    unsigned commands;
    const char *doc;
};

extern const struct option_row option_table[];
extern const size_t option_count;

/* Reads the arguments (after the program's name) and the two environment variables. False with a
 * message on standard error where they are wrong. operands must hold 3 * argc pointers. */
bool options_parse(int argc, char **argv, const char **operands, struct options *out);

/* The formats that a command gives, the first is the default. */
enum { FORMATS_SIZE = 64 };
void options_formats(unsigned command, const char *between, char list[FORMATS_SIZE]);

/* Whether the command gives the format, which is left where only the environment asks for it; if
 * not, a message that names those it gives. */
bool options_format_given(struct options *options, unsigned command, const char *name);

/* Whether an option of that name stands on the command line. */
bool options_given(const struct options *options, const char *name);

#endif
