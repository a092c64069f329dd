#include "compute/inflating.h"

#include "base/known.h"
#include "base/units.h"

double cavity_volume_m3(const struct tyre_dimensions *figures)
{
    double section_m2 = PI / 4 * figures->section_width_m * figures->section_height_m;
    return section_m2 * PI * (figures->overall_diameter_m + figures->rim_diameter_m) / 2;
}

double free_air_m3(double volume_m3, double from_Pa, double to_Pa)
{
    double rise = volume_m3 * (to_Pa - from_Pa) / ATMOSPHERE_PA;
    return rise < 0 ? 0 : rise;
}
