/* What would make a tyre fit: by hand, and that the smallest change is enough and no less is. */
#include "compute/arch_fit.h"
#include "compute/clearance.h"
#include "suites.h"
#include "support.h"

static double no_lock(double inset_change_m, const void *data)
{
    (void)inset_change_m;
    (void)data;
    return INFINITY;
}

/* Rooms of an axle that does not steer, all of them known. */
static struct arch_rooms rooms_of(double ride_m, double bump_m, double inner_m, double outer_m)
{
    return (struct arch_rooms){.ride_m = ride_m,
                               .bump_m = bump_m,
                               .inner_m = inner_m,
                               .outer_m = outer_m,
                               .lock_m = INFINITY};
}

static double inset_without_lock(struct arch_rooms rooms)
{
    return inset_to_fit_m(&rooms, no_lock, NULL);
}

START_TEST(single_changes_by_hand)
{
    const struct arch_rooms fits = rooms_of(0.05, 0, 0.01, 0.02);
    assert_close(bump_stop_to_fit_m(&fits) + lift_to_fit_m(&fits) + trim_to_fit_m(&fits), 0, 0,
                 "nothing is short");
    assert_close(inset_without_lock(fits), 0, 0, "nothing is short");
    const struct arch_rooms bump = rooms_of(0.05, -0.008, 0.01, 0.02);
    assert_close(bump_stop_to_fit_m(&bump), 0.008, 1e-15, "as much as is short at bump");
    assert_close(trim_to_fit_m(&bump), 0.008, 1e-15, "trimmed instead");
    ck_assert(isinf(lift_to_fit_m(&bump))); /* lift never adds room at bump */
    ck_assert(isinf(inset_without_lock(bump)));
    const struct arch_rooms ride = rooms_of(-0.003, 0.02, 0.01, 0.02);
    assert_close(lift_to_fit_m(&ride), 0.003, 1e-15, "as much as is short standing");
    ck_assert(isinf(bump_stop_to_fit_m(&ride)));
    const struct arch_rooms inside = rooms_of(0.05, 0.02, -0.006, 0.02);
    assert_close(inset_without_lock(inside), -0.006, 1e-15, "less inset");
    ck_assert(isinf(trim_to_fit_m(&inside))); /* strut and arm are not trimmed */
    const struct arch_rooms outside = rooms_of(0.05, 0.02, 0.02, -0.006);
    assert_close(inset_without_lock(outside), 0.006, 1e-15, "more inset");
    assert_close(trim_to_fit_m(&outside), 0.006, 1e-15, "or trimmed");
    const struct arch_rooms narrow = rooms_of(0.05, 0.02, 0.004, -0.006);
    ck_assert(isinf(inset_without_lock(narrow))); /* 2 mm too wide for any inset */
    const struct arch_rooms two = rooms_of(0.05, -0.02, 0.02, -0.006);
    ck_assert(isinf(bump_stop_to_fit_m(&two)));
    assert_close(trim_to_fit_m(&two), 0.02, 1e-15, "the larger of both");
}
END_TEST

/* Which room is not known, and whether a change may be told all the same: never one that does,
 * and one that cannot where what is known says so. */
START_TEST(unknown_rooms_leave_the_change_unknown)
{
    struct arch_rooms fits = rooms_of(0.05, -0.02, 0.01, 0.02);
    double *const each[] = {&fits.ride_m, &fits.inner_m, &fits.outer_m, &fits.lock_m};
    for (size_t i = 0; i < LENGTH_OF(each); i++) {
        double room = *each[i];
        *each[i] = UNKNOWN;
        ck_assert(isnan(bump_stop_to_fit_m(&fits)) && isnan(trim_to_fit_m(&fits)));
        ck_assert(isinf(lift_to_fit_m(&fits)) && isinf(inset_without_lock(fits)));
        *each[i] = room;
    }
    assert_close(bump_stop_to_fit_m(&fits), 0.02, 1e-15, "all are known again");
    fits.ride_open = true; /* known in one loading state, not in another */
    ck_assert(isnan(bump_stop_to_fit_m(&fits)));
    struct arch_rooms side = rooms_of(0.05, 0.02, 0.01, -0.004);
    side.lock_m = UNKNOWN;
    ck_assert(isnan(inset_without_lock(side)));
    ck_assert(isinf(bump_stop_to_fit_m(&side)));
}
END_TEST

struct steered {
    struct swept_tyre before, after;
    double at_lock_m;
};

static double lock_after(double inset_change_m, const void *data)
{
    const struct steered *steered = data;
    struct swept_tyre after = steered->after;
    after.centre_m -= inset_change_m;
    return steered->at_lock_m - lock_room_lost_m(steered->before, after);
}

/* True where every room is at least so much. */
static bool leaves(const struct arch_rooms *rooms, const struct steered *steered, double x,
                   double room_m)
{
    return rooms->inner_m - x >= room_m && rooms->outer_m + x >= room_m &&
           lock_after(x, steered) >= room_m;
}

/* Every inset change in steps of a tenth of a millimetre is tried: none that is smaller does. */
START_TEST(solved_inset_is_the_smallest)
{
    uint64_t state = random_start("solved_inset_is_the_smallest");
    int solved = 0, refused = 0;
    for (int run = 0; run < 1000; run++) {
        struct steered steered = {
            .before = {0.75, 0.25, random_between(&state, -0.05, 0.1)},
            .at_lock_m = random_between(&state, 0, 0.03),
        };
        steered.after =
            (struct swept_tyre){0.75 + random_between(&state, 0, 0.06), 0.27,
                                steered.before.centre_m + random_between(&state, -0.04, 0.06)};
        struct arch_rooms rooms = rooms_of(0.05, 0.02, random_between(&state, -0.02, 0.05),
                                           random_between(&state, -0.02, 0.05));
        rooms.lock_m = lock_after(0, &steered);
        double inset = inset_to_fit_m(&rooms, lock_after, &steered);
        double smallest = INFINITY;
        for (int step = -1500; step <= 1500; step++)
            if (fabs(step * 1e-4) < fabs(smallest) && leaves(&rooms, &steered, step * 1e-4, 1e-8))
                smallest = step * 1e-4;
        if (isfinite(inset)) {
            solved++;
            ck_assert(leaves(&rooms, &steered, inset, -1e-8));
            ck_assert_msg(fabs(inset) <= fabs(smallest) + 1e-9, "%.9g is enough, not %.9g",
                          smallest, inset);
        } else {
            refused++;
            ck_assert_msg(isinf(smallest), "%.9g would be enough", smallest);
        }
    }
    ck_assert(solved > 100 && refused > 100);
}
END_TEST

Suite *arch_fit_suite(void)
{
    Suite *suite = suite_create("arch_fit");
    TCase *fit = tcase_create("fit");
    tcase_add_test(fit, single_changes_by_hand);
    tcase_add_test(fit, unknown_rooms_leave_the_change_unknown);
    tcase_add_test(fit, solved_inset_is_the_smallest);
    suite_add_tcase(suite, fit);
    return suite;
}
