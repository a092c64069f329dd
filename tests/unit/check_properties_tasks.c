/* Work on arches, wheels and the spare, over random builds: put into the build by its keys it is
 * done and brings none with it, left out it stays, and less that is allowed never helps. */
#include "base/known.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"

enum { KINDS = 5 };
static const enum task_id kinds[KINDS] = {TASK_BUMP_STOP, TASK_TRIM_ARCH, TASK_SPACER,
                                          TASK_TRY_WHEEL, TASK_SPARE};

/* By kind and axle, the most that a figure asks for; NAN: no such task. */
struct work {
    double amount[KINDS][AXLE_COUNT];
};

struct judged_build {
    struct specification specification;
    struct plan plan;
    struct figures figures;
};

static void judge(struct run *run, struct judged_build *out)
{
    ck_assert(plan_make(&run->arena, &out->specification, false, NULL, &out->plan));
    out->figures = (struct figures){.arena = &run->arena};
    report_clearance(&out->plan, &out->figures);
}

static int axle_of(const struct figure *figure)
{
    return figure->axle == AXLE_REAR ? AXLE_REAR : AXLE_FRONT;
}

static int kind_of(const struct figure *figure)
{
    for (int kind = 0; kind < KINDS; kind++)
        if (figure->verdict == VERDICT_TASK && figure->cure.task == kinds[kind])
            return kind;
    return KINDS;
}

/* Limits on sizes fail for other reasons. */
static bool is_of_work(const struct figure *figure)
{
    return figure->limit_owner == LIMIT_OF_PHYSICS;
}

/* The work of an option that nothing else of its rooms speaks against; 0 of one that fails. */
static int work_of(const struct judged_build *build, int setup, struct work *out)
{
    int count = 0;
    for (int kind = 0; kind < KINDS; kind++)
        out->amount[kind][AXLE_FRONT] = out->amount[kind][AXLE_REAR] = NAN;
    for (size_t i = 0; i < build->figures.count; i++) {
        const struct figure *figure = &build->figures.items[i];
        int kind = kind_of(figure);
        if (figure->setup == setup && figure->verdict == VERDICT_FAIL && is_of_work(figure))
            return 0;
        if (figure->setup != setup || kind == KINDS)
            continue;
        double *amount = &out->amount[kind][axle_of(figure)];
        *amount = fmax(*amount, known_or(figure->cure.then, 0));
        count++;
    }
    return count;
}

/* --- what the shop does, in the keys of the build */

static void lengthen_bump_stop(struct specification *specification, int axle, double amount_m)
{
    struct suspension *suspension = &specification->suspension;
    double *change = axle == AXLE_FRONT ? &suspension->front.bump_stop_change_m
                                        : &suspension->rear.bump_stop_change_m;
    *change = known_or(*change, 0) + amount_m;
}

/* Measured anew, with the fitted tyre. */
static void trim(struct specification *specification, int axle, double amount_m)
{
    struct arches *arches = &specification->clearance.arch;
    struct arch *arch = axle == AXLE_FRONT ? &arches->front : &arches->rear;
    arch->above_m += amount_m;
    arch->outer_m += amount_m;
    if (specification->clearance.steering.meets == MEETS_ARCH)
        arch->at_lock_m += amount_m;
}

static void fit_spacer(struct fitment *option, const struct setup *setup, int axle, double thick_m)
{
    struct setup with_it = *setup;
    with_it.axle[axle].wheel.spacer_m = thick_m;
    option_name_axles(option, &with_it);
}

static void try_wheels(struct specification *specification, struct fitment *option)
{
    static const struct mounting tried = {
        .hub_bore_m = 0.07, .bolts = 5, .bolt_circle_m = 0.12, .brake_room_m = 0.004};
    struct fitment *fitted = &specification->tyres.fitted;
    struct wheel *wheels[] = {&fitted->tyre.wheel, &fitted->rear.wheel, &option->tyre.wheel,
                              &option->rear.wheel};
    for (size_t i = 0; i < LENGTH_OF(wheels); i++)
        wheels[i]->mounting = tried;
}

static void carry_spare_of_set(struct fitment *option, const struct setup *setup)
{
    option->spare = setup->axle[AXLE_FRONT];
    option->spare.mass_kg = setup->spare.mass_kg; /* what it weighs is another matter */
}

