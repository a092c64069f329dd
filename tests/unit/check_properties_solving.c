/* The least change over random jobs, against every set of changes written into the specification
 * one by one and judged whole: as few are found, with them the option becomes what is promised, and
 * with the work of the set done it is go. And how far inputs may be off. */
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "base/known.h"
#include "no_go_job.h"
#include "report/solving/least_change.h"
#include "report/solving/may_be_off.h"
#include "suites.h"
#include "support.h"
#include "workshop.h"

/* Of each, how many there are and which is taken: the last is none. */
enum dial {
    DIAL_RIM,
    DIAL_RIM_REAR, /* of an option with a size of its own there; else the one dial turns both */
    DIAL_RATIO,
    DIAL_SPRINGS,
    DIAL_LIFTS = DIAL_SPRINGS + 2,
    DIALS = DIAL_LIFTS + 2
};
struct dials {
    int count[DIALS], at[DIALS];
    unsigned withheld;
};

/* Counted by the file's own lists, whether a choice changes anything or not. */
static struct dials dials_of(const struct specification *specification)
{
    const struct suspension *suspension = &specification->suspension;
    bool two = specification->tyres.options.items[0].rear.size_given;
    int rims = specification->allowed.wheel == 1 ? (int)specification->search.rims.count : 0;
    struct dials dials = {.count = {rims, two ? rims : 0, specification->allowed.axle_ratio == 1,
                                    (int)suspension->front.spring_choices.count,
                                    (int)suspension->rear.spring_choices.count,
                                    (int)suspension->front.lift_choices.count,
                                    (int)suspension->rear.lift_choices.count}};
    return dials;
}

/* The next of all, like an odometer; false behind the last. */
static bool turn(struct dials *dials)
{
    if (++dials->withheld < WORK_WITHHELD_ALL)
        return true;
    dials->withheld = 0;
    for (int i = 0; i < DIALS; i++) {
        if (++dials->at[i] <= dials->count[i])
            return true;
        dials->at[i] = 0;
    }
    return false;
}

/* What cannot be mounted is no change. */
static bool goes_on(const struct dials *dials, enum dial dial, const struct offered *offered,
                    const struct tyre *tyre)
{
    return dials->at[dial] == 0 ||
           offered->rims[dials->at[dial] - 1].diameter_code == tyre->size.rim_code_tenths / 10.0;
}

static void write_wheel(const struct search_rim *rim, struct wheel *wheel)
{
    *wheel = tyre_unknown().wheel;
    wheel->given = rim->given;
    wheel->width_m = rim->width_m;
    wheel->inset_m = rim->inset_m;
    wheel->max_load_kg = rim->max_load_kg;
    wheel->max_pressure_Pa = rim->max_pressure_Pa;
    wheel->spacer_m = 0;
}

/* A rear tyre of another size that has no wheel of its own stands on the front one's, or on the
 * fitted one of its rim code: which it is to keep where the front gets another. */
static void keep_rear_wheel(struct specification *out)
{
    const struct tyre *fitted = &out->tyres.fitted.tyre;
    struct fitment *option = &out->tyres.options.items[0];
    struct wheel *rear = &option->rear.wheel;
    if (!option->rear.size_given || rear->given != NULL)
        return;
    if (option->tyre.wheel.given != NULL)
        *rear = option->tyre.wheel;
    else if (option->rear.size.rim_code_tenths == fitted->size.rim_code_tenths)
        *rear = fitted->wheel;
    static const struct given of_its_own; /* else it were the front one's */
    if (rear->given == NULL)
        rear->given = &of_its_own;
}

static void write_wheels(const struct dials *dials, const struct offered *offered,
                         struct specification *out)
{
    struct fitment *option = &out->tyres.options.items[0];
    int front = dials->at[DIAL_RIM], rear = dials->at[DIAL_RIM_REAR];
    if (front > 0) {
        keep_rear_wheel(out);
        write_wheel(&offered->rims[front - 1], &option->tyre.wheel);
    }
    if (front > 0 && !option->rear.size_given)
        option->rear.wheel = option->tyre.wheel;
    if (rear > 0)
        write_wheel(&offered->rims[rear - 1], &option->rear.wheel);
}

/* The same changes, written into a specification as a file would have them. */
static void write_changes(const struct dials *dials, const struct offered *offered,
                          struct specification *out)
{
    write_wheels(dials, offered, out);
    if (dials->at[DIAL_RATIO] > 0)
        out->drivetrain.axle = (struct axle_pair){offered->ratio, offered->ratio};
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct axle_suspension *suspension = axle_suspension_of(out, axle);
        if (dials->at[DIAL_SPRINGS + axle] > 0) {
            suspension->wheel_rate_steps.count = suspension->wheel_rate_curve.count = 0;
            suspension->wheel_rate_N_m = offered->springs[axle].wheel_rate_N_m;
            suspension->helper_rate_N_m = suspension->spring_rate_N_m = UNKNOWN;
            suspension->free_height_change_m = UNKNOWN;
            suspension->lift_m = offered->springs[axle].lift_m;
        }
        if (dials->at[DIAL_LIFTS + axle] > 0 && known(suspension->free_height_change_m))
            suspension->free_height_change_m += offered->lifts[axle];
        else if (dials->at[DIAL_LIFTS + axle] > 0)
            suspension->lift_m = known_or(suspension->lift_m, 0) + offered->lifts[axle];
    }
    if (dials->withheld & 1)
        out->allowed.trim_m = UNKNOWN;
    if (dials->withheld & 2)
        out->allowed.bump_stop_m = UNKNOWN;
    if (dials->withheld & 4)
        out->allowed.spacer_m = UNKNOWN;
}

