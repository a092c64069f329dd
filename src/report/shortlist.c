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
    double code = candidate->size.rim_code_tenths / 10.0;
    if (candidate->size.rim_millimetric || fabs(code - rim->diameter_code) > 1e-9)
        return reason_rim;
    if (!is_wanted_form(trial->search, &candidate->size))
        return reason_form;
    if (trial->search->overall_diameter.given != NULL &&
        (!known(diameter_m) || !is_in_window(&trial->search->overall_diameter, diameter_m)))
        return reason_window;
    return NULL;
}

static void make_setup(const struct trial *trial, const struct candidate *candidate,
                       const struct search_rim *rim, struct setup *out)
{
    const struct setup *fitted = &trial->plan->fitted;
    setup_from_designation(&candidate->size, "candidate", out);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct tyre *tyre = &out->axle[axle];
        tyre->wheel.given = rim->given;
        tyre->wheel.width_m = rim->width_m;
        tyre->wheel.inset_m = known_or(rim->inset_m, fitted->axle[axle].wheel.inset_m);
        tyre->wheel.spacer_m = 0;
        tyre->wheel.max_load_kg = rim->max_load_kg;
        tyre->wheel.max_pressure_Pa = rim->max_pressure_Pa;
        tyre->dual = fitted->axle[axle].dual;
    }
    out->spare = fitted->spare;
}

/* What a figure lacks of its limit, as a share of the limit's or the value's own size. */
static double margin_of(const struct figure *figure)
{
    double size = fmax(fabs(figure->limit), fabs(figure->value));
    return size > 0 ? fabs(figure->value - figure->limit) / size : 0;
}

/* The spare is carried already, and a wrong speedometer can be set right: neither drops a tyre
 * unless the limits ask for a lawful one as it stands. */
static bool counts(const struct trial *trial, const struct figure *figure)
{
    const struct limits *limits = &trial->plan->specification->limits;
    unsigned left_out = POLICY_OF_SPARE | POLICY_BY_HAND | POLICY_OF_BUILD | POLICY_OF_PLACARD;
    if (figure->setup == 0 || quantity_rows[figure->quantity].policy & left_out)
        return false;
    return figure->quantity != QUANTITY_SPEEDOMETER_ERROR || limits->speedometer != CHOICE_NONE;
}

static void count_fails(const struct trial *trial, const struct figures *figures)
{
    struct shortlist *out = trial->out;
    const char *names[DROP_REASONS_MAX];
    double missing[DROP_REASONS_MAX];
    size_t count = 0;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (figure->verdict != VERDICT_FAIL || !counts(trial, figure))
            continue;
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

/* Worst verdict, unknowns, and the figure that is nearest to its limit. False on any fail. */
static bool judge(const struct trial *trial, const struct figures *figures,
                  struct shortlisted *item)
{
    item->worst = VERDICT_OK;
    item->closest_margin = INFINITY;
    item->closest_axle = AXLE_NONE;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (figure->verdict == VERDICT_NONE || !counts(trial, figure))
            continue;
        if (figure->verdict == VERDICT_FAIL)
            return false;
        item->unknowns += figure->verdict == VERDICT_UNKNOWN;
        if (figure->verdict < item->worst)
            item->worst = figure->verdict;
        if (!(quantity_rows[figure->quantity].policy & POLICY_NO_MARGIN) && known(figure->value) &&
            known(figure->limit) && margin_of(figure) < item->closest_margin) {
            item->closest_margin = margin_of(figure);
            item->closest_limit = quantity_rows[figure->quantity].name;
            item->closest_axle = figure->axle;
        }
    }
    return true;
}

static void take_results(const struct figures *figures, struct shortlisted *item)
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

static void keep(struct shortlist *out, struct arena *arena, const struct shortlisted *item)
{
    out->items = arena_grow(arena, out->items, out->count, &out->capacity, sizeof *out->items);
    out->items[out->count++] = *item;
}

