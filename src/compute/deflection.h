/* How far a loaded tyre gives, by its vertical stiffness. Masses in kg, pressures in Pa (gauge),
 * lengths in m. */
#ifndef TYRESUM_COMPUTE_DEFLECTION_H
#define TYRESUM_COMPUTE_DEFLECTION_H

#include "compute/dimensions.h"
#include "size/designation.h"

/* Vertical stiffness in kg of load per m of deflection. T. B. Rhyne, Development of a Vertical
 * Stiffness Relationship for Belted Radial Tires, Tire Science and Technology 33(3), 2005,
 * 136-155 (coefficients from memory):
 *     Kz (kg/mm) = 0.00028 P (kPa) sqrt((1.03 - 0.004 Ra) S D) + 3.45
 * S nominal section width and D overall diameter in mm, Ra nominal aspect ratio in per cent (of the
 * figures, where the size has none). For belted radial passenger
 * tyres about their rated load; at light-truck pressures it is extrapolated. UNKNOWN for other
 * constructions and where a figure is missing. */
double vertical_stiffness_kg_m(const struct tyre_dimensions *figures,
                               const struct designation *size, double pressure_Pa);

/* load / Kz; UNKNOWN beyond half of the section height, where no relation of this kind holds
 * (common practice, no source). */
double tyre_deflection_m(const struct tyre_dimensions *figures, const struct designation *size,
                         double pressure_Pa, double load_kg);

/* How much more it gives under one load than under another, at one pressure; UNKNOWN where it is so
 * under either. */
double added_deflection_m(const struct tyre_dimensions *figures, const struct designation *size,
                          double pressure_Pa, double before_kg, double after_kg);

/* Axle centre to ground: D/2 less the deflection. */
double loaded_radius_m(const struct tyre_dimensions *figures, double deflection_m);

/* Chord that the ground cuts off the round tyre, 2 sqrt(2 R d - d^2): geometry alone; the patch
 * that bears is shorter, since the tread lifts off at its ends. */
double contact_chord_m(const struct tyre_dimensions *figures, double deflection_m);

#endif
