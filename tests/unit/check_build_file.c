/* Build files: the tree with its positions, the walk into a specification, and every fault. */
#include <stddef.h>
#include <string.h>

#include "example_build.h"
#include "suites.h"
#include "support.h"
#include "yaml/build_file.h"
#include "build/keys.h"
#include "yaml/walk.h"

static struct arena arena;
static struct diagnostics diagnostics;
static struct specification specification;

static void set_up(void)
{
    arena = ARENA_EMPTY;
    diagnostics = (struct diagnostics){.arena = &arena, .source_name = "test"};
    specification_clear(&specification);
}

static void tear_down(void)
{
    arena_free(&arena);
}

static void read_span(struct span text)
{
    struct node *root = tree_read(&arena, text, &diagnostics);
    struct walk walk = {&arena, &diagnostics};
    if (root != NULL)
        walk_file(&walk, root, &specification);
}

static double double_at(const void *base, size_t offset)
{
    double value;
    memcpy(&value, (const char *)base + offset, sizeof value);
    return value;
}

/* The example of the manual: each figure as written, converted by the exact definitions. */
#define PSI 6894.7572931683599 /* GNU units 2.22 */
#define VALUE(member, si)                                                                          \
    {                                                                                              \
#member, offsetof(struct specification, member), (si)                                      \
    }

struct field {
    const char *name;
    size_t offset;
    double si;
};

static const struct field example_values[] = {
    VALUE(vehicle.wheelbase_m, 2.917),
    VALUE(vehicle.unladen_kg.front, 1290),
    VALUE(vehicle.unladen_kg.rear, 1180),
    VALUE(vehicle.ratings.front_kg, 1550),
    VALUE(vehicle.ratings.rear_kg, 1750),
    VALUE(vehicle.ratings.gross_kg, 3200),
    VALUE(vehicle.ratings.roof_kg, 100),
    VALUE(vehicle.ratings.tow_ball_kg, 350),
    VALUE(vehicle.ratings.combination_kg, 6000),
    VALUE(vehicle.seats.row_m[0], 1.35),
    VALUE(vehicle.seats.row_m[1], 2.25),
    VALUE(vehicle.top_speed_mps, 175 / 3.6),
    VALUE(vehicle.track_m.front, 1.52),
    VALUE(vehicle.track_m.rear, 1.53),
    VALUE(vehicle.drag.coefficient, 0.42),
    VALUE(vehicle.drag.area_m2, 3),
    VALUE(tyres.fitted.placard_Pa.front, 30 * PSI),
    VALUE(tyres.fitted.placard_Pa.rear, 32 * PSI),
    VALUE(tyres.fitted.tyre.wheel.width_m, 0.1905),
    VALUE(tyres.fitted.tyre.wheel.inset_m, 0.03),
    VALUE(tyres.fitted.tyre.wheel.max_load_kg, 1100),
    VALUE(tyres.fitted.tyre.wheel.max_pressure_Pa, 450000),
    VALUE(tyres.fitted.tyre.mass_kg, 24),
    VALUE(tyres.fitted.tyre.tread_depth_m, 0.0065),
    VALUE(drivetrain.reverse, 3.22),
    VALUE(drivetrain.transfer.high, 1),
    VALUE(drivetrain.hub_reduction, 1),
    VALUE(drivetrain.axle.front, 3.83),
    VALUE(drivetrain.axle.rear, 3.83),
    VALUE(drivetrain.efficiency, 0.88),
    VALUE(drivetrain.slip, 0),
    VALUE(drivetrain.engine.idle_per_s, 700 / 60.0),
    VALUE(drivetrain.engine.limit_per_s, 4400 / 60.0),
    VALUE(drivetrain.grip, 0.8),
    VALUE(speedometer.fitted_error, 0.03),
    VALUE(speedometer.setting.now, 2548),
    VALUE(speedometer.setting.step, 1),
    VALUE(speedometer.setting.min, 1000),
    VALUE(speedometer.setting.max, 25000),
    VALUE(suspension.front.lift_m, 0.04),
    VALUE(suspension.front.wheel_rate_N_m, 62000),
    VALUE(suspension.front.travel_to_bump_m, 0.08),
    VALUE(suspension.front.bump_stop_change_m, 0.01),
    VALUE(suspension.rear.lift_m, 0.05),
    VALUE(suspension.rear.wheel_rate_N_m, 74000),
    VALUE(suspension.rear.travel_to_bump_m, 0.085),
    VALUE(clearance.ground_m, 0.22),
    VALUE(clearance.under_axle_m.front, 0.205),
    VALUE(clearance.under_axle_m.rear, 0.205),
    VALUE(clearance.arch.front.above_m, 0.11),
    VALUE(clearance.arch.front.inner_m, 0.028),
    VALUE(clearance.arch.front.outer_m, 0.022),
    VALUE(clearance.arch.front.at_lock_m, 0.014),
    VALUE(clearance.arch.rear.above_m, 0.115),
    VALUE(clearance.arch.rear.inner_m, 0.03),
    VALUE(clearance.arch.rear.outer_m, 0.025),
    VALUE(clearance.steering.axis_to_centre_m, 0.04),
    VALUE(clearance.steering.lock_rad, 0.59341194567807209), /* 34 pi / 180 */
    VALUE(clearance.roof_height_m, 1.89),
    VALUE(clearance.spare_space.diameter_m, 0.8),
    VALUE(clearance.spare_space.width_m, 0.26),
    VALUE(limits.diameter_change.min.value, -0.026),
    VALUE(limits.diameter_change.max.value, 0.05),
    VALUE(limits.ride_height_change.max.value, 0.05),
    VALUE(limits.diameter_and_suspension.max.value, 0.075),
    VALUE(limits.track_change.max.value, 0.05),
    VALUE(limits.inset_change.min.value, -0.013),
    VALUE(limits.load_reserve, 0.1),
    VALUE(search.overall_diameter.min.value, 0.78),
    VALUE(search.overall_diameter.max.value, 0.83),
};

