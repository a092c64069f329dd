/* tyresum: the sums of a tyre change. */
#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/arena.h"
#include "base/diagnostics.h"
#include "base/nearest.h"
#include "cli/commands.h"
#include "cli/help.h"
#include "cli/options_fit.h"
#include "cli/sink.h"
#include "config.h"

static const struct command *find_command(const char *name)
{
    const struct command *command = command_find(name);
    if (command != NULL)
        return command;
    struct nearest nearest = nearest_start(span_of(name));
    for (size_t i = 0; i < command_count; i++)
        nearest_try(&nearest, command_table[i].name);
    const char *near = nearest_found(&nearest);
    diagnostics_plain("there is no command \"%s\"; %s%s%s", name,
                      near ? "did you mean " : "`tyresum --help` lists them", near ? near : "",
                      near ? "?" : "");
    return NULL;
}

/* What stands behind `help`, or beside --help: a command, and which of its long lists. */
static enum exit_status write_help(struct arena *arena, const struct options *options)
{
    const struct command *command = NULL;
    bool keys = false, columns = false;
    for (size_t i = 0; i < options->operand_count; i++) {
        const char *word = options->operands[i];
        bool is_topic = strcmp(word, "keys") == 0 || strcmp(word, "columns") == 0;
        keys = keys || strcmp(word, "keys") == 0;
        columns = columns || strcmp(word, "columns") == 0;
        if (!is_topic && command == NULL && (command = find_command(word)) == NULL)
            return EXIT_INPUT_WRONG;
    }
    struct sink *sink = arena_allocate(arena, sizeof *sink);
    if (!sink_open(arena, sink, options->output))
        return EXIT_NOT_WRITTEN;
    if (options->version && !options->help)
        outbuf_text(&sink->out, "tyresum " PACKAGE_VERSION "\n");
    else if (keys)
        help_keys(&sink->out, command);
    else if (columns)
        help_columns(&sink->out, command);
    else if (command != NULL)
        help_command(&sink->out, command);
    else
        help_program(&sink->out);
    return sink_close(sink, true) ? EXIT_COMPUTED : EXIT_NOT_WRITTEN;
}

static bool takes_operands(const struct command *command, const struct options *options)
{
    size_t count = operand_count(options);
    if (count >= command->operands_min && count <= command->operands_max)
        return true;
    diagnostics_plain("`%s` takes %s; expected tyresum %s %s", command->name,
                      count < command->operands_min ? "more than that" : "fewer arguments",
                      command->name, command->arguments);
    return false;
}

static enum exit_status run(struct arena *arena, int argc, char **argv)
{
    struct options options;
    const char **operands = arena_allocate_array(arena, 3 * (size_t)argc, sizeof *operands);
    if (!options_parse(argc, argv, operands, &options))
        return EXIT_INPUT_WRONG;
    if (!sink_announce(options.output))
        return EXIT_NOT_WRITTEN;
    if (options.operand_count > 0 && strcmp(options.operands[0], "help") == 0) {
        options.operands++;
        options.operand_count--;
        options.help = true;
    }
    if (options.help || options.version)
        return write_help(arena, &options);
    if (options.operand_count == 0) {
        diagnostics_plain("no command is given; `tyresum --help` lists them");
        return EXIT_INPUT_WRONG;
    }
    const struct command *command = find_command(options.operands[0]);
    if (command == NULL)
        return EXIT_INPUT_WRONG;
    if (!options_format_given(&options, command->bit, command->name))
        return EXIT_INPUT_WRONG;
    bool csv = strcmp(options.format, "csv") == 0 ||
               (options.from == 1 && strcmp(options.format, "json") != 0);
    if (options.bom && !csv) {
        diagnostics_plain("--bom goes with --format csv; the other formats have no such mark");
        return EXIT_INPUT_WRONG;
    }
    if (!takes_operands(command, &options) || !options_fit(command, &options))
        return EXIT_INPUT_WRONG;
    return command->run(arena, command, &options);
}

/* A standard descriptor that is closed would be given to the next file that is opened: the program
 * would read its own output, or write messages into it. One is held that the wanted use fails on.
 */
static void hold_standard_descriptors(void)
{
    for (int i = STDIN_FILENO; i <= STDERR_FILENO; i++)
        if (fcntl(i, F_GETFD) < 0 && open("/dev/null", i == STDIN_FILENO ? O_WRONLY : O_RDONLY) < 0)
            return;
}

int main(int argc, char **argv)
{
    struct arena arena = ARENA_EMPTY;
    hold_standard_descriptors();
    signal(SIGPIPE, SIG_IGN); /* a closed pipe is met as a failed write */
    signal(SIGXFSZ, SIG_IGN); /* and so is a limit on the size of a file */
    enum exit_status status = run(&arena, argc, argv);
    arena_free(&arena);
    return status;
}
