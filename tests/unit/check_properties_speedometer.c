/* The speedometer of many builds: a setting that is named is lawful at every speed on every tyre
 * that the standard allows, or a caution says where not; and nothing is judged of what is not
 * known. */
#include <string.h>

#include "base/known.h"
#include "build/rules.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

#define KMH(value) ((value) / 3.6)

static const struct figure *figure_of_setup(const struct run *run, int setup,
                                            enum quantity_id quantity, enum place_tyre tyre)
{
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->part == PART_SPEEDOMETER && figure->setup == setup &&
            figure->quantity == quantity && figure->place.tyre == tyre)
            return figure;
    }
    return NULL;
}

/* What the instrument shows with the setting entered is a straight line: from what is told at two
 * posted speeds. */
static bool line_entered(const struct run *run, int setup, double *scale, double *offset_mps)
{
    const struct figure *first = NULL, *last = NULL;
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->setup != setup || figure->quantity != QUANTITY_SHOWN_AT_LIMIT ||
            figure->place.setting != AT_SETTING_ENTERED)
            continue;
        first = first == NULL ? figure : first;
        last = figure;
    }
    if (first == last)
        return false;
    *scale =
        (last->value - first->value) / (last->place.road_speed_mps - first->place.road_speed_mps);
    *offset_mps = first->value - *scale * first->place.road_speed_mps;
    return true;
}

/* The lowest speed at which it may show too little or too much is not lawful; the least room to a
 * bound, m/s, by the table's note. */
static double least_room(const struct run *run, double scale, double offset_mps)
{
    const struct specification *specification = run->specification;
    const struct instrument *instrument = &specification->speedometer;
    const struct speedometer_rules_row *rule = speedometer_rule_find(instrument->rule);
    double unit = strcmp(rule->unit, "mph") == 0 ? 0.44704 : KMH(1), lowest = KMH(20.0);
    double top = known_or(specification->vehicle.top_speed_mps, KMH(120.0)), least = INFINITY;
    for (size_t i = 0; i < instrument->readings.count; i++)
        lowest = fmin(lowest, instrument->readings.items[i].second);
    for (size_t i = 0; i < instrument->timed_readings.count; i++)
        lowest = fmin(lowest, instrument->timed_readings.items[i].first /
                                  instrument->timed_readings.items[i].second);
    double under_from = rule->under_from > 0 ? rule->under_from * unit : lowest;
    double to = known(rule->applies_to) ? rule->applies_to * unit : top;
    for (int step = 0; step <= 40; step++) {
        double v = under_from + (to - under_from) * step / 40, w = rule->over_from * unit;
        w += (to - w) * step / 40;
        double under =
            scale * v + offset_mps - v * (1 - rule->under_percent / 100) + rule->under_add * unit;
        double over =
            w * (1 + rule->over_percent / 100) + rule->over_add * unit - scale * w - offset_mps;
        least = fmin(least, fmin(under, over));
    }
    return least;
}

/* How much longer than the one that was measured a new tyre is that may be fitted. A tyre that was
 * measured has no spread but its wear; where none was, the error is told of new tyres. */
static double longest(const struct run *run, int setup)
{
    const char *on = run->specification->speedometer.readings_on;
    int measured = 0;
    for (size_t i = 0; on != NULL && i < run->plan.count; i++)
        if (strcmp(run->plan.setups[i].name, on) == 0)
            measured = (int)i;
    bool none = figure_of_setup(run, measured, QUANTITY_SPEEDOMETER_ERROR, AT_LARGEST) != NULL;
    bool spread = figure_of_setup(run, setup, QUANTITY_SPEEDOMETER_ERROR, AT_LARGEST) != NULL;
    REQUIRE(spread || setup == measured, "seed %llu: setup %d is not told of the largest tyre",
            (unsigned long long)run->seed, setup);
    const struct tyre *tyre = &run->plan.setups[measured].axle[plan_driven_axle(&run->plan)];
    struct tyre_measures measures;
    tyre_measure(tyre, &measures);
    double lost = tyre->new_tread_depth_m - tyre->tread_depth_m;
    double worn = lost > 0 && !none ? 1 - 2 * lost / measures.stated.overall_diameter_m : 1;
    return (spread ? 1.015 : 1) / worn;
}

/* A rule of another kind of vehicle binds no setting. */
static bool rule_is_of_vehicle(const struct specification *specification)
{
    const struct speedometer_rules_row *rule =
        speedometer_rule_find(specification->speedometer.rule);
    return strcmp(rule->vehicle_kinds, "any") == 0 ||
           (strcmp(rule->vehicle_kinds, "light_truck") == 0 &&
            specification->vehicle.kind == VEHICLE_LIGHT_TRUCK);
}

