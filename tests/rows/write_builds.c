/* write_builds SEED COUNT: random build files as the properties draw them, SEED.yaml and so on. */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>

#include "random_build.h"

int main(int argc, char **argv)
{
    static struct build_text build;
    if (argc != 3) {
        fputs("usage: write_builds SEED COUNT\n", stderr);
        return 2;
    }
    uint64_t seed = strtoull(argv[1], NULL, 10), end = seed + strtoull(argv[2], NULL, 10);
    for (; seed < end; seed++) {
        char name[32];
        snprintf(name, sizeof name, "%" PRIu64 ".yaml", seed);
        random_build(seed, &as_drawn, &build);
        FILE *out = fopen(name, "w");
        if (out == NULL)
            return 1;
        size_t written = fwrite(build.text, 1, build.length, out);
        if (fclose(out) != 0 || written != build.length)
            return 1;
    }
    return 0;
}
