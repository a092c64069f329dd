/* The least change over random builds, against every set of changes written into the specification
 * one by one and judged whole: as few are found, and with them the option goes as is promised. */
#include <stdio.h>
#include <string.h>

#include "base/known.h"
#include "property_run.h"
#include "report/solving/least_change.h"
#include "report/solving/may_be_off.h"
#include "suites.h"
#include "support.h"

enum { RIMS = 3, SPRINGS = 2, LIFTS = 2 };

/* What a build is given to choose from. */
struct offered {
    struct search_rim rims[RIMS];
    struct spring_choice springs[AXLE_COUNT][SPRINGS];
    double lifts[AXLE_COUNT][LIFTS];
};

static struct axle_suspension *axle_suspension_of(struct specification *specification, int axle)
{
    return axle == AXLE_FRONT ? &specification->suspension.front : &specification->suspension.rear;
}

/* What fails for reasons that no change touches would fail alone. */
static void lighten(struct specification *specification)
{
    struct ratings *ratings = &specification->vehicle.ratings;
    ratings->front_kg = ratings->rear_kg = ratings->gross_kg = ratings->roof_kg = UNKNOWN;
    struct limits *limits = &specification->limits;
    struct window *windows[] = {&limits->diameter_change, &limits->diameter_and_suspension,
                                &limits->track_change, &limits->inset_change};
    for (size_t i = 0; i < LENGTH_OF(windows); i++)
        windows[i]->min.value = windows[i]->max.value = UNKNOWN;
    limits->published.count = 0;
    specification->vehicle.unladen_kg.front *= 0.3;
    specification->vehicle.unladen_kg.rear *= 0.3;
    specification->vehicle.top_speed_mps = 100 / 3.6;
    specification->speedometer.rule = specification->speedometer.odometer.rule = NULL;
    specification->clearance.arch.front.above_m += 0.06;
    specification->clearance.arch.rear.above_m += 0.06;
    specification->clearance.arch.front.at_lock_m += 0.06;
    specification->tyres.options.items[0].tyre.dual = CHOICE_NONE;
    specification->tyres.options.items[0].rear.dual = CHOICE_NONE;
    specification->tyres.fitted.rear.dual = CHOICE_NONE;
    specification->tyres.spare.size_given = false;
    specification->tyres.options.items[0].spare.size_given = false;
}

/* Choices near to what the first option has. */
static void offer(struct run *run, struct offered *out, struct specification *specification)
{
    uint64_t state = run->seed;
    const struct tyre *tyre = &specification->tyres.options.items[0].tyre;
    for (int i = 0; i < RIMS; i++)
        out->rims[i] = (struct search_rim){
            .given = tyre->wheel.given,
            .diameter_code = tyre->size.rim_code_tenths / 10.0,
            .width_m = known_or(tyre->wheel.width_m, 0.19) + random_whole(&state, -2, 2) * 0.0127,
            .inset_m = known_or(tyre->wheel.inset_m, 0.03) + random_whole(&state, -8, 4) * 0.005,
            .max_load_kg = 4000,
            .max_pressure_Pa = random_whole(&state, 0, 1) ? 9e5 : UNKNOWN};
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct axle_suspension *suspension = axle_suspension_of(specification, axle);
        for (int i = 0; i < SPRINGS; i++)
            out->springs[axle][i] =
                (struct spring_choice){.name = i == 0 ? "S1" : "S2",
                                       .wheel_rate_N_m = random_between(&state, 4e4, 2e5),
                                       .lift_m = random_whole(&state, -2, 8) * 0.01,
                                       .free_height_change_m = UNKNOWN,
                                       .load_from_kg = UNKNOWN,
                                       .load_to_kg = UNKNOWN};
        for (int i = 0; i < LIFTS; i++)
            out->lifts[axle][i] = random_whole(&state, -2, 6) * 0.02;
        suspension->spring_choices.items = out->springs[axle];
        suspension->spring_choices.count = (size_t)random_whole(&state, 0, SPRINGS);
        suspension->lift_choices.items = out->lifts[axle];
        suspension->lift_choices.count = (size_t)random_whole(&state, 0, LIFTS);
    }
    specification->search.rims.items = out->rims;
    specification->search.rims.count = (size_t)random_whole(&state, 0, RIMS);
    specification->allowed.wheel = random_whole(&state, 0, 3) > 0;
    specification->allowed.axle_ratio = random_whole(&state, 0, 1);
    lighten(specification);
}

