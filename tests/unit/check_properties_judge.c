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
    require_all_four(&tally, 2);
    REQUIRE(tally.checked >= JOBS_FEW / 4, "only %d outcomes changed", tally.checked);
}
END_TEST

Suite *properties_judge_suite(void)
{
    Suite *suite = suite_create("properties_judge");
    TCase *judge = tcase_create("judge");
    tcase_set_timeout(judge, 0);
    tcase_add_test(judge, harder_never_improves_an_outcome);
    suite_add_tcase(suite, judge);
    return suite;
}
