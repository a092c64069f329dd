/* All parts of a build, as an outcome needs them. */
#include "report/plan.h"

void report_every_part(const struct plan *plan, struct figures *figures)
{
    report_tyre(plan, figures);
    report_clearance(plan, figures);
    report_load(plan, figures);
    report_speedometer(plan, figures);
    report_gearing(plan, figures);
}
