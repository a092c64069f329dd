/* Every size on every wheel: what drops it at once, and what becomes of the rest. */
#include "report/shortlist/shortlist.h"

#include "base/known.h"
#include "report/shortlist/tried.h"

/* Names of what is tested before a candidate is judged as an option. */
static const char reason_rim[] = "rim_diameter", reason_form[] = "form",
                  reason_window[] = "overall_diameter_window";

/* "metric", "flotation", "numeric", "full_profile", or the letters of a prefix or suffix. */
static bool is_of_form(const struct designation *size, const char *name)
{
    struct span form = span_of(name);
    if (span_is_but_for_case(form, "metric")) /* the plain one: letters have their own names */
        return size->form == FORM_METRIC && size->prefix == PREFIX_NONE &&
               size->suffix == SUFFIX_NONE;
    return span_is_but_for_case(form, designation_form_name(size->form)) ||
           (size->prefix != PREFIX_NONE && span_is_but_for_case(form, PREFIX_TEXT[size->prefix])) ||
           (size->suffix != SUFFIX_NONE && span_is_but_for_case(form, SUFFIX_TEXT[size->suffix]));
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
static const char *dropped_at_once(const struct search *search, const struct candidate *candidate,
                                   const struct search_rim *rim, double diameter_m)
{
    if (!size_goes_on_rim(&candidate->size, rim))
        return reason_rim;
    if (!is_wanted_form(search, &candidate->size))
        return reason_form;
    if (search->overall_diameter.given != NULL &&
        (!known(diameter_m) || !is_in_window(&search->overall_diameter, diameter_m)))
        return reason_window;
    return NULL;
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

/* As if the plan's axle had that ratio; `kept` is the same with the axle as it is. */
static void try_ratio(struct trial *trial, const struct plan *plan, struct specification *with_it,
                      double ratio, const struct shortlisted *kept)
{
    struct shortlisted item = *kept;
    tried_set_ratio(plan, ratio, &item);
    if (axle_is_judged(with_it)) {
        const struct axle_pair now = with_it->drivetrain.axle;
        with_it->drivetrain.axle = (struct axle_pair){ratio, ratio};
        tried_judge(trial, plan, false, &item);
        with_it->drivetrain.axle = now;
    }
    tried_add_changes(&item);
    item.unasked = !clearly_above(tried_level(kept), tried_level(&item));
    if (!item.unasked || item.found.outcome != OUTCOME_NO_GO)
        keep(trial, &item);
}

/* On the springs that the vehicle has, so that each is judged whole at once. */
static void try_ratios(struct trial *trial, struct shortlisted *item)
{
    struct specification with_it;
    struct plan plan;
    tried_plan(trial, item, &with_it, &plan);
    tried_measure(&plan, item);
    tried_judge(trial, &plan, false, item);
    if (item->found.outcome == OUTCOME_NO_GO)
        count_fails(trial->out, &(const struct option_outcome *){&item->found}, 1);
    keep(trial, item);
    for (size_t i = 1; i < trial->choices.ratio_count; i++) {
        item->number++;
        try_ratio(trial, &plan, &with_it, trial->choices.ratios[i], item);
    }
}

/* What is done with a tyre on a wheel; `dropped`: why it need not be judged, or NULL. */
typedef void (*take_tyre)(struct trial *trial, const struct candidate *candidate,
                          const struct search_rim *rim, const char *dropped);

static void for_each_tyre(struct trial *trial, take_tyre take)
{
    const struct search *search = &trial->plan->specification->search;
    for (size_t i = 0; i < trial->request->count; i++) {
        const struct candidate *candidate = &trial->request->candidates[i];
        struct tyre_dimensions figures;
        figures_by_rule(&candidate->size, UNKNOWN, &figures);
        for (size_t j = 0; j < search->rims.count; j++) {
            const struct search_rim *rim = &search->rims.items[j];
            if (!is_listed_before(&search->rims, j))
                take(trial, candidate, rim,
                     dropped_at_once(search, candidate, rim, figures.overall_diameter_m));
        }
    }
    if (trial->request->candidates == NULL)
        take(trial, NULL, NULL, NULL);
}

static void count_tyre(struct trial *trial, const struct candidate *candidate,
                       const struct search_rim *rim, const char *dropped)
{
    (void)candidate;
    (void)rim;
    trial->all += choices_count(&trial->choices);
    if (dropped == NULL)
        trial->judged += choices_count(&trial->choices);
}

static void try_tyre(struct trial *trial, const struct candidate *candidate,
                     const struct search_rim *rim, const char *dropped)
{
    struct shortlist *out = trial->out;
    struct shortlisted item = {
        .candidate = candidate, .rim = rim, .number = out->tried, .axle_ratio = UNKNOWN};
    if (dropped != NULL)
        count_dropped(out, dropped);
    else if (out->asked_only)
        try_combinations(trial, &item);
    else
        try_ratios(trial, &item);
    out->tried += choices_count(&trial->choices);
    arena_reuse(&trial->scratch);
    tell_progress(trial, out->tried);
}

/* Of many combinations only what ranks them has been worked out. */
static void judge_kept(struct trial *trial, struct shortlisted *items, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        struct specification with_it;
        struct plan plan;
        tried_plan(trial, &items[i], &with_it, &plan);
        tried_judge(trial, &plan, true, &items[i]);
        tried_add_changes(&items[i]);
        arena_reuse(&trial->scratch);
    }
}

void tell_progress(const struct trial *trial, size_t done)
{
    if (trial->request->progress != NULL)
        trial->request->progress(trial->request->progress_of, done, trial->all);
}

static struct trial trial_begin(const struct plan *plan, const struct shortlist_request *request)
{
    struct trial trial = {.plan = plan,
                          .request = request,
                          .figures = {.room = plan->arena, .verdicts_only = true, .first_setup = 1},
                          .scratch = ARENA_EMPTY,
                          .pair = ARENA_EMPTY};
    trial.fitted = standing_make(plan, NULL);
    remember_parts(&trial);
    choices_make(plan, &trial.choices);
    for_each_tyre(&trial, count_tyre);
    return trial;
}

static bool offers_springs(const struct trial *trial)
{
    return choices_count(&trial->choices) > trial->choices.ratio_count;
}

size_t shortlist_size(const struct plan *plan, const struct shortlist_request *request)
{
    const struct trial trial = trial_begin(plan, request);
    return offers_springs(&trial) ? trial.judged : 0;
}

void shortlist_make(const struct plan *plan, const struct shortlist_request *request,
                    struct shortlist *out)
{
    struct trial trial = trial_begin(plan, request);
    *out = (struct shortlist){.asked_only = offers_springs(&trial)};
    trial.out = out;
    for_each_tyre(&trial, try_tyre);
    sort_kept(out);
    if (out->asked_only)
        judge_kept(&trial, out->items, out->count);
    judge_kept(&trial, out->misses, out->miss_count);
    arena_free(&trial.load.arena);
    arena_free(&trial.speedometer.arena);
    arena_free(&trial.scratch);
    arena_free(&trial.pair);
}
