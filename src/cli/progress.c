#include "cli/progress.h"

#include <time.h>
#include <unistd.h>

#include "base/known.h"

static double now_s(void)
{
    struct timespec now;
    return clock_gettime(CLOCK_MONOTONIC, &now) == 0 ? (double)now.tv_sec + now.tv_nsec * 1e-9
                                                     : UNKNOWN;
}

struct progress progress_begin(FILE *to, bool quiet)
{
    return (struct progress){
        .to = !quiet && isatty(fileno(to)) ? to : NULL, .began_s = now_s(), .told_s = UNKNOWN};
}

bool progress_is_due(const struct progress *progress, double now_s)
{
    return now_s - progress->began_s > 1 && !(now_s - progress->told_s < 0.2);
}

int progress_text(size_t done, size_t all, char text[PROGRESS_SIZE])
{
    return snprintf(text, PROGRESS_SIZE, "tyresum: %zu of %zu combinations tried (%.0f %%)", done,
                    all, all > 0 ? 100. * (double)done / (double)all : 100);
}

void progress_tell(void *data, size_t done, size_t all)
{
    struct progress *progress = data;
    char text[PROGRESS_SIZE];
    double now = progress->to == NULL ? UNKNOWN : now_s();
    if (!progress_is_due(progress, now))
        return;
    int width = progress_text(done, all, text);
    fprintf(progress->to, "\r%-*s", progress->width, text);
    fflush(progress->to);
    progress->told_s = now;
    progress->width = width;
}

void progress_end(struct progress *progress)
{
    if (progress->width > 0)
        fprintf(progress->to, "\r%*s\r", progress->width, "");
    progress->width = 0;
}
