/* The body above the ground: clearance, roof, wading depth, step, rake and how far the beam turns.
 */
#include "base/known.h"
#include "compute/axle_loads.h"
#include "compute/clearance.h"
#include "report/judge.h"
#include "report/clearance/low_points.h"

double ground_change_m(const struct stance *stance, struct axle_pair change_m)
{
    const struct specification *specification = stance->plan->specification;
    double at = specification->clearance.ground_at_m;
    if (known(at))
        return change_at_m(change_m, at, specification->vehicle.wheelbase_m);
    return lower_of_pair(change_m);
}

static double height_between(const struct stance *stance, const struct body_point *point)
{
    return height_in_stance_m(stance, point->height_m, point->at_m);
}

/* The measured lowest part, or a point between the axles that now stands lower. */
static struct figure lowest_part(const struct stance *stance)
{
    const struct clearance_measured *measured = &stance->plan->specification->clearance;
    struct figure figure = stance_figure(
        stance, QUANTITY_BODY, measured->ground_m + ground_change_m(stance, stance->body_change_m),
        BASIS_BODY);
    struct governing_point lowest = least_over_points(stance, POINT_BETWEEN, height_between, NULL);
    if (known(figure.value) && known(lowest.value) && clearly_above(figure.value, lowest.value)) {
        figure.value = lowest.value;
        figure.governed_by = lowest.governor;
    }
    return figure;
}

static void report_lowest(const struct stance *stance, struct figures *figures)
{
    struct figure figure = lowest_part(stance);
    struct need needs[1 + STANCE_NEEDS] = {
        {known(stance->plan->specification->clearance.ground_m), remark(ADVICE_GIVE_GROUND)}};
    stance_needs(stance, needs + 1);
    figure.headline = stance->headline;
    figures_add(figures, judged_above_zero(figure, needs, 1 + STANCE_NEEDS, ADVICE_ON_THE_GROUND));
    double change = ground_change_m(stance, stance->tyre_change_m);
    if (!stance->setup->is_fitted && known(change)) /* else the height says what is missing */
        figures_add(figures,
                    stance_figure(stance, QUANTITY_BODY_CHANGE, change, BASIS_BODY_CHANGE));
}

/* How much more the largest new tyre of an option's size lifts the body than the nominal one, at
 * most: half of what its diameter is larger. The fitted tyre is as it was measured. */
static double growth_m(const struct stance *stance, int axle)
{
    const struct tyre_dimensions *after = &stance->plan->beside[stance->index].after[axle];
    return stance->setup->is_fitted
               ? 0
               : (after->overall_diameter_max_m - after->overall_diameter_m) / 2;
}

/* The roof, or what stands higher on it. The higher axle's change counts: a door is met in front
 * or behind. */
static double roof_height_m(const struct stance *stance, struct axle_pair change_m,
                            const char **item)
{
    const struct specification *specification = stance->plan->specification;
    double highest = specification->clearance.roof_height_m;
    for (size_t i = 0; i < specification->carried.count; i++) {
        const struct carried_item *carried = &specification->carried.items[i];
        if (carried->removed == 1 ||
            !item_is_aboard(stance->plan->specification, stance->setup, stance->state, carried) ||
            !known(carried->top_m) || !clearly_above(carried->top_m, known_or(highest, 0)))
            continue;
        highest = carried->top_m;
        *item = carried->item;
    }
    return highest + higher_of_pair(change_m);
}

static struct figure roof_figure(const struct stance *stance, enum quantity_id quantity,
                                 double value, const char *item)
{
    struct figure figure = stance_figure(stance, quantity, value, BASIS_HIGHER_AXLE);
    if (item != NULL)
        figure.basis = REMARK_WITH(stance->plan->arena, BASIS_HIGHEST_ITEM, say_text(item));
    return figure;
}

