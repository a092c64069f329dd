/* For the properties: how many builds, one build computed whole, and its figures found again. */
#ifndef TYRESUM_TESTS_PROPERTY_RUN_H
#define TYRESUM_TESTS_PROPERTY_RUN_H

#include <check.h>

#include "random_build.h"
#include "report/plan.h"

/* A build that was accepted, with the figures of all parts. */
struct run {
    uint64_t seed;
    struct arena arena;
    struct build_text text;
    struct specification *specification;
    struct plan plan;
    struct figures figures;
};

/* ck_assert_msg notes that it has passed, in a file: too slow for what holds a million times. */
#define REQUIRE(condition, ...)                                                                    \
    do {                                                                                           \
        if (!(condition))                                                                          \
            ck_abort_msg(__VA_ARGS__);                                                             \
    } while (0)

/* A few builds, or thousands where TEST_LONG is 1. */
int properties_count(int few);

/* Writes, reads and computes; fails the test, with the text and the faults, where the build is not
 * accepted. */
void run_make(struct run *run, uint64_t seed, const struct variation *variation);
void run_free(struct run *run);

/* Whether two figures say the same thing of the same thing, whatever their values. */
bool same_place(const struct figure *a, const struct figure *b);

/* The first at that place, looked for from the same place of the other list on. */
const struct figure *find_like(const struct run *run, const struct figure *like, size_t from);

/* "speedometer_error of option 1, front, at nominal". */
const char *place_text(const struct run *run, const struct figure *figure);

/* The next figure of that option (NULL: of any) from *at on, which goes behind it; NULL where there
 * is none. */
const struct figure *figure_next(const struct run *run, const char *option, size_t *at);

/* Equal in the figure's own unit to a billionth, or of one where it is smaller than that. */
bool close_in_unit(const struct figure *figure, double actual, double expected);

#endif
