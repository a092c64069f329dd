/* A buffer before a file descriptor. The first failed write sticks: everything after it is
 * dropped, and the program ends with the status for "could not be written". */
#ifndef TYRESUM_OUTPUT_OUTBUF_H
#define TYRESUM_OUTPUT_OUTBUF_H

#include <stdbool.h>
#include <stddef.h>

#include "base/span.h"

enum { OUTBUF_SIZE = 65536 };

struct outbuf {
    int descriptor;
    bool eager; /* flushed whenever the input pauses */
    int error; /* errno of the first failed write, 0 while all went well; EPIPE is a closed pipe */
    bool colour; /* of a terminal that is to have it */
    size_t used;
    char data[OUTBUF_SIZE];
};

void outbuf_open(struct outbuf *out, int descriptor);
void outbuf_put(struct outbuf *out, struct span text);
void outbuf_text(struct outbuf *out, const char *text);
void outbuf_char(struct outbuf *out, char c);
/* Writes what is buffered, retrying on EINTR and short writes. False once any write failed. */
bool outbuf_flush(struct outbuf *out);

#endif
