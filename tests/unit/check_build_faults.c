/* Build files that must be refused: each fault at its place; limits of size, depth and time. */
#include <string.h>

#include "suites.h"
#include "support.h"
#include "yaml/build_file.h"
#include "build/keys.h"
#include "yaml/walk.h"

enum { MEBIBYTE = 1024 * 1024 };

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

/* Tree and walk alone, without the rules between keys. */
static void read_span(struct span text)
{
    struct node *root = tree_read(&arena, text, &diagnostics);
    struct walk walk = {&arena, &diagnostics};
    ck_assert_msg(root != NULL || diagnostics.count > 0, "nothing was read and no fault told");
    if (root != NULL)
        walk_file(&walk, root, &specification);
}

/* One fault a text: its place, and two parts of its message. */
static const struct {
    const char *text;
    size_t line, column;
    const char *says, *says_too;
} faulty[] = {
    /* keys */
    {"vehicel: {}", 1, 1, "not known here", "did you mean \"vehicle\"?"},
    {"vehicle:\n  name: x\n  wheel_base: 2917 mm\n", 3, 3, "wheel_base", "\"wheelbase\"?"},
    {"vehicle: {wheelbsae: 2917 mm}", 1, 11, "wheelbsae", "\"wheelbase\"?"},
    {"Vehicle: {}", 1, 1, "not known here", "\"vehicle\"?"},
    {"\xEF\xBB\xBFvehicel: {}", 1, 1, "not known here", "\"vehicle\"?"},
    {"suspension: {hydropneumatic_sphere: 1}", 1, 14, "expected one of", "front, rear"},
    {"<<: {wheelbase: 1 m}", 1, 1, "not known here", "expected one of"},
    {"vehicle: {name: a, wheelbase: 2 m, name: b}", 1, 36, "stands twice", "line 1"},
    {"tyres: {}\nvehicle: {}\ntyres: {}\n", 3, 1, "stands twice", "line 1"},
    {"vehicle: {seats: {row_1: 1 m, row_1: 1 m}}", 1, 31, "stands twice", "\"row_1\""},
    {"[vehicle]: 1", 1, 1, "where a key is expected", "plain name"},
    {"? {a: b}\n: 1\n", 1, 3, "where a key is expected", "plain name"},
    {"vehicle: {wheelbase: \"2917\\n\n  mn\"}", 1, 22, "not known", "2917 mm"},
    {"vehicle: {unladen: {}}", 1, 20, "\"unladen\" has no value", "{front: ..., rear: ...}"},
    {"vehicle: {name: \"a\\e[31m\"}", 1, 17, "\"a\\x1B[31m\" holds a line end", "one line"},
    {"vehicle: {name: \"a\\0b\"}", 1, 17, "\"a\\x00b\" holds", "one line"},
    {"states: {\"a\\nb\": all}", 1, 10, "\"a\\x0Ab\" holds a line end", "one line"},
    {"carried: [{item: \"a\\x7F\"}]", 1, 18, "control character", "one line"},
    {"carried: [{item: \"a\\u009B\"}]", 1, 18, "control character", "one line"},
    {"vehicle:\n  wheelbase: 2917\n    mn\n", 2, 14, "not known", "nearest unit: mm"},
    {"vehicle: {name: a} # \xE2\x80\xA8\rvehicle: {}", 3, 1, "stands twice", "line 1"},
    {"vehicle: {name: a} #\xC2\x85tyres: \xFF", 2, 8, "not YAML", "octet: \\xFF"},
    {"vehicle: {name: a\x9B}", 1, 18, "octet: \\x9B", "save the file as UTF-8"},
    {"vehicle: {name: a\x01}", 1, 18, "not YAML", "not allowed: \\x01"},
    {"vehicle: {wheelbase: \"2917 m\\0\"}", 1, 22, "the unit \"m\\x00\" is not known", "2917 mm"},
    {"vehicle: {kind: \"light\\0\"}", 1, 17, "\"light\\x00\" is not a choice", "expected"},
    {"tyres: {fitted: {size: \"205/55\\0R16\"}}", 1, 24, "control character \\x00", "expected"},
    {"tyres: {fitted: {size: \"205/55\\u202ER16\"}}", 1, 24, "'\\u202E' stands here", "expected"},
    {"vehicle: {\"na\\0me\": a}", 1, 11, "the key \"na\\x00me\"", "not known here"},
    /* values: units and numbers */
    {"vehicle:\n  wheelbase: 2917 mn\n", 2, 19, "not known", "nearest unit: mm"},
    {"vehicle: {wheelbase: \"2917 mn\"}", 1, 28, "not known", "nearest unit: mm"},
    {"vehicle: {name: \xC3\x9Cml\xC3\xA4ut, wheelbase: 5 mn}", 1, 38, "not known",
     "(key \"wheelbase\")"},
    {"vehicle: {wheelbase: 2917}", 1, 22, "no unit", "2917 mm"},
    {"vehicle: {wheelbase: 2917 kg}", 1, 27, "unit of a mass", "a length"},
    {"vehicle:\n  wheelbase: 2,91 m\n", 2, 15, "decimal point", "2917 mm"},
    {"vehicle: {wheelbase: .nan}", 1, 22, "not a length", "2917 mm"},
    {"drivetrain: {reverse: 0x10}", 1, 24, "plain decimal", "reverse"},
    {"drivetrain: {reverse: 1_0}", 1, 24, "plain decimal", "reverse"},
    {"drivetrain: {reverse: 1:30}", 1, 24, "plain decimal", "reverse"},
    {"drivetrain: {reverse: 3.2 mm}", 1, 27, "takes no unit", "reverse"},
    {"vehicle: {wheelbase: -1234567890123456 mm}", 1, 22, "more than 15 digits", "wheelbase"},
    {"carried: [{item: a, mass: +1234567890.1234567 kg}]", 1, 27, "more than 15 digits", "mass"},
    {"vehicle: {wheelbase: -.5 m}", 1, 22, "begins with a point", "-0.5 m"},
    /* values: range */
    {"carried:\n- {item: a, mass: -5 kg}\n", 2, 19, "out of range", "0 kg to"},
    {"vehicle: {unladen: {front: -1290 kg, rear: 1180 kg}}", 1, 28, "out of range", "unladen"},
    {"vehicle: {wheelbase: 0 mm}", 1, 22, "out of range", "500 mm to 15000 mm"},
    {"drivetrain: {efficiency: 120 %}", 1, 26, "out of range", "10 % to 100 %"},
    {"drivetrain: {gears: [3.5, 0, 1.4]}", 1, 27, "out of range", "gears"},
    /* values: missing, or of another shape */
    {"vehicle:\n  wheelbase:\n  name: x\n", 2, 13, "value missing", "2917 mm"},
    {"vehicle: {wheelbase: \"\"}", 1, 22, "value missing", "2917 mm"},
    {"vehicle: {name: ''}", 1, 17, "value missing", "name"},
    {"vehicle:\n", 1, 9, "expects a mapping", "vehicle"},
    {"vehicle: 5 mm", 1, 10, "expects a mapping", "vehicle"},
    {"vehicle: {wheelbase: [1 m]}", 1, 22, "not a list", "2917 mm"},
    {"vehicle: {wheelbase: {front: 1 m}}", 1, 22, "not a mapping", "2917 mm"},
    {"vehicle: {track: [1 m, 2 m]}", 1, 18, "not a list", "track"},
    {"vehicle: {track: {middle: 1 m}}", 1, 19, "not an axle", "{front"},
    {"vehicle: {track: {front: 1 m, front: 2 m}}", 1, 31, "stands twice", "front"},
    {"drivetrain: {gears: 3.87}", 1, 21, "expects a list", "[3.87"},
    {"drivetrain: {transfer: {low: [2.5, -1]}}", 1, 36, "out of range", "low"},
    {"drivetrain: {transfer: {low: {a: 1}}}", 1, 30, "not a mapping", "low"},
    {"drivetrain: {axle: 0}", 1, 20, "out of range", "axle"},
    {"drivetrain: {gears: [[3.87]]}", 1, 22, "not a list", "3.83"},
    {"speedometer: {readings: [[50 km/h]]}", 1, 26, "is a pair", "readings"},
    {"speedometer: {readings: [50 km/h]}", 1, 26, "is a pair", "readings"},
    {"speedometer: {timed_readings: [[1 mi, 60 s]]}", 1, 32, "has three values", "[[1 mi"},
    {"speedometer: {timed_readings: [[1 mi, 60 kg, 60 mph]]}", 1, 42, "unit of a mass", "a time"},
    {"speedometer: {timed_readings: 1 mi}", 1, 31, "expects a list", "[[1 mi"},
    {"carried: tent", 1, 10, "list of mappings", "carried"},
    {"carried: [tent]", 1, 11, "expects a mapping", "{"},
    {"states: all", 1, 9, "names with what is aboard", "states"},
    {"states: {touring: some}", 1, 19, "`all` or a list", "touring"},
    {"just words", 1, 1, "expects a mapping", "vehicle"},
    {"- vehicle: 1", 1, 1, "expects a mapping", "vehicle"},
    /* values: words */
    {"vehicle: {kind: light_trukc}", 1, 17, "not a choice", "\"light_truck\"?"},
    {"vehicle: {includes: [driver, fule]}", 1, 30, "not a choice", "\"fuel\"?"},
    {"speedometer: {aim: lowest}", 1, 20, "not a choice", "lowest_lawful"},
    {"tyres: {fitted: {dual: maybe}}", 1, 24, "neither true nor false", "dual"},
    {"tyres: {fitted: {load_range: K}}", 1, 30, "not a letter", "ABCDEFGHJLMN"},
    {"tyres: {fitted: {load_range: EE}}", 1, 30, "not a letter", "ABCDEFGHJLMN"},
    {"tyres: {fitted: {size: 205/55X16}}", 1, 30, "205/55X16", ";"},
    {"tyres: {fitted: {size: '205/55X16'}}", 1, 31, "205/55X16", ";"},
    /* what YAML has and a build file has not */
    {"vehicle: &a {name: x}\n", 1, 10, "anchor", "write the value out"},
    {"vehicle: {name: &a x}\n", 1, 17, "anchor", "write the value out"},
    {"vehicle: {name: *a}\n", 1, 17, "alias", "write the value out"},
    {"vehicle: {wheelbase: !!str 2 m}\n", 1, 22, "tag", "without it"},
    {"vehicle: !wagon {name: x}\n", 1, 10, "tag", "without it"},
    {"# x\n\n%TAG ! tag:x\n---\nvehicle: {name: x}\n", 3, 1, "YAML directive", "lines"},
    {"vehicle: {name: x}\n---\nvehicle: {name: y}\n", 2, 1, "second document", "one document"},
    {"", 1, 1, "holds nothing", "vehicle"},
    {"# only a comment\n\n", 1, 1, "holds nothing", "vehicle"},
    /* what is no YAML */
    {"vehicle: {name: x\n", 2, 1, "not YAML", "began in line 1"},
    {"vehicle:\n\tname: x\n", 2, 1, "not YAML", "line 2"},
    {"vehicle: {name: \"x}\n", 2, 1, "not YAML", "began in line 1"},
    {"vehicle:\n  name: \xFF\n", 2, 9, "not YAML", "UTF-8"},
    {"vehicle:\n  name: a\x01z\n", 2, 10, "not YAML", "control"},
};

