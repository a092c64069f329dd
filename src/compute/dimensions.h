/* Dimensions of a tyre by the rules of UN R30 and UN R54, and its rolling. All lengths in
 * metres. A figure that the rules cannot give for a form (a numeric size without a table row,
 * say) is UNKNOWN. */
#ifndef TYRESUM_COMPUTE_DIMENSIONS_H
#define TYRESUM_COMPUTE_DIMENSIONS_H

#include <stdbool.h>

#include "build/specification.h"
#include "compute/rims.h"

struct tyre_dimensions {
    double section_width_m;  /* nominal, as moulded */
    double section_height_m; /* (overall diameter - rim diameter) / 2 */
    double rim_diameter_m;
    double overall_diameter_m, overall_diameter_min_m, overall_diameter_max_m;
    double width_on_rim_m;     /* section width on the wheel given, or on the measuring rim */
    double width_on_rim_max_m; /* the widest that the standard allows there */
    double rolling_circumference_m;
    double static_loaded_radius_m; /* at the rated load */
    double measuring_rim_m, rim_min_m, rim_max_m;
    enum figure_source diameter_source, circumference_source, radius_source, width_source;
    enum figure_source measuring_rim_source, rim_min_source, rim_max_source;
    bool un_r54; /* tolerances of UN R54, otherwise of UN R30 */
};

/* A tyre twice: by the rules alone, and with every figure of its data book put in. */
struct tyre_measures {
    struct tyre_dimensions by_rule, stated;
};

/* UN R30 6.1.2 (from memory): H = 0.01 S1 Ra, rounded to whole millimetres, halves up. */
int section_height_mm(int section_width_mm, int aspect_percent);

/* Rolling circumference C = factor * D, ETRTO: 3.05 radial, 2.99 diagonal. */
double rolling_circumference_m(enum construction construction, double overall_diameter_m);

/* Rolling circumference with so much less tread: C (D - 2 lost) / D, as if all of the tread's
 * thickness were radius. Geometry; the belt of a radial tyre keeps it from shrinking quite so far,
 * so this is the far end of what wear does. */
double worn_circumference_m(double circumference_m, double overall_diameter_m, double lost_m);

/* Static loaded radius at the rated load, 0.912 D/2 (C = 2 pi (2/3 free + 1/3 loaded)). */
double static_loaded_radius_m(enum construction construction, double overall_diameter_m);

/* Figures of a designation on a rim of that width (UNKNOWN: its measuring rim). The envelope is
 * that of UN R30 or UN R54 6.1.4 and 6.1.5 by construction and use, as the marks say (M+S, POR). */
void figures_by_rule(const struct designation *size, double rim_width_m,
                     struct tyre_dimensions *out);

/* The two halves of it, for who needs the first alone: diameter, width, rolling and loaded radius;
 * and the rims, the width on one, and the envelope. */
void figures_without_rim(const struct designation *size, struct tyre_dimensions *out);
void figures_on_rim(const struct designation *size, double rim_width_m,
                    struct tyre_dimensions *out);

/* Both, for a tyre of a build file with its own wheel. */
void tyre_measure(const struct tyre *tyre, struct tyre_measures *out);

/* Same rule for both tyres: where only one of two has a data-book figure, both figures are by
 * rule, since a difference of two sources invents clearance and speed. Sets *mixed where a
 * data-book figure was set aside so. */
void figures_to_compare(const struct tyre *first, const struct tyre *second,
                        struct tyre_dimensions *first_out, struct tyre_dimensions *second_out,
                        bool *mixed);

#endif
