#include "cli/csv_heading.h"

#include <stdint.h>

#include "base/diagnostics.h"
#include "base/nearest.h"

struct csv_heading csv_heading_read(struct arena *arena, struct span record,
                                    const struct csv_shape *shape)
{
    struct csv_heading heading = {
        *shape, arena_allocate_array(arena, shape->fields, sizeof *heading.names)};
    char *name = arena_allocate(arena, record.length + shape->fields + 1);
    for (size_t i = 0; i < shape->fields; i++, name += strlen(name) + 1) {
        csv_next_field(&record, shape, name);
        heading.names[i] = name;
    }
    return heading;
}

bool csv_heading_is_text(struct span record, const char *from)
{
    bool text = memchr(record.at, '\0', record.length) == NULL;
    if (!text)
        diagnostics_plain("the heading of %s holds a NUL byte (\\x00); expected text", from);
    return text;
}

/* Case and blanks are passed over. */
static bool alike(struct span name, const char *other)
{
    size_t i = 0;
    for (;; i++, other++) {
        while (i < name.length && is_blank(name.at[i]))
            i++;
        other += strspn(other, " \t");
        if (i == name.length || *other == '\0')
            return i == name.length && *other == '\0';
        if (upper_case(name.at[i]) != upper_case(*other))
            return false;
    }
}

enum heading_found csv_heading_find(const struct csv_heading *heading, struct span name,
                                    size_t *index)
{
    for (int loose = 0; loose < 2; loose++) {
        size_t count = 0;
        for (size_t i = 0; i < heading->shape.fields; i++)
            if (loose ? alike(name, heading->names[i]) : span_is(name, heading->names[i])) {
                *index = i;
                count++;
            }
        if (count > 0)
            return count == 1 ? HEADING_FOUND : HEADING_TWICE;
    }
    return HEADING_MISSING;
}

const char *csv_heading_near(struct arena *arena, const struct csv_heading *heading,
                             struct span name, const char *otherwise)
{
    struct nearest nearest = nearest_start(name);
    for (size_t i = 0; i < heading->shape.fields; i++)
        nearest_try(&nearest, heading->names[i]);
    const char *near = nearest_found(&nearest);
    return near == NULL ? otherwise : arena_format(arena, "did you mean \"%s\"?", near);
}

const char *csv_heading_own(struct arena *arena, const struct csv_heading *heading,
                            const char *name)
{
    const char *own = name;
    for (size_t i = 0; i < heading->shape.fields; i++)
        if (alike(span_of(own), heading->names[i])) {
            own = arena_format(arena, "tyresum_%s", own);
            i = SIZE_MAX; /* that may be taken too */
        }
    return own;
}

void csv_heading_tell_own(const char *name, const char *own)
{
    if (strcmp(name, own) != 0)
        tell("tyresum: the list has a column \"%s\" of its own: ours is \"%s\"", name, own);
}
