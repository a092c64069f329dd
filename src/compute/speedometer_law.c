#include "compute/speedometer_law.h"

#include <string.h>

#include "base/units.h"

static double rule_speed_mps(const struct speedometer_rules_row *rule, double value)
{
    return unit_to_si(strcmp(rule->unit, "mph") == 0 ? UNIT_MPH : UNIT_KMH, value);
}

struct speed_range judged_range(const struct speedometer_rules_row *rule, double top_mps)
{
    double to = known(rule->applies_to) ? rule_speed_mps(rule, rule->applies_to) : top_mps;
    return (struct speed_range){
        fmin(rule_speed_mps(rule, fmax(rule->over_from, rule->under_from)), to), to};
}

struct speed_range lawful_shown(const struct speedometer_rules_row *rule, double true_mps)
{
    return (struct speed_range){
        true_mps * (1 - rule->under_percent / 100) - rule_speed_mps(rule, rule->under_add),
        true_mps * (1 + rule->over_percent / 100) + rule_speed_mps(rule, rule->over_add)};
}

struct speed_range lawful_true(const struct speedometer_rules_row *rule, double shown_mps)
{
    return (struct speed_range){
        (shown_mps - rule_speed_mps(rule, rule->over_add)) / (1 + rule->over_percent / 100),
        (shown_mps + rule_speed_mps(rule, rule->under_add)) / (1 - rule->under_percent / 100)};
}

/* A billionth: a setting that meets a bound exactly meets it, and bounds equally near are so in
 * whatever unit a speed was written. */
static double slack_mps(double speed_mps)
{
    return 1e-9 * fmax(1, speed_mps);
}

/* One bound at one true speed; kept in *out where it is clearly the tightest so far, or unknown: of
 * two that are equally near the first stays. */
static void try_bound(double shown, double bound, bool lower, double true_mps,
                      struct lawful_check *out)
{
    double excess = lower ? bound - shown : shown - bound;
    if (!known(out->excess_mps) || excess - out->excess_mps <= slack_mps(true_mps))
        return; /* what is unknown is never <= */
    *out = (struct lawful_check){
        .worst_true_mps = true_mps,
        .excess_mps = excess,
        .reads_under = lower,
        .bound_shown_mps = bound,
    };
}

static void try_speed(const struct speedometer_rules_row *rule, double true_mps, double shown_mps,
                      struct lawful_check *out)
{
    struct speed_range allowed = lawful_shown(rule, true_mps);
    try_bound(shown_mps, allowed.to_mps, false, true_mps, out);
    try_bound(shown_mps, allowed.from_mps, true, true_mps, out);
}

static void judge(double speed_mps, struct lawful_check *out)
{
    out->lawful = answer_of(known(out->excess_mps), out->excess_mps <= slack_mps(speed_mps));
    if (out->lawful == ANSWER_UNKNOWN)
        *out = (struct lawful_check){ANSWER_UNKNOWN, UNKNOWN, UNKNOWN, false, UNKNOWN};
}

void check_lawful(const struct speedometer_rules_row *rule, struct instrument_line line,
                  double top_mps, struct lawful_check *out)
{
    struct speed_range range = judged_range(rule, top_mps);
    *out = (struct lawful_check){.excess_mps = -INFINITY};
    try_speed(rule, range.from_mps, shown_speed_mps(line, range.from_mps), out);
    try_speed(rule, range.to_mps, shown_speed_mps(line, range.to_mps), out);
    judge(range.to_mps, out);
}

void check_lawful_at(const struct speedometer_rules_row *rule, double true_mps, double shown_mps,
                     struct lawful_check *out)
{
    *out = (struct lawful_check){.excess_mps = -INFINITY};
    try_speed(rule, true_mps, shown_mps, out);
    judge(true_mps, out);
}

/* Where scale v + offset = slope v + constant, inside the range. */
static double crossing(struct instrument_line line, double slope, double constant,
                       struct speed_range range)
{
    double at = (constant - line.offset_mps) / (line.scale - slope);
    bool inside = at > range.from_mps && at < range.to_mps; /* false where the lines are parallel */
    return inside ? at : UNKNOWN;
}

struct crossings lawful_crossings(const struct speedometer_rules_row *rule,
                                  struct instrument_line line, double top_mps)
{
    struct speed_range range = judged_range(rule, top_mps), at_zero = lawful_shown(rule, 0);
    return (struct crossings){
        crossing(line, 1 - rule->under_percent / 100, at_zero.from_mps, range),
        crossing(line, 1 + rule->over_percent / 100, at_zero.to_mps, range)};
}

struct scale_range lawful_scales(const struct speedometer_rules_row *rule, double offset_mps,
                                 double top_mps, struct spread spread)
{
    struct speed_range range = judged_range(rule, top_mps);
    double speeds[] = {range.from_mps, range.to_mps};
    struct scale_range scales = {0, INFINITY};
    if (!known(offset_mps + range.to_mps + spread.under + spread.over))
        return (struct scale_range){UNKNOWN, UNKNOWN};
    for (int end = 0; end < 2; end++) {
        struct speed_range allowed = lawful_shown(rule, speeds[end]);
        double low = (allowed.from_mps - offset_mps) / speeds[end];
        double high = (allowed.to_mps - offset_mps) / speeds[end];
        scales.low = fmax(scales.low, low * (1 + spread.over));
        scales.high = fmin(scales.high, high * (1 - spread.under));
    }
    return scales;
}

struct length_range lawful_circumferences(const struct speedometer_rules_row *rule,
                                          struct instrument_line line, double circumference_m,
                                          double top_mps)
{
    struct scale_range scales =
        lawful_scales(rule, line.offset_mps, top_mps, (struct spread){0, 0});
    return (struct length_range){circumference_m * line.scale / scales.high,
                                 circumference_m * line.scale / scales.low};
}
