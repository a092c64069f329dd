/* What the pressure-loss warning becomes with an option's pressures. */
#include "base/known.h"
#include "compute/pressure_warning.h"
#include "report/load/loaded_setup.h"

/* What a least pressure above 25 % below the recommended one comes to. */
static enum remark_id advice_on(double least_Pa, double recommended_Pa, double ceiling_Pa)
{
    if (clearly_above(recommended_Pa, least_Pa))
        return ADVICE_WARNING_CLOSE;
    return clearly_above(ceiling_Pa, least_Pa) ? ADVICE_WARNING_STAYS : ADVICE_WARNING_OF_MAKER;
}

/* The least of Table 1 can lie above what a light-truck tyre run well below its rating needs, and
 * even above what the wheel may have. */
static void report_threshold(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    enum inflation_key class = pressures->rating.class;
    char load_range = loaded->setup->axle[axle].load_range;
    double told_Pa = pressures->least_told_Pa, ceiling_Pa = pressures->ceilings.sure_Pa;
    double threshold_Pa =
        warning_threshold_Pa(pressures->recommended_Pa, ceiling_Pa, class, load_range);
    double least_Pa = warning_minimum_Pa(class, load_range);
    bool governs = clearly_above(least_Pa, WARNING_SHARE * told_Pa);
    struct figure figure =
        figure_on_axle(QUANTITY_WARNING_THRESHOLD, threshold_Pa, axle, remark(BASIS_THRESHOLD));
    if (governs)
        figure.limit = pressures->recommended_Pa;
    const struct judgement how = {
        .holds = governs ? ANSWER_NO : ANSWER_NOT_ASKED,
        .broken = VERDICT_CAUTION,
        .if_broken = remark(advice_on(least_Pa, told_Pa, ceiling_Pa)),
    };
    figures_add(figures, judged(figure, &how));
}

/* The vehicle's own threshold, as it is handed over. */
static double given_warning_Pa(const struct loaded_setup *loaded, int axle)
{
    const struct as_set *as_set = loaded->setup->as_set;
    double own_Pa = of_axle(loaded->plan->specification->vehicle.pressure_warning_Pa, axle);
    return as_set == NULL ? own_Pa : known_or(as_set->pressure_warning_Pa, own_Pa);
}

/* Whether one is off at the pressures of both axles, in whichever unit they are told. */
static bool is_off_at(const struct loaded_setup *loaded, double threshold_Pa)
{
    double told_Pa = higher_of(pressure_rounded_up_Pa(threshold_Pa, PRESSURE_METRIC),
                               pressure_rounded_up_Pa(threshold_Pa, PRESSURE_US));
    return clearly_above(loaded->axle[AXLE_FRONT].least_told_Pa, told_Pa) &&
           clearly_above(loaded->axle[AXLE_REAR].least_told_Pa, told_Pa);
}

static bool warning_can_be_off(const struct loaded_setup *loaded)
{
    return is_off_at(loaded, WARNING_SHARE * higher_of(loaded->axle[AXLE_FRONT].most_told_Pa,
                                                       loaded->axle[AXLE_REAR].most_told_Pa));
}

