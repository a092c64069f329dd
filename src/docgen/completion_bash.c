/* Completion for bash: one function, loaded by bash-completion or sourced by hand. */
#include <string.h>

#include "docgen/docgen.h"

static void put_commands(struct outbuf *out)
{
    put_all(out, "    local commands='", NULL);
    for (size_t i = 0; i < command_count; i++)
        put_all(out, i > 0 ? " " : "", command_table[i].name, NULL);
    put_all(out, "'\n", NULL);
}

/* What stands behind an option that takes a value. */
static void put_values(struct arena *arena, struct outbuf *out)
{
    put_all(out, "    case $previous in\n", NULL);
    for (size_t i = 0; i < option_count; i++) {
        const struct option_row *row = &option_table[i];
        if (strcmp(row->name, "format") == 0)
            put_all(out, "    --format)\n        _tyresum_words \"$formats\"\n        return ;;\n",
                    NULL);
        else if (row->kind == OPTION_TEXTS)
            put_all(out, "    --", row->name, ")\n        _tyresum_paths\n        return ;;\n",
                    NULL);
        else if (strcmp(row->name, "option") == 0)
            put_all(out, "    --option)\n        _tyresum_options\n        return ;;\n", NULL);
        else if (row->choices != NULL)
            put_all(out, "    --", row->name, ")\n        _tyresum_words '",
                    joined(arena, row->choices, " "), "'\n        return ;;\n", NULL);
        else if (strcmp(row->name, "output") == 0)
            put_all(out, "    --output)\n        _tyresum_files\n        return ;;\n", NULL);
        else if (strcmp(row->name, "columns") == 0)
            put_all(out, "    --columns)\n        _tyresum_list \"$columns\"\n        return ;;\n",
                    NULL);
        else if (row->kind != OPTION_FLAG)
            put_all(out, "    --", row->name, ")\n        return ;;\n", NULL);
    }
    put_all(out, "    esac\n", NULL);
}

static void put_command_case(struct arena *arena, struct outbuf *out, const struct command *command)
{
    put_all(out, "    ", command->name, ")\n        options='", NULL);
    for (size_t i = 0, count = 0; i < option_count; i++)
        if (option_table[i].commands & command->bit)
            put_all(out, count++ > 0 ? " --" : "--", option_table[i].name, NULL);
    char formats[FORMATS_SIZE];
    options_formats(command->bit, " ", formats);
    put_all(out, "'\n        columns='", column_names(arena, command, " "), "'\n        formats='",
            formats, "'\n", NULL);
    if (command->bit == CMD_TABLES) {
        put_all(out, "        operands='", NULL);
        put_table_names(out);
        put_all(out, "'\n", NULL);
    }
    if (takes_file(command))
        put_all(out, "        files=yes\n", NULL);
    put_all(out, "        ;;\n", NULL);
}

static const char functions[] =
    "_tyresum_words() {\n"
    "    COMPREPLY=($(compgen -W \"$1\" -- \"$current\"))\n"
    "}\n\n"
    "_tyresum_files() {\n"
    "    compopt -o filenames 2>/dev/null\n"
    "    local IFS=$'\\n'\n"
    "    COMPREPLY=($(compgen -f -- \"$current\"))\n"
    "}\n\n"
    "# The last word of a list with commas between.\n"
    "_tyresum_list() {\n"
    "    local before=\n"
    "    case $current in *,*) before=${current%,*}, ;; esac\n"
    "    COMPREPLY=($(compgen -P \"$before\" -W \"$1\" -- \"${current##*,}\"))\n"
    "    compopt -o nospace 2>/dev/null\n"
    "}\n\n"
    "# The names that the build file on the line has for its options.\n"
    "_tyresum_options() {\n"
    "    local file IFS=$'\\n'\n"
    "    for file in \"${COMP_WORDS[@]}\"; do\n"
    "        [ ! -f \"$file\" ] || COMPREPLY=($(compgen -W \"$(" LIST_OPTIONS
    ")\" -- \"$current\"))\n"
    "    done\n"
    "}\n\n";

static void put_paths_function(struct outbuf *out)
{
    put_all(out, "_tyresum_paths() {\n    compopt -o nospace 2>/dev/null\n    _tyresum_words '",
            NULL);
    put_key_paths(out);
    put_all(out, "'\n}\n\n", NULL);
}

void write_bash_completion(struct arena *arena, struct outbuf *out)
{
    put_all(out, "# bash completion for tyresum. Made by src/docgen: do not edit.\n",
            "# shellcheck shell=bash disable=SC2207 # words have no blanks\n\n", functions, NULL);
    put_paths_function(out);
    put_all(out,
            "_tyresum() {\n"
            "    local current=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD - 1]}\n"
            "    local command='' options='--help --version' columns='' operands='' files='' word "
            "formats=''\n",
            NULL);
    put_commands(out);
    put_all(out,
            "    # Bash splits --format=csv at the equals sign.\n"
            "    [ \"$current\" != = ] || current=\n"
            "    [ \"$previous\" != = ] || previous=${COMP_WORDS[COMP_CWORD - 2]}\n",
            NULL);
    put_all(out,
            "    for word in \"${COMP_WORDS[@]:1:COMP_CWORD-1}\"; do\n"
            "        case \" $commands \" in *\" $word \"*) command=$word && break ;; esac\n"
            "    done\n    case $command in\n    '') operands=$commands ;;\n",
            NULL);
    for (size_t i = 0; i < command_count; i++)
        put_command_case(arena, out, &command_table[i]);
    put_all(out, "    esac\n", NULL);
    put_values(arena, out);
    put_all(out,
            "    case $current in\n"
            "    -*) _tyresum_words \"$options\" ;;\n"
            "    *)\n"
            "        [ -z \"$files\" ] || _tyresum_files\n"
            "        [ -n \"$files\" ] || _tyresum_words \"$operands\"\n"
            "        ;;\n"
            "    esac\n"
            "} && complete -F _tyresum tyresum\n",
            NULL);
}
