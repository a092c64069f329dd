#include "cli/options.h"

#include <stdlib.h>
#include <string.h>

#include "base/diagnostics.h"
#include "base/nearest.h"
#include "yaml/set_path.h"

static const char *const formats[] = {"table", "csv", "json", "markdown", "html", "svg", NULL};
static const char *const unit_choices[] = {"metric", "us", "both", NULL};
static const char *const decimals[] = {"point", "comma", NULL};
static const char *const inputs[] = {"lines", "csv", NULL};
static const char *const colors[] = {"auto", "always", "never", NULL};

#define FIELD(member) offsetof(struct options, member)

const struct option_row option_table[] = {
    {"format", OPTION_TEXT, "FORMAT", formats, FIELD(format), CMD_ANY,
     "table (default), csv, json or markdown; some give html or svg"},
    {"units", OPTION_CHOICE, "UNITS", unit_choices, FIELD(units), CMD_ANY,
     "metric (default), us or both"},
    {"columns", OPTION_TEXT, "A,B,C", NULL, FIELD(columns), CMD_ANY,
     "only these columns, in this order"},
    {"no-header", OPTION_FLAG, NULL, NULL, FIELD(no_header), CMD_ANY, "leave the heading out"},
    {"wide", OPTION_FLAG, NULL, NULL, FIELD(wide), CMD_ANY,
     "tables with all columns, whatever the width"},
    {"decimal", OPTION_CHOICE, "MARK", decimals, FIELD(decimal), CMD_ANY,
     "point (default) or comma; csv then separates by semicolons"},
    {"bom", OPTION_FLAG, NULL, NULL, FIELD(bom), CMD_ANY,
     "begin csv with a byte order mark, for a spreadsheet that asks for one"},
    {"option", OPTION_TEXT, "NAME", NULL, FIELD(option), CMD_FILE | CMD_SHORTLIST | CMD_CHECK,
     "only that option of the file: its name, or its letter, A to Z, AA"},
    {"set", OPTION_TEXTS, "PATH=VALUE", NULL, FIELD(set), CMD_BUILD,
     "put a value into the build, as if it stood in the file"},
    {"each", OPTION_TEXTS, "PATH=V1,V2", NULL, FIELD(each), CMD_BUILD,
     "compute once with each of these values"},
    {"strict", OPTION_FLAG, NULL, NULL, FIELD(strict), CMD_FILE,
     "exit with 3 when an option is no go; without options, when a finding is `fail`"},
    {"color", OPTION_CHOICE, "WHEN", colors, FIELD(color), CMD_ANY,
     "auto (default), always or never; NO_COLOR is honoured"},
    {"output", OPTION_TEXT, "FILE", NULL, FIELD(output), CMD_ANY,
     "write to FILE, whole or not at all; - is standard output"},
    {"from", OPTION_CHOICE, "KIND", inputs, FIELD(from), CMD_SIZE | CMD_COMPARE,
     "lines (default) or csv: what a stream is made of"},
    {"column", OPTION_TEXT, "NAME", NULL, FIELD(column), CMD_SIZE | CMD_COMPARE,
     "heading of the csv column that holds the sizes"},
    {"fitted", OPTION_TEXT, "SIZE", NULL, FIELD(fitted), CMD_COMPARE,
     "the fitted tyre, for `compare -`"},
    {"best", OPTION_TEXT, "N", NULL, FIELD(best), CMD_SHORTLIST,
     "only the N best (default: 10000); of springs and heights 10 million at most are tried"},
    {"carry", OPTION_TEXT, "A,B,C", NULL, FIELD(carry), CMD_SHORTLIST,
     "with these columns of the stock list"},
    {"skip-blank", OPTION_FLAG, NULL, NULL, FIELD(skip_blank), CMD_SIZE | CMD_COMPARE,
     "pass over blank lines and # comments of a stream"},
    {"template", OPTION_FLAG, NULL, NULL, FIELD(template), CMD_CHECK,
     "print a commented build file to start from"},
    {"line-buffered", OPTION_FLAG, NULL, NULL, FIELD(line_buffered), CMD_SIZE | CMD_COMPARE,
     "write each row of a stream as soon as its line has come"},
    {"quiet", OPTION_FLAG, NULL, NULL, FIELD(quiet), CMD_ANY,
     "no counts and notes on standard error, only what is wrong"},
    {"help", OPTION_FLAG, NULL, NULL, FIELD(help), CMD_ANY, "this help"},
    {"version", OPTION_FLAG, NULL, NULL, FIELD(version), CMD_ANY, "the program's version"},
};
const size_t option_count = sizeof option_table / sizeof option_table[0];

