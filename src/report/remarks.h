/* The table of all that is said of figures: an identifier, the words, a gap as {}, and the keys of
 * the build file where it has to do with some, told apart. BASIS_ rows say where a figure or its
 * limit comes from, ADVICE_ rows what to do, TAKEN_ rows what was taken where the file is silent,
 * PHRASE_ rows stand within others. A part has its rows in its folder. */
#ifndef TYRESUM_REPORT_REMARKS_H
#define TYRESUM_REPORT_REMARKS_H

#include "report/clearance/remarks.h"
#include "report/gearing/remarks.h"
#include "report/load/remarks.h"
#include "report/solving/remarks.h"
#include "report/speedometer/remarks.h"
#include "report/tyre/remarks.h"
#include "tables/certainty.h"

/* Rows of no part alone. */
#define COMMON_REMARKS(X)                                                                          \
    X(BASIS_QUOTED, "{}") /* a row of a reference table says it */                                 \
    X(BASIS_QUOTED_FROM_MEMORY, "{}, " FROM_MEMORY)                                                \
    X(BASIS_ASSUMPTION, "assumption")                                                              \
    X(BASIS_OTHER_OPTIONS, "of other options alone")                                               \
    X(BASIS_BUILD_FILE, "build file")                                                              \
    X(ADVICE_GIVE_THE_KEY, "measure or look up what it needs", "{}")

#define REMARKS(X)                                                                                 \
    COMMON_REMARKS(X)                                                                              \
    TYRE_REMARKS(X)                                                                                \
    CLEARANCE_REMARKS(X)                                                                           \
    LOAD_REMARKS(X)                                                                                \
    SPEEDOMETER_REMARKS(X)                                                                         \
    GEARING_REMARKS(X)                                                                             \
    SOLVING_REMARKS(X)

#endif