static void do_one(struct specification *specification, struct fitment *option,
                   const struct setup *setup, int kind, int axle, double amount)
{
    switch (kinds[kind]) {
    case TASK_BUMP_STOP:
        lengthen_bump_stop(specification, axle, amount);
        break;
    case TASK_TRIM_ARCH:
        trim(specification, axle, amount);
        break;
    case TASK_SPACER:
        fit_spacer(option, setup, axle, amount);
        break;
    case TASK_TRY_WHEEL:
        try_wheels(specification, option);
        break;
    default:
        carry_spare_of_set(option, setup);
    }
}

/* All of the work but one task. */
static void do_work(struct run *run, const struct judged_build *before, int setup,
                    const struct work *work, int but_kind, int but_axle, struct judged_build *out)
{
    struct fitment_list *options = &out->specification.tyres.options;
    out->specification = before->specification;
    options->items = arena_allocate_array(&run->arena, options->count, sizeof *options->items);
    struct fitment *option = &options->items[setup - 1];
    for (size_t i = 0; i < options->count; i++)
        options->items[i] = before->specification.tyres.options.items[i];
    struct setup now = before->plan.setups[setup];
    for (int kind = 0; kind < KINDS; kind++)
        for (int axle = 0; axle < AXLE_COUNT; axle++)
            if (known(work->amount[kind][axle]) && (kind != but_kind || axle != but_axle)) {
                do_one(&out->specification, option, &now, kind, axle, work->amount[kind][axle]);
                if (kinds[kind] == TASK_SPACER)
                    now.axle[axle].wheel.spacer_m = work->amount[kind][axle];
            }
    judge(run, out);
}

/* --- builds with narrow arches, and a shop that may do something about it */

static double perhaps_m(uint64_t *state, double most_m)
{
    return random_whole(state, 0, 3) == 0 ? NAN : random_between(state, 0, most_m);
}

static void set_wide(struct arch *arch)
{
    arch->above_m = arch->inner_m = arch->outer_m = arch->at_lock_m = 0.5;
}

/* A measure with which one option's least room is short by a little, or left by a little. */
static void set_near(uint64_t *state, const struct judged_build *wide, int setup, int axle,
                     enum quantity_id quantity, double *measure_m)
{
    double least = NAN;
    for (size_t i = 0; i < wide->figures.count; i++) {
        const struct figure *figure = &wide->figures.items[i];
        if (figure->setup == setup && figure->axle == axle && figure->quantity == quantity)
            least = fmin(least, figure->value);
    }
    double near = 0.5 - known_or(least, 0.5) + random_between(state, -0.015, 0.03);
    *measure_m = fmax(near, 0);
}

static void set_wheels(uint64_t *state, struct specification *specification)
{
    struct fitment *fitted = &specification->tyres.fitted;
    struct mounting tried = fitted->tyre.wheel.mounting;
    if (fitted->tyre.wheel.given == NULL)
        fitted->tyre.wheel.given = fitted->tyre.given; /* named now */
    fitted->tyre.wheel.width_m = 7 * 0.0254;
    fitted->tyre.wheel.inset_m = 0.03;
    fitted->rear.wheel.mounting = tried;
    for (size_t i = 0; i < specification->tyres.options.count; i++) {
        struct fitment *option = &specification->tyres.options.items[i];
        struct wheel *wheel = &option->tyre.wheel;
        wheel->mounting = option->rear.wheel.mounting = tried;
        if (wheel->given == NULL)
            continue;
        wheel->width_m = random_whole(state, 12, 17) * 0.0127;
        wheel->inset_m = random_between(state, 0, 0.06);
    }
}

/* Insets so near to each other that a spacer of the shop's is enough, and arches so narrow that one
 * of the options is just short of room or just not. */
