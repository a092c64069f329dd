/* Where the figures of a tyre come from, as rows of the table of remarks. */
#ifndef TYRESUM_REPORT_BASIS_H
#define TYRESUM_REPORT_BASIS_H

#include <stdint.h>

#include "compute/dimensions.h"
#include "report/remark.h"

enum { BASIS_SIZE = 448 };

/* Of one figure; of a measuring rim or an end of the permitted rims; and the standard that the
 * least and largest figures of a new tyre come from, with its use class. */
enum remark_id source_remark(enum figure_source source, bool un_r54);
enum remark_id rim_source_remark(enum figure_source source);
enum remark_id envelope_remark(const struct designation *size,
                               const struct tyre_dimensions *figures);

/* What the basis of all of a tyre's figures is made of, as one number: the same for all plain sizes
 * of a kind. */
uint64_t basis_kind(const struct designation *size, const struct tyre_dimensions *figures);

/* All figures of a tyre of that kind, a group each: "diameter: UN R30 rule; limits: ...; rims:
 * ...". Writes a NUL and returns the length. */
size_t basis_text(uint64_t kind, char text[BASIS_SIZE]);

#endif
