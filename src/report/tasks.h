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

/*    identifier, name, kind, what is done, metric unit, us unit, decimals metric, decimals us */
#define TASKS(X)                                                                                   \
    X(READ_SIDEWALL, "read_sidewall", TASK_TO_MEASURE, "read the sidewall", UNIT_BARE, UNIT_BARE,  \
      0, 0)                                                                                        \
    X(MEASURE, "measure", TASK_TO_MEASURE, "measure", UNIT_BARE, UNIT_BARE, 0, 0)                  \
    X(READ_WHEEL, "read_wheel", TASK_TO_MEASURE, "read the wheel", UNIT_BARE, UNIT_BARE, 0, 0)     \
    X(TRY_WHEEL, "try_wheel", TASK_TO_MEASURE, "try the wheel on", UNIT_BARE, UNIT_BARE, 0, 0)     \
    X(SPARE, "spare", TASK_TO_ORDER, "spare of the set", UNIT_BARE, UNIT_BARE, 0, 0)               \
    X(WHEEL, "wheel", TASK_TO_ORDER, "wheel", UNIT_BARE, UNIT_BARE, 0, 0)                          \
    X(AXLE_RATIO, "axle_ratio", TASK_TO_ORDER, "axle ratio", UNIT_BARE, UNIT_BARE, 3, 3)           \
    X(UNLOAD, "unload", TASK_TO_UNLOAD, "leave out", UNIT_KG, UNIT_LB, 0, 0)                       \
    X(BUMP_STOP, "bump_stop", TASK_TO_ALTER, "longer bump stop", UNIT_MM, UNIT_IN, 0, 2)           \
    X(TRIM_ARCH, "trim_arch", TASK_TO_ALTER, "trim the arch", UNIT_MM, UNIT_IN, 0, 2)              \
    X(SPACER, "spacer", TASK_TO_ALTER, "spacer", UNIT_MM, UNIT_IN, 0, 2)                           \
    X(TYRE_PRESSURE, "tyre_pressure", TASK_TO_SET, "cold pressure", UNIT_KPA, UNIT_PSI, 0, 0)      \
    X(SPEEDOMETER_SETTING, "speedometer_setting", TASK_TO_SET, "speedometer", UNIT_BARE,           \
      UNIT_BARE, 2, 2)                                                                             \
    X(PRESSURE_WARNING, "pressure_warning", TASK_TO_SET, "pressure warning", UNIT_KPA, UNIT_PSI,   \
      0, 0)                                                                                        \
    X(HEADLAMP_AIM, "headlamp_aim", TASK_TO_SET, "headlamp dip", UNIT_PERCENT, UNIT_PERCENT, 1, 1) \
    X(PRESSURE_LABEL, "pressure_label", TASK_TO_LABEL, "the new pressures beside the placard",     \
      UNIT_BARE, UNIT_BARE, 0, 0)                                                                  \
    X(SPEED_LABEL, "speed_label", TASK_TO_LABEL, "the tyres' speed in the driver's view",          \
      UNIT_KMH, UNIT_MPH, 0, 0)                                                                    \
    X(TELL, "tell", TASK_TO_TELL, "the driver", UNIT_BARE, UNIT_BARE, 0, 0)

#define TASK_ID(id, name, kind, title, metric, us, decimals, decimals_us) TASK_##id,
enum task_id { TASK_NONE, TASKS(TASK_ID) TASK_COUNT };
#undef TASK_ID

struct task_row {
    const char *name;
    enum task_kind kind;
    const char *title;
    enum unit_id metric, us;
    int decimals_metric, decimals_us;
};

extern const struct task_row task_rows[TASK_COUNT];

/* "order", "set": as a row of `tasks` has it. */
const char *task_kind_name(enum task_kind kind);

/* A task as the cure of a figure that does not meet its limit, with what is now and then: a number
 * in SI or a text. TASK_NONE: no work that is known and allowed meets it. */
struct cure {
    enum task_id task;
    double now, then;
    const char *now_text, *then_text;
};

#endif
