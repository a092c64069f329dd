/* The axle ratio that the tyre amounts to, the one that gives the drive back, and what each ratio
 * that can be had leaves. */
#include "base/known.h"
#include "compute/gearing.h"
#include "report/gearing/geared_setup.h"
#include "report/judge.h"

static double cruising_change_per_s(const struct geared_setup *geared, double ratio)
{
    size_t top = highest_gear(&geared->gears);
    double gear = geared->gears.items[top], high = geared->ranges[0].ratio;
    double before = engine_speed_per_s(geared->from_m, geared->cruise_mps,
                                       overall_ratio(gear, high, geared->from_ratio, geared->hub),
                                       geared->slip);
    double after = engine_speed_per_s(geared->to_m, geared->cruise_mps,
                                      overall_ratio(gear, high, ratio, geared->hub), geared->slip);
    return after - before;
}

/* The axle as it is, and every choice that is another. */
static struct number_list candidates_of(const struct geared_setup *geared)
{
    const struct number_list *choices = &geared->drivetrain->axle_choices;
    struct number_list list = {
        arena_allocate_array(geared->plan->arena, choices->count + 1, sizeof *list.items), 0};
    list.items[list.count++] = geared->from_ratio;
    for (size_t i = 0; i < choices->count; i++)
        if (choices->items[i] != geared->from_ratio)
            list.items[list.count++] = choices->items[i];
    return list;
}

static struct remark what_it_does(struct arena *arena, double remains)
{
    if (fabs(remains) < 5e-5)
        return remark(ADVICE_SAME_DRIVE);
    struct argument percent = say_number(100 * fabs(remains), 1);
    return REMARK_WITH(arena, remains > 0 ? ADVICE_MORE_DRIVE : ADVICE_LESS_DRIVE, percent,
                       percent);
}

/* What a ratio leaves: in ratio, and in engine speed while cruising. */
static void add_remains(const struct geared_setup *geared, struct figure figure, double ratio,
                        double restoring, enum remark_id basis, enum remark_id speed_basis)
{
    figure.quantity = QUANTITY_AXLE_REMAINS;
    figure.value = ratio / restoring - 1;
    figure.basis = remark(basis);
    figures_add(geared->figures, figure);
    figure.quantity = QUANTITY_AXLE_REMAINS_SPEED;
    figure.value = cruising_change_per_s(geared, ratio);
    figure.basis = remark(speed_basis);
    figure.place.road_speed_mps = geared->cruise_mps;
    figures_add(geared->figures, figure);
}

static void add_rank(const struct geared_setup *geared, struct figure figure, size_t rank,
                     enum quantity_id quantity, enum remark_id basis)
{
    figure.quantity = quantity;
    figure.value = (double)rank;
    figure.basis = remark(basis);
    figures_add(geared->figures, figure);
}

/* What a ratio leaves, and its ranks for both aims. */
static void report_candidate(const struct geared_setup *geared,
                             const struct number_list *candidates, size_t index, double restoring)
{
    double ratio = candidates->items[index], remains = ratio / restoring - 1;
    struct figure figure = figure_of(QUANTITY_AXLE_REMAINS, UNKNOWN);
    figure.place.axle_ratio = ratio;
    add_remains(geared, figure, ratio, restoring, BASIS_AXLE_REMAINS, BASIS_AXLE_REMAINS_SPEED);
    if (geared->setup->is_fitted || !known(remains))
        return;
    figure.advice = what_it_does(geared->plan->arena, remains);
    add_rank(geared, figure, axle_choice_rank(candidates, index, restoring, AIM_DRIVE_BACK),
             QUANTITY_DRIVE_BACK_RANK, BASIS_DRIVE_BACK);
    add_rank(geared, figure, axle_choice_rank(candidates, index, restoring, AIM_CRUISE_BACK),
             QUANTITY_CRUISE_BACK_RANK, BASIS_CRUISE_BACK);
}

static void report_nearest(const struct geared_setup *geared, double restoring)
{
    struct arena *arena = geared->plan->arena;
    double nearest = nearest_axle_choice(&geared->drivetrain->axle_choices, restoring);
    if (!known(nearest) || geared->setup->is_fitted)
        return;
    struct figure figure = figure_by(QUANTITY_NEAREST_AXLE, nearest, remark(BASIS_NEAREST_AXLE));
    figure.headline = HEADLINE_YES;
    double both[] = {geared->ratio, nearest}; /* of equals the first: no change for nothing */
    bool better = nearest == geared->ratio ||
                  nearest_axle_choice(&(struct number_list){both, 2}, restoring) == nearest;
    const struct judgement keep_it = {
        .holds = answer_of(true, better),
        .broken = VERDICT_CAUTION,
        .met_is_none = true,
        .if_broken = REMARK_WITH(arena, ADVICE_KEEP_AXLE, say_number(geared->ratio, 3)),
    };
    figures_add(geared->figures, judged(figure, &keep_it));
    figure.place.name = "nearest axle choice";
    add_remains(geared, figure, nearest, restoring, BASIS_NEAREST_REMAINS, BASIS_NEAREST_REMAINS);
}

void report_axle_ratio(const struct geared_setup *geared)
{
    if (geared->is_choice)
        return;
    double ratio = geared->ratio, from_m = geared->from_m, to_m = geared->to_m;
    double restoring = restoring_axle_ratio(ratio, from_m, to_m);
    struct figure figure =
        figure_by(QUANTITY_EFFECTIVE_AXLE, effective_axle_ratio(ratio, from_m, to_m),
                  remark(BASIS_EFFECTIVE_AXLE));
    figure.headline = HEADLINE_YES;
    figures_add(geared->figures, figure);
    figure.quantity = QUANTITY_RESTORING_AXLE;
    figure.value = restoring;
    figure.basis = remark(BASIS_RESTORING_AXLE);
    figures_add(geared->figures, figure);
    report_nearest(geared, restoring);
    bool alone = geared->plan->count == 1;
    if (geared->drivetrain->axle_choices.count == 0 || (geared->setup->is_fitted && !alone))
        return;
    struct number_list candidates = candidates_of(geared);
    for (size_t i = 0; i < candidates.count; i++)
        report_candidate(geared, &candidates, i, restoring);
}
