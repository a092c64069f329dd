/* What an axle's tyres carry, the pressure that they need, and why. */
#include "base/known.h"
#include "base/units.h"
#include "report/load/loaded_setup.h"
#include "tables/lookup.h"

enum { NEEDS_OF_CAPACITY = 3, NEEDS_OF_PRESSURE = 5 }; /* the last is of the pressure itself */

enum remark_id ask_for_load(enum tyre_group group)
{
    bool by_load_range = group == GROUP_LIGHT_TRUCK || group == GROUP_TRAILER;
    return by_load_range ? ADVICE_GIVE_LOAD_RANGE : ADVICE_GIVE_MOULDED_LOAD;
}

/* What the sidewall must be read for. */
struct remark read_sidewall(const struct plan *plan, double needed_Pa, double highest_Pa)
{
    double asked_Pa = pressure_to_set_Pa(needed_Pa, highest_Pa, plan_pressure_system(plan));
    return REMARK_WITH(plan->arena, ADVICE_READ_SIDEWALL, say_pressure(asked_Pa));
}

/* What a capacity at the placard hangs on, in this order, and then what a pressure does. */
static void find_needs(const struct plan *plan, const struct axle_pressures *axle,
                       struct need needs[NEEDS_OF_PRESSURE])
{
    bool unweighed = axle->reason == REASON_UNWEIGHED;
    double doubt_kg = tyre_doubt_kg(plan->specification, axle->dual);
    bool rated = known(axle->capacity_max_kg) && known(axle->demand_replaced_kg);
    needs[0] =
        (struct need){known(axle->placard_Pa) && !axle->rating.completed,
                      remark(axle->rating.completed ? ADVICE_WRITE_SIZE : ADVICE_GIVE_PLACARD)};
    needs[1] = (struct need){known(axle->rating.reference_Pa),
                             remark(ask_for_load(tyre_group(axle->rating.class)))};
    needs[2] = (struct need){
        rated, axle->fitted_unread
                   ? REMARK_WITH(plan->arena, ADVICE_OF_FITTED,
                                 say_remark(plan->arena, remark(ask_for_load(axle->placard_group))))
                   : remark(ADVICE_GIVE_LOAD_INDICES)};
    needs[3] = (struct need){known(axle->load_built_kg), remark(ADVICE_AXLE_LOAD_UNKNOWN)};
    needs[4] =
        (struct need){axle->reason != REASON_UNREAD && !unweighed,
                      unweighed ? weigh_again(plan->arena, doubt_kg)
                                : read_sidewall(plan, axle->needed_Pa, axle->ceilings.highest_Pa)};
}

/* What to do where the tyre carries less at the placard than the fitted one did. */
static struct remark less_than_fitted(struct arena *arena, const struct axle_pressures *axle)
{
    struct remark inflate = remark(REMARK_NONE);
    if (isfinite(axle->recommended_Pa))
        inflate = REMARK_WITH(arena, PHRASE_INFLATE_TO, say_pressure(axle->recommended_Pa));
    return REMARK_WITH(arena, ADVICE_LESS_THAN_FITTED, say_remark(arena, inflate));
}

/* What finds out what the pressure hangs on. */
static enum task_id find_out(const struct axle_pressures *axle)
{
    bool unread = !known(axle->rating.reference_Pa) || axle->reason == REASON_UNREAD;
    return axle->rating.completed || (known(axle->placard_Pa) && unread) ? TASK_READ_SIDEWALL
                                                                         : TASK_NONE;
}

/* The pressure to set, where one is known and allowed. */
static struct cure set_pressure(const struct axle_pressures *axle)
{
    if (!isfinite(axle->recommended_Pa))
        return (struct cure){.task = TASK_NONE};
    return (struct cure){.task = TASK_TYRE_PRESSURE,
                         .now = axle->stands_Pa,
                         .then = axle->recommended_Pa,
                         .most = isfinite(axle->ceilings.sure_Pa) ? axle->ceilings.sure_Pa : 0};
}

static bool is_allowed(const struct axle_pressures *axle, double pressure_Pa)
{
    return isfinite(pressure_Pa) && !is_above_ceiling(pressure_Pa, axle->ceilings.highest_Pa);
}

/* The same tyre class at the old placard may carry less than the fitted tyre did: the headline.
 * What is handed over at another pressure is judged at that one. */
