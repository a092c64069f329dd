#include "cli/sink.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/diagnostics.h"

static bool cannot(const char *path, const char *what)
{
    diagnostics_plain("\"%s\" cannot be %s: %s", path, what, strerror(errno));
    return false;
}

/* The file that a symbolic link stands for, so that the link stays. NULL where it is not found:
 * the link itself would be replaced by a file. */
static const char *resolve(struct arena *arena, const char *path)
{
    char *real = realpath(path, NULL);
    if (real == NULL && errno == ENOMEM)
        arena_exhausted();
    if (real == NULL)
        return NULL;
    const char *copy = arena_copy(arena, span_of(real));
    free(real);
    return copy;
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

/* Signals that are ignored, as nohup has it, stay so. */
static void remove_at_end(void)
{
    static const int signals[] = {SIGHUP, SIGINT, SIGTERM};
    atexit(remove_unfinished);
    for (size_t i = 0; i < sizeof signals / sizeof signals[0]; i++) {
        struct sigaction action;
        if (sigaction(signals[i], NULL, &action) != 0 || action.sa_handler == SIG_IGN)
            continue;
        action = (struct sigaction){.sa_handler = end_by_signal, .sa_flags = (int)SA_RESETHAND};
        sigaction(signals[i], &action, NULL);
    }
}

static int open_temporary(struct arena *arena, struct sink *sink, mode_t mode)
{
    char *name = arena_format(arena, "%s.XXXXXX", sink->target);
    int descriptor = mkstemp(name);
    if (descriptor < 0)
        return -1;
    sink->temporary_path = unfinished = name;
    remove_at_end();
    fchmod(descriptor, mode);
    return descriptor;
}

bool sink_open(struct arena *arena, struct sink *sink, const char *path)
{
    sink->path = path;
    sink->target = sink->temporary_path = NULL;
    if (path == NULL) {
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
        sink->target = exists ? resolve(arena, path) : path;
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

int sink_terminal_width(const struct sink *sink)
{
    struct winsize size;
    if (!isatty(sink->out.descriptor))
        return 0;
    if (ioctl(sink->out.descriptor, TIOCGWINSZ, &size) != 0 || size.ws_col == 0)
        return 80;
    return size.ws_col;
}

size_t sink_page_width(const struct sink *sink)
{
    enum { PAGE_WIDTH = 100, PAGE_WIDTH_MIN = 60, PAGE_WIDTH_MAX = 140 };
    int terminal = sink_terminal_width(sink);
    if (terminal == 0)
        return PAGE_WIDTH;
    if (terminal < PAGE_WIDTH_MIN)
        return PAGE_WIDTH_MIN;
    return terminal > PAGE_WIDTH_MAX ? PAGE_WIDTH_MAX : (size_t)terminal;
}

void sink_set_colour(struct sink *sink, enum colour_choice colour)
{
    const char *none = getenv("NO_COLOR");
    sink->out.colour =
        colour == COLOUR_ALWAYS ||
        (colour == COLOUR_AUTO && (none == NULL || *none == '\0') && isatty(sink->out.descriptor));
}
