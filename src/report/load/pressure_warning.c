/* What the pressure-loss warning becomes with an option's pressures. */
#include "base/known.h"
#include "compute/pressure_warning.h"
#include "report/judge.h"
#include "report/load/view.h"

static const char threshold_basis[] =
    "25 % below the recommended pressure (49 CFR 571.138 S4.2), or the least of its Table 1 "
    "(from memory)";

static char range_of(const struct load_view *view, int axle)
{
    return view->setup->axle[axle].load_range;
}

/* The least of Table 1 can lie above what a light-truck tyre run well below its rating needs. */
static bool report_threshold(const struct load_view *view, int axle, double threshold_Pa,
                             struct figures *figures)
{
    const struct axle_pressures *pressures = &view->axle[axle];
    struct figure figure = figure_of(QUANTITY_WARNING_THRESHOLD, threshold_Pa, threshold_basis);
    figure.axle = axle;
    if (threshold_Pa > 0.75 * pressures->recommended_Pa * (1 + 1e-9)) { /* Table 1 governs */
        bool above = threshold_Pa >= pressures->recommended_Pa * (1 - 1e-9);
        figure.limit = pressures->recommended_Pa;
        figure.verdict = VERDICT_CAUTION;
        figure.action = above ? "the least warning pressure is not below the recommended one: the "
                                "warning would stay on; inflate above it, or ask the tyre maker"
                              : "the least warning pressure is close below the recommended one: "
                                "the warning leaves little room";
    }
    figures_add(figures, figure);
    return figure.verdict == VERDICT_CAUTION;
}

/* The vehicle's own threshold: as given, or taken as 25 % below the placard; beside 25 % below the
 * recommended pressure. Judged only where Table 1 has not been found to stand in the way. */
static void report_as_set(const struct load_view *view, int axle, bool judged,
                          struct figures *figures)
{
    const struct plan *plan = view->plan;
    const struct axle_pair *given = &plan->specification->vehicle.pressure_warning_Pa;
    double threshold_Pa = 0.75 * view->axle[axle].recommended_Pa;
    double own_Pa = of_axle(*given, axle);
    bool taken = !known(own_Pa);
    if (taken)
        own_Pa = 0.75 * view->axle[axle].placard_Pa;
    struct figure figure = figure_of(QUANTITY_WARNING_AS_SET, own_Pa,
                                     taken ? "taken as 25 % below the placard (49 CFR 571.138 S4.2)"
                                           : "vehicle: pressure_warning");
    figure.axle = axle;
    figure = figure_at_least(figure, threshold_Pa);
    if (figure.verdict == VERDICT_UNKNOWN)
        figure.action = "give vehicle: pressure_warning or tyres: fitted: placard";
    if (figure.verdict == VERDICT_FAIL) { /* late, yet lawful on the road: a caution */
        figure.verdict = VERDICT_CAUTION;
        figure.action = arena_format(
            plan->arena, "comes late for the recommended pressure: have it set to %s",
            pressure_text(plan, pressure_rounded_up_Pa(threshold_Pa, plan_pressure_system(plan))));
    }
    if (own_Pa >= view->axle[axle].recommended_Pa) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = "stays on at the recommended pressure: have it set anew";
    }
    if (!judged)
        figure.verdict = VERDICT_NONE;
    figures_add(figures, figure);
}

void report_pressure_warning(const struct load_view *view, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &view->axle[axle];
    if (!isfinite(pressures->recommended_Pa))
        return; /* its own finding says what is missing, or that no pressure will do */
    double threshold_Pa = warning_threshold_Pa(pressures->recommended_Pa, pressures->rating.class,
                                               range_of(view, axle));
    bool governed = report_threshold(view, axle, threshold_Pa, figures);
    report_as_set(view, axle, !governed, figures);
}