static void report_at_placard(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    struct arena *arena = loaded->plan->arena;
    bool fitted = loaded->setup->is_fitted;
    struct need needs[NEEDS_OF_PRESSURE];
    find_needs(loaded->plan, pressures, needs);
    struct figure figure = figure_on_axle(QUANTITY_TYRE_CAPACITY, pressures->capacity_at_placard_kg,
                                          axle, capacity_basis(arena, pressures));
    figure.place.pressure_as = AT_PLACARD;
    figure.headline = HEADLINE_YES;
    figure.limit_owner = fitted ? LIMIT_OF_PHYSICS : LIMIT_OF_MAKER;
    /* What the fitted tyre carried says nothing of a build that is heavier than that. */
    bool by_load = fitted || clearly_above(pressures->load_built_kg, pressures->demand_replaced_kg);
    figure = limited_at_least(figure,
                              by_load ? pressures->load_built_kg : pressures->demand_replaced_kg);
    if (known(as_set_Pa(loaded->setup, (enum axle)axle)))
        figure.limit_side = LIMIT_NO_SIDE;
    double tolerance_kg = weighing_of_tyre_kg(loaded, axle);
    bool broken = figure.limit_side != LIMIT_NO_SIDE && known(figure.value) &&
                  known(figure.limit) && !meets_limit(figure.value, LIMIT_AT_LEAST, figure.limit);
    /* More pressure may cure it, and how much hangs on the load. */
    bool unloaded =
        !known(pressures->load_built_kg) && is_allowed(pressures, pressures->demands.replaced_Pa);
    if (broken && !unloaded) /* what must be read first may not be set yet */
        needs[NEEDS_OF_CAPACITY] = needs[NEEDS_OF_PRESSURE - 1];
    const struct cure cure = set_pressure(pressures);
    /* A pressure that is surely enough is set then, and there is nothing to weigh. */
    bool doubtful = by_load && figure.limit_side != LIMIT_NO_SIDE &&
                    clearly_above(tolerance_kg, fabs(figure.value - figure.limit));
    const struct judgement how = {
        .needs = needs,
        .need_count = fitted || broken ? NEEDS_OF_CAPACITY + 1 : NEEDS_OF_CAPACITY,
        .holds = doubtful && cure.task != TASK_NONE ? ANSWER_NO : ANSWER_NOT_ASKED,
        .cure = cure,
        .ask = find_out(pressures),
        .tolerance = by_load ? tolerance_kg : 0,
        .if_doubtful = weigh_again(arena, tolerance_kg),
        .if_broken = by_load ? remark(ADVICE_PLACARD_TOO_LOW) : less_than_fitted(arena, pressures),
    };
    figures_add(figures, judged(figure, &how));
}

/* What was added to the table pressure, where anything was. */
struct remark for_speed(struct arena *arena, const struct tyre_rating *rating)
{
    enum remark_id as_for_w = rating->speed_pressure_assumed ? PHRASE_AS_FOR_W : REMARK_NONE;
    if (!(rating->speed_pressure_Pa > 0))
        return remark(REMARK_NONE);
    return REMARK_WITH(arena, PHRASE_FOR_SPEED, say_pressure(rating->speed_pressure_Pa),
                       say_remark(arena, remark(as_for_w)));
}

static struct remark reason_of(const struct plan *plan, const struct axle_pressures *axle)
{
    struct arena *arena = plan->arena;
    switch (axle->reason) {
    case REASON_REPLACED:
        return REMARK_WITH(arena, BASIS_AS_REPLACED, say_mass(axle->demand_replaced_kg));
    case REASON_BUILT:
        return REMARK_WITH(arena, BASIS_AS_BUILT, say_mass(axle->demand_built_kg),
                           say_text(plan_state_name(plan, axle->heaviest_state)),
                           say_remark(arena, for_speed(arena, &axle->rating)));
    case REASON_RATED:
        return REMARK_WITH(arena, BASIS_AS_RATED, say_mass(axle->demand_rated_kg),
                           say_remark(arena, for_speed(arena, &axle->rating)));
    case REASON_FLOOR:
        return remark(BASIS_CLASS_FLOOR);
    case REASON_PLACARD:
        return remark(BASIS_PLACARD_FLOOR);
    case REASON_REFUSED:
        return remark(BASIS_REFUSED);
    case REASON_UNREAD:
        return REMARK_WITH(arena, BASIS_UNREAD, say_pressure(axle->ceilings.sure_Pa));
    case REASON_UNWEIGHED:
        return remark(BASIS_UNWEIGHED);
    case REASON_NONE:
        break;
    }
    return capacity_basis(arena, axle);
}

/* What no allowed pressure meets: the build itself before all else. */
static struct remark if_refused(struct arena *arena, const struct axle_pressures *axle,
                                bool is_fitted)
{
    if (known(axle->demands.built_Pa) && !is_allowed(axle, axle->demands.built_Pa))
        return remark(ADVICE_MORE_CAPACITY);
    if (!is_fitted && known(axle->demands.replaced_Pa) &&
        !is_allowed(axle, axle->demands.replaced_Pa))
        return REMARK_WITH(arena, ADVICE_NOT_WHAT_FITTED_DID, say_mass(axle->demand_replaced_kg));
    if (known(axle->demands.rated_Pa) && !is_allowed(axle, axle->demands.rated_Pa))
        return REMARK_WITH(arena, ADVICE_NOT_HALF_THE_RATING, say_mass(axle->demand_rated_kg));
    return remark(ADVICE_PLACARD_TOO_HIGH);
}

