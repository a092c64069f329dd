/* The clearance report of whole build files: what stays, what grows, what is unknown. */
#include "reading/figure_value.h"
#include "report/measured_rules.h"
#include "report/plan.h"
#include "suites.h"
#include "support.h"
#include "yaml/build_file.h"

static struct arena store;
static struct arena *const arena = &store;
static struct specification specification;
static struct plan plan;
static struct figures figures;

static void start(void)
{
    store = ARENA_EMPTY;
}

static void stop(void)
{
    arena_free(arena);
}

static void report(const char *text)
{
    struct diagnostics diagnostics = {.arena = arena, .source_name = "build"};
    ck_assert_msg(build_file_read(arena, span_of(text), &diagnostics, &specification), "%s",
                  diagnostics.count > 0 ? diagnostics.faults[0].message : "");
    ck_assert(measured_rules_check(&specification, &diagnostics));
    ck_assert(plan_make(arena, &specification, false, NULL, &plan));
    figures = (struct figures){.arena = arena};
    report_clearance(&plan, &figures);
}

static bool is_room(enum quantity_id quantity)
{
    return quantity == QUANTITY_ARCH_ABOVE || quantity == QUANTITY_ARCH_INNER ||
           quantity == QUANTITY_ARCH_OUTER;
}

static const char *at_of(const struct figure *figure)
{
    const char *at = figure_at(arena, &plan, figure);
    return at == NULL ? "" : at;
}

/* The first figure that answers; NULLs match any. */
static const struct figure *find(enum quantity_id quantity, const char *option, const char *state,
                                 int axle, const char *at)
{
    for (size_t i = 0; i < figures.count; i++) {
        const struct figure *figure = &figures.items[i];
        if (figure->quantity == quantity && same_text(figure_option(&plan, figure), option) &&
            (state == NULL || same_text(figure_state(&plan, figure), state)) &&
            (axle == AXLE_NONE || figure->axle == axle) &&
            (at == NULL || same_text(at_of(figure), at)))
            return figure;
    }
    return NULL;
}

static double value(enum quantity_id quantity, const char *option, const char *state, int axle,
                    const char *at)
{
    const struct figure *figure = find(quantity, option, state, axle, at);
    ck_assert_msg(figure != NULL, "no %s of %s", quantity_rows[quantity].name, option);
    return figure->value;
}

#define VEHICLE                                                                                    \
    "vehicle: {wheelbase: 2917 mm, unladen: {front: 1290 kg, rear: 1180 kg}, drive: rear,"         \
    " track: {front: 1520 mm, rear: 1530 mm}}\n"
#define CARRIED                                                                                    \
    "carried:\n"                                                                                   \
    "  - {item: bumper, mass: 12 kg, at: -800 mm, removed: true}\n"                                \
    "  - {item: front guard, mass: 96 kg, at: -820 mm, point: {ahead: 840 mm, height: 440 mm}}\n"  \
    "  - {item: tank, mass: 120 kg, at: 2300 mm, point: {at: 1400 mm, height: 205 mm}}\n"          \
    "  - {item: tent, mass: 60 kg, at: 1500 mm, on: roof, top: 2200 mm}\n"                         \
    "states: {empty: [], touring: all}\n"
#define ARCHES                                                                                     \
    "  arch: {front: {above: 110 mm, inner: 28 mm, outer: 34 mm, at_lock: 26 mm},"                 \
    " rear: {above: 118 mm, inner: 30 mm, outer: 36 mm}}\n"
#define CLEARANCE                                                                                  \
    "clearance:\n  ground: 220 mm\n  under_axle: 205 mm\n  roof_height: 1890 mm\n"                 \
    "  garage_entrance: 2000 mm\n  wading_depth: 700 mm\n  step_height: 480 mm\n"                  \
    "  front_overhang: {item: bumper, ahead: 880 mm, height: 420 mm}\n"                            \
    "  rear_overhang: {item: tow bar, behind: 1050 mm, height: 430 mm}\n"                          \
    "  belly: {item: transfer case, at: 1500 mm, height: 235 mm}\n"
