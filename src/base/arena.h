/* Memory that is given back all at once. What a run keeps (the tree of a build file, the
 * specification, the rows) lives in one arena, so that no part has to free its own. */
#ifndef TYRESUM_BASE_ARENA_H
#define TYRESUM_BASE_ARENA_H

#include <stdarg.h>
#include <stddef.h>

#include "base/span.h"

struct arena_block;

struct arena {
    struct arena_block *blocks;
};

#define ARENA_EMPTY ((struct arena){NULL})

/* Ends the program with one message and status 4 (EXIT_NOT_WRITTEN), since no result can be written
 * without memory. What atexit was told to clear away is cleared away. */
_Noreturn void arena_exhausted(void);

/* Zeroed memory, aligned for any type. Never NULL: see arena_exhausted. */
void *arena_allocate(struct arena *arena, size_t size);
void *arena_allocate_array(struct arena *arena, size_t count, size_t size);
/* Room for one more item of a growing list: the same items, or a copy of twice the capacity. */
void *arena_grow(struct arena *arena, void *items, size_t count, size_t *capacity, size_t size);
char *arena_copy(struct arena *arena, struct span text); /* with a NUL behind */
char *arena_format(struct arena *arena, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
char *arena_format_with(struct arena *arena, const char *format, va_list arguments)
    __attribute__((format(printf, 2, 0)));
/* Gives back what it holds but for one block, kept for what comes next. */
void arena_reuse(struct arena *arena);
void arena_free(struct arena *arena);

#endif