double ceiling_told_Pa(const struct plan *plan, double ceiling_Pa, double pressure_Pa)
{
    double told_Pa = nominal_told_Pa(ceiling_Pa, plan->us);
    if (!isfinite(ceiling_Pa))
        return UNKNOWN;
    return clearly_above(pressure_Pa, told_Pa) ? ceiling_reach_Pa(ceiling_Pa) : told_Pa;
}

static double or_none(double ceiling_Pa)
{
    return isfinite(ceiling_Pa) ? ceiling_Pa : UNKNOWN;
}

static void report_recommended(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    const struct plan *plan = loaded->plan;
    bool refused = pressures->reason == REASON_REFUSED;
    bool assumed = pressures->rating.ceiling_assumed, rated = known(pressures->demand_rated_kg);
    struct need needs[NEEDS_OF_PRESSURE];
    find_needs(plan, pressures, needs);
    struct figure figure =
        figure_on_axle(QUANTITY_PRESSURE_RECOMMENDED, or_none(pressures->recommended_Pa), axle,
                       reason_of(plan, pressures));
    figure.headline = HEADLINE_YES;
    figure.limit_owner = LIMIT_OF_MAKER;
    figure = limited_at_most(figure, ceiling_told_Pa(plan,
                                                     refused ? pressures->ceilings.highest_Pa
                                                             : pressures->ceilings.sure_Pa,
                                                     figure.value));
    const struct judgement how = {
        .needs = needs,
        .need_count = refused ? 0 : NEEDS_OF_PRESSURE, /* whatever else is not known */
        .holds = answer_of(pressures->reason != REASON_NONE, !refused),
        .ask = find_out(pressures),
        .met = assumed || !rated ? VERDICT_CAUTION : VERDICT_OK,
        .if_met = remark(assumed  ? ADVICE_READ_MAXIMUM
                         : !rated ? ADVICE_GIVE_RATING_TOO
                                  : REMARK_NONE),
        .if_broken = if_refused(plan->arena, pressures, loaded->setup->is_fitted),
        .if_unknown = remark(ADVICE_AXLE_LOAD_UNKNOWN),
    };
    figures_add(figures, judged(figure, &how));
}

/* Handed over at the pressure that it is said to have, else at the placard's: enough, and no more
 * than tyre and wheel may have. Where none would do, or none is known, the recommended one says so.
 */
static void report_as_set(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    double stands_Pa = pressures->stands_Pa;
    bool named = known(as_set_Pa(loaded->setup, (enum axle)axle));
    bool settled = isfinite(pressures->recommended_Pa);
    double ceiling_Pa = settled ? pressures->ceilings.sure_Pa : pressures->ceilings.highest_Pa;
    bool too_high = is_above_ceiling(stands_Pa, ceiling_Pa);
    struct figure figure = figure_on_axle(QUANTITY_PRESSURE_AS_SET, stands_Pa, axle,
                                          remark(named ? BASIS_AS_SET : BASIS_PLACARD_STANDS));
    figure.limit_owner = LIMIT_OF_MAKER;
    /* Of a need that is a nominal pair, its lower one is enough. */
    double needed_Pa = pressures->needed_Pa;
    if (stands_Pa < needed_Pa)
        needed_Pa = lower_of(needed_Pa, pressures->least_told_Pa);
    if (named && too_high) /* whatever else is not known */
        figure = limited_at_most(figure, ceiling_Pa);
    else if (settled)
        figure =
            too_high ? limited_at_most(figure, ceiling_Pa) : limited_at_least(figure, needed_Pa);
    const struct judgement how = {
        .cure = set_pressure(pressures),
        .if_broken = remark(too_high ? ADVICE_LET_DOWN : ADVICE_INFLATE),
    };
    if (known(stands_Pa))
        figures_add(figures, judged(figure, &how));
}

static void report_capacities(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    double recommended = pressures->capacity_at_recommended_kg;
    struct figure figure = figure_on_axle(QUANTITY_TYRE_CAPACITY, recommended, axle,
                                          capacity_basis(loaded->plan->arena, pressures));
    figure.place.pressure_as = AT_RECOMMENDED;
    if (known(figure.value))
        figures_add(figures, figure);
    figure.place.pressure_as = AT_MAXIMUM;
    figure.value = pressures->capacity_max_kg;
    figures_add(figures, figure);
    figure = figure_on_axle(QUANTITY_CAPACITY_LEFT, recommended / pressures->load_built_kg - 1,
                            axle, remark(BASIS_CAPACITY_LEFT));
    if (known(figure.value))
        figures_add(figures, figure);
}

