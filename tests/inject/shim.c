/* Loaded before the C library (LD_PRELOAD) by tests/inject/run.sh: calls fail as INJECT says, a
 * list of CALL:WHEN:WHAT parted by blanks.
 *   CALL  alloc (malloc, calloc, realloc alike), read, write, open, close, rename, mkstemp,
 *         readlink, access, stat
 *   WHEN  N the Nth call only, *N every Nth call
 *   WHAT  an error such as ENOSPC, or SHORT: one byte is read or written, and no more
 * Writes to standard error do not count: they tell of the fault.
 *
 * With INJECT_SERVE=IN,OUT (two descriptors) the program is loaded once and run many times, since
 * loading takes longer than most runs: every record of RULE_SIZE bytes from IN is a list as above,
 * or empty for a run that is counted (lines "CALL N" in the file `counts`). Its run, from main on,
 * has standard input from INJECT_INPUT, `out` and `err` in place of the others; its status, as
 * waitpid gives it, goes to OUT. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

enum { RULE_SIZE = 64, SECONDS_MAX = 300 };

enum call { ALLOC, READ, WRITE, OPEN, CLOSE, RENAME, MKSTEMP, READLINK, ACCESS, STAT, CALL_COUNT };

static const char *const call_names[CALL_COUNT] = {
    "alloc", "read", "write", "open", "close", "rename", "mkstemp", "readlink", "access", "stat"};

static const struct {
    const char *name;
    int number;
} errors[] = {{"ENOMEM", ENOMEM}, {"ENOSPC", ENOSPC}, {"EIO", EIO},       {"EINTR", EINTR},
              {"EAGAIN", EAGAIN}, {"EPIPE", EPIPE},   {"EACCES", EACCES}, {"EDQUOT", EDQUOT},
              {"EROFS", EROFS},   {"EMFILE", EMFILE}, {"SHORT", -1}};

struct rule {
    unsigned long nth, every; /* 0: no such rule */
    int error;                /* -1: short */
};

/* Two rules a call, so that short and interrupted calls can be mixed. */
static struct rule rules[CALL_COUNT][2];
static unsigned long counts[CALL_COUNT];
static int ready, counting;

static int error_of(const char *text, size_t length)
{
    for (size_t i = 0; i < sizeof errors / sizeof errors[0]; i++)
        if (strlen(errors[i].name) == length && strncmp(errors[i].name, text, length) == 0)
            return errors[i].number;
    return 0;
}

/* A rule that is not understood would let a test pass that tested nothing. */
static void not_understood(const char *text)
{
    static const char message[] = "INJECT is not understood: ";
    ssize_t done = write(STDERR_FILENO, message, sizeof message - 1);
    done = write(STDERR_FILENO, text, strlen(text));
    (void)done;
    _exit(125);
}

static const char *take_rule(const char *text)
{
    size_t name = strcspn(text, ":");
    enum call call = 0;
    while (call < CALL_COUNT &&
           (strlen(call_names[call]) != name || strncmp(call_names[call], text, name) != 0))
        call++;
    if (call == CALL_COUNT || text[name] != ':')
        not_understood(text);
    struct rule rule = {0, 0, 0};
    const char *at = text + name + 1;
    int every = *at == '*';
    char *end;
    unsigned long number = strtoul(at + every, &end, 10);
    if (number == 0 || *end != ':')
        not_understood(text);
    *(every ? &rule.every : &rule.nth) = number;
    size_t length = strcspn(end + 1, " ");
    rule.error = error_of(end + 1, length);
    if (rule.error == 0)
        not_understood(text);
    struct rule *place = rules[call];
    if (place->error != 0)
        place++;
    *place = rule;
    return end + 1 + length;
}

static void take_rules(const char *text)
{
    while (*text != '\0')
        text = *text == ' ' ? text + 1 : take_rule(text);
}

static void redirect(const char *path, int flags, int to)
{
    int descriptor = open(path, flags, 0666);
    if (descriptor < 0 || dup2(descriptor, to) < 0) {
        perror(path);
        _exit(125);
    }
    close(descriptor);
}

/* Returns in each child, that is in each run; the parent stays here until the driver is done. */
static void serve(int in, int out)
{
    char record[RULE_SIZE];
    while (read(in, record, sizeof record) == (ssize_t)sizeof record) {
        int status;
        pid_t child = fork();
        if (child == 0) {
            const char *input = getenv("INJECT_INPUT");
            close(in);
            close(out);
            redirect(input ? input : "/dev/null", O_RDONLY, STDIN_FILENO);
            redirect("out", O_WRONLY | O_CREAT | O_TRUNC, STDOUT_FILENO);
            redirect("err", O_WRONLY | O_CREAT | O_TRUNC, STDERR_FILENO);
            alarm(SECONDS_MAX);
            take_rules(record);
            counting = *record == '\0';
            return;
        }
        if (child < 0 || waitpid(child, &status, 0) != child ||
            write(out, &status, sizeof status) != (ssize_t)sizeof status)
            _exit(125);
    }
    _exit(0);
}

__attribute__((constructor)) static void begin(void)
{
    const char *rules = getenv("INJECT"), *descriptors = getenv("INJECT_SERVE");
    int in, out;
    if (rules != NULL)
        take_rules(rules);
    if (descriptors != NULL && sscanf(descriptors, "%d,%d", &in, &out) == 2)
        serve(in, out);
    memset(counts, 0, sizeof counts); /* what the loader did is not the program's */
    ready = 1;
}

