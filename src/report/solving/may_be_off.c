#include "report/solving/may_be_off.h"

#include <string.h>

#include "base/known.h"
#include "report/solving/inputs.h"

struct question {
    const struct plan *plan;
    struct specification *copy; /* that the inputs point into */
    size_t index;
    unsigned read_by;    /* bits of what reads the input */
    enum outcome others; /* of all that does not */
    enum outcome outcome;
    unsigned barred_by; /* the bit's number that was a no go last: asked first */
    struct figures figures;
    struct arena scratch;
};

static enum outcome worse_of(enum outcome a, enum outcome b)
{
    return a > b ? a : b;
}

/* The plan of the option alone, by the copy as it is now. */
static struct plan plan_now(struct question *question, bool tyres)
{
    struct plan plan = *question->plan;
    const struct setup *setup = &question->plan->setups[question->index];
    plan.arena = &question->scratch;
    plan.specification = question->copy;
    plan.count = 2;
    plan.setups = arena_allocate_array(plan.arena, 2, sizeof *plan.setups);
    plan.setups[0] = question->plan->setups[0];
    plan.setups[1] = *setup;
    if (tyres) {
        setup_fitted(question->copy, &plan.setups[0]);
        setup_option(&question->copy->tyres.options.items[setup->number - 1], &plan.setups[0],
                     &plan.setups[1]);
    }
    plan_set_beside(&plan);
    return plan;
}

static void report_one(const struct plan *plan, unsigned bit, const struct standing **standing,
                       struct figures *figures)
{
    static void (*const reports[PART_SOLVING])(const struct plan *, struct figures *) = {
        [PART_TYRE] = report_tyre,
        [PART_LOAD] = report_load,
        [PART_SPEEDOMETER] = report_speedometer_verdicts,
        [PART_GEARING] = report_gearing,
    };
    if (bit < JUDGED_PIECES_FROM) {
        reports[bit](plan, figures);
        return;
    }
    if (*standing == NULL)
        *standing = standing_make(plan, NULL);
    report_clearance_pieces(*standing, 1u << (bit - JUDGED_PIECES_FROM), figures);
}

/* The worst that any of the bits makes of the copy as it is now. */
static enum outcome outcome_by(struct question *question, unsigned bits)
{
    struct plan plan = plan_now(question, bits & 1u << PART_TYRE);
    const struct standing *standing = NULL;
    enum outcome worst = OUTCOME_GO;
    for (unsigned i = 0; i < JUDGED_BITS && worst != OUTCOME_NO_GO; i++) {
        unsigned bit = (question->barred_by + i) % JUDGED_BITS;
        struct option_outcome found;
        if (!(bits & 1u << bit))
            continue;
        figures_restart(&question->figures, plan.arena);
        report_one(&plan, bit, &standing, &question->figures);
        option_outcome_make(&plan, &plan_group_figures(&plan, &question->figures)[1], &found);
        worst = worse_of(worst, found.outcome);
        if (worst == OUTCOME_NO_GO)
            question->barred_by = bit;
    }
    arena_reuse(&question->scratch);
    return worst;
}

/* No further than a value can be: a mass is not below nothing. */
static double off_within(const struct input *input, double off)
{
    return fmin(fmax(*input->value + off, input->low), input->high) - *input->value;
}

static enum outcome outcome_at(struct question *question, const struct input *input, double off)
{
    double before = *input->value;
    *input->value += off_within(input, off);
    enum outcome found = outcome_by(question, question->read_by);
    *input->value = before;
    return worse_of(found, question->others);
}

/* Whether the outcome may change with the input: not that of what another thing rules out. */
static bool ask_of(struct question *question, const struct input *input)
{
    if (input->read_by != question->read_by) {
        question->read_by = input->read_by;
        question->others = outcome_by(question, JUDGED_WHOLE & ~input->read_by);
    }
    return question->others != OUTCOME_NO_GO;
}

/* The change between two shares of the range, the outcome at the nearer one being what it is. */
static void close_in(struct question *question, const struct input *input, double low, double high,
                     struct input_margin *out)
{
    double range = copysign(input->range, out->within);
    while (high - low > fmax(high / 64, 1. / 1024)) {
        double middle = (low + high) / 2;
        enum outcome there = outcome_at(question, input, middle * range);
        if (there == question->outcome) {
            low = middle;
        } else {
            high = middle;
            out->becomes = there;
        }
    }
    out->within = off_within(input, low * range);
    out->beyond = off_within(input, high * range);
    out->share = high;
}

/* What changes the outcome may, further off, change it back, and a probe beyond that sees nothing:
 * on the way to the change no eighth has another outcome. */