START_TEST(fault_is_told_at_its_place)
{
    const char *text = faulty[_i].text;
    read_span(span_of(text));
    const struct fault *fault = &diagnostics.faults[0];
    ck_assert_msg(diagnostics.count >= 1, "%s: no fault", text);
    ck_assert_msg(diagnostics.count == 1, "%s: %zu faults; the second: %s", text, diagnostics.count,
                  diagnostics.faults[1].message);
    ck_assert_msg(fault->mark.line == faulty[_i].line && fault->mark.column == faulty[_i].column,
                  "%s: at %zu:%zu, expected %zu:%zu (%s)", text, fault->mark.line,
                  fault->mark.column, faulty[_i].line, faulty[_i].column, fault->message);
    ck_assert_msg(strstr(fault->message, faulty[_i].says) != NULL &&
                      strstr(fault->message, faulty[_i].says_too) != NULL,
                  "%s: message is: %s", text, fault->message);
}
END_TEST

START_TEST(all_faults_are_told)
{
    read_span(span_of("vehicle: {wheelbase: 1 kg, nmae: x}\ntyres: {fitted: {size: 205}}\n"
                      "carried:\n- {mass: -1 kg}\n- {mass: 5}\n"));
    ck_assert_uint_eq(diagnostics.count, 5);
}
END_TEST

