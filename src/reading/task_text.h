/* A task in words and numbers: what is now, what then, in which unit, and why. */
#ifndef TYRESUM_READING_TASK_TEXT_H
#define TYRESUM_READING_TASK_TEXT_H

#include "reading/part_table.h"

/* What `now` and `then` are in: "kPa", of a setting its kind; "" without. */
const char *task_unit(const struct plan *plan, const struct task *task, bool us);
/* Whether the other unit system has it in another unit. */
bool task_has_two_units(const struct task *task);

/* `now` or `then` in that unit, UNKNOWN where it is a text or not given, and its decimals. */
struct task_number {
    double value;
    int decimals;
};
struct task_number task_now(const struct plan *plan, const struct task *task, bool us);
struct task_number task_then(const struct plan *plan, const struct task *task, bool us);

/* `then`, which must be known, without zeros that say nothing. */
const char *task_then_text(const struct layout *layout, const struct task *task, bool us);

/* "cold pressure, front: 210 -> 330 kPa (30 -> 48 psi)": both units of a pressure side by side. */
const char *task_text(const struct layout *layout, const struct task *task);
/* The same with what its finding says of it. */
const char *task_text_in_full(const struct layout *layout, const struct task *task);

/* What a setup needs beside pressures and the setting, in words of a table: "spare, trim"; of what
 * is to be measured only how much; "-" without. */
const char *other_work_text(const struct layout *layout, size_t setup);

#endif