/* Not in the example: they must stay unknown and not become 0. */
static const struct field example_unknown[] = {
    VALUE(vehicle.seats.row_m[2], 0),
    VALUE(tyres.fitted.tyre.new_tread_depth_m, 0),
    VALUE(tyres.fitted.tyre.wheel.spacer_m, 0),
    VALUE(tyres.fitted.tyre.data_book.overall_diameter_m, 0),
    VALUE(drivetrain.rolling_resistance, 0),
    VALUE(suspension.rear.bump_stop_change_m, 0),
    VALUE(clearance.ground_at_m, 0),
    VALUE(clearance.arch.rear.at_lock_m, 0),
    VALUE(limits.track_change.min.value, 0),
    VALUE(tyres.spare.mass_kg, 0),
};

static void read_example(void)
{
    bool good = build_file_read(&arena, span_of(example_build), &diagnostics, &specification);
    ck_assert_msg(good, "line %zu: %s", diagnostics.faults[0].mark.line,
                  diagnostics.faults[0].message);
}

START_TEST(example_has_its_si_values)
{
    read_example();
    for (size_t i = 0; i < LENGTH_OF(example_values); i++)
        assert_close(double_at(&specification, example_values[i].offset), example_values[i].si,
                     1e-14 * fabs(example_values[i].si), example_values[i].name);
    for (size_t i = 0; i < LENGTH_OF(example_unknown); i++)
        ck_assert_msg(isnan(double_at(&specification, example_unknown[i].offset)), "%s is known",
                      example_unknown[i].name);
}
END_TEST

static void assert_texts(const struct text_list *list, size_t count, const char *const *texts)
{
    ck_assert_uint_eq(list->count, count);
    for (size_t i = 0; i < count; i++)
        ck_assert_str_eq(list->items[i], texts[i]);
}