static void narrow_build(struct run *run, int variant, struct judged_build *out)
{
    uint64_t state = run->seed * 2654435761u + (uint64_t)variant + 1;
    struct specification *specification = &out->specification;
    *specification = *run->specification;
    struct clearance_measured *clearance = &specification->clearance;
    struct arch *arches[] = {&clearance->arch.front, &clearance->arch.rear};
    clearance->steering.meets = random_whole(&state, 0, 2);
    clearance->steering.touches = random_whole(&state, -1, 1);
    set_wheels(&state, specification);
    specification->measured.tape_m = perhaps_m(&state, 0.005);
    set_wide(arches[AXLE_FRONT]);
    set_wide(arches[AXLE_REAR]);
    judge(run, out);
    int setup = random_whole(&state, 1, (int)out->plan.count - 1);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        set_near(&state, out, setup, axle, QUANTITY_ARCH_ABOVE, &arches[axle]->above_m);
        set_near(&state, out, setup, axle, QUANTITY_ARCH_INNER, &arches[axle]->inner_m);
        set_near(&state, out, setup, axle, QUANTITY_ARCH_OUTER, &arches[axle]->outer_m);
        set_near(&state, out, setup, axle, QUANTITY_ARCH_LOCK, &arches[axle]->at_lock_m);
    }
    specification->allowed.trim_m = perhaps_m(&state, 0.03);
    specification->allowed.bump_stop_m = perhaps_m(&state, 0.06);
    specification->allowed.spacer_m = perhaps_m(&state, 0.03);
    specification->allowed.spare = random_whole(&state, -1, 1);
    judge(run, out);
}

static int (*checked_so)(struct run *run, int variant);

static int check_variants(struct run *run)
{
    enum { VARIANTS = 12 };
    int checked = 0;
    for (int variant = 0; variant < VARIANTS; variant++)
        checked += checked_so(run, variant);
    return checked;
}

static void check_narrow(const char *what, int (*check)(struct run *run, int variant))
{
    checked_so = check;
    check_builds(what, check_variants);
}

static bool is_met(enum verdict verdict)
{
    return verdict == VERDICT_OK || verdict == VERDICT_CAUTION;
}

/* The same figure of the same option. */
static const struct figure *after_work(const struct judged_build *before,
                                       const struct figure *figure,
                                       const struct judged_build *after)
{
    unsigned fields = SAME_PART | SAME_SETUP | SAME_STATE | SAME_AXLE | SAME_QUANTITY | SAME_PLACE;
    size_t from = (size_t)(figure - before->figures.items);
    for (size_t i = 0; i < after->figures.count; i++) {
        const struct figure *other = &after->figures.items[(from + i) % after->figures.count];
        if (figure_same(figure, other, fields))
            return other;
    }
    return NULL;
}

static const char *told_left(struct run *run, const struct judged_build *after, int setup)
{
    for (size_t i = 0; i < after->figures.count; i++) {
        const struct figure *figure = &after->figures.items[i];
        if (figure->setup == setup && kind_of(figure) < KINDS)
            return arena_format(&run->arena, "%s still asks for %s, %g m", told_of(run, figure),
                                task_rows[figure->cure.task].name, figure->cure.then);
    }
    return "";
}

static int done_brings_none(struct run *run, int variant)
{
    static struct judged_build before, after;
    int checked = 0;
    narrow_build(run, variant, &before);
    for (int setup = 1; setup < (int)before.plan.count; setup++) {
        struct work work, left;
        if (work_of(&before, setup, &work) == 0)
            continue;
        do_work(run, &before, setup, &work, KINDS, 0, &after);
        int count = work_of(&after, setup, &left);
        REQUIRE(count == 0, "%s", told_left(run, &after, setup));
        for (size_t i = 0; i < before.figures.count; i++) {
            const struct figure *was = &before.figures.items[i], *is;
            bool wanted = was->setup == setup &&
                          (was->verdict == VERDICT_TASK || is_met(was->verdict)) &&
                          was->quantity != QUANTITY_WHEEL_BY_HAND &&
                          was->quantity != QUANTITY_HEADLAMP_DIP; /* set when all else is done */
            if (!wanted || (is = after_work(&before, was, &after)) == NULL)
                continue;
            REQUIRE(is->verdict == VERDICT_NONE || is_met(is->verdict),
                    "%s: %s after work, %s before", told_of(run, was), verdict_name(is->verdict),
                    verdict_name(was->verdict));
            checked++;
        }
    }
    return checked;
}

START_TEST(work_done_is_gone_and_brings_none)
{
    check_narrow("work done", done_brings_none);
}
END_TEST

