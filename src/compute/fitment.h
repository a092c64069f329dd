/* What stands on each axle: a fitment of the build file with everything inherited that was
 * left out, and what was assumed in doing so. */
#ifndef TYRESUM_COMPUTE_FITMENT_H
#define TYRESUM_COMPUTE_FITMENT_H

#include <stdbool.h>

#include "build/specification.h"

/* Assumptions made, as bits; the report has a sentence for each. */
enum assumption {
    ASSUMED_FITTED_WHEEL = 1 << 0, /* the option names no wheel, and the rim code is the same */
    ASSUMED_SAME_MASS = 1 << 1,    /* no mass of tyre and wheel on both sides */
    ASSUMED_NO_SPACER = 1 << 2,
    ASSUMED_SAME_SPARE = 1 << 3,  /* the option names no spare: the carried one stays */
    ASSUMED_SPARE_WHEEL = 1 << 4, /* the spare names no wheel, and an axle's has its rim code */
    ASSUMED_SPARE_RIM = 1 << 5,   /* nor has an axle's: its measuring rim */
    ASSUMED_NO_SPARE = 1 << 6     /* the file names none: none is judged */
};

struct setup {
    const char *name; /* "fitted", or the option's */
    size_t number;    /* of the option in its file, from 1; 0: fitted, or of no file */
    bool is_fitted;
    struct tyre axle[AXLE_COUNT];
    bool own_rear_size;          /* the rear axle's tyre has a size of its own, not the front's */
    struct tyre spare;           /* size not given: none named */
    const struct as_set *as_set; /* what it is handed over with; NULL: not given */
    unsigned assumptions;
    bool *left_out; /* [state][item of carried]: stays behind so that the rest is borne; NULL:
                       nothing */
};

/* The vehicle as it stands now. */
void setup_fitted(const struct specification *specification, struct setup *out);

/* An option, with what it leaves out taken from the fitted setup. */
void setup_option(const struct fitment *option, const struct setup *fitted, struct setup *out);

/* A tyre from arguments alone: a designation and nothing else. */
void setup_from_designation(const struct designation *size, const char *name, struct setup *out);

bool tyre_is_dual(const struct tyre *tyre);

/* Whether both stand on rims of one diameter. False where a size is not given. */
bool same_rim_code(const struct tyre *one, const struct tyre *other);

/* Whether both are of one size and, where both say, of one load range, which stands in the
 * designation or beside it. False where a size is not given. */
bool same_tyre(const struct tyre *one, const struct tyre *other);

/* Whether a tyre of that size goes on a rim that may be ordered; whether that rim is as wide as a
 * wheel, with its inset; and the wheel that it would be. */
bool size_goes_on_rim(const struct designation *size, const struct search_rim *rim);
bool rim_stands_as(const struct search_rim *rim, const struct wheel *wheel);
struct wheel wheel_of_rim(const struct search_rim *rim);

/* Two, or four where each side stands on twins. */
static inline double tyres_on_axle(bool dual)
{
    return dual ? 4 : 2;
}

#endif