static int setting_is_lawful(struct run *run)
{
    int checked = 0;
    if (run->specification->speedometer.rule == NULL || !rule_is_of_vehicle(run->specification))
        return 0;
    for (int setup = 0; setup < (int)run->plan.count; setup++) {
        double scale, offset_mps;
        const struct figure *nearest =
            figure_of_setup(run, setup, QUANTITY_SETTING_NEAREST, AT_ANY_TYRE);
        if (nearest == NULL || !known(nearest->value) ||
            !line_entered(run, setup, &scale, &offset_mps))
            continue;
        double nominal = least_room(run, scale, offset_mps);
        REQUIRE(nominal > -1e-6, "%s: %g m/s beyond the law", told_of(run, nearest), -nominal);
        checked++;
        if (nearest->verdict != VERDICT_OK)
            continue;
        double over = longest(run, setup);
        bool spread = figure_of_setup(run, setup, QUANTITY_SPEEDOMETER_ERROR, AT_SMALLEST) != NULL;
        double under = spread ? 0.975 : 1;
        double long_tyre = least_room(run, scale / over, offset_mps);
        double short_tyre = least_room(run, scale / under, offset_mps);
        REQUIRE(long_tyre > -1e-6, "%s: ok, and %g m/s beyond the law on the largest tyre",
                told_of(run, nearest), -long_tyre);
        REQUIRE(short_tyre > -1e-6, "%s: ok, and %g m/s beyond the law on the smallest tyre",
                told_of(run, nearest), -short_tyre);
    }
    return checked;
}

static void check_variation(const char *what, const struct variation *variation,
                            int (*check)(struct run *run))
{
    uint64_t seed = random_start(what);
    int checked = 0;
    for (int i = 0; i < properties_count(4 * BUILDS_FEW); i++, seed++) {
        struct run run;
        run_make(&run, seed, variation);
        checked += check(&run);
        run_free(&run);
    }
    ck_assert_int_gt(checked, 0);
}

START_TEST(setting_named_is_lawful_on_every_tyre)
{
    check_variation("settings", &as_drawn, setting_is_lawful);
}
END_TEST

START_TEST(setting_of_a_new_instrument_is_lawful_on_every_tyre)
{
    struct variation is_new = as_drawn;
    is_new.no_error = is_new.new_instrument = true;
    check_variation("new instruments", &is_new, setting_is_lawful);
}
END_TEST

/* A setup on a tyre whose size tells no circumference; or one that a data book gives, with worn
 * tread on a diameter that none gives. */
static void knock_out(struct run *run, size_t setup, bool rolls)
{
    struct designation size;
    struct designation_error error;
    struct setup *out = &run->plan.setups[setup];
    const char *name = out->name;
    bool is_fitted = out->is_fitted;
    ck_assert(designation_parse(span_of("9.50-17"), &size, &error));
    setup_from_designation(&size, name, out);
    out->is_fitted = is_fitted;
    for (int axle = 0; rolls && axle < AXLE_COUNT; axle++) {
        out->axle[axle].data_book.revs_per_km = 430;
        out->axle[axle].new_tread_depth_m = 8e-3;
        out->axle[axle].tread_depth_m = 5e-3;
    }
    plan_set_beside(&run->plan);
    run->figures = (struct figures){.arena = &run->arena};
    report_speedometer(&run->plan, &run->figures);
}

/* Judged is what is known: neither ok nor fail nor a caution stands on a value that is missing;
 * that no setting is lawful is the one finding without one. */
static int nothing_is_judged(const struct run *run, size_t missing)
{
    int checked = 0;
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->part != PART_SPEEDOMETER)
            continue;
        bool none = figure->quantity == QUANTITY_SETTING_NEAREST && figure->verdict == VERDICT_FAIL;
        REQUIRE(known(figure->value) || none || figure->verdict == VERDICT_NONE ||
                    figure->verdict == VERDICT_UNKNOWN,
                "%s is judged without a value", told_of(run, figure));
        if (figure->setup != (int)missing && missing != 0)
            continue;
        checked++;
        bool of_readings = figure->quantity == QUANTITY_MEASURED_ERROR ||
                           figure->quantity == QUANTITY_READING_RESIDUAL;
        REQUIRE(figure->verdict == VERDICT_NONE || figure->verdict == VERDICT_UNKNOWN ||
                    of_readings,
                "%s is judged, and its circumference is not known", told_of(run, figure));
        REQUIRE(figure->quantity != QUANTITY_ANSWER || figure->advice.id == ADVICE_ANSWER_UNKNOWN,
                "%s is answered, and its circumference is not known", told_of(run, figure));
    }
    return checked;
}

