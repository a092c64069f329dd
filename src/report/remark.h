/* What is said of a figure (its basis, its advice) as facts: a row of the table of remarks and
 * what fills its gaps. The sentence is made in reading/remark_text.c, and nothing reads it back. */
#ifndef TYRESUM_REPORT_REMARK_H
#define TYRESUM_REPORT_REMARK_H

#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "base/units.h"
#include "report/remarks.h"

#define REMARK_ID(id, ...) id,
enum remark_id { REMARK_NONE, REMARKS(REMARK_ID) REMARK_COUNT };
#undef REMARK_ID

enum argument_kind {
    ARGUMENT_TEXT,     /* of the file or a table: a name, a row's source */
    ARGUMENT_NUMBER,   /* bare, with so many decimals */
    ARGUMENT_RATIO,    /* two decimals, or three where it has them */
    ARGUMENT_QUANTITY, /* in the first or the second unit, as the user's system is */
    ARGUMENT_PRESSURE, /* 240 kPa or 34.8 psi */
    ARGUMENT_ENOUGH,   /* a length without its sign, rounded up to the mm or to 0.01 in */
    ARGUMENT_SPEED,    /* in the unit that is named: whole, or with one decimal */
    ARGUMENT_REMARK    /* a remark within */
};

struct remark;
struct argument {
    enum argument_kind kind;
    int decimals;
    enum unit_id unit, unit_us;
    double value; /* SI */
    const char *text;
    const struct remark *remark;
};

struct remark {
    enum remark_id id;
    size_t count;
    const struct argument *arguments; /* one a gap, in order */
};

/* A remark without gaps. */
static inline struct remark remark(enum remark_id id)
{
    return (struct remark){.id = id};
}

/* A remark with its gaps filled, copied into the arena: REMARK_WITH(arena, id, argument...). */
struct remark remark_make(struct arena *arena, enum remark_id id, const struct argument *arguments,
                          size_t count);
#define REMARK_WITH(arena, id, ...)                                                                \
    remark_make(arena, id, (const struct argument[]){__VA_ARGS__},                                 \
                sizeof((const struct argument[]){__VA_ARGS__}) / sizeof(struct argument))

struct argument say_text(const char *text);
struct argument say_number(double value, int decimals);
struct argument say_ratio(double ratio);
struct argument say_quantity(double si, enum unit_id unit, enum unit_id unit_us, int decimals);
struct argument say_pressure(double pressure_Pa);
struct argument say_enough(double length_m);
struct argument say_speed(double speed_mps, enum unit_id unit);
/* Copied, so that it may be made on the spot. */
struct argument say_remark(struct arena *arena, struct remark remark);

bool remark_same(const struct remark *a, const struct remark *b);

/* What a row of a reference table says of where it stands, and how sure it is. */
struct remark remark_quoted(struct arena *arena, const char *basis, const char *certainty);

/* Whether it, or a remark within it, rests on what is from memory: its row then says so. */
bool rests_on_memory(const struct remark *remark);

/* The text of a row, each gap as "{}"; and the keys of the build file that give what it asks for,
 * or whose value it stands for, which are told apart from the words: NULL where there are none. */
const char *remark_row_text(enum remark_id id);
const char *remark_row_key(enum remark_id id);

#endif
