#include "compute/pressure_warning.h"

#include "base/known.h"
#include "base/units.h"
#include "tables/lookup.h"

double warning_minimum_Pa(enum inflation_key class, char load_range)
{
    return unit_to_si(UNIT_KPA,
                      pressure_warning_minimum_kPa(inflation_rows[class].class, load_range));
}

double warning_threshold_Pa(double recommended_Pa, double ceiling_Pa, enum inflation_key class,
                            char load_range)
{
    double least_Pa = warning_minimum_Pa(class, load_range);
    bool in_reach = clearly_above(recommended_Pa, least_Pa) || clearly_above(ceiling_Pa, least_Pa);
    if (!known(recommended_Pa))
        return UNKNOWN;
    return higher_of(WARNING_SHARE * recommended_Pa, in_reach ? least_Pa : UNKNOWN);
}