#define SUSPENSION(front, rear) "suspension: {front: {" front "}, rear: {" rear "}}\n"
#define SPRINGS                                                                                    \
    SUSPENSION("wheel_rate: 62 N/mm, travel_to_bump: 80 mm",                                       \
               "wheel_rate: 74 N/mm, travel_to_bump: 85 mm")
#define FITTED                                                                                     \
    "  fitted: {size: P255/70R16 109S, placard: 240 kPa,"                                          \
    " wheel: {width: 7.5 in, inset: 30 mm}}\n  options:\n"
#define TWO                                                                                        \
    "    - {name: itself, size: P255/70R16 109S, wheel: {width: 7.5 in, inset: 30 mm}}\n"          \
    "    - {name: wide, size: 285/75R16 116S, snow_chains: 12 mm,"                                 \
    " wheel: {width: 8 in, inset: 10 mm}}\n"
#define BUILD VEHICLE "tyres:\n" FITTED TWO CARRIED SPRINGS CLEARANCE ARCHES

/* To the last digit, in every nominal row; only the largest tyre that a standard allows differs. */
START_TEST(fitted_as_its_own_option_changes_nothing)
{
    report(BUILD);
    int compared = 0;
    for (size_t i = 0; i < figures.count; i++) {
        const struct figure *figure = &figures.items[i];
        if (!same_text(figure_option(&plan, figure), "itself") || figure->place.tyre == AT_LARGEST)
            continue;
        const struct figure *fitted = find(figure->quantity, "fitted", figure_state(&plan, figure),
                                           figure->axle, at_of(figure));
        const char *name = quantity_rows[figure->quantity].name;
        if (strstr(name, "_change") != NULL || strstr(name, "_move") != NULL) {
            if (figure->quantity != QUANTITY_HEADLAMP_AIM)
                ck_assert_msg(figure->value == 0, "%s: %.17g", name, figure->value);
            compared++;
        } else if (fitted != NULL) {
            ck_assert_msg(figure->value == fitted->value ||
                              (!known(figure->value) && !known(fitted->value)),
                          "%s: %.17g, fitted %.17g", name, figure->value, fitted->value);
            compared++;
        }
    }
    ck_assert_int_gt(compared, 50);
}
END_TEST

static void assert_governed(const struct figure *figure, enum governor_kind kind, const char *name)
{
    ck_assert_int_eq(figure->governed_by.kind, kind);
    ck_assert_str_eq(figure->governed_by.name, name);
    const char *said = arena_format(arena, "governed by: %s", name);
    ck_assert_ptr_nonnull(strstr(figure_basis(arena, &plan, figure), said));
}

/* A point that an added part brings governs where it is the lowest, and a part that is taken off
 * takes its point with it. */
START_TEST(added_parts_bring_their_points)
{
    report(BUILD);
    const struct figure *empty = find(QUANTITY_APPROACH, "fitted", "empty", AXLE_NONE, NULL);
    const struct figure *touring = find(QUANTITY_APPROACH, "fitted", "touring", AXLE_NONE, NULL);
    assert_governed(empty, GOVERNED_BY_POINT, "bumper");
    assert_governed(touring, GOVERNED_BY_ITEM, "front guard");
    assert_governed(find(QUANTITY_BREAKOVER, "fitted", "empty", AXLE_NONE, NULL), GOVERNED_BY_POINT,
                    "transfer case");
    assert_governed(find(QUANTITY_BREAKOVER, "fitted", "touring", AXLE_NONE, NULL),
                    GOVERNED_BY_ITEM, "tank");
    assert_close(value(QUANTITY_APPROACH_BEFORE, "fitted", NULL, AXLE_NONE, NULL), empty->value,
                 1e-15, "nothing carried, no lift: as measured");
    assert_close(value(QUANTITY_ROOF_HEIGHT, "fitted", "empty", AXLE_NONE, NULL), 1.89, 1e-12,
                 "the roof");
    ck_assert_int_eq(find(QUANTITY_GARAGE_ROOM, "fitted", "touring", AXLE_NONE, NULL)->verdict,
                     VERDICT_FAIL); /* the tent is higher than the entrance */
    ck_assert_int_eq(find(QUANTITY_GARAGE_ROOM, "fitted", "empty", AXLE_NONE, NULL)->verdict,
                     VERDICT_OK);
}
END_TEST

