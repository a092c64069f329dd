/* Which way an outcome may go, over random jobs: with more load, or less that tyre, wheel or
 * vehicle may bear, never to the better; without what it needs, never to go; and no work makes good
 * what it does not cure. */
#include "base/known.h"
#include "judged_build.h"
#include "suites.h"
#include "support.h"

enum { JOBS_FEW = 120 };

/* --- harder on it */

struct harder {
    const char *what;
    /* By a share of at least nothing; `option` is of the specification. */
    void (*make)(struct specification *specification, struct fitment *option, double share);
};

static void less(double *value, double share)
{
    *value *= 1 - share;
}

static void heavier_front(struct specification *specification, struct fitment *option, double share)
{
    (void)option;
    specification->vehicle.unladen_kg.front *= 1 + share / 4;
}

static void heavier_rear(struct specification *specification, struct fitment *option, double share)
{
    (void)option;
    specification->vehicle.unladen_kg.rear *= 1 + share / 4;
}

static void lower_load_index(struct specification *specification, struct fitment *option,
                             double share)
{
    (void)specification;
    struct service_description *service = &option->tyre.size.service;
    int steps = 1 + (int)(share * 12);
    /* From 122 on a tyre is no passenger tyre (UN R30 1, R54 1): lower it is one of another class.
     */
    if (service->load_index > 121 && service->load_index - steps <= 121)
        steps = service->load_index > 122 ? service->load_index - 122 : 0;
    service->load_index -= steps;
    if (service->load_index_dual > 0)
        service->load_index_dual -= steps;
    less(&option->tyre.data_book.max_load_kg, share / 2);
}

static void lower_maximum_pressure(struct specification *specification, struct fitment *option,
                                   double share)
{
    (void)specification;
    less(&option->tyre.data_book.max_pressure_Pa, share / 2);
}

static void weaker_wheel(struct specification *specification, struct fitment *option, double share)
{
    less(&specification->tyres.fitted.tyre.wheel.max_load_kg, share);
    less(&option->tyre.wheel.max_load_kg, share);
}

static void lower_wheel_pressure(struct specification *specification, struct fitment *option,
                                 double share)
{
    less(&specification->tyres.fitted.tyre.wheel.max_pressure_Pa, share);
    less(&option->tyre.wheel.max_pressure_Pa, share);
}

static void lower_gross(struct specification *specification, struct fitment *option, double share)
{
    (void)option;
    less(&specification->vehicle.ratings.gross_kg, share / 2);
}

static void more_reserve(struct specification *specification, struct fitment *option, double share)
{
    (void)option;
    double *reserve = &specification->limits.load_reserve;
    *reserve = known_or(*reserve, 0) + share;
}

static void lower_speed_symbol(struct specification *specification, struct fitment *option,
                               double share)
{
    (void)specification;
    if (share > 0.1)
        strcpy(option->tyre.size.service.speed_symbol, "Q");
}

static const struct harder all_harder[] = {
    {"a heavier front axle", heavier_front},
    {"a heavier rear axle", heavier_rear},
    {"a lower load index", lower_load_index},
    {"a lower maximum pressure", lower_maximum_pressure},
    {"a weaker wheel", weaker_wheel},
    {"a wheel of lower pressure", lower_wheel_pressure},
    {"a lower gross rating", lower_gross},
    {"a larger reserve", more_reserve},
    {"a lower speed symbol", lower_speed_symbol},
};

/* Where a beam points goes either way with a load, and so does a warning that stays on because the
 * pressure is low. */
static void leave_aside(struct specification *specification)
{
    specification->clearance.headlamp.dip = UNKNOWN;
    specification->allowed.pressure_warning = 0;
    for (size_t i = 0; i < specification->tyres.options.count; i++)
        specification->tyres.options.items[i].as_set.headlamp_dip = UNKNOWN;
}

