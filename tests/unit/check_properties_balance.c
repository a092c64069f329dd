/* Masses and moments balance: the sums are done again here, item by item. */
#include <string.h>

#include "base/known.h"
#include "compute/load.h"
#include "property_run.h"
#include "suites.h"

struct sums {
    double mass_kg, moment_kg_m; /* about the front axle */
    double right_kg[AXLE_COUNT]; /* on the right-hand side */
};

static void add_mass(struct sums *sums, const struct specification *specification, double kg,
                     double at_m, double side_m)
{
    const struct vehicle *vehicle = &specification->vehicle;
    double rear = at_m / vehicle->wheelbase_m;
    sums->mass_kg += kg;
    sums->moment_kg_m += kg * at_m;
    sums->right_kg[AXLE_FRONT] += kg * (1 - rear) * (0.5 + side_m / vehicle->track_m.front);
    sums->right_kg[AXLE_REAR] += kg * rear * (0.5 + side_m / vehicle->track_m.rear);
}

/* A litre of it, as the standards that table density names say: EN 228, EN 590. */
static double kg_per_m3(const struct carried_item *item)
{
    if (known(item->density_kg_m3))
        return item->density_kg_m3;
    return strcmp(item->of, "petrol") == 0 ? 745 : strcmp(item->of, "diesel") == 0 ? 835 : 1000;
}

static void add_item(struct sums *sums, const struct specification *specification,
                     const struct carried_item *item)
{
    double kg = 0;
    double at = known(item->at_m) ? item->at_m : specification->vehicle.seats.row_m[item->seat];
    if (known(item->mass_kg))
        kg += item->mass_kg;
    if (known(item->dry_mass_kg))
        kg += item->dry_mass_kg;
    if (known(item->volume_m3))
        kg += item->volume_m3 * kg_per_m3(item);
    if (known(item->occupants)) /* Regulation (EU) 1230/2012: 75 kg each */
        kg += item->occupants * (known(item->occupant_mass_kg) ? item->occupant_mass_kg : 75);
    if (known(item->tow_ball_kg))
        kg += item->tow_ball_kg;
    add_mass(sums, specification, item->removed == 1 ? -kg : kg, at,
             known(item->side_m) ? item->side_m : 0);
}

static bool is_aboard(const struct state *state, const char *item)
{
    bool aboard = state == NULL || state->all;
    for (size_t i = 0; !aboard && i < state->items.count; i++)
        aboard = strcmp(state->items.items[i], item) == 0;
    return aboard;
}

static double tyres_kg(const struct tyre *tyre)
{
    return tyre->mass_kg * (tyre->dual == 1 ? 4 : 2);
}

static struct sums sums_of(const struct run *run, const struct setup *setup,
                           const struct state *state)
{
    const struct specification *specification = run->specification;
    const struct vehicle *vehicle = &specification->vehicle;
    const struct setup *fitted = &run->plan.fitted;
    const double at[AXLE_COUNT] = {0, vehicle->wheelbase_m};
    const double unladen[AXLE_COUNT] = {vehicle->unladen_kg.front, vehicle->unladen_kg.rear};
    struct sums sums = {.mass_kg = 0};
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        double heavier = tyres_kg(&setup->axle[axle]) - tyres_kg(&fitted->axle[axle]);
        add_mass(&sums, specification, unladen[axle] + (known(heavier) ? heavier : 0), at[axle], 0);
    }
    double spare = setup->spare.mass_kg - fitted->spare.mass_kg;
    if (known(spare) && known(specification->clearance.spare_space.at_m))
        add_mass(&sums, specification, spare, specification->clearance.spare_space.at_m, 0);
    for (size_t i = 0; i < specification->carried.count; i++)
        if (is_aboard(state, specification->carried.items[i].item))
            add_item(&sums, specification, &specification->carried.items[i]);
    return sums;
}

/* The heavier corner holds the moment that the axle has by distance, and 65 % of the whole. */
static void assert_corners(const struct sums *sums, const struct axle_loads *loads,
                           const double track[AXLE_COUNT], const char *what)
{
    double moment[AXLE_COUNT];
    for (int axle = 0; axle < AXLE_COUNT; axle++)
        moment[axle] = (sums->right_kg[axle] - loads->axle_kg[axle] / 2) * track[axle];
    double whole = fabs(moment[AXLE_FRONT] + moment[AXLE_REAR]);
    for (int axle = 0; axle < AXLE_COUNT; axle++) {
        double heavier = heavier_corner_kg(loads, (enum axle)axle, track[axle]);
        double held = (heavier - loads->axle_kg[axle] / 2) * track[axle];
        require_close(held, fmax(fabs(moment[axle]), 0.65 * whole), 1e-7, what);
    }
}

static void assert_balance(struct run *run, const struct setup *setup, const struct state *state)
{
    const struct vehicle *vehicle = &run->specification->vehicle;
    struct sums sums = sums_of(run, setup, state);
    struct axle_loads loads;
    axle_loads_in_state(run->specification, state, &run->plan.fitted, setup, &loads);
    const char *what = arena_format(&run->arena, "seed %llu, %s, %s", (unsigned long long)run->seed,
                                    setup->name, state_name(state));
    const double track[AXLE_COUNT] = {vehicle->track_m.front, vehicle->track_m.rear};
    double front = loads.axle_kg[AXLE_FRONT], rear = loads.axle_kg[AXLE_REAR];
    if (loads.lifted[AXLE_FRONT] || loads.lifted[AXLE_REAR]) {
        double on_rear = sums.moment_kg_m / vehicle->wheelbase_m;
        REQUIRE(on_rear < 0 || sums.mass_kg < on_rear, "%s: no axle is lifted", what);
        return;
    }
    require_close(front + rear, sums.mass_kg, 1e-8, what);
    require_close(loads.gross_kg, sums.mass_kg, 1e-8, what);
    for (double about = -2; about <= 5; about += 1.75) /* any point will do */
        require_close(front * (0 - about) + rear * (vehicle->wheelbase_m - about),
                      sums.moment_kg_m - sums.mass_kg * about, 1e-7, what);
    if (known(track[AXLE_FRONT]) && known(track[AXLE_REAR]))
        assert_corners(&sums, &loads, track, what);
}

static int balance(struct run *run)
{
    const struct vehicle *vehicle = &run->specification->vehicle;
    if (!known(vehicle->wheelbase_m) || !known(vehicle->unladen_kg.front))
        return 0;
    for (size_t i = 0; i < run->plan.count; i++)
        for (size_t j = 0; j < state_count(run->specification); j++)
            assert_balance(run, &run->plan.setups[i], state_at(run->specification, j));
    return 1;
}

START_TEST(masses_and_moments_balance)
{
    check_builds("masses and moments", balance);
}
END_TEST

Suite *properties_balance_suite(void)
{
    Suite *suite = suite_create("properties_balance");
    TCase *balanced = tcase_create("masses and moments");
    tcase_add_test(balanced, masses_and_moments_balance);
    suite_add_tcase(suite, balanced);
    return suite;
}
