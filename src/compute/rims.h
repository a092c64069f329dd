/* Measuring and permitted rims of every form, and the section width on a rim. Metres. */
#ifndef TYRESUM_COMPUTE_RIMS_H
#define TYRESUM_COMPUTE_RIMS_H

#include <stdbool.h>

#include "size/designation.h"
#include "tables/tables_data.h"

/* Where a figure comes from, for the `basis`. */
enum figure_source {
    SOURCE_NONE,       /* unknown */
    SOURCE_RULE,       /* the rules of the standard, from the designation */
    SOURCE_DERIVED,    /* by a factor that fits what is printed, and not from memory */
    SOURCE_MOULDED,    /* it is in the designation itself */
    SOURCE_TABLE,      /* a table of sizes in tables/ */
    SOURCE_CONVENTION, /* 82 series taken where no aspect ratio is moulded */
    SOURCE_DATA_BOOK   /* given in the build file under data_book */
};

/* A tyre as its section is nominally, on a rim of that width (UNKNOWN: its measuring rim). */
struct tyre_on_rim {
    const struct designation *size;
    double section_width_m, section_height_m, rim_width_m;
};

struct rims {
    double measuring_m, min_m, max_m; /* min, max: of those permitted */
    double section_width_m;           /* on the rim */
    enum figure_source measuring_source, permitted_source;
};

/* The series that a size without an aspect ratio is taken for, per cent. */
enum { FULL_PROFILE_ASPECT = 82 };

/* 15 degree drop centre rims of heavy vehicles (ISO 4209), 17.5 inches and up. */
bool on_heavy_rim(const struct designation *size);

/* The size as UN R54 Annex 5 lists it; NULL for other forms and where it is not listed. */
const struct flotation_sizes_row *listed_flotation(const struct designation *size);

/* UN R30 6.1.1.1: section width on a rim, S = S1 + 0.4 (A - A1), to whole millimetres. */
double section_width_on_rim_m(double nominal_width_m, double rim_width_m, double theoretical_rim_m);

/* Metric sizes by the factors of table rim_factors (ISO 4000-1, UN R30 6.1.1); the others from
 * tables, or unknown: a 15 degree rim has widths that no factor gives, and a temporary spare a rim
 * of its own kind. */
void rims_by_rule(const struct tyre_on_rim *tyre, struct rims *out);

#endif
