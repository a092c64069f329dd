/* What the speedometer part says of its figures: rows of the table of remarks (report/remarks.h).
 */
#ifndef TYRESUM_REPORT_SPEEDOMETER_REMARKS_H
#define TYRESUM_REPORT_SPEEDOMETER_REMARKS_H

#define SPEEDOMETER_REMARKS(X) X(BASIS_SPEEDOMETER_FIRST, "")

#endif
