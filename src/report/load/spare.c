/* The spare: whether it carries what it may have to, and at which pressure. */
#include "base/known.h"
#include "report/load/loaded_setup.h"
#include "report/spare_of_set.h"
#include "tables/lookup.h"

/* What one spare may have to do on either axle. */
struct spare_duty {
    struct tyre spare;
    struct tyre_rating rating;
    double load_kg;  /* the heaviest tyre's, with what the scale may be off, and the reserve */
    double least_kg; /* the same if it is off to the other side */
    double rated_kg; /* half the larger axle rating, a quarter on twins; of those that are known */
    bool both_rated;
    struct pressure_demands demands;
    struct pressure_choice choice;
    struct ceilings ceilings;
};

/* On the wheel that is ordered for the axles, where one is. */
static struct tyre on_ordered_wheel(const struct loaded_setup *loaded, struct tyre tyre)
{
    const struct search_rim *ordered = wheel_to_order(loaded, AXLE_FRONT);
    if (ordered == NULL)
        return tyre;
    tyre.wheel.max_load_kg = ordered->max_load_kg;
    tyre.wheel.max_pressure_Pa = ordered->max_pressure_Pa;
    return tyre;
}

/* A spare of the size that the axles have is the same tyre, whatever it leaves out; one that comes
 * with them stands on their wheel, as they do in the end. */
static struct tyre spare_of(const struct loaded_setup *loaded)
{
    const struct setup *setup = loaded->setup;
    bool comes_along = !(setup->assumptions & ASSUMED_SAME_SPARE);
    struct tyre spare = setup->spare;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct tyre *tyre = &setup->axle[axle];
        if (!same_tyre(tyre, &spare))
            continue;
        if (spare.load_range == 0)
            spare.load_range = tyre->load_range;
        if (spare.data_book.given == NULL)
            spare.data_book = tyre->data_book;
        if (spare.wheel.given == NULL)
            spare.wheel = tyre->wheel;
        if (comes_along && spare.wheel.given == tyre->wheel.given)
            spare = on_ordered_wheel(loaded, spare);
        break;
    }
    return spare;
}

/* The higher placard of those that are made for its group of tyres; UNKNOWN where none is. */
static double placard_for(const struct loaded_setup *loaded, enum tyre_group group)
{
    double highest_Pa = UNKNOWN;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        if (placard_is_for(&loaded->axle[axle], group))
            highest_Pa = higher_of(highest_Pa, loaded->axle[axle].placard_Pa);
    return highest_Pa;
}

/* It may have to stand on either axle, loaded as it may be loaded: at least the heaviest load, and
 * half the larger axle rating (49 CFR 571.110, 571.120 for the tyres that it replaces), at no less
 * than the placard of its group. That its load index is below the set's is no limit of its own. */
static struct spare_duty duty_of(const struct loaded_setup *loaded, const struct tyre *tyre)
{
    const struct plan *plan = loaded->plan;
    const struct vehicle *vehicle = &plan->specification->vehicle;
    const struct axle_pressures *front = &loaded->axle[AXLE_FRONT],
                                *rear = &loaded->axle[AXLE_REAR];
    struct spare_duty duty = {.spare = *tyre};
    struct tyre_rating *rating = &duty.rating;
    tyre_rate(&duty.spare, vehicle->kind, vehicle->top_speed_mps, rating);
    enum tyre_group group = tyre_group(rating->class);
    double added_Pa = rating->speed_pressure_Pa, own_placard_Pa = placard_for(loaded, group);
    duty.load_kg =
        higher_of_pair((struct axle_pair){front->demand_built_kg, rear->demand_built_kg});
    duty.least_kg =
        higher_of_pair((struct axle_pair){front->demand_least_kg, rear->demand_least_kg});
    duty.rated_kg = higher_of(front->demand_rated_kg, rear->demand_rated_kg);
    duty.both_rated = known(front->demand_rated_kg) && known(rear->demand_rated_kg);
    duty.ceilings =
        ceilings_of(rating, &duty.spare.wheel, group == GROUP_PASSENGER ? own_placard_Pa : UNKNOWN);
    duty.demands = (struct pressure_demands){
        .replaced_Pa = 0, /* it is judged by what it may have to carry */
        .built_Pa = pressure_for_load_Pa(rating, false, duty.load_kg) + added_Pa,
        .rated_Pa = pressure_for_load_Pa(rating, false, duty.rated_kg) + added_Pa,
        .placard_Pa = own_placard_Pa,
        .built_least_Pa = pressure_for_load_Pa(rating, false, duty.least_kg) + added_Pa,
    };
    duty.choice =
        choose_pressure(&duty.demands, rating, &duty.ceilings, plan_pressure_system(plan));
    return duty;
}

