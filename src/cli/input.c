#include "cli/input.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

#include "base/letters.h"
#include "base/nearest.h"
#include "cli/mistakes.h"
#include "report/measured_rules.h"
#include "yaml/build_file.h"
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

static bool read_path(struct arena *arena, const char *path, struct span *out)
{
    bool standard = strcmp(path, "-") == 0;
    int descriptor = standard ? STDIN_FILENO : open(path, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0) {
        diagnostics_plain("\"%s\" cannot be opened: %s", path, strerror(errno));
        hint_at_designation(path);
        return false;
    }
    char *buffer = arena_allocate(arena, TREE_BYTES_MAX + 2);
    size_t length;
    bool read_well = read_all(descriptor, buffer, &length);
    int reason = errno;
    if (!standard)
        close(descriptor);
    if (!read_well)
        diagnostics_plain("%s cannot be read: %s", input_name(path), strerror(reason));
    *out = (struct span){buffer, length};
    return read_well;
}

struct node *input_read_build_file(struct arena *arena, const char *path, struct specification *out)
{
    struct diagnostics diagnostics = {.arena = arena, .source_name = input_name(path)};
    struct span source;
    if (!read_path(arena, path, &source))
        return NULL;
    struct node *tree = build_file_read(arena, source, &diagnostics, out);
    if (measured_rules_check(out, &diagnostics) && tree != NULL)
        return tree;
    diagnostics_print(&diagnostics);
    return NULL;
}

void report_unknown_option(const struct specification *specification, const char *name)
{
    struct arena letters = ARENA_EMPTY;
    struct nearest nearest = nearest_start(span_of(name));
    const struct fitment_list *options = &specification->tyres.options;
    for (size_t i = 0; i < options->count; i++)
        nearest_try(&nearest, options->items[i].name);
    const char *near = nearest_found(&nearest);
    if (near != NULL)
        diagnostics_plain("the file has no option \"%s\"; did you mean \"%s\"?", name, near);
    else if (options->count == 0)
        diagnostics_plain("the file has no option \"%s\"; it names none", name);
    else
        diagnostics_plain("the file has no option \"%s\"; expected the name of one of its "
                          "options, or its letter, A to %s",
                          name, letters_of_number(&letters, options->count));
    arena_free(&letters);
}
