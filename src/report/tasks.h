/* Work on an option, in workshop order: what is measured or read, ordered, left behind, altered,
 * set, labelled and told. Each task is the cure of at least one finding. */
#ifndef TYRESUM_REPORT_TASKS_H
#define TYRESUM_REPORT_TASKS_H

#include "base/units.h"

enum task_kind {
    KIND_NO_TASK,
    TASK_TO_MEASURE,
    TASK_TO_ORDER,
    TASK_TO_UNLOAD,
    TASK_TO_ALTER,
    TASK_TO_SET,
    TASK_TO_LABEL,
    TASK_TO_TELL
};

/* How a task is told from another of its name, and how its number is rounded. */
enum task_policy {
    TASK_BY_AXLE = 1 << 0,    /* each axle has its own */
    TASK_BY_WORDS = 1 << 1,   /* each thing that is asked for or told is its own */
    TASK_BY_ITEM = 1 << 2,    /* each item in each state, by the place of its figure */
    TASK_ROUNDED_UP = 1 << 3, /* what gets set is never below what is needed */
    TASK_LOWEST = 1 << 4      /* of several amounts the lowest serves for all */
};

/*    identifier, name, kind, what is done, the same in a word of a table, metric unit, us unit,
 *    decimals metric, decimals us, policy */
#define TASKS(X)                                                                                   \
    X(READ_SIDEWALL, "read_sidewall", TASK_TO_MEASURE, "read the sidewall", "read the sidewall",   \
      UNIT_BARE, UNIT_BARE, 0, 0, TASK_BY_AXLE)                                                    \
    X(MEASURE, "measure", TASK_TO_MEASURE, "measure or read", "measure", UNIT_BARE, UNIT_BARE, 0,  \
      0, TASK_BY_WORDS)                                                                            \
    X(READ_WHEEL, "read_wheel", TASK_TO_MEASURE, "read the wheel", "read the wheel", UNIT_BARE,    \
      UNIT_BARE, 0, 0, TASK_BY_AXLE)                                                               \
    X(TRY_WHEEL, "try_wheel", TASK_TO_MEASURE, "try the wheel on", "try the wheel", UNIT_BARE,     \
      UNIT_BARE, 0, 0, TASK_BY_AXLE)                                                               \
    X(SPARE, "spare", TASK_TO_ORDER, "spare of the set", "spare", UNIT_BARE, UNIT_BARE, 0, 0, 0)   \
    X(WHEEL, "wheel", TASK_TO_ORDER, "wheel", "wheel", UNIT_BARE, UNIT_BARE, 0, 0, TASK_BY_AXLE)   \
    X(AXLE_RATIO, "axle_ratio", TASK_TO_ORDER, "axle ratio", "axle ratio", UNIT_BARE, UNIT_BARE,   \
      3, 3, 0)                                                                                     \
    X(UNLOAD, "unload", TASK_TO_UNLOAD, "leave out", "unload", UNIT_KG, UNIT_LB, 0, 0,             \
      TASK_BY_ITEM)                                                                                \
    X(BUMP_STOP, "bump_stop", TASK_TO_ALTER, "longer bump stop", "bump stop", UNIT_MM, UNIT_IN, 1, \
      2, TASK_BY_AXLE)                                                                             \
    X(TRIM_ARCH, "trim_arch", TASK_TO_ALTER, "trim the arch", "trim", UNIT_MM, UNIT_IN, 1, 2,      \
      TASK_BY_AXLE)                                                                                \
    X(SPACER, "spacer", TASK_TO_ALTER, "spacer", "spacer", UNIT_MM, UNIT_IN, 1, 2, TASK_BY_AXLE)   \
    X(TYRE_PRESSURE, "tyre_pressure", TASK_TO_SET, "cold pressure", "pressure", UNIT_KPA,          \
      UNIT_PSI, 0, 0, TASK_BY_AXLE | TASK_ROUNDED_UP)                                              \
    X(SPEEDOMETER_SETTING, "speedometer_setting", TASK_TO_SET, "speedometer", "setting",           \
      UNIT_BARE, UNIT_BARE, 2, 2, 0)                                                               \
    X(PRESSURE_WARNING, "pressure_warning", TASK_TO_SET, "pressure warning", "warning", UNIT_KPA,  \
      UNIT_PSI, 0, 0, TASK_ROUNDED_UP)                                                             \
    X(HEADLAMP_AIM, "headlamp_aim", TASK_TO_SET, "headlamp dip", "lamp aim", UNIT_PERCENT,         \
      UNIT_PERCENT, 1, 1, 0)                                                                       \
    X(PRESSURE_LABEL, "pressure_label", TASK_TO_LABEL, "the new pressures beside the placard",     \
      "label", UNIT_BARE, UNIT_BARE, 0, 0, 0)                                                      \
    X(SPEED_LABEL, "speed_label", TASK_TO_LABEL, "the tyres' speed in the driver's view", "label", \
      UNIT_KMH, UNIT_MPH, 0, 0, TASK_LOWEST)                                                       \
    X(TELL, "tell", TASK_TO_TELL, "the driver", "tell", UNIT_BARE, UNIT_BARE, 0, 0, TASK_BY_WORDS)

#define TASK_ID(id, name, kind, title, word, metric, us, decimals, decimals_us, policy) TASK_##id,
enum task_id { TASK_NONE, TASKS(TASK_ID) TASK_COUNT };
#undef TASK_ID

struct task_row {
    const char *name;
    enum task_kind kind;
    const char *title, *word;
    enum unit_id metric, us;
    int decimals_metric, decimals_us;
    unsigned policy; /* enum task_policy */
};

extern const struct task_row task_rows[TASK_COUNT];

/* "order", "set": as a row of `tasks` has it. */
const char *task_kind_name(enum task_kind kind);

/* A task as the cure of a figure that does not meet its limit, with what is now and then: a number
 * in SI, or a text, which goes before a number: of a spare its designations. TASK_NONE: no work
 * that is known and allowed meets it. */
struct cure {
    enum task_id task;
    double now, then;
    const char *now_text, *then_text;
    double most; /* what `then` may not pass when it is rounded up; 0: nothing */
};

#endif