static const struct option_row *find_option(struct span name)
{
    for (size_t i = 0; i < option_count; i++)
        if (span_is(name, option_table[i].name))
            return &option_table[i];
    return NULL;
}

static void unknown_option(struct span name)
{
    struct nearest nearest = nearest_start(name);
    for (size_t i = 0; i < option_count; i++)
        nearest_try(&nearest, option_table[i].name);
    const char *near = nearest_found(&nearest);
    diagnostics_plain("the option \"--%.*s\" is not known; %s%s%s", (int)name.length, name.at,
                      near ? "did you mean --" : "expected one of those that --help lists",
                      near ? near : "", near ? "?" : "");
}

/* Index of a word among choices, or -1 with a message naming the nearest. */
static int find_choice(const char *where, const char *const *choices, const char *value)
{
    struct nearest nearest = nearest_start(span_of(value));
    char list[128] = "";
    for (int i = 0; choices[i] != NULL; i++) {
        if (strcmp(choices[i], value) == 0)
            return i;
        nearest_try(&nearest, choices[i]);
        strncat(list, i > 0 ? ", " : "", sizeof list - strlen(list) - 1);
        strncat(list, choices[i], sizeof list - strlen(list) - 1);
    }
    const char *near = nearest_found(&nearest);
    diagnostics_plain("\"%s\" is no choice for %s; expected one of %s%s%s%s", value, where, list,
                      near ? " (did you mean \"" : "", near ? near : "", near ? "\"?)" : "");
    return -1;
}

static void *field_of(const struct option_row *row, struct options *out)
{
    return (char *)out + row->offset;
}

/* "PATH=VALUE": both must be there; what they are is looked at when the build is read. */
static bool add_text(const struct option_row *row, struct texts *texts, const char *value)
{
    size_t path = set_path_length(span_of(value));
    if (path == 0 || value[path] == '\0') {
        diagnostics_plain("--%s \"%s\" has no %s; expected --%s %s", row->name, value,
                          path == 0 ? "path before the =" : "= between a path and a value",
                          row->name, row->argument);
        return false;
    }
    texts->items[texts->count++] = value;
    return true;
}

static bool set_option(const struct option_row *row, const char *where, const char *value,
                       struct options *out)
{
    void *field = field_of(row, out);
    int choice = row->choices == NULL ? 0 : find_choice(where, row->choices, value);
    if (choice < 0)
        return false;
    if (row->kind == OPTION_CHOICE)
        *(int *)field = choice;
    else if (row->kind == OPTION_TEXTS)
        return add_text(row, field, value);
    else
        *(const char **)field = value;
    return true;
}

/* One "--name", "--name VALUE" or "--name=VALUE"; *next is the index of what follows. */
static bool take_option(int argc, char **argv, int *next, struct options *out)
{
    const char *text = argv[*next] + 2;
    const char *equals = strchr(text, '=');
    struct span name = {text, equals ? (size_t)(equals - text) : strlen(text)};
    const struct option_row *row = find_option(name);
    if (row == NULL) {
        unknown_option(name);
        return false;
    }
    for (size_t i = 0; i < out->given_count; i++)
        if (out->given[i] == row && row->kind != OPTION_TEXTS) {
            diagnostics_plain("the option --%s is given twice; expected it once", row->name);
            return false;
        }
    if (row->kind != OPTION_TEXTS || ((struct texts *)field_of(row, out))->count == 0)
        out->given[out->given_count++] = row;
    if (row->kind == OPTION_FLAG) {
        if (equals != NULL)
            diagnostics_plain("the option --%s takes no value; expected it alone", row->name);
        *(bool *)field_of(row, out) = true;
        return equals == NULL;
    }
    const char *value = equals ? equals + 1 : *next + 1 < argc ? argv[++*next] : NULL;
    if (value == NULL || *value == '\0') {
        diagnostics_plain("the option --%s needs a value; expected --%s %s", row->name, row->name,
                          row->argument);
        return false;
    }
    char where[48] = "--";
    strncat(where, row->name, sizeof where - 3);
    return set_option(row, where, value, out);
}

