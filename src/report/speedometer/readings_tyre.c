/* Whether the readings can have been taken on the tyre that readings_on says, by the error that they
 * give the instrument on the fitted tyre: the one the file knows, or one that a maker's may have. */
#include "base/known.h"
#include "base/units.h"
#include "report/speedometer/gauge.h"

/* As near to fitted_error as a road test is expected to come (common practice, no source). */
static const double near_enough = 0.01;

/* The error on the fitted tyre if the readings were taken on a setup of the plan. */
static double error_if_on(const struct gauge *gauge, size_t setup)
{
    const struct beside *beside = &gauge->plan->beside[setup];
    double shown = calibrated_shown(gauge->calibration, gauge->at_mps);
    return shown / gauge->at_mps * beside->after[gauge->axle].rolling_circumference_m /
               beside->before[gauge->axle].rolling_circumference_m -
           1;
}

/* What an error on the fitted tyre is off by: from fitted_error, or from what UN R39 lets a maker's
 * instrument read, never under and at most 10 % + 4 km/h over, beyond what the readings leave open.
 */
static double off_by(const struct gauge *gauge, double error)
{
    const struct law maker = {.rule = speedometer_rule_find("un_r39"),
                              .top_mps = INFINITY,
                              .lowest_mps = INFINITY};
    double given = gauge->instrument->fitted_error, at = gauge->at_mps;
    struct speed_range lawful = lawful_shown(&maker, at);
    double half = known_or(calibrated_half_interval_95(gauge->calibration, at), 0) / at;
    double under = lawful.from_mps / at - 1 - error, over = error - (lawful.to_mps / at - 1);
    double off = known(given) ? fabs(error - given) - near_enough : fmax(under, over) - half;
    return clearly_above(1 + off, 1) ? off : 0;
}

static struct argument say_percent(double fraction)
{
    return say_quantity(fraction, UNIT_PERCENT, UNIT_PERCENT, 1);
}

static struct remark meant(const struct gauge *gauge)
{
    double given = gauge->instrument->fitted_error;
    return known(given)
               ? REMARK_WITH(gauge->plan->arena, PHRASE_NOT_AS_GIVEN, say_percent(given))
               : remark(PHRASE_MAKERS_NEVER_UNDER);
}

/* Of the other tyres the one with which the error is as meant; nearest to it where several are. */
static struct remark other_tyre(const struct gauge *gauge)
{
    const struct plan *plan = gauge->plan;
    double least = INFINITY;
    size_t found = plan->count;
    for (size_t i = 0; i < plan->count; i++) {
        double error = error_if_on(gauge, i);
        double far = fabs(error - known_or(gauge->instrument->fitted_error, 0));
        if (off_by(gauge, error) == 0 && far < least) {
            least = far;
            found = i;
        }
    }
    return found == plan->count
               ? remark(PHRASE_WHICH_TYRE)
               : REMARK_WITH(plan->arena, PHRASE_ON_THAT_TYRE, say_text(plan->setups[found].name),
                             say_percent(error_if_on(gauge, found)));
}

struct remark readings_elsewhere(const struct gauge *gauge)
{
    struct arena *arena = gauge->plan->arena;
    double error = speed_error(gauge->line, gauge->at_mps);
    if (gauge->source != LINE_OF_READINGS || !known(error) || !(off_by(gauge, error) > 0))
        return remark(REMARK_NONE);
    return REMARK_WITH(arena, ADVICE_READ_ELSEWHERE, say_text(gauge->measured.name),
                       say_percent(error), say_remark(arena, meant(gauge)),
                       say_remark(arena, other_tyre(gauge)));
}
