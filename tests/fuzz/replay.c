/* Linked to a fuzz target in place of libFuzzer: every input that is kept for it goes through it
 * once. A child does the work, so that an input that ends it is told by its name, and another child
 * goes on behind it. Last line: "count PASSED FAILED 0". */
#include "fuzz.h"
#include "seeds.h"

#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#if !defined FUZZ_TOP || !defined FUZZ_NAME
#error "FUZZ_TOP is the folder of the sources, FUZZ_NAME the target"
#endif

enum { SECONDS_MAX = 300 }; /* only to end what would never end */

/* Goes on from there; *at is the input in hand, and beyond the last when all are done. */
static _Noreturn void replay(const struct seeds *seeds, size_t *at)
{
    for (; *at < seeds->count; ++*at) {
        alarm(SECONDS_MAX);
        LLVMFuzzerTestOneInput(seeds->all[*at].bytes, seeds->all[*at].size);
    }
    exit(0);
}

static void told(const struct seeds *seeds, size_t at, int status)
{
    printf("FAIL fuzz_%s: ", FUZZ_NAME);
    if (at == seeds->count)
        printf("at its end, behind all inputs");
    else
        printf("input %s%s%s", seeds->all[at].name, seeds->all[at].broke != NULL ? ": " : "",
               seeds->all[at].broke != NULL ? seeds->all[at].broke : "");
    if (WIFSIGNALED(status))
        printf(" (signal %d)\n", WTERMSIG(status));
    else
        printf(" (exit %d)\n", WEXITSTATUS(status));
}

int main(int argc, char **argv)
{
    const char *path = argc > 1 ? argv[1] : FUZZ_TOP "/tests/fuzz/seeds/" FUZZ_NAME ".seeds";
    static struct seeds seeds; /* not lost where leaks are looked for */
    size_t failed = 0;
    seeds = seeds_read(path);
    size_t *at = mmap(NULL, sizeof *at, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
    if (at == MAP_FAILED) {
        perror("mmap");
        return 1;
    }
    for (*at = 0; *at < seeds.count; ++*at) {
        int status;
        fflush(stdout);
        pid_t child = fork();
        if (child == 0)
            replay(&seeds, at);
        if (child < 0 || waitpid(child, &status, 0) != child) {
            perror("fork");
            return 1;
        }
        if (status == 0 && *at == seeds.count)
            break;
        failed++;
        told(&seeds, *at, status);
    }
    printf("count %zu %zu 0\n", seeds.count - failed, failed);
    return seeds.count == 0 || failed > 0;
}
