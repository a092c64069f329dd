/* One judge: the same tyre on the same wheel and axle gets the same outcome from the outcome over
 * all parts, from `compare` and from `shortlist`. The builds are random and read from their text,
 * with one more option and a search for just that option's size and wheel. */
#include <string.h>

#include "base/known.h"
#include "base/units.h"
#include "property_run.h"
#include "report/compare.h"
#include "report/shortlist/shortlist.h"
#include "suites.h"
#include "support.h"
#include "yaml/build_file.h"

enum { FEW = 200, TEXT_SIZE = BUILD_TEXT_SIZE + 4096 };

static int outcomes_met[OUTCOME_NO_GO + 1];

/* A build with the option "tried" first, and the search for it. */
struct searched {
    struct specification *specification;
    struct plan plan, alone; /* with all options, and as --option has it */
};

static const char *wheel_text(struct arena *arena, const struct wheel *wheel)
{
    const struct {
        const char *key, *unit;
        double value;
    } keys[] = {
        {"width", "mm", unit_from_si(UNIT_MM, wheel->width_m)},
        {"inset", "mm", unit_from_si(UNIT_MM, wheel->inset_m)},
        {"max_load", "kg", wheel->max_load_kg},
        {"max_pressure", "kPa", unit_from_si(UNIT_KPA, wheel->max_pressure_Pa)},
    };
    const char *text = "";
    for (size_t i = 0; i < LENGTH_OF(keys); i++)
        if (known(keys[i].value))
            text = arena_format(arena, "%s%s%s: %.6f %s", text, *text ? ", " : "", keys[i].key,
                                keys[i].value, keys[i].unit);
    return text;
}

/* A listed rim like the fitted wheel is taken for that one, where an option's would be another. */
static bool is_like_fitted(const struct run *run, const struct wheel *wheel)
{
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        const struct wheel *fitted = &run->plan.fitted.axle[axle].wheel;
        if (fabs(fitted->width_m - wheel->width_m) > 1e-6 ||
            fabs(fitted->inset_m - wheel->inset_m) > 1e-6)
            return false;
    }
    return true;
}

/* The text of the run with the option and the search; NULL where the first option has no wheel. */
static const char *text_with_search(struct run *run)
{
    static const char options[] = "  options:\n", own[] = "search:\n";
    struct arena *arena = &run->arena;
    const struct tyre *tyre = &run->specification->tyres.options.items[0].tyre;
    const char *at = strstr(run->text.text, options);
    const char *wheel = wheel_text(arena, &tyre->wheel);
    char size[DESIGNATION_CANONICAL_SIZE];
    if (at == NULL || *wheel == '\0' || tyre->size.rim_millimetric ||
        is_like_fitted(run, &tyre->wheel))
        return NULL;
    designation_canonical(&tyre->size, size);
    at += strlen(options);
    const char *search = strstr(at, own); /* of a job: two lines, and what else it has */
    const char *rest = search == NULL ? "" : strchr(search + strlen(own), '\n') + 1;
    int length = search == NULL ? (int)strlen(at) : (int)(search - at);
    const char *range =
        tyre->load_range != 0 ? arena_format(arena, "load_range: %c, ", tyre->load_range) : "";
    return arena_format(arena,
                        "%.*s    - {name: tried, size: %s, %swheel: {%s}}\n%.*ssearch: {rims: "
                        "[{diameter: %.1f, %s}]}\n%s",
                        (int)(at - run->text.text), run->text.text, size, range, wheel, length, at,
                        tyre->size.rim_code_tenths / 10.0, wheel, rest);
}

static bool read_searched(struct run *run, struct searched *out)
{
    struct arena *arena = &run->arena;
    const char *text = text_with_search(run);
    if (text == NULL)
        return false;
    struct diagnostics diagnostics = {.arena = arena};
    out->specification = arena_allocate(arena, sizeof *out->specification);
    REQUIRE(build_file_read(arena, span_of(text), &diagnostics, out->specification),
            "seed %llu: %zu:%zu: %s:\n%s", (unsigned long long)run->seed,
            diagnostics.faults[0].mark.line, diagnostics.faults[0].mark.column,
            diagnostics.faults[0].message, text);
    ck_assert(plan_make(arena, out->specification, false, NULL, &out->plan));
    ck_assert(plan_make(arena, out->specification, false, "tried", &out->alone));
    return true;
}

/* The outcome over all parts of the option "tried". */
static void outcome_of_tried(struct plan *plan, struct option_outcome *out)
{
    struct figures figures = {.arena = plan->arena};
    report_every_part(plan, &figures);
    option_outcome_make(plan, &plan_group_figures(plan, &figures)[1], out);
}

