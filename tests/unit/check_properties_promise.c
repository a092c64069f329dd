/* A least change, written out as the text of a build file and read again, gives what it promises.
 * Random jobs are offered springs, heights and wheels in text; of each option that is no go the set
 * that is found is put in by the keys that a person would change. */
#include "base/letters.h"
#include "cli/build_source.h"
#include "judged_build.h"
#include "report/solving/least_change.h"
#include "suites.h"
#include "support.h"

enum { RIMS = 3, SETS_MAX = 32 };

static const char *const axles[AXLE_COUNT] = {"front", "rear"};

/* What is offered, in whole numbers, so that it is written as it is read. */
struct offer {
    int rate_N_mm[AXLE_COUNT], spring_lift_mm[AXLE_COUNT], lift_mm[AXLE_COUNT];
    const char *wheel[RIMS]; /* what a mapping of a wheel has in it */
};

struct sets {
    struct arena *arena;
    const char *items[SETS_MAX];
    size_t count;
};

#define SET(sets, ...) ((sets)->items[(sets)->count++] = arena_format((sets)->arena, __VA_ARGS__))

static void offer_in_text(struct run *run, struct offer *out, struct sets *sets)
{
    uint64_t state = run->seed;
    const char *rims = "";
    for (int i = 0; i < RIMS; i++) {
        out->wheel[i] = arena_format(
            sets->arena, "width: %d.5 in, inset: %d mm, max_load: 1400 kg, max_pressure: 600 kPa",
            random_whole(&state, 6, 8), random_whole(&state, 10, 45));
        rims = arena_format(sets->arena, "%s{diameter: %d, %s}, ", rims, 15 + (int)(run->seed % 4),
                            out->wheel[i]);
    }
    SET(sets, "search.rims=[%s]", rims);
    SET(sets, "allowed.wheel=yes");
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        out->rate_N_mm[axle] = random_whole(&state, 50, 150);
        out->spring_lift_mm[axle] = random_whole(&state, 0, 60);
        out->lift_mm[axle] = random_whole(&state, 5, 40);
        SET(sets,
            "suspension.%s.spring_choices=[{name: S, wheel_rate: %d N/mm, lift: %d mm, "
            "constant_load_to: %d kg}]",
            axles[axle], out->rate_N_mm[axle], out->spring_lift_mm[axle],
            random_whole(&state, 50, 1500));
        SET(sets, "suspension.%s.lift_choices=[%d mm]", axles[axle], out->lift_mm[axle]);
    }
    if (random_whole(&state, 0, 1)) /* and what makes some of them a no go */
        SET(sets, "limits.ride_height_change={min: %d mm}", random_whole(&state, 15, 60));
    else
        SET(sets, "clearance.arch.%s.%s=%d mm", axles[random_whole(&state, 0, 1)],
            random_whole(&state, 0, 1) ? "inner" : "outer", random_whole(&state, 2, 12));
}

static void read_and_judge(struct run *run, const struct sets *sets, struct judged_build *out)
{
    const struct options options = {.set = {(const char **)sets->items, sets->count}};
    const struct build_source source = {
        .options = &options, .path = "job.yaml", .text = {run->text.text, run->text.length}};
    REQUIRE(build_source_read(&run->arena, &source, &out->specification) != NULL,
            "seed %llu: what is put in is refused:\n%s", (unsigned long long)run->seed,
            run->text.text);
    judge_build(run, out);
}

static void put_spring_and_height(const struct change_set *set, const struct offer *offer,
                                  const struct specification *now, int axle, struct sets *sets)
{
    const int springs[] = {CHANGE_SPRING_FRONT, CHANGE_SPRING_REAR},
              lifts[] = {CHANGE_LIFT_FRONT, CHANGE_LIFT_REAR};
    bool spring = set->choice[springs[axle]] != AS_IT_IS,
         lift = set->choice[lifts[axle]] != AS_IT_IS;
    long height_mm = spring ? offer->spring_lift_mm[axle]
                            : lround(suspension_at(&now->suspension, axle)->lift_m * 1000);
    if (spring)
        SET(sets, "suspension.%s.wheel_rate=%d N/mm", axles[axle], offer->rate_N_mm[axle]);
    if (spring || lift)
        SET(sets, "suspension.%s.lift=%ld mm", axles[axle],
            height_mm + (lift ? offer->lift_mm[axle] : 0));
}

/* The keys that the set changes. */
static void put_in(const struct change_set *set, const struct offer *offer,
                   const struct judged_build *now, size_t setup, struct sets *sets)
{
    const struct {
        unsigned bit;
        const char *key;
    } work[] = {
        {WITHHOLD_TRIM, "trim"}, {WITHHOLD_BUMP_STOP, "bump_stop"}, {WITHHOLD_SPACER, "spacer"}};
    if (set->choice[CHANGE_WHEEL] != AS_IT_IS)
        SET(sets, "tyres.options.%s.wheel={%s}",
            letters_of_number(sets->arena, now->plan.setups[setup].number),
            offer->wheel[set->choice[CHANGE_WHEEL]]);
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        put_spring_and_height(set, offer, &now->specification, axle, sets);
    for (size_t i = 0; i < LENGTH_OF(work); i++)
        if (set->withheld & work[i].bit)
            SET(sets, "allowed.%s=0 mm", work[i].key);
}

/* How many promises were kept. */
static int promises_of(struct run *run, int found[OUTCOMES])
{
    static struct judged_build now, then;
    struct offer offer;
    struct sets offered = {.arena = &run->arena};
    int kept = 0;
    offer_in_text(run, &offer, &offered);
    read_and_judge(run, &offered, &now);
    for (size_t i = 1; i < now.plan.count; i++) {
        struct judging judging = {.left = SIZE_MAX, .each = 1};
        struct least_change least;
        struct sets sets = offered;
        if (now.outcomes[i].outcome != OUTCOME_NO_GO)
            continue;
        least_change_find(&now.plan, i, &now.outcomes[i], &judging, &least);
        if (!least.found)
            continue;
        put_in(&least.set, &offer, &now, i, &sets);
        read_and_judge(run, &sets, &then);
        const struct option_outcome *becomes = &then.outcomes[i];
        REQUIRE(becomes->outcome == least.outcome.outcome &&
                    becomes->task_count == least.outcome.task_count,
                "seed %llu, option %zu: %s is promised, and it becomes %s (%s), by %s:\n%s",
                (unsigned long long)run->seed, i, outcome_name(least.outcome.outcome),
                outcome_name(becomes->outcome), told_why(run, &then, i), sets.items[sets.count - 1],
                run->text.text);
        found[becomes->outcome]++;
        kept++;
    }
    return kept;
}

START_TEST(least_changes_written_out_keep_their_promise)
{
    enum { JOBS = 150 };
    uint64_t seed = random_start("promise");
    int kept = 0, jobs = properties_count(JOBS), found[OUTCOMES] = {0};
    for (int i = 0; i < jobs; i++, seed++) {
        struct run run;
        run_make_job(&run, seed);
        kept += promises_of(&run, found);
        run_free(&run);
    }
    ck_assert_int_gt(kept, jobs / 8);
    ck_assert_int_gt(found[OUTCOME_WORK], jobs / 16);
    ck_assert_int_eq(found[OUTCOME_NO_GO], 0);
}
END_TEST

Suite *properties_promise_suite(void)
{
    Suite *suite = suite_create("properties_promise");
    TCase *promise = tcase_create("promise");
    tcase_set_timeout(promise, 0);
    tcase_add_test(promise, least_changes_written_out_keep_their_promise);
    suite_add_tcase(suite, promise);
    return suite;
}
