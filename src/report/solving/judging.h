/* What solving may cost in one sheet: judgements, each as heavy as the build's states and items. */
#ifndef TYRESUM_REPORT_SOLVING_JUDGING_H
#define TYRESUM_REPORT_SOLVING_JUDGING_H

#include "build/specification.h"

struct judging {
    size_t left, each;
    /* A copy of the file's, in which values are changed and put back; NULL until it is needed. */
    struct fitment *options;
};

/* About a microsecond a unit, as measured: half a second. */
enum { JUDGING_MOST = 500000 };
struct judging judging_begin(const struct specification *specification);

/* Takes so many judgements from what is left; false, and nothing taken, where that is too little.
 */
bool judging_take(struct judging *judging, size_t count);

/* An equal share for one of so many that are to be judged. */
struct judging judging_share(struct judging *judging, size_t among);

#endif