static void harder_is_no_better(struct run *run, struct judged_build *build, struct tally *tally)
{
    static struct judged_build before, after;
    uint64_t state = run->seed * 977 + 5;
    copy_specification(&run->arena, &build->specification, &before.specification);
    leave_aside(&before.specification);
    judge_build(run, &before);
    for (size_t setup = 1; setup < before.plan.count; setup++)
        tally->outcomes[before.outcomes[setup].outcome]++;
    for (size_t i = 0; i < LENGTH_OF(all_harder); i++) {
        double share = random_between(&state, 0, 0.4);
        copy_specification(&run->arena, &before.specification, &after.specification);
        for (size_t j = 0; j < after.specification.tyres.options.count; j++)
            all_harder[i].make(&after.specification, &after.specification.tyres.options.items[j],
                               j == 0 ? share : 0);
        judge_build(run, &after);
        enum outcome was = before.outcomes[1].outcome, is = after.outcomes[1].outcome;
        REQUIRE(is >= was, "seed %llu: with %s (%g) %s, before that %s: %s\n%s",
                (unsigned long long)run->seed, all_harder[i].what, share, outcome_name(is),
                outcome_name(was), told_why(run, &before, 1), run->text.text);
        tally->checked += is > was;
    }
}

static void require_all_four(const struct tally *tally, int least)
{
    for (int i = 0; i < OUTCOMES; i++)
        REQUIRE(tally->outcomes[i] >= least, "only %d options were %s", tally->outcomes[i],
                outcome_name((enum outcome)i));
}

START_TEST(harder_never_improves_an_outcome)
{
    struct tally tally;
    check_jobs("harder", JOBS_FEW, harder_is_no_better, &tally);
    require_all_four(&tally, properties_count(JOBS_FEW) / 60);
    REQUIRE(tally.checked >= properties_count(JOBS_FEW) / 4, "only %d outcomes changed",
            tally.checked);
}
END_TEST

/* --- without what an outcome needs */

struct lack {
    const char *what;
    void (*make)(struct specification *specification, struct fitment *option);
};

static void no_axle_ratings(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->vehicle.ratings.front_kg = specification->vehicle.ratings.rear_kg = UNKNOWN;
}

static void no_gross_rating(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->vehicle.ratings.gross_kg = UNKNOWN;
}

static void no_ratings(struct specification *specification, struct fitment *option)
{
    no_axle_ratings(specification, option);
    no_gross_rating(specification, option);
}

static void no_unladen(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->vehicle.unladen_kg.front = UNKNOWN;
}

static void no_top_speed(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->vehicle.top_speed_mps = UNKNOWN;
}

static void no_placard(struct specification *specification, struct fitment *option)
{
    (void)option;
    struct axle_pair *placard = &specification->tyres.fitted.placard_Pa;
    placard->front = placard->rear = UNKNOWN;
}

static void no_load_index(struct specification *specification, struct fitment *option)
{
    (void)specification;
    struct service_description *service = &option->tyre.size.service;
    service->load_index = service->load_index_dual = LOAD_INDEX_NONE;
    option->tyre.data_book.max_load_kg = UNKNOWN;
}

static void no_speed_symbol(struct specification *specification, struct fitment *option)
{
    (void)specification;
    option->tyre.size.service.speed_symbol[0] = '\0';
}

static void no_wheel_rating(struct specification *specification, struct fitment *option)
{
    (void)specification;
    if (option->tyre.wheel.given != NULL)
        option->tyre.wheel.max_load_kg = UNKNOWN;
}

static void no_wheel_pressure(struct specification *specification, struct fitment *option)
{
    (void)specification;
    if (option->tyre.wheel.given != NULL)
        option->tyre.wheel.max_pressure_Pa = UNKNOWN;
}

static void no_wheel_inset(struct specification *specification, struct fitment *option)
{
    (void)specification;
    if (option->tyre.wheel.given != NULL)
        option->tyre.wheel.inset_m = UNKNOWN;
}

static void no_wheel_width(struct specification *specification, struct fitment *option)
{
    (void)specification;
    if (option->tyre.wheel.given != NULL)
        option->tyre.wheel.width_m = UNKNOWN;
}

static void no_speedometer(struct specification *specification, struct fitment *option)
{
    struct specification nothing;
    (void)option;
    specification_clear(&nothing);
    specification->speedometer = nothing.speedometer;
}

static void no_speedometer_rule(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->speedometer.rule = NULL;
}

