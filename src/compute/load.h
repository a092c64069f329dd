/* Pressure that each axle's tyres need: to carry what the fitted tyres carried (as replaced),
 * and what the build weighs (as built). */
#ifndef TYRESUM_COMPUTE_LOAD_H
#define TYRESUM_COMPUTE_LOAD_H

#include <stdbool.h>

#include "compute/axle_loads.h"
#include "compute/capacity.h"
#include "compute/fitment.h"

/* What sets the recommended pressure. */
enum pressure_reason {
    REASON_NONE,     /* something is unknown */
    REASON_REPLACED, /* what the fitted tyre carried at its placard pressure */
    REASON_BUILT,    /* the heaviest state with the reserve */
    REASON_FLOOR,    /* the lowest pressure of the class */
    REASON_PLACARD,  /* never below the placard */
    REASON_REFUSED   /* no allowed pressure carries it */
};

/* One axle of a setup. Pressures in Pa, exact (not rounded) but for recommended_Pa; INFINITY
 * where no pressure is enough; UNKNOWN where something is missing. */
struct axle_pressures {
    struct tyre_rating rating;
    bool dual;
    double placard_Pa;
    double demand_replaced_kg;         /* per tyre: fitted tyre's capacity at the placard */
    double demand_replaced_derated_kg; /* the same / 1.10 where the fitted tyre is a passenger
                                          tyre on a light truck (49 CFR 571.110 S4.2.2.2) */
    double demand_built_kg;            /* per tyre, heaviest state, with the reserve */
    double load_built_kg;              /* the same without the reserve */
    int heaviest_state;                /* its number; STATE_UNKNOWN */
    /* With the pressure that the top speed adds; as replaced it is in the placard already where
     * the fitted tyre is of a class that has it too. */
    double as_replaced_Pa, as_replaced_derated_Pa, as_built_Pa;
    double floor_Pa, ceiling_Pa;
    double needed_Pa;      /* rounded up as well, before the ceiling refuses it */
    double recommended_Pa; /* rounded up in the user's unit */
    enum pressure_reason reason;
    double capacity_at_placard_kg, capacity_at_recommended_kg, capacity_max_kg;
};

struct load_conditions {
    const struct specification *specification;
    const struct setup *fitted;
    enum pressure_system system;
};

/* States of the file; one called "everything" where it names none. */
size_t state_count(const struct specification *specification);
const struct state *state_at(const struct specification *specification, size_t index);
const char *state_name(const struct state *state);
int state_number(const struct specification *specification, const struct state *state);
enum { STATE_UNKNOWN = -1 };

/* The placard pressure of an axle, and the share of load kept free. */
double placard_Pa(const struct specification *specification, enum axle axle);
double load_reserve(const struct specification *specification);

/* How much an axle's load may rise until its heavier tyre carries what it can at the ceiling, less
 * the reserve, in kg; UNKNOWN where something is missing. Weight on the centre line is taken. */
double axle_tyres_left_kg(const struct specification *specification,
                          const struct axle_pressures *pressures, const struct axle_loads *loads,
                          enum axle axle);

void axle_pressures(const struct load_conditions *conditions, const struct setup *setup,
                    enum axle axle, struct axle_pressures *out);

#endif