START_TEST(chains_have_rows_of_their_own)
{
    report(BUILD);
    double without = value(QUANTITY_ARCH_INNER, "wide", NULL, AXLE_FRONT, "largest");
    double with = value(QUANTITY_ARCH_INNER, "wide", NULL, AXLE_FRONT, "largest, snow chains");
    assert_close(without - with, 0.012, 1e-12, "the room that they need");
    ck_assert_ptr_null(
        find(QUANTITY_ARCH_INNER, "itself", NULL, AXLE_FRONT, "largest, snow chains"));
}
END_TEST

static const char *const unknown_arches[] = {
    "  arch: {front: {inner: 28 mm, outer: 34 mm, at_lock: 26 mm}}\n",
    "  arch: {front: {above: 110 mm, outer: 34 mm, at_lock: 26 mm}}\n",
    "  arch: {front: {above: 110 mm, inner: 28 mm, at_lock: 26 mm}}\n",
    "  arch: {front: {above: 110 mm, inner: 28 mm, outer: 34 mm}}\n",
};

/* A missing measurement makes that finding unknown and no other; never ok. */
START_TEST(missing_arch_measurement_is_unknown)
{
    static const enum quantity_id quantities[] = {QUANTITY_ARCH_ABOVE, QUANTITY_ARCH_INNER,
                                                  QUANTITY_ARCH_OUTER, QUANTITY_ARCH_LOCK};
    const char *text = arena_format(arena, VEHICLE "tyres:\n" FITTED TWO SPRINGS CLEARANCE "%s",
                                    unknown_arches[_i]);
    report(text);
    for (size_t i = 0; i < figures.count; i++) {
        const struct figure *figure = &figures.items[i];
        bool judged = figure->place.tyre == AT_LARGEST;
        for (int j = 0; judged && j < 4; j++)
            if (figure->quantity == quantities[j] && figure->axle == AXLE_FRONT)
                ck_assert_msg((figure->verdict == VERDICT_UNKNOWN) == (j == _i), "%s, %s: %s",
                              quantity_rows[figure->quantity].name, at_of(figure),
                              verdict_name(figure->verdict));
        if (judged && figure->axle == AXLE_REAR && is_room(figure->quantity))
            ck_assert_int_eq(figure->verdict, VERDICT_UNKNOWN);
    }
}
END_TEST

/* More lift: never less body clearance, never more room at bump. */
START_TEST(lift_raises_the_body_and_not_the_room_at_bump)
{
    uint64_t state = random_start("lift_raises_the_body_and_not_the_room_at_bump");
    for (int run = 0; run < 20; run++) {
        double before = NAN, bump = NAN, lift = random_between(&state, -50, 50);
        for (int step = 0; step < 3; step++) {
            report(arena_format(arena,
                                VEHICLE "tyres:\n" FITTED TWO CARRIED
                                        "suspension: {front: {lift: %.2f mm, wheel_rate: 62 N/mm, "
                                        "travel_to_bump: 80 mm}, rear: {lift: %.2f mm, wheel_rate: "
                                        "74 N/mm, travel_to_bump: 85 mm}}\n" CLEARANCE ARCHES,
                                lift, lift / 2));
            double body = value(QUANTITY_BODY, "wide", "touring", AXLE_NONE, NULL);
            double room = value(QUANTITY_ARCH_ABOVE, "wide", NULL, AXLE_FRONT, "largest, bump");
            ck_assert(step == 0 || (body >= before && room == bump));
            before = body;
            bump = room;
            lift += random_between(&state, 0, 40);
        }
    }
}
END_TEST

