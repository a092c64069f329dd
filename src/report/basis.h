/* In words: where the figures of a tyre come from. */
#ifndef TYRESUM_REPORT_BASIS_H
#define TYRESUM_REPORT_BASIS_H

#include "compute/dimensions.h"

enum { BASIS_SIZE = 320 };

/* The source of one figure: "UN R30 rule", "as moulded", "data book". */
const char *source_text(enum figure_source source, bool un_r54);

/* The source of a measuring rim or of the permitted rims. */
const char *rim_source_text(enum figure_source source);

/* The standard that the least and largest figures of a new tyre come from, and its use class. */
const char *envelope_text(const struct designation *size, const struct tyre_figures *figures);

/* All of a tyre's figures, a group each: "diameter: UN R30 rule; limits: ...; rims: ...". Writes
 * a NUL and returns the length. */
size_t basis_of_figures(const struct designation *size, const struct tyre_figures *figures,
                        char text[BASIS_SIZE]);

#endif