static struct remark reason_of(struct arena *arena, const struct spare_duty *duty)
{
    struct argument speed = say_remark(arena, for_speed(arena, &duty->rating));
    switch (duty->choice.reason) {
    case REASON_RATED:
        return REMARK_WITH(arena, BASIS_SPARE_RATED, say_mass(duty->rated_kg), speed);
    case REASON_FLOOR:
        return remark(BASIS_CLASS_FLOOR);
    case REASON_PLACARD:
        return remark(BASIS_PLACARD_FLOOR);
    case REASON_REFUSED:
        return remark(BASIS_SPARE_REFUSED);
    case REASON_UNWEIGHED:
        return remark(BASIS_UNWEIGHED);
    case REASON_UNREAD:
        return REMARK_WITH(arena, BASIS_UNREAD, say_pressure(duty->ceilings.sure_Pa));
    default:
        return REMARK_WITH(arena, BASIS_SPARE_PRESSURE, speed);
    }
}

static double spare_bears_kg(const struct loaded_setup *loaded, const struct spare_duty *duty)
{
    return higher_of(load_within_kg(loaded->plan->specification, duty->load_kg), duty->rated_kg);
}

static bool has_weak_wheel(const struct loaded_setup *loaded, const struct spare_duty *duty)
{
    return clearly_above(spare_bears_kg(loaded, duty), duty->spare.wheel.max_load_kg);
}

static bool spare_does(const struct loaded_setup *loaded, const struct spare_duty *duty)
{
    return duty->choice.reason != REASON_REFUSED && !has_weak_wheel(loaded, duty) &&
           isfinite(duty->choice.recommended_Pa);
}

static struct bearing bearing_as_spare(const struct loaded_setup *loaded, const struct tyre *tyre)
{
    const struct specification *specification = loaded->plan->specification;
    const struct spare_duty duty = duty_of(loaded, tyre);
    struct bearing bearing =
        tyre_bearing(specification, &duty.rating, &duty.ceilings, false, &duty.demands);
    double wheel_kg = duty.spare.wheel.max_load_kg;
    if (clearly_above(duty.rated_kg, wheel_kg))
        return (struct bearing){UNKNOWN, UNKNOWN};
    wheel_kg -= tyre_doubt_kg(specification, false);
    return lower_bearing(bearing, (struct bearing){wheel_kg, wheel_kg});
}

struct bearing spare_bearing(const struct loaded_setup *loaded)
{
    const struct tyre carried = spare_of(loaded);
    const struct tyre of_set = on_ordered_wheel(loaded, loaded->setup->axle[AXLE_FRONT]);
    if (!loaded->setup->spare.size_given)
        return (struct bearing){UNKNOWN, UNKNOWN};
    if (spare_of_set_cure(loaded->plan, loaded->setup).task == TASK_NONE)
        return bearing_as_spare(loaded, &carried);
    return higher_bearing(bearing_as_spare(loaded, &carried), bearing_as_spare(loaded, &of_set));
}

/* One more of the tyres that both axles have, where it does and goes in. */
static struct cure spare_that_does(const struct loaded_setup *loaded)
{
    const struct tyre of_set = on_ordered_wheel(loaded, loaded->setup->axle[AXLE_FRONT]);
    const struct spare_duty duty = duty_of(loaded, &of_set);
    if (!spare_does(loaded, &duty))
        return (struct cure){.task = TASK_NONE};
    return spare_of_set_cure(loaded->plan, loaded->setup);
}