/* A key that stands twice is one fault; its lists are those of the second, not of both, for which
 * there is no room, and what was read of a tyre stays. */
START_TEST(key_that_stands_twice_is_read_once)
{
    read_span(span_of("tyres: {fitted: {size: 195/65R15 91H}}\n"
                      "drivetrain: {gears: [4, 3, 2, 1], grades: [5 %, 6 %]}\n"
                      "speedometer: {readings: [[50 km/h, 48 km/h], [60 km/h, 58 km/h]]}\n"
                      "states: {a: all, b: all}\n"
                      "tyres: {fitted: {size: 19=/65R15 91H}}\n"
                      "drivetrain: {gears: [3], grades: [7 %]}\n"
                      "speedometer: {readings: [[70 km/h, 68 km/h]]}\n"
                      "states: {c: all}\n"));
    ck_assert_uint_eq(diagnostics.count, 5); /* four keys, and the size that is none */
    ck_assert_uint_eq(specification.drivetrain.gears.count, 1);
    ck_assert_uint_eq(specification.drivetrain.grades.count, 1);
    ck_assert_uint_eq(specification.speedometer.readings.count, 1);
    ck_assert_uint_eq(specification.states.count, 1);
    ck_assert_int_eq(specification.tyres.fitted.tyre.size.section_width, 195);
}
END_TEST

