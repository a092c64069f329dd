#include "compute/pressure_warning.h"

#include "base/known.h"
#include "base/units.h"
#include "tables/lookup.h"

double warning_minimum_Pa(enum inflation_key class, char load_range)
{
    return unit_to_si(UNIT_KPA,
                      pressure_warning_minimum_kPa(inflation_rows[class].class, load_range));
}

double warning_threshold_Pa(double recommended_Pa, enum inflation_key class, char load_range)
{
    if (!known(recommended_Pa))
        return UNKNOWN;
    return higher_of(0.75 * recommended_Pa, warning_minimum_Pa(class, load_range));
}
