/* The shortlist over random builds with choices of springs, heights, wheels and axle ratios,
 * against every combination of them written into the specification as a file would have it and
 * judged whole: the same ones are left, in the same order, and the same misses are nearest. */
#include <stdlib.h>
#include <string.h>

#include "base/known.h"
#include "property_run.h"
#include "report/shortlist/shortlist.h"
#include "suites.h"
#include "support.h"
#include "tables/lookup.h"

enum { FEW = 200, SIZES = 2, RIMS = 2, SPRINGS = 2, LIFTS = 2, RATIOS = 2, TRIED_MAX = 8000 };
/* Springs and heights, front before rear, then the axle ratio. */
enum { KINDS = 5 };

/* What a build is given to choose from. */
struct offered {
    struct candidate sizes[SIZES];
    struct search_rim rims[RIMS];
    struct spring_choice springs[AXLE_COUNT][SPRINGS];
    double lifts[AXLE_COUNT][LIFTS];
    double ratios[RATIOS];
    size_t size_count, counts[KINDS]; /* choices of each kind, without "as it is" */
};

/* A combination judged whole. */
struct whole {
    size_t size, rim, choice[KINDS]; /* 0: as it is */
    struct option_outcome found;
    double shortfall, drive_remains, load_kg;
    bool unasked, in_vain;
    size_t number;
};

static struct axle_suspension *axle_suspension_of(struct specification *specification, int axle)
{
    return axle == AXLE_FRONT ? &specification->suspension.front : &specification->suspension.rear;
}

/* What fails for reasons that no change touches would fail alone; and some room is short. */
static void lighten(struct specification *specification, uint64_t *state)
{
    specification->limits.published.count = 0;
    specification->vehicle.top_speed_mps = 100 / 3.6;
    if (random_whole(state, 0, 1)) /* near to the bump stops: springs matter */
        axle_suspension_of(specification, random_whole(state, 0, 1))->travel_to_bump_m = 0.01;
    if (random_whole(state, 0, 2) == 0) /* it is to stand higher: a limit asks for it */
        specification->limits.ride_height_change =
            (struct window){.given = specification->given,
                            .min = {random_whole(state, -1, 4) * 0.01, KIND_LENGTH},
                            .max = {UNKNOWN, KIND_LENGTH}};
    specification->clearance.arch.front.at_lock_m += 0.06;
    specification->tyres.fitted.rear.dual = CHOICE_NONE;
    specification->tyres.spare.size_given = false;
    if (random_whole(state, 0, 1))
        specification->speedometer.rule = specification->speedometer.odometer.rule = NULL;
}

static void offer_tyres(struct offered *out, const struct tyre *tyre, uint64_t *state)
{
    out->size_count = (size_t)random_whole(state, 1, SIZES);
    for (int i = 0; i < SIZES; i++) {
        out->sizes[i].size = tyre->size;
        out->sizes[i].size.load_range = tyre->load_range;
    }
    if (tyre->size.form == FORM_METRIC)
        out->sizes[1].size.section_width += 10;
    for (int i = 0; i < RIMS; i++)
        out->rims[i] = (struct search_rim){
            .given = tyre->size_given ? tyre->given : NULL,
            .diameter_code = tyre->size.rim_code_tenths / 10.0,
            .width_m = known_or(tyre->wheel.width_m, 0.19) + random_whole(state, -1, 1) * 0.0127,
            .inset_m = known_or(tyre->wheel.inset_m, 0.03) + random_whole(state, -4, 4) * 0.005,
            .max_load_kg = 4000,
            .max_pressure_Pa = random_whole(state, 0, 3) ? 9e5 : UNKNOWN};
}

