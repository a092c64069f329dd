/* The one table of the build file's keys. The walker, the template, the manual and every error text
 * are made from it; a key is added by a field in specification.h and a row in keys*.c. All examples
 * together make a build file that is understood; their figures are those of an invented vehicle. */
#ifndef TYRESUM_BUILD_KEYS_H
#define TYRESUM_BUILD_KEYS_H

#include <stdbool.h>
#include <stddef.h>

#include "base/units.h"

enum key_kind {
    KEY_QUANTITY,        /* double: a number with a unit, or a bare number for KIND_BARE */
    KEY_QUANTITY_PAIR,   /* struct axle_pair: one value or {front: ..., rear: ...} */
    KEY_BOUND,           /* struct bound: a quantity of `unit` or of `second_unit` */
    KEY_TEXT,            /* const char * */
    KEY_LETTER,          /* char: one letter of `choices[0]` */
    KEY_CHOICE,          /* int: index in `choices` */
    KEY_BOOLEAN,         /* int: 1 or 0 */
    KEY_CHOICE_OR_VALUE, /* struct choice_or_value: a word of `choices` or a quantity */
    KEY_DESIGNATION,     /* struct designation in a struct tyre (its `size` and `size_given`) */
    KEY_TEXT_LIST,       /* struct text_list */
    KEY_NUMBER_LIST,     /* struct number_list: quantities of `unit` */
    KEY_NUMBERS,         /* the same, but one quantity alone is a list of one */
    KEY_PAIR_LIST,       /* struct pair_list: [[first, second], ...] of `unit`, `second_unit` */
    KEY_TRIPLE_LIST,     /* struct triple_list: of `unit`, `second_unit`, `third_unit` */
    KEY_MAPPING,         /* a struct whose first member is what it is given by, read by `set` */
    KEY_MAPPING_LIST,    /* a list of those; one mapping alone is a list of one */
    KEY_STATES           /* struct state_list: names with `all` or a list of items */
};

/* Which commands read a key: for their help, and to say what is not used. */
enum key_use {
    USE_SPEEDOMETER = 1,
    USE_GEARING = 2,
    USE_LOAD = 4,
    USE_CLEARANCE = 8,
    USE_SHORTLIST = 16,
    USE_ALL = 31,
    USE_CHOOSING = 32 /* besides: what solving and the shortlist may choose, which hang on it */
};

struct key_set;

struct key {
    const char *name;
    enum key_kind kind : 8;
    enum unit_kind unit : 8, second_unit : 8, third_unit : 8;
    unsigned use : 8;
    bool always : 1;            /* every build file has it */
    bool or_none : 1;           /* of a mapping: `none` says that there is none */
    bool instead : 1;           /* stands for the same as keys before it: only one is given */
    unsigned offset : 20;       /* of the target within its struct */
    double min, max;            /* allowed, in SI, both inclusive; both 0: no limit */
    const char *const *choices; /* NULL-terminated */
    const struct key_set *set;
    const char *doc;     /* one line for the help */
    const char *example; /* as written behind the colon; NULL: the keys of its set have theirs */
    const char *const *columns; /* of a list of values: what a csv calls them; NULL: none does */
    const char *list_form;      /* of a list, as a message shows it where the example does not */
};

struct key_set {
    const struct key *keys;
    size_t count;
    size_t size;                   /* of the struct that is filled */
    const struct key_set *also[2]; /* whose keys the same struct has elsewhere; NULL: no more */
    size_t one_line; /* it may stand in one line: so many values without a name, then NAME VALUE */
};

/* Whatever the struct may hold becomes "not given": UNKNOWN, NULL, CHOICE_NONE, empty. */
void key_set_clear(const struct key_set *set, void *target);

extern const struct key_set build_file_keys;

/* Any tyre's keys, wherever it stands. */
extern const struct key_set spare_keys;

extern const char *const choices_speed_unit[];
extern const char *const choices_setting_kind[];
extern const char *const choices_drive[];

#endif