static void require_same(const struct run *run, const char *what, const struct option_outcome *a,
                         const struct option_outcome *b)
{
    bool same = a->outcome == b->outcome && same_value(a->closest_margin, b->closest_margin) &&
                memcmp(a->counts, b->counts, sizeof a->counts) == 0 &&
                memcmp(a->work, b->work, sizeof a->work) == 0;
    REQUIRE(same,
            "seed %llu: %s: %s, %zu fail, %zu unknown, %zu tasks; the whole says %s, %zu, %zu, %zu",
            (unsigned long long)run->seed, what, outcome_name(a->outcome), a->counts[VERDICT_FAIL],
            a->counts[VERDICT_UNKNOWN], a->counts[VERDICT_TASK], outcome_name(b->outcome),
            b->counts[VERDICT_FAIL], b->counts[VERDICT_UNKNOWN], b->counts[VERDICT_TASK]);
}

static void require_compare_agrees(const struct run *run, const struct plan *plan,
                                   const struct option_outcome *whole)
{
    struct comparison comparison;
    struct compared row;
    comparison_begin(plan, &comparison);
    comparison_row(&comparison, 1, &row);
    require_same(run, "compare", &row.found, whole);
    REQUIRE(row.outcome == whole->outcome && row.worst == option_outcome_verdict(whole),
            "seed %llu: compare's columns", (unsigned long long)run->seed);
}

/* A listed wheel has to be tried on, so that no size that is found is ready as it is: the file's
 * own options are compared too. */
static void require_options_agree(const struct run *run, const struct plan *plan)
{
    struct figures figures = {.arena = plan->arena};
    struct comparison comparison;
    struct compared row;
    report_every_part(plan, &figures);
    const struct setup_figures *groups = plan_group_figures(plan, &figures);
    comparison_begin(plan, &comparison);
    for (size_t i = 1; i < plan->count; i++) {
        struct option_outcome whole;
        option_outcome_make(plan, &groups[i], &whole);
        comparison_row(&comparison, i, &row);
        require_same(run, "compare, an option", &row.found, &whole);
        outcomes_met[whole.outcome]++;
    }
}

/* With another axle, spring or height, the same build with them says so, in `compare` as in a
 * sheet, but that axle and spring have to be ordered, and the height altered. */
static void require_changed_agrees(const struct run *run, const struct searched *searched,
                                   const struct shortlisted *item)
{
    struct specification other = *searched->specification;
    struct plan plan = searched->alone;
    struct option_outcome whole;
    size_t orders = item->other_axle, heights = 0;
    plan.specification = &other;
    if (item->other_axle)
        other.drivetrain.axle = (struct axle_pair){item->axle_ratio, item->axle_ratio};
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        plan_try_spring(&plan, &other, axle, item->spring[axle], item->lift_m[axle]);
        orders += item->spring[axle] != NULL;
        heights += item->lift_m[axle] != 0;
    }
    outcome_of_tried(&plan, &whole);
    require_compare_agrees(run, &plan, &whole);
    enum outcome expected = whole.outcome == OUTCOME_GO ? OUTCOME_WORK : whole.outcome;
    bool no_go = expected == OUTCOME_NO_GO;
    REQUIRE(
        item->found.outcome == expected &&
            item->found.counts[VERDICT_FAIL] == whole.counts[VERDICT_FAIL] &&
            same_value(item->found.closest_margin, whole.closest_margin) &&
            item->found.work[TASK_TO_ORDER] == whole.work[TASK_TO_ORDER] + (no_go ? 0 : orders) &&
            item->found.work[TASK_TO_ALTER] == whole.work[TASK_TO_ALTER] + (no_go ? 0 : heights),
        "seed %llu: shortlist with axle %g, %s and %s, higher by %g and %g m",
        (unsigned long long)run->seed, item->axle_ratio,
        item->spring[0] == NULL ? "its spring" : item->spring[0]->name,
        item->spring[1] == NULL ? "its spring" : item->spring[1]->name, item->lift_m[0],
        item->lift_m[1]);
}

static bool is_changed(const struct shortlisted *item)
{
    return item->other_axle || item->spring[AXLE_FRONT] != NULL ||
           item->spring[AXLE_REAR] != NULL || item->lift_m[AXLE_FRONT] != 0 ||
           item->lift_m[AXLE_REAR] != 0;
}