__attribute__((destructor)) static void end(void)
{
    ready = 0;
    FILE *file = counting ? fopen("counts", "w") : NULL;
    if (file == NULL)
        return;
    for (int i = 0; i < CALL_COUNT; i++)
        fprintf(file, "%s %lu\n", call_names[i], counts[i]);
    fclose(file);
}

/* 0: go on; -1: do it short; otherwise the error to give. */
static int fault(enum call call)
{
    if (!ready)
        return 0;
    unsigned long count = ++counts[call];
    for (int i = 0; i < 2; i++) {
        const struct rule *rule = &rules[call][i];
        if (rule->error == 0)
            continue;
        if (count == rule->nth || (rule->every > 0 && count % rule->every == 0))
            return rule->error;
    }
    return 0;
}

static int fails(enum call call)
{
    int error = fault(call);
    if (error > 0)
        errno = error;
    return error > 0;
}

/* ISO C has no cast from an object's to a function's address. */
static void find(void *function, const char *name)
{
    void *found = dlsym(RTLD_NEXT, name);
    memcpy(function, &found, sizeof found);
}

/* What dlsym itself asks for while the real allocator is not known yet. Never given back. */
static char early[4096];
static size_t early_used;

static void *early_allocate(size_t size)
{
    size = (size + 15) / 16 * 16;
    if (size > sizeof early - early_used)
        return NULL;
    early_used += size;
    return early + early_used - size;
}

static int is_early(const void *memory)
{
    const char *at = memory;
    return at >= early && at < early + sizeof early;
}

void *malloc(size_t size)
{
    static void *(*real)(size_t);
    static int finding;
    if (fails(ALLOC))
        return NULL;
    if (real == NULL && finding++ == 0)
        find(&real, "malloc");
    return real == NULL ? early_allocate(size) : real(size);
}

void *calloc(size_t count, size_t size)
{
    static void *(*real)(size_t, size_t);
    static int finding;
    if (fails(ALLOC))
        return NULL;
    if (real == NULL && finding++ == 0)
        find(&real, "calloc");
    return real == NULL ? early_allocate(count * size) : real(count, size);
}

void *realloc(void *memory, size_t size)
{
    static void *(*real)(void *, size_t);
    if (fails(ALLOC))
        return NULL;
    if (real == NULL)
        find(&real, "realloc");
    return real(memory, size);
}

void free(void *memory)
{
    static void (*real)(void *);
    if (memory == NULL || is_early(memory))
        return;
    if (real == NULL)
        find(&real, "free");
    real(memory);
}

ssize_t read(int descriptor, void *buffer, size_t size)
{
    static ssize_t (*real)(int, void *, size_t);
    if (real == NULL)
        find(&real, "read");
    int error = fault(READ);
    if (error > 0) {
        errno = error;
        return -1;
    }
    return real(descriptor, buffer, error < 0 && size > 1 ? 1 : size);
}

/* What read becomes where the compiler checks sizes (_FORTIFY_SOURCE). */
ssize_t __read_chk(int descriptor, void *buffer, size_t size, size_t room);
ssize_t __read_chk(int descriptor, void *buffer, size_t size, size_t room)
{
    if (size > room)
        abort();
    return read(descriptor, buffer, size);
}

ssize_t write(int descriptor, const void *buffer, size_t size)
{
    static ssize_t (*real)(int, const void *, size_t);
    if (real == NULL)
        find(&real, "write");
    int error = descriptor == STDERR_FILENO ? 0 : fault(WRITE);
    if (error > 0) {
        errno = error;
        return -1;
    }
    return real(descriptor, buffer, error < 0 && size > 1 ? 1 : size);
}

int open(const char *path, int flags, ...)
{
    static int (*real)(const char *, int, ...);
    va_list arguments;
    va_start(arguments, flags);
    int mode = va_arg(arguments, int); /* of no meaning where nothing is made */
    va_end(arguments);
    if (real == NULL)
        find(&real, "open");
    return fails(OPEN) ? -1 : real(path, flags, mode);
}

/* The descriptor is gone even where closing it failed, as on Linux. */
int close(int descriptor)
{
    static int (*real)(int);
    if (real == NULL)
        find(&real, "close");
    int error = fault(CLOSE), result = real(descriptor);
    if (error <= 0)
        return result;
    errno = error;
    return -1;
}

int rename(const char *from, const char *to)
{
    static int (*real)(const char *, const char *);
    if (real == NULL)
        find(&real, "rename");
    return fails(RENAME) ? -1 : real(from, to);
}

int mkstemp(char *name)
{
    static int (*real)(char *);
    if (real == NULL)
        find(&real, "mkstemp");
    return fails(MKSTEMP) ? -1 : real(name);
}

ssize_t readlink(const char *path, char *buffer, size_t size)
{
    static ssize_t (*real)(const char *, char *, size_t);
    if (real == NULL)
        find(&real, "readlink");
    return fails(READLINK) ? -1 : real(path, buffer, size);
}

int access(const char *path, int mode)
{
    static int (*real)(const char *, int);
    if (real == NULL)
        find(&real, "access");
    return fails(ACCESS) ? -1 : real(path, mode);
}

int stat(const char *restrict path, struct stat *restrict out)
{
    static int (*real)(const char *, struct stat *);
    if (real == NULL)
        find(&real, "stat");
    return fails(STAT) ? -1 : real(path, out);
}
