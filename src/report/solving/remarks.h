/* What the solving part says of its figures: rows of the table of remarks (report/remarks.h). */
#ifndef TYRESUM_REPORT_SOLVING_REMARKS_H
#define TYRESUM_REPORT_SOLVING_REMARKS_H

#define SOLVING_REMARKS(X)                                                                         \
    X(BASIS_LEAST_CHANGE, "no allowed set has fewer changes; then: {}")                            \
    X(BASIS_LEAST_OF_TRIED, "the fewest changes in {} of {} sets; then: {}")                       \
    X(BASIS_ALL_CHANGES, "all sets of the changes that the file allows")                           \
    X(BASIS_SOME_CHANGES, "sets of the changes that the file allows, not all tried")               \
    X(BASIS_MAY_BE_OFF, "each input changed alone, within what a measurement may be off by")       \
    X(ADVICE_MAY_BE_OFF, "{}: {}")                                                                 \
    X(PHRASE_BEYOND_THAT, "beyond that {}")                                                        \
    X(ADVICE_ONE_OPTION_ALONE, "not looked for of so many tyres: ask for one with --option")       \
    X(ADVICE_TOO_MANY_INPUTS, "not looked for: too many states and items")                         \
    X(ADVICE_TAKE_OTHER_WHEEL, "order the {} {} wide, inset {}")                                   \
    X(ADVICE_TAKE_OTHER_RATIO, "order the axle ratio {}")                                          \
    X(ADVICE_TAKE_OTHER_SPRING, "{} spring {}")                                                    \
    X(ADVICE_RAISE_BY, "raise the {} by {}")                                                       \
    X(ADVICE_LOWER_BY, "lower the {} by {}")                                                       \
    X(ADVICE_LEAST_TASK, "{}")                                                                     \
    X(ADVICE_LEAST_AMOUNT, "{}: {}")                                                               \
    X(ADVICE_NOTHING_DOES, "no allowed work makes it go: {}")                                      \
    X(ADVICE_NO_CHANGE_DOES, "no allowed change makes it go ({} tried): {}")                       \
    X(ADVICE_NOT_ALL_TRIED, "{} of {} sets of changes tried, none makes it go: {}")                \
    X(PHRASE_BARS_EACH, "{} stands in the way")                                                    \
    X(PHRASE_BARS_EACH_BY, "{} stands in the way, by {} at best")                                  \
    X(PHRASE_BARS_BEFORE_WORK, "{} stands in the way, by {} at best before work on the arch")      \
    X(PHRASE_NEAREST_BREAKS, "the nearest breaks {}")

#endif
