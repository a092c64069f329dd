#include "cli/help.h"

#include <string.h>

#include "cli/examples.h"
#include "build/keys.h"

enum { NAME_WIDTH = 22, KEY_WIDTH = 34, COLUMN_WIDTH = 58, COMMAND_WIDTH = 14, SCREEN_WIDTH = 80 };

static void put_padded(struct outbuf *out, const char *text, size_t used, size_t width)
{
    outbuf_text(out, text);
    for (used += strlen(text); used < width; used++)
        outbuf_char(out, ' ');
}

static void put_option(struct outbuf *out, const struct option_row *row, unsigned command)
{
    char formats[FORMATS_SIZE];
    outbuf_text(out, "  --");
    outbuf_text(out, row->name);
    size_t used = 4 + strlen(row->name);
    if (row->argument != NULL) {
        outbuf_char(out, ' ');
        used++;
    }
    put_padded(out, row->argument ? row->argument : "", used, NAME_WIDTH);
    outbuf_char(out, ' ');
    options_formats(command, ", ", formats);
    outbuf_text(out, strcmp(row->name, "format") == 0 ? formats : row->doc);
    outbuf_char(out, '\n');
}

static void put_options(struct outbuf *out, unsigned command)
{
    outbuf_text(out, "\nOptions\n");
    for (size_t i = 0; i < option_count; i++)
        if ((option_table[i].commands & command) && strcmp(option_table[i].name, "version") != 0)
            put_option(out, &option_table[i], command);
}

/* The names of all options, for a first look; `COMMAND --help` says what each does. */
static void put_option_names(struct outbuf *out)
{
    size_t position = 0;
    for (size_t i = 0; i < option_count; i++) {
        const struct option_row *row = &option_table[i];
        const char *argument = row->argument ? row->argument : "";
        size_t width = strlen(row->name) + 3 + (*argument ? strlen(argument) + 1 : 0);
        if (position == 0 || position + width >= SCREEN_WIDTH) {
            outbuf_text(out, position == 0 ? " " : "\n ");
            position = 2;
        }
        outbuf_text(out, " --");
        outbuf_text(out, row->name);
        outbuf_text(out, *argument ? " " : "");
        outbuf_text(out, argument);
        position += width;
    }
    outbuf_char(out, '\n');
}

void help_program(struct outbuf *out)
{
    outbuf_text(out, "tyresum COMMAND ARGUMENTS [OPTIONS] does the sums of a tyre change.\n\n");
    for (size_t i = 0; i < command_count; i++) {
        outbuf_text(out, "  ");
        put_padded(out, command_table[i].name, 2, COMMAND_WIDTH);
        outbuf_char(out, ' ');
        outbuf_text(out, command_table[i].purpose);
        outbuf_char(out, '\n');
    }
    outbuf_text(out, "\nOptions, explained by `tyresum COMMAND --help` and in tyresum(1):\n");
    put_option_names(out);
    for (size_t i = 0; i < example_count; i++) {
        if (!example_table[i].in_help)
            continue;
        outbuf_text(out, "  ");
        outbuf_text(out, example_table[i].line);
        outbuf_char(out, '\n');
    }
    outbuf_text(out, "Exit status: 0 computed, 1 a line unread, 2 input wrong, "
                     "3 a fail, 4 unwritten\n");
}

static void put_examples(struct outbuf *out, const struct command *command)
{
    outbuf_text(out, "\nExamples\n");
    for (size_t i = 0; i < example_count; i++) {
        if (strcmp(example_table[i].command, command->name) != 0)
            continue;
        outbuf_text(out, "  ");
        outbuf_text(out, example_table[i].line);
        outbuf_char(out, '\n');
    }
}

static void put_column(struct outbuf *out, const struct column *column)
{
    outbuf_text(out, "  ");
    outbuf_text(out, column->name);
    size_t used = 2 + strlen(column->name);
    if (column->name_us != NULL) {
        outbuf_text(out, ", ");
        outbuf_text(out, column->name_us);
        used += 2 + strlen(column->name_us);
    }
    put_padded(out, "", used, COLUMN_WIDTH);
    outbuf_char(out, ' ');
    outbuf_text(out, column->title);
    outbuf_char(out, '\n');
}

void help_columns(struct outbuf *out, const struct command *only)
{
    outbuf_text(out, "Columns of csv and json, and for --columns; a second name is in us units.\n");
    for (size_t i = 0; i < command_count; i++) {
        const struct command *command = &command_table[i];
        bool shown = only == NULL ? i == 0 || command->columns != command_table[i - 1].columns
                                  : command == only;
        if (!shown || *command->column_count == 0)
            continue;
        outbuf_char(out, '\n');
        outbuf_text(out, command->name);
        for (size_t j = i + 1;
             only == NULL && j < command_count && command_table[j].columns == command->columns;
             j++) {
            outbuf_text(out, ", ");
            outbuf_text(out, command_table[j].name);
        }
        outbuf_char(out, '\n');
        for (size_t j = 0; j < *command->column_count; j++)
            put_column(out, &command->columns[j]);
    }
}

/* The keys of a set that a command reads, each under its mapping. */
static void put_keys(struct outbuf *out, const struct key_set *set, unsigned use, size_t depth)
{
    for (size_t i = 0; i < set->count; i++) {
        const struct key *key = &set->keys[i];
        if (!(key->use & use))
            continue;
        for (size_t j = 0; j < depth; j++)
            outbuf_text(out, "  ");
        put_padded(out, key->name, 2 * depth, KEY_WIDTH);
        outbuf_char(out, ' ');
        outbuf_text(out, key->doc);
        outbuf_char(out, '\n');
        if (key->set != NULL)
            put_keys(out, key->set, use, depth + 1);
    }
}

void help_keys(struct outbuf *out, const struct command *only)
{
    outbuf_text(out, "Keys of the build file");
    if (only != NULL) {
        outbuf_text(out, " that `");
        outbuf_text(out, only->name);
        outbuf_text(out, only->keys == 0 ? "` reads: none.\n" : "` reads");
    }
    if (only != NULL && only->keys == 0)
        return;
    outbuf_text(out, "; with dots between, paths for --set, such as\n"
                     "suspension.front.lift or any ending of it that is alone.\n\n");
    put_keys(out, &build_file_keys, only == NULL ? USE_ALL : only->keys, 1);
}

void help_command(struct outbuf *out, const struct command *command)
{
    outbuf_text(out, "tyresum ");
    outbuf_text(out, command->name);
    outbuf_char(out, ' ');
    outbuf_text(out, command->arguments);
    outbuf_text(out, "\nGives ");
    outbuf_text(out, command->purpose);
    outbuf_text(out, ".\n");
    put_examples(out, command);
    put_options(out, command->bit);
    outbuf_text(out, "\nLonger lists: tyresum help ");
    outbuf_text(out, command->name);
    outbuf_text(out, command->keys != 0 ? " keys, tyresum help " : " columns\n");
    if (command->keys != 0) {
        outbuf_text(out, command->name);
        outbuf_text(out, " columns\n");
    }
}
