#include "output/outbuf.h"

#include <errno.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

void outbuf_open(struct outbuf *out, int descriptor)
{
    out->descriptor = descriptor;
    out->eager = false;
    out->error = 0;
    out->terminal = isatty(descriptor);
    out->colour = out->split = false;
    out->used = 0;
}

/* Standard output may have been left non-blocking by whoever else holds its other end. */
static void wait_until_writable(int descriptor)
{
    struct pollfd wanted = {.fd = descriptor, .events = POLLOUT};
    (void)poll(&wanted, 1, -1);
}

static void write_all(struct outbuf *out, struct span text)
{
    while (text.length > 0 && out->error == 0) {
        ssize_t written = write(out->descriptor, text.at, text.length);
        if (written > 0) {
            text.at += written;
            text.length -= (size_t)written;
        } else if (written == 0) {
            out->error = EIO;
        } else if (errno == EAGAIN || errno == EWOULDBLOCK) {
            wait_until_writable(out->descriptor);
        } else if (errno != EINTR) {
            out->error = errno;
        }
    }
}

bool outbuf_flush(struct outbuf *out)
{
    write_all(out, (struct span){out->data, out->used});
    out->used = 0;
    out->split = false;
    return out->error == 0;
}

void outbuf_make_room(struct outbuf *out, size_t length)
{
    const size_t block = OUTBUF_BLOCK;
    if (out->used < block || OUTBUF_SIZE - (out->used - block) < length) {
        outbuf_flush(out);
    } else {
        write_all(out, (struct span){out->data, block});
        out->used -= block;
        memmove(out->data, out->data + block, out->used);
    }
    out->split = true;
}

void outbuf_put_long(struct outbuf *out, struct span text)
{
    if (text.length <= OUTBUF_SIZE) {
        outbuf_make_room(out, text.length);
        outbuf_put(out, text);
        return;
    }
    outbuf_flush(out);
    write_all(out, text);
    out->split = true;
}

void outbuf_text(struct outbuf *out, const char *text)
{
    outbuf_put(out, span_of(text));
}