static int left_out_stays(struct run *run, int variant)
{
    static struct judged_build before, after;
    int checked = 0;
    narrow_build(run, variant, &before);
    for (int setup = 1; setup < (int)before.plan.count; setup++) {
        struct work work;
        if (work_of(&before, setup, &work) == 0)
            continue;
        for (int kind = 0; kind < KINDS; kind++)
            for (int axle = 0; axle < AXLE_COUNT; axle++) {
                /* a wheel tried on one axle is tried on both here */
                if (!known(work.amount[kind][axle]) || kinds[kind] == TASK_TRY_WHEEL)
                    continue;
                do_work(run, &before, setup, &work, kind, axle, &after);
                bool stays = false;
                for (size_t i = 0; i < before.figures.count && !stays; i++) {
                    const struct figure *was = &before.figures.items[i], *is;
                    if (was->setup == setup && kind_of(was) == kind && axle_of(was) == axle &&
                        (is = after_work(&before, was, &after)) != NULL)
                        stays = !is_met(is->verdict);
                }
                REQUIRE(stays, "seed %llu, option %d: %s was not needed",
                        (unsigned long long)run->seed, setup, task_rows[kinds[kind]].name);
                checked++;
            }
    }
    return checked;
}

START_TEST(work_left_out_stays)
{
    check_narrow("work left out", left_out_stays);
}
END_TEST

/* How good a verdict is. */
static int rank(enum verdict verdict)
{
    return verdict == VERDICT_NONE ? VERDICT_COUNT : (int)verdict;
}

static int less_allowed_never_helps(struct run *run, int variant)
{
    static struct judged_build much, little;
    uint64_t state = run->seed + 7;
    int checked = 0;
    narrow_build(run, variant, &much);
    little.specification = much.specification;
    struct allowed *allowed = &little.specification.allowed;
    double *const lengths[] = {&allowed->trim_m, &allowed->bump_stop_m, &allowed->spacer_m};
    for (size_t i = 0; i < LENGTH_OF(lengths); i++)
        *lengths[i] =
            random_whole(&state, 0, 2) == 0 ? NAN : *lengths[i] * random_between(&state, 0.2, 1);
    if (random_whole(&state, 0, 1) == 0)
        allowed->spare = 0;
    judge(run, &little);
    ck_assert_uint_eq(much.figures.count, little.figures.count);
    for (size_t i = 0; i < much.figures.count; i++) {
        const struct figure *more = &much.figures.items[i], *less = &little.figures.items[i];
        REQUIRE(rank(less->verdict) <= rank(more->verdict), "%s: %s, with more allowed %s",
                told_of(run, more), verdict_name(less->verdict), verdict_name(more->verdict));
        checked += less->verdict != more->verdict;
    }
    return checked;
}

START_TEST(less_that_is_allowed_never_helps)
{
    check_narrow("less allowed", less_allowed_never_helps);
}
END_TEST

/* What is allowed cures what fails, and touches nothing else. */
static int allowed_touches_fails_alone(struct run *run, int variant)
{
    static struct judged_build some, none;
    int checked = 0;
    narrow_build(run, variant, &some);
    none.specification = some.specification;
    none.specification.allowed.trim_m = none.specification.allowed.bump_stop_m =
        none.specification.allowed.spacer_m = NAN;
    none.specification.allowed.spare = 0;
    judge(run, &none);
    ck_assert_uint_eq(some.figures.count, none.figures.count);
    for (size_t i = 0; i < some.figures.count; i++) {
        const struct figure *with = &some.figures.items[i], *without = &none.figures.items[i];
        REQUIRE(kind_of(without) == KINDS || without->cure.task == TASK_TRY_WHEEL,
                "%s: a task that is not allowed", told_of(run, without));
        REQUIRE(same_value(with->value, without->value), "%s: another value", told_of(run, with));
        if (without->verdict == VERDICT_FAIL) {
            checked += with->verdict == VERDICT_TASK;
            continue;
        }
        REQUIRE(with->verdict == without->verdict, "%s: %s, allowed nothing %s", told_of(run, with),
                verdict_name(with->verdict), verdict_name(without->verdict));
    }
    return checked;
}

START_TEST(what_is_allowed_touches_fails_alone)
{
    check_narrow("allowed", allowed_touches_fails_alone);
}
END_TEST

Suite *properties_tasks_suite(void)
{
    Suite *suite = suite_create("properties_tasks");
    TCase *tasks = tcase_create("tasks");
    tcase_set_timeout(tasks, 0);
    tcase_add_test(tasks, work_done_is_gone_and_brings_none);
    tcase_add_test(tasks, work_left_out_stays);
    tcase_add_test(tasks, less_that_is_allowed_never_helps);
    tcase_add_test(tasks, what_is_allowed_touches_fails_alone);
    suite_add_tcase(suite, tasks);
    return suite;
}