/* Looks at every row; returns how often it is the option as it is. */
static size_t require_rows_agree(const struct run *run, const struct searched *searched,
                                 const struct shortlist *list, const struct option_outcome *whole)
{
    const struct shortlisted *items = list->count > 0 ? list->items : list->misses;
    size_t count = list->count > 0 ? list->count : list->miss_count, kept = 0;
    for (size_t i = 0; i < count; i++) {
        if (is_changed(&items[i])) {
            require_changed_agrees(run, searched, &items[i]);
        } else {
            require_same(run, "shortlist", &items[i].found, whole);
            kept++;
        }
    }
    return kept;
}

/* A spring and a height at the rear, as a file would offer them. */
static void offer_springs(const struct searched *searched)
{
    static double heights[] = {0.03};
    static struct spring_choice spring = {.name = "S1",
                                          .wheel_rate_N_m = 9e4,
                                          .lift_m = 0.04,
                                          .free_height_change_m = UNKNOWN,
                                          .load_from_kg = UNKNOWN,
                                          .load_to_kg = UNKNOWN};
    struct axle_suspension *rear = &searched->specification->suspension.rear;
    rear->spring_choices = (struct spring_choice_list){&spring, 1};
    rear->lift_choices = (struct number_list){heights, 1};
}

static void require_shortlist_agrees(const struct run *run, const struct searched *searched,
                                     const struct option_outcome *whole)
{
    const struct tyre *tyre = &searched->specification->tyres.options.items[0].tyre;
    struct candidate candidate = {tyre->size};
    candidate.size.load_range = tyre->load_range; /* which a list writes behind the size */
    struct shortlist *list = arena_allocate(searched->plan.arena, sizeof *list);
    const struct shortlist_request request = {.candidates = &candidate, .count = 1, .best = 100},
                                   of_option = {.best = 100};
    shortlist_make(&searched->plan, &request, list);
    size_t kept = require_rows_agree(run, searched, list, whole);
    /* Where no limit is met but with another axle, the tyre with the axle as it is is dropped. */
    bool dropped = whole->outcome == OUTCOME_NO_GO && list->count > 0;
    REQUIRE(kept == (dropped ? 0 : 1), "seed %llu: %zu times in the list, outcome %s",
            (unsigned long long)run->seed, kept, outcome_name(whole->outcome));
    shortlist_make(&searched->alone, &of_option, list); /* the same of the file's own option */
    require_rows_agree(run, searched, list, whole);
    offer_springs(searched);
    shortlist_make(&searched->alone, &of_option, list);
    require_rows_agree(run, searched, list, whole);
}

static int one_outcome(struct run *run)
{
    struct searched searched;
    struct option_outcome whole;
    if (!read_searched(run, &searched))
        return 0;
    outcome_of_tried(&searched.plan, &whole);
    require_compare_agrees(run, &searched.plan, &whole);
    require_compare_agrees(run, &searched.alone, &whole);
    require_shortlist_agrees(run, &searched, &whole);
    require_options_agree(run, &searched.plan);
    return 1;
}

static bool is_every_outcome_met(void)
{
    for (int i = 0; i <= OUTCOME_NO_GO; i++)
        if (outcomes_met[i] == 0)
            return false;
    return true;
}

/* As drawn, few are no fail: every other build is a job, and half of the rest are light, their
 * instruments reading true. */
static void check_light_builds(const char *what, int (*check)(struct run *run))
{
    struct variation light = as_drawn;
    light.mass = 0.5;
    light.no_error = true;
    uint64_t seed = random_start(what);
    int checked = 0;
    int few = properties_count(FEW); /* what is rare is looked for further */
    for (int i = 0; i < few || (i < 40 * few && !is_every_outcome_met()); i++, seed++) {
        struct run run;
        if (i % 2 == 0)
            run_make_job(&run, seed);
        else
            run_make(&run, seed, i % 4 == 1 ? &light : &as_drawn);
        checked += check(&run);
        run_free(&run);
    }
    REQUIRE(checked > 0, "%s: nothing was checked", what);
}

START_TEST(same_tyre_same_outcome)
{
    memset(outcomes_met, 0, sizeof outcomes_met);
    check_light_builds("same tyre, same outcome", one_outcome);
    for (int i = 0; i <= OUTCOME_NO_GO; i++)
        REQUIRE(outcomes_met[i] > 0, "no tyre was %s", outcome_name((enum outcome)i));
}
END_TEST