START_TEST(example_has_its_words)
{
    read_example();
    const struct vehicle *vehicle = &specification.vehicle;
    ck_assert_str_eq(vehicle->name, "invented wagon");
    ck_assert_int_eq(vehicle->kind, VEHICLE_LIGHT_TRUCK);
    ck_assert_int_eq(vehicle->drive, DRIVE_FULL_TIME_4WD);
    assert_texts(&vehicle->includes, 2, (const char *const[]){"driver", "fuel"});
    ck_assert_int_eq(specification.speedometer.unit, SPEED_KMH);
    ck_assert_str_eq(specification.speedometer.rule, "un_r39");
    ck_assert_str_eq(specification.speedometer.readings_on, "fitted");
    ck_assert_int_eq(specification.speedometer.setting.kind, SETTING_PULSES_PER_KM);
    ck_assert_int_eq(specification.speedometer.aim.choice, AIM_LOWEST_LAWFUL);
    ck_assert_int_eq(specification.limits.speedometer, 0);
    assert_texts(&specification.limits.published, 1, (const char *const[]){"au_offroad"});
    assert_texts(&specification.search.forms, 2, (const char *const[]){"metric", "LT"});
    ck_assert_str_eq(specification.search.list, "builtin");
    const struct state_list *states = &specification.states;
    ck_assert_uint_eq(states->count, 2);
    ck_assert_str_eq(states->items[0].name, "workshop");
    assert_texts(&states->items[0].items, 2,
                 (const char *const[]){"front guard and lamps", "instrument racks"});
    ck_assert(!states->items[0].all && states->items[1].all);
}
END_TEST

START_TEST(example_has_its_tyres)
{
    read_example();
    const struct fitment *fitted = &specification.tyres.fitted;
    const struct designation *size = &fitted->tyre.size;
    ck_assert_int_eq(size->prefix, PREFIX_P);
    ck_assert_int_eq(size->section_width, 255);
    ck_assert_int_eq(size->service.load_index, 109);
    ck_assert(designation_equal(size, &specification.tyres.spare.size));
    ck_assert_uint_eq(specification.tyres.options.count, 1);
    const struct fitment *option = &specification.tyres.options.items[0];
    ck_assert_str_eq(option->name, "all-terrain, one class up");
    ck_assert_int_eq(option->tyre.size.prefix, PREFIX_LT);
    ck_assert_int_eq(option->tyre.size.service.load_index_dual, 108);
    ck_assert_int_eq(option->tyre.load_range, 'C');
    assert_close(option->tyre.wheel.spacer_m, 0, 0, "spacer");
    assert_relative(option->tyre.data_book.overall_diameter_m, 0.789, 1e-14, "overall diameter");
    assert_close(option->tyre.data_book.revs_per_mile, 668, 0, "revolutions per mile");
    assert_relative(option->tyre.snow_chains_m, 0.012, 1e-14, "snow chains");
    ck_assert_int_eq(option->tyre.dual, CHOICE_NONE);
    ck_assert_ptr_null(option->rear.given);
}
END_TEST

static void assert_pairs(const struct pair_list *list, size_t count, const double (*pairs)[2])
{
    ck_assert_uint_eq(list->count, count);
    for (size_t i = 0; i < count; i++) {
        assert_relative(list->items[i].first, pairs[i][0], 1e-14, "first of a pair");
        assert_relative(list->items[i].second, pairs[i][1], 1e-14, "second of a pair");
    }
}

static void assert_numbers(const struct number_list *list, size_t count, const double *numbers)
{
    ck_assert_uint_eq(list->count, count);
    for (size_t i = 0; i < count; i++)
        assert_close(list->items[i], numbers[i], 0, "number of a list");
}

START_TEST(example_has_its_lists)
{
    read_example();
    assert_numbers(&specification.drivetrain.gears, 5,
                   (const double[]){3.87, 2.21, 1.49, 1.07, 0.79});
    assert_numbers(&specification.drivetrain.axle_choices, 3, (const double[]){4.05, 4.37, 4.61});
    assert_numbers(&specification.drivetrain.transfer.low, 1, (const double[]){2.37});
    assert_pairs(&specification.drivetrain.engine.torque, 2,
                 (const double[][2]){{20, 310}, {2000 / 60.0, 450}});
    assert_pairs(&specification.speedometer.readings, 2,
                 (const double[][2]){{50 / 3.6, 48.5 / 3.6}, {100 / 3.6, 97 / 3.6}});
    ck_assert_uint_eq(specification.search.rims.count, 1);
    const struct search_rim *rim = specification.search.rims.items;
    assert_close(rim->diameter_code, 17, 0, "rim diameter");
    assert_relative(rim->width_m, 0.2032, 1e-14, "rim width");
    assert_relative(rim->inset_m, 0.025, 1e-14, "rim inset");
    const struct clearance_measured *clearance = &specification.clearance;
    ck_assert_uint_eq(clearance->front_overhang.count, 1); /* one mapping is a list of one */
    assert_relative(clearance->front_overhang.items[0].ahead_m, 0.88, 1e-14, "ahead");
    assert_relative(clearance->front_overhang.items[0].height_m, 0.42, 1e-14, "height");
    assert_relative(clearance->rear_overhang.items[0].behind_m, 1.05, 1e-14, "behind");
    assert_relative(clearance->rear_overhang.items[0].height_m, 0.48, 1e-14, "height");
    assert_relative(clearance->belly.items[0].at_m, 1.5, 1e-14, "at");
    assert_relative(clearance->belly.items[0].height_m, 0.235, 1e-14, "height");
}
END_TEST

