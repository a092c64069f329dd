/* The one pressure that meets several demands, and whether it may be set. Pressures in Pa. */
#ifndef TYRESUM_COMPUTE_PRESSURE_CHOICE_H
#define TYRESUM_COMPUTE_PRESSURE_CHOICE_H

#include "compute/capacity.h"

/* What sets the pressure, or why there is none. */
enum pressure_reason {
    REASON_NONE,     /* something is unknown */
    REASON_REPLACED, /* what the fitted tyre carried at its placard pressure */
    REASON_BUILT,    /* the heaviest state with the reserve */
    REASON_RATED,    /* half the axle rating, a quarter on twins */
    REASON_FLOOR,    /* the lowest pressure of the class */
    REASON_PLACARD,  /* never below the placard of its class */
    REASON_REFUSED,  /* no allowed pressure meets all */
    REASON_UNREAD,   /* more than every tyre of its kind may have: the sidewall decides */
    REASON_UNWEIGHED /* whether an allowed one does is nearer than the scale tells */
};

/* INFINITY where no pressure is enough; UNKNOWN where something is missing, and for the last three
 * where there is none. As built is with the most that the weighing may be off; least, with as much
 * less. */
struct pressure_demands {
    double replaced_Pa, built_Pa;
    double rated_Pa, placard_Pa, built_least_Pa;
};

struct pressure_choice {
    double needed_Pa;      /* exact, whatever the ceilings say */
    double recommended_Pa; /* rounded up in the user's unit; INFINITY where it is refused */
    double least_told_Pa, most_told_Pa; /* in whichever unit, so that verdicts hang on none */
    enum pressure_reason reason;
};

/* The highest of the demands and of the floor of the class. Above the ceiling it is refused; above
 * the sure one it is not known whether the tyre may have it. */
struct pressure_choice choose_pressure(const struct pressure_demands *demands,
                                       const struct tyre_rating *rating,
                                       const struct ceilings *ceilings,
                                       enum pressure_system system);

/* Up to the next 5 kPa or 1 psi, from the exact value; to less where that would pass the ceiling,
 * so that what is allowed is never refused for its rounding. A nominal 80 psi that even a tenth
 * would take above 550 kPa are these. */
double pressure_to_set_Pa(double pressure_Pa, double ceiling_Pa, enum pressure_system system);

#endif
