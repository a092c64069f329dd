#include "compute/pressure_choice.h"

#include "base/known.h"
#include "base/units.h"

double pressure_to_set_Pa(double pressure_Pa, double ceiling_Pa, enum pressure_system system)
{
    const double steps[PRESSURE_SYSTEM_COUNT][3] = {
        [PRESSURE_METRIC] = {5e3, 1e3, 0.1e3},
        [PRESSURE_US] = {unit_to_si(UNIT_PSI, 1), unit_to_si(UNIT_PSI, 0.1)},
    };
    for (int i = 0; i < 3 && steps[system][i] > 0; i++) {
        double step = steps[system][i];
        double rounded = ceil(pressure_Pa / step - 1e-9) * step;
        if (!clearly_above(rounded, ceiling_Pa))
            return rounded;
    }
    return pressure_Pa;
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
                                     const struct ceilings *ceilings, enum pressure_system system)
{
    struct pressure_choice choice = {demands->replaced_Pa, UNKNOWN, REASON_REPLACED};
    if (isinf(demands->replaced_Pa) || isinf(demands->built_Pa) || isinf(demands->rated_Pa))
        return (struct pressure_choice){INFINITY, INFINITY, REASON_REFUSED};
    if (!known(demands->replaced_Pa) || !known(demands->built_Pa))
        return (struct pressure_choice){UNKNOWN, UNKNOWN, REASON_NONE};
    take(&choice, demands->built_Pa, REASON_BUILT);
    take(&choice, demands->rated_Pa, REASON_RATED);
    take(&choice, demands->floor_Pa, REASON_FLOOR);
    take(&choice, demands->placard_Pa, REASON_PLACARD);
    if (clearly_above(choice.needed_Pa, ceilings->highest_Pa)) {
        choice.recommended_Pa = INFINITY;
        choice.reason = REASON_REFUSED;
    } else if (clearly_above(choice.needed_Pa, ceilings->sure_Pa)) {
        choice.reason = REASON_UNREAD;
    } else {
        choice.recommended_Pa = pressure_to_set_Pa(choice.needed_Pa, ceilings->sure_Pa, system);
    }
    return choice;
}

struct pressure_choice choose_pressure(const struct pressure_demands *demands,
                                       const struct ceilings *ceilings, enum pressure_system system)
{
    struct pressure_choice choice = choose(demands, ceilings, system);
    if (choice.reason != REASON_REFUSED || !known(demands->built_least_Pa))
        return choice;
    struct pressure_demands least = *demands;
    least.built_Pa = demands->built_least_Pa;
    struct pressure_choice at_least = choose(&least, ceilings, system);
    if (at_least.reason == REASON_REFUSED)
        return choice;
    return (struct pressure_choice){at_least.needed_Pa, UNKNOWN, REASON_UNWEIGHED};
}
