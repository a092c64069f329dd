#include "property_run.h"

#include <string.h>

#include "base/known.h"
#include "report/impossible_geometry.h"
#include "support.h"
#include "yaml/build_file.h"

/* The sanitized build is five times as slow, and is not there for other numbers. */
#ifdef __SANITIZE_ADDRESS__
enum { IN_FULL = 400 };
#else
enum { IN_FULL = 3000 };
#endif

int properties_count(int few)
{
    const char *asked = getenv("TEST_LONG");
    return asked != NULL && *asked != '\0' ? IN_FULL : few;
}

static void stop_at_faults(const struct run *run, const struct diagnostics *diagnostics)
{
    for (size_t i = 0; i < diagnostics->count && i < FAULTS_SHOWN_MAX; i++)
        printf("%zu:%zu: %s\n", diagnostics->faults[i].mark.line,
               diagnostics->faults[i].mark.column, diagnostics->faults[i].message);
    ck_abort_msg("seed %llu: a valid build is refused (faults above):\n%s",
                 (unsigned long long)run->seed, run->text.text);
}

void run_make(struct run *run, uint64_t seed, const struct variation *variation)
{
    run->seed = seed;
    run->arena = ARENA_EMPTY;
    random_build(seed, variation, &run->text);
    struct diagnostics diagnostics = {.arena = &run->arena};
    run->specification = arena_allocate(&run->arena, sizeof *run->specification);
    struct span source = {run->text.text, run->text.length};
    if (!build_file_read(&run->arena, source, &diagnostics, run->specification) ||
        !impossible_geometry_check(run->specification, &diagnostics))
        stop_at_faults(run, &diagnostics);
    ck_assert(plan_make(&run->arena, run->specification, false, NULL, &run->plan));
    run->figures = (struct figures){.arena = &run->arena};
    report_tyre(&run->plan, &run->figures);
    report_clearance(&run->plan, &run->figures);
    report_load(&run->plan, &run->figures);
    report_speedometer(&run->plan, &run->figures);
    report_gearing(&run->plan, &run->figures);
}

void run_free(struct run *run)
{
    arena_free(&run->arena);
}

bool same_place(const struct figure *a, const struct figure *b)
{
    return a->part == b->part && a->quantity == b->quantity && a->axle == b->axle &&
           same_text(a->option, b->option) && same_text(a->state, b->state) &&
           same_text(a->at, b->at);
}

const struct figure *find_like(const struct run *run, const struct figure *like, size_t from)
{
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[(from + i) % run->figures.count];
        if (same_place(figure, like))
            return figure;
    }
    return NULL;
}

const char *place_text(const struct run *run, const struct figure *figure)
{
    return arena_format(run->plan.arena, "seed %llu: %s of %s, state %s, axle %s, at %s",
                        (unsigned long long)run->seed, quantity_rows[figure->quantity].name,
                        figure->option, figure->state == NULL ? "-" : figure->state,
                        axle_name(figure->axle), figure->at == NULL ? "-" : figure->at);
}

const struct figure *figure_next(const struct run *run, const char *option, size_t *at)
{
    while (*at < run->figures.count) {
        const struct figure *figure = &run->figures.items[(*at)++];
        if (option == NULL || same_text(figure->option, option))
            return figure;
    }
    return NULL;
}

bool close_in_unit(const struct figure *figure, double actual, double expected)
{
    if (!known(actual) || !known(expected))
        return known(actual) == known(expected);
    enum unit_id unit = quantity_rows[figure->quantity].metric;
    if (unit != UNIT_BARE) {
        actual = unit_from_si(unit, actual);
        expected = unit_from_si(unit, expected);
    }
    return fabs(actual - expected) <= 1e-9 * fmax(1, fabs(expected));
}