START_TEST(faults_past_the_maximum_are_counted)
{
    char text[4096] = "drivetrain: {gears: [";
    for (int i = 0; i < 300; i++)
        strcat(text, i == 0 ? "x" : ", x");
    strcat(text, "]}");
    read_span(span_of(text));
    ck_assert_uint_eq(diagnostics.count, 300);
}
END_TEST

/* Depth and size. */

static void read_repeated(const char *piece, size_t times, const char *tail)
{
    size_t length = strlen(piece), total = length * times + strlen(tail);
    char *text = arena_allocate(&arena, total + 1);
    for (size_t i = 0; i < times; i++)
        memcpy(text + i * length, piece, length);
    memcpy(text + length * times, tail, strlen(tail));
    tree_read(&arena, (struct span){text, total}, &diagnostics);
}

START_TEST(sixty_four_levels_are_read)
{
    char closing[TREE_DEPTH_MAX + 1] = "";
    memset(closing, ']', TREE_DEPTH_MAX);
    read_repeated("[", TREE_DEPTH_MAX, closing);
    ck_assert_uint_eq(diagnostics.count, 0);
}
END_TEST

START_TEST(sixty_five_levels_are_refused)
{
    char closing[TREE_DEPTH_MAX + 2] = "";
    memset(closing, ']', TREE_DEPTH_MAX + 1);
    read_repeated("[", TREE_DEPTH_MAX + 1, closing);
    ck_assert_uint_eq(diagnostics.count, 1);
    ck_assert_uint_eq(diagnostics.faults[0].mark.column, 65);
    ck_assert_ptr_nonnull(strstr(diagnostics.faults[0].message, "64 levels"));
}
END_TEST

/* What grows with the square of a text's length takes minutes over these, on any machine; so much
 * of the processor's time ends it. */
static void assert_in_time(clock_t start, const char *what)
{
    double seconds = (double)(clock() - start) / CLOCKS_PER_SEC;
    ck_assert_msg(seconds < 60, "%s: %.2f s", what, seconds);
}

/* A quarter where there is little time. */
static size_t in_full(size_t size)
{
    return is_asked("TEST_FEW") ? size / 4 : size;
}

/* Hostile texts: each must be dealt with in time that grows with its length alone. */
static const struct {
    const char *piece, *tail;
    size_t times;
    size_t faults_min;
} hostile[] = {
    {"[", "", 100000, 1},    {"{", "", 100000, 1},      {"{a: ", "", 100000, 1},
    {"- ", "x", 100000, 1},  {"? ", "x", 100000, 1},    {"[],", "]", 100000, 1},
    {"]", "", 100000, 1},    {"\n", "", MEBIBYTE, 1},   {" ", "", MEBIBYTE, 1},
    {"#", "", MEBIBYTE, 1},  {"a: 1\n", "", 200000, 1}, {"- x\n", "", 250000, 0},
    {"x", "", MEBIBYTE, 0},  {"'", "", MEBIBYTE, 0},    {"\"\\u00e9", "", 100000, 1},
    {"%a\n", "", 100000, 1}, {"&a ", "x", 100000, 1},   {"x: ", "1", 100000, 1},
};

START_TEST(hostile_text_costs_little)
{
    clock_t start = clock();
    read_repeated(hostile[_i].piece, in_full(hostile[_i].times), hostile[_i].tail);
    assert_in_time(start, hostile[_i].piece);
    ck_assert_msg(diagnostics.count >= hostile[_i].faults_min, "%s times %zu: %zu faults",
                  hostile[_i].piece, in_full(hostile[_i].times), diagnostics.count);
}
END_TEST