static void report_spare_pressure(const struct loaded_setup *loaded, struct figures *figures)
{
    struct arena *arena = loaded->plan->arena;
    const struct tyre carried = spare_of(loaded);
    const struct spare_duty duty = duty_of(loaded, &carried);
    const struct pressure_choice *choice = &duty.choice;
    bool temporary = duty.spare.size.prefix == PREFIX_T, rated = duty.both_rated;
    bool refused = choice->reason == REASON_REFUSED;
    bool weak_wheel = has_weak_wheel(loaded, &duty), does = spare_does(loaded, &duty);
    struct figure figure =
        figure_on_axle(QUANTITY_SPARE_PRESSURE, does ? choice->recommended_Pa : UNKNOWN, AXLE_NONE,
                       reason_of(arena, &duty));
    const struct need needs[] = {
        {choice->reason != REASON_NONE, remark(ADVICE_SPARE_UNKNOWN)},
        {choice->reason != REASON_UNREAD && choice->reason != REASON_UNWEIGHED,
         choice->reason == REASON_UNWEIGHED
             ? weigh_again(arena, tyre_doubt_kg(loaded->plan->specification, false))
             : read_sidewall(loaded->plan, choice->needed_Pa, duty.ceilings.highest_Pa)},
    };
    const struct cure cure = spare_that_does(loaded);
    /* One of the set does whatever the sidewall says. */
    bool unread = choice->reason == REASON_UNREAD, unweighed = choice->reason == REASON_UNWEIGHED;
    bool either = (unread || unweighed) && cure.task != TASK_NONE;
    const struct judgement how = {
        .needs = needs,
        .need_count = refused || weak_wheel ? 0
                      : either              ? 1
                                            : 2,
        .holds = answer_of(true, does),
        .met = temporary || !rated ? VERDICT_CAUTION : VERDICT_OK,
        .if_met = remark(temporary ? ADVICE_SPARE_BY_ITS_MARKING
                         : !rated  ? ADVICE_SPARE_RATING
                                   : REMARK_NONE),
        .cure = cure,
        .ask = unread ? TASK_READ_SIDEWALL : TASK_NONE,
        .if_cured = either && unread
                        ? REMARK_WITH(arena, ADVICE_SPARE_UNREAD, say_pressure(choice->needed_Pa))
                        : remark(REMARK_NONE),
        .if_broken = refused ? remark(ADVICE_SPARE_TOO_WEAK)
                             : REMARK_WITH(arena, ADVICE_SPARE_WHEEL,
                                           say_mass(spare_bears_kg(loaded, &duty))),
    };
    figure.limit_owner = LIMIT_OF_MAKER;
    figure = limited_at_most(
        figure,
        ceiling_told_Pa(loaded->plan, refused ? duty.ceilings.highest_Pa : duty.ceilings.sure_Pa,
                        figure.value));
    figures_add(figures, judged(figure, &how));
}

void report_spare(const struct loaded_setup *loaded, struct figures *figures)
{
    const struct setup *setup = loaded->setup;
    if (!setup->spare.size_given)
        return;
    double needed = 0;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        needed = higher_of(needed, load_index_kg(setup->axle[axle].size.service.load_index));
    struct figure figure =
        figure_on_axle(QUANTITY_SPARE_CAPACITY, load_index_kg(setup->spare.size.service.load_index),
                       AXLE_NONE, remark(BASIS_SPARE_CAPACITY));
    const struct judgement how = {.broken = VERDICT_CAUTION,
                                  .if_broken = remark(ADVICE_SPARE_OF_SET),
                                  .if_unknown = remark(ADVICE_GIVE_SPARE_SERVICE)};
    figure.limit_owner = LIMIT_OF_HOUSE;
    figures_add(figures, judged(limited_at_least(figure, needed), &how));
    report_spare_pressure(loaded, figures);
}
