/* What becomes of an option, over random jobs and all parts at once. Closure: with every task put
 * into the build by its keys, work becomes go; with one left out it does not. */
#include "base/known.h"
#include "reading/task_text.h"
#include "suites.h"
#include "support.h"
#include "workshop.h"

enum { JOBS_FEW = 300, WORK_LEAST = 60 };

/* --- closure */

static bool makes_no_outcome(const struct task *task)
{
    return task->cure.task == TASK_PRESSURE_LABEL || task->cure.task == TASK_TELL;
}

static const char *listed(struct run *run, const struct judged_build *build, size_t setup)
{
    struct layout layout = {.arena = &run->arena, .plan = &build->plan, .decimal_mark = '.'};
    const struct option_outcome *outcome = &build->outcomes[setup];
    const char *text = "";
    for (size_t i = 0; i < outcome->task_count; i++)
        text = arena_format(&run->arena, "%s\n  %s", text, task_text(&layout, &outcome->tasks[i]));
    return text;
}

static int tasks_close(struct run *run, const struct judged_build *before, size_t setup)
{
    static struct judged_build after;
    const struct option_outcome *outcome = &before->outcomes[setup];
    unsigned long long seed = run->seed;
    do_tasks(run, before, setup, outcome->task_count, &after);
    REQUIRE(after.outcomes[setup].outcome == OUTCOME_GO,
            "seed %llu, option %zu: %s with all done: %s; done was:%s\n%s", seed, setup,
            outcome_name(after.outcomes[setup].outcome), told_why(run, &after, setup),
            listed(run, before, setup), run->text.text);
    for (size_t i = 0; i < outcome->task_count; i++) {
        if (makes_no_outcome(&outcome->tasks[i]))
            continue;
        do_tasks(run, before, setup, i, &after);
        REQUIRE(after.outcomes[setup].outcome != OUTCOME_GO,
                "seed %llu, option %zu: go without %s; listed was:%s\n%s", seed, setup,
                task_rows[outcome->tasks[i].cure.task].name, listed(run, before, setup),
                run->text.text);
    }
    return 1;
}

static void close_each(struct run *run, struct judged_build *build, struct tally *tally)
{
    for (size_t setup = 1; setup < build->plan.count; setup++) {
        const struct option_outcome *outcome = &build->outcomes[setup];
        tally->outcomes[outcome->outcome]++;
        if (outcome->outcome != OUTCOME_WORK)
            continue;
        tasks_close(run, build, setup);
        for (size_t i = 0; i < outcome->task_count; i++)
            tally->tasks[outcome->tasks[i].cure.task]++;
    }
}

START_TEST(work_done_is_go_and_left_out_is_not)
{
    static const enum task_id met[] = {
        TASK_TRY_WHEEL,        TASK_SPARE,         TASK_WHEEL,
        TASK_UNLOAD,           TASK_BUMP_STOP,     TASK_TRIM_ARCH,
        TASK_SPACER,           TASK_TYRE_PRESSURE, TASK_SPEEDOMETER_SETTING,
        TASK_PRESSURE_WARNING, TASK_HEADLAMP_AIM,  TASK_SPEED_LABEL};
    struct tally tally;
    check_jobs("closure", JOBS_FEW, close_each, &tally);
    REQUIRE(tally.outcomes[OUTCOME_WORK] >= WORK_LEAST, "only %d options were work",
            tally.outcomes[OUTCOME_WORK]);
    for (size_t i = 0; i < LENGTH_OF(met) && properties_count(4) >= 4; i++)
        REQUIRE(tally.tasks[met[i]] > 0, "no option had the task %s", task_rows[met[i]].name);
}
END_TEST

Suite *properties_outcome_suite(void)
{
    Suite *suite = suite_create("properties_outcome");
    TCase *outcome = tcase_create("outcome");
    tcase_set_timeout(outcome, 0);
    tcase_add_test(outcome, work_done_is_go_and_left_out_is_not);
    suite_add_tcase(suite, outcome);
    return suite;
}
