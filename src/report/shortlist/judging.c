/* One tyre on one wheel with springs, heights and an axle ratio, judged like an option of the build
 * file. */
#include <string.h>

#include "base/known.h"
#include "compute/gearing.h"
#include "compute/springs.h"
#include "report/shortlist/tried.h"
#include "tables/lookup.h"

/* A rating that the file gives neither of a rim nor of the wheel, or of both alike. */
static bool is_same_rating(double of_rim, double of_wheel)
{
    return !known(of_rim) || fabs(of_rim - of_wheel) < 1e-6 * of_wheel;
}

/* Whether a rim is the wheel that is on the vehicle, front and rear: of its size, and of no other
 * rating. It need not be tried on. */
static bool is_fitted_wheel(const struct setup *fitted, const struct search_rim *rim)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct tyre *on = &fitted->axle[axle];
        if (!size_goes_on_rim(&on->size, rim) || !rim_stands_as(rim, &on->wheel) ||
            !is_same_rating(rim->max_load_kg, on->wheel.max_load_kg) ||
            !is_same_rating(rim->max_pressure_Pa, on->wheel.max_pressure_Pa))
            return false;
    }
    return true;
}

/* As the file would name it among its options: {size, wheel}, and the rest as fitted. */
static void make_setup(const struct trial *trial, const struct shortlisted *item, struct setup *out)
{
    struct fitment option = {
        .name = "candidate",
        .tyre = tyre_unknown(),
        .rear = tyre_unknown(),
        .spare = tyre_unknown(),
    };
    option.tyre.size = item->candidate->size;
    option.tyre.size_given = true;
    if (!is_fitted_wheel(&trial->plan->fitted, item->rim))
        option.tyre.wheel = wheel_of_rim(item->rim);
    setup_option(&option, &trial->plan->fitted, out);
}

void tried_plan(struct trial *trial, const struct shortlisted *item, struct specification *with_it,
                struct plan *out)
{
    *out = *trial->plan;
    *with_it = *trial->plan->specification;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        plan_try_spring(out, with_it, axle, item->spring[axle], item->lift_m[axle]);
    if (item->other_axle)
        with_it->drivetrain.axle = (struct axle_pair){item->axle_ratio, item->axle_ratio};
    out->arena = &trial->scratch;
    out->specification = with_it;
    out->setups = arena_allocate_array(out->arena, 2, sizeof *out->setups);
    out->count = 2;
    out->setups[0] = trial->plan->fitted;
    if (item->candidate == NULL)
        out->setups[1] = trial->plan->setups[1];
    else
        make_setup(trial, item, &out->setups[1]);
    plan_set_beside(out);
}

static double ratio_now(const struct plan *plan)
{
    return of_axle(plan->specification->drivetrain.axle, plan_driven_axle(plan));
}

/* Engine speed beside the fitted drive, the plan's own axle being the one as it is. */
static double drive_remains(const struct plan *plan, double ratio)
{
    const struct beside *beside = &plan->beside[1];
    struct axle_pair now = plan_axle_ratio(plan);
    double restoring = restoring_axle_ratio(of_axle(now, plan_driven_axle(plan)),
                                            plan_circumference_m(plan, now, beside->before),
                                            plan_circumference_m(plan, now, beside->after));
    return known_or(ratio, 1) / restoring - 1;
}

void tried_set_ratio(const struct plan *plan, double ratio, struct shortlisted *item)
{
    item->other_axle = true;
    item->axle_ratio = ratio;
    item->drive_remains = drive_remains(plan, ratio);
}

void tried_measure(const struct plan *plan, struct shortlisted *item)
{
    enum axle axle = plan_driven_axle(plan);
    const struct tyre *tyre = &plan->setups[1].axle[axle];
    const struct beside *beside = &plan->beside[1];
    item->rim_width_m = tyre->wheel.width_m;
    item->inset_m = tyre->wheel.inset_m;
    item->axle_ratio = ratio_now(plan);
    item->drive_remains = drive_remains(plan, item->axle_ratio);
    item->diameter_m = beside->after[axle].overall_diameter_m;
    item->diameter_change_m = item->diameter_m - beside->before[axle].overall_diameter_m;
    item->load_kg = load_index_kg(tyre->size.service.load_index);
}

/* Ratios other than the one fitted, which a shop may order unless the file says no. */
static void list_ratios(const struct plan *plan, struct choices *out)
{
    const struct number_list *choices = &plan->specification->drivetrain.axle_choices;
    double now = ratio_now(plan);
    out->ratios = arena_allocate_array(plan->arena, choices->count + 1, sizeof *out->ratios);
    out->ratios[out->ratio_count++] = now;
    for (size_t i = 0; i < choices->count && plan->specification->allowed.axle_ratio != 0; i++)
        if (choices->items[i] != now)
            out->ratios[out->ratio_count++] = choices->items[i];
}