/* The two variables that give defaults; nothing else in the environment changes a result. */
static bool take_environment(struct options *out)
{
    static const struct {
        const char *variable, *option;
    } defaults[] = {{"TYRESUM_UNITS", "units"}, {"TYRESUM_FORMAT", "format"}};
    for (size_t i = 0; i < sizeof defaults / sizeof defaults[0]; i++) {
        const char *value = getenv(defaults[i].variable);
        if (value == NULL || *value == '\0')
            continue;
        const struct option_row *row = find_option(span_of(defaults[i].option));
        if (row == NULL || !set_option(row, defaults[i].variable, value, out))
            return false;
    }
    return true;
}

/* What not every command gives: pages, and drawings. */
static bool format_is_given(const char *format, unsigned command)
{
    if (strcmp(format, "html") == 0)
        return (command & (CMD_SHEET | CMD_TASKS | CMD_SPEEDOMETER | CMD_GEARING | CMD_LOAD |
                           CMD_CLEARANCE | CMD_COMPARE | CMD_SHORTLIST)) != 0;
    if (strcmp(format, "svg") == 0)
        return (command & (CMD_GEARING | CMD_LOAD | CMD_CLEARANCE)) != 0;
    return true;
}

void options_formats(unsigned command, const char *between, char list[FORMATS_SIZE])
{
    *list = '\0';
    for (size_t i = 0; formats[i] != NULL; i++) {
        if (!format_is_given(formats[i], command))
            continue;
        strncat(list, *list ? between : "", FORMATS_SIZE - strlen(list) - 1);
        strncat(list, formats[i], FORMATS_SIZE - strlen(list) - 1);
    }
}

/* A default is no wish: what cannot have it goes on as if there were none. */
static void leave_default_format(struct options *options, unsigned command)
{
    bool page = strcmp(options->format, "html") == 0 || strcmp(options->format, "svg") == 0;
    bool csv = options->from == 1 && strcmp(options->format, "json") != 0;
    if (!options_given(options, "format") &&
        (!format_is_given(options->format, command) || csv || (page && options->columns != NULL)))
        options->format = "table";
}

bool options_format_given(struct options *options, unsigned command, const char *name)
{
    leave_default_format(options, command);
    if (format_is_given(options->format, command))
        return true;
    char list[FORMATS_SIZE];
    options_formats(command, ", ", list);
    diagnostics_plain("`%s` does not give %s; expected --format to be one of %s", name,
                      options->format, list);
    return false;
}

/* An argument with one dash is no option: the only one that it may stand for, or NULL. */
static const char *option_meant(const char *argument)
{
    const char *word = argument + strspn(argument, "-"), *meant = NULL;
    for (size_t i = 0; i < option_count && *word != '\0'; i++) {
        if (strcmp(option_table[i].name, word) == 0)
            return option_table[i].name;
        if (strncmp(option_table[i].name, word, strlen(word)) != 0)
            continue;
        if (meant != NULL)
            return NULL;
        meant = option_table[i].name;
    }
    return meant;
}

bool options_parse(int argc, char **argv, const char **operands, struct options *out)
{
    _Static_assert(sizeof option_table / sizeof option_table[0] <= OPTIONS_MAX,
                   "every option needs its place among those given");
    *out = (struct options){.format = "table",
                            .operands = operands,
                            .set = {operands + argc, 0},
                            .each = {operands + 2 * argc, 0}};
    if (!take_environment(out))
        return false;
    bool only_operands = false;
    for (int i = 1; i < argc; i++) {
        bool option = !only_operands && argv[i][0] == '-' && argv[i][1] != '\0';
        if (!option) {
            operands[out->operand_count++] = argv[i];
        } else if (strcmp(argv[i], "--") == 0) {
            only_operands = true;
        } else if (strcmp(argv[i], "-h") == 0) {
            out->help = true;
        } else if (argv[i][1] != '-') {
            const char *meant = option_meant(argv[i]);
            diagnostics_plain(
                "\"%s\" is no option; options have two dashes, and -- ends them%s%s%s", argv[i],
                meant ? " (did you mean --" : "", meant ? meant : "", meant ? "?)" : "");
            return false;
        } else if (!take_option(argc, argv, &i, out)) {
            return false;
        }
    }
    return true;
}

bool options_given(const struct options *options, const char *name)
{
    for (size_t i = 0; i < options->given_count; i++)
        if (strcmp(options->given[i]->name, name) == 0)
            return true;
    return false;
}
