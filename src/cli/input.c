#include "cli/input.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

#include "base/letters.h"
#include "base/nearest.h"
#include "base/utf8.h"
#include "cli/sink.h"
#include "yaml/tree.h"

const char *input_name(const char *path)
{
    return strcmp(path, "-") == 0 ? "standard input" : path;
}

ssize_t input_read(int descriptor, void *buffer, size_t size)
{
    for (;;) {
        ssize_t got = read(descriptor, buffer, size);
        if (got >= 0 || (errno != EINTR && errno != EAGAIN && errno != EWOULDBLOCK))
            return got;
        struct pollfd wanted = {.fd = descriptor, .events = POLLIN};
        if (errno != EINTR)
            (void)poll(&wanted, 1, -1);
    }
}

/* Reads at most one byte more than a build file may have, so that too much is noticed. */
static bool read_all(int descriptor, char *buffer, size_t *length)
{
    *length = 0;
    while (*length <= TREE_BYTES_MAX) {
        ssize_t got = input_read(descriptor, buffer + *length, TREE_BYTES_MAX + 1 - *length);
        if (got < 0)
            return false;
        if (got == 0)
            return true;
        *length += (size_t)got;
    }
    return true;
}

const char *input_read_path(struct arena *arena, const char *path, struct span *out)
{
    bool standard = strcmp(path, "-") == 0;
    int descriptor = standard ? STDIN_FILENO : open(path, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0)
        return arena_format(arena, "\"%s\" cannot be opened: %s", path, strerror(errno));
    char *buffer = arena_allocate(arena, TREE_BYTES_MAX + 2);
    size_t length = 0;
    bool replaced = sink_replaces(descriptor);
    bool read_well = !replaced && read_all(descriptor, buffer, &length);
    int reason = errno;
    if (!standard)
        close(descriptor);
    *out = (struct span){buffer, length};
    if (replaced)
        return arena_format(arena,
                            "--output would replace %s, which is read; expected another file",
                            input_name(path));
    if (!read_well)
        return arena_format(arena, "%s cannot be read: %s", input_name(path), strerror(reason));
    const char *encoding = other_encoding(*out);
    return encoding == NULL ? NULL
                            : arena_format(arena, OTHER_ENCODING, input_name(path), encoding);
}

void report_unknown_option(const struct specification *specification, const char *name)
{
    struct arena letters = ARENA_EMPTY;
    struct nearest nearest = nearest_start(span_of(name));
    const struct fitment_list *options = &specification->tyres.options;
    for (size_t i = 0; i < options->count; i++)
        nearest_try(&nearest, options->items[i].name);
    const char *near = nearest_found(&nearest);
    size_t lettered = number_of_letters(span_of(name), options->count);
    if (lettered > 0)
        diagnostics_plain("\"%s\" is the name of one option and the letter of \"%s\"; expected the "
                          "letter of the one that is meant, and better another name",
                          name, options->items[lettered - 1].name);
    else if (near != NULL)
        diagnostics_plain("the file has no option \"%s\"; did you mean \"%s\"?", name, near);
    else if (options->count == 0)
        diagnostics_plain("the file has no option \"%s\"; it names none", name);
    else
        diagnostics_plain("the file has no option \"%s\"; expected the name of one of its "
                          "options, or its letter, A to %s",
                          name, letters_of_number(&letters, options->count));
    arena_free(&letters);
}
