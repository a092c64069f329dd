/* every [OPTION...] SHIM CALL ERROR PROGRAM ARGUMENT...: lets each single CALL of the program fail
 * once with ERROR, a run for each, through the shim (shim.c names the calls), and sees that the
 * run ends as it should and leaves nothing behind. Works in a folder that has a folder `place`,
 * whose one file, `kept`, the program may be told to replace.
 *   -i FILE    standard input
 *   -n COUNT   at most so many of the calls, spread over all of them
 *   -x STATUS  exit status that is expected (4)
 *   -m TEXT    what the one line on standard error must hold; "" for silence
 *   -s         standard output may hold whole lines of what is printed without a fault
 *   -p         standard output may hold any beginning of it, as after a full disk
 *   -t         a run may also end just as it does without a fault
 * Prints a line for each failure, and "count PASSED FAILED 0". */
#define _XOPEN_SOURCE 700
#include <dirent.h>
#include <fcntl.h>
#include <signal.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

enum { RULE_SIZE = 64, FAILURES_SHOWN = 3 }; /* RULE_SIZE as in shim.c */

struct text {
    char *at;
    size_t length;
};

struct run {
    int status; /* as waitpid gives it */
    struct text out, err, kept;
    size_t files; /* in place */
};

struct trial {
    const char *input, *message, *shim, *call, *error;
    unsigned long places;
    int status;
    bool whole_lines, beginning, tolerant;
    char **command;
};

static const char kept_path[] = "place/kept";
static const struct text old = {"old\n", 4};

static void die(const char *what)
{
    perror(what);
    exit(2);
}

static struct text read_whole(const char *path)
{
    struct text text = {NULL, 0};
    FILE *file = fopen(path, "rb");
    if (file == NULL)
        return text;
    size_t room = 0;
    do {
        room += 65536;
        text.at = realloc(text.at, room + 1);
        if (text.at == NULL)
            die("realloc");
        text.length += fread(text.at + text.length, 1, room - text.length, file);
    } while (text.length == room);
    fclose(file);
    text.at[text.length] = '\0';
    return text;
}

static bool is_same(struct text a, struct text b)
{
    return a.length == b.length && (a.length == 0 || memcmp(a.at, b.at, a.length) == 0);
}

static bool begins(struct text whole, struct text part)
{
    return part.length <= whole.length && memcmp(whole.at, part.at, part.length) == 0;
}

static bool is_entry(const struct dirent *entry)
{
    return strcmp(entry->d_name, ".") != 0 && strcmp(entry->d_name, "..") != 0;
}

static size_t count_files(void)
{
    size_t count = 0;
    DIR *place = opendir("place");
    if (place == NULL)
        die("place");
    for (struct dirent *entry; (entry = readdir(place)) != NULL;)
        count += is_entry(entry);
    closedir(place);
    return count;
}

/* Leaves only `kept` there, with its old text. */
static void tidy_place(void)
{
    DIR *place = opendir("place");
    if (place == NULL)
        die("place");
    for (struct dirent *entry; (entry = readdir(place)) != NULL;) {
        char path[512];
        snprintf(path, sizeof path, "place/%s", entry->d_name);
        if (is_entry(entry) && unlink(path) != 0)
            die(path);
    }
    closedir(place);
    FILE *kept = fopen(kept_path, "w");
    if (kept == NULL || fputs(old.at, kept) < 0 || fclose(kept) != 0)
        die(kept_path);
}

/* The program, loaded with the shim and waiting for a rule for its next run. */
struct server {
    int to, from;
    pid_t process;
};

static struct server start(const struct trial *trial)
{
    int rules[2], statuses[2];
    char descriptors[32];
    if (pipe(rules) != 0 || pipe(statuses) != 0)
        die("pipe");
    snprintf(descriptors, sizeof descriptors, "%d,%d", rules[0], statuses[1]);
    pid_t child = fork();
    if (child < 0)
        die("fork");
    if (child == 0) {
        close(rules[1]);
        close(statuses[0]);
        setenv("LD_PRELOAD", trial->shim, 1);
        setenv("LD_BIND_NOW", "1", 1); /* once here, and not in each run */
        setenv("INJECT_SERVE", descriptors, 1);
        if (trial->input != NULL)
            setenv("INJECT_INPUT", trial->input, 1);
        execv(trial->command[0], trial->command);
        die(trial->command[0]);
    }
    close(rules[0]);
    close(statuses[1]);
    return (struct server){rules[1], statuses[0], child};
}

/* One run; the rule is empty for one without a fault, whose calls are counted. */
static struct run run_once(const struct server *server, const char *rule)
{
    char record[RULE_SIZE] = "";
    struct run run;
    strncpy(record, rule, sizeof record - 1);
    if (write(server->to, record, sizeof record) != (ssize_t)sizeof record ||
        read(server->from, &run.status, sizeof run.status) != (ssize_t)sizeof run.status) {
        fprintf(stderr, "the program does not answer: is the shim loaded?\n");
        exit(2);
    }
    run.out = read_whole("out");
    run.err = read_whole("err");
    run.kept = read_whole(kept_path);
    run.files = count_files();
    if (run.files != 1 || !is_same(run.kept, old))
        tidy_place();
    return run;
}

static void stop(const struct server *server)
{
    close(server->to);
    close(server->from);
    waitpid(server->process, NULL, 0);
}

