/* Completion for zsh: a function of the file's name, found through fpath. */
#include <string.h>

#include "docgen/docgen.h"

/* Within single quotes, in a specification whose own marks are colons and brackets. */
static void put_escaped(struct outbuf *out, const char *text)
{
    for (; *text != '\0'; text++) {
        if (*text == '\'') {
            outbuf_text(out, "'\\''");
            continue;
        }
        if (strchr(":[]\\", *text) != NULL)
            outbuf_char(out, '\\');
        outbuf_char(out, *text);
    }
}

static void put_option(struct arena *arena, struct outbuf *out, const struct option_row *row,
                       const struct command *command)
{
    bool flag = row->kind == OPTION_FLAG;
    put_all(out, " \\\n            '", row->kind == OPTION_TEXTS ? "*" : "", "--", row->name,
            flag ? "[" : "=[", NULL);
    put_escaped(out, row->doc);
    put_all(out, "]", NULL);
    if (!flag)
        put_all(out, ":", row->argument, ":", NULL);
    char formats[FORMATS_SIZE];
    options_formats(command->bit, " ", formats);
    if (row->kind == OPTION_TEXTS)
        put_all(out, "_tyresum_paths", NULL);
    else if (strcmp(row->name, "option") == 0)
        put_all(out, "_tyresum_options", NULL);
    else if (strcmp(row->name, "format") == 0)
        put_all(out, "(", formats, ")", NULL);
    else if (row->choices != NULL)
        put_all(out, "(", joined(arena, row->choices, " "), ")", NULL);
    else if (strcmp(row->name, "output") == 0)
        put_all(out, "_files", NULL);
    else if (strcmp(row->name, "columns") == 0)
        put_all(out, "_sequence -s , compadd - ", column_names(arena, command, " "), NULL);
    put_all(out, "'", NULL);
}

static void put_operands(struct outbuf *out, const struct command *command)
{
    if (command->bit == CMD_TABLES) {
        put_all(out, " \\\n            '*:table:(", NULL);
        put_table_names(out);
        put_all(out, ")'", NULL);
    } else if (takes_file(command)) {
        put_all(out, " \\\n            '*:build file:_files'", NULL);
    } else {
        put_all(out, " \\\n            '*:designation: '", NULL);
    }
}

void write_zsh_completion(struct arena *arena, struct outbuf *out)
{
    put_all(out,
            "#compdef tyresum\n# Made by src/docgen: do not edit.\n\n"
            "# The names that the build file on the line has for its options.\n"
            "_tyresum_options() {\n    local file\n    for file in $words; do\n"
            "        [[ ! -f $file ]] || compadd -- ${(f)\"$(" LIST_OPTIONS ")\"}\n"
            "    done\n}\n\n_tyresum_paths() {\n    compadd -S '' -- ",
            NULL);
    put_key_paths(out);
    put_all(out,
            "\n}\n\n_tyresum() {\n"
            "    local curcontext=$curcontext state line\n    local -a commands\n    commands=(\n",
            NULL);
    for (size_t i = 0; i < command_count; i++) {
        put_all(out, "        '", command_table[i].name, ":", NULL);
        put_escaped(out, command_table[i].purpose);
        put_all(out, "'\n", NULL);
    }
    put_all(out,
            "    )\n    _arguments -C '1: :->command' '*:: :->rest' \\\n"
            "        '(- *)--help[this help]' '(- *)--version[the version]'\n"
            "    case $state in\n    command) _describe -t commands command commands ;;\n"
            "    rest)\n        case $line[1] in\n",
            NULL);
    for (size_t i = 0; i < command_count; i++) {
        const struct command *command = &command_table[i];
        put_all(out, "        ", command->name, ")\n            _arguments", NULL);
        for (size_t j = 0; j < option_count; j++)
            if (option_table[j].commands & command->bit)
                put_option(arena, out, &option_table[j], command);
        put_operands(out, command);
        put_all(out, "\n            ;;\n", NULL);
    }
    put_all(out, "        esac\n        ;;\n    esac\n}\n\n_tyresum \"$@\"\n", NULL);
}
