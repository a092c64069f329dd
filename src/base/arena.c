#include "base/arena.h"

#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/status.h"

enum { BLOCK_SIZE = 32 * 1024 };

struct arena_block {
    struct arena_block *next;
    size_t used, size;
    max_align_t data[];
};

_Noreturn void arena_exhausted(void)
{
    static const char message[] = "tyresum: error: there is not enough memory to go on.\n";
    ssize_t written = write(STDERR_FILENO, message, sizeof message - 1);
    (void)written;
    exit(EXIT_NOT_WRITTEN);
}

/* What is larger than a block has one of its own, which the system gives cleared: a page of it that
 * is never used costs nothing. */
static struct arena_block *new_block(struct arena *arena, size_t size)
{
    size_t capacity = size > BLOCK_SIZE ? size : BLOCK_SIZE;
    struct arena_block *block = NULL;
    if (capacity <= SIZE_MAX - sizeof *block)
        block = size > BLOCK_SIZE ? calloc(1, sizeof *block + capacity)
                                  : malloc(sizeof *block + capacity);
    if (block == NULL)
        arena_exhausted();
    block->used = 0;
    block->size = capacity;
    block->next = arena->blocks;
    arena->blocks = block;
    return block;
}

void *arena_allocate(struct arena *arena, size_t size)
{
    const size_t unit = sizeof(max_align_t);
    if (size > SIZE_MAX - unit)
        arena_exhausted();
    size = (size + unit - 1) / unit * unit;
    struct arena_block *block = arena->blocks;
    bool cleared = false;
    if (block == NULL || block->size - block->used < size) {
        block = new_block(arena, size);
        cleared = size > BLOCK_SIZE;
    }
    void *memory = (char *)block->data + block->used;
    block->used += size;
    return cleared ? memory : memset(memory, 0, size);
}

void *arena_allocate_array(struct arena *arena, size_t count, size_t size)
{
    if (size != 0 && count > SIZE_MAX / size)
        arena_exhausted();
    return arena_allocate(arena, count * size);
}

void *arena_grow(struct arena *arena, void *items, size_t count, size_t *capacity, size_t size)
{
    enum { FIRST_CAPACITY = 256 };
    if (count < *capacity)
        return items;
    *capacity = *capacity == 0 ? FIRST_CAPACITY : *capacity * 2;
    void *larger = arena_allocate_array(arena, *capacity, size);
    if (count > 0)
        memcpy(larger, items, count * size);
    return larger;
}

char *arena_copy(struct arena *arena, struct span text)
{
    char *copy = arena_allocate(arena, text.length + 1);
    if (text.length > 0)
        memcpy(copy, text.at, text.length);
    return copy;
}

char *arena_format(struct arena *arena, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    char *text = arena_format_with(arena, format, arguments);
    va_end(arguments);
    return text;
}

char *arena_format_with(struct arena *arena, const char *format, va_list arguments)
{
    va_list again;
    va_copy(again, arguments);
    int length = vsnprintf(NULL, 0, format, arguments);
    size_t size = length < 0 ? 1 : (size_t)length + 1;
    char *text = arena_allocate(arena, size);
    if (length >= 0)
        vsnprintf(text, size, format, again);
    va_end(again);
    return text;
}

void arena_reuse(struct arena *arena)
{
    struct arena_block *kept = arena->blocks;
    if (kept == NULL)
        return;
    struct arena more = {kept->next};
    arena_free(&more);
    kept->next = NULL;
    kept->used = 0;
}

void arena_free(struct arena *arena)
{
    struct arena_block *block = arena->blocks;
    while (block != NULL) {
        struct arena_block *next = block->next;
        free(block);
        block = next;
    }
    arena->blocks = NULL;
}