static void forget(struct run *run)
{
    free(run->out.at);
    free(run->err.at);
    free(run->kept.at);
}

static unsigned long count_of(const char *call)
{
    char name[32];
    unsigned long number, found = 0;
    FILE *counts = fopen("counts", "r");
    while (counts != NULL && fscanf(counts, "%31s %lu", name, &number) == 2)
        if (strcmp(name, call) == 0)
            found = number;
    if (counts != NULL)
        fclose(counts);
    return found;
}

/* One line, and below it at most the line that it points into, with its caret. */
static bool is_one_fault(struct text text)
{
    const char *end = text.length > 0 ? strchr(text.at, '\n') : NULL;
    while (end != NULL && strncmp(end, "\n    ", 5) == 0)
        end = strchr(end + 1, '\n');
    return end != NULL && end == text.at + text.length - 1;
}

static const char *wrong_output(const struct trial *trial, const struct run *whole,
                                const struct run *run)
{
    struct text out = run->out;
    if (out.length == 0)
        return NULL;
    if (!trial->whole_lines && !trial->beginning)
        return "something stands on standard output";
    if (!begins(whole->out, out))
        return "standard output is no beginning of the right one";
    if (!trial->whole_lines && out.length == whole->out.length)
        return "standard output looks whole";
    if (trial->whole_lines && out.at[out.length - 1] != '\n')
        return "standard output ends in the middle of a line";
    return NULL;
}

/* What is wrong with a run that met a fault; NULL if nothing is. */
static const char *wrong(const struct trial *trial, const struct run *whole, const struct run *run)
{
    if (!WIFEXITED(run->status))
        return WTERMSIG(run->status) == SIGALRM ? "it did not end" : "it was ended by a signal";
    if (trial->tolerant && run->status == whole->status && is_same(run->out, whole->out) &&
        is_same(run->err, whole->err) && is_same(run->kept, whole->kept) && run->files == 1)
        return NULL;
    if (WEXITSTATUS(run->status) != trial->status)
        return "the exit status is another";
    if (run->files != 1)
        return "a file was left beside the output";
    if (!is_same(run->kept, old))
        return "the old file did not stay";
    if (*trial->message == '\0')
        return run->err.length > 0 ? "it was not silent" : wrong_output(trial, whole, run);
    if (!is_one_fault(run->err) || strstr(run->err.at, trial->message) == NULL)
        return "the message is not the one line expected";
    return wrong_output(trial, whole, run);
}

static void tell(const struct trial *trial, const char *rule, const struct run *run,
                 const char *what)
{
    printf("FAIL %s (exit %d): INJECT=%s LD_PRELOAD=%s", what,
           WIFEXITED(run->status) ? WEXITSTATUS(run->status) : -WTERMSIG(run->status), rule,
           trial->shim);
    for (char **word = trial->command; *word != NULL; word++)
        printf(" '%s'", *word);
    printf("%s%s\n", trial->input ? " <" : "", trial->input ? trial->input : "");
    if (run->err.length > 0)
        printf("    %.300s\n", run->err.at);
}

static int try_all(const struct trial *trial)
{
    unlink("counts");
    tidy_place();
    struct server server = start(trial);
    struct run whole = run_once(&server, "");
    unsigned long count = count_of(trial->call), passed = 0, failed = 0;
    if (!WIFEXITED(whole.status) || WEXITSTATUS(whole.status) > 3 || count == 0) {
        tell(trial, "", &whole, count == 0 ? "no such call was made" : "it fails by itself");
        failed++;
        count = 0;
    }
    unsigned long places = trial->places > 0 && trial->places < count ? trial->places : count;
    for (unsigned long i = 0; i < places; i++) {
        char rule[RULE_SIZE];
        /* The first, the last, and evenly between. */
        unsigned long nth = places == 1 ? 1 : 1 + i * (count - 1) / (places - 1);
        snprintf(rule, sizeof rule, "%s:%lu:%s", trial->call, nth, trial->error);
        struct run run = run_once(&server, rule);
        const char *what = wrong(trial, &whole, &run);
        if (what == NULL)
            passed++;
        else if (failed++ < FAILURES_SHOWN)
            tell(trial, rule, &run, what);
        forget(&run);
    }
    if (failed > FAILURES_SHOWN)
        printf("    and %lu more of these\n", failed - FAILURES_SHOWN);
    forget(&whole);
    stop(&server);
    printf("count %lu %lu 0\n", passed, failed);
    return failed > 0;
}

int main(int argc, char **argv)
{
    struct trial trial = {.message = "", .status = 4};
    for (int option; (option = getopt(argc, argv, "+i:n:x:m:spt")) != -1;) {
        if (option == 'i')
            trial.input = optarg;
        else if (option == 'n')
            trial.places = strtoul(optarg, NULL, 10);
        else if (option == 'x')
            trial.status = atoi(optarg);
        else if (option == 'm')
            trial.message = optarg;
        else if (option == 's')
            trial.whole_lines = true;
        else if (option == 'p')
            trial.beginning = true;
        else if (option == 't')
            trial.tolerant = true;
        else
            return 2;
    }
    if (argc - optind < 4)
        return 2;
    trial.shim = argv[optind];
    trial.call = argv[optind + 1];
    trial.error = argv[optind + 2];
    trial.command = argv + optind + 3;
    return try_all(&trial);
}
