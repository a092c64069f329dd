/* Units of measure. Inside the program every value is in SI base or derived units without
 * prefix (metre, kilogram, pascal, metre per second, 1/s, radian, fraction); a unit is met
 * only where text comes in or goes out. */
#ifndef TYRESUM_BASE_UNITS_H
#define TYRESUM_BASE_UNITS_H

#include <stddef.h>

#include "base/span.h"

#define PI 3.14159265358979323846
#define GRAVITY_M_S2 9.80665 /* 3rd CGPM, 1901: a kilogram's weight in newtons */

enum unit_kind {
    KIND_BARE, /* ratio or count: no unit */
    KIND_LENGTH,
    KIND_MASS,
    KIND_PRESSURE,
    KIND_SPEED,
    KIND_VOLUME,
    KIND_TORQUE,
    KIND_FORCE,
    KIND_STIFFNESS,
    KIND_ANGLE,
    KIND_FRACTION, /* per cent */
    KIND_ROTATION, /* revolutions per second inside */
    KIND_CONSUMPTION,
    KIND_AREA,
    KIND_DENSITY,
    KIND_FLOW,
    KIND_TIME,
    KIND_PER_LENGTH, /* revolutions or pulses per distance */
    KIND_INERTIA,
    KIND_COUNT
};

enum unit_id {
    UNIT_BARE,
    UNIT_MM,
    UNIT_CM,
    UNIT_M,
    UNIT_KM,
    UNIT_IN,
    UNIT_FT,
    UNIT_MI,
    UNIT_KG,
    UNIT_G,
    UNIT_TONNE,
    UNIT_LB,
    UNIT_KPA,
    UNIT_BAR,
    UNIT_PSI,
    UNIT_KMH,
    UNIT_MPH,
    UNIT_MPS,
    UNIT_L,
    UNIT_GAL,
    UNIT_GAL_IMP,
    UNIT_M3,
    UNIT_NM,
    UNIT_LB_FT,
    UNIT_N,
    UNIT_KN,
    UNIT_LBF,
    UNIT_N_PER_MM,
    UNIT_LB_PER_IN,
    UNIT_DEG,
    UNIT_RAD,
    UNIT_PERCENT,
    UNIT_RPM,
    UNIT_L_PER_100KM,
    UNIT_MPG,
    UNIT_MPG_IMP,
    UNIT_M2,
    UNIT_FT2,
    UNIT_KG_PER_L,
    UNIT_KG_PER_M3,
    UNIT_L_PER_MIN,
    UNIT_CFM,
    UNIT_S,
    UNIT_MIN,
    UNIT_PER_KM,
    UNIT_PER_MILE,
    UNIT_KG_M2,
    UNIT_LB_FT2,
    UNIT_M_PER_KM,
    UNIT_FT_PER_MILE,
    UNIT_COUNT
};

struct unit {
    char name[12]; /* as written by the user and printed */
    enum unit_kind kind;
    double factor;       /* SI value of one unit; of one over the unit where reciprocal */
    char definition[36]; /* the exact definition, as text */
    int reciprocal;      /* distance per volume (mpg) against volume per distance */
};

/* Which units the user reads: one system's, or both, metric first. */
enum unit_systems { UNITS_METRIC, UNITS_US, UNITS_BOTH };

extern const struct unit unit_table[UNIT_COUNT];

/* The unit of that name, case forgiven; UNIT_COUNT if there is none. */
enum unit_id unit_find(struct span name);

/* The nearest unit name of a kind, for a suggestion. */
const char *unit_nearest(struct span name, enum unit_kind kind);

/* "length", "pressure": as an error text says it; and an example of the right form. */
const char *unit_kind_name(enum unit_kind kind);
const char *unit_kind_example(enum unit_kind kind);

/* The unit in which ranges and errors of a kind are told. */
enum unit_id unit_of_kind(enum unit_kind kind);

static inline double unit_to_si(enum unit_id unit, double value)
{
    const struct unit *row = &unit_table[unit];
    return row->reciprocal ? row->factor / value : row->factor * value;
}

static inline double unit_from_si(enum unit_id unit, double si)
{
    const struct unit *row = &unit_table[unit];
    return row->reciprocal ? row->factor / si : si / row->factor;
}

#endif