/* Why a demand has no pressure to be shown. */
static struct remark not_shown(const struct plan *plan, const struct axle_pressures *axle,
                               double pressure_Pa)
{
    if (isinf(pressure_Pa))
        return remark(ADVICE_NO_PRESSURE);
    if (is_above_ceiling(pressure_Pa, axle->ceilings.highest_Pa))
        return remark(ADVICE_ABOVE_CEILING);
    return is_above_ceiling(pressure_Pa, axle->ceilings.sure_Pa)
               ? read_sidewall(plan, pressure_Pa, axle->ceilings.highest_Pa)
               : remark(REMARK_NONE);
}

/* Each demand by itself. What no tyre or wheel of the axle is sure to bear is told in words alone:
 * the recommended pressure is refused then, and says so. */
static void report_demands(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    const struct plan *plan = loaded->plan;
    const struct {
        enum quantity_id quantity;
        double pressure_Pa;
        bool asked; /* without a rating nothing asks for it, which the recommended one says */
    } demands[] = {
        {QUANTITY_PRESSURE_AS_REPLACED, pressures->demands.replaced_Pa, true},
        {QUANTITY_PRESSURE_AS_BUILT, pressures->demands.built_Pa, true},
        {QUANTITY_PRESSURE_AS_RATED, pressures->demands.rated_Pa,
         known(pressures->demand_rated_kg)},
    };
    double sure_Pa = pressures->ceilings.sure_Pa;
    for (size_t i = 0; i < sizeof demands / sizeof demands[0]; i++) {
        if (!demands[i].asked)
            continue;
        double needed_Pa = known(demands[i].pressure_Pa)
                               ? higher_of(demands[i].pressure_Pa, pressures->floor_Pa)
                               : UNKNOWN;
        bool shown = isfinite(needed_Pa) && !is_above_ceiling(needed_Pa, sure_Pa);
        struct figure figure = figure_on_axle(demands[i].quantity, shown ? needed_Pa : UNKNOWN,
                                              axle, capacity_basis(plan->arena, pressures));
        figure.limit = ceiling_told_Pa(plan, sure_Pa, figure.value);
        figure.advice = not_shown(plan, pressures, needed_Pa);
        figures_add(figures, figure);
    }
}

/* Whether tyre or wheel as set would fail if this axle took the whole tilt of what lies beside the
 * centre line. What is refused already is a finding of its own. */
static bool fails_with_whole_side(const struct loaded_setup *loaded,
                                  const struct axle_pressures *axle)
{
    double whole_kg = axle->load_whole_side_kg;
    double demand_kg = whole_kg * (1 + load_reserve(loaded->plan->specification));
    double needed_Pa =
        pressure_for_load_Pa(&axle->rating, axle->dual, demand_kg) + axle->rating.speed_pressure_Pa;
    return isfinite(axle->least_told_Pa) && clearly_above(whole_kg, axle->load_built_kg) &&
           (clearly_above(needed_Pa, axle->least_told_Pa) ||
            clearly_above(whole_kg, axle->wheel_load_kg));
}

static void report_tyre_load(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    const struct axle_pressures *pressures = &loaded->axle[axle];
    enum remark_id side = pressures->load_side_kg > 0 ? BASIS_SIDE_LOAD : REMARK_NONE;
    struct figure figure = figure_on_axle(
        QUANTITY_TYRE_LOAD, pressures->load_built_kg, axle,
        REMARK_WITH(loaded->plan->arena, pressures->dual ? BASIS_TWIN_LOAD : BASIS_TYRE_LOAD,
                    say_remark(loaded->plan->arena, remark(side))));
    figure.state = pressures->heaviest_state;
    const struct judgement how = {
        .holds = fails_with_whole_side(loaded, pressures) ? ANSWER_NO : ANSWER_NOT_ASKED,
        .broken = VERDICT_CAUTION,
        .if_broken = REMARK_WITH(loaded->plan->arena, ADVICE_WEIGH_EACH_WHEEL,
                                 say_mass(pressures->load_whole_side_kg)),
    };
    figures_add(figures, judged(figure, &how));
}

void report_pressure(const struct loaded_setup *loaded, int axle, struct figures *figures)
{
    report_tyre_load(loaded, axle, figures);
    report_at_placard(loaded, axle, figures);
    report_recommended(loaded, axle, figures);
    report_as_set(loaded, axle, figures);
    report_capacities(loaded, axle, figures);
    report_demands(loaded, axle, figures);
}
