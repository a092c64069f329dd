/* A buffer before a file descriptor. The first failed write sticks: everything after it is
 * dropped, and the program ends with the status for "could not be written". */
#ifndef TYRESUM_OUTPUT_OUTBUF_H
#define TYRESUM_OUTPUT_OUTBUF_H

#include <stdbool.h>
#include <stddef.h>

#include "base/span.h"

/* Blocks of so many bytes are written, which a file takes fastest, and there is room for what a row
 * has beyond one. */
enum { OUTBUF_BLOCK = 128 * 1024, OUTBUF_SIZE = OUTBUF_BLOCK + 16 * 1024 };

struct outbuf {
    int descriptor;
    bool eager; /* flushed whenever the input pauses */
    int error;  /* errno of the first failed write, 0 while all went well; EPIPE is a closed pipe */
    bool terminal;
    bool colour; /* of a terminal that is to have it */
    bool split;  /* a block was written, and what stands here goes on where it ends */
    size_t used;
    char data[OUTBUF_SIZE];
};

void outbuf_open(struct outbuf *out, int descriptor);
/* Of what is longer than the buffer has room for. */
void outbuf_put_long(struct outbuf *out, struct span text);
void outbuf_text(struct outbuf *out, const char *text);
/* Writes what is buffered, retrying on EINTR and short writes. False once any write failed. */
bool outbuf_flush(struct outbuf *out);
/* Makes room for so many characters, at most OUTBUF_SIZE. */
void outbuf_make_room(struct outbuf *out, size_t length);

/* Where so many characters may be written, which are then added to `used`. */
static inline char *outbuf_room(struct outbuf *out, size_t length)
{
    if (OUTBUF_SIZE - out->used < length)
        outbuf_make_room(out, length);
    return out->data + out->used;
}

static inline void outbuf_put(struct outbuf *out, struct span text)
{
    if (text.length > OUTBUF_SIZE - out->used) {
        outbuf_put_long(out, text);
        return;
    }
    if (text.length > 0)
        memcpy(out->data + out->used, text.at, text.length);
    out->used += text.length;
}

static inline void outbuf_char(struct outbuf *out, char c)
{
    *outbuf_room(out, 1) = c;
    out->used++;
}

#endif
