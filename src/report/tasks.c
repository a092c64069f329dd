#include "report/tasks.h"

#define TASK_ROW(id, name, kind, title, word, metric, us, decimals, decimals_us, policy)           \
    [TASK_##id] = {name, kind, title, word, metric, us, decimals, decimals_us, policy},
const struct task_row task_rows[TASK_COUNT] = {
    [TASK_NONE] = {"", KIND_NO_TASK, "", "", UNIT_BARE, UNIT_BARE, 0, 0, 0}, TASKS(TASK_ROW)};
#undef TASK_ROW

const char *task_kind_name(enum task_kind kind)
{
    static const char *const names[] = {"",      "measure", "order", "unload",
                                        "alter", "set",     "label", "tell"};
    return names[kind];
}