/* A wider tyre on the same wheel: never more room in any row of the arch. */
START_TEST(width_adds_no_room)
{
    static const enum quantity_id quantities[] = {QUANTITY_ARCH_INNER, QUANTITY_ARCH_OUTER,
                                                  QUANTITY_ARCH_LOCK};
    for (int j = 0; j < 3; j++) {
        double room = INFINITY;
        for (int width = 205; width <= 305; width += 10) {
            report(arena_format(arena,
                                VEHICLE "tyres:\n" FITTED
                                        "    - {name: wide, size: %d/70R16, wheel: {width: 7.5 in, "
                                        "inset: 20 mm}}\n" SPRINGS CLEARANCE ARCHES,
                                width));
            double here = value(quantities[j], "wide", NULL, AXLE_FRONT, "largest");
            ck_assert(here <= room);
            room = here;
        }
    }
}
END_TEST

/* What the solver says, done: everything that it speaks of fits, and a millimetre less does not. */
START_TEST(solved_change_makes_it_fit)
{
    static const char build[] = VEHICLE
        "tyres:\n" FITTED
        "    - {name: tall, size: 255/85R16, wheel: {width: 7.5 in, inset: 30 mm}}\n"
        "suspension: {front: {wheel_rate: 62 N/mm, travel_to_bump: 80 mm, bump_stop_change: %d "
        "mm}}\n"
        "clearance: {arch: {front: {above: 110 mm, inner: 28 mm, outer: 34 mm, at_lock: 80 mm}}}\n";
    report(arena_format(arena, build, 0));
    int stop_mm =
        (int)lround(1e3 * value(QUANTITY_BUMP_STOP_TO_FIT, "tall", NULL, AXLE_FRONT, "largest"));
    ck_assert_int_gt(stop_mm, 0);
    report(arena_format(arena, build, stop_mm));
    ck_assert_int_eq(find(QUANTITY_ARCH_ABOVE, "tall", NULL, AXLE_FRONT, "largest, bump")->verdict,
                     VERDICT_OK);
    ck_assert_ptr_null(find(QUANTITY_BUMP_STOP_TO_FIT, "tall", NULL, AXLE_FRONT, NULL));
    report(arena_format(arena, build, stop_mm - 1));
    ck_assert_int_eq(find(QUANTITY_ARCH_ABOVE, "tall", NULL, AXLE_FRONT, "largest, bump")->verdict,
                     VERDICT_FAIL);
}
END_TEST

