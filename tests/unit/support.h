/* What several suites need: close comparison, random values with a printed seed, tyres. */
#ifndef TYRESUM_TESTS_SUPPORT_H
#define TYRESUM_TESTS_SUPPORT_H

#include <check.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "build/key_rows.h"
#include "compute/fitment.h"
#include "size/designation.h"

#define LENGTH_OF(array) (sizeof(array) / sizeof(array)[0])

/* NaN is never close. `what` names the case and its source. */
static inline void assert_close(double actual, double expected, double tolerance, const char *what)
{
    ck_assert_msg(fabs(actual - expected) <= tolerance, "%s: %.12g, expected %.12g within %g", what,
                  actual, expected, tolerance);
}

static inline void assert_relative(double actual, double expected, double fraction,
                                   const char *what)
{
    assert_close(actual, expected, fraction * fabs(expected), what);
}

/* TEST_LONG: there is time. TEST_FEW: there is little. */
static inline bool is_asked(const char *variable)
{
    const char *given = getenv(variable);
    return given != NULL && *given != '\0';
}

/* A long run looks for new faults: seeded from the clock. A short one tells whether a change broke
 * something: the same cases each time. TEST_SEED repeats either. */
static inline uint64_t random_start(const char *test)
{
    enum { SHORT_SEED = 1 };
    const char *given = getenv("TEST_SEED");
    uint64_t seed = SHORT_SEED;
    if (given != NULL)
        seed = strtoull(given, NULL, 10);
    else if (is_asked("TEST_LONG"))
        seed = (uint64_t)time(NULL);
    printf("%s: TEST_SEED=%llu\n", test, (unsigned long long)seed);
    fflush(stdout);
    return seed;
}

/* How many random cases: a tenth of them in a short run. */
static inline int rounds(int in_full)
{
    return is_asked("TEST_LONG") ? in_full : in_full / 10;
}

/* splitmix64 (Steele, Lea, Flood, 2014). */
static inline uint64_t random_bits(uint64_t *state)
{
    uint64_t z = *state += 0x9E3779B97F4A7C15u;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
}

static inline double random_between(uint64_t *state, double low, double high)
{
    return low + (high - low) * ((double)(random_bits(state) >> 11) / 9007199254740992.0);
}

static inline int random_whole(uint64_t *state, int low, int high)
{
    return low + (int)(random_bits(state) % (uint64_t)(high - low + 1));
}

/* A tyre of that designation and nothing else known. */
static inline struct tyre tyre_of(const char *text)
{
    struct tyre tyre = tyre_unknown();
    struct designation_error error;
    ck_assert_msg(designation_parse(span_of(text), &tyre.size, &error), "%s: column %zu: %s", text,
                  error.column, error.message);
    tyre.size_given = true;
    tyre.load_range = tyre.size.load_range;
    return tyre;
}

/* A carried item of which nothing is said. */
static inline struct carried_item item_unknown(void)
{
    struct carried_item item;
    key_set_clear(&carried_keys, &item);
    return item;
}

#endif