static int missing_tyre(struct run *run)
{
    int checked = nothing_is_judged(run, run->plan.count);
    for (size_t above = run->plan.count; above > 0; above--) {
        knock_out(run, above - 1, true);
        nothing_is_judged(run, run->plan.count);
        knock_out(run, above - 1, false);
        checked += nothing_is_judged(run, above - 1);
    }
    return checked;
}

START_TEST(nothing_is_judged_of_a_tyre_that_is_not_known)
{
    check_variation("missing tyres", &as_drawn, missing_tyre);
}
END_TEST

/* --- what the setting cures */

/* The same build with other values in its specification. */
static struct figures figures_again(struct run *run)
{
    struct figures figures = {.arena = &run->arena};
    ck_assert(plan_make(&run->arena, run->specification, false, NULL, &run->plan));
    report_speedometer(&run->plan, &figures);
    return figures;
}

static bool is_setting_task(const struct figure *figure)
{
    return figure->verdict == VERDICT_TASK && figure->cure.task == TASK_SPEEDOMETER_SETTING;
}

/* The one setting that all tasks of a setup ask for; UNKNOWN where none does. */
static double asked_for(const struct run *run, const struct figures *figures, int setup)
{
    double then = UNKNOWN;
    for (size_t i = 0; i < figures->count; i++) {
        const struct figure *figure = &figures->items[i];
        if (figure->setup != setup || figure->verdict != VERDICT_TASK)
            continue;
        REQUIRE(is_setting_task(figure), "%s: another task", told_of(run, figure));
        REQUIRE(known(figure->cure.then) && figure->cure.then != figure->cure.now,
                "%s: nothing to enter", told_of(run, figure));
        REQUIRE(!known(then) || then == figure->cure.then, "%s: two settings",
                told_of(run, figure));
        then = figure->cure.then;
    }
    return then;
}

/* The same figure of another reckoning. */
static const struct figure *same_row(const struct figures *in, const struct figure *figure)
{
    for (size_t i = 0; i < in->count; i++)
        if (figure_same(&in->items[i], figure,
                        SAME_PART | SAME_SETUP | SAME_STATE | SAME_AXLE | SAME_QUANTITY |
                            SAME_PLACE))
            return &in->items[i];
    return NULL;
}

static void enter(struct run *run, int setup, double setting)
{
    struct fitment *option =
        &run->specification->tyres.options.items[run->plan.setups[setup].number - 1];
    option->as_set.given = option->tyre.given;
    option->as_set.setting = setting;
}

/* What was work is no finding any more but a caution at most; what failed fails still, and nothing
 * else does. Of a new instrument there is more to tell once it is set. */
static void require_cured(const struct run *run, const struct figures *before,
                          const struct figures *after, int setup)
{
    for (size_t i = 0; i < before->count; i++) {
        const struct figure *was = &before->items[i];
        const struct figure *is = was->setup == setup ? same_row(after, was) : NULL;
        if (is_setting_task(was) && was->setup == setup)
            REQUIRE(is != NULL && is->verdict != VERDICT_FAIL && is->verdict != VERDICT_TASK,
                    "%s: entered, and not mended", told_of(run, was));
        if (was->verdict == VERDICT_FAIL && was->setup == setup)
            REQUIRE(is != NULL && is->verdict == VERDICT_FAIL, "%s: the setting is no cure of it",
                    told_of(run, was));
    }
    for (size_t i = 0; i < after->count; i++) {
        const struct figure *is = &after->items[i];
        const struct figure *was = same_row(before, is);
        if (is->setup == setup)
            REQUIRE(is->verdict != VERDICT_FAIL || (was != NULL && was->verdict == VERDICT_FAIL),
                    "%s: entered, and broken", told_of(run, is));
        else
            REQUIRE(was != NULL && figure_same(was, is, SAME_VALUE | SAME_VERDICT),
                    "%s: another option's setting moves it", told_of(run, is));
    }
    REQUIRE(!known(asked_for(run, after, setup)), "seed %llu: setup %d is entered, and work still",
            (unsigned long long)run->seed, setup);
}

static void require_accepted(const struct run *run)
{
    struct diagnostics diagnostics = {.arena = run->plan.arena};
    build_rules_check(run->specification, &diagnostics);
    REQUIRE(diagnostics.count == 0, "seed %llu: %s", (unsigned long long)run->seed,
            diagnostics.faults[0].message);
}

