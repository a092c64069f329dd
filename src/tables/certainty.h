/* How sure a figure is. These words stand here and nowhere else: tables/, the tests of published
 * values and every basis use them. From the surest to the least sure; a table is as sure as the
 * least sure of its rows. A table's column `certainty`, or one that ends in _certainty, holds one
 * of them in every row.
 *
 *    the word, what it says */
#ifndef TYRESUM_TABLES_CERTAINTY_H
#define TYRESUM_TABLES_CERTAINTY_H

#define PUBLISHED "published"
#define DERIVED "derived"
#define COMMON_PRACTICE "common practice"
#define FROM_MEMORY "from memory"

#define CERTAINTIES(X)                                                                             \
    X(PUBLISHED, "read in the publication that is named, or where another that is named quotes")   \
    X(DERIVED, "follows from what is published by steps that are told, or fits its rows")          \
    X(COMMON_PRACTICE, "as the trade does it; no source is known")                                 \
    X(FROM_MEMORY, "the publication is named and its text was not seen")

#endif
