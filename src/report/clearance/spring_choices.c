/* Springs that may be fitted instead, each as the vehicle would stand on it unladen and in every
 * loading state with the fitted tyres: what is compared before one is ordered. No verdict but on
 * one that is tried: no other is on. */
#include "base/known.h"
#include "compute/clearance.h"
#include "compute/load.h"
#include "compute/springs.h"
#include "report/clearance/fit_limits.h"
#include "tables/lookup.h"

/* One axle's spring; the other axle's stay as the file has them. */
struct tried_spring {
    const struct plan *plan;
    int axle;
    const struct spring_choice *choice; /* NULL: the one that is fitted */
    const struct fitment_limits_row *rule;
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

static bool load_is_named(const struct spring_choice *choice)
{
    return known(choice->load_from_kg) || known(choice->load_to_kg);
}

/* The share of the travel that the published rule on it wants kept. */
static double share_to_keep(const struct tried_spring *tried)
{
    return tried->rule->min / 100;
}

static enum remark_id advice_on_load(bool named, bool sure, bool broken)
{
    if (broken)
        return named ? ADVICE_SPRING_DOES_NOT_SUIT : ADVICE_SPRING_KEEPS_LESS;
    if (!sure)
        return ADVICE_GIVE_TRAVEL;
    return named ? ADVICE_SPRING_SUITS : ADVICE_SPRING_KEEPS;
}

/* The load that it carries all the time is what the state adds to the axle: beside what the maker
 * names, or what leaves travel enough. */
static void add_constant_load(const struct tried_spring *tried, const struct stance *stance)
{
    const struct spring_choice *choice = tried->choice;
    double added = stance->added_kg[tried->axle];
    bool named = load_is_named(choice);
    struct constant_load span = {choice->load_from_kg, choice->load_to_kg};
    if (!named)
        span =
            constant_load_keeping(stance->plan->specification, tried->axle, share_to_keep(tried));
    struct figure figure =
        limited_within(stance_figure(stance, QUANTITY_CONSTANT_LOAD, added,
                                     named ? BASIS_CONSTANT_LOAD : BASIS_CONSTANT_LOAD_KEEPS),
                       span.from_kg, span.to_kg);
    bool broken = known(figure.limit) && !meets_limit(added, figure.limit_side, figure.limit);
    bool sure = named || known(span.from_kg + span.to_kg);
    figure.limit_owner = named ? LIMIT_OF_MAKER : LIMIT_OF_LAW;
    if (known(added))
        figure.advice = remark(advice_on_load(named, sure, broken));
    add(tried, figure);
}

static void add_state(const struct tried_spring *tried, const struct stance *stance,
                      const struct stance *unladen)
{
    double wheelbase_m = stance->plan->specification->vehicle.wheelbase_m;
    double rake = rake_rad(stance->body_change_m, wheelbase_m);
    double pitch = rake - rake_rad(unladen->body_change_m, wheelbase_m);
    add_height(tried, stance);
    if (known(pitch) && stance != unladen)
        add(tried, stance_figure(stance, QUANTITY_PITCH, pitch, BASIS_PITCH));
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

/* The share of travel that is kept, beside the published one. */
static void add_travel_kept(const struct tried_spring *tried, const struct plan *with_it)
{
    struct figure ends[2];
    travel_kept(with_it, tried->axle, 0, ends);
    for (int i = 0; i < 2; i++) {
        struct figure figure = limited_at_least(ends[i], share_to_keep(tried));
        figure.limit_owner = LIMIT_OF_LAW;
        figure.basis = remark_quoted(with_it->arena, tried->rule->basis, tried->rule->certainty);
        if (!meets_limit(figure.value, figure.limit_side, figure.limit))
            figure.advice = remark(ADVICE_TRAVEL_TOO_SHORT);
        if (known(figure.value))
            add(tried, figure);
    }
}

static void report_tried(const struct tried_spring *tried)
{
    struct specification with_it;
    struct stance unladen;
    struct plan plan = plan_with_spring(tried->plan, &with_it, tried->axle, tried->choice);
    size_t count = state_count(&with_it);
    struct stance *stances = stances_make(&plan, 0, NULL);
    stance_unladen(&plan, &unladen);
    add_state(tried, &unladen, &unladen);
    for (size_t i = 0; i < count; i++)
        add_state(tried, &stances[i], &unladen);
    if (tried->choice != NULL)
        add_travel_kept(tried, &plan);
}

/* What the published rule wants kept is taken for every vehicle. */
static void report_assumption(const struct tried_spring *tried)
{
    struct figure figure = figure_by(QUANTITY_ASSUMPTION, UNKNOWN, remark(BASIS_ASSUMPTION));
    figure.advice = REMARK_WITH(tried->plan->arena, TAKEN_LOAD_BY_TRAVEL,
                                say_quantity(share_to_keep(tried), UNIT_PERCENT, UNIT_PERCENT, 1));
    figures_add(tried->figures, figure);
}

void report_spring_choices(const struct plan *plan, struct figures *figures)
{
    struct tried_spring tried = {
        .plan = plan, .rule = fitment_limit_on(TRAVEL_KEPT_KEY), .figures = figures};
    bool by_rule = false;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct axle_suspension *suspension = suspension_of(plan, axle);
        const struct spring_choice_list *choices = &suspension->spring_choices;
        bool has_travel =
            known(suspension->travel_to_bump_m) || known(suspension->travel_to_droop_m);
        tried.axle = axle;
        tried.choice = NULL;
        if (choices->count > 0)
            report_tried(&tried);
        for (size_t i = 0; i < choices->count; i++) {
            tried.choice = &choices->items[i];
            by_rule = by_rule || has_travel || !load_is_named(tried.choice);
            report_tried(&tried);
        }
    }
    if (by_rule)
        report_assumption(&tried);
}

/* A load above what its maker names breaks a spring that is to be ordered; one below is comfort. */
void report_tried_spring(const struct stance *stances, size_t count, int axle,
                         struct figures *figures)
{
    const struct spring_choice *spring = stances->plan->tried[axle];
    const struct tried_spring tried = {.axle = axle, .choice = spring, .figures = figures};
    if (spring == NULL || !known(spring->load_to_kg))
        return;
    for (size_t i = 0; i < count; i++) {
        double added = stances[i].added_kg[axle];
        const struct need need = {known(added), remark(ADVICE_GIVE_UNLADEN)};
        struct figure figure = limited_at_most(
            stance_figure(&stances[i], QUANTITY_CONSTANT_LOAD, added, BASIS_CONSTANT_LOAD),
            spring->load_to_kg);
        figure.limit_owner = LIMIT_OF_MAKER;
        add(&tried,
            judged(figure, &(struct judgement){.needs = &need,
                                               .need_count = 1,
                                               .if_broken = remark(ADVICE_SPRING_DOES_NOT_SUIT)}));
    }
}