/* A comment fills the file up to so many bytes. */
static struct span file_of_size(size_t size)
{
    static const char head[] = "vehicle: {name: x}\n#";
    char *text = arena_allocate(&arena, size + 1);
    memset(text, 'x', size);
    memcpy(text, head, sizeof head - 1);
    return (struct span){text, size};
}

START_TEST(one_mebibyte_is_read)
{
    read_span(file_of_size(MEBIBYTE));
    ck_assert_uint_eq(diagnostics.count, 0);
    ck_assert_str_eq(specification.vehicle.name, "x");
}
END_TEST

START_TEST(one_byte_more_is_refused)
{
    read_span(file_of_size(MEBIBYTE + 1));
    ck_assert_uint_eq(diagnostics.count, 1);
    ck_assert_uint_eq(diagnostics.faults[0].mark.line, 0); /* no place of its own */
    ck_assert_ptr_nonnull(strstr(diagnostics.faults[0].message, "1 MiB"));
}
END_TEST

/* Any file of a mebibyte, rules between keys included, in time linear in its length. */
static const struct {
    const char *head, *format;
} large[] = {
    {"tyres: {fitted: {size: 205/55R16 91V}}\ncarried:\n", "- {item: i%d, mass: 1 kg, at: 1 m}\n"},
    {"tyres:\n  fitted: {size: 205/55R16 91V}\n  options:\n",
     "  - {name: n%d, size: 205/55R16 91V}\n"},
    {"tyres: {fitted: {size: 205/55R16 91V}}\nstates:\n", "  s%d: all\n"},
    {"tyres: {fitted: {size: 205/55R16 91V}}\nstates:\n  all:\n", "  - i%d\n"},
    {"", "k%d: 1\n"},
    {"tyres: {fitted: {size: 205/55R16 91V}}\nlimits:\n  published:\n", "  - row%d\n"},
};

START_TEST(large_file_costs_little)
{
    char *text = arena_allocate(&arena, MEBIBYTE + 1);
    size_t at = (size_t)sprintf(text, "%s", large[_i].head);
    for (int i = 0; at < in_full(MEBIBYTE) - 100; i++)
        at += (size_t)sprintf(text + at, large[_i].format, i);
    clock_t start = clock();
    build_file_read(&arena, (struct span){text, at}, &diagnostics, &specification);
    assert_in_time(start, large[_i].format);
}
END_TEST

/* Rules between keys, by build_file_read. */
#define FITTED "tyres: {fitted: {size: 205/55R16 91V}}\n"

