/* What a tyre carries at a pressure. L(P) = L_ref (P / P_ref)^n, never above L_ref; P is the
 * cold gauge pressure. References and exponents by class: table `inflation`. */
#ifndef TYRESUM_COMPUTE_CAPACITY_H
#define TYRESUM_COMPUTE_CAPACITY_H

#include <stdbool.h>

#include "base/known.h"
#include "build/specification.h"
#include "tables/tables_data.h"

/* Standards print pairs of pressures (80 psi, 550 kPa): sums go by the kPa and verdicts take
 * either, so that they hang on no unit; what is told is the one in the user's unit. */
enum pressure_system { PRESSURE_METRIC, PRESSURE_US, PRESSURE_SYSTEM_COUNT };

/* Classes whose tyres replace each other like for like: a placard is one for its own group. */
enum tyre_group {
    GROUP_PASSENGER,   /* metric and P-metric, whatever their capacity */
    GROUP_LIGHT_TRUCK, /* LT-metric, flotation and numeric */
    GROUP_COMMERCIAL,
    GROUP_HEAVY,
    GROUP_TRAILER,
    GROUP_TEMPORARY
};
enum tyre_group tyre_group(enum inflation_key class);

struct tyre_rating {
    enum inflation_key class;
    double load_kg; /* at the reference pressure, single, as marked */
    double load_dual_kg;
    double reference_Pa;
    double exponent;
    double floor_Pa[PRESSURE_SYSTEM_COUNT]; /* lowest pressure of the class in that unit, verdicts
                                               going by the lower; 0 where the tables give none */
    double ceiling_Pa;                      /* highest; UNKNOWN where nothing limits it */
    double sure_Pa;       /* what every tyre of its kind may have: above it, and up to the ceiling,
                             the sidewall decides; the ceiling itself where that is moulded */
    int load_index;       /* for the speed rules; below 0 where none is marked */
    double divisor;       /* 1.10 for a passenger tyre on a light truck, otherwise 1 */
    double speed_factor;  /* load allowed at the vehicle's top speed, a fraction */
    bool completed;       /* the size is not as moulded: passenger, LT or C, nothing is known */
    bool ceiling_assumed; /* a light-truck tyre without a moulded maximum */
    bool standard_load_assumed;
    bool moulded;                /* load and reference pressure are the sidewall's or data book's */
    bool listed;                 /* they are a row of table `light_truck_maxima` */
    bool dual_assumed;           /* no dual load index: a share of the single one */
    double speed_pressure_Pa;    /* to add to the table pressure at the vehicle's top speed */
    bool speed_pressure_assumed; /* as of a W tyre: of symbols above, the maker says it */
};

/* 49 CFR 571.110 S4.2.2.2, 571.120 S5.1.2; NHTSA interpretation nht76-1.47. */
#define PASSENGER_TYRE_DIVISOR 1.10

/* TRA LT-metric practice: a twin carries about 0.91 of the same tyre alone (published rows 0.903
 * to 0.917). Used only where no dual load index and no moulded dual maximum is given. */
#define LT_DUAL_SHARE 0.91

/* True of P-metric and metric tyres that are not C, CP, LT or heavy, nor marked as if they were. */
bool is_passenger_tyre(const struct tyre *tyre);

/* True of tyres that UN R54 covers: commercial, light-truck and heavy ones. */
bool is_commercial_tyre(const struct tyre_rating *rating);

/* The row of table `inflation` that a size with that load range letter (0: none) goes by. */
enum inflation_key inflation_class(const struct designation *size, char load_range);

/* What the tables say of a size with that load range letter (0: none): where tyre_rate() begins. */
void size_rate(const struct designation *size, char load_range, struct tyre_rating *out);

/* The rating of a tyre on a vehicle of that kind (enum vehicle_kind or CHOICE_NONE) and top
 * speed (UNKNOWN: no reduction). Figures that are not known stay UNKNOWN. */
void tyre_rate(const struct tyre *tyre, int vehicle_kind, double top_speed_mps,
               struct tyre_rating *out);

/* The lower of the class's floors in both units. */
static inline double least_pressure_Pa(const struct tyre_rating *rating)
{
    return lower_of(rating->floor_Pa[PRESSURE_METRIC], rating->floor_Pa[PRESSURE_US]);
}

/* Capacity of one tyre in kg. */
double capacity_kg(const struct tyre_rating *rating, bool dual, double pressure_Pa);

/* Capacity at the reference pressure and above. */
double capacity_max_kg(const struct tyre_rating *rating, bool dual);

/* True where nothing published tells what the class carries: the rule is only continued there. */
bool is_below_tables(const struct tyre_rating *rating, double pressure_Pa);

/* Capacity at a low speed: UN R54 Annex 8 (from memory) grants commercial and light-truck tyres
 * an increase by load index. Passenger tyres are granted none, nor is any tyre below the lowest
 * pressure of its class: the plain capacity. */
double capacity_at_speed_kg(const struct tyre_rating *rating, bool dual, double pressure_Pa,
                            double speed_mps);

/* The highest speed at which UN R54 Annex 8 lets a tyre carry that load at that pressure, to
 * 120 km/h; 0 where none does; UNKNOWN for passenger tyres and below the class's lowest pressure,
 * where no standard grants a speed. */
double speed_for_load_mps(const struct tyre_rating *rating, bool dual, double pressure_Pa,
                          double load_kg);

/* The pressure at which one tyre carries that load; INFINITY where none does. */
double pressure_for_load_Pa(const struct tyre_rating *rating, bool dual, double load_kg);

/* What tyre and wheel allow together, as stated; INFINITY where neither says. What is above them is
 * what is_above_ceiling() calls so. */
struct ceilings {
    double highest_Pa; /* above it nothing is allowed */
    double sure_Pa;    /* above it the sidewall must be read */
};

/* `proven_Pa` is what such a tyre is known to bear, such as a placard of its group, or UNKNOWN. */
struct ceilings ceilings_of(const struct tyre_rating *rating, const struct wheel *wheel,
                            double proven_Pa);

/* What a tyre carries at most under a ceiling, which holds for the table pressure and what the top
 * speed adds to it together. */
double capacity_under_kg(const struct tyre_rating *rating, bool dual, double ceiling_Pa);

/* Rounded up to the next 5 kPa or 1 psi, from the exact value. */
double pressure_rounded_up_Pa(double pressure_Pa, enum pressure_system system);

#endif
