/* What every libFuzzer entry here needs: its prototype, and a way to stop with words. */
#ifndef TYRESUM_TESTS_FUZZ_H
#define TYRESUM_TESTS_FUZZ_H

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* A copy of just that size, so that reading beyond it is found; to be freed. */
static inline char *fuzz_copy(const uint8_t *data, size_t size)
{
    char *copy = malloc(size > 0 ? size : 1);
    if (copy == NULL)
        exit(0);
    if (size > 0)
        memcpy(copy, data, size);
    return copy;
}

/* Says what is broken and stops, so that libFuzzer keeps the input. */
static inline void fuzz_broken(const char *what, const char *text, size_t size)
{
    printf("BROKEN %s: \"%.*s\"\n", what, (int)size, text); /* -close_fd_mask=2 shuts the other */
    fflush(stdout);
    abort();
}

#endif
