/* Where an item may stand and how heavy it may be, against the whole judgement: the item is put
 * into the build there, and nothing is passed; a little further or heavier, something is. */
#include <string.h>

#include "base/known.h"
#include "compute/place_span.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"

static const char moved[] = "what is moved about";

/* How far a limit is missed at the most before it counts. */
static const double a_little_m = 2e-3, a_little_kg = 0.5;

/* One state with everything, scales that are right, nothing that could stay behind: the question is
 * what stands where. */
static void make_plain(struct specification *specification, struct carried_item *items)
{
    struct carried_list *carried = &specification->carried;
    memcpy(items, carried->items, carried->count * sizeof *items);
    carried->items = items;
    for (size_t i = 0; i < carried->count; i++)
        items[i].can_be_left_out = CHOICE_NONE;
    specification->states.count = 0;
    specification->measured.scale_kg = specification->measured.tape_m = UNKNOWN;
}

/* What hangs on where the loads are. */
static bool is_of_load(const struct figure *figure)
{
    switch (figure->quantity) {
    case QUANTITY_AXLE_LOAD:
    case QUANTITY_AXLE_RATING_LEFT:
    case QUANTITY_GROSS_LEFT:
    case QUANTITY_ROOF_LEFT:
    case QUANTITY_COMBINATION_LEFT:
    case QUANTITY_PRESSURE_RECOMMENDED:
    case QUANTITY_WHEEL_LOAD:
    case QUANTITY_BUMP_TRAVEL_LEFT:
        return true;
    default:
        return false;
    }
}

/* How many limits of the first option are passed; what is of the vehicle stands under the fitted
 * tyre. */
static int passed(struct run *run, const struct specification *specification)
{
    struct plan plan;
    struct figures figures = {.arena = &run->arena};
    int count = 0;
    ck_assert(plan_make(&run->arena, specification, false, NULL, &plan));
    report_load(&plan, &figures);
    report_clearance(&plan, &figures);
    for (size_t i = 0; i < figures.count; i++) {
        const struct figure *figure = &figures.items[i];
        int setup = figure->quantity == QUANTITY_BUMP_TRAVEL_LEFT ? 0 : 1;
        bool to_order = figure->quantity == QUANTITY_WHEEL_LOAD && figure->verdict == VERDICT_TASK;
        count +=
            figure->setup == setup && is_of_load(figure) &&
            (figure->verdict == VERDICT_FAIL || figure->verdict == VERDICT_UNKNOWN || to_order);
    }
    return count;
}

static int passed_with(struct run *run, const struct specification *specification, double mass_kg,
                       double at_m, double side_m, bool on_roof)
{
    struct specification with_it = *specification;
    struct carried_list *carried = &with_it.carried;
    struct carried_item *items =
        arena_allocate_array(&run->arena, carried->count + 1, sizeof *items);
    memcpy(items, carried->items, carried->count * sizeof *items);
    items[carried->count] = item_unknown();
    items[carried->count].item = moved;
    items[carried->count].mass_kg = mass_kg;
    items[carried->count].at_m = at_m;
    items[carried->count].side_m = side_m;
    items[carried->count].on_roof = on_roof ? 0 : CHOICE_NONE;
    carried->items = items;
    carried->count++;
    return passed(run, &with_it);
}

/* The figure of the first option. */
static double told(struct run *run, const struct specification *specification,
                   enum quantity_id quantity)
{
    struct plan plan;
    struct figures figures = {.arena = &run->arena};
    ck_assert(plan_make(&run->arena, specification, false, NULL, &plan));
    report_load(&plan, &figures);
    for (size_t i = 0; i < figures.count; i++)
        if (figures.items[i].quantity == quantity && figures.items[i].setup == 1 &&
            same_text(figures.items[i].place.name, moved))
            return figures.items[i].value;
    return UNKNOWN;
}

/* A build with springs of its own that are not far from their bump stops. */
static bool make_build(struct run *run, uint64_t *state, struct specification *out)
{
    *out = *run->specification;
    if (out->tyres.options.count == 0)
        return false;
    out->tyres.options.count = 1;
    struct carried_item *items =
        arena_allocate_array(&run->arena, out->carried.count + 1, sizeof *items);
    make_plain(out, items);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        struct axle_suspension *suspension =
            axle == AXLE_FRONT ? &out->suspension.front : &out->suspension.rear;
        if (random_whole(state, 0, 1) == 0)
            suspension->travel_to_bump_m = UNKNOWN;
    }
    return passed(run, out) == 0;
}

