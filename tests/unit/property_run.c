#include "property_run.h"

#include <string.h>

#include "base/known.h"
#include "report/measured_rules.h"
#include "support.h"
#include "yaml/build_file.h"

/* The sanitized build is five times as slow, and is not there for other numbers. */
#ifdef __SANITIZE_ADDRESS__
enum { IN_FULL = 400 };
#else
enum { IN_FULL = 1500 };
#endif

int properties_count(int few)
{
    if (is_asked("TEST_LONG"))
        return IN_FULL;
    return is_asked("TEST_FEW") ? (few + 3) / 4 : few;
}

static void stop_at_faults(const struct run *run, const struct diagnostics *diagnostics)
{
    for (size_t i = 0; i < diagnostics->count && i < FAULTS_SHOWN_MAX; i++)
        printf("%zu:%zu: %s\n", diagnostics->faults[i].mark.line,
               diagnostics->faults[i].mark.column, diagnostics->faults[i].message);
    ck_abort_msg("seed %llu: a valid build is refused (faults above):\n%s",
                 (unsigned long long)run->seed, run->text.text);
}

/* `by_size`: whether data books may be judged by the size. */
static void read_and_report(struct run *run, bool by_size)
{
    run->arena = ARENA_EMPTY;
    struct diagnostics diagnostics = {.arena = &run->arena};
    run->specification = arena_allocate(&run->arena, sizeof *run->specification);
    struct span source = {run->text.text, run->text.length};
    if (!build_file_read(&run->arena, source, &diagnostics, run->specification) ||
        (by_size && !measured_rules_check(run->specification, &diagnostics)))
        stop_at_faults(run, &diagnostics);
    run_compute(run, false);
}

void run_compute(struct run *run, bool us)
{
    ck_assert(plan_make(&run->arena, run->specification, us, NULL, &run->plan));
    run->figures = (struct figures){.arena = &run->arena};
    report_tyre(&run->plan, &run->figures);
    report_clearance(&run->plan, &run->figures);
    report_load(&run->plan, &run->figures);
    report_speedometer(&run->plan, &run->figures);
    report_gearing(&run->plan, &run->figures);
}

void run_make_rewritten(struct run *run, uint64_t seed, const struct variation *variation,
                        void (*rewrite)(struct build_text *text))
{
    run->seed = seed;
    random_build(seed, variation, &run->text);
    if (rewrite != NULL)
        rewrite(&run->text);
    read_and_report(run, !variation->diameters_told); /* which are not those of the size */
}

void run_make(struct run *run, uint64_t seed, const struct variation *variation)
{
    run_make_rewritten(run, seed, variation, NULL);
}

void run_make_job(struct run *run, uint64_t seed)
{
    run->seed = seed;
    random_job(seed, &run->text);
    read_and_report(run, true);
}

void run_free(struct run *run)
{
    arena_free(&run->arena);
}

void check_builds(const char *what, int (*check)(struct run *run))
{
    uint64_t seed = random_start(what);
    int checked = 0;
    int few = properties_count(BUILDS_FEW);
    /* What is rare is looked for further. */
    for (int i = 0; i < few || (checked == 0 && i < 40 * few); i++, seed++) {
        struct run run;
        run_make(&run, seed, &as_drawn);
        checked += check(&run);
        run_free(&run);
    }
    REQUIRE(checked > 0, "%s: nothing was checked", what);
}

void require_close(double actual, double expected, double tolerance, const char *what)
{
    REQUIRE(fabs(actual - expected) <= tolerance, "%s: %.12g, expected %.12g", what, actual,
            expected);
}

static bool close(double a, double b)
{
    return same_value(a, b) || fabs(a - b) <= 1e-9 * fabs(b);
}

/* Written in other units, a place differs by a last bit. */
static bool places_alike(const struct place *a, const struct place *b)
{
    struct place like = *a;
    const struct {
        double *a, b;
    } numbers[] = {{&like.axle_ratio, b->axle_ratio},
                   {&like.engine_speed_per_s, b->engine_speed_per_s},
                   {&like.road_speed_mps, b->road_speed_mps},
                   {&like.grade, b->grade},
                   {&like.pressure_Pa, b->pressure_Pa}};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
        if (close(*numbers[i].a, numbers[i].b))
            *numbers[i].a = numbers[i].b;
    return place_same(&like, b);
}

/* Assumptions are numbered as the file's options come: the words say which one it is. */
static bool same_assumption(const struct figure *a, const struct figure *b)
{
    return a->quantity == QUANTITY_ASSUMPTION && a->advice.id == b->advice.id;
}

bool of_the_same(const struct run *run_a, const struct figure *a, const struct run *run_b,
                 const struct figure *b)
{
    return figure_same(a, b, SAME_PART | SAME_QUANTITY | SAME_AXLE) &&
           same_text(figure_option(&run_a->plan, a), figure_option(&run_b->plan, b)) &&
           same_text(figure_state(&run_a->plan, a), figure_state(&run_b->plan, b)) &&
           (same_assumption(a, b) || places_alike(&a->place, &b->place));
}

const struct figure *find_like(const struct run *run, const struct run *other,
                               const struct figure *like, size_t from)
{
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[(from + i) % run->figures.count];
        if (of_the_same(run, figure, other, like))
            return figure;
    }
    return NULL;
}

const char *told_of(const struct run *run, const struct figure *figure)
{
    struct arena *arena = run->plan.arena;
    const char *state = figure_state(&run->plan, figure);
    const char *at = figure_at(arena, &run->plan, figure);
    return arena_format(arena, "seed %llu: %s of %s, state %s, axle %s, at %s",
                        (unsigned long long)run->seed, quantity_rows[figure->quantity].name,
                        figure_option(&run->plan, figure), state == NULL ? "-" : state,
                        axle_name(figure->axle), at == NULL ? "-" : at);
}

const struct figure *figure_next(const struct run *run, const char *option, size_t *at)
{
    while (*at < run->figures.count) {
        const struct figure *figure = &run->figures.items[(*at)++];
        if (option == NULL || same_text(figure_option(&run->plan, figure), option))
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

void option_name_axles(struct fitment *option, const struct setup *setup)
{
    static const struct given of_its_own; /* else a rear wheel were the front one's */
    option->tyre = setup->axle[AXLE_FRONT];
    option->rear = setup->axle[AXLE_REAR];
    option->rear.size_given = setup->own_rear_size;
    option->rear.given = option->tyre.given;
    if (option->rear.wheel.given == NULL)
        option->rear.wheel.given = &of_its_own;
}