static const struct {
    const char *text;
    size_t line;
    const char *says;
} broken_rules[] = {
    {"vehicle: {name: x}", 1, "\"tyres\" is missing"},
    {"tyres: {fitted: {mass: 20 kg}}", 1, "no size"},
    {"tyres:\n  fitted: {size: 205/55R16 91V}\n  options:\n  - {size: 205/55R16 91V}\n", 4,
     "no name"},
    {"tyres:\n  fitted: {size: 205/55R16 91V}\n  options:\n  - {name: a}\n", 4, "no size"},
    {"tyres:\n  fitted: {size: 205/55R16 91V}\n  options:\n  - {name: a, size: 205/55R16 91V}\n"
     "  - {name: a, size: 205/55R16 91V}\n",
     5, "already"},
    {FITTED "carried: [{item: a, at: 1 m}]", 2, "no mass"},
    {FITTED "carried: [{item: a, mass: 1 kg}]", 2, "no place"},
    {FITTED "carried: [{item: a, volume: 9 L, of: deisel, at: 1 m}]", 2, "diesel"},
    {FITTED "states: {touring: [tent]}", 2, "not in `carried`"},
    {FITTED "speedometer: {rule: un_r93}", 2, "un_r39"},
    {FITTED "speedometer: {readings_on: other}", 2, "no option named"},
    {FITTED "speedometer: {readings: [[0 km/h, 50 km/h]]}", 2, "standstill"},
    {FITTED "speedometer: {readings: [[50 km/h, 31 mph]]}", 2, "mixes km/h and mph"},
    {FITTED "speedometer: {readings: [[690 km/h, 700 km/h]]}", 2, "below 600 km/h"},
    {FITTED "speedometer: {timed_readings: [[1 mi, 0 s, 60 mph]]}", 2, "time above zero"},
    {FITTED "speedometer: {odometer: {readings: [[1 km, 1 mi]]}}", 2, "mixes km and mi"},
    {FITTED "speedometer: {odometer: {rule: none}}", 2, "odometer_rules"},
    {FITTED "speedometer: {setting: {kind: constant_k, now: 8000, step: 1, choices: [8000]}}", 2,
     "stand together"},
    {FITTED "speedometer: {setting: {kind: constant_k, now: 8000, driving_gear_teeth: 7}}", 2,
     "only there"},
    {FITTED "speedometer: {setting: {kind: driven_gear_teeth, now: 18.5}}", 2, "counted whole"},
    {FITTED "speedometer: {sensor: {on: cable, pulses_per_turn: 4}}", 2, "turns_per_km"},
    {FITTED "speedometer: {sensor: {on: shaft}}", 2, "no count"},
    {FITTED "speedometer: {range: {from: 50 km/h, to: 40 km/h}}", 2, "not below"},
    {FITTED "limits: {track_change: {min: 5 mm, max: -5 mm}}", 2, "above max"},
    {"tyres:\n  fitted: {size: 205/55R16 91V, placard: {front: 220 kPa, rear: 360 kPa}}\n", 2,
     "above the 350 kPa"},
    {"tyres:\n  fitted:\n    size: LT245/75R16 120/116R\n    load_range: E\n    placard: 85 psi\n",
     5, "its load range"},
    {"tyres:\n  fitted:\n    size: 205/65R16C 107/105T\n    placard: 500 kPa\n"
     "    data_book: {max_load: 975 kg, at_pressure: 475 kPa}\n",
     4, "data_book: at_pressure"},
    {"tyres: {fitted: {size: 205/55R16 91V, placard: 220 kPa}}\n"
     "vehicle: {pressure_warning: 230 kPa}",
     2, "not below the placard's"},
    {"tyres: {fitted: {size: 205/55R16 91V, placard: 220 kPa}}\n"
     "off_road: {pressure: {front: 220 kPa, rear: 120 kPa}}",
     2, "not below the placard's"},
    {FITTED "off_road: {speed: 30 km/h}", 2, "\"pressure\" is missing"},
    {FITTED "off_road: {pressure: {rear: 120 kPa}}", 2, "one axle alone"},
    {FITTED "room_for: [{item: a}]", 2, "no place"},
    {FITTED "room_for: [{at: 1 m}]", 2, "no name"},
    {FITTED "room_for: [{item: a, at: 1 m}, {item: a, at: 2 m}]", 2, "already"},
    {FITTED "drivetrain: {axle: 3.83}", 2, "\"gears\" is missing"},
    {FITTED "drivetrain: {gears: [3.5]}", 2, "\"axle\" is missing"},
    {FITTED "drivetrain: {gears: [], axle: 3.83}", 2, "gears is empty"},
    {FITTED "drivetrain:\n  gears: [3.5]\n  axle: 4\n"
            "  continuously_variable: {lowest_gear: 2.6, highest_gear: 0.5}\n",
     5, "one of the two keys"},
    {FITTED "drivetrain: {axle: 4, continuously_variable: {lowest_gear: 2.6}}", 2,
     "\"highest_gear\" is missing"},
    {FITTED "drivetrain: {axle: 4, continuously_variable: {lowest_gear: 0.5, highest_gear: 2}}", 2,
     "not above highest_gear"},
    {FITTED "drivetrain: {gears: [3.5], axle: {front: 3.9}}", 2, "rear axle is taken as driven"},
    {FITTED "vehicle: {drive: full_time_4wd}\ndrivetrain: {gears: [3.5], axle: {rear: 3.9}}", 3,
     "front axle is driven"},
    {FITTED "drivetrain:\n  gears: [3.5]\n  axle: 4\n  engine: {idle: 900 rpm, limit: 800 rpm}\n",
     5, "not above its idle"},
    {FITTED "drivetrain:\n  gears: [3.5]\n  axle: 4\n  engine:\n"
            "    torque: [[2000 rpm, 90 Nm], [2000 rpm, 80 Nm]]\n",
     6, "does not rise"},
    {FITTED "drivetrain: {gears: [3.5], axle: 4, engine: {torque: [[2000 rpm, 0 Nm]]}}", 2,
     "at or below zero"},
    {FITTED "drivetrain: {gears: [3.5], axle: 4, engine: {limit: 1500 rpm, torque: [[2000 rpm, "
            "90 Nm]]}}",
     2, "below the first point"},
    {FITTED "drivetrain: {gears: [3.5], axle: 4, transfer: {low: [2.5, 2.5]}}", 2, "twice"},
    {FITTED "drivetrain: {gears: [3.5], axle: 4, axle_choices: [4.1, 4.1]}", 2, "twice"},
    {FITTED "limits: {inset_change: {min: 2.31 in, max: 58.42 mm}}", 2, "min is above max"},
    {"tyres:\n  fitted:\n    size: 205/55R16 91V\n    data_book: {rim_min: 178 mm, rim_max: 7 "
     "in}\n",
     4, "wider than rim_max"},
    {FITTED "drivetrain: {gears: [3.5], axle: 4, transfer: {low: [2, 3, 4, 5, 6, 7, 8, 9, 10]}}", 2,
     "at most 8"},
};