/* Each height once, and none that changes nothing. */
static size_t list_heights(const struct number_list *list, double *out)
{
    size_t count = 0;
    out[count++] = 0;
    for (size_t i = 0; i < list->count; i++) {
        size_t before = 0;
        while (before < count && out[before] != list->items[i])
            before++;
        if (before == count)
            out[count++] = list->items[i];
    }
    return count;
}

static void list_stands(const struct plan *plan, int axle, struct choices *out)
{
    const struct suspension *now = &plan->specification->suspension;
    const struct axle_suspension *offered = suspension_at(now, axle);
    double *heights =
        arena_allocate_array(plan->arena, offered->lift_choices.count + 1, sizeof *heights);
    size_t count = list_heights(&offered->lift_choices, heights), made = 0;
    out->springs[axle] = offered->spring_choices.count + 1;
    out->heights[axle] = count;
    out->stands[axle] =
        arena_allocate_array(plan->arena, out->springs[axle] * count, sizeof *out->stands[axle]);
    for (size_t i = 0; i < out->springs[axle]; i++)
        for (size_t j = 0; j < count; j++) {
            struct axle_stand *stand = &out->stands[axle][made++];
            struct suspension with = *now;
            stand->spring = i == 0 ? NULL : &offered->spring_choices.items[i - 1];
            stand->lift_m = heights[j];
            fit_spring(&with, axle, stand->spring, stand->lift_m);
            stand->suspension = *suspension_at(&with, axle);
        }
}

void choices_make(const struct plan *plan, struct choices *out)
{
    *out = (struct choices){.ratio_count = 0};
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        list_stands(plan, axle, out);
    list_ratios(plan, out);
}

size_t choices_count(const struct choices *choices)
{
    size_t count = choices->ratio_count;
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        count *= choices->springs[axle] * choices->heights[axle];
    return count;
}

static void take_closest(struct shortlisted *item, const struct figure *figure, double margin)
{
    item->closest_limit = &quantity_rows[figure->quantity];
    item->closest_axle = figure->axle;
    item->closest_left = margin * item->closest_limit->scale;
    item->closest_margin = margin;
}

/* What is missed by an amount that cannot be told counts as a whole scale (common practice, no
 * source): a refused pressure is no near miss. */
static const double untold_shortfall = 1;

double shortfall_of(const struct option_outcome *found, struct shortlisted *item)
{
    double shortfall = 0;
    for (size_t i = 0; i < found->finding_count; i++) {
        const struct figure *figure = found->findings[i];
        double scale = quantity_rows[figure->quantity].scale;
        double lacks = scale > 0 ? fabs(figure->value - figure->limit) / scale : UNKNOWN;
        if (figure->verdict != VERDICT_FAIL)
            break; /* they come first */
        if (!known(lacks)) {
            shortfall += untold_shortfall;
            continue;
        }
        shortfall += lacks;
        if (item != NULL && (!known(item->closest_margin) || -lacks < item->closest_margin))
            take_closest(item, figure, -lacks);
    }
    return shortfall;
}

double tried_level(const struct shortlisted *item)
{
    return item->found.outcome + (item->found.outcome == OUTCOME_NO_GO ? item->shortfall : 0);
}

static void take_outcome(struct shortlisted *item)
{
    const struct option_outcome *found = &item->found;
    item->closest_margin = item->closest_left = UNKNOWN;
    item->closest_axle = AXLE_NONE;
    item->closest_limit = NULL;
    item->shortfall = 0;
    if (found->outcome == OUTCOME_NO_GO) {
        item->shortfall = shortfall_of(found, item);
        if (item->closest_limit == NULL)
            take_closest(item, found->why, UNKNOWN);
    } else if (found->closest != NULL) {
        take_closest(item, found->closest, found->closest_margin);
    }
}

static void take_figures(const struct figures *figures, struct shortlisted *item)
{
    item->pressure_Pa = (struct axle_pair){UNKNOWN, UNKNOWN};
    item->speedometer_error = UNKNOWN;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (figure->setup == 0)
            continue;
        if (figure->quantity == QUANTITY_PRESSURE_RECOMMENDED) {
            if (figure->axle == AXLE_FRONT)
                item->pressure_Pa.front = figure->value;
            else
                item->pressure_Pa.rear = figure->value;
        }
        if (figure->quantity == QUANTITY_SPEEDOMETER_ERROR && !known(item->speedometer_error))
            item->speedometer_error = figure->value;
    }
}