/* One row an item; NAN where the file does not say. */
static const struct {
    const char *item;
    double mass_kg, at_m, side_m, volume_m3, dry_mass_kg, occupants, tow_ball_kg, trailer_kg;
    int removed, on_roof, seat;
} example_items[] = {
    {"front guard and lamps", 96, -0.82, NAN, NAN, NAN, NAN, NAN, NAN, -1, -1, -1},
    {"standard tank", 20, 3, NAN, NAN, NAN, NAN, NAN, NAN, 1, -1, -1},
    {"auxiliary tank", NAN, 3.1, NAN, 0.09, 38, NAN, NAN, NAN, -1, -1, -1},
    {"instrument racks", 118, 3.35, 0.2, NAN, NAN, NAN, NAN, NAN, -1, -1, -1},
    {"tent", 62, 1.5, NAN, NAN, NAN, NAN, NAN, NAN, -1, 0, -1},
    {"family", NAN, NAN, NAN, NAN, NAN, 3, NAN, NAN, -1, -1, 1},
    {"trailer", NAN, 3.9, NAN, NAN, NAN, NAN, 180, 1900, -1, -1, -1},
};

static void assert_same(double actual, double expected, const char *what)
{
    if (isnan(expected))
        ck_assert_msg(isnan(actual), "%s: %g, expected nothing", what, actual);
    else
        assert_relative(actual, expected, 1e-14, what);
}

START_TEST(example_has_its_items)
{
    read_example();
    ck_assert_uint_eq(specification.carried.count, LENGTH_OF(example_items));
    const struct carried_item *item = &specification.carried.items[_i];
    const char *name = example_items[_i].item;
    ck_assert_str_eq(item->item, name);
    assert_same(item->mass_kg, example_items[_i].mass_kg, name);
    assert_same(item->at_m, example_items[_i].at_m, name);
    assert_same(item->side_m, example_items[_i].side_m, name);
    assert_same(item->volume_m3, example_items[_i].volume_m3, name);
    assert_same(item->dry_mass_kg, example_items[_i].dry_mass_kg, name);
    assert_same(item->occupants, example_items[_i].occupants, name);
    assert_same(item->tow_ball_kg, example_items[_i].tow_ball_kg, name);
    assert_same(item->trailer_mass_kg, example_items[_i].trailer_kg, name);
    ck_assert_int_eq(item->removed, example_items[_i].removed);
    ck_assert_int_eq(item->on_roof, example_items[_i].on_roof);
    ck_assert_int_eq(item->seat, example_items[_i].seat);
    ck_assert(item->of == NULL || strcmp(item->of, "diesel") == 0);
}
END_TEST

/* Keys that take more than one shape. */
static const struct {
    const char *text;
    struct field a, b;
} shapes[] = {
    {"vehicle: {track: 1520 mm}", VALUE(vehicle.track_m.front, 1.52),
     VALUE(vehicle.track_m.rear, 1.52)},
    {"vehicle: {track: {rear: 1530 mm}}", VALUE(vehicle.track_m.front, NAN),
     VALUE(vehicle.track_m.rear, 1.53)},
    {"drivetrain: {axle: {front: 3.829, rear: 3.837}}", VALUE(drivetrain.axle.front, 3.829),
     VALUE(drivetrain.axle.rear, 3.837)},
    {"limits: {diameter_change: {min: -2 %, max: 1.5 %}}",
     VALUE(limits.diameter_change.min.value, -0.02),
     VALUE(limits.diameter_change.max.value, 0.015)},
    {"speedometer: {aim: 2 %}", VALUE(speedometer.aim.value, 0.02),
     VALUE(speedometer.fitted_error, NAN)},
    {"speedometer: {aim: as_before}", VALUE(speedometer.aim.value, NAN),
     VALUE(speedometer.fitted_error, NAN)},
    {"vehicle: {wheelbase: '2917 mm', top_speed: \"60 mph\"}", VALUE(vehicle.wheelbase_m, 2.917),
     VALUE(vehicle.top_speed_mps, 26.8224)},
    {"\xEF\xBB\xBFvehicle:\r\n  wheelbase: 2917 mm\r\n  track: 1.5 m\r\n",
     VALUE(vehicle.wheelbase_m, 2.917), VALUE(vehicle.track_m.rear, 1.5)},
    {"---\nvehicle: {wheelbase: 2917 mm}\n...\n", VALUE(vehicle.wheelbase_m, 2.917),
     VALUE(vehicle.track_m.rear, NAN)},
};

