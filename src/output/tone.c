#include "output/tone.h"

/* ECMA-48, 8.3.117: the eight colours that every terminal has, so that the user's own apply. */
#define GOOD "\033[32m"
#define WORK "\033[36m"
#define OPEN "\033[33m"
#define BAD "\033[1;31m"

const char *tone_begin(const struct outbuf *out, struct span text)
{
    static const struct {
        const char *word, *tone;
    } tones[] = {
        {"go", GOOD},   {"ok", GOOD},   {"go after work", WORK}, {"work", WORK},
        {"task", WORK}, {"open", OPEN}, {"unknown", OPEN},       {"caution", OPEN},
        {"no go", BAD}, {"no_go", BAD}, {"fail", BAD},
    };
    for (size_t i = 0; out->colour && i < sizeof tones / sizeof tones[0]; i++)
        if (span_is(text, tones[i].word))
            return tones[i].tone;
    return "";
}

const char *tone_end(const char *begun)
{
    return *begun == '\0' ? "" : "\033[0m";
}