/* The same changes, written into a specification by hand as a file would have them. */
static void write_changes(const struct change_set *set, const struct offered *offered,
                          struct specification *out)
{
    static const enum change_kind springs[] = {CHANGE_SPRING_FRONT, CHANGE_SPRING_REAR},
                                  lifts[] = {CHANGE_LIFT_FRONT, CHANGE_LIFT_REAR};
    int rim = set->choice[CHANGE_WHEEL], ratio = set->choice[CHANGE_AXLE_RATIO];
    struct wheel *wheel = &out->tyres.options.items[0].tyre.wheel;
    if (rim >= 0) {
        *wheel = tyre_unknown().wheel;
        wheel->given = offered->rims[rim].given;
        wheel->width_m = offered->rims[rim].width_m;
        wheel->inset_m = offered->rims[rim].inset_m;
        wheel->max_load_kg = offered->rims[rim].max_load_kg;
        wheel->max_pressure_Pa = offered->rims[rim].max_pressure_Pa;
        wheel->spacer_m = 0;
        out->tyres.options.items[0].rear.wheel = *wheel;
    }
    if (ratio >= 0)
        out->drivetrain.axle.front = out->drivetrain.axle.rear =
            out->drivetrain.axle_choices.items[ratio];
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct axle_suspension *suspension = axle_suspension_of(out, axle);
        int spring = set->choice[springs[axle]], lift = set->choice[lifts[axle]];
        if (spring >= 0) {
            suspension->wheel_rate_steps.count = suspension->wheel_rate_curve.count = 0;
            suspension->wheel_rate_N_m = offered->springs[axle][spring].wheel_rate_N_m;
            suspension->helper_rate_N_m = suspension->spring_rate_N_m = UNKNOWN;
            suspension->free_height_change_m = UNKNOWN;
            suspension->lift_m = offered->springs[axle][spring].lift_m;
        }
        if (lift >= 0 && known(suspension->free_height_change_m))
            suspension->free_height_change_m += offered->lifts[axle][lift];
        else if (lift >= 0)
            suspension->lift_m = known_or(suspension->lift_m, 0) + offered->lifts[axle][lift];
    }
}

static enum outcome outcome_of_first(struct run *run, const struct specification *specification)
{
    struct plan plan;
    struct figures figures = {.arena = &run->arena};
    struct option_outcome found;
    ck_assert(plan_make(&run->arena, specification, false, NULL, &plan));
    report_every_part(&plan, &figures);
    option_outcome_make(&plan, &plan_group_figures(&plan, &figures)[1], &found);
    return found.outcome;
}

static enum outcome outcome_with(struct run *run, const struct specification *specification,
                                 const struct offered *offered, const struct change_set *set)
{
    struct specification with_it = *specification;
    struct fitment *options =
        arena_allocate_array(&run->arena, specification->tyres.options.count, sizeof *options);
    memcpy(options, specification->tyres.options.items,
           specification->tyres.options.count * sizeof *options);
    with_it.tyres.options.items = options;
    with_it.tyres.options.count = 1;
    write_changes(set, offered, &with_it);
    return outcome_of_first(run, &with_it);
}

/* The fewest changes of all sets that do it; CHANGE_KINDS + 1: none does. */
static size_t fewest(struct run *run, const struct specification *specification,
                     const struct offered *offered, const struct change_choices *choices)
{
    size_t least = CHANGE_KINDS + 1, sets = 1;
    for (int kind = 0; kind < CHANGE_KINDS; kind++)
        sets *= choices->count[kind] + 1;
    for (size_t i = 1; i < sets; i++) {
        struct change_set set = no_changes();
        size_t rest = i;
        for (int kind = 0; kind < CHANGE_KINDS; kind++) {
            size_t choice = rest % (choices->count[kind] + 1);
            rest /= choices->count[kind] + 1;
            set.choice[kind] = choice == 0 ? AS_IT_IS : choices->choice[kind][choice - 1];
        }
        size_t count = change_count(&set);
        if (count < least && outcome_with(run, specification, offered, &set) != OUTCOME_NO_GO)
            least = count;
    }
    return least;
}

static size_t builds_in_vain;

