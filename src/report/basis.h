/* Where the figures of a tyre come from, as rows of the table of remarks. */
#ifndef TYRESUM_REPORT_BASIS_H
#define TYRESUM_REPORT_BASIS_H

#include "compute/dimensions.h"
#include "report/remark.h"

enum { BASIS_SIZE = 448 };

/* Of one figure; of a measuring rim or an end of the permitted rims; and the standard that the
 * least and largest figures of a new tyre come from, with its use class. */
enum remark_id source_remark(enum figure_source source, bool un_r54);
enum remark_id rim_source_remark(enum figure_source source);
enum remark_id envelope_remark(const struct designation *size,
                               const struct tyre_dimensions *figures);

/* All of a tyre's figures, a group each: "diameter: UN R30 rule; limits: ...; rims: ...". Writes
 * a NUL and returns the length. */
size_t basis_of_figures(const struct designation *size, const struct tyre_dimensions *figures,
                        char text[BASIS_SIZE]);

#endif
