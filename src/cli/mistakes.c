#include "cli/mistakes.h"

#include <string.h>
#include <unistd.h>

#include "base/arena.h"
#include "base/diagnostics.h"
#include "size/designation_loose.h"

static bool is_designation(const char *text)
{
    struct designation designation;
    struct designation_error error;
    char taken[TAKEN_SIZE];
    return designation_read(span_of(text), &designation, &error, taken);
}

void hint_at_arguments(const struct options *options)
{
    struct arena arena = ARENA_EMPTY;
    for (size_t i = 1; i < options->operand_count; i++) {
        const char *first = options->operands[i];
        const char *joined = first;
        for (size_t j = i + 1; j < options->operand_count && j < i + 4; j++) {
            joined = arena_format(&arena, "%s %s", joined, options->operands[j]);
            if (is_designation(joined) && !is_designation(options->operands[j]))
                diagnostics_plain("a designation with a blank in it needs quotes; expected \"%s\"",
                                  joined);
        }
        if (!is_designation(first) && access(first, R_OK) == 0)
            diagnostics_plain(
                "\"%s\" is a file; expected a size designation here (`compare`, `sheet` "
                "and the parts read a build file)",
                first);
    }
    arena_free(&arena);
}

void hint_at_designation(const char *path)
{
    if (is_designation(path))
        diagnostics_plain(
            "\"%s\" is a size designation, where a build file is read; expected `size` "
            "with it, or `compare` with two of them",
            path);
}