static void no_clearance(struct specification *specification, struct fitment *option)
{
    struct specification nothing;
    (void)option;
    specification_clear(&nothing);
    specification->clearance = nothing.clearance;
}

static void no_room_above(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->clearance.arch.front.above_m = UNKNOWN;
}

static void no_room_inside(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->clearance.arch.rear.inner_m = UNKNOWN;
}

static void no_room_outside(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->clearance.arch.front.outer_m = UNKNOWN;
}

static void no_room_at_lock(struct specification *specification, struct fitment *option)
{
    (void)option;
    specification->clearance.arch.front.at_lock_m = UNKNOWN;
}

/* What a tyre that is nowhere larger than the fitted one was measured to be needs, and a wheel that
 * is the fitted one, may be left out of the file. */
static const struct lack all_lacks[] = {
    {"axle ratings", no_axle_ratings},
    {"the gross rating", no_gross_rating},
    {"ratings", no_ratings},
    {"the unladen weight", no_unladen},
    {"the top speed", no_top_speed},
    {"the placard", no_placard},
    {"the load index", no_load_index},
    {"the speed symbol", no_speed_symbol},
    {"the wheel's rating", no_wheel_rating},
    {"the wheel's pressure", no_wheel_pressure},
    {"the wheel's inset", no_wheel_inset},
    {"the wheel's width", no_wheel_width},
    {"speedometer", no_speedometer},
    {"the speedometer's rule", no_speedometer_rule},
    {"clearance", no_clearance},
    {"room above", no_room_above},
    {"room inside", no_room_inside},
    {"room outside", no_room_outside},
    {"room at lock", no_room_at_lock},
};

static bool is_of_wheel(const struct lack *lack)
{
    return lack->make == no_wheel_rating || lack->make == no_wheel_pressure ||
           lack->make == no_wheel_inset || lack->make == no_wheel_width;
}

static void lacking_is_no_go_ahead(struct run *run, struct judged_build *build, struct tally *tally)
{
    static struct judged_build after;
    const struct fitment *option = &build->specification.tyres.options.items[0];
    if (build->outcomes[1].outcome > OUTCOME_WORK)
        return;
    tally->outcomes[build->outcomes[1].outcome]++;
    for (size_t i = 0; i < LENGTH_OF(all_lacks); i++) {
        if (is_of_wheel(&all_lacks[i]) && option->tyre.wheel.given == NULL)
            continue;
        copy_specification(&run->arena, &build->specification, &after.specification);
        all_lacks[i].make(&after.specification, &after.specification.tyres.options.items[0]);
        judge_build(run, &after);
        enum outcome is = after.outcomes[1].outcome;
        REQUIRE(is == OUTCOME_OPEN || is == OUTCOME_NO_GO, "seed %llu: %s without %s\n%s",
                (unsigned long long)run->seed, outcome_name(is), all_lacks[i].what, run->text.text);
        tally->checked++;
    }
}

START_TEST(without_what_it_needs_no_outcome_is_go)
{
    struct tally tally;
    check_jobs("lacking", JOBS_FEW, lacking_is_no_go_ahead, &tally);
    REQUIRE(tally.checked >= 10 * properties_count(JOBS_FEW) / 4, "only %d were checked",
            tally.checked);
}
END_TEST

/* --- what no work cures */

/* The keys of `allowed` whose work may make good a figure; of all others none does. */
enum allowed_key {
    ALLOW_TRIM = 1 << 0,
    ALLOW_BUMP_STOP = 1 << 1,
    ALLOW_SPACER = 1 << 2,
    ALLOW_CALIBRATE = 1 << 3,
    ALLOW_SPARE = 1 << 4,
    ALLOW_WHEEL = 1 << 5,
    ALLOW_AXLE_RATIO = 1 << 6,
    ALLOW_WARNING = 1 << 7,
    ALLOW_ALL = (1 << 8) - 1
};