static int least_is_least(struct run *run)
{
    struct offered offered;
    struct specification specification = *run->specification;
    struct least_change least;
    struct plan plan;
    struct tyre *rear = &specification.tyres.options.items[0].rear;
    if (rear->size_given) /* two sizes may stand on two rims */
        return 0;
    offer(run, &offered, &specification);
    if (outcome_of_first(run, &specification) != OUTCOME_NO_GO)
        return 0;
    ck_assert(plan_make(&run->arena, &specification, false, NULL, &plan));
    const struct change_choices choices = changes_allowed(&plan, 1);
    least_change_find(&plan, 1, &least);
    size_t by_hand = fewest(run, &specification, &offered, &choices);
    size_t by_search = least.found ? change_count(&least.set) : CHANGE_KINDS + 1;
    REQUIRE(by_hand == by_search, "seed %llu: %zu changes are found, %zu are the least:\n%s",
            (unsigned long long)run->seed, by_search, by_hand, run->text.text);
    builds_in_vain += !least.found;
    if (least.found) {
        enum outcome promised = least.outcome.outcome,
                     becomes = outcome_with(run, &specification, &offered, &least.set);
        REQUIRE(promised == becomes, "seed %llu: %s is promised, and it becomes %s:\n%s",
                (unsigned long long)run->seed, outcome_name(promised), outcome_name(becomes),
                run->text.text);
    }
    return least.found; /* what is rare is looked for further */
}

START_TEST(least_change_is_the_least_of_all_sets)
{
    builds_in_vain = 0;
    check_builds("least change", least_is_least);
    ck_assert_int_gt((int)builds_in_vain, 0);
}
END_TEST

/* --- how far inputs may be off */

/* Some of the inputs by their paths; NULL: one of the others. */
struct named_input {
    const char *path;
    double *value;
    double little; /* half of the range that is looked through */
};
enum { NAMED_INPUTS = 19 };

static void name_inputs(struct specification *specification, struct named_input out[NAMED_INPUTS])
{
    struct arches *arch = &specification->clearance.arch;
    const struct named_input inputs[NAMED_INPUTS] = {
        {"vehicle.unladen.front", &specification->vehicle.unladen_kg.front, 50},
        {"vehicle.unladen.rear", &specification->vehicle.unladen_kg.rear, 50},
        {"vehicle.wheelbase", &specification->vehicle.wheelbase_m, 0.025},
        {"suspension.front.lift", &specification->suspension.front.lift_m, 0.025},
        {"suspension.rear.lift", &specification->suspension.rear.lift_m, 0.025},
        {"clearance.arch.front.above", &arch->front.above_m, 0.025},
        {"clearance.arch.front.inner", &arch->front.inner_m, 0.025},
        {"clearance.arch.front.outer", &arch->front.outer_m, 0.025},
        {"clearance.arch.front.at_lock", &arch->front.at_lock_m, 0.025},
        {"clearance.arch.rear.above", &arch->rear.above_m, 0.025},
        {"clearance.arch.rear.inner", &arch->rear.inner_m, 0.025},
        {"clearance.arch.rear.outer", &arch->rear.outer_m, 0.025},
        {"clearance.spare_space.diameter", &specification->clearance.spare_space.diameter_m, 0.025},
        {"clearance.spare_space.width", &specification->clearance.spare_space.width_m, 0.025},
        {"speedometer.fitted_error", &specification->speedometer.fitted_error, 0.025},
        {"tyres.fitted.wheel.inset", &specification->tyres.fitted.tyre.wheel.inset_m, 0.025},
        {"tyres.fitted.mass", &specification->tyres.fitted.tyre.mass_kg, 10},
        {"tyres.options.A.wheel.inset", &specification->tyres.options.items[0].tyre.wheel.inset_m,
         0.025},
        {"tyres.options.A.mass", &specification->tyres.options.items[0].tyre.mass_kg, 10},
    };
    memcpy(out, inputs, sizeof inputs);
}

static double *input_at(struct specification *specification, const char *path)
{
    struct named_input inputs[NAMED_INPUTS];
    name_inputs(specification, inputs);
    for (int i = 0; i < NAMED_INPUTS; i++)
        if (strcmp(inputs[i].path, path) == 0)
            return inputs[i].value;
    int item;
    char key[16];
    if (sscanf(path, "carried.%d.%15s", &item, key) != 2)
        return NULL;
    struct carried_item *carried = &specification->carried.items[item - 1];
    return strcmp(key, "mass") == 0       ? &carried->mass_kg
           : strcmp(key, "at") == 0       ? &carried->at_m
           : strcmp(key, "volume") == 0   ? &carried->volume_m3
           : strcmp(key, "tow_ball") == 0 ? &carried->tow_ball_kg
                                          : NULL;
}

