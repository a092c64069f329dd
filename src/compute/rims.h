/* Measuring and permitted rims of every form, and the section width on a rim. Metres. */
#ifndef TYRESUM_COMPUTE_RIMS_H
#define TYRESUM_COMPUTE_RIMS_H

#include <stdbool.h>

#include "compute/dimensions.h"
#include "tables/tables_data.h"

/* 15 degree drop centre rims of heavy vehicles (ISO 4209), 17.5 inches and up. */
bool on_heavy_rim(const struct designation *size);

/* The size as UN R54 Annex 5 lists it; NULL for other forms and where it is not listed. */
const struct flotation_sizes_row *listed_flotation(const struct designation *size);

/* Sets measuring and permitted rims, where they come from, and the width on the rim given (UNKNOWN:
 * the measuring rim). Nominal width and diameter must be set. Metric sizes by the factors of table
 * rim_factors (ISO 4000-1, UN R30 6.1.1); the others from tables, or unknown: a 15 degree rim has
 * widths that no factor gives, and a temporary spare a rim of its own kind. */
void rims_by_rule(const struct designation *size, double rim_width_m, struct tyre_figures *out);

#endif
