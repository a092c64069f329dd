/* libFuzzer entry: any bytes are read as a size designation and must keep the property. */
#include "fuzz.h"

#include "designation_property.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = fuzz_copy(data, size);
    const char *broken = property_broken(text, size);
    if (broken != NULL)
        fuzz_broken(broken, text, size);
    free(text);
    return 0;
}