static void at_end(struct run *run, const struct specification *build,
                   const struct carried_item *item, double end_m, double outward, bool vehicles_end)
{
    bool on_roof = item->on_roof != CHOICE_NONE;
    int inside =
        passed_with(run, build, item->mass_kg, end_m - outward * a_little_m, item->side_m, on_roof);
    REQUIRE(inside == 0, "seed %llu: %g kg at %g m passes %d limits", (unsigned long long)run->seed,
            item->mass_kg, end_m, inside);
    if (vehicles_end)
        return;
    int beyond =
        passed_with(run, build, item->mass_kg, end_m + outward * a_little_m, item->side_m, on_roof);
    REQUIRE(beyond > 0, "seed %llu: %g kg beyond %g m passes nothing",
            (unsigned long long)run->seed, item->mass_kg, end_m);
}

static int spans_of(struct run *run, int variant)
{
    uint64_t state = run->seed * 31 + (uint64_t)variant;
    struct specification build;
    double ends_m[2];
    if (!make_build(run, &state, &build))
        return 0;
    struct carried_list *carried = &build.carried;
    struct carried_item *item = &carried->items[carried->count];
    *item = item_unknown();
    item->item = moved;
    item->mass_kg = random_between(&state, 20, 700);
    item->on_roof = random_whole(&state, 0, 3) == 0 ? 0 : CHOICE_NONE;
    vehicle_ends_m(&build, ends_m);
    item->at_m = random_between(&state, ends_m[0], ends_m[1]);
    bool tracks = known(build.vehicle.track_m.front) && known(build.vehicle.track_m.rear);
    item->side_m =
        tracks && random_whole(&state, 0, 1) ? random_between(&state, -0.6, 0.6) : UNKNOWN;
    struct specification with_it = build;
    with_it.carried.count++;
    double from_m = told(run, &with_it, QUANTITY_PLACE_FROM);
    double to_m = told(run, &with_it, QUANTITY_PLACE_TO);
    if (!known(from_m)) { /* nowhere: nor where it was put */
        int here = passed(run, &with_it);
        REQUIRE(here > 0, "seed %llu: %g kg may stand at %g m", (unsigned long long)run->seed,
                item->mass_kg, item->at_m);
        return 0;
    }
    REQUIRE(from_m <= to_m, "from %g to %g m", from_m, to_m);
    if (to_m - from_m < 3 * a_little_m)
        return 0;
    bool at_front = same_value(from_m, ends_m[0]), at_rear = same_value(to_m, ends_m[1]);
    at_end(run, &build, item, from_m, -1, at_front);
    at_end(run, &build, item, to_m, 1, at_rear);
    return !at_front + !at_rear;
}

static int largest_of(struct run *run, int variant)
{
    uint64_t state = run->seed * 37 + (uint64_t)variant;
    struct specification build;
    struct planned_item planned = {.item = moved, .mass_kg = UNKNOWN};
    if (!make_build(run, &state, &build))
        return 0;
    planned.at_m = random_between(&state, -1, 4);
    planned.on_roof = random_whole(&state, 0, 3) == 0 ? 0 : CHOICE_NONE;
    build.room_for = (struct planned_list){&planned, 1};
    double most_kg = told(run, &build, QUANTITY_LARGEST_ITEM);
    bool on_roof = planned.on_roof != CHOICE_NONE;
    if (!known(most_kg))
        return 0;
    int fits = passed_with(run, &build, most_kg - a_little_kg, planned.at_m, UNKNOWN, on_roof);
    int more = passed_with(run, &build, most_kg * 1.001 + 20 * a_little_kg, planned.at_m, UNKNOWN,
                           on_roof);
    REQUIRE(most_kg < a_little_kg || fits == 0, "seed %llu: %g kg at %g m does not fit",
            (unsigned long long)run->seed, most_kg, planned.at_m);
    REQUIRE(more > 0, "seed %llu: more than %g kg at %g m fits", (unsigned long long)run->seed,
            most_kg, planned.at_m);
    return 1;
}

static void check_jobs(const char *what, int (*check)(struct run *run, int variant))
{
    enum { JOBS = 200, VARIANTS = 4 };
    uint64_t seed = random_start(what);
    int checked = 0, jobs = properties_count(JOBS);
    for (int i = 0; i < jobs; i++, seed++) {
        struct run run;
        run_make_job(&run, seed);
        for (int variant = 0; variant < VARIANTS; variant++)
            checked += check(&run, variant);
        run_free(&run);
    }
    ck_assert_int_gt(checked, jobs / 4);
}

START_TEST(item_may_stand_within_its_span_alone)
{
    check_jobs("places", spans_of);
}
END_TEST

START_TEST(largest_item_is_the_largest_that_passes_nothing)
{
    check_jobs("largest item, judged whole", largest_of);
}
END_TEST

Suite *properties_places_suite(void)
{
    Suite *suite = suite_create("properties_places");
    TCase *places = tcase_create("places");
    tcase_set_timeout(places, 0);
    tcase_add_test(places, item_may_stand_within_its_span_alone);
    tcase_add_test(places, largest_item_is_the_largest_that_passes_nothing);
    suite_add_tcase(suite, places);
    return suite;
}
