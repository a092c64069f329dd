#include "compute/speedometer_law.h"

#include <string.h>

#include "base/units.h"

#define ASKED_FROM_KMH 20

static double rule_speed_mps(const struct speedometer_rules_row *rule, double value)
{
    return unit_to_si(strcmp(rule->unit, "mph") == 0 ? UNIT_MPH : UNIT_KMH, value);
}

/* A range that begins above its end is that end alone. */
static struct speed_range range_from(const struct law *law, double from_mps)
{
    double to = known(law->rule->applies_to) ? rule_speed_mps(law->rule, law->rule->applies_to)
                                             : law->top_mps;
    return (struct speed_range){fmin(from_mps, to), to};
}

struct speed_range under_judged(const struct law *law)
{
    double named = rule_speed_mps(law->rule, law->rule->under_from);
    double usual = fmin(unit_to_si(UNIT_KMH, ASKED_FROM_KMH), law->lowest_mps);
    return range_from(law, named > 0 ? named : usual);
}

/* A slow vehicle has a test speed below that of all others. */
struct speed_range over_judged(const struct law *law)
{
    double speeds_kmh[TEST_SPEEDS_MAX], from = rule_speed_mps(law->rule, law->rule->over_from);
    int count = speedometer_test_speeds_kmh(law->rule->test_speeds,
                                            unit_from_si(UNIT_KMH, law->top_mps), speeds_kmh);
    for (int i = 0; i < count; i++)
        from = fmin(from, unit_to_si(UNIT_KMH, speeds_kmh[i]));
    return range_from(law, from);
}

struct speed_range judged_range(const struct law *law)
{
    struct speed_range under = under_judged(law), over = over_judged(law);
    return (struct speed_range){fmin(under.from_mps, over.from_mps),
                                fmax(under.to_mps, over.to_mps)};
}

static double least_shown(const struct speedometer_rules_row *rule, double true_mps)
{
    return true_mps * (1 - rule->under_percent / 100) - rule_speed_mps(rule, rule->under_add);
}

static double most_shown(const struct speedometer_rules_row *rule, double true_mps)
{
    return true_mps * (1 + rule->over_percent / 100) + rule_speed_mps(rule, rule->over_add);
}

/* A billionth: a setting that meets a bound exactly meets it, and bounds equally near are so in
 * whatever unit a speed was written. */
static double slack_mps(double speed_mps)
{
    return 1e-9 * fmax(1, speed_mps);
}

static bool is_within(struct speed_range range, double speed_mps)
{
    double slack = slack_mps(speed_mps);
    return speed_mps >= range.from_mps - slack && speed_mps <= range.to_mps + slack;
}

struct speed_range lawful_shown(const struct law *law, double true_mps)
{
    return (struct speed_range){
        is_within(under_judged(law), true_mps) ? least_shown(law->rule, true_mps) : UNKNOWN,
        is_within(over_judged(law), true_mps) ? most_shown(law->rule, true_mps) : UNKNOWN};
}

