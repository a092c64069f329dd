/* drive COMMANDS NUMBERS OUT [BASE]: runs the program many times without starting it anew.
 * COMMANDS holds, for each command in the order of their numbers, a line of \036 and its number and
 * a line an argument; NUMBERS the numbers of those to run, a line each. Standard output goes to
 * OUT/NUMBER.json: of its rows only those that are not so in BASE/NUMBER.json, and no file where
 * there are none or the status is not 0. OUT/statuses has a line of number, exit status and first
 * line of complaint for each. */
#include <fcntl.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <unistd.h>

#include "spoil.h"

int program_main(int argc, char **argv); /* tyresum's own */

enum {
    LINE_SIZE = 4096,
    ARGUMENTS_MAX = 64,
    NUMBERS_MAX = 100000,
    SECONDS_MAX = 5,
    TEXT_MAX = 1 << 20
};

static char *arguments[ARGUMENTS_MAX + 1];
static int argument_count;
static char wanted[NUMBERS_MAX];
static const char *out, *base;
static int statuses;
static int *begun; /* which command runs now, shared with the child */

static void give_up(const char *what)
{
    perror(what);
    exit(1);
}

static FILE *opened(const char *path)
{
    FILE *file = fopen(path, "r");
    if (!file)
        give_up(path);
    return file;
}

/* A file's lines, in one array; the program writes a row a line. */
struct lines {
    char *text;
    char **line;
    size_t count;
};

static struct lines lines_of(const char *path)
{
    struct lines lines = {NULL, NULL, 0};
    FILE *file = opened(path);
    size_t size = 0, read;
    lines.text = malloc(TEXT_MAX);
    lines.line = malloc(sizeof *lines.line * TEXT_MAX / 2);
    if (!lines.text || !lines.line)
        give_up(path);
    while ((read = fread(lines.text + size, 1, TEXT_MAX - 1 - size, file)) > 0)
        size += read;
    fclose(file);
    lines.text[size] = '\0';
    for (char *next = strtok(lines.text, "\n"); next; next = strtok(NULL, "\n"))
        lines.line[lines.count++] = next;
    return lines;
}

static void free_lines(struct lines *lines)
{
    free(lines->text);
    free(lines->line);
}

static void write_rows(const char *path, const struct lines *now, const struct lines *before)
{
    FILE *file = fopen(path, "w");
    const char *between = "[\n";
    if (!file)
        give_up(path);
    for (size_t i = 1; i + 1 < now->count; i++)
        if (now->count != before->count || strcmp(now->line[i], before->line[i]) != 0) {
            size_t length = strlen(now->line[i]);
            length -= now->line[i][length - 1] == ',';
            fprintf(file, "%s%.*s", between, (int)length, now->line[i]);
            between = ",\n";
        }
    fprintf(file, "%s]\n", between[0] == '[' ? "[" : "\n");
    fclose(file);
}

/* Leaves only the rows that are not as before; false where all are. */
static bool keep_changed_rows(const char *path, const char *path_before)
{
    struct lines now = lines_of(path), before = lines_of(path_before);
    bool changed = now.count != before.count;
    for (size_t i = 0; i < now.count && !changed; i++)
        changed = strcmp(now.line[i], before.line[i]) != 0;
    if (changed)
        write_rows(path, &now, &before);
    free_lines(&now);
    free_lines(&before);
    return changed;
}

/* SPOIL_REACHED is a directory here. */
static void say_what_is_reached(int number)
{
    char path[LINE_SIZE];
    const char *directory = getenv("SPOIL_REACHED");
    if (directory && snprintf(path, sizeof path, "%s/%d", directory, number) < LINE_SIZE) {
        spoil_reached_to(path);
        spoil_watch_tables();
    }
}

static void to_file(const char *path, int descriptor)
{
    int file = open(path, O_WRONLY | O_CREAT | O_TRUNC, 0666);
    if (file < 0 || dup2(file, descriptor) < 0)
        give_up(path);
    close(file);
}

