/* The axle ratio that the tyre amounts to, the one that gives the drive back, and what each ratio
 * that can be had leaves. */
#include "base/known.h"
#include "compute/gearing.h"
#include "report/gearing/view.h"

static double cruising_change_per_s(const struct drive_view *view, double ratio)
{
    size_t top = highest_gear(&view->gears);
    double gear = view->gears.items[top], high = view->ranges[0].ratio;
    double before =
        engine_speed_per_s(view->from_m, view->cruise_mps,
                           overall_ratio(gear, high, view->from_ratio, view->hub), view->slip);
    double after = engine_speed_per_s(view->to_m, view->cruise_mps,
                                      overall_ratio(gear, high, ratio, view->hub), view->slip);
    return after - before;
}

/* The axle as it is, and every choice that is another. */
static struct number_list candidates_of(const struct drive_view *view)
{
    const struct number_list *choices = &view->drivetrain->axle_choices;
    struct number_list list = {
        arena_allocate_array(view->plan->arena, choices->count + 1, sizeof *list.items), 0};
    list.items[list.count++] = view->from_ratio;
    for (size_t i = 0; i < choices->count; i++)
        if (choices->items[i] != view->from_ratio)
            list.items[list.count++] = choices->items[i];
    return list;
}

static const char *what_it_does(const struct drive_view *view, double remains)
{
    if (fabs(remains) < 5e-5)
        return "the fitted tyre's drive, exactly";
    return arena_format(view->plan->arena,
                        "%.1f %% %s pull, and %.1f %% %s engine speed, than on the fitted tyre",
                        100 * fabs(remains), remains > 0 ? "more" : "less", 100 * fabs(remains),
                        remains > 0 ? "more" : "less");
}

/* What a ratio leaves, and its ranks for both aims. */
static void report_candidate(const struct drive_view *view, const struct number_list *candidates,
                             size_t index, double restoring)
{
    struct arena *arena = view->plan->arena;
    double ratio = candidates->items[index], remains = ratio / restoring - 1;
    const char *axle = arena_format(arena, "axle %s", ratio_text(arena, ratio));
    struct figure figure = figure_of(QUANTITY_AXLE_REMAINS, remains, "ratio / restoring ratio - 1");
    figure.at = axle;
    figures_add(view->figures, figure);
    figure.quantity = QUANTITY_AXLE_REMAINS_SPEED;
    figure.value = cruising_change_per_s(view, ratio);
    figure.basis = "in the highest gear, beside the fitted tyre on the axle as it is";
    figure.at = arena_format(arena, "%s, %s", axle, road_speed_text(view, view->cruise_mps));
    figures_add(view->figures, figure);
    if (view->setup->is_fitted || !known(remains))
        return;
    figure.at = axle;
    figure.action = what_it_does(view, remains);
    figure.quantity = QUANTITY_DRIVE_BACK_RANK;
    figure.value = (double)axle_choice_rank(candidates, index, restoring, AIM_DRIVE_BACK);
    figure.basis = "as much pull or more first, then the nearest in ratio";
    figures_add(view->figures, figure);
    figure.quantity = QUANTITY_CRUISE_BACK_RANK;
    figure.value = (double)axle_choice_rank(candidates, index, restoring, AIM_CRUISE_BACK);
    figure.basis = "no more engine speed first, then the nearest in ratio";
    figures_add(view->figures, figure);
}

static void report_nearest(const struct drive_view *view, double restoring)
{
    double nearest = nearest_axle_choice(&view->drivetrain->axle_choices, restoring);
    if (!known(nearest) || view->setup->is_fitted)
        return;
    struct figure figure = figure_of(QUANTITY_NEAREST_AXLE, nearest,
                                     "of axle_choices, nearest in ratio to the restoring one");
    figure.headline = HEADLINE_YES;
    double both[] = {view->ratio, nearest}; /* of equals the first: no change for nothing */
    if (nearest_axle_choice(&(struct number_list){both, 2}, restoring) == view->ratio &&
        nearest != view->ratio) {
        figure.verdict = VERDICT_CAUTION;
        figure.action = arena_format(view->plan->arena,
                                     "the axle ratio now, %.3f, is nearer than any choice: keep it",
                                     view->ratio);
    }
    figures_add(view->figures, figure);
    figure.verdict = VERDICT_NONE;
    figure.action = NULL;
    figure.quantity = QUANTITY_AXLE_REMAINS;
    figure.value = nearest / restoring - 1;
    figure.basis = "engine speed at a road speed beside the fitted tyre's, with the nearest choice";
    figures_add(view->figures, figure);
    figure.quantity = QUANTITY_AXLE_REMAINS_SPEED;
    figure.value = cruising_change_per_s(view, nearest);
    figure.at = arena_format(view->plan->arena, "nearest axle choice, %s",
                             road_speed_text(view, view->cruise_mps));
    figure.line = "nearest choice";
    figures_add(view->figures, figure);
}

void report_axle_ratio(const struct drive_view *view)
{
    if (view->is_choice)
        return;
    double restoring = restoring_axle_ratio(view->ratio, view->from_m, view->to_m);
    struct figure figure = figure_of(QUANTITY_EFFECTIVE_AXLE,
                                     effective_axle_ratio(view->ratio, view->from_m, view->to_m),
                                     "axle ratio x C_old / C_new");
    figure.headline = HEADLINE_YES;
    figures_add(view->figures, figure);
    figure.quantity = QUANTITY_RESTORING_AXLE;
    figure.value = restoring;
    figure.basis = "axle ratio x C_new / C_old";
    figures_add(view->figures, figure);
    report_nearest(view, restoring);
    bool alone = view->plan->count == 1;
    if (view->drivetrain->axle_choices.count == 0 || (view->setup->is_fitted && !alone))
        return;
    struct number_list candidates = candidates_of(view);
    for (size_t i = 0; i < candidates.count; i++)
        report_candidate(view, &candidates, i, restoring);
}
