/* Springs that may be fitted instead, each as the vehicle would stand on it in every loading state
 * with the fitted tyres: what is compared before one is ordered. No verdict: none of them is on. */
#include "base/known.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "report/clearance/fit_limits.h"

/* One axle's spring; the other axle's stay as the file has them. */
struct tried_spring {
    const struct plan *plan;
    int axle;
    const struct spring_choice *choice; /* NULL: the one that is fitted */
    struct figures *figures;
};

static void add(const struct tried_spring *tried, struct figure figure)
{
    figure.axle = tried->axle;
    figure.place.name = tried->choice == NULL ? NULL : tried->choice->name;
    figures_add(tried->figures, figure);
}

static void add_height(const struct tried_spring *tried, const struct stance *stance)
{
    struct need needs[STANCE_NEEDS];
    stance_needs(stance, needs);
    add(tried, judged(stance_figure(stance, QUANTITY_RIDE_HEIGHT,
                                    of_axle(stance->body_change_m, tried->axle), BASIS_RIDE_HEIGHT),
                      &(struct judgement){.needs = needs, .need_count = STANCE_NEEDS}));
}

/* The load that it carries all the time is what the state adds to the axle. */
static void add_constant_load(const struct tried_spring *tried, const struct stance *stance)
{
    const struct spring_choice *choice = tried->choice;
    double added = stance->added_kg[tried->axle];
    if (!known(choice->load_from_kg) && !known(choice->load_to_kg))
        return;
    struct figure figure =
        limited_within(stance_figure(stance, QUANTITY_CONSTANT_LOAD, added, BASIS_CONSTANT_LOAD),
                       choice->load_from_kg, choice->load_to_kg);
    bool within = meets_limit(added, figure.limit_side, figure.limit);
    figure.limit_owner = LIMIT_OF_MAKER;
    if (known(added))
        figure.advice = remark(within ? ADVICE_SPRING_SUITS : ADVICE_SPRING_DOES_NOT_SUIT);
    add(tried, figure);
}

static void add_state(const struct tried_spring *tried, const struct stance *stance)
{
    const struct plan *plan = stance->plan;
    double wheelbase_m = plan->specification->vehicle.wheelbase_m;
    double rake = rake_rad(stance->body_change_m, wheelbase_m);
    add_height(tried, stance);
    if (tried->choice == NULL) /* the other rows stand without a name */
        return;
    double left = stance_travel_left_m(stance, tried->axle, 0);
    if (known(left))
        add(tried, stance_figure(stance, QUANTITY_BUMP_TRAVEL_LEFT, left, BASIS_TRAVEL_LEFT));
    if (known(rake)) {
        add(tried, stance_figure(stance, QUANTITY_RAKE, rake, BASIS_RAKE));
        add(tried, stance_figure(stance, QUANTITY_HEADLAMP_AIM,
                                 beam_rise(stance->body_change_m, wheelbase_m), BASIS_BEAM));
    }
    add_constant_load(tried, stance);
}

/* The share of travel that is kept, without the limits on it: those judge what is fitted. */
static void add_travel_kept(const struct tried_spring *tried, const struct plan *with_it)
{
    struct figure ends[2];
    if (tried->choice == NULL)
        return;
    travel_kept(with_it, tried->axle, 0, ends);
    for (int i = 0; i < 2; i++)
        if (known(ends[i].value))
            add(tried, ends[i]);
}

static void report_tried(const struct tried_spring *tried)
{
    struct specification with_it;
    struct plan plan = plan_with_spring(tried->plan, &with_it, tried->axle, tried->choice);
    size_t count = state_count(&with_it);
    struct stance *stances = stances_make(&plan, 0, NULL);
    for (size_t i = 0; i < count; i++)
        add_state(tried, &stances[i]);
    add_travel_kept(tried, &plan);
}

void report_spring_choices(const struct plan *plan, struct figures *figures)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct spring_choice_list *choices = &suspension_of(plan, axle)->spring_choices;
        if (choices->count > 0)
            report_tried(&(struct tried_spring){plan, axle, NULL, figures});
        for (size_t i = 0; i < choices->count; i++)
            report_tried(&(struct tried_spring){plan, axle, &choices->items[i], figures});
    }
}
