#include "cli/sink.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/diagnostics.h"

enum { PAGE_WIDTH = 100 };

static bool cannot(const char *path, const char *what)
{
    diagnostics_plain("\"%s\" cannot be %s: %s", path, what, strerror(errno));
    return false;
}

const char *path_beside(struct arena *arena, const char *from, const char *path)
{
    const char *slash = strrchr(from, '/');
    if (path[0] == '/' || slash == NULL)
        return path;
    return arena_format(arena, "%.*s%s", (int)(slash + 1 - from), from, path);
}

/* The file that a symbolic link stands for, whether there is one yet or not, so that the link
 * stays. NULL where that cannot be told. */
static const char *resolve(struct arena *arena, const char *path)
{
    enum { LINKS_MAX = 40 };
    char *name = arena_allocate(arena, PATH_MAX);
    for (int i = 0; i < LINKS_MAX; i++) {
        ssize_t length = readlink(path, name, PATH_MAX - 1);
        if (length < 0) /* no link, or nothing yet */
            return errno == EINVAL || errno == ENOENT ? path : NULL;
        name[length] = '\0';
        path = path_beside(arena, path, arena_copy(arena, span_of(name)));
    }
    errno = ELOOP;
    return NULL;
}

/* The file that --output names, where there is one: it may be what is read. */
static struct stat standing;
static bool stands;

bool sink_announce(const char *path)
{
    bool named = path != NULL && strcmp(path, "-") != 0,
         exists = named && stat(path, &standing) == 0;
    stands = exists && S_ISREG(standing.st_mode);
    return !named || exists || errno == ENOENT || cannot(path, "opened");
}

bool sink_stands(void)
{
    return stands;
}

bool sink_replaces(int descriptor)
{
    struct stat status;
    return stands && fstat(descriptor, &status) == 0 && status.st_dev == standing.st_dev &&
           status.st_ino == standing.st_ino;
}

bool sink_would_replace(int descriptor, const char *name)
{
    if (!sink_replaces(descriptor))
        return false;
    diagnostics_plain("--output would replace %s, which is read; expected another file", name);
    return true;
}

/* The temporary file while there is one: a program that ends early takes it along. */
static const char *volatile unfinished;

static void remove_unfinished(void)
{
    if (unfinished != NULL)
        unlink(unfinished);
}

/* The action was reset to the default, so that the signal then ends the program. */
static void end_by_signal(int number)
{
    remove_unfinished();
    raise(number);
}

static const int ending[] = {SIGHUP,  SIGINT,  SIGQUIT, SIGTERM,   SIGALRM,
                             SIGUSR1, SIGUSR2, SIGXCPU, SIGVTALRM, SIGPROF};
enum { ENDING_COUNT = sizeof ending / sizeof ending[0] };

/* Signals that are ignored, as nohup has it, stay so. */
static void remove_at_end(void)
{
    atexit(remove_unfinished);
    for (size_t i = 0; i < ENDING_COUNT; i++) {
        struct sigaction action;
        if (sigaction(ending[i], NULL, &action) != 0 || action.sa_handler == SIG_IGN)
            continue;
        action = (struct sigaction){.sa_handler = end_by_signal, .sa_flags = (int)SA_RESETHAND};
        sigaction(ending[i], &action, NULL);
    }
}

/* Its name is short, so that there is room for it wherever the target's has room. No signal comes
 * between its making and its being known. */
static int open_temporary(struct arena *arena, struct sink *sink, mode_t mode)
{
    char *name = arena_copy(arena, span_of(path_beside(arena, sink->target, ".tyresum.XXXXXX")));
    sigset_t held, before;
    sigemptyset(&held);
    for (size_t i = 0; i < ENDING_COUNT; i++)
        sigaddset(&held, ending[i]);
    remove_at_end();
    sigprocmask(SIG_BLOCK, &held, &before);
    int descriptor = mkstemp(name);
    if (descriptor >= 0)
        sink->temporary_path = unfinished = name;
    sigprocmask(SIG_SETMASK, &before, NULL);
    if (descriptor >= 0)
        fchmod(descriptor, mode);
    return descriptor;
}

bool sink_open(struct arena *arena, struct sink *sink, const char *path)
{
    sink->path = path;
    sink->target = sink->temporary_path = NULL;
    if (path == NULL || strcmp(path, "-") == 0) {
        sink->path = NULL;
        outbuf_open(&sink->out, STDOUT_FILENO);
        return true;
    }
    struct stat status;
    bool exists = stat(path, &status) == 0;
    if (!exists && errno != ENOENT)
        return cannot(path, "opened");
    int descriptor;
    if (exists && !S_ISREG(status.st_mode)) {
        descriptor = open(path, O_WRONLY | O_CLOEXEC);
    } else {
        mode_t mask = umask(0);
        umask(mask);
        sink->target = resolve(arena, path);
        if (sink->target == NULL)
            return cannot(path, "opened");
        if (exists && access(sink->target, W_OK) != 0)
            return cannot(path, "written");
        descriptor = open_temporary(arena, sink, exists ? status.st_mode & 07777 : 0666 & ~mask);
    }
    if (descriptor < 0)
        return cannot(path, "written");
    outbuf_open(&sink->out, descriptor);
    return true;
}

bool sink_close(struct sink *sink, bool keep)
{
    if (!keep && !sink->out.split) /* else rows that are begun are ended */
        sink->out.used = 0;
    bool written = outbuf_flush(&sink->out);
    const char *name = sink->path == NULL ? "standard output" : sink->path;
    if (sink->out.descriptor != STDOUT_FILENO && close(sink->out.descriptor) != 0 && written) {
        sink->out.error = errno;
        written = false;
    }
    if (!written && sink->out.error != EPIPE)
        diagnostics_plain("%s could not be written: %s", name, strerror(sink->out.error));
    if (sink->temporary_path == NULL)
        return written;
    bool replaced = written && keep && rename(sink->temporary_path, sink->target) == 0;
    if (written && keep && !replaced)
        written = cannot(sink->path, "replaced");
    if (!replaced)
        unlink(sink->temporary_path);
    unfinished = NULL;
    return written;
}

bool sink_is_terminal(const struct sink *sink)
{
    return sink->out.terminal;
}

/* Columns where no terminal says how many it has: what COLUMNS says, or a page. */
static int usual_width(int otherwise)
{
    const char *given = getenv("COLUMNS");
    size_t digits = given == NULL ? 0 : strspn(given, "0123456789");
    long width = digits > 0 && digits < 5 && given[digits] == '\0' ? strtol(given, NULL, 10) : 0;
    return width > 0 ? (int)width : otherwise;
}

int sink_width(const struct sink *sink)
{
    struct winsize size;
    if (!sink_is_terminal(sink))
        return usual_width(PAGE_WIDTH);
    if (ioctl(sink->out.descriptor, TIOCGWINSZ, &size) != 0 || size.ws_col == 0)
        return usual_width(80);
    return size.ws_col;
}

size_t sink_page_width(const struct sink *sink)
{
    enum { PAGE_WIDTH_MIN = 50, PAGE_WIDTH_MAX = 140 };
    int width = sink_width(sink);
    if (width < PAGE_WIDTH_MIN)
        return PAGE_WIDTH_MIN;
    return width > PAGE_WIDTH_MAX ? PAGE_WIDTH_MAX : (size_t)width;
}

void sink_set_colour(struct sink *sink, enum colour_choice colour)
{
    const char *none = getenv("NO_COLOR");
    sink->out.colour =
        colour == COLOUR_ALWAYS ||
        (colour == COLOUR_AUTO && (none == NULL || *none == '\0') && sink->out.terminal);
}