/* Others are work of their own: springs and axles are ordered, a height is altered. */
void tried_add_changes(struct shortlisted *item)
{
    struct option_outcome *found = &item->found;
    size_t orders = item->other_axle, alterations = 0;
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        orders += item->spring[axle] != NULL;
        alterations += item->lift_m[axle] != 0;
    }
    if (found->outcome == OUTCOME_NO_GO || orders + alterations == 0)
        return;
    if (found->outcome == OUTCOME_GO)
        found->outcome = OUTCOME_WORK;
    found->counts[VERDICT_TASK] += orders + alterations;
    found->work[TASK_TO_ORDER] += orders;
    found->work[TASK_TO_ALTER] += alterations;
}

static void find_outcome(const struct plan *plan, const struct figures *figures,
                         struct shortlisted *item)
{
    option_outcome_make(plan, &plan_group_figures(plan, figures)[1], &item->found);
    take_outcome(item);
}

/* --- what one wheel after the other has alike */

/* The speedometer tells of sizes and axle ratios alone. */
static bool same_for_speedometer(const struct trial *trial, const struct shortlisted *a,
                                 const struct shortlisted *b)
{
    (void)trial;
    return same_value(a->axle_ratio, b->axle_ratio);
}

static bool same_stands(const struct shortlisted *a, const struct shortlisted *b)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        if (a->spring[axle] != b->spring[axle] || a->lift_m[axle] != b->lift_m[axle])
            return false;
    return true;
}

/* On the same springs, which say what may still come on them, wheels of one rating bear alike,
 * wherever they stand: but for twins, for the wheel that is on, of which the vehicle's maker tells,
 * and where another of the list may be ordered. */
static bool same_for_load(const struct trial *trial, const struct shortlisted *a,
                          const struct shortlisted *b)
{
    const struct setup *fitted = &trial->plan->fitted;
    bool twins = tyre_is_dual(&fitted->axle[AXLE_FRONT]) || tyre_is_dual(&fitted->axle[AXLE_REAR]);
    return same_stands(a, b) && same_value(a->rim->max_load_kg, b->rim->max_load_kg) &&
           same_value(a->rim->max_pressure_Pa, b->rim->max_pressure_Pa) && !twins &&
           trial->plan->specification->allowed.wheel != 1 && !is_fitted_wheel(fitted, a->rim) &&
           !is_fitted_wheel(fitted, b->rim);
}

/* Its figures outlive those of the tyre on its wheel. */
static void remember_part(const struct plan *plan, const struct shortlisted *item,
                          struct remembered *last, struct figures *figures, struct arena *whole_run)
{
    struct plan lasting = *plan;
    size_t start = figures->count;
    arena_reuse(&last->arena);
    lasting.arena = figures->arena = &last->arena;
    last->report(&lasting, figures);
    figures->arena = plan->arena;
    last->item = *item;
    last->count = figures->count - start;
    if (last->room < last->count) {
        last->room = 2 * last->count;
        last->figures = arena_allocate_array(whole_run, last->room, sizeof *last->figures);
    }
    memcpy(last->figures, figures->items + start, last->count * sizeof *last->figures);
}

void tried_report_part(struct trial *trial, const struct plan *plan, const struct shortlisted *item,
                       struct remembered *last)
{
    struct figures *figures = &trial->figures;
    bool same = last->item.candidate != NULL && last->item.candidate == item->candidate &&
                last->is_same(trial, &last->item, item);
    if (!same)
        remember_part(plan, item, last, figures, trial->plan->arena);
    for (size_t i = 0; same && i < last->count; i++)
        figures_add_as_is(figures, last->figures[i]);
}

void remember_parts(struct trial *trial)
{
    trial->load = (struct remembered){.report = report_load, .is_same = same_for_load};
    trial->speedometer =
        (struct remembered){.report = report_speedometer, .is_same = same_for_speedometer};
}

void tried_judge(struct trial *trial, const struct plan *plan, bool whole, struct shortlisted *item)
{
    struct figures *figures = &trial->figures;
    const struct standing *standing = standing_make(plan, trial->fitted);
    figures_restart(figures, plan->arena);
    report_tyre(plan, figures);
    report_clearance_pieces(standing, CLEARANCE_WHOLE & ~CLEARANCE_ANGLES, figures);
    tried_report_part(trial, plan, item, &trial->load);
    tried_report_part(trial, plan, item, &trial->speedometer);
    find_outcome(plan, figures, item);
    if (!whole && item->found.outcome == OUTCOME_NO_GO)
        return;
    report_clearance_pieces(standing, CLEARANCE_ANGLES, figures);
    report_gearing(plan, figures);
    find_outcome(plan, figures, item);
    take_figures(figures, item);
}

bool axle_is_judged(const struct specification *specification)
{
    const struct axle_pair *axle = &specification->drivetrain.axle;
    return specification->speedometer.sensor.on == SENSOR_ON_SHAFT ||
           !same_value(axle->front, axle->rear);
}
