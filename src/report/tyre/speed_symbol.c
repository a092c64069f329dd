/* Whether the speed symbol is enough for the vehicle; and where it is not, what a rule that the
 * file names makes of a marked tyre. */
#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "report/judge.h"
#include "report/limits.h"
#include "report/tyre/candidate.h"
#include "tables/lookup.h"

/* A temporary spare has a speed of its own marked on it, often this (UN R64, from memory). */
static const double temporary_kmh = 80;

/* Whether a row of a rule is for this vehicle; and what would tell, where that is not known. */
static enum answer is_in_scope(const struct speed_symbol_rules_row *row,
                               const struct vehicle *vehicle, enum remark_id *missing)
{
    double gross_kg = vehicle->ratings.gross_kg;
    enum answer category = is_of_category(row->categories, vehicle);
    enum answer mass =
        !known(row->gross_max_kg)
            ? ANSWER_YES
            : answer_of(known(gross_kg), !clearly_above(gross_kg, row->gross_max_kg));
    *missing = category == ANSWER_UNKNOWN ? ADVICE_GIVE_CATEGORY : ADVICE_GROSS_RATING;
    if (category == ANSWER_NO || mass == ANSWER_NO)
        return ANSWER_NO;
    return category == ANSWER_YES && mass == ANSWER_YES ? ANSWER_YES : ANSWER_UNKNOWN;
}

static bool carries_mark(const struct designation *size, const char *mark)
{
    return strcmp(mark, "any") == 0 || (strcmp(mark, "severe_snow") == 0 && size->severe_snow) ||
           (strcmp(mark, "mud_and_snow") == 0 && size->mud_and_snow) ||
           (strcmp(mark, "professional_off_road") == 0 && size->special_use == SPECIAL_USE_POR);
}

/* What the named rule says of a tyre below the top speed: the row that lets it be, or why none. */
struct allowance {
    const struct speed_symbol_rules_row *row;
    enum remark_id missing; /* what is to be known first; REMARK_NONE: nothing */
    struct remark refusal;
};

static struct allowance allowance_of(const struct candidate *candidate)
{
    struct arena *arena = candidate->plan->arena;
    const struct designation *size = &candidate->tyre->size;
    const char *rule = candidate->plan->specification->limits.speed_symbol;
    bool marked = size->severe_snow || size->mud_and_snow || size->special_use != SPECIAL_USE_NONE;
    if (rule == NULL)
        return (struct allowance){
            .refusal = remark(marked ? ADVICE_NAME_SYMBOL_RULE : ADVICE_SPEED_SYMBOL)};
    struct allowance allowance = {
        .refusal = REMARK_WITH(arena, ADVICE_RULE_OF_OTHER_VEHICLES, say_text(rule))};
    for (const struct speed_symbol_rules_row *row = symbol_rule_next(rule, NULL); row != NULL;
         row = symbol_rule_next(rule, row)) {
        enum remark_id missing;
        enum answer in_scope = is_in_scope(row, &candidate->plan->specification->vehicle, &missing);
        if (in_scope == ANSWER_NO)
            continue;
        if (!carries_mark(size, row->mark))
            allowance.refusal = REMARK_WITH(arena, ADVICE_MARK_OF_RULE, say_text(rule));
        else if (in_scope == ANSWER_UNKNOWN)
            allowance.missing = missing;
        else
            return (struct allowance){.row = row};
    }
    return allowance;
}

/* By the rule: not below its least speed, nor need it be above the top speed. Where the rule asks
 * for a label in the driver's view, that is work until the option is handed over with it; where it
 * does not, that the tyre is the slower of the two is a caution. */
static struct figure judged_by_rule(const struct candidate *candidate, struct figure figure,
                                    const struct speed_symbol_rules_row *row)
{
    struct arena *arena = candidate->plan->arena;
    bool label = strcmp(row->label, "yes") == 0, no_least = !known(row->least_kmh);
    const struct as_set *as_set = candidate->setup->as_set;
    bool labelled = as_set != NULL && as_set->speed_label == 1;
    double top_mps = figure.limit, least_mps = unit_to_si(UNIT_KMH, row->least_kmh);
    struct argument speed = say_speed(figure.value, candidate->plan->us ? UNIT_MPH : UNIT_KMH);
    figure.basis = REMARK_WITH(arena, BASIS_QUOTED, say_text(row->basis));
    figure.limit = no_least ? UNKNOWN : lower_of(least_mps, top_mps);
    if (!no_least && !meets_limit(figure.value, LIMIT_AT_LEAST, figure.limit))
        return judged(figure, &(struct judgement){.if_broken = remark(ADVICE_BELOW_LEAST_OF_RULE)});
    return judged(
        figure, &(struct judgement){
                    .holds = answer_of(true, labelled || !label),
                    .met = label ? VERDICT_OK : VERDICT_CAUTION,
                    .if_met = REMARK_WITH(arena, label ? ADVICE_LABELLED : ADVICE_NO_FASTER, speed),
                    .cure = {.task = TASK_SPEED_LABEL, .now = UNKNOWN, .then = figure.value},
                    .if_broken = REMARK_WITH(arena, ADVICE_SPEED_LABEL, speed),
                });
}

void report_speed_symbol(const struct candidate *candidate)
{
    const struct designation *size = &candidate->tyre->size;
    double kmh = UNKNOWN;
    bool given = speed_symbol_kmh(size->service.speed_symbol, &kmh);
    bool temporary = given && size->prefix == PREFIX_T;
    if (temporary)
        kmh = lower_of(kmh, temporary_kmh);
    double top_mps = candidate->plan->specification->vehicle.top_speed_mps;
    struct figure figure =
        figure_by(QUANTITY_SPEED_SYMBOL, unit_to_si(UNIT_KMH, kmh),
                  remark(temporary ? BASIS_TEMPORARY_SPEED : BASIS_SPEED_SYMBOL));
    figure.headline = HEADLINE_YES;
    figure.limit_owner = LIMIT_OF_LAW;
    figure = limited_at_least(figure, top_mps);
    bool below = given && known(top_mps) && !meets_limit(figure.value, LIMIT_AT_LEAST, top_mps);
    struct allowance allowance = {.refusal = remark(ADVICE_TEMPORARY_USE)};
    if (below && !temporary)
        allowance = allowance_of(candidate);
    const struct need needs[] = {
        {given, remark(ADVICE_GIVE_SYMBOL)},
        {known(top_mps), remark(ADVICE_TOP_SPEED)},
        {allowance.missing == REMARK_NONE, remark(allowance.missing)},
    };
    const struct judgement by_top_speed = {.needs = needs,
                                           .need_count = sizeof needs / sizeof needs[0],
                                           .if_broken = allowance.refusal};
    candidate_add(candidate, allowance.row != NULL
                                 ? judged_by_rule(candidate, figure, allowance.row)
                                 : judged(figure, &by_top_speed));
}
