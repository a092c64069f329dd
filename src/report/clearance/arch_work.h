/* Work that the file allows in a wheel arch, and which of it meets each room that is short. */
#ifndef TYRESUM_REPORT_CLEARANCE_ARCH_WORK_H
#define TYRESUM_REPORT_CLEARANCE_ARCH_WORK_H

#include "report/clearance/arch.h"

/* Sets the tyre's work. A longer bump stop goes before trimming,
 * which goes before a spacer; what is to be trimmed for one room gives all others as much, and what
 * a spacer does for the room inside it does at lock as well. `tighter`: the work for a tyre that
 * leaves less room all round, which is done anyway; or NULL. */
void arch_work_make(const struct wheel_arch *arch, const struct arch_work *tighter,
                    struct arch_tyre *tyre);

/* What cures a room that is short, with the least amount that does, rounded up where that is
 * allowed; and what to say of it. TASK_NONE where no work does. */
struct cure arch_cure(const struct wheel_arch *arch, const struct arch_tyre *tyre,
                      enum arch_room room, double room_m);
struct remark arch_cure_told(const struct wheel_arch *arch, const struct cure *cure);

#endif