/* In the build itself, and back. */
static enum outcome outcome_off_by(struct run *run, const char *path, double off)
{
    double *value = input_at(run->specification, path), before = *value;
    *value += off;
    enum outcome outcome = outcome_of_first(run, run->specification);
    *value = before;
    return outcome;
}

/* An input that is not told of, though there is room to tell, changes nothing when off by a little.
 */
static void untold_change_nothing(struct run *run, const struct input_margin *margins, size_t count,
                                  enum outcome outcome)
{
    struct named_input inputs[NAMED_INPUTS];
    name_inputs(run->specification, inputs);
    for (int i = 0; i < NAMED_INPUTS && count < INPUTS_TOLD_MAX; i++) {
        bool told = !known(*inputs[i].value);
        for (size_t j = 0; j < count; j++)
            told = told || strcmp(margins[j].path, inputs[i].path) == 0;
        for (int sign = -1; sign <= 1 && !told; sign += 2)
            REQUIRE(outcome_off_by(run, inputs[i].path,
                                   fmax(sign * inputs[i].little, -*inputs[i].value)) == outcome,
                    "seed %llu: %s is not told of:\n%s", (unsigned long long)run->seed,
                    inputs[i].path, run->text.text);
    }
}

/* Off by a little more than is told the outcome is the other one, by what is told what it was, and
 * on the way there. */
static int margins_of(struct run *run)
{
    struct plan plan;
    struct figures figures = {.arena = &run->arena};
    struct option_outcome found;
    struct input_margin margins[INPUTS_TOLD_MAX];
    struct judging judging = {SIZE_MAX, 1};
    size_t count;
    int checked = 0;
    if (run->specification->tyres.options.count == 0)
        return 0;
    run->specification->tyres.options.count = 1;
    ck_assert(plan_make(&run->arena, run->specification, false, NULL, &plan));
    report_every_part(&plan, &figures);
    const struct setup_figures *setup = &plan_group_figures(&plan, &figures)[1];
    option_outcome_make(&plan, setup, &found);
    ck_assert(may_be_off_find(&plan, 1, setup, found.outcome, &judging, margins, &count));
    for (size_t i = 0; i < count; i++) {
        const struct input_margin *margin = &margins[i];
        double low = fabs(margin->within), high = fabs(margin->beyond);
        REQUIRE(i == 0 || margin->share >= margins[i - 1].share, "the most delicate first");
        REQUIRE(high - low <= fmax(high / 64, high / margin->share / 1024) * 1.001,
                "%s is found to %g", margin->path, high - low);
        if (input_at(run->specification, margin->path) == NULL)
            continue;
        REQUIRE(outcome_off_by(run, margin->path, margin->beyond) == margin->becomes,
                "seed %llu: %s off by %g:\n%s", (unsigned long long)run->seed, margin->path,
                margin->beyond, run->text.text);
        for (int part = 1; part <= 8; part++)
            REQUIRE(outcome_off_by(run, margin->path, margin->within * part / 8) == found.outcome,
                    "seed %llu: %s off by only %g:\n%s", (unsigned long long)run->seed,
                    margin->path, margin->within * part / 8, run->text.text);
        checked++;
    }
    untold_change_nothing(run, margins, count, found.outcome);
    return checked;
}

START_TEST(inputs_may_be_off_until_the_outcome_changes)
{
    enum { JOBS = 60 };
    uint64_t seed = random_start("may be off");
    int checked = 0, jobs = properties_count(JOBS);
    for (int i = 0; i < jobs; i++, seed++) {
        struct run run;
        run_make_job(&run, seed);
        checked += margins_of(&run);
        run_free(&run);
    }
    ck_assert_int_gt(checked, jobs);
    check_builds("may be off", margins_of);
}
END_TEST

Suite *properties_solving_suite(void)
{
    Suite *suite = suite_create("properties_solving");
    TCase *solving = tcase_create("solving");
    tcase_set_timeout(solving, 0);
    tcase_add_test(solving, least_change_is_the_least_of_all_sets);
    tcase_add_test(solving, inputs_may_be_off_until_the_outcome_changes);
    suite_add_tcase(suite, solving);
    return suite;
}
