/* Results as tidy rows, a figure each, the same for every part. A figure is facts: numbers into the
 * plan, typed places, rows of tables; words are made of it in reading/. A figure with a verdict is
 * a finding. Values are in SI; the unit and decimals are the quantity's. */
#ifndef TYRESUM_REPORT_FIGURES_H
#define TYRESUM_REPORT_FIGURES_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "build/specification.h"
#include "report/place.h"
#include "report/quantities.h"
#include "report/remark.h"
#include "report/tasks.h"

enum part {
    PART_TYRE,
    PART_CLEARANCE,
    PART_LOAD,
    PART_SPEEDOMETER,
    PART_GEARING,
    PART_SOLVING,
    PART_COUNT
};

/* Ordered worst first. Written by the judge alone (judge.h). A task is not met as the vehicle
 * stands and is met by work that is known and allowed. */
enum verdict {
    VERDICT_NONE,
    VERDICT_FAIL,
    VERDICT_UNKNOWN,
    VERDICT_TASK,
    VERDICT_CAUTION,
    VERDICT_OK,
    VERDICT_COUNT
};

enum { AXLE_NONE = -1, STATE_NONE = -1, DECIMALS_OF_QUANTITY = -1 };

/* Whether a figure stands in the terminal's sheet, and not only in its part's own table; or only in
 * the rows of csv and json, where it would be a long detail beside the others. */
enum headline { HEADLINE_NO, HEADLINE_YES, HEADLINE_UNLESS_OK, HEADLINE_ROWS_ONLY };

enum limit_side { LIMIT_NO_SIDE, LIMIT_AT_LEAST, LIMIT_AT_MOST };
/* Whose the limit is. */
enum limit_owner {
    LIMIT_OF_NOBODY,
    LIMIT_OF_LAW,
    LIMIT_OF_MAKER,
    LIMIT_OF_HOUSE,
    LIMIT_OF_PHYSICS
};

/* What decides a figure, by number. */
enum governor_kind {
    GOVERNED_BY_NOTHING,
    GOVERNED_BY_POINT,  /* of the measured list that the quantity looks at */
    GOVERNED_BY_ITEM,   /* of `carried` */
    GOVERNED_BY_RATING, /* enum rating */
    GOVERNED_BY_TYRES   /* of an axle */
};
struct governor {
    enum governor_kind kind;
    int number;
    const char *name; /* that the file gives it, or NULL */
};

/* Work that would meet the limit, each by itself, and how much of it. */
enum cure_kind { CURE_BUMP_STOP, CURE_LIFT, CURE_TRIM, CURE_INSET, CURE_COUNT };
struct cures {
    double amount[CURE_COUNT];         /* INFINITY: none does it; UNKNOWN: something is lacking */
    unsigned offered;                  /* bits: whether it was looked for */
    struct remark lacking[CURE_COUNT]; /* what must be known to tell it, where it is not */
};

struct figure {
    enum part part; /* set by the driver, as `setup` is */
    enum quantity_id quantity;
    int setup; /* of the plan; 0 is fitted */
    int state; /* of the file, or STATE_NONE */
    int axle;  /* enum axle, or AXLE_NONE */
    struct place place;
    double value; /* UNKNOWN where something is missing */
    double limit; /* UNKNOWN where there is none */
    enum limit_side limit_side;
    enum limit_owner limit_owner;
    enum verdict verdict;
    struct remark basis, advice;
    struct remark instead; /* in a table for reading, where the value is unknown for a reason */
    struct governor governed_by;
    const struct cures *cures; /* of a broken limit, or NULL */
    struct cure cure;          /* of a task, and what finds out what is unknown */
    enum headline headline;
    int decimals;        /* where they are not the quantity's; DECIMALS_OF_QUANTITY */
    bool instrument_mph; /* speeds in the instrument's own unit: */
    bool instrument_kmh;
};

/* What was taken, in the words of one part: the same statement has the same number in all setups.
 */
struct taken {
    struct remark text;
    enum part part;
    int number, setup; /* the last setup that took it */
};

struct figures {
    struct arena *arena; /* of what a figure points to */
    struct arena *room;  /* of the figures themselves; NULL: the same */
    bool verdicts_only;  /* what is only told is left out */
    size_t first_setup;  /* those before it have been reported */
    struct figure *items;
    size_t count, capacity;
    enum part part; /* of what is added now: the driver's */
    int setup;
    struct taken *taken; /* figures_add numbers them */
    size_t taken_count, taken_capacity;
};

/* A figure with no state, axle, place, limit or verdict: to be filled up and added. */
struct figure figure_of(enum quantity_id quantity, double value);
/* The same with its basis. */
struct figure figure_by(enum quantity_id quantity, double value, struct remark basis);
/* The same of one axle, or of AXLE_NONE. */
struct figure figure_on_axle(enum quantity_id quantity, double value, int axle,
                             struct remark basis);
/* Gives it the part and the setup that the driver is at, and an assumption its number there. */
void figures_add(struct figures *figures, struct figure figure);
/* A figure that has them. */
void figures_add_as_is(struct figures *figures, struct figure figure);

/* Empties it for another round, whose figures may point into another arena. */
void figures_restart(struct figures *figures, struct arena *arena);

/* What is taken where the file is silent, if it is. */
void figures_assume(struct figures *figures, bool is_taken, struct remark taken);

/* The one comparison of figures: of the fields that are asked for. */
enum figure_fields {
    SAME_PART = 1 << 0,
    SAME_SETUP = 1 << 1,
    SAME_STATE = 1 << 2,
    SAME_AXLE = 1 << 3,
    SAME_QUANTITY = 1 << 4,
    SAME_PLACE = 1 << 5,
    SAME_VALUE = 1 << 6, /* with its decimals and unit */
    SAME_LIMIT = 1 << 7,
    SAME_VERDICT = 1 << 8,
    SAME_BASIS = 1 << 9, /* and what governs */
    SAME_ADVICE = 1 << 10,
    SAME_ALL = (1 << 11) - 1
};
bool figure_same(const struct figure *a, const struct figure *b, unsigned fields);

/* The fields that make two findings one matter: another state or size of tyre does not, another
 * rule or pressure does where the quantity's row says so. */
unsigned figure_matter(const struct figure *figure);

const char *part_name(enum part part);
const char *verdict_name(enum verdict verdict);
const char *axle_name(int axle); /* "front", "rear" or "" */

#endif
