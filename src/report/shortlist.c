#include "report/shortlist.h"

#include <stdlib.h>
#include <string.h>

#include "base/known.h"
#include "compute/gearing.h"
#include "tables/lookup.h"

/* Names of what is tested before a candidate is judged as an option. */
static const char reason_rim[] = "rim_diameter", reason_form[] = "form",
                  reason_window[] = "overall_diameter_window";

struct trial {
    const struct plan *plan;
    const struct search *search;
    struct shortlist *out;
    struct figures *figures; /* room for those of one candidate after the other */
};

static struct drop_reason *reason_of(struct shortlist *out, const char *name)
{
    for (size_t i = 0; i < out->reason_count; i++)
        if (strcmp(out->reasons[i].name, name) == 0)
            return &out->reasons[i];
    if (out->reason_count == DROP_REASONS_MAX)
        return &out->reasons[DROP_REASONS_MAX - 1];
    out->reasons[out->reason_count] = (struct drop_reason){.name = name, .short_m = UNKNOWN};
    return &out->reasons[out->reason_count++];
}

/* "metric", "flotation", "numeric", "full_profile", or the letters of a prefix or suffix. */
static bool is_of_form(const struct designation *size, const char *name)
{
    struct span form = span_of(name);
    static const char *const prefixes[PREFIX_COUNT] = {"", "P", "LT", "ST", "T", "HL"};
    static const char *const suffixes[SUFFIX_COUNT] = {"", "C", "CP", "LT", "ST", "NHS"};
    if (span_is_but_for_case(form, "metric")) /* the plain one: letters have their own names */
        return size->form == FORM_METRIC && size->prefix == PREFIX_NONE &&
               size->suffix == SUFFIX_NONE;
    return span_is_but_for_case(form, designation_form_name(size->form)) ||
           (size->prefix != PREFIX_NONE && span_is_but_for_case(form, prefixes[size->prefix])) ||
           (size->suffix != SUFFIX_NONE && span_is_but_for_case(form, suffixes[size->suffix]));
}

static bool is_wanted_form(const struct search *search, const struct designation *size)
{
    if (search->forms.count == 0)
        return true;
    for (size_t i = 0; i < search->forms.count; i++)
        if (is_of_form(size, search->forms.items[i]))
            return true;
    return false;
}

static bool is_in_window(const struct window *window, double value)
{
    return !(value < window->min.value) && !(value > window->max.value);
}

/* The reason that needs no judging, or NULL. */
static const char *dropped_at_once(const struct trial *trial, const struct candidate *candidate,
                                   const struct search_rim *rim, double diameter_m)
{
    if (!size_goes_on_rim(&candidate->size, rim))
        return reason_rim;
    if (!is_wanted_form(trial->search, &candidate->size))
        return reason_form;
    if (trial->search->overall_diameter.given != NULL &&
        (!known(diameter_m) || !is_in_window(&trial->search->overall_diameter, diameter_m)))
        return reason_window;
    return NULL;
}

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
static void make_setup(const struct trial *trial, const struct candidate *candidate,
                       const struct search_rim *rim, struct setup *out)
{
    struct fitment option = {
        .name = "candidate",
        .tyre = tyre_unknown(),
        .rear = tyre_unknown(),
        .spare = tyre_unknown(),
    };
    option.tyre.size = candidate->size;
    option.tyre.size_given = true;
    if (!is_fitted_wheel(&trial->plan->fitted, rim))
        option.tyre.wheel = wheel_of_rim(rim);
    setup_option(&option, &trial->plan->fitted, out);
}

