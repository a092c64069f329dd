/* What the solving part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_SOLVING_REMARKS_H
#define TYRESUM_REPORT_SOLVING_REMARKS_H

#define SOLVING_REMARKS(X)                                                                         \
    X(BASIS_LEAST_CHANGE, "the fewest of the changes that the file allows, every smaller set "     \
                          "tried; then: {}")                                                       \
    X(BASIS_ALL_CHANGES, "all sets of the changes that the file allows")                           \
    X(BASIS_MAY_BE_OFF, "each input changed alone, within what a measurement may be off by")       \
    X(ADVICE_MAY_BE_OFF, "{}: {}")                                                                 \
    X(PHRASE_BEYOND_THAT, "beyond that {}")                                                        \
    X(ADVICE_ONE_OPTION_ALONE, "not looked for of so many tyres: ask for one with --option")       \
    X(ADVICE_TOO_MANY_INPUTS, "not looked for: too many states and items")                         \
    X(ADVICE_TAKE_OTHER_WHEEL, "order the wheel {} wide, inset {}")                                \
    X(ADVICE_TAKE_OTHER_RATIO, "order the axle ratio {}")                                          \
    X(ADVICE_TAKE_OTHER_SPRING, "fit the spring {}")                                               \
    X(ADVICE_RAISE_BY, "raise it by {}")                                                           \
    X(ADVICE_LOWER_BY, "lower it by {}")                                                           \
    X(ADVICE_NO_CHANGE_DOES, "no allowed change makes it go ({} tried): {} stands in the way")     \
    X(ADVICE_TOO_MANY_CHANGES, "{} sets of changes, of which {} are tried: name fewer choices")

#endif
