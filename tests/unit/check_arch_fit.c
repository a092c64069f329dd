/* What would make a tyre fit: by hand, and that the smallest change is enough and no less is. */
#include "compute/arch_fit.h"
#include "compute/clearance.h"
#include "suites.h"
#include "support.h"

static double no_lock(double inset_change_m, const void *data)
{
    (void)inset_change_m;
    (void)data;
    return UNKNOWN;
}

static double inset_without_lock(struct arch_rooms rooms)
{
    return inset_to_fit_m(&rooms, no_lock, NULL);
}

START_TEST(single_changes_by_hand)
{
    const struct arch_rooms fits = {0.05, 0, 0.01, 0.02, UNKNOWN};
    assert_close(bump_stop_to_fit_m(&fits) + lift_to_fit_m(&fits) + trim_to_fit_m(&fits), 0, 0,
                 "nothing is short");
    assert_close(inset_without_lock(fits), 0, 0, "nothing is short");
    const struct arch_rooms bump = {0.05, -0.008, 0.01, 0.02, UNKNOWN};
    assert_close(bump_stop_to_fit_m(&bump), 0.008, 1e-15, "as much as is short at bump");
    assert_close(trim_to_fit_m(&bump), 0.008, 1e-15, "trimmed instead");
    ck_assert(!known(lift_to_fit_m(&bump))); /* lift never adds room at bump */
    ck_assert(!known(inset_without_lock(bump)));
    const struct arch_rooms ride = {-0.003, 0.02, 0.01, 0.02, UNKNOWN};
    assert_close(lift_to_fit_m(&ride), 0.003, 1e-15, "as much as is short standing");
    ck_assert(!known(bump_stop_to_fit_m(&ride)));
    const struct arch_rooms inside = {0.05, 0.02, -0.006, 0.02, UNKNOWN};
    assert_close(inset_without_lock(inside), -0.006, 1e-15, "less inset");
    ck_assert(!known(trim_to_fit_m(&inside))); /* strut and arm are not trimmed */
    const struct arch_rooms outside = {0.05, 0.02, 0.02, -0.006, UNKNOWN};
    assert_close(inset_without_lock(outside), 0.006, 1e-15, "more inset");
    assert_close(trim_to_fit_m(&outside), 0.006, 1e-15, "or trimmed");
    const struct arch_rooms narrow = {0.05, 0.02, 0.004, -0.006, UNKNOWN};
    ck_assert(!known(inset_without_lock(narrow))); /* 2 mm too wide for any inset */
    const struct arch_rooms two = {0.05, -0.02, 0.02, -0.006, UNKNOWN};
    ck_assert(!known(bump_stop_to_fit_m(&two)));
    assert_close(trim_to_fit_m(&two), 0.02, 1e-15, "the larger of both");
    const struct arch_rooms half_known = {UNKNOWN, -0.02, UNKNOWN, UNKNOWN, UNKNOWN};
    assert_close(bump_stop_to_fit_m(&half_known), 0.02, 1e-15, "what is known");
    ck_assert(!known(inset_without_lock(half_known)));
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
        const struct arch_rooms rooms = {0.05, 0.02, random_between(&state, -0.02, 0.05),
                                         random_between(&state, -0.02, 0.05),
                                         lock_after(0, &steered)};
        double inset = inset_to_fit_m(&rooms, lock_after, &steered);
        double smallest = INFINITY;
        for (int step = -1500; step <= 1500; step++)
            if (fabs(step * 1e-4) < fabs(smallest) && leaves(&rooms, &steered, step * 1e-4, 1e-8))
                smallest = step * 1e-4;
        if (known(inset)) {
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
    tcase_add_test(fit, solved_inset_is_the_smallest);
    suite_add_tcase(suite, fit);
    return suite;
}
