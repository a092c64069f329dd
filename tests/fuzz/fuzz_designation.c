/* libFuzzer entry: any bytes are read as a size designation and must keep the property. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

#include "designation_property.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    /* An allocation of the exact size, so that reading beyond the text is found. */
    char *text = malloc(size > 0 ? size : 1);
    if (text == NULL)
        return 0;
    if (size > 0)
        memcpy(text, data, size);
    const char *broken = property_broken(text, size);
    if (broken != NULL) {
        fprintf(stderr, "%s: \"%.*s\"\n", broken, (int)size, text);
        abort();
    }
    free(text);
    return 0;
}
