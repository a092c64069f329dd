#include "compute/deflection.h"

#include "base/known.h"

/* The ratio that is moulded, and not the one that whole millimetres of section height make of it.
 */
static double aspect_ratio(const struct tyre_dimensions *figures, const struct designation *size)
{
    return size->aspect_percent > 0 ? size->aspect_percent / 100.0
                                    : figures->section_height_m / figures->section_width_m;
}

double vertical_stiffness_kg_m(const struct tyre_dimensions *figures,
                               const struct designation *size, double pressure_Pa)
{
    if (size->construction != CONSTRUCTION_RADIAL)
        return UNKNOWN;
    double width_mm = figures->section_width_m * 1e3;
    double diameter_mm = figures->overall_diameter_m * 1e3;
    double aspect = aspect_ratio(figures, size);
    double size_mm2 = (1.03 - 0.4 * aspect) * width_mm * diameter_mm;
    if (!(size_mm2 > 0))
        return UNKNOWN;
    double kg_per_mm = 0.00028 * (pressure_Pa * 1e-3) * sqrt(size_mm2) + 3.45;
    return kg_per_mm * 1e3;
}

double tyre_deflection_m(const struct tyre_dimensions *figures, const struct designation *size,
                         double pressure_Pa, double load_kg)
{
    double deflection = load_kg / vertical_stiffness_kg_m(figures, size, pressure_Pa);
    return deflection <= figures->section_height_m / 2 ? deflection : UNKNOWN;
}

double added_deflection_m(const struct tyre_dimensions *figures, const struct designation *size,
                          double pressure_Pa, double before_kg, double after_kg)
{
    return tyre_deflection_m(figures, size, pressure_Pa, after_kg) -
           tyre_deflection_m(figures, size, pressure_Pa, before_kg);
}

double loaded_radius_m(const struct tyre_dimensions *figures, double deflection_m)
{
    return figures->overall_diameter_m / 2 - deflection_m;
}

double contact_chord_m(const struct tyre_dimensions *figures, double deflection_m)
{
    double radius = figures->overall_diameter_m / 2;
    return 2 * sqrt(deflection_m * (2 * radius - deflection_m));
}
