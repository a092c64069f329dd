/* libFuzzer entry: any bytes as a build file, through the whole program. */
#include "build_property.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = fuzz_copy(data, size);
    const char *broken = build_broken(text, size);
    if (broken != NULL)
        fuzz_broken(broken, text, size);
    free(text);
    return 0;
}