/* The largest new tyre of the size is the one that is met at the door. */
static void judge_entrance(const struct stance *stance, struct figures *figures)
{
    const struct clearance_measured *measured = &stance->plan->specification->clearance;
    const char *item = NULL;
    if (!known(measured->garage_entrance_m))
        return;
    const struct axle_pair largest_m = {stance->body_change_m.front + growth_m(stance, AXLE_FRONT),
                                        stance->body_change_m.rear + growth_m(stance, AXLE_REAR)};
    double height_m = roof_height_m(stance, largest_m, &item);
    struct need needs[1 + STANCE_NEEDS] = {
        {known(measured->roof_height_m) || item != NULL, remark(ADVICE_GIVE_ROOF)}};
    stance_needs(stance, needs + 1);
    struct figure room =
        roof_figure(stance, QUANTITY_GARAGE_ROOM, measured->garage_entrance_m - height_m, item);
    room.place.tyre = AT_LARGEST;
    room.limit_owner = LIMIT_OF_PHYSICS;
    figures_add(figures, judged(limited_at_least(room, 0),
                                &(struct judgement){.needs = needs,
                                                    .need_count = 1 + STANCE_NEEDS,
                                                    .if_broken = remark(ADVICE_NO_ENTRANCE)}));
}

static void report_roof(const struct stance *stance, struct figures *figures)
{
    const char *item = NULL;
    double height = roof_height_m(stance, stance->body_change_m, &item);
    if (known(height))
        figures_add(figures, roof_figure(stance, QUANTITY_ROOF_HEIGHT, height, item));
    double change = higher_of_pair(stance->tyre_change_m);
    if (!stance->setup->is_fitted && known(change) &&
        known(stance->plan->specification->clearance.roof_height_m))
        figures_add(figures,
                    stance_figure(stance, QUANTITY_ROOF_CHANGE, change, BASIS_RADIUS_CHANGE));
    judge_entrance(stance, figures);
}

/* A measured height, by the change of the lower or the higher end. */
static void report_height(const struct stance *stance, enum quantity_id quantity, double height_m,
                          enum remark_id basis, struct figures *figures)
{
    struct need needs[STANCE_NEEDS];
    stance_needs(stance, needs);
    figures_add(figures, judged(stance_figure(stance, quantity, height_m, basis),
                                &(struct judgement){.needs = needs, .need_count = STANCE_NEEDS}));
}

/* A step is as high as the higher end; water comes in at the lower one. What the maker states for
 * wading is not raised, however tall the vehicle becomes: doors, breathers and brakes stay. */
static void report_depths(const struct stance *stance, struct figures *figures)
{
    const struct clearance_measured *measured = &stance->plan->specification->clearance;
    double lower = lower_of_pair(stance->body_change_m);
    if (known(measured->wading_depth_m))
        report_height(stance, QUANTITY_WADING_DEPTH,
                      measured->wading_depth_m + (lower < 0 || !known(lower) ? lower : 0),
                      BASIS_WADING, figures);
    if (known(measured->step_height_m))
        report_height(stance, QUANTITY_STEP_HEIGHT,
                      measured->step_height_m + higher_of_pair(stance->body_change_m),
                      BASIS_HIGHER_AXLE, figures);
}

static void report_pitch(const struct stance *stance, struct figures *figures)
{
    double wheelbase = stance->plan->specification->vehicle.wheelbase_m;
    double rake = rake_rad(stance->body_change_m, wheelbase);
    double rise = beam_rise(stance->body_change_m, wheelbase);
    if (known(rake)) {
        figures_add(figures, stance_figure(stance, QUANTITY_RAKE, rake, BASIS_RAKE));
        figures_add(figures, stance_figure(stance, QUANTITY_HEADLAMP_AIM, rise, BASIS_BEAM));
    }
}

void report_body(const struct stance *stance, struct figures *figures)
{
    report_lowest(stance, figures);
    report_roof(stance, figures);
    report_depths(stance, figures);
    report_pitch(stance, figures);
}
