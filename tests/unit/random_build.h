/* Random build files that the program must accept: plausible values under as many keys as there
 * are. One seed always draws the same vehicle; a variation writes it otherwise, so that two
 * texts of one seed differ in nothing else. */
#ifndef TYRESUM_TESTS_RANDOM_BUILD_H
#define TYRESUM_TESTS_RANDOM_BUILD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { BUILD_TEXT_SIZE = 32768, BUILD_OPTIONS_MAX = 3, BUILD_ITEMS_MAX = 8 };

struct variation {
    bool other_units;       /* every quantity in another unit of its kind */
    bool nominal_pressures; /* near a nominal pair they are it, some in kPa and some in psi */
    bool masses_told;       /* liquids by density, people by mass: nothing comes from a table */
    bool diameters_told;    /* every tyre's diameter stands in its data book, and nothing else */
    bool no_error;          /* the instrument reads true with the fitted tyre */
    bool new_instrument;    /* without a setting now; goes with no_error */
    bool mirrored;          /* left is right */
    bool items_reversed;    /* what is carried stands in another order */
    bool options_reversed;  /* the options too */
    bool swapped;           /* the first option is fitted, and what was fitted is the option */
    bool one_point;         /* of several low points at one end only the first */
    bool last_point;        /* or only the last */
    double mass;            /* factor of all that is weighed or rated */
    double place;           /* factor of all distances along and across that loads act at */
    double diameter;        /* factor of all diameters that are told */
    double option_diameter; /* the same, of the options alone */
    double ballast_kg;      /* an item between the axles that is aboard in every state */
    double more_lift_mm;    /* of both axles, beside what was drawn */
    double more_torque;     /* factor */
};

/* As drawn. */
extern const struct variation as_drawn;

struct build_text {
    size_t length;
    char text[BUILD_TEXT_SIZE];
};

void random_build(uint64_t seed, const struct variation *variation, struct build_text *out);

/* A job as a shop has it: nothing that an outcome needs is missing, and what is short is short by
 * little. */
void random_job(uint64_t seed, struct build_text *out);

#endif