/* Every size of a few on one wheel: what is kept stands in its order. */
static int in_order(struct run *run)
{
    static const char *const sizes[] = {"205/55R16 91V", "195/60R16 99H XL", "215/65R16C 109/107T",
                                        "225/60R16 102V", "LT245/75R16 120/116S LR E"};
    struct searched searched;
    struct candidate candidates[LENGTH_OF(sizes)];
    if (!read_searched(run, &searched))
        return 0;
    for (size_t i = 0; i < LENGTH_OF(sizes); i++) {
        struct designation_error error;
        ck_assert(designation_parse(span_of(sizes[i]), &candidates[i].size, &error));
    }
    searched.specification->search.rims.items[0].diameter_code = 16;
    struct shortlist *list = arena_allocate(&run->arena, sizeof *list);
    shortlist_make(&searched.plan,
                   &(struct shortlist_request){
                       .candidates = candidates, .count = LENGTH_OF(sizes), .best = 100},
                   list);
    int checked = 0;
    for (size_t i = 1; i < list->count; i++, checked++) {
        const struct shortlisted *a = &list->items[i - 1], *b = &list->items[i];
        REQUIRE(a->unasked <= b->unasked, "seed %llu: another axle for nothing stands before",
                (unsigned long long)run->seed);
        REQUIRE(a->unasked != b->unasked || a->found.outcome <= b->found.outcome,
                "seed %llu: a worse outcome stands before", (unsigned long long)run->seed);
        REQUIRE(a->unasked != b->unasked || option_outcome_compare(&a->found, &b->found) <= 0,
                "seed %llu: more work stands before", (unsigned long long)run->seed);
    }
    for (size_t i = 1; i < list->miss_count && list->count == 0; i++, checked++)
        REQUIRE(list->misses[i - 1].shortfall <= list->misses[i].shortfall,
                "seed %llu: a farther miss stands before", (unsigned long long)run->seed);
    return checked;
}

START_TEST(best_stands_first)
{
    check_light_builds("best first", in_order);
}
END_TEST

/* What has no margin may be what nothing is known of. */
START_TEST(unknown_never_ranks_before_known)
{
    struct option_outcome met = {.outcome = OUTCOME_OPEN, .closest_margin = 0.01};
    struct option_outcome unknown = {.outcome = OUTCOME_OPEN, .closest_margin = INFINITY};
    ck_assert_int_lt(option_outcome_compare(&met, &unknown), 0);
    ck_assert_int_gt(option_outcome_compare(&unknown, &met), 0);
}
END_TEST

/* By hand: a metric tyre carries by (P/P_ref)^0.8 (ETRTO), its reference pressure 250 kPa (SL) or
 * 290 kPa (XL); load indices 88 and 91: 560 and 615 kg (UN R30 Annex 4).
 * Fitted 560 kg at 220 kPa: 560 (220/250)^0.8 = 505.6 kg.
 * The 615 kg XL tyre carries that at 290 (505.6/615)^(1/0.8) = 227.0 kPa. */
START_TEST(equal_load_is_that_of_the_placard)
{
    static const char text[] =
        "vehicle: {drive: front}\n"
        "tyres:\n"
        "  fitted: {size: 185/65R15 88H, placard: {front: 220 kPa, rear: 210 kPa}}\n"
        "  options:\n"
        "    - {name: higher index, size: 195/55R16 91V XL}\n"
        "    - {name: too weak, size: 185/60R15 75H, wheel: {max_pressure: 240 kPa}}\n";
    struct arena arena = ARENA_EMPTY;
    struct diagnostics diagnostics = {.arena = &arena};
    struct specification specification;
    struct plan plan;
    struct comparison comparison;
    struct compared row;
    ck_assert(build_file_read(&arena, span_of(text), &diagnostics, &specification));
    ck_assert(plan_make(&arena, &specification, false, NULL, &plan));
    comparison_begin(&plan, &comparison);
    comparison_row(&comparison, 0, &row);
    require_close(row.equal_load.pressure_Pa, 220e3, 1e-6, "fitted: its placard");
    comparison_row(&comparison, 1, &row);
    require_close(row.equal_load.pressure_Pa, 227.0e3, 50, "higher index");
    comparison_row(&comparison, 2, &row);
    ck_assert(isinf(row.equal_load.pressure_Pa));
    arena_free(&arena);
}
END_TEST

Suite *compare_suite(void)
{
    Suite *suite = suite_create("compare");
    TCase *judge = tcase_create("one judge");
    tcase_add_test(judge, same_tyre_same_outcome);
    tcase_add_test(judge, best_stands_first);
    tcase_add_test(judge, unknown_never_ranks_before_known);
    tcase_add_test(judge, equal_load_is_that_of_the_placard);
    suite_add_tcase(suite, judge);
    return suite;
}
