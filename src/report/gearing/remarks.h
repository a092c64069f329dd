/* What the gearing part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_GEARING_REMARKS_H
#define TYRESUM_REPORT_GEARING_REMARKS_H

#define GEARING_REMARKS(X) X(BASIS_GEARING_FIRST, "")

#endif
