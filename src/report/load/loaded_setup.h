/* Shared by the files of the load report: one setup with what its axles need, and what each file
 * tells of it. */
#ifndef TYRESUM_REPORT_LOAD_LOADED_SETUP_H
#define TYRESUM_REPORT_LOAD_LOADED_SETUP_H

#include "base/known.h"
#include "compute/load.h"
#include "compute/ratings.h"
#include "report/judge.h"
#include "report/plan.h"

struct loaded_setup {
    const struct plan *plan;
    const struct setup *setup;
    struct axle_pressures axle[AXLE_COUNT];
};

/* A mass in a sentence. */
static inline struct argument say_mass(double mass_kg)
{
    return say_quantity(mass_kg, UNIT_KG, UNIT_LB, 0);
}

/* What the scale may be off by, on each tyre of an axle. */
static inline double weighing_of_tyre_kg(const struct loaded_setup *loaded, int axle)
{
    return tyre_doubt_kg(loaded->plan->specification, loaded->axle[axle].dual);
}

/* Asks to weigh again what is nearer to its limit than the scale tells. */
static inline struct remark weigh_again(struct arena *arena, double tolerance_kg)
{
    return REMARK_WITH(arena, ADVICE_WEIGH_AGAIN, say_mass(tolerance_kg));
}

/* ratings.c: axle loads in every state, what is left of the ratings, and the largest items to come.
 */
void report_ratings(const struct loaded_setup *loaded, struct figures *figures);

/* places.c: how heavy an item may be at a place that is asked for, and where it may stand. */
void report_places(const struct loaded_setup *loaded, const struct loading *loading,
                   const struct axle_loads *loads, struct figures *figures);

/* weighed.c: what the weighed figures hold; whether the fuel of two tanks counts. */
void report_weighed(const struct loaded_setup *loaded, struct figures *figures);

/* pressure.c: capacity and pressure of one axle's tyres. */
void report_pressure(const struct loaded_setup *loaded, int axle, struct figures *figures);

/* What was added to the table pressure for the top speed, where anything was. */
struct remark for_speed(struct arena *arena, const struct tyre_rating *rating);

/* Asks for what a tyre of that class carries at a pressure: a load range tells it of LT, flotation,
 * numeric and trailer tyres alone. */
enum remark_id ask_for_load(enum tyre_group group);

/* Asks for the sidewall: whether it allows a pressure that not every tyre of the kind may have, and
 * no more than tyre and wheel can. */
struct remark read_sidewall(const struct plan *plan, double needed_Pa, double highest_Pa);

/* A ceiling beside that pressure, in the user's unit: of a nominal pair the one that is printed in
 * it; UNKNOWN where there is none. */
double ceiling_told_Pa(const struct plan *plan, double ceiling_Pa, double pressure_Pa);

/* pressure_table.c: load at every pressure from floor to ceiling, of all setups. */
void report_pressure_tables(const struct loaded_setup *setups, size_t count,
                            struct figures *figures);

/* capacity_basis.c: the rule by which an axle's capacity was found. */
struct remark capacity_basis(struct arena *arena, const struct axle_pressures *axle);

/* wheel_rating.c: what wheels and tyres of an axle are rated for. */
void report_axle_rating(const struct loaded_setup *loaded, int axle, struct figures *figures);
void report_wheel_rating(const struct loaded_setup *loaded, int axle, struct figures *figures);
/* The listed rim that is ordered for an axle whose wheel is too weak, with the other axle's where
 * both have the same wheel; NULL: none need be, or none does and is allowed. */
const struct search_rim *wheel_to_order(const struct loaded_setup *loaded, int axle);

/* twins.c: of an axle with twins. */
void report_twins(const struct loaded_setup *loaded, int axle, struct figures *figures);

/* pressure_warning.c: what the pressure-loss warning becomes. */
void report_pressure_warning(const struct loaded_setup *loaded, int axle, struct figures *figures);

/* The lower and the higher of two: what bounds nothing counts in neither. */
static inline struct bearing lower_bearing(struct bearing a, struct bearing b)
{
    return (struct bearing){lower_of(a.sure_kg, b.sure_kg), lower_of(a.most_kg, b.most_kg)};
}

static inline struct bearing higher_bearing(struct bearing a, struct bearing b)
{
    return (struct bearing){higher_of(a.sure_kg, b.sure_kg), higher_of(a.most_kg, b.most_kg)};
}

/* Up to which load of a tyre the wheel of its axle does, or the listed rim that is ordered for it;
 * and the spare, or the one of the set that takes its place. */
struct bearing wheel_bearing(const struct loaded_setup *loaded, int axle);
struct bearing spare_bearing(const struct loaded_setup *loaded);

/* spare.c */
void report_spare(const struct loaded_setup *loaded, struct figures *figures);

/* off_road.c: running at low pressure, where the file says `off_road`. */
void report_off_road(const struct loaded_setup *loaded, struct figures *figures);

/* balance.c: front beside rear, and what these sums do not cover. */
void report_margins(const struct loaded_setup *loaded, struct figures *figures);
void report_not_covered(const struct loaded_setup *loaded, struct figures *figures);

#endif
