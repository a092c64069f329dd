/* Results as tidy rows, a figure each, the same for every part. A figure with a verdict is a
 * finding. Values are in SI; the unit and decimals are the quantity's. */
#ifndef TYRESUM_REPORT_FIGURES_H
#define TYRESUM_REPORT_FIGURES_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "report/quantities.h"
#include "build/specification.h"

enum part { PART_TYRE, PART_CLEARANCE, PART_LOAD, PART_SPEEDOMETER, PART_GEARING, PART_COUNT };

/* Ordered worst first: fail, unknown, caution, ok. */
enum verdict { VERDICT_NONE, VERDICT_FAIL, VERDICT_UNKNOWN, VERDICT_CAUTION, VERDICT_OK };

enum { AXLE_NONE = -1, DECIMALS_OF_QUANTITY = -1 };

/* Whether a figure stands in the terminal's sheet, and not only in its part's own table; or only in
 * the rows of csv and json, where it would be a long detail beside the others. */
enum headline { HEADLINE_NO, HEADLINE_YES, HEADLINE_UNLESS_OK, HEADLINE_ROWS_ONLY };

struct figure {
    enum part part;
    enum quantity_id quantity;
    const char *option;
    const char *state; /* NULL where the figure has none */
    int axle;          /* enum axle, or AXLE_NONE */
    const char *at;    /* NULL where it needs none */
    const char *word;  /* in a table for reading, where the value is unknown for a reason */
    const char *line;  /* in a table for reading, instead of `at`, where that differs by option */
    double value;      /* UNKNOWN where something is missing */
    double limit;      /* UNKNOWN where there is none */
    enum verdict verdict;
    const char *basis, *action;
    enum headline headline;
    int decimals;        /* where they are not the quantity's; DECIMALS_OF_QUANTITY */
    bool instrument_mph; /* speeds in the instrument's own unit: */
    bool instrument_kmh;
};

struct figures {
    struct arena *arena;
    struct figure *items;
    size_t count, capacity;
};

/* A figure with no state, axle, limit or verdict: to be filled up and added. */
struct figure figure_of(enum part part, enum quantity_id quantity, const char *option, double value,
                        const char *basis);
void figures_add(struct figures *figures, struct figure figure);

const char *part_name(enum part part);
const char *verdict_name(enum verdict verdict);
const char *axle_name(int axle); /* "front", "rear" or "" */

/* Fills in the verdict by a limit: fail below (or above) it; unknown where the value is. */
struct figure figure_at_least(struct figure figure, double limit);
struct figure figure_at_most(struct figure figure, double limit);

/* By the bound that is broken or nearest; the upper one where both are as near, whatever a
 * conversion of units makes of the last bit. UNKNOWN: no such bound. */
struct figure figure_within(struct figure figure, double min, double max);

#endif
