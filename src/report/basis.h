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

/* What the basis of all of a tyre's figures is made of: the same for all plain sizes of a kind. */
struct basis_rows {
    enum remark_id diameter, limits, width, rolling, radius, measuring_rim, permitted_rims;
    unsigned temporary;
};
struct basis_rows basis_rows_of(const struct designation *size,
                                const struct tyre_dimensions *figures);

/* All of a tyre's figures, a group each: "diameter: UN R30 rule; limits: ...; rims: ...". Writes
 * a NUL and returns the length. */
size_t basis_text(const struct basis_rows *rows, char text[BASIS_SIZE]);

#endif
