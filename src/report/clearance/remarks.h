/* What the clearance part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_CLEARANCE_REMARKS_H
#define TYRESUM_REPORT_CLEARANCE_REMARKS_H

#define CLEARANCE_REMARKS(X) X(BASIS_CLEARANCE_FIRST, "")

#endif
