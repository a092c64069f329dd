/* All parts of a build, as an outcome needs them. */
#include "report/plan.h"

void report_every_part(const struct plan *plan, struct figures *figures)
{
    static void (*const parts[])(const struct plan *, struct figures *) = {
        report_tyre, report_clearance, report_load, report_speedometer, report_gearing,
    };
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
        parts[i](plan, figures);
}
