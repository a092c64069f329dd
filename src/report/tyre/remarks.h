/* What the tyre part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_TYRE_REMARKS_H
#define TYRESUM_REPORT_TYRE_REMARKS_H

#define TYRE_REMARKS(X) X(BASIS_TYRE_FIRST, "")

#endif