/* A spoilt function may never come back. Counts the processor's seconds; 0: no end. */
static void end_after(int seconds)
{
    setitimer(ITIMER_PROF, &(struct itimerval){.it_value.tv_sec = seconds}, NULL);
}

/* Runs one command in this process; its status goes into the file of statuses. */
static void run(int number)
{
    char output[LINE_SIZE], errors[LINE_SIZE], before[LINE_SIZE], complaint[LINE_SIZE] = "";
    snprintf(output, sizeof output, "%s/%d.json", out, number);
    snprintf(errors, sizeof errors, "%s/err", out);
    to_file(output, STDOUT_FILENO);
    to_file(errors, STDERR_FILENO);
    say_what_is_reached(number);
    end_after(SECONDS_MAX);
    int status = program_main(argument_count, arguments);
    end_after(0);
    fflush(NULL);
    spoil_forget();
    FILE *file = opened(errors);
    if (fgets(complaint, sizeof complaint, file))
        complaint[strcspn(complaint, "\n")] = '\0';
    fclose(file);
    snprintf(before, sizeof before, "%s/%d.json", base ? base : "", number);
    if (status != 0 || (base && !keep_changed_rows(output, before)))
        unlink(output);
    dprintf(statuses, "%d\037%d\037%s\n", number, status, complaint);
}

static void add_argument(const char *text)
{
    if (argument_count == ARGUMENTS_MAX || !(arguments[argument_count++] = strdup(text)))
        give_up("too many arguments");
    arguments[argument_count] = NULL;
}

static int number_of(const char *line)
{
    int number = atoi(line);
    if (number <= 0 || number >= NUMBERS_MAX)
        give_up(line);
    return number;
}

static void run_if_wanted(int number)
{
    if (number > 0 && wanted[number]) {
        wanted[number] = 0;
        *begun = number;
        run(number);
        *begun = 0;
    }
    while (argument_count > 0)
        free(arguments[--argument_count]);
}

static void run_all(const char *commands)
{
    char line[LINE_SIZE];
    int number = 0;
    FILE *file = opened(commands);
    while (fgets(line, sizeof line, file)) {
        line[strcspn(line, "\n")] = '\0';
        if (line[0] != '\036') {
            add_argument(line);
            continue;
        }
        run_if_wanted(number);
        number = number_of(line + 1);
        add_argument("tyresum");
    }
    run_if_wanted(number);
    _exit(0);
}

/* A command that dies takes the child with it: the next child goes on behind it. */
static int last_of_a_child(const char *commands)
{
    int ended;
    pid_t pid = fork();
    if (pid == 0)
        run_all(commands);
    if (pid < 0 || waitpid(pid, &ended, 0) != pid)
        give_up("fork");
    int died_at = *begun;
    *begun = 0;
    if (died_at > 0) {
        char output[LINE_SIZE];
        snprintf(output, sizeof output, "%s/%d.json", out, died_at);
        unlink(output);
        dprintf(statuses, "%d\037%d\037died\n", died_at,
                WIFSIGNALED(ended) ? 128 + WTERMSIG(ended) : WEXITSTATUS(ended));
    }
    return died_at;
}

int main(int argc, char **argv)
{
    char line[LINE_SIZE];
    int died_at;
    if (argc < 4)
        give_up("drive COMMANDS NUMBERS OUT [BASE]");
    out = argv[3];
    base = argv[4];
    FILE *file = opened(argv[2]);
    while (fgets(line, sizeof line, file))
        wanted[number_of(line)] = 1;
    fclose(file);
    snprintf(line, sizeof line, "%s/statuses", out);
    statuses = open(line, O_WRONLY | O_CREAT | O_TRUNC | O_APPEND, 0666);
    begun = mmap(NULL, sizeof *begun, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
    if (statuses < 0 || begun == MAP_FAILED || !freopen("/dev/null", "r", stdin))
        give_up(line);
    *begun = 0;
    while ((died_at = last_of_a_child(argv[1])) > 0)
        for (int i = 1; i <= died_at; i++)
            wanted[i] = 0;
    return 0;
}