static void offer_springs(struct offered *out, struct specification *specification, int axle,
                          uint64_t *state)
{
    struct axle_suspension *suspension = axle_suspension_of(specification, axle);
    for (int i = 0; i < SPRINGS; i++)
        out->springs[axle][i] = (struct spring_choice){
            .name = i == 0 ? "S1" : "S2",
            .wheel_rate_N_m = random_between(state, 4e4, 2e5),
            .lift_m = random_whole(state, -2, 8) * 0.01,
            .free_height_change_m = UNKNOWN,
            .load_from_kg = UNKNOWN,
            .load_to_kg = random_whole(state, 0, 1) ? random_between(state, 20, 600) : UNKNOWN};
    for (int i = 0; i < LIFTS; i++) /* never twice the same, and never nothing */
        out->lifts[axle][i] = random_whole(state, -2, 0) * 0.02 - 0.01 + i * 0.06;
    out->counts[2 * axle] = (size_t)random_whole(state, 0, SPRINGS);
    out->counts[2 * axle + 1] = (size_t)random_whole(state, 0, 3) == 0 ? LIFTS : axle == 1;
    suspension->spring_choices.items = out->springs[axle];
    suspension->spring_choices.count = out->counts[2 * axle];
    suspension->lift_choices.items = out->lifts[axle];
    suspension->lift_choices.count = out->counts[2 * axle + 1];
}

static void offer(struct run *run, struct offered *out, struct specification *specification)
{
    uint64_t state = run->seed;
    struct drivetrain *drivetrain = &specification->drivetrain;
    lighten(specification, &state);
    offer_tyres(out, &specification->tyres.options.items[0].tyre, &state);
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        offer_springs(out, specification, axle, &state);
    out->counts[4] = drivetrain->given == NULL ? 0 : (size_t)random_whole(&state, 0, RATIOS);
    for (int i = 0; i < RATIOS; i++)
        out->ratios[i] = drivetrain->axle.rear * (1.05 + 0.1 * i);
    drivetrain->axle_choices = (struct number_list){out->ratios, out->counts[4]};
    specification->allowed.axle_ratio = CHOICE_NONE;
    specification->search.rims.items = out->rims;
    specification->search.rims.count = (size_t)random_whole(&state, 1, RIMS);
    specification->search.forms.count = 0;
    specification->search.overall_diameter.given = NULL;
}

/* --- each combination by itself, as the file would have it */

static void write_springs(const struct whole *whole, const struct offered *offered, int axle,
                          struct specification *out)
{
    struct axle_suspension *suspension = axle_suspension_of(out, axle);
    size_t spring = whole->choice[2 * axle], lift = whole->choice[2 * axle + 1];
    if (spring > 0) {
        suspension->wheel_rate_steps.count = suspension->wheel_rate_curve.count = 0;
        suspension->wheel_rate_N_m = offered->springs[axle][spring - 1].wheel_rate_N_m;
        suspension->helper_rate_N_m = suspension->spring_rate_N_m = UNKNOWN;
        suspension->free_height_change_m = UNKNOWN;
        suspension->lift_m = offered->springs[axle][spring - 1].lift_m;
    }
    if (lift > 0 && known(suspension->free_height_change_m))
        suspension->free_height_change_m += offered->lifts[axle][lift - 1];
    else if (lift > 0)
        suspension->lift_m = known_or(suspension->lift_m, 0) + offered->lifts[axle][lift - 1];
}

/* The option behind all that the file has. */
static void write_option(struct run *run, const struct whole *whole, const struct offered *offered,
                         struct specification *out)
{
    struct fitment_list *options = &out->tyres.options;
    struct fitment *items = arena_allocate_array(&run->arena, options->count + 1, sizeof *items);
    memcpy(items, options->items, options->count * sizeof *items);
    struct fitment *tried = &items[options->count++];
    *tried = (struct fitment){
        .name = "tried", .tyre = tyre_unknown(), .rear = tyre_unknown(), .spare = tyre_unknown()};
    tried->tyre.size = offered->sizes[whole->size].size;
    tried->tyre.size_given = true;
    tried->tyre.wheel.given = offered->rims[whole->rim].given;
    tried->tyre.wheel.width_m = offered->rims[whole->rim].width_m;
    tried->tyre.wheel.inset_m = offered->rims[whole->rim].inset_m;
    tried->tyre.wheel.max_load_kg = offered->rims[whole->rim].max_load_kg;
    tried->tyre.wheel.max_pressure_Pa = offered->rims[whole->rim].max_pressure_Pa;
    options->items = items;
}

