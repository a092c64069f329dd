#include "compute/pressure_choice.h"

#include "base/known.h"
#include "base/units.h"
#include "tables/lookup.h"

double pressure_to_set_Pa(double pressure_Pa, double ceiling_Pa, enum pressure_system system)
{
    const double steps[PRESSURE_SYSTEM_COUNT][3] = {
        [PRESSURE_METRIC] = {5e3, 1e3, 0.1e3},
        [PRESSURE_US] = {unit_to_si(UNIT_PSI, 1), unit_to_si(UNIT_PSI, 0.1)},
    };
    for (int i = 0; i < 3 && steps[system][i] > 0; i++) {
        double step = steps[system][i];
        double rounded = ceil(pressure_Pa / step - 1e-9) * step;
        if (!is_above_ceiling(rounded, ceiling_Pa))
            return rounded;
    }
    return nominal_told_Pa(pressure_Pa, system == PRESSURE_US);
}

/* Whether the load asks for the tyre's reference pressure itself, which tables print in both units:
 * at 36 psi a tyre carries what it does at 250 kPa. Not where the top speed adds to it. */
static bool asks_for_reference(const struct pressure_choice *choice,
                               const struct tyre_rating *rating, struct nominal_step *step)
{
    bool by_load = choice->reason == REASON_REPLACED || choice->reason == REASON_BUILT ||
                   choice->reason == REASON_RATED;
    return by_load && !(rating->speed_pressure_Pa > 0) &&
           nominal_step_find(rating->reference_Pa, step) &&
           !clearly_above(step->low_Pa, choice->needed_Pa) &&
           !clearly_above(choice->needed_Pa, step->high_Pa);
}

/* What is told in that unit of what may be set. */
static double told_Pa(const struct pressure_choice *choice, const struct tyre_rating *rating,
                      double ceiling_Pa, enum pressure_system system)
{
    struct nominal_step step;
    double floor_Pa = lower_of(rating->floor_Pa[system], ceiling_Pa);
    if (asks_for_reference(choice, rating, &step))
        return system == PRESSURE_US ? step.us_Pa : step.metric_Pa;
    return pressure_to_set_Pa(higher_of(choice->needed_Pa, floor_Pa), ceiling_Pa, system);
}

/* Takes one demand more into account: a higher one governs, and the placard also where it is as
 * high, since that is what stands on the vehicle. */
static void take(struct pressure_choice *choice, double pressure_Pa, enum pressure_reason reason)
{
    if (!(pressure_Pa > choice->needed_Pa) &&
        !(reason == REASON_PLACARD && pressure_Pa >= choice->needed_Pa))
        return;
    choice->needed_Pa = pressure_Pa;
    choice->reason = reason;
}

static struct pressure_choice choose(const struct pressure_demands *demands,
                                     const struct tyre_rating *rating,
                                     const struct ceilings *ceilings, enum pressure_system system)
{
    struct pressure_choice choice = {demands->replaced_Pa, UNKNOWN, UNKNOWN, UNKNOWN,
                                     REASON_REPLACED};
    if (isinf(demands->replaced_Pa) || isinf(demands->built_Pa) || isinf(demands->rated_Pa))
        return (struct pressure_choice){INFINITY, INFINITY, INFINITY, INFINITY, REASON_REFUSED};
    if (!known(demands->replaced_Pa) || !known(demands->built_Pa))
        return (struct pressure_choice){UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, REASON_NONE};
    take(&choice, demands->built_Pa, REASON_BUILT);
    take(&choice, demands->rated_Pa, REASON_RATED);
    take(&choice, least_pressure_Pa(rating), REASON_FLOOR);
    take(&choice, demands->placard_Pa, REASON_PLACARD);
    if (is_above_ceiling(choice.needed_Pa, ceilings->highest_Pa)) {
        choice.recommended_Pa = choice.least_told_Pa = choice.most_told_Pa = INFINITY;
        choice.reason = REASON_REFUSED;
    } else if (is_above_ceiling(choice.needed_Pa, ceilings->sure_Pa)) {
        choice.reason = REASON_UNREAD;
    } else {
        const double told[PRESSURE_SYSTEM_COUNT] = {
            told_Pa(&choice, rating, ceilings->sure_Pa, PRESSURE_METRIC),
            told_Pa(&choice, rating, ceilings->sure_Pa, PRESSURE_US)};
        choice.recommended_Pa = told[system];
        choice.least_told_Pa = lower_of(told[PRESSURE_METRIC], told[PRESSURE_US]);
        choice.most_told_Pa = higher_of(told[PRESSURE_METRIC], told[PRESSURE_US]);
    }
    return choice;
}

struct pressure_choice choose_pressure(const struct pressure_demands *demands,
                                       const struct tyre_rating *rating,
                                       const struct ceilings *ceilings, enum pressure_system system)
{
    struct pressure_choice choice = choose(demands, rating, ceilings, system);
    if (choice.reason != REASON_REFUSED || !known(demands->built_least_Pa))
        return choice;
    struct pressure_demands least = *demands;
    least.built_Pa = demands->built_least_Pa;
    struct pressure_choice at_least = choose(&least, rating, ceilings, system);
    if (at_least.reason == REASON_REFUSED)
        return choice;
    return (struct pressure_choice){at_least.needed_Pa, UNKNOWN, UNKNOWN, UNKNOWN,
                                    REASON_UNWEIGHED};
}