START_TEST(published_limits_are_findings_with_their_section)
{
    static const struct {
        enum quantity_id quantity;
        const char *section;
        enum verdict verdict;
    } expected[] = {
        {QUANTITY_DIAMETER_CHANGE_SHARE, "Suspension, 3.1", VERDICT_FAIL}, /* 9.2 % of 763 mm */
        {QUANTITY_OVERALL_DIAMETER_CHANGE, "VSI 8 13.3", VERDICT_FAIL},
        {QUANTITY_RIDE_HEIGHT_CHANGE, "VSI 8 13.3", VERDICT_OK},
        {QUANTITY_DIAMETER_AND_SUSPENSION, "VSI 8 13.3", VERDICT_OK},
        {QUANTITY_TRAVEL_KEPT, "VSI 8 13.3", VERDICT_OK},
        {QUANTITY_OVERALL_DIAMETER_CHANGE, "South Australia", VERDICT_UNKNOWN}, /* for cars */
        {QUANTITY_LOAD_INDEX_CHANGE, "Spain", VERDICT_OK},
        {QUANTITY_SPEED_SYMBOL_CHANGE, "Spain", VERDICT_FAIL}, /* Q against S */
    };
    report(
        "vehicle: {wheelbase: 2917 mm, unladen: {front: 1290 kg, rear: 1180 kg}, kind: light_truck,"
        " category: NB1, drive: part_time_4wd, track: {front: 1520 mm, rear: 1530 mm}}\n"
        "tyres:\n" FITTED "    - {name: big, size: LT285/75R16 126/123Q, wheel: {width: 8 in, "
        "inset: 10 mm}}\n" SPRINGS CLEARANCE ARCHES
        "limits: {published: [au_nsw, au_victoria, au_south_australia, es_inspection]}\n");
    for (size_t i = 0; i < LENGTH_OF(expected); i++) {
        bool found = false;
        for (size_t j = 0; j < figures.count; j++)
            found = found || (figures.items[j].quantity == expected[i].quantity &&
                              same_text(figure_option(&plan, &figures.items[j]), "big") &&
                              figures.items[j].verdict == expected[i].verdict &&
                              strstr(figure_basis(arena, &plan, &figures.items[j]),
                                     expected[i].section) != NULL);
        ck_assert_msg(found, "%s by %s", quantity_rows[expected[i].quantity].name,
                      expected[i].section);
    }
}
END_TEST

static const struct {
    const char *text;
    size_t line, column;
    const char *says;
} impossible[] = {
    {"clearance:\n  front_overhang: {ahead: 200 mm, height: 300 mm}\n", 4, 27, "front tyre"},
    {"clearance:\n  rear_overhang:\n  - {behind: 900 mm, height: 300 mm}\n"
     "  - {behind: 340 mm, height: 348 mm}\n",
     6, 14, "rear tyre"},
    {"carried:\n- {item: bar, mass: 9 kg, at: -1 m, point: {ahead: 250 mm, height: 300 mm}}\n", 4,
     52, "front tyre"},
};

START_TEST(overhang_inside_the_tyre_is_a_fault_with_a_place)
{
    struct diagnostics diagnostics = {.arena = arena, .source_name = "build"};
    const char *text =
        arena_format(arena, "%s%s%s", VEHICLE, "tyres: {fitted: {size: P255/70R16 109S}}\n",
                     impossible[_i].text);
    ck_assert(build_file_read(arena, span_of(text), &diagnostics, &specification));
    ck_assert(!measured_rules_check(&specification, &diagnostics));
    ck_assert_uint_eq(diagnostics.count, 1);
    ck_assert_uint_eq(diagnostics.faults[0].mark.line, impossible[_i].line);
    ck_assert_uint_eq(diagnostics.faults[0].mark.column, impossible[_i].column);
    ck_assert_ptr_nonnull(strstr(diagnostics.faults[0].message, impossible[_i].says));
}
END_TEST

Suite *clearance_report_suite(void)
{
    Suite *suite = suite_create("clearance_report");
    TCase *builds = tcase_create("builds");
    tcase_add_checked_fixture(builds, start, stop);
    tcase_add_test(builds, fitted_as_its_own_option_changes_nothing);
    tcase_add_test(builds, added_parts_bring_their_points);
    tcase_add_test(builds, chains_have_rows_of_their_own);
    tcase_add_loop_test(builds, missing_arch_measurement_is_unknown, 0,
                        (int)LENGTH_OF(unknown_arches));
    tcase_add_test(builds, lift_raises_the_body_and_not_the_room_at_bump);
    tcase_add_test(builds, width_adds_no_room);
    tcase_add_test(builds, solved_change_makes_it_fit);
    tcase_add_test(builds, published_limits_are_findings_with_their_section);
    tcase_add_loop_test(builds, overhang_inside_the_tyre_is_a_fault_with_a_place, 0,
                        (int)LENGTH_OF(impossible));
    suite_add_tcase(suite, builds);
    return suite;
}