static double shortfall(const struct option_outcome *found)
{
    double sum = 0;
    for (size_t i = 0; i < found->finding_count; i++) {
        const struct figure *figure = found->findings[i];
        double scale = quantity_rows[figure->quantity].scale;
        double lacks = scale > 0 ? fabs(figure->value - figure->limit) / scale : UNKNOWN;
        if (figure->verdict == VERDICT_FAIL)
            sum += known(lacks) ? lacks : 1;
    }
    return sum;
}

/* What the drive turns with; of full-time drive the mean of both axles' speeds counts. */
static double circumference_m(const struct specification *specification,
                              const struct tyre_dimensions of[AXLE_COUNT])
{
    const struct axle_pair *ratio = &specification->drivetrain.axle;
    double front_m = of[AXLE_FRONT].rolling_circumference_m,
           rear_m = of[AXLE_REAR].rolling_circumference_m;
    if (specification->vehicle.drive == DRIVE_FULL_TIME_4WD)
        return 2 * known_or(ratio->rear, 1) /
               (known_or(ratio->front, 1) / front_m + known_or(ratio->rear, 1) / rear_m);
    return specification->vehicle.drive == DRIVE_FRONT ? front_m : rear_m;
}

static void judge(struct run *run, const struct specification *specification,
                  const struct offered *offered, struct whole *out)
{
    struct specification with_it = *specification;
    struct figures figures = {.arena = &run->arena};
    struct plan plan;
    size_t orders = 0, heights = 0, ratio = out->choice[4];
    int driven = with_it.vehicle.drive == DRIVE_FRONT ? AXLE_FRONT : AXLE_REAR;
    double now = known_or(of_axle(with_it.drivetrain.axle, driven), 1);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        write_springs(out, offered, axle, &with_it);
        orders += out->choice[2 * axle] > 0;
        heights += out->choice[2 * axle + 1] > 0;
    }
    write_option(run, out, offered, &with_it);
    if (ratio > 0)
        with_it.drivetrain.axle.front = with_it.drivetrain.axle.rear = offered->ratios[ratio - 1];
    orders += ratio > 0;
    ck_assert(plan_make(&run->arena, &with_it, false, "tried", &plan));
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        if (out->choice[2 * axle] > 0)
            plan.tried[axle] = &offered->springs[axle][out->choice[2 * axle] - 1];
    report_every_part(&plan, &figures);
    option_outcome_make(&plan, &plan_group_figures(&plan, &figures)[1], &out->found);
    out->shortfall = shortfall(&out->found);
    out->load_kg = known_or(load_index_kg(offered->sizes[out->size].size.service.load_index), 0);
    const struct beside *beside = &plan.beside[1];
    out->drive_remains = (ratio > 0 ? offered->ratios[ratio - 1] : now) /
                             (now * circumference_m(specification, beside->after) /
                              circumference_m(specification, beside->before)) -
                         1;
    if (out->found.outcome == OUTCOME_NO_GO)
        return;
    if (out->found.outcome == OUTCOME_GO && orders + heights > 0)
        out->found.outcome = OUTCOME_WORK;
    out->found.work[TASK_TO_ORDER] += orders;
    out->found.work[TASK_TO_ALTER] += heights;
}

static double level(const struct whole *whole)
{
    return whole->found.outcome == OUTCOME_NO_GO ? 3 + whole->shortfall : whole->found.outcome;
}

/* Of the same tyre, and with some of the same changes only. */
static bool is_less(const struct whole *a, const struct whole *b)
{
    bool fewer = false;
    for (int kind = 0; kind < KINDS; kind++) {
        if (a->choice[kind] != b->choice[kind] && a->choice[kind] != 0)
            return false;
        fewer = fewer || a->choice[kind] != b->choice[kind];
    }
    return fewer && a->size == b->size && a->rim == b->rim;
}

static bool is_listed_before(const struct offered *offered, size_t rim)
{
    const struct search_rim *a = &offered->rims[0], *b = &offered->rims[rim];
    return rim > 0 && same_value(a->width_m, b->width_m) && same_value(a->inset_m, b->inset_m) &&
           same_value(a->max_pressure_Pa, b->max_pressure_Pa);
}

