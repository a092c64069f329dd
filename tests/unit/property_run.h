/* For the properties: how many builds, one build computed whole, and its figures found again. */
#ifndef TYRESUM_TESTS_PROPERTY_RUN_H
#define TYRESUM_TESTS_PROPERTY_RUN_H

#include <check.h>

#include "random_build.h"
#include "reading/figure_value.h"
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

enum { BUILDS_FEW = 25 };

/* A few builds, a quarter of them where TEST_FEW is 1, or 1,500 where TEST_LONG is. */
int properties_count(int few);

/* Writes, reads and computes; fails the test, with the text and the faults, where the build is not
 * accepted. */
void run_make(struct run *run, uint64_t seed, const struct variation *variation);
/* The same of a text that is then told otherwise. */
void run_make_rewritten(struct run *run, uint64_t seed, const struct variation *variation,
                        void (*rewrite)(struct build_text *text));
/* The same build's figures anew, as for --units us or metric. */
void run_compute(struct run *run, bool us);
/* The same of a job (random_job). */
void run_make_job(struct run *run, uint64_t seed);
void run_free(struct run *run);

/* Calls `check` with many builds; each returns how much it has checked, which must not be 0 in
 * all. */
void check_builds(const char *what, int (*check)(struct run *run));

void require_close(double actual, double expected, double tolerance, const char *what);

/* Whether figures of two runs say the same thing of the same thing, whatever their values. */
bool of_the_same(const struct run *run_a, const struct figure *a, const struct run *run_b,
                 const struct figure *b);

/* The first that is of the same as another run's, looked for from the same place of its list on. */
const struct figure *find_like(const struct run *run, const struct run *other,
                               const struct figure *like, size_t from);

/* "speedometer_error of option 1, front, at nominal". */
const char *told_of(const struct run *run, const struct figure *figure);

/* Whether something stands in the place of its value. */
static inline bool has_word(const struct figure *figure)
{
    return figure->instead.id != REMARK_NONE;
}

/* The next figure of that option (NULL: of any) from *at on, which goes behind it; NULL where there
 * is none. */
const struct figure *figure_next(const struct run *run, const char *option, size_t *at);

/* Equal in the figure's own unit to a billionth, or of one where it is smaller than that. */
bool close_in_unit(const struct figure *figure, double actual, double expected);

/* Writes what a setup has on each axle into an option: a rear wheel that nobody named stays so. */
void option_name_axles(struct fitment *option, const struct setup *setup);

#endif