/* By hand: whether a state adds more to an axle than the spring on it is made for. */
static bool is_overloaded(const struct plan *plan, const struct dials *dials,
                          const struct offered *offered)
{
    struct axle_loads loads;
    bool over = false;
    for (size_t state = 0; state < state_count(plan->specification); state++) {
        axle_loads_in_state(plan->specification, state_at(plan->specification, state),
                            &plan->fitted, &plan->setups[1], &loads);
        for (int axle = 0; axle < AXLE_COUNT; axle++)
            over = over ||
                   (dials->at[DIAL_SPRINGS + axle] > 0 &&
                    loads.axle_kg[axle] - of_axle(plan->specification->vehicle.unladen_kg, axle) -
                            tyre_mass_change_kg(&plan->fitted, &plan->setups[1], (enum axle)axle) >
                        offered->springs[axle].load_to_kg + 1e-6);
    }
    return over;
}

static void judge_with(struct run *run, const struct specification *specification,
                       const struct offered *offered, const struct dials *dials,
                       struct judged_build *out)
{
    copy_specification(&run->arena, specification, &out->specification);
    write_changes(dials, offered, &out->specification);
    judge_build(run, out);
    if (is_overloaded(&out->plan, dials, offered))
        out->outcomes[1].outcome = OUTCOME_NO_GO;
}

/* Choices and work: what is ordered, left out, altered or set. */
static size_t changes_in(const struct dials *dials, const struct option_outcome *outcome)
{
    size_t count = outcome->work[TASK_TO_ORDER] + outcome->work[TASK_TO_UNLOAD] +
                   outcome->work[TASK_TO_ALTER] + outcome->work[TASK_TO_SET];
    for (int i = 0; i < DIALS; i++)
        count += dials->at[i] > 0;
    return count;
}

/* The fewest changes of all sets that do it, of those that leave something open only where there is
 * no other; SIZE_MAX: none does. */
static size_t fewest(struct run *run, const struct specification *specification,
                     const struct offered *offered)
{
    static struct judged_build build;
    const struct fitment *option = &specification->tyres.options.items[0];
    struct dials dials = dials_of(specification);
    bool few = properties_count(1) == 1;
    size_t least[OUTCOMES] = {SIZE_MAX, SIZE_MAX, SIZE_MAX, SIZE_MAX};
    do {
        if (!goes_on(&dials, DIAL_RIM, offered, &option->tyre) ||
            !goes_on(&dials, DIAL_RIM_REAR, offered, &option->rear))
            continue;
        judge_with(run, specification, offered, &dials, &build);
        size_t count = changes_in(&dials, &build.outcomes[1]);
        enum outcome outcome = build.outcomes[1].outcome;
        least[outcome] = count < least[outcome] ? count : least[outcome];
        if (outcome == OUTCOME_NO_GO && dials.withheld == 0 && few)
            dials.withheld = WORK_WITHHELD_ALL; /* less that is allowed never helps */
    } while (turn(&dials));
    size_t sure = least[OUTCOME_GO] < least[OUTCOME_WORK] ? least[OUTCOME_GO] : least[OUTCOME_WORK];
    return sure < SIZE_MAX ? sure : least[OUTCOME_OPEN];
}

/* The set that was found, on dials. */
static struct dials dials_at(const struct change_set *set)
{
    struct dials dials = {
        .at = {set->choice[CHANGE_WHEEL] + 1, set->choice[CHANGE_WHEEL_REAR] + 1,
               set->choice[CHANGE_AXLE_RATIO] + 1, set->choice[CHANGE_SPRING_FRONT] + 1,
               set->choice[CHANGE_SPRING_REAR] + 1, set->choice[CHANGE_LIFT_FRONT] + 1,
               set->choice[CHANGE_LIFT_REAR] + 1}};
    dials.withheld = (set->withheld & WITHHOLD_TRIM ? 1u : 0) |
                     (set->withheld & WITHHOLD_BUMP_STOP ? 2u : 0) |
                     (set->withheld & WITHHOLD_SPACER ? 4u : 0);
    return dials;
}

static bool asks_for(const struct option_outcome *outcome, enum task_id task)
{
    for (size_t i = 0; i < outcome->task_count; i++)
        if (outcome->tasks[i].cure.task == task)
            return true;
    return false;
}

