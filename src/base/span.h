/* A slice of text: pointer and length, no terminating NUL, not owned. */
#ifndef TYRESUM_BASE_SPAN_H
#define TYRESUM_BASE_SPAN_H

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

struct span {
    const char *at;
    size_t length;
};

static inline struct span span_of(const char *text)
{
    return (struct span){text, strlen(text)};
}

/* What is left of a text behind so many bytes. */
static inline struct span span_from(struct span text, size_t bytes)
{
    return (struct span){text.at + bytes, text.length - bytes};
}

static inline bool span_is(struct span span, const char *text)
{
    return span.length == strlen(text) && memcmp(span.at, text, span.length) == 0;
}

/* Whether two texts are one, or both absent. */
static inline bool same_text(const char *a, const char *b)
{
    return a == b || (a != NULL && b != NULL && *a == *b && strcmp(a, b) == 0);
}

/* Character classes of ASCII, whatever the locale says. */
static inline bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static inline bool is_blank(char c)
{
    return c == ' ' || c == '\t';
}

static inline char upper_case(char c)
{
    return c >= 'a' && c <= 'z' ? (char)(c - 'a' + 'A') : c;
}

static inline bool is_letter(char c)
{
    return upper_case(c) >= 'A' && upper_case(c) <= 'Z';
}

/* span_is, case ignored. */
static inline bool span_is_but_for_case(struct span span, const char *text)
{
    if (span.length != strlen(text))
        return false;
    for (size_t i = 0; i < span.length; i++)
        if (upper_case(span.at[i]) != upper_case(text[i]))
            return false;
    return true;
}

#endif
