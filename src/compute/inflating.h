/* Air in a tyre, and the time that a compressor takes to bring it up. Lengths in m, volumes in
 * m3, pressures in Pa (gauge). */
#ifndef TYRESUM_COMPUTE_INFLATING_H
#define TYRESUM_COMPUTE_INFLATING_H

#include "compute/dimensions.h"

/* Standard atmosphere (ISO 2533). */
#define ATMOSPHERE_PA 101325.0

/* Air volume of the cavity: an elliptic ring of the tyre's section width and height about the rim,
 * pi/4 S H * pi (D + d)/2. Common practice, no source; within about 15 %: the walls take some of
 * it, the rim well adds some. */
double cavity_volume_m3(const struct tyre_dimensions *figures);

/* Air at atmospheric pressure that raises a volume from one gauge pressure to another at the same
 * temperature, V (P2 - P1)/P0 (Boyle); 0 where it need not rise. */
double free_air_m3(double volume_m3, double from_Pa, double to_Pa);

#endif
