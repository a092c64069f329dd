/* Completion for fish. */
#include <string.h>

#include "docgen/docgen.h"

static void put_quoted(struct outbuf *out, const char *text)
{
    outbuf_char(out, '\'');
    for (; *text != '\0'; text++) {
        if (*text == '\'' || *text == '\\')
            outbuf_char(out, '\\');
        outbuf_char(out, *text);
    }
    outbuf_char(out, '\'');
}

static void put_seen(struct outbuf *out, const char *commands)
{
    put_all(out, " -n '__fish_seen_subcommand_from ", commands, "'", NULL);
}

static const char *takers(struct arena *arena, const struct option_row *row)
{
    const char *list = "";
    for (size_t i = 0; i < command_count; i++)
        if (command_table[i].bit & row->commands)
            list = arena_format(arena, "%s%s%s", list, *list ? " " : "", command_table[i].name);
    return list;
}

static void put_option(struct arena *arena, struct outbuf *out, const struct option_row *row)
{
    if (strcmp(row->name, "columns") == 0 || strcmp(row->name, "format") == 0)
        return; /* each command has its own */
    put_all(out, "complete -c tyresum", NULL);
    if ((row->commands & CMD_ANY) != CMD_ANY)
        put_seen(out, takers(arena, row));
    put_all(out, " -l ", row->name, NULL);
    if (row->kind == OPTION_TEXTS)
        put_all(out, " -x -a '(__tyresum_paths)'", NULL);
    else if (strcmp(row->name, "option") == 0)
        put_all(out, " -x -a '(__tyresum_options)'", NULL);
    else if (row->choices != NULL)
        put_all(out, " -x -a '", joined(arena, row->choices, " "), "'", NULL);
    else if (row->kind != OPTION_FLAG)
        put_all(out, strcmp(row->name, "output") == 0 ? " -r -F" : " -x", NULL);
    put_all(out, " -d ", NULL);
    put_quoted(out, row->doc);
    put_all(out, "\n", NULL);
}

static void put_command(struct arena *arena, struct outbuf *out, const struct command *command)
{
    put_all(out, "complete -c tyresum -n __fish_use_subcommand -a ", command->name, " -d ", NULL);
    put_quoted(out, command->purpose);
    put_all(out, "\ncomplete -c tyresum", NULL);
    put_seen(out, command->name);
    put_all(out, " -l columns -x -a \"(__tyresum_list ", column_names(arena, command, " "),
            ")\" -d 'only these columns, in this order'\ncomplete -c tyresum", NULL);
    put_seen(out, command->name);
    char formats[FORMATS_SIZE];
    options_formats(command->bit, " ", formats);
    put_all(out, " -l format -x -a '", formats, "' -d 'what is written'\n", NULL);
    if (takes_file(command)) {
        put_all(out, "complete -c tyresum", NULL);
        put_seen(out, command->name);
        put_all(out, " -F\n", NULL);
    }
}

void write_fish_completion(struct arena *arena, struct outbuf *out)
{
    put_all(out,
            "# fish completion for tyresum. Made by src/docgen: do not edit.\n"
            "# The last word of a list with commas between.\n"
            "function __tyresum_list\n"
            "    set -l token (commandline -ct)\n"
            "    set -l before (string match -r '^(?:--columns=)?(.*,)' -- $token)[2]\n"
            "    printf '%s\\n' $before$argv\n"
            "end\n"
            "# The names that the build file on the line has for its options.\n"
            "function __tyresum_options\n"
            "    for file in (commandline -opc)\n"
            "        test -f $file && " LIST_OPTIONS "\n"
            "    end\n"
            "end\n"
            "function __tyresum_paths\n"
            "    string split -n ' ' '",
            NULL);
    put_key_paths(out);
    put_all(out, "'\nend\n\ncomplete -c tyresum -f\n", NULL);
    for (size_t i = 0; i < command_count; i++)
        put_command(arena, out, &command_table[i]);
    for (size_t i = 0; i < option_count; i++)
        put_option(arena, out, &option_table[i]);
    put_all(out, "complete -c tyresum", NULL);
    put_seen(out, "tables");
    put_all(out, " -a '", NULL);
    put_table_names(out);
    put_all(out, "'\n", NULL);
}