START_TEST(rule_between_keys_is_kept)
{
    ck_assert(
        !build_file_read(&arena, span_of(broken_rules[_i].text), &diagnostics, &specification));
    ck_assert_msg(diagnostics.count == 1, "%s: %zu faults; the second: %s", broken_rules[_i].text,
                  diagnostics.count, diagnostics.count > 1 ? diagnostics.faults[1].message : "");
    ck_assert_uint_eq(diagnostics.faults[0].mark.line, broken_rules[_i].line);
    ck_assert_msg(strstr(diagnostics.faults[0].message, broken_rules[_i].says) != NULL, "%s: %s",
                  broken_rules[_i].text, diagnostics.faults[0].message);
}
END_TEST

/* 7 in = 177.8 mm: what is equal is not above, in whatever units. */
START_TEST(equal_in_other_units_is_equal)
{
    static const char text[] =
        "tyres:\n  fitted:\n    size: 205/55R16 91V\n    tread_depth: 0.31496062992126 in\n"
        "    new_tread_depth: 8 mm\n    wheel: {width: 27.5590551181103 in}\n"
        "    data_book: {rim_min: 177.8 mm, rim_max: 7 in, max_load: 900 kg,\n"
        "      max_load_dual: 1984.16035966199 lb}\n"
        "limits: {inset_change: {min: 152.4 mm, max: 6 in}}\n";
    bool good = build_file_read(&arena, span_of(text), &diagnostics, &specification);
    ck_assert_msg(good, "line %zu: %s", diagnostics.faults[0].mark.line,
                  diagnostics.faults[0].message);
}
END_TEST

START_TEST(smallest_file_is_read)
{
    bool good = build_file_read(&arena, span_of(FITTED), &diagnostics, &specification);
    ck_assert_msg(good, "%s", diagnostics.faults[0].message);
}
END_TEST

Suite *build_faults_suite(void)
{
    Suite *suite = suite_create("build_faults");
    TCase *faults = tcase_create("faults");
    tcase_set_tags(faults, "text");
    tcase_add_checked_fixture(faults, set_up, tear_down);
    tcase_add_loop_test(faults, fault_is_told_at_its_place, 0, (int)LENGTH_OF(faulty));
    tcase_add_test(faults, all_faults_are_told);
    tcase_add_test(faults, faults_past_the_maximum_are_counted);
    tcase_add_test(faults, key_that_stands_twice_is_read_once);
    tcase_add_loop_test(faults, rule_between_keys_is_kept, 0, (int)LENGTH_OF(broken_rules));
    tcase_add_test(faults, equal_in_other_units_is_equal);
    tcase_add_test(faults, smallest_file_is_read);
    suite_add_tcase(suite, faults);
    TCase *bounds = tcase_create("bounds");
    tcase_set_tags(bounds, "text");
    tcase_add_checked_fixture(bounds, set_up, tear_down);
    tcase_add_test(bounds, sixty_four_levels_are_read);
    tcase_add_test(bounds, sixty_five_levels_are_refused);
    tcase_add_loop_test(bounds, hostile_text_costs_little, 0, (int)LENGTH_OF(hostile));
    tcase_add_test(bounds, one_mebibyte_is_read);
    tcase_add_test(bounds, one_byte_more_is_refused);
    tcase_add_loop_test(bounds, large_file_costs_little, 0, (int)LENGTH_OF(large));
    suite_add_tcase(suite, bounds);
    return suite;
}
