#include "judged_build.h"

#include "reading/findings_text.h"
#include "support.h"

void judge_build(struct run *run, struct judged_build *out)
{
    struct arena *arena = &run->arena;
    ck_assert(plan_make(arena, &out->specification, false, NULL, &out->plan));
    out->figures = (struct figures){.arena = arena};
    report_every_part(&out->plan, &out->figures);
    struct setup_figures *groups = plan_group_figures(&out->plan, &out->figures);
    out->outcomes = arena_allocate_array(arena, out->plan.count, sizeof *out->outcomes);
    for (size_t i = 0; i < out->plan.count; i++)
        option_outcome_make(&out->plan, &groups[i], &out->outcomes[i]);
}

static void *copy_of(struct arena *arena, const void *items, size_t count, size_t size)
{
    void *copy = arena_allocate_array(arena, count + 1, size);
    if (count > 0)
        memcpy(copy, items, count * size);
    return copy;
}

void copy_specification(struct arena *arena, const struct specification *from,
                        struct specification *out)
{
    *out = *from;
    out->tyres.options.items = copy_of(arena, from->tyres.options.items, from->tyres.options.count,
                                       sizeof *from->tyres.options.items);
    out->carried.items =
        copy_of(arena, from->carried.items, from->carried.count, sizeof *from->carried.items);
    out->states.items =
        copy_of(arena, from->states.items, from->states.count, sizeof *from->states.items);
}

const char *told_why(struct run *run, const struct judged_build *build, size_t setup)
{
    struct layout layout = {.arena = &run->arena, .plan = &build->plan, .decimal_mark = '.'};
    const struct figure *why = build->outcomes[setup].why;
    return why == NULL ? "" : finding_sentence(&layout, why);
}

void check_jobs(const char *what, int few,
                void (*check)(struct run *run, struct judged_build *build, struct tally *tally),
                struct tally *tally)
{
    static struct judged_build build;
    uint64_t seed = random_start(what);
    *tally = (struct tally){.checked = 0};
    for (int i = 0; i < properties_count(few); i++, seed++) {
        struct run run;
        run_make_job(&run, seed);
        build.specification = *run.specification;
        judge_build(&run, &build);
        check(&run, &build, tally);
        run_free(&run);
    }
}