static size_t judge_all(struct run *run, const struct specification *specification,
                        const struct offered *offered, struct whole *out)
{
    size_t count = 0, combinations = 1;
    for (int kind = 0; kind < KINDS; kind++)
        combinations *= offered->counts[kind] + 1;
    for (size_t size = 0; size < offered->size_count; size++)
        for (size_t rim = 0; rim < specification->search.rims.count; rim++)
            for (size_t i = 0; i < combinations && !is_listed_before(offered, rim); i++) {
                struct whole *whole = &out[count];
                *whole = (struct whole){.size = size, .rim = rim, .number = count};
                size_t rest = i;
                for (int kind = KINDS; kind-- > 0;) {
                    whole->choice[kind] = rest % (offered->counts[kind] + 1);
                    rest /= offered->counts[kind] + 1;
                }
                judge(run, specification, offered, whole);
                count++;
            }
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < count; j++)
            if (is_less(&out[j], &out[i]) && !clearly_above(level(&out[j]), level(&out[i])))
                out[i].unasked = true;
    return count;
}

/* --- and the list beside them */

static int whole_first(const void *left, const void *right)
{
    const struct whole *a = left, *b = right;
    bool a_no = a->found.outcome == OUTCOME_NO_GO, b_no = b->found.outcome == OUTCOME_NO_GO;
    if (a_no != b_no)
        return a_no ? 1 : -1;
    if (a_no && a->unasked != b->unasked)
        return a->unasked ? 1 : -1;
    if (a_no)
        return a->shortfall < b->shortfall ? -1 : a->shortfall > b->shortfall;
    if (a->unasked != b->unasked)
        return a->unasked ? 1 : -1;
    int better = option_outcome_compare(&a->found, &b->found);
    if (better != 0)
        return better;
    double x = fabs(known_or(a->drive_remains, 1)), y = fabs(known_or(b->drive_remains, 1));
    if (fabs(x - y) > 1e-12)
        return x < y ? -1 : 1;
    if (a->load_kg != b->load_kg)
        return a->load_kg > b->load_kg ? -1 : 1;
    return a->number < b->number ? -1 : a->number > b->number;
}

static size_t lists_met[OUTCOME_NO_GO + 1], asked_met;

static bool is_of(const struct whole *whole, const struct offered *offered,
                  const struct shortlisted *item)
{
    bool same =
        item->candidate == &offered->sizes[whole->size] &&
        item->rim == &offered->rims[whole->rim] && item->other_axle == (whole->choice[4] > 0) &&
        (whole->choice[4] == 0 || item->axle_ratio == offered->ratios[whole->choice[4] - 1]);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        size_t spring = whole->choice[2 * axle], lift = whole->choice[2 * axle + 1];
        same = same &&
               item->spring[axle] == (spring == 0 ? NULL : &offered->springs[axle][spring - 1]) &&
               item->lift_m[axle] == (lift == 0 ? 0 : offered->lifts[axle][lift - 1]);
    }
    return same;
}

static void require_row(const struct run *run, const struct whole *whole,
                        const struct offered *offered, const struct shortlisted *item, size_t row)
{
    bool same = is_of(whole, offered, item) && item->found.outcome == whole->found.outcome &&
                item->unasked == whole->unasked &&
                memcmp(item->found.work, whole->found.work, sizeof whole->found.work) == 0 &&
                item->found.counts[VERDICT_FAIL] == whole->found.counts[VERDICT_FAIL] &&
                item->found.counts[VERDICT_UNKNOWN] == whole->found.counts[VERDICT_UNKNOWN] &&
                same_value(item->found.closest_margin, whole->found.closest_margin);
    REQUIRE(same,
            "seed %llu: row %zu is number %zu (%s, margin %g%s); of all it is number %zu (%s, "
            "margin %g%s):\n%s",
            (unsigned long long)run->seed, row, item->number, outcome_name(item->found.outcome),
            item->found.closest_margin, item->unasked ? ", unasked" : "", whole->number,
            outcome_name(whole->found.outcome), whole->found.closest_margin,
            whole->unasked ? ", unasked" : "", run->text.text);
}