/* Put into the build it becomes what was promised, and go when the work is done; which of the rims
 * is meant by a task to order one, only one of them tells. */
static void promise_is_kept(struct run *run, const struct specification *specification,
                            const struct offered *offered, const struct least_change *least)
{
    static struct judged_build with_it, done;
    struct dials dials = dials_at(&least->set);
    judge_with(run, specification, offered, &dials, &with_it);
    const struct option_outcome *becomes = &with_it.outcomes[1];
    REQUIRE(becomes->outcome == least->outcome.outcome &&
                becomes->task_count == least->outcome.task_count,
            "seed %llu: %s is promised, and it becomes %s:\n%s", (unsigned long long)run->seed,
            outcome_name(least->outcome.outcome), outcome_name(becomes->outcome), run->text.text);
    REQUIRE(changes_in(&dials, becomes) == least->changes, "%zu changes are promised",
            least->changes);
    if (becomes->outcome != OUTCOME_WORK ||
        (asks_for(becomes, TASK_WHEEL) && specification->search.rims.count > 1))
        return;
    do_tasks(run, &with_it, 1, becomes->task_count, &done);
    REQUIRE(done.outcomes[1].outcome == OUTCOME_GO, "seed %llu: %s with all done: %s\n%s",
            (unsigned long long)run->seed, outcome_name(done.outcomes[1].outcome),
            told_why(run, &done, 1), run->text.text);
}

static int met, in_vain;

/* Of a no go: 1; of others nothing is looked for. */
static int least_is_least(struct run *run)
{
    static struct judged_build now;
    struct offered offered;
    struct specification specification = *run->specification;
    struct least_change least;
    struct judging judging = {.left = SIZE_MAX, .each = 1};
    make_no_go(run, &specification);
    offer_changes(run, &offered, &specification);
    now.specification = specification;
    judge_build(run, &now);
    if (now.outcomes[1].outcome != OUTCOME_NO_GO)
        return 0;
    least_change_find(&now.plan, 1, &now.outcomes[1], &judging, &least);
    size_t by_hand = fewest(run, &specification, &offered);
    size_t by_search = least.found ? least.changes : SIZE_MAX;
    REQUIRE(by_hand == by_search, "seed %llu: %zu changes are found, %zu are the least:\n%s",
            (unsigned long long)run->seed, by_search, by_hand, run->text.text);
    if (least.found)
        promise_is_kept(run, &specification, &offered, &least);
    else
        REQUIRE(least.stands.figure.verdict == VERDICT_FAIL, "nothing stands in the way");
    met += least.found;
    in_vain += !least.found;
    return 1;
}

START_TEST(least_change_is_the_least_of_all_sets)
{
    enum { NO_GO_FEW = 200, JOBS_PER_NO_GO = 12 };
    int wanted = properties_count(NO_GO_FEW), checked = 0;
    uint64_t seed = random_start("least change");
    met = in_vain = 0;
    for (int i = 0; checked < wanted && i < JOBS_PER_NO_GO * wanted; i++, seed++) {
        struct run run;
        run_make_job(&run, seed);
        checked += least_is_least(&run);
        run_free(&run);
    }
    ck_assert_int_eq(checked, wanted);
    ck_assert_int_gt(met, wanted / 50); /* four of 200 */
    ck_assert_int_gt(in_vain, wanted / 50);
}
END_TEST

/* --- how far inputs may be off */

static enum outcome outcome_of_first(struct run *run, const struct specification *specification)
{
    static struct judged_build build;
    build.specification = *specification;
    judge_build(run, &build);
    return build.outcomes[1].outcome;
}

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

/* Off by a little the outcome is another, and not only within what tape or scale may be off, where
 * beyond that it is the same again (open, measure again, between no work and some). */
static bool little_changes(struct run *run, const struct named_input *input, int sign,
                           enum outcome outcome)
{
    bool of_either_sign =
        strstr(input->path, "inset") != NULL || strstr(input->path, "error") != NULL;
    /* A mass is not below nothing. */
    double least = !of_either_sign && *input->value > 0 ? -*input->value : -INFINITY;
    double off = fmax(sign * input->little, least),
           further = fmax(1.5 * sign * input->little, least);
    return outcome_off_by(run, input->path, off) != outcome &&
           outcome_off_by(run, input->path, further) != outcome;
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
            REQUIRE(!little_changes(run, &inputs[i], sign, outcome),
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
    struct judging judging = {.left = SIZE_MAX, .each = 1};
    size_t count;
    int checked = 0;
    if (run->specification->tyres.options.count == 0)
        return 0;
    run->specification->tyres.options.count = 1;
    ck_assert(plan_make(&run->arena, run->specification, false, NULL, &plan));
    report_every_part(&plan, &figures);
    const struct setup_figures *setup = &plan_group_figures(&plan, &figures)[1];
    option_outcome_make(&plan, setup, &found);
    ck_assert(may_be_off_find(&plan, 1, found.outcome, &judging, margins, &count));
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