START_TEST(other_shapes_are_read)
{
    read_span(span_of(shapes[_i].text));
    ck_assert_msg(diagnostics.count == 0, "%s: %s", shapes[_i].text, diagnostics.faults[0].message);
    assert_same(double_at(&specification, shapes[_i].a.offset), shapes[_i].a.si, shapes[_i].a.name);
    assert_same(double_at(&specification, shapes[_i].b.offset), shapes[_i].b.si, shapes[_i].b.name);
}
END_TEST

START_TEST(point_lists_may_be_longer)
{
    read_span(span_of("clearance:\n  belly:\n  - {at: 1 m, height: 200 mm}\n"
                      "  - {at: 2 m, height: 250 mm, item: transfer gearbox}\n"));
    ck_assert_uint_eq(diagnostics.count, 0);
    ck_assert_uint_eq(specification.clearance.belly.count, 2);
    ck_assert_str_eq(specification.clearance.belly.items[1].item, "transfer gearbox");
    ck_assert_int_eq(specification.limits.diameter_change.min.kind, KIND_BARE);
}
END_TEST

/* Whatever stood in a struct, no word of it is left once it is cleared: a field without a row in
 * the key table would keep its own, and could begin as a known number. Each key has its example. */
static void assert_all_cleared(const struct key_set *set)
{
    enum { WORD = sizeof(double) };
    char old[WORD];
    memset(old, 0x5A, sizeof old);
    char *target = malloc(set->size);
    memset(target, 0x5A, set->size);
    key_set_clear(set, target);
    for (size_t at = 0; at + WORD <= set->size; at += WORD)
        ck_assert_msg(memcmp(target + at, old, sizeof old) != 0,
                      "the struct of the key \"%s\" keeps what stood at byte %zu",
                      set->keys[0].name, at);
    free(target);
    for (size_t i = 0; i < set->count; i++) {
        const struct key *key = &set->keys[i];
        ck_assert_msg(key->set != NULL || key->example != NULL, "%s has no example", key->name);
        if (key->set != NULL)
            assert_all_cleared(key->set);
    }
}

START_TEST(all_begins_unknown)
{
    assert_all_cleared(&build_file_keys);
    struct tyre tyre = tyre_unknown();
    ck_assert(!known(tyre.deflated.width_m) && tyre.rotated == CHOICE_NONE && !tyre.size_given);
    read_span(span_of("clearance: {front_overhang: {ahead: 900 mm, height: 400 mm}}"));
    ck_assert(!known(specification.clearance.front_overhang.items[0].at_m));
    ck_assert(!known(specification.tyres.fitted.spare.mass_kg));
}
END_TEST

Suite *build_file_suite(void)
{
    Suite *suite = suite_create("build_file");
    TCase *example = tcase_create("example");
    tcase_add_checked_fixture(example, set_up, tear_down);
    tcase_add_test(example, example_has_its_si_values);
    tcase_add_test(example, example_has_its_words);
    tcase_add_test(example, example_has_its_tyres);
    tcase_add_test(example, example_has_its_lists);
    tcase_add_loop_test(example, example_has_its_items, 0, (int)LENGTH_OF(example_items));
    tcase_add_loop_test(example, other_shapes_are_read, 0, (int)LENGTH_OF(shapes));
    tcase_add_test(example, point_lists_may_be_longer);
    tcase_add_test(example, all_begins_unknown);
    suite_add_tcase(suite, example);
    return suite;
}