/* Each option in turn; the work of the others stays, since theirs was left out. */
static int entering_closes(struct run *run)
{
    int checked = 0;
    struct figures before = figures_again(run);
    for (int setup = 1; setup < (int)run->plan.count; setup++) {
        double then = asked_for(run, &before, setup);
        if (!known(then))
            continue;
        enter(run, setup, then);
        require_accepted(run);
        struct figures after = figures_again(run);
        require_cured(run, &before, &after, setup);
        before = after;
        checked++;
    }
    return checked;
}

START_TEST(entering_the_setting_leaves_no_work)
{
    struct variation is_new = as_drawn;
    is_new.no_error = is_new.new_instrument = true;
    check_variation("entered", &as_drawn, entering_closes);
    check_variation("entered anew", &is_new, entering_closes);
}
END_TEST

/* An instrument that cannot be set has no work, and what was work by law fails. */
static int fixed_has_no_work(struct run *run)
{
    int checked = 0;
    struct figures before = figures_again(run);
    run->specification->allowed.calibrate = 0;
    struct figures after = figures_again(run);
    for (size_t i = 0; i < before.count; i++) {
        const struct figure *was = &before.items[i], *is = same_row(&after, was);
        if (!is_setting_task(was) || was->quantity == QUANTITY_SETTING_EXACT) /* by an aim */
            continue;
        REQUIRE(is != NULL && is->verdict == VERDICT_FAIL, "%s: not to be set, and no fail",
                told_of(run, was));
        checked++;
    }
    for (int setup = 0; setup < (int)run->plan.count; setup++)
        REQUIRE(!known(asked_for(run, &after, setup)), "seed %llu: setup %d is not to be set",
                (unsigned long long)run->seed, setup);
    return checked;
}

START_TEST(instrument_that_cannot_be_set_has_no_work)
{
    check_variation("fixed", &as_drawn, fixed_has_no_work);
}
END_TEST

/* The error that was measured belongs to the setting it was measured with: what an option shows
 * with another is what it would show had all been measured with that one, e' by 1 + e' = (1 + e)
 * old / new for counts and the inverse for a circumference. */
static int error_stays_with_its_setting(struct run *run)
{
    struct instrument *instrument = &run->specification->speedometer;
    double error = instrument->fitted_error, now = instrument->setting.now, entered = 1.03 * now;
    bool rising = instrument->setting.kind == SETTING_CIRCUMFERENCE_MM;
    if (instrument->readings.count + instrument->timed_readings.count > 0 || !known(error) ||
        !known(now) || run->plan.count < 2)
        return 0;
    enter(run, 1, entered);
    struct figures with = figures_again(run);
    instrument->setting.now = entered;
    instrument->fitted_error = (1 + error) * (rising ? entered / now : now / entered) - 1;
    struct figures other = figures_again(run);
    int checked = 0;
    for (size_t i = 0; i < with.count; i++) {
        const struct figure *figure = &with.items[i], *like = same_row(&other, figure);
        if (figure->setup != 1 || figure->place.setting == AT_SETTING_ENTERED ||
            (figure->quantity != QUANTITY_SPEEDOMETER_ERROR &&
             figure->quantity != QUANTITY_TRUE_SPEED))
            continue;
        REQUIRE(like != NULL && close_in_unit(figure, figure->value, like->value),
                "%s: not as if measured with it", told_of(run, figure));
        checked++;
    }
    return checked;
}

START_TEST(error_belongs_to_the_setting_that_it_was_measured_with)
{
    check_variation("measured with", &as_drawn, error_stays_with_its_setting);
}
END_TEST

Suite *properties_speedometer_suite(void)
{
    Suite *suite = suite_create("properties_speedometer");
    TCase *law = tcase_create("the law");
    tcase_add_test(law, setting_named_is_lawful_on_every_tyre);
    tcase_add_test(law, setting_of_a_new_instrument_is_lawful_on_every_tyre);
    tcase_add_test(law, nothing_is_judged_of_a_tyre_that_is_not_known);
    suite_add_tcase(suite, law);
    TCase *cure = tcase_create("the cure");
    tcase_add_test(cure, entering_the_setting_leaves_no_work);
    tcase_add_test(cure, instrument_that_cannot_be_set_has_no_work);
    tcase_add_test(cure, error_belongs_to_the_setting_that_it_was_measured_with);
    suite_add_tcase(suite, cure);
    return suite;
}
