/* Pressure that each axle's tyres need: to carry what the fitted tyres carried (as replaced),
 * and what the build weighs (as built). */
#ifndef TYRESUM_COMPUTE_LOAD_H
#define TYRESUM_COMPUTE_LOAD_H

#include <stdbool.h>

#include "compute/axle_loads.h"
#include "compute/capacity.h"
#include "compute/fitment.h"
#include "compute/pressure_choice.h"

/* One axle of a setup. Pressures in Pa, exact but for recommended_Pa; INFINITY where no pressure is
 * enough; UNKNOWN where something is missing. Demands are those of one tyre. */
struct axle_pressures {
    struct tyre_rating rating;
    bool dual;
    enum tyre_group placard_group; /* of the fitted tyre, for which the placard is made */
    bool fitted_unread;            /* the fitted tyre's load at a pressure is not known */
    double placard_Pa;             /* the vehicle's, whatever it is made for */
    double demand_replaced_kg;     /* the fitted tyre's capacity at the placard */
    double demand_built_kg;        /* heaviest state, by which the scale may be off, the reserve */
    double demand_least_kg;        /* the same if it is off to the other side */
    double load_built_kg;          /* heaviest state, as weighed */
    double load_side_kg;           /* the part of it that comes from loads beside the centre line */
    double load_whole_side_kg;     /* the heaviest tyre's, if this axle took the whole tilt */
    double demand_rated_kg;        /* half the axle rating, a quarter on twins */
    int heaviest_state;            /* its number; STATE_UNKNOWN */
    /* With the pressure that the top speed adds; as replaced it is in the placard already where
     * the fitted tyre is of a class that has it too. */
    struct pressure_demands demands;
    double floor_Pa;
    struct ceilings ceilings;
    double needed_Pa;      /* before a ceiling refuses it */
    double recommended_Pa; /* rounded up in the user's unit; INFINITY where it is refused */
    double least_told_Pa, most_told_Pa; /* in whichever unit, so that verdicts hang on none */
    double stands_Pa; /* what it is handed over with, where given, else the placard's */
    enum pressure_reason reason;
    double capacity_at_placard_kg, capacity_at_recommended_kg, capacity_max_kg;
    double capacity_least_told_kg;
    double capacity_sure_kg, capacity_highest_kg; /* under the ceilings */
    /* Of the wheel. A fitted one whose rating is not given is taken to be good for half the axle
     * rating (a quarter with twins) at the placard, which is what the vehicle's maker had to meet
     * (49 CFR 571.110, 571.120); of another nothing is taken. */
    double wheel_load_kg, wheel_pressure_Pa;
    bool wheel_assumed;
};

/* Whether the placard is made for tyres of that group. */
static inline bool placard_is_for(const struct axle_pressures *axle, enum tyre_group group)
{
    return axle->placard_group == group;
}

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

/* The load that a capacity is enough for, with the reserve kept free. */
double load_within_kg(const struct specification *specification, double capacity_kg);

/* Load of the heaviest tyre of an axle: the heavier corner's, shared by twins. UNKNOWN where the
 * axle is lifted. */
double tyre_load_kg(const struct specification *specification, const struct axle_loads *loads,
                    enum axle axle, bool dual);

/* How much an axle's load may rise until its heavier side bears so much on each tyre or wheel, in
 * kg; UNKNOWN where something is missing. Weight on the centre line is taken. */
double axle_left_kg(const struct specification *specification, const struct axle_loads *loads,
                    enum axle axle, bool dual, double each_kg);

/* How far off the load of each tyre of an axle may be by the weighing. */
double tyre_doubt_kg(const struct specification *specification, bool dual);

/* The load of one tyre up to which what bears it does: whatever the weighing may be off and the
 * sidewall says, and if both are as well as they can be. UNKNOWN where nothing bounds it. */
struct bearing {
    double sure_kg, most_kg;
};

/* A tyre's under its ceilings, with the reserve. What does not meet the other demands bounds
 * nothing: it is refused, or another is ordered, whatever is aboard. */
struct bearing tyre_bearing(const struct specification *specification,
                            const struct tyre_rating *rating, const struct ceilings *ceilings,
                            bool dual, const struct pressure_demands *demands);

/* The pressure that an option says it is handed over with. */
double as_set_Pa(const struct setup *setup, enum axle axle);

void axle_pressures(const struct load_conditions *conditions, const struct setup *setup,
                    enum axle axle, struct axle_pressures *out);

/* What pressure makes a tyre carry what the fitted one carries: to compare by, not to set. */
struct equal_load {
    double reference_Pa; /* of the load of its index */
    double fitted_Pa;    /* the fitted tyre's pressure: its placard, else its reference pressure */
    double pressure_Pa;  /* not below the floor of its class; INFINITY where none that is allowed
                            does it */
};

void equal_load_find(const struct load_conditions *conditions, const struct setup *setup,
                     enum axle axle, struct equal_load *out);

#endif
