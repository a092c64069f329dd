#include "cli/options_fit.h"

#include <string.h>

#include "base/diagnostics.h"

/* What a command is asked to do, as far as options hang on it. */
enum form {
    FORM_STREAM = 1,   /* `size -`, or `compare -` with --fitted */
    FORM_RECORDS = 2,  /* the same of a csv */
    FORM_BUILD = 4,    /* a file, or designations instead of one */
    FORM_TEMPLATE = 8, /* of `check` */
    FORM_TABLE = 16,   /* --format table or markdown */
    FORM_CSV = 32,
    FORM_JSON = 64,
    FORM_PAGE = 128 /* html, svg */
};

enum { FORMS_OF_TEXT = FORM_TABLE | FORM_CSV, FORMS_OF_COLUMNS = FORMS_OF_TEXT | FORM_JSON };

static unsigned form_of(const struct command *command, const struct options *options)
{
    struct span format = span_of(options->format);
    bool dash = operand_count(options) == 1 && strcmp(operand(options, 0), "-") == 0;
    unsigned form = span_is(format, "csv")                              ? FORM_CSV
                    : span_is(format, "json")                           ? FORM_JSON
                    : span_is(format, "html") || span_is(format, "svg") ? FORM_PAGE
                                                                        : FORM_TABLE;
    if (options->template)
        return FORM_TEMPLATE;
    if (dash && (command->bit == CMD_SIZE || options->fitted != NULL))
        return form | FORM_STREAM | (options->from == 1 ? FORM_RECORDS : 0);
    return command->bit & CMD_BUILD ? form | FORM_BUILD : form;
}

/* Options that not every form has a use for: one of these is needed. */
static const struct {
    const char *option;
    unsigned forms;
    const char *goes_with;
} uses[] = {
    {"from", FORM_STREAM, "a stream, `size -` or `compare - --fitted SIZE`"},
    {"skip-blank", FORM_STREAM, "a stream, `size -` or `compare - --fitted SIZE`"},
    {"column", FORM_RECORDS, "a stream of records, --from csv"},
    {"set", FORM_BUILD, "a build file, or designations instead of one"},
    {"each", FORM_BUILD, "a build file, or designations instead of one"},
    {"option", FORM_BUILD, "a build file, or designations instead of one"},
    {"wide", FORM_TABLE, "--format table or markdown"},
    {"no-header", FORMS_OF_TEXT, "--format table, csv or markdown"},
    {"decimal", FORMS_OF_TEXT | FORM_PAGE, "--format table, csv, markdown, html or svg"},
    {"columns", FORMS_OF_COLUMNS, "rows: --format table, csv, json or markdown"},
    {"bom", FORM_CSV | FORM_RECORDS, "--format csv; the other formats have no such mark"},
    {"units", FORMS_OF_COLUMNS | FORM_PAGE, "what is computed, and not the template"},
    {"format", FORMS_OF_COLUMNS | FORM_PAGE, "what is computed, and not the template"},
};

static bool is_taken(const struct command *command, const struct option_row *row)
{
    char takers[160] = "";
    if (row->commands & command->bit)
        return true;
    for (size_t i = 0; i < command_count; i++) {
        if (!(command_table[i].bit & row->commands))
            continue;
        strncat(takers, *takers ? ", " : "", sizeof takers - strlen(takers) - 1);
        strncat(takers, command_table[i].name, sizeof takers - strlen(takers) - 1);
    }
    diagnostics_plain("`%s` does not take --%s; it goes with %s", command->name, row->name, takers);
    return false;
}

bool options_fit(const struct command *command, const struct options *options)
{
    for (size_t i = 0; i < options->given_count; i++)
        if (!is_taken(command, options->given[i]))
            return false;
    unsigned form = form_of(command, options);
    for (size_t i = 0; i < sizeof uses / sizeof uses[0]; i++) {
        if ((form & uses[i].forms) || !options_given(options, uses[i].option))
            continue;
        diagnostics_plain("--%s goes with %s", uses[i].option, uses[i].goes_with);
        return false;
    }
    return true;
}