struct speed_range lawful_true(const struct law *law, double shown_mps)
{
    const struct speedometer_rules_row *rule = law->rule;
    double least =
        (shown_mps - rule_speed_mps(rule, rule->over_add)) / (1 + rule->over_percent / 100);
    double most =
        (shown_mps + rule_speed_mps(rule, rule->under_add)) / (1 - rule->under_percent / 100);
    return (struct speed_range){is_within(over_judged(law), least) ? least : UNKNOWN,
                                is_within(under_judged(law), most) ? most : UNKNOWN};
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

static void judge(double speed_mps, struct lawful_check *out)
{
    out->lawful = answer_of(known(out->excess_mps), out->excess_mps <= slack_mps(speed_mps));
    if (out->lawful == ANSWER_UNKNOWN)
        *out = (struct lawful_check){ANSWER_UNKNOWN, UNKNOWN, UNKNOWN, false, UNKNOWN};
}

void check_lawful(const struct law *law, struct instrument_line line, struct lawful_check *out)
{
    struct speed_range under = under_judged(law), over = over_judged(law);
    const double lower[] = {under.from_mps, under.to_mps}, upper[] = {over.from_mps, over.to_mps};
    *out = (struct lawful_check){.excess_mps = -INFINITY};
    for (int end = 0; end < 2; end++) {
        try_bound(shown_speed_mps(line, upper[end]), most_shown(law->rule, upper[end]), false,
                  upper[end], out);
        try_bound(shown_speed_mps(line, lower[end]), least_shown(law->rule, lower[end]), true,
                  lower[end], out);
    }
    judge(under.to_mps, out);
}

void check_lawful_at(const struct law *law, double true_mps, double shown_mps,
                     struct lawful_check *out)
{
    struct speed_range allowed = lawful_shown(law, true_mps);
    *out = (struct lawful_check){.excess_mps = -INFINITY, .bound_shown_mps = UNKNOWN};
    if (!known(allowed.from_mps) && !known(allowed.to_mps))
        return;
    if (known(allowed.to_mps))
        try_bound(shown_mps, allowed.to_mps, false, true_mps, out);
    if (known(allowed.from_mps))
        try_bound(shown_mps, allowed.from_mps, true, true_mps, out);
    judge(true_mps, out);
}

/* Where scale v + offset = slope v + constant, inside the range. */
static double crossing(struct instrument_line line, double slope, double constant,
                       struct speed_range range)
{
    double closing = line.scale - slope;
    if (closing == 0) /* the lines are parallel */
        return UNKNOWN;
    double at = (constant - line.offset_mps) / closing;
    return at > range.from_mps && at < range.to_mps ? at : UNKNOWN;
}

struct crossings lawful_crossings(const struct law *law, struct instrument_line line)
{
    const struct speedometer_rules_row *rule = law->rule;
    return (struct crossings){
        crossing(line, 1 - rule->under_percent / 100, least_shown(rule, 0), under_judged(law)),
        crossing(line, 1 + rule->over_percent / 100, most_shown(rule, 0), over_judged(law))};
}

/* The scale at which `shown` is shown at a true speed: by the line, or by that edge of the band of
 * the readings. With k times its scale, a line shows at v what it has shown at k v, and so does its
 * band. */
static double scale_to_show(double shown_mps, double true_mps, double offset_mps,
                            const struct calibration *doubt, enum band_edge edge)
{
    if (doubt == NULL)
        return (shown_mps - offset_mps) / true_mps;
    return doubt->scale.value * calibrated_true_at_edge(doubt, shown_mps, edge) / true_mps;
}

struct scale_range lawful_scales(const struct law *law, double offset_mps, struct spread spread,
                                 const struct calibration *doubt)
{
    struct speed_range under = under_judged(law), over = over_judged(law);
    const double lower[] = {under.from_mps, under.to_mps}, upper[] = {over.from_mps, over.to_mps};
    struct scale_range scales = {0, INFINITY};
    for (int end = 0; end < 2; end++) {
        double low = scale_to_show(least_shown(law->rule, lower[end]), lower[end], offset_mps,
                                   doubt, BAND_LOWER);
        double high = scale_to_show(most_shown(law->rule, upper[end]), upper[end], offset_mps,
                                    doubt, BAND_UPPER);
        if (!known(low * (1 + spread.over)) || !known(high * (1 - spread.under)))
            return (struct scale_range){UNKNOWN, UNKNOWN};
        scales.low = fmax(scales.low, low * (1 + spread.over));
        scales.high = fmin(scales.high, high * (1 - spread.under));
    }
    scales.high = fmax(scales.high, 0); /* no scale is below 0; as a setting it would change ends */
    return scales.low + scales.high > 0 ? scales : (struct scale_range){UNKNOWN, UNKNOWN};
}

struct length_range lawful_circumferences(const struct law *law, struct instrument_line line,
                                          double circumference_m)
{
    struct scale_range scales = lawful_scales(law, line.offset_mps, (struct spread){0, 0}, NULL);
    return (struct length_range){circumference_m * line.scale / scales.high,
                                 circumference_m * line.scale / scales.low};
}