static unsigned cures_of(enum quantity_id quantity)
{
    switch (quantity) {
    case QUANTITY_ARCH_ABOVE:
        return ALLOW_TRIM | ALLOW_BUMP_STOP;
    case QUANTITY_ARCH_INNER:
        return ALLOW_SPACER | ALLOW_TRIM; /* what a spacer needs outside is trimmed */
    case QUANTITY_ARCH_OUTER:
        return ALLOW_TRIM;
    case QUANTITY_ARCH_LOCK:
        return ALLOW_TRIM | ALLOW_SPACER;
    case QUANTITY_SPARE_ROOM:
        return ALLOW_SPARE;
    case QUANTITY_SPARE_PRESSURE:
        return ALLOW_SPARE | ALLOW_WHEEL;
    case QUANTITY_WHEEL_LOAD:
        return ALLOW_WHEEL;
    case QUANTITY_SPEEDOMETER_ERROR:
    case QUANTITY_TEST_SPEED_ERROR:
    case QUANTITY_SETTING_NEAREST:
        return ALLOW_CALIBRATE;
    default:
        return 0;
    }
}

static void allow(struct allowed *allowed, unsigned keys)
{
    allowed->trim_m = keys & ALLOW_TRIM ? 0.1 : UNKNOWN;
    allowed->bump_stop_m = keys & ALLOW_BUMP_STOP ? 0.2 : UNKNOWN;
    allowed->spacer_m = keys & ALLOW_SPACER ? 0.1 : UNKNOWN;
    allowed->calibrate = (keys & ALLOW_CALIBRATE) != 0;
    allowed->spare = (keys & ALLOW_SPARE) != 0;
    allowed->wheel = (keys & ALLOW_WHEEL) != 0;
    allowed->axle_ratio = (keys & ALLOW_AXLE_RATIO) != 0;
    allowed->pressure_warning = (keys & ALLOW_WARNING) != 0;
}

/* With nothing allowed, what fails; with anything but its own cures, it still does. */
static void nothing_else_cures(struct run *run, struct judged_build *build, struct tally *tally)
{
    static struct judged_build nothing, other;
    uint64_t state = run->seed * 31 + 7;
    copy_specification(&run->arena, &build->specification, &nothing.specification);
    allow(&nothing.specification.allowed, 0);
    judge_build(run, &nothing);
    for (size_t setup = 1; setup < nothing.plan.count; setup++) {
        const struct option_outcome *before = &nothing.outcomes[setup];
        for (size_t i = 0; i < before->counts[VERDICT_FAIL]; i++) {
            enum quantity_id quantity = before->findings[i]->quantity;
            unsigned keys = (unsigned)random_whole(&state, 0, ALLOW_ALL) & ~cures_of(quantity);
            if (random_whole(&state, 0, 2) == 0)
                keys = ALLOW_ALL & ~cures_of(quantity);
            other.specification = nothing.specification;
            allow(&other.specification.allowed, keys);
            judge_build(run, &other);
            const struct option_outcome *after = &other.outcomes[setup];
            REQUIRE(after->outcome == OUTCOME_NO_GO,
                    "seed %llu, option %zu: %s cured by %x: %s\n%s", (unsigned long long)run->seed,
                    setup, quantity_rows[quantity].name, keys, told_why(run, &nothing, setup),
                    run->text.text);
            bool still = false;
            for (size_t j = 0; j < after->counts[VERDICT_FAIL]; j++)
                still = still || after->findings[j]->quantity == quantity;
            REQUIRE(still, "seed %llu, option %zu: %s fails no more with %x\n%s",
                    (unsigned long long)run->seed, setup, quantity_rows[quantity].name, keys,
                    run->text.text);
            tally->checked++;
        }
    }
}

START_TEST(what_no_work_cures_stays_no_go)
{
    struct tally tally;
    check_jobs("incurable", JOBS_FEW, nothing_else_cures, &tally);
    REQUIRE(tally.checked >= properties_count(JOBS_FEW), "only %d were checked", tally.checked);
}
END_TEST

Suite *properties_judge_suite(void)
{
    Suite *suite = suite_create("properties_judge");
    TCase *judge = tcase_create("judge");
    tcase_set_timeout(judge, 0);
    tcase_add_test(judge, harder_never_improves_an_outcome);
    tcase_add_test(judge, without_what_it_needs_no_outcome_is_go);
    tcase_add_test(judge, what_no_work_cures_stays_no_go);
    suite_add_tcase(suite, judge);
    return suite;
}
