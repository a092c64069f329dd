/* What the load part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_LOAD_REMARKS_H
#define TYRESUM_REPORT_LOAD_REMARKS_H

#define LOAD_REMARKS(X) X(BASIS_LOAD_FIRST, "")

#endif