static void count_fails(const struct trial *trial, const struct option_outcome *found)
{
    struct shortlist *out = trial->out;
    const char *names[DROP_REASONS_MAX];
    double missing[DROP_REASONS_MAX];
    size_t count = 0;
    for (size_t i = 0; i < found->finding_count; i++) {
        const struct figure *figure = found->findings[i];
        if (figure->verdict != VERDICT_FAIL)
            break; /* they come first */
        const struct quantity_row *quantity = &quantity_rows[figure->quantity];
        bool length = unit_table[quantity->metric].kind == KIND_LENGTH;
        double lacks = length ? fabs(figure->value - figure->limit) : UNKNOWN;
        size_t j = 0;
        while (j < count && strcmp(names[j], quantity->name) != 0)
            j++;
        if (j == count && count < DROP_REASONS_MAX) {
            names[count] = quantity->name;
            missing[count++] = lacks;
        } else if (j < count && lacks > missing[j]) {
            missing[j] = lacks;
        }
    }
    for (size_t j = 0; j < count; j++) {
        struct drop_reason *reason = reason_of(out, names[j]);
        reason->count++;
        reason->alone += count == 1;
        if (count == 1)
            reason->short_m = lower_of(reason->short_m, missing[j]);
    }
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

/* By how much in all its limits are missed, and what by most. */
static void find_shortfall(struct shortlisted *item)
{
    for (size_t i = 0; i < item->found.finding_count; i++) {
        const struct figure *figure = item->found.findings[i];
        double scale = quantity_rows[figure->quantity].scale;
        double lacks = scale > 0 ? fabs(figure->value - figure->limit) / scale : UNKNOWN;
        if (figure->verdict != VERDICT_FAIL)
            break; /* they come first */
        if (!known(lacks)) {
            item->shortfall += untold_shortfall;
            continue;
        }
        item->shortfall += lacks;
        if (!known(item->closest_margin) || -lacks < item->closest_margin)
            take_closest(item, figure, -lacks);
    }
    if (item->closest_limit == NULL)
        take_closest(item, item->found.why, UNKNOWN);
}

static void take_outcome(struct shortlisted *item)
{
    const struct option_outcome *found = &item->found;
    item->closest_margin = item->closest_left = UNKNOWN;
    item->closest_axle = AXLE_NONE;
    if (found->outcome == OUTCOME_NO_GO)
        find_shortfall(item);
    else if (found->closest != NULL)
        take_closest(item, found->closest, found->closest_margin);
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

/* What would outlive the figures that it points to. */
static void forget_figures(struct option_outcome *found)
{
    found->findings = NULL;
    found->why = found->closest = NULL;
    found->tasks = NULL;
    found->finding_count = found->task_count = 0;
}

static int nearest_miss_first(const struct shortlisted *a, const struct shortlisted *b)
{
    return a->shortfall < b->shortfall ? -1 : a->shortfall > b->shortfall;
}

static bool is_near_miss(const struct shortlist *list, const struct shortlisted *item)
{
    return list->count == 0 && (list->miss_count < NEAR_MISSES_MAX ||
                                nearest_miss_first(item, &list->misses[NEAR_MISSES_MAX - 1]) < 0);
}

/* In its place among the nearest. */
static void keep_miss(struct shortlist *out, const struct shortlisted *item)
{
    size_t at = out->miss_count;
    while (at > 0 && nearest_miss_first(item, &out->misses[at - 1]) < 0)
        at--;
    if (out->miss_count < NEAR_MISSES_MAX)
        out->miss_count++;
    memmove(&out->misses[at + 1], &out->misses[at],
            (out->miss_count - 1 - at) * sizeof out->misses[0]);
    out->misses[at] = *item;
}

static void keep(const struct trial *trial, const struct shortlisted *found)
{
    struct shortlist *out = trial->out;
    struct shortlisted item = *found;
    forget_figures(&item.found);
    if (item.found.outcome == OUTCOME_NO_GO) {
        if (is_near_miss(out, &item))
            keep_miss(out, &item);
        return;
    }
    out->items =
        arena_grow(trial->plan->arena, out->items, out->count, &out->capacity, sizeof *out->items);
    out->items[out->count++] = item;
}

/* Another axle ratio is work of its own: an order. */
static void add_axle_order(struct option_outcome *found)
{
    if (found->outcome == OUTCOME_NO_GO)
        return;
    if (found->outcome == OUTCOME_GO)
        found->outcome = OUTCOME_WORK;
    found->counts[VERDICT_TASK]++;
    found->work[task_rows[TASK_AXLE_RATIO].kind]++;
}

static void find_outcome(struct plan *plan, const struct figures *figures, struct shortlisted *item)
{
    item->shortfall = 0;
    item->closest_limit = NULL;
    option_outcome_make(plan, &plan_group_figures(plan, figures)[1], &item->found);
    take_outcome(item);
}

/* A size on a wheel with an axle ratio: over all parts, as every command judges, but where the
 * first of them leave nothing to show of it. */
static void judge_item(const struct trial *trial, struct plan *plan, struct shortlisted *item)
{
    struct figures *figures = trial->figures;
    figures_restart(figures, plan->arena);
    report_all_but_gearing(plan, figures);
    find_outcome(plan, figures, item);
    if (item->found.outcome == OUTCOME_NO_GO && !is_near_miss(trial->out, item))
        return;
    report_gearing(plan, figures);
    find_outcome(plan, figures, item);
    take_figures(figures, item);
}

static double ratio_now(const struct plan *plan)
{
    return of_axle(plan->specification->drivetrain.axle, plan_driven_axle(plan));
}

/* Engine speed beside the fitted drive. */
static double drive_remains(const struct plan *plan, double now, double ratio)
{
    enum axle axle = plan_driven_axle(plan);
    const struct beside *beside = &plan->beside[1];
    double restoring =
        restoring_axle_ratio(known_or(now, 1), beside->before[axle].rolling_circumference_m,
                             beside->after[axle].rolling_circumference_m);
    return known_or(ratio, 1) / restoring - 1;
}

/* Whether any finding can hang on the axle ratio: elsewhere the one judgement stands for all. */
static bool axle_is_judged(const struct specification *specification)
{
    const struct axle_pair *axle = &specification->drivetrain.axle;
    return specification->speedometer.sensor.on == SENSOR_ON_SHAFT ||
           !same_value(axle->front, axle->rear);
}

/* The candidate as if the file's axle had that ratio; `kept` is that with the axle as it is. */
static void try_axle(const struct trial *trial, const struct plan *plan, double ratio,
                     const struct shortlisted *kept)
{
    struct shortlisted item = *kept;
    if (axle_is_judged(plan->specification)) {
        struct specification *other = arena_allocate(plan->arena, sizeof *other);
        struct plan with_it = *plan;
        *other = *plan->specification;
        other->drivetrain.axle = (struct axle_pair){ratio, ratio};
        with_it.specification = other;
        judge_item(trial, &with_it, &item);
    }
    item.other_axle = true;
    item.axle_ratio = ratio;
    item.drive_remains = drive_remains(plan, ratio_now(plan), ratio);
    add_axle_order(&item.found);
    item.axle_unasked = item.found.outcome >= kept->found.outcome;
    bool in_vain = item.found.outcome == OUTCOME_NO_GO &&
                   (kept->found.outcome != OUTCOME_NO_GO || nearest_miss_first(&item, kept) >= 0);
    if (!in_vain)
        keep(trial, &item);
}

/* Ratios other than the one fitted, which a shop may order unless the file says no. */
static bool is_to_try(const struct specification *specification, double now, double ratio)
{
    return specification->allowed.axle_ratio != 0 && ratio != now;
}

static void judge_candidate(const struct trial *trial, const struct candidate *candidate,
                            const struct search_rim *rim, struct arena *scratch)
{
    const struct specification *specification = trial->plan->specification;
    const struct number_list *choices = &specification->drivetrain.axle_choices;
    struct plan plan = *trial->plan;
    enum axle axle = plan_driven_axle(&plan);
    plan.arena = scratch;
    plan.setups = arena_allocate_array(scratch, 2, sizeof *plan.setups);
    plan.count = 2;
    plan.setups[0] = trial->plan->fitted;
    make_setup(trial, candidate, rim, &plan.setups[1]);
    plan_set_beside(&plan);
    double now = ratio_now(&plan), before_m = plan.beside[1].before[axle].overall_diameter_m;
    struct shortlisted item = {
        .candidate = candidate,
        .rim = rim,
        .axle_ratio = now,
        .drive_remains = drive_remains(&plan, now, now),
        .diameter_m = plan.beside[1].after[axle].overall_diameter_m,
        .load_kg = load_index_kg(candidate->size.service.load_index),
    };
    item.diameter_change_m = item.diameter_m - before_m;
    judge_item(trial, &plan, &item);
    if (item.found.outcome == OUTCOME_NO_GO)
        count_fails(trial, &item.found);
    keep(trial, &item);
    for (size_t i = 0; i < choices->count; i++)
        if (is_to_try(specification, now, choices->items[i]))
            try_axle(trial, &plan, choices->items[i], &item);
}

static size_t ratio_count(const struct plan *plan)
{
    const struct number_list *choices = &plan->specification->drivetrain.axle_choices;
    size_t count = 1;
    for (size_t i = 0; i < choices->count; i++)
        count += is_to_try(plan->specification, ratio_now(plan), choices->items[i]);
    return count;
}

static int best_first(const void *left, const void *right)
{
    const struct shortlisted *a = left, *b = right;
    if (a->axle_unasked != b->axle_unasked)
        return a->axle_unasked ? 1 : -1;
    int better = option_outcome_compare(&a->found, &b->found);
    if (better != 0)
        return better;
    double x = fabs(known_or(a->drive_remains, 1)), y = fabs(known_or(b->drive_remains, 1));
    if (x != y)
        return x < y ? -1 : 1;
    if (a->load_kg != b->load_kg)
        return a->load_kg > b->load_kg ? -1 : 1;
    if (a->candidate != b->candidate)
        return a->candidate < b->candidate ? -1 : 1;
    return a->rim < b->rim ? -1 : a->rim > b->rim;
}

/* A wheel that is listed twice is one wheel. */
static bool is_listed_before(const struct search_rim_list *rims, size_t index)
{
    const struct search_rim *rim = &rims->items[index];
    for (size_t i = 0; i < index; i++) {
        const struct search_rim *other = &rims->items[i];
        if (same_value(rim->diameter_code, other->diameter_code) &&
            same_value(rim->width_m, other->width_m) && same_value(rim->inset_m, other->inset_m) &&
            same_value(rim->max_load_kg, other->max_load_kg) &&
            same_value(rim->max_pressure_Pa, other->max_pressure_Pa))
            return true;
    }
    return false;
}

void shortlist_make(const struct plan *plan, const struct candidate *candidates, size_t count,
                    struct shortlist *out)
{
    const struct search *search = &plan->specification->search;
    struct figures judged = {.room = plan->arena, .verdicts_only = true};
    struct arena scratch = ARENA_EMPTY;
    const struct trial trial = {plan, search, out, &judged};
    size_t ratios = ratio_count(plan);
    *out = (struct shortlist){.count = 0};
    for (size_t i = 0; i < count; i++) {
        struct tyre_dimensions figures;
        figures_by_rule(&candidates[i].size, UNKNOWN, &figures);
        for (size_t j = 0; j < search->rims.count; j++) {
            const struct search_rim *rim = &search->rims.items[j];
            if (is_listed_before(&search->rims, j))
                continue;
            out->tried += ratios;
            const char *reason =
                dropped_at_once(&trial, &candidates[i], rim, figures.overall_diameter_m);
            if (reason != NULL) {
                reason_of(out, reason)->count++;
                continue;
            }
            judge_candidate(&trial, &candidates[i], rim, &scratch);
            arena_reuse(&scratch);
        }
    }
    arena_free(&scratch);
    if (out->count > 0)
        qsort(out->items, out->count, sizeof *out->items, best_first);
}