static void close_in_on_nearest(struct question *question, const struct input *input, double low,
                                double high, struct input_margin *out)
{
    enum { PARTS = 8 };
    int part;
    do {
        close_in(question, input, low, high, out);
        for (part = 1; part < PARTS; part++) {
            enum outcome there = outcome_at(question, input, out->within * part / PARTS);
            if (there == question->outcome)
                continue;
            low = fabs(out->within) / input->range * (part - 1) / PARTS;
            high = fabs(out->within) / input->range * part / PARTS;
            out->becomes = there;
            break;
        }
    } while (part < PARTS);
}

/* In its place among the most delicate. */
static size_t keep(struct input_margin out[INPUTS_TOLD_MAX], size_t count,
                   const struct input_margin *margin)
{
    size_t at = count;
    while (at > 0 && margin->share < out[at - 1].share)
        at--;
    if (at == INPUTS_TOLD_MAX)
        return count;
    count += count < INPUTS_TOLD_MAX;
    memmove(&out[at + 1], &out[at], (count - 1 - at) * sizeof *out);
    out[at] = *margin;
    return count;
}

/* What makes a no go go may, further off, break something else: looked for near the value first.
 * What breaks a limit breaks it further off too. */
static const double steps_of_no_go[] = {0, 1. / 16, 1. / 4, 1. / 2, 1}, steps_of_others[] = {0, 1};

static int step_count(enum outcome outcome)
{
    return outcome == OUTCOME_NO_GO ? 4 : 1;
}

/* The nearer change of both directions within one step, and nearer than those that are kept. */
static bool changes_within(struct question *question, const struct input *input, int step,
                           double nearer_than, struct input_margin *out)
{
    const double *steps = question->outcome == OUTCOME_NO_GO ? steps_of_no_go : steps_of_others;
    double from = steps[step], to = fmin(steps[step + 1], nearer_than);
    out->share = INFINITY;
    for (int sign = -1; sign <= 1 && from < to; sign += 2) {
        struct input_margin margin = {input->path, input->words, input->kind,      sign,
                                      0,           INFINITY,     question->outcome};
        double at = to;
        margin.becomes = outcome_at(question, input, sign * at * input->range);
        /* A setting in whole steps may be right again further off. */
        if (margin.becomes == question->outcome && input->read_by == 1u << PART_SPEEDOMETER) {
            at = (from + to) / 2;
            margin.becomes = outcome_at(question, input, sign * at * input->range);
        }
        if (margin.becomes == question->outcome)
            continue;
        close_in_on_nearest(question, input, from, at, &margin);
        if (margin.share < out->share)
            *out = margin;
    }
    return isfinite(out->share);
}

static struct fitment *options_to_change(const struct plan *plan, struct judging *judging)
{
    const struct fitment_list *options = &plan->specification->tyres.options;
    if (judging->options == NULL) {
        judging->options =
            arena_allocate_array(plan->arena, options->count, sizeof *judging->options);
        memcpy(judging->options, options->items, options->count * sizeof *judging->options);
    }
    return judging->options;
}

bool may_be_off_find(const struct plan *plan, size_t index, enum outcome outcome,
                     struct judging *judging, struct input_margin out[INPUTS_TOLD_MAX],
                     size_t *count)
{
    struct specification copy = *plan->specification;
    struct inputs inputs;
    struct question question = {
        .plan = plan,
        .copy = &copy,
        .index = index,
        .outcome = outcome,
        .figures = {.room = plan->arena, .verdicts_only = true, .first_setup = 1}};
    *count = 0;
    copy.tyres.options.items = options_to_change(plan, judging);
    inputs_collect(plan->arena, &copy, plan->setups[index].number, &inputs);
    int steps = step_count(outcome);
    if (!judging_take(judging, 2 * (size_t)steps * inputs.count))
        return false;
    bool *found = arena_allocate_array(plan->arena, inputs.count, sizeof *found);
    for (int step = 0; step < steps && *count < INPUTS_TOLD_MAX; step++)
        for (size_t i = 0; i < inputs.count; i++) {
            const struct input *input = &inputs.items[i];
            struct input_margin margin;
            if (found[i] || !ask_of(&question, input))
                continue;
            double nearer_than =
                *count < INPUTS_TOLD_MAX ? INFINITY : out[INPUTS_TOLD_MAX - 1].share;
            found[i] = changes_within(&question, input, step, nearer_than, &margin);
            if (found[i])
                *count = keep(out, *count, &margin);
        }
    arena_free(&question.scratch);
    return true;
}
