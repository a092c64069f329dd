/* Properties of sums and of worst cases: what is left and what is used make up the rating, more
 * carries more, and the case that decides is the worst of all. */
#include <string.h>

#include "base/known.h"
#include "compute/load.h"
#include "compute/ratings.h"
#include "property_run.h"
#include "suites.h"
#include "support.h"

/* --- ratings */

static const struct {
    enum quantity_id load, left, share;
} rated[] = {
    {QUANTITY_AXLE_LOAD, QUANTITY_AXLE_RATING_LEFT, QUANTITY_AXLE_RATING_LEFT_SHARE},
    {QUANTITY_GROSS_LOAD, QUANTITY_GROSS_LEFT, QUANTITY_GROSS_LEFT_SHARE},
};

static const struct figure *sibling(const struct run *run, size_t of, enum quantity_id quantity)
{
    struct figure like = run->figures.items[of];
    like.quantity = quantity;
    for (size_t i = of; i < run->figures.count; i++)
        if (of_the_same(run, &run->figures.items[i], run, &like))
            return &run->figures.items[i];
    return NULL;
}

static int left_and_load(struct run *run)
{
    const struct ratings *ratings = &run->specification->vehicle.ratings;
    int checked = 0;
    for (size_t i = 0; i < run->figures.count; i++)
        for (size_t kind = 0; kind < LENGTH_OF(rated); kind++) {
            const struct figure *load = &run->figures.items[i];
            if (load->quantity != rated[kind].load || !known(load->value))
                continue;
            double rating = load->axle == AXLE_FRONT  ? ratings->front_kg
                            : load->axle == AXLE_REAR ? ratings->rear_kg
                                                      : ratings->gross_kg;
            const struct figure *left = sibling(run, i, rated[kind].left);
            const struct figure *share = sibling(run, i, rated[kind].share);
            REQUIRE(left != NULL && known(left->value) == known(rating), "%s", told_of(run, load));
            if (!known(rating))
                continue;
            require_close(load->value + left->value, rating, 1e-9 * rating, told_of(run, load));
            REQUIRE(share != NULL, "%s", told_of(run, load));
            require_close(share->value * rating, left->value, 1e-9 * rating, told_of(run, load));
            checked++;
        }
    return checked;
}

START_TEST(load_and_what_is_left_make_the_rating)
{
    check_builds("left and load", left_and_load);
}
END_TEST

/* How far the tightest limit is from being passed with so much more at the place; below 0 it is. */
static double room_with(const struct run *run, const struct axle_loads *loads,
                        const struct bearing_left *left, const struct load_place *place, double kg)
{
    const struct ratings *ratings = &run->specification->vehicle.ratings;
    double at = place->at_m / place->wheelbase_m, rear = kg * at, front = kg - rear;
    double room[] = {
        ratings->front_kg - (loads->axle_kg[AXLE_FRONT] + front),
        ratings->rear_kg - (loads->axle_kg[AXLE_REAR] + rear),
        ratings->gross_kg - (loads->gross_kg + kg),
        place->on_roof ? ratings->roof_kg - (loads->roof_kg + kg) : UNKNOWN,
        loads->trailer_kg > 0
            ? ratings->combination_kg - rated_load_kg(loads, RATING_COMBINATION) - kg
            : UNKNOWN,
        left->tyres_kg[AXLE_FRONT] - front,
        left->tyres_kg[AXLE_REAR] - rear,
        left->wheels_kg[AXLE_FRONT] - front,
        left->wheels_kg[AXLE_REAR] - rear,
        left->springs_kg[AXLE_FRONT] - front,
        left->springs_kg[AXLE_REAR] - rear,
        loads->axle_kg[AXLE_FRONT] + front,
        loads->axle_kg[AXLE_REAR] + rear,
    };
    const double share[] = {1 - at, at, 1, 1, 1, 1 - at, at, 1 - at, at, 1 - at, at, at - 1, -at};
    double least = INFINITY;
    for (size_t i = 0; i < LENGTH_OF(room); i++)
        if (known(room[i]) && share[i] > 0) /* what it lightens it does not pass */
            least = fmin(least, room[i]);
    return least;
}

