/* Eight bytes of a text at a time, for what is looked for in all of them at once. */
#ifndef TYRESUM_BASE_EIGHT_H
#define TYRESUM_BASE_EIGHT_H

#include <stdint.h>
#include <string.h>

/* The byte in each of eight. */
#define EIGHT(byte) (UINT64_C(0x0101010101010101) * (unsigned char)(byte))

static inline uint64_t eight_at(const char *at)
{
    uint64_t bytes;
    memcpy(&bytes, at, sizeof bytes);
    return bytes;
}

/* In the highest bit of each byte of ASCII: whether it is that byte, or below one up to 0x80. A
 * byte that is sets, by what it borrows, that of others too; a byte that is not ASCII has it set in
 * the bytes themselves. */
static inline uint64_t ascii_below(uint64_t bytes, char limit)
{
    return bytes - EIGHT(limit);
}
static inline uint64_t ascii_is(uint64_t bytes, char byte)
{
    return (bytes ^ EIGHT(byte)) - EIGHT(1);
}

#endif
