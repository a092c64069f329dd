/* What the pressure-loss warning becomes with an option's pressures. */
#include "base/known.h"
#include "compute/pressure_warning.h"
#include "report/load/loaded_setup.h"

static const double warning_share = 0.75; /* 49 CFR 571.138 S4.2: 25 % below */

/* The least of Table 1 can lie above what a light-truck tyre run well below its rating needs: it
 * then governs, and the vehicle's own warning is no finding beside it. */
static bool report_threshold(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    double recommended_Pa = pressures->recommended_Pa;
    double threshold_Pa = warning_threshold_Pa(recommended_Pa, pressures->rating.class,
                                               loaded->setup->axle[axle].load_range);
    bool governs = clearly_above(threshold_Pa, warning_share * recommended_Pa);
    bool above = threshold_Pa >= recommended_Pa * (1 - 1e-9);
    struct figure figure =
        load_figure(QUANTITY_WARNING_THRESHOLD, threshold_Pa, axle, remark(BASIS_THRESHOLD));
    if (governs)
        figure.limit = recommended_Pa;
    const struct judgement how = {
        .holds = governs ? ANSWER_NO : ANSWER_NOT_ASKED,
        .broken = VERDICT_CAUTION,
        .if_broken = remark(above ? ADVICE_WARNING_STAYS : ADVICE_WARNING_CLOSE),
    };
    figures_add(figures, judged(figure, &how));
    return governs;
}

/* The vehicle's own threshold: as given, or taken as 25 % below the placard; beside 25 % below the
 * recommended pressure. One that comes late is lawful on the road all the same: a caution. */
static void report_as_set(const struct loaded_setup *loaded, int axle, bool is_finding,
                          struct figures *figures)
{
    const struct plan *plan = loaded->plan;
    double recommended_Pa = loaded->axle[axle].recommended_Pa;
    double threshold_Pa = warning_share * recommended_Pa;
    double own_Pa = of_axle(plan->specification->vehicle.pressure_warning_Pa, axle);
    bool taken = !known(own_Pa);
    if (taken)
        own_Pa = warning_share * loaded->axle[axle].placard_Pa;
    bool stays_on = own_Pa >= recommended_Pa;
    bool late = known(own_Pa) && !meets_limit(own_Pa, LIMIT_AT_LEAST, threshold_Pa);
    double to_set_Pa = pressure_rounded_up_Pa(threshold_Pa, plan_pressure_system(plan));
    struct remark advice = remark(REMARK_NONE);
    if (late)
        advice = REMARK_WITH(plan->arena, ADVICE_WARNING_LATE, say_pressure(to_set_Pa));
    if (stays_on)
        advice = remark(ADVICE_WARNING_ON);
    struct judgement how = {
        .holds = answer_of(known(own_Pa), !late && !stays_on),
        .broken = VERDICT_CAUTION,
        .if_broken = advice,
        .if_unknown = remark(ADVICE_GIVE_WARNING),
    };
    if (!is_finding)
        how = (struct judgement){.if_met = advice};
    struct figure figure = load_figure(QUANTITY_WARNING_AS_SET, own_Pa, axle,
                                       remark(taken ? BASIS_WARNING_TAKEN : BASIS_WARNING_GIVEN));
    figure.limit = threshold_Pa;
    figure.limit_owner = LIMIT_OF_LAW;
    figures_add(figures, judged(figure, &how));
}

void report_pressure_warning(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    if (!isfinite(loaded->axle[axle].recommended_Pa))
        return; /* its own finding says what is missing, or that no pressure will do */
    bool governed = report_threshold(loaded, axle, figures);
    report_as_set(loaded, axle, !governed, figures);
}