static int largest_fits(struct run *run)
{
    const struct specification *specification = run->specification;
    int checked = 0;
    for (size_t i = 0; i < state_count(specification); i++)
        for (size_t j = 0; j < specification->room_for.count; j++) {
            const struct planned_item *item = &specification->room_for.items[j];
            struct load_place place = {item->at_m, item->on_roof != CHOICE_NONE,
                                       specification->vehicle.wheelbase_m};
            const struct bearing_left left = {{200 + 50 * (double)(run->seed % 7), INFINITY},
                                              {INFINITY, 150 + 40 * (double)(run->seed % 5)},
                                              {120 + 60 * (double)(run->seed % 9), INFINITY}};
            struct axle_loads loads;
            axle_loads_in_state(specification, state_at(specification, i), &run->plan.fitted,
                                &run->plan.fitted, &loads);
            struct largest_item largest =
                largest_item(&specification->vehicle.ratings, &loads, &left, &place);
            if (!known(largest.mass_kg) || !isfinite(largest.mass_kg))
                continue;
            REQUIRE(largest.mass_kg == 0 ||
                        room_with(run, &loads, &left, &place, largest.mass_kg) >= -1e-6,
                    "seed %llu: the largest item of %g kg does not fit",
                    (unsigned long long)run->seed, largest.mass_kg);
            /* An item at an axle puts nothing on the other, so a kilogram more is a kilogram. */
            REQUIRE(room_with(run, &loads, &left, &place, largest.mass_kg * (1 + 1e-6) + 1) < 0,
                    "seed %llu: more than the largest item of %g kg fits",
                    (unsigned long long)run->seed, largest.mass_kg);
            checked++;
        }
    return checked;
}

START_TEST(largest_item_fits_and_no_larger_one)
{
    check_builds("largest item", largest_fits);
}
END_TEST

/* --- capacities */

/* More pressure never carries less, nor does a higher load index; more load never asks for less. */
static void assert_rises(const struct run *run, const struct tyre *tyre)
{
    const struct vehicle *vehicle = &run->specification->vehicle;
    struct tyre higher = *tyre;
    struct tyre_rating rating, of_higher;
    higher.size.service.load_index++;
    higher.size.service.load_index_dual += higher.size.service.load_index_dual > 0;
    tyre_rate(tyre, vehicle->kind, vehicle->top_speed_mps, &rating);
    tyre_rate(&higher, vehicle->kind, vehicle->top_speed_mps, &of_higher);
    bool indexed = tyre->size.service.load_index >= 0 && tyre->size.service.load_index != 121;
    for (int dual = 0; dual < 2; dual++) {
        double before = 0, asked_before = 0;
        for (double pressure = 50e3; pressure <= 700e3; pressure += 12.5e3) {
            double load = capacity_kg(&rating, dual == 1, pressure);
            if (!known(load))
                break;
            double asked = pressure_for_load_Pa(&rating, dual == 1, pressure / 500);
            REQUIRE(load >= before, "seed %llu: less at %g Pa", (unsigned long long)run->seed,
                    pressure);
            REQUIRE(asked >= asked_before, "seed %llu: less asked for more load",
                    (unsigned long long)run->seed);
            REQUIRE(!indexed || capacity_kg(&of_higher, dual == 1, pressure) >= load,
                    "seed %llu: less by a higher load index", (unsigned long long)run->seed);
            before = load;
            asked_before = asked;
        }
    }
}

static int capacities(struct run *run)
{
    for (size_t i = 0; i < run->plan.count; i++)
        for (int axle = 0; axle < AXLE_COUNT; axle++)
            assert_rises(run, &run->plan.setups[i].axle[axle]);
    return 1;
}

START_TEST(more_pressure_carries_no_less)
{
    check_builds("capacities", capacities);
}
END_TEST

/* --- the worst of several */