/* The least of Table 1 for the tyres of both axles; UNKNOWN where it is silent. */
static double rule_least_Pa(const struct loaded_setup *loaded)
{
    double least_Pa[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        least_Pa[axle] = warning_minimum_Pa(loaded->axle[axle].rating.class,
                                            loaded->setup->axle[axle].load_range);
    return higher_of(least_Pa[AXLE_FRONT], least_Pa[AXLE_REAR]);
}

/* One threshold for the whole vehicle: what the axle that asks for most needs, and the rule's least
 * where that leaves it off. */
static double warning_to_set_Pa(const struct loaded_setup *loaded)
{
    double threshold_Pa = WARNING_SHARE * higher_of(loaded->axle[AXLE_FRONT].recommended_Pa,
                                                    loaded->axle[AXLE_REAR].recommended_Pa);
    double least_Pa = rule_least_Pa(loaded);
    if (is_off_at(loaded, least_Pa))
        threshold_Pa = higher_of(threshold_Pa, least_Pa);
    return pressure_rounded_up_Pa(threshold_Pa, plan_pressure_system(loaded->plan));
}

/* Set anew where the shop may, and where that leaves it off at the pressures of both axles;
 * otherwise the driver is told. */
static struct cure warning_cure(const struct loaded_setup *loaded, int axle, double own_Pa)
{
    const struct specification *specification = loaded->plan->specification;
    double to_set_Pa = warning_to_set_Pa(loaded);
    bool can = known(of_axle(specification->vehicle.pressure_warning_Pa, axle)) &&
               specification->allowed.pressure_warning == 1 && warning_can_be_off(loaded);
    return can ? (struct cure){.task = TASK_PRESSURE_WARNING, .now = own_Pa, .then = to_set_Pa}
               : (struct cure){.task = TASK_TELL, .now = UNKNOWN, .then = UNKNOWN};
}

/* The vehicle's own threshold: as given, or taken as 25 % below the placard; beside 25 % below the
 * recommended pressure. One that comes late is lawful on the road all the same. */
static void report_as_set(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct plan *plan = loaded->plan;
    double recommended_Pa = loaded->axle[axle].least_told_Pa;
    double threshold_Pa = WARNING_SHARE * recommended_Pa;
    double own_Pa = given_warning_Pa(loaded, axle);
    bool taken = !known(own_Pa);
    if (taken)
        own_Pa = WARNING_SHARE * loaded->axle[axle].placard_Pa;
    bool stays_on = known(own_Pa) && !clearly_above(recommended_Pa, own_Pa);
    bool late = known(own_Pa) && !meets_limit(own_Pa, LIMIT_AT_LEAST, threshold_Pa);
    const struct cure cure = warning_cure(loaded, axle, own_Pa);
    double to_set_Pa = known_or(
        cure.then, pressure_rounded_up_Pa(WARNING_SHARE * loaded->axle[axle].recommended_Pa,
                                          plan_pressure_system(plan)));
    struct remark advice = remark(REMARK_NONE);
    if (late)
        advice = REMARK_WITH(plan->arena, ADVICE_WARNING_LATE, say_pressure(to_set_Pa));
    if (stays_on)
        advice = remark(ADVICE_WARNING_ON);
    double least_Pa = rule_least_Pa(loaded);
    if (cure.task == TASK_PRESSURE_WARNING && clearly_above(least_Pa, to_set_Pa))
        advice = REMARK_WITH(plan->arena, ADVICE_WARNING_BELOW_RULE, say_pressure(to_set_Pa),
                             say_pressure(least_Pa));
    const struct remark to_tell = remark(stays_on ? ADVICE_TELL_WARNING_ON
                                         : taken  ? ADVICE_TELL_WARNING_TAKEN
                                                  : ADVICE_TELL_WARNING_LATE);
    const struct judgement how = {
        .holds = answer_of(known(own_Pa), !late && !stays_on),
        .cure = cure,
        .if_broken = advice,
        .if_cured = cure.task == TASK_TELL ? to_tell : advice,
        .if_unknown = remark(ADVICE_GIVE_WARNING),
    };
    struct figure figure =
        figure_on_axle(QUANTITY_WARNING_AS_SET, own_Pa, axle,
                       remark(taken ? BASIS_WARNING_TAKEN : BASIS_WARNING_GIVEN));
    figure.limit = threshold_Pa;
    figure.limit_owner = LIMIT_OF_LAW;
    figures_add(figures, judged(figure, &how));
}

void report_pressure_warning(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    if (!isfinite(loaded->axle[axle].recommended_Pa))
        return; /* its own finding says what is missing, or that no pressure will do */
    report_threshold(loaded, axle, figures);
    report_as_set(loaded, axle, figures);
}