/* One item an axle ratio: the one fitted, and each that can be ordered. */
static void keep_axle_ratios(const struct trial *trial, const struct plan *plan,
                             struct shortlisted *item)
{
    const struct drivetrain *drivetrain = &plan->specification->drivetrain;
    enum axle axle = plan_driven_axle(plan);
    double now = of_axle(drivetrain->axle, axle);
    const struct beside *beside = &plan->beside[1];
    double restoring =
        restoring_axle_ratio(known_or(now, 1), beside->before[axle].rolling_circumference_m,
                             beside->after[axle].rolling_circumference_m);
    item->axle_ratio = now;
    item->drive_remains = known_or(now, 1) / restoring - 1;
    keep(trial->out, trial->plan->arena, item);
    for (size_t i = 0; i < drivetrain->axle_choices.count; i++) {
        item->axle_ratio = drivetrain->axle_choices.items[i];
        item->drive_remains = item->axle_ratio / restoring - 1;
        keep(trial->out, trial->plan->arena, item);
    }
}

static void judge_candidate(const struct trial *trial, const struct candidate *candidate,
                            const struct search_rim *rim, struct arena *scratch)
{
    struct plan plan = *trial->plan;
    plan.arena = scratch;
    plan.setups = arena_allocate_array(scratch, 2, sizeof *plan.setups);
    plan.count = 2;
    plan.setups[0] = trial->plan->fitted;
    make_setup(trial, candidate, rim, &plan.setups[1]);
    plan_set_beside(&plan);
    struct figures figures = {.arena = scratch};
    report_tyre(&plan, &figures);
    if (plan.specification->clearance.given != NULL)
        report_clearance(&plan, &figures);
    report_load(&plan, &figures);
    report_speedometer_verdicts(&plan, &figures);
    struct shortlisted item = {.candidate = candidate, .rim = rim};
    if (!judge(trial, &figures, &item)) {
        count_fails(trial, &figures);
        return;
    }
    enum axle axle = plan_driven_axle(&plan);
    const struct beside *beside = &plan.beside[1];
    item.diameter_m = beside->after[axle].overall_diameter_m;
    item.diameter_change_m = item.diameter_m - beside->before[axle].overall_diameter_m;
    item.load_kg = load_index_kg(candidate->size.service.load_index);
    take_results(&figures, &item);
    keep_axle_ratios(trial, &plan, &item);
}

static int best_first(const void *left, const void *right)
{
    const struct shortlisted *a = left, *b = right;
    bool a_unknown = a->worst == VERDICT_UNKNOWN, b_unknown = b->worst == VERDICT_UNKNOWN;
    if (a_unknown != b_unknown) /* what is not known is never as good as what is */
        return a_unknown ? 1 : -1;
    double x = fabs(known_or(a->drive_remains, 1)), y = fabs(known_or(b->drive_remains, 1));
    if (x != y)
        return x < y ? -1 : 1;
    if (a->load_kg != b->load_kg)
        return a->load_kg > b->load_kg ? -1 : 1;
    if (a->candidate != b->candidate)
        return a->candidate < b->candidate ? -1 : 1;
    return a->rim < b->rim ? -1 : a->rim > b->rim;
}

void shortlist_make(const struct plan *plan, const struct candidate *candidates, size_t count,
                    struct shortlist *out)
{
    const struct search *search = &plan->specification->search;
    const struct trial trial = {plan, search, out};
    size_t ratios = 1 + plan->specification->drivetrain.axle_choices.count;
    *out = (struct shortlist){.count = 0};
    for (size_t i = 0; i < count; i++) {
        struct tyre_figures figures;
        figures_by_rule(&candidates[i].size, UNKNOWN, &figures);
        for (size_t j = 0; j < search->rims.count; j++) {
            const struct search_rim *rim = &search->rims.items[j];
            out->tried += ratios;
            const char *reason =
                dropped_at_once(&trial, &candidates[i], rim, figures.overall_diameter_m);
            if (reason != NULL) {
                reason_of(out, reason)->count++;
                continue;
            }
            struct arena scratch = ARENA_EMPTY;
            judge_candidate(&trial, &candidates[i], rim, &scratch);
            arena_free(&scratch);
        }
    }
    if (out->count > 0)
        qsort(out->items, out->count, sizeof *out->items, best_first);
}