static void require_misses(const struct run *run, const struct whole *all, size_t count,
                           const struct shortlist *list)
{
    size_t misses = 0;
    while (misses < count && misses < NEAR_MISSES_MAX && !all[misses].unasked)
        misses++;
    REQUIRE(list->miss_count == misses, "seed %llu: %zu misses are shown of %zu:\n%s",
            (unsigned long long)run->seed, list->miss_count, misses, run->text.text);
    for (size_t i = 0; i < misses; i++) /* which of equals is shown hangs on the last bit */
        REQUIRE(fabs(list->misses[i].shortfall - all[i].shortfall) < 1e-9,
                "seed %llu: miss %zu lacks %.12g, of all %.12g:\n%s", (unsigned long long)run->seed,
                i, list->misses[i].shortfall, all[i].shortfall, run->text.text);
}

static void require_list(struct run *run, const struct plan *plan, const struct offered *offered,
                         const struct whole *all, size_t count, size_t best)
{
    struct shortlist *list = arena_allocate(&run->arena, sizeof *list);
    const struct shortlist_request request = {
        .candidates = offered->sizes, .count = offered->size_count, .best = best};
    size_t left = 0;
    shortlist_make(plan, &request, list);
    while (left < count && all[left].found.outcome != OUTCOME_NO_GO)
        left++;
    size_t expected = left < best ? left : best;
    REQUIRE(list->tried == count && list->count == expected,
            "seed %llu: %zu of %zu are in the list, %zu of %zu ought to be:\n%s",
            (unsigned long long)run->seed, list->count, list->tried, expected, count,
            run->text.text);
    for (size_t i = 0; i < expected; i++)
        require_row(run, &all[i], offered, &list->items[i], i);
    if (left == 0)
        require_misses(run, all, count, list);
}

static int as_all_combinations(struct run *run)
{
    static struct whole all[TRIED_MAX];
    struct offered offered;
    struct specification specification = *run->specification;
    struct plan plan;
    const struct tyre *tyre = &specification.tyres.options.items[0].tyre;
    if (!tyre->size_given || tyre->size.rim_millimetric)
        return 0;
    offer(run, &offered, &specification);
    size_t count = judge_all(run, &specification, &offered, all);
    ck_assert(plan_make(&run->arena, &specification, false, NULL, &plan));
    qsort(all, count, sizeof *all, whole_first);
    lists_met[all[0].found.outcome]++;
    for (size_t i = 0; i < count && all[i].found.outcome != OUTCOME_NO_GO && !all[i].unasked; i++)
        asked_met += all[i].choice[0] + all[i].choice[1] + all[i].choice[2] + all[i].choice[3] > 0;
    require_list(run, &plan, &offered, all, count, TRIED_MAX);
    require_list(run, &plan, &offered, all, count, 3);
    require_list(run, &plan, &offered, all, count, 1);
    return 1;
}

START_TEST(list_is_the_best_of_all_combinations)
{
    uint64_t seed = random_start("shortlist of all combinations");
    int few = properties_count(FEW), checked = 0;
    memset(lists_met, 0, sizeof lists_met);
    asked_met = 0;
    for (int i = 0; i < few; i++, seed++) {
        struct run run;
        if (i % 3 == 2)
            run_make(&run, seed, &as_drawn);
        else
            run_make_job(&run, seed);
        checked += as_all_combinations(&run);
        run_free(&run);
    }
    ck_assert_int_gt(checked, 0);
    ck_assert_uint_gt(lists_met[OUTCOME_WORK], 0);
    ck_assert_uint_gt(lists_met[OUTCOME_NO_GO], 0);
    ck_assert_uint_gt(asked_met, 0);
}
END_TEST

Suite *properties_shortlist_suite(void)
{
    Suite *suite = suite_create("properties_shortlist");
    TCase *combinations = tcase_create("combinations");
    tcase_set_timeout(combinations, 0);
    tcase_add_test(combinations, list_is_the_best_of_all_combinations);
    suite_add_tcase(suite, combinations);
    return suite;
}
