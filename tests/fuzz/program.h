/* The program run within the fuzzer's own process: arguments and standard input in, exit status,
 * standard output and standard error out. The three streams are files in memory, so that the
 * whole way from reading to writing is run; the fuzzer's own standard error is put back after. */
#ifndef TYRESUM_TESTS_FUZZ_PROGRAM_H
#define TYRESUM_TESTS_FUZZ_PROGRAM_H

#include <fcntl.h>
#include <stddef.h>
#include <sys/mman.h>
#include <unistd.h>

#include "cli/commands.h"
#include "fuzz.h"

struct run {
    int status;
    char *out, *err; /* each with a NUL behind; to be freed by program_forget */
    size_t out_length, err_length;
};

enum { PROGRAM_ARGUMENTS_MAX = 16, PROGRAM_OUTPUT_MAX = 8 * 1024 * 1024 };

static int program_file[3] = {-1, -1, -1}; /* stand in for the descriptors 0 to 2 */
static int program_saved[3];

static inline void program_failed(const char *what)
{
    perror(what);
    exit(1);
}

static inline void program_open(void)
{
    for (int i = 0; i < 3; i++) {
        char name[64];
        snprintf(name, sizeof name, "/tyresum-fuzz-%ld-%d", (long)getpid(), i);
        program_file[i] = shm_open(name, O_RDWR | O_CREAT | O_EXCL, 0600);
        program_saved[i] = dup(i);
        if (program_file[i] < 0 || program_saved[i] < 0)
            program_failed("shm_open");
        shm_unlink(name);
    }
}

/* Large pieces of an arena come from here: AddressSanitizer would mark and release the shadow of
 * megabytes in every run, which takes most of the time. Each ends at a page that cannot be
 * touched, and is given back to the system, so that it is zero again, for the next run. Where
 * FUZZ_LARGE is defined the program's calls lead here, by the linker's --wrap=arena_allocate. */
#ifdef FUZZ_LARGE
enum { PROGRAM_LARGE = 256 * 1024, PROGRAM_LARGE_MAX = 8 * 1024 * 1024, PROGRAM_LARGE_COUNT = 4 };
static char *program_large[PROGRAM_LARGE_COUNT];
static size_t program_large_used;

void *__real_arena_allocate(struct arena *arena, size_t size);
void *__wrap_arena_allocate(struct arena *arena, size_t size);

void *__wrap_arena_allocate(struct arena *arena, size_t size)
{
    if (size < PROGRAM_LARGE || size > PROGRAM_LARGE_MAX ||
        program_large_used == PROGRAM_LARGE_COUNT)
        return __real_arena_allocate(arena, size);
    char **piece = &program_large[program_large_used++];
    if (*piece == NULL) {
        size_t page = (size_t)sysconf(_SC_PAGESIZE);
        *piece = mmap(NULL, PROGRAM_LARGE_MAX + page, PROT_READ | PROT_WRITE,
                      MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
        if (*piece == MAP_FAILED || mprotect(*piece + PROGRAM_LARGE_MAX, page, PROT_NONE) != 0)
            program_failed("mmap");
    }
    size_t rounded =
        (size + _Alignof(max_align_t) - 1) / _Alignof(max_align_t) * _Alignof(max_align_t);
    return *piece + PROGRAM_LARGE_MAX - rounded;
}

static inline void program_give_back_large(void)
{
    for (; program_large_used > 0; program_large_used--)
        if (madvise(program_large[program_large_used - 1], PROGRAM_LARGE_MAX, MADV_DONTNEED) != 0)
            program_failed("madvise");
}
#else
static inline void program_give_back_large(void)
{
}
#endif

static inline void program_begin(const char *input, size_t size)
{
    fflush(stderr);
    if (program_file[0] < 0)
        program_open();
    /* What was written before is overwritten: pages that are given back have to be got again. */
    for (int i = 0; i < 3; i++)
        if (lseek(program_file[i], 0, SEEK_SET) != 0)
            program_failed("lseek");
    if (ftruncate(program_file[0], (off_t)size) != 0)
        program_failed("ftruncate");
    if (pwrite(program_file[0], input, size, 0) != (ssize_t)size)
        program_failed("pwrite");
    for (int i = 0; i < 3; i++)
        if (dup2(program_file[i], i) < 0)
            program_failed("dup2");
}

static inline char *program_text(int descriptor, size_t *length)
{
    off_t size = lseek(descriptor, 0, SEEK_CUR);
    if (size < 0 || size > PROGRAM_OUTPUT_MAX)
        fuzz_broken("the output has no end", "", 0);
    char *text = malloc((size_t)size + 1);
    if (text == NULL || pread(descriptor, text, (size_t)size, 0) != size)
        program_failed("pread");
    text[size] = '\0';
    *length = (size_t)size;
    return text;
}

static inline void program_end(struct run *run)
{
    fflush(stderr);
    for (int i = 0; i < 3; i++)
        if (dup2(program_saved[i], i) < 0)
            program_failed("dup2");
    run->out = program_text(program_file[1], &run->out_length);
    run->err = program_text(program_file[2], &run->err_length);
}

/* As src/main.c does it, with arguments that are known to be right. */
static inline void program_run(const char *const *arguments, const char *input, size_t size,
                               struct run *run)
{
    const char *argv[PROGRAM_ARGUMENTS_MAX + 1] = {"tyresum"}, *operands[3 * PROGRAM_ARGUMENTS_MAX];
    struct options options;
    struct arena arena = ARENA_EMPTY;
    int argc = 1;
    for (; arguments[argc - 1] != NULL && argc < PROGRAM_ARGUMENTS_MAX; argc++)
        argv[argc] = arguments[argc - 1];
    if (!options_parse(argc, (char **)argv, operands, &options))
        fuzz_broken("these options should have been read", arguments[0], strlen(arguments[0]));
    const struct command *command = command_find(options.operands[0]);
    program_begin(input, size);
    run->status = command->run(&arena, command, &options);
    program_end(run);
    arena_free(&arena);
    program_give_back_large();
}

static inline void program_forget(struct run *run)
{
    free(run->out);
    free(run->err);
}

#endif