/* The first of several points, and the last, each alone, give no smaller angle. */
START_TEST(least_angle_of_all_points_governs)
{
    struct variation first = as_drawn, last = as_drawn;
    first.one_point = last.last_point = true;
    uint64_t seed = random_start("points");
    int checked = 0;
    for (int i = 0; i < properties_count(BUILDS_FEW); i++, seed++) {
        struct run all, alone[2];
        run_make(&all, seed, &as_drawn);
        run_make(&alone[0], seed, &first);
        run_make(&alone[1], seed, &last);
        for (int j = 0; j < 2; j++)
            for (size_t at = 0; at < alone[j].figures.count; at++) {
                const struct figure *one = &alone[j].figures.items[at];
                if (one->quantity != QUANTITY_APPROACH && one->quantity != QUANTITY_DEPARTURE &&
                    one->quantity != QUANTITY_BREAKOVER)
                    continue;
                const struct figure *least = find_like(&all, &alone[j], one, 0);
                REQUIRE(least != NULL && !(least->value > one->value + 1e-12), "%s",
                        told_of(&all, one));
                checked += known(one->value);
            }
        run_free(&all);
        run_free(&alone[0]);
        run_free(&alone[1]);
    }
    ck_assert_int_gt(checked, 0);
}
END_TEST

/* The figure of the nominal tyre beside one that is told for another: "nominal, chains". */
static const struct figure *nominal_beside(struct run *run, const struct figure *other)
{
    struct figure like = *other;
    like.place.tyre = AT_NOMINAL;
    return find_like(run, run, &like, 0);
}

/* Of one setup and axle: what is told for the largest and the smallest tyre lies either side. */
static int spread(struct run *run)
{
    int checked = 0;
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        bool speed = figure->quantity == QUANTITY_SPEEDOMETER_ERROR;
        bool room = figure->quantity == QUANTITY_ARCH_INNER ||
                    figure->quantity == QUANTITY_ARCH_OUTER ||
                    figure->quantity == QUANTITY_ARCH_LOCK;
        bool largest = figure->place.tyre == AT_LARGEST;
        bool smallest = figure->place.tyre == AT_SMALLEST;
        if ((!speed && !room) || (!largest && !smallest) || !known(figure->value))
            continue;
        const struct figure *nominal = nominal_beside(run, figure);
        REQUIRE(nominal != NULL, "%s: no nominal one", told_of(run, figure));
        double less = largest ? figure->value : nominal->value;
        double more = largest ? nominal->value : figure->value;
        REQUIRE(less <= more + 1e-12, "%s: %g, nominal %g", told_of(run, figure), figure->value,
                nominal->value);
        checked++;
    }
    return checked;
}

START_TEST(largest_and_smallest_enclose_the_nominal)
{
    check_builds("spread", spread);
}
END_TEST

/* Whether both are of one setup, state and axle ratio, the second on a steeper grade. */
static bool is_steeper(const struct figure *before, const struct figure *figure)
{
    struct place place = before->place;
    place.grade = figure->place.grade;
    return before->setup == figure->setup && before->state == figure->state &&
           place_same(&place, &figure->place) && figure->place.grade > before->place.grade;
}

static int steeper(struct run *run)
{
    const struct figure *before = NULL;
    int checked = 0;
    if (run->specification->drivetrain.transfer.low.count > 0)
        return 0; /* a reduced range may be the faster one where the high one holds it no more */
    for (size_t i = 0; i < run->figures.count; i++) {
        const struct figure *figure = &run->figures.items[i];
        if (figure->quantity != QUANTITY_SPEED_HELD)
            continue;
        if (before != NULL && is_steeper(before, figure)) {
            REQUIRE(!(figure->value > before->value * (1 + 1e-9)) &&
                        (known(before->value) || !known(figure->value)),
                    "%s: %g m/s, before %g", told_of(run, figure), figure->value, before->value);
            checked++;
        }
        before = figure;
    }
    return checked;
}

START_TEST(steeper_grade_is_held_no_faster)
{
    check_builds("grades", steeper);
}
END_TEST

Suite *properties_sums_suite(void)
{
    Suite *suite = suite_create("properties_sums");
    TCase *sums = tcase_create("sums");
    tcase_add_test(sums, load_and_what_is_left_make_the_rating);
    tcase_add_test(sums, largest_item_fits_and_no_larger_one);
    tcase_add_test(sums, more_pressure_carries_no_less);
    suite_add_tcase(suite, sums);
    TCase *worst = tcase_create("the worst case");
    tcase_add_test(worst, least_angle_of_all_points_governs);
    tcase_add_test(worst, largest_and_smallest_enclose_the_nominal);
    tcase_add_test(worst, steeper_grade_is_held_no_faster);
    suite_add_tcase(suite, worst);
    return suite;
}
